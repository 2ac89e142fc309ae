"""The ground path of a machine: from its case to the pin of its plug, or to its ground wire."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Bands,
    Item,
    calculation,
    caution,
)
from wirecalc.trade.wire_runs import known_metal

from . import ground_limits as limits
from .ground_inputs import (
    ConductorTemperature,
    Cord,
    CordGroundClosed,
    CordLength,
    GroundOpen,
    GroundPoint,
    GroundResistance,
    GroundStandard,
    LeadResistance,
    MeterResolution,
    NeutralOpen,
    NeutralStrap,
    PathDrop,
    SameRange,
    TestCurrent,
)
from .ground_path import (
    Meter,
    closed,
    missed,
    of_cord,
    possible,
)
from .ground_read import read_by_current, read_by_ohmmeter
from .ground_refusals import REQUIRED, refuse
from .neutral import ground_bond

M_PER_FT = 0.3048


@calculation(
    part="return to service",
    words=(
        "earth; earthing; earthed; earth continuity; earth bond; earth wire; earth pin",
        "earth resistance; bonding; bond; ground wire; ground path; grounding; grounded",
        "ground continuity; continuity; ground pin; third prong; three prong; PE",
        "protective earth; protective conductor; equipment ground; green wire; green and yellow",
        "case ground; chassis; chassis ground; frame; ground resistance; PAT; PAT test",
        "portable appliance test; bond test; no ground; no earth; open ground; open earth",
        "missing ground; lost ground; ground strap; ground screw; class I; shock; shocks",
        "electric shock; tingle; tingling; static; ground fault; neutral bond; bonding strap",
        "kettle; toaster; iron; not earthed; not grounded; earth path; case to ground",
        "case to earth; resistance to ground; bond wire; neutral to ground; plug pin",
        "electrocuted; jolt; belt; leccy; shock from metal; metal case; 0.1 ohm; bonding jumper",
        "earthing resistance; cord ground; 3 prong; 2 prong; 2 prong outlet; 3 prong dryer",
        "3 prong cord; 4 prong cord; bootleg ground; milliohm",
        "bond ohms; bonding ohms; earth bond test; ground bond; earth test; earth reading",
        "earth ohms; chassis to plug; chassis to pin; pin to case; case to pin",
        "no continuity to earth; earth wire broken; ground wire broken; ground wire missing",
        "green yellow; no earth pin; 3 prong to 4 prong; change cord 3 to 4; convert to 4 prong",
        "remove the strap; strap; neutral strap; bond strap; frame bonded to neutral",
        "case bonded",
        "PAT testing; test and tag; tag test; 3760; 62638",
        "green/yellow; green yellow wire; earth colour; which wire is earth",
        "brown blue green yellow; earth tag; painted panel",
        "test lead resistance; zero the leads; null the leads; subtract the leads",
    ),
    go_on="flex cord and plug and read again; then insulation or leakage",
    cautions=("gnd-02", "dead-02"),
    not_checked=("the ground of the receptacle and of the building",),
    refuse=refuse,
    example_with=(
        "ground_point=wired-in",
        "ground_resistance=0.071 ohm ±(1%+2)",
        "lead_resistance=0 ohm",
    ),
    renamed={"standard": "ground_standard"},
    exercises=".ground_exercises",
)
def ground(
    ground_point: GroundPoint,
    ground_resistance: GroundResistance = None,
    ground_open: GroundOpen = None,
    lead_resistance: LeadResistance = None,
    same_range: SameRange = None,
    meter_resolution: MeterResolution = None,
    test_current: TestCurrent = None,
    path_drop: PathDrop = None,
    ground_standard: GroundStandard = None,
    cord: Cord = None,
    cord_length: CordLength = None,
    conductor_temperature: ConductorTemperature = 20.0,
    cord_ground_closed: CordGroundClosed = None,
    neutral_strap: NeutralStrap = None,
    neutral_open: NeutralOpen = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Is the path from the case to ground good?

    0.1 ohm without the cord, whose own ground wire is computed and taken off (IEC 60335-1 27.5),
    binds where no standard is named, and 0.1 ohm with it (UL 507, fans) is advice. By name: UL
    507; EN 50106, 0.2 ohm with a cord, 0.1 without; DIN VDE 0701/0702, 0.3 ohm plus 0.1 a started
    7.5 m of cord beyond 5 m, 1 at most, the cord counted. A path is a difference of two small
    readings: without their errors it passes nothing. Two readings of one meter on one range share
    their offset. Better is 1 A or more from a source of 12 V at most, and the millivolts across.
    An ohmmeter's milliamperes miss a bond of few strands.

    For machines with a ground pin or wire, and three-wire ranges and dryers (to the neutral blade,
    strap fitted); not for double-insulated ones. Inputs: ground_point, ohms (to 10000), leads (to
    2), A (over 0 to 60), mV (to 12000), cord, its length in ft one way, temperature in C, strap.
    Yields the path, all limits, criteria. Refuses a reading under its leads or far under its
    cord. Source: table ground-limits.
    """
    yield caution("gnd-01")
    if ground_point == "wired-in":
        yield caution("dead-03")
    yield REQUIRED
    yield from ground_bond(ground_point, neutral_strap, neutral_open)
    yield from closed(ground_resistance, ground_open, cord_ground_closed)
    if ground_open:
        return
    ends = bands or {}
    feet = None if cord_length is None else ends.get("cord_length", (cord_length, cord_length))
    metres = None if feet is None else (feet[0] * M_PER_FT, feet[1] * M_PER_FT)
    yield from limits.shown(ground_point, metres)
    if test_current is not None:
        path = yield from read_by_current(test_current, path_drop, ground_resistance, ends)
        lead_resistance = 0.0  # not in the drop
    else:
        meter = Meter(same_range is True, meter_resolution)
        path = yield from read_by_ohmmeter(ground_resistance, lead_resistance, meter, ends)
    if path is None:
        return
    yield from missed(test_current)
    own = None
    if cord is not None and feet is not None and known_metal(cord):
        celsius = ends.get("conductor_temperature", (conductor_temperature,) * 2)
        own = yield from of_cord(cord, feet, celsius)
    yield from possible(path, ground_point, own)
    unread = ("lead_resistance",) if lead_resistance is None else ()
    blind = cord is not None and not known_metal(cord)
    yield from limits.judged(path, ground_standard, (ground_point, metres, own, blind), unread)
    if ground_standard == "vde-0701-0702":
        yield from limits.other_editions(cord, metres)
