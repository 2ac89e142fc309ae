"""From where to where a number may be typed: the smallest step beyond is refused.

The rows of `spans.toml` say why for each name of an input, the trial of a calculation for those
that it alone asks for.
"""

from __future__ import annotations

import functools
import tomllib
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from tests.calculations.trials import TRIALS
from wirecalc.base.errors import BadText
from wirecalc.engine.inputs import Input

FILE = Path(__file__).with_name("spans.toml")
ROWS = tomllib.loads(FILE.read_text(encoding="utf-8"))["span"]
ROWS += [
    {"names": [name], "over" if span.over else "from": span.low, "to": span.high, "why": span.why}
    for trial in TRIALS.values()
    for name, span in trial.spans.items()
]
SPANS: dict[str, dict[str, Any]] = {name: row for row in ROWS for name in row["names"]}


@functools.cache
def _declared() -> dict[str, list[Input]]:
    """Return the numbers that the bundled calculations ask for, by name."""
    found: dict[str, list[Input]] = {}
    for plugged in wirecalc.build(bundled_only=True).calculations.values():
        for one in plugged.calculation.inputs:
            if isinstance(one.kind, wirecalc.Reading | wirecalc.Nameplate | wirecalc.Count):
                found.setdefault(one.name, []).append(one)
    return found


def _beyond(typed: str, sign: int) -> str:
    """Return a typed number by one in its last digit, away from the span."""
    number, _, unit = typed.partition(" ")
    value = Decimal(number)
    step = Decimal(1).scaleb(int(value.as_tuple().exponent))
    return f"{value + sign * step:f} {unit}".strip()


def _is_taken(one: Input, typed: str) -> bool:
    try:
        one.kind.read(typed)
    except BadText:
        return False
    return True


def test_each_number_has_its_span() -> None:
    assert set(SPANS) == set(_declared())
    assert len(SPANS) == sum(len(row["names"]) for row in ROWS)


@pytest.mark.parametrize("name", SPANS)
def test_a_number_is_taken_up_to_its_ends_and_no_further(name: str) -> None:
    row = SPANS[name]
    for one in _declared()[name]:
        ends = [row["to"]]
        beyond = [_beyond(row["to"], 1)]
        if "over" in row or getattr(one.kind, "not_zero", ""):
            beyond.append(row.get("over") or row["from"])
            ends += [row["to"].replace(row["to"].split()[0], "0.5")]
        else:
            ends.append(row["from"])
            beyond.append(_beyond(row["from"], -1))
        assert [typed for typed in ends if not _is_taken(one, typed)] == []
        assert [typed for typed in beyond if _is_taken(one, typed)] == []


def test_an_insulation_is_typed_in_kohm_and_a_slip_of_mohm_is_asked_about() -> None:
    """A damp heater reads a few hundred kohm, and a dead short a few ohm; mohm is for Mohm."""
    (resistance,) = _declared()["insulation_resistance"]
    assert resistance.kind.read("300 kohm").value == 0.3
    assert resistance.kind.read("1 ohm").value == 1e-6
    for slip in ("300 mohm", "999 mohm"):
        with pytest.raises(BadText, match="which unit was meant"):
            resistance.kind.read(slip)
