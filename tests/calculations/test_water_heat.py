"""What the shared tests need to know of `water-heat`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial, near, texts

TUB = {
    "water_before": "15 C",
    "water_after": "55 C",
    "water_volume": "4 L",
    "heating_time": "8 min",
    "heating_power": "1500 W",
    "least_share": "85 %",
}

TRIAL = Trial(
    good=TUB,
    zero=("water_before", "water_after"),
    printed=("least_share",),
    bad=(
        Bad("water_after", "14 C", "no warmer than the 15 C", "in order"),
        Bad("water_flow", "4 L/min", "a volume and a flow", "give the volume"),
        Bad("heating_power", "12 A", "'A'", "W"),
    ),
    always={
        "water_before": near(15, high=40),
        "water_after": near(55, low=41, high=95),
    },
    sometimes={
        "water_volume": near(4, high=80),
        "heating_time": near(8, 9, high=60),
        "heating_power": near(1400, 1500, high=6000),
        "least_share": texts(["85 %"]),
        "water_flow": near(4, high=10),
    },
    apart=("water_flow",),  # in place of the volume
    spans={
        "water_before": Span("0 C", "99 C", "liquid water"),
        "water_after": Span("0 C", "100 C", "liquid water"),
        "water_volume": Span("0 L", "2000 L", "a cup to a shop's tank", over=True),
        "water_flow": Span("0 L/min", "100 L/min", "a tap to a shop's main", over=True),
        "heating_time": Span("0 min", "2880 min", "a cup to two days of a large tank", over=True),
        "heating_power": Span("0 W", "50000 W", "a cup's coil to a shop's flow heater", over=True),
        "least_share": Span("0 %", "100 %", "no more than all", over=True),
    },
    why="Water beside live parts, read while it heats; hot water scalds.",
    cautions=("wat-01", "dead-02", "live-01", "hot-01"),
    not_checked=("heat into the tank", "mixing valve", "scalding"),
    steps=(
        Step(
            "heat that reached the water",
            "heating_power",
            {"1639 W": "pass", "1640 W": "fail"},
            given=TUB,
            limit="4 x 4180 x 40 J / 480 s = 1393.3 W, 85 % of 1639.2 W",
            source="heat of water; the maker's share",
        ),
        Step(
            "heat that reached the water",
            "heating_power",
            {"1353 W": "pass", "1352 W": "cannot tell"},
            given=TUB,
            limit="1393.3 W are 103 % of 1352.8 W",
            source="common practice, no source",
        ),
    ),
)


def figures(**given: str) -> dict[str, float]:
    return {f.figure.name: f.figure.value for f in wirecalc.run("water-heat", **given).figures}


@memory("makers' recovery tables: 4500 W and 90 F of rise make 20.5 gal an hour, 5500 W 25 gal")
@pytest.mark.parametrize(("watts", "gallons"), [(4500, 20.5), (5500, 25.0), (3000, 13.7)])
def test_recovery_of_a_tank(watts: int, gallons: float) -> None:
    got = figures(
        water_before="50 F",
        water_after="140 F",
        water_volume=f"{gallons} gal",
        heating_power=f"{watts} W",
    )
    assert got["least time it takes"] == pytest.approx(60, rel=0.01)


@memory("8.33 lb a US gallon, 1 Btu a lb and F, 3412 Btu a kWh: 500 x gpm x F is Btu/h")
def test_a_flow_heater() -> None:
    got = figures(water_before="60 F", water_after="105 F", water_flow="2 gal/min")
    assert got["watts into the water"] == pytest.approx(500 * 2 * 45 / 3.412, rel=0.004)


@independent("tables of water: 4182 J/(kg K) and 998.2 kg/m3 at 20 C; 4179 and 992.2 at 40 C")
@pytest.mark.parametrize("joule", [4.182 * 998.2, 4.179 * 992.2])
def test_heat_of_a_litre(joule: float) -> None:
    got = figures(water_before="20 C", water_after="60 C", water_volume="1 L")
    assert got["heat in the water"] / 40 == pytest.approx(joule, rel=0.01)


@independent("1 L from 20 C in 150 s of 2 kW: 300 kJ, at most 71.8 K of rise")
def test_a_kettle_that_heats_more_than_it_is_fed() -> None:
    given = {"water_before": "20 C", "water_volume": "1 L", "heating_time": "2.5 min"}
    given |= {"heating_power": "2000 W"}
    assert str(wirecalc.run("water-heat", **given, water_after="99 C").verdict) == "cannot tell"
    good = wirecalc.run("water-heat", **given, water_after="82 C", least_share="80 %")
    assert str(good.verdict) == "pass"
    assert figures(**given, water_after="82 C")["share that reached the water"] == pytest.approx(
        100 * 4180 * 62 / 300_000
    )


@practice("without the maker's share nothing is judged")
def test_no_share_no_verdict() -> None:
    given = {k: v for k, v in TUB.items() if k != "least_share"}
    assert wirecalc.run("water-heat", **given).verdict is None
