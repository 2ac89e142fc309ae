"""Which answers of one check serve another: the machine's plate feeds all, the rest is offered."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ..engine.one_input import is_known
from ..jobs.sheet.plan import Check, on_plate
from ..typed.quantity_kinds import Reading
from ..typed.word_kinds import YesNo
from .answers import Answer
from .job_state import State

OF_THE_MACHINE = (  # printed on its own plate, or its circuit's: one value for all checks
    "branch_selection_current",
    "breaker",
    "code_letter",
    "frequency",
    "full_load_current",
    "horsepower",
    "locked_rotor_current",
    "maximum_breaker",
    "minimum_ampacity",
    "nameplate_current",
    "nameplate_load",
    "nameplate_power",
    "nameplate_voltage",
    "nameplate_voltage_low",
    "nominal_voltage",
    "range_rating",
    "rated_load_current",
    "receptacle",
    "service_factor_current",
)


class Offered(NamedTuple):
    """An answer to offer, and what it was given for."""

    answer: Answer
    of: str


def of_the_machine(check: Check, name: str) -> bool:
    """Whether an input of a check stands on the plate of the machine, and not of a part of it."""
    kind = check.calculation.input(name).kind
    return name in OF_THE_MACHINE and on_plate(kind) and not check.part


def write_answers(state: State, at: int, check: Check, answers: Mapping[str, object]) -> None:
    """Write the answers of a check where they belong: on the machine's plate, or in its entry."""
    entry = state.checks[at]
    for name in (i.name for i in check.calculation.inputs):
        new = answers.get(name)
        if new == check.given.get(name):
            continue
        plate = state.sheet.get("nameplate", {})
        if not of_the_machine(check, name):
            plate = {}
        elif new is not None:
            plate = state.sheet.setdefault("nameplate", {})
        entry.pop(name, None)
        plate.pop(name, None)
        if new is not None:
            (plate if of_the_machine(check, name) else entry)[name] = new


def offered(check: Check, others: Sequence[Check]) -> Mapping[str, Offered]:
    """Return what was given for inputs of the same name in other checks: one name, one quantity.

    A reading, and what was seen while it was taken, serve only at the same stage: after the work
    they are others.
    """
    found: dict[str, Offered] = {}
    for other in others:
        for name, answer in _of_one(check, other):
            found[name] = Offered(answer, other.name)
    return found


def _of_one(check: Check, other: Check) -> Iterator[tuple[str, Any]]:
    kinds = {i.name: i.kind for i in check.calculation.inputs}
    for name, answer in other.given.items():
        kind = kinds.get(name)
        if kind is None or not isinstance(answer, str | list) or not is_known(answer):
            continue
        if not isinstance(kind, Reading | YesNo) or other.place.stage == check.place.stage:
            yield from _as_asked(name, answer, many=check.calculation.input(name).many)


def _as_asked(name: str, answer: str | list[Any], *, many: bool) -> Iterator[tuple[str, Any]]:
    """Yield an answer as an input takes it: a list, or one value; several are no one value."""
    items = answer if isinstance(answer, list) else [answer]
    if all(isinstance(item, str) for item in items):
        if many:
            yield name, items
        elif len(items) == 1:
            yield name, items[0]
