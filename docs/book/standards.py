"""The page of every standard and practice used: how each was seen, and what leans on it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from wirecalc.output.explanation import tables_named, trust_said
from wirecalc.published.sources import OFF, OFF_C, Confidence, Source
from wirecalc.published.tables import Table

from .examples_worked import Worked
from .markdown import items, page, plain, rows, section

HEAD = """# Standards and practices

What the published values and the limits come from: which edition, how it was seen, and what leans
on it. A calculation leans on a source if it names a table that has it, or if its example, or the
example with one thing changed, cites it. What other inputs would cite besides is not listed here.
"""
TO_CONFIRM = f"""Values of which no copy was seen, those first on which most calculations lean. A
copy of the source settles them. Until then a limit is passed only where it is kept even if it is
off by as much as it may be ({OFF}, or {OFF_C} of a temperature, where the table says nothing).
"""
SEEN = "how it was seen"
HEADINGS = ("To be confirmed, by weight", "Seen in a copy", "Worked out", "Common practice")


@dataclass
class Leaning:
    """A source, with the tables whose rows have it and the calculations that lean on it."""

    source: Source
    seen: list[Source] = field(default_factory=list)
    tables: set[str] = field(default_factory=set)
    calculations: set[str] = field(default_factory=set)
    values: int = 0

    @property
    def weight(self) -> tuple[int, int]:
        """How much leans on it: calculations, then rows of tables."""
        return len(self.calculations), self.values

    @property
    def name(self) -> str:
        """What it is called, with edition and clause."""
        source = self.source
        return ", ".join(p for p in (source.title, source.edition, source.where) if p)


def leanings(all_of: Iterable[Worked], published: Iterable[Table]) -> list[Leaning]:
    """Return every source that is used, one for each clause and confidence, by name."""
    found: dict[Source, Leaning] = {}
    named: dict[str, set[str]] = {}
    for done in all_of:
        for name in tables_named(done.calc.doc):
            named.setdefault(name, set()).add(done.calc.name)
        for finding in done.findings:
            for source in finding.sources.values():
                _one(found, source).calculations.add(done.calc.name)
    for table in published:
        for row in table.rows:
            one = _one(found, row.source)
            one.tables.add(table.name)
            one.values += 1
            one.calculations |= named.get(table.name, set())
    return sorted(found.values(), key=lambda one: one.name.lower())


def _one(found: dict[Source, Leaning], source: Source) -> Leaning:
    """Return what leans on a source, however many copies of it were seen for a value."""
    one = found.setdefault(source._replace(key="", copies=0, off=""), Leaning(source))
    if source not in one.seen:
        one.seen.append(source)
    return one


def standards_page(all_of: Iterable[Worked], published: Iterable[Table]) -> str:
    """Return the page of all standards and practices, what is to be confirmed first."""
    every = leanings(all_of, published)
    remembered, seen, worked_out, practice = (
        [one for one in every if one.source.confidence is confidence]
        for confidence in (
            Confidence.MEMORY,
            Confidence.CONFIRMED,
            Confidence.COMPUTED,
            Confidence.PRACTICE,
        )
    )
    remembered.sort(key=lambda one: one.weight, reverse=True)
    return page(
        [
            HEAD,
            *section(HEADINGS[0], [TO_CONFIRM, *_listed(remembered, "may be off by", _off)]),
            *section(HEADINGS[1], _listed(seen, SEEN, _seen)),
            *section(HEADINGS[2], _listed(worked_out, SEEN, _seen)),
            *section(HEADINGS[3], items(_in_words(practice))),
        ]
    )


def _listed(found: Sequence[Leaning], second: str, said: Callable[[Leaning], str]) -> list[str]:
    head = ("source, edition, clause", second, "rows of tables", "calculations")
    return rows(head, (_cells(one, said(one)) for one in found))


def _cells(one: Leaning, said: str) -> list[str]:
    in_tables = f"{one.values}: {_linked(one.tables, 'tables')}" if one.tables else ""
    by = _linked(one.calculations, "calculations")
    return [plain(one.name), plain(said), in_tables, by]


def _seen(one: Leaning) -> str:
    return trust_said(one.seen)


def _off(one: Leaning) -> str:
    return ", ".join(dict.fromkeys(source.off for source in one.seen if source.off))


def _in_words(practice: Iterable[Leaning]) -> Iterator[str]:
    for one in practice:
        title = "A fact of the trade, no source" if one.name == "common practice" else one.name
        tables = f" Tables: {_linked(one.tables, 'tables')}." if one.tables else ""
        by = _linked(one.calculations, "calculations")
        yield f"{plain(title)}.{tables} Calculations: {by or 'none'}."


def _linked(names: Iterable[str], folder: str) -> str:
    return ", ".join(f"[{name}]({folder}/{name}.md)" for name in sorted(names))
