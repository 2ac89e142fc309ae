"""The run to a load: how many volts it takes while the load runs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    Wire,
    asked,
    assumed,
    calculation,
    caution,
    extra,
    figure,
    listing,
    may_be_absent,
    not_checked,
    put,
    setting,
    tables,
)
from wirecalc.runs import Path, effective, reactance_per_length, resistance_per_length
from wirecalc.wires import GAUGES, gauge_cmil, gauge_number

from ..inputs import (
    CONDUCTOR_TEMPERATURE,
    CORD_LENGTH,
    LOAD_ON_A_RUN,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    RUN_LENGTH,
    SLIP_A,
    VOLTAGE_AT_REST,
)
from .path import (
    ADVICE,
    ADVISED_PCT,
    DROP,
    MOST_LOST,
    judge_drop,
    loops,
    missing,
    nothing_given,
    path_to,
    reactances,
    too_much,
)
from .volts_left import LEFT, judge_left, volts_that_clash

OTHER_LEG = "drop of the other leg"
MOST_OF_A_LEG = 130.0  # V on a plate; more is leg to leg, and its neutral carries nothing
REACTANCE_MATTERS = 0.2  # of the resistance; left out below that
SYSTEMS = ("two-wire", "three-wire")

_LEAST_GAUGE = {"copper": "14", "aluminium": "12"}  # thinnest building wire


class _Load(NamedTuple):
    """Currents in A; `other_leg` is None where the neutral carries all of this load or none."""

    current: float
    other: float
    other_leg: float | None
    power_factor: float | None

    def ohms(self, loop: complex) -> float:
        """Return the ohms that count: resistance alone where no power factor was given."""
        pf = self.power_factor
        return loop.real if pf is None else effective(loop, pf)

    def in_wire(self, loop: complex) -> float:
        """Return the volts that the building wire takes from this load."""
        one_way, here = self.ohms(loop) / 2, self.current + self.other
        return here * one_way + (here - (self.other_leg or 0.0)) * one_way

    def of_other_leg(self, loop: complex) -> float:
        """Return the volts that the building wire takes from the other leg."""
        other_leg = self.other_leg or 0.0
        return (2 * other_leg - self.current - self.other) * self.ohms(loop) / 2

    def in_cord(self, loop: complex) -> float:
        return self.current * self.ohms(loop)


def _refuse(
    current: float,
    nameplate_voltage: float,
    wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
    other_current: float | None,
    other_leg_current: float | None,
    system: str,
    power_factor: float | None,
    conductor_temperature: float,
    voltage_at_rest: float | None,
) -> Iterator[Problem]:
    yield from volts_that_clash(nameplate_voltage, voltage_at_rest, None)
    yield from nothing_given(wire, run_length, cord, cord_length)
    if other_leg_current is not None and system != "three-wire":
        yield Problem(
            "system",
            "a two-wire run has no other leg, and other_leg_current was given",
            "write three-wire, or leave other_leg_current out",
        )
    if other_leg_current is not None and nameplate_voltage > MOST_OF_A_LEG:
        yield Problem(
            "nameplate_voltage",
            f"{nameplate_voltage:g} V is leg to leg, and other_leg_current is of a load to neutral",
            "leave other_leg_current out, and give the larger of the two line currents",
        )
    if other_leg_current is not None and wire is None and run_length is None:
        yield Problem(
            "other_leg_current",
            "the other leg shares the neutral of the building wire, and none was given",
            "give wire with run_length",
        )
    if missing(DROP, wire, run_length, cord, cord_length) is None:
        path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
        load = _load(current, other_current, other_leg_current, power_factor)
        lost = load.in_wire(path.shared) + load.in_cord(path.lead)
        other_leg = load.of_other_leg(path.shared) if other_leg_current is not None else 0.0
        yield from too_much(max(lost, other_leg), MOST_LOST * nameplate_voltage, path)


@calculation(
    part="circuit",
    cautions=("cord-04",),
    not_checked=(
        "ampacity of wire and cord, which is another question than drop",
        "joints, plug and receptacle: a bad one adds more than the wire",
        "the feeder and the service ahead of the panel",
    ),
    refuse=_refuse,
    example_with=(
        "wire=14 AWG",
        "run_length",
    ),
)
def drop(
    current: Annotated[float, LOAD_ON_A_RUN],
    nameplate_voltage: Annotated[float, NAMEPLATE_VOLTAGE],
    wire: Annotated[
        Wire | None,
        "building wire from the panel to the receptacle",
        asked("it takes its part of the volts before the cord"),
    ] = None,
    run_length: Annotated[float | None, RUN_LENGTH, asked()] = None,
    cord: Annotated[
        Wire | None, "wire of the cord, extension cord included", may_be_absent("no cord")
    ] = None,
    cord_length: Annotated[float | None, CORD_LENGTH, asked()] = None,
    other_current: Annotated[
        float | None, OTHER_CURRENT, may_be_absent("nothing else runs on this wire")
    ] = None,
    other_leg_current: Annotated[
        float | None,
        Reading(
            "A",
            low=0,
            high=200,
            typical="5 A",
            text="current of the other leg, which shares the neutral of the building wire",
            slip_under=SLIP_A,
            goes_with="system",
        ),
        may_be_absent("the neutral carries all of this load"),
    ] = None,
    system: Annotated[
        str,
        OneOf(SYSTEMS, text="two-wire: line and neutral, or leg to leg"),
        setting("it counts beside other_leg_current only"),
    ] = "two-wire",
    power_factor: Annotated[
        float | None,
        Nameplate("%", low=10, high=100, typical="80 %", text="power factor of the load, lagging"),
        assumed("60 %", "80 %", source=PRACTICE, why="resistance alone, as of a heater"),
    ] = None,
    conductor_temperature: Annotated[
        float, CONDUCTOR_TEMPERATURE, assumed("20 C", source=PRACTICE)
    ] = 75.0,
    voltage_at_rest: Annotated[
        float | None,
        VOLTAGE_AT_REST,
        extra("a run that takes over 10 % of the plate's volts asks for it"),
    ] = None,
) -> Iterator[Item]:
    """How many volts does the run take while the load runs?

    V = I x 2 x length x ohm/kft; other loads count in the building wire only. Leg to leg of a
    120/240 V run is the same. With the current of the other leg (three-wire) the neutral carries
    the difference: V = I x R + (I - I2) x R, which may be negative, a rise; the other leg is
    judged too. Resistance is dc at the temperature of the metal, that of a metric wire the most
    it may have; with a power factor it is R x pf + X x sin.

    Over 3 % is past a caution level, over 5 % past an advised limit. The volts at rest less the
    drop must leave 90 % of the plate; where they were not given, a drop of 10 % of the plate
    can't be told and one of 20 %, from the most to the least that a plate allows, fails.
    Meant for 60 Hz and resistance: at 50 Hz reactance is five sixths of the table's.

    Inputs: current, other_current and other_leg_current in A (up to 200), lengths in ft one way
    (over 0 to 2000), volts in V, power_factor in %, conductor_temperature in C. Yields loops,
    drop, the longest run and the smallest wire for 3 %, two criteria a leg. Refuses neither wire
    nor cord, half of the volts lost, an other leg of a 240 V load. Source: tables supply-ranges,
    nec-ch9-table8, nec-ch9-table9, iec-60228.
    """
    unknown = missing(DROP, wire, run_length, cord, cord_length)
    if unknown is not None:
        yield unknown
        return
    path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
    load = _load(current, other_current, other_leg_current, power_factor)
    yield from loops(path)
    if path.cord is not None:
        yield caution("cord-03")
    in_wire, in_cord = load.in_wire(path.shared), load.in_cord(path.lead)
    yield from _volts(load, path, in_wire, in_cord)
    yield figure(
        "drop share",
        100 * (in_wire + in_cord) / nameplate_voltage,
        "%",
        source=ADVICE,
        working=lambda: (
            f"100 x ({put(in_wire, 'V')} + {put(in_cord, 'V')}) / {put(nameplate_voltage, 'V')}"
        ),
    )
    yield judge_drop(in_wire + in_cord, nameplate_voltage)
    yield judge_left(in_wire + in_cord, nameplate_voltage, voltage_at_rest)
    if other_leg_current is not None:
        there = load.of_other_leg(path.shared)
        yield judge_drop(there, nameplate_voltage, OTHER_LEG)
        yield judge_left(there, nameplate_voltage, None, f"{LEFT}, other leg")
    yield from _for_advice(load, path, in_cord, nameplate_voltage)
    yield from _left_out(path) if power_factor is None else reactances(path)


def _load(
    current: float, other: float | None, other_leg: float | None, power_factor: float | None
) -> _Load:
    pf = None if power_factor is None else power_factor / 100
    return _Load(current, other or 0.0, other_leg, pf)


def _volts(load: _Load, path: Path, in_wire: float, in_cord: float) -> Iterator[Item]:
    here, other_leg = load.current + load.other, load.other_leg
    if path.wire is not None:
        loop = load.ohms(path.shared)
        yield figure(
            "drop in the wire",
            in_wire,
            "V",
            working=lambda: (
                f"{put(here)} A x {put(loop)} ohm"
                if other_leg is None
                else f"({put(here, 'A')} + [{put(here, 'A')} - {put(other_leg, 'A')}]) x "
                f"{put(loop / 2, 'ohm')}; {put(loop / 2, 'ohm')} one way"
            ),
        )
    if path.wire is not None and other_leg is not None:
        yield figure(
            "current of the neutral",
            here - other_leg,
            "A",
            working=lambda: f"{put(here, 'A')} - {put(other_leg, 'A')}",
        )
        yield figure(
            OTHER_LEG,
            load.of_other_leg(path.shared),
            "V",
            working=lambda: (
                f"({put(other_leg, 'A')} + [{put(other_leg, 'A')} - {put(here, 'A')}]) x "
                f"{put(loop / 2, 'ohm')}"
            ),
        )
        yield not_checked("a neutral that is thinner than the legs")
    if path.cord is not None:
        ohms = load.ohms(path.lead)
        yield figure(
            "drop in the cord",
            in_cord,
            "V",
            working=lambda: f"{put(load.current)} A x {put(ohms)} ohm",
        )
    yield figure(
        "drop",
        in_wire + in_cord,
        "V",
        working=lambda: f"{put(in_wire, 'V')} + {put(in_cord, 'V')}; wire and cord",
    )


def _for_advice(load: _Load, path: Path, in_cord: float, plate: float) -> Iterator[Item]:
    """Say how far this wire reaches within 3 %, and which wire reaches this far."""
    budget = ADVISED_PCT / 100 * plate
    if path.wire is None:
        run, taken, budget_left = path.cord, load.in_cord(path.lead), budget
    else:
        run, taken, budget_left = path.wire, load.in_wire(path.shared), budget - in_cord
    if run is None or taken <= 0 or budget_left <= 0:
        return
    kind = "cord" if path.wire is None else "wire"
    yield figure(
        f"longest {kind} for 3 %",
        run.length_ft * budget_left / taken,
        "ft one way",
        source=ADVICE,
        toward="down",
        working=lambda: (
            f"{put(run.length_ft, 'ft')} x {put(budget_left, 'V')} / {put(taken, 'V')}; "
            f"{ADVISED_PCT:g} % is {put(budget, 'V')}"
        ),
    )
    for gauge in _standard_sizes(run.wire, kind):
        loop = run._replace(wire=gauge).loop_impedance(path.temperature)
        volts = load.in_cord(loop) if kind == "cord" else load.in_wire(loop) + in_cord
        if volts <= budget:
            yield listing(
                f"Smallest {kind} for 3 % on this length (what it carries is another question)",
                (kind, "drop V", "drop %"),
                [(str(gauge), round(volts, 2), round(100 * volts / plate, 2))],
            )
            return


def _standard_sizes(wire: Wire, kind: str) -> Iterator[Wire]:
    """Yield the sizes of Table 8 in the metal of a wire, thin to thick, in its build if listed."""
    table = tables.load("nec-ch9-table8")
    least = _LEAST_GAUGE[wire.metal] if kind == "wire" else "18"
    for gauge in reversed(GAUGES[: GAUGES.index(least) + 1]):
        solid = not wire.stranded and table.find(awg=gauge, stranding="solid") is not None
        if table.find(awg=gauge, stranding="solid" if solid else "stranded") is not None:
            metal = "" if wire.metal == "copper" else " aluminium"
            yield Wire(
                f"{gauge} AWG{' solid' if solid else ''}{metal}",
                gauge_cmil(gauge_number(gauge)),
                gauge=gauge,
                stranded=not solid,
                metal=wire.metal,
                coating=wire.coating,
            )


def _left_out(path: Path) -> Iterator[Item]:
    """Name the reactance that was left out, where it is not small beside the resistance."""
    for run in path.runs:
        x = reactance_per_length(run.wire)
        r = resistance_per_length(run.wire, path.temperature)
        if x is not None and x.ohm_per_kft > REACTANCE_MATTERS * r.ohm_per_kft:
            share = 100 * x.ohm_per_kft / r.ohm_per_kft
            yield not_checked(
                f"reactance of {run.wire}", f"{share:.0f} % of its resistance; give power_factor"
            )
