"""What a run loads: nothing dear where no unit is converted, no outside plugin for a help text."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.calculations.trials import CATALOGUE, TRIALS
from wirecalc import Reading

from .conftest import LONGEST_RUN, Outside, clean_environment

DEAR = {"pint", "numpy", "scipy", "matplotlib", "jinja2", "pyarrow"}
FOR_SLIPS = {"difflib"}  # only when something was mistyped
# each with all inputs of its good run
IN_DECLARED_UNITS = [name for name, trial in TRIALS.items() if trial.good and trial.light]
# What every run loads it loads once, by a run that converts nothing; each further run is a fork of
# that process, so that none finds what another one loaded.
PROGRAM = """
import json, os, signal, sys
from wirecalc import cli
replies = os.fdopen(os.dup(1), "w")
os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
cli.main(["pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf"])
for line in sys.stdin:
    child = os.fork()
    if child == 0:
        signal.alarm(int(sys.argv[1]))
        status = cli.main(json.loads(line))
        print(json.dumps([status, sorted(sys.modules)]), file=replies, flush=True)
        os._exit(0)
    if os.waitpid(child, 0)[1]:
        print("null", file=replies, flush=True)
"""


@pytest.fixture(scope="module")
def runs() -> Iterator[subprocess.Popen[str]]:
    """A fresh process that runs the command line for each line of words that it reads."""
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE, "encoding": "utf-8"}
    words = (sys.executable, "-c", PROGRAM, str(LONGEST_RUN))
    with subprocess.Popen(words, env=clean_environment(), **pipes) as process:
        yield process


@pytest.fixture
def loaded(runs: subprocess.Popen[str]) -> Callable[..., set[str]]:
    """Run the command line in that process and return the modules that it loaded."""

    def call(*words: str) -> set[str]:
        assert runs.stdin is not None and runs.stdout is not None
        print(json.dumps(words), file=runs.stdin, flush=True)
        status, modules = json.loads(runs.stdout.readline())
        assert status in (0, 1, 3)
        return {name.partition(".")[0] for name in modules}

    return call


def _words(name: str) -> list[str]:
    """Return the words of a good run, with an error of the meter on its first reading."""
    given, calc = dict(TRIALS[name].good), CATALOGUE.calculations[name].calculation
    for read in [n for n in given if isinstance(calc.input(n).kind, Reading)][:1]:
        given[read] += " ±1%"
    return [name, *(word for n, text in given.items() for word in (calc.input(n).option, text))]


@pytest.mark.parametrize("name", IN_DECLARED_UNITS)
@pytest.mark.parametrize("form", ["text", "json"])
def test_calculation_in_its_declared_unit(
    loaded: Callable[..., set[str]], name: str, form: str
) -> None:
    assert loaded(*_words(name), "--format", form) & (DEAR | FOR_SLIPS) == set()


@pytest.mark.parametrize(
    "words",
    [
        *((), ("--help",), ("--version",), ("plugins",), ("tables",), ("tables", "awg")),
        *(("tables", "pull-crimp", "--format", "csv"), ("schema", "finding")),
        *((name, "--help") for name in IN_DECLARED_UNITS),
        *(("explain", "pull"), ("explain", "breaker", "--format", "json")),
    ],
    ids=" ".join,
)
def test_help_listings_and_tables(loaded: Callable[..., set[str]], words: tuple[str, ...]) -> None:
    assert loaded(*words) & DEAR == set()


def test_job_sheet_in_declared_units(
    loaded: Callable[..., set[str]], write_sheet: Callable[..., Path]
) -> None:
    inputs = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
    assert (
        loaded("job", str(write_sheet({"calculation": "pull", **inputs}))) & (DEAR | FOR_SLIPS)
        == set()
    )


@pytest.mark.parametrize("form", ["text", "json", "csv", "markdown"])
def test_batch_in_declared_units(
    loaded: Callable[..., set[str]], tmp_path: Path, form: str
) -> None:
    path = tmp_path / "rows.csv"
    path.write_text("wire,terminal,force [lbf]\n18 AWG,ring,24 ±(2%+5)\n", encoding="utf-8")
    assert loaded("batch", "pull", str(path), "--format", form) & (DEAR | {"tqdm"}) == set()


def test_converted_unit_loads_pint(loaded: Callable[..., set[str]]) -> None:
    """The guard above can fail: a unit that is converted does load pint."""
    words = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "107 N")
    assert "pint" in loaded(*words)


LOUD = """
import sys
from wirecalc import hookimpl

sys.stderr.write("outside plugin was imported")

@hookimpl
def wirecalc_calculations():
    return []
"""


@pytest.mark.parametrize(
    "words",
    [
        *(("--version",), ("version",), ("help", "pull"), ("pull", "--help"), ("schema", "job")),
        *(("--bundled-only",), (*_words("pull"), "--bundled-only")),
    ],
    ids=lambda words: " ".join(words)[:30],
)
def test_no_outside_plugin_is_loaded(
    command: Callable[..., Any], outside: Outside, words: tuple[str, ...]
) -> None:
    outside.add("demo_outside", LOUD)
    done = command(*words, env=outside.env)
    assert (done.status, done.err) == (0, "")


@pytest.mark.parametrize(
    "words",
    [
        *((), ("--help",), ("plugins",), ("tables", "awg"), ("explain", "pull")),
        *(_words("pull"), _words("strip")),
    ],
    ids=lambda words: " ".join(words)[:30],
)
def test_outside_plugin_is_loaded(
    command: Callable[..., Any], outside: Outside, words: tuple[str, ...]
) -> None:
    """A run without it would skip a house rule or a shop's table."""
    outside.add("demo_outside", LOUD)
    done = command(*words, env=outside.env)
    assert (done.status, done.err) == (0, "outside plugin was imported")
