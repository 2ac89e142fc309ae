"""Tables from outside: they are added, replace nothing, and a damaged one is refused alone."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import calls, tables
from wirecalc.plugging import settings

from .conftest import Outside

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
SIDECAR = """
title = "Shop crimps, invented"
purpose = "demonstration"
not_for = "work"
checked = "invented"
key = ["awg"]
[sources.shop]
title = "shop sheet, invented"
[columns.awg]
type = "integer"
[columns.minimum_lbf]
type = "number"
"""
HEADER = "awg,minimum_lbf,source,confidence,copies,note\n"
TABLES_HOOK = """
from pathlib import Path
from wirecalc import hookimpl

@hookimpl
def wirecalc_tables():
    return [Path(__file__).parent / "tables_of_ours"]
"""


def _add_table(outside: Outside, name: str, rows: str) -> None:
    outside.add("demo_tables", TABLES_HOOK)
    folder = outside.folder / "tables_of_ours"
    folder.mkdir()
    (folder / f"{name}.toml").write_text(SIDECAR, encoding="utf-8")
    (folder / f"{name}.csv").write_text(HEADER + rows, encoding="utf-8")


def test_table_of_a_shop_is_added(command: Command, outside: Outside) -> None:
    _add_table(outside, "shop-crimps", "18,25,shop,house,,\n")
    assert "shop-crimps" in command("tables", env=outside.env).out
    done = command("tables", "shop-crimps", "--format", "json", env=outside.env)
    assert [r["minimum_lbf"] for r in done.json["rows"]] == [25]


def test_table_of_a_shop_replaces_no_published_one(command: Command, outside: Outside) -> None:
    _add_table(outside, "pull-crimp", "18,1,shop,house,,\n")
    published = command("tables", "pull-crimp").out
    assert command("tables", "pull-crimp", env=outside.env).out == published
    assert command(*PULL, "19 lbf", env=outside.env).status == 1


def test_a_table_that_another_folder_has_too_is_named(cli_main: Command, outside: Outside) -> None:
    for plugin, minimum in (("demo_one", 25), ("demo_two", 15)):
        outside.add(plugin, TABLES_HOOK.replace("tables_of_ours", f"tables_of_{plugin}"))
        folder = outside.folder / f"tables_of_{plugin}"
        folder.mkdir()
        (folder / "shop-crimps.toml").write_text(SIDECAR, encoding="utf-8")
        rows = f"{HEADER}18,{minimum},shop,house,,\n"
        (folder / "shop-crimps.csv").write_text(rows, encoding="utf-8")
    done = cli_main("tables", "shop-crimps")
    assert done.status == 0
    assert "25" in done.out
    (line,) = done.complaints
    assert line.startswith("plugin demo_two of demo-two 1.0 was loaded in part: its table")
    assert "shop-crimps is not used" in line


def test_damaged_table_of_a_shop_is_refused_alone(command: Command, outside: Outside) -> None:
    _add_table(outside, "shop-crimps", "18,many,shop,house,,\n")
    assert command(*PULL, "24 lbf", env=outside.env).status == 0
    assert command("tables", "awg", env=outside.env).status == 0
    done = command("tables", "shop-crimps", env=outside.env)
    assert done.status not in (0, 1, 3)
    assert done.out == ""
    assert "'many'" in done.err


STRICTER = """
stricter_than = "pull-crimp"
title = "Our pull minima, invented"
purpose = "demonstration"
not_for = "work"
checked = "invented"
key = ["standard", "awg", "area_mm2"]
[sources.sheet]
title = "shop sheet 4, invented"
[columns.standard]
type = "text"
[columns.awg]
type = "gauge"
[columns.area_mm2]
type = "number"
unit = "mm2"
[columns.minimum_lbf]
type = "number"
unit = "lbf"
[columns.minimum_N]
type = "number"
unit = "N"
required = false
"""
COLUMNS = "standard,awg,area_mm2,minimum_lbf,minimum_N,source,confidence,copies,note\n"
STOCK = """
title = "Our van, invented"
purpose = "demonstration"
not_for = "work"
checked = "invented"
key = ["part"]
[sources.shop]
title = "our van, invented"
[columns.part]
type = "text"
[columns.connector]
type = "text"
[columns.barrel]
type = "text"
[columns.on_hand]
type = "integer"
[columns.temperature_C]
type = "number"
"""
PLACE = {"wire_temperature": "105 C", "place_temperature": "30 C"}
CHOOSE = ("choose", "--wire", "18 AWG", "--connector", "butt",
          "--wire-temperature", "105 C", "--place-temperature", "30 C")  # fmt: skip


@pytest.fixture
def our_tables(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[..., Path]]:
    """Write a table into a folder that a rules file names, and have that file in force."""
    folder = tmp_path / "our-tables"
    folder.mkdir()
    path = tmp_path / "shop.toml"
    path.write_text('tables = ["our-tables"]\n', encoding="utf-8")
    monkeypatch.setenv(settings.RULES, str(path))

    def write(name: str, sidecar: str, rows: str) -> Path:
        (folder / f"{name}.toml").write_text(sidecar, encoding="utf-8")
        (folder / f"{name}.csv").write_text(rows, encoding="utf-8")
        return path

    yield write
    tables.use_folders([])


def _row(key: str, lbf: float, newtons: object = "") -> str:
    return f"{COLUMNS}{key},{lbf},{newtons},sheet,house,,\n"


@pytest.mark.parametrize(
    ("force", "status"), [("25 lbf", 0), ("24 lbf", 1), ("25 lbf ±0.5 lbf", 3), ("19 lbf", 1)]
)
def test_stricter_row_stands_beside_the_published_one(
    cli_main: Command, our_tables: Callable[..., Path], force: str, status: int
) -> None:
    """UL 486A asks for 20 lbf on 18 AWG, the row for 25."""
    our_tables("our-pull", STRICTER, _row("ul-486a,18,0.82", 25, 111.2))
    done = cli_main(*PULL, force, "--format", "json")
    assert done.status == status
    assert [(c["provider"], c["origin"], c["limit"]) for c in done.json["criteria"]] == [
        ("bundled", "standard", 20),
        ("our-pull", "house", 25),
    ]
    assert done.json["house_rules"] == ["our-pull"]
    assert "shop sheet 4, invented" in done.out
    assert "shop sheet 4, invented" in cli_main("tables", "pull-crimp").out
    said = "- 1 row beside those of pull-crimp (table our-pull)"
    assert said in cli_main("explain", "pull").out


NOT_USED = {
    "milder": (_row("ul-486a,18,0.82", 15, 66.7), "minimum_lbf 15 is milder than 20 of pull-crimp"),
    "half": (_row("ul-486a,18,0.82", 25), "minimum_lbf needs minimum_N"),
    "half milder": (
        _row("ul-486a,18,0.82", 20.01, 88.99),
        "minimum_N 88.99 is milder than 89.0",
    ),
    "two forces": (
        _row("ul-486a,18,0.82", 25000, 111.2),
        "line 2: minimum_lbf 25000 and minimum_N 111.2 are not the same",
    ),
    "new": (_row("ul-486a,17,1.04", 25, 111.2), "a new row needs judged_in"),
    "mistyped": (
        _row("ul-486a,18,0.83", 25, 111.2),
        "row ul-486a 18 0.83: pull-crimp has no such row, the nearest is ul-486a 18 0.82; "
        "a new row needs judged_in",
    ),
}


@pytest.mark.parametrize("case", NOT_USED)
def test_row_that_is_not_used_is_shown(
    cli_main: Command, our_tables: Callable[..., Path], case: str
) -> None:
    row, why = NOT_USED[case]
    our_tables("our-pull", STRICTER, row)
    done = cli_main(*PULL, "20 lbf")
    assert done.status == (0 if case == "milder" else 3)  # a limit of the shop may be lost with it
    assert why in " ".join(done.out.split())
    assert why in " ".join(cli_main("tables", "pull-crimp").out.split())
    assert any(
        why in line
        for line in cli_main("tables", "pull-crimp", "--format", "json").json["shop_rows_not_used"]
    )
    assert why in cli_main("tables", "pull-crimp", "--format", "csv").err
    assert (
        "our-pull"
        not in cli_main(
            "tab", "--tab-width", "0.250 in", "--wire", "14 AWG", "--current", "3 A"
        ).out
    )


@pytest.mark.parametrize("case", NOT_USED)
def test_checking_a_rules_file_names_a_row_that_is_not_used(
    cli_main: Command, our_tables: Callable[..., Path], case: str
) -> None:
    row, why = NOT_USED[case]
    path = our_tables("our-pull", STRICTER, row)
    done = cli_main("rules", str(path))
    assert (done.status, done.out) == (2, "")
    assert why in done.err


def test_conflict_in_a_column_that_cannot_be_tightened_is_shown(
    cli_main: Command, our_tables: Callable[..., Path]
) -> None:
    sidecar = STRICTER + '[columns.judged_in]\ntype = "text"\n'
    head = COLUMNS.replace("minimum_N,", "minimum_N,judged_in,")
    our_tables("our-pull", sidecar, f"{head}ul-486a,18,0.82,25,111.2,N,sheet,house,,\n")
    done = cli_main(*PULL, "24 lbf")
    assert done.status == 3
    assert "judged_in N is in conflict with lbf of pull-crimp" in " ".join(done.out.split())


def test_new_row_never_makes_a_verdict_better(
    cli_main: Command, our_tables: Callable[..., Path]
) -> None:
    """The published table has no 17 AWG: that stays so, and the shop's criterion is added."""
    words = ("pull", "--wire", "17 AWG", "--terminal", "ring", "--force", "26 lbf")
    assert cli_main(*words, "--bundled-only").status == 3
    sidecar = STRICTER + '[columns.judged_in]\ntype = "text"\n'
    head = COLUMNS.replace("minimum_N,", "minimum_N,judged_in,")
    our_tables("our-pull", sidecar, f"{head}ul-486a,17,1.04,25,111.2,lbf,sheet,house,,\n")
    done = cli_main(*words, "--format", "json")
    assert done.status == 3
    assert [(c["provider"], c["verdict"]) for c in done.json["criteria"]] == [
        ("bundled", "cannot tell"),
        ("our-pull", "pass"),
    ]
    assert cli_main(*words[:-1], "24 lbf").status == 1


