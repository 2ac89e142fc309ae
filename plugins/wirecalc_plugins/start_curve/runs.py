"""Simulating what was asked for: the band of the motor as typed, and the variants beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from wirecalc import PRACTICE, Item, answer, chart, computed, figure, put

from . import meter_readings, starting
from .in_words import Shown, clamp_shows, looks_like, machine_side_shows
from .judge import ASSUMED, STOP_S, judge
from .setup import LOCKED_PF, Motor, Setup, case, motor, ohm_working, rated_torque, with_fault
from .start_case import SimulatedStart

# which end of a band is slow
SLOWER = {"voltage_at_rest": 0, "source_resistance": 1, "cord_length": 1}
_MODEL = computed("two-axis-model", "simulated with the two-axis model of a single-phase motor")
_CORD = computed("copper-ohm", "ohm as typed, and of the cord by its copper at 75 C")


def items(setup: Setup, bands: Mapping[str, tuple[Any, Any]]) -> Iterator[Item]:
    """Yield what the finding holds."""
    own = motor(setup, LOCKED_PF[1])
    names = setup.variants or ["healthy"]
    typed = case(setup, own)
    shown = []
    for name in names:
        curve = starting.simulate(with_fault(typed, name), setup.duration)
        shown.append(Shown(name, curve, meter_readings.read_meters(curve, setup.duration)))
    yield from _motor_figures(setup, own, typed)
    if "healthy" in names:
        at = names.index("healthy")
        runs = [shown[at].meters, *_ends(setup, bands)]
        yield from _figures(runs)
        yield from judge(setup, runs, own, bands)
    healthy = next((s.meters for s in shown if s.name == "healthy"), None)
    for one in shown:
        yield answer(one.name.replace("-", " "), looks_like(one, healthy, setup.duration))
    yield clamp_shows(shown)
    yield machine_side_shows(shown)

    def build() -> Any:
        from .chart import start_chart

        return start_chart([(s.name, s.curve, s.meters) for s in shown], setup.duration)

    yield chart(build)


def _ends(
    setup: Setup, bands: Mapping[str, tuple[Any, Any]]
) -> Iterator[meter_readings.MeterReadings]:
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


def _run(setup: Setup, moved: Mapping[str, Any]) -> meter_readings.MeterReadings:
    fields = {n: v for n, v in moved.items() if n in Setup._fields}
    changed = setup._replace(**fields)
    own = motor(changed, moved.get("power factor", LOCKED_PF[1]))
    if changed.inertia is None or changed.load_torque is None:  # the load is the same in all runs
        own = own._replace(inertia=motor(setup, LOCKED_PF[1]).inertia)
    curve = starting.simulate(case(changed, own), setup.duration)
    return meter_readings.read_meters(curve, setup.duration)


def _slowness(meters: meter_readings.MeterReadings) -> tuple[float, float]:
    late = STOP_S * 100 if meters.settle_time is None else meters.settle_time
    return late, -meters.rpm


def _motor_figures(setup: Setup, own: Motor, typed: SimulatedStart) -> Iterator[Item]:
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


def _figures(runs: list[meter_readings.MeterReadings]) -> Iterator[Item]:
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
