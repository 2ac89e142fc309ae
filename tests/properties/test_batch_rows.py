"""A row of a batch comes to the finding of a single run with the same texts."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc.base.errors import BadInput
from wirecalc.engine.merged_finding import Outcome
from wirecalc.jobs import batch, batch_columns, batch_row
from wirecalc.jobs.batch_rows import RawRow

CATALOGUE = wirecalc.build(bundled_only=True)
BOUNDED = settings(deadline=None, max_examples=60)
errors = st.sampled_from(["", " ±3%", " ±(2%+5)", " ±0.5 lbf"])
forces = st.builds(lambda v, e: f"{v:.2f} lbf{e}", st.floats(0, 60), errors)
wires = st.sampled_from(
    ["18 AWG", "16 AWG solid", "1.5 mm2", "26x30 AWG", "unknown", "19 AWGG", ""]
)
terminals = st.sampled_from(["ring", "push-on", "butt", "clamp", "rong", ""])
cells = st.tuples(wires, terminals, forces | st.sampled_from(["", "unknown", "24", "107 N"]))


def _same(name: str, row: batch_row.RowResult, inputs: dict[str, Any]) -> None:
    try:
        alone = CATALOGUE.run(name, inputs, origin="sheet")
    except BadInput as error:
        assert row.found.problems == error.problems
        assert row.found.made is None
    else:
        assert row.found.made is not None
        of_both = [_plain(f) for f in (row.found.made, alone)]
        assert of_both[0] == of_both[1]


def _worker(name: str, planned: batch_columns.Plan) -> Any:
    return batch.Worker(CATALOGUE.outcomes(name, origin="sheet"), planned, Outcome.finding)


def _plain(finding: wirecalc.Finding) -> Any:
    """Return a finding without its functions, which differ from run to run."""
    from wirecalc.output.json import finding_object

    return finding_object(finding, working=True)


@BOUNDED
@given(st.lists(cells, min_size=1, max_size=6))
def test_a_row_is_the_single_run(rows: list[tuple[str, str, str]]) -> None:
    names = ["wire", "terminal", "force"]
    planned = batch_columns.plan(CATALOGUE.calculations["pull"].calculation, names, {})
    raw = [RawRow(i, list(row)) for i, row in enumerate([*rows, *rows], start=2)]
    worker = _worker("pull", planned)
    for found, row in zip(batch.results(worker, raw), [*rows, *rows], strict=True):
        _same("pull", found, {n: c for n, c in zip(names, row, strict=True) if c})


@BOUNDED
@given(st.floats(0.05, 30), st.integers(1, 300), st.booleans())
def test_a_header_unit_is_the_unit_of_its_cells(current: float, length: int, shared: bool) -> None:
    head = ["current [A]", "run_length (ft)", "nameplate_voltage"]
    row = [f"{current:.3f} ±(2%+5)", str(length), "115 V"]
    typed = {"current": f"{current:.3f} A ±(2%+5)", "run_length": f"{length} ft"}
    fixed: dict[str, Any] = {"building_wire": "14 AWG"}
    if shared:
        head, row = head[:2], row[:2]
        fixed["nameplate_voltage"] = "115 V"
    planned = batch_columns.plan(CATALOGUE.calculations["drop"].calculation, head, fixed)
    (found,) = batch.results(_worker("drop", planned), [RawRow(2, row)])
    _same("drop", found, {**typed, "building_wire": "14 AWG", "nameplate_voltage": "115 V"})


@pytest.mark.parametrize("name", ["pull", "drop", "breaker", "splice", "strip"])
@BOUNDED
@given(texts=st.lists(st.text(max_size=12), min_size=1, max_size=4))
def test_no_text_in_a_cell_breaks_a_batch(name: str, texts: list[str]) -> None:
    calc = CATALOGUE.calculations[name].calculation
    names = [i.name for i in calc.inputs]
    planned = batch_columns.plan(calc, names, {})
    rows = [RawRow(2, [text.strip() for _ in names]) for text in texts]
    found = [row.found for row in batch.results(_worker(name, planned), rows)]
    assert len(found) == len(texts)
    assert all(f.made or f.problems for f in found)
