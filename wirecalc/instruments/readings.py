"""A reading by an instrument: which of its ranges it falls in, and the band that it then has."""

from __future__ import annotations

import contextlib
import math
import re
from collections.abc import Iterator
from typing import NamedTuple

from ..base.errors import BadText, did_you_mean
from ..typed.kinds import TAKEN_AS_EXACT, Read
from ..typed.quantities import read_quantity, split_error
from ..typed.quantity_kinds import Reading
from .declared import Declared, Instrument
from .ranges import Range

SAID_EXACT = "said to be exact"
_BY = re.compile(r"(?P<value>\S.*?)\s+by\s+(?P<name>\S.*)", re.DOTALL)
_EXACT = re.compile(r"(?P<value>\S.*?)\s+exact", re.IGNORECASE | re.DOTALL)
_ENDS = ("<", ">")
MAINS = (50.0, 60.0)  # Hz, of whatever is read on the supply

_in_use = Declared()


class Said(NamedTuple):
    """What stands behind a reading: the instrument that it names, or that it is meant exactly."""

    value: str
    name: str = ""
    exact: bool = False


@contextlib.contextmanager
def in_use(declared: Declared) -> Iterator[None]:
    """Have these instruments in use for a while, and no others."""
    global _in_use
    before, _in_use = _in_use, declared
    try:
        yield
    finally:
        _in_use = before


def declared() -> Declared:
    """Return the instruments in use."""
    return _in_use


def split(text: str) -> Said:
    """Part a reading from what stands behind it.

    >>> split("1.30 A by clamp 1"), split("1.30 A exact").exact
    (Said(value='1.30 A', name='clamp 1', exact=False), True)
    """
    if found := _BY.fullmatch(text.strip()):
        return Said(found["value"], name=found["name"])
    if found := _EXACT.fullmatch(text.strip()):
        return Said(found["value"], exact=True)
    return Said(text)


def any_in_use() -> bool:
    """Whether there are instruments in use."""
    return bool(_in_use.instruments)


def may_have_one(text: str) -> bool:
    """Whether a reading may have been taken by an instrument: one is in use, or it says so."""
    return bool(_in_use.instruments) or " by " in text or text.rstrip().casefold().endswith("exact")


def with_instrument(kind: Reading, text: str, meter: str = "") -> str:
    """Return a reading with the name of the instrument that it was taken by, if there is one.

    `meter` is the one that was said for all readings of the run; it counts where it reads such a
    quantity. What the reading itself says goes before it, and so does an error that was typed.
    """
    said = split(text)
    if said.name or said.exact or split_error(said.value)[1] or text.strip()[:1] in _ENDS:
        return text
    if meter and named(meter).of(kind.dimension, kind.wave, _hertz(kind)):
        return f"{text} by {meter}"
    default = _in_use.meters.get(kind.dimension, "")
    return f"{text} by {default}" if default else text


def named(name: str) -> Instrument:
    """Return an instrument by its name; raises BadText."""
    known = {i.name.casefold(): i for i in _in_use.instruments}
    if name.casefold() not in known:
        names = [i.name for i in _in_use.instruments]
        would_do = did_you_mean(name, names) if names else "declare it: [[instrument]]"
        raise BadText(f"there is no instrument {name!r}", would_do)
    return known[name.casefold()]


def read(kind: Reading, text: str) -> Read:
    """Read a reading with what stands behind it; raises BadText."""
    said = split(text)
    if said.exact:
        found = kind.read(said.value)
        if found.low is not None:
            raise BadText(f"{text!r} says exact and an error", "drop one of them")
        others = tuple(n for n in found.notes if n != TAKEN_AS_EXACT)
        return found._replace(notes=(*others, SAID_EXACT))
    if not said.name:
        return kind.read(text)
    instrument = named(said.name)
    if split_error(said.value)[1] or said.value[:1] in _ENDS:  # what was typed goes before it
        found = kind.read(said.value)
        return found._replace(notes=(*found.notes, f"by {instrument.name}"), by=instrument.name)
    return _by_range(kind, said.value, instrument)._replace(by=instrument.name)


def _by_range(kind: Reading, text: str, instrument: Instrument) -> Read:
    ranges = instrument.of(kind.dimension, kind.wave, _hertz(kind))
    if not ranges:
        wave = f" {kind.wave}" if kind.wave else ""
        wrong = f"{instrument.name} has no range that reads{wave} {kind.dimension}"
        raise BadText(wrong, "name another, or type its error: ±3%")
    kind.read(text)  # refused as it would be without an instrument
    value = {r.unit: read_quantity(text, kind.dimension, r.unit).value for r in ranges}
    holding = [r for r in ranges if r.holds(value[r.unit])]
    if not holding:
        return _beyond(kind, text, instrument, ranges, value)
    worst = max(holding, key=lambda r: r.error.at(value[r.unit]) / max(abs(value[r.unit]), r.low))
    found = kind.read(f"{text} ±{_as_typed(worst, value[worst.unit])}")
    return found._replace(notes=(*found.notes, f"by {instrument.name}, {worst.words}"))


def _as_typed(of: Range, value: float) -> str:
    """Return the error as it might be typed behind the reading."""
    if of.dimension == "temperature":  # per cent are of the degrees that the display shows
        return f"{of.error.at(value):.12g} {'F' if of.unit == 'F' else 'K'}"
    amount = f"{of.error.amount:.12f}".rstrip("0").rstrip(".")
    if not of.error.share:
        return f"{amount} {of.unit}"
    share = f"{of.error.share:.12g}%"
    return f"({share}+{amount} {of.unit})" if of.error.amount else share


def _beyond(
    kind: Reading,
    text: str,
    instrument: Instrument,
    ranges: list[Range],
    value: dict[str, float],
) -> Read:
    """Return what is known of a reading that no range holds: on which side of an end it lies."""
    under = [r for r in ranges if abs(value[r.unit]) > r.high]
    over = [r for r in ranges if abs(value[r.unit]) < r.low]
    low, high = -math.inf, math.inf
    said = []
    if under:
        low = _at(kind, under[-1], under[-1].high)
        said.append(f"above the {under[-1].shown[1]} of {instrument.name}")
    if over:
        high = _at(kind, over[0], over[0].low)
        said.append(f"below the {over[0].shown[0]} from which {instrument.name} reads")
    return kind.known_within(kind.read(text).value, low, high, ", ".join(said))


def _at(kind: Reading, of: Range, end: float) -> float:
    from ..typed.units import converter

    return end if of.unit == kind.unit else converter(of.unit, kind.unit, kind.dimension)(end)


def _hertz(kind: Reading) -> tuple[float, ...]:
    return MAINS if kind.wave == "ac" else ()
