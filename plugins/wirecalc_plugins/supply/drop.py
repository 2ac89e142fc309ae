"""The run to a load: how many volts it takes while the load runs."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Problem,
    Wire,
    calculation,
    caution,
    figure,
    not_checked,
    put,
)
from wirecalc.trade.wire_runs import WirePath, reactance_per_length

from ..most_current import on_building_wire, on_cord
from .drop_advice import for_advice
from .drop_inputs import (
    BuildingWire,
    ConductorMetal,
    ConductorTemperature,
    Cord,
    CordLength,
    Current,
    KnownAt,
    NameplateVoltage,
    OtherCurrent,
    OtherLegCurrent,
    PowerFactor,
    ResistancePerLength,
    Resistivity,
    RunLength,
    System,
    VoltageAtRest,
)
from .drop_load import OTHER_LEG, drops, load_of
from .path import (
    ADVICE,
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
from .printed_run import UNKNOWN_SIZE, metal_unknown, printed_run, wrong_print
from .volts_left import LEFT, judge_left, too_many, volts_that_clash

MOST_OF_A_LEG = 130.0  # V on a plate; more is leg to leg, and its neutral carries nothing
REACTANCE_MATTERS = 0.2  # of the resistance; left out below that


def _refuse(
    current: float,
    nameplate_voltage: float,
    building_wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
    other_current: float | None,
    other_leg_current: float | None,
    system: str | None,
    power_factor: float | None,
    conductor_temperature: float,
    voltage_at_rest: float | None,
    resistance_per_length: float | None,
    resistivity: float | None,
    known_at: float | None,
    conductor_metal: str | None,
) -> Iterator[Problem]:
    printed = resistance_per_length, resistivity, known_at, conductor_metal
    yield from wrong_print(building_wire, *printed)
    building_wire, ohms = printed_run(building_wire, *printed)
    yield from nothing_given(building_wire, run_length, cord, cord_length)
    if other_leg_current is not None and system == "two-wire":
        yield Problem(
            "system",
            "a two-wire run has no other leg, and other_leg_current was given",
            "write three-wire, or leave other_leg_current out",
        )
    if other_leg_current is not None and building_wire is None and run_length is None:
        yield Problem(
            "other_leg_current",
            "the other leg shares the neutral of the building wire, and none was given",
            "give building_wire with run_length",
        )
    yield from volts_that_clash(nameplate_voltage, voltage_at_rest, None)
    if missing(DROP, building_wire, run_length, cord, cord_length) is None:
        path = path_to(building_wire, run_length, cord, cord_length, conductor_temperature, ohms)
        shared = other_leg_current if nameplate_voltage <= MOST_OF_A_LEG else None
        load = load_of(current, other_current, shared, power_factor)
        lost = load.in_wire(path.shared) + load.in_cord(path.lead)
        other_leg = load.of_other_leg(path.shared) if shared is not None else 0.0
        yield from too_much(max(lost, other_leg), MOST_LOST * nameplate_voltage, path)


@calculation(
    part="circuit",
    words=(
        "voltage drop; volt drop; voltdrop; volts lost; voltage loss; line loss; percent drop",
        "low volts at load; long run; long cable; long wire; cable length; wire length",
        "far from panel; distance; feet; outbuilding; shed; garage; upsize wire; wire resistance",
        "ohms per foot; weak at the end of the line; 3 percent; far end; end of the run",
        "cable run; well pump; well; barn; cable loss; wire too long; volts at the end",
        "run to shed; VD; voltage loss on a long run; gate; underground",
        "volts lost on; volts at the far end; run of; ft of; metres of; long feed",
        "how far can I run; how far; wire size for distance; distance and amps; percent lost",
        "garden supply; outhouse; loft; garage feed; voltage loss in cable; volts lost in cable",
        "cable for distance",
        "12 volt wire; 12 volt drop; 24 volt drop; low voltage run; control cable",
        "mV/A/m; millivolts per amp per metre; mV per amp per metre; volt drop per metre",
        "volts per metre",
    ),
    go_on="read the volts at the machine while it runs: they have to agree",
    chosen=("building_wire", "cord", "run_length"),
    cautions=("cord-04", "live-02", "meter-01", "brk-01"),
    not_checked=(
        "ampacity of wire and cord as they lie: a current above every table fails, no more",
        "joints, plug and receptacle: a bad one adds more than the wire",
        "the feeder and the service ahead of the panel",
    ),
    refuse=_refuse,
    renamed={"wire": "building_wire"},
    example_with=(
        "building_wire=14 AWG",
        "run_length",
    ),
    exercises=".drop_exercises",
)
def drop(
    current: Current,
    nameplate_voltage: NameplateVoltage,
    building_wire: BuildingWire = None,
    run_length: RunLength = None,
    cord: Cord = None,
    cord_length: CordLength = None,
    other_current: OtherCurrent = None,
    other_leg_current: OtherLegCurrent = None,
    system: System = None,
    power_factor: PowerFactor = None,
    conductor_temperature: ConductorTemperature = 75.0,
    voltage_at_rest: VoltageAtRest = None,
    resistance_per_length: ResistancePerLength = None,
    resistivity: Resistivity = None,
    known_at: KnownAt = None,
    conductor_metal: ConductorMetal = None,
) -> Iterator[Item]:
    """How many volts does the run take while the load runs?

    V = I x 2 x length x ohm/kft; other loads count in the building wire only. Leg to leg the same,
    and the mean of the two legs counts. With the current of the other leg (three-wire) the neutral
    carries the difference: V = I x R + (I - I2) x R; the other leg is judged too. Ohms are dc at
    the temperature of the metal, of a metric wire the most, or printed for a length, or resistivity
    over the area; with a power factor R x pf + X x sin, X for 60 Hz (at 50 Hz five sixths). Over
    3 % is past a caution level, over 5 % past an advised limit. The volts at rest less the drop
    must leave 90 % of the plate; not given, 10 % of it can't be told, and more than plate and
    service allow fails. A current above all that tables give the wire fails.

    For a load that runs steadily; not for its start (dip), three-phase or dc. Inputs: currents in A
    (up to 200), lengths in ft one way (to 2000), volts in V, power_factor in %, temperatures in C,
    printed ohm/kft or nohm m. Yields loops, drop, the longest run, the smallest wire for 3 %, two
    criteria a leg. Refuses neither wire nor cord. Source: tables supply-ranges, nec-ch9-table8,
    nec-ch9-table9, iec-60228, nec-ampacity, iec-ampacity.
    """
    printed = resistance_per_length, resistivity, known_at, conductor_metal
    run_wire, ohms = printed_run(building_wire, *printed)
    unknown = missing(DROP, run_wire, run_length, cord, cord_length)
    if unknown is not None:
        yield unknown
        return
    if resistance_per_length is not None and conductor_metal is None:
        yield metal_unknown()
        return
    if building_wire is None and run_wire is not None:
        yield not_checked("ampacity of the run", UNKNOWN_SIZE)
    if building_wire is not None:
        yield from on_building_wire(
            building_wire, max(current + (other_current or 0.0), other_leg_current or 0.0)
        )
    if cord is not None:
        yield from on_cord(cord, current)
    path = path_to(run_wire, run_length, cord, cord_length, conductor_temperature, ohms)
    if other_leg_current is not None and nameplate_voltage > MOST_OF_A_LEG:
        yield _mean(current, other_leg_current)
        current, other_leg_current = (current + other_leg_current) / 2, None
    load = load_of(current, other_current, other_leg_current, power_factor)
    yield from loops(path)
    if path.cord is not None:
        yield caution("cord-03")
    if voltage_at_rest is not None:
        yield caution("live-01")
    in_wire, in_cord = load.in_wire(path.shared), load.in_cord(path.lead)
    yield from drops(load, path, in_wire, in_cord)
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
    yield from too_many(in_wire + in_cord, nameplate_voltage, voltage_at_rest)
    if other_leg_current is not None:
        there = load.of_other_leg(path.shared)
        yield judge_drop(there, nameplate_voltage, OTHER_LEG)
        yield judge_left(there, nameplate_voltage, None, f"{LEFT}, other leg")
    yield from for_advice(load, path, in_cord, nameplate_voltage)
    yield from _left_out(path) if power_factor is None else reactances(path)


def _mean(one: float, other: float) -> Item:
    """Leg to leg each leg has its own wire: the mean of their currents in A counts."""
    return figure(
        "mean current of the legs",
        (one + other) / 2,
        "A",
        working=lambda: f"({put(one, 'A')} + {put(other, 'A')}) / 2; each in its own wire",
    )


def _left_out(path: WirePath) -> Iterator[Item]:
    """Name the reactance that was left out, where it is not small beside the resistance."""
    for run in path.runs:
        x = reactance_per_length(run.wire)
        r = run.per_length(path.temperature)
        if x is not None and x.ohm_per_kft > REACTANCE_MATTERS * r.ohm_per_kft:
            share = 100 * x.ohm_per_kft / r.ohm_per_kft
            yield not_checked(
                f"reactance of {run.wire}", f"{share:.0f} % of its resistance; give power_factor"
            )
