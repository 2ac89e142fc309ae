"""`wirecalc job FILE --record FOLDER` and `wirecalc job --history FOLDER`."""

from __future__ import annotations

import datetime
import hashlib
import json
import os
import pty
import subprocess
import sys
import termios
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

import wirecalc
from wirecalc.jobs import record

from .conftest import COMMAND, clean_environment

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
PULL = {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
FAILS = PULL | {"force": "12 lbf"}


def _shop(folder: Path) -> list[Path]:
    return sorted(folder.iterdir()) if folder.is_dir() else []


@pytest.mark.parametrize("form", ["text", "json", "html"])
@pytest.mark.parametrize(("check", "status"), [(PULL, 0), (FAILS, 1), ({"force": "unknown"}, 3)])
def test_output_and_status_are_the_same_as_without_a_record(
    cli_main: Callable[..., Any],
    write_sheet: Callable[..., Path],
    tmp_path: Path,
    form: str,
    check: dict[str, str],
    status: int,
) -> None:
    words = ("job", str(write_sheet(PULL | check)), "--format", form)
    plain = cli_main(*words)
    kept = cli_main(*words, "--record", str(tmp_path / "shop"))
    assert (kept.status, kept.out) == (plain.status, plain.out)
    assert kept.status == status
    (made,) = _shop(tmp_path / "shop")
    assert kept.complaints == [f"recorded in {made}"]


@pytest.mark.parametrize("sheet", sorted(EXAMPLES.glob("*.toml")), ids=lambda p: p.stem)
def test_an_example_is_recorded_once_with_what_the_command_prints(
    cli_main: Callable[..., Any], tmp_path: Path, sheet: Path
) -> None:
    """The second time with charts and all is the same to the byte."""
    if "calculation =" not in sheet.read_text():
        pytest.skip("no job sheet")
    for said in ("recorded in", "recorded before"):
        done = cli_main("job", str(sheet), "--record", str(tmp_path / "shop"))
        assert done.complaints[-1].startswith(said)
    (made,) = _shop(tmp_path / "shop")
    assert (made / "sheet.toml").read_bytes() == sheet.read_bytes()
    for form, name in (("json", "job.json"), ("html", "report.html")):
        assert cli_main("job", str(sheet), "--format", form).out == (made / name).read_text()


@pytest.mark.parametrize(
    ("date", "day"),
    [("date = 2026-03-04", "2026-03-04"), ('date = "2026-03-04"', "2026-03-04"), ("", None)],
)
def test_the_date_is_that_of_the_sheet_or_today(
    cli_main: Callable[..., Any], tmp_path: Path, date: str, day: str | None
) -> None:
    sheet = tmp_path / "dated.toml"
    check = "\n".join(f'{k} = "{v}"' for k, v in PULL.items())
    sheet.write_text(f'[job]\ntitle = "Hums"\nkind = "bench"\n{date}\n[[check]]\n{check}\n')
    before = datetime.date.today()
    cli_main("job", str(sheet), "--record", str(tmp_path / "shop"))
    (made,) = _shop(tmp_path / "shop")
    today = {f"{d}-hums" for d in (before, datetime.date.today())}
    assert made.name.rpartition("-")[0] in ({f"{day}-hums"} if day else today)


def test_a_refused_sheet_records_nothing(
    cli_main: Callable[..., Any], write_sheet: Callable[..., Path], tmp_path: Path
) -> None:
    sheet = write_sheet(PULL | {"force": "24 kg"})
    done = cli_main("job", str(sheet), "--record", str(tmp_path / "shop"))
    assert (done.status, done.out, _shop(tmp_path / "shop")) == (2, "", [])
    assert not (tmp_path / "shop").exists()


@pytest.mark.parametrize(
    ("folder", "says"),
    [
        ("sheet.toml", "there is a file of that name, or above it"),
        ("sheet.toml/shop", "there is a file of that name, or above it"),
        ("none/shop", "the folder above it is not there; make that one first"),
        ("/proc/shop", "cannot be made"),
        ("n" * 300, "File name too long"),
    ],
)
def test_a_folder_that_will_not_do_is_said_and_nothing_is_left(
    cli_main: Callable[..., Any],
    write_sheet: Callable[..., Path],
    tmp_path: Path,
    folder: str,
    says: str,
) -> None:
    sheet = write_sheet(PULL)
    done = cli_main("job", str(sheet), "--record", str(tmp_path / folder))
    assert (done.status, done.out) == (2, "")
    assert len(done.complaints) == 1
    assert says in done.err
    assert _shop(tmp_path) == [sheet]


def test_a_disk_that_takes_no_more(
    write_sheet: Callable[..., Path], tmp_path: Path, empty_folder: Path
) -> None:
    """The limit of a file's size stands for a full disk: the report does not fit."""
    words = ["job", write_sheet(PULL), "--record", tmp_path / "shop"]
    script = f'ulimit -f 8; exec "{COMMAND}" "$@"'
    done = subprocess.run(
        ["bash", "-c", script, "bash", *words],
        capture_output=True,
        cwd=empty_folder,
        env=clean_environment() | {"PYTHONDONTWRITEBYTECODE": "1"},
        check=False,
    )
    assert (done.returncode, done.stdout) == (2, b"")
    assert b"cannot be written (File too large)" in done.stderr
    assert not (tmp_path / "shop").exists()


def test_a_sheet_that_can_be_read_only_once_is_recorded_as_it_was_evaluated(
    command: Callable[..., Any], write_sheet: Callable[..., Path], tmp_path: Path
) -> None:
    content = write_sheet(PULL).read_bytes()
    read, write = os.pipe()
    os.write(write, content)
    os.close(write)
    done = command("job", "/dev/stdin", "--record", str(tmp_path / "shop"), stdin=read)
    os.close(read)
    assert done.status == 0
    (made,) = _shop(tmp_path / "shop")
    assert (made / "sheet.toml").read_bytes() == content


@pytest.mark.parametrize(
    ("old", "new"), [(b"[job]\n", b"[job]\ncost = nan\n"), (b"\n", b"\r\n"), (b"\n", b"\r")]
)
def test_a_sheet_is_recorded_byte_by_byte_whatever_stands_in_it(
    cli_main: Callable[..., Any],
    write_sheet: Callable[..., Path],
    tmp_path: Path,
    old: bytes,
    new: bytes,
) -> None:
    sheet = write_sheet(PULL)
    sheet.write_bytes(sheet.read_bytes().replace(old, new))
    assert cli_main("job", str(sheet), "--record", str(tmp_path / "shop")).status == 0
    (made,) = _shop(tmp_path / "shop")
    assert (made / "sheet.toml").read_bytes() == sheet.read_bytes()


def test_recorders_of_one_folder_do_not_disturb_each_other(
    write_sheet: Callable[..., Path], tmp_path: Path
) -> None:
    sheet = write_sheet(PULL)
    other = tmp_path / "other.toml"
    other.write_text(sheet.read_text().replace("invented", "another"))
    words = [[COMMAND, "job", s, "--record", tmp_path / "shop"] for s in (sheet, other) * 4]
    runs = [subprocess.Popen(w, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE) for w in words]
    said = [run.communicate()[1].decode() for run in runs]
    assert [run.returncode for run in runs] == [0] * 8
    assert sorted(s.split(" ")[2] for s in said) == ["before,"] * 6 + ["in"] * 2
    assert len(_shop(tmp_path / "shop")) == 2
    for made in _shop(tmp_path / "shop"):
        record.read(made)


def test_options_that_mean_nothing_together(cli_main: Callable[..., Any], tmp_path: Path) -> None:
    folder = str(tmp_path)
    for words, says in (
        (("--history", folder, "sheet.toml"), "'sheet.toml': --history takes no sheet"),
        (("--history", folder, "--record", folder), "--record: means nothing beside --history"),
        (("--history", folder, "--new", "oven"), "--new: means nothing beside --history"),
        (("a.toml", "--record", folder, "--check-only"), "--check-only: means nothing beside"),
        (("--history", folder, "--format", "html"), "write text or json"),
        (("--history", folder, "--format", "csv"), "write text or json"),
        (("--history", folder, "--format", "markdown"), "write text or json"),
        (("--history", folder, "--chart", "x.gif"), "'x.gif' is none of .svg, .png, .csv"),
        (("--history", ""), "is empty"),
        (("--history",), "has no value"),
        (("sheet.toml", "--record"), "has no value"),
        (("--history", str(tmp_path / "none")), "there is no such folder"),
        (("--history", str(COMMAND)), "is no folder that can be read"),
    ):
        done = cli_main("job", *words)
        assert (done.status, done.out) == (2, "")
        assert says in done.err, words


def _schema() -> Any:
    path = Path(wirecalc.__file__).parent / "output" / "schemas" / "history.json"
    return Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))


