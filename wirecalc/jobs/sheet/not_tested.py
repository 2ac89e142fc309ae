"""What a sheet says was not tested, and why."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ...base.errors import Problem, did_you_mean
from ...engine.reserved import NOT_TESTED_KEYS
from ...plugging.host import Catalogue
from ..checks import NotTested
from .shape import place_of, words_of


def read(
    entries: Sequence[Mapping[str, Any]],
    machines: Sequence[str],
    catalogue: Catalogue,
    problems: list[Problem],
) -> list[NotTested]:
    """Read the entries of a sheet; what is wrong goes to `problems`."""
    found = [
        entry
        for number, raw in enumerate(entries, start=1)
        for entry in _entry(number, raw, machines, catalogue, problems)
    ]
    problems += _twice(found)
    return found


def _entry(
    number: int,
    raw: Mapping[str, Any],
    machines: Sequence[str],
    catalogue: Catalogue,
    problems: list[Problem],
) -> Iterator[NotTested]:
    name, reason = (words_of(raw.get(key, "")) for key in ("name", "reason"))
    label = f"not_tested {name or number}"
    before = len(problems)
    problems += [
        Problem(f"{label}: {k}", "an entry has no such key", did_you_mean(k, NOT_TESTED_KEYS))
        for k in raw
        if k not in NOT_TESTED_KEYS
    ]
    lacks = [key for key, said in (("name", name), ("reason", reason)) if not said]
    if lacks:
        would_do = "write name, reason, and required = true or false"
        problems.append(Problem(label, f"has no {' and no '.join(lacks)}", would_do))
    required = raw.get("required", False)
    if not isinstance(required, bool):
        wrong = f"{required!r} is neither true nor false"
        problems.append(Problem(f"{label}: required", wrong, "write required = true"))
    place = place_of(raw, label, machines, problems)
    named = words_of(raw.get("calculation", ""))
    if named and named not in catalogue.calculations:
        wrong = f"there is no calculation {named!r}"
        problems.append(Problem(label, wrong, catalogue.would_do(named)))
    if len(problems) == before:
        yield NotTested(name, required, reason, place.step, place.machine, named)


def _twice(said: Sequence[NotTested]) -> Iterator[Problem]:
    """Report entries of what was not tested that cannot be told apart."""
    seen: set[tuple[str, str]] = set()
    for entry in said:
        same = entry.machine, " ".join(entry.name.casefold().split())
        if same in seen:
            wrong, would_do = "stands there twice", "take one out, or give each a name of its own"
            yield Problem(f"not_tested {entry.title}", wrong, would_do)
        seen.add(same)
