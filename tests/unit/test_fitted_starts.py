"""What counts as a recorded start, as one that reproduces it, and as learnt: each limit a step
either side."""

from __future__ import annotations

import math
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

from wirecalc_plugins.start_curve import fitted_starts as fitting
from wirecalc_plugins.start_curve import motors, recorded_start, tried_starts
from wirecalc_plugins.start_curve.courses import Courses
from wirecalc_plugins.start_curve.fit_in_words import learnt
from wirecalc_plugins.start_curve.fitted_starts import FittedStarts, Kept, fitted_starts
from wirecalc_plugins.start_curve.recorded_start import RecordedStart
from wirecalc_plugins.start_curve.setup import Setup, rated_torque
from wirecalc_plugins.start_curve.spread import Spread
from wirecalc_plugins.start_curve.tried_starts import TriedStarts

SETUP = Setup(
    None, 115, 60, 20, 4.4, 0.25, 4, None, 2, 7, "relay", None, None, None, None,
    "constant", None, 115.0, 0.0, None, None, 0.0, 4.0, None,
)  # fmt: skip
FALLS = (0.40, 0.44, 0.50)
NOTHING: Any = np.zeros(0)


def recorded(falls: tuple[float, ...] = FALLS) -> RecordedStart:
    return RecordedStart(20.0, (19.9, 20.1), 4.0, (3.9, 4.1), falls, 0.6, NOTHING, NOTHING)


def kept(**changed: float) -> Kept:
    nothing: Any = None
    values = {"locked": 20.0, "torque": 100.0, "load": 50.0, "inertia": 0.004,
              "speed_time": 0.42, "opened": 0.40}  # fmt: skip
    return Kept(nothing, nothing, **{**values, **changed})


def fitted(
    *ones: Kept, quick: bool = False, torque: tuple[float, float] = (60.0, 160.0)
) -> FittedStarts:
    return FittedStarts(list(ones), 240, torque, quick, 1 / 60, recorded(), NOTHING)


@pytest.mark.parametrize(
    ("field", "share", "quick", "beside"),
    [
        ("locked", 0.02, 0.14, 0), ("torque", 0.12, 0.12, 0), ("load", 0.08, 0.08, 0),
        ("inertia", 0.15, 0.27, 0), ("speed_time", 0, 0, 1 / 60), ("opened", 0, 0, 1 / 60),
    ],
)  # fmt: skip
def test_what_is_learnt_has_room(field: str, share: float, quick: float, beside: float) -> None:
    one = kept()
    value = getattr(one, field)
    for is_quick, by in ((False, share), (True, quick)):
        found = fitted(one, quick=is_quick).band(field)
        assert found == pytest.approx((value * (1 - by) - beside, value * (1 + by) + beside))


@pytest.mark.parametrize(("high", "told"), [(124.9, True), (125.1, False)])
def test_a_torque_is_told_where_its_band_is_much_narrower(high: float, told: bool) -> None:
    # 62.5 less 12 % is 55; 125 more 12 % is 140: 85 of the 100 that it was before, from 60 to 160
    found = fitted(kept(torque=62.5), kept(torque=high))
    assert found.told("torque") is told


@pytest.mark.parametrize(("high", "told"), [(94.4, True), (94.5, False)])
def test_a_load_is_told_where_it_is_not_nearly_any(high: float, told: bool) -> None:
    # 94.44 more 8 % is 102, which is 85 % of 120
    assert fitted(kept(load=0.0), kept(load=high)).told("load") is told


def said(setup: Setup, found: FittedStarts) -> dict[str, str]:
    items: list[Any] = list(learnt(setup, found))
    return {item.name: getattr(item, "text", "") for item in items}


def test_what_a_current_does_not_tell_is_said() -> None:
    wide = fitted(kept(torque=60.0, load=2.0), kept(torque=150.0, load=110.0))
    plate = said(SETUP, wide)
    assert "twice the torque with twice the inertia" in plate["torque at standstill, learnt"]
    assert "2 to 119 % of rated torque" in plate["load, learnt"]
    assert "moment of inertia, learnt" in plate
    known = said(SETUP._replace(inertia=0.004), wide)
    assert "cannot tell: 53 to 168 %" in known["torque at standstill, learnt"]
    assert "give the load" in known["torque at standstill, learnt"]
    assert "moment of inertia, learnt" not in known
    narrow = fitted(kept(), kept(opened=math.inf))
    both = said(SETUP._replace(inertia=0.004, load_torque=50.0), narrow)
    assert "torque at standstill, share of rated, learnt" in both
    assert not {"load, learnt", "start winding out, learnt"} & set(both)


def tried(number: int, inrush: float = 20.0, **changed: Any) -> TriedStarts:
    """So many starts that reproduce the recording, and one that does not settle."""
    count = number + 1
    full = np.ones(count)
    motor = motors.motors(SETUP)[0]
    case = tried_starts._case(SETUP, motor, {}, 0, 0.004)
    values = {"inrush": inrush * full, "settled": 4.0 * full, "late": 0.0, **changed}
    falls = [fall * full + values["late"] for fall in FALLS]
    settle = np.append(0.6 * full[1:], math.inf)
    rms = np.ones((60, count))
    courses = Courses(60.0, 188.5 * full, full, rms, rms, 0.4 * full, full > 0)
    shown = Spread(full, full, values["inrush"], full, full, values["settled"], settle, full, full)
    return TriedStarts(list(range(count)), [motor] * count, [case] * count, courses, shown, falls)


