"""The inputs of `pull`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Problem,
    Wire,
    extra,
)
from wirecalc.trade import crimps

from ..inputs import WIRE
from ..inputs_joint import FORCE, OWN, PULL_STANDARD, TERMINAL

WireInput = Annotated[Wire, WIRE]
Force = Annotated[float, FORCE]
Terminal = Annotated[str, TERMINAL]
PullStandard = Annotated[
    str,
    PULL_STANDARD,
    extra("the terminal's own judges; another is a stricter second line"),
]


TOO_STRONG_PSI = 70_000  # more than hard-drawn copper bears (from memory): a slip of the unit


def other_family(terminal: str, standard: str) -> Iterator[Problem]:
    """Yield a problem where a standard of clamps shall judge a crimp, or one of crimps a clamp."""
    if standard != OWN and not crimps.same_family(terminal, standard):
        family = crimps.CLAMP_STANDARDS if terminal == "clamp" else crimps.CRIMP_STANDARDS
        yield Problem(
            "pull_standard",
            f"{standard} judges {'crimps' if terminal == 'clamp' else 'clamps'}, "
            f"and a {terminal} terminal is none",
            f"choose one of {', '.join(family)}",
        )


def refuse(wire: Wire, force: float, terminal: str, pull_standard: str = OWN) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    yield from other_family(terminal, pull_standard)
    most = crimps.breaking_force(wire)[0] * TOO_STRONG_PSI / crimps.SOFT_COPPER_PSI[0]
    if force > most:
        yield Problem(
            "force",
            f"{force:.4g} lbf is more than {wire} can bear before it breaks itself",
            "check the unit (lbf, N, kgf) and the gauge",
        )
