"""Many runs of a calculation in a script."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

import wirecalc
from wirecalc.jobs.many_runs import runs

PULL = {"wire": "18 AWG", "terminal": "ring"}


def test_rows_come_to_what_each_comes_to_by_itself() -> None:
    rows = [{**PULL, "force": force} for force in ("24 lbf", "17 lbf", "20.3 lbf ±0.5 lbf")]
    found = list(wirecalc.run_many("pull", rows))
    alone = [wirecalc.run("pull", **row) for row in rows]
    assert [f.criteria for f in found if isinstance(f, wirecalc.Finding)] == [
        f.criteria for f in alone
    ]
    assert [f.verdict for f in alone] == ["pass", "fail", "cannot tell"]


def test_a_refused_row_is_told_and_the_rest_goes_on() -> None:
    rows = [
        {**PULL, "force": "24,1 lbf"},
        {"wire": ["18 AWG", "16 AWG"]},
        {**PULL, "force": "24 lbf"},
    ]
    comma, several, good = wirecalc.run_many("pull", rows)
    assert isinstance(comma, wirecalc.BadInput)
    assert comma.problems[0].name == "--force"
    assert isinstance(several, wirecalc.BadInput)
    assert isinstance(good, wirecalc.Finding)


def test_nothing_is_taken_before_it_is_asked_for() -> None:
    taken = []

    def rows() -> Iterator[dict[str, object]]:
        for force in ("24 lbf", "17 lbf"):
            taken.append(force)
            yield {**PULL, "force": force}

    found = wirecalc.run_many("pull", rows())
    assert taken == []
    next(found)
    assert taken == ["24 lbf"]


def test_an_unknown_name_is_refused_at_once() -> None:
    with pytest.raises(wirecalc.BadInput, match="pull"):
        wirecalc.run_many("pul", [])


def test_equal_rows_are_worked_out_once_and_files_each_time(tmp_path: Path) -> None:
    catalogue = wirecalc.build(bundled_only=True)
    row = {**PULL, "force": "24 lbf"}
    pull = catalogue.calculations["pull"].calculation
    first, second = runs(pull, catalogue.runner("pull"), [row, dict(row)])
    assert first is second
    path = tmp_path / "forces.csv"
    batch = catalogue.calculations["pull-batch"].calculation
    shown = []

    def rows() -> Iterator[dict[str, object]]:
        for least in (24, 30):
            path.write_text("force_lbf\n" + "".join(f"{least + n / 10}\n" for n in range(6)))
            yield {**PULL, "readings": str(path)}

    for found in runs(batch, catalogue.runner("pull-batch"), rows()):
        assert isinstance(found, wirecalc.Finding)
        shown.append(found.figures[0].figure.value)
    assert shown[0] != shown[1]
