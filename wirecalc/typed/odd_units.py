"""A number with something behind it that is no unit here, or with two units: what was meant by it.

Each reading of a text is yielded as what is wrong with it and what would do, with what is to be
read back in brackets.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from .unit_names import SPELLINGS

NUMBER = r"[-+−]?(?:\d+\.?\d*|\.\d+)"
SHORT_UNITS = {  # letters that stand for a unit on a meter or a part, where it has one meaning
    "resistance": {"k": "kohm", "K": "kohm", "M": "Mohm", "R": "ohm", "r": "ohm"},
    "capacitance": {"u": "uF", "µ": "uF", "n": "nF", "p": "pF"} | {"MF": "uF", "mF": "uF"},
    "force": {"lb": "lbf", "lbs": "lbf", "#": "lbf", "pounds": "lbf", "pound": "lbf", "kg": "kgf"}
    | dict.fromkeys(("kgs", "kilo", "kilos"), "kgf")
    | {"oz": "ozf", "ounces": "ozf"},
    "time": {"m": "min"},
    "length": {},
}
_IN_OTHERS: dict[
    str, dict[str, tuple[float, str]]
] = {  # units that nothing here is declared in -> how many of which unit they are
    "length": {"yd": (3, "ft"), "yds": (3, "ft"), "yard": (3, "ft"), "yards": (3, "ft")},
    "resistance": dict.fromkeys(("G", "Gohm", "GΩ", "gig", "gigs", "gigohm"), (1000, "Mohm")),
    "current": {"kA": (1000, "A")},
    "force": {"daN": (10, "N"), "kN": (1000, "N")},
    "time": dict.fromkeys(("day", "days"), (24, "h")),
    "volume": dict.fromkeys(("ml", "mL", "cc"), (0.001, "L"))
    | dict.fromkeys(("qt", "quart", "quarts"), (0.25, "gal")),
}
_TWO_UNITS = {  # a value in two units of one dimension: how many of the second make the first
    "length": ((r"(?:ft|feet|foot|')", r"(?:in|inch|inches|\")?", 12.0, "ft"),),
    "time": (
        (r"(?:h|hr|hrs|hours?)", r"(?:m|min|mins|minutes?)?", 60.0, "h"),
        (r"(?:m|min|mins|minutes?|')", r"(?:s|sec|secs|seconds?|\")?", 60.0, "min"),
    ),
}
PLATE = re.compile(r"(?:fla|rla|lra|mca|mocp|mop|sfa|nla|amps? ?(?:fla|rla|lra))", re.IGNORECASE)
_MAINS = (60, 50)  # Hz
# W; NIST SP 811, 2008, appendix B.8: British thermal unit (IT) per hour, ton of refrigeration
_HEAT = dict.fromkeys(("btu", "btu/h", "btuh", "btu/hr", "btus"), 0.2930711)
_HEAT |= dict.fromkeys(("ton", "tons"), 3516.853)


def is_unit(text: str) -> bool:
    """Return whether a word is a unit of anything here, as people spell it."""
    spelled = (s for units in SPELLINGS.values() for n, more in units.items() for s in (n, *more))
    return text.casefold() in map(str.casefold, spelled)


def two_units(text: str, dimension: str) -> Iterator[tuple[str, str]]:
    """Yield a value in two units as one: 6' 3\", 1 h 30 min; and 1:30, which may be two things."""
    for first, second, many, unit in _TWO_UNITS.get(dimension, ()):
        found = re.fullmatch(rf"(\d+)\s*{first}\s*(\d+(?:\.\d+)?)\s*{second}", text)
        if found:
            value = f"{int(found[1]) + float(found[2]) / many:.6g}"
            yield "is in two units", f"write it in one, as [{value} {unit}]"
    span = re.fullmatch(r"(\d{1,2}):(\d{2})\s*(?:-|–|to|till|until)\s*(\d{1,2}):(\d{2})", text)
    if span and dimension == "time":
        start, end = (60 * int(span[n]) + int(span[n + 1]) for n in (1, 3))
        took = (end - start) % (24 * 60)
        yield "is from one time of the day to another", f"write how long that is, [{took} min]"
    clock = (
        re.fullmatch(r"(?:(\d+):)?(\d+):(\d{2}(?:\.\d+)?)", text) if dimension == "time" else None
    )
    if clock:
        big, small = int(clock[2]), float(clock[3])
        seconds = f"[{3600 * int(clock[1] or 0) + 60 * big + small:.6g} s]"
        wrong = "is on the clock"
        if clock[1] is None:
            hours = f"[{big + small / 60:.6g} h] for hours and minutes"
            of_seconds = f"{seconds} for minutes and seconds"
            yield f"{wrong}, and may be minutes or hours", f"write {of_seconds}, or {hours}"
            yield wrong, f"write {hours}"
            yield wrong, f"write {of_seconds}"
        yield wrong, f"write {seconds}"
        yield wrong, "write it in one unit, such as 90 s"


