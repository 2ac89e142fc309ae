"""The inputs of `upstream`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Reading,
    Wire,
    asked,
    extra,
    may_be_absent,
)

from ..inputs import (
    ALIVE,
    BUILDING_WIRE,
    CONDUCTOR_TEMPERATURE,
    CURRENT,
    EXTENSION_CORD,
    EXTENSION_LENGTH,
    RUN_LENGTH,
    VOLTAGE_AT_REST,
    VOLTAGE_RUNNING,
)

LEAST_A, LEAST_V = 0.5, 20.0  # less shows no bad joint on a voltmeter, or is no supply

LOADS = ("motor", "heater", "electronic")

_AHEAD = "0.1 ohm ahead of the panel is allowed for, 0.4 of a 230 V supply"

_ONE_LEG = "one leg was read"


def _volts(text: str, typical: str, goes_with: str = "") -> Reading:
    return Reading("V", low=LEAST_V, high=700, typical=typical, text=text, goes_with=goes_with)


VoltageAtRest = Annotated[float, VOLTAGE_AT_REST.but(typical="119.8 V", not_zero=ALIVE)]
VoltageRunning = Annotated[float, VOLTAGE_RUNNING.but(typical="116.6 V", not_zero=ALIVE)]
Current = Annotated[
    float,
    CURRENT.but(not_zero="without current a bad joint takes no volts"),
]
BuildingWire = Annotated[
    Wire | None,
    BUILDING_WIRE,
    extra("without it all that is lost counts as a bad joint, or it is asked for"),
]
RunLength = Annotated[float | None, RUN_LENGTH.but(typical="40 ft"), asked()]
ExtensionCord = Annotated[Wire | None, EXTENSION_CORD, may_be_absent("no extension cord")]
ExtensionLength = Annotated[float | None, EXTENSION_LENGTH, asked()]
ConductorTemperature = Annotated[
    float | None, CONDUCTOR_TEMPERATURE, extra("a wire at 20 and at 75 C is tried")
]
LoadKind = Annotated[
    str | None,
    OneOf(LOADS, text="what draws the current; heater: nothing but resistance"),
    asked(when="not power_factor"),
    extra("the power factor says more"),
]
PowerFactor = Annotated[
    float | None,
    Nameplate("%", low=10, high=100, typical="80 %", text="power factor of the load, lagging"),
    asked(when="load_kind=motor|electronic"),
    extra("a heater has 100 %"),
]
PanelAtRest = Annotated[
    float | None,
    _volts("another receptacle of this panel and leg, load off", "120.1 V", "panel_running"),
    extra(_AHEAD),
]
PanelRunning = Annotated[
    float | None,
    _volts("another receptacle of this panel and leg, load on", "119.6 V", "panel_at_rest"),
    extra(_AHEAD),
]
SecondLegAtRest = Annotated[
    float | None,
    _volts("second leg of 120/240 V to neutral, load off", "119.9 V", "second_leg_running"),
    may_be_absent(_ONE_LEG),
]
SecondLegRunning = Annotated[
    float | None,
    _volts("second leg of 120/240 V to neutral, load on", "118.2 V", "second_leg_at_rest"),
    may_be_absent(_ONE_LEG),
]
SecondLegCurrent = Annotated[
    float | None,
    Reading(
        "A",
        low=LEAST_A,
        high=200,
        typical="8.7 A",
        text="current of the second leg",
        goes_with="second_leg_running",
    ),
    asked("each leg has its own; a 240 V load has the same in both"),
]
