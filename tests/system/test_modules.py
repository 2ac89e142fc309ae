"""What a run loads: nothing dear where no unit is converted, no outside plugin for a help text."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from .conftest import LONGEST_RUN, Outside, clean_environment

DEAR = {"pint", "numpy", "scipy", "matplotlib", "jinja2"}
FOR_SLIPS = {"difflib"}  # only when something was mistyped
IN_DECLARED_UNITS = {
    "pull": "--wire|18 AWG|--terminal|ring|--force|27.0 lbf ±(2%+5)",
    "strip": "--wire|18 AWG|--style|closed|--barrel-length|6.5 mm|--stripped|7.1 mm ±0.1 mm",
    "splice": "--wire|16 AWG|--barrel|16-14 AWG|--place-temperature|60 C ±2 C|--current|8 A",
    "breaker": "--current|8.7 A|--breaker|15 A|--building-wire|14 AWG|--ambient|25 C"
    "|--run-time|1 h",
    "circuit": "--breaker|15 A|--plug-loads|6.2 A|--fastened-loads|1.6 A|--building-wire|14 AWG",
    "motor-circuit": "--motor-kind|compressor|--fastened-in-place|yes|--rated-load-current|9 A",
    "inrush": "--horsepower|1/4 hp|--code-letter|L|--nameplate-voltage|115 V|--peak|11 A",
    "ampacity": "--use|appliance|--wire|18 AWG|--wire-temperature|105 C|--place-temperature|60 C",
    "gauge": "--strands|41|--strand-diameter|0.254 mm ±0.01 mm|--metal|copper",
    "strands": "--wire|16 AWG|--strands|26|--cut-strands|1|--nicked-strands|0",
    "joint-drop": "--drop|0.36 V|--joint-current|8.7 A|--wire|16 AWG|--joint-length|150 mm",
    "drop": "--current|1.6 A ±(2%+5)|--nameplate-voltage|115 V|--building-wire|14 AWG"
    "|--run-length|60 ft",
    "dip": "--locked-rotor-current|14.2 A|--nameplate-voltage|115 V|--voltage-at-rest|117.5 V"
    "|--building-wire|14 AWG|--run-length|60 ft",
    "extension": "--extension-cord|16 AWG|--extension-length|50 ft|--current|1.6 A"
    "|--maker-allows|no",
    "tab": "--tab-width|0.250 in|--wire|14 AWG|--current|10.8 A ±(2%+5)",
    "ring": "--stud|No.8|--wire|14 AWG|--hole|4.4 mm ±0.05 mm",
    "heat-rating": "--place-temperature|60 C ±3 C|--wire-temperature|105 C",
    "trip": "--device|ul-489|--breaker|15 A|--overcurrent|20 A ±2%|--overcurrent-time|60 s",
    "supply": "--nameplate-voltage|115 V|--voltage-running|117.2 V ±(1%+3)|--voltage-at-rest|119 V",
    "upstream": "--voltage-at-rest|119.8 V|--voltage-running|116.6 V|--current|8.7 A ±(2%+5)"
    "|--building-wire|14 AWG|--run-length|40 ft",
    "short-time": "--wire|18 AWG|--overcurrent|180 A|--overcurrent-time|0.1 s",
    "element": "--element-resistance|22.6 ohm ±(1%+1)|--nameplate-power|2585 W"
    "|--element-voltage|232 V",
    "cutoff": "--old-functioning-temperature|130 C|--new-functioning-temperature|130 C",
    "duty": "--on-times|18 min|--off-times|22 min ±1 min|--running-power|120 W",
    "start-device": "--start-device|ptc|--device-resistance|6.8 ohm ±(1%+1)|--by-itself|yes",
    "overload": "--overload-resistance|0.4 ohm|--trip-temperature|110 C ±2 C",
    "locked": "--high-time|6 s ±1 s|--high-current|11 A|--locked-rotor-current|12 A",
    "windings": "--reading-1-2|4.1 ohm ±(1%+1)|--reading-1-3|16.2 ohm|--reading-2-3|12.2 ohm",
    "winding-heat": "--cold-resistance|4.5 ohm|--cold-temperature|22 C|--room-temperature|24 C"
    "|--hot-resistance|5.9 ohm ±0.1 ohm|--winding-class|B",
    "capacitor": "--capacitor-current|2.05 A ±(2%+5)|--capacitor-voltage|214 V|--frequency|60 Hz"
    "|--marked-capacitance|30 uF|--tolerance|5 %",
    "capacitor-swap": "--old-capacitor|30 uF|--new-capacitor|30 uF|--old-capacitor-voltage|250 V"
    "|--new-capacitor-voltage|370 V|--old-capacitor-duty|run|--new-capacitor-duty|run",
    "discharge": "--marked-capacitance|30 uF|--resistor|20000 ohm|--capacitor-voltage|214 V ±3%",
    "insulation": "--insulation-resistance|50 Mohm ±(3%+2)|--protection|class-i"
    "|--tested-part|heater|--test-voltage|500 V|--switched-on|yes",
    "leakage": "--leakage-current|0.30 mA ±(2%+3)|--machine-kind|stationary|--on-gfci|yes",
    "screening": "--over-range|yes|--ohm-range|20 Mohm|--trip-current|6 mA",
    "ground": "--ground-point|plug-pin|--ground-resistance|0.25 ohm ±(1%+3)|--cord|16 AWG"
    "|--cord-length|6 ft|--ground-standard|iec-60335-1",
    "substitute": "--old-wire|16 AWG|--new-wire|14 AWG|--old-wire-temperature|105 C",
}
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
    return [name, *IN_DECLARED_UNITS[name].split("|")]


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
