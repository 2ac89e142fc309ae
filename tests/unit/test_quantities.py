"""Quantities as typed: what is read, and what is refused with what would do."""

import pytest

from wirecalc import Reading
from wirecalc.base.errors import BadText
from wirecalc.typed.quantities import read_quantity


@pytest.mark.parametrize(
    ("text", "dimension", "unit", "value"),
    [
        ("24 lbf", "force", "lbf", 24.0),
        ("24lbf", "force", "lbf", 24.0),
        ("100 N", "force", "N", 100.0),
        (".5 A", "current", "A", 0.5),
        ("1/4 in", "length", "in", 0.25),
        ("1 1/2 in", "length", "in", 1.5),
        ("1-1/2 in", "length", "in", 1.5),
        ('1/4"', "length", "in", 0.25),
        ("60'", "length", "ft", 60.0),
        ("-18 C", "temperature", "C", -18.0),
        ("-18°C", "temperature", "C", -18.0),
        ("120 VAC", "voltage", "V", 120.0),
        ("30 MFD", "capacitance", "uF", 30.0),
        ("30 µF", "capacitance", "uF", 30.0),  # micro sign
        ("30 μF", "capacitance", "uF", 30.0),  # Greek mu
        ("4 Ω", "resistance", "ohm", 4.0),  # Greek omega
        ("4 Ω", "resistance", "ohm", 4.0),  # ohm sign
        ("1.5 mm²", "area", "mm2", 1.5),
        ("5 min", "time", "min", 5.0),
    ],
)
def test_reads(text: str, dimension: str, unit: str, value: float) -> None:
    assert read_quantity(text, dimension, unit).value == value


@pytest.mark.parametrize(
    ("text", "dimension", "unit", "value"),
    [
        ("1 in", "length", "mm", 25.4),  # exact, NIST SP 811 (2008) appendix B
        ("1 lbf", "force", "N", 4.4482216152605),  # exact, the same
        ("1 kgf", "force", "N", 9.80665),  # exact, the same
        ("212 F", "temperature", "C", 100.0),  # boiling point of water, definition of the scales
        ("-40 F", "temperature", "C", -40.0),
        ("5 min", "time", "s", 300.0),
        ("360 mV", "voltage", "V", 0.36),
        ("2 Mohm", "resistance", "ohm", 2e6),
        ("2 mohm", "resistance", "ohm", 2e-3),
        ("1 hp", "power", "W", 550 * 0.3048 * 4.4482216152605),  # NIST SP 811: 550 ft lbf/s
    ],
)
def test_converts(text: str, dimension: str, unit: str, value: float) -> None:
    assert read_quantity(text, dimension, unit).value == pytest.approx(value, rel=1e-9)


@pytest.mark.parametrize(
    ("text", "unit", "low", "high"),
    [
        ("1.30 A ±(2%+5)", "A", 1.30 - 0.076, 1.30 + 0.076),
        ("1.30 A +/-(2%+5)", "A", 1.30 - 0.076, 1.30 + 0.076),
        ("1.3 A ±(2%+5)", "A", 1.3 - 0.526, 1.3 + 0.526),
        ("13 A ±(2%+1)", "A", 13 - 1.26, 13 + 1.26),
        ("1.30 A ±3%", "A", 1.30 - 0.039, 1.30 + 0.039),
        ("1.30 A ±0.05 A", "A", 1.25, 1.35),
        ("1.30 A ±50 mA", "A", 1.25, 1.35),
        ("1.30 A ±(2%+0.05 A)", "A", 1.224, 1.376),
        ("1300 mA ±(2%+5)", "A", 1.300 - 0.031, 1.300 + 0.031),
    ],
)
def test_instrument_error(text: str, unit: str, low: float, high: float) -> None:
    quantity = read_quantity(text, "current", unit)
    assert quantity.low == pytest.approx(low)
    assert quantity.high == pytest.approx(high)


