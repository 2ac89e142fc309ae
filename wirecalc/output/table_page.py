"""A table of published values as a page for the wall: rows, how far each is sure, and sources."""

from __future__ import annotations

from collections.abc import Sequence

from ..published.shop_tables import Overlaid
from ..published.sources import Confidence, Source
from ..published.tables import Row, Table
from ..version import VERSION
from .html_building import Element, Inside, el, items, page, section, table, wide
from .tables import cite, filled_columns, sources_of

_DEFERS = (
    "Published values as their sources print them. The standard itself, the maker's sheet, local "
    "code and licensed practice decide. What is from memory was not seen in a copy: confirm it "
    "before a judgement rests on it."
)


def table_page(published: Table, shops: Sequence[Overlaid] = (), wanted: Sequence[str] = ()) -> str:
    """Return a table, or the rows of it that were wanted, as a page to print."""
    names = filled_columns(published)
    marks = {trust: chr(ord("a") + i) for i, trust in enumerate(_trusts(published.rows))}
    rows = [[*(r.text(n) for n in names), _mark(r.source, marks)] for r in published.rows]
    heads = [*(n.replace("_", " ") for n in names), "how sure"]
    caption = f"Only {', '.join(wanted)}" if wanted else f"Table {published.name}"
    facts = [("For", published.purpose), ("Not for", published.not_for)]
    return page(
        published.title,
        el(
            "main",
            el("h1", published.title),
            wide(table(caption, heads, rows, "wall") or el("p"), caption),
            items(
                [*(f"{m}: {trust}" for trust, m in marks.items()), *_of_columns(published)], "marks"
            ),
            *(_shop_rows(shop) for shop in shops),
            section("Notes", items(_notes(published))),
            section("What it is for", *(el("p", f"{w}: {' '.join(t.split())}") for w, t in facts)),
            section("Sources", items(f"{k}: {cite(s)}" for k, s in sources_of(published).items())),
            el("p", _DEFERS),
            el(
                "p",
                f"Printed by wirecalc {VERSION} from its table {published.name}.",
                class_="note",
            ),
        ),
    )


def _trusts(rows: Sequence[Row]) -> list[str]:
    return list(dict.fromkeys(row.source.trust for row in rows))


def _mark(source: Source, marks: dict[str, str]) -> Inside:
    """Return the mark of a row: a letter, and in words where it was not seen in a copy."""
    mark = marks[source.trust]
    remembered = source.confidence is Confidence.MEMORY
    return el("strong", f"{mark}, from memory") if remembered else mark


def _of_columns(published: Table) -> list[str]:
    """Say of each column how far its values are sure, where that is not as the mark says."""
    kinds = {c.name: c.confidence for c in published.columns if c.confidence}
    words = {"memory": "from memory: confirm it", "computed": "computed from the others"}
    return [f"{name.replace('_', ' ')}: {words.get(k, k)}" for name, k in kinds.items()]


def _notes(published: Table) -> list[str]:
    return [
        f"{' '.join(row.text(k) for k in published.key).strip()}: {row.note}"
        for row in published.rows
        if row.note
    ]


def _shop_rows(shop: Overlaid) -> Element | None:
    names = [c.name for c in shop.table.columns if any(r.text(c.name) for r in shop.rows)]
    rows = [[*(r.text(n) for n in names), cite(r.source)] for r in shop.rows]
    heads = [*(n.replace("_", " ") for n in names), "source"]
    rows_of = table(f"Rows of the shop ({', '.join(shop.by)})", heads, rows, "wall")
    unused = items(f"NOT USED: {why}" for why in (*shop.milder, *shop.lost))
    return section("Stricter here", rows_of, unused)
