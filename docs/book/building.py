"""Writing the pages that are made, and telling the generator of the book about them."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

import wirecalc
from wirecalc.output.explanation import tables_named
from wirecalc.published import tables

from .calculations import calculation_page, calculations_index
from .contents import front_page, within
from .examples_worked import Worked, work
from .markdown import page
from .published import table_page, tables_index
from .standards import standards_page

if TYPE_CHECKING:
    from sphinx.application import Sphinx

MADE = "made"  # the folder below docs/ that holds what is made, and nothing else


def all_worked() -> list[Worked]:
    """Work the examples of all calculations that come with wirecalc."""
    loaded = wirecalc.build(bundled_only=True)
    if not loaded.calculations:
        raise LookupError("no calculation is there: install wirecalc where the book is built")
    return [work(loaded, name) for name in sorted(loaded.calculations)]


def made_pages(all_of: list[Worked]) -> Mapping[str, str]:
    """Return the text of each page that is made, by its path below the folder of them."""
    pages = {f"calculations/{w.calc.name}.md": calculation_page(w) for w in all_of}
    pages["calculations/index.md"] = with_contents(
        calculations_index(all_of), [w.calc.name for w in all_of]
    )
    published = [tables.load(name) for name in tables.names()]
    for table in published:
        used_by = [w.calc.name for w in all_of if table.name in tables_named(w.calc.doc)]
        pages[f"tables/{table.name}.md"] = table_page(table, used_by)
    pages["standards.md"] = standards_page(all_of, published)
    names = [table.name for table in published]
    pages["tables/index.md"] = with_contents(tables_index(published), names)
    return pages


def with_contents(text: str, names: list[str]) -> str:
    """Return an index with its pages as a hidden part of the table of contents."""
    return page([text, "```{toctree}", ":hidden:", "", *names, "```"])


def write(folder: Path) -> None:
    """Write what is made into a folder: only what is other than before, and nothing else stays."""
    pages = {folder / name: text for name, text in made_pages(all_worked()).items()}
    for old in set(folder.rglob("*.md")) - set(pages):
        old.unlink()
    for path, text in pages.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        if not path.is_file() or path.read_text(encoding="utf-8") != text:
            path.write_text(text, encoding="utf-8")


def setup(app: Sphinx) -> dict[str, Any]:
    """Have the pages made before the book is read, and the front page built from its lists."""
    from pygments.lexers.special import TextLexer

    app.connect("builder-inited", lambda app: write(Path(app.srcdir) / MADE))
    app.connect("source-read", _read)
    app.add_lexer("csv", TextLexer)  # there is none of it
    return {"parallel_read_safe": True, "parallel_write_safe": True}


def _read(app: Sphinx, name: str, source: list[str]) -> None:
    if "/" not in name:  # what is made has no other links than those that it should
        source[0] = within(source[0], Path(app.srcdir))
    if name == "index":
        source[0] = front_page(source[0])
