"""What the shared tests need to know of `cooling`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial, near, texts

MILK = {
    "compartment": "fresh-food",
    "food_rule": "england",
    "cabinet_temperature": "4 C",
    "measured_in": "glass-of-water",
    "settled_time": "24 h",
}

TRIAL = Trial(
    good=MILK | {"evaporator_temperature": "-15 C"},
    zero=("cabinet_temperature", "evaporator_temperature", "settled_time"),
    bad=(
        Bad("compartment", "attic", "'attic'", "fresh-food"),
        Bad("food_rule", "moon", "'moon'", "us-home"),
        Bad("food_rule", "eu-quick-frozen", "no temperature of a fresh-food", "take us-home"),
        Bad("measured_in", "soup", "'soup'", "food"),
    ),
    always={
        "compartment": texts(["fresh-food"]),
        "food_rule": texts(["us-home", "us-food-code", "england", "uk-home"]),
        "cabinet_temperature": near(4, 4.444, 5, 7, 8, low=-3, high=20),
    },
    sometimes={
        "measured_in": texts(["food", "glass-of-water", "between-packs", "air"]),
        "settled_time": near(24, high=48),
        "evaporator_temperature": near(4, low=-30, high=10),
    },
    spans={
        "cabinet_temperature": Span("-50 C", "60 C", "the coldest chest to a cabinet in a hot van"),
        "evaporator_temperature": Span("-60 C", "60 C", "the coldest coil to a defrosted one"),
        "settled_time": Span("0 h", "1000 h", "just started to six weeks"),
    },
    why="The sealed system is not opened here, its gas may burn; fans start by themselves.",
    cautions=("refr-01", "flam-01", "dead-02", "mov-01"),
    not_checked=("how long food was warm", "the warmest place", "charge and pressures"),
    steps=(
        Step(
            "cold enough for food",
            "cabinet_temperature",
            {"7 C": "pass", "7.1 C": "marginal", "8 C": "marginal", "8.1 C": "fail"},
            given=MILK,
            limit="8 C, which may be off by 1 K as it is remembered",
            source="Food Safety and Hygiene (England) Regulations 2013, from memory",
        ),
        Step(
            "cold enough for food",
            "settled_time",
            {"23.9 h": "cannot tell", "24 h": "fail"},
            given=MILK | {"cabinet_temperature": "12 C"},
            limit="a day after a start, a load or a defrost",
            source="common practice, no source",
        ),
        Step(
            "fresh food does not freeze",
            "cabinet_temperature",
            {"0 C": "pass", "-0.1 C": "marginal"},
            given=MILK,
            limit="water freezes at 0 C",
            source="common practice, no source",
        ),
        Step(
            "evaporator colder than the cabinet",
            "evaporator_temperature",
            {"3.9 C": "pass", "4 C": "fail", "4.1 C": "fail"},
            given=MILK,
            limit="heat flows only to what is colder",
            source="common practice, no source",
        ),
    ),
)


@memory("FDA/USDA: 40 F and 0 F; Food Code 3-501.16: 41 F; England: 8 C; UK FSA: 5 C; EU: -18 C")
@pytest.mark.parametrize(
    ("rule", "compartment", "warmest"),
    [
        ("us-home", "fresh-food", "40 F"),
        ("us-home", "freezer", "0 F"),
        ("us-food-code", "fresh-food", "41 F"),
        ("england", "fresh-food", "8 C"),
        ("uk-home", "fresh-food", "5 C"),
        ("uk-home", "freezer", "-18 C"),
        ("eu-quick-frozen", "freezer", "-18 C"),
    ],
)
def test_limits_in_the_unit_of_their_source(rule: str, compartment: str, warmest: str) -> None:
    def verdict(typed: str) -> str:
        found = wirecalc.run(
            "cooling",
            compartment=compartment,
            food_rule=rule,
            cabinet_temperature=typed,
            measured_in="food",
            settled_time="48 h",
        )
        return str(found.verdict)

    number, unit = warmest.split()
    assert verdict(f"{float(number) - 0.01:.2f} {unit}") == "marginal"
    assert verdict(f"{float(number) + 0.02:.2f} {unit}") == "fail"
    assert verdict(f"{float(number) - 2:.2f} {unit}") == "pass"


@practice("air swings with the door and the compressor, and food does not")
@pytest.mark.parametrize("celsius", ["2 C", "12 C"])
@pytest.mark.parametrize("measured_in", ["air", ""])
def test_air_alone_tells_nothing_of_food(celsius: str, measured_in: str) -> None:
    given = MILK | {"cabinet_temperature": celsius, "measured_in": measured_in}
    found = wirecalc.run("cooling", **{k: v for k, v in given.items() if v})
    assert str(found.verdict) == "cannot tell"


@independent("4 C in the cabinet, -15 C at the coil: 19 K apart")
def test_the_evaporator_below_the_cabinet() -> None:
    found = wirecalc.run("cooling", **MILK, evaporator_temperature="-15 C")
    assert found.figures[0].figure.value == pytest.approx(19)


@practice("a cabinet that was not said to have settled is no fail yet")
def test_not_said_when_it_was_started() -> None:
    given = MILK | {"cabinet_temperature": "12 C"}
    del given["settled_time"]
    assert str(wirecalc.run("cooling", **given).verdict) == "cannot tell"
