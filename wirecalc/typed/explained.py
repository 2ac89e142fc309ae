"""What would do in place of a text that is no quantity: the nearest one with the same meaning.

Nothing here changes how a text is read. What is suggested is read back before it is said, so that
nobody is sent from one refusal to the next.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

from ..base.errors import BadText
from .as_spoken import as_spoken, has_sign_in_word
from .bare_numbers import bare_number, is_bare
from .odd_numbers import other_numbers, sides
from .odd_units import NUMBER, PLATE, SHORT_UNITS, letters, two_units
from .quantities import FRACTIONS, LONGEST, NO_NUMBER
from .tidy import in_digits
from .unit_names import SPELLINGS

_N = NUMBER
_UNSURE = (
    r"^[~≈]\s*|^(?:about|approx\w*\.?|around|roughly|circa|ca\.?|nearly|almost)\s"
    r"|\s*\bor so$|\s+approx\.?$|\s*-?ish$"
)
_NONE = re.compile(
    r"n/?a|\?+|-+|dunno|idk|unk\.?|(?:do ?n[o']?t|don’t) know|no idea|none|nothing|tbd|unmeasured"
    r"|not (?:sure|known|measured|taken|given)",
    re.IGNORECASE,
)
_FINEST = 64  # of an inch: with a finer number below it a slash parts two values
_THERE_AND_BACK = re.compile(
    r"(?:round ?-?trip|there and back|both ways|two ways?|loop|return|total)", re.IGNORECASE
)
Read = Callable[[str], object]
_tried: list[str] = []


def says_none(text: object) -> bool:
    """Whether a text says that there is no value, in other words than unknown."""
    return isinstance(text, str) and _NONE.fullmatch(text.strip()) is not None


def no_value(text: str) -> BadText:
    """Say what to do where there is no value."""
    return BadText(
        f"{text!r} is no value", "write unknown; or leave it out, where its help says it may be"
    )


class Beside(NamedTuple):
    """What stands beside an input: those for its upper end and a meter's peak, what is usual."""

    upper: str = ""
    crest: str = ""
    typical: str = ""


def explained(
    text: str, dimension: str, unit: str, read: Read, beside: Beside, example: str, error: BadText
) -> BadText:
    """Return the refusal of a text with what would do, where its meaning shows; else the `error`.

    `read` reads a text as it is read here; `beside` says what stands beside it. A text that
    is tried on the way to that is not explained in turn.
    """
    if _tried or len(text) > LONGEST:  # so long a text nobody meant, and patterns take long over it
        return error
    if says_none(text):
        return no_value(text)
    if is_bare(text):
        how = dimension, unit, beside.typical, lambda typed: _is_read(typed, read)
        return bare_number(text.strip(), *how, _and_outside(text.strip(), unit, read, error))
    for wrong, would_do in _meanings(text, dimension, unit, beside, read):
        found = re.findall(r"\[(.*?)\]", would_do)
        if all(_is_read(one, read) for one in found):
            return BadText(f"{text!r} {wrong}", re.sub(r"\[(.*?)\]", r"\1", would_do))
    return _words_before(text, unit, example, read, error)


def _words_before(text: str, unit: str, example: str, read: Read, error: BadText) -> BadText:
    """Return the refusal of a text that has words before its value; else the `error`."""
    found = re.fullmatch(rf"(?:[13] ?)?(?:[a-zA-Z]\S*\s+)+({_N}\s*\S+)", text)
    plate = re.fullmatch(rf"({PLATE.pattern}|max\.?|rated)\s+({_N})", text, re.IGNORECASE)
    if plate and _is_read(f"{plate[2]} {unit}", read):
        return BadText(f"{text!r} has no unit", f"write {plate[2]} {unit}")
    before = re.fullmatch(rf"(?:[A-Za-z]{{1,3}}\s*)?=\s*({_N}.*)|([^\d\s.=-]+)\s+({_N})", text)
    turned = (before[1] or f"{before[3]} {before[2]}") if before else ""
    for one in (turned, f"{turned} {unit}"):
        if turned and _is_read(one, read):
            return BadText(f"{text!r} does not start with its number", f"write {one}")
    if has_sign_in_word(text):
        return BadText(error.wrong, f"{NO_NUMBER}, a sign as in -{example.lstrip('-')}")
    if found and _is_read(found[1], read):
        return BadText(f"{text!r} has words before its value", f"write {found[1]}")
    if error.would_do == NO_NUMBER:
        return BadText(error.wrong, f"{NO_NUMBER}, such as {example}, or unknown")
    return error


