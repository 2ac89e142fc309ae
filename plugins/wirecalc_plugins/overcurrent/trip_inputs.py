"""The inputs of `trip`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Count,
    FileColumns,
    Reading,
    ReadingsFile,
    RecordedColumns,
    asked,
    extra,
    instead_of,
    may_be_absent,
    setting,
)

from ..inputs import BREAKER, OTHER_CURRENT, OVERCURRENT, OVERCURRENT_TIME
from ..inputs_motor import DEVICE, LOCKED_ROTOR_CURRENT, SETTLE_TIME
from ..inputs_recording import (
    BY_ITSELF,
    CLAMP,
    COLUMN,
    CURRENT_ERROR,
    DECIMAL_COMMA,
    EXACT,
    FIRST_COLUMN,
    HOW_READ,
    IN_AMPERES,
    RECORDED,
    RECORDING,
)

EASY, HOT = 0.7, 60.0  # share of the rating that is held in air up to so many C; practice
_TIME = "s"

_LONGEST = 86_400.0  # s; a day stands for without end, every limit is shorter

_START, _FILE = "not overcurrent", "recording"

Device = Annotated[str, DEVICE]
Breaker = Annotated[
    float,
    BREAKER,
]
Overcurrent = Annotated[
    float | None,
    OVERCURRENT.but(typical="20 A"),
    instead_of("locked_rotor_current", "recording"),
]
OvercurrentTime = Annotated[
    float | None,
    OVERCURRENT_TIME.but(typical="60 s", goes_with="overcurrent"),
    extra("it is taken to flow for good, and what trips by the time asks for it"),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT,
    instead_of("overcurrent", "recording"),
]
SettleTime = Annotated[
    float | None,
    SETTLE_TIME.but(goes_with="locked_rotor_current"),
    extra("the start is taken to last for good, and what trips by the time asks for it"),
]
Settled = Annotated[
    float | None,
    Reading(
        "A",
        low=0,
        high=400,
        typical="1.2 A",
        text="current once it has settled; if it never does, what it stays at",
        goes_with="locked_rotor_current",
    ),
    asked("a device that holds the start may trip on what is drawn after it", when=_START),
    extra("a current was given, and no start is judged"),
]
OnTime = Annotated[
    float | None,
    Reading(
        _TIME,
        low=0,
        high=_LONGEST,
        typical="600 s",
        text="how long it runs after a start",
        goes_with="settled",
    ),
    extra("it is taken to run on for good"),
]
OffTime = Annotated[
    float | None,
    Reading(
        _TIME,
        low=0,
        high=_LONGEST,
        typical="120 s",
        text="pause before the next start",
        goes_with="starts",
    ),
    extra("the starts are taken to follow each other without a pause"),
]
Starts = Annotated[
    int | None,
    Count("starts one after the other", high=1000),
    may_be_absent("one start"),
]
OtherCurrent = Annotated[
    float | None,
    OTHER_CURRENT.but(goes_with=""),
    may_be_absent("nothing else runs on this device"),
]
DeviceAmbient = Annotated[
    float | None,
    Reading("C", low=-40, high=90, typical="25 C", text="air around the breaker or fuse"),
    extra(
        f"one that may trip may do so in any air, and up to {EASY:g} of the rating is held in any "
        f"up to {HOT:g} C; else, where it would hold or trip, it is asked for"
    ),
]
Recording = Annotated[
    RecordedColumns | None, RECORDING, instead_of("overcurrent", "locked_rotor_current")
]
Recorded = Annotated[str, RECORDED.but(goes_with=_FILE), setting(BY_ITSELF)]
Column = Annotated[str | None, COLUMN.but(goes_with=_FILE), may_be_absent(FIRST_COLUMN)]
Clamp = Annotated[str | None, CLAMP.but(goes_with=_FILE), may_be_absent(IN_AMPERES)]
CurrentError = Annotated[str | None, CURRENT_ERROR.but(goes_with=_FILE), may_be_absent(EXACT)]
DecimalComma = Annotated[bool, DECIMAL_COMMA.but(goes_with=_FILE), setting(HOW_READ)]
Curve = Annotated[
    FileColumns | None,
    ReadingsFile(
        {
            "multiple": Reading("%", low=100, high=5000, text="percent of the rating"),
            "hold_time": Reading(_TIME, above=0, high=_LONGEST, text="least trip time"),
            "trip_time": Reading(_TIME, above=0, high=_LONGEST, text="most trip time"),
        },
        text="CSV of the maker's curve: percent of the rating, least and most trip time",
        typical="curve.csv",
    ),
    extra("the standard alone is judged; its maker's curve is at least as tight"),
]
