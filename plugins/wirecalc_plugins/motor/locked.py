"""A motor that hums and trips its overload: is it locked, or is the overload weak?"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PLATE,
    PRACTICE,
    Count,
    Item,
    Nameplate,
    Origin,
    Problem,
    Reading,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    put,
    tables,
)

from ..inputs import SETTLED, SLIP_A
from .locked_kinds import Seen, what_it_is
from .start_checks import (
    LOADED,
    NORMAL_S,
    OVER_RLA,
    RUNNING,
    SHORT_OF_LRA,
    STOP_S,
    at_supply,
    judge_volts,
    locked_rotor,
)

LEAST_RESET = 1.0  # min; an overload resets in minutes; practice
_TIME = "time at high current"
_STOP = "switch off, do not try again before it is cold; read windings, start device, volts"


def _refuse(
    high_time: float,
    high_current: float | None = None,
    locked_rotor_current: float | None = None,
    rated_load_current: float | None = None,
    nameplate_voltage: float | None = None,
    voltage: float | None = None,
    settled: float | None = None,
    overload_trips: int | None = None,
    reset_time: float | None = None,
) -> Iterator[Problem]:
    if (
        rated_load_current is not None
        and locked_rotor_current is not None
        and locked_rotor_current <= rated_load_current
    ):
        yield Problem(
            "locked_rotor_current",
            f"{locked_rotor_current:g} A is not above the rated load of {rated_load_current:g} A",
            "look at the plate again: LRA is several times RLA",
        )
    if high_current is not None and settled is not None and high_current < settled:
        yield Problem(
            "high_current",
            f"{high_current:g} A is below the settled {settled:g} A",
            "it is the current while it stays high",
        )
    if overload_trips == 0 and reset_time is not None:
        yield Problem(
            "overload_trips", "an overload that never opened does not reset", "count its clicks"
        )


@calculation(
    part="motor and start",
    cautions=("start-01", "heat-03", "live-02", "meter-01", "pin-01"),
    not_checked=(
        "windings, start device and capacitor, dead: current alone does not tell them apart",
        "whether it is mechanically stuck, or starts against pressure",
    ),
    refuse=_refuse,
    example_with=("high_current", "locked_rotor_current", "overload_trips", "reset_time"),
)
def locked(
    high_time: Annotated[
        float,
        Reading(
            "s", low=0, high=180, typical="6 s", text="how long the current of a start stays high"
        ),
    ],
    high_current: Annotated[
        float | None,
        Reading(
            "A",
            above=0,
            high=400,
            typical="11.1 A",
            text="current while it stays high",
            slip_under=SLIP_A,
        ),
    ] = None,
    locked_rotor_current: Annotated[
        float | None, Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate")
    ] = None,
    rated_load_current: Annotated[
        float | None, Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate")
    ] = None,
    nameplate_voltage: Annotated[
        float | None, Nameplate("V", low=12, high=600, typical="115 V", text="volts on the plate")
    ] = None,
    voltage: Annotated[
        float | None,
        Reading(
            "V",
            above=0,
            high=700,
            typical="117 V",
            text="volts at the plug",
            goes_with="nameplate_voltage",
        ),
    ] = None,
    settled: Annotated[float | None, SETTLED] = None,
    overload_trips: Annotated[
        int | None, Count("times that the overload opened in an hour", low=0, high=100)
    ] = None,
    reset_time: Annotated[
        float | None,
        Reading(
            "min", above=0, high=240, typical="3 min", text="time until the overload closed again"
        ),
    ] = None,
) -> Iterator[Item]:
    """Is the motor locked, or its overload weak?

    A start is over within 1 s; over 3 s near locked-rotor current (0.7 of the plate's LRA at the
    volts of the supply, or more): stop, and do not repeat it. An overload that opens at all fails:
    near locked-rotor current it does its work, with a short start and a settled current within
    1.1 times RLA it is weak. It opens in seconds and resets in minutes (all common practice); an
    internal one may take 60 min (one manual).

    Inputs: high_time in s (0 to 180), currents in A, volts, overload_trips, reset_time in min
    (over 0 to 240). Yields the share of locked-rotor current, what it is with the evidence for
    and against each, and a criterion a question. Refuses LRA not above RLA, a high current below
    the settled one. Source: table start-parts.
    """
    plate = locked_rotor(locked_rotor_current, None, None, None)
    lra = None if plate is None else at_supply(plate, voltage, nameplate_voltage)
    near = far = None
    if high_current is not None and lra is not None:
        middle = (lra.least + (lra.most or lra.least)) / 2
        yield figure(
            "share of locked-rotor current",
            100 * high_current / middle,
            "%",
            source=PLATE,
            working=lambda: (
                f"100 x {put(high_current, 'A')} / {put(middle, 'A')}; LRA at the supply's volts"
            ),
        )
        near = at_or_below(-high_current, -SHORT_OF_LRA * (lra.most or lra.least))
        far = not at_or_below(-high_current, -SHORT_OF_LRA * lra.least)
    over = running = None
    if settled is not None and rated_load_current is not None:
        over = not at_or_below(settled, OVER_RLA * rated_load_current)
        running = at_or_below(-settled, -RUNNING * rated_load_current)
        yield figure(
            "share of rated load",
            100 * settled / rated_load_current,
            "%",
            source=PLATE,
            working=lambda: f"100 x {put(settled, 'A')} / {put(rated_load_current, 'A')}",
        )
        yield _runs(settled, rated_load_current, running)
    yield from judge_volts(voltage, nameplate_voltage)
    yield _long(high_time, near, high_current, locked_rotor_current)
    yield _trips(overload_trips)
    yield from _resets(reset_time)
    yield from what_it_is(Seen(high_time, near, far, over, running, overload_trips))


def _long(high_time: float, near: bool | None, current: float | None, lra: float | None) -> Item:
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
    return cannot_tell(
        _TIME,
        f"{high_time:.4g} s at high current is over {STOP_S:g} s, {said}",
        measure="switch off; clamp one wire, and read LRA and the volts of the plate",
        needs=missing,
        source=PRACTICE,
    )


def _runs(settled: float, rated: float, running: bool) -> Item:
    """Judge whether the settled current is that of a motor which runs at all."""
    name = "settled current, lower limit"
    if not running:
        return cannot_tell(
            name,
            f"{settled:.4g} A is under {RUNNING:.0%} of rated load: not running, or the jaws are "
            "around both wires",
            measure="see and feel whether it runs; one wire in the jaws",
            source=PRACTICE,
        )
    return at_least(
        name,
        settled,
        LOADED * rated,
        "A",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        says="it may run idle without pumping",
        action="see and feel whether it runs, cools or pumps; one wire in the jaws",
    )


def _trips(trips: int | None) -> Item:
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


def _resets(reset_time: float | None) -> Iterator[Item]:
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
        says="even an internal overload of a hot unit has closed by then",
        action="read the overload cold: it may be open for good",
    )
