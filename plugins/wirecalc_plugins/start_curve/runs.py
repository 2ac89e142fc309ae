"""Simulating what was asked for: the band of the motor as typed, and the variants beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    answer,
    chart,
    figure,
    listing,
    put,
    starting,
)
from wirecalc.sources import computed
from wirecalc.start_model import Case

from .judge import ASSUMED, STOP_S, judge
from .setup import LOCKED_PF, Motor, Setup, case, motor, ohm_working, rated_torque, with_fault

# which end of a band is slow
SLOWER = {"voltage_at_rest": 0, "source_resistance": 1, "cord_length": 1}
_MODEL = computed("two-axis-model", "simulated with the two-axis model of a single-phase motor")
_CORD = computed("copper-ohm", "ohm as typed, and of the cord by its copper at 75 C")


class Shown(NamedTuple):
    """A variant, its curve and what the meters show of it."""

    name: str
    curve: starting.Curve
    meters: starting.MeterReadings


def items(setup: Setup, bands: Mapping[str, tuple[Any, Any]]) -> Iterator[Item]:
    """Yield what the finding holds."""
    own = motor(setup, LOCKED_PF[1])
    names = setup.variants or ["healthy"]
    typed = case(setup, own)
    shown = []
    for name in names:
        curve = starting.simulate(with_fault(typed, name), setup.duration)
        shown.append(Shown(name, curve, starting.read_meters(curve, setup.duration)))
    yield from _motor_figures(setup, own, typed)
    if "healthy" in names:
        at = names.index("healthy")
        runs = [shown[at].meters, *_ends(setup, bands)]
        yield from _figures(runs)
        yield from judge(setup, runs, own, bands)
    healthy = next((s.meters for s in shown if s.name == "healthy"), None)
    for one in shown:
        yield answer(one.name.replace("-", " "), _looks(one, healthy, setup.duration))
    yield _clamp(shown)
    yield _machine_side(shown)

    def build() -> Any:
        from .chart import start_chart

        return start_chart([(s.name, s.curve, s.meters) for s in shown], setup.duration)

    yield chart(build)


def _ends(setup: Setup, bands: Mapping[str, tuple[Any, Any]]) -> Iterator[starting.MeterReadings]:
    """Simulate the ends of the band: what is known to be slow or fast together, the rest singly.

    Whether ohm of a winding or the locked-rotor power factor make a start slower is found by
    simulating each end alone; then all slow ends together, and all fast ones.
    """
    known = {n: ends if SLOWER[n] else ends[::-1] for n, ends in bands.items() if n in SLOWER}
    single: dict[str, tuple[Any, Any]] = {n: e for n, e in bands.items() if n not in SLOWER}
    if setup.textbook_motor is None:
        single["power factor"] = (LOCKED_PF[0], LOCKED_PF[2])
    fast, slow = {n: e[0] for n, e in known.items()}, {n: e[1] for n, e in known.items()}
    if known:
        yield from (_run(setup, fast), _run(setup, slow))
    for name, ends in single.items():
        runs = [_run(setup, {name: end}) for end in ends]
        yield from runs
        swap = _slowness(runs[0]) > _slowness(runs[1])
        fast[name], slow[name] = ends[::-1] if swap else ends
    if single and len(bands) + (setup.textbook_motor is None) > 1:
        yield from (_run(setup, fast), _run(setup, slow))


def _run(setup: Setup, moved: Mapping[str, Any]) -> starting.MeterReadings:
    fields = {n: v for n, v in moved.items() if n in Setup._fields}
    changed = setup._replace(**fields)
    own = motor(changed, moved.get("power factor", LOCKED_PF[1]))
    if changed.inertia is None or changed.load_torque is None:  # the load is the same in all runs
        own = own._replace(inertia=motor(setup, LOCKED_PF[1]).inertia)
    curve = starting.simulate(case(changed, own), setup.duration)
    return starting.read_meters(curve, setup.duration)


def _slowness(meters: starting.MeterReadings) -> tuple[float, float]:
    late = STOP_S * 100 if meters.settle_time is None else meters.settle_time
    return late, -meters.rpm


def _motor_figures(setup: Setup, own: Motor, typed: Case) -> Iterator[Item]:
    """Yield what stands behind the simulation, the assumed load and inertia marked as such."""
    assumed = {name: ", assumed" if getattr(setup, name) is None else "" for name in ASSUMED}
    load, slip = typed.load, own.machine.slip
    rated = rated_torque(own)
    yield figure(
        "rated torque of the motor",
        rated,
        "N m",
        source=own.source,
        working=lambda: f"the shaft torque of the model at its rated slip of {put(slip)}",
    )
    torque = max(load.constant, load.quadratic * (1 - own.machine.slip) ** 2)
    share = 100.0 if setup.load_torque is None else setup.load_torque
    yield figure(
        f"load torque at speed{assumed['load_torque']}",
        torque,
        "N m",
        source=PRACTICE,
        working=lambda: f"{put(share, '%')} / 100 x {put(rated, 'N m')}",
    )
    known = setup.inertia is None and own.inertia_known
    name = "moment of inertia" + ("" if known else assumed["inertia"])
    source = own.source if known else PRACTICE
    yield figure(
        name,
        load.inertia,
        "kg m2",
        source=source,
        working=None
        if known or setup.inertia is not None
        else lambda: "that of a quarter-horse textbook motor with its load, by power and poles",
    )
    if own.machine.start is not None:
        ohm = own.machine.start.resistance
        yield figure("ohm of the start winding", ohm, "ohm", source=own.start_source)
    if typed.supply.resistance:
        ohm = typed.supply.resistance
        yield figure(
            "ohm of supply and cord", ohm, "ohm", source=_CORD, working=lambda: ohm_working(setup)
        )


def _simulated() -> str:
    return "read off the simulated start"


def _figures(runs: list[starting.MeterReadings]) -> Iterator[Item]:
    """Yield the healthy start's readings, each with its low and high over the runs."""
    wanted = (
        ("highest instantaneous current", "peak", "A"),
        ("highest one-cycle rms current", "cycle", "A"),
        ("inrush reading, first 100 ms", "inrush", "A"),
        ("settled current", "settled", "A"),
        ("lowest volts at the motor", "volts", "V"),
        ("heat in the start winding", "start_heat", "J"),
    )
    for name, field, unit in wanted:
        values = [getattr(run, field) for run in runs]
        band = (min(values), max(values))
        yield figure(name, values[0], unit, source=_MODEL, band=band, working=_simulated)


