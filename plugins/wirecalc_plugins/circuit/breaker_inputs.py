"""The inputs of one load on its circuit, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    Reading,
    Wire,
    asked,
    assumed,
    confirmed,
    extra,
    instead_of,
    may_be_absent,
)

from ..inputs import (
    CORD,
    CORD_CONDUCTORS,
    FEEDS_OTHERS,
    HAS_MOTOR,
    MAXIMUM_BREAKER,
    NAMEPLATE_CURRENT,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    RECEPTACLE,
)
from .cord_load import CORD_TYPE, CORDS
from .not_seen import RECEPTACLE_NOT_SEEN

_LONG = confirmed("nec-100-continuous", "NEC", "article 100 and 210.20(A)", copies=2)
HEATER_RULE = confirmed("nec-422-13", "NEC", "422.13", copies=1)
_SHARED = confirmed("nec-210-23-a", "NEC", "210.23(A)", copies=2)
_MOTOR = confirmed("nec-422-11-e-motor", "NEC", "422.11(E)", copies=2)
_ELSE = "what else hangs on the circuit loads its breaker and wire too"

RunTime = Annotated[
    float | None,
    Reading("h", low=0, high=8760, typical="1 h", text="longest time that the load runs"),
    assumed("1 h", source=_LONG, why="3 h or more, which counts 125 %"),
]
StorageWaterHeater = Annotated[
    bool | None,
    "it is a water heater with a tank",
    assumed("yes", source=HEATER_RULE, why="none", when="fastened_in_place=yes and has_motor!=yes"),
    may_be_absent("no water heater with a tank"),
]
Outlet = Annotated[
    float | None,
    RECEPTACLE,
    may_be_absent("no receptacle: it is wired in", when="fastened_in_place=yes"),
    extra(RECEPTACLE_NOT_SEEN),
]
OnlyReceptacle = Annotated[
    bool | None,
    "it is the only outlet of its circuit",
    asked(_ELSE, when="not feeds_others and not other_current"),
    instead_of("feeds_others", "other_current"),
]
OtherCurrent = Annotated[
    float | None,
    OTHER_CURRENT.but(goes_with=""),
    asked(_ELSE, when="only_receptacle=no"),
    asked(_ELSE, when="feeds_others=yes"),
    may_be_absent("nothing else on the circuit"),
]
FastenedInPlace = Annotated[
    bool | None,
    "it is built in or wired in, not plugged in",
    may_be_absent("plugged in", when="receptacle"),
    may_be_absent("plugged in", when="cord"),
    assumed("yes", "no", source=_SHARED, why="either way"),
]
FeedsOthers = Annotated[
    bool | None,
    FEEDS_OTHERS,
    instead_of("only_receptacle"),
]
MaximumBreaker = Annotated[
    float | None, MAXIMUM_BREAKER, may_be_absent("none is marked on the plate")
]
NameplateCurrent = Annotated[
    float | None,
    NAMEPLATE_CURRENT,
    asked("the rating of a water heater counts", when="storage_water_heater=yes"),
    extra("what was measured is judged; the plate's amps count where they are more"),
]
HasMotor = Annotated[
    bool | None,
    HAS_MOTOR,
    assumed("yes", source=_MOTOR, why="either way", when="nameplate_current"),
]
RangeRating = Annotated[
    float | None,
    Nameplate("kW", low=1, high=27, typical="12 kW", text="a household range's power"),
    may_be_absent("no household range"),
]
RangeVoltage = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE,
    asked("the demand of a range is given in kW", when="range_rating"),
]
Cord = Annotated[Wire | None, CORD, may_be_absent("no cord, or its maker's own")]
CordConductors = Annotated[
    int | None,
    CORD_CONDUCTORS,
    assumed("2", source=CORDS, why="3, which carries less", when="cord"),
]
CordType = Annotated[
    str,
    CORD_TYPE,
    assumed("heater", source=CORDS, when="cord"),
]
