"""A page of headings, paragraphs, lists and tables, as text, as Markdown or as HTML to print."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..said.charts import Chart
from . import layout
from .html_building import Element, el, items, page, picture, table
from .layout import visible, wrap


class Heading(NamedTuple):
    """A heading; the first of a page is its title."""

    text: str
    level: int = 2


class Paragraph(NamedTuple):
    """A paragraph."""

    text: str


class Items(NamedTuple):
    """A list; the letters of answers stand in its texts."""

    texts: Sequence[str]


class Rows(NamedTuple):
    """A table with a caption."""

    caption: str
    heads: Sequence[str]
    rows: Sequence[Sequence[str]]


class Picture(NamedTuple):
    """A chart: drawn on a page, in words in Markdown."""

    chart: Chart


Block = Heading | Paragraph | Items | Rows | Picture


def text(blocks: Sequence[Block]) -> str:
    """Return a page as text of the width of the terminal."""
    return "\n\n".join("\n".join(_laid_out(block)) for block in blocks)


def markdown(blocks: Sequence[Block]) -> str:
    """Return a page as Markdown."""
    return "\n\n".join("\n".join(_lines(block)) for block in blocks)


def html(blocks: Sequence[Block]) -> str:
    """Return a page as one HTML file."""
    title = next((b.text for b in blocks if isinstance(b, Heading)), "wirecalc")
    return page(title, el("main", *(_element(b, n) for n, b in enumerate(blocks)), class_="plain"))


def _lines(block: Block) -> Iterator[str]:
    if isinstance(block, Heading):
        yield f"{'#' * block.level} {_plain(block.text)}"
    elif isinstance(block, Paragraph):
        yield _plain(block.text)
    elif isinstance(block, Picture):
        yield _plain(block.chart.text)
    elif isinstance(block, Items):
        yield from (f"- {_plain(text)}" for text in block.texts)
    else:
        if block.caption:
            yield from (_plain(block.caption), "")
        yield _row(block.heads)
        yield _row(["---"] * len(block.heads))
        yield from map(_row, block.rows)


def _laid_out(block: Block) -> Iterator[str]:
    if isinstance(block, Items):
        yield from (line for said in block.texts for line in wrap(said, "- ", "  "))
    elif isinstance(block, Rows):
        yield from wrap(block.caption)
        yield from layout.table([block.heads, *block.rows], head=True)
    elif isinstance(block, Picture):
        yield from wrap(block.chart.text)
    else:
        yield from wrap(block.text)


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(_plain(c).replace('|', '/') for c in cells)} |"


def _plain(text: str) -> str:
    """Return a text in which nothing is taken for a mark of Markdown."""
    one_line = " ".join(visible(text).split())
    return re.sub(r"[\\`*<_]", lambda found: f"\\{found[0]}", one_line)


def _element(block: Block, number: int) -> Element | None:
    if isinstance(block, Heading):
        return el(f"h{block.level}", block.text)
    if isinstance(block, Paragraph):
        return el("p", block.text)
    if isinstance(block, Items):
        return items(block.texts)
    if isinstance(block, Picture):
        return picture(block.chart, f"chart-{number}")
    return table(block.caption, block.heads, block.rows)
