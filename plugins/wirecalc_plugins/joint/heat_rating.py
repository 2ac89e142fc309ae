"""Temperature ratings of all that sits in one joint."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Confidence,
    Item,
    Origin,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    put,
    tables,
)

from .heat_place import COLD_C, HEATER_C, assumed_place, read_cold, unknown_place
from .heat_rating_inputs import (
    NearHeater,
    PlaceTemperature,
    SleeveMaterial,
    SleeveTemperature,
    TerminalMaterial,
    TerminalTemperature,
    WireTemperature,
)
from .joint_ratings import ROOM_K
from .part_ratings import Part, rating_of, weakest


@calculation(
    part="wire and joint",
    words=(
        "temperature rating; heat rating; high temperature; high temp; high heat; heat resistant",
        "hot place; heatproof; heat shrink; heatshrink; shrink tube; sleeve; sleeving; tubing",
        "tape; electrical tape; nylon; vinyl; silicone; glass; fibreglass; fiberglass; mica; 90 C",
        "105 C; 150 C; 200 C; 250 C; oven; range; stove; cooker; hob; furnace; near heater",
        "near burner; oven wire; high temp wire; melted; melting; melted connector",
        "melted insulation; melted wire; brittle; brittle wire; crumbling; baked; cooked",
        "discolored; scorched; browned; burnt; burnt connector; burnt spade; burnt terminal",
        "burnt wire; overheated; overheated terminal; hot joint; insulation rating",
        "wire gauge for heater; grill; warm connector; hot connector; charred; crispy; toasted",
        "singed; fried; too hot for the wire; sleeve temperature; temp rating",
        "terminal near burner; insulation falls off; SRML; SEW-2; SF-2; TGGT; MG; mica glass",
        "glass braid; high temp terminal; nickel terminal; warm wire; terminal strip",
        "terminal block; lug temperature; 60 C; 75 C; PTFE; ETFE",
        "hi temp; hi temp wire; hi-temp; high temp connector; near the element",
        "next to the element; in the oven; oven harness; dryer drum; dryer wire; near the burner",
        "heat proof; heatproof wire; wire melted; wire cooked; insulation cracked",
        "insulation brittle; cracked insulation; hard insulation; stiff wire; wire went hard",
        "which wire in the oven; 150; 200; 105; place gets hot; rated for heat",
        "temperature of wire; temperature of terminal; toaster wire; smells hot; smells burnt",
    ),
    go_on="crimp it, dress the wires clear of the heater, fix the sleeve",
    cautions=("heat-01", "hot-01"),
    not_checked=(
        "heat that the joint makes itself beyond those 20 K: measure the drop across it",
        "tape and solder: neither belongs near a heater",
    ),
    example_with=("place_temperature", "wire_temperature", "terminal_temperature"),
)
def heat_rating(
    place_temperature: PlaceTemperature = None,
    near_heater: NearHeater = None,
    wire_temperature: WireTemperature = None,
    terminal_temperature: TerminalTemperature = None,
    terminal_material: TerminalMaterial = None,
    sleeve_temperature: SleeveTemperature = None,
    sleeve_material: SleeveMaterial = None,
) -> Iterator[Item]:
    """Is every part of this joint rated for the heat of the place?

    A rating must exceed the place and the rise by the current (FAA AC 43.13-1B, 11-174 a); 20 K
    of room are taken for the rise (common practice, 15 to 20 K). The weakest part decides. A
    place that was not measured can't be told; beside a heater it is taken as 200 C, the usual
    assumption, and parts below it fail; one that reads 40 C or less there was read cold, and
    can't be told either. A terminal or sleeve without a mark goes by what it is made of; where
    the usual ratings of that make lie on both sides of the need, it can't be told. For joints of
    any appliance, not for thermal cut-offs and heating elements themselves.

    Inputs: place_temperature in C (-40 to 500), near_heater, ratings in C as marked (40 to 500),
    terminal_material and sleeve_material, which count only without a mark. Yields the weakest
    rating, the rating that is needed, and a criterion for each part.
    Source: table temperature-classes.
    """
    parts = [
        Part("wire", wire_temperature),
        Part("terminal", terminal_temperature, terminal_material),
    ]
    if sleeve_temperature is not None or sleeve_material is not None:
        parts.append(Part("sleeve", sleeve_temperature, sleeve_material))
    yield from weakest(parts)
    assumed = place_temperature is None and near_heater is True
    place = HEATER_C if assumed else place_temperature
    if assumed:
        yield assumed_place(parts)
    elif near_heater and place_temperature is not None and at_or_below(place_temperature, COLD_C):
        yield read_cold(place_temperature)
    if place is None:
        yield unknown_place(parts, near_heater)
    else:
        yield figure(
            "needed rating",
            place + ROOM_K,
            "C",
            source=PRACTICE,
            toward="up",
            working=lambda: f"{put(place, 'C')} + {put(ROOM_K, 'K')}",
        )
    for part in parts:
        yield from _judge(part, place, "; the place is assumed" if assumed else "")


def _too_good(part: Part, marked: float, material: str) -> Iterator[Item]:
    """Question a mark in C above all that the make of the part is sold for."""
    row = tables.load("temperature-classes").row(material=material)
    greatest = row.number("greatest_C")
    if not at_or_below(marked, greatest):
        yield cannot_tell(
            f"make of the {part.name}",
            f"marked {marked:g} C, and {material} is sold up to {greatest:g} C: one is misread",
            measure="read the marking again, or look again at what it is made of",
            source=row.source,
        )


def _judge(part: Part, place: float | None, assumed: str) -> Iterator[Item]:
    name = f"temperature rating of the {part.name}"
    rating = rating_of(part)
    if rating is None:
        needed = (
            f"a rating of {place + ROOM_K:.0f} C or more would do; " if place is not None else ""
        )
        yield cannot_tell(
            name,
            "the rating is not known, and the weakest one decides",
            measure=f"{needed}read the marking",
            needs=(f"{part.name}_temperature",),
        )
        return
    if place is None:
        return
    if part.marked is not None and part.material is not None:
        yield from _too_good(part, part.marked, part.material)
    least, greatest, source = rating
    wanted = place + ROOM_K
    if at_or_below(wanted, greatest) and not at_or_below(wanted, least):
        yield cannot_tell(
            name,
            f"{part.material} is sold for {least:g} to {greatest:g} C; {wanted:.0f} C is needed",
            measure="read the marking, or use a part that is marked",
            source=source,
        )
        return
    yield at_least(
        name,
        least if at_or_below(wanted, least) else greatest,
        wanted,
        "C",
        source=source if source.confidence is Confidence.MEMORY else PRACTICE,
        origin=Origin.PRACTICE,
        says=f"it must lie {ROOM_K:.0f} K above the place, for the heat of the current{assumed}",
        action=f"use a {part.name} rated for the place and {ROOM_K:.0f} K more",
    )
