"""The installed command as a shell and a script meet it: exit status, streams and files."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .conftest import BUNDLED

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
# 18 AWG in a 6.5 mm closed barrel: least 6.75 mm, and insulation in the barrel below 6.5 mm
STRIP = ("strip", "--wire", "18 AWG", "--style", "closed", "--barrel-length", "6.5 mm")
MARGINAL = (*STRIP, "--stripped", "6.6 mm")
SHEETS = sorted(Path(__file__).parents[2].glob("docs/examples/*.toml"))
EXPECTED_EXIT = {
    "refrigerator": 0,
    "dishwasher": 1,
    "shed-freezer": 1,
    "washer": 0,
    "oven": 0,
    "pull-class": 1,
    "microwave": 0,
}  # as the sheets' headings say


@pytest.mark.parametrize(
    ("force", "status", "word"),
    [
        ("24 lbf", 0, "PASS"),  # UL 486A asks for 20 lbf of an 18 AWG crimp
        ("20 lbf", 0, "PASS"),
        ("19.2 lbf", 1, "FAIL"),
        ("19.99999 lbf", 1, "FAIL"),
        ("20.3 lbf ±0.5 lbf", 3, "CANNOT TELL"),
        ("20.3 lbf +/-0.2 lbf", 0, "PASS"),
        ("unknown", 3, "CANNOT TELL"),
        ("24", 2, ""),
    ],
)
def test_exit_status_and_first_word(command: Command, force: str, status: int, word: str) -> None:
    done = command(*PULL, force)
    assert done.status == status
    assert done.out.startswith(word)
    assert bool(done.out) == (status != 2)
    assert bool(done.err) == (status == 2)


@pytest.mark.parametrize("name", EXPECTED_EXIT)
def test_example_job_sheet(in_folder: Command, name: str) -> None:
    (sheet,) = (s for s in SHEETS if s.stem == name)
    done = in_folder("job", str(sheet))
    assert (done.status, done.err) == (EXPECTED_EXIT[name], "")


def test_no_marginal_makes_marginal_exit_3(in_folder: Command) -> None:
    assert in_folder(*MARGINAL).status == 0
    done = in_folder(*MARGINAL, "--no-marginal")
    assert done.status == 3
    assert done.out.startswith("MARGINAL")
    assert in_folder(*PULL, "24 lbf", "--no-marginal").status == 0
    assert in_folder(*PULL, "19 lbf", "--no-marginal").status == 1


def test_no_marginal_counts_in_a_job(in_folder: Command, write_sheet: Callable[..., Path]) -> None:
    inputs = {"wire": "18 AWG", "style": "closed", "barrel_length": "6.5 mm"}
    sheet = write_sheet({"calculation": "strip", **inputs, "stripped": "6.6 mm"})
    assert in_folder("job", str(sheet)).status == 0
    assert in_folder("job", str(sheet), "--no-marginal").status == 3


def test_listing_shows_each_under_its_part(in_folder: Command) -> None:
    done = in_folder()
    assert (done.status, done.err) == (0, "")
    parts: dict[str, list[str]] = {}
    for line in done.out.splitlines()[1:]:
        if line and not line.startswith(" "):
            part = parts.setdefault(line, [])
        elif line.startswith("  ") and not line.startswith("   "):
            part.append(line.split()[0])
    del parts["commands"]
    assert {part: names for part, names in parts.items() if names} == BUNDLED


@pytest.mark.parametrize(
    "before", [("--strict",), ("--format", "json"), ("--only-plugins", "a", "--working")]
)
def test_options_before_the_name_are_told_to_stand_behind_it(
    in_folder: Command, before: tuple[str, ...]
) -> None:
    done = in_folder(*before, *PULL, "24 lbf")
    assert (done.status, done.out) == (2, "")
    (line,) = done.err.splitlines()
    assert f"write the calculation or command first: wirecalc pull {before[0]}" in line


@pytest.mark.parametrize("name", ["job", "batch"])
def test_options_of_a_command_stand_in_one_column(in_folder: Command, name: str) -> None:
    listed = in_folder(name, "--help").out.partition("\noptions\n")[2]
    assert len({len(m) for m in re.findall(r"^  --\S+(?: \S+)?  +", listed, re.MULTILINE)}) == 1


@pytest.mark.parametrize(
    "words", [["--ambient", "-18C"], ["--ambient=-18 C"], ["--ambient", "−18 °C"]]
)
def test_negative_value(in_folder: Command, words: list[str]) -> None:
    rest = ("breaker", "--current", "8.7 A", "--breaker", "15 A", "--building-wire", "14 AWG")
    done = in_folder(*rest, *words, "--format", "json")
    assert done.status in (0, 3), done.err
    (ambient,) = (i for i in done.json["inputs"] if i["name"] == "ambient")
    assert (ambient["value"], ambient["unit"], ambient["from"]) == (-18, "C", "typed")


def test_output_file_is_whole_and_stdout_empty(command: Command, empty_folder: Path) -> None:
    printed = command(*PULL, "19 lbf")
    done = command(*PULL, "19 lbf", "--output", "finding.txt")
    assert (done.status, done.out, done.err) == (1, "", "")
    assert [p.name for p in empty_folder.iterdir()] == ["finding.txt"]
    assert (empty_folder / "finding.txt").read_text(encoding="utf-8") == printed.out


def test_output_file_replaces_an_old_one(in_folder: Command, empty_folder: Path) -> None:
    old = empty_folder / "finding.json"
    old.write_text("{" * 100_000, encoding="utf-8")
    assert in_folder(*PULL, "24 lbf", "--format", "json", "--output", "finding.json").status == 0
    printed = in_folder(*PULL, "24 lbf", "--format", "json")
    assert old.read_text(encoding="utf-8") == printed.out


@pytest.mark.parametrize("place", ["missing/finding.txt", "folder", "", "file/finding.txt"])
def test_unwritable_place_is_refused(in_folder: Command, empty_folder: Path, place: str) -> None:
    (empty_folder / "folder").mkdir()
    (empty_folder / "file").write_text("kept", encoding="utf-8")
    done = in_folder(*PULL, "24 lbf", "--output", place)
    assert (done.status, done.out) == (2, "")
    assert "--output" in done.err
    assert sorted(p.name for p in empty_folder.iterdir()) == ["file", "folder"]
    assert list((empty_folder / "folder").iterdir()) == []


def test_nothing_is_imported_from_the_current_folder(command: Command, empty_folder: Path) -> None:
    for name in ("wirecalc", "wirecalc_plugins", "json", "pint", "pluggy", "tabulate", "csv"):
        hostile = f"import sys\nsys.stderr.write('took {name} from here')\nsys.exit(1)\n"
        (empty_folder / f"{name}.py").write_text(hostile, encoding="utf-8")
    for words in ([*PULL, "107 N"], [*PULL, "24 lbf", "--format", "json"], [], ["tables", "awg"]):
        done = command(*words)
        assert (done.status, done.err) == (0, "")


def test_plugins_of_the_current_folder_are_not_found(command: Command, empty_folder: Path) -> None:
    info = empty_folder / "hostile-1.0.dist-info"
    info.mkdir()
    (info / "METADATA").write_text("Name: hostile\nVersion: 1.0\n", encoding="utf-8")
    (info / "entry_points.txt").write_text("[wirecalc]\nhostile = hostile\n", encoding="utf-8")
    (empty_folder / "hostile.py").write_text("raise SystemExit(1)\n", encoding="utf-8")
    done = command("plugins")
    assert (done.status, done.err) == (0, "")
    assert "hostile" not in done.out


@pytest.mark.parametrize(
    "words",
    [
        *(("--bogus",), ("explain",)),
        *(("schema",), ("schema", "batches"), ("job",), ("job", "nope.toml")),
        *(("plugins", "--bogus"), PULL, (*PULL, "24 lbf", "stray")),
        (*PULL, "24 lbf", "--format", "xml"),
        (*PULL, "24 lbf", "--format", "json", "--format", "text"),
    ],
    ids=" ".join,
)
def test_wrong_command_exits_2(in_folder: Command, words: tuple[str, ...]) -> None:
    done = in_folder(*words)
    assert (done.status, done.out) == (2, "")
    assert len(done.complaints) == 1
    assert not done.complaints[0].endswith((";", "; "))


def test_version(command: Command) -> None:
    assert command("--version").out == command("version").out
    assert command("--version").out.startswith("wirecalc ")


NOT_TAKEN = [
    ("explain", "pull", "--chart", "x.svg"),
    ("explain", "pull", "--working"),
    ("tables", "--chart", "x.svg"),
    ("tables", "awg", "--no-marginal"),
    ("tables", "--format", "csv"),
    ("plugins", "--chart=x.svg"),
    ("rules", "--format", "csv"),
    ("rules", "--working"),
    ("schema", "finding", "--chart", "x.svg"),
    ("--format", "json"),
    ("--chart", "x.svg"),
    *((name, "--short") for name in ("explain", "tables", "plugins", "rules", "schema")),
    ("completion", "bash", "--short"),
    ("--short",),
]


@pytest.mark.parametrize("words", NOT_TAKEN, ids=" ".join)
def test_option_that_a_command_does_not_take_is_refused(
    cli_main: Callable[..., Any], words: tuple[str, ...]
) -> None:
    """It was passed over in silence: nobody saw that no chart was drawn."""
    done = cli_main(*words)
    assert (done.status, done.out) == (2, "")
    (line,) = done.complaints
    option = next(w for w in words if w.startswith("--")).partition("=")[0]
    assert line.startswith(f"{option}: ")
    assert "it takes --" in line or "write text" in line
    assert "--wire" not in line  # inputs of the calculation are none of the command's


def test_help_of_a_command_shows_what_it_takes(cli_main: Callable[..., Any]) -> None:
    rules = cli_main("rules", "--help").out
    assert "--format FORM       text, json\n" in rules
    assert "--chart" not in rules
    assert "--chart" in cli_main("pull", "--help").out
    for name, takes in (
        ("ask", True),
        ("batch", True),
        ("tables", False),
        ("job", True),
        ("pull", True),
    ):
        assert ("--short" in cli_main(name, "--help").out) is takes


def test_help_tells_how_two_ohm_readings_are_typed(cli_main: Callable[..., Any]) -> None:
    """What it takes to share an offset is said where it is asked for; typed so, it passes."""
    text = " ".join(cli_main("ground", "--help").out.split())
    _, _, rest = text.partition('--same-range "yes"')
    same, _, digit = rest.partition("--meter-resolution")
    assert "with meter_resolution and the error typed with both" in same
    assert "smallest step of its display" in digit
    _, _, reading = text.partition('--ground-resistance "')
    assert "the leads still in it" in reading[:120]
    typed = ("--ground-point", "wired-in", "--ground-resistance", "0.26 ohm ±(1%+3)")
    leads = ("--lead-resistance", "0.20 ohm ±(1%+3)")
    shared = ("--same-range", "yes", "--meter-resolution", "0.01 ohm")
    assert cli_main("ground", *typed, *leads, *shared).status == 0
    assert cli_main("ground", *typed, *leads).status == 3
