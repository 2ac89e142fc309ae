"""Motor capacitors: is it weak, and how long does it take to discharge."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    YesNo,
    asked,
    calculation,
    caution,
    extra,
    figure,
    instead_of,
    may_be_absent,
    put,
)

from ..inputs import LINE_VOLTAGE, MARKED_CAPACITANCE
from .mark import MARKED_HIGH, Mark, Read, against_mark, by_meter, range_problem, under_load
from .running import UNDER_LOAD, by_load, line_volts, not_marked, not_read, stress

_RUNNING = ("live-01", "live-02", "meter-01", "mov-01")  # cautions of readings under load


def _refuse(
    capacitor_current: float | None,
    capacitor_voltage: float | None,
    measured_capacitance: float | None,
    marked_capacitance: float | None,
    marked_high: float | None,
    **_others: object,
) -> Iterator[Problem]:
    if None not in (capacitor_current, capacitor_voltage, measured_capacitance):
        yield Problem(
            "measured_capacitance",
            "amps and volts give a capacitance too: one check judges one reading of it",
            "leave one way out, and judge it in a check of its own",
        )
    yield from range_problem(marked_capacitance, marked_high)


@calculation(
    part="motor and start",
    cautions=("cap-01",),
    not_checked=(
        "leakage, swelling and oil: replace a swollen part unseen",
        "that the start winding and its relay or PTC are out of the circuit",
        "a part with two sections (three terminals): read each against its own mark",
    ),
    refuse=_refuse,
    example_with=(
        *("capacitor_current", "capacitor_voltage", "frequency"),
        *("marked_capacitance", "tolerance=10 %", "capacitor_rating", "voltage"),
        "capacitor_current=2.25 A",
    ),
)
def capacitor(
    capacitor_current: Annotated[
        float | None,
        Reading("A", low=0, high=50, typical="2.05 A", text="amps in the capacitor's own lead"),
        asked("read it so, or by a capacitance meter", when="not measured_capacitance"),
        instead_of("measured_capacitance"),
    ] = None,
    capacitor_voltage: Annotated[
        float | None,
        Reading("V", above=0, high=1000, typical="214 V", text="volts across it, running"),
        asked("read it so, or by a capacitance meter", when="not measured_capacitance"),
        instead_of("measured_capacitance"),
    ] = None,
    probes_on_capacitor: Annotated[
        bool | None,
        YesNo("both probes were on its own terminals when the volts were read"),
        extra(
            "volts that equal the line's are suspected to be the line's", when="capacitor_voltage"
        ),
    ] = None,
    frequency: Annotated[
        float | None,
        Nameplate("Hz", low=16, high=400, typical="60 Hz", text="frequency on the plate"),
        asked("amps over volts goes with it", when="capacitor_current and capacitor_voltage"),
    ] = None,
    measured_capacitance: Annotated[
        float | None,
        Reading("uF", low=0, high=2000, typical="26 uF", text="by a capacitance meter, discharged"),
        instead_of("capacitor_current", "capacitor_voltage"),
    ] = None,
    marked_capacitance: Annotated[
        float | None, MARKED_CAPACITANCE, asked("it is what the reading is held against")
    ] = None,
    capacitor_duty: Annotated[
        str | None,
        OneOf(("run", "start"), text="what it is: run or start", on_plate=True),
        extra(
            "good by the marks of run and of start parts it is good; else it is asked for",
            when="measured_capacitance and not tolerance and not marked_high",
        ),
        may_be_absent("a run part: it was read while the motor runs", when="capacitor_current"),
    ] = None,
    marked_high: Annotated[float | None, MARKED_HIGH, may_be_absent("no range is marked")] = None,
    tolerance: Annotated[
        float | None,
        Nameplate(
            "%",
            low=0,
            high=50,
            typical="5 %",
            text="tolerance as marked",
            goes_with="marked_capacitance",
        ),
        extra("good within the narrowest that is marked on such parts; between, it is asked for"),
    ] = None,
    tolerance_above: Annotated[
        float | None,
        Nameplate(
            "%",
            low=0,
            high=50,
            typical="10 %",
            text="tolerance upward, where it is another",
            goes_with="tolerance",
        ),
        may_be_absent("the same upward as downward"),
    ] = None,
    capacitor_rating: Annotated[
        float | None,
        Nameplate("V", low=50, high=1000, typical="250 V", text="volts marked on it"),
        extra("whether it is weak is told without it", when="capacitor_voltage"),
    ] = None,
    voltage: Annotated[
        float | None,
        LINE_VOLTAGE,
        asked(
            "volts that equal it were probably read at the line",
            when="capacitor_voltage and not probes_on_capacitor",
        ),
        extra("the probes were on its own terminals", when="capacitor_voltage"),
    ] = None,
) -> Iterator[Item]:
    """Is this capacitor weak?

    C = I / (2 pi f V): 2652.6 I/V in uF at 60 Hz, 3183.1 at 50 Hz, with the current in its own
    lead and the volts across it; or a capacitance meter's reading. It must lie within the marked
    tolerance, or the marked range of a start capacitor. Where no tolerance was read, it is good
    within the narrowest that is marked on parts of its duty (run 5 %, start 0/+20 %), bad outside
    the widest, and not to be told between; without its duty both count. Volts that equal the
    line's are suspected to be the line's. Figures and criteria have the same names both ways, so
    that a shop's rule holds for both.

    For run and start capacitors of motors; each section of a two-section part by itself; not for
    those of boards or ovens. Inputs: capacitor_current in A (to 50), volts in V, frequency
    in Hz, capacitances in uF (to 2000), duty, tolerances in %. Yields capacitance, its deviation,
    the limits, a criterion a side; with capacitor_rating also volts and amps against it. Refuses
    both ways at once, and a range the wrong way round. Source: table capacitor-tolerances.
    """
    yield caution("cap-01")
    if measured_capacitance is None or capacitor_current is not None or capacitor_voltage:
        yield from (caution(key) for key in _RUNNING)
    read: Read | None = None
    if measured_capacitance is not None:
        read = by_meter(measured_capacitance)
    elif capacitor_current is not None and capacitor_voltage is not None and frequency is not None:
        read = under_load(by_load(capacitor_current, capacitor_voltage, frequency))
        yield figure(
            "capacitance",
            read.uf,
            "uF",
            source=UNDER_LOAD,
            working=lambda: (
                f"10^6 x {put(capacitor_current)} A / (2 x pi x {put(frequency)} Hz x "
                f"{put(capacitor_voltage)} V)"
            ),
        )
    else:
        yield not_read(capacitor_current, capacitor_voltage)
    if capacitor_voltage is not None:
        yield from line_volts(capacitor_voltage, voltage, probes_on_capacitor)
    if marked_capacitance is None:
        yield not_marked()
    elif probes_on_capacitor is not False:  # by volts of something else nothing can be told
        duty = capacitor_duty or ("run" if capacitor_current is not None else None)
        mark = Mark(marked_capacitance, marked_high, tolerance, tolerance_above, duty)
        yield from against_mark(read, mark)
    if capacitor_rating is not None:
        yield from stress(
            (capacitor_current, capacitor_voltage), capacitor_rating, marked_capacitance, frequency
        )
