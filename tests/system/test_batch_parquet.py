"""A batch as Parquet: the cells of its CSV with their kinds, and part files to go on from."""

from __future__ import annotations

import csv
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from wirecalc.output import batch_parquet

pytest.importorskip("pyarrow")
from pyarrow import parquet

Cli = Callable[..., Any]
FORCES = (
    "17 lbf",
    "24 lbf",
    "24 lbf ±3%",
    "unknown",
    "107 N",
    "rong",
    "23,1 lbf",
    "60 lbf",
    "21 lbf",
)


@pytest.fixture
def rows(tmp_path: Path) -> Path:
    path = tmp_path / "rows.csv"
    lines = [f"{i};tool {i % 2};18 AWG;ring;{force}" for i, force in enumerate(FORCES)]
    path.write_text("\n".join(["part;tool;wire;terminal;force", *lines, ""]), encoding="utf-8")
    return path


@pytest.fixture
def small_parts(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(batch_parquet, "PART_ROWS", 2)


def words(rows: Path, target: Path, *more: str) -> tuple[str, ...]:
    return ("batch", "pull", str(rows), "--label", "part", "--keep", "tool", "--format",
            "parquet", "--output", str(target), *more)  # fmt: skip


def names_in(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def full(*_: object) -> None:
    raise OSError(28, "full")


def test_it_has_the_cells_of_the_csv(cli_main: Cli, rows: Path, tmp_path: Path) -> None:
    done = cli_main(*words(rows, tmp_path / "out.parquet"))
    assert (done.status, done.out, done.err) == (1, "", "")
    line = ("batch", "pull", str(rows), "--label", "part", "--keep", "tool", "--format", "csv")
    told = list(csv.DictReader(cli_main(*line).out.splitlines()))
    table = parquet.read_table(tmp_path / "out.parquet")
    assert table.column_names == list(told[0])
    assert [str(table.schema.field(n).type) for n in ("row", "tool", "actual", "verdict")] == [
        *("int64", "string", "double", "string")
    ]
    for found, cells in zip(table.to_pylist(), told, strict=True):
        for name, cell in cells.items():
            if isinstance(found[name], float):
                assert found[name] == pytest.approx(float(cell), rel=5e-12)  # of 12 digits
            else:
                assert str(found[name] if found[name] is not None else "") == cell
    assert names_in(tmp_path) == ["out.parquet", "rows.csv"]


@pytest.mark.usefixtures("small_parts")
def test_it_goes_on_behind_its_whole_parts_to_the_same_file(
    cli_main: Cli, rows: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole, target = tmp_path / "whole.parquet", tmp_path / "out.parquet"
    assert cli_main(*words(rows, whole)).status == 1
    write, merge = batch_parquet._write, batch_parquet._merge
    for kept in range(6):  # of five parts, and once before they become one

        def broken(folder: Path, number: int, table: Any, kept: int = kept) -> Path:
            if number > kept:
                raise KeyboardInterrupt
            return write(folder, number, table)

        def no_merge(*_: Any) -> None:
            raise KeyboardInterrupt

        monkeypatch.setattr(batch_parquet, "_write", broken)
        monkeypatch.setattr(batch_parquet, "_merge", no_merge)
        assert cli_main(*words(rows, target)).status == 130
        folder = tmp_path / "out.parquet.part"
        assert folder.exists() == (kept > 0)
        assert not target.exists()
        monkeypatch.setattr(batch_parquet, "_write", write)
        monkeypatch.setattr(batch_parquet, "_merge", merge)
        if kept:
            assert names_in(folder) == [f"{n:06}.parquet" for n in range(1, kept + 1)]
            refused = cli_main(*words(rows, target))
            assert refused.status == 2
            assert "add --resume to go on" in refused.err
        assert cli_main(*words(rows, target, "--resume")).status == 1
        assert target.read_bytes() == whole.read_bytes()
        assert not folder.exists()
        target.unlink()


@pytest.mark.usefixtures("small_parts")
def test_parts_of_something_else_are_refused_and_stay(
    cli_main: Cli, rows: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target, folder = tmp_path / "out.parquet", tmp_path / "out.parquet.part"
    with monkeypatch.context() as patched:
        patched.setattr(
            batch_parquet, "_merge", lambda *_: (_ for _ in ()).throw(OSError(28, "full"))
        )
        done = cli_main(*words(rows, target))
    assert (done.status, "full" in done.err) == (2, True)
    there = {p.name: p.read_bytes() for p in folder.iterdir()}
    other = cli_main(*words(rows, target, "--resume")[:-1], "--terminal", "ring", "--resume")
    assert other.status == 2  # in the columns, too
    without = [w for w in words(rows, target, "--resume") if w not in ("--keep", "tool")]
    done = cli_main(*without)
    assert done.status == 2
    rows.write_text(rows.read_text(encoding="utf-8").replace("60 lbf", "19 lbf"), encoding="utf-8")
    done = cli_main(*words(rows, target, "--resume"))
    assert done.status == 2
    assert "came to something else in row 9" in done.err
    assert {p.name: p.read_bytes() for p in folder.iterdir()} == there
    (folder / "000002.parquet").write_bytes(b"PAR1 and no more")
    done = cli_main(*words(rows, target, "--resume"))
    assert done.status == 2
    assert "has something else in 000002.parquet" in done.err


def test_what_will_not_do(cli_main: Cli, rows: Path, tmp_path: Path) -> None:
    cases = {
        ("--format", "parquet"): "parquet is no text; name a file with --output",
        ("--output", str(tmp_path / "o.parquet")): "add --format parquet",
        ("--format", "parquet", "--output", os.devnull): "is no file",
    }
    for more, said in cases.items():
        done = cli_main("batch", "pull", str(rows), "--keep", "part; tool", *more)
        assert (done.status, done.out) == (2, "")
        assert said in done.err
    rows.write_text("wire;terminal;force;verdict\n18 AWG;ring;24 lbf;x\n", encoding="utf-8")
    line = ("batch", "pull", str(rows), "--keep", "verdict", "--format", "parquet")
    done = cli_main(*line, "--output", str(tmp_path / "o.parquet"))
    assert done.status == 2
    assert "column verdict: would stand there twice" in done.err


def test_a_text_that_has_no_bytes_is_written_with_a_mark(cli_main: Cli, tmp_path: Path) -> None:
    rows = tmp_path / "rows.jsonl"
    rows.write_text('{"wire": "18 AWG", "terminal": "ring", "force": "24 lbf", "who": "\\ud800"}\n')
    target = tmp_path / "o.parquet"
    line = ("batch", "pull", str(rows), "--keep", "who", "--format", "parquet")
    assert cli_main(*line, "--output", str(target)).status == 0
    assert parquet.read_table(target).column("who").to_pylist() == ["?"]
