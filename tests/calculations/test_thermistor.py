"""What the shared tests need to know of `thermistor`, and its published checks."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial, near, texts

B_SHEET = {
    "sensor_resistance": "10000 ohm",
    "sensor_temperature": "25 C",
    "sheet_resistance": "10000 ohm",
    "sheet_temperature": "25 C",
    "b_value": "3435 K",
    "lead_resistance": "0 ohm",
    "sensor_tolerance": "5 %",
}
KELVIN = B_SHEET | {"sensor_tolerance": "", "temperature_tolerance": "1 K"}
OHM = Span("0 ohm", "2000000 ohm", "a short to ten times any sensor that is sold", over=True)
CELSIUS = Span("-200 C", "1300 C", "what RTDs and thermocouples of all kinds are made for")

TRIAL = Trial(
    good=B_SHEET | {"temperature_tolerance": "1 K", "warmed_resistance": "8000 ohm"},
    zero=("sensor_temperature", "sheet_temperature", "lead_resistance"),
    printed=(
        "sheet_resistance",
        "sheet_temperature",
        "b_value",
        "sensor_tolerance",
        "temperature_tolerance",
    ),
    bad=(
        Bad("sensor_open", "yes", "10000 ohm is not open", "give the resistance"),
        Bad("in_ice_water", "yes", "another was given", "give one of both"),
        Bad("sheet_temperature", ["0 C", "25 C"], "1 resistances for 2", "in the same order"),
        Bad("lead_resistance", "2.1 ohm", "'2.1 ohm'", "up to 2"),
    ),
    always={
        "sensor_resistance": near(9500, 10000, 10500, high=40000),
        "sheet_resistance": texts(["10000 ohm"]),
        "sheet_temperature": texts(["25 C"]),
        "b_value": texts(["3435 K", "3977 K"]),
    },
    sometimes={
        "sensor_temperature": near(24, 25, 26, low=-30, high=90),
        "sensor_tolerance": texts(["5 %", "10 %"]),
        "temperature_tolerance": texts(["1 K", "3 K"]),
        "warmed_resistance": near(10000, high=40000),
        "lead_resistance": near(0.1, high=1),
    },
    apart=("sensor_open", "in_ice_water", "sheet"),  # in place of ohms, a thermometer, points
    spans={
        "sensor_resistance": OHM,
        "warmed_resistance": OHM,
        "sheet_resistance": OHM,
        "sensor_temperature": CELSIUS,
        "sheet_temperature": CELSIUS,
        "b_value": Span("500 K", "10000 K", "NTCs have 2000 to 5000 K; twice that is a slip"),
        "sensor_tolerance": Span("0 %", "50 %", "a sensor off by half measures nothing", over=True),
        "temperature_tolerance": Span("0 K", "20 K", "oven probes have most", over=True),
    },
    why="Ohms are read on a machine that was fed a minute ago; probes of ovens are hot.",
    cautions=("dead-01", "hot-01", "sub-01"),
    not_checked=("plug, harness and board", "where it sits", "one temperature is one point"),
    steps=(
        Step(
            "ohms over its curve",
            "sensor_resistance",
            {"10500 ohm": "pass", "10501 ohm": "fail"},
            given=B_SHEET,
            limit="10 kohm and 5 %",
            source="the maker's sheet",
        ),
        Step(
            "ohms under its curve",
            "sensor_resistance",
            {"9500 ohm": "pass", "9499 ohm": "fail"},
            given=B_SHEET,
            limit="10 kohm less 5 %",
            source="the maker's sheet",
        ),
        Step(
            "tells colder than it is",
            "sensor_resistance",
            {"10395 ohm": "pass", "10397 ohm": "fail"},
            given=KELVIN,
            limit="10 kohm x exp(3435 (1/297.15 - 1/298.15)) is 10395.4 ohm: 24 C",
            source="the maker's sheet",
        ),
        Step(
            "tells warmer than it is",
            "sensor_resistance",
            {"9623 ohm": "pass", "9621 ohm": "fail"},
            given=KELVIN,
            limit="10 kohm x exp(3435 (1/299.15 - 1/298.15)) is 9621.7 ohm: 26 C",
            source="the maker's sheet",
        ),
        Step(
            "sensor conducts",
            "sensor_open",
            {"no": "pass", "yes": "fail"},
            given={"sensor_resistance": ""},
            limit="a good sensor conducts",
            source="common practice, no source",
        ),
        Step(
            "moves as its sheet says",
            "warmed_resistance",
            {"9999 ohm": "pass", "10001 ohm": "fail"},
            given=B_SHEET,
            limit="an NTC falls below its 10 kohm as it warms",
            source="the maker's sheet",
        ),
    ),
)


def figures(**given: object) -> dict[str, float]:
    return {f.figure.name: f.figure.value for f in wirecalc.run("thermistor", **given).figures}


def sheet(**more: object) -> dict[str, object]:
    """A sheet of 32.65, 10 and 3.603 kohm at 0, 25 and 50 C."""
    return {
        "sheet_resistance": ["32.65 kohm", "10 kohm", "3.603 kohm"],
        "sheet_temperature": ["0 C", "25 C", "50 C"],
        "sensor_temperature": "25 C",
        "sensor_resistance": "10 kohm",
        "lead_resistance": "0 ohm",
        "sensor_tolerance": "1 %",
        **more,
    }


@memory("sheets of 10 kohm NTCs of the curve with B25/85 near 3977 K: 32.65, 10.00, 3.603 kohm")
@pytest.mark.parametrize(("celsius", "ohm"), [(0, 32650), (25, 10000), (50, 3603)])
def test_the_points_of_a_sheet_are_its_ohms(celsius: int, ohm: float) -> None:
    got = figures(**sheet(sensor_temperature=f"{celsius} C", sensor_resistance=f"{ohm} ohm"))
    assert got["ohms due at this temperature"] == pytest.approx(ohm, rel=1e-9)
    assert got["temperature by its ohms"] == pytest.approx(celsius, abs=1e-6)


@memory("sheets of 10 kohm NTCs: 19.90 kohm at 10 C, 5.327 kohm at 40 C of that curve")
@pytest.mark.parametrize(("celsius", "ohm"), [(10, 19900), (40, 5327)])
def test_between_the_points_of_a_sheet(celsius: int, ohm: float) -> None:
    got = figures(**sheet(sensor_temperature=f"{celsius} C", sensor_resistance=f"{ohm} ohm"))
    assert got["ohms due at this temperature"] == pytest.approx(ohm, rel=0.006)
    assert got["temperature by its ohms"] == pytest.approx(celsius, abs=0.15)


@independent("IEC 60539 law by a pocket calculator: B of 27.28 kohm at 0 C and 10 kohm at 25 C")
def test_b_value_of_two_points() -> None:
    got = figures(
        **sheet(sheet_resistance=["27.28 kohm", "10 kohm"], sheet_temperature=["0 C", "25 C"])
    )
    by_hand = math.log(2.728) / (1 / 273.15 - 1 / 298.15)
    assert got["B value of the end points"] == pytest.approx(by_hand, rel=1e-9)
    assert by_hand == pytest.approx(3269, abs=1)


@independent("R = R25 exp(B (1/T - 1/T25)): 10 kohm and 3435 K make 28.7 kohm at 0 C")
def test_a_b_value_reaches_past_its_point() -> None:
    got = figures(**B_SHEET | {"sensor_temperature": "0 C"})
    assert got["ohms due at this temperature"] == pytest.approx(28704, rel=1e-3)


@practice("a stirred ice bath is 0 C within 0.5 K")
@pytest.mark.parametrize(
    ("ohm", "verdict"),
    # B 3854 K: 31.82 kohm are due at 0.5 C, and 5 % over it 33.41; at 0.4 C it were 33.58
    # 33.49 kohm are due at -0.5 C, and 5 % over it 35.17
    [
        ("32.65", "pass"),
        ("33.3", "pass"),
        ("33.5", "cannot tell"),
        ("34.2", "cannot tell"),
        ("36", "fail"),
    ],
)
def test_ice_water_has_its_own_doubt(ohm: str, verdict: str) -> None:
    given = sheet(
        in_ice_water="yes",
        sensor_temperature="",
        sensor_resistance=f"{ohm} kohm",
        sensor_tolerance="5 %",
        sheet_temperature=["-5 C", "0 C", "25 C"],
        sheet_resistance=["42.3 kohm", "32.65 kohm", "10 kohm"],
    )
    found = wirecalc.run("thermistor", **{k: v for k, v in given.items() if v})
    assert str(found.verdict) == verdict


@independent("past the end of a sheet nothing is known of it")
@pytest.mark.parametrize("celsius", ["-1", "51"])
def test_outside_the_points_nothing_is_judged(celsius: str) -> None:
    found = wirecalc.run("thermistor", **sheet(sensor_temperature=f"{celsius} C"))
    assert str(found.verdict) == "cannot tell"


@independent("arithmetic: 0 to 0.3 ohm of leads in 105.2 ohm, against 100 ohm and 5 %")
@pytest.mark.parametrize(
    ("ohm", "verdict"), [("105.0", "pass"), ("105.2", "cannot tell"), ("105.4", "fail")]
)
def test_leads_that_were_not_read_decide_on_few_ohms(ohm: str, verdict: str) -> None:
    found = wirecalc.run(
        "thermistor",
        sheet_resistance=["100 ohm", "138.5 ohm"],
        sheet_temperature=["0 C", "100 C"],
        sensor_temperature="0 C",
        sensor_resistance=f"{ohm} ohm",
        sensor_tolerance="5 %",
    )
    assert str(found.verdict) == verdict


@independent("a straight line: 1000 ohm at 25 C and 1100 ohm at 37.5 C make 1040 ohm at 30 C")
def test_a_ptc_rises_along_a_line_and_is_told_apart() -> None:
    given = {"sheet_resistance": ["1000 ohm", "1100 ohm"], "sheet_temperature": ["25 C", "37.5 C"]}
    given |= {"sensor_temperature": "30 C", "sensor_resistance": "1040 ohm"}
    found = wirecalc.run(
        "thermistor",
        **given,
        warmed_resistance="1060 ohm",
        sensor_tolerance="3 %",
        lead_resistance="0 ohm",
    )
    assert str(found.verdict) == "pass"
    assert next(a for a in found.answers if a.name == "kind of sensor").text.startswith("PTC")
    assert figures(**given)["temperature by its ohms"] == pytest.approx(30 - 0 * 1, abs=0.04)


@independent("a table in a file says what the same points typed say")
def test_a_sheet_in_a_file(tmp_path: Path) -> None:
    path = tmp_path / "sensor.csv"
    path.write_text("temperature_C,resistance_kohm\n0,32.65\n25,10\n50,3.603\n", encoding="utf-8")
    typed = sheet(sensor_temperature="12 C")
    filed = {k: v for k, v in typed.items() if not k.startswith("sheet_")}
    assert figures(**filed, sheet=str(path)) == figures(**typed)


@independent("one point without a B value is no curve")
def test_one_point_of_a_sheet_judges_nothing() -> None:
    given = {k: v for k, v in B_SHEET.items() if k != "b_value"}
    assert str(wirecalc.run("thermistor", **given).verdict) == "cannot tell"
