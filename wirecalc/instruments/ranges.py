"""A range of an instrument: what it reads, from where to where, and how far off it may be.

    [[instrument.range]]
    reads = "current"        # a dimension: current, voltage, resistance, force, length, ...
    from = "0.50 A"
    to = "60.00 A"           # as the display shows it: its last digit is 0.01 A
    error = "2% + 5"         # of the reading, and counts of the last digit
    wave = "ac"              # or "dc"; left out: both
    hertz = [45, 400]        # where the sheet says so

Other forms of an error: "2%", "0.05 A", "1% + 0.05 A", "1.5% of range", "1% + 0.5% of range". They
are those in which the sheets of meters state it, of the reading with digits or with a share of the
range (EURAMET cg-15, calibration of digital multimeters; class of an indicating instrument:
IEC 60051-1; both from memory).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, NamedTuple

from ..base.errors import BadText, did_you_mean
from ..base.rounding import show
from ..typed.quantities import read_number
from ..typed.unit_names import SPELLINGS
from ..typed.units import converter, read_unit

KEYS = ("reads", "from", "to", "error", "wave", "hertz")
WAVES = ("ac", "dc")
_PERCENT = re.compile(r"(?P<share>[\d.]+)\s*%(?P<of_range>\s*of\s+range)?")
_COUNTS = re.compile(r"\d+")


class Error(NamedTuple):
    """How far off: a share of the reading, and an amount in the unit of the range."""

    share: float = 0.0  # per cent of the reading
    amount: float = 0.0

    def at(self, value: float) -> float:
        """Return by how much a reading may be off, in the unit of the range."""
        return abs(value) * self.share / 100 + self.amount


class Range(NamedTuple):
    """One range of an instrument, in its own unit; `said` is its error as it is declared."""

    dimension: str
    unit: str
    low: float
    high: float
    error: Error
    said: str
    shown: tuple[str, str] = ("", "")
    wave: str = ""
    hertz: tuple[float, float] | None = None

    def reads(self, dimension: str, wave: str, hertz: tuple[float, ...] = ()) -> bool:
        """Whether it reads such a quantity: of this wave, at these frequencies."""
        if self.dimension != dimension or (self.wave and wave and self.wave != wave):
            return False
        return self.hertz is None or all(self.hertz[0] <= f <= self.hertz[1] for f in hertz)

    def holds(self, value: float) -> bool:
        """Whether a value in its unit lies within it."""
        return self.low <= abs(value) <= self.high

    @property
    def words(self) -> str:
        """The range and its error in words."""
        return f"{self.shown[0]} to {self.shown[1]}, ±({self.said})"


def read_range(raw: Mapping[str, Any]) -> Range:
    """Read a range as it is declared; raises BadText with what would do."""
    for key in raw:
        if key not in KEYS:
            raise BadText(f"a range has no {key!r}", did_you_mean(key, KEYS))
    dimension = _text(raw, "reads", '"current"')
    if dimension not in SPELLINGS:
        raise BadText(
            f"reads = {dimension!r} is no dimension", did_you_mean(dimension, list(SPELLINGS))
        )
    start, unit, _ = _end(_text(raw, "from", '"0.50 A"'), dimension)
    high, last, step = _end(_text(raw, "to", '"60.00 A"'), dimension)
    low = start if unit == last else converter(unit, last, dimension)(start)
    if not 0 <= low < high:
        raise BadText(f"a range from {raw['from']} to {raw['to']}", "write the smaller end first")
    said = _text(raw, "error", '"2% + 5"')
    wave = raw.get("wave", "")
    if wave not in ("", *WAVES):
        raise BadText(f"wave = {wave!r} is not known", "write ac or dc, or leave it out for both")
    return Range(
        dimension, last, low, high, read_error(said, step, high, last, dimension), said,
        (str(raw["from"]), str(raw["to"])), wave, _hertz(raw.get("hertz")),
    )  # fmt: skip


def _text(raw: Mapping[str, Any], key: str, such_as: str) -> str:
    said = raw.get(key)
    if not isinstance(said, str) or not said.strip():
        raise BadText(f"a range says {key} = {said!r}" if key in raw else f"a range has no {key}",
                      f"write {key} = {such_as}")  # fmt: skip
    return said.strip()


def _end(text: str, dimension: str) -> tuple[float, str, float | None]:
    number, word = read_number(text)
    if not word:
        raise BadText(f"{text!r} has no unit", f"write {text} {next(iter(SPELLINGS[dimension]))}")
    return number.value, read_unit(word, dimension), number.step


def _hertz(said: object) -> tuple[float, float] | None:
    if said is None:
        return None
    good = isinstance(said, list) and len(said) == 2
    numbers = [v for v in said if isinstance(v, int | float)] if isinstance(said, list) else []
    if not good or len(numbers) != 2 or not 0 <= numbers[0] < numbers[1]:
        raise BadText(f"hertz = {said!r}", "write hertz = [45, 400]")
    return float(numbers[0]), float(numbers[1])


def read_error(text: str, step: float | None, high: float, unit: str, dimension: str) -> Error:
    """Read an error as the sheet of a meter states it; `step` is the last digit of the display.

    >>> read_error("2% + 5", 0.01, 60.0, "A", "current")
    Error(share=2.0, amount=0.05)
    >>> read_error("1.5% of range", 1.0, 200.0, "V", "voltage")
    Error(share=0.0, amount=3.0)
    """
    share = amount = 0.0
    for part in (p.strip() for p in text.strip("±() ").split("+")):
        if percent := _PERCENT.fullmatch(part):
            value = read_number(percent["share"])[0].value
            if not value < 100:
                raise BadText(f"an error of {part}", "write per cent, under 100")
            share += 0.0 if percent["of_range"] else value
            amount += value / 100 * high if percent["of_range"] else 0.0
        elif _COUNTS.fullmatch(part):
            if step is None:
                raise BadText(f"{part} counts of what?", "write the end of the range as a decimal")
            amount += int(part) * step
        else:
            amount += _amount(part, unit, dimension)
    if share == amount == 0:
        raise BadText(f"an error of {text}", "no instrument is without: write what its sheet says")
    return Error(share, amount)


def _amount(part: str, unit: str, dimension: str) -> float:
    number, word = read_number(part)
    if not word:
        would_do = f"write {show(number.value, unit)}, {part}% or whole counts"
        raise BadText(f"{part!r} is neither per cent, counts nor an amount", would_do)
    if dimension == "temperature":  # an error of a temperature is a difference
        dimension, unit = "temperature difference", "F" if unit == "F" else "K"
    typed = read_unit(word, dimension)
    value = number.value if typed == unit else converter(typed, unit, dimension)(number.value)
    if value < 0:
        raise BadText(f"an error of {part}", "write it without a sign")
    return value
