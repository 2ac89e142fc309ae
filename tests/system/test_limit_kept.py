"""What a shop meant and what is not used: it makes what it could concern `cannot tell`."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from wirecalc.plugging import settings

from .conftest import Outside
from .test_broken_plugins import calculation
from .test_plugin_edges import installed
from .test_shop_tables import (
    CHOOSE,
    COLUMNS,
    HEADER,
    SIDECAR,
    STOCK,
    STOCK_HEAD,
    STRICTER,
    TABLES_HOOK,
)

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
LEAK = ("strip", "--wire", "18 AWG", "--style", "closed", "--barrel-length", "6.4 mm")
ROWS = f"{COLUMNS}ul-486a,18,0.82,25,111.2,sheet,house,,\n"
OURS = "our-pull"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of tables that a rules file in force names, with a stricter table in it."""
    folder = tmp_path / "our-tables"
    folder.mkdir()
    (tmp_path / "shop.toml").write_text('tables = ["our-tables"]\n', encoding="utf-8")
    monkeypatch.setenv(settings.RULES, str(tmp_path / "shop.toml"))
    (folder / f"{OURS}.toml").write_text(STRICTER, encoding="utf-8")
    (folder / f"{OURS}.csv").write_text(ROWS, encoding="utf-8")
    return folder


def sidecar(folder: Path, text: str, encoding: str = "utf-8") -> None:
    (folder / f"{OURS}.toml").write_text(text, encoding=encoding)


def rows(folder: Path, text: str, encoding: str = "utf-8") -> None:
    (folder / f"{OURS}.csv").write_text(text, encoding=encoding)


def without_line(folder: Path) -> None:
    sidecar(folder, STRICTER.replace('stricter_than = "pull-crimp"', ""))


def in_a_section(folder: Path) -> None:
    line = 'stricter_than = "pull-crimp"'
    sidecar(folder, STRICTER.replace(line, "") + line)


def among_the_sources(folder: Path) -> None:
    line = 'stricter_than = "pull-crimp"\n'
    where = "[sources.sheet]\n"
    sidecar(folder, STRICTER.replace(line, "").replace(where, where + line))


def renamed(*names: str) -> Callable[[Path], None]:
    """Give sidecar and rows other names, or leave one of them out."""

    def rename(folder: Path) -> None:
        for old, new in zip((f"{OURS}.toml", f"{OURS}.csv"), names, strict=False):
            if new:
                (folder / new).parent.mkdir(exist_ok=True)
                (folder / old).rename(folder / new)
            else:
                (folder / old).unlink()

    return rename


def linked_nowhere(folder: Path) -> None:
    (folder / f"{OURS}.toml").unlink()
    (folder / f"{OURS}.toml").symlink_to(folder / "nowhere.toml")