def _with_callback(tmp_path: Path, of: str) -> Path:
    check = "\n".join(f'{k} = "{v}"' for k, v in FAILS.items())
    sheet = tmp_path / "again.toml"
    said = f'kind = "bench"\ndate = 2026-04-01\ntechnician = "Ann (invented)"\ncallback_of = "{of}"'
    sheet.write_text(
        f'[job]\ntitle = "Again"\n{said}\ncallback_cause = "crimp came off"\n[[check]]\n{check}\n'
    )
    return sheet


def test_history_tells_what_the_sheets_say(cli_main: Callable[..., Any], tmp_path: Path) -> None:
    sheet = tmp_path / "first.toml"
    check = "\n".join(f'{k} = "{v}"' for k, v in PULL.items())
    head = '[job]\ntitle = "First"\nkind = "bench"\ndate = 2026-03-04\n'
    missing = '[[not_tested]]\nname = "insulation"\nrequired = false\nreason = "no meter"'
    sheet.write_text(f"{head}[[check]]\n{check}\n{missing}\n")
    shop = str(tmp_path / "shop")
    cli_main("job", str(sheet), "--record", shop)
    (first,) = _shop(tmp_path / "shop")
    cli_main("job", str(_with_callback(tmp_path, first.name)), "--record", shop)
    done = cli_main("job", "--history", shop, "--format", "json")
    told = done.json
    assert (done.status, done.err, list(_schema().iter_errors(told))) == (0, "", [])
    assert (told["n"], told["first"], told["last"]) == (2, "2026-03-04", "2026-04-01")
    assert {v: n for v, n in told["verdicts"].items() if n} == {"pass": 1, "fail": 1}
    (callback,) = told["callbacks"]
    assert (callback["cause"], callback["within_30_days"]) == ("crimp came off", 1)  # 28 days
    assert [(g["name"], g["n"]) for g in told["by_technician"]] == [
        ("Ann (invented)", 1),
        (None, 1),
    ]
    (ring,) = told["by_terminal"]
    assert (ring["name"], ring["verdicts"]["pass"], ring["verdicts"]["fail"]) == ("ring", 1, 1)
    assert told["missing"] == [{"name": "insulation", "how": "not tested", "n": 1, "required": 0}]


