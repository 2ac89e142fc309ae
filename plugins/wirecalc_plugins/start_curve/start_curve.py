"""The start of a single-phase motor as a curve: what the meters show, healthy and with faults."""

from __future__ import annotations

import importlib.util
from collections.abc import Iterator
from typing import Any

from wirecalc import (
    Bands,
    Item,
    Problem,
    calculation,
    cannot_tell,
)

from .fit_inputs import Clamp, Column, CurrentError, DecimalComma, Fit
from .start_curve_inputs import (
    OWN,
    ClosingAngle,
    Cord,
    CordLength,
    Duration,
    Frequency,
    Horsepower,
    Inertia,
    LoadCurve,
    LoadTorque,
    LockedRotorCurrent,
    MainWinding,
    NameplateVoltage,
    Poles,
    PtcResistance,
    RatedLoadCurrent,
    RatedSpeed,
    RunCapacitor,
    SourceResistance,
    Spread,
    StartCapacitor,
    StartMethod,
    StartWinding,
    TextbookMotor,
    Variants,
    VoltageAtRest,
)


def _refuse(**given: Any) -> Iterator[Problem]:
    from .refusals import refuse

    yield from refuse(given)


@calculation(
    analysis=True,
    part="motor and start",
    words=(
        "simulate; simulation; simulator; model; model a motor; motor start; oscilloscope; scope",
        "waveform; torque; speed; slip; split phase; capacitor start; PSC",
        "permanent split capacitor; centrifugal switch; training; teaching; lesson; demonstrate",
        "example start; expected start; what should a start look like; graph; plot; draw; curve",
        "textbook; weak capacitor; start winding; rpm; acceleration; typical start; teach",
        "students; demo; pattern; healthy start; fault demo; motor model; what if",
        "starting torque; run-up; locked rotor curve",
        "for teaching; teach start",
        "plot a start; example of a start; simulate a start; draw a start; drawing for class",
        "how a motor starts",
    ),
    go_on="compare it with the start that your meter shows: inrush, trace",
    cautions=("start-01", "meter-01", "live-02", "pin-01", "flam-01"),
    not_checked=(
        "that the motor at hand is like this one: the values are a textbook's or an estimate",
        "iron, saturation, warm windings, overload and breaker",
    ),
    refuse=_refuse,
    example_with=("textbook_motor",),
    renamed={"device_resistance": "ptc_resistance"},
)
def start_curve(
    textbook_motor: TextbookMotor = None,
    nameplate_voltage: NameplateVoltage = None,
    frequency: Frequency = 60.0,
    locked_rotor_current: LockedRotorCurrent = None,
    rated_load_current: RatedLoadCurrent = None,
    horsepower: Horsepower = None,
    poles: Poles = None,
    rated_speed: RatedSpeed = None,
    main_winding: MainWinding = None,
    start_winding: StartWinding = None,
    start_method: StartMethod = OWN,
    start_capacitor: StartCapacitor = None,
    run_capacitor: RunCapacitor = None,
    ptc_resistance: PtcResistance = None,
    load_torque: LoadTorque = None,
    load_curve: LoadCurve = "constant",
    inertia: Inertia = None,
    voltage_at_rest: VoltageAtRest = None,
    source_resistance: SourceResistance = None,
    cord: Cord = None,
    cord_length: CordLength = None,
    closing_angle: ClosingAngle = 0.0,
    duration: Duration = 4.0,
    variants: Variants = None,
    spread: Spread = None,
    fit: Fit = None,
    column: Column = None,
    clamp: Clamp = None,
    current_error: CurrentError = None,
    decimal_comma: DecimalComma = False,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """What does the start of this motor look like on the meters?

    For a single-phase induction motor at the line, not for one with an inverter or brushes.
    The two-axis model is integrated in time: both windings, capacitor, PTC or contact that opens
    at 75 % of synchronous speed, load, supply and cord (copper at 75 C). Behind a plate stands a
    band of machines that all have it, with the torque of motors that start this way; each error of
    a reading widens it (docs/start-estimate.md). Of a load not given both ends are run: 25 and
    100 % of rated torque, a rotor alone and a heavy inertia; `spread` draws starts between, at any
    instant of closing; `fit`, a recorded start, keeps those that reproduce it. Where some start and
    some do not, it cannot be told. It settles within 1 s, and stops at 3 s; 90 % of the plate's
    volts while starting are advised (practice).

    Inputs: a machine, or plate (V, A, hp, Hz, rpm) and ohm; parts in uF and ohm, load in %,
    inertia in kg m2, supply in V and ohm, cord in ft, angle in deg, times in s. Yields the readings
    of each variant, and criteria for healthy only; refuses parts that do not fit the start. Source:
    tables textbook-motors and textbook-start-windings, textbook machines, or common practice.
    """
    given = dict(locals())
    from .runs import items
    from .setup import Setup

    setup = Setup(**{name: given[name] for name in Setup._fields})
    if importlib.util.find_spec("scipy") is None:
        do = "install it with: pip install 'wirecalc[analysis]'"
        yield cannot_tell("time to settle", "simulating a start needs scipy", measure=do)
        return
    yield from items(setup, dict(bands or {}))
