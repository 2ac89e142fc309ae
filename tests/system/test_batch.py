"""`wirecalc batch`: what is printed row by row, what is refused, and what a row comes to."""

from __future__ import annotations

import csv
import io
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
from wirecalc.jobs import batch_rows

from .conftest import COMMAND, LONGEST_RUN, Outside, clean_environment

Cli = Callable[..., Any]
ROOT = Path(__file__).parents[2]
PULLS = ROOT / "docs/examples/pulls.csv"
HEAD = "wire,terminal,force"
GOOD = "18 AWG,ring,24 lbf"
WEAK = "18 AWG,ring,19.2 lbf"
VAGUE = "18 AWG,ring,20.3 lbf ±0.5 lbf"
BAD = "18 AWG,rong,24 lbf"
NO_CRITERION = ("no verdict", "not tested", "defect")
SAID = ("confirmed", "denied", "not confirmed", "does not apply")  # by a person, of no check


@pytest.fixture
def write(tmp_path: Path) -> Callable[..., Path]:
    """Write a file of rows."""

    def write_rows(*lines: str | bytes) -> Path:
        path = tmp_path / "rows.csv"
        path.write_bytes(b"".join(_bytes(line) + b"\n" for line in lines))
        return path

    return write_rows


def _bytes(line: str | bytes) -> bytes:
    return line if isinstance(line, bytes) else line.encode()


def _json(cli: Cli, *words: str) -> list[dict[str, Any]]:
    return [json.loads(line) for line in cli("batch", *words, "--format", "json").out.splitlines()]


def _words(found: list[dict[str, Any]]) -> list[str]:
    return [f.get("verdict") or ("refused" if "problems" in f else "none") for f in found]


def test_each_row_comes_to_what_it_says(cli_main: Cli) -> None:
    """The least pull of an 18 AWG ring terminal is 20 lbf (UL 486A); readings of the example."""
    found = _json(cli_main, "pull", str(PULLS), "--label", "sample", "--keep", "learner")
    assert _words(found) == [
        *("pass", "cannot tell", "pass", "fail", "cannot tell", "refused", "refused")
    ]
    assert [f["row"] for f in found] == [2, 3, 4, 5, 6, 7, 8]
    assert [f["label"] for f in found] == ["1", "2", "3", "4", "5", "6", "7"]
    assert [f["kept"] for f in found][:3:2] == [{"learner": "learner 1"}, {"learner": "learner 2"}]


def test_json_lines_fit_their_schemas(cli_main: Cli) -> None:
    schemas = {
        f"wirecalc.{name}/1": Draft202012Validator(cli_main("schema", name).json)
        for name in ("finding", "refused")
    }
    found = _json(cli_main, "pull", str(PULLS), "--label", "sample", "--keep", "learner")
    assert {f["schema"] for f in found} == set(schemas)
    for line in found:
        assert [e.message for e in schemas[line["schema"]].iter_errors(line)] == []
    for key in ("row", "calculation", "problems", "defect"):
        assert not schemas["wirecalc.refused/1"].is_valid({**found[-1], key: None} | {key: 0.5})


@pytest.mark.parametrize("form", ["text", "csv", "markdown", "json"])
def test_a_line_a_row_and_a_word_a_verdict(cli_main: Cli, write: Cli, form: str) -> None:
    path = write(HEAD, GOOD, WEAK, VAGUE, BAD)
    done = cli_main("batch", "pull", str(path), "--format", form)
    assert (done.status, done.err) == (1, "")
    for word in ("pass", "fail", "cannot tell", "refused"):
        assert word in done.out.casefold()
    if form in ("csv", "json"):
        assert len(done.out.splitlines()) == 4 + (form == "csv")


def test_text_is_80_columns_wide_and_ends_with_counts_and_cautions(
    cli_main: Cli, write: Cli
) -> None:
    long = "18 AWG," + "r" * 300 + ",24 lbf"
    path = write(f"part,{HEAD}", f"a,{GOOD}", f"{'b' * 50},{WEAK}", f"d,{long}", f"e,{VAGUE}")
    done = cli_main("batch", "pull", str(path), "--label", "part")
    assert all(len(line) <= 80 for line in done.out.splitlines())
    assert "4 rows: 1 pass, 1 cannot tell, 1 fail, 1 refused" in done.out
    assert "UL 486A" in done.out.partition("Sources")[2]
    assert "Eye protection" in done.out.partition("Take care")[2]
    assert "Local code" in done.out.partition("Take care")[2]


