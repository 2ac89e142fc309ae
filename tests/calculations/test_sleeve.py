"""What the shared tests need to know of `sleeve`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, practice, source

from .trial import Bad, Span, Step, Trial, near, texts

SPLICE = {
    "supplied_diameter": "6.4 mm",
    "largest_diameter": "5.0 mm",
    "smallest_diameter": "3.6 mm",
    "recovered_diameter": "3.2 mm",
    "sleeve_temperature": "125 C",
    "place_temperature": "60 C",
    "sleeve_voltage": "600 V",
    "circuit_voltage": "240 V",
    "covered_length": "20 mm",
    "sleeve_length": "40 mm",
}
STEPS = SPLICE | {"shrink_ratio": ""}
MM = Span("0 mm", "100 mm", "a thin wire to a motor lead's lug", over=True)
LONG = Span("0 mm", "1000 mm", "a joint, with room above", over=True)

TRIAL = Trial(
    good=SPLICE | {"lengthwise_shrink": "10 %"},
    zero=("place_temperature", "circuit_voltage", "lengthwise_shrink"),
    printed=(
        "supplied_diameter",
        "recovered_diameter",
        "sleeve_temperature",
        "sleeve_voltage",
        "lengthwise_shrink",
    ),
    bad=(
        Bad("recovered_diameter", "6.4 mm", "not below the 6.4 mm as supplied", "prints both"),
        Bad("smallest_diameter", "5.1 mm", "more than the largest, 5 mm", "thinnest"),
        Bad("shrink_ratio", "2:1", "the ratio says it", "give one"),
        Bad("shrink_ratio", "5:1", "'5:1'", "2:1"),
    ),
    always={
        "supplied_diameter": texts(["6.4 mm"]),
        "largest_diameter": near(5.0, 6.4, low=3.7, high=12),
        "smallest_diameter": near(3.2, 3.5556, high=3.65),
    },
    sometimes={
        "recovered_diameter": texts(["3.2 mm"]),
        "connector": texts(["butt", "ring", "push-on"]),
        "sleeve_temperature": texts(["105 C", "125 C"]),
        "place_temperature": near(105, 125, low=-20, high=200),
        "sleeve_voltage": texts(["600 V"]),
        "circuit_voltage": near(240, 600, high=900),
        "covered_length": near(22, high=60),
        "sleeve_length": near(40, high=80),
        "lengthwise_shrink": texts(["10 %"]),
        "slides": texts(["no"]),
    },
    apart=("shrink_ratio",),  # in place of the recovered diameter
    spans={
        "supplied_diameter": MM,
        "recovered_diameter": MM,
        "largest_diameter": MM,
        "smallest_diameter": MM,
        "covered_length": LONG,
        "sleeve_length": LONG,
        "lengthwise_shrink": Span("0 %", "50 %", "no sleeve gets shorter by half"),
        "sleeve_voltage": Span("1 V", "35000 V", "a signal wire to a neon or a microwave part"),
    },
    why="It goes over a joint that was live, is shrunk by heat, and sits in the heat.",
    cautions=("dead-01", "heat-01", "hot-01"),
    not_checked=("sharp strands", "water", "heated all round"),
    steps=(
        Step(
            "slips over the thickest",
            "largest_diameter",
            {"6.4 mm": "pass", "6.41 mm": "fail"},
            given=STEPS,
            limit="6.4 mm inside as supplied",
            source="the maker's sheet",
        ),
        Step(
            "grips the thinnest",
            "smallest_diameter",
            {"3.56 mm": "pass", "3.55 mm": "marginal", "3.2 mm": "marginal", "3.19 mm": "fail"},
            given=STEPS,
            limit="3.2 mm recovered, and 3.2 / 0.9 = 3.556 mm",
            source="common practice, no source",
        ),
        Step(
            "holds by hand",
            "slides",
            {"no": "pass", "yes": "fail"},
            given=STEPS,
            limit="a sleeve that is tight does not slide",
            source="common practice, no source",
        ),
        Step(
            "rated for the heat of the place",
            "place_temperature",
            {"125 C": "pass", "125.1 C": "fail"},
            given=STEPS,
            limit="125 C printed on it",
            source="the maker's marking",
        ),
        Step(
            "rated for the volts",
            "circuit_voltage",
            {"600 V": "pass", "601 V": "fail"},
            given=STEPS,
            limit="600 V printed on it",
            source="the maker's marking",
        ),
        Step(
            "covers the joint",
            "covered_length",
            {"22 mm": "pass", "22.1 mm": "fail"},
            given=STEPS,
            limit="40 mm less 15 % is 34, less 6 mm at each end is 22",
            source="common practice, no source",
        ),
    ),
)


@independent("a 3:1 sleeve of 9 mm recovers to 3 mm, a 4:1 of 12 mm too, a 2:1 of 6 mm too")
@pytest.mark.parametrize(("ratio", "supplied"), [("3:1", "9"), ("4:1", "12"), ("2:1", "6")])
def test_a_ratio_says_what_is_left(ratio: str, supplied: str) -> None:
    found = wirecalc.run(
        "sleeve",
        supplied_diameter=f"{supplied} mm",
        shrink_ratio=ratio,
        largest_diameter="5.5 mm",
        smallest_diameter="3.4 mm",
    )
    assert found.figures[0].figure.value == pytest.approx(3.0)


@source("sleeving guide of a maker", "undated", "polyolefin 125 C, PVC 105 C", seen="one page")
@pytest.mark.parametrize(
    ("printed", "place", "verdict"),
    [("125 C", "110 C", "pass"), ("105 C", "110 C", "fail"), ("125 C", "257 F", "pass")],
)
def test_polyolefin_and_pvc_in_a_hot_place(printed: str, place: str, verdict: str) -> None:
    given = SPLICE | {"sleeve_temperature": printed, "place_temperature": place}
    assert str(wirecalc.run("sleeve", **given).verdict) == verdict


@practice("closed ends and twist-on caps are insulated")
@pytest.mark.parametrize("connector", ["closed-end", "twist-on"])
def test_closed_ends_need_none(connector: str) -> None:
    found = wirecalc.run("sleeve", **SPLICE, connector=connector)
    assert found.verdict is None
    assert "needs none" in found.answers[0].text
