"""One step each side of a limit: the verdict there, worked out by hand from the source named.

The rows stand in `steps/`, a file a part of the trade.
"""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import BadInput

from .records import case_file

FOLDER = Path(__file__).parent / "steps"
KEYS = {"calculation", "criterion", "input", "steps", "limit", "source"}
STEPS = [
    pytest.param(row, id=f"{row['calculation']}: {row['criterion']}, {row['limit']}"[:100])
    for path in sorted(FOLDER.glob("*.toml"))
    for row in tomllib.loads(path.read_text(encoding="utf-8"))["step"]
]


def _verdict(row: dict[str, Any], typed: str) -> str:
    """Return what the criterion says of this step, or `refused`, or `not judged`."""
    calculation = wirecalc.build(bundled_only=True).calculations[row["calculation"]].calculation
    given = {**calculation.example_inputs, **row.get("given", {})}
    given[row["input"]] = [typed] if calculation.input(row["input"]).many else typed
    try:
        finding = wirecalc.run(row["calculation"], **{k: v for k, v in given.items() if v != ""})
    except BadInput as error:
        return f"refused: {error}" if "refused" not in [v for _, v in row["steps"]] else "refused"
    judged = [c for c in finding.criteria if c.criterion.name == row["criterion"]]
    return str(judged[0].verdict) if judged else "not judged"


@case_file("tests/published/steps")
@pytest.mark.parametrize("row", STEPS)
def test_a_step_each_side_of_a_limit(row: dict[str, Any]) -> None:
    found = [[typed, _verdict(row, typed)] for typed, _ in row["steps"]]
    assert found == row["steps"]


@case_file("tests/published/steps")
@pytest.mark.parametrize("row", STEPS)
def test_a_row_says_its_limit_and_its_source(row: dict[str, Any]) -> None:
    assert set(row) - {"given"} == KEYS
    assert len({verdict for _, verdict in row["steps"]}) > 1
