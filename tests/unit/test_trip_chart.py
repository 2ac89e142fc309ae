"""The chart of a breaker or fuse: its areas are named for what is known of the device."""

from __future__ import annotations

import pytest

from wirecalc.trade import overcurrent
from wirecalc_plugins.overcurrent.chart import _areas, _band


def test_the_three_areas_of_a_breaker_lie_where_they_are() -> None:
    """UL 489: 15 A holds its rating; a sure trip lies at 135 % within the hour and above."""
    device = overcurrent.device("ul-489", 15.0)
    names = {one.text: one.x for one in _areas(device, 20.0)}
    assert list(names) == ["holds", "may trip", "trips"]
    assert names["holds"] < 15.0 < names["may trip"] < names["trips"]


def test_a_device_of_which_nothing_is_confirmed_has_one_area() -> None:
    device = overcurrent.device("ul-489", 15.0)._replace(holds=(), trips=())
    assert [one.text for one in _areas(device, 20.0)] == ["nothing confirmed: cannot tell"]
    assert _band(device, 20.0, 0.01).name == "not known"


def test_the_band_of_a_device_holds_to_its_rating_and_no_further() -> None:
    """Each level stands just below and just above its step."""
    device = overcurrent.device("ul-489", 15.0)
    band = _band(device, 20.0, 0.01)
    assert len(band.x) == len(band.low) == len(band.high)
    below = max(x for x in band.x if x < 15.0)
    above = min(x for x in band.x if x > 15.0)
    assert (below, above) == (pytest.approx(15.0, rel=2e-6), pytest.approx(15.0, rel=2e-6))
    assert band.low[band.x.index(below)] > band.low[band.x.index(above)]
