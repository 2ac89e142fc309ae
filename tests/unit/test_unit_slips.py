"""A value that only a slip of its unit makes is asked about, and taken in the usual unit."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import Nameplate, Reading
from wirecalc.base.errors import BadText

LOADED = wirecalc.build(bundled_only=True).calculations


@pytest.mark.parametrize(
    ("name", "typed", "usual", "meant"),
    [
        ("inrush.rated_load_current", "1.6 mA", "1.6 A", "0.0016 A"),
        ("inrush.rated_load_current", "20 mA", "20 A", "0.02 A"),
        ("motor-circuit.minimum_ampacity", "9 mA", "9 A", "0.009 A"),
        ("capacitor.marked_capacitance", "30 nF", "30 uF", "0.03 uF"),
        ("capacitor.measured_capacitance", "28.5 nF", "28.5 uF", "0.0285 uF"),
        ("capacitor-swap.old_capacitor", "35 nF", "35 uF", "0.035 uF"),
        ("capacitor.voltage", "117 mV", "117 V", "0.117 V"),
        ("discharge.left_voltage", "200 mV", "200 V", "0.2 V"),
        ("windings.reading_1_2", "4.6 mohm", "4.6 ohm", "0.0046 ohm"),
        ("windings.case_resistance", "0.5 mohm", "0.5 Mohm", "0.0000000005 Mohm"),
        ("duty.running_power", "120 mW", "120 W", "0.12 W"),
        ("trip.overcurrent_time", "0.5 ms", "0.5 s", "0.0005 s"),
        ("gauge.strand_diameter", "0.254 um", "0.254 mm", "0.000254 mm"),
        ("splice.wire_temperature", "105 F", "105 C", "40.56 C"),
        ("substitute.old_wire_temperature", "200 F", "200 C", "93.33 C"),
        ("heat-rating.terminal_temperature", "150 F", "150 C", "65.56 C"),
        ("heat-rating.terminal_temperature", "155 F", "155 C", "68.33 C"),
    ],
)
def test_it_is_asked_which_was_meant(name: str, typed: str, usual: str, meant: str) -> None:
    calculation, _, plain = name.partition(".")
    kind = LOADED[calculation].calculation.input(plain).kind
    with pytest.raises(BadText, match=r"which (unit|scale) was meant") as caught:
        kind.read(typed)
    assert f"write {usual}, or {meant}" in str(caught.value)
    kind.read(usual)
    kind.read(meant)


@pytest.mark.parametrize(
    ("name", "typed", "meant", "usual"),
    [
        ("element.element_resistance", "300 milliohm", "0.3 ohm", "300 ohm"),  # spelled out
        ("extension.extension_length", '¼"', "0.02083 ft", "0.25 ft"),
        ("extension.extension_length", "7 mil", "0.0005833 ft", "7 ft"),
        ("extension.extension_length", "1cm", "0.03281 ft", "1 ft"),
    ],
)
def test_what_was_typed_comes_first_where_no_letter_can_be_missing(
    name: str, typed: str, meant: str, usual: str
) -> None:
    calculation, _, plain = name.partition(".")
    kind = LOADED[calculation].calculation.input(plain).kind
    with pytest.raises(BadText, match="next to nothing") as caught:
        kind.read(typed)
    assert str(caught.value).endswith(f"Write {meant} if it is so little, or {usual}")
    kind.read(meant)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("joint-drop.drop", "5 V"),  # of a bad joint
        ("joint-drop.drop", "0.4 mV"),
        ("wire-ohms.measured_resistance", "2 mohm"),  # of a short length
        ("ground.ground_resistance", "20 mohm"),  # of a strap
        ("ground.test_current", "1 mA"),  # of an ohmmeter
        ("trip.overcurrent_time", "10 ms"),  # of a magnetic trip
        ("overload.overload_resistance", "0.4 kohm"),  # open, with something beside it
        ("insulation.insulation_resistance", "100 kohm"),  # damp
        ("windings.case_resistance", "100 ohm"),  # a short to the case
        ("capacitor.marked_capacitance", "30000 nF"),
        ("capacitor.marked_capacitance", "0.03 uF"),  # as the refusal says
        ("inrush.rated_load_current", "600 mA"),
        ("heat-rating.terminal_temperature", "220 F"),  # 105 C
        ("heat-rating.terminal_temperature", "302 F"),  # 150 C
        ("heat-rating.place_temperature", "105 F"),  # of an attic, measured
        ("ampacity.ambient", "90 F"),
        ("element.nameplate_power", "2.585 kW"),
        ("inrush.horsepower", "180 W"),
    ],
)
def test_what_is_met_in_the_trade_is_taken(name: str, typed: str) -> None:
    calculation, _, plain = name.partition(".")
    LOADED[calculation].calculation.input(plain).kind.read(typed)


def test_where_it_begins() -> None:
    plate = Nameplate("A", above=0, high=60, typical="3 A", text="amps")
    assert plate.read("100 mA").value == pytest.approx(0.1)  # a thirtieth
    with pytest.raises(BadText, match=r"write 9 A, or 0\.009 A if it is so little"):
        plate.read("9 mA")
    assert plate.read("61 mA").value == pytest.approx(0.061)  # 61 A is none either
    reading = Reading("A", low=0, high=60, typical="3 A", text="amps")
    assert reading.read("0 mA").value == 0
    with pytest.raises(BadText, match="next to nothing"):
        reading.read("3 mA ±2%")
    without = Reading("A", low=0, high=60, text="amps")  # nothing usual is declared
    assert without.read("3 mA").value == pytest.approx(0.003)


def test_a_thirtieth_of_what_is_usual_is_taken_and_a_step_less_is_asked_about() -> None:
    plate = Nameplate("A", above=0, high=200, typical="3 A", text="amps")
    with pytest.raises(BadText, match="next to nothing"):
        plate.read("89 mA")
    assert plate.read("100 mA").value == pytest.approx(0.1)
    rating = Nameplate("C", low=0, high=300, typical="105 C", text="rating")
    assert rating.read("219 F").value == pytest.approx(103.89, abs=0.01)
    with pytest.raises(BadText, match=r"write 120 C, or 48\.89 C if it is that"):
        rating.read("120 F")
    assert rating.read("121 F").value == pytest.approx(49.44, abs=0.01)  # 121 C is no rating
    assert rating.read("140 F").value == pytest.approx(60.0)