LOST = {
    "a key misspelt": lambda f: sidecar(f, STRICTER.replace("stricter_than", "stricter_then")),
    "a key in capitals": lambda f: sidecar(f, STRICTER.replace("stricter_than", "Stricter_than")),
    "no such line": without_line,
    "a line commented out": lambda f: sidecar(f, STRICTER.replace("stricter_", "#stricter_")),
    "a line in the section of a column": in_a_section,
    "a line in the section of a source": among_the_sources,
    "UTF-16": lambda f: sidecar(f, STRICTER, "utf-16"),
    "UTF-16 without a mark": lambda f: sidecar(f, STRICTER, "utf-16-le"),
    "no TOML": lambda f: sidecar(f, STRICTER.replace('than = "', "than = ")),
    "no TOML behind it": lambda f: sidecar(f, STRICTER + "half = [\n"),
    "a key twice": lambda f: sidecar(f, 'stricter_than = "pull-crimp"\n' + STRICTER),
    "an empty sidecar": lambda f: sidecar(f, ""),
    "another ending": renamed("our-pull.tml"),
    "an ending in capitals": renamed("our-pull.TOML"),
    "an ending behind it": renamed("our-pull.toml.txt"),
    "an ending behind both": renamed("our-pull.toml.txt", "our-pull.csv.txt"),
    "both endings in capitals": renamed("our-pull.TOML", "our-pull.CSV"),
    "a name in capitals": renamed("Our-Pull.toml"),
    "no sidecar": renamed(""),
    "no rows": renamed("our-pull.toml", ""),
    "a spreadsheet": renamed("", "pull-crimp.xlsx"),
    "a spreadsheet of nearly that name": renamed("", "pull-crimps.ods"),
    "tabs": renamed("", "our-pull.tsv"),
    "a folder in the folder": renamed("2026/our-pull.toml", "2026/our-pull.csv"),
    "a link to nowhere": linked_nowhere,
    "no row": lambda f: rows(f, COLUMNS),
    "an empty file": lambda f: rows(f, ""),
    "bars between cells": lambda f: rows(f, ROWS.replace(",", "|")),
    "rows in UTF-16": lambda f: rows(f, ROWS, "utf-16"),
    "a row twice": lambda f: rows(f, ROWS + ROWS.partition("\n")[2]),
    "another unit": lambda f: sidecar(f, STRICTER.replace('"lbf"', '"N"')),
    "a column of another name": lambda f: (
        sidecar(f, STRICTER.replace("minimum_lbf", "least_lbf")),
        rows(f, ROWS.replace("minimum_lbf", "least_lbf")),
    ),
    "a line for another table": lambda f: sidecar(f, STRICTER.replace("pull-crimp", "cords")),
    "a table of another name": lambda f: sidecar(f, STRICTER.replace("pull-crimp", "pull-crimps")),
    "a row of no such wire": lambda f: rows(f, ROWS.replace("0.82", "0.83")),
    "a row of no such standard": lambda f: rows(f, ROWS.replace("ul-486a", "UL-486A")),
    "a value in one unit of two": lambda f: rows(f, ROWS.replace("111.2", "")),
    "a value that the other unit denies": lambda f: rows(f, ROWS.replace("111.2", "66.7")),
}


@pytest.mark.parametrize("case", LOST)
def test_a_stricter_table_that_is_not_used_passes_nothing(
    cli_main: Command, folder: Path, case: str
) -> None:
    """24 lbf is past the published 20 and short of the shop's 25."""
    LOST[case](folder)
    done = cli_main(*PULL)
    assert done.status == 3, done.out
    assert folder.name in done.out
    assert cli_main(*PULL[:-1], "19 lbf").status == 1  # a fail stays one
    listed = cli_main("rules")
    assert (listed.status, listed.out) == (2, "")
    checked = cli_main("rules", str(folder.parent / "shop.toml"))
    assert (checked.status, checked.out) == (2, "")
    strict = cli_main(*PULL, "--strict")
    assert (strict.status, strict.out) == (4, "")


HELD = {
    "as it should be": lambda f: None,
    "a mark in front, as some editors write": lambda f: (
        sidecar(f, STRICTER, "utf-8-sig"),
        rows(f, ROWS, "utf-8-sig"),
    ),
    "line ends of another system": lambda f: (
        sidecar(f, STRICTER.replace("\n", "\r\n")),
        rows(f, ROWS.replace("\n", "\r\n")),
    ),
    "a note beside it": lambda f: (f / "README.txt").write_text("pulled by us", encoding="utf-8"),
    "an older copy beside it": lambda f: (f / "our-pull.toml.bak").write_text("x"),
    "the spreadsheet of its rows": lambda f: (f / "our-pull.xlsx").write_bytes(b"PK"),
    "what a file manager leaves": lambda f: (
        (f / ".DS_Store").write_bytes(b"\0"),
        (f / "._our-pull.toml").write_bytes(b"\0\x05\x16"),
    ),
    "a stock list": lambda f: (
        (f / "stock.toml").write_text(STOCK, encoding="utf-8"),
        (f / "stock.csv").write_text(STOCK_HEAD + "van-1,butt,22-18 AWG,9,105,shop,house,,\n"),
    ),
    "a table that stands alone": lambda f: (
        (f / "shop-crimps.toml").write_text(f"stands_alone = true\n{SIDECAR}", encoding="utf-8"),
        (f / "shop-crimps.csv").write_text(f"{HEADER}18,25,shop,house,,\n", encoding="utf-8"),
    ),
    "a link to it": lambda f: (
        (f / f"{OURS}.toml").rename(f.parent / "real.toml"),
        (f / f"{OURS}.toml").symlink_to(f.parent / "real.toml"),
    ),
}


