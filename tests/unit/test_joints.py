"""Calculations of a joint agree with each other."""

from __future__ import annotations

import wirecalc


def test_heat_rating_judges_as_splice_does() -> None:
    for wire, place in ((105, 80), (105, 85), (105, 86), (150, 90)):
        given = {"wire_temperature": f"{wire} C", "terminal_temperature": "150 C"}
        given |= {"place_temperature": f"{place} C"}
        other = wirecalc.run("splice", wire=["16 AWG"], barrel="16-14 AWG", **given)
        assert wirecalc.run("heat-rating", **given).verdict == other.verdict
