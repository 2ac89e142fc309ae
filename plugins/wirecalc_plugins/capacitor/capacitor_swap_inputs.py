"""The inputs of `capacitor-swap`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Problem,
    Reading,
    asked,
    extra,
    may_be_absent,
)

from .capacitor_classes import LIFE, PROTECTION, PROTECTIVE

DUTIES = ("run", "start")


def _marked(text: str, typical: str) -> Nameplate:
    return Nameplate("uF", above=0, high=2000, typical=typical, text=text)


def _end(text: str, goes_with: str) -> Nameplate:
    return Nameplate("uF", above=0, high=2000, typical="108 uF", text=text, goes_with=goes_with)


OldCapacitor = Annotated[
    float, _marked("size marked on the old part, or the lower end of its range", "30 uF")
]
NewCapacitor = Annotated[
    float, _marked("size marked on the new part, or the lower end of its range", "30 uF")
]
OldCapacitorVoltage = Annotated[
    float, Nameplate("V", low=50, high=1000, typical="250 V", text="volts on the old part")
]
NewCapacitorVoltage = Annotated[
    float, Nameplate("V", low=50, high=1000, typical="370 V", text="volts on the new part")
]
OldCapacitorDuty = Annotated[str, OneOf(DUTIES, text="what its place asks for", on_plate=True)]
NewCapacitorDuty = Annotated[str, OneOf(DUTIES, text="what the new part is", on_plate=True)]
OldCapacitorHigh = Annotated[
    float | None,
    _end("upper end of the old part's range", "old_capacitor"),
    asked("start parts are marked with a range", when="old_capacitor_duty=start"),
]
NewCapacitorHigh = Annotated[
    float | None,
    _end("upper end of the new part's range", "new_capacitor"),
    asked("start parts are marked with a range", when="new_capacitor_duty=start"),
]
OldCapacitorTemperature = Annotated[
    float | None,
    Nameplate("C", low=40, high=150, typical="70 C", text="temperature on the old part"),
    asked("the place is as hot as before"),
]
NewCapacitorTemperature = Annotated[
    float | None,
    Nameplate("C", low=40, high=150, typical="85 C", text="temperature on the new part"),
    asked("the place is as hot as before"),
]
CutoffVoltage = Annotated[
    float | None,
    Reading("V", above=0, high=1000, typical="280 V", text="across a start part at cut-off"),
    asked("a class too low bursts", when="new_capacitor_duty=start"),
]
OldCapacitorProtection = Annotated[
    str | None,
    PROTECTION,
    may_be_absent("no class of protection is marked on the old part"),
]
NewCapacitorProtection = Annotated[
    str | None,
    PROTECTION,
    asked("the old one is protected", when=f"old_capacitor_protection={'|'.join(PROTECTIVE)}"),
]
OldCapacitorLife = Annotated[
    str | None, LIFE, extra("a shorter life wears out sooner, and harms nobody")
]
NewCapacitorLife = Annotated[
    str | None, LIFE, extra("a shorter life wears out sooner, and harms nobody")
]


def refuse(
    old_capacitor: float,
    new_capacitor: float,
    old_capacitor_voltage: float,
    new_capacitor_voltage: float,
    old_capacitor_duty: str,
    new_capacitor_duty: str,
    old_capacitor_high: float | None = None,
    new_capacitor_high: float | None = None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    for whose, low, high, duty in (
        ("old", old_capacitor, old_capacitor_high, old_capacitor_duty),
        ("new", new_capacitor, new_capacitor_high, new_capacitor_duty),
    ):
        name = f"{whose}_capacitor_high"
        if high is not None and high <= low:
            yield Problem(name, f"{high:g} uF is not above {low:g} uF", "write the upper end")
        if high is not None and duty == "run":
            yield Problem(
                name, "a run capacitor is marked with one size, not a range", "is it a start part?"
            )
