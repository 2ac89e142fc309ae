"""The start of a single-phase motor as a curve: what the meters show, healthy and with faults."""

from __future__ import annotations

import importlib.util
from collections.abc import Iterator
from typing import Annotated, Any

from wirecalc import (
    PRACTICE,
    Bands,
    Count,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    Wire,
    asked,
    assumed,
    calculation,
    cannot_tell,
    extra,
    instead_of,
    may_be_absent,
    setting,
    tables,
)

from ..inputs import CORD_LENGTH, NAMEPLATE_VOLTAGE, VOLTAGE_AT_REST

OWN, RELAY, PTC, START_CAPACITOR, RUN_CAPACITOR, NONE = METHODS = (
    "own",
    "relay",
    "ptc",
    "start-capacitor",
    "run-capacitor",
    "none",
)
LOADS = ("constant", "fan", "compressor")
VARIANTS = (
    "healthy",
    "open-start-winding",
    "weak-capacitor",
    "low-supply",
    "long-cord",
    "locked-rotor",
    "swapped-leads",
)


def _machines() -> list[str]:
    return [row.text("motor") for row in tables.load("textbook-start-windings").rows]


def _refuse(**given: Any) -> Iterator[Problem]:
    from .refusals import refuse

    yield from refuse(given)


@calculation(
    part="motor and start",
    cautions=("start-01", "meter-01", "live-02", "pin-01", "flam-01"),
    not_checked=(
        "that the motor at hand is like this one: the values are a textbook's or an estimate",
        "iron, saturation, warm windings, overload and breaker",
    ),
    refuse=_refuse,
    example_with=("textbook_motor",),
)
def start_curve(
    textbook_motor: Annotated[
        str | None,
        OneOf(_machines, text="motor of a textbook, in place of a plate"),
        instead_of("nameplate_voltage"),
    ] = None,
    nameplate_voltage: Annotated[
        float | None,
        NAMEPLATE_VOLTAGE,
        instead_of("textbook_motor"),
    ] = None,
    frequency: Annotated[
        float,
        Nameplate(
            "Hz",
            low=16,
            high=400,
            typical="60 Hz",
            text="frequency on the plate",
            goes_with="nameplate_voltage",
        ),
        assumed("50 Hz", source=PRACTICE),
    ] = 60.0,
    locked_rotor_current: Annotated[
        float | None,
        Nameplate(
            "A",
            above=0,
            high=400,
            typical="20 A",
            text="LRA on the plate",
            goes_with="nameplate_voltage",
        ),
        instead_of("textbook_motor"),
    ] = None,
    rated_load_current: Annotated[
        float | None,
        Nameplate(
            "A",
            above=0,
            high=60,
            typical="4.4 A",
            text="RLA on the plate",
            goes_with="nameplate_voltage",
        ),
        instead_of("textbook_motor"),
    ] = None,
    horsepower: Annotated[
        float | None,
        Nameplate(
            "hp",
            above=0,
            high=10,
            typical="1/4 hp",
            text="power on the plate",
            goes_with="nameplate_voltage",
        ),
        instead_of("textbook_motor"),
    ] = None,
    poles: Annotated[
        int | None,
        Count(
            "number of poles: 2 near 3450 rpm, 4 near 1725",
            low=2,
            high=24,
            goes_with="nameplate_voltage",
        ),
        instead_of("textbook_motor"),
    ] = None,
    main_winding: Annotated[
        float | None,
        Reading(
            "ohm",
            above=0,
            high=500,
            typical="2 ohm",
            text="main winding, cold",
            goes_with="nameplate_voltage",
        ),
        instead_of("textbook_motor"),
    ] = None,
    start_winding: Annotated[
        float | None,
        Reading(
            "ohm",
            above=0,
            high=1000,
            typical="7 ohm",
            text="start winding, cold",
            goes_with="nameplate_voltage",
        ),
        instead_of("textbook_motor"),
    ] = None,
    start_method: Annotated[
        str,
        OneOf(METHODS, text="how it starts; own: the textbook's way, a relay for a plate"),
        asked("how it starts decides the start", when="nameplate_voltage"),
        setting("as the textbook has it"),
    ] = OWN,
    start_capacitor: Annotated[
        float | None,
        Nameplate(
            "uF",
            low=1,
            high=2000,
            typical="189 uF",
            text="start capacitor's mark",
            goes_with="start_method",
        ),
        may_be_absent("none in this start but what a textbook has"),
    ] = None,
    run_capacitor: Annotated[
        float | None,
        Nameplate(
            "uF",
            low=1,
            high=200,
            typical="15 uF",
            text="run capacitor's mark",
            goes_with="start_method",
        ),
        may_be_absent("none in this start but what a textbook has"),
    ] = None,
    device_resistance: Annotated[
        float | None,
        Reading(
            "ohm",
            low=1,
            high=100,
            typical="6.8 ohm",
            text="PTC start device, cold",
            goes_with="start_method",
        ),
        may_be_absent("none in this start but what a textbook has"),
    ] = None,
    load_torque: Annotated[
        float | None,
        Nameplate("%", low=0, high=300, typical="50 %", text="load, share of rated torque"),
        extra("the unkind 100 % of rated torque is taken, and asked for where it decides"),
    ] = None,
    load_curve: Annotated[
        str,
        OneOf(LOADS, text="constant; a fan's, with the square of speed; a compressor's"),
        extra("a torque that is there from standstill is taken, the unkind one"),
    ] = "constant",
    inertia: Annotated[
        float | None,
        Nameplate("kg m2", low=0.0001, high=10, typical="0.005 kg m2", text="rotor and load"),
        extra("a large one is taken, and asked for where it decides"),
    ] = None,
    voltage_at_rest: Annotated[
        float | None,
        VOLTAGE_AT_REST,
        asked("a start goes with the volts", when="nameplate_voltage"),
        may_be_absent("the plate's volts"),
    ] = None,
    source_resistance: Annotated[
        float | None,
        Reading("ohm", low=0, high=50, typical="0.4 ohm", text="supply and building wire, both"),
        asked("a stiff supply hides its own dip", when="nameplate_voltage"),
        may_be_absent("a stiff supply"),
    ] = None,
    cord: Annotated[
        Wire | None,
        "wire of the cord, extension cord included",
        may_be_absent("no cord"),
    ] = None,
    cord_length: Annotated[
        float | None,
        CORD_LENGTH,
        asked("there is a cord"),
    ] = None,
    closing_angle: Annotated[
        float,
        Nameplate("deg", low=0, high=180, typical="90 deg", text="closing, after zero volts"),
        setting("it moves the first crest"),
    ] = 0.0,
    duration: Annotated[
        float,
        Nameplate("s", low=0.5, high=20, typical="4 s", text="time to simulate at most"),
        setting("how long is simulated"),
    ] = 4.0,
    variants: Annotated[
        list[str] | None,
        OneOf(VARIANTS, text="what to show side by side; left out: healthy"),
        extra("a healthy start alone is shown and judged"),
    ] = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """What does the start of this motor look like on the meters?

    The two-axis model of a single-phase motor is integrated in time: both windings, capacitor,
    PTC or contact that opens at 75 % of synchronous speed, load, supply and cord (copper at 75 C).
    A plate and ohm readings give an estimate; the power factor that it assumes (0.5 to 0.8) and
    each reading's error give a band, from one run at each end and one with all slow, one with all
    fast. Load 100 % of rated torque and a large inertia are taken where not given. It settles
    within 1 s, and stops at 3 s; 90 % of the plate's volts while starting are advised (practice).

    Inputs: a machine, or plate (V, A, hp, Hz) and ohm; parts in uF and ohm, load in %, inertia in
    kg m2, supply in V and ohm, cord in ft, angle in deg, times in s. Yields the readings of each
    variant, and criteria for healthy only; refuses parts that do not fit the start. Source: tables
    textbook-motors and textbook-start-windings, or common practice.
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
