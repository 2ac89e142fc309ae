"""Wire as people write it.

    18 AWG              18AWG stranded tinned copper      14 AWG solid      2/0 AWG
    1.5 mm2             26x30 AWG (26 strands of 30 AWG)  41x0.254 mm       12 AWG aluminum
    2.05 mm solid

A gauge is a name, not a unit. What the text does not say (stranding, metal) is assumed, and
the assumption travels with the wire so that it can be printed.
"""

from __future__ import annotations

import functools
import math
import re
from typing import NamedTuple

from ..base.errors import BadText
from ..base.rounding import show
from .quantities import LONGEST
from .units import read_unit
from .wire_doubts import (
    bare_diameter,
    few_strands,
    joined_by_a_word,
    no_size,
    refuse_several,
    unknown_word,
)
from .wire_lists import are_strands, gauges_named

CMIL_PER_MM2 = 4.0 / math.pi / 0.0254**2  # a circular mil is a circle of 0.0254 mm diameter
GAUGES = ("4/0", "3/0", "2/0", "1/0", *(str(n) for n in range(1, 41)))  # thick to thin
_NUMBERS = {gauge: place - 3 for place, gauge in enumerate(GAUGES)}

_GAUGE = r"(?P<gauge>\d+/0|\d+(?:\.\d+)?)\s*AWG"
_STRANDS = r"(?P<count>\d+)\s*[x×]\s*"
_DIAMETER = r"(?P<diameter>\d*\.?\d+)\s*(?P<unit>mm|mils?|in)\b"
_AREA = r"(?P<area>\d*\.?\d+)\s*(?P<unit>mm2|mm²|mm\^2|mm sq|mmq|qmm|sq\s?mm|k?cmil|MCM)"
_SIZES = (_STRANDS + _GAUGE, _STRANDS + _DIAMETER, _GAUGE, _AREA, _DIAMETER)
_WORDS = {
    "solid": ("build", "solid"),
    "stranded": ("build", "stranded"),
    "str": ("build", "stranded"),
    "copper": ("metal", "copper"),
    "cu": ("metal", "copper"),
    "aluminium": ("metal", "aluminium"),
    "aluminum": ("metal", "aluminium"),
    "al": ("metal", "aluminium"),
    "copper-clad": ("metal", "copper-clad aluminium"),
    "cca": ("metal", "copper-clad aluminium"),
    "bare": ("coating", "bare"),
    "tinned": ("coating", "tinned"),
    "nickel-plated": ("coating", "nickel-plated"),
    "silver-plated": ("coating", "silver-plated"),
}
_THINNEST_CMIL, _THICKEST_CMIL = 5.0, 600_000.0


class Wire(NamedTuple):
    """One conductor as somebody described it.

    `gauge` is the AWG name if one was typed, `nominal_mm2` the metric size if one was typed;
    a wire given by its strands has neither. `area_cmil` is the copper (or aluminium) area, `size`
    what was read of the text without the words beside it.
    """

    text: str
    area_cmil: float
    gauge: str | None = None
    nominal_mm2: float | None = None
    strands: int | None = None
    strand_cmil: float | None = None
    stranded: bool = True
    metal: str = "copper"
    coating: str = "bare"
    assumed: tuple[str, ...] = ()
    size: str = ""

    @property
    def area_mm2(self) -> float:
        """Area of the metal in mm2."""
        return self.area_cmil / CMIL_PER_MM2

    @property
    def name(self) -> str:
        """Short name of the size, as typed."""
        if self.gauge:
            return f"{self.gauge} AWG"
        return f"{self.nominal_mm2:g} mm2" if self.nominal_mm2 else self.text

    @property
    def understood(self) -> str:
        """What was made of the text, with the area: 14 AWG stranded copper, 2.08 mm2."""
        build = "stranded" if self.stranded else "solid"
        coating = "" if self.coating == "bare" else f"{self.coating} "
        area = "" if self.nominal_mm2 else f", {show(self.area_mm2, 'mm2', digits=3)}"
        return f"{self.size} {build} {coating}{self.metal}{area}"

    def __str__(self) -> str:
        return self.text


def gauge_number(gauge: str) -> int:
    """Return the number that the AWG law counts with: 4/0 is -3, 1/0 is 0, 40 is 40.

    >>> gauge_number("2/0"), gauge_number("18")
    (-1, 18)
    """
    return _NUMBERS[gauge]


def gauge_name(number: int) -> str:
    """Return the AWG name of a number of the law, -3 to 40."""
    return GAUGES[number + 3]


def gauge_cmil(number: float) -> float:
    """Return the area in circular mils of an AWG number, by the ASTM B258 law.

    The law: diameter is 5 mil x 92^((36 - n) / 39).

    >>> round(gauge_cmil(36), 6), round(gauge_cmil(-3))
    (25.0, 211600)
    """
    return float(25.0 * 92.0 ** ((36.0 - number) / 19.5))


