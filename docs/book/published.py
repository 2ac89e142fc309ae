"""A page a table of published values: what it is for, its rows, where each comes from."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from wirecalc.published.sources import Confidence, Source
from wirecalc.published.tables import Row, Table

from .markdown import items, page, plain, rows, section


def table_page(table: Table, used_by: Sequence[str]) -> str:
    """Return the page of a table; `used_by` are the calculations that name it as a source."""
    cited: dict[Source, int] = {}
    for row in table.rows:
        cited.setdefault(row.source, len(cited) + 1)
    columns = (f"{code_of(c.name)}: {plain(c.text)}" for c in table.columns if c.text)
    return page(
        [
            f"# {table.name}",
            "",
            f"**{plain(table.title)}**",
            "",
            *items(
                f"**{what}**: {plain(said)}"
                for what, said in (
                    ("For", table.purpose),
                    ("Not for", table.not_for),
                    ("Checked", table.checked),
                )
            ),
            *section("Calculations that use it", items(_linked(used_by))),
            *section(
                "Sources", items(f"{plain(f'[{n}]')} {plain(s.cite())}" for s, n in cited.items())
            ),
            *section("Columns", items(columns)),
            *section("Values", _values(table, cited)),
        ]
    )


def code_of(name: str) -> str:
    """Return the name of a column as code."""
    return f"`{name}`"


def _linked(names: Iterable[str]) -> Iterable[str]:
    return (f"[{name}](../calculations/{name}.md)" for name in names)


def _values(table: Table, cited: Mapping[Source, int]) -> list[str]:
    """Return the rows as a table; a column in which nothing stands is left out."""
    shown = [c.name for c in table.columns if any(row.text(c.name) for row in table.rows)]
    notes = any(row.note for row in table.rows)
    head = [*shown, "source", *(["note"] if notes else [])]
    return rows(head, ([*_cells(row, shown, cited), *_note(row, notes)] for row in table.rows))


def _cells(row: Row, shown: Iterable[str], cited: Mapping[Source, int]) -> list[str]:
    cells = [plain(row.text(name)) for name in shown]
    return [*cells, plain(f"[{cited[row.source]}]")]


def _note(row: Row, notes: bool) -> list[str]:
    return [plain(row.note)] if notes else []


def tables_index(tables: Iterable[Table]) -> str:
    """Return the page that lists all tables, and how far the values of each may be trusted."""
    listed = (
        [f"[{table.name}]({table.name}.md)", plain(table.title), plain(confidence(table))]
        for table in tables
    )
    words = ", ".join(str(c) for c in Confidence)
    return page(
        [
            "# Published values",
            "",
            f"A page each, with the source of every row and how far it may be trusted ({words}).",
            "",
            *rows(("table", "what it holds", "rows"), listed),
        ]
    )


def confidence(table: Table) -> str:
    """Say how many rows of a table are confirmed, computed, from memory and so on."""
    counted = Counter(str(row.source.confidence) for row in table.rows)
    return ", ".join(f"{number} {word}" for word, number in sorted(counted.items()))
