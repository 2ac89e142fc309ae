"""What the shared tests need to know of `rtd`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, source

from .trial import Bad, Span, Step, Trial, near, texts

ZERO = {
    "ice_resistance": "100 ohm",
    "sensor_resistance": "100 ohm",
    "sensor_temperature": "0 C",
    "rtd_class": "B",
    "lead_resistance": "0 ohm",
}

TRIAL = Trial(
    good=ZERO | {"temperature_tolerance": "1 K", "rtd_build": "film"},
    zero=("sensor_temperature", "lead_resistance"),
    printed=("ice_resistance", "temperature_tolerance"),
    bad=(
        Bad("rtd_build", "glass", "'glass'", "film"),
        Bad("sensor_open", "yes", "100 ohm is not open", "give the resistance"),
        Bad("in_ice_water", "yes", "another was given", "give one of both"),
        Bad("pair_resistance", "0.6 ohm", "lead_resistance was given too", "give one of both"),
        Bad("lead_resistance", "2.1 ohm", "'2.1 ohm'", "up to 2"),
        Bad("rtd_class", "D", "'D'", "AA"),
    ),
    always={
        "ice_resistance": texts(["100 ohm", "1000 ohm"]),
        "sensor_resistance": near(100, 109, 1000, 1090, high=2500),
    },
    sometimes={
        "sensor_temperature": near(23, low=-50, high=250),
        "rtd_class": texts(["AA", "A", "B", "C"]),
        "rtd_build": texts(["film", "wire-wound"]),
        "temperature_tolerance": texts(["1 K"]),
        "lead_resistance": near(0.2, high=1),
        "pair_resistance": near(0.6, high=5),
    },
    apart=("sensor_open", "in_ice_water", "pair_resistance"),  # in place of others
    spans={
        "ice_resistance": Span("10 ohm", "10000 ohm", "Pt10 to Pt10000 are made"),
        "pair_resistance": Span("0 ohm", "100 ohm", "a long thin cable, there and back"),
    },
    why="Ohms are read on a machine that was fed a minute ago; ovens are hot, and so are joints.",
    cautions=("dead-01", "heat-01", "hot-01", "sub-01"),
    not_checked=("ohms of its own cable", "plug, harness and board", "insulation from the sheath"),
    steps=(
        Step(
            "tells warmer than it is",
            "sensor_resistance",
            {"100.117 ohm": "pass", "100.118 ohm": "fail"},
            given=ZERO,
            limit="0.3 K at 0 C of class B is 0.11725 ohm of a Pt100",
            source="IEC 60751, 2022, Table 2",
        ),
        Step(
            "tells colder than it is",
            "sensor_resistance",
            {"99.883 ohm": "pass", "99.882 ohm": "fail"},
            given=ZERO,
            limit="0.3 K at 0 C of class B is 0.11725 ohm of a Pt100",
            source="IEC 60751, 2022, Table 2",
        ),
        Step(
            "sensor conducts",
            "sensor_open",
            {"no": "pass", "yes": "fail"},
            given={"sensor_resistance": "", "lead_resistance": ""},
            limit="a good sensor conducts",
            source="common practice, no source",
        ),
    ),
)


def figures(**given: str) -> dict[str, float]:
    found = wirecalc.run("rtd", **{"ice_resistance": "100 ohm", "lead_resistance": "0 ohm"} | given)
    return {f.figure.name: f.figure.value for f in found.figures}


@memory("IEC 60751, table of Pt100: ohms at a temperature")
@pytest.mark.parametrize(
    ("celsius", "ohm"),
    [
        (-200, 18.52),
        (-100, 60.26),
        (-50, 80.31),
        (0, 100.0),
        (25, 109.73),
        (100, 138.51),
        (200, 175.86),
        (400, 247.09),
        (850, 390.48),
    ],
)
def test_ohms_of_the_table(celsius: int, ohm: float) -> None:
    got = figures(sensor_temperature=f"{celsius} C", sensor_resistance=f"{ohm} ohm")
    assert got["ohms due at this temperature"] == pytest.approx(ohm, abs=0.006)
    assert got["temperature by its ohms"] == pytest.approx(celsius, abs=0.03)


@independent("a general-purpose library of platinum thermometers, of another author")
@pytest.mark.parametrize("celsius", [-200, -150, -40, -18, -0.5, 4, 37, 120, 260, 600, 850])
def test_both_ways_as_a_library_has_it(celsius: float) -> None:
    pt1000 = pytest.importorskip("rtd_sensor.pt1000")
    ohm = pt1000.celsius_to_resistance(celsius)
    got = figures(
        ice_resistance="1000 ohm",
        sensor_temperature=f"{celsius} C",
        sensor_resistance=f"{ohm:.9f} ohm",
    )
    assert got["ohms due at this temperature"] == pytest.approx(ohm, rel=1e-9)
    assert got["temperature by its ohms"] == pytest.approx(celsius, abs=1e-4)


@source("IEC 60751", "2022, as a library cites it", "Table 2", seen="one copy")
@pytest.mark.parametrize("build", ["wire-wound", "film"])
@pytest.mark.parametrize("rtd_class", ["AA", "A", "B", "C"])
def test_tolerances_and_spans_of_the_classes(rtd_class: str, build: str) -> None:
    library = pytest.importorskip("rtd_sensor.tolerance")
    for celsius in (
        -197,
        -196,
        -101,
        -100,
        -51,
        -50,
        -31,
        -30,
        -1,
        0,
        20,
        150,
        151,
        250,
        251,
        300,
        301,
        450,
        451,
        500,
        501,
        600,
        601,
    ):
        found = wirecalc.run(
            "rtd",
            ice_resistance="100 ohm",
            sensor_resistance="100 ohm",
            sensor_temperature=f"{celsius} C",
            rtd_class=rtd_class,
            rtd_build=build,
            lead_resistance="0 ohm",
        )
        got = {f.figure.name: f.figure.value for f in found.figures}.get("tolerance of its class")
        try:
            due = library.thermometer_tolerance_c(
                celsius, tolerance_class=rtd_class, construction=build.replace("-", "_")
            )
        except ValueError:
            assert got is None, celsius
            assert str(found.verdict) == "cannot tell"
        else:
            assert got == pytest.approx(due, rel=1e-9), celsius


@independent("the span of class A ends at 300 C for film and at 450 C for wire-wound")
@pytest.mark.parametrize(
    ("celsius", "told"), [("299", True), ("301", False), ("449", False), ("-31", False)]
)
def test_a_build_that_was_not_said_is_asked_where_it_decides(celsius: str, told: bool) -> None:
    found = wirecalc.run(
        "rtd",
        ice_resistance="100 ohm",
        sensor_resistance="100 ohm",
        sensor_temperature=f"{celsius} C",
        rtd_class="A",
        lead_resistance="0 ohm",
    )
    assert (str(found.verdict) != "cannot tell") == told


@independent("arithmetic: 109.73 ohm of the element and 1.20 ohm of a pair that has it twice")
def test_a_third_wire_takes_the_cable_out() -> None:
    got = wirecalc.run(
        "rtd",
        ice_resistance="100 ohm",
        sensor_resistance="110.93 ohm",
        pair_resistance="1.20 ohm",
        sensor_temperature="25 C",
        rtd_class="B",
    )
    assert str(got.verdict) == "pass"
    by_ohms = {f.figure.name: f.figure.value for f in got.figures}["temperature by its ohms"]
    assert by_ohms == pytest.approx(25.0, abs=0.02)


@independent("0.3 ohm of leads is 0.77 K of a Pt100: class B of 0.4 K at 20 C can't be told")
@pytest.mark.parametrize(("ohm", "told"), [("107.79", False), ("1077.94", True)])
def test_leads_that_were_not_read_decide_for_a_pt100(ohm: str, told: bool) -> None:
    ice = "100 ohm" if ohm.startswith("107.") else "1000 ohm"
    found = wirecalc.run(
        "rtd",
        ice_resistance=ice,
        sensor_resistance=f"{ohm} ohm",
        sensor_temperature="20 C",
        rtd_class="B",
    )
    assert (str(found.verdict) == "pass") == told
    assert (str(found.verdict) == "cannot tell") != told


@independent("9 F of tolerance are 5 K, and 5 C of it too; 1020 ohm at 0 C are 5.12 K too warm")
@pytest.mark.parametrize(
    ("tolerance", "verdict"),
    [("9 F", "fail"), ("5 C", "fail"), ("9.3 F", "pass"), ("5.2 C", "pass")],
)
def test_a_tolerance_is_a_difference_in_any_degree(tolerance: str, verdict: str) -> None:
    found = wirecalc.run(
        "rtd",
        ice_resistance="1000 ohm",
        sensor_resistance="1020 ohm",
        sensor_temperature="0 C",
        temperature_tolerance=tolerance,
        lead_resistance="0 ohm",
    )
    assert str(found.verdict) == verdict


@memory("IEC 60751: the curve holds from -200 to 850 C")
@pytest.mark.parametrize(("celsius", "told"), [(-200, True), (850, True), (851, False)])
def test_the_curve_ends(celsius: float, told: bool) -> None:
    found = wirecalc.run(
        "rtd",
        ice_resistance="100 ohm",
        sensor_resistance="100 ohm",
        sensor_temperature=f"{celsius} C",
        temperature_tolerance="1 K",
        lead_resistance="0 ohm",
    )
    assert (str(found.verdict) == "fail") == told
