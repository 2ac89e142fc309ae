"""What the shared tests need to know of `pull-down`, and its published checks."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

import wirecalc
from tests.published.records import independent, practice
from wirecalc import Finding

from .trial import Bad, Span, Step, Trial

HOURS = ["0 h", "1 h", "2 h", "3 h", "4 h"]
FALLS = {
    "reading_time": HOURS,
    "reading_temperature": ["24.0 C", "16.4 C", "11.5 C", "8.3 C", "6.1 C"],
    "target_temperature": "5 C",
    "due_time": "24 h",
}
ONE = {"reading_time": "1 h", "reading_temperature": "24 C"}


def within(*celsius: float) -> list[str]:
    return [f"{c} C ±0.05 C" for c in celsius]


def course(end: float, fall: float, constant: float, times: list[float], **more: str) -> Finding:
    """Run on an exact course, each reading good to 0.05 K."""
    values = [end + fall * math.exp(-t / constant) for t in times]
    return wirecalc.run(
        "pull-down",
        reading_time=[f"{t} h" for t in times],
        reading_temperature=[f"{v:.3f} C ±0.05 C" for v in values],
        **more,
    )


TRIAL = Trial(
    good=ONE | {"target_temperature": "5 C", "due_time": "24 h"},
    zero=("reading_time", "reading_temperature", "target_temperature"),
    printed=("reading_time", "target_temperature", "due_time"),
    bad=(
        Bad("target_temperature", "25 C", "no warmer than the target", "below the first"),
        Bad("reading_time", ["1 h", "2 h"], "2 times for 1", "a time for each"),
    ),
    drawn_in=("test_monotone_temperatures.py",),
    spans={
        "reading_time": Span("0 h", "240 h", "ten days: no cabinet falls for longer"),
        "reading_temperature": Span("-50 C", "60 C", "the coldest chest to a cabinet in a hot van"),
        "target_temperature": Span("-40 C", "30 C", "the coldest chest to a wine cabinet"),
        "due_time": Span("0 h", "240 h", "ten days: no cabinet falls for longer", over=True),
    },
    why="What makes it cold is sealed, and its gas may burn.",
    cautions=("refr-01", "flam-01"),
    not_checked=("food that is put in", "the thermostat", "why it falls"),
    steps=(
        Step(
            "time to its target",
            "due_time",
            {"4.3 h": "fail", "4.8 h": "pass"},
            given=FALLS
            | {
                "reading_temperature": [
                    f"{c} C ±0.05 C" for c in (24, 16.162, 11.116, 7.868, 5.777)
                ]
            },
            limit="2 + 22 exp(-t / 2.27 h) is 5 C after 2.27 ln(22 / 3) = 4.52 h",
            source="law of cooling",
        ),
        Step(
            "gets as cold as its target",
            "target_temperature",
            {"2.5 C": "pass", "1.5 C": "fail"},
            given=FALLS
            | {"reading_time": ["0 h", "2 h", "4 h", "8 h", "12 h"]}
            | {
                "reading_temperature": [f"{c} C ±0.05 C" for c in (24, 11.116, 5.777, 2.649, 2.111)]
            },
            limit="2 + 22 exp(-t / 2.27 h) ends at 2 C",
            source="law of cooling",
        ),
    ),
)


@independent("time constants and ends of made courses: t = constant x ln(fall / (target - end))")
@pytest.mark.parametrize(
    ("end", "fall", "constant", "target"), [(2, 22, 2.27, 5), (-22, 45, 3.0, -18), (0, 25, 1.5, 4)]
)
def test_a_made_course_arrives_when_it_must(
    end: float, fall: float, constant: float, target: float
) -> None:
    times = [constant * share for share in (0, 0.3, 0.6, 1.0, 1.4, 1.8)]
    due = constant * math.log(fall / (target - end))
    found = course(end, fall, constant, times, target_temperature=f"{target} C")
    assert str(found.verdict) == "pass"
    (hours,) = [f for f in found.figures if f.figure.name == "hours to its target"]
    low, high = hours.figure.band
    assert low <= due <= high
    assert high - low < 0.25 * due
    (ends,) = [f for f in found.figures if f.figure.name == "end that it falls towards"]
    assert ends.figure.band[0] <= end <= ends.figure.band[1]


@independent("a straight line so far may go on or level off: too early to say")
def test_too_early_to_say() -> None:
    found = course(2, 22, 6.0, [0, 0.2, 0.4, 0.6], target_temperature="5 C")
    assert str(found.verdict) == "cannot tell"
    assert "too early" in found.decided_by.because


@independent("a course that ends at 9 C does not come to 5 C")
def test_a_weak_one_fails() -> None:
    found = course(9, 15, 2.0, [0, 1, 2, 4, 6, 8], target_temperature="5 C")
    assert str(found.verdict) == "fail"


@practice("three readings fit any exponential")
def test_three_readings_are_too_few() -> None:
    found = course(2, 22, 2.27, [0, 2, 4], target_temperature="5 C")
    assert str(found.verdict) == "cannot tell"


@practice("a door opened on the way: no falling course fits")
def test_a_bump_is_no_course() -> None:
    found = wirecalc.run(
        "pull-down",
        **FALLS | {"reading_temperature": ["24 C", "16 C", "20 C", "9 C", "8 C"]},
    )
    assert str(found.verdict) == "cannot tell"
    assert "no falling course" in found.decided_by.because


@independent("a log of a minute a reading says what its twelve do")
def test_a_log_in_a_file(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    rows = [f"{m},{2 + 22 * math.exp(-m / 136.2):.2f}" for m in range(0, 241, 5)]
    path.write_text("time_min,temperature_C\n" + "\n".join(rows) + "\n", encoding="utf-8")
    found = wirecalc.run("pull-down", pull_down_log=str(path), target_temperature="5 C")
    (hours,) = [f for f in found.figures if f.figure.name == "hours to its target"]
    low, high = hours.figure.band
    assert low <= 136.2 / 60 * math.log(22 / 3) <= high


def band_of(found: Finding, name: str = "end that it falls towards") -> tuple[float, float]:
    (one,) = [f.figure for f in found.figures if f.figure.name == name]
    assert one.band is not None
    return one.band


NOISE = (0.0, 1.0, -1.0, 0.5, -1.0, 1.0, 0.0)


def scattered(scale: float, error: float | None) -> tuple[Finding, float]:
    """Run on a scattered course; return it and by how much its best course misses, in K."""
    optimize = pytest.importorskip("scipy.optimize")
    hours = range(len(NOISE))
    values = [round(2 + 22 * 0.6**h + scale * n, 4) for h, n in zip(hours, NOISE, strict=True)]

    def miss(log_constant: float) -> float:
        x = [math.exp(-h / math.exp(log_constant)) for h in hours]
        rows = [[1, e, -1] for e in x] + [[-1, -e, -1] for e in x]  # |end + fall x - value| <= off
        top = values + [-v for v in values]
        free = [(None, None)] * 3
        return float(optimize.linprog([0, 0, 1], A_ub=rows, b_ub=top, bounds=free).fun)

    best = optimize.minimize_scalar(miss, bounds=(-1, 3), method="bounded").fun
    typed = "" if error is None else f" ±{error:.6f} C"
    found = wirecalc.run(
        "pull-down",
        reading_time=[f"{h} h" for h in hours],
        reading_temperature=[f"{v} C{typed}" for v in values],
        target_temperature="5 C",
    )
    return found, float(best)


@practice("a reading without an error counts as good to 0.5 K")
def test_a_reading_without_an_error_is_good_to_half_a_kelvin() -> None:
    assert band_of(scattered(0.1, None)[0]) == pytest.approx(band_of(scattered(0.1, 0.5)[0]))


@independent("scipy: the best course by linear programming; one and a half times its miss counts")
def test_readings_that_scatter_by_more_than_their_error() -> None:
    found, miss = scattered(0.5, 0.01)
    assert miss == pytest.approx(0.44, abs=0.08)
    wider, _ = scattered(0.5, 1.5 * miss)
    assert band_of(found) == pytest.approx(band_of(wider), rel=1e-3)


@independent("scipy: the best course by linear programming; a miss of over 1 K is no course")
def test_a_course_that_misses_by_a_kelvin_is_none() -> None:
    scale = 1 / scattered(1.0, 0.5)[1]
    for more, told in ((0.97, True), (1.03, False)):
        found, miss = scattered(scale * more, 0.5)
        assert (miss < 1) == told
        assert ("no falling course" in found.decided_by.because) == (not told)  # type: ignore[union-attr]


@independent("60 h x ln(22 / 2) is 143.9 h")
def test_a_slow_course_is_followed_for_days() -> None:
    times = [0.0, 20, 40, 60, 80, 100, 120]
    found = course(2, 22, 60, times, target_temperature="4 C")
    low, high = band_of(found, "hours to its target")
    assert low <= 60 * math.log(11) <= high