@pytest.mark.parametrize(
    ("said", "days"),
    [
        ("2026-01-15", "within_90_days"),  # 76 days before 2026-04-01
        ("2025-12-01", "later"),
        ("last winter", "days_not_known"),
        ("2026-03-04-first-01234567", "days_not_known"),  # no such record in the folder
        ("../shop", "days_not_known"),
    ],
)
def test_a_callback_goes_back_to_a_date_or_to_words(
    cli_main: Callable[..., Any], tmp_path: Path, said: str, days: str
) -> None:
    cli_main("job", str(_with_callback(tmp_path, said)), "--record", str(tmp_path / "shop"))
    told = cli_main("job", "--history", str(tmp_path / "shop"), "--format", "json").json
    (callback,) = told["callbacks"]
    assert (callback["n"], callback[days]) == (1, 1)


def test_a_damaged_or_foreign_record_is_named_and_the_rest_goes_on(
    cli_main: Callable[..., Any], write_sheet: Callable[..., Path], tmp_path: Path
) -> None:
    shop = tmp_path / "shop"
    for check in (PULL, FAILS):
        cli_main("job", str(write_sheet(check)), "--record", str(shop))
    damaged = _shop(shop)[0]
    (damaged / "report.html").write_text("")
    (shop / "notes.txt").write_text("mine")
    (shop / ".hidden").mkdir()
    done = cli_main("job", "--history", str(shop))
    assert (done.status, done.err) == (3, "")
    assert done.out.startswith("1 job, ")
    assert "2 more could not be read" in done.out.splitlines()[0]
    assert "- notes.txt: is not named as a record is" in done.out
    told = cli_main("job", "--history", str(shop), "--format", "json").json
    assert list(_schema().iter_errors(told)) == []
    assert [n["name"] for n in told["not_read"]] == [damaged.name, "notes.txt"]


def test_a_name_that_is_no_text_can_be_told_in_a_file(
    cli_main: Callable[..., Any], tmp_path: Path
) -> None:
    (tmp_path / "shop").mkdir()
    os.close(os.open(os.fsencode(tmp_path / "shop") + b"/x\xff", os.O_CREAT))
    told = tmp_path / "told.json"
    words = ("--history", str(tmp_path / "shop"), "--format", "json", "--output", str(told))
    assert cli_main("job", *words).status == 3
    assert json.loads(told.read_text(encoding="utf-8"))["not_read"][0]["name"] == "x?"


