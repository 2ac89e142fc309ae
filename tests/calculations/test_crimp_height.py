"""What the shared tests need to know of `crimp-height`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, source

from .trial import Bad, Span, Step, Trial, near, texts

SHEET = {
    "crimp_height": "1.40 mm",
    "nominal_height": "1.40 mm",
    "height_tolerance": "0.05 mm",
    "crimp_width": "2.03 mm",
    "nominal_width": "2.03 mm",
    "width_tolerance": "0.10 mm",
}
MM = Span("0 mm", "50 mm", "a hair's crimp to a battery lug", over=True)


def step(name: str, reading: str, verdicts: dict[str, str], limit: str) -> Step:
    return Step(name, reading, verdicts, given=SHEET, limit=limit, source="the maker's sheet")


TRIAL = Trial(
    good=SHEET | {"wire": "18 AWG", "crimp_shape": "rolled", "barrel_metal": "2.6 mm2"},
    printed=(
        "nominal_height",
        "height_tolerance",
        "nominal_width",
        "width_tolerance",
        "barrel_metal",
    ),
    bad=(
        Bad("crimp_shape", "square", "'square'", "hexagon"),
        Bad("barrel_metal", "2.6 mm", "'mm'", "mm2"),
    ),
    always={
        "crimp_height": near(1.35, 1.40, 1.45, high=3),
        "nominal_height": texts(["1.40 mm"]),
        "height_tolerance": texts(["0.05 mm"]),
    },
    sometimes={
        "crimp_width": near(1.93, 2.03, 2.13, high=4),
        "nominal_width": texts(["2.03 mm"]),
        "width_tolerance": texts(["0.10 mm"]),
        "wire": texts(["18 AWG", "18 AWG; 20 AWG"]),
        "crimp_shape": texts(["rolled", "hexagon", "round"]),
        "barrel_metal": texts(["2.6 mm2"]),
    },
    spans={
        "crimp_height": MM,
        "crimp_width": MM,
        "nominal_height": MM,
        "nominal_width": MM,
        "height_tolerance": MM,
        "width_tolerance": MM,
        "barrel_metal": Span("0 mm2", "500 mm2", "a contact's leaf to a battery lug", over=True),
    },
    why="A crimped terminal is not used again; a sample is measured, or a joint that is dead.",
    cautions=("crimp-02", "dead-01"),
    not_checked=("strands missing", "insulation crimp", "a burr"),
    steps=(
        step(
            "crimp height, upper limit",
            "crimp_height",
            {"1.45 mm": "pass", "1.451 mm": "fail"},
            "1.40 and 0.05 mm",
        ),
        step(
            "crimp height, lower limit",
            "crimp_height",
            {"1.35 mm": "pass", "1.349 mm": "fail"},
            "1.40 less 0.05 mm",
        ),
        step(
            "crimp width, upper limit",
            "crimp_width",
            {"2.13 mm": "pass", "2.131 mm": "fail"},
            "2.03 and 0.10 mm",
        ),
        step(
            "crimp width, lower limit",
            "crimp_width",
            {"1.93 mm": "pass", "1.929 mm": "fail"},
            "2.03 less 0.10 mm",
        ),
        Step(
            "crimp against its metal",
            "crimp_height",
            {"6.28 mm": "not judged", "6.30 mm": "cannot tell"},
            given={
                "crimp_shape": "hexagon",
                "barrel_metal": "18.28 mm2",
                "wire": "16 mm2",
                "nominal_height": "6.3 mm",
                "height_tolerance": "1 mm",
                "crimp_width": "",
            },
            limit="16 + 18.28 mm2 of metal fill a hexagon of sqrt(34.28 / 0.866) = 6.292 mm",
            source="area of a hexagon",
        ),
    ),
)


def compression(**given: str) -> tuple[float, float]:
    found = wirecalc.run("crimp-height", **given)
    (one,) = [f.figure for f in found.figures if f.figure.name == "compression"]
    return one.band


@independent("hexagon of 5 mm across flats: 21.651 mm2; 10 mm2 of wire and 15 of barrel: 13.4 %")
def test_a_hexagon() -> None:
    got = compression(
        crimp_height="5 mm", crimp_shape="hexagon", wire="10 mm2", barrel_metal="15 mm2"
    )
    assert got == pytest.approx((13.397, 13.397), abs=0.01)


@independent("round of 4 mm: 12.566 mm2; 6 mm2 and 9 mm2 of barrel: 16.2 %")
def test_a_round_crimp() -> None:
    got = compression(
        crimp_height="4 mm",
        crimp_width="4 mm",
        crimp_shape="round",
        wire="6 mm2",
        barrel_metal="9 mm2",
    )
    assert got == pytest.approx((16.224, 16.224), abs=0.01)


@independent("rolled: between 0.785 x 1.4 x 2 = 2.199 and 2.8 mm2 of 3.4 mm2 that went in")
def test_a_rolled_crimp_has_two_ends() -> None:
    got = compression(
        crimp_height="1.4 mm",
        crimp_width="2 mm",
        crimp_shape="rolled",
        wire="0.8 mm2",
        barrel_metal="2.6 mm2",
    )
    assert got == pytest.approx((100 * (1 - 2.8 / 3.4), 100 * (1 - 2.199 / 3.4)), abs=0.02)


@source("trade articles on crimp height", "undated", "0.05 mm each way is usual", seen="two")
@pytest.mark.parametrize(
    ("read", "verdict"),
    [("1.42 mm ±0.005 mm", "pass"), ("1.448 mm ±0.005 mm", "cannot tell"), ("1.46 mm", "fail")],
)
def test_the_micrometer_counts(read: str, verdict: str) -> None:
    given = SHEET | {"crimp_height": read}
    assert str(wirecalc.run("crimp-height", **given).verdict) == verdict