@pytest.mark.parametrize(
    ("rows", "status"),
    [
        ((GOOD,), 0),
        ((GOOD, VAGUE), 3),
        ((GOOD, VAGUE, BAD), 2),
        ((GOOD, WEAK, VAGUE, BAD), 1),
    ],
)
def test_exit_is_the_first_of_1_4_2_3_0(
    cli_main: Cli, write: Cli, rows: tuple[str, ...], status: int
) -> None:
    assert cli_main("batch", "pull", str(write(HEAD, *rows))).status == status


def test_no_marginal_exits_3(cli_main: Cli, write: Cli) -> None:
    # UL 486C asks 25 lbf of a splice of 14 AWG (from memory), UL 486A 50 lbf of a terminal
    path = str(write(HEAD, "14 AWG,butt,45 lbf"))
    assert cli_main("batch", "pull", path).status == 0
    assert cli_main("batch", "pull", path, "--no-marginal").status == 3


DEFECT = """
from collections.abc import Iterator
from typing import Annotated
from wirecalc import Item, Reading, at_most, calculation, hookimpl, PRACTICE

@calculation(part="shop")
def shaky(gap: Annotated[float, Reading("mm", low=0, high=10, text="gap")]) -> Iterator[Item]:
    \"\"\"Is the gap small?\"\"\"
    print("a word of the plugin")
    if gap > 5:
        raise RuntimeError("boom")
    yield at_most("gap", gap, 1.0, "mm", source=PRACTICE)

@hookimpl
def wirecalc_calculations():
    return [shaky]
"""


@pytest.mark.parametrize(("rows", "status"), [(("0.4", "9", "x"), 4), (("0.4", "9", "2"), 1)])
def test_a_defect_is_of_its_row(
    plugged: Cli, outside: Outside, write: Cli, rows: tuple[str, ...], status: int
) -> None:
    outside.add("shop_shaky", DEFECT)
    done = plugged("batch", "shaky", str(write("gap [mm]", *rows)), "--format", "json")
    found = [json.loads(line) for line in done.out.splitlines()]  # no word of the plugin among them
    assert (done.status, len(found)) == (status, 3)
    assert "boom" in found[1]["defect"]
    assert found[0]["verdict"] == "pass"


RULE = """
from wirecalc import HouseRule, at_least, hookimpl, Source, Confidence

OURS = Source("shop", "invented shop", confidence=Confidence.HOUSE)

def stricter(inputs, items):
    yield at_least("pull-out force of the shop", inputs["force"], 25.0, "lbf", source=OURS)

@hookimpl
def wirecalc_house_rules():
    return [HouseRule("stricter", ("pull",), stricter)]
"""


def test_house_rules_and_missing_plugins_count_as_in_a_single_run(
    plugged: Cli, outside: Outside, write: Cli
) -> None:
    outside.add("shop_rule", RULE)
    outside.add("shop_broken", "raise ImportError('no such part')")
    path = str(write(HEAD, GOOD))
    (found,) = _json(plugged, "pull", path)
    assert found["verdict"] == "fail"
    assert [c["origin"] for c in found["criteria"]] == ["standard", "house"]
    assert any("shop_broken" in n["what"] for n in found["not_checked"])
    (alone,) = _json(plugged, "pull", path, "--bundled-only")
    assert alone["verdict"] == "pass"


