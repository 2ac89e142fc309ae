"""A winding against its maker's ohms, both at 25 C."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product

from wirecalc import (
    MAKER,
    Item,
    Origin,
    Source,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    confirmed,
    figure,
    put,
    show,
)

from ..lead_resistance import LEADS_OHM
from .winding_pins import Pair

MAKER_SHARE, MAKER_C = 0.07, 25.0  # a maker's winding resistance holds within 7 % at 25 C

Known = tuple[float, float | None]  # a maker's ohms: one value, or the ends of a range

_TOLERANCE = confirmed(
    "winding-tolerance", "compressor makers' texts", "winding resistance, 7 % at 25 C", copies=2
)
_COPPER = confirmed("copper-234-5", "a compressor application guideline", "234.5 C", copies=1)

Ends = tuple[float, float]


def by_maker(
    name: str,
    pair: Pair,
    maker: Known,
    temperature: tuple[float | None, Ends | None],
    leads_unknown: bool,
) -> Iterator[Item]:
    """Judge a winding, or a pair of pins, against its maker's resistance, both at 25 C."""
    what = name
    warm, warm_ends = temperature
    if warm is None:
        yield cannot_tell(
            f"{what} by its maker",
            "the winding's temperature was not given, and 18 K move its resistance by 7 %",
            measure="let it stand until it has the room's temperature, and give that",
            needs=("winding_temperature",),
        )
        return
    at_25 = pair.ohm * _to_25(warm)
    leads = (0.0, LEADS_OHM) if leads_unknown else (0.0, 0.0)
    band = _span(
        lambda ohm, t, lead: (ohm - lead) * _to_25(t),
        (pair.low, pair.high),
        warm_ends or (warm, warm),
        leads,
    )
    yield figure(
        f"{what} at 25 C",
        at_25,
        "ohm",
        source=_COPPER,
        band=band,
        working=lambda: f"{put(pair.ohm, 'ohm')} x (234.5 + 25) / (234.5 + {put(warm, 'C')})",
    )
    action = "read it again cold, leads subtracted; then it has shorted turns"
    least, most, source = _limits(*maker)
    for side, limit, compare, toward in (
        ("lower limit", least, at_least, "up"),
        ("upper limit", most, at_most, "down"),
    ):
        if leads_unknown and at_or_below(limit, band[0]) != at_or_below(limit, band[1]):
            yield cannot_tell(
                f"{what}, {side}",
                f"{at_25:.4g} ohm with the leads in it, against "
                f"{show(limit, 'ohm', toward=toward)}",
                measure="touch the test leads together and read them",
                needs=("lead_resistance",),
                source=source,
            )
            continue
        yield compare(
            f"{what}, {side}",
            at_25,
            limit,
            "ohm",
            source=source,
            origin=Origin.MAKER,
            action=action if compare is at_least else "read it again cold, on clean pins",
            band=band,
        )


def _limits(low: float, high: float | None) -> tuple[float, float, Source]:
    """Return the limits in ohm at 25 C: a printed range, or 7 % about the one value."""
    if high is not None:
        return low, high, MAKER
    return low * (1 - MAKER_SHARE), low * (1 + MAKER_SHARE), _TOLERANCE


def _to_25(temperature: float, constant: float = 234.5) -> float:
    return (constant + MAKER_C) / (constant + temperature)


def _span(of: Callable[..., float], *ends: Ends) -> Ends:
    found = [of(*point) for point in product(*ends)]
    return min(found), max(found)
