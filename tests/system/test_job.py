"""`wirecalc job`: a new sheet, what is missing on one, what a shop asks for, the same again."""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .conftest import Outside
from .pages import SHEETS

Command = Callable[..., Any]
RULE = """
from wirecalc import RequiredChecks, hookimpl

@hookimpl
def wirecalc_house_rules():
    return [RequiredChecks("whole ticket", ("bench",), ("ring", "strip"))]
"""
SHEET = '[job]\ntitle = "t"\nkind = "bench"\n[[check]]\ncalculation = "pull"\n'
SHEET += 'wire = "18 AWG"\nterminal = "ring"\nforce = "24 lbf"\n'


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    path = tmp_path / "sheet.toml"
    path.write_text(SHEET, encoding="utf-8")
    return path


def test_new_alone_says_which_kinds_there_are(cli_main: Command) -> None:
    done = cli_main("job", "--new")
    assert (done.status, done.err) == (0, "")
    assert {"refrigerator", "freezer", "washer", "dryer", "range", "dishwasher"} <= set(
        re.findall(r"^  ([a-z-]+) +\d+ checks$", done.out, re.MULTILINE)
    )


def test_new_sheet_is_written_once_and_can_be_run(command: Command, empty_folder: Path) -> None:
    done = command("job", "--new", "refrigerator")
    assert (done.status, done.err) == (0, "")
    path = empty_folder / "refrigerator.toml"
    written = path.read_bytes()
    assert tomllib.loads(written.decode())["job"]["kind"] == "refrigerator"
    assert command("job", "refrigerator.toml").status == 3
    assert command("job", "refrigerator.toml", "--check-only").status == 3
    again = command("job", "--new", "refrigerator")
    assert (again.status, again.out) == (2, "")
    assert "is there already, and stays as it is" in again.err
    assert path.read_bytes() == written
    assert [p.name for p in empty_folder.iterdir()] == ["refrigerator.toml"]


def test_new_sheet_goes_where_it_is_told(cli_main: Command, tmp_path: Path) -> None:
    to = tmp_path / "call.toml"
    assert cli_main("job", "--new", "dryer", "--output", str(to)).status == 0
    assert "wirecalc job call.toml" in to.read_text(encoding="utf-8")
    spaced = tmp_path / "my call.toml"
    done = cli_main("job", "--new", "dryer", "--output", str(spaced))
    assert f"wirecalc job '{spaced}'" in " ".join(done.out.replace("\\\n", "").split())
    assert "wirecalc job 'my call.toml'" in spaced.read_text(encoding="utf-8")
    nowhere = cli_main("job", "--new", "dryer", "--output", str(tmp_path / "none" / "x.toml"))
    assert (nowhere.status, nowhere.out) == (2, "")
    assert "cannot be written" in nowhere.err


def test_new_sheet_under_a_name_that_is_no_text(cli_main: Command, tmp_path: Path) -> None:
    to = tmp_path / os.fsdecode(b"x\xff.toml")
    assert cli_main("job", "--new", "dryer", "--output", str(to)).status == 0
    assert tomllib.loads(to.read_text(encoding="utf-8"))["job"]["kind"] == "dryer"


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--new", "dishwaser"), "did you mean dishwasher?"),
        (("--new", "boat"), "the kinds are refrigerator"),
        (("--new", "dryer", "--format", "json"), "--new is not written as json"),
        (("--new", "dryer", "sheet.toml"), "was not expected beside --new"),
        (("--new", "dryer", "--check-only"), "--check-only: means nothing beside --new"),
        (("--new", "dryer", "--chart", "x.svg"), "--chart: means nothing without --history"),
        (("sheet.toml", "--chart", "x.svg"), "--format html"),
        (("--check-only",), "needs a job sheet"),
        (("sheet.toml", "--check-onli"), "did you mean --check-only?"),
    ],
)
def test_refused(in_folder: Command, empty_folder: Path, words: tuple[str, ...], says: str) -> None:
    done = in_folder("job", *words)
    assert (done.status, done.out) == (2, "")
    assert says in done.err
    assert not list(empty_folder.iterdir())


