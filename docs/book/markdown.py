"""Pieces of Markdown: texts of the declarations as they stand on a page."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

_MARKS = re.compile(r"([\\`*_\[\]<>{}$|#~])")


def plain(text: str) -> str:
    """Return a text on one line that reads as it is written, whatever marks are in it."""
    return _MARKS.sub(r"\\\1", " ".join(text.split()))


def code(text: str) -> str:
    """Return a text as code, empty for none; inside a table too."""
    return f"`{text}`".replace("|", "/") if text else ""


def rows(head: Sequence[str], body: Iterable[Sequence[str]]) -> list[str]:
    """Return a table and an empty line behind it; nothing where it has no row."""
    lines = ["| " + " | ".join(cells) + " |" for cells in body]
    if not lines:
        return []
    return [
        "| " + " | ".join(head) + " |",
        "| " + " | ".join("---" for _ in head) + " |",
        *lines,
        "",
    ]


def items(texts: Iterable[str]) -> list[str]:
    """Return a list and an empty line behind it; nothing where there is none."""
    lines = [f"- {text}" for text in texts]
    return [*lines, ""] if lines else []


def section(title: str, lines: Sequence[str]) -> list[str]:
    """Return a heading with what stands below it; nothing where nothing does."""
    return [f"## {title}", "", *lines] if lines else []


def block(lines: Iterable[str]) -> list[str]:
    """Return lines as they were printed, in a block of their own."""
    return ["```text", *lines, "```", ""]


def paragraphs(doc: str) -> Iterator[str]:
    """Yield the paragraphs of a docstring below its first line, each with an empty line behind."""
    for paragraph in doc.split("\n\n")[1:]:
        yield from (plain(paragraph), "")


def page(lines: Iterable[str]) -> str:
    """Return the text of a page."""
    return "\n".join(lines).rstrip() + "\n"
