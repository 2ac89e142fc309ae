"""The inputs of `supply`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    Reading,
    asked,
    extra,
    may_be_absent,
)

from ..inputs import LOAD_ON_A_RUN, NAMEPLATE_VOLTAGE


def _reading(text: str, typical: str) -> Reading:
    return Reading("V", low=0, high=700, typical=typical, text=text)


NameplateVoltage = Annotated[float, NAMEPLATE_VOLTAGE]
VoltageRunning = Annotated[
    float | None, _reading("volts at the plug while the load runs", "117.2 V"), asked()
]
VoltageAtRest = Annotated[
    float | None,
    _reading("volts at the plug with nothing running", "119.4 V"),
    extra("the volts that the load has are judged; what is lost on the way stays unseen"),
]
VoltageAtStart = Annotated[
    float | None,
    _reading("lowest volts at the plug during a start", "109 V"),
    extra("the volts of a load that runs are judged; dip asks for those of a start"),
]
NameplateVoltageLow = Annotated[
    float | None,
    Nameplate(
        "V",
        low=12,
        high=600,
        typical="208 V",
        text="lower volts of a 208/240 V plate",
        goes_with="nameplate_voltage",
    ),
    may_be_absent("the plate has one voltage"),
]
NominalVoltage = Annotated[
    float | None,
    Nameplate("V", low=100, high=300, typical="120 V", text="the service: 120, 208, 230 or 240 V"),
    extra("the service is taken from the plate, and its range is advice; the plate binds"),
]
Current = Annotated[
    float | None,
    LOAD_ON_A_RUN,
    extra("a loss of over 1 % of the volts at rest asks for it"),
]