def test_a_file_that_a_check_names_stands_beside_the_sheet(
    in_folder: Command, empty_folder: Path
) -> None:
    jobs = empty_folder / "jobs"
    jobs.mkdir()
    (jobs / "p.csv").write_text("force\n" + "27 lbf\n27.5 lbf\n28 lbf\n" * 3)
    (empty_folder / "p.csv").write_text("force\n1 lbf\n2 lbf\n")  # another of the same name
    sheet = SHEET.replace('"pull"', '"pull-batch"').replace(
        'force = "24 lbf"', 'readings = "p.csv"'
    )
    (jobs / "x.toml").write_text(sheet)
    done = in_folder("job", "jobs/x.toml", "--format", "json")
    assert done.json["verdict"] == "pass"
    assert "jobs" not in done.out
    assert in_folder("job", "x.toml", "--format", "json", cwd=jobs).out == done.out
    assert in_folder("job", str(jobs / "x.toml"), "--format", "json").out == done.out
    (jobs / "p.csv").unlink()
    gone = in_folder("job", "jobs/x.toml")
    assert (gone.status, gone.out) == (2, "")
    assert "jobs/p.csv" in gone.err


@pytest.mark.parametrize(
    "check",
    [
        'calculation = "trace"\nrecording = "pipe.csv"\n',
        'calculation = "pull-batch"\nwire = "18 AWG"\nterminal = "ring"\nreadings = "pipe.csv"\n',
    ],
)
def test_a_pipe_that_a_sheet_names_is_refused_and_not_waited_for(
    command: Command, empty_folder: Path, check: str
) -> None:
    os.mkfifo(empty_folder / "pipe.csv")
    (empty_folder / "x.toml").write_text(f'[job]\ntitle = "t"\n[[check]]\n{check}')
    done = command("job", "x.toml")
    assert (done.status, done.out) == (2, "")
    assert "'pipe.csv' is no plain file; save it as one first" in done.err


@pytest.mark.parametrize("where", ["check", "readings"])
@pytest.mark.parametrize("options", [(), ("--format", "html"), ("--check-only",)])
def test_no_result_takes_the_place_of_a_file_that_the_sheet_names(
    in_folder: Command, empty_folder: Path, where: str, options: tuple[str, ...]
) -> None:
    jobs = empty_folder / "jobs"
    jobs.mkdir()
    content = "force\n" + "27 lbf\n27.5 lbf\n28 lbf\n" * 3
    (jobs / "p.csv").write_text(content)
    (empty_folder / "link").symlink_to(jobs / "p.csv")
    named = 'readings = "p.csv"\n' if where == "check" else 'uses = "a"\n'
    more = 'note = "a\\u0000b"\n' if where == "check" else '[readings.a]\nreadings = "p.csv"\n'
    sheet = SHEET.replace('"pull"', '"pull-batch"').replace('force = "24 lbf"\n', named)
    (jobs / "x.toml").write_text(sheet + more)
    for output in ("jobs/p.csv", "link"):
        done = in_folder("job", "jobs/x.toml", *options, "--output", output)
        assert (done.status, done.out) == (2, "")
        assert "is read for this result, which would be written over it" in done.err
        assert (jobs / "p.csv").read_text() == content
    assert in_folder("job", "jobs/x.toml", *options, "--output", "else").status in (0, 3)


def test_check_only_says_what_is_missing(cli_main: Command, sheet: Path) -> None:
    machine = SHEET.replace('"bench"', '"refrigerator"')
    sheet.write_text(machine, encoding="utf-8")
    assert cli_main("job", str(sheet)).status == 3
    done = cli_main("job", str(sheet), "--check-only")
    assert done.status == 3
    said = " ".join(done.out.split())
    assert "ground path: ground, not on the sheet, and every job of kind refrigerator" in said
    assert "in [confirmed], covers_back = yes or no" in said
    shown = cli_main("job", str(sheet), "--check-only", "--format", "json")
    assert shown.status == 3
    assert (shown.json["schema"], shown.json["complete"]) == ("wirecalc.job-gaps/1", False)
    assert shown.json["readings"] == []
    sheet.write_text(SHEET, encoding="utf-8")
    done = cli_main("job", str(sheet), "--check-only")
    assert (done.status, done.out) == (0, "SHEET: NOTHING MISSING  t\n")


