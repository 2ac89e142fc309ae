"""Kinds of job, and the checks that each usually has: a table of common practice.

A shop adds kinds, or checks to a kind, with a table of its own whose name starts with `job-kinds-`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from .. import tables
from ..checks import AS_LEFT
from ..errors import BadInput, Problem, nearest
from ..host import Catalogue
from ..requirements import ANY_KIND, lists_kinds


class UsualCheck(NamedTuple):
    """A check that a kind of job usually has; `required` where it belongs to every such job."""

    name: str
    step: str
    stage: str
    calculation: str
    required: bool
    why: str


def usual(kind: str) -> list[UsualCheck]:
    """Return the checks that a kind of job usually has, in the order of the table."""
    return [
        UsualCheck(
            row.text("name"),
            row.text("step"),
            row.text("stage"),
            row.text("calculation"),
            row.text("required") == "yes",
            row.text("why"),
        )
        for table in _tables()
        for row in table.where(kind=kind)
    ]


def table_kinds() -> list[str]:
    """Return the kinds that the tables list, in their order."""
    return list(dict.fromkeys(row.text("kind") for table in _tables() for row in table.rows))


def known_kinds(catalogue: Catalogue) -> list[str]:
    """Return all kinds of job: those of the tables, and those that a shop's rules name."""
    asked = sorted(k for r in catalogue.required for k in r.rule.kinds if k != ANY_KIND)
    known = table_kinds()
    return known + [k for k in dict.fromkeys(asked) if as_listed(k, known) not in known]


def as_listed(kind: str, known: Sequence[str]) -> str:
    """Return a kind as it is listed, whatever its case; one that is not listed as it stands."""
    return {k.casefold(): k for k in known}.get(kind.casefold(), kind)


def expected(kind: str, catalogue: Catalogue) -> list[UsualCheck]:
    """Return what a kind of job usually has, with what the shop's rules ask for as required."""
    checks = usual(kind)
    for rule in (r for r in catalogue.required if r.asks(kind)):
        for name in rule.rule.calculations:
            why = f"{rule.said} asks for it"
            same = [c for c in checks if (c.calculation, c.stage) == (name, AS_LEFT)]
            if same:
                at = checks.index(next((c for c in same if c.required), same[0]))
                why = f"{checks[at].why}; {why}"
                checks[at] = checks[at]._replace(required=True, why=why)
            else:
                checks.append(UsualCheck(name, "", AS_LEFT, name, True, why))
    return checks


def find(kind: str, catalogue: Catalogue) -> str:
    """Return a kind as it is listed; raises BadInput with the nearest one."""
    known = known_kinds(catalogue)
    if as_listed(kind, known) in known:
        return as_listed(kind, known)
    raise BadInput([unknown("--new", kind, known)])


def unknown(name: str, kind: str, known: Sequence[str]) -> Problem:
    """Return the complaint about a kind that is not known, with the nearest and all that are."""
    close = nearest(kind, known)
    listed = f"he kinds are {', '.join(known)}"
    would_do = f"did you mean {close}? T{listed}" if close else f"t{listed}"
    return Problem(name, f"there is no kind of job {kind!r}", would_do)


def _tables() -> Sequence[tables.Table]:
    return [tables.load(name) for name in tables.names() if lists_kinds(name)]
