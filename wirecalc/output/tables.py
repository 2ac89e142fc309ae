"""A table of published values as text, CSV, JSON or Markdown, with its sources in every form."""

from __future__ import annotations

import csv
import io
import textwrap
from collections.abc import Container, Iterator, Mapping, Sequence

from ..published.shop_tables import Overlaid
from ..published.sources import Source
from ..published.tables import Row, Table
from . import terminal_width
from .json import dump
from .layout import columns, wrap

_FACTS = {"purpose": "for", "not_for": "not for", "checked": "checked"}


def render(
    published: Table, form: str, shops: Sequence[Overlaid] = (), wanted: Sequence[str] = ()
) -> str:
    """Return one table in one of the forms ROWS; `shops` is what a shop's tables add to it.

    Text and JSON show the shop's rows apart from the published ones. `wanted` says which rows of
    the table these are; in text those stand first then, and of the sources only theirs.
    """
    if form == "json":
        where = {"where": list(wanted)} if wanted else {}
        return dump(_object(published) | where | _shop_object(shops))
    header = [*(c.name for c in published.columns), "confidence", "source", "note"]
    rows = [_cells(published, row) for row in published.rows]
    if form == "csv":
        out = io.StringIO()
        csv.writer(out, lineterminator="\n").writerows([header, *rows])
        return out.getvalue().rstrip("\n")
    if form == "markdown":
        return "\n".join(_markdown(published, header, rows))
    if wanted:
        return "\n".join([*_some(published), *_shop_lines(shops)])
    return "\n".join([*_about(published), "", *_values(published), *_shop_lines(shops)])


def _shop_object(shops: Sequence[Overlaid]) -> dict[str, object]:
    if not shops:
        return {}
    rows = [
        dict(r.cells) | {"source": cite(r.source), "note": r.note} for s in shops for r in s.rows
    ]
    not_used = [why for s in shops for why in (*s.milder, *s.lost)]
    return {"shop_rows": rows, "shop_rows_not_used": not_used}


def _shop_lines(shops: Sequence[Overlaid]) -> Iterator[str]:
    for shop in shops:
        yield ""
        yield from wrap(f"rows of the shop, beside the published ones ({', '.join(shop.by)})")
        for row in shop.rows:
            filled = [
                f"{c.name} {row.text(c.name)}" for c in shop.table.columns if row.text(c.name)
            ]
            yield from wrap(f"- {'; '.join(filled)} [{cite(row.source)}]", indent="    ")
        for why in (*shop.milder, *shop.lost):
            yield from wrap(f"- NOT USED: {why}", indent="    ")


def overview(loaded: Sequence[Table]) -> str:
    """List tables with their title and how far their values may be trusted."""
    lines = []
    for published in loaded:
        trust: dict[str, int] = {}
        for row in published.rows:
            trust[row.source.confidence] = trust.get(row.source.confidence, 0) + 1
        rows = ", ".join(f"{n} {word}" for word, n in sorted(trust.items()))
        titles = "; ".join(dict.fromkeys(s.title for s in published.sources.values()))
        lines += [published.name, *wrap(published.title, "    "), *wrap(f"rows: {rows}", "    ")]
        lines += wrap(f"source: {titles}", "    ", "            ")
    return "\n".join(lines)


def overview_object(loaded: Sequence[Table]) -> dict[str, object]:
    """Return the list of tables for JSON, each without its rows."""
    listed = [{k: v for k, v in _object(t).items() if k != "rows"} for t in loaded]
    return {"schema": "wirecalc.tables/1", "tables": listed}


def _cells(published: Table, row: Row) -> list[str]:
    cells = [row.text(c.name) for c in published.columns]
    return [*cells, row.source.trust, row.source.title, row.note]


def _object(published: Table) -> dict[str, object]:
    return {
        "schema": "wirecalc.table/1",
        "name": published.name,
        "title": published.title,
        "purpose": published.purpose,
        "not_for": published.not_for,
        "checked": published.checked,
        "key": list(published.key),
        "columns": [
            {"name": c.name, "type": c.type, "unit": c.unit, "text": c.text}
            for c in published.columns
        ],
        "sources": {k: cite(s) for k, s in published.sources.items()},
        "rows": [
            dict(r.cells)
            | {
                "source": r.source.key,
                "confidence": r.source.confidence,
                "copies": r.source.copies,
                "note": r.note,
            }
            for r in published.rows
        ],
    }


