"""The maker's ohms of windings, as inputs: one value, or the ends of a printed range."""

from __future__ import annotations

from typing import Annotated

from wirecalc import Nameplate, extra, may_be_absent

from ..maker_range import upper_end

_TURNS = (
    "shorted turns show by it alone, and not checked says so; the pairs judge each other without"
)
_ONE_VALUE = may_be_absent("its maker prints one value, no range")


def _by_maker(typical: str, text: str) -> Nameplate:
    return Nameplate("ohm", above=0, high=1000, typical=typical, text=f"{text} by its maker")


MakerRun = Annotated[float | None, _by_maker("4.6 ohm", "run winding"), extra(_TURNS)]
MakerStart = Annotated[float | None, _by_maker("12 ohm", "start winding"), extra(_TURNS)]
MakerEach = Annotated[
    float | None,
    _by_maker("6.2 ohm", "each pair of three like windings (inverter, three-phase)"),
    extra(_TURNS),
]
MakerRunHigh = Annotated[float | None, upper_end("maker_run", "5.1 ohm"), _ONE_VALUE]
MakerStartHigh = Annotated[float | None, upper_end("maker_start", "13.5 ohm"), _ONE_VALUE]
MakerEachHigh = Annotated[float | None, upper_end("maker_each", "6.8 ohm"), _ONE_VALUE]
