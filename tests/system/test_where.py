"""Where a plugin failed, named from its package on, and what it still gives."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from .conftest import Outside
from .test_broken_plugins import calculation

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
TWO_AND_ONE = """
from typing import Annotated
from wirecalc import HouseRule, PRACTICE, Reading, at_least, calculation, figure, hookimpl

Amps = Annotated[float, Reading("A", low=0, high=100, text="current")]


@calculation(part="shop")
def one(current: Amps):
    '''Is it one?'''
    yield figure("made", 1.0)


@calculation(part="shop")
def wrong(current: float):
    '''Is it the wrong one?'''
    yield figure("made", 1.0)


@calculation(part="shop")
def two(current: Amps):
    '''Is it two?'''
    yield figure("made", 2.0)


def rule(inputs, items):
    '''25 lbf.'''
    yield at_least("shop pull", inputs["force"], 25.0, "lbf", source=PRACTICE)


@hookimpl
def wirecalc_calculations():
    return [one, wrong, two, 7]


@hookimpl
def wirecalc_house_rules():
    return [HouseRule("", ("pull",), rule), HouseRule("ours", ("pull",), rule)]
"""


def test_each_is_judged_by_itself_and_the_rest_is_kept(plugged: Command, outside: Outside) -> None:
    outside.add("demo_shop", TWO_AND_ONE)
    for name in ("one", "two"):
        assert plugged(name, "--current", "5 A").status == 0
    assert plugged("wrong", "--current", "5 A").status == 2
    (listed,) = [
        p
        for p in plugged("plugins", "--format", "json").json["plugins"]
        if p["name"] == "demo_shop"
    ]
    assert (listed["state"], listed["calculations"]) == ("in part", ["one", "two"])
    assert "wrong(current): write Annotated[type, kind or text]" in listed["reason"]
    assert "returned 7, which is no Calculation" in listed["reason"]
    assert "rule '': its name is ''" in listed["reason"]


def test_a_rule_of_a_plugin_in_part_holds_and_says_so(plugged: Command, outside: Outside) -> None:
    outside.add("demo_shop", TWO_AND_ONE)
    done = plugged(*PULL)
    assert done.status == 1
    assert "shop pull: 24 lbf is below 25 lbf" in done.out
    missing = "part of plugin demo_shop of demo-shop 1.0, of whose house rules ours held: "
    assert missing in " ".join(done.out.split())
    assert "from plugin demo_shop 1.0, loaded in part" in plugged("rules").out


def test_the_deepest_frame_of_the_plugin_is_named(plugged: Command, outside: Outside) -> None:
    """And not that of a library which it calls, nor of Python's own, nor the folder it is in."""
    body = "import json\n    from demo_shop.deep.sums import total\n    yield total(json)"
    outside.add("demo_shop", calculation("sums", body))
    (outside.folder / "demo_shop.py").unlink()
    deep = outside.folder / "demo_shop" / "deep"
    deep.mkdir(parents=True)
    whole = calculation("sums", body)
    (deep.parent / "__init__.py").write_text(whole, encoding="utf-8")
    (deep / "__init__.py").write_text("", encoding="utf-8")
    source = "def total(json):\n\n    return json.loads('{')\n"
    (deep / "sums.py").write_text(source, encoding="utf-8")
    done = plugged("sums", "--current", "5 A")
    assert done.status == 4
    assert "(demo_shop/deep/sums.py, line 3)" in done.err
    assert str(outside.folder) not in done.err


def test_what_a_helper_yields_is_told_where_it_stands(plugged: Command, outside: Outside) -> None:
    helper = "\n\ndef of():\n    yield from inner()\n\n\ndef inner():\n    yield 'a text'\n"
    outside.add("demo_odd", calculation("odd", "yield from of()") + helper)
    line = (outside.folder / "demo_odd.py").read_text().splitlines().index("    yield 'a text'") + 1
    assert f"(demo_odd.py, line {line})" in plugged("odd", "--current", "5 A").err


@pytest.mark.parametrize(
    ("source", "words"),
    [
        ("raise RuntimeError('gone')\n", PULL),
        (calculation("odd", "yield 1 / 0"), ("odd", "--current", "5 A")),
    ],
    ids=["import", "run"],
)
def test_the_whole_way_is_shown_where_it_is_asked_for(
    plugged: Command, outside: Outside, monkeypatch: Any, source: str, words: tuple[str, ...]
) -> None:
    outside.add("demo_odd", source)
    plain = plugged(*words)
    monkeypatch.setenv("WIRECALC_TRACEBACK", "1")
    done = plugged(*words)
    assert done.status == plain.status
    assert done.out == plain.out
    assert "Traceback" not in plain.err
    assert "Traceback (most recent call last)" in done.err
    assert str(outside.folder / "demo_odd.py") in done.err


def test_a_defect_of_the_core_shows_its_way_and_is_no_fail(
    plugged: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Python's own exit after it would be 1."""
    monkeypatch.setattr("wirecalc.commands.calculate.run", lambda *_: 1 / 0)
    monkeypatch.setenv("WIRECALC_TRACEBACK", "1")
    done = plugged(*PULL)
    assert done.status == 4
    assert "Traceback (most recent call last)" in done.err
    assert "a defect of wirecalc: ZeroDivisionError" in done.err
