"""The bench: samples, a class, a part. No machine goes back, and nothing is required."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ...base.errors import Problem
from ..job import BENCH
from .kinds import required_of_all
from .machine_facts import Subject
from .shape import words_of

_STEPS = ("before power", "power up", "return to service")


def problems_of(sheet: Mapping[str, Any], subjects: Sequence[Subject]) -> Iterator[Problem]:
    """Report what on a sheet of the bench is of a machine."""
    if all(s.kind != BENCH for s in subjects):
        return
    of_machines = required_of_all()
    said = ["[[machine]]"] if sheet.get("machine") else []
    said += ["[job] machine"] if words_of(sheet["job"].get("machine", "")) else []
    for check in sheet.get("check", []):
        if check.get("calculation") in of_machines or check.get("step") in _STEPS:
            said.append(f"check {words_of(check.get('name', '')) or check.get('calculation')}")
    if said:
        yield Problem(
            "job: kind",
            f"a {BENCH} is for samples and parts, and the sheet has {', '.join(said)}",
            'write the kind of the machine, or "other"',
        )
