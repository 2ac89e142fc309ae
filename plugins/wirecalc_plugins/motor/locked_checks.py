"""How long a start stays high, and what its overload does: criteria of a motor that hums."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Item, Origin, at_least, at_most, at_or_below, cannot_tell, tables

from .plate import MOST_RATIO
from .start_checks import NO_METER, NORMAL_S, STOP_S

LEAST_RESET = 1.0  # min; an overload resets in minutes; practice
_TIME = "time at high current"
_STOP = "switch off, do not try again before it is cold; read windings, start device, volts"


def judge_high(
    high_time: float,
    near: bool | None,
    current: float | None,
    lra: float | None,
    inverter: bool | None,
) -> Item:
    """Judge the time at high current; over 3 s it fails only where it is near a locked rotor's."""
    if at_or_below(high_time, STOP_S) or near:
        return at_most(
            _TIME,
            high_time,
            STOP_S,
            "s",
            caution=NORMAL_S,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="a start is over within a second",
            action=_STOP,
        )
    given = (("high_current", current), ("locked_rotor_current", lra))
    missing = [name for name, value in given if value is None]
    said = "how near that is to locked-rotor current is not known"
    if not missing:
        said = "and not surely near locked-rotor current: neither a start nor a locked rotor"
        said += "" if inverter is False else "; a board that drives the motor ramps it so"
        missing = ["inverter"] if inverter is None else []
    return cannot_tell(
        _TIME,
        f"{high_time:.4g} s at high current is over {STOP_S:g} s, {said}",
        measure="switch off; clamp one wire, and read LRA and the volts of the plate",
        needs=missing,
        source=PRACTICE,
    )


def judge_current(current: float | None, most: float | None) -> Iterator[Item]:
    """Question a current in A over any crest of a start; `most` is LRA at the supply's volts."""
    if current is not None and most and not at_or_below(current, NO_METER * most):
        yield cannot_tell(
            "high current",
            f"{current:g} A is {current / most:.2g} times locked-rotor current, and no start has "
            f"over {NO_METER:.3g} times: a slipped point, another load, another plate, a short",
            measure="clamp one wire of the motor alone, and read its LRA again",
            source=PRACTICE,
        )


def judge_times_rated(
    current: float | None, rated: float | None, lra: float | None
) -> Iterator[Item]:
    """Question a current in A over any start of a motor so rated, where LRA was not given."""
    if current is None or rated is None or lra is not None:
        return
    if not at_or_below(current, MOST_RATIO * rated):
        yield cannot_tell(
            "high current",
            f"{current:g} A is {current / rated:.2g} times RLA, and no motor starts on over "
            f"{MOST_RATIO:g} times: a slipped point, another plate?",
            measure="clamp one wire of the motor alone, and read RLA and LRA on its plate again",
            source=PRACTICE,
        )


def judge_trips(trips: int | None) -> Item:
    """Judge how often the overload opened in an hour: not once."""
    name = "overload stays closed"
    if trips is None:
        return cannot_tell(
            name,
            "it was not said whether the overload opened",
            measure="listen for its click, and count",
            needs=("overload_trips",),
        )
    return at_most(
        name,
        float(trips),
        0.0,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="openings in an hour",
        action="find the cause before it is started again; never bridge the overload",
    )


def judge_reset(reset_time: float | None) -> Iterator[Item]:
    """Say whether what opened closes again as an overload does; in min."""
    if reset_time is None:
        return
    says = "is it the overload that opens, or a control?"
    yield at_least(
        "time to reset, lower limit",
        reset_time,
        LEAST_RESET,
        "min",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        behind="an overload that opened at all has failed: openings in an hour, at most 0",
        says=says,
        action="see what opens: overload, thermostat or control board",
    )
    row = tables.load("start-parts").row(
        part="overload", quantity="wait before a reading", said_by="manual"
    )
    yield at_most(
        "time to reset, upper limit",
        reset_time,
        row.number("least"),
        "min",
        source=row.source,
        advisory=True,
        behind="an overload that opened at all has failed: openings in an hour, at most 0",
        says="even an internal overload of a hot unit has closed by then",
        action="read the overload cold: it may be open for good",
    )
