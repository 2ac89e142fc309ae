"""The figures of the demonstrations, worked by hand and by the calculation; the page has both."""

from __future__ import annotations

import math
import statistics
from pathlib import Path

import pytest

import wirecalc

from .records import independent, source

PAGE = " ".join(
    (Path(__file__).parents[2] / "docs/demonstrations.md").read_text(encoding="utf-8").split()
)
DOZEN = (31.2, 28.4, 33.0, 29.7, 30.5, 27.9, 32.1, 30.0, 19.2, 31.6, 28.8, 29.9)


@independent("sum, mean and deviation by the standard library")
@source("UL 486A", "8th edition, 1991/1995", "section 12: 20 lbf of 18 AWG", seen="three copies")
def test_a_dozen_crimps() -> None:
    finding = wirecalc.run(
        "pull-batch", wire="18 AWG", terminal="ring", force=[f"{v} lbf" for v in DOZEN]
    )
    mean, s = statistics.mean(DOZEN), statistics.stdev(DOZEN)
    assert f"sum to {sum(DOZEN):.1f} lbf, so their mean is {mean:.2f} lbf" in PAGE
    assert f"(29.36 - 20) / {s:.2f} = {(mean - 20) / s:.2f} of them above 20 lbf" in PAGE
    margin = finding.criterion("margin in s, ul-486a").criterion.actual
    assert margin == pytest.approx((mean - 20) / s)


@independent("Ohm's law; 18 AWG of 6.51 ohm/kft")
@pytest.mark.parametrize(("volts", "said"), [("8.0", "0.32"), ("62", "11.1")])
def test_millivolts_of_a_crimp(volts: str, said: str) -> None:
    wire = 6.51 / 304.8 * 60  # mohm of 60 mm
    alone = float(volts) / 5 - wire
    assert f"{volts} mV / 5 A = {float(volts) / 5:.3g} mohm, less the wire {said} mohm" in PAGE
    assert alone == pytest.approx(float(said), abs=0.02)
    finding = wirecalc.run(
        "joint-drop",
        drop=f"{volts} mV",
        joint_current="5 A",
        wire="18 AWG",
        joint_length="60 mm",
    )
    judged = finding.criterion("joint against its wire").criterion.actual
    assert judged == pytest.approx(alone, abs=0.01)


@independent("Ohm's law; heat 25 A^2 times 11.1 mohm; copper between 20 and 75 C")
@source("NEC", "2011", "chapter 9, table 8: 4.99 and 1.98 ohm/kft at 75 C", seen="two copies")
def test_the_long_cord() -> None:
    assert round(25 * 0.0111, 2) == 0.28
    assert "25 x 0.0111 = 0.28 W" in PAGE
    cord, building = 6.3 * 0.2 * 4.99, 6.3 * 0.06 * 1.98
    assert f"= {cord:.2f} V, the building wire" in PAGE
    assert f"together {cord + building:.2f} V, {(cord + building) / 1.2:.2f} % of 120 V" in PAGE
    cold = 4.99 * (234.5 + 20) / (234.5 + 75)
    assert 1 - cold / 4.99 == pytest.approx(1 / 6, abs=0.02)
    loop = wirecalc.run(
        "wire-ohms",
        wire="16 AWG",
        conductor_length="100 ft",
        conductor_temperature="20 C",
    )
    assert loop.figure("resistance, there and back").figure.value == pytest.approx(
        0.2 * cold, rel=0.01
    )
    assert "5 A x 0.82 ohm = 4.1 V: of 12 V at one end 7.9 V" in PAGE


@independent("6 % of 20 uF; a sine's crest is the root of two times its rms")
def test_capacitor_and_crest() -> None:
    assert "6 % below 20 uF are 18.8 uF; 16.1 uF are 80.5 % of the mark" in PAGE
    given = {"measured_capacitance": "16.1 uF", "marked_capacitance": "20 uF", "tolerance": "6 %"}
    finding = wirecalc.run("capacitor", **given, capacitor_duty="run")
    assert finding.criterion("capacitance, lower limit").criterion.limit == pytest.approx(18.8)
    assert round(100 * 16.1 / 20, 1) == 80.5
    assert f"1.414 x 18.9 A = {math.sqrt(2) * 18.9:.1f} A" in PAGE
