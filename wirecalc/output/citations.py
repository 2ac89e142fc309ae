"""The sources of some findings, each with one number, in order of use."""

from __future__ import annotations

from collections.abc import Iterable

from ..published.sources import Source
from ..said.findings import Finding


class Citations:
    """The sources of some findings as they are cited, numbered from 1."""

    def __init__(self, findings: Iterable[Finding]) -> None:
        cited = dict.fromkeys(s.cite() for f in findings for s in f.sources.values())
        self.listed = [(number, text) for number, text in enumerate(cited, start=1)]
        self._numbers = {text: number for number, text in self.listed}

    def mark(self, source: Source | None) -> str:
        """Return the number of a source in brackets; empty for none."""
        number = self._numbers.get(source.cite()) if source else None
        return f"[{number}]" if number else ""
