"""Texts that name no wire, or several: what is said of them, and what would do."""

from __future__ import annotations

import math
import re
from collections.abc import Container

from ..base.errors import BadText, nearest
from ..base.rounding import show
from .odd_units import is_unit
from .quantities import comma
from .tidy import in_digits
from .wire_lists import LEAST_STRANDS, THINNEST_WIRE, gauges_named, wires_in

_LEAST_GAUGE = 8.0  # a number below it is an area on a cable, one from it on a gauge
# mm; a thinner strand is rare, and old imperial cable has such numbers in inches (from memory)
_LEAST_IN_MM = 0.1
# what is printed behind a gauge and not behind an area: types of the NEC, table 310.4(1) and 400.4
_TYPES_BY_GAUGE = re.compile(
    r"(?i)(?:THH?W|THWN|THHN|XHHW|RHH|RHW|TW|MTW|TFF?N|UF|USE|NM|AC|MC|AWM|S[JVOPT])[A-Z0-9-]*\b"
)
_ODD_SIZES = {str(n) for n in range(5, 30, 2)} - {"25"}  # no such AWG or mm2 (common practice)
_GAUGES_OF_OTHERS = ("SWG", "BWG", "ISWG", "WWG", "MWG")


def refuse_several(text: str, clean: str) -> None:
    """Raise BadText for a text with several wires or with a comma in its number."""
    named = wires_in(clean)
    if len(named) > 1:
        raise BadText(f"{text!r} names {len(named)} wires", f"give one alone, such as {named[0]}")
    if wrong := comma(clean):
        raise wrong


def no_size(text: str, clean: str, words: Container[str]) -> BadText:
    """Say what is missing in a text without a size; `words` are those that may stand beside one."""
    clean = re.sub(rf"(?i)^({'|'.join(_GAUGES_OF_OTHERS)})[\s-]*([0-9]+)$", r"\2 \1", clean)
    bare = re.fullmatch(r"#?([0-9]+(?:/0)?|[0-9]*\.[0-9]+)(?:\s*([a-zA-Z][a-zA-Z -]*))?", clean)
    if bare and not bare[2] and (unsold := _unsold(text, bare[1])):
        return unsold
    if bare and re.fullmatch("0{5,}", bare[1]):  # 4/0 is the thickest gauge
        wrong = f"{text!r} is thicker than any gauge"
        return BadText(wrong, "write kcmil or mm2, such as 250 kcmil")
    if bare and all(word.casefold() in words for word in (bare[2] or "").split()):
        return BadText(f"{text!r} has no unit of size", f"write {_either(bare[1], bare[2] or '')}")
    if bare and (other := _other_unit(text, bare[1], bare[2])):
        return other
    sizes = re.fullmatch(r"#?([0-9]{1,2})\s*(?:-|–|to)\s*#?([0-9]{2})(?:\s*AWG)?(?:\s.*)?", clean)
    if sizes:
        would_do = f"write one wire, such as {sizes[1]} AWG"
        return BadText(f"{text!r} is a range of sizes", would_do)
    digits = gauges_named(in_digits(clean))
    if digits != clean and re.fullmatch(r"(?i)[0-9/]+ AWG.*", digits):
        return BadText(f"{text!r} is in words", f"write {digits}")
    jacket = re.match(
        r"#?\s*(?P<gauge>[68]|[12][0-9])(?:\s*[-/]\s*[2-9]\b|\s*ga\b|\s*gauge\b)", clean
    )
    if jacket:  # 14-2, 16/3: gauge and number of wires, as printed on a jacket
        return BadText(f"{text!r} is how a cable is marked", f"write {jacket['gauge']} AWG")
    return joined_by_a_word(text) or _metric_cable(text, clean) or _bare_gauges(text, clean)


def _unsold(text: str, number: str) -> BadText | None:
    """Return what would do for a bare number that is sold neither as a gauge nor as an area."""
    if not number.isdigit() or number not in _ODD_SIZES:
        return None
    near = f"{int(number) - 1} AWG or {int(number) + 1} AWG"
    wrong = f"{text!r} has no unit of size, and is sold as a rule neither in AWG nor in mm2"
    return BadText(wrong, f"read the mark again: is it {near}? Or write {number} AWG, if it is")


