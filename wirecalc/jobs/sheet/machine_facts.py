"""What a sheet says of a machine that decides what it must have: connection, energy, compressor.

A row of a table that holds only for some machines binds where the sheet does not say which it is.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ...base.errors import Problem, did_you_mean
from .shape import words_of

FACTS: Mapping[str, tuple[str, ...]] = {
    "connection": ("cord-connected", "hard-wired"),
    "energy": ("electric", "gas", "heat pump"),
    "compressor": ("fixed speed", "inverter"),
    "refrigerant": ("flammable", "not flammable"),
}
_SAME = {  # words of readings, and what stands on plates (safety groups of ISO 817)
    "plug": "cord-connected",
    "large-plug": "cord-connected",
    "wired-in": "hard-wired",
    **dict.fromkeys(("r-600a", "r-290", "r-441a", "r-32", "r-454b"), "flammable"),
    **dict.fromkeys(("isobutane", "propane"), "flammable"),
    **dict.fromkeys(("r-134a", "r-12", "r-22", "r-410a", "r-404a"), "not flammable"),
}
_REFRIGERANT = re.compile(r"(?:r|hc|hfc|hfo|hcfc|cfc)?[- ]?([0-9]{2,4}[a-z]?)")  # R134a, HFC-134a
_OR = " or "


class Subject(NamedTuple):
    """What is judged: a machine (without a name an only one, or the job), its kind, its facts."""

    machine: str
    kind: str
    facts: Mapping[str, str] = {}


def facts_of(raw: Mapping[str, Any]) -> dict[str, str]:
    """Return the facts that [job] or [[machine]] says, as they are listed."""
    said = {key: words_of(raw.get(key, "")) for key in FACTS}
    return {k: _as_listed(v, FACTS[k]) for k, v in said.items() if v}


def problems_of(
    raw: Mapping[str, Any], label: str, *, of_several: bool = False
) -> Iterator[Problem]:
    """Report facts in words that are not known, and those of a job `of_several` machines."""
    for key, said in facts_of(raw).items():
        if said not in FACTS[key]:
            near = did_you_mean(said, FACTS[key])
            would_do = near if near.startswith("did") else f"write {_OR.join(FACTS[key])}"
            yield Problem(f"{label}: {key}", f"{said!r} is not known", would_do)
        elif of_several:
            would_do = "write it below the [[machine]] that it is of"
            yield Problem(f"{label}: {key}", "whose it is cannot be told", would_do)


def holds(when: str, facts: Mapping[str, str]) -> bool:
    """Whether what holds only for some machines holds for this one; it does where nothing is said.

    >>> holds("hard-wired", {}), holds("hard-wired", {"connection": "cord-connected"})
    (True, False)
    """
    key = deciding(when)
    return key not in facts or facts[key] in when.split(_OR)


def deciding(when: str) -> str:
    """Return the fact that decides whether it holds; empty where none does."""
    words = when.split(_OR)
    return next((key for key, known in FACTS.items() if words[0] in known), "")


def others(when: str) -> Sequence[str]:
    """Return what a sheet may say so that it does not hold."""
    words = when.split(_OR)
    return [word for word in FACTS.get(deciding(when), ()) if word not in words]


def unless(when: str) -> str:
    """Return what a sheet may say so that it does not hold, as it is written; else nothing."""
    said = " or ".join(f'"{word}"' for word in others(when))
    return f"{deciding(when)} = {said}" if said else ""


def _as_listed(said: str, known: Sequence[str]) -> str:
    """Return a word as it is listed; readings of a machine have other words for its connection."""
    word = said.casefold().strip()
    if number := _REFRIGERANT.fullmatch(word):
        word = f"r-{number[1]}"
    word = _SAME.get(word, word)
    return word if word in known else said
