"""Ranges of wire size as they stand on a bag of terminals.

16-14 AWG           2050-5180 cmil                    1.5-2.5 mm2
"""

from __future__ import annotations

import functools
import re
from typing import NamedTuple

from ..base.errors import BadText
from .quantities import LONGEST, read_number
from .units import read_unit
from .wire_lists import gauges_named
from .wires import CMIL_PER_MM2, GAUGES, check_span, gauge_cmil, gauge_number, read_gauge

_COLOURS = frozenset(("red", "blue", "yellow", "pink", "white", "black", "green", "clear", "gray"))


class SizeRange(NamedTuple):
    """A range of wire size: by gauge names, or by area as printed on the bag.

    `thinnest` and `thickest` are gauge names, and None for a range typed as areas.
    """

    text: str
    low_cmil: float
    high_cmil: float
    thinnest: str | None = None
    thickest: str | None = None
    unit: str = "AWG"

    @property
    def by_gauge(self) -> bool:
        """Whether the range names gauges."""
        return self.thinnest is not None

    def __str__(self) -> str:
        return self.text


@functools.lru_cache(maxsize=1024)
def read_size_range(text: str) -> SizeRange:
    """Read a range of wire size, thinnest wire first.

    >>> read_size_range("16-14 AWG").thickest
    '14'
    >>> read_size_range("2050-5180 cmil").high_cmil
    5180.0

    Raises BadText for ends the wrong way round, mixed systems and anything unreadable.
    """
    if len(text) > LONGEST:
        raise BadText(f"{text[:20]!r}... is longer than any range", "write 16-14 AWG")
    clean = re.sub(r"\s*(?:\bto\b|-|–)\s*", "-", text.strip())
    clean = re.sub(r"^([0-9./]+) ?([^\d\s.-]\S*)-([0-9./]+) ?\2$", r"\1-\3 \2", clean)
    clean = gauges_named(re.sub(r"#\s*", "", clean))
    match = re.fullmatch(
        r"(?P<low>[0-9./]+)(?:-(?P<high>[0-9./]+))? ?(?P<unit>[^-\d.][^-]*)", clean
    )
    if match is None:
        raise (
            _meant(text, clean)
            or _one_or_none(text, clean)
            or BadText(
                f"{text[:30]!r} is not a range of wire size",
                "write it in one unit, as 16-14 AWG, 2050-5180 cmil or 1.5-2.5 mm2",
            )
        )
    low, high = match["low"], match["high"] or match["low"]
    if match["unit"].upper() != "AWG" and (wrong := _odd_unit(text, clean)):
        raise wrong
    if "/" in low and (wrong := _meant(text, clean)):
        raise wrong
    if match["unit"].upper() == "AWG":
        return _gauge_range(text, low, high)
    return _area_range(text, low, high, read_unit(match["unit"], "area"))


def _meant(text: str, clean: str) -> BadText | None:
    """Return the refusal of two sizes without a unit, with a slash or a word, and what would do."""
    ends = re.fullmatch(r"(?P<low>[0-9.]+)[-/](?P<high>[0-9.]+)(?P<rest>\D*)", clean)
    if ends is None:
        return None
    low, high = ends["low"], ends["high"]
    word = ends["rest"].strip().removesuffix("AWG")
    wrong = f"{word!r} in {text!r} says no size" if word else f"{text!r} has no unit of size"
    if "." in low + high:
        return BadText(wrong, f"write {low}-{high} mm2")
    if low not in GAUGES or high not in GAUGES:
        return None
    thin, thick = sorted((low, high), key=gauge_number, reverse=True)
    if "/" in clean:
        wrong = f"{text!r} is no range"
    return BadText(wrong, f"write {thin}-{thick} AWG")


def _one_or_none(text: str, clean: str) -> BadText | None:
    """Return the refusal of one size without a unit, or of colours; None for another text."""
    if clean in GAUGES:
        return BadText(f"{text!r} has no unit of size", f"write {clean} AWG or {clean} mm2")
    if re.fullmatch(r"[0-9]{3,}-[0-9]{3,}", clean):
        return BadText(f"{text!r} has no unit of size", f"write {clean} cmil")
    if found := re.fullmatch(r"(?i)(?:max\.?|maximum|up-|min\.?) ?([0-9]{1,2}) AWG", clean):
        would_do = f"write all of it, as printed; where only one size is, {found[1]} AWG"
        return BadText(f"{text!r} is one end of a range", would_do)
    if not set(re.findall("[a-z]+", clean.casefold())) & _COLOURS:
        return None
    ends = re.fullmatch(r"[a-z ]+([0-9]{1,2}-[0-9]{1,2})(?: AWG)?", clean, re.IGNORECASE)
    printed = f"{ends[1]} AWG" if ends else "the range that is printed on it, as in 16-14 AWG"
    wrong = f"{text!r} names a colour, and sellers do not agree on what it stands for"
    return BadText(wrong, f"write {printed}")


def _odd_unit(text: str, clean: str) -> BadText | None:
    """Return the refusal of a range behind which stands no unit of area; None where one does."""
    unit = re.sub(r"^[0-9./-]+ ?", "", clean)
    try:
        read_unit(unit, "area")
    except BadText:
        return _meant(text, clean)
    return None


def _gauge_range(text: str, low: str, high: str) -> SizeRange:
    thin, thick = read_gauge(low), read_gauge(high)
    if gauge_number(thin) < gauge_number(thick):
        raise BadText(
            f"{text!r} is the wrong way round: a larger AWG number is a thinner wire",
            f"write {thick}-{thin} AWG",
        )
    low_cmil, high_cmil = gauge_cmil(gauge_number(thin)), gauge_cmil(gauge_number(thick))
    return SizeRange(text.strip(), low_cmil, high_cmil, thin, thick)


def _area_range(text: str, low: str, high: str, unit: str) -> SizeRange:
    factor = {"mm2": CMIL_PER_MM2, "cmil": 1.0, "kcmil": 1000.0}[unit]
    if "/" in low + high:
        raise BadText(f"{text!r}: an area has no fraction", "write it as decimals")
    ends = [read_number(end)[0].value * factor for end in (low, high)]
    if ends[0] > ends[1]:
        meant = f"did you mean {low}-{high} AWG? else " if _are_gauges(low, high) else ""
        raise BadText(f"{text!r} is the wrong way round", f"{meant}write {high}-{low} {unit}")
    for end in ends:
        check_span(end, text)
    return SizeRange(text.strip(), ends[0], ends[1], unit=unit)


def _are_gauges(low: str, high: str) -> bool:
    return low in GAUGES and high in GAUGES and gauge_number(low) > gauge_number(high)
