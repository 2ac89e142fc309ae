"""What the shared tests need to know of `thermostat`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, practice

from .trial import Bad, Span, Step, Trial, near, texts

LIMIT = {
    "opening_temperature": "60 C",
    "closing_temperature": "45 C",
    "marked_opening": "60 C",
    "opening_tolerance": "3 K",
    "marked_closing": "45 C",
    "closing_tolerance": "4 K",
}
KELVIN = Span("0 K", "100 K", "cold controls have 3 K, oven limits up to some 60 K", over=True)
CELSIUS = Span("-60 C", "350 C", "from a freezer's defrost control to an oven's limit")


def step(name: str, reading: str, verdicts: dict[str, str], limit: str) -> Step:
    return Step(name, reading, verdicts, given=LIMIT, limit=limit, source="the maker's sheet")


TRIAL = Trial(
    good=LIMIT,
    zero=("opening_temperature", "closing_temperature", "marked_opening", "marked_closing"),
    printed=(
        "marked_opening",
        "marked_closing",
        "opening_tolerance",
        "closing_tolerance",
        "marked_differential",
    ),
    bad=(
        Bad("never_opened", "yes", "opened at 60 C", "give one of both"),
        Bad("never_closed", "yes", "closed at 45 C", "give one of both"),
        Bad("marked_closing", "60 C", "closes at 60 C", "they lie apart"),
        Bad("marked_differential", "15 K", "says it too", "give one of both"),
    ),
    always={
        "marked_opening": texts(["60 C"]),
        "opening_tolerance": texts(["3 K"]),
        "opening_temperature": near(57, 60, 63, low=30, high=90),
    },
    sometimes={
        "closing_temperature": near(41, 45, 49, low=10, high=80),
        "marked_closing": texts(["45 C"]),
        "closing_tolerance": texts(["4 K"]),
    },
    apart=("never_opened", "never_closed", "marked_differential"),  # in place of others
    spans={
        "opening_temperature": CELSIUS,
        "closing_temperature": CELSIUS,
        "marked_opening": CELSIUS,
        "marked_closing": CELSIUS,
        "opening_tolerance": KELVIN,
        "closing_tolerance": KELVIN,
        "marked_differential": KELVIN,
    },
    why="It switches what heats; bridged it is a fire, and it opened for a cause.",
    cautions=("dead-01", "heat-02", "heat-03", "hot-01", "sub-01"),
    not_checked=("how fast it was heated", "sits tight", "contacts carry"),
    steps=(
        step(
            "opens no hotter than its mark",
            "opening_temperature",
            {"63 C": "pass", "63.1 C": "fail"},
            "60 C and 3 K",
        ),
        step(
            "opens no colder than its mark",
            "opening_temperature",
            {"57 C": "pass", "56.9 C": "fail"},
            "60 C less 3 K",
        ),
        step(
            "closes no hotter than its mark",
            "closing_temperature",
            {"49 C": "pass", "49.1 C": "fail"},
            "45 C and 4 K",
        ),
        step(
            "closes no colder than its mark",
            "closing_temperature",
            {"41 C": "pass", "40.9 C": "fail"},
            "45 C less 4 K",
        ),
        Step(
            "opens at all",
            "never_opened",
            {"no": "pass", "yes": "fail"},
            given=LIMIT | {"opening_temperature": ""},
            limit="past its mark it opens",
            source="common practice, no source",
        ),
        Step(
            "closes at all",
            "never_closed",
            {"no": "pass", "yes": "fail"},
            given=LIMIT | {"closing_temperature": ""},
            limit="past its mark it closes",
            source="common practice, no source",
        ),
    ),
)


@independent("L140-30 in F: opens at 140 F, closes at 110 F, which are 60 C and 43.33 C")
@pytest.mark.parametrize(
    ("closed", "verdict"), [("113.0 F", "pass"), ("117.0 F", "pass"), ("117.5 F", "fail")]
)
def test_a_differential_says_where_it_closes(closed: str, verdict: str) -> None:
    given = {"opening_temperature": "140 F", "marked_opening": "140 F", "opening_tolerance": "5 F"}
    found = wirecalc.run(
        "thermostat",
        **given,
        closing_temperature=closed,
        marked_differential="30 F",
        closing_tolerance="7 F",
    )
    assert str(found.verdict) == verdict


@practice("a defrost control opens warm and closes cold: 50 F and 20 F")
def test_a_defrost_control_in_fahrenheit() -> None:
    found = wirecalc.run(
        "thermostat",
        opening_temperature="52 F",
        closing_temperature="18 F",
        marked_opening="50 F",
        marked_closing="20 F",
        opening_tolerance="5 F",
        closing_tolerance="5 F",
    )
    assert str(found.verdict) == "pass"
    assert found.figures[0].figure.value == pytest.approx(34 / 1.8)


@practice("a fan control closes on rise: the differential has no sign")
def test_a_fan_control_closes_above_its_opening() -> None:
    found = wirecalc.run(
        "thermostat",
        opening_temperature="35 C",
        closing_temperature="48 C",
        marked_opening="35 C",
        marked_closing="50 C",
        opening_tolerance="3 K",
        closing_tolerance="3 K",
    )
    assert str(found.verdict) == "pass"
    assert found.figures[0].figure.value == pytest.approx(13)


@independent("a thermometer of 1 K against 3 K of tolerance: 2.5 K off can't be told")
def test_the_thermometer_counts() -> None:
    found = wirecalc.run("thermostat", **LIMIT | {"opening_temperature": "62.5 C ±1 C"})
    assert str(found.verdict) == "cannot tell"


@practice("thermostats are marked in F: L155 opens at 155 F")
@pytest.mark.parametrize("mark", ["155 F", "130 F", "110 F"])
def test_a_mark_in_fahrenheit_is_no_slip(mark: str) -> None:
    given = {"opening_temperature": mark, "marked_opening": mark, "opening_tolerance": "5 F"}
    assert str(wirecalc.run("thermostat", **given).verdict) == "pass"


@practice("that it opened at all does not say where")
@pytest.mark.parametrize("never", ["never_opened", "never_closed"])
def test_that_it_moves_is_not_yet_where(never: str) -> None:
    assert str(wirecalc.run("thermostat", **{never: "no"}).verdict) == "cannot tell"
