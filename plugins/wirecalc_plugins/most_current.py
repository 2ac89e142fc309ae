"""A current above all that any published table gives a wire of its size: no wire is for it.

Not what a wire may carry, which is `ampacity`: air, bundles and terminations lower that.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from wirecalc import (
    Item,
    Source,
    Wire,
    at_most,
    at_or_below,
    cannot_tell,
    gauge_cmil,
    gauge_number,
    tables,
)
from wirecalc.trade import conductors, nec_ampacity

_HOTTEST, _USUAL = 90, 75  # C, columns of NEC Table 310.16; ordinary ends are of 75 C at most
_BRANCH_A = 15.0  # the least branch circuit, of 14 AWG; NEC 240.4(D)
_WIRE = "current of the wire"
_CORDS = ("cord, two current-carrying", "heater cord, two current-carrying")


class Most(NamedTuple):
    """The largest current in A that a table gives a wire, and where it stands."""

    amps: float
    source: Source


def on_run(
    wire: Wire | None, cord: Wire | None, amps: float, band: tuple[float, float] | None = None
) -> Iterator[Item]:
    """Judge one current in A on the building wire and the cord that were given, as below."""
    if wire is not None:
        yield from on_building_wire(wire, amps, band)
        yield from _too_thin(wire)
    if cord is not None:
        yield from on_cord(cord, amps, band)


def _too_thin(wire: Wire) -> Iterator[Item]:
    """Question a building wire thinner than 14 AWG; a metric one may be of other rules."""
    row = nec_ampacity.small_conductor_breaker(wire) or nec_ampacity.thinnest_breaker(wire)
    thin = row is not None and row.number("breaker_A") < _BRANCH_A
    if row is not None and thin and wire.metal == "copper" and wire.nominal_mm2 is None:
        yield cannot_tell(
            "gauge of the building wire",
            f"{wire} is thinner than any wire of a branch circuit, and explains more volts than it "
            "should",
            measure="read the gauge on the jacket of the building wire: 14 AWG or thicker",
            needs=("building_wire",),
            source=row.source,
        )


def on_building_wire(
    wire: Wire, amps: float, band: tuple[float, float] | None = None
) -> Iterator[Item]:
    """Fail a current in A above NEC Table 310.16 at 90 C and IEC 60364-5-52 in free air.

    Above the NEC's 75 C column a wire needs ends of 90 C, which ordinary devices have not.
    """
    judged = list(_above(_WIRE, wire, amps, band, _building(wire)))
    yield from judged
    usual = next(_nec(wire, _USUAL), None)
    if judged or usual is None or wire.nominal_mm2 is not None:
        return
    if not at_or_below(amps if band is None else band[1], usual.amps):
        yield cannot_tell(
            _WIRE,
            f"{amps:.4g} A is above the {usual.amps:g} A of {wire} with ends of {_USUAL} C",
            measure="ask `ampacity` with its class, its air and what its ends are rated for",
            source=usual.source,
        )


def on_cord(cord: Wire, amps: float, band: tuple[float, float] | None = None) -> Iterator[Item]:
    """Fail a current in A above NEC Table 400.5(A)(1), two live wires, and IEC 60335-1 Table 11."""
    yield from _above("current of the cord", cord, amps, band, _cord(cord))


def on_any_wire(wire: Wire, amps: float, band: tuple[float, float] | None = None) -> Iterator[Item]:
    """Fail a current in A above all of those tables and of those for appliance wire."""
    known = [*_building(wire), *_cord(wire), *_appliance(wire)]
    yield from _above(_WIRE, wire, amps, band, known)


def _above(
    name: str, wire: Wire, amps: float, band: tuple[float, float] | None, known: Iterable[Most]
) -> Iterator[Item]:
    most = max(known, default=None)
    if most is not None and not at_or_below(amps if band is None else band[1], most.amps):
        yield at_most(
            name,
            amps,
            most.amps,
            "A",
            source=most.source,
            says=f"no table gives {wire} more: it overheats",
            action="take the load off; fit thicker wire, or read current and wire again",
            band=band,
        )


def _building(wire: Wire) -> Iterator[Most]:
    yield from _nec(wire, _HOTTEST)
    if wire.metal == "copper":
        laid = tables.load("iec-ampacity").where(laying="most")
        yield from _by_area(laid, wire, "area_mm2", "ampacity_A")


def _nec(wire: Wire, column: int) -> Iterator[Most]:
    metal = "copper" if wire.metal == "copper" else "aluminium"
    rows = tables.load("nec-ampacity").where(
        edition=nec_ampacity.NEC_EDITION, metal=metal, rating_C=column
    )
    yield from _by_gauge(rows, wire, "ampacity_A")


def _cord(wire: Wire) -> Iterator[Most]:
    if wire.metal == "copper":
        for use in _CORDS:
            yield from _by_gauge(tables.load("cords").where(use=use), wire, "ampacity_A")
        yield from _by_area(tables.load("metric-cords").rows, wire, "nominal_mm2", "current_A")


def _appliance(wire: Wire) -> Iterator[Most]:
    if wire.metal == "copper":
        rows = tables.load("appliance-wire").rows
        for column in {(r.text("basis"), r.number("conductor_C")) for r in rows}:
            own = [r for r in rows if (r.text("basis"), r.number("conductor_C")) == column]
            yield from _by_gauge(own, wire, "current_A")


def _by_gauge(rows: Iterable[tables.Row], wire: Wire, amps: str) -> Iterator[Most]:
    """Yield the row of a wire, or of the next thicker size; none above the thickest.

    A metric wire counts as the next thinner gauge, as everywhere: its own table is asked too.
    """
    gauge = conductors.counted_gauge(wire) if wire.nominal_mm2 is not None else None
    cmil = wire.area_cmil if gauge is None else gauge_cmil(gauge_number(gauge))
    least = cmil * (1 - conductors.STRANDING_SLACK)
    thin_first = sorted(rows, key=lambda r: gauge_number(r.text("awg")), reverse=True)
    row = next((r for r in thin_first if at_or_below(least, _cmil(r))), None)
    if row is not None:
        yield Most(row.number(amps), row.source)


def _by_area(rows: Iterable[tables.Row], wire: Wire, area: str, amps: str) -> Iterator[Most]:
    """Yield the row of a metric wire, or of the next thicker size."""
    nominal = wire.nominal_mm2
    thin_first = sorted(rows, key=lambda r: r.number(area))
    fits = (r for r in thin_first if nominal is not None and at_or_below(nominal, r.number(area)))
    yield from (Most(r.number(amps), r.source) for r in list(fits)[:1])


def _cmil(row: tables.Row) -> float:
    return gauge_cmil(gauge_number(row.text("awg")))
