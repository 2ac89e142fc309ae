"""Values as people write them: what is taken and as what, and what is refused with which help.

`tests/data/typings.csv` has a typing a line: `taken` is the plain spelling of what it means, `says`
what the refusal tells the person. What is suggested there is read back, so that it leads on.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from wirecalc.base.errors import BadText
from wirecalc.engine.inputs import Input
from wirecalc.plugging import host
from wirecalc.typed.size_ranges import SizeRange
from wirecalc.typed.wires import Wire

FILE = Path(__file__).parents[1] / "data" / "typings.csv"
LOADED = host.build(bundled_only=True).calculations
with FILE.open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))
SUGGESTED = (
    r"(?:write|is it)(?: it in digits:| a point:)? "
    r"([<>]?[\d.][^,;]*?)(?= or | here| if | for |\(or |[,;?]|$)"
)
TAKEN = [(r["input"], r["typed"], r["taken"]) for r in ROWS if r["taken"]]
REFUSED = [(r["input"], r["typed"], r["says"]) for r in ROWS if r["says"]]


def declared(name: str) -> Input:
    calculation, _, plain = name.partition(".")
    return LOADED[calculation].calculation.input(plain)


def values(of: Input, typed: str) -> Iterator[Any]:
    for one in of.each(typed):
        value = of.kind.read(one).value
        if isinstance(value, Wire):
            yield value._replace(text="", size="", assumed=())
        elif isinstance(value, SizeRange):
            yield value.low_cmil, value.high_cmil
        else:
            yield pytest.approx(value, rel=1e-4) if isinstance(value, float) else value


def test_there_are_two_hundred_and_more_of_both() -> None:
    assert len(TAKEN) + len(REFUSED) == len(ROWS) >= 250
    assert min(len(TAKEN), len(REFUSED)) >= 100


@pytest.mark.parametrize(("name", "typed", "plain"), TAKEN)
def test_a_typing_with_one_meaning_is_taken(name: str, typed: str, plain: str) -> None:
    of = declared(name)
    assert list(values(of, typed)) == list(values(of, plain))


@pytest.mark.parametrize(("name", "typed", "says"), REFUSED)
def test_another_is_refused_with_what_would_do(name: str, typed: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        list(values(declared(name), typed))
    assert says.casefold() in str(caught.value).casefold()
    assert caught.value.would_do


@pytest.mark.parametrize(("name", "typed", "says"), REFUSED)
def test_what_is_suggested_is_read(name: str, typed: str, says: str) -> None:
    del says
    of = declared(name)
    with pytest.raises(BadText) as caught:
        list(values(of, typed))
    for one in re.findall(SUGGESTED, str(caught.value)):
        assert list(values(of, one))
