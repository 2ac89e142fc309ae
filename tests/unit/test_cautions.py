"""Which hazards and which gaps go with which inputs, by the hands that do the work.

The tables in `cautions/` say what each check must warn of, and why; `words.toml` holds the words
that a caution must not lose.
"""

from __future__ import annotations

import functools
import tomllib
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import Caution, Finding, caution, tables

ROOT = Path(__file__).parents[2]
FOLDER = Path(__file__).parent / "cautions"
WORDS = FOLDER / "words.toml"
ALWAYS = {"ans-01", "ans-02"}
NEEDS: dict[str, dict[str, Any]] = {
    name: need
    for path in sorted(FOLDER.glob("*.toml"))
    if path != WORDS
    for name, need in tomllib.loads(path.read_text(encoding="utf-8")).items()
}
EXAMPLE: dict[str, Any] = {"about": "the worked example", "given": {}}
ROWS = [
    pytest.param(name, row, id=f"{name}: {row['about']}")
    for name, need in NEEDS.items()
    for row in (EXAMPLE, *need.get("when", []))
]


@functools.cache
def _bundled() -> dict[str, Any]:
    return dict(wirecalc.build(bundled_only=True).calculations)


def _run(name: str, changed: dict[str, Any]) -> Finding:
    calculation = _bundled()[name].calculation
    given = {**calculation.example_inputs, **NEEDS[name].get("example", {}), **changed}
    if "recording" in given:
        given["recording"] = str(ROOT / given["recording"])
    return wirecalc.run(name, **{k: v for k, v in given.items() if v != ""})


def test_each_calculation_says_what_it_must_warn_of() -> None:
    assert set(NEEDS) == set(_bundled())


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_these_inputs_come_with_these_cautions_and_no_others(
    name: str, row: dict[str, Any]
) -> None:
    wanted = {*NEEDS[name]["cautions"], *row.get("with", ())} - set(row.get("without", ()))
    found = {caution.key for caution in _run(name, row["given"]).cautions} - ALWAYS
    assert (sorted(wanted - found), sorted(found - wanted)) == ([], [])


@pytest.mark.parametrize("name", NEEDS)
def test_the_gravest_is_the_one_that_leads_the_table(name: str) -> None:
    """A brief answer shows one caution alone: the first of those with STOP."""
    said = [c.key for c in _run(name, {}).cautions if c.severity == "stop"]
    wanted = [key for key in NEEDS[name]["cautions"] if key in said]
    assert said[:1] == wanted[:1]


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_a_row_changes_what_the_example_has(name: str, row: dict[str, Any]) -> None:
    base = set(NEEDS[name]["cautions"])
    assert base >= set(row.get("without", ()))
    assert not base & set(row.get("with", ()))


@pytest.mark.parametrize("name", NEEDS)
def test_what_was_not_checked_is_listed(name: str) -> None:
    calculation = _bundled()[name].calculation
    given = {i.name for i in calculation.inputs}
    own = [x.what for x in _run(name, {}).not_checked if x.what not in given]
    needed = NEEDS[name]["not_checked"]
    assert not [words for words in needed if not any(words in line for line in own)]
    assert not [line for line in own if not any(words in line for words in needed)]


def _worded() -> dict[str, Caution]:
    """Return the cautions of the library, and those that a row of the tables brings up."""
    keys = [row.printed["key"] for row in tables.load("cautions").rows]
    said = {key: caution(key) for key in keys}
    for name, need in NEEDS.items():
        for row in (EXAMPLE, *need.get("when", [])):
            if not {*need["cautions"], *row.get("with", ())} <= set(keys):
                said |= {c.key: c for c in _run(name, row["given"]).cautions}
    return said


def test_no_caution_loses_the_words_that_carry_it() -> None:
    needed = tomllib.loads(WORDS.read_text(encoding="utf-8"))
    said = _worded()
    assert set(said) == set(needed)
    for key, need in needed.items():
        one = said[key]
        lost = [w for w in need["words"] if w not in one.text]
        lost += [w for w in need["defers_to"] if w not in one.defers_to]
        lost += [w for w in need.get("applies_when", ()) if w not in one.when]
        assert (key, one.severity, lost) == (key, need["severity"], [])
