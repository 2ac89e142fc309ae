"""The inputs of `duty`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Reading,
    YesNo,
    extra,
    setting,
)

from ..inputs_motor import INVERTER

OnTimes = Annotated[
    list[float],
    Reading("min", above=0, high=1440, typical="18 min", text="how long it ran, each time"),
]
OffTimes = Annotated[
    list[float],
    Reading("min", low=0, high=1440, typical="22 min", text="how long it stood, each time"),
]
RunningPower = Annotated[
    float | None,
    Reading("W", above=0, high=10_000, typical="120 W", text="power while it runs"),
    setting("the energy of a day is worked out with it"),
]
AfterRestock = Annotated[
    bool | None,
    YesNo("it was filled, defrosted or switched on in the last day"),
    extra("it counts where it runs over 80 %, and is asked for there"),
]
Inverter = Annotated[
    bool | None, INVERTER, extra("it counts where it runs over 80 %, and is asked for there")
]
