"""House rules only tighten, on the bundled calculations: random rules files and random functions
on random findings never improve a verdict and leave all that the calculation found.
"""

from __future__ import annotations

import json
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, event, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import (
    BadInput,
    Count,
    Finding,
    HouseRule,
    Item,
    Nameplate,
    OneOf,
    Reading,
    Source,
    at_least,
    at_most,
    figure,
    not_checked,
    requires,
    tables,
)
from wirecalc.engine import from_plugins as provided
from wirecalc.engine import running
from wirecalc.published import table_files as tablefile
from wirecalc.rules import files as rules_file

BOUNDED = settings(deadline=None, max_examples=150, suppress_health_check=[HealthCheck.too_slow])
CATALOGUE = wirecalc.build(bundled_only=True, rules=[])
FILES_OR_DEAR = ("pull-batch", "trace", "start-curve", "choose")
NAMES = [name for name in CATALOGUE.calculations if name not in FILES_OR_DEAR]
BY_TABLES = ", by the shop's tables"  # what these make otherwise stands beside it
MADE_UP = Source("made-up", "made up for this test", copies=1)


def value(kind: Any) -> st.SearchStrategy[Any]:
    """Draw what may be typed for an input: near its example, for a reading with an error too."""
    if isinstance(kind, OneOf):
        return st.sampled_from(kind.words)
    if isinstance(kind, Count):
        return st.integers(kind.low, min(kind.high, kind.low + 20))
    if isinstance(kind, Reading | Nameplate):
        number, _, unit = kind.example.partition(" ")
        try:
            middle = float(number)
        except ValueError:
            return st.just(kind.example)
        errors = ["", " ±3%"] if isinstance(kind, Reading) else [""]
        factors = st.sampled_from([0.5, 0.8, 0.95, 1.0, 1.02, 1.2, 2.0])
        return st.builds(
            lambda f, e: f"{middle * f:.6g} {unit}{e}", factors, st.sampled_from(errors)
        )
    return st.just(kind.example)


@st.composite
def findings(draw: st.DrawFn) -> tuple[str, dict[str, Any], Finding] | None:
    """Draw a calculation, inputs, and its finding without any house rule."""
    name = draw(st.sampled_from(NAMES))
    calc = CATALOGUE.calculations[name].calculation
    given_: dict[str, Any] = {}
    errors = 0
    for one in calc.inputs:
        shown = calc.example_inputs.get(one.name)
        if shown is not None or draw(st.integers(0, 3)) == 0:
            typed = shown if isinstance(shown, list) else draw(value(one.kind))
            errors += "±" in str(typed)
            given_[one.name] = typed if errors < 3 else str(typed).partition(" ±")[0]
    try:
        return name, given_, running.run(CATALOGUE.calculations[name], given_)
    except BadInput:
        return None


def targets(name: str, finding: Finding) -> list[tuple[str, str, str]]:
    """Return what a rule may look at: the key, the name, and a unit of it."""
    found = [("criterion", c.criterion.name, c.criterion.unit) for c in finding.criteria]
    found += [("figure", f.figure.name, f.figure.unit) for f in finding.figures]
    found += [
        ("input", i.name, i.kind.unit) for i in CATALOGUE.calculations[name].calculation.inputs
    ]
    return [*found, ("criterion", "no such thing", "A"), ("forbid", "", "")]


@st.composite
def rules(draw: st.DrawFn, name: str, finding: Finding) -> str:
    """Draw a rules file; what it says may fit, loosen, or make no sense."""
    lines: list[str] = []
    for number in range(draw(st.integers(1, 3))):
        of, what, unit = draw(st.sampled_from(targets(name, finding)))
        lines += ["[[rule]]", f'name = "rule {number}"', f"calculations = {json.dumps([name])}"]
        lines.append("forbid = true" if of == "forbid" else f"{of} = {json.dumps(what)}")
        size = draw(st.sampled_from([-5, 0, 0.5, 1, 2, 10, 100, 1e4]))
        amount = json.dumps(f"{size:g} {unit}") if unit else f"{size:g}"
        asks = [
            f"times = {draw(st.sampled_from([0.5, 0.9, 1.1, 2]))}",
            f"at_least = {amount}",
            f"at_most = {amount}",
            f"one_of = {json.dumps(draw(words(name, what)))}",
            f"not_one_of = {json.dumps(draw(words(name, what)))}",
        ]
        fit = {"criterion": asks[:3], "figure": asks[1:3], "input": asks[1:]}.get(of, asks)
        asks = asks if draw(st.integers(0, 5)) == 0 else fit
        lines += [draw(st.sampled_from(asks))] if of != "forbid" or draw(st.booleans()) else []
        lines += draw(st.sampled_from([[], ["optional = true"], ["advisory = true"]]))
        lines += draw(st.sampled_from([[], ['caution = "look"']]))
        if draw(st.booleans()):
            on = draw(st.sampled_from([i for k, i, _ in targets(name, finding) if k == "input"]))
            lines.append(f"when = {{ {on} = {json.dumps(draw(words(name, on)))} }}")
    return "\n".join([*lines, draw(st.sampled_from(["", "", "", "[half", "odd = 1"]))])


def words(name: str, of: str) -> st.SearchStrategy[list[str]]:
    """Draw words that an input may be held against."""
    kinds = {i.name: i.kind for i in CATALOGUE.calculations[name].calculation.inputs}
    kind = kinds.get(of)
    known = kind.words if isinstance(kind, OneOf) else [kind.example if kind else "nothing"]
    return st.lists(st.sampled_from([*known, "yes", "no such"]), min_size=1, max_size=2)


