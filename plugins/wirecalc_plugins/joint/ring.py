"""Ring terminals on studs and screws: the hole, how many, and the torque."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Confidence,
    Item,
    Origin,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    confirmed,
    figure,
    tables,
)

from ..inputs_joint import ListedFor
from .joint_ratings import copper_only, listed
from .ring_inputs import Hole, Stud, StudTerminals, WireInput
from .ring_torques import thick_wire, torques

HOLE_SPREAD_MM = 0.38  # holes of different makers, 0.015 in; common practice, no source
SEAT = 1.5  # widest hole, in diameters of the stud; common practice, no source
MOST_ON_STUD = 4
_MM_PER_IN = 25.4

_COUNT = confirmed("faa-43-13", "FAA AC 43.13-1B", "11-174 b", copies=1)


@calculation(
    part="wire and joint",
    words=(
        "ring; ring terminal; ring lug; eyelet; eyelet size; eye terminal; lug; cable lug; stud",
        "stud size; screw; screw size; bolt; bolt size; torque; torque wrench; tighten",
        "tightening; how tight; tightness; inch pounds; newton metre; Nm; in-lb; hole; hole size",
        "fork; fork terminal; spade terminal; spade; terminal screw; ground screw; terminal block",
        "loose screw; post; terminal; M4; M5; M6; number 8; number 10; 10-32; 8-32",
        "washer under terminal; nut; terminal bolt; torque spec; stripped screw; stud lug",
        "nut size; bolt hole; loose nut; over tightened; screw terminal; torque value",
        "terminal torque; ground lug; earth stud; bus bar; spanner; tight enough; foot pounds",
        "ft-lbs; torque driver; stud hole",
        "torque for; nm for; how tight is; tighten a screw; tighten terminal; M3; M8; M10",
        "number 6; no 10; no 8; stud torque; screw torque; ring for; eye; ring hole",
        "hole too big; ground stud; earth screw; earth ring; spade bolt; loose screw terminal",
        "panel screw; breaker screw; neutral bar; torque screwdriver; quarter turn; lock washer",
        "spring washer; star washer",
    ),
    go_on="tighten to the torque that is shown, tug the lug, mark the screw",
    cautions=("dead-01", "crimp-01", "gnd-01"),
    not_checked=(
        "the torque itself: the maker's figure rules, those printed are for where it gives none",
        "clean, flat faces that touch each other, with no washer between them",
        "whether its barrel takes this wire: see `splice`",
    ),
    example_with=("hole",),
)
def ring(
    stud: Stud,
    wire: WireInput,
    hole: Hole = None,
    stud_terminals: StudTerminals = None,
    listed_for: ListedFor = None,
) -> Iterator[Item]:
    """Does this ring terminal suit its stud, and what torque is published for it?

    The hole must clear the thread. One that is wider than usual by more than 0.38 mm is rather
    that of a larger stud: marginal; over one and a half times the stud it fails (both common
    practice). At most four terminals go on a stud (FAA
    AC 43.13-1B). For ring terminals of appliances, not for lugs of a panel.
    Torques are shown, not judged: no source gives a tolerance, they differ from
    each other, and the maker's own comes before all of them. Slotted screws go by wire and slot
    (NEC Annex I), bolts, metric screws and metric studs with a nut by size.

    Inputs: stud (No.8 is a #8), wire, hole in mm (over 0 to 30), stud_terminals, listed_for (of
    solid wire). Yields the diameter of the stud, the usual hole, the published torques in lbf-in
    and N m, and a criterion for the hole and the count. Source: tables ring-holes and
    ring-torques.
    """
    row = tables.load("ring-holes").row(stud=stud)
    thread = tables.load("ring-holes").column_source(row, "diameter_mm")
    diameter, usual = row.number("diameter_mm"), row.number("hole_mm")
    yield figure("diameter of the stud", diameter, "mm", source=thread, also=_inches(diameter))
    yield figure("usual hole", usual, "mm", source=row.source, also=_inches(usual))
    yield from copper_only([wire], "an ordinary copper terminal")
    yield from listed([wire], listed_for)
    yield from _hole(hole, stud, row)
    yield from thick_wire(stud, wire, diameter)
    if stud_terminals is not None:
        yield at_most(
            "terminals on the stud",
            stud_terminals,
            MOST_ON_STUD,
            source=_COUNT,
            action="join two studs with a bus, or use a terminal block",
        )
    yield from torques(stud, wire)


def _hole(hole: float | None, stud: str, row: tables.Row) -> Iterator[Item]:
    name = "hole clears the stud"
    if hole is None:
        yield cannot_tell(
            name,
            "the hole of the ring was not measured",
            measure=f"measure it; about {row.text('hole_mm')} mm is usual for {stud}",
            needs=("hole",),
        )
        return
    yield at_least(
        name,
        hole,
        row.number("diameter_mm"),
        "mm",
        source=tables.load("ring-holes").column_source(row, "diameter_mm"),
        action=f"use a ring for {stud}; never drill one out",
    )
    yield at_most(
        "hole is that of this stud",
        hole,
        row.number("hole_mm") + HOLE_SPREAD_MM,
        "mm",
        source=PRACTICE if row.source.confidence is Confidence.CONFIRMED else row.source,
        origin=Origin.PRACTICE,
        advisory=True,
        says="it is rather for a larger stud",
        action=f"use a ring for {stud}",
        behind="a hole of more than one and a half times the stud fails",
    )
    yield at_most(
        "hole leaves a seat",
        hole,
        SEAT * row.number("diameter_mm"),
        "mm",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="head or nut, about twice as wide as the thread, has too little left to clamp",
        action=f"use a ring for {stud}; no washer makes up for it",
    )


def _inches(mm: float) -> list[tuple[float, str]]:
    return [(mm / _MM_PER_IN, "in")]
