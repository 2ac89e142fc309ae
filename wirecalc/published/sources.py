"""Where a number comes from, and how far it may be trusted."""

from __future__ import annotations

import re
from enum import StrEnum
from typing import NamedTuple

_OFF = re.compile(r"(\d+(?:\.\d+)?) (\S.*)", re.ASCII)  # "25 %", "10 K", "0.5 mm"
_WORDS = re.compile(r" \(|[,;] | from \d")  # what goes with a title or a clause begins there
_SHORT = 32  # letters of a clause that is named in a few words
OFF, OFF_C = "25 %", "10 K"  # how far a remembered value may be off where its table does not say


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

    `copies` is the number of copies compared, for a confirmed value. `off` is how far a value that
    is only remembered may be off: a share, or an amount in its unit; kelvin for temperatures.
    """

    key: str
    title: str
    edition: str = ""
    where: str = ""
    confidence: Confidence = Confidence.CONFIRMED
    copies: int = 0
    off: str = ""

    def may_be_off(self, value: float, unit: str) -> tuple[float, str]:
        """Return by how much a remembered value in `unit` may be off, and that in words."""
        own = read_off(self.off)
        if own is None or own[1] not in ("%", "K" if unit == "C" else unit):
            said = OFF_C if unit == "C" else OFF
            own = read_off(said)
            assert own is not None
        else:
            said = self.off
        amount, of = own
        return (abs(value) * amount / 100 if of == "%" else amount), said

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

    @property
    def short(self) -> str:
        """What it is called, where in it, and how far it may be trusted if no copy was seen."""
        if self.confidence is Confidence.PRACTICE:
            return self.trust
        where = _WORDS.split(self.where)[0]
        parts = [_WORDS.split(self.title)[0], where if len(where) <= _SHORT else ""]
        said = ", ".join(part for part in parts if part)
        return said if self.confidence is Confidence.CONFIRMED else f"{said}, {self.trust}"

    def cite(self) -> str:
        """Return the citation on one line, with how far it may be trusted."""
        parts = [p for p in (self.title, self.edition, self.where) if p]
        said = ", ".join(parts)
        return self.trust if self.trust.startswith(said) else f"{said} ({self.trust})"


def read_off(text: str) -> tuple[float, str] | None:
    """Read how far a value may be off: an amount and its unit; None where it is not written so."""
    found = _OFF.fullmatch(text)
    return (float(found[1]), found[2]) if found else None


PRACTICE = Source("practice", "common practice", confidence=Confidence.PRACTICE)
MAKER = Source("maker", "the maker's marking", confidence=Confidence.TYPED)
PLATE = Source("plate", "the nameplate", confidence=Confidence.TYPED)


def from_memory(key: str, title: str, where: str = "", off: str = "") -> Source:
    """Return a source for a published value of which no copy was seen, `off` by so much at most."""
    return Source(key, title, where=where, confidence=Confidence.MEMORY, off=off)


def confirmed(key: str, title: str, where: str, copies: int) -> Source:
    """Return a source for a published value that was seen in so many copies."""
    return Source(key, title, where=where, copies=copies)


def computed(key: str, title: str, where: str = "") -> Source:
    """Return a source for a value worked out from a law or a definition."""
    return Source(key, title, where=where, confidence=Confidence.COMPUTED)