def _and_outside(text: str, unit: str, read: Read, error: BadText) -> BadText:
    """Return the refusal of a bare number that fits in no unit, with why not in the usual one."""
    try:
        read(f"{text} {unit}")
    except BadText as outside:
        return BadText(error.wrong, f"and {outside}")
    return error


def _is_read(text: str, read: Read) -> bool:
    _tried.append(text)
    try:
        read(text)
    except BadText:
        return False
    finally:
        _tried.pop()
    return True


def _meanings(
    text: str, dimension: str, unit: str, beside: Beside, read: Read
) -> Iterator[tuple[str, str]]:
    """Yield what may be wrong, and what would do, with what is to be read back in brackets."""
    clean = " ".join(text.split())
    yield from as_spoken(clean, dimension, unit, beside.crest)
    digits = in_digits(clean)
    yield from as_spoken(digits, dimension, unit) if has_sign_in_word(clean) else ()
    yield from _ranges(clean, unit, beside.upper)
    yield from _several(clean, dimension, unit, read)
    plain = re.sub(_UNSURE, "", clean, flags=re.IGNORECASE).strip()
    if plain != clean:
        wrong = "does not say how near it is"
        yield wrong, f"write [{plain}] if it is that, with its error as in {plain} ±5%"
        yield (
            wrong,
            f"write [{plain} {unit}] if it is that, with its error as in {plain} {unit} ±5%",
        )
    yield from sides(clean)
    yield from two_units(clean, dimension)
    yield from letters(clean, dimension, unit)
    yield from other_numbers(clean, dimension)
    said = re.sub(r"\s*(?:plus or minus|plus/minus|plus minus|give or take)\s*", " ±", clean)
    if said != clean:
        yield "has its error in words", f"write [{said}]"
    if digits != clean:
        yield "is in words", f"write it in digits: [{digits}]"
        yield "is in words", f"write it in digits: [{digits} {unit}]"
    yield from _behind(clean, dimension)
    bare = re.sub(r"\(\s*±\s*([^()+]+)\)$", r"±\1", clean.replace("+/-", "±").replace("+-", "±"))
    if bare != clean:
        yield "has brackets and not two errors in them", f"write [{bare}]"
    if found := re.fullmatch(rf"({_N}(?:(?:\s*;\s*|,\s+){_N})+)\s*([^\d\s,;]+)", clean):
        each = (f"[{one.strip()} {found[2]}]" for one in re.split("[,;]", found[1]))
        yield "has one unit for several values", f"write each with its own: {'; '.join(each)}"
    main, mark, off = clean.replace("+/-", "±").replace("+-", "±").partition("±")
    if mark and re.fullmatch(_N, main.strip()):
        yield "has no unit", f"write [{main.strip()} {unit} ±{off.strip()}]"
        if percent := re.fullmatch(rf"\s*({_N}\s*%)\s*([^\d\s]+)", off):
            yield (
                "has its unit behind the error",
                f"write [{main.strip()} {percent[2]} ±{percent[1]}]",
            )
        if behind := re.fullmatch(rf"\s*({_N})\s*(\S+)", off):
            word = SHORT_UNITS.get(dimension, {}).get(behind[2], behind[2])
            yield "has no unit", f"write [{main.strip()} {word} ±{behind[1]} {word}]"


def _ranges(text: str, unit: str, upper: str) -> Iterator[tuple[str, str]]:
    found = re.fullmatch(rf"({_N})\s*([^\d\s./-]*)\s*(?:-|–|—|to)\s*({_N})\s*(.*)", text)
    if not found:
        return
    low, behind, high, word = found.groups()
    if behind in ("e", "E"):
        return  # a power of ten
    word = word or behind or unit
    wrong = f"is {low} to {high} {word}, a range, and this is one value"
    if float(low.replace("−", "-")) > float(high.replace("−", "-")):
        low, high = high, low
        wrong = f"is a range from {low} to {high} {word} the wrong way round, and this is one value"
    if upper:
        yield wrong, f"write [{low} {word}] here, and {high} {word} as {upper}"
    yield wrong, f"write the one that it was, [{low} {word}] or [{high} {word}]"


