"""Lines of CSV and Markdown: quoting, formulas, numbers, and a cell on one line."""

from __future__ import annotations

import csv

import pytest

from wirecalc.output import rows


def line(*cells: str | float | None, form: str = "csv") -> str:
    return list(rows.render(["a"], [cells], form))[-1]


@pytest.mark.parametrize(
    "text", ["=1+1", "+x", "-x", "@a", " =1", "\t=1", "＝1", "-1+2", "=", "--1", "+1 555", "-1 lbf"]
)
def test_a_formula_gets_an_apostrophe(text: str) -> None:
    (read,) = csv.reader([line(text)])
    assert read[0].startswith("'")


@pytest.mark.parametrize("text", ["-5", "+3.5", "-1e3", "a=b", "1-2", "", "'x", "±3%"])
def test_what_is_no_formula_stays(text: str) -> None:
    (read,) = csv.reader([line(text, "x")])
    assert read[0] == text


@pytest.mark.parametrize(
    ("number", "written"),
    [(-0.8, "-0.8"), (20.000000000000004, "20"), (None, ""), (0.0, "0"), (1e-7, "1e-07")],
)
def test_a_number_stays_a_number(number: float | None, written: str) -> None:
    assert line(number, "x") == f"{written},x"


@pytest.mark.parametrize("text", ['a "b"', "a,b", "a\nb", "a\r\nb"])
def test_a_cell_stands_on_one_line_and_reads_back(text: str) -> None:
    (read,) = csv.reader([line(text, "x")])
    assert read == [" ".join(text.split()), "x"]


def test_markdown_escapes_what_it_would_take_for_signs() -> None:
    assert line("a|b", "c\\", "<i>", "x_y*", form="markdown") == (
        r"| a\|b | c\\ | \<i\> | x\_y\* |"
    )


def test_markdown_has_a_head_and_as_many_cells() -> None:
    head, rule, row = rows.render(["a", "b"], [("x", 1.5)], "markdown")
    assert (head, rule, row) == ("| a | b |", "| --- | --- |", "| x | 1.5 |")