def test_a_damaged_history_does_not_fit_its_schema(
    cli_main: Callable[..., Any], tmp_path: Path
) -> None:
    shop = tmp_path / "shop"
    cli_main("job", str(_with_callback(tmp_path, "a word")), "--record", str(shop))
    (shop / "notes.txt").write_text("mine")
    told = cli_main("job", "--history", str(shop), "--format", "json").json
    assert list(_schema().iter_errors(told)) == []
    for key in told:
        assert list(_schema().iter_errors({k: v for k, v in told.items() if k != key})), key
    for name in ("callbacks", "by_technician", "by_tool", "by_terminal", "not_read"):
        for key in told[name][0]:
            without = {k: v for k, v in told[name][0].items() if k != key}
            assert list(_schema().iter_errors(told | {name: [without]})), (name, key)


def _on_a_terminal(words: list[str]) -> bytes:
    """Run the command with a terminal as its stderr, and return what that showed first."""
    ours, theirs = pty.openpty()
    termios.tcsetwinsize(theirs, (24, 80))
    subprocess.run([COMMAND, *words], stdout=subprocess.DEVNULL, stderr=theirs, check=True)
    os.set_blocking(ours, False)
    try:
        return os.read(ours, 4096)
    except BlockingIOError:  # it showed nothing
        return b""
    finally:
        os.close(theirs)
        os.close(ours)


def test_progress_shows_on_a_terminal_and_nowhere_else(
    command: Callable[..., Any], tmp_path: Path
) -> None:
    _many(tmp_path / "shop", 20)
    words = ["job", "--history", str(tmp_path / "shop")]
    assert b"/20" in _on_a_terminal(words)
    assert command(*words).err == ""


def _many(folder: Path, n: int) -> None:
    """Write records as plain files, unflushed: it is quick, and the reader sees no difference."""
    folder.mkdir()
    given = {"name": "terminal", "value": "ring", "from": "sheet"}
    finding = {"verdict": "pass", "inputs": [given, {"name": "ambient", "from": "unknown"}]}
    check = {"name": "pull", "stage": "as left", "tool": "crimper 3", "finding": finding}
    for number in range(n):
        about = {"technician": f"t{number % 7} (invented)", "note": "x" * 500}
        job = {"schema": "wirecalc.job/1", "verdict": "pass", "about": about, "not_tested": []}
        made = record.Record(
            datetime.date(2026, 1, 1) + datetime.timedelta(days=number % 365),
            f"invented {number}",
            b"[job]",
            json.dumps({**job, "checks": [check]}),
            "<!DOCTYPE html>",
        )
        where = folder / made.name
        where.mkdir()
        for name, content in made.contents.items():
            (where / name).write_bytes(content)


_PEAKS = """
import sys, tracemalloc
from itertools import islice
from pathlib import Path
from wirecalc.commands import job_record
from wirecalc.jobs import record

folder = Path(sys.argv[1])
for n in (10, 1_000, 10_000):  # what is imported or cached the first time is no part of it
    tracemalloc.start()
    found = job_record.count(folder, islice(record.entries(folder), n))
    print(found.n, len(found.not_read), tracemalloc.get_traced_memory()[1])
    tracemalloc.stop()
"""


def test_memory_does_not_grow_with_the_records(tmp_path: Path) -> None:
    """Measured in a process of its own: one that ran other tests has tables of its own to grow."""
    _many(tmp_path / "shop", 10_000)
    done = subprocess.run(
        [sys.executable, "-c", _PEAKS, str(tmp_path / "shop")],
        capture_output=True, text=True, check=True, env=clean_environment(),
    )  # fmt: skip
    first, few, many = ([int(w) for w in line.split()] for line in done.stdout.splitlines())
    assert [row[:2] for row in (first, few, many)] == [[10, 0], [1_000, 0], [10_000, 0]]
    # Python's own table of interned parts of paths is made anew now and then, and takes 1 MB
    # then; 10,000 records that are kept take 40 MB.
    assert many[2] < few[2] + 2_000_000


def test_a_name_can_be_checked_with_other_tools(
    cli_main: Callable[..., Any], write_sheet: Callable[..., Path], tmp_path: Path
) -> None:
    """As docs/record.md says: cat sheet.toml job.json report.html | sha256sum."""
    cli_main("job", str(write_sheet(PULL)), "--record", str(tmp_path / "shop"))
    (made,) = _shop(tmp_path / "shop")
    joined = b"".join((made / n).read_bytes() for n in ("sheet.toml", "job.json", "report.html"))
    assert made.name[-8:] == hashlib.sha256(joined).hexdigest()[:8]
