"""What a shop's records tell together: counts, never scores, of what their sheets say.

Records are counted one by one and none is kept, so that thousands take no more memory than one.
A group is shown with its number, and one of fewer than five is too few to compare.
"""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple

from ..base.errors import BadText
from ..said.verdicts import Verdict
from .checks import AS_LEFT

TOO_FEW = 5  # a group of fewer is no base for a comparison
NO_VERDICT = "no verdict"
VERDICTS = (*(v.value for v in Verdict), NO_VERDICT)  # the columns of every table
SOON, LATER = 30, 90  # days; the classes in which shops count callbacks
JOBS = ("kind", "technician")  # what the jobs are grouped by
CHECKS = ("tool", "part", "terminal")  # what the checks as left are grouped by
UNKNOWN, NOT_TESTED = "said unknown", "not tested"  # how a reading is missing

Group = tuple[str, str | None]  # what it is grouped by, and the name; None where none was said
DateOf = Callable[[str], datetime.date | None]  # of the job that a callback goes back to, if known


class Facts(NamedTuple):
    """What one record adds: its verdict, the verdicts of its groups, and what else is counted.

    `missing` has how and what, and whether it was required.
    """

    verdict: str
    groups: tuple[tuple[Group, str], ...]
    missing: Mapping[tuple[str, str], bool]
    callback: bool = False
    callback_of: str = ""
    cause: str | None = None


def facts(job: Mapping[str, Any]) -> Facts:
    """Return what a job, as it stands in its JSON, adds; raises BadText for what is no job."""
    try:
        return _facts(job)
    except (AttributeError, KeyError, TypeError, ValueError) as error:
        raise BadText(f"a field of its job is missing or wrong ({error})") from None


def _facts(job: Mapping[str, Any]) -> Facts:
    about = job.get("about") or {}
    verdict = _verdict(Verdict(job["verdict"]))
    callback_of, cause = _name(about.get("callback_of")), _name(about.get("callback_cause"))
    left = [c for c in job["checks"] if c["stage"] == AS_LEFT]
    technician = _name(job.get("technician")) or _name(about.get("technician"))
    groups: list[tuple[Group, str]] = [(("technician", technician), verdict)]
    groups += [(("kind", kind), verdict) for kind in _kinds(job, about)]
    groups += [found for check in left for found in _of_check(check)]
    return Facts(
        verdict,
        tuple(groups),
        dict(_missing(job)),
        callback_of is not None or cause is not None,
        callback_of or "",
        cause,
    )


def _kinds(job: Mapping[str, Any], about: Mapping[str, Any]) -> set[str | None]:
    """Return the kinds of a job: those of its machines, else its own; None where none is said."""
    of_machines = {_name(machine.get("kind")) for machine in job.get("machines") or ()}
    own = _name(job.get("kind")) or _name(about.get("kind"))
    return {kind for kind in of_machines if kind is not None} or {own}


def _of_check(check: Mapping[str, Any]) -> Iterator[tuple[Group, str]]:
    finding = check["finding"] or {}
    verdict = _verdict(finding.get("verdict"))
    yield ("tool", _name(check.get("tool"))), verdict
    yield ("part", _name(check.get("part"))), verdict
    for given in finding.get("inputs", ()):
        if given["name"] == "terminal":
            yield ("terminal", _name(given["value"])), verdict


def _missing(job: Mapping[str, Any]) -> Iterator[tuple[tuple[str, str], bool]]:
    for check in job["checks"]:
        for given in (check["finding"] or {}).get("inputs", ()):
            if given["from"] == "unknown":
                yield (UNKNOWN, str(given["name"])), False
    for missing in sorted(job["not_tested"], key=lambda m: bool(m["required"])):
        yield (NOT_TESTED, str(missing["name"])), bool(missing["required"])


def _name(said: object) -> str | None:
    """Return a name without the spaces around it; None where none is said."""
    return " ".join(str(said).split()) or None if said is not None else None


def _verdict(said: object) -> str:
    return NO_VERDICT if said is None else Verdict(str(said)).value


class Callbacks(NamedTuple):
    """Callbacks of one cause, by the days since the job that they go back to."""

    cause: str | None
    n: int
    soon: int
    later: int
    after: int
    not_known: int


class History:
    """The count of some records."""

    def __init__(self) -> None:
        self.n = 0
        self.first: datetime.date | None = None
        self.last: datetime.date | None = None
        self.verdicts: Counter[str] = Counter()
        self.not_read: list[tuple[str, str]] = []
        self._groups: dict[str, dict[str | None, Counter[str]]] = {}
        self._written: dict[str, tuple[datetime.date, str]] = {}
        self._missing: Counter[tuple[str, str]] = Counter()
        self._required: Counter[tuple[str, str]] = Counter()
        self._callbacks: dict[str | None, Counter[str]] = {}

    def add(self, day: datetime.date, found: Facts, date_of: DateOf) -> None:
        """Count a record of a day. `date_of` finds the record that a callback goes back to."""
        self.n += 1
        self.first = min(self.first or day, day)
        self.last = max(self.last or day, day)
        self.verdicts[found.verdict] += 1
        for (by, name), verdict in found.groups:
            one = self._one(name, day)
            self._groups.setdefault(by, {}).setdefault(one, Counter())[verdict] += 1
        for missing, required in found.missing.items():
            self._missing[missing] += 1
            self._required[missing] += required
        if found.callback:
            after = _class_of(day, date_of(found.callback_of))
            self._callbacks.setdefault(self._one(found.cause, day), Counter())[after] += 1

    def _one(self, name: str | None, day: datetime.date) -> str | None:
        """Return what all spellings of a name are counted under, and note the first of them."""
        if name is None:
            return None
        one = "".join(name.casefold().split())
        written = day, name
        self._written[one] = min(self._written.get(one, written), written)
        return one

    def _shown(self, one: str | None) -> str | None:
        """Return a name as it was first written."""
        return one if one is None else self._written[one][1]

    def refuse(self, name: str, reason: str) -> None:
        """Note what could not be read, and why."""
        self.not_read.append((name, reason))

    def groups(self, by: str) -> list[tuple[str | None, Counter[str]]]:
        """Return the verdicts of each group, by name; what was not said comes last."""
        found = [(self._shown(one), n) for one, n in self._groups.get(by, {}).items()]
        return sorted(found, key=lambda g: _order(g[0]))

    @property
    def callbacks(self) -> list[Callbacks]:
        """The callbacks by cause, the most frequent first; what was not said comes last."""
        found = [
            Callbacks(self._shown(one), n.total(), *(n[c] for c in _CLASSES))
            for one, n in self._callbacks.items()
        ]
        return sorted(found, key=lambda c: (c.cause is None, -c.n, _order(c.cause)))

    @property
    def missing(self) -> list[tuple[str, str, int, int]]:
        """What is missing: name, how, in how many jobs, and in how many of them it was required."""
        found = [
            (name, how, n, self._required[how, name]) for (how, name), n in self._missing.items()
        ]
        return sorted(found, key=lambda m: (-m[2], m[:2]))


_CLASSES = ("soon", "later", "after", "not known")


def _class_of(day: datetime.date, earlier: datetime.date | None) -> str:
    if earlier is None or earlier > day:
        return "not known"
    days = (day - earlier).days
    return "soon" if days <= SOON else "later" if days <= LATER else "after"


def _order(name: str | None) -> tuple[bool, str, str]:
    return name is None, (name or "").casefold(), name or ""