@pytest.mark.parametrize("case", HELD)
def test_a_stricter_table_that_is_used_judges_and_no_more(
    cli_main: Command, folder: Path, case: str
) -> None:
    HELD[case](folder)
    assert cli_main(*PULL).status == 1
    done = cli_main(*PULL[:-1], "25 lbf", "--strict")
    assert (done.status, done.err) == (0, "")
    assert cli_main(*LEAK).status == 0
    assert cli_main("rules").status == 0
    assert cli_main("rules", str(folder.parent / "shop.toml")).status == 0


@pytest.mark.parametrize("case", ["a key misspelt", "UTF-16", "no sidecar", "another ending"])
def test_only_what_reads_the_table_is_in_doubt(cli_main: Command, folder: Path, case: str) -> None:
    """The columns say for which published table it was meant."""
    LOST[case](folder)
    assert cli_main(*PULL).status == 3
    done = cli_main(*LEAK)
    assert done.status == 0
    assert folder.name not in done.out


@pytest.mark.parametrize("name", ["ours.py", "more.TOML", "2026/more.csv", "more.csv.txt"])
def test_where_nobody_knows_whom_it_concerns_all_are(
    cli_main: Command, folder: Path, name: str
) -> None:
    """The stricter table beside it holds all the same."""
    (folder / name).parent.mkdir(exist_ok=True)
    (folder / name).write_text(calculation("ours"), encoding="utf-8")
    assert cli_main(*LEAK).status == 3
    assert cli_main(*PULL).status == 1
    assert cli_main(*PULL[:-1], "26 lbf").status == 3
    assert cli_main("rules").status == 2


def test_an_unknown_key_is_told_with_the_near_one(cli_main: Command, folder: Path) -> None:
    LOST["a key misspelt"](folder)
    said = "there is no key 'stricter_then' in a sidecar; did you mean stricter_than?"
    assert said in " ".join(cli_main(*PULL).out.split())
    assert said in cli_main("rules").err
    sidecar(folder, STRICTER.replace('type = "gauge"', 'type = "gauge"\nrequird = false'))
    assert "there is no key 'requird' in [columns.awg]; did you mean required?" in " ".join(
        cli_main("tables", OURS).err.split()
    )


@pytest.mark.parametrize(
    ("name", "text"), [("README.txt", "notes"), ("photo.jpg", ""), ("Thumbs.db", "")]
)
def test_other_files_are_named_and_no_more(
    cli_main: Command, folder: Path, name: str, text: str
) -> None:
    (folder / name).write_text(text, encoding="utf-8")
    done = cli_main(*PULL[:-1], "25 lbf", "--format", "json")
    assert done.status == 0
    (named,) = [n for n in done.json["not_checked"] if name in str(n)]
    assert "our-tables" in str(named)


@pytest.mark.parametrize(
    ("name", "status"),
    [("second.tmol", 3), ("second.cvs", 3), ("second.TOML", 3), ("second.yml", 0), ("s.txt", 0)],
)
def test_an_ending_that_is_nearly_that_of_a_table_is_meant(
    cli_main: Command, folder: Path, name: str, status: int
) -> None:
    (folder / name).write_text("x", encoding="utf-8")
    assert cli_main(*PULL[:-1], "25 lbf").status == status


def test_a_milder_row_takes_nothing_from_the_shop(cli_main: Command, folder: Path) -> None:
    rows(folder, ROWS.replace("25,111.2", "15,66.7"))
    assert cli_main(*PULL).status == 0


@pytest.mark.parametrize("name", ["Stock", "stok", "stock list"])
def test_a_stock_list_of_nearly_that_name_is_no_demonstration(
    cli_main: Command, folder: Path, name: str
) -> None:
    (folder / f"{name}.toml").write_text(STOCK, encoding="utf-8")
    (folder / f"{name}.csv").write_text(STOCK_HEAD + "van-1,butt,22-18 AWG,9,105,shop,house,,\n")
    done = cli_main(*CHOOSE)
    assert done.status == 3
    assert name in done.out


