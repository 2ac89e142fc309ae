"""The path to a load: building wire and cord, as they were given, and what a drop comes to."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wirecalc import (
    Item,
    Problem,
    Wire,
    at_most,
    cannot_tell,
    caution,
    confirmed,
    figure,
    not_checked,
    put,
)
from wirecalc.trade.wire_runs import (
    PerLength,
    WirePath,
    WireRun,
    known_metal,
    path,
    reactance_per_length,
)

ADVISED_PCT, TOTAL_PCT = 3.0, 5.0  # of the plate's volts: branch circuit; with its feeder
MOST_LOST = 0.5  # share of the plate's volts; more is a slip of length, current or volts

DROP = "drop while running"
ADVICE = confirmed("nec-210-19", "NEC", "210.19(A) and 215.2(A), informational notes", copies=2)


def nothing_given(
    wire: Wire | None, run_length: float | None, cord: Wire | None, cord_length: float | None
) -> Iterator[Problem]:
    """Refuse a path that has neither a building wire nor a cord."""
    if wire is None and run_length is None and cord is None and cord_length is None:
        yield Problem(
            "building_wire",
            "neither a building wire nor a cord was given",
            "give building_wire with run_length, or cord with cord_length, or all four",
        )


def too_much(lost: float, most: float, way: WirePath, cord: str = "cord") -> Iterator[Problem]:
    """Refuse a path that would take `most` volts or more: a slip of length, current or gauge."""
    if abs(lost) >= most:
        longest = max(way.runs, key=lambda run: run.loop(way.temperature))
        yield Problem(
            f"{cord}_length" if longest is way.cord else "run_length",
            f"{abs(lost):.4g} V would be lost on the way, most in {longest.length_ft:.4g} ft of "
            f"{longest.wire}",
            "check ft and m, the current and the gauge; lengths are one way",
        )


def missing(
    name: str,
    wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
) -> Item | None:
    """Return why criterion `name` cannot be told: a size, length or metal that is not known."""
    pairs = (
        {"building_wire": wire, "run_length": run_length},
        {"cord": cord, "cord_length": cord_length},
    )
    for pair in pairs:
        unknown = [n for n, value in pair.items() if value is None]
        if len(unknown) == 1:
            return cannot_tell(
                name,
                f"{unknown[0]} was not given",
                measure="measure the length one way, and read the gauge on the jacket",
                needs=unknown,
            )
    for run in (wire, cord):
        if run is not None and not known_metal(run):
            return cannot_tell(
                name,
                f"the resistance of {run.metal} wire was not seen",
                measure="measure the volts at the plug with the load off and on",
            )
    return None


def path_to(
    wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
    temperature: float,
    printed: Callable[[float], PerLength] | None = None,
) -> WirePath:
    """Return the way to the plug, in ft one way, at a temperature in C.

    `printed`, a function of C, is the resistance of the wire where no table is asked.
    """
    return path(
        None if wire is None or run_length is None else WireRun(wire, run_length, printed=printed),
        None if cord is None or cord_length is None else WireRun(cord, cord_length),
        temperature,
    )


def loops(way: WirePath) -> Iterator[Item]:
    """Yield lengths and resistance of the runs; a loop is twice the length."""
    for name, run in (("wire", way.wire), ("cord", way.cord)):
        if run is not None:
            yield from _loop(name, run, way.temperature)
    yield figure(
        "loop resistance",
        way.whole.real,
        "ohm",
        working=lambda: " + ".join(put(run.loop(way.temperature), "ohm") for run in way.runs),
    )
    if any(run.wire.metal != "copper" for run in way.runs):
        yield caution("alu-01")


def _loop(name: str, run: WireRun, temperature: float) -> Iterator[Item]:
    there_and_back = [(2 * run.length_ft, "ft loop")]
    yield figure(f"length of the {name}", run.length_ft, "ft one way", also=there_and_back)
    per_length = run.per_length(temperature)
    yield figure(
        f"loop resistance of the {name}",
        run.loop(temperature),
        "ohm",
        source=per_length.source,
        working=lambda: (
            f"2 x {put(run.length_ft)} ft x {put(per_length.ohm_per_kft)} ohm/kft / 1000; at "
            f"{put(temperature)} C"
        ),
    )


def reactances(way: WirePath) -> Iterator[Item]:
    """Yield the reactance of the runs, and name a run that the table has none for."""
    for name, run in (("wire", way.wire), ("cord", way.cord)):
        x = None if run is None else reactance_per_length(run.wire)
        if run is not None and x is None:
            yield not_checked(f"reactance of the {name}", "none listed under 14 AWG; taken as 0")
        elif run is not None and x is not None:
            yield _reactance(name, run, x)


def _reactance(name: str, run: WireRun, per_length: PerLength) -> Item:
    return figure(
        f"loop reactance of the {name}",
        2 * per_length.ohm_per_kft * run.length_ft / 1000,
        "ohm",
        source=per_length.source,
        working=lambda: (
            f"2 x {put(run.length_ft, 'ft')} x {put(per_length.ohm_per_kft, 'ohm/kft')} / 1000"
        ),
    )


def running_drop(current: float, other: float, way: WirePath) -> float:
    """Return the volts that a two-wire path takes from a load in A, by resistance alone."""
    return current * way.whole.real + other * way.shared.real


def judge_drop(volts: float, nameplate_voltage: float, name: str = DROP) -> Item:
    """Judge the drop by the advice of the code, which is no rule."""
    return at_most(
        name,
        100 * volts / nameplate_voltage,
        TOTAL_PCT,
        "%",
        caution=ADVISED_PCT,
        advisory=True,
        behind="the volts at the load, 90 % of the plate; without those at rest 16 to 20 % lost",
        source=ADVICE,
        says="advice, no rule: 3 % for a branch circuit, 5 % with its feeder",
        action="a shorter or thicker run: no extension cord, or a receptacle added nearer",
    )
