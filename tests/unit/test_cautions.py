"""Which hazards and which gaps go with which inputs, by the hands that do the work.

The trial of each calculation says what it must warn of, and why; `caution_words.toml` holds the
words that a caution of the library must not lose.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from tests.calculations.trial import When
from tests.calculations.trials import CATALOGUE, TRIALS
from wirecalc import Caution, Finding, caution, tables

ROOT = Path(__file__).parents[2]
WORDS = Path(__file__).parent / "caution_words.toml"
ALWAYS = {"ans-01", "ans-02"}
EXAMPLE = When("the worked example", {})
ROWS = [
    pytest.param(name, row, id=f"{name}: {row.about}")
    for name, trial in TRIALS.items()
    for row in (EXAMPLE, *trial.when)
]


def _run(name: str, changed: Mapping[str, Any]) -> Finding:
    calculation = CATALOGUE.calculations[name].calculation
    given = {**calculation.example_inputs, **TRIALS[name].example, **changed}
    if "recording" in given:
        given["recording"] = str(ROOT / given["recording"])
    return wirecalc.run(name, **{k: v for k, v in given.items() if v != ""})


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_these_inputs_come_with_these_cautions_and_no_others(name: str, row: When) -> None:
    wanted = {*TRIALS[name].cautions, *row.comes} - set(row.stays)
    found = {caution.key for caution in _run(name, row.given).cautions} - ALWAYS
    assert (sorted(wanted - found), sorted(found - wanted)) == ([], [])


@pytest.mark.parametrize("name", TRIALS)
def test_the_gravest_is_the_one_that_leads_the_table(name: str) -> None:
    """A brief answer shows one caution alone: the first of those with STOP."""
    said = [c.key for c in _run(name, {}).cautions if c.severity == "stop"]
    wanted = [key for key in TRIALS[name].cautions if key in said]
    assert said[:1] == wanted[:1]


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_a_row_changes_what_the_example_has(name: str, row: When) -> None:
    base = set(TRIALS[name].cautions)
    assert base >= set(row.stays)
    assert not base & set(row.comes)


@pytest.mark.parametrize("name", TRIALS)
def test_what_was_not_checked_is_listed(name: str) -> None:
    calculation = CATALOGUE.calculations[name].calculation
    given = {i.name for i in calculation.inputs}
    own = [x.what for x in _run(name, {}).not_checked if x.what not in given]
    needed = TRIALS[name].not_checked
    assert not [words for words in needed if not any(words in line for line in own)]
    assert not [line for line in own if not any(words in line for words in needed)]


def _worded() -> dict[str, Caution]:
    """Return the cautions of the library, and those that a row of the trials brings up."""
    keys = [row.printed["key"] for row in tables.load("cautions").rows]
    said = {key: caution(key) for key in keys}
    for name, trial in TRIALS.items():
        for row in (EXAMPLE, *trial.when):
            if not {*trial.cautions, *row.comes} <= set(keys):
                said |= {c.key: c for c in _run(name, row.given).cautions}
    return said


def test_no_caution_loses_the_words_that_carry_it() -> None:
    needed = tomllib.loads(WORDS.read_text(encoding="utf-8"))
    for trial in TRIALS.values():
        needed |= {key: asdict(own) for key, own in trial.worded.items()}
    said = _worded()
    assert set(said) == set(needed)
    for key, need in needed.items():
        one = said[key]
        lost = [w for w in need["words"] if w not in one.text]
        lost += [w for w in need["defers_to"] if w not in one.defers_to]
        lost += [w for w in need.get("applies_when", ()) if w not in one.when]
        assert (key, one.severity, lost) == (key, need["severity"], [])