def _several(text: str, dimension: str, unit: str, read: Read) -> Iterator[tuple[str, str]]:
    """Yield what to do about two values in one: 35/5 uF, 120/240 V, 5+5 A, 10 A x 2."""
    found = re.fullmatch(rf"({_N})\s*([/+&])\s*({_N})\s*([^\d±]*)", text)
    if found and found[1] == found[3]:
        yield "is two values", "write the one value that is asked for"
    elif found and not (found[2] == "/" and _is_fraction(found[1], found[3], dimension)):
        word = found[4].strip() or unit
        dual = dimension == "capacitance"
        wrong = "is a part with two sections, a value each" if dual else "is two values"
        yield wrong, f"write one of them, [{found[1]} {word}] or [{found[3]} {word}]"
    pair = re.fullmatch(rf"({_N}\s*[^\s\d,;/&]+),\s+({_N}\s*[^\s\d,;/&]+)", text)
    if pair and not re.fullmatch(r"\d+", pair[2]):
        yield "is two values", f"write one of them, [{pair[1]}] or [{pair[2]}]"
    if bare := re.fullmatch(rf"({_N}),\s+({_N})", text):
        yield "is two values", f"write one of them, [{bare[1]} {unit}] or [{bare[2]} {unit}]"
    one, other = rf"({_N}\s*[^\s\d,;/&]+)", rf"({_N}\s*[^\s\d,;/&]+)"
    both = re.fullmatch(rf"{one}\s*(?:/|&|\band\b|\()\s*{other}", text.removesuffix(")"))
    if both and _is_same(both[1], both[2], read):
        yield "is one value in two units", f"write it in one, [{both[1]}] or [{both[2]}]"
    if both:
        yield "is two values", f"write one; where several are asked for, [{both[1]}]; [{both[2]}]"
    times = re.fullmatch(rf"\d+\s*[x×]\s*({_N}\s*\D+)|({_N}\s*\D+?)\s*[x×]\s*\d+", text)
    if times:
        one = (times[1] or times[2]).strip()
        many = re.fullmatch(rf"(\d+)\s*[x×]\s*({_N})\s*(\D+)", text)
        if dimension == "length" and many:
            whole = f"[{int(many[1]) * float(many[2]):.6g} {many[3].strip()}]"
            yield "is one length several times", f"write {whole} for all, or [{one}] for one"
        yield "is one value several times", f"write one of them, [{one}]"


def _is_fraction(top: str, bottom: str, dimension: str) -> bool:
    """Whether two numbers with a slash between may be a fraction, in a unit that is divided so."""
    return dimension in FRACTIONS and float(top) < float(bottom) <= _FINEST


def _is_same(one: str, other: str, read: Read) -> bool:
    """Whether two texts are one value, as a plate has it in two units."""
    if not (_is_read(one, read) and _is_read(other, read)):
        return False
    values = [float(getattr(read(text), "value", 0.0)) for text in (one, other)]
    return abs(values[0] - values[1]) <= 0.02 * max(map(abs, values))


def _behind(text: str, dimension: str) -> Iterator[tuple[str, str]]:
    """Yield the value at the start of a text that goes on: 20 lb pull, 35 uF 370 V, 15 A 1P."""
    found = re.match(rf"({_N}(?:\s*\d*/\d+)?)\s*([^\s\d,;/@]+)(?=\s|@|\s*/\s*\d)(.+)", text)
    if not found or has_sign_in_word(found[3]) or "±" in text or "+/-" in text or "+-" in text:
        return
    number, word, rest = found[1], found[2], found[3].strip(" /")
    if any(rest in (name, *more) for units in SPELLINGS.values() for name, more in units.items()):
        return  # 24 N m is no force
    word = SHORT_UNITS.get(dimension, {}).get(word, word)
    if dimension == "length" and _THERE_AND_BACK.fullmatch(rest):
        half = f"[{float(number) / 2:.6g} {word}]" if re.fullmatch(_N, number) else "half of it"
        yield "is there and back", f"write {half} if one way is asked for"
        return
    other = "is another input" if re.match(r"(?:@|at)?\s*[\d.]", rest) else "says nothing here"
    yield f"goes on behind the value: {rest!r} {other}", f"write [{number} {word}]"
