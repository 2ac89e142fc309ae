"""The current that a published table gives a wire in its use."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Problem,
    Wire,
    answer,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    not_checked,
    tables,
)
from wirecalc.trade import nec_ampacity

from ..circuit.cord_load import GENERAL, cord_load, cord_row
from ..circuit.not_seen import zero_amps
from ..circuit.wire_place import too_low
from .ampacity_inputs import (
    Ambient,
    Conductors,
    CordConductors,
    CordType,
    Current,
    InsulationClass,
    PlaceTemperature,
    TerminationTemperature,
    Use,
    WireInput,
    WireTemperature,
)
from .appliance_wire import appliance_wire
from .building_ampacity import LOAD, Lies, as_listed, building, name_of, no_row

_LESS = "take less load, or a thicker wire or one of a higher temperature rating"
_ONLY_FOR = {  # input -> uses whose table asks for it; in the order of `given` below
    "insulation_class": ("building",),
    "conductors": ("building",),
    "cord_conductors": ("cord",),
    "wire_temperature": ("appliance",),
    "place_temperature": ("appliance",),
    "ambient": ("building", "cord", "fixture"),
}


def _refuse(insulation_class: float | None = None, **others: object) -> Iterator[Problem]:
    termination = others.get("termination_temperature")
    yield from too_low(
        insulation_class=insulation_class,
        termination_temperature=termination if isinstance(termination, float) else None,
    )


@calculation(
    part="circuit",
    words=(
        "amps a wire can carry; amps per gauge; AWG chart; amps for AWG; how many amps",
        "current rating of a wire; current carrying capacity; wire size; wire size for a load",
        "what size wire; wire gauge for amps; cable size; conductor size; wire chart; amp chart",
        "ampacity table; derating; correction factor; bundled wires; conduit; raceway; THHN",
        "NM cable; SJT; SJOOW; SOOW; SPT; wire current; current; twin and earth; flex rating",
        "cord rating; undersized wire; wire gets hot; hot wire; wire gauge for heater; watts",
        "supply wire; too thin; wire too small; undersize; rated current; current for a gauge",
        "maximum current; continuous current; max amps; 75 C column; 60 C column; NEC table",
        "cable too thin; thick enough; power cord; line cord; appliance cord; cord set; flex",
        "ambient correction; derate; derate for heat; high temperature ampacity; terminal strip",
        "terminations; 60 C terminal; aluminium; aluminium wire",
        "amps for wire; gauge amps; awg amps; mm2 amps; cable amps; wire amps; wire rating",
        "cable rating; amps for a cable; cable current; how much current",
        "what can this wire carry; wire carry; carry; can carry; good for how many amps",
        "cable carry; wire for amps; 105 C wire amps; fixture wire; fixture wire amps; hot attic",
        "cable in insulation; bundle; grouped",
        "12 volt wire; low voltage wire; wire for watts; 310.16; NEC 310; BS 7671; IEC 60364",
        "wire for 12 V; how thick a wire",
        "silicone cable; silicone cable amps; heat resistant cable; high temp cable",
        "high temperature cable amps; 180 degree cable; SIHF",
    ),
    go_on="size the breaker by it, then see the volts lost: breaker, drop",
    chosen=("wire",),
    not_checked=(
        "125 % for a load that runs 3 hours or more, and the breaker: see `breaker`",
        "the terminals at both ends, and what else warms the wire",
    ),
    refuse=_refuse,
    example_with=(
        "wire=14 AWG",
        "insulation_class=75 C",
        "termination_temperature=60 C",
        "conductors",
        "ambient=40 C",
        "current=10 A",
    ),
    exercises=".ampacity_exercises",
)
def ampacity(
    use: Use,
    wire: WireInput,
    insulation_class: InsulationClass = None,
    termination_temperature: TerminationTemperature = 60.0,
    conductors: Conductors = None,
    cord_conductors: CordConductors = None,
    cord_type: CordType = GENERAL,
    wire_temperature: WireTemperature = None,
    place_temperature: PlaceTemperature = None,
    ambient: Ambient = None,
    current: Current = None,
) -> Iterator[Item]:
    """How much current does a published table give this wire in this use?

    For one wire by itself; for a whole circuit see breaker and circuit. building: NEC Table 310.16
    times the factors of ambient and bundling, not above the termination's column; above the
    breaker of 240.4(D) only a motor's circuit may carry it, so it can't be told. cord: NEC Table
    400.5(A)(1), above 30 C with those factors. fixture: NEC Table 402.5, to 30 C. appliance: no
    body has issued an ampacity, so two published views are given as advice, an aircraft bundle's
    (a low bound, to 70 C) and a wire maker's for one wire; the rating printed on it binds, and the
    most that any wire of its size is given. A size that a table does not list, a metric one too,
    counts as the next thinner one, a class between two columns as the one below.
    Inputs: use; wire; classes and ratings in C; ambient in C (-40 to 90) or
    place_temperature in C (-40 to 500) of appliance wire; counts; current in A (0 to 400).
    Yields the table and its values, and judges the current: binding by the NEC, advice for
    appliance wire. Refuses a class below 60 C. Can't tell for a use or size without a table.
    Source: tables nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors, cords,
    appliance-wire, appliance-wire-ambient.
    """
    given: tuple[float | None, ...] = (insulation_class, conductors, cord_conductors)
    given += (wire_temperature, place_temperature, ambient)
    for (name, uses), value in zip(_ONLY_FOR.items(), given, strict=True):
        if value is not None and use not in uses:
            yield not_checked(name, f"no table for {use} wire asks for it")
    if current == 0:
        yield zero_amps(LOAD)
        return
    if use == "building":
        yield caution("brk-01")
        lies = Lies(insulation_class, termination_temperature, ambient, conductors)
        yield from building(wire, lies, current)
    elif use == "cord":
        yield from _cord(wire, cord_conductors, cord_type, ambient, current)
    elif use == "fixture":
        yield answer("table", "NEC Table 402.5, fixture wire, 30 C")
        row = None
        if wire.metal == "copper":
            row = nec_ampacity.listed_size(tables.load("cords").where(use="fixture wire"), wire)
        yield from _at_30(wire, row, ambient, current)
    else:
        yield caution("heat-01")
        yield from appliance_wire(wire, wire_temperature, place_temperature, current)


def _cord(
    wire: Wire, live: int | None, cord_type: str, ambient: float | None, current: float | None
) -> Iterator[Item]:
    if live is None:
        yield cannot_tell(
            name_of(current),
            "a cord with three live wires carries less than one with two",
            measure="count the wires of the cord that carry current, the ground not among them",
            needs=("cord_conductors",),
        )
        return
    word = {2: "two", 3: "three"}[live]
    kind = "" if cord_type == GENERAL else f"{cord_type} cord, "
    yield answer("table", f"NEC Table 400.5(A)(1), {kind}{word} live wires, 30 C")
    row = cord_row(wire, live, cord_type)
    if row is None or current is None:
        yield from _at_30(wire, row, ambient, current)
        return
    yield from as_listed(wire, row)
    yield cord_load(current, wire, live, ambient, cord_type, name=LOAD, action=_LESS)


def _at_30(
    wire: Wire, row: tables.Row | None, ambient: float | None, current: float | None
) -> Iterator[Item]:
    """Judge by a table that is for 30 C and lower only."""
    if row is None:
        yield no_row(wire, None, current)
        return
    yield from as_listed(wire, row)
    amps, warmest = row.number("ampacity_A"), row.number("ambient_C")
    over = current is not None and not at_or_below(current, amps)
    if not over and ambient is None:
        yield cannot_tell(
            name_of(current),
            f"the table is for {warmest:g} C and the ambient was not given",
            measure="measure the hottest air around the wire",
            needs=("ambient",),
            source=row.source,
        )
    elif not over and ambient is not None and not at_or_below(ambient, warmest):
        yield cannot_tell(
            name_of(current),
            f"the table is for {warmest:g} C and it is {ambient:g} C here",
            measure="take the current from the marking of cord or wire, or from its maker",
            source=row.source,
        )
    elif current is not None:
        yield at_most(LOAD, current, amps, "A", source=row.source, action=_LESS)