BAD_ROWS: dict[str, tuple[str | bytes, str]] = {
    "too few cells": ("18 AWG,ring", "2 cells"),
    "too many cells": (f"{GOOD},x", "4 cells"),
    "no unit": ("18 AWG,ring,24", "has no unit"),
    "wrong unit": ("18 AWG,ring,24 V", "unit of voltage"),
    "mass": ("18 AWG,ring,24 lb", "lbf"),
    "decimal comma": ('18 AWG,ring,"24,5 lbf"', "comma"),
    "an expression": ("18 AWG,ring,9**9**9 lbf", "plain number"),
    "not a number": ("18 AWG,ring,nan lbf", "number"),
    "infinite": ("18 AWG,ring,inf lbf", "number"),
    "outside": ("18 AWG,ring,9000 lbf", "outside"),
    "negative": ("18 AWG,ring,-3 lbf", "outside"),
    "left out": ("18 AWG,ring,", "is needed"),
    "a list where one is wanted": ("18 AWG;16 AWG,ring,24 lbf", "wire"),
    "unknown word": (BAD, "did you mean ring"),
    "open quote": ('18 AWG,ring,"24 lbf', "parted"),
    "latin-1": ("18 AWG,ring,24 lbf \u00b11 lbf".encode("latin-1"), "UTF-8"),
    "a NUL": (b"18 AWG,ring,24 lbf\0", "force"),
    "contradiction": ("18 AWG,ring,500 lbf", "can bear"),
    "too long": ("18 AWG,ring," + "2" * (batch_rows.LONGEST + 5), "longer than"),
    "other digits": ("18 AWG,ring,٢٤ lbf", "number"),
}


@pytest.mark.parametrize(("row", "said"), BAD_ROWS.values(), ids=BAD_ROWS)
def test_a_bad_row_says_why_and_the_rest_go_on(
    cli_main: Cli, write: Cli, row: str | bytes, said: str
) -> None:
    done = cli_main("batch", "pull", str(write(HEAD, GOOD, row, GOOD)), "--format", "json")
    found = [json.loads(line) for line in done.out.splitlines()]
    assert (done.status, done.err) == (2, "")
    assert _words(found) == ["pass", "refused", "pass"]
    assert [f["row"] for f in found] == [2, 3, 4]
    why = ". ".join(f"{p['name']}: {p['wrong']}; {p['would_do']}" for p in found[1]["problems"])
    assert said in why


def test_all_that_is_wrong_with_a_row_is_said_at_once(cli_main: Cli, write: Cli) -> None:
    path = write("wire,terminal,force [lbf]", "18 AWGG,rong,24 N")
    (found,) = _json(cli_main, "pull", str(path))
    assert {p["name"] for p in found["problems"]} == {"wire", "terminal", "force"}


BAD_FILES: dict[str, tuple[tuple[str | bytes, ...], tuple[str, ...], str]] = {
    "empty": ((), (), "is empty"),
    "blank": (("", "  "), (), "is empty"),
    "no rows": ((HEAD,), (), "no rows"),
    "only blank rows": ((HEAD, ",,", ""), (), "no rows"),
    "utf-16": (("wire,terminal".encode("utf-16"), GOOD), (), "UTF-8"),
    "unknown column": ((f"{HEAD},forse", f"{GOOD},1"), (), "did you mean force"),
    "stray column": ((f"{HEAD},learner", f"{GOOD},1"), (), '--keep "learner"'),
    "nameless column": ((f"{HEAD},", f"{GOOD},1"), (), "column 4: has no name"),
    "a column twice": ((f"{HEAD},force", f"{GOOD},1"), (), "twice"),
    "an input twice": ((f"{HEAD},force [N]", f"{GOOD},1"), (), "twice"),
    "also an option": ((HEAD, GOOD), ("--force", "24 lbf"), "twice"),
    "missing column": (("wire,force", "18 AWG,24 lbf"), (), "terminal: is needed"),
    "wrong unit in a header": (("wire,terminal,force [V]", GOOD), (), "force [V]"),
    "bad option": (("wire,force", "18 AWG,24 lbf"), ("--terminal", "rong"), "did you mean ring"),
    "label that is not there": ((HEAD, GOOD), ("--label", "wira"), "did you mean wire"),
    "kept that is not there": ((HEAD, GOOD), ("--keep", "tool"), "column tool"),
    "a form of pages": ((HEAD, GOOD), ("--format", "html"), "html"),
    "a chart": ((HEAD, GOOD), ("--chart", "x.svg"), "--chart"),
    "unknown option": ((HEAD, GOOD), ("--forse", "1"), "--force"),
    "open quote in the header": ((f'{HEAD},"x', GOOD), (), "quotes"),
}


