"""Numbers as shown: four digits, limits toward safety, never flattering."""

import pytest

from wirecalc.base.rounding import show, show_band, show_pair


@pytest.mark.parametrize(
    ("value", "toward", "text"),
    [
        (20.0, "", "20"),
        (20.000000000000004, "up", "20"),
        (88.9644, "up", "88.97"),
        (88.9644, "down", "88.96"),
        (0.26574, "", "0.2657"),
        (12345.6, "", "12346"),
        (-18.0, "", "-18"),
        (-0.00001, "down", "-0.00001"),
        (0.0, "", "0"),
        (0.999996, "down", "0.9999"),
        (0.999996, "up", "1"),
    ],
)
def test_show(value: float, toward: str, text: str) -> None:
    assert show(value, toward=toward) == text


def test_show_adds_the_unit() -> None:
    assert show(1.5, "mm2") == "1.5 mm2"


def test_pair_never_looks_equal_when_it_is_not() -> None:
    assert show_pair(19.99999, 20.0, "lbf", "up") == ("19.99999 lbf", "20 lbf")
    assert show_pair(20.00001, 20.0, "lbf", "up") == ("20.00001 lbf", "20 lbf")
    assert show_pair(14.99999, 15.0, "A", "down") == ("14.99999 A", "15 A")


def test_pair_of_equal_values_is_short() -> None:
    assert show_pair(15.0, 15.0, "A", "down") == ("15 A", "15 A")


def test_pair_rounds_the_actual_value_to_the_nearest() -> None:
    actual, limit = show_pair(19.23456, 20.0, "lbf", "up")
    assert (actual, limit) == ("19.23 lbf", "20 lbf")
    assert show_pair(11.15544, 15.0, "A", "down")[0] == "11.16 A"


def test_band_rounds_outward() -> None:
    assert show_band(8.47611, 8.92389, "A") == "8.476 to 8.924 A"
