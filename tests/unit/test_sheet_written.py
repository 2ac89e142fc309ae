"""A sheet as TOML: reading what was written gives the same sheet."""

from __future__ import annotations

import datetime
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wirecalc.jobs.sheet.written import entry_text, sheet_text

EXAMPLES = sorted((Path(__file__).parents[2] / "docs" / "examples").glob("*.toml"))


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda f: f.name)
def test_example_sheet_is_the_same_when_it_is_read_again(file: Path) -> None:
    sheet = tomllib.loads(file.read_text(encoding="utf-8"))
    assert tomllib.loads(sheet_text(sheet, "words\non it")) == sheet


ODD: dict[str, Any] = {
    "job": {"title": 'a "quoted" \\ one', "date": datetime.date(2026, 1, 27), "free key": "\x7f\t"},
    "readings": {"a b": {"voltage": "117 V"}, "after": {"peak": "9 A"}},
    "check": [{"calculation": "x", "n": 2, "share": 0.5, "on": True, "wire": ["1", "2"], "no": []}],
    "machine": [{"name": "a", "nameplate": {"x": "1 V"}, "confirmed": {"covers_back": "yes"}}],
    "own": {"inner": {"deep": 1}},
}


def test_odd_sheet_is_the_same_when_it_is_read_again() -> None:
    assert tomllib.loads(sheet_text(ODD)) == ODD


@settings(max_examples=30)
@given(st.dictionaries(st.text(min_size=1, max_size=6), st.text(max_size=12), max_size=3))
def test_any_words_are_the_same_when_they_are_read_again(words: dict[str, str]) -> None:
    sheet = {"job": words, "check": [words]}
    assert tomllib.loads(sheet_text(sheet)) == sheet


def test_sections_stand_in_their_usual_order_with_nothing_that_is_empty_above() -> None:
    text = sheet_text({"check": [{"calculation": "x"}], "readings": {"a": {"b": "1 V"}}, "job": {}})
    assert text.splitlines() == [
        *("[job]", "", "[readings.a]", 'b = "1 V"', "", "[[check]]", 'calculation = "x"'),
    ]


def test_one_entry_to_paste() -> None:
    assert entry_text("check", {"calculation": "pull", "wire": "18 AWG"}) == (
        '[[check]]\ncalculation = "pull"\nwire = "18 AWG"'
    )
