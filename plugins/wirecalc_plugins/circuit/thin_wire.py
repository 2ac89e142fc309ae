"""Wire of a motor circuit that is thinner than the exemption of NEC 240.4(G) was seen for."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, Wire, cannot_tell
from wirecalc.trade import nec_ampacity

EXEMPT_FROM_A = 15.0  # the exemption of NEC 240.4(G) was seen for 14 AWG (15 A) and thicker


def too_thin(wire: Wire) -> Iterator[Item]:
    """Say of wire thinner than 14 AWG that its device can't be told."""
    small = nec_ampacity.small_conductor_breaker(wire) or nec_ampacity.thinnest_breaker(wire)
    if small is not None and small.number("breaker_A") < EXEMPT_FROM_A:
        yield cannot_tell(
            "device on wire this thin",
            f"NEC 240.4(D) allows {small.number('breaker_A'):g} A on {wire}, and that only under "
            "conditions; that 240.4(G) lifts this was seen for 14 AWG and thicker only",
            measure="have an electrician fit 14 AWG or thicker, or read the code in force",
            source=small.source,
        )
