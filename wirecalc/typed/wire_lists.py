"""Several wires in one text, where a list of wires is asked for.

    18 AWG; 16 AWG      18 AWG + 16 AWG      18,18,16 AWG      2x18 AWG      2x1.5 mm2, 18 AWG

A comma or a plus parts whole gauges with one AWG behind the last of them, or wires that each
carry a unit; so `2,5 mm2` stays one text, and `18 AWG, solid, tinned` one wire.
"""

from __future__ import annotations

import functools
import re

# one strand and six around it: common practice, no source; the table strandings begins with it
LEAST_STRANDS = 7
# AWG; ordinary terminals and connectors begin with it, and strands are thinner: so a number before
# a gauge counts wires down to here, and strands below (common practice, no source)
THINNEST_WIRE = 22
# mm; from here on a diameter may be an area in mm2: IEC 60228:2004, table 1, begins with 0.5 mm2,
# and 7x1.5 mm stands on the jacket of a cable of seven wires
_THINNEST_METRIC = 0.5
_MOST = 20  # wires that a number before a size stands for; no connector takes more

_GAUGE = r"(?:[1-4]/0|0{1,4}|[0-9]{1,2})"
_WHOLE = rf"\s*{_GAUGE}\s*"
_LAST = rf"(?is)\s*{_GAUGE}\s*(AWG\b.*)"
_SIZED = r"(?i)[0-9]\s*(?:AWG|mm|qmm|sq\s?mm|k?cmil|MCM|mils?\b|in\b)"
_MANY = r"(?is)\s*([0-9]{1,3})\s*[x×]\s*(.+)"
_STRAND = r"(?i)(?P<awg>[1-4]/0|[0-9]{1,2})\s*AWG|(?P<mm>[0-9]*\.?[0-9]+)\s*mm(?![²2^])"
_AREA = r"(?i)[0-9.]+\s*(?:mm[²2^]|qmm|sq|k?cmil|MCM)"


_NUMBER_SIGN = rf"(?i)(?:#|\bno\.?\s)\s*(?={_GAUGE}\b(?!\s*[-/x×])|{_GAUGE}\s*-\s*#)"
_WORD_AFTER = rf"(?i)(?<![\d.])({_GAUGE})[\s-]*(?:ga|gage|gauge|guage)\b\.?(?!\s*AWG)"
_WORD_BEFORE = rf"(?i)\bAWG\s*#?\s*({_GAUGE})(?![\d./])(?!\s*AWG)"


def gauges_named(text: str) -> str:
    """Return a text with the gauges of its wires as they are written here.

    >>> gauges_named("#14 AWG"), gauges_named("12 ga solid"), gauges_named("AWG 18")
    ('14 AWG', '12 AWG solid', '18 AWG')
    """
    if re.fullmatch(rf"#\s*({_GAUGE})(\s+[a-zA-Z -]+)?", text) and "AWG" not in text.upper():
        text = re.sub(rf"#\s*({_GAUGE})", r"\1 AWG", text)
    text = re.sub(_NUMBER_SIGN, "", text)
    text = re.sub(_WORD_BEFORE, r"\1 AWG", re.sub(_WORD_AFTER, r"\1 AWG", text))
    return re.sub(r"(?i)\bAWG\.$", "AWG", text)


@functools.lru_cache(maxsize=4096)
def wires_in(text: str) -> tuple[str, ...]:
    """Return the texts of the wires that a text names, each as it would be written alone.

    >>> wires_in("18,18,16 AWG"), wires_in("2x18 AWG; 26x30 AWG")
    (('18 AWG', '18 AWG', '16 AWG'), ('18 AWG', '18 AWG', '26x30 AWG'))

    Whether each is a wire is not looked at.
    """
    parts = tuple(gauges_named(part.strip()) for part in text.split(";"))
    for sign in "+,":
        parts = tuple(one for part in parts for one in _parted(part, sign))
    return tuple(one.strip() for part in parts for one in _counted(part))


def are_strands(count: int, gauge: int | None = None, millimetres: float | None = None) -> bool:
    """Whether so many of a size are the strands of one wire, and not so many wires.

    `gauge` is the AWG number of each, `millimetres` its diameter, where that is what was typed.
    """
    thick = (gauge is not None and gauge <= THINNEST_WIRE) or (millimetres or 0) >= _THINNEST_METRIC
    return count >= LEAST_STRANDS and not thick


def _parted(text: str, sign: str) -> list[str]:
    if sign not in text:
        return [text]
    *others, last = parts = text.split(sign)
    if all(re.search(_SIZED, part) for part in parts):
        return parts
    named = re.fullmatch(_LAST, last)
    if named and all(re.fullmatch(_WHOLE, one) for one in others):
        return [*(f"{one.strip()} {named[1]}" for one in others), last]
    return [text]


def _counted(text: str) -> list[str]:
    """Write a wire as often as the number before it says; strands of one wire stay as they are."""
    many = re.fullmatch(_MANY, text)
    if many is None:
        return [text]
    count, one = int(many[1]), many[2]
    strand = re.match(_STRAND, one)
    awg, mm = strand.group("awg", "mm") if strand else (None, None)
    gauge = None if awg is None else 0 if "/" in awg else int(awg)
    strands = are_strands(count, gauge, None if mm is None else float(mm))
    if not 0 < count <= _MOST or (strands and not re.match(_AREA, one)):
        return [text]
    return [one] * count
