"""Instruments from the settings and from a job sheet, in every form of an answer."""

from __future__ import annotations

import csv
import io
import re
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.base.errors import BadText
from wirecalc.jobs.job import Job
from wirecalc.jobs.sheet import evaluate
from wirecalc.typed.quantities import read_number, split_error
from wirecalc.typed.unit_names import SPELLINGS
from wirecalc.typed.units import read_unit

from .conftest import Outside

EXAMPLES = sorted((Path(__file__).parents[2] / "docs" / "examples").glob("*.toml"))
CATALOGUE = wirecalc.build(bundled_only=True)
VAN = """
[[instrument]]
name = "clamp 1"
category = "CAT III 600 V"
due = 2026-06-30
[[instrument.range]]
reads = "current"
from = "0.50 A"
to = "60.00 A"
error = "2% + 5"

[[instrument]]
name = "tester"
[[instrument.range]]
reads = "force"
from = "2.0 lbf"
to = "100.0 lbf"
error = "1% + 5"

[meters]
force = "tester"
"""
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")


@pytest.fixture
def van(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Settings that name a file of instruments beside them."""
    (tmp_path / "van.toml").write_text(VAN)
    config = tmp_path / "config.toml"
    config.write_text('instruments_files = ["van.toml"]\n')
    monkeypatch.setenv("WIRECALC_CONFIG", str(config))
    return tmp_path


def test_a_default_of_the_settings_counts_and_is_said(
    cli_main: Callable[..., Any], van: Path
) -> None:
    done = cli_main(*PULL, "20.5 lbf", "--format", "json")
    (force,) = [i for i in done.json["inputs"] if i["name"] == "force"]
    assert (done.status, done.json["verdict"]) == (3, "cannot tell")
    assert (force["low"], force["high"]) == (pytest.approx(19.795), pytest.approx(21.205))
    for form in ("text", "html"):
        said = re.sub(r"\s+", " ", cli_main(*PULL, "20.5 lbf", "--format", form).out)
        assert "by tester, 2.0 lbf to 100.0 lbf, ±(1% + 5)" in said
    assert cli_main(*PULL, "20.5 lbf", "--bundled-only").status == 0  # no settings, no instruments


FROST = '''
from typing import Annotated
from wirecalc import PRACTICE, Reading, at_most, calculation, declare_unit, hookimpl

GRAM = declare_unit("g", dimension="mass", factor=0.001)

@calculation(part="shop", words=("ice",))
def frost(frost_mass: Annotated[float, Reading(GRAM, low=0, high=9000, text="scraped off")]):
    """Is there too much frost?"""
    yield at_most("frost", frost_mass, 500.0, GRAM, source=PRACTICE)

@hookimpl
def wirecalc_calculations():
    return [frost]
'''
SCALE = """
[[instrument]]
name = "scale"
[[instrument.range]]
reads = "mass"
from = "1 g"
to = "3000 g"
error = "10 g"

[meters]
mass = "scale"
"""


def test_an_instrument_of_the_settings_reads_a_unit_that_a_plugin_declares(
    plugged: Callable[..., Any], outside: Outside, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    outside.add("demo_frost", FROST)
    config = tmp_path / "config.toml"
    config.write_text(SCALE)
    monkeypatch.setenv("WIRECALC_CONFIG", str(config))
    done = plugged("frost", "--frost-mass", "495 g", "--format", "json")
    (mass,) = done.json["inputs"]
    assert (done.status, mass["low"], mass["high"]) == (3, 485, 505)
    config.write_text(SCALE.replace('"mass"', '"mas"'))
    done = plugged("frost", "--frost-mass", "495 g")
    assert (done.status, done.out) == (2, "")
    assert "did you mean mass?" in " ".join(done.err.split())


def test_an_instrument_for_the_run_and_one_that_is_none(
    cli_main: Callable[..., Any], van: Path
) -> None:
    words = ("breaker", "--breaker", "15 A", "--building-wire", "14 AWG", "--current", "14.90 A")
    named = cli_main(*words, "--meter", "clamp 1", "--format", "json").out
    assert "by clamp 1, 0.50 A to 60.00 A, ±(2% + 5)" in named
    assert "by clamp" not in cli_main(*words, "--format", "json").out
    wrong = cli_main(*words, "--meter", "clamp")
    assert (wrong.status, wrong.out) == (2, "")
    assert "--meter: there is no instrument 'clamp'; did you mean clamp 1?" in wrong.err


def test_a_column_of_a_batch_names_it(cli_main: Callable[..., Any], van: Path) -> None:
    rows = van / "rows.csv"
    rows.write_text("wire,force,meter\n18 AWG,20.5 lbf,tester\n18 AWG,20.5 lbf exact,\n")
    done = cli_main("batch", "pull", str(rows), "--terminal", "ring", "--format", "csv")
    verdicts = [r["verdict"] for r in csv.DictReader(io.StringIO(done.out))]
    assert verdicts == ["cannot tell", "pass"]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (VAN.replace('"2% + 5"', '"two"'), "instrument clamp 1"),
        (VAN.replace('force = "tester"', 'force = "teser"'), "did you mean tester"),
        (VAN + '\n[meter]\ncurrent = "clamp 1"\n', "did you mean meters"),
        ("[[instrument", "cannot be read"),
    ],
)
def test_a_file_that_is_wrong_stops_the_run(
    cli_main: Callable[..., Any], van: Path, text: str, says: str
) -> None:
    (van / "van.toml").write_text(text)
    done = cli_main(*PULL, "24 lbf")
    assert (done.status, done.out) == (2, "")
    assert "van.toml" in done.err
    assert says in done.err


DUE = VAN.replace('name = "tester"', 'name = "tester"\ndue = 2026-06-30')
SHEET = f"""
[job]
title = "Demo: pulls on the bench (invented)"
kind = "bench"
date = 2026-07-01
{DUE}
[[check]]
calculation = "pull"
wire = "18 AWG"
terminal = "ring"
force = "24.0 lbf"
"""


def test_a_sheet_has_its_own_and_its_date_counts(
    cli_main: Callable[..., Any], tmp_path: Path
) -> None:
    sheet = tmp_path / "bench.toml"
    sheet.write_text(SHEET)
    job = cli_main("job", str(sheet), "--format", "json").json
    (check,) = job["checks"]
    assert check["finding"]["verdict"] == "marginal"
    assert check["finding"]["decided_by"] == "calibration of tester"
    sheet.write_text(SHEET.replace("date = 2026-07-01", "date = 2026-06-30"))
    job = cli_main("job", str(sheet), "--format", "json").json
    assert job["checks"][0]["finding"]["verdict"] == "pass"


def test_a_check_names_its_meter(cli_main: Callable[..., Any], tmp_path: Path) -> None:
    sheet = tmp_path / "bench.toml"
    sheet.write_text(SHEET.replace('[meters]\nforce = "tester"\n', "") + 'meter = "tester"\n')
    finding = cli_main("job", str(sheet), "--format", "json").json["checks"][0]["finding"]
    (force,) = [i for i in finding["inputs"] if i["name"] == "force"]
    assert force["low"] == pytest.approx(24 - 0.74)


def test_the_list_and_where_each_can_tell(cli_main: Callable[..., Any], van: Path) -> None:
    listed = cli_main("instruments")
    assert listed.status == 0
    assert "CAT III 600 V, due 2026-06-30" in listed.out
    found = cli_main("instruments", "--for", "pull", "--format", "json").json
    (tells,) = found["tells"]
    assert tells["instrument"] == "tester"
    assert tells["decides"][0] == "fail up to 19.3 lbf"  # 19.3 + 0.193 + 0.5 is under 20
    assert tells["decides"][1].startswith("pass 20.8 to ")  # 20.8 - 0.208 - 0.5 is over 20
    page = cli_main("instruments", "--for", "pull", "--format", "html").out
    assert "At which values each can tell, for pull" in page
    assert cli_main("instruments", "--for", "pul").status == 2


def test_none_declared(cli_main: Callable[..., Any]) -> None:
    assert "No instruments are declared" in " ".join(cli_main("instruments").out.split())


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_a_demo_sheet_with_instruments_says_what_it_says_with_typed_errors(path: Path) -> None:
    sheet = tomllib.loads(path.read_text(encoding="utf-8"))
    typed = evaluate(sheet, CATALOGUE, path.parent)
    made: list[dict[str, Any]] = []
    declared = _declared(sheet, made)
    assert "±" not in str({k: v for k, v in declared.items() if k != "instrument"})
    by = evaluate({**declared, "instrument": made} if made else declared, CATALOGUE, path.parent)
    assert by.verdict is typed.verdict
    assert said(by) == said(typed)


def said(job: Job) -> list[tuple[Any, ...]]:
    return [
        (check.name, j.criterion.name, j.verdict, j.reason)
        for check in job.checks
        for j in (check.finding.criteria if check.finding else ())
    ]


def _declared(node: Any, made: list[dict[str, Any]]) -> Any:
    """Return a sheet with an instrument in place of each typed error."""
    if isinstance(node, dict):
        return {k: _declared(v, made) for k, v in node.items()}
    if isinstance(node, list):
        return [_declared(v, made) for v in node]
    if not isinstance(node, str) or "±" not in node:
        return node
    text, error = split_error(node)
    number, word = read_number(text)
    places = len(text.split()[0].partition(".")[2])
    dimension = next(d for d in SPELLINGS if _is_of(word, d))
    top = f"{10 * abs(number.value):.{places}f} {word}"
    ranges = [{"reads": dimension, "from": f"0 {word}", "to": top, "error": error}]
    made.append({"name": f"m{len(made)}", "range": ranges})
    return f"{text} by m{len(made) - 1}"


def _is_of(word: str, dimension: str) -> bool:
    try:
        return bool(read_unit(word, dimension))
    except BadText:
        return False