@pytest.mark.parametrize(("lines", "words", "said"), BAD_FILES.values(), ids=BAD_FILES)
def test_wrong_columns_refuse_the_file(
    cli_main: Cli, write: Cli, lines: tuple[str | bytes, ...], words: tuple[str, ...], said: str
) -> None:
    done = cli_main("batch", "pull", str(write(*lines)), *words)
    assert (done.status, done.out) == (2, "")
    assert said in done.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "needs the name"),
        (("--format", "json"), "needs the name"),
        (("pull",), "needs a file"),
        (("pul", "x.csv"), "wirecalc batch pull FILE.csv"),
        (("pull", "x.csv", "y.csv"), "'y.csv'"),
        (("pull", "nowhere.csv"), "no file"),
        (("pull", "."), "cannot be read"),
        (("pull", "a\0b"), "cannot be read"),
    ],
)
def test_wrong_command(cli_main: Cli, words: tuple[str, ...], said: str) -> None:
    done = cli_main("batch", *words)
    assert (done.status, done.out) == (2, "")
    assert said in done.err


@pytest.mark.parametrize(
    "lines",
    [
        ("\ufeffwire;terminal;force", "18 AWG;ring;24 lbf"),
        ("wire\tterminal\tforce", "18 AWG\tring\t24 lbf"),
        (HEAD, "", GOOD, ",,"),
        ("Wire , TERMINAL, Force", " 18 AWG , ring , 24 lbf "),
        ("wire,terminal,force [lbf]", "18 AWG,ring,24"),
        ("wire,terminal,force_lbf", "18 AWG,ring,24"),
        ("wire,terminal,force (lbf)", '"18 AWG","ring","24"'),
        (HEAD + "\r", GOOD + "\r"),
    ],
)
def test_ways_to_write_the_same_file(cli_main: Cli, write: Cli, lines: tuple[str, ...]) -> None:
    (found,) = _json(cli_main, "pull", str(write(*lines)))
    assert (found["verdict"], found["criteria"][0]["actual"]) == ("pass", 24.0)


def test_unit_and_meter_error_of_a_header(cli_main: Cli, write: Cli) -> None:
    """100 N is 22.48 lbf; 2 % of 100.0 is 2, and 5 counts of its last digit are 0.5."""
    path = write("wire,terminal,force [N]", "18 AWG,ring,100.0 ±(2%+5)")
    (found,) = _json(cli_main, "pull", str(path))
    (force,) = (i for i in found["inputs"] if i["name"] == "force")
    assert force["low"] == pytest.approx(97.5 / 4.4482216)
    assert force["high"] == pytest.approx(102.5 / 4.4482216)


def test_decimal_comma_only_where_it_is_said(cli_main: Cli, write: Cli) -> None:
    path = str(write("wire;terminal;force [lbf]", "18 AWG;ring;24,5"))
    assert _words(_json(cli_main, "pull", path)) == ["refused"]
    (found,) = _json(cli_main, "pull", path, "--cells-decimal-comma")
    assert found["criteria"][0]["actual"] == 24.5


def test_lists_and_options_that_all_rows_share(cli_main: Cli, write: Cli) -> None:
    path = str(write("wire,barrel", "16 AWG;14 AWG solid,16-10 AWG", "18 AWG,16-14 AWG"))
    found = _json(cli_main, "splice", path, "--place-temperature", "60 C")
    wires = [[i["given"] for i in f["inputs"] if i["name"] == "wire"] for f in found]
    assert wires == [["16 AWG", "14 AWG solid"], ["18 AWG"]]
    assert all(
        any(i["name"] == "place_temperature" and i["value"] == 60 for i in f["inputs"])
        for f in found
    )