def cite(source: Source) -> str:
    """Return a source in one line: title, edition and where in it."""
    return ", ".join(p for p in (source.title, source.edition, source.where) if p)


def _about(published: Table) -> Iterator[str]:
    yield from wrap(published.title)
    yield from _facts_in_text(published, ("purpose", "not_for", "checked"), published.sources)


def _facts_in_text(
    published: Table, facts: Sequence[str], sources: Mapping[str, Source]
) -> Iterator[str]:
    for fact in facts:
        text = " ".join(getattr(published, fact).split())
        yield from wrap(f"{_FACTS[fact]}: {text}", "  ", "    ")
    for key, source in sources.items():
        yield from wrap(f"source {key}: {cite(source)}", "  ", "    ")


def _some(published: Table) -> Iterator[str]:
    """Print some rows of a table: they first, then what they are not for and their sources."""
    yield from wrap(published.title)
    yield ""
    if published.rows:
        same = _same_in_all(published)
        yield from wrap("; ".join(f"{n.replace('_', ' ')} {text}" for n, text in same.items()))
        yield from _values(published, leaving_out=same)
    else:
        yield "No published row."
    yield ""
    yield from _facts_in_text(published, ("purpose", "not_for"), sources_of(published))


def _same_in_all(published: Table) -> dict[str, str]:
    """Return what stands in every row of several, which is then said once."""
    texts = {c.name: {r.text(c.name) for r in published.rows} for c in published.columns}
    several = len(published.rows) > 1
    return {n: next(iter(t)) for n, t in texts.items() if several and len(t) == 1 and any(t)}


def sources_of(published: Table) -> dict[str, Source]:
    """Return the sources of the rows that a table has."""
    keys = {row.source.key for row in published.rows}
    return {k: s for k, s in published.sources.items() if k in keys}


def filled_columns(published: Table) -> list[str]:
    """Return the names of the columns in which one of the rows has something."""
    return [c.name for c in published.columns if any(r.text(c.name) for r in published.rows)]


def _values(published: Table, leaving_out: Container[str] = ()) -> Iterator[str]:
    """Print the rows in columns; those that are too wide for the terminal one by one."""
    names = [n for n in filled_columns(published) if n not in leaving_out]
    marks = {s.source.trust: "" for s in published.rows}
    letters = {trust: chr(ord("a") + i) for i, trust in enumerate(marks)}
    rows = [[*(r.text(n) for n in names), letters[r.source.trust]] for r in published.rows]
    data = [max(len(row[i]) for row in rows) for i in range(len(names) + 1)]
    words = [max(len(w) for w in n.split("_")) for n in names]
    widths = [max(pair) for pair in zip(data, [*words, 1], strict=True)]
    if sum(widths) + 2 * len(names) <= terminal_width.width():
        heads = [
            "\n".join(textwrap.wrap(n.replace("_", " "), w))
            for n, w in zip(names, widths, strict=False)
        ]
        yield from columns([*heads, ""], rows)
    else:
        for row in published.rows:
            filled = [f"{n} {row.text(n)}" for n in names if row.text(n)]
            yield from wrap(f"- {'; '.join(filled)} [{letters[row.source.trust]}]", indent="    ")
    yield ""
    for trust, letter in letters.items():
        yield f"{letter}: {trust}"
    for row in published.rows:
        if row.note:
            key = " ".join(row.text(k) for k in published.key).strip()
            yield from wrap(f"note, {key}: {row.note}", "", "    ")


def _markdown(
    published: Table, header: Sequence[str], rows: Sequence[Sequence[str]]
) -> Iterator[str]:
    yield f"# {published.title}"
    yield ""
    yield from (f"- {line.strip()}" for line in _facts(published))
    yield ""
    yield _line(header)
    yield _line(["---"] * len(header))
    yield from (_line(row) for row in rows)


def _facts(published: Table) -> Iterator[str]:
    for word in _FACTS:
        yield f"{word.replace('_', ' ')}: {' '.join(getattr(published, word).split())}"
    for key, source in published.sources.items():
        yield f"source {key}: {cite(source)}"


def _line(cells: Sequence[str]) -> str:
    return "| " + " | ".join(c.replace("|", "\\|") for c in cells) + " |"
