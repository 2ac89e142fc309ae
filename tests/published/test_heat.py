"""Temperature ratings of a joint against its place."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import wirecalc
from wirecalc import tables

from .records import independent, memory, practice, source

FAA = "FAA AC 43.13-1B (9/8/98), 11-174 a: the rating exceeds the place and the rise (one copy)"
ROOM = "20 K for the rise: common practice, no source"
DATA_SHEETS = "data sheets of terminals, from memory; vinyl 105 C on one trade page (220 F)"
AS20659 = "SAE AS20659D, scope, class 1; a data sheet (347 F); a trade page (340 F)"
AS7928_2 = "SAE AS7928/2C, scope (one copy)"
SLEEVES = "a sleeving guide, undated, polyolefin and PVC tubing (one copy)"
TRADE_PAGE = "a trade page of terminals, undated, ratings in Fahrenheit (one copy)"

FILE = Path(__file__).parents[1] / "data" / "demos.json"
DEMOS = {d["id"]: d for d in json.loads(FILE.read_text(encoding="utf-8"))}
NAMES = {"place": "place_temperature", "near_heater": "near_heater"}
NAMES |= {"wire_rating": "wire_temperature", "terminal_rating": "terminal_temperature"}


@independent("worked by hand in tests/data/demos.json")
@pytest.mark.parametrize("name", ["D4.5a", "D4.5b", "D4.5c"])
def test_demonstration(name):
    demo = DEMOS[name]
    given = {NAMES[n]: text for n, text in demo["inputs"].items() if n != "margin"}
    finding = wirecalc.run("heat-rating", **given)
    assert finding.verdict == demo["verdict"], demo["why"]
    figures = {"weakest rating": "weakest rating", "needed": "needed rating"}
    for expected in demo["expect"]:
        found = finding.figure(figures[expected["name"]]).figure.value
        assert found == pytest.approx(expected["value"], abs=expected["abs_tol"])


def judge(**given):
    typed = {n: v if isinstance(v, str) else f"{v} C" for n, v in given.items()}
    return wirecalc.run("heat-rating", **typed)


@source("FAA AC 43.13-1B", "9/8/98", "11-174 a, rating above place and rise", seen="one copy")
@practice("20 K of room between place and rating")
@pytest.mark.parametrize(
    ("rating", "verdict"),
    # a rating must exceed the place and the rise (FAA AC 43.13-1B, 11-174 a); 20 K are taken for
    # the rise: common practice, no source
    [("89 C", "fail"), ("109.9 C", "fail"), ("110 C", "pass"), ("230 F", "pass")],
)
@pytest.mark.parametrize("part", ["wire", "terminal", "sleeve"])
def test_the_weakest_rating_decides_in_a_place_of_90_c(part, rating, verdict):
    given = {"wire_temperature": 200, "terminal_temperature": 200}
    given |= {f"{part}_temperature": rating}
    finding = judge(place_temperature=90, **given)
    assert finding.verdict == verdict
    assert finding.criterion(f"temperature rating of the {part}").verdict == verdict


@practice("200 C beside a heater that was not measured, 40 C as a warm room")
@pytest.mark.parametrize(
    ("rating", "verdict"),
    # 200 C beside a heater is the usual assumption: common practice, no source
    [(105, "fail"), (219, "fail"), (220, "cannot tell"), (250, "cannot tell")],
)
def test_a_place_beside_a_heater_that_was_not_measured_never_passes(rating, verdict):
    given = {"wire_temperature": rating, "terminal_temperature": rating}
    assert judge(near_heater="yes", **given).verdict == verdict
    assert judge(near_heater="no", **given).verdict == "cannot tell"
    assert judge(**given).verdict == "cannot tell"


@practice("200 C beside a heater that was not measured, 40 C as a warm room")
@pytest.mark.parametrize(
    ("place", "verdict"),
    # 40 C is a warm room, and no place beside a heater that runs: common practice, no source
    [(20, "cannot tell"), (40, "cannot tell"), (40.1, "pass"), (60, "pass")],
)
def test_a_place_beside_a_heater_that_reads_as_a_room_was_read_cold(place, verdict):
    given = {"wire_temperature": 105, "terminal_temperature": 105, "place_temperature": place}
    assert judge(near_heater="yes", **given).verdict == verdict
    assert judge(**given).verdict == "pass"


@practice("200 C beside a heater that was not measured, 40 C as a warm room")
@practice("20 K of room between place and rating")
def test_a_measured_place_comes_before_the_assumption():
    given = {"wire_temperature": 105, "terminal_temperature": 105, "near_heater": "yes"}
    assert judge(place_temperature=60, **given).verdict == "pass"


@source("FAA AC 43.13-1B", "9/8/98", "11-174 a, rating above place and rise", seen="one copy")
@practice("20 K of room between place and rating")
def test_an_unknown_place_names_what_the_parts_would_do_for():
    finding = judge(wire_temperature=105, terminal_temperature=150)
    said = finding.criterion("temperature of the place").reason
    assert "105 C, would do up to 85 C" in said, (FAA, ROOM)  # 105 - 20
    assumed = judge(wire_temperature=250, terminal_temperature=482, near_heater="yes")
    assert "250 C, would do up to 230 C" in assumed.criterion("temperature of the place").reason


@source("FAA AC 43.13-1B", "9/8/98", "11-174 a, rating above place and rise", seen="one copy")
@practice("20 K of room between place and rating")
def test_an_unknown_rating_names_what_would_do():
    finding = judge(place_temperature=130, wire_temperature=200)
    assert finding.verdict == "cannot tell"
    action = finding.criterion("temperature rating of the terminal").action
    assert "150 C or more" in action, (FAA, ROOM)  # 130 + 20


@memory("data sheets of terminals; vinyl's upper end and nylon on one seller's page each")
@source(
    "SAE AS20659; SAE AS7928/2",
    "D; C",
    "scope",
    seen="one copy each, a data sheet and a trade page",
)
@practice("20 K of room between place and rating")
@pytest.mark.parametrize(
    ("material", "place", "verdict"),
    [
        # vinyl 75 C (from memory) to 105 C; nylon 105 C (from memory, and a seller's page, which
        # speaks for the seller's parts alone): 10 K less may be meant
        ("vinyl", 55, "marginal"),
        ("vinyl", 56, "cannot tell"),
        ("vinyl", 85, "cannot tell"),
        ("vinyl", 86, "fail"),
        ("nylon", 75, "pass"),
        ("nylon", 76, "marginal"),
        ("nylon", 85, "marginal"),
        ("nylon", 86, "fail"),
        # tin-plated copper 171 to 175 C: SAE AS20659D, a data sheet (347 F), a trade page (340 F)
        ("tin-plated copper", 151, "pass"),
        ("tin-plated copper", 153, "cannot tell"),
        ("tin-plated copper", 156, "fail"),
        # nickel-plated steel: 250 C is usual, 482 C (900 F) stands on one trade page
        ("nickel-plated steel", 230, "pass"),
        ("nickel-plated steel", 231, "cannot tell"),
        # SAE AS7928/2C: 105 C
        ("AS7928/2 copper lug", 85, "pass"),
        ("AS7928/2 copper lug", 86, "fail"),
    ],
)
def test_a_terminal_without_a_mark_goes_by_its_make(material, place, verdict):
    finding = judge(place_temperature=place, wire_temperature=500, terminal_material=material)
    told = finding.criterion("temperature rating of the terminal").verdict
    assert told == verdict, (DATA_SHEETS, AS20659, AS7928_2, TRADE_PAGE, ROOM)


@source("A sleeving guide", "undated", "polyolefin and PVC tubing", seen="one copy")
@practice("20 K of room between place and rating")
@pytest.mark.parametrize(
    ("material", "low", "high"),
    # a sleeving guide: polyolefin tubing 125 to 135 C, PVC tubing 105 C
    [("polyolefin tubing", 125, 135), ("PVC tubing", 105, 105)],
)
def test_a_sleeve_without_a_mark_goes_by_its_make(material, low, high):
    given = {"wire_temperature": 500, "terminal_temperature": 500, "sleeve_material": material}
    assert judge(place_temperature=low - 20, **given).verdict == "pass", (SLEEVES, ROOM)
    assert judge(place_temperature=high - 19, **given).verdict == "fail", (SLEEVES, ROOM)


@source("FAA AC 43.13-1B", "9/8/98", "11-174 a, rating above place and rise", seen="one copy")
@practice("20 K of room between place and rating")
def test_a_mark_comes_before_the_make():
    given = {"wire_temperature": 105, "terminal_temperature": 105, "terminal_material": "vinyl"}
    assert judge(place_temperature=80, **given).verdict == "pass"


@source("A trade page of terminals", "undated", "ratings in Fahrenheit", seen="one copy")
@source(
    "SAE AS20659; SAE AS7928/2",
    "D; C",
    "scope",
    seen="one copy each, a data sheet and a trade page",
)
@pytest.mark.parametrize(
    ("material", "column", "fahrenheit"),
    # as some copies print them
    [
        ("tin-plated copper", "least_C", 340),
        ("tin-plated copper", "greatest_C", 347),
        ("nickel-plated copper", "least_C", 650),
        ("nickel-plated steel", "greatest_C", 900),
        ("vinyl", "greatest_C", 220),
    ],
)
def test_ratings_against_those_in_fahrenheit(material, column, fahrenheit):
    row = tables.load("temperature-classes").row(material=material)
    celsius = (fahrenheit - 32) / 1.8
    assert row.number(column) == pytest.approx(celsius, abs=0.6), (TRADE_PAGE, AS20659)
