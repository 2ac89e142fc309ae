"""The temperature of a winding by its resistance, carried back to when it was switched off."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import product
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    at_most,
    at_or_below,
    cannot_tell,
    from_memory,
    put,
)

COLD_K = 10.0  # that a room changes by between the readings; common practice
SOON_S = 30.0  # one reading this soon counts as taken at switch-off; IEC 60034-1, from memory


class CoolingReadings(NamedTuple):
    """What was read: resistances in ohm with the leads in them, temperatures in C, times in s."""

    cold: float
    cold_temperature: float
    hot: Sequence[float]
    times: Sequence[float] | None
    room: float
    leads: float

    def temperatures(self, k: float) -> list[float]:
        """Return the winding's temperature in C at each hot reading, by the constant k."""
        return [self._at(k, hot) for hot in self.hot]

    def _at(self, k: float, hot: float) -> float:
        share = (hot - self.leads) / (self.cold - self.leads)
        return share * (k + self.cold_temperature) - k


class WindingTemperature(NamedTuple):
    """A temperature in C, low and high of it, and whether it is that at switch-off."""

    at: float
    low: float
    high: float
    known: bool


def at_switch_off(k: float, read: CoolingReadings, ends: Bands) -> WindingTemperature | None:
    """Return the temperature at switch-off and its band, None where the readings give none.

    What enters every temperature, the cold reading, its temperature and the leads, moves all of
    them together, and so does the error of the meter that read the winding hot.
    """
    cases = list(_cases(read, ends))
    if read.times is None or len(read.hot) == 1:
        latest = ends.get("hot_time", (read.times, read.times))[1]
        known = latest is not None and latest[0] <= SOON_S
        found = [max(one.temperatures(k)) for one in cases]
        return WindingTemperature(max(read.temperatures(k)), min(found), max(found), known)
    times = ends.get("hot_time", (read.times, read.times))
    first, last = min(times[1]), max(times[1])
    if first > last - first or not _in_one_order((*times, read.times)):
        return None
    found = []
    for one in (read, *cases):
        each, clock = one.temperatures(k), one.times or ()
        if min(each) <= one.room:
            return None
        if _slope(clock, _logs(each, one.room)) >= 0:
            return None
        found.append(_carried_back(clock, each, one.room))
    return WindingTemperature(found[0], min(found), max(found), True)


def _cases(read: CoolingReadings, ends: Bands) -> Iterator[CoolingReadings]:
    """Yield the readings at every corner of their bands; those of one list move together."""

    def end(name: str, value: float) -> tuple[float, ...]:
        return tuple(dict.fromkeys(ends.get(name, (value, value))))

    lows, highs = ends.get("hot_resistance", (read.hot, read.hot))
    clocks = [read.times] if read.times is None else [*ends.get("hot_time", ()), read.times]
    room_low, room_high = ends.get("room_temperature", (read.room, read.room))
    within = [room_low + share * (room_high - room_low) for share in (0.0, 0.25, 0.5, 0.75, 1.0)]
    rooms = dict.fromkeys(within)
    for cold, at, leads, room, clock in product(
        end("cold_resistance", read.cold),
        end("cold_temperature", read.cold_temperature),
        end("lead_resistance", read.leads),
        rooms,
        clocks,
    ):
        for hot in dict.fromkeys((tuple(lows), tuple(highs))):
            yield CoolingReadings(cold, at, hot, clock, room, leads)


def _in_one_order(clocks: Sequence[Sequence[float]]) -> bool:
    """Whether the readings came in one order whatever the error of the clock."""
    orders = [sorted(range(len(clock)), key=clock.__getitem__) for clock in clocks]
    return all(o == orders[0] for o in orders) and all(len({*c}) == len(c) for c in clocks)


def _logs(temperatures: Sequence[float], room: float) -> list[float]:
    return [math.log(t - room) for t in temperatures]


def _weights(times: Sequence[float]) -> list[float]:
    """Return how much each reading counts in the straight line's value at time 0."""
    mean = math.fsum(times) / len(times)
    spread = math.fsum((t - mean) ** 2 for t in times)
    return [1 / len(times) - mean * (t - mean) / spread for t in times]


def _slope(times: Sequence[float], values: Sequence[float]) -> float:
    mean = math.fsum(times) / len(times)
    spread = math.fsum((t - mean) ** 2 for t in times)
    return math.fsum((t - mean) * v for t, v in zip(times, values, strict=True)) / spread


def _carried_back(times: Sequence[float], temperatures: Sequence[float], room: float) -> float:
    weighted = zip(_weights(times), _logs(temperatures, room), strict=True)
    return room + math.exp(math.fsum(w * log for w, log in weighted))


def doubts(found: WindingTemperature, read: CoolingReadings, ends: Bands) -> Iterator[Item]:
    """Question a winding no warmer than its room, or not as cold as it to begin with."""
    room = ends.get("room_temperature", (read.room, read.room))[0]
    if at_or_below(found.high, room):
        yield cannot_tell(
            "warmer than the room",
            f"{found.high:.4g} C at the most, no warmer than its room: it did not run, or was "
            "warm when it was read cold",
            measure="let it stand until it has the room's temperature, read it, then run it",
        )
    rooms = ends.get("room_temperature", (read.room, read.room))
    colds = ends.get("cold_temperature", (read.cold_temperature,) * 2)
    apart = max(colds[1] - rooms[0], rooms[1] - colds[0])
    if not at_or_below(apart, COLD_K):
        yield cannot_tell(
            "cold as the room",
            f"{read.cold_temperature:.4g} C cold, and the room has {read.room:.4g} C: a winding "
            f"that stood has its room's temperature, within {COLD_K:g} K or so",
            measure="let it stand for hours in the room, read that with its ohms; check C and F",
            source=PRACTICE,
        )


def working_of(k: float, read: CoolingReadings) -> Callable[[], str]:
    """Put in the hottest reading; several with their times are carried back to switch-off."""
    each = read.temperatures(k)
    hot = read.hot[each.index(max(each))]

    def ratio() -> str:
        return (
            f"({put(hot, 'ohm')} - {put(read.leads, 'ohm')}) / ({put(read.cold, 'ohm')} - "
            f"{put(read.leads, 'ohm')}) x ({k:g} + {put(read.cold_temperature, 'C')}) - {k:g}"
        )

    def carried_back() -> str:
        pairs = zip(each, read.times or (), strict=True)
        said = ", ".join(f"{put(at, 'C')} at {put(time, 's')}" for at, time in pairs)
        return f"carried back to 0 s by the log of the rise over {put(read.room, 'C')}: {said}"

    return ratio if read.times is None or len(read.hot) == 1 else carried_back


_SOON = from_memory(
    "iec-60034-1-time", "IEC 60034-1", f"one reading within {SOON_S:g} s counts as at switch-off"
)


def soon_enough(time: float, ends: Bands) -> Item:
    """Judge whether one reading came soon enough to count as that at switch-off."""
    lows, highs = ends.get("hot_time", ((time,), (time,)))
    return at_most(
        "one reading, soon after switch-off",
        time,
        SOON_S,
        "s",
        source=_SOON,
        action="read it several times, with the seconds since switch-off",
        band=(lows[0], highs[0]),
    )
