"""A line a row of a batch, and what the rows came to together, by the command line."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

Cli = Callable[..., Any]
HEAD = "part,wire,terminal,force"


@pytest.fixture
def rows(tmp_path: Path) -> Path:
    path = tmp_path / "rows.csv"
    lines = ("a,18 AWG,ring,24 lbf", "b,18 AWG,ring,19 lbf", "c,18 AWG,rong,24 lbf")
    path.write_text("\n".join([HEAD, *lines, "d,18 AWG,ring,unknown"]) + "\n", encoding="utf-8")
    return path


def test_a_line_a_row_says_what_decided_and_what_to_do(cli_main: Cli, rows: Path) -> None:
    done = cli_main("batch", "pull", str(rows), "--label", "part", "--format", "csv")
    found = list(csv.DictReader(io.StringIO(done.out)))
    assert [(r["row"], r["label"], r["verdict"], r["criterion"]) for r in found] == [
        ("2", "a", "pass", "pull-out force"),
        ("3", "b", "fail", "pull-out force"),
        ("4", "c", "refused", ""),
        ("5", "d", "cannot tell", "force"),
    ]
    failed = found[1]
    assert (failed["actual"], failed["limit"], failed["unit"]) == ("19", "20", "lbf")
    assert (failed["margin"], failed["reason"]) == ("-1", "19 lbf is below 20 lbf")
    assert failed["next"]
    assert found[0]["next"] == ""  # nothing is to be done where it passes
    assert "did you mean ring?" in found[2]["reason"]


def test_a_line_a_criterion_where_it_is_asked_for(cli_main: Cli, rows: Path) -> None:
    words = ("batch", "pull", str(rows), "--keep", "part", "--format", "csv")
    read = list(csv.DictReader(io.StringIO(cli_main(*words, "--criteria").out)))
    assert "UL 486A" in read[0]["source"]
    assert [r["row"] for r in read] == ["2", "3", "4", "5"]


def test_a_row_without_a_verdict_has_its_answer(cli_main: Cli, rows: Path) -> None:
    rows.write_text("wire\n1.5 mm2\n", encoding="utf-8")
    done = cli_main("batch", "equivalent", str(rows), "--format", "csv")
    (row,) = csv.DictReader(io.StringIO(done.out))
    assert (row["verdict"], row["criterion"], row["actual"]) == ("no verdict", "", "")
    assert row["reason"]


def test_the_summary_as_json_fits_its_schema(cli_main: Cli, rows: Path, tmp_path: Path) -> None:
    path = tmp_path / "together.json"
    words = ("batch", "pull", str(rows), "--label", "part", "--keep", "part")
    plain = cli_main(*words, "--format", "csv")
    done = cli_main(*words, "--format", "csv", "--summary", str(path))
    assert (done.status, done.out) == (plain.status, plain.out)
    summary = json.loads(path.read_text(encoding="utf-8"))
    schema = Draft202012Validator(cli_main("schema", "batch").json)
    assert [e.message for e in schema.iter_errors(summary)] == []
    assert summary["verdicts"] == {"pass": 1, "marginal": 0, "cannot tell": 1, "fail": 1}
    assert (summary["rows"], summary["refused"], summary["defects"]) == (4, 1, 0)
    assert [(c["row"], c["label"], c["margin"]) for c in summary["closest"]] == [
        (3, "b", -1.0),
        (2, "a", 4.0),
    ]
    assert [(r["input"], r["rows"], r["first_row"]) for r in summary["refused_for"]] == [
        ("terminal", 1, 4)
    ]
    assert any("UL 486A" in source for source in summary["sources"])
    assert "pull-01" in [c["key"] for c in summary["cautions"]]


@pytest.mark.parametrize("named", ["rows.csv", "out.csv"])
def test_the_summary_is_written_over_nothing(
    cli_main: Cli, rows: Path, tmp_path: Path, named: str
) -> None:
    out = str(tmp_path / "out.csv")
    words = ("batch", "pull", str(rows), "--keep", "part", "--output", out)
    before = rows.read_bytes()
    done = cli_main(*words, "--summary", str(tmp_path / named))
    assert (done.status, rows.read_bytes()) == (2, before)