def _metric_cable(text: str, clean: str) -> BadText | None:
    """Return what would do for a metric cable's marking: 3G1.5, H05VV-F 3x1.5."""
    found = re.fullmatch(
        r"(?:\S+ )?[1-9] ?(?:[Gg]|[xX×]) ?([0-9]{1,2}(?:\.[0-9]+)?)(?: ?mm)?", clean
    )
    if found and (float(found[1]) < _LEAST_GAUGE or "." in found[1] or "g" in clean.casefold()):
        return BadText(f"{text!r} is how a cable is marked", f"write {found[1]} mm2")
    return None


def _bare_gauges(text: str, clean: str) -> BadText:
    """Return what would do for gauges without AWG, with other things behind; else for any text."""
    bare = re.fullmatch(r"#?[0-9]{1,2}(?:\s*[+,/;]\s*#?[0-9]{1,2})+", clean)
    if bare and all(int(n) >= _LEAST_GAUGE for n in re.findall("[0-9]+", clean)):
        each = "; ".join(f"{n} AWG" for n in re.findall("[0-9]+", clean))
        return BadText(f"{text!r} has no unit of size", f"write each with its own: {each}")
    if counted := re.fullmatch(r"[1-9] ?[xX×] ?([0-9]{1,2})", clean):
        return BadText(f"{text!r} has no unit of size", f"write {counted[1]} AWG for one wire")
    if spelt := re.fullmatch(r"(?i)([0-9]{1,2}) ?(?:g[aeu]+g[aeu]*|a\.w\.g\.?)", clean):
        return BadText(f"{text!r} has its unit misspelt", f"is it {spelt[1]} AWG?")
    behind = re.fullmatch(r"#?([0-9]{1,2})\s+([a-zA-Z].*)", clean)
    if behind and int(behind[1]) >= _LEAST_GAUGE and not is_unit(behind[2].split()[0]):
        wrong = f"{text!r} has no unit of size, and {behind[2]!r} is none"
        if _TYPES_BY_GAUGE.match(behind[2]):
            return BadText(wrong, f"write {behind[1]} AWG")
        return BadText(wrong, f"write {behind[1]} AWG or {behind[1]} mm2")
    sizes = "write 18 AWG, 1.5 mm2, 26x30 AWG or 41x0.254 mm"
    return BadText(f"{text!r} names no wire size", sizes)


def _strands(count: int, diameter: str, unit: str) -> str:
    """Return what would do for strands of a diameter: in inches first, where it is so small."""
    if unit == "mm" or (not unit and float(diameter) >= _LEAST_IN_MM):
        return f"{count}x{diameter} mm"
    each = float(diameter) * 25.4
    area = show(count * math.pi / 4 * each**2, "mm2", digits=3, toward="down")
    whole = f"{count}x{float(diameter):g} in" if count >= LEAST_STRANDS else area
    if unit:
        return whole
    mark = f"{whole} for inches, as old cable is marked ({count}x{each:.3f} mm)"
    if count < LEAST_STRANDS:
        return mark
    return f"{mark}; or {count}x{float(diameter):g} mm for millimetres"


def _either(number: str, words: str) -> str:
    """Return the size that a bare number may be, with the words beside it: AWG, mm2 or both."""
    behind = f" {words}" if words else ""
    if set(number) == {"0"}:  # 000 is 3/0
        return f"{len(number)}/0 AWG{behind}"
    units = ("mm2",) if "." in number else ("AWG",) if "/" in number else ("AWG", "mm2")
    return " or ".join(f"{number} {unit}{behind}" for unit in units)


def _other_unit(text: str, number: str, word: str) -> BadText | None:
    """Return what would do for a number with a unit of another system, or a misspelt one."""
    unit = word.upper().split()[0]
    if unit in _GAUGES_OF_OTHERS:
        would_do = "write its area in mm2, or its diameter, as in 1.2 mm solid"
        return BadText(f"{text!r}: {unit} is another system of gauges than AWG", would_do)
    if unit in ("SQ", "SQR", "SQUARE", "SQUARED"):
        return BadText(f"{text!r} says square and not of what", f"write {number} mm2")
    letters = unit.replace(".", "")
    if sorted(letters) == sorted("AWG") or letters in ("AW", "WG", "AG", "AWGG"):
        return BadText(f"{text!r} has its unit misspelt", f"is it {number} AWG?")
    return None


