"""Courses and devices: stretches without a break, heat step by step, running rms, curves."""

from __future__ import annotations

import math

import pytest

from wirecalc.output.drawing import draw
from wirecalc.said.charts import Axis, Band, Chart, Line, Points, Words
from wirecalc.trade import current_over_time, overcurrent, trip_curves, tripping
from wirecalc.trade.current_over_time import After, Course, Element, Stretch


def test_longest_time_at_or_above_each_level() -> None:
    course = Course([0, 1, 3, 4, 10], [5.0, 8.0, 2.0, 5.0])
    assert current_over_time.longest(course, [1.0, 5.0, 6.0, 8.0, 9.0]) == [10, 6, 2, 2, 0]
    assert current_over_time.longest(course, []) == []


def test_a_stretch_that_counts_after_another() -> None:
    levels = [current_over_time.from_level(v) for v in (11.3, 14.5)]
    after = {1: After(0, 3600.0, 3600.0)}

    def found(parts: list[tuple[float, float]]) -> Stretch:
        return current_over_time.stretches(
            current_over_time.steps(parts), levels, [math.inf, 3600.0], after
        )[1]

    assert found([(14.5, 3600)]) == (3600, 7200)  # from cold the two together
    assert found([(12, 3600), (14.5, 1800)]) == (1800, 3600)
    assert found([(12, 3600), (5, 1), (14.5, 1800)]) == (1800, 7200)
    assert found([(12, 7200)]) == (0, 3600)


def test_a_level_that_differs_by_rounding_counts_as_reached() -> None:
    course = current_over_time.steps([(0.1 + 0.2, 2.0)])
    assert current_over_time.longest(course, [current_over_time.from_level(0.3)]) == [2.0]
    assert current_over_time.longest(course, [current_over_time.past_level(0.3)]) == [0.0]


def test_heat_of_a_split_step_is_the_same() -> None:
    element = Element(11.3, 4.574)
    whole = current_over_time.heat(
        current_over_time.steps([(20, 3.0), (0, 2.0), (15, 1.0)]), element, 10
    )
    parts = [(20, 0.1)] * 30 + [(0, 0.25)] * 8 + [(15, 0.5)] * 2
    split = current_over_time.heat(current_over_time.steps(parts), element, 10)
    assert split.highest == pytest.approx(whole.highest, rel=1e-12)
    assert split.excursions == whole.excursions == 2
    assert split.first[1].before == pytest.approx(whole.first[1].before, rel=1e-12)


def test_heat_is_one_where_it_trips() -> None:
    element = Element(11.3, current_over_time.constant_of(1.13, 2.55, 1.0))
    assert current_over_time.heat(
        current_over_time.steps([(25.5, 1.0)]), element, 10
    ).highest == pytest.approx(1)


def test_only_the_first_excursions_are_kept() -> None:
    found = current_over_time.heat(
        current_over_time.steps([(20, 0.1), (0, 0.1)] * 40), Element(11.3, 4.6), 10
    )
    assert (found.excursions, len(found.first)) == (40, current_over_time.KEPT)


def test_running_rms_of_a_square_wave() -> None:
    # 0 before the record, then 3 A and -3 A by halves of a second; period 1 s
    course = current_over_time.running_rms([0, 0.5, 1.0, 1.5, 2.0], [3, -3, 3, -3, 0], 1.0)
    assert list(course.currents) == pytest.approx([3 / math.sqrt(2), 3, 3, 3])
    # steps that are longer than the period
    course = current_over_time.running_rms([0, 4, 5], [3, 5, 0], 2.0)
    assert list(course.currents) == pytest.approx([3, math.sqrt((9 + 25) / 2)])


def test_instantaneous_part_of_a_curve_begins_where_it_holds_a_tenth_of_a_second() -> None:
    device = overcurrent.device("ul-489", 10.0)
    points = [trip_curves.CurvePoint(2, 1, 100), trip_curves.CurvePoint(8, 0.01, 10)]
    found = trip_curves.with_curve(device, points, [])
    assert found.instantaneous is not None
    assert found.instantaneous.low == pytest.approx(5.0)  # 4 times: below the practice of 5
    points[1] = trip_curves.CurvePoint(18, 0.01, 10)  # 1 s to 10 ms over 2 to 18: half way at 6
    found = trip_curves.with_curve(device, points, [])
    assert found.instantaneous is not None
    assert found.instantaneous.low == pytest.approx(6.0)
    assert found.instantaneous.source == overcurrent.CURVE


def test_a_course_without_any_current_holds() -> None:
    found = tripping.measure(
        overcurrent.device("iec-60898-b", 10.0), current_over_time.steps([(0, 9)])
    )
    assert found.held is not None
    assert found.held.stretch.time == 0


def test_chart_with_band_labels_and_words_is_drawn() -> None:
    chart = Chart(
        "a title",
        "what it shows",
        Axis("current", "A", logarithmic=True, marks=((1, "1"), (10, "10")), across=("x", 2.0)),
        Axis("time", "s", logarithmic=True, span=(0.1, 100)),
        points=(Points("p", [2, 2.1], [3, 3.1], ["first label", "second label"]),),
        lines=(Line("l", [1, 10], [1, 50], strong=True),),
        bands=(Band("may trip", [1, 10], [1, 1], [10, 10]),),
        words=(Words("holds", 2, 0.5),),
    )
    svg = draw(chart, ".svg").decode()
    for text in ("first label", "second label", "may trip", "holds", "what it shows", "time (s)"):
        assert text in svg


def test_no_point_from_memory_bounds_anything() -> None:
    for name in overcurrent.devices():
        for rating in (1.0, 10.0, 31.0, 33.0, 45.0, 63.0, 80.0, 100.0):
            found = overcurrent.device(name, rating)
            for limit in (*found.holds, *found.trips):
                assert limit.source.confidence in ("confirmed", "computed")
