"""The inputs of `conforms`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Problem,
    asked,
    extra,
)

NORMAL, UNIFORM, TRIANGULAR = "normal-95", "uniform", "triangular"


def _number(text: str, typical: str) -> Nameplate:
    return Nameplate("units", low=-100, high=1_000_000, typical=typical, text=text)


MeasuredValue = Annotated[float, _number("what was read, in any one unit", "0.096 units")]
Error = Annotated[
    float,
    Nameplate(
        "units",
        above=0,
        high=1_000_000,
        typical="0.006 units",
        text="error of the reading each way, in the same unit",
    ),
]
LimitHigh = Annotated[
    float | None,
    _number("most that is allowed, in the same unit", "0.100 units"),
    asked("without a limit nothing is decided", when="not limit_low"),
    extra("there is only a lower limit"),
]
LimitLow = Annotated[
    float | None,
    _number("least that is allowed, in the same unit", "0.000 units"),
    extra("there is only an upper limit"),
]
ErrorIs = Annotated[
    str,
    OneOf(
        (NORMAL, UNIFORM, TRIANGULAR),
        text="normal-95: 95 % lie within (k = 2); uniform: all within, none likelier",
    ),
    extra("normal-95 counts: the way that most certificates state it"),
]


def refuse(limit_high: float | None, limit_low: float | None, error: float) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if limit_high is None and limit_low is None:
        yield Problem("limit_high", "no limit was given", "give limit_high, limit_low or both")
    elif limit_high is not None and limit_low is not None and limit_low >= limit_high:
        yield Problem(
            "limit_low",
            f"{limit_low:g} is not below the upper limit of {limit_high:g}",
            "swap them, or leave one out",
        )
