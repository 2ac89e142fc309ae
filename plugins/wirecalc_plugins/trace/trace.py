"""A recorded current: starts, settled level, cycles, and what the recording cannot show."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Bands,
    Item,
    Problem,
    RecordedColumns,
    calculation,
)

from ..motor.plate import wrong_plate
from .plate_view import TracePlate
from .refusals import wrong_recording
from .report import Report
from .trace_inputs import (
    Breaker,
    Clamp,
    Column,
    CurrentError,
    DecimalComma,
    Device,
    Inverter,
    LockedRotorCurrent,
    MotorKind,
    NameplateVoltage,
    RatedLoadCurrent,
    Recorded,
    Recording,
    Voltage,
)


def _refuse(
    recording: RecordedColumns,
    recorded: str,
    rated_load_current: float | None,
    locked_rotor_current: float | None,
) -> Iterator[Problem]:
    yield from wrong_recording(recording, recorded)
    yield from wrong_plate(rated_load_current, locked_rotor_current)


@calculation(
    analysis=True,
    part="motor and start",
    words=(
        "recording; recorded; recorder; record; data logger; logger; logging; log; log file; csv",
        "current log; power log; trend; scope; oscilloscope; waveform; capture; graph; plot",
        "smart plug; energy monitor; start recording; inrush recording; settle; cycles",
        "on and off; duty cycle; run time; current over time; samples; power meter; export",
        "spreadsheet; data; file; app; profile; load profile; amp log; how often; overnight",
        "capture start; recording meter; over time; readings over time; history; upload",
        "import a file; clamp recording; phases of a cycle",
        "csv from; csv file; record the current; record start; logger file; phone app log",
        "capture file; energy log; analyse a log; analyze a log; USB meter; wifi plug",
        "smart meter; see the start; recorded start; long recording",
    ),
    go_on="compare what it settled at with the plate: inrush",
    cautions=("live-01", "live-02", "meter-01", "start-01", "pin-01", "flam-01", "brk-01"),
    not_checked=(
        "that it cools, pumps or turns: current alone does not show it",
        "which load it was: whatever else is on the wire is in the recording",
    ),
    refuse=_refuse,
)
def trace(
    recording: Recording,
    recorded: Recorded = "auto",
    column: Column = None,
    clamp: Clamp = None,
    current_error: CurrentError = None,
    decimal_comma: DecimalComma = False,
    rated_load_current: RatedLoadCurrent = None,
    locked_rotor_current: LockedRotorCurrent = None,
    nameplate_voltage: NameplateVoltage = None,
    voltage: Voltage = None,
    breaker: Breaker = None,
    device: Device = "ul-489",
    motor_kind: MotorKind = None,
    inverter: Inverter = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """How did it start, where did it settle, and when was it on?

    Waveform: frequency from crossings with hysteresis; direct part taken off; rms over exactly
    one cycle; 100 ms rms from the start, as a meter's inrush function. Log: one reading a step.
    On and off are parted where the levels differ most; a start is a step from off, or a steady
    current that doubles. The surge ends when the current is within 15 % of the median of the ten
    seconds that follow, and does not fall further in a step; that is judged as the time to settle.
    Settled: the median of a run's last half, or quarter, if steady. Drift and steps after the surge
    are told with their times; holes, jitter, equal stamps widen the figures (docs/recordings.md).

    For one appliance that is recorded by itself; not for the meter of a whole house. Inputs:
    recording in A or W, V; plate in A, V. Yields figures, a line a start, a chart, the command
    lines to go on with, and with plate values the criteria of `inrush` for the worst start. What
    the sampling cannot show is `cannot tell`, with the least that it was. Refuses stamps that go
    backwards, text, a waveform with under 20 ticks of its clock. Source: common practice, table
    fuses-ul248.
    """
    low, high = (bands or {}).get("recording", (recording, recording))
    plate = TracePlate(
        rated_load_current,
        locked_rotor_current,
        nameplate_voltage,
        breaker,
        device,
        motor_kind,
        inverter,
        voltage,
    )
    del column, clamp, current_error, decimal_comma  # read with the recording
    yield from Report(recording, low, high, recorded).items(plate)