@pytest.mark.parametrize(
    ("error", "says"),
    [
        ("(2%+5", "±(2%+5 has a bracket that is not closed; write ±(2%+5)"),
        ("( 2% + 0.5 A ", "has a bracket that is not closed; write ±( 2% + 0.5 A)"),
        ("2%+5)", "±2%+5) has a bracket that was never opened; write ±(2%+5)"),
        ("2%+5", "±2%+5 needs its brackets; write ±(2%+5)"),
        ("(2%)", "±(2%) has brackets and not two errors in them; write ±2%"),
        ("(2%", "write ±2%"),
    ],
)
def test_brackets_of_a_meters_error(error: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read_quantity(f"1.30 A ±{error}", "current", "A")
    assert says in str(caught.value)


def test_error_of_a_temperature_is_a_difference() -> None:
    quantity = read_quantity("212 F ±9 F", "temperature", "C")
    assert (quantity.low, quantity.high) == (pytest.approx(95.0), pytest.approx(105.0))
    assert read_quantity("60 C ±3.6 F", "temperature", "C").high == pytest.approx(62.0)


@pytest.mark.parametrize("length", [80, 81])
def test_the_longest_text_that_is_read(length: int) -> None:
    text = "1 A".rjust(length)
    if length == 80:
        assert read_quantity(text, "current", "A").value == 1.0
    else:
        with pytest.raises(BadText) as caught:
            read_quantity("x" * length, "current", "A")
        assert str(caught.value).startswith(f"{'x' * 20!r}... is longer than any quantity")


def test_an_error_of_no_counts_and_of_no_percent() -> None:
    assert read_quantity("1.30 A ±(2%+0)", "current", "A")[1:3] == (
        pytest.approx(1.274),
        pytest.approx(1.326),
    )
    assert read_quantity("1.30 A ±0%", "current", "A")[1:3] == (1.30, 1.30)


def test_an_error_of_a_negative_reading_is_as_wide() -> None:
    quantity = read_quantity("-10 C ±10%", "temperature", "C")
    assert (quantity.low, quantity.high) == (pytest.approx(-11.0), pytest.approx(-9.0))
    assert read_quantity("−10.0 C ±(0%+5)", "temperature", "C").low == pytest.approx(-10.5)


def test_a_difference_of_temperatures_has_no_zero_of_its_own() -> None:
    """18 F apart are 10 K apart, by the definition of the scales."""
    assert read_quantity("18 F", "temperature difference", "K").value == pytest.approx(10.0)
    assert read_quantity("10 K", "temperature difference", "F").value == pytest.approx(18.0)
    assert read_quantity("10 C", "temperature difference", "K").value == 10.0


def test_reading_without_error_has_no_band() -> None:
    assert read_quantity("1.3 A", "current", "A").low is None


@pytest.mark.parametrize(
    ("text", "dimension", "unit", "says"),
    [
        ("24", "force", "lbf", "write 24 lbf (or N, kgf, ozf)"),
        ("24 lb", "force", "lbf", "pounds of pull are lbf"),
        ("5 kg", "force", "lbf", "kilograms of pull are kgf"),
        ("24 mm", "force", "lbf", "a unit of length"),
        ("5 m", "time", "s", "minutes are min"),
        ("1,5 mm", "length", "mm", "write a point: 1.5 mm"),
        ("9**9**9 A", "current", "A", "not a plain number"),
        ("1e400 A", "current", "A", "not a plain number"),
        ("nan A", "current", "A", "does not start with a number"),
        ("inf A", "current", "A", "does not start with a number"),
        ("٣ A", "current", "A", "does not start with a number"),
        ("3/0 in", "length", "in", "divides by zero"),
        ("5 MOHM", "resistance", "ohm", "could be Mohm or mohm"),
        ("600 W", "current", "A", "watts are not amps"),
        ("12 KW", "current", "A", "watts are not amps"),
        ("600 w", "current", "A", "watts are not amps"),
        ("24 LB", "force", "lbf", "pounds of pull are lbf"),
        ("12 KW", "voltage", "V", "'KW' is a unit of power, and a voltage is wanted"),
        ("5 k", "resistance", "ohm", "unit 'k' is not known here; write it in ohm"),
        ("1.3 A ±", "current", "A", "says ± and no error"),
        ("1.3 A ±5", "current", "A", "does not say of what"),
        ("1.3 A ±(2%+1.5)", "current", "A", "whole counts"),
        ("1/4 in ±(1%+2)", "length", "in", "a fraction has none"),
        ("1.3 A ±200%", "current", "A", "under 100"),
        ("1.3 A ±-1 A", "current", "A", "negative"),
        ("", "current", "A", "does not start with a number"),
        ("1.3 A ±100%", "current", "A", "write a percentage from 0 to under 100"),
        ("1.3 A ±-1%", "current", "A", "write a percentage from 0 to under 100"),
        ("1.3 A ±1/2%", "current", "A", "write a percentage from 0 to under 100"),
        ("1.3 A ±(2%+ -5)", "current", "A", "whole counts"),
        ("1.3 A ±1/2 A", "current", "A", "fractions are for in, ft, hp"),
        ("1.3 A ±5", "current", "A", "write ±5 A, ±5% or ±(2%+5)"),
        ("1/4 A", "current", "A", "fractions are for in, ft, hp"),
        ("1/4", "length", "mm", "write 1/4 in"),
        ("1/4", "current", "A", "write it as a decimal with its unit"),
        ("35/5 uF", "capacitance", "uF", "a fraction is less than one"),
        ("2/2 in", "length", "in", "a fraction is less than one"),
        ("1,500 A", "current", "A", "write 1.500 A or 1500 A"),
        ("0,500 A", "current", "A", "write a point: 0.500 A"),
        ("1,2345 A", "current", "A", "write a point: 1.2345 A"),
        ("1,500.5 A", "current", "A", "write one number, with a point and no comma"),
        ("1,5 A, 1,6 A", "current", "A", "write one number, with a point and no comma"),
        ("88-108 uF", "capacitance", "uF", "is a range, and this is one value"),
        ("88 uF to 108 uF", "capacitance", "uF", "is a range, and this is one value"),
        ("12 xyzzy", "current", "A", "unit 'xyzzy' is not known here; write it in A, mA, uA"),
        ("12 ampp", "current", "A", "did you mean amp"),
        ("12 F", "current", "A", "'F' is a unit of temperature, and a current is wanted"),
        ("1" * 200 + " A", "current", "A", "longer than any quantity"),
    ],
)
def test_refuses_and_says_what_would_do(text: str, dimension: str, unit: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read_quantity(text, dimension, unit)
    assert says in str(caught.value)


@pytest.mark.parametrize("text", ["5.87747e-39 mm", "1.41e-78 mm", "1e5-2e6 mm"])
def test_an_exponent_is_refused_and_no_attempt_to_explain_it_goes_on_for_ever(text: str) -> None:
    with pytest.raises(BadText, match="not a plain number"):
        Reading("mm", low=0, high=20, text="a wire", typical="1 mm").read(text)
