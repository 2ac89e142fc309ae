"""What drop says of a run that is known in part."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import Verdict


def drop(**given: str | None) -> wirecalc.Finding:
    typed: dict[str, str | None] = {
        "current": "1.6 A",
        "nameplate_voltage": "115 V",
        "building_wire": "14 AWG",
    }
    typed |= {"run_length": "60 ft"} | given
    return wirecalc.run("drop", **{n: v for n, v in typed.items() if v is not None})


@pytest.mark.parametrize(
    ("given", "needs"),
    [
        ({"run_length": None}, ("run_length",)),
        ({"cord": "16 AWG"}, ("cord_length",)),
        ({"building_wire": "12 AWG cca"}, ()),
    ],
)
def test_what_is_not_known_is_no_pass(given: dict[str, str | None], needs: tuple[str, ...]) -> None:
    found = drop(**given)
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.criterion("drop while running").criterion.needs == needs


def test_unknown_wire_is_no_refusal() -> None:
    assert drop(building_wire="unknown").verdict is Verdict.CANNOT_TELL
