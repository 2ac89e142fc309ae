"""Whose limit a point of a breaker or fuse is: a standard's, its maker's, or practice."""

from __future__ import annotations

import pytest

from wirecalc import PRACTICE, tables
from wirecalc.trade import overcurrent
from wirecalc_plugins.overcurrent.must_trip import origin_of


@pytest.mark.parametrize("table", ["breaker-ul489", "breaker-iec60898", "fuses-ul248"])
def test_a_point_of_a_standard_is_its_own_and_no_makers(table: str) -> None:
    sources = {row.source for row in tables.load(table).rows} - {PRACTICE}
    assert {str(origin_of(source)) for source in sources} == {"standard"}


def test_a_point_of_a_typed_curve_is_the_makers() -> None:
    assert str(origin_of(overcurrent.CURVE)) == "maker"
    assert str(origin_of(PRACTICE)) == "practice"
