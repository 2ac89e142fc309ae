"""AWG and metric sizes: which one may stand in for the other."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    CMIL_PER_MM2,
    GAUGES,
    Item,
    Problem,
    Wire,
    answer,
    asked,
    calculation,
    cannot_tell,
    caution,
    figure,
    from_memory,
    gauge_cmil,
    gauge_number,
    instead_of,
    put,
    setting,
    tables,
)
from wirecalc.trade import conductors as trade

from ..inputs import WIRE
from ..inputs_conductor import KNOWN_AT, KNOWN_AT_20, RESISTANCE_PER_LENGTH
from .by_ohms import gauge_to_use, known_or_20, metric_to_use, ohm_per_km

# metric nominal size -> the AWG size that is sold beside it; it is no substitute
TRADE_PAIRS = {0.5: "20", 0.75: "18", 1.5: "16", 2.5: "14", 4.0: "12", 6.0: "10", 10.0: "8"}
TRADE_PAIRS |= {16.0: "6", 25.0: "4"}
_PAIRING = from_memory("iec-60947-1", "IEC 60947-1", "Table 1, metric sizes beside AWG sizes")
# even sizes are stocked; of the odd ones 1 AWG and those that NEC Table 310.16 lists (3 AWG)
STOCKED = tuple(g for g in GAUGES if "/" in g or g in ("1", "3") or int(g) % 2 == 0)


TheWire = Annotated[
    Wire | None, WIRE, asked("its size says what replaces it", when="not resistance_per_length")
]
ResistancePerLength = Annotated[float | None, RESISTANCE_PER_LENGTH, instead_of("wire")]
KnownAt = Annotated[float | None, KNOWN_AT, setting(KNOWN_AT_20, when="resistance_per_length")]


def _refuse(
    wire: Wire | None, resistance_per_length: float | None, known_at: float | None
) -> Iterator[Problem]:
    if wire is not None and resistance_per_length is not None:
        yield Problem(
            "resistance_per_length",
            "it stands in place of the wire, and both were given",
            "give wire alone, or resistance_per_length alone",
        )
    if known_at is not None and resistance_per_length is None:
        yield Problem(
            "known_at",
            "it goes with resistance_per_length, which was not given",
            "give resistance_per_length, or leave it out",
        )


def thinnest_stocked(area: float) -> str | None:
    """Return the thinnest even gauge of at least an area in mm2; None above 4/0."""
    enough = (g for g in reversed(STOCKED) if _holds(_gauge_mm2(g), area))
    return next(enough, None)


def thinnest_metric(area: float) -> float:
    """Return the least nominal size of IEC 60228 of at least an area in mm2; 0 above 25 mm2."""
    sizes = sorted({r.number("nominal_mm2") for r in tables.load("iec-60228").rows})
    return next((size for size in sizes if _holds(size, area)), 0.0)


def _gauge_mm2(gauge: str) -> float:
    return gauge_cmil(gauge_number(gauge)) / CMIL_PER_MM2


def _holds(size: float, area: float) -> bool:
    return size >= area * (1 - 1e-9)


@calculation(
    part="wire and joint",
    words=(
        "mm2 to AWG; AWG to mm2; convert; conversion; converter; metric; metric wire; metric size",
        "imperial; square millimetre; sq mm; mm squared; square mm; mm2; SWG; circular mil",
        "circular mils; cmil; CMA; kcmil; cross section; area; wire size; wire chart",
        "equivalent gauge; gauge conversion; European wire; flex size; cable size; 1.5 mm; 2.5 mm",
        "0.75 mm; AWG; diameter to AWG; next size; nearest size; nearest gauge; metric equivalent",
        "sq; size in mm; gauge table; gauge to mm; mm to gauge",
        "what awg is; awg of; mm2 of; in awg; in mm2; awg in mm; metric of; nearest awg; to awg",
        "to mm; to mm2; convert awg; American size; English size; swg to awg; gauge chart",
        "size chart",
    ),
    cautions=("sub-01",),
    not_checked=(
        "insulation, temperature, voltage and strands: see `substitute`",
        "whether the thicker wire fits the barrel: a barrel marked in both systems is one size",
    ),
    refuse=_refuse,
    example_with=("wire=14 AWG",),
)
def equivalent(
    wire: TheWire = None,
    resistance_per_length: ResistancePerLength = None,
    known_at: KnownAt = None,
) -> Iterator[Item]:
    """Which size of the other system may stand in for this wire?

    The smallest nominal size of IEC 60228, or the thinnest even AWG size (1, 3 and the aught sizes
    too), whose area is not smaller. A wire given by its strands or in circular mils gets both; a
    standard build counts as its own gauge, another with 2.5 % allowed. The AWG size that is sold
    beside a metric one has 12 to 17 % less copper from 1.5 mm2 up: it is named as information,
    and does not replace the metric wire.

    In place of the wire the printed ohms of a length of a copper conductor: then the thinnest that
    has no more of them: of a gauge solid wire, 2 % less than stranded, of a metric size its limit.

    For wire of appliances and cords, not for building wire, which the code sizes.
    Inputs: wire, or ohm/kft and the C of it. Yields the size, how much more copper it has, and the
    trade pairing. Can't tell above 25 mm2 nominal or 4/0 AWG, where the tables end.
    Source: table iec-60228 (nominal sizes), ASTM B258 (gauges); the pairing from memory.
    """
    if resistance_per_length is not None:
        at = known_or_20(known_at)
        yield gauge_to_use(resistance_per_length, at, STOCKED)
        yield metric_to_use(ohm_per_km(resistance_per_length, at))
    if wire is None:
        return
    if wire.metal != "copper":
        yield caution("alu-01")
    yield figure(
        "area of the wire",
        wire.area_mm2,
        "mm2",
        also=[(wire.area_cmil, "cmil")],
        working=lambda: trade.area_working(wire),
    )
    if wire.gauge is None:
        yield from _as_gauge(wire)
    if wire.nominal_mm2 is None:
        yield from _as_metric(wire)
    yield from _sold_beside(wire)


def _as_gauge(wire: Wire) -> Iterator[Item]:
    least = wire.area_cmil if wire.nominal_mm2 else wire.area_cmil * (1 - trade.STRANDING_SLACK)
    awg = trade.known_gauge(wire) or thinnest_stocked(least / CMIL_PER_MM2)
    if awg is None:
        yield _none("gauge to use", "4/0 AWG")
        return
    exact = trade.equivalent_gauge(least)
    odd = [] if exact in STOCKED else [f"{exact} AWG would do and is seldom stocked"]
    yield answer("gauge to use", f"{awg} AWG", because=["the thinnest that is not thinner", *odd])
    yield _surplus("surplus copper of the gauge", _gauge_mm2(awg), wire)


def _as_metric(wire: Wire) -> Iterator[Item]:
    size = thinnest_metric(wire.area_mm2)
    if not size:
        yield _none("metric size to use", "25 mm2")
        return
    flexible = next(
        r
        for r in tables.load("iec-60228").rows
        if r.number("nominal_mm2") == size
        and r.cells["class"] == 5
        and r.cells["coating"] == "plain"
    )
    yield answer(
        "metric size to use",
        f"{size:g} mm2",
        because=["the least nominal size that is not smaller"],
        against=[
            "IEC 60228 sets its resistance and not its area: at most "
            f"{flexible.text('max_ohm_per_km')} ohm/km at 20 C if flexible"
        ],
    )
    yield _surplus("surplus copper of the metric size", size, wire, flexible)


def _surplus(name: str, area: float, wire: Wire, row: tables.Row | None = None) -> Item:
    return figure(
        name,
        100 * (area / wire.area_mm2 - 1),
        "%",
        source=trade.AWG_LAW if row is None else row.source,
        working=lambda: f"100 x ({put(area)} mm2 / {put(wire.area_mm2)} mm2 - 1)",
    )


def _none(name: str, last: str) -> Item:
    return cannot_tell(
        name,
        f"the table ends at {last}, which is smaller than this wire",
        measure="take the size from the maker's sheet",
    )


def _sold_beside(wire: Wire) -> Iterator[Item]:
    pair = next(
        (p for p in TRADE_PAIRS.items() if wire.nominal_mm2 == p[0] or wire.gauge == p[1]), None
    )
    if pair is None:
        return
    less = 100 * (_gauge_mm2(pair[1]) / pair[0] - 1)
    never = [f"{pair[1]} AWG has less copper: it does not replace {pair[0]:g} mm2"]
    yield answer(
        "sold side by side, for information",
        f"{pair[0]:g} mm2 and {pair[1]} AWG",
        against=never if less < 0 else [],
    )
    area = put(_gauge_mm2(pair[1]), "mm2")
    yield figure(
        f"{pair[1]} AWG against {pair[0]:g} mm2",
        less,
        "%",
        source=_PAIRING,
        working=lambda: f"100 x ({area} / {put(pair[0], 'mm2')} - 1)",
    )
