"""A value that is sought on the command line, in every form."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import wirecalc

DROP = ("drop", "--current", "12 A", "--nameplate-voltage", "120 V", "--building-wire", "14 AWG")
ONE = (*DROP, "--run-length", "sought")
TWO = (*DROP[:-1], "sought 14 to 10 AWG", "--run-length", "sought 10 to 500 ft")
SCHEMA = Path(wirecalc.__file__).parent / "output" / "schemas" / "sought.json"


@pytest.mark.parametrize("words", [ONE, TWO], ids=["one", "two"])
def test_json_fits_its_schema_and_ends_with_zero(
    cli_main: Callable[..., Any], words: tuple[str, ...]
) -> None:
    done = cli_main(*words, "--format", "json")
    assert done.status == 0
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(done.json, schema)
    closed = {*schema["properties"]}
    assert set(done.json) == closed
    assert done.json["cautions"]


def test_text_leads_with_what_passes_and_ends_with_who_decides(
    cli_main: Callable[..., Any],
) -> None:
    text = cli_main(*ONE).out
    assert text.startswith("PASS  run_length: up to ")
    assert "At each edge" in text
    assert "Local code, the maker sheet" in " ".join(text.split())
    assert not [line for line in text.splitlines() if len(line) > 80]


def test_a_row_a_span(cli_main: Callable[..., Any]) -> None:
    rows = list(csv.DictReader(io.StringIO(cli_main(*TWO, "--format", "csv").out)))
    assert {r["across"] for r in rows} == {"14 AWG", "12 AWG", "10 AWG"}
    for row in rows:
        assert float(row["from"]) <= float(row["to"])
        assert row["unit"] == "ft"
    assert "| --- |" in cli_main(*ONE, "--format", "markdown").out


@pytest.mark.parametrize("words", [ONE, TWO], ids=["one", "two"])
def test_page_and_picture(
    cli_main: Callable[..., Any], words: tuple[str, ...], tmp_path: Path
) -> None:
    page = cli_main(*words, "--format", "html").out
    assert page.startswith("<!DOCTYPE html>")
    assert "By verdict" in page
    assert "<svg" in page
    picture = tmp_path / "sought.svg"
    assert cli_main(*words, "--chart", str(picture)).status == 0
    assert "run_length" in picture.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((*DROP, "--run-length", "60 ft", "--target", "drop share <= 3 %"), "nothing is sought"),
        ((*ONE, "--target-alone"), "there is no --target"),
        ((*ONE, "--target", "no such <= 3 %"), "its figures are"),
        ((*DROP[:-2], "--building-wire", "14 AGW", "--run-length", "sought"), "14 AGW"),
        (("choose", "--wire", "18 AWG", "--stock", "sought"), "cannot be sought"),
        ((*DROP, "--run-length", "sought 10 to 20 V"), "--run-length"),
    ],
)
def test_what_is_wrong_ends_with_two_and_says_what_would_do(
    cli_main: Callable[..., Any], words: tuple[str, ...], says: str
) -> None:
    done = cli_main(*words)
    assert (done.status, done.out) == (2, "")
    assert says in done.err


def test_a_batch_refuses_the_word_in_its_row(cli_main: Callable[..., Any], tmp_path: Path) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text("wire,force\n18 AWG,sought\n18 AWG,24 lbf\n")
    done = cli_main("batch", "pull", str(rows), "--terminal", "ring", "--format", "csv")
    assert done.status == 2
    assert "is sought" in done.out


def test_a_house_rule_counts_for_what_is_sought(
    cli_main: Callable[..., Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rules = tmp_path / "rules.toml"
    rules.write_text(
        '[[rule]]\nname = "a quarter more"\ncalculations = ["pull"]\n'
        'criterion = "pull-out force"\ntimes = 1.25\nwhy = "the vans shake"\n'
    )
    words = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "sought")
    assert "PASS  force: 20 to " in cli_main(*words).out
    monkeypatch.setenv("WIRECALC_RULES", str(rules))
    assert "PASS  force: 25 to " in cli_main(*words).out


def test_after_a_fail_what_may_be_chosen_is_said(cli_main: Callable[..., Any]) -> None:
    long_run = ("--voltage-at-rest", "119 V", "--run-length", "300 ft", "--building-wire", "14 AWG")
    failed = cli_main(*DROP[:-2], *long_run, "--format", "json").json
    assert failed["verdict"] == "fail"
    said = failed["would_pass"]
    assert said.startswith("building wire 10 to 8 AWG, marginal; from 6 AWG on")
    sized = {"12 AWG": "cannot tell", "10 AWG": "marginal", "8 AWG": "marginal", "6 AWG": "pass"}
    for wire, verdict in sized.items():
        tried = cli_main(*DROP[:-2], *long_run[:-1], wire, "--format", "json").json
        assert tried["verdict"] == verdict


@pytest.mark.parametrize(
    "words",
    [
        ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "19 lbf"),  # a reading
        ("breaker", "--breaker", "15 A", "--current", "18 A"),  # no wire that was given
        (*DROP, "--run-length", "40 ft", "--voltage-at-rest", "119 V"),  # it passes
    ],
)
def test_nothing_is_said_of_what_nobody_chooses(
    cli_main: Callable[..., Any], words: tuple[str, ...]
) -> None:
    assert cli_main(*words, "--format", "json").json["would_pass"] is None


SHEET = """
[job]
title = "Demo: a bench (invented)"
kind = "bench"

[[check]]
calculation = "pull"
wire = "18 AWG"
terminal = "ring"
force = "24 lbf"

[[check]]
calculation = "drop"
name = "how long"
stage = "option"
current = "12 A"
nameplate_voltage = "120 V"
building_wire = "14 AWG"
run_length = "sought"
"""


def test_an_option_of_a_sheet_may_be_sought_and_is_no_reading(
    cli_main: Callable[..., Any], tmp_path: Path
) -> None:
    sheet = tmp_path / "bench.toml"
    sheet.write_text(SHEET)
    job = cli_main("job", str(sheet), "--format", "json").json
    assert job["verdict"] == "pass"
    found = job["checks"][1]["finding"]
    assert found["verdict"] is None
    assert "run_length" not in {i["name"] for i in found["inputs"]}
    assert found["answers"][0]["text"].startswith("up to ")
    sheet.write_text(SHEET.replace('stage = "option"\n', ""))
    done = cli_main("job", str(sheet))
    assert (done.status, done.out) == (2, "")
    assert "judges nothing" in done.err
