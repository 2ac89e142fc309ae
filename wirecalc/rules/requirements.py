"""What a shop asks of a kind of job: a record that the hook for house rules takes."""

from __future__ import annotations

import contextlib
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from ..base.errors import TableError
from ..published import tables

ANY_KIND = "*"
TABLE_OF_KINDS = "job-kinds"


class RequiredChecks(NamedTuple):
    """Checks that a shop wants in every job of some kinds, under a `name`.

    `kinds` are kinds of job as sheets name them, ("*",) for all; `calculations` are names of
    calculations. A job of such a kind without an as-left check of one of them is a `cannot tell`.
    It asks for more and allows nothing.
    """

    name: str
    kinds: tuple[str, ...]
    calculations: tuple[str, ...]


class ProvidedRequirement(NamedTuple):
    """Checks that are asked for, and the plugin that asks."""

    plugin: str
    version: str
    rule: RequiredChecks

    @property
    def said(self) -> str:
        """The rule with its plugin, in words."""
        from_file = self.version.startswith("line ") or not self.version
        plugin = "" if from_file else "plugin "
        return f"“{self.rule.name}” of {plugin}{self.plugin}"

    def asks(self, kind: str) -> bool:
        """Whether it says something of this kind of job."""
        return ANY_KIND in self.rule.kinds or self.names(kind)

    def names(self, kind: str) -> bool:
        """Whether it is of this very kind, in either case."""
        return kind.casefold() in (k.casefold() for k in self.rule.kinds)


def lists_kinds(table: str) -> bool:
    """Whether a table of this name lists kinds of job; a shop's has a name that begins so."""
    return table == TABLE_OF_KINDS or table.startswith(f"{TABLE_OF_KINDS}-")


def kinds_in(folders: Iterable[Path]) -> Iterator[str]:
    """Yield the kinds of job that the tables in some folders list; a damaged one lists none."""
    for folder in folders:
        for path in tables.sidecars(folder):
            with contextlib.suppress(TableError):
                if lists_kinds(path.stem):
                    said = (row.text("kind") for row in tables.read(folder, path.stem).rows)
                    yield from (kind for kind in said if kind != ANY_KIND)
