"""Kinds of job, and the checks of each: a table of common practice.

A shop adds kinds, or checks to a kind, with a table of its own whose name starts with `job-kinds-`.
What belongs to every machine stands under the kind `*`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ...base.errors import BadInput, Problem, nearest
from ...plugging.host import Catalogue
from ...published import tables
from ...published.tables import Row
from ...rules.requirements import ANY_KIND, TABLE_OF_KINDS, lists_kinds
from ..checks import AS_LEFT, STAGES, STEPS
from ..job import BENCH
from .machine_facts import unless

_NAMES = "job-kind-names"
OTHER = "other"  # the kind of a machine that is of none of the others
_LIKE = 0.8  # a slip of one letter in five; an iron is no aircon, a coffee maker no ice maker


class UsualCheck(NamedTuple):
    """A check that a kind of job usually has; `required` where nothing can be told without it.

    Of those of one group, `one_of`, one is enough. `when` says for which machines it is required,
    `reasons` for which a machine can be without what it tells, `applies_where` which inputs of
    other checks (input=value) say that it is not. `holds_with` is an input with which it is made,
    `reads` the reading that is asked for first where several would do.
    """

    name: str
    step: str
    stage: str
    calculation: str
    required: bool
    why: str
    one_of: str = ""
    when: str = ""
    reasons: tuple[str, ...] = ()
    applies_where: str = ""
    holds_with: str = ""
    reads: str = ""

    @property
    def unless(self) -> str:
        """What a sheet may say so that it is not required."""
        return unless(self.when)


def usual(kind: str) -> list[UsualCheck]:
    """Return the checks that a kind of job usually has, in the order of the work.

    Those of one group stand together, at the step of the first of them. A kind that is not listed
    has those of the one that it resembles, and of other machines.
    """
    listed = _tables()
    found = [_check(row) for of in _rows_of(kind) for t in listed for row in t.where(kind=of)]
    at = {step: n for n, step in enumerate(STEPS)}
    of_group: dict[str, int] = {}
    for check in found:
        place = at.get(check.step, len(at))
        of_group[check.one_of] = min(place, of_group.get(check.one_of, place))

    def place_of(check: UsualCheck) -> tuple[int, int]:
        own = at.get(check.step, len(at))
        return STAGES.index(check.stage), of_group[check.one_of] if check.one_of else own

    return sorted(dict.fromkeys(found), key=place_of)


def _group(row: Row) -> str:
    """Return the group of a row: a table of a shop puts nothing in place of what is asked here."""
    group = row.printed.get("one_of", "")
    return group if row.table == TABLE_OF_KINDS or not group else f"{group} of {row.table}"


def required_of_all() -> set[str]:
    """Return the calculations that every machine must have."""
    rows = (row for table in _tables() for row in table.where(kind=ANY_KIND))
    return {row.text("calculation") for row in rows if row.text("required") == "yes"}


def resembles(kind: str) -> str:
    """Return the kind of the tables that one which is not listed resembles; else nothing.

    It is the one that it names within other words, the last, as in "old kitchen fridge"; or one
    that is written nearly so.
    """
    if not kind:
        return ""
    listed, said = table_kinds(), f" {_plain(kind)} "
    names = {**_other_names(), **{_plain(k): k for k in listed}}
    within = [name for name, of in names.items() if f" {name} " in said and of != BENCH]
    ends = {name: (said.rindex(f" {name} ") + len(name), len(name)) for name in within}
    if within:
        return names[max(within, key=lambda name: ends[name])]
    near = nearest(_plain(kind), list(names), alike=_LIKE, start=1)
    return names[near] if near else ""


def _rows_of(kind: str) -> Sequence[str]:
    """Return the kinds whose rows belong to a kind."""
    if kind == BENCH:
        return (BENCH,)
    if kind in table_kinds():
        return (ANY_KIND, kind)
    return (ANY_KIND, *dict.fromkeys([resembles(kind) or OTHER, OTHER]))


def _check(row: Row) -> UsualCheck:
    def said(column: str) -> str:  # a shop's table may be without it
        return row.printed.get(column, "")

    return UsualCheck(
        row.text("name"),
        row.text("step"),
        row.text("stage"),
        row.text("calculation"),
        row.text("required") == "yes",
        row.text("why"),
        _group(row),
        said("when"),
        tuple(filter(None, said("reasons").split("; "))),
        said("applies_where"),
        said("holds_with"),
        said("reads"),
    )


def table_kinds() -> list[str]:
    """Return the kinds that the tables list, in their order."""
    said = dict.fromkeys(row.text("kind") for table in _tables() for row in table.rows)
    return [kind for kind in said if kind != ANY_KIND]


def known_kinds(catalogue: Catalogue) -> list[str]:
    """Return all kinds of job: those of the tables, and those that a shop's rules name."""
    asked = sorted(k for r in catalogue.required for k in r.rule.kinds if k != ANY_KIND)
    known = table_kinds()
    return known + [k for k in dict.fromkeys(asked) if as_listed(k, known) not in known]


def as_listed(kind: str, known: Sequence[str]) -> str:
    """Return a kind as it is listed, in any case or by another name; else as it stands."""
    exact = {k.casefold(): k for k in known}
    names = {**_other_names(), **{_plain(k): k for k in known}}
    return exact.get(kind.casefold()) or names.get(_plain(kind), kind)


def _other_names() -> dict[str, str]:
    """Return the kind that each other name in use means."""
    rows = tables.load(_NAMES).rows
    return {_plain(row.text("name")): row.text("kind") for row in rows}


def _plain(name: str) -> str:
    """Return a name without what does not part names: case, blanks, hyphens."""
    return " ".join(name.casefold().replace("-", " ").split())


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
                checks[at] = checks[at]._replace(required=True, why=why, one_of="", when="")
            else:
                checks.append(UsualCheck(name, _step_of(name), AS_LEFT, name, True, why))
    return checks


def _step_of(calculation: str) -> str:
    """Return the step at which a calculation answers how a machine is left; none where none does.

    What is only read of a part that was found is read of the new part.
    """
    rows = [r for t in _tables() for r in t.where(calculation=calculation)]
    left = [row.text("step") for row in rows if row.text("stage") == AS_LEFT]
    return left[0] if left else "parts" if rows else ""


def find(kind: str, catalogue: Catalogue) -> str:
    """Return a kind as it is listed; raises BadInput with the nearest one."""
    known = known_kinds(catalogue)
    if as_listed(kind, known) in known:
        return as_listed(kind, known)
    near = nearest(kind, known)
    listed = f"he kinds are {', '.join(known)}"
    would_do = f"did you mean {near}? T{listed}" if near else f"t{listed}"
    raise BadInput([Problem("--new", f"there is no kind of job {kind!r}", would_do)])


def remark(kind: str, known: Sequence[str]) -> str:
    """Say how a kind is taken that is not known; nothing of one that is."""
    if not kind or kind in known:
        return ""
    near = resembles(kind)
    also = f"; did you mean {near}? What that must have is asked for too" if near else ""
    listed = "" if near else f". The kinds are {', '.join(known)}"
    return (
        f"There is no kind of job {kind!r}: what every machine must have is asked for{also}{listed}"
    )


def _tables() -> Sequence[tables.Table]:
    return [tables.load(name) for name in tables.names() if lists_kinds(name)]