def _looks(one: Shown, healthy: starting.MeterReadings | None, duration: float) -> str:
    """Say in words what a meter shows of a variant."""
    meters = one.meters
    if meters.speed_time is None:
        text = f"does not come to speed: the meter stays at {meters.settled:.3g} A"
        return text + _beside(meters, healthy)
    if meters.settle_time is None:
        return (
            f"at speed after {meters.speed_time:.2g} s, and still not settled at {duration:g} s: "
            f"{meters.settled:.3g} A"
        )
    return (
        f"at speed after {meters.speed_time:.2g} s; the meter falls from {meters.cycle:.3g} A to "
        f"{meters.settled:.3g} A within {meters.settle_time:.2g} s"
    )


def _beside(meters: starting.MeterReadings, healthy: starting.MeterReadings | None) -> str:
    if healthy is None or healthy is meters or healthy.speed_time is None:
        return ""
    return f", {meters.settled / healthy.settled:.1f} times the healthy settled current"


def _clamp(shown: list[Shown]) -> Item:
    columns = ("variant", "highest", "one cycle", "first 100 ms", "settled", "settles after")
    return listing(
        "What a clamp meter on the line shows (A; s)",
        columns,
        [
            (
                s.name,
                *(_round(v) for v in (s.meters.peak, s.meters.cycle, s.meters.inrush)),
                _round(s.meters.settled),
                "does not" if s.meters.settle_time is None else _round(s.meters.settle_time),
            )
            for s in shown
        ],
    )


def _machine_side(shown: list[Shown]) -> Item:
    columns = ("variant", "at speed after", "speed", "lowest volts", "heat")
    return listing(
        "At the motor (s; rpm; V; J in the start winding)",
        columns,
        [
            (
                s.name,
                "does not" if s.meters.speed_time is None else _round(s.meters.speed_time),
                round(s.meters.rpm),
                _round(s.meters.volts),
                _round(s.meters.start_heat),
            )
            for s in shown
        ],
    )


def _round(value: float) -> float:
    shown = float(f"{value:.3g}")
    return int(shown) if shown >= 100 else shown