@functools.lru_cache(maxsize=4096)
def read_wire(text: str) -> Wire:
    """Read a wire as people write it.

    >>> wire = read_wire("26x30 AWG tinned")
    >>> wire.strands, round(wire.area_cmil), wire.assumed
    (26, 2613, ('copper',))

    Raises BadText, saying what would do, for anything else than the forms in the heading.
    """
    clean = gauges_named(" ".join(text[: LONGEST + 1].split()))
    if not clean or len(text) > LONGEST:
        raise BadText(f"{text[:20]!r} is not a wire", "write 18 AWG, 1.5 mm2 or 26x30 AWG")
    if ";" in clean or "," in clean or "+" in clean:
        refuse_several(text, clean)
    for pattern in _SIZES:
        match = re.search(pattern, clean, re.ASCII | re.IGNORECASE)
        if match:
            rest = clean[: match.start()] + " " + clean[match.end() :]
            return _described(text, _size(match, clean), rest)
    raise no_size(text, clean, _WORDS)


def _size(match: re.Match[str], text: str) -> Wire:
    part = match.groupdict()
    count = int(part["count"]) if part.get("count") else None
    if count == 0:
        raise BadText(f"{text!r} has no strands", "count the strands, as in 26x30 AWG")
    number, mm = None, None
    if part.get("gauge"):
        gauge = read_gauge(part["gauge"])
        number, one = gauge_number(gauge), f"{gauge} AWG"
        strand = gauge_cmil(number)
        if count is None:
            return Wire(text, strand, gauge=gauge, size=one)
    elif part.get("diameter"):
        diameter, unit = float(part["diameter"]), part["unit"].lower()
        mm, one = (diameter if unit == "mm" else None), f"{part['diameter']} {unit}"
        strand = _mils(diameter, unit) ** 2
    else:
        return _area(text, float(part["area"]), read_unit(part["unit"], "area"))
    check_span((count or 1) * strand, text)
    if count is None:
        return Wire(text, strand, strands=1, strand_cmil=strand, size=one)
    if not are_strands(count, number, mm):
        raise few_strands(text, count, one, strand**0.5, count * strand / CMIL_PER_MM2)
    return Wire(text, count * strand, strands=count, strand_cmil=strand, size=f"{count}x{one}")


def _area(text: str, area: float, unit: str) -> Wire:
    cmil = area * {"mm2": CMIL_PER_MM2, "cmil": 1.0, "kcmil": 1000.0}[unit]
    check_span(cmil, f"{area:g} {unit}")
    nominal = area if unit == "mm2" else None
    return Wire(text, cmil, nominal_mm2=nominal, size=f"{area:g} {unit}")


def _mils(diameter: float, unit: str) -> float:
    return diameter * {"mm": 1 / 0.0254, "in": 1000.0}.get(unit, 1.0)


def check_span(cmil: float, text: str) -> None:
    """Raise BadText for an area that no wire here has, in circular mils."""
    if not _THINNEST_CMIL <= cmil <= _THICKEST_CMIL:
        raise BadText(
            f"{text!r} is {cmil / CMIL_PER_MM2:.3g} mm2, and wire here is 0.0025 to 304 mm2",
            "check mm, mil and in",
        )


def read_gauge(typed: str) -> str:
    """Return the AWG name of a gauge as typed, without AWG; raises BadText where there is none."""
    if "." in typed:
        raise BadText(f"{typed} AWG is no gauge: they are whole", f"is it {typed} mm2?")
    name = f"{len(typed)}/0" if set(typed) == {"0"} else typed
    if "/" not in name:
        name = str(int(name))
    if name not in GAUGES:
        thick = name.endswith("/0") and not name.startswith("0")
        would_do = "thicker wire is written in kcmil, such as 250 kcmil" if thick else ""
        wrong = f"{typed} AWG is outside 4/0 to 40 AWG"
        raise BadText(wrong, would_do or "write a gauge such as 18 AWG")
    return name


def _described(text: str, size: Wire, rest: str) -> Wire:
    said = _read_words(text, rest)
    assumed = () if "metal" in said else ("copper",)
    if size.strands == 1 and said.get("build") != "solid":
        raise bare_diameter(text, size.size)
    if size.strands is not None:
        counted = "solid" if size.strands == 1 else "stranded"
        if said.setdefault("build", counted) != counted:
            raise BadText(f"{text!r} counts strands and says otherwise", "drop one of the two")
    elif "build" not in said:
        assumed = ("stranded", *assumed)
    return size._replace(
        text=text.strip(),
        stranded=said.get("build", "stranded") == "stranded",
        metal=said.get("metal", "copper"),
        coating=said.get("coating", "bare"),
        assumed=assumed,
    )


def _read_words(text: str, rest: str) -> dict[str, str]:
    """Sort the words beside the size into build, metal and coating."""
    words = re.sub(r"copper[- ]clad( alumini?um)?", "copper-clad", rest.casefold())
    words = re.sub(r"(nickel|silver)[- ]plated", r"\1-plated", words).replace(",", " ")
    said: dict[str, str] = {}
    for word in words.split():
        if word not in _WORDS:
            if (wrong := joined_by_a_word(text)) is not None:
                raise wrong
            raise unknown_word(text, rest, word, list(_WORDS))
        kind, meaning = _WORDS[word]
        if said.setdefault(kind, meaning) != meaning:
            raise BadText(f"{text!r} is both {said[kind]} and {meaning}", "describe one wire")
    return said