def check_tightened(plain: Finding, ruled: Finding) -> None:
    ranks = [-1 if f.verdict is None else f.verdict.rank for f in (plain, ruled)]
    assert ranks[0] <= ranks[1]
    assert all(c in ruled.criteria for c in plain.criteria)
    assert [a for a in ruled.answers if not a.name.endswith(BY_TABLES)] == list(plain.answers)
    own = [f for f in ruled.figures if not f.figure.name.endswith(BY_TABLES)]
    assert [f[1:] for f in own] == [f[1:] for f in plain.figures]
    assert {n.what for n in plain.not_checked} <= {n.what for n in ruled.not_checked}
    assert {c.text for c in plain.cautions} <= {c.text for c in ruled.cautions}


@BOUNDED
@given(st.data())
def test_a_random_rules_file_never_improves_a_verdict(data: st.DataObject) -> None:
    found = data.draw(findings())
    if found is None:
        return
    name, given_, plain = found
    text = data.draw(rules(name, plain))
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.toml"
        path.write_text(text, encoding="utf-8")
        loaded = rules_file.load([path], CATALOGUE.calculations)
    assert loaded.rules  # whatever the text, something is asked of somebody
    ruled = running.run(CATALOGUE.calculations[name], given_, rules=loaded.rules)
    event(f"{plain.verdict} to {ruled.verdict}")
    check_tightened(plain, ruled)


YIELDED = st.sampled_from(
    [
        at_least("held", 5.0, 1.0, source=MADE_UP),
        at_most("held too", 5.0, 1.0, "A", source=MADE_UP, advisory=True),
        requires("kept", True, says="so", source=MADE_UP),
        not_checked("something"),
        figure("current", 1e9),
        at_least("odd", float("nan"), 1.0, source=MADE_UP),
        None,
        "pass",
        ValueError("no"),
        SystemExit(0),
    ]
)


@BOUNDED
@given(st.data())
def test_a_random_function_never_improves_a_verdict(data: st.DataObject) -> None:
    found = data.draw(findings())
    if found is None:
        return
    name, given_, plain = found
    own = [c.criterion._replace(actual=1e9, limit=0.0) for c in plain.criteria]
    yielded = data.draw(st.lists(YIELDED | st.sampled_from(own) if own else YIELDED, max_size=3))

    def tighten(values: Mapping[str, Any], items: Sequence[Item]) -> Iterator[Any]:
        for one in yielded:
            if isinstance(one, BaseException):
                raise one
            yield one

    rule = provided.ProvidedRule("bundled", "1", HouseRule("ours", ("*",), tighten))
    ruled = running.run(CATALOGUE.calculations[name], given_, rules=[rule, rule])
    check_tightened(plain, ruled)


@pytest.mark.parametrize("name", NAMES)
def test_the_strategy_reaches_every_calculation(name: str) -> None:
    """The example of each runs, so that the draws above do not all end in a refusal."""
    calc = CATALOGUE.calculations[name].calculation
    assert running.run(CATALOGUE.calculations[name], calc.example_inputs).inputs


TIGHTENABLE = [
    name for name in tables.names() if any(c.stricter for c in tables.load(name).columns)
]


def sidecar(published: tables.Table, columns: Sequence[tables.Column]) -> str:
    lines = [f'stricter_than = "{published.name}"', f"key = {json.dumps(published.key)}"]
    lines += [f'{word} = "x"' for word in ("title", "purpose", "not_for", "checked")]
    lines += ["[sources.ours]", 'title = "ours"']
    for column in columns:
        lines += [f"[columns.{column.name}]", f'type = "{column.type}"', "required = false"]
        lines.append(f'unit = "{column.unit}"')
    return "\n".join(lines)


@st.composite
def shop_rows(draw: st.DrawFn, name: str) -> tuple[str, str]:
    """Draw a shop's table over a published one: rows changed at random, stricter or not."""
    published = tables.load(name)
    columns = [c for c in published.columns if c.name in published.key or c.stricter]
    lines = [",".join([*(c.name for c in columns), *tablefile.TAIL])]
    factor = draw(st.sampled_from([0.5, 0.9, 1.0, 1.1, 2.0]))
    for row in published.rows:
        cells = []
        for column in columns:
            cell = row.cells[column.name]
            if column.name in published.key or not isinstance(cell, int | float):
                cells.append(row.text(column.name))
            else:
                cells.append(f"{type(cell)(cell * factor)}")
        lines.append(",".join(f'"{c}"' for c in [*cells, "ours", "house", "0", ""]))
    return sidecar(published, columns), "\n".join(lines) + "\n"


@BOUNDED
@given(st.data())
def test_a_random_table_of_a_shop_never_improves_a_verdict(data: st.DataObject) -> None:
    found = data.draw(findings())
    if found is None:
        return
    name, given_, plain = found
    with tables.watched() as asked:
        running.run(CATALOGUE.calculations[name], given_)
    touched = sorted(asked & set(TIGHTENABLE)) or TIGHTENABLE
    about, rows = data.draw(shop_rows(data.draw(st.sampled_from(touched))))
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "ours.toml").write_text(about, encoding="utf-8")
        (Path(folder) / "ours.csv").write_text(rows, encoding="utf-8")
        tables.use_folders([Path(folder)])
        try:
            ruled = running.run(CATALOGUE.calculations[name], given_)
        finally:
            tables.use_folders([])
    event(f"{plain.verdict} to {ruled.verdict}")
    check_tightened(plain, ruled)
