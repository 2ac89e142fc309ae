"""Where a number comes from, and how far it may be trusted."""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple


class Confidence(StrEnum):
    """How a published value was confirmed."""

    CONFIRMED = "confirmed"
    COMPUTED = "computed"
    MEMORY = "memory"
    PRACTICE = "common practice"
    TYPED = "as typed"
    HOUSE = "house"
    DEMO = "demo"


class Source(NamedTuple):
    """A citation: title, edition, table or clause, and what supports it.

    `copies` is the number of copies compared, for a confirmed value.
    """

    key: str
    title: str
    edition: str = ""
    where: str = ""
    confidence: Confidence = Confidence.CONFIRMED
    copies: int = 0

    @property
    def trust(self) -> str:
        """Say in words how far the value may be trusted."""
        if self.confidence is Confidence.CONFIRMED:
            return f"confirmed, {self.copies} {'copy' if self.copies == 1 else 'copies'} seen"
        if self.confidence is Confidence.MEMORY:
            return "from memory: confirm it"
        if self.confidence is Confidence.PRACTICE:
            return "common practice, no source"
        return str(self.confidence)

    def cite(self) -> str:
        """Return the citation on one line, with how far it may be trusted."""
        parts = [p for p in (self.title, self.edition, self.where) if p]
        said = ", ".join(parts)
        return self.trust if self.trust.startswith(said) else f"{said} ({self.trust})"


PRACTICE = Source("practice", "common practice", confidence=Confidence.PRACTICE)
MAKER = Source("maker", "the maker's marking", confidence=Confidence.TYPED)
PLATE = Source("plate", "the nameplate", confidence=Confidence.TYPED)


def from_memory(key: str, title: str, where: str = "") -> Source:
    """Return a source for a published value of which no copy was seen."""
    return Source(key, title, where=where, confidence=Confidence.MEMORY)


def confirmed(key: str, title: str, where: str, copies: int) -> Source:
    """Return a source for a published value that was seen in so many copies."""
    return Source(key, title, where=where, copies=copies)


def computed(key: str, title: str, where: str = "") -> Source:
    """Return a source for a value worked out from a law or a definition."""
    return Source(key, title, where=where, confidence=Confidence.COMPUTED)