@pytest.mark.parametrize(("number", "enough"), [(9, False), (10, True)])
def test_fewer_than_ten_starts_show_no_band(number: int, enough: bool) -> None:
    found = fitting._fitted(tried(number), recorded(), 20.0)
    assert isinstance(found, FittedStarts) is enough
    if not enough:
        assert found == "of 10 starts that this plate may have only 9 reproduces it"


@pytest.mark.parametrize(
    ("changed", "within"),
    [
        # 2 % about 19.9 to 20.1 A, 8 % about 3.9 to 4.1 A, 12 % of the first fall and half a cycle
        ({"inrush": 20.49}, True), ({"inrush": 20.51}, False),
        ({"inrush": 19.51}, True), ({"inrush": 19.49}, False),
        ({"settled": np.full(11, 4.42)}, True), ({"settled": np.full(11, 4.43)}, False),
        ({"late": 0.0562}, True), ({"late": 0.0565}, False), ({"late": -0.0565}, False),
    ],
)  # fmt: skip
def test_a_start_reproduces_a_recording_within_what_the_model_leaves_out(
    changed: dict[str, Any], within: bool
) -> None:
    assert len(fitting._reproduce(tried(10, **changed), recorded())) == (10 if within else 0)


@pytest.mark.parametrize(("falls", "quick"), [(0.099, True), (0.101, False)])
def test_a_start_that_falls_within_100_ms_is_quick(falls: float, quick: bool) -> None:
    both = (falls, 0.44, 0.50)
    one = tried(10)._replace(falls=[np.full(11, fall) for fall in both])
    found = fitting._fitted(one, recorded(both), 20.0)
    assert isinstance(found, FittedStarts)
    assert found.quick is quick


@pytest.mark.parametrize(
    ("inrush", "fits"),
    [(20 / 1.29, True), (20 / 1.31, False), (20 / 0.71, True), (20 / 0.69, False)],
)
def test_an_lra_up_to_30_percent_off_is_mended(
    inrush: float, fits: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    rounds = iter([inrush, 20.0])
    monkeypatch.setattr(fitting, "tried_starts", lambda *_: tried(10, next(rounds)))
    found = fitted_starts(SETUP, recorded(), {})
    assert isinstance(found, FittedStarts) is fits
    if isinstance(found, FittedStarts):
        assert found.kept[0].locked == pytest.approx(20 * 20 / inrush)


def test_what_is_tried_lies_within_its_ends() -> None:
    motor = motors.motors(SETUP)[0]
    cases = [tried_starts._case(SETUP, motor, {}, i, 1e-5) for i in range(200)]
    loads = sorted(100 * one.load.constant / rated_torque(motor) for one in cases)
    assert loads[0] < 1.5 and 118.5 < loads[-1] < 120
    cuts = sorted(one.device.cut_out or 0.0 for one in cases)
    assert 0.700 <= cuts[0] < 0.701 and 0.799 < cuts[-1] <= 0.800
    # a rotor alone is taken as 0.05 s at full power; none is lighter than 0.04 s
    lightest = 2 * 0.04 * 186.425 / (4 * math.pi * 60 / 4) ** 2
    for one in cases:
        assert one.load.inertia == pytest.approx(lightest, rel=0.005)
    given = tried_starts._case(SETUP._replace(inertia=0.003), motor, {}, 0, 1e-5)
    assert given.load.inertia == 0.003


@pytest.mark.parametrize(
    ("hertz", "settled", "why"),
    [
        (60.0, 13.9, ""), (60.0, 14.1, "does not come down"),
        (61.1, 4.0, ""), (61.3, 4.0, "recorded at 61.3 Hz"), (58.7, 4.0, "recorded at 58.7 Hz"),
    ],
)  # fmt: skip
def test_which_recording_is_one_of_a_start(
    hertz: float, settled: float, why: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    wave = SimpleNamespace(frequency=hertz, doubt=0.0, begins=0.0, blur=lambda seconds: 0.0)
    run = SimpleNamespace(highest=21.0, surge=20.0, settle=(0.5, 0.4, 0.6), calm=())
    found = SimpleNamespace(wave=wave, begun=[run], flat=0)
    levels = np.linspace(0.01, 0.9, 60), np.linspace(20, 4, 60)
    monkeypatch.setattr(recorded_start, "kind_of", lambda *_: ("instantaneous", []))
    monkeypatch.setattr(recorded_start, "analyse", lambda *_: found)
    monkeypatch.setattr(recorded_start, "level_after", lambda *_: settled)
    monkeypatch.setattr(recorded_start, "_levels", lambda *_: levels)
    end: Any = SimpleNamespace(moved=lambda value: value)
    start = recorded_start.recorded_start(end, end, end, 60.0)
    if why:
        assert isinstance(start, str) and why in start
    else:
        assert isinstance(start, RecordedStart)
        early, middle, late = start.falls
        assert early < middle < late < math.inf


def test_a_level_was_last_above_its_limit_between_two() -> None:
    t = np.array([0.0, 1.0, 2.0, 3.0])
    level = np.array([[5.0, 5.0, 5.0], [1.0, 4.0, 5.0], [4.0, 2.0, 5.0], [1.0, 1.0, 5.0]])
    found = recorded_start.last_above(t, level, np.array([3.0, 3.0, 3.0]))
    # from 4 at 2 s to 1 at 3 s; from 4 at 1 s to 2 at 2 s; never below
    assert list(found) == pytest.approx([2 + 1 / 3, 1.5, math.inf])
    assert recorded_start.last_above(t, level[:, :1], 6.0) == pytest.approx([0.0])