DAMAGED = {
    "a cell": (STRICTER, COLUMNS + "ul-486a,18,0.82,much,9,sheet,house,,\n"),
    "a unit": (STRICTER.replace('"lbf"', '"kgf"'), _row("ul-486a,18,0.82", 25, 111.2)),
    "a column": (
        STRICTER.replace("minimum_lbf", "minimum_lb"),
        COLUMNS.replace("_lbf", "_lb") + "ul-486a,18,0.82,25,111.2,sheet,house,,\n",
    ),
    "a name": (STRICTER.replace("pull-crimp", "pull-crimps"), _row("ul-486a,18,0.82", 25, 111.2)),
    "its sidecar": ("stricter_than = [", _row("ul-486a,18,0.82", 25, 111.2)),
    "its columns": (f"columns = 5\n{STRICTER.partition('[columns.')[0]}", ""),
    "its sources": (STRICTER.replace("[sources.sheet]\ntitle", "[sources]\nsheet"), ""),
    "its rules": (f"rules = [5]\n{STRICTER}", _row("ul-486a,18,0.82", 25, 111.2)),
}


@pytest.mark.parametrize("case", DAMAGED)
def test_damaged_stricter_table_passes_nothing(
    cli_main: Command, our_tables: Callable[..., Path], case: str
) -> None:
    our_tables("our-pull", *DAMAGED[case])
    done = cli_main(*PULL, "26 lbf")
    assert done.status == 3, done.err
    assert "our-pull" in done.out
    assert cli_main(*PULL, "19 lbf").status == 1


