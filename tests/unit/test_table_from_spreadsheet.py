"""A shop's table as a spreadsheet saves it: what is read, and what is refused with its place."""

from pathlib import Path

import pytest

from wirecalc import tables
from wirecalc.base.errors import TableError

SIDECAR = """
title = "a table"
purpose = "tests"
not_for = "anything else"
checked = "by hand"
key = ["awg"]
[sources.demo]
title = "invented"
[columns.awg]
type = "gauge"
[columns.least_lbf]
type = "number"
unit = "lbf"
[columns.least_N]
type = "number"
unit = "N"
[columns.seen]
type = "integer"
required = false
"""
HEADER = "awg;least_lbf;least_N;seen;source;confidence;copies;note"
ROW = "18;25;111.2;3;demo;demo;0;"


def read(folder: Path, *lines: str, head: str = HEADER) -> tables.Table:
    """Read a table of some lines as a spreadsheet of Windows saves it."""
    (folder / "t.toml").write_text(SIDECAR, encoding="utf-8")
    (folder / "t.csv").write_bytes(b"\xef\xbb\xbf" + "\r\n".join((head, *lines, "")).encode())
    return tables.read(folder, "t")


@pytest.mark.parametrize("mark", [";", "\t", ","])
def test_marks_and_line_ends_of_a_spreadsheet_are_read(tmp_path: Path, mark: str) -> None:
    table = read(tmp_path, ROW.replace(";", mark), ";;;;;;;".replace(";", mark), "",
                 head=HEADER.replace(";", mark))  # fmt: skip
    assert [dict(r.cells) for r in table.rows] == [
        {"awg": "18", "least_lbf": 25.0, "least_N": 111.2, "seen": 3}
    ]


def test_an_empty_row_between_others_is_named_by_its_line(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="line 3: nothing stands in it; take the row out"):
        read(tmp_path, ROW, ";;;;;;;", ROW.replace("18;", "16;"))


def test_spaces_around_a_cell_are_none_of_it(tmp_path: Path) -> None:
    table = read(tmp_path, " 18 ; 25;111.2\u00a0;3; demo;demo;0; a note ")
    assert (table.row(awg="18").text("least_N"), table.rows[0].note) == ("111.2", "a note")


@pytest.mark.parametrize(
    ("head", "said"),
    [
        (
            HEADER.replace("least_lbf", "least lbf"),
            "the header has 'least lbf', and its sidecar no such column; did you mean least_lbf?",
        ),
        (HEADER.replace("seen;", ""), "the header lacks seen"),
        (HEADER.replace(";note", ""), "the header lacks note"),
        (HEADER.replace("awg;least_lbf", "least_lbf;awg"), "the header has least_lbf where awg"),
        (HEADER.replace("seen", "awg"), "the header has awg twice"),
        (HEADER.replace(";", "|"), "cells are parted by comma, semicolon or tab"),
    ],
)
def test_what_differs_in_a_header_is_said(tmp_path: Path, head: str, said: str) -> None:
    with pytest.raises(TableError, match="header") as caught:
        read(tmp_path, ROW, head=head)
    assert said in str(caught.value)


@pytest.mark.parametrize("cell", ["2,5", "+25", "25 lbf", "2.5E+01", "2.5e1", "25.", "0x19", "²5",
                                  "2_5", "２５", "nan", "1/4", "25 5", "−25", "'25"])  # fmt: skip
def test_digits_are_as_strict_as_in_a_reading(tmp_path: Path, cell: str) -> None:
    with pytest.raises(TableError, match=r"line 2: .* in column least_lbf is no number"):
        read(tmp_path, ROW.replace("25", cell))


def test_a_comma_gets_its_point(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="'111,2' in column least_N is no number; write a point"):
        read(tmp_path, ROW.replace("111.2", "111,2"))


@pytest.mark.parametrize("cell", ["3.0", "+3", "1e1", "3,0", "٣", "9" * 40])
def test_a_whole_number_has_digits_alone(tmp_path: Path, cell: str) -> None:
    with pytest.raises(TableError, match="in column seen is no integer"):
        read(tmp_path, ROW.replace(";3;", f";{cell};"))


@pytest.mark.parametrize("copies", ["1_0", "two", "-1", "２"])
def test_copies_are_digits(tmp_path: Path, copies: str) -> None:
    with pytest.raises(TableError, match="line 2: copies"):
        read(tmp_path, ROW.replace(";0;", f";{copies};"))


# 25 lbf x 4.4482216 N/lbf = 111.2055 N; half a lbf of the printed 25 is 2.22 N, half of 0.1 N
# 0.05 N, so that 111.2 N may be as far off as 2.27 N.
@pytest.mark.parametrize("newtons", ["111.2", "111", "109.0", "113.4"])
def test_twins_are_the_same_as_far_as_they_are_printed(tmp_path: Path, newtons: str) -> None:
    assert read(tmp_path, ROW.replace("111.2", newtons)).rows


@pytest.mark.parametrize(
    ("pounds", "newtons"),
    [("25000", "111.2"), ("25", "108.9"), ("25", "113.5"), ("25.0", "113.4"), ("25", "1112")],
)
def test_twins_that_differ_are_refused(tmp_path: Path, pounds: str, newtons: str) -> None:
    with pytest.raises(TableError) as caught:
        read(tmp_path, f"18;{pounds};{newtons};3;demo;demo;0;")
    said = f"line 2: least_lbf {pounds} and least_N {newtons} are not the same"
    assert said in str(caught.value)
    if pounds == "25":
        assert ": 25 lbf is 111.2 N" in str(caught.value)


def test_twins_of_the_bundled_tables_are_the_same() -> None:
    """But where a standard itself prints a pair that differs, and the note of the row says it.

    UL 486E: 11.5 lbf is 51.2 N, printed 50 N; 20.5 lbf is 91.2 N, printed 90 N.
    UL 486A: 300 lbf is 1334.5 N, misprinted 1235 N.
    """
    from wirecalc.published.twin_columns import differing

    found = [
        (name, said.rpartition(": ")[0])
        for name in tables.names()
        for said in differing(tables.load(name))
    ]
    assert found == [
        ("pull-clamp", "line 10: minimum_N 50 and minimum_lbf 11.5 are not the same"),
        ("pull-clamp", "line 13: minimum_N 90 and minimum_lbf 20.5 are not the same"),
        ("pull-crimp", "line 20: minimum_N 1235.0 and minimum_lbf 300 are not the same"),
    ]
