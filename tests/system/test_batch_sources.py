"""Rows out of JSON lines and Parquet come to what the same rows of a CSV come to."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from wirecalc.base.errors import BadText
from wirecalc.jobs.batch_sources import open_rows

Cli = Callable[..., Any]
HEAD = ("wire", "terminal", "force [lbf]", "tool")
ROWS = [
    ("18 AWG", "ring", "24.10", "a"),
    ("18 AWG", "ring", "17 ±3%", "b"),
    ("18 AWG", "", "unknown", ""),
]


def json_lines(path: Path) -> None:
    objects = [dict(zip(HEAD, row, strict=True)) for row in ROWS]
    lines = [json.dumps({k: v or None for k, v in row.items()}) for row in objects]
    lines[0] = lines[0].replace('"24.10"', "24.10")  # a number, with its digits
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")


def parquet(path: Path) -> None:
    pa = pytest.importorskip("pyarrow")
    from pyarrow import parquet as writer

    columns = {head: [row[n] or None for row in ROWS] for n, head in enumerate(HEAD)}
    writer.write_table(pa.table(columns), path)


@pytest.mark.parametrize(("name", "write"), [("r.jsonl", json_lines), ("r.parquet", parquet)])
def test_they_come_to_what_a_csv_comes_to(
    cli_main: Cli, tmp_path: Path, name: str, write: Callable[[Path], None]
) -> None:
    csv = tmp_path / "r.csv"
    csv.write_text("\n".join(map(",".join, [HEAD, *ROWS])) + "\n", encoding="utf-8")
    write(tmp_path / name)
    line = ("--keep", "tool", "--format", "csv")
    wanted, done = (cli_main("batch", "pull", str(tmp_path / n), *line) for n in ("r.csv", name))
    assert (done.status, done.err) == (wanted.status, "")

    def without_numbers(text: str) -> list[str]:
        return [line.partition(",")[2] for line in text.splitlines()]

    assert without_numbers(done.out) == without_numbers(wanted.out)
    assert len(without_numbers(done.out)) == 4


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('{"wire": "18 AWG", "size": 3}', "the first line has no size"),
        ("[1]", "the line is no object of plain values"),
        ('{"wire": {"awg": 18}}', "the line is no object of plain values"),
        ("{wire", "the line is no JSON"),
        ('{"wire": "' + "x" * 100_000 + '"}', "the line is longer than 100000 characters"),
    ],
)
def test_a_bad_line_is_refused_by_itself(tmp_path: Path, line: str, said: str) -> None:
    path = tmp_path / "r.jsonl"
    path.write_text('{"wire": "18 AWG"}\n' + line + '\n\n{"wire": null}\n', encoding="utf-8")
    file = open_rows(str(path))
    found = list(file.rows())
    assert file.header == ["wire"]
    assert found[0].cells == ["18 AWG"]
    assert found[1].wrong == said
    assert (found[-1].cells, found[-1].wrong) == ([""], "")


@pytest.mark.parametrize("text", ["", "[]\n", "\n", "row,wire\n"])
def test_a_first_line_that_is_no_object(tmp_path: Path, text: str) -> None:
    path = tmp_path / "r.ndjson"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BadText, match="its first line"):
        open_rows(str(path))


def test_a_parquet_that_is_none(tmp_path: Path) -> None:
    pytest.importorskip("pyarrow")
    (tmp_path / "r.parquet").write_text("no such file")
    for name in ("r.parquet", "gone.parquet", "gone.jsonl"):
        with pytest.raises(BadText):
            open_rows(str(tmp_path / name))
