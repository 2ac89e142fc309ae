"""Pull tests of crimps."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Item,
    OneOf,
    Problem,
    Reading,
    Wire,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    crimps,
    figure,
    not_checked,
    put,
)

_PULL = "pull-out force"
_OWN = "own"
_TOO_STRONG_PSI = 70_000  # more than hard-drawn copper bears (from memory): a slip of the unit


def _standards() -> list[str]:
    return [_OWN, *crimps.pull_standards()]


def _refuse(wire: Wire, force: float, terminal: str, standard: str = _OWN) -> Iterator[Problem]:
    if standard != _OWN and not crimps.same_family(terminal, standard):
        family = crimps.CLAMP_STANDARDS if terminal == "clamp" else crimps.CRIMP_STANDARDS
        yield Problem(
            "standard",
            f"{standard} judges {'crimps' if terminal == 'clamp' else 'clamps'}, "
            f"and a {terminal} terminal is none",
            f"choose one of {', '.join(family)}",
        )
    most = crimps.breaking_force(wire)[0] * _TOO_STRONG_PSI / crimps.SOFT_COPPER_PSI[0]
    if force > most:
        yield Problem(
            "force",
            f"{force:.4g} lbf is more than {wire} can bear before it breaks itself",
            "check the unit (lbf, N, kgf) and the gauge",
        )


@calculation(
    part="wire and joint",
    cautions=("pull-01", "crimp-03"),
    not_checked=(
        "the one-minute hold of the UL test (a peak just above the minimum does not prove it)",
        "crimp height and the look of the crimp",
    ),
    refuse=_refuse,
)
def pull(
    wire: Annotated[Wire, "wire crimped into the terminal"],
    force: Annotated[
        float, Reading("lbf", low=0, high=7000, typical="24 lbf", text="force at which it let go")
    ],
    terminal: Annotated[str, OneOf(crimps.terminal_kinds, text="kind of terminal")],
    standard: Annotated[
        str, OneOf(_standards, text="standard to judge by; own: that of the terminal")
    ] = _OWN,
) -> Iterator[Item]:
    """Does this crimp hold the least pull-out force of its standard?

    The terminal's own standard judges it: ring, fork and lug UL 486A-486B, push-on UL 310 (its
    pull table from memory), butt and closed-end splices UL 486C (its table not seen), a clamp
    terminal UL 486E. Another standard of the same family may be named; a clamp's table never
    judges a crimp. A wire between two listed sizes passes at the larger one's minimum, fails
    below the smaller one's, and can't be told between.

    Inputs: wire; force in lbf (0 to 7000); terminal; standard. Yields the minimum, the share of
    the wire's own breaking force (soft copper, 36 ksi, from memory) and one criterion.
    Refuses a standard of the other family, and a force that no copper of the size bears.
    Source: tables pull-crimp and pull-clamp.
    """
    judge = crimps.TERMINALS[terminal] if standard == _OWN else standard
    yield from _own_strength(wire, force)
    if judge != crimps.TERMINALS[terminal]:
        own = crimps.TERMINALS[terminal]
        yield not_checked(f"the standard of a {terminal} terminal, {own}", f"{judge} was named")
    minimum = crimps.pull_minimum(wire, judge)
    if minimum is None:
        yield cannot_tell(
            _PULL,
            f"no minimum of {judge} for {wire} on a {terminal} terminal was seen",
            measure="take the minimum from the terminal maker's sheet, or name a --standard",
        )
    else:
        yield from _judge(force, minimum, judge)
    if judge in ("ul-310", crimps.UNSEEN):
        confirmed = crimps.pull_minimum(wire, "ul-486a")
        if confirmed is not None and confirmed.above is None:
            yield figure(
                "UL 486A minimum of the same size", confirmed.lbf, "lbf", source=confirmed.source
            )


def _own_strength(wire: Wire, force: float) -> Iterator[Item]:
    if wire.metal != "copper":
        return
    weakest, strongest = crimps.breaking_force(wire)
    if force > strongest:
        yield not_checked("wire and gauge", "it bore more than soft copper of this size can")
    yield figure(
        "share of the wire's own breaking force",
        100 * force / weakest,
        "%",
        source=crimps.SOFT_COPPER,
        working=lambda: f"100 x {put(force)} lbf / {put(weakest)} lbf; 36 ksi times its area",
    )


def _judge(force: float, minimum: crimps.PullMinimum, judge: str) -> Iterator[Item]:
    """Judge in the unit that the source is written in."""
    scale = crimps.NEWTONS_PER_LBF if minimum.written_in == "N" else 1.0
    other = ("lbf", 1.0) if minimum.written_in == "N" else ("N", crimps.NEWTONS_PER_LBF)
    unit, limit = minimum.written_in, minimum.lbf * scale
    if minimum.above is None:
        yield figure(
            f"minimum of {judge}",
            limit,
            unit,
            source=minimum.source,
            also=[(minimum.lbf * other[1], other[0])],
            toward="up",
        )
    reaches = at_or_below(-force, -minimum.lbf)
    reaches_above = minimum.above is not None and at_or_below(-force, -minimum.above)
    if minimum.above is not None and reaches and not reaches_above:
        yield cannot_tell(
            _PULL,
            f"{judge} lists no such size: {minimum.lbf:.4g} lbf for the next thinner wire, "
            f"{minimum.above:.4g} lbf for the next thicker one",
            measure="take the minimum from the terminal maker's sheet",
            source=minimum.source,
        )
        return
    if minimum.above is not None and reaches_above:
        limit = minimum.above * scale
    yield at_least(
        _PULL,
        force * scale,
        limit,
        unit,
        source=minimum.source,
        says=minimum.note,
        action="cut back and remake it with the right die, then pull another sample",
    )
