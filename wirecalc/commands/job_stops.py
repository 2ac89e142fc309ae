"""What hands and meter need at a step of the work, before anything of it is asked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..jobs.checks import STEPS
from ..jobs.sheet import confirmed
from ..jobs.sheet.kinds import OTHER, table_kinds, usual
from ..jobs.sheet.machine_facts import facts_of
from ..jobs.sheet.shape import words_of
from ..said.items import library_caution

_STOPS = {  # step -> keys of the caution library
    "isolate": ("dead-02", "dead-01", "cap-01"),  # the first as the machine is connected
    "live readings": ("live-01", "meter-01"),
    "power up": ("gnd-01", "cord-04", "meter-01"),
}
_HANDS_IN = STEPS[STEPS.index("dead tests") : STEPS.index("power up")]  # but for live readings
_ANY = (
    *("air-conditioner", "dishwasher", "disposal", "dryer", "other", "range", "water-heater"),
    *("fan", "ice-machine"),
)
_WAYS = {"cord-connected": ("dead-02",), "hard-wired": ("dead-03",)}  # how it is isolated
_STILL = "STOP  keep it unplugged or locked out, and prove it dead"


def of_machine(job: Mapping[str, Any]) -> list[str]:
    """Return what is to be known of such a machine before anything else."""
    return confirmed.stops(words_of(job.get("kind", "")), facts_of(job))


class Stops:
    """The stops of each step, once; those of a dead machine again after every live reading."""

    def __init__(self) -> None:
        self._said: set[str] = set()
        self._dead = False

    def at(self, step: str, job: Mapping[str, Any]) -> list[str]:
        """Return what is to be kept at a step; `job` is what the sheet says of the machine."""
        if step in _HANDS_IN and step != "live readings":
            if self._dead:
                return [_STILL]
            step = "isolate"
        keys = [*_STOPS.get(step, ())]
        if step == "isolate":
            self._dead = True
            keys[:1] = _isolated(job)
            if _has_no_capacitor(words_of(job.get("kind", ""))):
                keys.remove("cap-01")
            self._said -= set(keys)
        cautions = [library_caution(key) for key in keys if key not in self._said]
        self._said |= set(keys)
        return [f"STOP  {caution.line}" for caution in cautions if caution]

    def reads(self, step: str) -> None:
        """Note that something is read at a step: with the power on it is dead no longer."""
        if step in _STOPS and step != "isolate":
            self._dead = False


def _has_no_capacitor(kind: str) -> bool:
    """Whether nothing is ever discharged in a machine of this kind; of any other it may be."""
    listed = kind in table_kinds() and kind != OTHER
    return listed and all(check.calculation != "discharge" for check in usual(kind))


def _isolated(job: Mapping[str, Any]) -> Sequence[str]:
    """Return the stops by which a machine is isolated: by its plug, by its breaker, or either."""
    either = ("dead-02", "dead-03") if words_of(job.get("kind", "")) in _ANY else ("dead-02",)
    return _WAYS.get(facts_of(job).get("connection", ""), either)