def test_a_refusal_moves_no_cursor(cli_main: Command, sheet: Path) -> None:
    sheet.write_text(SHEET + 'name = "x\\u001b[2J\\u202e"\nforc = "1"\n', encoding="utf-8")
    done = cli_main("job", str(sheet))
    assert done.status == 2
    assert "check x?[2J?: forc: pull has no such input" in done.err
    assert done.err.replace("\n", "").isprintable()


def test_check_only_refuses_what_the_job_refuses(cli_main: Command, sheet: Path) -> None:
    sheet.write_text(SHEET.replace("24 lbf", "24 lb"), encoding="utf-8")
    done = cli_main("job", str(sheet), "--check-only")
    assert (done.status, done.out) == (2, "")
    assert cli_main("job", str(sheet), "--check-only", "--format", "html").status == 2


def test_a_shop_asks_for_checks(plugged: Command, outside: Outside, sheet: Path) -> None:
    outside.add("demo_list", RULE)
    done = plugged("job", str(sheet), "--format", "json")
    assert done.status == 3
    asked = [n for n in done.json["not_tested"] if n["required"]]
    assert [(n["name"], n["required"], n["rule"]) for n in asked] == [
        (name, True, "“whole ticket” of plugin demo_list") for name in ("ring", "strip")
    ]
    assert "“whole ticket” of plugin demo_list asks for it" in " ".join(
        plugged("job", str(sheet)).out.split()
    )
    assert plugged("job", str(sheet), "--bundled-only").status == 0
    listed = plugged("plugins", "--format", "json").json["plugins"]
    (state,) = [p for p in listed if p["name"] == "demo_list"]
    assert state["state"] == "loaded"


def test_a_shop_adds_a_kind(plugged: Command, outside: Outside, tmp_path: Path) -> None:
    folder = tmp_path / "shop-tables"
    folder.mkdir()
    bundled = Path(__file__).parents[2] / "tables" / "job-kinds"
    sidecar = bundled.with_suffix(".toml").read_text(encoding="utf-8")
    (folder / "job-kinds-shop.toml").write_text(sidecar, encoding="utf-8")
    (folder / "job-kinds-shop.csv").write_text(
        "kind,name,step,stage,calculation,required,one_of,when,reasons,applies_where,holds_with,reads,why,"
        "source,confidence,copies,note\n"
        "ice-maker,fan,power up,as left,duty,yes,,,,,,,as asked,practice,common practice,,\n",
        encoding="utf-8",
    )
    outside.add(
        "demo_kinds",
        "from pathlib import Path\nfrom wirecalc import hookimpl\n\n"
        f"@hookimpl\ndef wirecalc_tables():\n    return [Path({str(folder)!r})]\n",
    )
    assert "  ice-maker" in plugged("job", "--new").out
    to = tmp_path / "ice.toml"
    assert plugged("job", "--new", "ice-maker", "--output", str(to)).status == 0
    assert plugged("job", str(to)).status == 3


@pytest.mark.parametrize("form", ["text", "json", "html"])
@pytest.mark.parametrize("path", SHEETS, ids=lambda p: p.stem)
def test_the_same_sheet_gives_the_same_bytes(cli_main: Command, path: Path, form: str) -> None:
    first = cli_main("job", str(path), "--format", form)
    second = cli_main("job", str(path), "--format", form)
    assert first.out == second.out
    assert first.out


@pytest.mark.parametrize("path", SHEETS, ids=lambda p: p.stem)
def test_first_screen_of_each_example_says_verdict_number_and_next(
    cli_main: Command, path: Path
) -> None:
    done = cli_main("job", str(path))
    top = done.out.splitlines()[:24]
    assert re.match("JOB: (PASS|MARGINAL|CANNOT TELL|FAIL)  ", top[0])
    if "PASS" not in top[0]:
        said = "\n".join(top).partition("\n\nAbout")[0]
        assert "Next  " in said
        assert re.search(r"\d", said.partition("\n")[2])
