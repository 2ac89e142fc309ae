"""What the shared tests need to know of `discharge`."""

from __future__ import annotations

import math

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial, near, texts

TRIAL = Trial(
    good={"marked_capacitance": "30 uF", "resistor": "20000 ohm"}
    | {"capacitor_voltage": "214 V", "left_voltage": "300 V", "resistor_power": "2 W"}
    | {"resistor_voltage": "500 V", "pulse_energy": "5 J", "bled_for": "5 s"}
    | {"volts_after": "0.6 V"},
    zero=("left_voltage", "volts_after"),
    printed=(
        *("marked_capacitance", "resistor", "resistor_power", "resistor_voltage", "pulse_energy"),
    ),
    bad=(
        Bad("resistor", "R 20", "'R 20'", "a number and a unit"),
        Bad("resistor", "20 Mohm", "'20 Mohm'", "up to"),
        Bad("resistor_power", "2 A", "'A'", "write it in W"),
    ),
    always={
        "marked_capacitance": texts(["5 uF", "30 uF", "108 uF"]),
        "resistor": texts(["20 ohm", "1 kohm", "15 kohm", "20 kohm"]),
    },
    sometimes={
        "capacitor_voltage": near(5 / 2**0.5, 214, high=500),
        "left_voltage": near(5, 50, 300, high=600),
        "resistor_power": texts(["2 W"]),
        "marked_high": texts(["106 uF"]),
        "resistor_voltage": texts(["350 V", "500 V"]),
        "pulse_energy": texts(["0.5 J", "5 J"]),
        "bled_for": near(0.5, 3.0, high=12),
        "volts_after": near(5, 50, high=300),
    },
    spans={
        "bled_for": Span("0 s", "86400 s", "a touch to a day", over=True),
        "volts_after": Span("0 V", "20000 V", "none to what a meter reads"),
        "resistor_voltage": Span("0 V", "20000 V", "what is printed", over=True),
        "pulse_energy": Span("0 J", "10000 J", "what is printed", over=True),
    },
    why=("A charged part in a machine that must be off; a spark beside gas; the bleeder stays."),
    cautions=("cap-01", "dead-01", "cap-02", "flam-01"),
    not_checked=("broken resistor", "come back by themselves"),
    steps=(
        Step(
            "load on the resistor",
            "resistor_power",
            {"1.94 W": "pass", "1.93 W": "cannot tell"},
            given={"capacitor_voltage": "440 V"},
            limit=(
                "2 x 440^2 / 20000 is 19.36 W, tenfold for a second; beyond it its pulse rating"
                " decides"
            ),
            source="common practice, no source",
        ),
        Step(
            "volts left on it",
            "left_voltage",
            {"684 V": "not judged", "685 V": "cannot tell"},
            given={"capacitor_voltage": "440 V"},
            limit="440 V has a crest of 622.3 V; 1.1 times that is 684.5 V",
            source="common practice, no source",
        ),
        Step(
            "volts after the bleed",
            "volts_after",
            {"0 V": "pass", "5 V": "pass", "5.1 V": "fail"},
            limit="5 V by the meter",
            source="common practice, no source",
        ),
        Step(
            "time of the bleed",
            "bled_for",
            {"3 s": "pass", "2.99 s": "marginal"},
            given={"volts_after": "0.4 V", "capacitor_voltage": "", "left_voltage": "100 V"},
            limit="five times 20000 ohm x 30 uF, 0.6 s, are 3 s; 100 V are down to 5 V in 1.8 s",
            source="common practice, no source",
        ),
        Step(
            "volts fit the time",
            "volts_after",
            {"74.9 V": "not judged", "74.7 V": "cannot tell"},
            given={"bled_for": "0.6 s", "capacitor_voltage": "", "left_voltage": "300 V"},
            limit="300 V x exp(-0.6 / (0.72 x 0.6)) is 74.81 V",
            source="common practice, no source",
        ),
        Step(
            "volts fit the time",
            "bled_for",
            {"1.76 s": "cannot tell", "1.77 s": "not judged"},
            given={"volts_after": "0 V", "capacitor_voltage": "", "left_voltage": "300 V"},
            limit="0.72 x 0.6 s x ln(300 / 5) is 1.769 s: from then on 5 V may be all",
            source="common practice, no source",
        ),
        Step(
            "volts of the resistor",
            "resistor_voltage",
            {"303 V": "pass", "302 V": "fail"},
            limit="214 V has a crest of 302.6 V",
            source="the maker's marking",
        ),
        Step(
            "energy in the resistor",
            "pulse_energy",
            {"1.35 J": "pass", "1.34 J": "fail"},
            given={"capacitor_voltage": "", "left_voltage": "300 V"},
            limit="30 uF at 300 V has 1.35 J",
            source="the maker's marking",
        ),
    ),
)


@independent("Kirchhoff's law stepped through in 100000 parts: dV/dt = -V / RC")
def test_volts_that_are_left_after_a_time() -> None:
    volts, constant, waited = 300.0, 20_000 * 30e-6, 1.2
    for _ in range(100_000):
        volts -= volts / constant * waited / 100_000
    found = wirecalc.run("discharge", marked_capacitance="30 uF", resistor="20 kohm",
                         left_voltage="300 V", resistor_power="2 W", bled_for="1.2 s",
                         volts_after="41 V")  # fmt: skip
    shown = {f.figure.name: f.figure.value for f in found.figures}
    assert shown["volts left after that time"] == pytest.approx(volts, rel=5e-5)
    assert shown["volts left after that time"] == pytest.approx(300 * math.exp(-2))


@practice("volts at the start that nobody read may be none: switched off at a zero of the line")
def test_running_volts_say_nothing_of_a_meter_that_shows_few() -> None:
    given = {"marked_capacitance": "30 uF", "resistor": "20 kohm", "resistor_power": "2 W"}
    given |= {"bled_for": "0.6 s", "volts_after": "0 V"}
    names = {n.criterion.name for n in
             wirecalc.run("discharge", **given, capacitor_voltage="214 V").criteria}  # fmt: skip
    assert "volts fit the time" not in names
    found = wirecalc.run("discharge", **given, left_voltage="300 V")
    assert str(found.verdict) == "cannot tell"


@memory("NFPA 70E: 50 V and more between conductors count as live")
def test_volts_that_count_as_live_are_said_so() -> None:
    given = {"marked_capacitance": "30 uF", "resistor": "20 kohm", "resistor_power": "2 W"}
    for volts, says in (("49.9 V", False), ("50 V", True)):
        found = wirecalc.run("discharge", **given, left_voltage="60 V", volts_after=volts)
        (left,) = (j for j in found.criteria if j.criterion.name == "volts after the bleed")
        assert ("count as live" in left.reason) == says


@practice("a maker's pulse rating decides what ten times the power leaves open")
@pytest.mark.parametrize(
    ("pulse", "verdict"), [("", "cannot tell"), ("3 J", "pass"), ("2.9 J", "fail")]
)
def test_a_pulse_that_its_maker_prints_decides(pulse: str, verdict: str) -> None:
    # 30 uF at 440 V have 2.904 J; 9.68 W are 19 times the power of half a watt
    given = {"marked_capacitance": "30 uF", "resistor": "20 kohm", "left_voltage": "440 V"}
    given |= {"resistor_power": "0.5 W"} | ({"pulse_energy": pulse} if pulse else {})
    assert str(wirecalc.run("discharge", **given).verdict) == verdict