def letters(text: str, dimension: str, unit: str) -> Iterator[tuple[str, str]]:
    """Yield a number with the letters that stand for a unit, or with one in place of a digit."""
    part = re.fullmatch(r"(\d)/(\d) ?(cycles?|cyc\.?|cy)", text)
    if part and dimension == "time" and part[2] != "0":
        text = f"{int(part[1]) / int(part[2]):.6g} {part[3]}"
    found = re.fullmatch(rf"([<>]?)({NUMBER})\s*(\S.*)", text)
    if found:
        yield from _word_behind(found[1], found[2], found[3], dimension, unit)
    curve = re.fullmatch(rf"([BCDKZbcdkz])\s*-?({NUMBER})\s*(?:A|amps?)?", text)
    behind = re.fullmatch(rf"({NUMBER})\s*A?\s*-?(?:type|curve)?\s*([BCDKZ])(?: curve)?", text)
    if dimension == "current" and (curve or behind):
        letter, amps = (curve[1], curve[2]) if curve else (behind[2], behind[1])  # type: ignore[index]
        wrong = f"has the curve ({letter.upper()}) beside the amps"
        yield wrong, f"write [{amps} A]; where the curve counts it is an input of its own"
    poles = re.fullmatch(rf"([1-4])\s*[Pp]\s*-?({NUMBER})\s*A?", text)
    if dimension == "current" and poles:
        yield f"has the poles ({poles[1]}) before the amps", f"write [{poles[2]} A]"
    rating = re.fullmatch(r"([Tt][FfHhMm]?|[LF])\s*-?(\d{2,3})\s*°?([CcFf])?", text)
    if dimension == "temperature" and rating:
        wrong = "is a rating with its letter"
        scales = (rating[3],) if rating[3] else ("C",) if rating[1] in "tT" else ("C", "F")
        each = [f"[{rating[2]} {scale.upper()}]" for scale in scales]
        for do in (" or ".join(each), *each):
            yield wrong, f"write {do}"
    coded = re.fullmatch(r"(\d+)([RrkKM])(\d+)", text) if dimension == "resistance" else None
    if coded:
        word = SHORT_UNITS[dimension][coded[2]]
        yield "has its point in a letter", f"write [{coded[1]}.{coded[3]} {word}]"
    yield from _digits(text)


def _word_behind(
    side: str, number: str, word: str, dimension: str, unit: str
) -> Iterator[tuple[str, str]]:
    """Yield a number, with the sign of its side before it, and a word behind that is no unit."""
    value = f"{side}{number}"
    if known := SHORT_UNITS.get(dimension, {}).get(word):
        more = ": pounds of pull are lbf, kilograms kgf, ounces ozf" if dimension == "force" else ""
        more = ": a capacitor's MF, MFD or mF is uF" if known == "uF" else more
        yield f"needs its unit ({word!r} is none{more})", f"write [{value} {known}]"
    if word in _IN_OTHERS.get(dimension, {}):
        times, other = _IN_OTHERS[dimension][word]
        written = f"[{side}{times * float(number):.6g} {other}]"
        yield f"is in {word}, and that is {times} {other}", f"write {written}"
    if word == "m" and dimension == "resistance":
        milli, mega = f"[{value} mohm]", f"[{value} Mohm]"
        for do in (f"{milli} or {mega}", f"{mega} for millions", f"{milli} for thousandths"):
            yield "may be thousandths or millions of an ohm", f"write {do}"
    degrees = ("temperature", "temperature difference")
    if re.fullmatch(r"°|deg[s.]?|degrees?", word) and dimension in degrees:
        c, f = f"[{value} {'C' if dimension == degrees[0] else 'K'}]", f"[{value} F]"
        for do in (f"{c} or {f}", c, f):
            yield "does not say of which scale", f"write {do}"
    yield from _no_unit(value, number, word, dimension, unit)