def unknown_word(text: str, rest: str, word: str, words: list[str]) -> BadText:
    """Return the refusal of a word beside a size that says nothing of a wire."""
    behind = rest.strip()
    alone = text[: -len(behind)].strip() if text.endswith(behind) else ""
    close = nearest(word, words, start=3)
    known = "solid, stranded, tinned, nickel-plated, copper or aluminum"
    would_do = f"did you mean {close}?" if close else f"a wire may be {known}"
    gauge = re.search(r"(?i)awg|ga|#", alone)
    if not close and gauge and _TYPES_BY_GAUGE.fullmatch(word):
        would_do = f"write {alone}"
    elif re.search("[0-9]", word):
        would_do = "write the one size of one wire, such as 18 AWG or 26x30 AWG"
    return BadText(f"{text!r}: {word!r} is not understood", would_do)


def joined_by_a_word(text: str) -> BadText | None:
    """Return what is wrong with a text that joins wires in a way of its own; None for another.

    With `and`, `&` or a slash between two sizes, or a number in words before one.
    """
    clean = gauges_named(" ".join(text.split()))
    apart = re.sub(r"\s*(?:&|\band\b)\s*(?:an?\s)?", "; ", clean)
    jacket = re.match(r"(?i)([0-9]{1,2})[-/][2-9] AWG", clean) or re.fullmatch(
        r"(?i)#?([0-9]{1,2}) ?(?:AWG|ga|gauge) [2-9][ -](?:wires?|conductors?|cores?)", text.strip()
    )
    if jacket:
        return BadText(f"{text!r} is how a cable is marked", f"write {jacket[1]} AWG")
    bundle = re.fullmatch(r"(?i)([0-9]{1,4})/([0-9]{2})(?: AWG)?", clean)
    if bundle and int(bundle[1]) >= LEAST_STRANDS and THINNEST_WIRE < int(bundle[2]) <= 40:
        would_do = f"write {bundle[1]}x{bundle[2]} AWG for them, or one size such as 18 AWG"
        return BadText(f"{text!r} may be {bundle[1]} strands of {bundle[2]} AWG", would_do)
    strands = re.fullmatch(r"([0-9]+)\s*[/xX×]\s*(0?\.[0-9]+)\s*(mm|in|\")?", clean)
    if strands:
        would_do = f"write {_strands(int(strands[1]), strands[2], strands[3] or '')}"
        return BadText(f"{text!r} may be strands of one wire", would_do)
    if sizes := re.fullmatch(r"(?i)([0-9]{1,2}) ?- ?[0-9]{2} AWG.*", clean):
        return BadText(f"{text!r} is a range of sizes", f"write one wire, such as {sizes[1]} AWG")
    if times := re.fullmatch(r"(?i)([0-9]{1,2}) AWG ?[x×] ?([2-9])", clean):
        would_do = f"write {times[1]} AWG for one; for all of them {times[2]}x{times[1]} AWG"
        return BadText(f"{text!r} names several wires", would_do)
    both = re.fullmatch(r"(?i)([0-9]{1,2})/([0-9]{2}) AWG", apart)
    if both and int(both[2]) <= THINNEST_WIRE:  # thinner ones are strands
        apart = f"{both[1]} AWG; {both[2]} AWG"
    many = re.sub(r"\b(one|two|three|four|five) (?=[0-9])", lambda m: f"{in_digits(m[1])}x", apart)
    if many == clean:
        return None
    each = re.sub(r"(?<![0-9.])([0-9]{1,2})s?(?=;|$)", r"\1 AWG", many)
    return BadText(f"{text!r} names several wires", f"write {each}")


def few_strands(text: str, count: int, one: str, mils: float, mm2: float) -> BadText:
    """Say that a text may be several wires or one, with both spellings.

    `one` is the size of each and `mils` its diameter, `mm2` the area of all of them together.
    """
    each = f"{one}2" if one.endswith("mm") else one
    if count == 1:
        return BadText(f"{text!r} may be a wire or a strand", f"write {each}, or {one} solid")
    strands = f"{count}x{show(mils, 'mil', digits=3, toward='down')}"
    if count < LEAST_STRANDS:
        strands = show(mm2, "mm2", digits=3, toward="down")
    return BadText(
        f"{text!r} may be {count} wires of {each}, or one wire of {count} strands",
        f"write {each} for the one wire that is asked for, or {strands} for the strands together",
    )


def bare_diameter(text: str, diameter: str) -> BadText:
    """Say that a size in mm, mil or in may be an area or a diameter, with both spellings."""
    area = f"{diameter}2" if diameter.endswith("mm") else "its area in cmil or mm2"
    solid = f"{diameter} solid for one solid wire of that diameter"
    return BadText(f"{text!r} may be an area or a diameter", f"write {area}, or {solid}")
