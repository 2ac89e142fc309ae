"""Choosing a splice or terminal: does the barrel take these wires, here?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import (
    MAKER,
    Item,
    Origin,
    Wire,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    confirmed,
    figure,
    put,
)
from wirecalc.trade import conductors

from . import joint_ratings
from .barrel_fit import fit
from .connector_current import in_connector
from .joint_current import on_tab
from .joint_ratings import metals
from .splice_inputs import (
    Barrel,
    CircuitVoltage,
    Connector,
    Current,
    InsulationDiameter,
    InsulationLimit,
    ListedFor,
    PlaceTemperature,
    TabWidth,
    TerminalTemperature,
    TerminalVoltage,
    WireInput,
    WireLimit,
    WireTemperature,
    refuse,
)

_UL_310 = confirmed("ul-310", "UL 310", "scope 1.2 and 1.3", copies=2)
_UL_486C = confirmed("ul-486c-scope", "UL 486C", "6th edition, scope 1.1", copies=3)


@calculation(
    part="wire and joint",
    words=(
        "join; join wires; joining; joint; butt; butt connector; butt splice; closed end",
        "closed end connector; pigtail; end cap; wire nut; wirenut; twist-on; barrel; barrel size",
        "crimp; crimp sleeve; crimp cap; connector; connector size; terminal size; inline",
        "red butt; blue butt; yellow butt; red blue yellow; two wires in one crimp; two wires",
        "three wires; several wires; double crimp; wire combination; CMA; total CMA",
        "circular mils; circular mil; too big for barrel; wire too thick; wire too thin",
        "fold over; doubled wire; extend wire; lengthen; repair wire; broken wire; cut wire",
        "wire chewed; crimp connector; fill; loose in barrel; barrel fit; fits the barrel",
        "which barrel; end splice; wires per connector; how many wires; number of wires",
        "mixed sizes; different gauges; two sizes; solid and stranded; coupler; add a wire",
        "crimp sleeve size; tap; sleeve; splice failed; pigtail splice; bad splice",
        "wire connector; step-down; aluminium wire; aluminium to copper; aluminium",
        "wire too short; add wire; splice in; splice wires; join two wires; solder; solder joint",
        "soldered; solder in harness; solder or crimp; wet area splice; wet location",
        "splice near water; splice in a dryer; lid switch splice; chewed; mouse chewed",
        "mouse chewed harness; rats; rodent; wire broke; wire cut; cut the wire; fix a wire",
        "mend a wire; patch; red crimp; blue crimp; yellow crimp; red connector wire",
        "wire in a red; repair a harness; harness repair; lever connector; crimp two wires",
        "2 wires in one crimp; one crimp",
    ),
    go_on="strip to the barrel, crimp, look at it and tug: strip; pull a sample",
    chosen=("barrel",),
    cautions=("crimp-01", "dead-01", "flam-01", "flam-02"),
    not_checked=("the die of the tool",),
    refuse=refuse,
    example_with=(
        "connector=butt",
        "wire_temperature",
        "terminal_temperature",
        "place_temperature",
    ),
    renamed={"voltage": "circuit_voltage"},
)
def splice(
    wire: WireInput,
    barrel: Barrel,
    connector: Connector = None,
    listed_for: ListedFor = None,
    wire_limit: WireLimit = None,
    wire_temperature: WireTemperature = None,
    terminal_temperature: TerminalTemperature = None,
    place_temperature: PlaceTemperature = None,
    current: Current = None,
    tab_width: TabWidth = None,
    circuit_voltage: CircuitVoltage = None,
    insulation_diameter: InsulationDiameter = None,
    insulation_limit: InsulationLimit = None,
    terminal_voltage: TerminalVoltage = None,
) -> Iterator[Item]:
    """Does this barrel take this wire or these wires, and may it sit in this place?

    One wire with a gauge goes by gauge in a barrel named by gauges. Sums, metric and odd wire go by
    area: inside the areas of the named gauges passes, one gauge beyond is marginal (so far reach
    the classes, from memory), outside fails. A range in cmil or mm2 binds as the maker's, with
    care in 5 % at either end (practice). Solid or mixed wire, and several wires, need a connector
    listed for them; aluminium is refused. The weakest rating must lie 20 K above the place
    (practice). The current goes by the thinnest wire, a metric one as the next thinner gauge: on
    a tab as in `tab`, else by what UL 486 assigns to one wire, or a cord of that gauge carries.
    For crimped and twist-on joints of appliances, not solder, levers or splices in a cord.

    Inputs: wire, barrel, connector, listed_for, wire_limit, temperatures in C, current in A,
    voltages in V. Yields the sum, its place in the range, the class that would do, and criteria.
    Source: tables barrel-ranges, joint-currents, cords, metric-cords, quick-connect-currents.
    """
    total = math.fsum(w.area_cmil for w in wire)
    yield figure(
        "copper in the barrel",
        total,
        "cmil",
        source=conductors.AWG_LAW,
        working=lambda: " + ".join(put(w.area_cmil, "cmil") for w in wire),
        also=[(math.fsum(w.area_mm2 for w in wire), "mm2")],
    )
    yield from fit(wire, barrel, total)
    yield from _count(wire, connector, wire_limit, listed_for)
    yield from metals(wire)
    yield from joint_ratings.listed(wire, listed_for)
    yield from joint_ratings.temperature(wire_temperature, terminal_temperature, place_temperature)
    if current is not None:
        if connector == "push-on":
            yield from on_tab(wire, current, tab_width)
        else:
            yield from in_connector(wire, current)
    if circuit_voltage is not None:
        yield joint_ratings.voltage(circuit_voltage, terminal_voltage)
    if insulation_diameter is not None:
        yield joint_ratings.insulation(insulation_diameter, insulation_limit)


def _count(
    wires: Sequence[Wire], connector: str | None, limit: int | None, listed_for: str | None
) -> Iterator[Item]:
    number = float(len(wires))
    name = "wires in one barrel"
    if connector == "push-on" and number > 2:
        yield at_most(
            name,
            number,
            2,
            source=_UL_310,
            action="use a terminal or splice listed for so many wires",
        )
    elif limit is not None:
        yield at_most(
            name,
            number,
            limit,
            source=MAKER,
            origin=Origin.MAKER,
            action="use a connector listed for so many wires",
        )
    elif number > 1 and listed_for != "combination":
        yield cannot_tell(
            name,
            f"whether the maker lists it for {len(wires)} wires together is not known",
            measure="read the package: --wire-limit, or --listed-for combination",
            needs=("wire_limit",),
        )
    if connector in ("closed-end", "twist-on"):
        yield at_least(
            "wires to join", number, 2, source=_UL_486C, action="it joins two wires or more"
        )
