"""What the shared tests need to know of `oven-swing`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial

BAKED = {
    "oven_setting": "177 C",
    "oven_high": ["190 C", "191 C", "189 C"],
    "oven_low": ["170 C", "171 C", "169 C"],
    "mean_tolerance": "14 K",
    "most_swing": "40 K",
}
ONE = {"oven_high": "190 C", "oven_low": "170 C"}

TRIAL = Trial(
    good=BAKED | ONE,
    printed=("oven_setting", "mean_tolerance", "most_swing"),
    bad=(Bad("oven_low", "195 C", "195 C is over a high of 190 C", "sort the readings"),),
    drawn_in=("test_monotone_temperatures.py",),
    spans={
        "oven_setting": Span("30 C", "350 C", "proofing to a pizza stone"),
        "oven_high": Span("30 C", "350 C", "proofing to a pizza stone"),
        "oven_low": Span("30 C", "350 C", "proofing to a pizza stone"),
        "mean_tolerance": Span("0 K", "100 K", "past that it is no oven", over=True),
        "most_swing": Span("0 K", "100 K", "past that it is no oven", over=True),
    },
    why="An oven is hot and fed by two legs; its joints sit in the heat.",
    cautions=("dead-03", "heat-01", "hot-01"),
    not_checked=("other settings", "the place", "lags"),
    steps=(
        Step(
            "mean no hotter than set",
            "oven_setting",
            {"166 C": "pass", "165.9 C": "fail"},
            given=BAKED,
            limit="the mean is (190 + 170) / 2 = 180 C, and 14 K below it 166",
            source="the maker's sheet",
        ),
        Step(
            "mean no colder than set",
            "oven_setting",
            {"194 C": "pass", "194.1 C": "fail"},
            given=BAKED,
            limit="the mean is (190 + 170) / 2 = 180 C, and 14 K above it 194",
            source="the maker's sheet",
        ),
        Step(
            "swing",
            "most_swing",
            {"22 K": "pass", "21.9 K": "fail"},
            given=BAKED,
            limit="191 - 169 = 22 K",
            source="the maker's sheet",
        ),
    ),
)


@independent("350 F set; 375, 380, 370 and 335, 340, 330 F: mean 355 F, 5 F off, swing 50 F")
@pytest.mark.parametrize(("tolerance", "verdict"), [("5 F", "pass"), ("4.9 F", "fail")])
def test_an_oven_in_fahrenheit(tolerance: str, verdict: str) -> None:
    found = wirecalc.run(
        "oven-swing",
        oven_setting="350 F",
        oven_high=["375 F", "380 F", "370 F"],
        oven_low=["335 F", "340 F", "330 F"],
        mean_tolerance=tolerance,
    )
    got = {f.figure.name: f.figure.value for f in found.figures}
    assert got["off its setting"] == pytest.approx(5 / 1.8)
    assert got["swing"] == pytest.approx(50 / 1.8)
    assert str(found.verdict) == verdict


@practice("two cycles after preheating say little of a mean")
def test_two_cycles_are_too_few() -> None:
    few = BAKED | {"oven_high": ["190 C", "191 C"], "oven_low": ["170 C", "171 C"]}
    assert str(wirecalc.run("oven-swing", **few).verdict) == "cannot tell"


@memory("many sheets: the mean within 25 F of the setting")
@pytest.mark.parametrize(("setting", "verdict"), [("331 F", "pass"), ("329 F", "fail")])
def test_within_25_f(setting: str, verdict: str) -> None:
    given = BAKED | {"oven_setting": setting, "mean_tolerance": "25 F"}  # the mean has 356 F
    assert str(wirecalc.run("oven-swing", **given).verdict) == verdict


@independent("a thermometer good to 5 K, 10 K off, against 14 K")
def test_the_thermometer_counts() -> None:
    given = BAKED | {"oven_setting": "170 C"}
    given["oven_high"] = [f"{h} ±5 C" for h in BAKED["oven_high"]]
    given["oven_low"] = [f"{low} ±5 C" for low in BAKED["oven_low"]]
    assert str(wirecalc.run("oven-swing", **given).verdict) == "cannot tell"


@practice("ovens are set in F as often as in C: 200 F is no slip of 200 C")
@pytest.mark.parametrize("setting", ["200 F", "220 F", "180 F"])
def test_a_setting_in_fahrenheit_is_no_slip(setting: str) -> None:
    assert wirecalc.run("oven-swing", **BAKED | {"oven_setting": setting}).verdict is not None
