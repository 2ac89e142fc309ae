"""How long to strip for a kind of barrel, and how much bare wire may show."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    Source,
    Wire,
    answer,
    at_most,
    cannot_tell,
    figure,
    gauge_cmil,
    put,
    show,
    tables,
)
from wirecalc.trade.conductors import STRANDING_SLACK

MM_PER_IN = 25.4
_GUIDE_MM2 = (10.0, 50.0, 120.0)  # where the rows of the guide begin; thinner wire has the first
_BRUSH_MM = 0.8  # wire past the barrel: flush to 1/32 in, common practice, no source
_COLLAR_MM = 2.0  # rule FE1: the sleeve of a ferrule and 2 mm


class Length(NamedTuple):
    """Least and most strip length in mm, and the least that fills the barrel at all.

    `most` has a source of its own where the brush of wire past the barrel is practice.
    """

    least: float
    most: float
    fills: float
    source: Source
    most_source: Source

    def least_working(self) -> str:
        """Put in the barrel, and the least beside it."""
        return f"{put(self.fills, 'mm')} + {put(self.least - self.fills, 'mm')}"

    def nominal_working(self) -> str:
        """Put in the middle between least and most."""
        return f"({put(self.least, 'mm')} + {put(self.most, 'mm')}) / 2"

    def most_working(self) -> str:
        """Put in the barrel, and the most beside it."""
        return f"{put(self.fills, 'mm')} + {put(self.most - self.fills, 'mm')}"


def length_of(style: str, wires: Sequence[Wire], barrel: float, window: float) -> Length:
    """Return the strip length for a style, wires, and a barrel and window in mm."""
    if style == "closed":
        gap = gap_of(wires)
        least, most = gap.number("min_mm"), gap.number("max_mm") + _BRUSH_MM
        return Length(barrel + least, barrel + most, barrel, gap.source, PRACTICE)
    if style == "closed-insulated":
        return Length(barrel, barrel + _BRUSH_MM, barrel, rule("PI1").source, PRACTICE)
    if style == "open":
        brush = rule("OB1")
        least, most = brush.number("min_mm"), brush.number("max_mm") + window
        return Length(barrel + least, barrel + most, barrel, brush.source, brush.source)
    if style == "stop":
        gap = gap_of(wires)
        most = barrel + gap.number("max_mm")
        return Length(barrel, most, barrel, rule("PI3").source, gap.source)
    source = rule("FE1").source
    return Length(barrel, barrel + _COLLAR_MM, barrel, source, source)


def gap_of(wires: Sequence[Wire]) -> tables.Row:
    """Return the rule for the gap behind the barrel; the thinnest wire has the narrower one."""
    thinnest = min(w.area_cmil for w in wires)
    from_18_awg = thinnest >= gauge_cmil(18) * (1 - STRANDING_SLACK)
    return rule("NASA2" if from_18_awg else "NASA1")


def rule(rule_id: str) -> tables.Row:
    """Return the row of a rule."""
    return tables.load("strip-rules").row(rule_id=rule_id)


def bare_wire(
    wires: Sequence[Wire], style: str, window: float | None
) -> tuple[float, Source] | None:
    """Return the most bare wire in mm before and behind the barrel; None where it is not known.

    By the guide for closed barrels, of the thinnest wire; the window stands for what is behind an
    open one. At a stop all of it lies behind: what an airframe's lug may leave there.
    """
    if style == "stop":
        thinnest = min(w.area_cmil for w in wires)
        to_10_awg = thinnest < gauge_cmil(8) * (1 - STRANDING_SLACK)
        lug = rule("AF2" if to_10_awg else "AF3")
        return lug.number("max_mm"), lug.source
    row = 1 + sum(min(w.area_mm2 for w in wires) >= start for start in _GUIDE_MM2)
    past, behind = rule(f"JEM{row}a"), rule(f"JEM{row}b").number("max_mm")
    if style == "open":
        if window is None:
            return None
        behind = window
    return past.number("max_mm") + behind, past.source


def twist_on(wires: Sequence[Wire], stripped: float | None) -> Iterator[Item]:
    """Say about how long; the connector's own instruction governs, so nothing is judged."""
    row = rule("TW1" if len(wires) <= 2 else "TW2")
    least, most = row.number("min_mm"), row.number("max_mm")
    yield strip_to("about ", least, most, ["the connector's own instruction governs"])
    for name, value in (("least strip length, about", least), ("most strip length, about", most)):
        yield figure(name, value, "mm", source=row.source, also=[(value / MM_PER_IN, "in")])
    if stripped is not None:
        yield _longest_twist_on(stripped)
        yield cannot_tell(
            "strip length",
            "the instruction of the twist-on connector governs, and lengths differ by model",
            measure="read the length on its package, or its strip gauge",
            source=row.source,
        )


def _longest_twist_on(stripped: float) -> Item:
    row = rule("TW2")
    return at_most(
        "bare wire outside the connector",
        stripped,
        row.number("max_mm"),
        "mm",
        source=row.source,
        says="no such length was seen for any twist-on connector",
        action="cut back and strip by the instruction of the connector",
    )


def strip_to(about: str, least: float, most: float, because: Sequence[str] = ()) -> Item:
    """Say the span in words, the ends rounded inward."""
    spans = []
    for per, unit in ((1.0, "mm"), (MM_PER_IN, "in")):
        ends = show(least / per, toward="up", digits=3), show(most / per, toward="down", digits=3)
        spans.append(f"{ends[0] if least == most else ' to '.join(ends)} {unit}")
    text = f"{about}{spans[0]} ({spans[1]})"
    return answer("strip", text, because=because, in_numbers=True)
