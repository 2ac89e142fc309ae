"""Temperatures that are read several times: a worse thermometer never gives a better verdict."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.properties.runs import rank
from wirecalc import Verdict, run

BOUNDED = settings(deadline=None, max_examples=15)
KELVIN = st.floats(0.05, 3.0)
SURE = (Verdict.PASS, Verdict.MARGINAL)


def listed(values: list[float], error: float) -> list[str]:
    return [f"{v:.4f} C ±{error:.4f} C" for v in values]


def oven(middle: float, error: float) -> dict[str, object]:
    highs, lows = [middle + 10, middle + 11, middle + 9], [middle - 10] * 3
    return {
        "oven_setting": "177 C",
        "oven_high": listed(highs, error),
        "oven_low": listed(lows, error),
        "mean_tolerance": "14 K",
        "most_swing": "21.5 K",
    }


def fall(end: float, error: float) -> dict[str, object]:
    values = [end + 20 * 0.6**n for n in range(6)]
    return {
        "reading_time": [f"{n} h" for n in range(6)],
        "reading_temperature": listed(values, error),
        "target_temperature": "5 C",
        "due_time": "8 h",
    }


@pytest.mark.parametrize(
    ("name", "typed", "near"), [("oven-swing", oven, (160, 195)), ("pull-down", fall, (1, 7))]
)
def test_a_worse_thermometer_never_betters_a_verdict(
    name: str, typed: object, near: tuple[int, int]
) -> None:
    @BOUNDED
    @given(st.floats(*near), KELVIN, KELVIN)
    def check(value: float, one: float, two: float) -> None:
        assert callable(typed)
        good, bad = (run(name, **typed(value, e)) for e in sorted((one, two)))
        if bad.verdict in SURE:
            assert rank(good) <= rank(bad)
        if bad.verdict is Verdict.FAIL:
            assert good.verdict is Verdict.FAIL

    check()
