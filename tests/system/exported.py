"""The page of the export: its tables of columns, and the answers to its questions."""

from __future__ import annotations

import contextlib
import re
import sqlite3
import tempfile
from collections.abc import Iterator
from pathlib import Path

from wirecalc.jobs.record_tables import TABLES
from wirecalc.testing.command import run_command

SHOP = Path(__file__).parents[2] / "docs" / "examples" / "shop-year"
QUESTION = re.compile(r"^```sql\n(.*?)^```\n(?:\n```text\n.*?^```\n)?", re.DOTALL | re.MULTILINE)


def recorded(folder: Path) -> Path:
    """Record the sheets of the invented shop in a folder, and return it."""
    for sheet in sorted(SHOP.glob("*.toml")):
        run_command("job", str(sheet), "--record", str(folder))
    return folder


@contextlib.contextmanager
def database() -> Iterator[sqlite3.Connection]:
    """Give the database of the invented shop."""
    with tempfile.TemporaryDirectory() as place:
        folder = recorded(Path(place) / "records")
        assert run_command("job", "--export", str(folder)).status == 0
        path = Path(place) / "records-tables" / "records.sqlite"
        with contextlib.closing(sqlite3.connect(path)) as opened:
            yield opened


def page(before: str) -> str:
    """Return the page with what it takes from the code made anew."""
    for table in TABLES:
        head = f"| column of {table.name} | holds |\n| --- | --- |\n"
        rows = (
            f"| {f'*`{c.name}`*' if c.names else f'`{c.name}`'} | {c.text} |\n"
            for c in table.columns
        )
        made = head + "".join(rows)
        pattern = rf"{re.escape(head)}(\|.*\n)*"
        before, times = re.subn(pattern, lambda _, made=made: made, before)
        assert times == 1, table.name
    with database() as opened:
        return QUESTION.sub(lambda found: _answered(opened, found[1]), before)


def _answered(opened: sqlite3.Connection, question: str) -> str:
    asked = opened.execute(question)
    head = tuple(column[0] for column in asked.description)
    rows = [head, *(tuple(map(_shown, row)) for row in asked)]
    widths = [max(map(len, cells)) for cells in zip(*rows, strict=True)]
    lines = ("  ".join(map(str.ljust, row, widths)).rstrip() for row in rows)
    return f"```sql\n{question}```\n\n```text\n" + "\n".join(lines) + "\n```\n"


def _shown(cell: object) -> str:
    return f"{cell:g}" if isinstance(cell, float) else str(cell)
