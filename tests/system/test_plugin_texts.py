"""Names and texts of plugins are plain and of a sane length, else it is a defect, told soon."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

import pytest

from .conftest import Outside

Command = Callable[..., Any]
RUN = """
from typing import Annotated
from wirecalc import (PRACTICE, Reading, RequiredChecks, answer, at_least, calculation,
                      cannot_tell, caution, figure, hookimpl, listing, not_checked)

class Loud(str):
    "A text of its own, that does what it likes."
    def __repr__(self): raise SystemExit(0)
    def __str__(self): raise SystemExit(0)
    def __len__(self): return 3
    def __format__(self, how): return "PASS"

LONG = "x" * 30_000_000

@calculation(part="shop")
def shop_weight(current: Annotated[float, Reading("A", low=0, high=100, text="load")]):
    \"\"\"Is it the one of this plugin?\"\"\"
    yield {item}

@hookimpl
def wirecalc_calculations():
    return [shop_weight]
"""
SOON = 2.0  # s
ITEMS = {
    "figure name": 'figure({}, 1.0, source=PRACTICE)',
    "figure unit": 'figure("made", 1.0, {}, source=PRACTICE)',
    "answer": 'answer("made", {})',
    "answer for": 'answer("made", "x", because=({},))',
    "criterion": 'at_least({}, current, 1.0, "A", source=PRACTICE)',
    "action": 'at_least("held", current, 1.0, "A", source=PRACTICE, action={})',
    "cannot tell": 'cannot_tell("held", {})',
    "listing title": 'listing({}, ("a",), [("b",)])',
    "listing cell": 'listing("made", ("a",), [({},)])',
    "not checked": 'not_checked("made", {})',
}  # fmt: skip


@pytest.fixture
def timed(plugged: Command) -> Command:
    def run(*words: str) -> Any:
        start = time.perf_counter()
        done = plugged(*words)
        assert time.perf_counter() - start < SOON
        return done

    return run


@pytest.mark.parametrize(("text", "said"), [('Loud("a")', "a Loud"), ("LONG", "30000000 char")])
@pytest.mark.parametrize("item", ITEMS)
def test_a_text_of_an_item_is_plain_and_of_a_sane_length(
    timed: Command, outside: Outside, item: str, text: str, said: str
) -> None:
    outside.add("demo_texts", RUN.replace("{item}", ITEMS[item].format(text)))
    done = timed("shop-weight", "--current", "5 A")
    assert (done.status, done.out) == (4, ""), done.err[:500]
    assert said in done.err
    assert "demo-texts" in done.err or "demo_texts" in done.err
    assert len(done.err) < 1000


DECLARED = {
    "a name": ("def shop_weight", f"def shop_{'w' * 80}", "is longer than 60 letters"),
    "an input": ("current:", f"{'c' * 80}:", "is longer than 60 letters"),
    "its question": ("Is it the one", "LONG" * 30_000, "its docstring has 12"),
    "its text": ('text="load"', "text=LONG", "30000000 characters"),
    "text of its own": ('text="load"', 'text=Loud("load")', "a Loud"),
    "words": ('part="shop"', 'part="shop", words=(LONG,)', "30000000 characters"),
    "part": ('part="shop"', 'part=Loud("shop")', "a Loud"),
    "not checked": ('part="shop"', 'part="shop", not_checked=(Loud("x"),)', "a Loud"),
}


@pytest.mark.parametrize("case", DECLARED)
def test_a_declared_text_is_plain_and_of_a_sane_length(
    timed: Command, outside: Outside, case: str
) -> None:
    old, new, said = DECLARED[case]
    source = RUN.replace("{item}", 'figure("made", 1.0, source=PRACTICE)')
    assert old in source
    outside.add("demo_texts", source.replace(old, new))
    listed = timed("plugins", "--format", "json")
    (ours,) = (p for p in listed.json["plugins"] if p["name"] == "demo_texts")
    assert ours["state"] in ("in part", "failed")
    assert said in ours["reason"]
    assert len(ours["reason"]) < 600


@pytest.mark.parametrize(("text", "said"), [('Loud("a")', "a Loud"), ("LONG", "30000000 char")])
@pytest.mark.parametrize("given", ["{}, kinds=('oven',)", "'a', kinds=({},)"])
def test_a_rule_has_plain_texts_of_a_sane_length(
    timed: Command, outside: Outside, given: str, text: str, said: str
) -> None:
    source = RUN.replace("{item}", 'figure("made", 1.0, source=PRACTICE)')
    rule = f"RequiredChecks({given.format(text)}, calculations=('ground',))"
    hook = f"\n@hookimpl\ndef wirecalc_house_rules():\n    return [{rule}]\n"
    outside.add("demo_texts", source + hook)
    listed = timed("plugins", "--format", "json")
    (ours,) = (p for p in listed.json["plugins"] if p["name"] == "demo_texts")
    assert (ours["state"], said in ours["reason"]) == ("in part", True), ours["reason"]
    assert ours["calculations"] == ["shop-weight"]
