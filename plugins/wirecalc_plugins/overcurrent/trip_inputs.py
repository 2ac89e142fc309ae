"""The inputs of `trip`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Count,
    FileColumns,
    Nameplate,
    OneOf,
    Reading,
    ReadingsFile,
    Words,
    asked,
    assumed,
    extra,
    instead_of,
    may_be_absent,
    setting,
)

from ..inputs import BREAKER, OTHER_CURRENT, OVERCURRENT, OVERCURRENT_TIME
from ..inputs_motor import DEVICE, LOCKED_ROTOR_CURRENT, SETTLE_TIME
from .course import SAMPLES

_TIME = "s"

_LONGEST = 86_400.0  # s; a day stands for without end, every limit is shorter

_START = "not overcurrent"

WAVEFORMS = ("rms", "instantaneous")

Device = Annotated[str, DEVICE]
Breaker = Annotated[
    float,
    BREAKER,
]
Overcurrent = Annotated[
    float | None,
    OVERCURRENT.but(typical="20 A"),
    instead_of("locked_rotor_current", "current_log"),
]
OvercurrentTime = Annotated[
    float | None,
    OVERCURRENT_TIME.but(typical="60 s", goes_with="overcurrent"),
    extra("it is taken to flow for good, and what trips by the time asks for it"),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT,
    instead_of("overcurrent", "current_log"),
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
        text="current once it has settled",
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
        "one that may trip may do so in any air, and up to 0.7 of the rating is held in any up to "
        "60 C; else, where it would hold or trip, it is asked for"
    ),
]
CurrentLog = Annotated[
    FileColumns | None,
    ReadingsFile(
        SAMPLES,
        text="CSV of time and current; a value holds until the next time stamp",
        error_input="recorder_error",
        typical="start.csv",
    ),
    instead_of("overcurrent", "locked_rotor_current"),
]
RecorderError = Annotated[
    str | None,
    Words("error of the recorder in percent", goes_with="current_log", typical="2%"),
    extra("the values are taken as exact"),
]
Waveform = Annotated[
    str,
    OneOf(WAVEFORMS, text="what the recorder wrote down", goes_with="current_log"),
    extra("a value below zero shows that it is not rms, and is refused"),
]
SupplyFrequency = Annotated[
    float,
    Nameplate(
        "Hz",
        low=16,
        high=400,
        typical="60 Hz",
        text="frequency of the supply",
        goes_with="current_log",
    ),
    assumed("50 Hz", source=PRACTICE, when="waveform=instantaneous"),
    setting("it counts for instantaneous values only"),
]
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
