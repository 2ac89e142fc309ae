"""Ring terminals on studs and screws: the hole, how many, and the torque."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Confidence,
    Item,
    Origin,
    Wire,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    caution,
    confirmed,
    figure,
    gauge_number,
    not_checked,
    requires,
    tables,
)
from wirecalc.trade import conductors

from ..inputs_joint import ListedFor
from .joint_ratings import listed
from .ring_inputs import Hole, Stud, StudTerminals, WireInput

HOLE_SPREAD_MM = 0.38  # holes of different makers, 0.015 in; common practice, no source
SEAT = 1.5  # widest hole, in diameters of the stud; common practice, no source
MOST_ON_STUD = 4
_MM_PER_IN = 25.4
_NUMBERED = ("No.4", "No.6", "No.8")  # smaller than No.10

_COUNT = confirmed("faa-43-13", "FAA AC 43.13-1B", "11-174 b", copies=1)
_ALUMINIUM = confirmed("cpsc-516", "CPSC Publication 516", "June 2011", copies=3)

_IN_NEWTONS = (
    "jis-c-8306",
    "iec-60999-1",
    "ring-lug-screw",
    "stud-nut",
)  # series that are printed in N m

# what a torque of a series is called in the finding
_TORQUES = {
    "ul-486a-bolt": "torque of a bolt through a lug",
    "power-plant": "torque of a screw turned by its nut, least",
    "jis-c-8306": "torque of a terminal screw",
    "iec-60999-1": "torque of a slotted screw",
    "ring-lug-screw": "torque of a screw that holds a ring lug",
    "stud-nut": "torque of a stud with a nut",
}


@calculation(
    part="wire and joint",
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
    if wire.metal != "copper":
        yield caution("alu-01")
    yield requires(
        "copper only",
        wire.metal == "copper",
        says=f"{wire.metal} wire is not for an ordinary copper terminal",
        source=_ALUMINIUM,
        action="stop: it needs a method listed for that metal and a qualified electrician",
    )
    yield from listed([wire], listed_for)
    yield from _hole(hole, stud, row)
    yield from _thick_wire(stud, wire, diameter)
    if stud_terminals is not None:
        yield at_most(
            "terminals on the stud",
            stud_terminals,
            MOST_ON_STUD,
            source=_COUNT,
            action="join two studs with a bus, or use a terminal block",
        )
    yield from _torques(stud, wire)


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


def _thick_wire(stud: str, wire: Wire, diameter: float) -> Iterator[Item]:
    """Ask for the maker's sheet where no published row has so thick a wire on so small a screw."""
    smallest = tables.load("ring-holes").row(stud="No.10")
    rows = list(tables.load("ring-torques").where(series="annex-i-2"))
    if diameter >= smallest.number("diameter_mm"):
        return
    if _number_of(wire) < min(_end(r, "awg_thick") for r in rows):
        yield cannot_tell(
            "wire for this stud",
            f"the published rows of screws smaller than No.10 end at 8 AWG; this is {wire.name}",
            measure="check wire and stud; a ring of that wire for a stud so small needs the sheet "
            "of its maker and of the machine",
            source=rows[0].source,
        )


def _number_of(wire: Wire) -> int:
    return gauge_number(conductors.known_gauge(wire) or conductors.equivalent_gauge(wire.area_cmil))


def _inches(mm: float) -> list[tuple[float, str]]:
    return [(mm / _MM_PER_IN, "in")]


def _torques(stud: str, wire: Wire) -> Iterator[Item]:
    """Yield what is published for the size, each with its source."""
    rows = [*_by_slot(stud, wire), *_by_size(stud)]
    if not rows:
        yield not_checked("torque", f"no published value for {stud} was seen")
    for name, row in rows:
        both = (row.number("torque_lbf_in"), "lbf-in"), (row.number("torque_Nm"), "N m")
        (value, unit), other = reversed(both) if row.text("series") in _IN_NEWTONS else both
        yield figure(name, value, unit, source=row.source, also=[other])


def _by_size(stud: str) -> Iterator[tuple[str, tables.Row]]:
    # UL 486A prints one value for "No.8 or smaller"; it is shown for No.8 only, because nothing
    # else is published that would let a No.4 or No.6 be tightened so hard
    names = (stud, f"{stud} or smaller")
    for series, name in _TORQUES.items():
        for row in tables.load("ring-torques").where(series=series):
            if row.text("screw") in names:
                yield name, row


def _by_slot(stud: str, wire: Wire) -> Iterator[tuple[str, tables.Row]]:
    """Find the rows of NEC Annex I for a slotted screw; none for a metric one."""
    table = tables.load("ring-torques")
    number = _number_of(wire)
    if stud in _NUMBERED:
        small = [r for r in table.where(series="annex-i-2") if number >= _end(r, "awg_thick")]
        if small:
            yield "torque of a slotted screw, smallest slot", small[0]
            yield "torque of a slotted screw, largest slot", small[-1]
    elif not stud.startswith("M"):
        for row in table.where(series="annex-i-1"):
            if _end(row, "awg_thick") <= number <= _end(row, "awg_thin"):
                narrow = row.text("head").startswith("slot up to")
                yield f"torque of a slotted screw, {'small' if narrow else 'large'} slot", row


def _end(row: tables.Row, column: str) -> int:
    return gauge_number(row.text(column))
