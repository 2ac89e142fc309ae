"""What the shared tests need to know of `air-split`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial, near, texts

COIL = {
    "air_does": "cools",
    "air_in": "25 C",
    "air_out": "14 C",
    "least_split": "8 K",
    "most_split": "12 K",
}

TRIAL = Trial(
    good=COIL | {"air_flow": "350 m3/h"},
    zero=("air_in", "air_out"),
    printed=("least_split", "most_split"),
    bad=(
        Bad("air_does", "dries", "'dries'", "cools"),
        Bad("air_heat", "5000 W", "each follows from the other", "give one"),
    ),
    always={
        "air_does": texts(["cools", "warms"]),
        "air_in": near(20, 25, low=-10, high=60),
        "air_out": near(13, 17, 25, low=-10, high=90),
    },
    sometimes={
        "least_split": texts(["8 K"]),
        "most_split": texts(["12 K"]),
        "air_flow": near(350, high=900),
        "air_heat": near(2000, high=5000),
    },
    apart=("air_heat",),  # in place of the flow
    spans={
        "air_in": Span("-40 C", "200 C", "winter air to what a dryer's heater draws in again"),
        "air_out": Span("-40 C", "300 C", "a cold coil to the outlet of a hot-air gun's cousin"),
        "least_split": Span("0 K", "200 K", "a dehumidifier to an open heater", over=True),
        "most_split": Span("0 K", "200 K", "a dehumidifier to an open heater", over=True),
        "air_flow": Span("0 m3/h", "20000 m3/h", "a hair dryer to a shop's roof unit", over=True),
        "air_heat": Span("0 W", "100000 W", "a hair dryer to a shop's roof unit", over=True),
    },
    why="Fans start by themselves, outlets are hot, and the sealed system is another trade's.",
    cautions=("refr-01", "hot-01", "mov-01"),
    not_checked=("water that condenses", "height", "how even the air is"),
    steps=(
        Step(
            "difference, lower limit",
            "air_out",
            {"17 C": "pass", "17.1 C": "fail"},
            given=COIL,
            limit="25 C less 8 K",
            source="the maker's sheet",
        ),
        Step(
            "difference, upper limit",
            "air_out",
            {"13 C": "pass", "12.9 C": "fail"},
            given=COIL,
            limit="25 C less 12 K",
            source="the maker's sheet",
        ),
        Step(
            "the air goes the right way",
            "air_out",
            {"24.9 C": "pass", "25 C": "fail", "26 C": "fail"},
            given=COIL,
            limit="a coil that cools makes air colder",
            source="common practice, no source",
        ),
    ),
)


def figures(**given: str) -> dict[str, float]:
    return {f.figure.name: f.figure.value for f in wirecalc.run("air-split", **given).figures}


@memory("ASHRAE Handbook Fundamentals: 1.08 Btu/h a cfm and F of standard air, 0.075 lb/ft3")
@pytest.mark.parametrize(("cfm", "fahrenheit"), [(400, 20), (1200, 18), (150, 90)])
def test_the_factor_of_a_handbook(cfm: int, fahrenheit: int) -> None:
    # standard air has 70 F; 3.412 Btu/h are a watt
    got = figures(
        air_does="warms",
        air_in="70 F",
        air_out=f"{70 + fahrenheit} F",
        air_flow=f"{cfm} ft3/min",
    )
    assert got["heat of the dry air"] == pytest.approx(1.08 * cfm * fahrenheit / 3.412, rel=0.006)


@independent("NIST air: 1.2041 kg/m3 and 1.006 kJ/(kg K) at 20 C: 1000 m3/h by 10 K are 3365 W")
def test_the_density_of_air() -> None:
    got = figures(air_does="warms", air_in="20 C", air_out="30 C", air_flow="1000 m3/h")
    assert got["heat of the dry air"] == pytest.approx(1.2041 * 1006 * 10 * 1000 / 3600, rel=5e-4)


@independent("the flow from a heat gives that heat again; 5 kW by 45 K near 22 C are 333 m3/h")
def test_flow_and_heat_go_both_ways() -> None:
    flow = figures(air_does="warms", air_in="22 C", air_out="67 C", air_heat="5000 W")
    assert flow["air that moves"] == pytest.approx(5000 * 3600 / (1.1962 * 1006 * 45), rel=1e-3)
    got = figures(
        air_does="warms",
        air_in="22 C",
        air_out="67 C",
        air_flow=f"{flow['air that moves']:.9f} m3/h",
    )
    assert got["heat of the dry air"] == pytest.approx(5000, rel=1e-6)


@practice("a difference typed in F is one, and no temperature")
def test_a_span_in_fahrenheit() -> None:
    given = {"air_does": "cools", "air_in": "77 F", "air_out": "60 F"}
    assert str(wirecalc.run("air-split", **given, least_split="17 F").verdict) == "pass"
    assert str(wirecalc.run("air-split", **given, least_split="17.1 F").verdict) == "fail"


@independent("3412 Btu/h a kW; 1 ft3/min is 0.0283168 m3 x 60 an hour, 1.699 m3/h")
def test_heat_and_flow_in_the_other_units() -> None:
    given = {"air_does": "warms", "air_in": "20 C", "air_out": "30 C"}
    by_heat = wirecalc.run("air-split", **given, air_heat="1000 W")
    (flow,) = [f.figure for f in by_heat.figures if f.figure.name == "air that moves"]
    assert flow.also[0][0] == pytest.approx(flow.value / (0.0283168466 * 60), rel=1e-6)
    typed = f"{flow.value:.9f} m3/h"
    by_flow = wirecalc.run("air-split", **given, air_flow=typed)
    (heat,) = [f.figure for f in by_flow.figures if f.figure.name == "heat of the dry air"]
    assert heat.working is not None
    assert "3412 Btu/h" in heat.working()
