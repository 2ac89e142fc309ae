"""The torques that are published for a stud, and the wire for which none is."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Wire,
    cannot_tell,
    figure,
    gauge_number,
    not_checked,
    tables,
)
from wirecalc.trade import conductors

_NUMBERED = ("No.4", "No.6", "No.8")  # smaller than No.10

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


def thick_wire(stud: str, wire: Wire, diameter: float) -> Iterator[Item]:
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


def torques(stud: str, wire: Wire) -> Iterator[Item]:
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
