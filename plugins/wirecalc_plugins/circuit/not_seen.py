"""What was not looked at: how far a circuit can be judged without its wire or receptacle."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Item, at_or_below, cannot_tell, confirmed

_THINNEST = confirmed("nec-240-4-d-14", "NEC", "240.4(D): 14 AWG copper, 15 A", copies=3)
_SHARED = confirmed("nec-210-21-b-2", "NEC", "Table 210.21(B)(2)", copies=2)
THINNEST_CARRIES_A = 15.0  # 14 AWG copper, the thinnest wire of a branch circuit
RECEPTACLE_CIRCUIT_A = 20.0  # the largest circuit of ordinary receptacles
ANY_RECEPTACLE_A = 12.0  # what every 15 or 20 A receptacle may give

WIRE_NOT_SEEN = (
    "up to 15 A on a breaker of up to 20 A the thinnest wire of a branch circuit, 14 AWG, carries "
    "the load; above that the wire is asked"
)
RECEPTACLE_NOT_SEEN = (
    "up to 12 A any receptacle of a 15 or 20 A circuit serves; above that it is asked"
)


def unseen_wire(
    counted: float, breaker: float, largest: float = RECEPTACLE_CIRCUIT_A
) -> Iterator[Item]:
    """Ask for the building wire where the load as it counts, or the breaker, in A, is too large."""
    if at_or_below(counted, THINNEST_CARRIES_A) and at_or_below(breaker, largest):
        return
    yield cannot_tell(
        "load on the wire",
        f"the wire was not given, and {counted:.4g} A on a {breaker:g} A breaker may be more than "
        "the thinnest of a branch circuit carries",
        measure="read the size on the wire or cable where it ends: --wire",
        needs=("building_wire",),
        source=_THINNEST,
    )


def unseen_receptacle(current: float, breaker: float) -> Iterator[Item]:
    """Ask for the receptacle of a plug-in load where load or circuit, in A, is too large."""
    small = at_or_below(breaker, RECEPTACLE_CIRCUIT_A)
    if small and at_or_below(current, ANY_RECEPTACLE_A):
        return
    yield cannot_tell(
        "load on the receptacle",
        f"{current:.4g} A on a {breaker:g} A circuit, and the receptacle was not given",
        measure="read the rating on the receptacle: --receptacle",
        needs=("receptacle",),
        source=_SHARED,
    )


def zero_amps(name: str) -> Item:
    """Say of a load of 0 A that it was not measured as it runs."""
    return cannot_tell(
        name,
        "0 A: it does not run, or the clamp is not around one of its two wires",
        measure="clamp one wire of the load alone while it runs",
        source=PRACTICE,
    )
