"""Where on and off are parted: off that is rare, a standby, a lamp, and what has one level."""

from __future__ import annotations

import numpy as np
import pytest

from wirecalc_plugins.trace.on_off import ALWAYS, Histogram, Switch


def switch(*parts: tuple[float, int], log: bool = True) -> Switch:
    """Return the switch of levels that each stand for so many readings, one after the other."""
    found = Histogram()
    for level, readings in parts:
        found.add(np.full(readings, level))
    return found.switch(log=log)


CYCLES = ((0.0, 500), (1.0, 300)) * 3


def test_two_levels_are_parted_between_them() -> None:
    found = switch(*CYCLES)
    assert 0.0 < found.down < found.up < 1.0
    assert found.high == pytest.approx(1.0, rel=0.05)


@pytest.mark.parametrize(("level", "one"), [(0.49, False), (0.52, True)])
def test_levels_that_differ_by_less_than_twice_are_one(level: float, one: bool) -> None:
    assert (switch((level, 400), (1.0, 600)) == ALWAYS) is one


@pytest.mark.parametrize(("readings", "seen"), [(1, False), (2, True)])
def test_off_is_seen_from_two_readings_on(readings: int, seen: bool) -> None:
    found = switch((0.02, readings), (1.0, 2000), (4.0, 4000), (1.0, 500))
    assert (found.up < 1.0) is seen


@pytest.mark.parametrize(("low", "seen"), [(0.22, True), (0.28, False)])
def test_off_lies_under_a_quarter_of_what_follows(low: float, seen: bool) -> None:
    found = switch((low, 20), (1.0, 2000), (4.0, 4000), (1.0, 500))
    assert (found.up < 1.0) is seen


@pytest.mark.parametrize(("low", "runs"), [(0.09, False), (0.11, True)])
def test_under_a_tenth_of_the_running_level_it_stands_by(low: float, runs: bool) -> None:
    """Switched off at the plug for a moment: what it draws else is on, or a standby."""
    found = switch((0.0, 20), *((low, 400), (1.0, 500)) * 3)
    assert (found.up < low) is runs


@pytest.mark.parametrize("log", [True, False])
def test_a_standby_that_stands_most_of_the_time_is_off_in_a_log(log: bool) -> None:
    found = switch(*((0.09, 600), (1.0, 400)) * 3, log=log)
    assert (found.up > 0.09) is log


@pytest.mark.parametrize(("times", "parted"), [(1, False), (2, True)])
def test_a_higher_level_that_came_once_is_no_time_on(times: int, parted: bool) -> None:
    found = switch((1.0, 600), *((12.0, 100), (1.0, 300)) * times)
    assert (found.up > 1.0) is parted


def test_a_start_is_no_class_of_its_own() -> None:
    found = switch((0.0, 50), (11.0, 30), (1.3, 60))
    assert found.up < 1.3


def test_nothing_and_one_level_are_never_parted() -> None:
    assert Histogram().switch(log=True) == ALWAYS
    assert switch((1.0, 10)) == ALWAYS


@pytest.mark.parametrize(
    ("lamp", "readings", "off"), [(0.22, 20, True), (0.28, 20, False), (0.22, 40, False)]
)
def test_a_lamp_that_is_rare_and_under_a_quarter_is_off_in_a_log(
    lamp: float, readings: int, off: bool
) -> None:
    """Of 500 readings at 1 A 25 are a twentieth."""
    found = switch((0.0, 700), (lamp, readings), (0.0, 300), (1.0, 500))
    assert (found.up > lamp) is off
