"""What the shared tests need to know of `thermocouple`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, practice, source

from .trial import Bad, Span, Step, Trial, near, texts

BOILING = {
    "thermocouple_type": "K",
    "thermocouple_voltage": "3.096 mV",
    "cold_junction": "25 C",
    "sensor_temperature": "100 C",
    "temperature_tolerance": "2 K",
}

TRIAL = Trial(
    good=BOILING | {"tolerance_class": "class-2"},
    zero=("sensor_temperature", "cold_junction", "thermocouple_voltage"),
    printed=("temperature_tolerance",),
    bad=(
        Bad("sensor_open", "yes", "3.096 mV is not open", "give the millivolts"),
        Bad("in_ice_water", "yes", "another was given", "give one of both"),
        Bad("thermocouple_type", "Q", "'Q'", "K"),
        Bad("tolerance_class", "class-4", "'class-4'", "class-1"),
    ),
    always={
        "thermocouple_type": texts(["E", "J", "K", "N", "T"]),
        "thermocouple_voltage": near(3.096, low=-4, high=15),
        "cold_junction": near(25, low=-10, high=60),
    },
    sometimes={
        "sensor_temperature": near(98, 100, 102, low=-30, high=300),
        "tolerance_class": texts(["class-1", "class-2"]),
        "temperature_tolerance": texts(["2 K"]),
    },
    apart=("sensor_open", "in_ice_water"),  # in place of others
    spans={
        "thermocouple_voltage": Span("-20 mV", "100 mV", "type E has 76 mV at its hot end"),
        "cold_junction": Span("-40 C", "100 C", "a meter's jacks, or a board in a hot cabinet"),
    },
    why="A probe is read in a hot oven, beside what feeds it.",
    cautions=("dead-01", "hot-01", "sub-01"),
    not_checked=("extension wire", "shows degrees", "tip touches"),
    steps=(
        Step(
            "tells warmer than it is",
            "thermocouple_voltage",
            {"3.178 mV": "pass", "3.180 mV": "fail"},
            given=BOILING,
            limit="K has 4.179 mV at 102 C and 1.000 mV at 25 C",
            source="NIST Monograph 175; IEC 60584-1 (from memory)",
        ),
        Step(
            "tells colder than it is",
            "thermocouple_voltage",
            {"3.014 mV": "pass", "3.012 mV": "fail"},
            given=BOILING,
            limit="K has 4.013 mV at 98 C and 1.000 mV at 25 C",
            source="NIST Monograph 175; IEC 60584-1 (from memory)",
        ),
        Step(
            "sensor conducts",
            "sensor_open",
            {"no": "pass", "yes": "fail"},
            given={"thermocouple_voltage": "", "cold_junction": ""},
            limit="a good sensor conducts",
            source="common practice, no source",
        ),
    ),
)


def tip(letter: str, mv: float, cold: float) -> float:
    found = wirecalc.run(
        "thermocouple",
        thermocouple_type=letter,
        thermocouple_voltage=f"{mv:.6f} mV",
        cold_junction=f"{cold} C",
    )
    return {f.figure.name: f.figure.value for f in found.figures}["temperature of the tip"]


@memory("IEC 60584-1, tables of mV with the cold junction at 0 C")
@pytest.mark.parametrize(
    ("letter", "celsius", "mv"),
    [
        ("K", 100, 4.096),
        ("K", 300, 12.209),
        ("K", 1000, 41.276),
        ("K", -50, -1.889),
        ("J", 100, 5.269),
        ("J", 200, 10.779),
        ("J", -50, -2.431),
        ("T", 100, 4.279),
        ("T", -50, -1.819),
        ("E", 100, 6.319),
        ("N", 100, 2.774),
    ],
)
def test_millivolts_of_the_tables(letter: str, celsius: int, mv: float) -> None:
    assert tip(letter, mv, 0) == pytest.approx(celsius, abs=0.03)


@independent("a general-purpose library of the ITS-90 functions, of another author")
@pytest.mark.parametrize("letter", "EJKNT")
def test_tip_and_cold_junction_as_a_library_has_them(letter: str) -> None:
    library = pytest.importorskip("thermocouple_its90").get(letter)
    for celsius, cold in ((-180, 20), (-18, 25), (4, 0), (65, 30), (204, 45), (390, -10)):
        mv = library.emf(celsius) - library.emf(cold)
        assert tip(letter, mv, cold) == pytest.approx(celsius, abs=1e-3)


@memory("IEC 60584-1, 2013, classes: the larger of an amount and a share of the temperature")
@pytest.mark.parametrize(
    ("letter", "of_class", "celsius", "kelvin"),
    [
        ("E", "1", 100, 1.5),
        ("E", "1", 800, 3.2),
        ("E", "2", 100, 2.5),
        ("E", "2", 900, 6.75),
        ("J", "1", 100, 1.5),
        ("J", "1", 750, 3.0),
        ("J", "2", 100, 2.5),
        ("J", "2", 750, 5.625),
        ("K", "1", 100, 1.5),
        ("K", "1", 1000, 4.0),
        ("K", "2", 100, 2.5),
        ("K", "2", 1200, 9.0),
        ("N", "1", 100, 1.5),
        ("N", "1", 1000, 4.0),
        ("N", "2", 100, 2.5),
        ("N", "2", 1200, 9.0),
        ("T", "1", 100, 0.5),
        ("T", "1", 350, 1.4),
        ("T", "2", 100, 1),
        ("T", "2", 350, 2.625),
    ],
)
def test_tolerances_of_the_classes(letter: str, of_class: str, celsius: int, kelvin: float) -> None:
    found = wirecalc.run(
        "thermocouple",
        thermocouple_type=letter,
        thermocouple_voltage="2 mV",
        cold_junction="25 C",
        sensor_temperature=f"{celsius} C",
        tolerance_class=f"class-{of_class}",
    )
    got = {f.figure.name: f.figure.value for f in found.figures}
    assert got["tolerance of its class"] == pytest.approx(kelvin)


@source("IEC 60584-1", "2013, recalled", "spans of the classes", seen="no copy")
@pytest.mark.parametrize(
    ("letter", "of_class", "celsius", "told"),
    [
        ("E", "1", -41, False),
        ("E", "1", -40, True),
        ("E", "1", 800, True),
        ("E", "1", 801, False),
        ("E", "2", -41, False),
        ("E", "2", -40, True),
        ("E", "2", 900, True),
        ("E", "2", 901, False),
        ("J", "1", -41, False),
        ("J", "1", -40, True),
        ("J", "1", 750, True),
        ("J", "1", 751, False),
        ("J", "2", -41, False),
        ("J", "2", -40, True),
        ("J", "2", 750, True),
        ("J", "2", 751, False),
        ("K", "1", -41, False),
        ("K", "1", -40, True),
        ("K", "1", 1000, True),
        ("K", "1", 1001, False),
        ("K", "2", -41, False),
        ("K", "2", -40, True),
        ("K", "2", 1200, True),
        ("K", "2", 1201, False),
        ("N", "1", -41, False),
        ("N", "1", -40, True),
        ("N", "1", 1000, True),
        ("N", "1", 1001, False),
        ("N", "2", -41, False),
        ("N", "2", -40, True),
        ("N", "2", 1200, True),
        ("N", "2", 1201, False),
        ("T", "1", -41, False),
        ("T", "1", -40, True),
        ("T", "1", 350, True),
        ("T", "1", 351, False),
        ("T", "2", -41, False),
        ("T", "2", -40, True),
        ("T", "2", 350, True),
        ("T", "2", 351, False),
    ],
)
def test_a_class_ends(letter: str, of_class: str, celsius: int, told: bool) -> None:
    found = wirecalc.run(
        "thermocouple",
        thermocouple_type=letter,
        thermocouple_voltage="2 mV",
        cold_junction="25 C",
        sensor_temperature=f"{celsius} C",
        tolerance_class=f"class-{of_class}",
    )
    assert (str(found.verdict) == "fail") == told


@independent("a tip that is warmer than the cold junction has a plus; below 0 mV it is reversed")
@pytest.mark.parametrize(("mv", "said"), [("-3.0", True), ("3.0", False)])
def test_reversed_leads_are_said(mv: str, said: bool) -> None:
    found = wirecalc.run(
        "thermocouple",
        **BOILING | {"thermocouple_voltage": f"{mv} mV", "temperature_tolerance": "5 K"},
    )
    assert any(a.name == "polarity" for a in found.answers) == said
    assert (str(found.verdict) == "fail") == said


@practice("junctions 5 K apart have a sign of their own; nearer ones may be noise")
@pytest.mark.parametrize(("cold", "said"), [(95.0, True), (95.1, False)])
def test_how_far_apart_a_sign_tells(cold: float, said: bool) -> None:
    given = BOILING | {"cold_junction": f"{cold} C", "thermocouple_voltage": "-0.2 mV"}
    found = wirecalc.run("thermocouple", **given)
    assert any(a.name == "polarity" for a in found.answers) == said
