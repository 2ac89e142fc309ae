"""Texts that say a value as people speak: a sign in a word, a peak, poles, one of two.

Each reading of a text is yielded as what is wrong with it and what would do, with what is to be
read back in brackets.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from .odd_units import NUMBER

_N = NUMBER
_UNIT = r"(?:°\s*)?[a-zA-ZΩΩµμ°]+"
_MINUS = re.compile(r"\b(?:minus|neg(?:ative)?|below|under(?! load)|sub)\b", re.IGNORECASE)
_PEAK = r"(?:peak|pk|p|crest)"
_TO_PEAK = r"(?:p-p|pp|pk-pk|pkpk|peak[- ]to[- ]peak|p to p)"
_POLES = {"single": 1, "one": 1, "double": 2, "two": 2, "dual": 2, "triple": 3, "three": 3}
_FREEZES_F = 32  # by the definition of the Fahrenheit scale


def has_sign_in_word(text: str) -> bool:
    """Whether a word of a text turns the sign of its number, so that none is read without it."""
    return _MINUS.search(text) is not None


def as_spoken(text: str, dimension: str, unit: str, crest: str = "") -> Iterator[tuple[str, str]]:
    """Yield what is wrong with a text that is spoken more than written, and what would do."""
    yield from _signs(text) if dimension == "temperature" else ()
    if dimension in ("current", "voltage"):
        yield from _peaks(text, unit, crest)
    if dimension == "current":
        yield from _poles(text)
        if plug := re.fullmatch(r"(?i)(?:nema )?l?\d{1,2}-(\d{2})\s*[rp]?", text):
            yield "is a plug's or an outlet's form", f"write its amps, [{plug[1]} A]"
    if dimension == "resistance" and re.fullmatch(r"(?i)(?:dead )?short(?:ed)?|touching", text):
        wrong = "is no number: the two ends touch"
        yield wrong, "write the ohms that the meter shows; of none at all, [0 ohm]"
        yield wrong, "write the ohms that the meter shows"
    wye = re.fullmatch(r"(\d+)\s*V?\s*[Yy]\s*/\s*(\d+)\s*V?", text)
    if dimension == "voltage" and wye:
        wrong = f"is a star supply, {wye[1]} V between lines and {wye[2]} V to neutral"
        yield wrong, f"write the one that is asked for, [{wye[1]} V] or [{wye[2]} V]"
        yield wrong, f"write the one that is asked for, {wye[1]} V or {wye[2]} V"
    yield from _one_of_two(text, unit)
    yield from _points(text, unit)
    yield from _marks(text, unit)


def _signs(text: str) -> Iterator[tuple[str, str]]:
    """Yield a number whose sign, or whose side of zero, stands in a word."""
    value = rf"(\d+\.?\d*|\.\d+)\s*({_UNIT})?"
    before = re.fullmatch(
        rf"(?i)(minus|neg\.?|negative|plus|positive|sub[- ]?zero)\s+{value}", text
    )
    behind = re.fullmatch(rf"(?i){value}\s*(below|under|above|over)(?:\s+(zero|0|freezing))?", text)
    if not before and not behind:
        return
    if before:
        word, number, unit, from_where = before[1].casefold(), before[2], before[3], ""
        sign = "" if word in ("plus", "positive") else "-"
    else:
        number, unit, word, from_where = behind.groups()  # type: ignore[union-attr]
        if behind and unit and unit.casefold() in ("below", "under", "above", "over"):
            number, unit = behind[1], None
        sign = "-" if word.casefold() in ("below", "under") else ""
    wrong = f"has its sign in a word ({word})"
    if (from_where or "").casefold() == "freezing":
        if unit and unit.casefold() == "f":
            number = f"{_FREEZES_F + float(sign + number):g}"
            sign, wrong = "", f"counts from freezing, which is {_FREEZES_F} F"
        elif not unit or unit.casefold() != "c":
            yield "counts from freezing", "write the temperature itself with its unit"
            return
    if unit:
        yield wrong, f"write [{sign}{number} {unit}]"
    else:
        yield wrong, f"write [{sign}{number} C] or [{sign}{number} F]"


def _peaks(text: str, unit: str, crest: str) -> Iterator[tuple[str, str]]:
    """Yield a value that is a peak, where a meter's rms is wanted."""
    found = re.fullmatch(
        rf"(?i)({_N})\s*(m|µ|u|k)?([AV])?(?:mps?|olts?)?[\s-]*({_PEAK}|{_TO_PEAK})\.?", text
    )
    if not found:
        return
    number, prefix, letter, word = found.groups()
    said = f"{prefix or ''}{letter.upper()}" if letter else unit
    whole = re.fullmatch(f"(?i){_TO_PEAK}", word) is not None
    rms = f"{float(number.replace('−', '-')) / math.sqrt(2) / (2 if whole else 1):.3g} {said}"
    times = "2.83" if whole else "1.41"
    wrong = f"is a {'peak to peak' if whole else 'peak'}, {times} times the rms of a sine"
    if crest and not whole:
        yield (
            "has a word behind the value",
            f"write [{number} {said}], and as {crest} what it shows",
        )
    yield (
        wrong,
        f"write the rms, of a sine [{rms}]; where a peak itself is asked for, [{number} {said}]",
    )


