"""How far a job was asked: its sheet, and what was passed over since it was taken up."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from ..engine.reserved import CHECK_KEYS
from ..jobs.checks import AS_LEFT, STEPS
from ..jobs.sheet.machine_facts import facts_of
from ..jobs.sheet.shape import ASKED_UP_TO, words_of
from ..plugging.host import Catalogue

HEAD, OTHERS, WORDS = "head", "others", "words"  # beside the steps of the work
MARKS = ("", HEAD, *STEPS, "at no step", OTHERS, WORDS)


@dataclass
class State:
    """The sheet as it stands, and what a person passed over in this session.

    `passed` has the keys of questions, `closed` and `left` are of checks by their place on the
    sheet; `pending` is what an answer asks for next, such as a reason. `kept` are the checks that
    were answered before the sheet was taken up: what they lack is asked for at the end. `is_left`
    says that the person leaves it there.
    """

    sheet: dict[str, Any]
    passed: set[str] = field(default_factory=set)
    closed: set[int] = field(default_factory=set)
    started: set[int] = field(default_factory=set)
    left: dict[int, list[str]] = field(default_factory=dict)
    pending: tuple[str, ...] = ()
    kept: set[int] = field(default_factory=set)
    is_left: bool = False

    @property
    def job(self) -> dict[str, Any]:
        """The section [job]."""
        said: dict[str, Any] = self.sheet.setdefault("job", {})
        return said

    @property
    def kind(self) -> str:
        """The kind of job."""
        return words_of(self.job.get("kind", ""))

    @property
    def facts(self) -> Mapping[str, str]:
        """What the sheet says of the machine that decides what it must have."""
        return facts_of(self.job)

    @property
    def checks(self) -> list[dict[str, Any]]:
        """The entries of the checks."""
        entries: list[dict[str, Any]] = self.sheet.setdefault("check", [])
        return entries

    def entries(self, section: str) -> list[dict[str, Any]]:
        """Return the entries of a section, to read."""
        return list(self.sheet.get(section, []))

    def is_past(self, mark: str) -> bool:
        """Whether what a mark stands for was asked."""
        said = self.job.get(ASKED_UP_TO, "")
        return MARKS.index(said if said in MARKS else "") >= MARKS.index(mark)

    def mark(self, mark: str) -> None:
        """Note how far was asked."""
        if not self.is_past(mark):
            self.job[ASKED_UP_TO] = mark

    def start(
        self, calculation: str, name: str, step: str, stage: str, own: Mapping[str, str]
    ) -> None:
        """Add a check to the sheet; its questions come next. One that is there is taken up."""
        for index, there in enumerate(self.checks):
            if is_check(there, calculation, name, stage):
                self.go_on_with(index)
                return
        entry = {"calculation": calculation, "name": name, "step": step, "stage": stage, **own}
        if not step:
            del entry["step"]
        if stage == AS_LEFT:
            del entry["stage"]
        self.started.add(len(self.checks))
        self.checks.append(entry)

    def keep_answered(self) -> None:
        """Let the checks of a sheet that is taken up stand, save the one in whose middle it was."""
        begun = [n for n, entry in enumerate(self.checks) if set(entry) - set(CHECK_KEYS)]
        self.kept = set(begun if self.is_past(WORDS) else begun[:-1])
        self.closed |= self.kept

    def go_on_with(self, index: int) -> None:
        """Ask again for what a check lacks."""
        self.closed.discard(index)
        self.left.pop(index, None)
        self.started.add(index)

    def free_name(self, calculation: str, stage: str) -> str:
        """Return a name for a check that no other of the calculation has at a stage."""
        names = {name_of(c) for c in self.checks if stage_of(c) == stage}
        number = next(n for n in range(1, len(names) + 2) if _numbered(calculation, n) not in names)
        return _numbered(calculation, number)

    def drop(self, index: int) -> None:
        """Take a check out of the sheet again."""
        del self.checks[index]
        self.closed = {n - (n > index) for n in self.closed if n != index}
        self.started = {n - (n > index) for n in self.started if n != index}
        self.kept = {n - (n > index) for n in self.kept if n != index}
        self.left = {n - (n > index): names for n, names in self.left.items() if n != index}


def _numbered(name: str, number: int) -> str:
    return name if number == 1 else f"{name} {number}"


def name_of(entry: Mapping[str, Any]) -> str:
    """Return what a check of a sheet is called."""
    return words_of(entry.get("name", "")) or words_of(entry.get("calculation", ""))


def stage_of(entry: Mapping[str, Any]) -> str:
    """Return the stage of a check of a sheet."""
    return str(entry.get("stage", AS_LEFT))


def is_check(entry: Mapping[str, Any], calculation: str, name: str, stage: str) -> bool:
    """Whether an entry is that check."""
    return (entry.get("calculation"), name_of(entry), stage_of(entry)) == (calculation, name, stage)


def how_far(sheet: Mapping[str, Any]) -> str:
    """Say how far the questions of a sheet went; empty where they came to their end.

    >>> how_far({"job": {"asked_up_to": "parts"}, "check": [{"calculation": "windings"}]})
    'up to parts; 1 check'
    """
    mark = sheet.get("job", {}).get(ASKED_UP_TO, "")
    if mark == WORDS:
        return ""
    count = len(sheet.get("check", []))
    checks = f"{count} check{'s' if count != 1 else ''}"
    if mark not in STEPS:
        mark = {OTHERS: "the last questions"}.get(mark, "the machine" if not count else "the work")
    return f"up to {mark}; {checks}"


def file_name(kind: str, number: int) -> str:
    """Return the name of the file of a new sheet of a kind."""
    plain = re.sub(r"[^a-z0-9]+", "-", kind.casefold()).strip("-") or "job"
    return f"{_numbered(plain, number).replace(' ', '-')}.toml"


def asked_of_kind(catalogue: Catalogue) -> list[str]:
    """Return the kinds of job to choose from, the bench last."""
    from ..jobs.job import BENCH
    from ..jobs.sheet.kinds import known_kinds

    return sorted(known_kinds(catalogue), key=lambda kind: kind == BENCH)
