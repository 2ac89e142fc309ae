"""What would do names other inputs as a person knows them: typed, they are options."""

from __future__ import annotations

import pytest

from wirecalc import build
from wirecalc.base.errors import BadInput

CATALOGUE = build(bundled_only=True)


@pytest.mark.parametrize(
    ("name", "given", "typed", "on_a_sheet"),
    [
        ("element", {"element_resistance": "OL"}, "--element-open yes", "element_open yes"),
        ("windings", {"reading_1_2": "OL"}, "is --open-pin", "is open_pin"),
        ("inrush", {"peak": "30 A peak"}, "as --meter-mode", "as meter_mode"),
        ("capacitor", {"marked_capacitance": "88-108 uF"}, "as --marked-high", "as marked_high"),
    ],
)
def test_other_inputs_are_named_as_they_are_given(
    name: str, given: dict[str, str], typed: str, on_a_sheet: str
) -> None:
    for origin, says in (("typed", typed), ("sheet", on_a_sheet)):
        with pytest.raises(BadInput) as caught:
            CATALOGUE.run(name, given, origin=origin)
        said = next(
            p.would_do for p in caught.value.problems if next(iter(given)) in _plain(p.name)
        )
        assert says in said
        assert ("--" in said) == (origin == "typed")


def _plain(name: str) -> str:
    return name.lstrip("-").replace("-", "_")