def _poles(text: str) -> Iterator[tuple[str, str]]:
    """Yield the amps of a breaker with its curve or its poles beside them."""
    number = rf"({_N})\s*(?:A|amps?)?"
    named = "|".join(_POLES)
    poles = re.fullmatch(rf"(?i)([1-4]|{named})[\s-]*(?:pole|p)[\s,-]*{number}", text)
    behind = re.fullmatch(rf"(?i){number}[\s,-]+([1-4]|{named})[\s-]*(?:pole|p)", text)
    if poles or behind:
        many, amps = (poles[1], poles[2]) if poles else (behind[2], behind[1])  # type: ignore[index]
        many = _POLES.get(many.casefold(), many)
        yield f"has the poles ({many}) beside the amps", f"write [{amps} A]"
    curve = re.fullmatch(rf"(?i)(?:type|curve|class)\s*([BCDKZ])[\s,-]*{number}", text)
    after = re.fullmatch(rf"(?i){number}[\s,-]*(?:type|curve|class)\s*([BCDKZ])", text)
    if curve or after:
        letter, amps = (curve[1], curve[2]) if curve else (after[2], after[1])  # type: ignore[index]
        wrong = f"has the curve ({letter.upper()}) beside the amps"
        yield wrong, f"write [{amps} A]; where the curve counts it is an input of its own"
    times = re.fullmatch(rf"([1-4])\s*[x×]\s*({_N})", text)
    if times:
        wrong = f"is {times[1]} of {times[2]} A, or the poles before the amps"
        yield wrong, f"write the amps of one, [{times[2]} A]"


def _one_of_two(text: str, unit: str) -> Iterator[tuple[str, str]]:
    """Yield a value of which two are said: 9 or 10 ohm."""
    found = re.fullmatch(rf"({_N})\s*({_UNIT})?\s+or\s+({_N})\s*({_UNIT})?", text)
    if not found:
        return
    word = found[4] or found[2] or unit
    one, other = (float(n.replace("−", "-")) for n in (found[1], found[3]))
    first = f"[{found[1]} {found[2] or word}] or [{found[3]} {word}]"
    if (found[2] or word) == word:
        middle, off = (one + other) / 2, abs(one - other) / 2
        between = f"[{middle:.6g} {word} ±{off:.6g} {word}]"
        yield "is two values", f"write {between} if it is between them, or the one that it was"
    yield "is two values", f"write the one that it was, {first}"


def _points(text: str, unit: str) -> Iterator[tuple[str, str]]:
    """Yield a number with another mark in place of its point, and one with an error alone."""
    if re.fullmatch(rf"[-−]?\d+·\d+\s*({_UNIT})?", text):
        point = text.replace("·", ".")
        for do in (f"[{point}]", f"[{point} {unit}]"):
            yield "has a raised point in its number", f"write {do}"
    comma = re.fullmatch(r"([-−]?\d+),(\d+)", text)
    if comma:
        wrong, point = "has a comma and no unit", f"[{comma[1]}.{comma[2]} {unit}]"
        if len(comma[2]) == 3 and comma[1].strip("-−0"):
            yield wrong, f"write {point} or [{comma[1]}{comma[2]} {unit}]"
        else:
            yield wrong, f"write a point: {point}"
    if bare := re.fullmatch(rf"(?:±|\+/-|\+-)\s*({_N})", text):
        yield "says ± and no unit", f"write [{bare[1]} {unit}]"
    alone = re.fullmatch(rf"(?:±|\+/-|\+-)\s*({_N}\s*{_UNIT})", text)
    if alone:
        wrong = "says ± and no value before it"
        yield wrong, f"write [{alone[1]}] if that is the value, with its error behind it"


def _marks(text: str, unit: str) -> Iterator[tuple[str, str]]:
    """Yield what is marked on a part or a plate: a share, a differential, two ends; and gaps."""
    if share := re.fullmatch(r"(?i)(?:cos|pf|cos ?phi|cos ?φ)\s*=?\s*(0?\.\d+|1)", text):
        yield "is a share", f"write it in percent, [{100 * float(share[1]):.6g} %]"
    disc = re.fullmatch(r"(?i)[LF]?(\d{2,3})\s*°?([CF])\s*-\s*(\d{1,2})\s*°?[CF]?", text)
    if disc and int(disc[3]) < int(disc[1]):
        wrong = f"is a mark with {disc[3]} {disc[2].upper()} behind it, a differential as a rule"
        yield wrong, f"write [{disc[1]} {disc[2].upper()}]"
    gaps = re.fullmatch(rf"([-−]?\d{{1,3}}(?:\s\d{{3}})+)\s*({_UNIT})?", text)
    if gaps:
        yield "has a gap in its number", f"write [{''.join(gaps[1].split())} {gaps[2] or unit}]"
    ends = re.fullmatch(rf"([-−+]?\d+)\s*(?:/|\.\.+|…)\s*\+?([-−]?\d+)\s*({_UNIT})?", text)
    if ends and text[0] in "-−+":
        word = ends[3] or unit
        low, high = (n.lstrip("+") for n in ends.groups()[:2])
        wrong = "is a range, and this is one value"
        yield wrong, f"write the one that is asked for, [{low} {word}] or [{high} {word}]"
        yield wrong, f"write the upper end, [{high} {word}]"
