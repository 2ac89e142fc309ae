"""A recorded current: starts, settled level, cycles, and what the recording cannot show."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    ReadingsStream,
    RecordedColumns,
    Words,
    YesNo,
    asked,
    assumed,
    calculation,
    extra,
    may_be_absent,
    overcurrent,
    setting,
)

from ..inputs import BREAKER
from ..motor.plate import INVERTER, MOTOR_KIND, PLATE_VOLTS, PLUG_VOLTS, wrong_plate
from .judge import Plate
from .refuse import wrong_recording
from .report import Report

_SHOWN = "without a plate a recording is shown, and no start is judged"
_KINDS = {
    "current": Reading("A", low=-5000, high=5000, text="current"),
    "power": Reading("W", low=-100_000, high=100_000, text="power"),
    "voltage": Reading("V", low=-1500, high=1500, text="volts at the plug"),
}

# an invented log of two starts, for the example
_SAMPLE = (
    "t_s,current_A 0,0.02 1,0.02 2,7.8 3,1.42 4,1.31 5,1.27 6,1.26 7,1.25 8,1.26 9,1.25 10,0.02 "
    "11,0.02 12,0.02 13,0.02 14,7.6 15,1.40 16,1.30 17,1.26 18,1.25 19,1.26 20,1.25 21,1.26 "
    "22,0.02 23,0.02"
).replace(" ", "\n")


def _refuse(
    recording: RecordedColumns,
    recorded: str,
    rated_load_current: float | None,
    locked_rotor_current: float | None,
    **_: object,
) -> Iterator[Problem]:
    yield from wrong_recording(recording, recorded)
    yield from wrong_plate(rated_load_current, locked_rotor_current)


@calculation(
    part="motor and start",
    cautions=("live-01", "meter-01", "start-01", "pin-01", "flam-01"),
    not_checked=(
        "that it cools, pumps or turns: current alone does not show it",
        "which load it was: whatever else is on the wire is in the recording",
    ),
    refuse=_refuse,
)
def trace(
    recording: Annotated[
        RecordedColumns,
        ReadingsStream(
            ("current", "power"),
            _KINDS,
            beside=("voltage",),
            text="CSV of time and current (or power), and volts if recorded",
            error_input="current_error",
            comma_input="decimal_comma",
            column_input="column",
            typical="start.csv",
            sample=_SAMPLE,
        ),
    ],
    recorded: Annotated[
        str,
        OneOf(
            ("auto", "instantaneous", "rms", "power"),
            text="what the values are; auto: by the header and the values",
        ),
        setting("found by the header and the values, and said"),
    ] = "auto",
    column: Annotated[
        str | None,
        Words("header of the column to take, if not the first that fits"),
        may_be_absent("the first column that fits"),
    ] = None,
    current_error: Annotated[
        str | None,
        Words("meter error of every value, such as 2% or (2%+5)"),
        may_be_absent("readings taken as exact"),
    ] = None,
    decimal_comma: Annotated[
        bool, YesNo("the numbers of the file have decimal commas"), setting("how the file is read")
    ] = False,
    rated_load_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate"),
        asked("the settled current is judged by it", when="locked_rotor_current"),
        extra(_SHOWN),
    ] = None,
    locked_rotor_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate"),
        may_be_absent("a board drives it: it has no LRA", when="inverter=yes"),
        asked("the start is judged by it", when="rated_load_current"),
        extra(_SHOWN),
    ] = None,
    nameplate_voltage: Annotated[
        float | None,
        PLATE_VOLTS,
        asked("the start goes with the volts", when="locked_rotor_current"),
        extra(_SHOWN),
    ] = None,
    voltage: Annotated[
        float | None,
        PLUG_VOLTS,
        extra("recorded volts go before it; a start without any is asked for it"),
    ] = None,
    breaker: Annotated[
        float | None, BREAKER, extra("the start is judged without it, and its load by breaker")
    ] = None,
    device: Annotated[
        str,
        OneOf(overcurrent.devices, text="standard or class of the breaker", goes_with="breaker"),
        assumed("iec-60898-b", source=PRACTICE),
    ] = "ul-489",
    motor_kind: Annotated[
        str | None,
        MOTOR_KIND,
        extra("over 1.1 times the rated current, or under 3 times LRA, it is asked for"),
    ] = None,
    inverter: Annotated[
        bool | None, INVERTER, extra("where the current ramps or stays low it is asked for")
    ] = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """How did it start, where did it settle, and when was it on?

    Waveform: frequency from crossings with hysteresis; direct part taken off; rms over exactly
    one cycle; 100 ms rms from the start, as a meter's inrush function. Log: one reading a step.
    On and off are parted where the levels differ most; a start is a step from off, or a steady
    waveform that doubles. Settled: the median of a run's last half, or quarter, if steady; time to
    settle: until it stays within 10 % of that. A gap is not bridged. Equal stamps keep their order.

    For one appliance that is recorded by itself; not for the meter of a whole house. Inputs:
    recording in A or W, V; plate in A, V. Yields figures, a line a start, a chart, the command
    lines to go on with, and with plate values the criteria of `inrush` for the worst start. What
    the sampling cannot show is `cannot tell`, with the least that it was. Refuses stamps that go
    backwards, text, equal stamps in a waveform. Source: common practice, table fuses-ul248.
    """
    low, high = (bands or {}).get("recording", (recording, recording))
    plate = Plate(
        rated_load_current,
        locked_rotor_current,
        nameplate_voltage,
        breaker,
        device,
        motor_kind,
        inverter,
        voltage,
    )
    del column, current_error, decimal_comma  # read with the recording
    yield from Report(recording, low, high, recorded).items(plate)
