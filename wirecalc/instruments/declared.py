"""Instruments as they are declared: in the settings, in a file beside them, on a job sheet.

[[instrument]]
name = "clamp 1"
category = "CAT III 600 V"       # of the meter and its leads, whichever is less
serial = "..."                   # free words
calibrated = 2026-01-31
due = 2027-01-31

[meters]                         # which of them is meant where a reading names none
current = "clamp 1"
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ..base.errors import BadText, Problem, did_you_mean
from ..typed.unit_names import SPELLINGS
from .ranges import Range, read_range

KEYS = ("name", "category", "serial", "calibrated", "due", "range", "note")
_CATEGORY = re.compile(r"CAT\s*(?P<cat>II|III|IV)\s+(?P<volts>\d{2,4})\s*V", re.IGNORECASE)
_ORDER = ("II", "III", "IV")
_CUT = re.compile(r"\s+by\s+|[;\"±]")  # what a name cannot hold: a reading ends with "by NAME"


class Category(NamedTuple):
    """A measurement category and the volts to ground that it is for (IEC 61010-1)."""

    place: str
    volts: float

    def __str__(self) -> str:
        return f"CAT {self.place} {self.volts:g} V"

    def reaches(self, place: str) -> bool:
        """Whether it is of this place or of one with greater faults."""
        return _ORDER.index(self.place) >= _ORDER.index(place)


class Instrument(NamedTuple):
    """A meter, tester, caliper or thermometer that somebody declared."""

    name: str
    ranges: tuple[Range, ...]
    category: Category | None = None
    due: datetime.date | None = None

    def of(self, dimension: str, wave: str = "", hertz: tuple[float, ...] = ()) -> list[Range]:
        """Return its ranges for a quantity, the smallest first."""
        found = [r for r in self.ranges if r.reads(dimension, wave, hertz)]
        return sorted(found, key=lambda r: r.high)


class Declared(NamedTuple):
    """The instruments of a file, and which is meant where a reading names none, by dimension."""

    instruments: tuple[Instrument, ...] = ()
    meters: Mapping[str, str] = {}
    date: datetime.date | None = None  # of the job

    def and_then(self, later: Declared) -> Declared:
        """Add those of a sheet: one of the same name takes the place of the shop's."""
        names = {i.name for i in later.instruments}
        kept = tuple(i for i in self.instruments if i.name not in names)
        meters = {**self.meters, **later.meters}
        return Declared((*kept, *later.instruments), meters, later.date or self.date)


def read(
    entries: object, meters: object, where: str, known: Sequence[str] = ()
) -> tuple[Declared, list[Problem]]:
    """Read `[[instrument]]` and `[meters]` of a file; what is wrong is returned beside them.

    `known` are names of instruments that are declared elsewhere.
    """
    problems: list[Problem] = []
    found: list[Instrument] = []
    if not isinstance(entries, list) or not all(isinstance(e, dict) for e in entries):
        return Declared(), [Problem(f"{where}: instrument", "is no list of instruments",
                                    "write [[instrument]] above each")]  # fmt: skip
    for number, raw in enumerate(entries, start=1):
        label = f"{where}: instrument {raw.get('name') or number}"
        try:
            one = _instrument(raw)
        except BadText as error:
            problems.append(error.about(label))
            continue
        if one.name in {i.name for i in found}:
            problems.append(Problem(label, "is declared twice", "give each a name of its own"))
        found.append(one)
    problems += _meters(meters, where, [*known, *(i.name for i in found)])
    return Declared(tuple(found), meters if isinstance(meters, dict) else {}), problems


def _instrument(raw: Mapping[str, Any]) -> Instrument:
    for key in raw:
        if key not in KEYS:
            raise BadText(f"there is no key {key!r}", did_you_mean(key, KEYS))
    name = raw.get("name")
    if not isinstance(name, str) or not name.strip() or _CUT.search(f" {name} "):
        would_do = 'write name = "clamp 1": a reading says 1.30 A by clamp 1'
        raise BadText(f"name = {name!r} is none to read by", would_do)
    ranges = raw.get("range")
    if not isinstance(ranges, list) or not ranges or not all(isinstance(r, dict) for r in ranges):
        raise BadText("has no range", "write [[instrument.range]] below it")
    category = raw.get("category")
    return Instrument(
        name.strip(),
        tuple(read_range(r) for r in ranges),
        None if category is None else _category(category),
        _date(raw, "due"),
    )


def _category(said: object) -> Category:
    found = _CATEGORY.fullmatch(said.strip()) if isinstance(said, str) else None
    if found is None:
        raise BadText(f"category = {said!r} is not understood", 'write "CAT III 600 V"')
    return Category(found["cat"].upper(), float(found["volts"]))


def _date(raw: Mapping[str, Any], key: str) -> datetime.date | None:
    said = raw.get(key)
    if said is None:
        return None
    if isinstance(said, datetime.date) and not isinstance(said, datetime.datetime):
        return said
    try:
        return datetime.date.fromisoformat(str(said))
    except ValueError:
        raise BadText(f"{key} = {said!r} is no date", f"write {key} = 2027-01-31") from None


def _meters(meters: object, where: str, names: Sequence[str]) -> Iterator[Problem]:
    if not isinstance(meters, dict):
        yield Problem(
            f"{where}: meters", "is written wrongly", 'write [meters] and current = "..."'
        )
        return
    for dimension, name in meters.items():
        label = f"{where}: meters: {dimension}"
        if dimension not in SPELLINGS:
            yield Problem(label, "is no dimension", did_you_mean(dimension, list(SPELLINGS)))
        elif name not in names:
            would_do = did_you_mean(str(name), names) if names else "declare it: [[instrument]]"
            yield Problem(label, f"there is no instrument {name!r}", would_do)