def test_csv_reads_back_and_holds_no_formula(cli_main: Cli, write: Cli) -> None:
    notes = ["=1+1", "@SUM(A1)", "+cmd|x", "-2", "-x", 'say ""hi"", ok', "plain"]
    path = write(f"note,{HEAD}", *(f'"{n}",{GOOD}' for n in notes))
    done = cli_main("batch", "pull", str(path), "--keep", "note", "--format", "csv")
    read = list(csv.DictReader(io.StringIO(done.out)))
    assert [r["note"] for r in read] == [
        *("'=1+1", "'@SUM(A1)", "'+cmd|x", "-2", "'-x", 'say "hi", ok', "plain")
    ]
    assert {(r["actual"], r["limit"], r["margin"]) for r in read} == {("24", "20", "4")}


def test_output_file_is_whole_or_not_there(
    cli_main: Cli, write: Cli, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, target = str(write(HEAD, GOOD, WEAK)), tmp_path / "out.csv"
    printed = cli_main("batch", "pull", path, "--format", "csv").out
    done = cli_main("batch", "pull", path, "--format", "csv", "--output", str(target))
    assert (done.status, done.out) == (1, "")
    assert target.read_text(encoding="utf-8") == printed

    def interrupted(*_: object, **__: object) -> object:
        raise KeyboardInterrupt

    target.unlink()
    monkeypatch.setattr("wirecalc.engine.running.Runner.outcome", interrupted)
    assert cli_main("batch", "pull", path, "--output", str(target)).status == 130
    assert [p.name for p in tmp_path.iterdir()] == ["rows.csv"]


def test_output_into_a_folder_that_is_not_there(cli_main: Cli, write: Cli) -> None:
    done = cli_main("batch", "pull", str(write(HEAD, GOOD)), "--output", "/nowhere/at/all.csv")
    assert (done.status, done.out) == (2, "")
    assert "cannot be written" in done.err


@pytest.mark.parametrize("jobs", ["0", "65", "two", "-1", "1.5"])
def test_a_number_of_processes_that_is_none(cli_main: Cli, write: Cli, jobs: str) -> None:
    done = cli_main("batch", "pull", str(write(HEAD, GOOD)), "--jobs", jobs)
    assert (done.status, done.out) == (2, "")
    assert f"--jobs: {jobs!r} is no number of processes" in done.err


def test_two_processes_print_what_one_does(command: Cli, write: Cli) -> None:
    """By the installed command: other processes read the options and plugins of its line again."""
    many = (f"18 AWG,ring,{force / 10} lbf" for force in range(150, 300))
    path = str(write(HEAD, *many, "18 AWG,rong,1 lbf"))
    line = ("batch", "pull", path, "--pull-standard", "ul-486a", "--format", "csv")
    one, two = command(*line), command(*line, "--jobs", "2")
    assert (two.status, two.out, two.err) == (one.status, one.out, one.err) == (1, two.out, "")


def test_installed_command_from_stdin(command: Cli) -> None:
    done = command("batch", "pull", "-", input=f"{HEAD}\n{GOOD}\n".encode())
    assert (done.status, done.err) == (0, "")
    assert "1 row: 1 pass" in done.out


def test_head_of_a_pipe_is_quiet(write: Cli, empty_folder: Path) -> None:
    path = write(HEAD, *[GOOD] * 5000)
    shell = f"'{COMMAND}' batch pull '{path}' | head -1"
    done = subprocess.run(
        ["sh", "-c", shell], capture_output=True, check=False, timeout=LONGEST_RUN, cwd=empty_folder
    )
    assert done.stderr == b""
    assert len(done.stdout.splitlines()) == 1


def test_memory_does_not_grow_with_the_file(write: Cli, tmp_path: Path) -> None:
    """A hundred times the rows, of readings that differ, take no more than a few MB more."""
    status = Path("/proc/self/status")  # rusage would count the memory of this process too
    if not status.exists():
        pytest.skip("the peak of a process is read from /proc")
    program = (
        "import sys; from wirecalc import cli; cli.main(sys.argv[1:]);"
        f"print(open('{status}').read().split('VmHWM:')[1].split()[0], file=sys.stderr)"
    )
    peaks = []
    for rows in (1_000, 100_000):
        forces = (f"a{i},18 AWG,ring,{20 + i % 900 / 100:.2f} lbf" for i in range(rows))
        path = write(f"part,{HEAD}", *forces)
        words = ("batch", "pull", str(path), "--label", "part", "--output", str(tmp_path / "out"))
        done = subprocess.run(
            [sys.executable, "-c", program, *words],
            capture_output=True,
            timeout=120,
            check=True,
            env=clean_environment(),
        )
        peaks.append(int(done.stderr.split()[-1]))
    assert peaks[1] - peaks[0] < 3_000, peaks  # kB; the file has 3 MB, what is printed 8


@pytest.mark.parametrize("shown", [True, False], ids=["terminal", "piped"])
def test_progress_only_on_a_terminal(write: Cli, tmp_path: Path, shown: bool) -> None:
    pytest.importorskip("tqdm")
    path = write(HEAD, *[GOOD] * 50)
    ours, theirs = pty.openpty() if shown else os.pipe()
    if shown:
        termios.tcsetwinsize(theirs, (24, 80))
    words = ["batch", "pull", str(path), "--output", str(tmp_path / "out.txt")]
    done = subprocess.run(
        [COMMAND, *words], stderr=theirs, check=False, timeout=LONGEST_RUN, env=clean_environment()
    )
    os.close(theirs)
    said = b""
    try:
        while piece := os.read(ours, 4096):
            said += piece
    except OSError:  # a terminal whose other end is closed
        pass
    os.close(ours)
    assert done.returncode == 0
    assert (b"rows" in said) is shown


@pytest.mark.parametrize("form", ["csv", "markdown"])
def test_a_single_run_as_lines(cli_main: Cli, form: str) -> None:
    words = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
    done = cli_main(*words, "--format", form)
    assert (done.status, done.err) == (0, "")
    assert len(done.out.splitlines()) == (2 if form == "csv" else 3)
    assert "pull-out force" in done.out and "UL 486A" in done.out


def test_figures_and_answers_have_lines_where_nothing_is_judged(cli_main: Cli) -> None:
    done = cli_main("equivalent", "--wire", "1.5 mm2", "--format", "csv")
    read = list(csv.DictReader(io.StringIO(done.out)))
    assert {r["verdict"] for r in read} == {"no verdict"}
    whole = wirecalc.run("equivalent", wire="1.5 mm2")
    names = [f.figure.name for f in whole.figures] + [a.name for a in whole.answers]
    assert [r["criterion"] for r in read] == names
    assert all(r["actual"] or r["reason"] for r in read)


@pytest.mark.parametrize(
    "sheet", sorted((ROOT / "docs/examples").glob("*.toml")), ids=lambda p: p.stem
)
def test_a_job_as_lines(cli_main: Cli, sheet: Path) -> None:
    job = cli_main("job", str(sheet), "--format", "json").json
    done = cli_main("job", str(sheet), "--format", "csv")
    lines_of_all = list(csv.DictReader(io.StringIO(done.out)))
    read = [r for r in lines_of_all if r["verdict"] not in SAID]
    said = [r["check"] for r in lines_of_all if r["verdict"] in SAID]
    judged = [
        (c["machine"], c["name"], c["stage"], c["tool"], x["name"], x["verdict"])
        for c in job["checks"]
        for x in c["finding"]["criteria"]
    ]
    keys = ("machine", "check", "stage", "tool", "criterion", "verdict")
    lines = [tuple(r[k] for k in keys) for r in read if r["verdict"] not in NO_CRITERION]
    assert lines == judged
    missing = [r["check"] for r in read if r["verdict"] == "not tested"]
    assert missing == [n["name"] for n in job["not_tested"]]
    gone = [d["name"] for d in job["does_not_apply"]]
    assert said == gone + [c["says"] for c in job["confirmed"]]
    assert {r["check"] for r in read} == {c["name"] for c in job["checks"]} | set(missing)


def test_gaps_of_a_sheet_are_not_written_as_lines(cli_main: Cli) -> None:
    sheet = str(ROOT / "docs/examples/refrigerator.toml")
    done = cli_main("job", sheet, "--check-only", "--format", "csv")
    assert (done.status, done.out) == (2, "")
    assert "--check-only" in done.err
