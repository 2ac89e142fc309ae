"""Some rows of a table, and a table as a page for the wall."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from dataclasses import replace

import pytest

from wirecalc.output.table_page import table_page
from wirecalc.output.tables import render
from wirecalc.published import tables
from wirecalc.published.shop_tables import Overlaid
from wirecalc.testing import Outcome

from . import pages

Cli = Callable[..., Outcome]


def _rows(cli_main: Cli, *where: str) -> list[dict[str, str]]:
    words = [word for text in where for word in ("--where", text)]
    out = cli_main("tables", "pull-crimp", *words, "--format", "csv").out
    return list(csv.DictReader(io.StringIO(out)))


@pytest.mark.parametrize(
    ("where", "forces"),  # read off the file itself
    [
        (["standard=ul-486a", "awg=18"], ["20"]),
        (["standard=UL-486A", "awg=18 AWG"], ["20"]),
        (["standard = ul-486a", "AWG = 18.0"], ["20"]),
        (["standard=ul-486a", "awg=1/0"], ["250"]),
        (["standard=ul-486a", "awg=18", "awg=16"], ["20", "30"]),  # either
        (["area_mm2=0.82"], ["20", "8.99"]),
        (["area=0.82 mm2"], ["20", "8.99"]),
        (["minimum lbf=100"], ["100"]),
        (["minimum-lbf=100 lbf"], ["100"]),
    ],
)
def test_only_the_rows_that_were_asked_for(
    cli_main: Cli, where: list[str], forces: list[str]
) -> None:
    found = [row["minimum_lbf"] for row in _rows(cli_main, *where)]
    if "area" in where[0]:  # every standard has the size
        assert len(found) == 5 and found[0] == "20"
    else:
        assert found == forces


def test_the_rows_of_a_table_in_every_form(cli_main: Cli) -> None:
    words = ("tables", "pull-crimp", "--where", "standard=ul-486c", "--where", "awg=18")
    text = cli_main(*words).out
    assert "ul-486c   18   0.82  44.5" in text and "ul-310" not in text.split("for: ")[0]
    assert "a: from memory: confirm it" in text and "recalled" in text
    assert "not for: Screw and spring clamps" in text
    assert "source ul-486c: " in text and "source ul-486a: " not in text
    as_json = cli_main(*words, "--format", "json").json
    assert [row["minimum_lbf"] for row in as_json["rows"]] == [10]
    assert as_json["where"] == ["standard=ul-486c", "awg=18"]
    assert "| ul-486c | 18 |" in cli_main(*words, "--format", "markdown").out


@pytest.mark.parametrize(
    ("where", "says"),
    [
        ("standard=ul486a", "did you mean ul-486a?"),
        ("foo=1", "no column 'foo'; known: standard, awg, area_mm2"),
        ("awgs=1", "did you mean awg?"),
        ("awg=19", "no row of pull-crimp has awg '19'; it has 30, 28, 26"),
        ("awg", "'awg' has no value; write --where \"awg=...\""),
        ("awg=", "'awg=' has no value"),
        ("minimum_lbf=20 N", "no row of pull-crimp has minimum_lbf '20 N'"),
        ("minimum_lbf=nan", "no row of pull-crimp has minimum_lbf 'nan'"),
    ],
)
def test_what_no_row_has_is_refused(cli_main: Cli, where: str, says: str) -> None:
    done = cli_main("tables", "pull-crimp", "--where", where)
    assert (done.status, done.out) == (2, "")
    assert says in done.err


def test_of_many_values_the_first_thirty_are_named(cli_main: Cli) -> None:
    said = cli_main("tables", "awg", "--where", "awg=99").err
    named = said.partition("it has ")[2].strip().split(", ")
    assert len(named) == 31 and named[-1] == "..."


def test_what_no_row_has_together_is_refused(cli_main: Cli) -> None:
    done = cli_main("tables", "pull-crimp", "--where", "standard=ul-310", "--where", "awg=6")
    assert (done.status, done.out) == (2, "")
    assert "no row has all of these" in done.err
    done = cli_main("tables", "--where", "awg=6")
    assert (done.status, done.out) == (2, "")
    assert "name the table first" in done.err
    assert "no such option" in cli_main("plugins", "--where", "awg=6").err


@pytest.mark.parametrize("name", tables.names())
def test_every_table_is_a_page_for_the_wall(cli_main: Cli, name: str) -> None:
    root = pages.parsed(cli_main("tables", name, "--format", "html").out)
    (table,) = pages.of_class(root, "table", "wall")
    assert len(list(table.iter("tr"))) == 1 + len(tables.load(name).rows)
    said = pages.text(root)
    assert "licensed practice decide" in said and "Not for: " in said
    for source in {row.source for row in tables.load(name).rows}:
        assert source.title in said and source.trust in said


def test_what_is_from_memory_is_marked_beside_each_value_on_the_wall(cli_main: Cli) -> None:
    page = cli_main("tables", "pull-crimp", "--where", "awg=18", "--format", "html").out
    (table,) = pages.of_class(pages.parsed(page), "table", "wall")
    rows = [pages.text(tr) for tr in table.iter("tr")][1:]
    remembered = ["from memory" in row for row in rows]
    assert remembered == [False, True, True, False]
    assert rows[0].startswith("ul-486a180.8289.020lbfa")
    page = cli_main("tables", "strandings", "--format", "html").out
    assert "computed from the others" in page


def test_what_stands_in_every_row_is_said_once(cli_main: Cli) -> None:
    text = cli_main("tables", "pull-crimp", "--where", "standard=ul-486a").out
    rows = text.split("\n\n")[1].splitlines()
    assert rows[0] == "standard ul-486a; judged in lbf"
    assert rows[1].split() == ["awg", "area", "minimum", "minimum"]
    assert [row.split()[:4] for row in rows if row.startswith("18 ")] == [
        ["18", "0.82", "89.0", "20"]
    ]
    one = cli_main("tables", "pull-crimp", "--where", "standard=ul-486a", "--where", "awg=18").out
    assert "ul-486a   18   0.82  89.0     20       lbf     a" in one


@pytest.mark.parametrize("form", ["text", "json", "csv", "markdown"])
def test_rows_of_a_shop_alone(form: str) -> None:
    table = tables.load("pull-crimp")
    own = table.rows[6]._replace(note="our own")
    shop = Overlaid(table, by=("our-pull",), rows=(own,))
    said = render(replace(table, rows=()), form, [shop], ["awg=18"])
    assert "ul-486a" in said or form in ("csv", "markdown")  # those have the published rows alone
    page = pages.parsed(table_page(replace(table, rows=()), [shop], ["awg=18"]))
    assert "Rows of the shop (our-pull)" in pages.text(page) and "89.0" in pages.text(page)
