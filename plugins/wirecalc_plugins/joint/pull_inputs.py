"""The inputs of `pull`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Wire,
    extra,
)

from ..inputs import WIRE
from ..inputs_joint import FORCE, PULL_STANDARD, TERMINAL

WireInput = Annotated[Wire, WIRE]
Force = Annotated[float, FORCE]
Terminal = Annotated[str, TERMINAL]
PullStandard = Annotated[
    str,
    PULL_STANDARD,
    extra("the terminal's own judges; another is a stricter second line"),
]