@pytest.mark.parametrize("case", ["none", "taken"])
def test_folder_that_cannot_be_used_is_told_with_its_line(
    cli_main: Command, our_tables: Callable[..., Path], case: str
) -> None:
    path = our_tables("pull-crimp", STRICTER, _row("ul-486a,18,0.82", 25, 111.2))
    if case == "none":
        path.write_text('tables = ["not-there"]\n', encoding="utf-8")
    done = cli_main("rules", str(path))
    assert (done.status, done.out) == (2, "")
    assert done.err.startswith("wirecalc: shop.toml, line 1: ")
    assert cli_main(*PULL, "26 lbf").status == 3


def test_a_plugins_folder_may_be_stricter_too(command: Command, outside: Outside) -> None:
    _add_table(outside, "shop-crimps", "18,25,shop,house,,\n")
    folder = outside.folder / "tables_of_ours"
    (folder / "our-pull.toml").write_text(STRICTER, encoding="utf-8")
    (folder / "our-pull.csv").write_text(_row("ul-486a,18,0.82", 25, 111.2), encoding="utf-8")
    done = command(*PULL, "24 lbf", env=outside.env)
    assert (done.status, done.err) == (1, "")


def test_a_table_of_a_rules_file_that_a_plugin_has_too_is_shown(
    cli_main: Command, our_tables: Callable[..., Path], outside: Outside
) -> None:
    _add_table(outside, "shop-crimps", "18,25,shop,house,,\n")
    alone = f"stands_alone = true\n{SIDECAR}"
    our_tables("shop-crimps", alone, f"{HEADER}18,15,shop,house,,\n")
    done = cli_main(*PULL, "26 lbf")
    assert done.status == 0
    assert "its table shop-crimps is not used" in " ".join(done.out.split())


def test_choose_takes_the_stock_of_the_folder(
    cli_main: Command, our_tables: Callable[..., Path]
) -> None:
    assert cli_main(*CHOOSE).status == 3  # the list for demonstrations
    head = "part,connector,barrel,on_hand,temperature_C,source,confidence,copies,note\n"
    parts = "van-1,butt,22-18 AWG,0,105,shop,house,,\nvan-2,butt,22-18 AWG,9,105,shop,house,,\n"
    our_tables("stock", STOCK, head + parts)
    done = cli_main(*CHOOSE, "--format", "json")
    assert done.status == 0
    assert [a["text"] for a in done.json["answers"]] == ["van-2"]


