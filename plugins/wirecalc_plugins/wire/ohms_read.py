"""Measured ohms less the leads, and the length or the warmth that they come to."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import PRACTICE, Bands, Item, answer, cannot_tell, figure, put, show, show_band

from ..lead_resistance import Ohms, less_leads, without_leads
from .ohms_of_length import BASE_C, Conductor

COLDEST_C, HOTTEST_C = -40.0, 250.0  # of a conductor that still is one; beyond it is a slip
Span = tuple[float, float]


class Read(NamedTuple):
    """Ohms as read, less the leads: middle and ends; `ways` is 2 for there and back."""

    middle: float
    low: float
    high: float
    ways: int

    @classmethod
    def of(cls, reading: float, leads: float | None, ways: int, ends: Bands) -> Read:
        """Return a reading in ohm less its leads, with the meter's band; no less than nothing."""
        low, high = ends.get("measured_resistance", (reading, reading))
        if leads is None:
            return cls(reading, max(0.0, less_leads(low, None).low), high, ways)
        least, most = ends.get("lead_resistance", (leads, leads))
        return cls(reading - leads, max(0.0, low - most), high - least, ways)

    def less_leads(self, reading: float, leads: float) -> Item:
        """Show the reading less its leads."""
        ohms = Ohms(self.middle, self.middle)
        return without_leads("measured, less the leads", ohms, reading, leads)


def no_metal(known_at: float) -> Item:
    """Without its metal a printed resistance holds at one temperature."""
    return cannot_tell(
        "ohms at another temperature",
        f"they are printed for {known_at:g} C, and conductor_metal was not given",
        measure="say copper or aluminium; of another metal take the maker's value",
        needs=("conductor_metal",),
    )


def length_of(conductor: Conductor, read: Read, celsius: float, warm: Span) -> Iterator[Item]:
    """Yield how long a conductor of these ohms is."""
    each = conductor.most(celsius)
    feet = 1000 * read.middle / (read.ways * each.ohm_per_kft)
    low = 1000 * read.low / (read.ways * conductor.most(warm[1]).ohm_per_kft)
    high = 1000 * read.high / (read.ways * conductor.least(warm[0]).ohm_per_kft)
    text = show(feet, "ft") if low == high else show_band(low, high, "ft")
    yield answer(
        "length by its ohms",
        f"{text} one way",
        because=["a loop is counted twice"] if read.ways > 1 else [],
        against=["a fault that has ohms of its own lies nearer"] if read.ways > 1 else [],
    )
    yield figure(
        "length",
        feet,
        "ft",
        source=each.source,
        band=(low, high),
        also=[(feet * 0.3048, "m")],
        working=lambda: (
            f"1000 x {put(read.middle, 'ohm')} / ({read.ways} x {put(each.ohm_per_kft, 'ohm/kft')})"
        ),
    )


def temperature_of(conductor: Conductor, read: Read, length: float, feet: Span) -> Iterator[Item]:
    """Yield how warm a known length of these ohms is."""
    name = "temperature by its ohms"
    if conductor.fixed_at is not None:
        yield no_metal(conductor.fixed_at)
        return
    low = conductor.warm(1000 * read.low / (read.ways * feet[1]), conductor.most)
    high = conductor.warm(1000 * read.high / (read.ways * feet[0]), conductor.least)
    middle = conductor.warm(1000 * read.middle / (read.ways * length), conductor.most)
    if high < COLDEST_C or low > HOTTEST_C or not COLDEST_C <= middle <= HOTTEST_C:
        yield cannot_tell(
            name,
            f"these ohms and this length would be {show(middle, 'C', digits=3)}",
            measure="check length, size, one-way or loop, and the leads; or a joint is in it",
            source=PRACTICE,
        )
        return
    text = show(middle, "C") if low == high else show_band(low, high, "C")
    yield answer("conductor", text, against=["cold and hot ohms of the same wire tell it better"])
    yield figure(
        "temperature",
        middle,
        "C",
        source=conductor.most(BASE_C).source,
        band=(low, high),
        working=lambda: (
            f"20 + ({put(1000 * read.middle / (read.ways * length), 'ohm/kft')} / "
            f"{put(conductor.most(BASE_C).ohm_per_kft, 'ohm/kft')} - 1) / coefficient at 20 C"
        ),
    )