def _no_unit(
    value: str, number: str, word: str, dimension: str, unit: str
) -> Iterator[tuple[str, str]]:
    """Yield a number with a word behind that is none of its units, but says what was meant."""
    if PLATE.fullmatch(word) and dimension == "current":
        yield f"needs its unit ({word!r} is what a plate calls it)", f"write [{value} A]"
    if dimension == "voltage" and re.fullmatch(r"~(?:\s*\d+\s*Hz)?", word, re.IGNORECASE):
        yield f"needs its unit beside {word!r}", f"write [{value} V]"
    if word.casefold() in ("ac", "dc", "rms") and dimension in ("current", "voltage"):
        yield f"needs its unit beside {word!r}", f"write [{value} {unit}]"
    if dimension == "voltage" and re.fullmatch(r"(?i)v\.? ?dc|dcv|acv", word):
        yield "says ac or dc, which what is asked for says", f"write [{value} V]"
    hyphen = word.removeprefix("-")
    if hyphen != word and hyphen and not hyphen[0].isdigit():
        yield "has a hyphen before its unit", f"write [{value} {hyphen}]"
    yield from _of_another_quantity(value, number, word, dimension)


def _of_another_quantity(
    value: str, number: str, word: str, dimension: str
) -> Iterator[tuple[str, str]]:
    """Yield a number that is of another quantity than is asked for, where it can be turned."""
    if dimension == "power" and (each := _HEAT.get(word.casefold())):
        wrong = "is heat moved, not watts taken"
        yield wrong, f"where heat is asked for, write [{float(number) * each:.4g} W]"
    if dimension == "ratio" and re.fullmatch(r"(?i)lag(?:ging)?|lead(?:ing)?|pf", word):
        yield "is a share", f"write it in percent: [{100 * float(number):.6g} %]"
    if dimension == "length" and re.fullmatch(r"(?i)awg|ga\.?|gauge", word) and number.isdigit():
        inches = 0.005 * 92 ** ((36 - int(number)) / 39)  # ASTM B258, the series of diameters
        wrong = "is a size, and a length is asked for"
        yield wrong, f"write the diameter: of a solid wire [{25.4 * inches:.3g} mm]"
    if word.upper() in ("VA", "KVA") and dimension == "power":
        watts = f"[{value} {'kW' if len(word) > 2 else 'W'}]"
        wrong = "is in volt-amps, which are watts of a heater alone"
        yield wrong, f"write {watts} for a heater; a motor takes fewer watts"
    if re.fullmatch(r"cycles?|cyc\.?|cy", word) and dimension == "time":
        at = (f"[{float(number) / hz:.4g} s] for {hz} Hz" for hz in _MAINS)
        yield "is in cycles of the mains", f"write {', or '.join(at)}"


def _digits(text: str) -> Iterator[tuple[str, str]]:
    """Yield a number with a letter in place of a digit, or with a gap."""
    digits = re.sub(r"(?<=[\d.])[oO](?=[\d.\s]|$)|^[oO](?=[.\d])", "0", text)
    digits = re.sub(r"(?<=[\d.])[lI](?=[\d.])|^[lI](?=[\d.])", "1", digits)
    digits = re.sub(r"(?<=\d)[oO](?=\.)", "0", digits)
    if digits != text:
        yield "has a letter in its number", f"is it [{digits}]?"
    if re.search(r"\s0hms?$", text):
        yield "has a digit in its unit", f"is it [{re.sub('0hm', 'ohm', text)}]?"
    if re.fullmatch(r"\d+\.\.+\d+\s*\D*", text):
        yield "has two points in its number", f"is it [{re.sub(r'[.]+', '.', text)}]?"
    if part := re.fullmatch(r"(\d+) (\d)/(\d+) ?([^\d\s]+)", text):
        whole = int(part[1]) + int(part[2]) / max(int(part[3]), 1)
        yield "is a fraction", f"write it as a decimal, [{whole:.6g} {part[4]}]"
    gap = re.fullmatch(r"(\d+)\s+(\.\d+\s*\D+)|(\d+\.)\s+(\d+\s*\D+)", text)
    if gap:
        yield "has a gap in its number", f"is it [{''.join(filter(None, gap.groups()))}]?"
