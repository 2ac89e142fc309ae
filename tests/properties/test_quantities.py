"""Quantities and units: what is typed is what is meant, and any text is read or refused.

The outside comparison is pint's own full registry, which the program does not use.
"""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction
from itertools import permutations

import pint
import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from wirecalc import BadText
from wirecalc.base.rounding import show
from wirecalc.typed.quantities import LONGEST, read_number, read_quantity
from wirecalc.typed.size_ranges import read_size_range
from wirecalc.typed.unit_names import SPELLINGS
from wirecalc.typed.units import converter, read_unit
from wirecalc.typed.wires import read_wire

BOUNDED = settings(deadline=None, max_examples=150)
THOROUGH = settings(deadline=None, max_examples=250)

PAIRS = [
    pytest.param(dimension, one, two, id=f"{dimension}: {one} to {two}")
    for dimension, units in SPELLINGS.items()
    for one, two in permutations(units, 2)
]
UNITS = [(dimension, unit) for dimension, units in SPELLINGS.items() for unit in units]
PINT_WORDS = {  # our unit -> the word of pint's full registry, where they differ
    "lbf": "force_pound",
    "ozf": "force_ounce",
    "kgf": "force_kilogram",
    "ohm/km": "ohm/kilometer",
    "m3/h": "meter**3/hour",
    "ft3/min": "foot**3/minute",
    "nohm m": "nanoohm*meter",
    "uohm cm": "microohm*centimeter",
    "ohm mm2/m": "ohm*millimeter**2/meter",
    "ohm cmil/ft": "ohm*circular_mil/foot",
    "ohm/kft": "ohm/kilofoot",
    "mohm/m": "milliohm/meter",
    "mohm": "milliohm",
    "kohm": "kiloohm",
    "Mohm": "megaohm",
    "um": "micrometer",
    "mm2": "millimeter**2",
    "cmil": "circular_mil",
    "kcmil": "kilocircular_mil",
    "mil": "thou",
    "in": "inch",
    "ft": "foot",
    "uF": "microfarad",
    "nF": "nanofarad",
    "pF": "picofarad",
    "F": "farad",
    "uA": "microampere",
    "min": "minute",
    "h": "hour",
    "%": "percent",
    "hp": "horsepower",
}

numbers = st.floats(-1e6, 1e6, allow_subnormal=False).filter(lambda v: v == 0 or abs(v) > 1e-6)


@pytest.fixture(scope="module")
def full_registry() -> pint.UnitRegistry:
    return pint.UnitRegistry()


@pytest.mark.parametrize(("dimension", "one", "two"), PAIRS)
def test_a_conversion_there_and_back_gives_the_number_again(
    dimension: str, one: str, two: str
) -> None:
    there, back = converter(one, two, dimension), converter(two, one, dimension)

    @settings(deadline=None, max_examples=15)
    @given(numbers)
    def check(value: float) -> None:
        again = back(there(value))
        offset = 1e3 if dimension == "temperature" else 0.0  # its zero points lie apart
        assert math.isclose(again, value, rel_tol=1e-9, abs_tol=1e-9 * offset)

    check()


@pytest.mark.parametrize(("dimension", "one", "two"), PAIRS)
def test_a_conversion_agrees_with_the_full_registry_of_pint(
    full_registry: pint.UnitRegistry, dimension: str, one: str, two: str
) -> None:
    if dimension.startswith("temperature"):
        words = {"C": "degC", "F": "degF", "K": "kelvin"}
        if dimension == "temperature difference":
            words |= {"F": "delta_degF"}
    else:
        words = PINT_WORDS
    theirs = full_registry.Quantity(37.5, words.get(one, one)).to(words.get(two, two)).magnitude
    assert math.isclose(converter(one, two, dimension)(37.5), theirs, rel_tol=1e-9)


@pytest.mark.parametrize(("dimension", "unit"), UNITS)
def test_every_spelling_of_a_unit_is_read_as_that_unit(dimension: str, unit: str) -> None:
    for spelling in (unit, *SPELLINGS[dimension][unit]):
        assert read_unit(spelling, dimension) == unit, spelling


@BOUNDED
@given(
    st.sampled_from(UNITS),
    st.decimals(-1_000_000, 1_000_000, places=6),
    st.integers(0, 6),
    st.sampled_from(["", " ", "  "]),
    st.data(),
)
def test_a_written_number_with_a_unit_is_read_as_the_same_value(
    where: tuple[str, str], number: Decimal, places: int, space: str, data: st.DataObject
) -> None:
    dimension, unit = where
    written = f"{round(number, places):f}"
    spelling = data.draw(st.sampled_from([unit, *SPELLINGS[dimension][unit]]))
    read = read_quantity(written + space + spelling, dimension, unit)
    assert read.value == float(written)
    assert read.low is None


@BOUNDED
@given(st.integers(0, 99), st.integers(0, 998), st.integers(1, 999), st.booleans(), st.booleans())
def test_a_fraction_is_the_quotient_that_it_shows(
    whole: int, top: int, bottom: int, mixed: bool, negative: bool
) -> None:
    top %= bottom  # less than one
    text = f"{whole} {top}/{bottom}" if mixed else f"{top}/{bottom}"
    exact = Fraction(top, bottom) + (whole if mixed else 0)
    read = read_quantity(f"{'-' if negative else ''}{text} in", "length", "in")
    assert math.isclose(read.value, float(-exact if negative else exact), rel_tol=1e-15)


@BOUNDED
@given(st.decimals(-273, 500, places=2), st.sampled_from("-−"))
def test_a_temperature_below_zero_keeps_its_sign(number: Decimal, minus: str) -> None:
    text = f"{number:f}".replace("-", minus) + " C"
    kelvin = read_quantity(text, "temperature", "K").value
    assert math.isclose(kelvin, float(number + Decimal("273.15")), rel_tol=1e-9, abs_tol=1e-9)


