"""What an input would have to be, as text and as rows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..engine.sought.seeking import Sought, SoughtTable
from ..engine.sought.words import because, best, edges, span_words, verdict_words
from ..said.findings import Finding
from ..said.items import Caution, NotChecked
from . import short
from .layout import block, table, wrap
from .rows import render
from .text import caution_lines, not_checked_lines

HEAD = (
    *("calculation", "across", "input", "from", "to", "unit", "verdict"),
    *("from_because", "to_because"),
)


def sought_short(found: Sought | SoughtTable) -> str:
    """Return what a person at a terminal acts on: the spans, what decides, every stop."""
    if isinstance(found, SoughtTable):
        findings = [f for _, one in found.rows for f in one.findings]
        return "\n".join([*_rows_of(found), "", *_last(findings)])
    return "\n".join(
        [*_answer(found), *_aside(found), *_by(found), *_ends(found), "", *_last(found.findings)]
    )


def _last(findings: Iterable[Finding]) -> Iterator[str]:
    found = list(findings)
    yield from short.stops(all_cautions(found))
    yield from short.not_checked(all_not_checked(found), few=True)
    yield from short.closing(all_cautions(found))


def sought_text(found: Sought | SoughtTable) -> str:
    """Return the answer as text: what passes first, then the edges and what decides there."""
    if isinstance(found, SoughtTable):
        return "\n".join(_table_text(found))
    return "\n".join(
        [
            *_answer(found),
            "",
            *wrap(f"{found.calculation}: {found.question}"),
            *_aside(found),
            *_by(found),
            *_ends(found),
            *block("How", wrap(tried_words(found))),
            *_rest(found.findings),
        ]
    )


def _answer(found: Sought) -> Iterator[str]:
    words, spans = best(found)
    values = "; ".join(span_words(found, span) for span in spans)
    yield from wrap(f"{words}  {found.input}: {values}", indent=" " * 6)
    if found.target:
        yield from wrap(f"Target  {found.target}", indent=" " * 6)


def _aside(found: Sought) -> Iterator[str]:
    lines = [
        line
        for judged in found.aside
        for line in wrap(f"{judged.verdict.upper()}  {judged.because}", indent=" " * 6)
    ]
    yield from block(f"The same whatever {found.input} is, and no pass while it is so", lines)


def _by(found: Sought) -> list[str]:
    rows = [(span_words(found, s), verdict_words(found, s)) for s in found.spans]
    return block(f"By {found.input}", table(rows))


def _ends(found: Sought) -> list[str]:
    lines = block("At each edge", _edge_lines(found))
    return lines if found.complete else [*lines, *wrap("Not every edge was found in the time.")]


def _edge_lines(found: Sought) -> Iterator[str]:
    for span, end in edges(found):
        said = f"{end.shown}: {verdict_words(found, span)}  {because(end)}"
        yield from wrap(said, indent="      ")


def tried_words(found: Sought) -> str:
    """Say how the spans were found."""
    left = "" if found.complete else ", and not every edge was found within so many"
    if any(span.texts for span in found.spans):
        return f"each of {found.runs} values run, {found.from_} to {found.to}{left}"
    return (
        f"{found.from_} to {found.to}, {found.runs} values run{left}; what stands at an edge was "
        "run, what lies between two values that stand next to each other was not"
    )


def _table_text(found: SoughtTable) -> Iterator[str]:
    yield from wrap(f"{found.calculation}: {found.question}")
    yield from _rows_of(found)
    for shown, one in found.rows:
        if one.aside:
            yield from block(f"{shown}, whatever {one.input} is", _because_all(one))
    yield from _rest([f for _, one in found.rows for f in one.findings])


def _rows_of(found: SoughtTable) -> Iterator[str]:
    rows = []
    for shown, one in found.rows:
        words, spans = best(one)
        rows.append((shown, "; ".join(span_words(one, s) for s in spans), words))
    yield from block(f"{found.rows[0][1].input} by {found.across}", table(rows))


def _because_all(one: Sought) -> Iterator[str]:
    for judged in one.aside:
        yield from wrap(f"{judged.verdict.upper()}  {judged.because}", indent=" " * 6)


def _rest(findings: Iterable[Finding]) -> Iterator[str]:
    found = list(findings)
    yield from block("Not checked", not_checked_lines(all_not_checked(found)))
    yield from block("Take care", caution_lines(all_cautions(found)))


def all_cautions(findings: Iterable[Finding]) -> tuple[Caution, ...]:
    """Return the cautions of all ends, each once."""
    return tuple(dict.fromkeys(c for f in findings for c in f.cautions))


def all_not_checked(findings: Iterable[Finding]) -> tuple[NotChecked, ...]:
    """Return what was not checked at any end, each once."""
    return tuple(dict.fromkeys(n for f in findings for n in f.not_checked))


def sought_rows(found: Sought | SoughtTable, form: str) -> str:
    """Return a row a span, as CSV or Markdown."""
    parts = found.rows if isinstance(found, SoughtTable) else (("", found),)
    rows = [
        (
            one.calculation, shown, one.input,
            span.first.value if one.unit else span.first.shown,
            span.last.value if one.unit else span.last.shown,
            one.unit, verdict_words(one, span).casefold(), because(span.first), because(span.last),
        )
        for shown, one in parts
        for span in one.spans
    ]  # fmt: skip
    return "\n".join(render(HEAD, rows, form))