STOCK_HEAD = "part,connector,barrel,on_hand,temperature_C,source,confidence,copies,note\n"


def test_damaged_stock_is_the_shops_file_and_no_defect(
    cli_main: Command, our_tables: Callable[..., Path], write_sheet: Callable[..., Path]
) -> None:
    path = our_tables("stock", STOCK, STOCK_HEAD + "van-1,butt,,3,105,shop,house,,\n")
    file = path.parent / "our-tables" / "stock.csv"
    said = "line 2: column barrel is empty; fill it, or write required = false under"
    done = cli_main(*CHOOSE)
    assert (done.status, done.out) == (2, "")
    assert done.complaints == [f"{file}: {said} [columns.barrel] in stock.toml"]
    sheet = write_sheet({"calculation": "choose", "wire": "18 AWG", "connector": "butt", **PLACE})
    job = cli_main("job", str(sheet), "--format", "json")
    assert job.status == 3
    (check,) = job.json["checks"]
    assert check["defect"] is None
    assert f"our-tables/stock.csv: {said}" in check["finding"]["criteria"][0]["reason"]
    assert str(path.parent) not in job.out
    with pytest.raises(wirecalc.BadInput, match="column barrel is empty"):
        wirecalc.build(rules=[path]).run("choose", {"wire": "18 AWG", "connector": "butt"})


def test_listing_names_a_damaged_table_and_lists_the_rest(
    cli_main: Command, our_tables: Callable[..., Path]
) -> None:
    our_tables("shop-crimps", SIDECAR, f"{HEADER}18,25,shop,house,,\n")
    path = our_tables("stock", STOCK, STOCK_HEAD + "van-1,butt,22-18 AWG,some,105,shop,house,,\n")
    file = path.parent / "our-tables" / "stock.csv"
    wrong = f"{file}: line 2: 'some' in column on_hand is no integer"
    done = cli_main("tables")
    assert (done.status, done.complaints) == (0, [wrong])
    assert {"pull-crimp", "shop-crimps"} < set(done.out.splitlines())
    listed = cli_main("tables", "--format", "json").json["tables"]
    assert "stock" not in [table["name"] for table in listed]
    alone = cli_main("tables", "stock")
    assert (alone.status, alone.out, alone.complaints) == (2, "", [wrong])
    (path.parent / "our-tables" / "stock.toml").write_text("key = [", encoding="utf-8")
    assert "stock.toml: its sidecar cannot be read" in cli_main("tables", "stock").err


def test_damaged_table_of_kinds_is_no_defect(
    cli_main: Command, our_tables: Callable[..., Path]
) -> None:
    our_tables("job-kinds-ours", STOCK, STOCK_HEAD + "van-1,butt,,3,105,shop,house,,\n")
    assert cli_main("job", "--new").status == 2


def test_each_catalogue_keeps_to_its_own_tables(our_tables: Callable[..., Path]) -> None:
    """What is built later, without the shop's rules file, takes no stricter row away."""
    path = our_tables("our-pull", STRICTER, _row("ul-486a,18,0.82", 25, 111.2))
    given = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
    with_ours = wirecalc.build(rules=[path])
    in_rows = with_ours.runner("pull")
    without = wirecalc.build(rules=[])
    for _ in range(2):
        assert with_ours.run("pull", given).verdict == "fail"
        assert without.run("pull", given).verdict == "pass"
        assert in_rows(given).verdict == "fail"


NESTED = """
from typing import Annotated
import wirecalc
from wirecalc import PRACTICE, Reading, at_least, calculation, hookimpl, tables

@calculation(part="shop")
def twice_pulled(force: Annotated[float, Reading("lbf", low=0, high=500, text="force")]):
    \"\"\"Did it hold?\"\"\"
    wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    row = tables.load("pull-crimp").row(standard="ul-486a", awg="18", area_mm2=0.82)
    yield at_least("held", force, row.number("minimum_lbf"), "lbf", source=PRACTICE)

@hookimpl
def wirecalc_calculations():
    return [twice_pulled]
"""


def test_a_calculation_that_runs_another_keeps_to_the_stricter_row(
    cli_main: Command,
    our_tables: Callable[..., Path],
    outside: Outside,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    our_tables("our-pull", STRICTER, _row("ul-486a,18,0.82", 25, 111.2))
    outside.add("demo_nested", NESTED)
    for catalogue in (None, wirecalc.build(rules=[])):  # what wirecalc.run has before
        monkeypatch.setattr(calls, "_catalogue", catalogue)
        assert cli_main("twice-pulled", "--force", "26 lbf").status == 0
        assert cli_main("twice-pulled", "--force", "24 lbf").status == 1
