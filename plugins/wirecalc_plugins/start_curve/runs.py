"""Simulating what was asked for: the healthy motor as typed, and the variants beside it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import Any

from wirecalc import PRACTICE, Item, answer, chart, charts, computed, figure, from_memory, put

from .fan import drawn_show, fan_chart, recorded_chart, said_of_drawn
from .fit_in_words import learnt, not_fitted
from .fitted_starts import FittedStarts, fitted_starts
from .healthy_starts import HealthyStarts, healthy_starts, recorded_starts, simulate
from .in_words import (
    Shown,
    clamp_shows,
    each_meter_shows,
    looks_like,
    machine_side_shows,
    not_shown,
    said_of_healthy,
)
from .judge import judge, judge_estimate, refuse_estimate
from .motors import motors, speed_fits, torque_of_its_kind
from .not_known import PTC_SPANS
from .recorded_start import recorded_start
from .setup import EASY, Setup, case, ohm_working, rated_torque, standstill_share, with_fault
from .start_case import Ptc, ShaftLoad

HEALTHY, LOCKED = "healthy", "locked-rotor"
_MODEL = computed("two-axis-model", "simulated with the two-axis model of a single-phase motor")
_CERAMIC = from_memory("ptc-ceramic", "PTC ceramic: heat capacity, switching temperature, rise")
_CORD = computed("copper-ohm", "ohm as typed, and of the cord by its copper at 75 C")


def items(setup: Setup, bands: Mapping[str, tuple[Any, Any]]) -> Iterator[Item]:
    """Yield what the finding holds."""
    own = motors(setup)
    if not own:
        yield refuse_estimate()
        return
    names = setup.variants or [HEALTHY]
    fitted = None
    if setup.fit is not None:
        fitted = _fitted(setup, bands)
        yield from [not_fitted(fitted)] if isinstance(fitted, str) else learnt(setup, fitted)
    bands = {name: ends for name, ends in bands.items() if name != "fit"}
    if fitted is None or isinstance(fitted, str):
        healthy = healthy_starts(setup, own, bands)
    else:
        healthy = recorded_starts(setup, fitted)
    shown = [Shown(name, *one) for name in names if (one := _start_of(name, setup, healthy))]
    yield from _motor_figures(setup, healthy)
    if HEALTHY in names:
        yield from _figures(healthy)
        yield from judge_estimate(
            torque_of_its_kind(setup, own[0]), speed_fits=speed_fits(setup, own[0])
        )
        yield from judge(setup, healthy, bands)
    for name in names:
        one = next((s for s in shown if s.name == name), None)
        words = not_shown(healthy) if one is None else looks_like(one, healthy, setup.duration)
        if name == HEALTHY:
            words = said_of_healthy(healthy, setup.duration)
        yield answer(name.replace("-", " "), words)
    yield clamp_shows(shown, healthy)
    if HEALTHY in names:
        yield each_meter_shows(healthy)
    yield machine_side_shows(shown, healthy)
    if healthy.drawn is not None:
        yield answer("drawn starts", said_of_drawn(healthy.drawn))
        yield drawn_show(healthy.drawn)
    if shown:
        yield chart(lambda: _picture(shown, healthy, setup.duration))


def _fitted(setup: Setup, bands: Mapping[str, tuple[Any, Any]]) -> FittedStarts | str:
    """Return the starts that reproduce the recording, or why none is known to."""
    assert setup.fit is not None
    low, high = bands.get("fit", (setup.fit, setup.fit))
    recorded = recorded_start(low, setup.fit, high, setup.frequency)
    if isinstance(recorded, str):
        return recorded
    others = {name: ends for name, ends in bands.items() if name != "fit"}
    return fitted_starts(setup, recorded, others)


def _picture(shown: list[Shown], healthy: HealthyStarts, duration: float) -> charts.Chart:
    """Describe the fan that was asked for, both ways of a start left open, or the starts."""
    from .chart import either_way_chart, start_chart

    with_healthy = any(s.name == HEALTHY for s in shown)
    if healthy.drawn is not None and with_healthy:
        return fan_chart(healthy.drawn)
    if healthy.fitted is not None and with_healthy:
        return recorded_chart(healthy.fitted)
    if healthy.motor.estimated and not healthy.sure and with_healthy:
        return either_way_chart(healthy.starts)
    return start_chart([(s.name, s.curve, s.meters) for s in shown], duration)


def _start_of(name: str, setup: Setup, healthy: HealthyStarts) -> Any:
    """Return the start of a variant; None for a fault of a motor that may not start healthy."""
    if name == HEALTHY:
        return healthy.starts[0]
    if not healthy.sure and name != LOCKED:
        return None
    return simulate(with_fault(healthy.starts[0].curve.case, name), setup.duration)


def _motor_figures(setup: Setup, healthy: HealthyStarts) -> Iterator[Item]:
    """Yield what stands behind the simulation, the assumed load and inertia marked as such."""
    own, typed = healthy.motor, healthy.starts[0].curve.case
    easy = case(setup, own, EASY)
    assumed = {n: ", assumed" if n in healthy.assumed else "" for n in ("load_torque", "inertia")}
    rated, slip = rated_torque(own), own.machine.slip
    yield figure(
        "rated torque of the motor",
        rated,
        "N m",
        source=own.source,
        working=lambda: f"the shaft torque of the model at its rated slip of {put(slip)}",
    )
    yield figure(
        "torque at standstill, share of rated",
        standstill_share(own),
        "%",
        source=own.source,
        band=healthy.torque,
        working=lambda: "the locked torque of the model on the plate's volts by the rated one",
    )
    share = 100.0 if setup.load_torque is None else setup.load_torque
    ends = (easy, typed) if healthy.fitted is None else [one.case for one in healthy.fitted.kept]
    torques = [_at_speed(one.load, slip) for one in ends]
    inertias = [one.load.inertia for one in ends]
    yield figure(
        f"load torque at speed{assumed['load_torque']}",
        torques[1],
        "N m",
        source=PRACTICE,
        band=(min(torques), max(torques)),
        working=lambda: f"{put(share, '%')} / 100 x {put(rated, 'N m')}",
    )
    known = setup.inertia is None and own.inertia_known
    yield figure(
        "moment of inertia" + assumed["inertia"],
        typed.load.inertia,
        "kg m2",
        source=own.source if known else PRACTICE,
        band=(min(inertias), max(inertias)),
        working=None
        if known or setup.inertia is not None
        else lambda: "that of a quarter-horse textbook motor with its load, by power and poles",
    )
    if own.machine.start is not None:
        ohm = own.machine.start.resistance
        yield figure("ohm of the start winding", ohm, "ohm", source=own.start_source)
    if typed.device.ptc is not None:
        yield from _ptc_figures(typed.device.ptc)
    if typed.supply.resistance:
        ohm = typed.supply.resistance
        yield figure(
            "ohm of supply and cord", ohm, "ohm", source=_CORD, working=lambda: ohm_working(setup)
        )


def _ptc_figures(ptc: Ptc) -> Iterator[Item]:
    """Yield what is remembered of a PTC, with the ends that are run."""
    tenfold = math.log(10) / ptc.rise
    for name, value, unit, span in (
        ("heat capacity of the PTC", ptc.heat_capacity, "J/K", "heat_capacity"),
        ("switching temperature of the PTC", ptc.switches_at, "C", "switches_at"),
        ("warming in which the PTC rises tenfold", tenfold, "K", "tenfold"),
    ):
        yield figure(f"{name}, assumed", value, unit, source=_CERAMIC, band=PTC_SPANS[span])


def _at_speed(load: ShaftLoad, slip: float) -> float:
    return max(load.constant, load.quadratic * (1 - slip) ** 2)


def _simulated() -> str:
    return "read off the simulated start"


def _figures(healthy: HealthyStarts) -> Iterator[Item]:
    """Yield the readings of the healthy start, each with its low and high over the starts.

    Where it may not start, what it settles at is that of those that do, and its heat is left out.
    """
    sure = healthy.sure or not healthy.motor.estimated
    wanted = [
        ("highest instantaneous current", "peak", "A", False),
        ("highest one-cycle rms current", "cycle", "A", False),
        ("inrush reading, first 100 ms", "inrush", "A", False),
        ("settled current" if sure else "settled current, if it starts", "settled", "A", not sure),
        ("lowest volts at the motor", "volts", "V", False),
    ]
    if sure:
        wanted.append(("heat in the start winding", "start_heat", "J", False))
    for name, field, unit, settled_only in wanted:
        runs = [one.meters for one in healthy.starts if one.settles or not settled_only]
        if runs:
            band = healthy.band(field, settled_only=settled_only)
            value = getattr(runs[0], field)
            yield figure(name, value, unit, source=_MODEL, band=band, working=_simulated)
