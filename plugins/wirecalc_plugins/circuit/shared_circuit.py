"""What one load may take of a circuit that feeds others too (NEC 210.23(A))."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, at_most, at_or_below, cannot_tell, confirmed, figure, not_checked, put

_PLUGGED = confirmed("nec-210-23-a-1", "NEC", "210.23(A)(1)", copies=2)
_FASTENED = confirmed("nec-210-23-a-2", "NEC", "210.23(A)(2)", copies=2)
_SHARED = (15.0, 20.0)  # circuits that the rule is for, A
SWITCH_OFF = "switch the breaker off and see what else goes dead"


def _ruled(circuit: float) -> bool:
    return any(at_or_below(circuit, r) and at_or_below(r, circuit) for r in _SHARED)


def plug_in_load(
    current: float,
    circuit: float,
    alone: bool | None,
    plugged: bool | None,
    *,
    asks: str = "only_receptacle",
) -> Iterator[Item]:
    """One cord-and-plug load takes at most 80 % of a 15 or 20 A circuit with other outlets.

    `current` and `circuit` in A; `alone` says that the circuit has no other outlet, `plugged` that
    the load is not fastened in place; None where not known; `asks` names the input for `alone`.
    """
    if not _ruled(circuit) or alone or plugged is False:
        return
    name, limit = "plug-in load on a shared circuit", 0.8 * circuit
    unknown = [n for n, v in ((asks, alone), ("fastened_in_place", plugged)) if v is None]
    if unknown and not at_or_below(current, limit):
        yield cannot_tell(
            name,
            f"over {limit:g} A, 80 % of the circuit, and it was not said whether "
            + (
                "the circuit has other outlets"
                if alone is None
                else "the load is fastened in place"
            ),
            measure=SWITCH_OFF if alone is None else "see how the load is connected",
            needs=unknown,
            source=_PLUGGED,
        )
        return
    yield at_most(
        name,
        current,
        limit,
        "A",
        source=_PLUGGED,
        says="80 % of the circuit",
        action="put the load on a circuit of its own",
    )


def fastened_load(
    current: float, circuit: float, feeds_others: bool | None, name: str
) -> Iterator[Item]:
    """What is fastened in place takes at most half of a 15 or 20 A circuit that feeds others.

    `current`, the sum of all that is fastened in place, and `circuit` in A. Lights do not count.
    """
    if feeds_others is False:
        return
    if not _ruled(circuit):
        yield not_checked(name, "NEC 210.23(A)(2) is for circuits of 15 and 20 A")
        return
    half = circuit / 2
    yield figure(
        "load over half of the circuit",
        current - half,
        "A",
        source=_FASTENED,
        working=lambda: f"{put(current, 'A')} - {put(circuit, 'A')} / 2",
    )
    if feeds_others is None and not at_or_below(current, half):
        yield cannot_tell(
            name,
            f"over half of the circuit, {half:g} A, and it was not said whether it feeds others",
            measure=SWITCH_OFF,
            needs=("feeds_others",),
            source=_FASTENED,
        )
        return
    yield at_most(
        name,
        current,
        half,
        "A",
        source=_FASTENED,
        says="half the breaker's amps, where it feeds others too; it was so before the repair",
        action="give it a circuit of its own: a job for an electrician",
    )
