"""Rows of a file, and what they come to, without a command line."""

from __future__ import annotations

import tracemalloc
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.base.errors import BadInput, BadText
from wirecalc.jobs import batch, batch_columns
from wirecalc.jobs.batch_rows import RawRow, RowsFile
from wirecalc.said.findings import Finding

CATALOGUE = wirecalc.build(bundled_only=True)
PULL = CATALOGUE.calculations["pull"].calculation
HEAD = ["wire", "terminal", "force"]


def rows_of(path: Path, text: str) -> list[RawRow]:
    path.write_bytes(text.encode())
    return list(RowsFile(str(path)).rows())


def test_rows_are_numbered_as_a_spreadsheet_does(tmp_path: Path) -> None:
    found = rows_of(tmp_path / "a.csv", "a,b\n1,2\n\n , \n3,4\n5\n")
    assert [(r.number, r.cells, bool(r.wrong)) for r in found] == [
        (2, ["1", "2"], False),
        (5, ["3", "4"], False),
        (6, ["5"], True),
    ]


def test_an_open_quote_spoils_its_own_row_only(tmp_path: Path) -> None:
    found = rows_of(tmp_path / "a.csv", 'a,b\n"1,2\n3,"4, ""5"""\n')
    assert [bool(r.wrong) for r in found] == [True, False]
    assert found[1].cells == ["3", '4, "5"']


def test_a_file_of_one_endless_line_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "a.csv"
    path.write_bytes(b"x" * 3_000_000)
    with pytest.raises(BadText):
        RowsFile(str(path))


@pytest.mark.parametrize(
    ("cell", "head", "given"),
    [
        ("24.10", "force [N]", "24.10 N"),
        ("24.10 ±(2%+5)", "force (N)", "24.10 N ±(2%+5)"),
        ("24.10 +/-3%", "force_newton", "24.10 N ±3%"),
        ("1/4", "force [lbf]", "1/4 lbf"),
        ("unknown", "force [N]", "unknown"),
        (">999", "force [N]", ">999 N"),
        ("24.10 N", "force", "24.10 N"),
    ],
)
def test_a_cell_as_it_would_be_typed(cell: str, head: str, given: str) -> None:
    planned = batch_columns.plan(PULL, [*HEAD[:2], head], {})
    (force,) = (c for c in planned.columns if c.name == "force")
    assert force.given(cell) == given


def test_a_longer_name_is_not_taken_for_a_unit() -> None:
    """`wire_temperature` and `current_error` are names; `force_after` is no unit of force."""
    with pytest.raises(BadInput, match="column force_after: pull has no such input"):
        batch_columns.plan(PULL, [*HEAD, "force_after"], {})
    planned = batch_columns.plan(PULL, [*HEAD, "force_after"], {}, keep=["Force_After"])
    assert planned.kept == {"force_after": 3}


def test_equal_rows_are_worked_out_once() -> None:
    given = []

    def run(inputs: Any) -> Finding:
        given.append(inputs)
        return wirecalc.run("pull", **inputs)

    planned = batch_columns.plan(PULL, [*HEAD, "n"], {}, label="n")
    cells = ("18 AWG", "ring", "24 lbf")
    rows = [RawRow(i, [*cells, str(i)]) for i in range(2, 6)]
    found = list(batch.results(batch.Worker(run, planned, lambda finding: finding), rows))
    assert len(given) == 1
    assert [f.label for f in found] == ["2", "3", "4", "5"]
    assert all(f.found.made is found[0].found.made for f in found)


def test_a_file_in_a_cell_is_read_for_each_row(tmp_path: Path) -> None:
    path = tmp_path / "pulls.csv"
    calc = CATALOGUE.calculations["pull-batch"].calculation
    planned = batch_columns.plan(calc, ["wire", "terminal", "readings"], {})
    run = CATALOGUE.runner("pull-batch", origin="sheet")
    worker = batch.Worker(run, planned, lambda finding: finding)
    figures = []

    def rows() -> Iterator[RawRow]:
        for number, least in enumerate((24, 30), start=2):
            forces = "".join(f"{least + i / 10}\n" for i in range(6))
            path.write_text(f"force_lbf\n{forces}")
            yield RawRow(number, ["18 AWG", "ring", str(path)])

    for _, _, _, found in batch.results(worker, rows()):
        assert found.made is not None, found.problems
        figures.append(found.made.figures[0].figure.value)
        figures.append(str(found.made.inputs))
    assert figures[:2] != figures[2:]


def test_memory_is_bounded_where_every_row_differs() -> None:
    finding = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    planned = batch_columns.plan(PULL, HEAD, {})

    def peak(rows: int) -> int:
        given = (RawRow(i, ["18 AWG", "ring", f"{i} lbf"]) for i in range(rows))
        tracemalloc.start()
        worker = batch.Worker(lambda _: finding, planned, lambda _: "a line", most=1_000)
        for _ in batch.results(worker, given):
            pass
        most = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return most

    few, many = peak(5_000), peak(20_000)
    assert many < 1.3 * few
