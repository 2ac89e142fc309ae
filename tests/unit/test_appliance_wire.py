"""The tables of appliance wire hold what they say of themselves under `checked`."""

from __future__ import annotations

import math

import pytest

from wirecalc import tables


def test_maker_is_above_the_aircraft_value_wherever_both_stand():
    table = tables.load("appliance-wire")
    both = 0
    for row in table.where(basis="aircraft bundle"):
        key = {"awg": row.cells["awg"], "conductor_C": row.cells["conductor_C"]}
        other = table.find(basis="wire maker", **key)
        if other is not None:
            both += 1
            assert other.number("current_A") > row.number("current_A")
    assert both == 24


def test_makers_factors_against_the_square_root_law():
    # sqrt((conductor - place) / (conductor - 30)), the law of heat loss in proportion to the rise
    off = []
    for row in tables.load("appliance-wire-ambient").rows:
        rating, place = row.number("conductor_C"), row.number("ambient_C")
        off.append(row.number("factor") - math.sqrt((rating - place) / (rating - 30)))
    assert min(off) == pytest.approx(-0.147, abs=5e-4)
    assert max(off) == pytest.approx(0.044, abs=5e-4)
