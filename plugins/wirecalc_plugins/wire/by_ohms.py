"""Which size a wire is, or replaces it, by the ohms of a length of it in place of its strands."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    CMIL_PER_MM2,
    Item,
    Problem,
    Wire,
    answer,
    at_or_below,
    cannot_tell,
    gauge_cmil,
    gauge_number,
    tables,
)
from wirecalc.trade.wire_runs import KFT_PER_KM, resistance_per_length

from .ohms_of_length import BASE_C, CLAD_ROWS, LAY, METAL_ROWS, rise
from .sizes import Band

LEAST_MM2, MOST_MM2 = 0.1, 10.0  # the wires inside appliances
_FLEXIBLE = (5,)
_TO_NOHM_M = 1e9


def known_or_20(known_at: float | None) -> float:
    """Return the temperature in C at which a resistance is printed: 20 where none was said."""
    return BASE_C if known_at is None else known_at


def outside(area: float) -> bool:
    """Whether an area in mm2 is none of a wire inside an appliance."""
    return not at_or_below(LEAST_MM2, area) or not at_or_below(area, MOST_MM2)


def wrong_ohms(
    ohm_per_kft: float | None, known_at: float | None, metal: str, *, counted: bool
) -> Iterator[Problem]:
    """Refuse ohms of no wire inside an appliance, and those beside what they stand in place of."""
    if ohm_per_kft is None:
        if known_at is not None:
            yield Problem(
                "known_at",
                "it goes with resistance_per_length, which was not given",
                "give resistance_per_length, or leave it out",
            )
        return
    area = band_of(ohm_per_kft, known_or_20(known_at), metal).wire.area_mm2
    if outside(area):
        yield Problem(
            "resistance_per_length",
            f"{ohm_per_kft:g} ohm/kft is a wire of {area:.3g} mm2, outside 0.1 to 10 mm2",
            "check ohm/km, ohm/kft and ohm/m, and that it is one conductor and not the loop",
        )
    if counted:
        yield Problem(
            "resistance_per_length",
            "it stands in place of the strands, and both were given",
            "give strands with strand_diameter, or resistance_per_length alone",
        )


def ohm_per_km(ohm_per_kft: float, known_at: float, metal: str = "copper") -> float:
    """Return ohm per km at 20 C of what is printed in ohm per 1000 ft for another temperature."""
    return ohm_per_kft * KFT_PER_KM / rise(metal, known_at)


def band_of(ohm_per_kft: float, known_at: float, metal: str) -> Band:
    """Return the wires that have so many ohms: solid bare, to stranded of its worst coating."""
    base = "copper" if metal.endswith("copper") else metal
    at_20 = ohm_per_km(ohm_per_kft, known_at, base if base in METAL_ROWS else "clad")
    least, most = _resistivities(metal)
    thin, thick = (r / at_20 for r in (least, most * LAY))
    size = f"wire of {ohm_per_kft:.4g} ohm/kft"
    coating = "bare" if base == metal else metal.removesuffix(" copper")
    made = Wire(size, thin * CMIL_PER_MM2, metal=base, coating=coating, size=size)
    return Band(made, made, made._replace(area_cmil=thick * CMIL_PER_MM2))


def _resistivities(metal: str) -> tuple[float, float]:
    """Return least and most resistivity in nohm m: of a coated wire, that of its finest strands."""
    names = {"copper-clad aluminium": CLAD_ROWS}.get(metal, (METAL_ROWS.get(metal, ""),))
    if metal.endswith(" copper"):
        rows = [r for r in tables.load("metals").rows if r.text("metal").startswith("tinned")]
        rows.append(tables.load("metals").row(metal=METAL_ROWS["copper"]))
    else:
        rows = [tables.load("metals").row(metal=name) for name in names]
    values = [r.number("resistivity_20C_ohm_m") * _TO_NOHM_M for r in rows]
    return min(values), max(values)


def metric_by_ohms(at_20: float, metal: str) -> Iterator[Item]:
    """Name the metric size whose limit of IEC 60228 a wire keeps, the thickest of them."""
    coating = "tinned" if metal == "tinned copper" else "plain"
    limits = _limits(_FLEXIBLE, coating)
    kept = [size for size, row in limits.items() if at_or_below(at_20, row)]
    if not kept:
        yield cannot_tell(
            "metric size",
            f"{at_20:.4g} ohm/km is more than the thinnest listed size may have",
            measure="count the strands, and measure one with a calliper",
        )
        return
    size = max(kept)
    yield answer(
        "metric size",
        f"{size:g} mm2",
        because=[f"IEC 60228 lets it have {limits[size]:g} ohm/km at 20 C, class 5, {coating}"],
    )


def gauge_to_use(ohm_per_kft: float, known_at: float, stocked: tuple[str, ...]) -> Item:
    """Name the thinnest gauge of which a solid wire has no more ohms; strands have 2 % more."""
    for gauge in reversed(stocked):
        wire = Wire(gauge, gauge_cmil(gauge_number(gauge)), gauge=gauge, stranded=False)
        own = resistance_per_length(wire, known_at).ohm_per_kft
        if at_or_below(own, ohm_per_kft):
            has = f"solid it has {own:.4g} ohm/kft at {known_at:g} C"
            more = "stranded it has 2 % more, the lay of its strands"
            return answer("gauge to use", f"{gauge} AWG", because=[has], against=[more])
    return _ends("gauge to use", "4/0 AWG")


def metric_to_use(at_20: float) -> Item:
    """Name the least metric size that may have no more ohms at 20 C."""
    flexible, stiff = (_first(_limits(c, "plain"), at_20) for c in (_FLEXIBLE, (1, 2)))
    if flexible is None:
        return _ends("metric size to use", "25 mm2")
    less = [f"{stiff[0]:g} mm2 would do if it is solid or of class 2"] if stiff else []
    return answer(
        "metric size to use",
        f"{flexible[0]:g} mm2",
        because=[f"IEC 60228 lets it have {flexible[1]:g} ohm/km at 20 C, class 5"],
        against=less if stiff and stiff[0] < flexible[0] else [],
    )


def _first(limits: dict[float, float], at_20: float) -> tuple[float, float] | None:
    fits = ((size, most) for size, most in sorted(limits.items()) if at_or_below(most, at_20))
    return next(fits, None)


def _limits(classes: tuple[int, ...], coating: str) -> dict[float, float]:
    """Return the most ohm per km at 20 C of each nominal size, copper."""
    return {
        r.number("nominal_mm2"): r.number("max_ohm_per_km")
        for r in tables.load("iec-60228").rows
        if r.number("class") in classes
        and r.text("metal") == "copper"
        and r.text("coating") == coating
    }


def _ends(name: str, last: str) -> Item:
    return cannot_tell(
        name,
        f"the table ends at {last}, which has more ohms than this wire",
        measure="take the size from the maker's sheet",
    )