def test_the_rules_file_may_stand_among_its_tables(
    cli_main: Command, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rules = folder / "rules.toml"
    rules.write_text('tables = ["."]\n', encoding="utf-8")
    config = folder / "config.toml"
    config.write_text('rules_files = ["rules.toml"]\n', encoding="utf-8")
    monkeypatch.delenv(settings.RULES)
    monkeypatch.setenv(settings.CONFIG, str(config))
    assert cli_main(*PULL).status == 1
    assert cli_main(*PULL[:-1], "25 lbf", "--strict").status == 0
    (folder / "more-rules.toml").write_text('[[rule]]\nname = "x"\n', encoding="utf-8")
    assert cli_main(*PULL[:-1], "25 lbf").status == 3  # it is in force nowhere


def test_a_folder_without_any_table_passes_nothing(cli_main: Command, folder: Path) -> None:
    """As after a copy that went wrong."""
    for path in folder.iterdir():
        path.unlink()
    (folder / "README.txt").write_text("ours", encoding="utf-8")
    assert cli_main(*PULL).status == 3
    assert cli_main(*PULL, "--strict").status == 4


AMPACITY = """
stricter_than = "nec-ampacity"
title = "x"
purpose = "x"
not_for = "x"
checked = "x"
key = ["edition", "metal", "awg", "rating_C"]
[sources.sheet]
title = "shop sheet 5, invented"
[columns.edition]
type = "text"
[columns.metal]
type = "text"
[columns.awg]
type = "gauge"
[columns.rating_C]
type = "integer"
unit = "degC"
[columns.ampacity_A]
type = "integer"
unit = "A"
"""


def test_what_a_stricter_table_makes_otherwise_stands_beside_it(
    cli_main: Command, folder: Path
) -> None:
    """NEC Table 310.16 has 15 A for 14 AWG copper at 60 C, the shop of this test 10 A."""
    sidecar(folder, AMPACITY)
    head = "edition,metal,awg,rating_C,ampacity_A,source,confidence,copies,note"
    rows(folder, f"{head}\n2011-2023,copper,14,60,10,sheet,house,0,\n")
    done = cli_main("ampacity", "--wire", "14 AWG", "--use", "building", "--format", "json")
    found = {f["name"]: f["value"] for f in done.json["figures"]}
    ours = {n: v for n, v in found.items() if n.endswith(", by the shop's tables")}
    assert 10 in ours.values()
    published = [
        found[n.removesuffix(", by the shop's tables")] for n, v in ours.items() if v == 10
    ]
    assert published == [15]


@pytest.mark.parametrize("name", ["pullout force", "Pull-Out force", "pull-out  force"])
def test_a_rule_that_may_be_left_unjudged_is_not_lost_by_a_slip(
    cli_main: Command, folder: Path, name: str
) -> None:
    text = f"[[rule]]\nname = 'ours'\ncalculations = ['pull']\ncriterion = '{name}'\n"
    (folder.parent / "shop.toml").write_text(
        f"{text}at_least = '25 lbf'\noptional = true\n", encoding="utf-8"
    )
    done = cli_main(*PULL)
    assert done.status == 3
    assert "did you mean pull-out force?" in " ".join(done.out.split())


# plugins


@pytest.fixture
def trusted(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of plugins that the settings name, with one in it."""
    trusted = tmp_path / "trusted"
    trusted.mkdir(mode=0o755)
    (trusted / "shelf.py").write_text(calculation("shelf_lift"), encoding="utf-8")
    config = tmp_path / "config.toml"
    config.write_text('plugin_folder = "trusted"\n', encoding="utf-8")
    monkeypatch.setenv(settings.CONFIG, str(config))
    return trusted


NO_RETURN = """
from wirecalc import HouseRule, hookimpl

@hookimpl
def wirecalc_house_rules():
    [HouseRule("ours", ("pull",), lambda values, items: [])]
"""
RULE = "[[rule]]\nname = 'x'\ncalculations = ['pull']\nforbid = true\n"
NOT_LOADED: dict[str, tuple[str, str | bytes]] = {
    "a file that fails": ("ours.py", "raise RuntimeError('in the file')"),
    "a file that is no Python": ("ours.py", "def half("),
    "a file in UTF-16": ("ours.py", calculation("ours").encode("utf-16")),
    "a file without a hook": ("ours.py", "LIMIT = 25\n"),
    "an ending in capitals": ("ours.PY", calculation("ours")),
    "an ending behind it": ("ours.py.txt", calculation("ours")),
    "a package": ("ours/__init__.py", calculation("ours")),
    "a hook that forgets to return": ("ours.py", NO_RETURN),
    "a rule for another name": (
        "ours.py",
        NO_RETURN.replace("pull", "pul").replace("    [", "    return ["),
    ),
    "a rules file": ("rules.toml", RULE),
    "a rules file that is no TOML": ("rules.toml", "[[rule]\n"),
    "a rules file of another ending": ("rules.toml.txt", RULE),
    "a stricter table": (f"{OURS}.toml", STRICTER),
    "the rows of one": (f"{OURS}.csv", ROWS),
}


@pytest.mark.parametrize("case", NOT_LOADED)
def test_what_the_plugin_folder_meant_passes_nothing(
    cli_main: Command, trusted: Path, case: str
) -> None:
    name, text = NOT_LOADED[case]
    (trusted / name).parent.mkdir(exist_ok=True)
    (trusted / name).write_bytes(text if isinstance(text, bytes) else text.encode())
    done = cli_main(*PULL)
    assert done.status == 3, done.out
    assert name.partition("/")[0].partition(".")[0] in done.out
    assert cli_main(*PULL[:-1], "19 lbf").status == 1
    assert cli_main(*PULL, "--strict").status == 4
    assert cli_main("rules").status == 2
    assert cli_main(*PULL, "--bundled-only").status == 0


def test_a_plugin_folder_that_is_not_there_passes_nothing(cli_main: Command, trusted: Path) -> None:
    trusted.rename(trusted.with_name("Trusted"))
    done = cli_main(*PULL)
    assert done.status == 3
    assert "No such file" in done.out


def test_an_empty_plugin_folder_passes_nothing(cli_main: Command, trusted: Path) -> None:
    """As of a share that is not mounted."""
    (trusted / "shelf.py").unlink()
    done = cli_main(*PULL)
    assert done.status == 3
    assert "is an empty folder" in done.out
    assert cli_main(*PULL, "--strict").status == 4
    assert cli_main("rules").status == 2
    (trusted / "README.txt").write_text("ours", encoding="utf-8")  # somebody has been there
    assert cli_main(*PULL).status == 0


@pytest.mark.parametrize(
    "name",
    [
        "README.txt",
        "_shared.py",
        "notes.md",
        "data.csv",
        "pyproject.toml",
        "pics/a.png",
        "tests/test_ours.py",
    ],
)
def test_files_that_are_no_plugins_are_named(cli_main: Command, trusted: Path, name: str) -> None:
    (trusted / name).parent.mkdir(exist_ok=True)
    (trusted / name).write_text("[tool]\n" if name.endswith("l") else "a,b\n", encoding="utf-8")
    done = cli_main(*PULL, "--format", "json")
    assert (done.status, done.err) == (0, "")
    named = [n for n in done.json["not_checked"] if Path(name).parts[0] in str(n)]
    assert len(named) == 1
    assert "trusted" in str(named)
    assert cli_main(*PULL, "--strict").status == 0
    assert cli_main("rules").status == 0


def test_a_plugin_of_the_folder_may_have_its_tables_there(cli_main: Command, trusted: Path) -> None:
    hook = TABLES_HOOK.replace(' / "tables_of_ours"', "")
    (trusted / "ours.py").write_text(hook, encoding="utf-8")
    (trusted / f"{OURS}.toml").write_text(STRICTER, encoding="utf-8")
    (trusted / f"{OURS}.csv").write_text(ROWS, encoding="utf-8")
    assert cli_main(*PULL).status == 1
    done = cli_main(*PULL[:-1], "25 lbf", "--strict")
    assert (done.status, done.err) == (0, "")
    sidecar(trusted, STRICTER.replace("stricter_than", "stricter_then"))
    assert cli_main(*PULL).status == 3


def test_an_installed_plugin_that_fails_is_named_and_no_more(
    plugged: Command, outside: Outside
) -> None:
    outside.add("demo_broken", "raise RuntimeError('at import')")
    done = plugged(*PULL)
    assert done.status == 0
    assert "at import" in " ".join(done.out.split())


def test_a_table_of_an_installed_plugin_that_is_lost(plugged: Command, outside: Outside) -> None:
    outside.add("demo_tables", TABLES_HOOK)
    folder = outside.folder / "tables_of_ours"
    folder.mkdir()
    sidecar(folder, STRICTER.replace("stricter_than", "stricter_then"))
    rows(folder, ROWS)
    done = plugged(*PULL)
    assert done.status == 3
    assert "stricter_then" in done.out
    assert plugged(*LEAK).status == 0


# what is bundled


def posing(outside: Outside, entry: str, module: str) -> None:
    """Install a distribution that calls itself like ours."""
    about = "Name: wirecalc\nVersion: 9\n"
    installed(outside, "wirecalc", f"[wirecalc]\n{entry}\n".encode(), about)
    (outside.folder / "posing.py").write_text(module, encoding="utf-8")


@pytest.mark.parametrize("entry", ["posing = posing", "bundled = posing"])
def test_a_distribution_of_our_name_is_one_from_outside(
    plugged: Command, outside: Outside, entry: str
) -> None:
    posing(outside, entry, "raise RuntimeError('it was run')")
    done = plugged(*PULL, "--bundled-only")
    assert (done.status, done.err) == (0, "")
    assert "it was run" not in done.out
    assert plugged(*PULL).status == 0
    listed = plugged("plugins", "--format", "json").json["plugins"]
    assert len(listed[0]["calculations"]) > 40
    assert listed[0]["version"] != "9"
    assert [p["state"] for p in listed] == ["loaded", "failed"]


def test_it_takes_no_bundled_name(plugged: Command, outside: Outside) -> None:
    posing(outside, "posing = posing", calculation("pull"))
    assert plugged(*PULL[:-1], "19 lbf").status == 1
    assert "the name pull is a bundled calculation's" in plugged(*PULL).err


# settings


@pytest.mark.parametrize(
    "name",
    ["WIRECALC_RULE", "WIRECALC_CONFG", "wirecalc_rules", "WIRECALC_STRCT", "WIRCALC_RULES",
     "WIRECALC_RULES_FILE"],
)  # fmt: skip
def test_a_variable_that_there_is_none_of_is_named(
    cli_main: Command, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    monkeypatch.setenv(name, "shop.toml")
    done = cli_main(*PULL, "--format", "json")
    assert done.status == 0
    (named,) = [n for n in done.json["not_checked"] if name in str(n)]
    assert "did you mean WIRECALC_" in str(named)


@pytest.mark.parametrize("name", ["WIRECALC_TRACEBACK", "WIRE_GAUGE", "CALC_RULES", "STRICT"])
def test_other_variables_are_not_named(
    cli_main: Command, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    monkeypatch.setenv(name, "0")
    assert name not in cli_main(*PULL).out


@pytest.mark.parametrize("name", ["config.tml", "Config.toml", "config.toml.txt", "settings.toml"])
def test_a_settings_file_of_another_name_passes_nothing(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    folder = tmp_path / ".config" / "wirecalc"
    folder.mkdir(parents=True)
    monkeypatch.delenv(settings.CONFIG)
    monkeypatch.setenv("HOME", str(tmp_path))
    (folder / "notes.md").write_text("ours", encoding="utf-8")
    assert cli_main(*PULL).status == 0
    (folder / name).write_text('rules_files = ["shop.toml"]\n', encoding="utf-8")
    done = cli_main(*PULL)
    assert done.status == 3
    assert name in done.out
    assert cli_main(*PULL, "--strict").status == 4
    assert cli_main("rules").status == 2
    assert cli_main(*PULL, "--bundled-only").status == 0
    (folder / "config.toml").write_text("strict = true\n", encoding="utf-8")
    (folder / name).unlink(missing_ok=name != "config.toml")
    assert cli_main(*PULL).status == 0


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may read all")
def test_a_file_that_may_not_be_read_passes_nothing(cli_main: Command, folder: Path) -> None:
    (folder / f"{OURS}.toml").chmod(0)
    assert cli_main(*PULL).status == 3
