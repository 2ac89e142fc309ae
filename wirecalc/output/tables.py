"""A table of published values as text, CSV, JSON or Markdown, with its sources in every form."""

from __future__ import annotations

import csv
import io
import textwrap
from collections.abc import Iterator, Sequence

from ..published.shop_tables import Overlaid
from ..published.sources import Source
from ..published.tables import Row, Table
from .json import dump
from .layout import WIDTH, columns, wrap


def render(published: Table, form: str, shops: Sequence[Overlaid] = ()) -> str:
    """Return one table in one of the forms ROWS; `shops` is what a shop's tables add to it.

    Text and JSON show the shop's rows apart from the published ones.
    """
    if form == "json":
        return dump(_object(published) | _shop_object(shops))
    header = [*(c.name for c in published.columns), "confidence", "source", "note"]
    rows = [_cells(published, row) for row in published.rows]
    if form == "csv":
        out = io.StringIO()
        csv.writer(out, lineterminator="\n").writerows([header, *rows])
        return out.getvalue().rstrip("\n")
    if form == "markdown":
        return "\n".join(_markdown(published, header, rows))
    return "\n".join([*_text(published), *_shop_lines(shops)])


def _shop_object(shops: Sequence[Overlaid]) -> dict[str, object]:
    if not shops:
        return {}
    rows = [
        dict(r.cells) | {"source": _cite(r.source), "note": r.note} for s in shops for r in s.rows
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
            yield from wrap(f"- {'; '.join(filled)} [{_cite(row.source)}]", indent="    ")
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
        "sources": {k: _cite(s) for k, s in published.sources.items()},
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


def _cite(source: Source) -> str:
    return ", ".join(p for p in (source.title, source.edition, source.where) if p)


def _about(published: Table) -> Iterator[str]:
    yield from wrap(published.title)
    for word, text in (
        ("for", published.purpose),
        ("not for", published.not_for),
        ("checked", published.checked),
    ):
        yield from wrap(f"{word}: {' '.join(text.split())}", "  ", "    ")
    for key, source in published.sources.items():
        yield from wrap(f"source {key}: {_cite(source)}", "  ", "    ")


def _text(published: Table) -> Iterator[str]:
    """Print a table 80 columns wide; one too wide for that is printed row by row."""
    yield from _about(published)
    yield ""
    names = [c.name for c in published.columns]
    marks = {s.source.trust: "" for s in published.rows}
    letters = {trust: chr(ord("a") + i) for i, trust in enumerate(marks)}
    rows = [[*(r.text(n) for n in names), letters[r.source.trust]] for r in published.rows]
    data = [max(len(row[i]) for row in rows) for i in range(len(names) + 1)]
    words = [max(len(w) for w in n.split("_")) for n in names]
    widths = [max(pair) for pair in zip(data, [*words, 1], strict=True)]
    if sum(widths) + 2 * len(names) <= WIDTH:
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
    for word in ("purpose", "not_for", "checked"):
        yield f"{word.replace('_', ' ')}: {' '.join(getattr(published, word).split())}"
    for key, source in published.sources.items():
        yield f"source {key}: {_cite(source)}"


def _line(cells: Sequence[str]) -> str:
    return "| " + " | ".join(c.replace("|", "\\|") for c in cells) + " |"
