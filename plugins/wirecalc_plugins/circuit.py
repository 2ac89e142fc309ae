"""The branch circuit: what it carries, and which breaker belongs on it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wirecalc import Calculation, hookimpl

from .branch_circuit import circuit
from .breaker import breaker
from .motor_circuit import motor_circuit


@hookimpl
def wirecalc_calculations() -> Sequence[Calculation[Any]]:
    """Provide the checks of a branch circuit."""
    return [breaker, circuit, motor_circuit]