errors = st.one_of(
    st.integers(0, 99).map(lambda p: f"{p}%"),
    st.tuples(st.integers(0, 9), st.integers(0, 50)).map(lambda p: f"({p[0]}%+{p[1]})"),
    st.decimals(0, 999, places=3).map(lambda a: f"{a:f} @"),
    st.tuples(st.integers(0, 9), st.decimals(0, 9, places=2)).map(lambda p: f"({p[0]}%+{p[1]} @)"),
)


@THOROUGH
@given(st.sampled_from(UNITS), st.decimals(-1000, 1000, places=3), errors, st.data())
def test_a_band_contains_its_value_and_is_as_wide_on_either_side(
    where: tuple[str, str], number: Decimal, error: str, data: st.DataObject
) -> None:
    dimension, unit = where
    assume(dimension != "ratio" or "@" not in error)  # percent is that of the reading
    wanted = data.draw(st.sampled_from(list(SPELLINGS[dimension])))
    mark = data.draw(st.sampled_from(["±", " ± ", "+/-", "+-"]))
    text = f"{number:f} {unit}{mark}{error.replace('@', unit)}"
    read = read_quantity(text, dimension, wanted)
    assert read.low is not None
    assert read.high is not None
    assert read.low <= read.value <= read.high
    reach = max(abs(read.low), abs(read.high), 1e3 if dimension == "temperature" else 0.0)
    assert math.isclose(read.value - read.low, read.high - read.value, abs_tol=1e-9 * reach)


@BOUNDED
@given(st.decimals(0, 100, places=2), st.integers(0, 20), st.integers(0, 20))
def test_the_meter_form_is_percent_of_reading_and_counts_of_the_last_digit(
    number: Decimal, percent: int, counts: int
) -> None:
    read = read_quantity(f"{number} A ±({percent}%+{counts})", "current", "A")
    off = number * percent / 100 + counts * Decimal("0.01")
    assert read.high is not None
    assert math.isclose(read.high, float(number + off), rel_tol=1e-12, abs_tol=1e-12)


VALID = (
    "24 lbf",
    "1/4 in",
    "1 1/2 in",
    "-18 C",
    "1.30 A ±(2%+5)",
    "8.70 A +/-0.05 A",
    "8.7 A ±3%",
    "18AWG stranded tinned copper",
    "26x30 AWG",
    "41x0.254 mm",
    "2/0 AWG",
    "1.5 mm2",
    "16-14 AWG",
    "2050-5180 cmil",
)
PIECES = (*"0123456789 ./+-±%()xX×*eE^µΩ°²\0\n\t,٣–#", "AWG", "nan", "inf", "mm", "1e400", "9**9")
anything = st.text(max_size=100) | st.lists(st.sampled_from(PIECES), max_size=60).map("".join)


@st.composite
def mutated(draw: st.DrawFn) -> str:
    text = draw(st.sampled_from(VALID))
    for _ in range(draw(st.integers(1, 3))):
        at = draw(st.integers(0, len(text)))
        cut = draw(st.integers(0, 3))
        text = text[:at] + draw(st.sampled_from(PIECES) | st.text(max_size=2)) + text[at + cut :]
    return text


@THOROUGH
@given(anything | mutated(), st.sampled_from(UNITS))
@example("9**9**9 A", ("current", "A"))
@example("1" * 79 + "A", ("current", "A"))
@example("1/" + "0" * 70 + " A", ("current", "A"))
@example("1 A ±" + "9" * 70 + "%", ("current", "A"))
def test_any_text_is_a_finite_quantity_or_is_refused(text: str, where: tuple[str, str]) -> None:
    try:
        read = read_quantity(text, *where)
    except BadText as error:
        assert error.wrong
        return
    assert len(text) <= LONGEST
    assert math.isfinite(read.value)
    assert (read.low is None) == (read.high is None)
    if read.low is not None and read.high is not None:
        assert math.isfinite(read.low)
        assert read.low <= read.value <= read.high


@THOROUGH
@given(anything | mutated())
def test_any_text_is_a_number_or_is_refused(text: str) -> None:
    try:
        number, rest = read_number(text)
    except BadText:
        return
    assert math.isfinite(number.value)
    assert number.step is None or 0 < number.step <= 1
    assert text.strip().endswith(rest)


@THOROUGH
@given(anything | mutated())
@example("0x30 AWG")
@example("9" * 75 + " mm2")
@example("00000 AWG")
def test_any_text_is_a_wire_or_is_refused(text: str) -> None:
    try:
        wire = read_wire(text)
    except BadText:
        return
    assert 0 < wire.area_cmil < math.inf


@THOROUGH
@given(anything | mutated())
@example("1.5.2-3 mm2")
@example("1/0-2/0/0 AWG")
@example("0-0 cmil")
def test_any_text_is_a_range_of_wire_size_or_is_refused(text: str) -> None:
    try:
        size = read_size_range(text)
    except BadText:
        return
    assert 0 < size.low_cmil <= size.high_cmil < math.inf


@THOROUGH
@given(st.floats(allow_nan=False, allow_infinity=False), st.sampled_from(["up", "down", ""]))
@example(1e28, "")
def test_any_finite_number_can_be_shown_and_is_rounded_toward_its_side(
    value: float, toward: str
) -> None:
    shown = Decimal(show(value, toward=toward))
    noise = abs(Decimal(value)) * Decimal("1e-11")  # what is dropped as noise of the arithmetic
    if toward == "up":
        assert shown >= Decimal(value) - noise
    if toward == "down":
        assert shown <= Decimal(value) + noise
