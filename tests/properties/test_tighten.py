"""Every way in which a shop tightens does tighten: a value past the shop's limit never passes, and
one that keeps it gets the verdict that it has without the shop.
"""

from __future__ import annotations

import json
import tempfile
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Annotated, Any, NamedTuple

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import (
    Count,
    Finding,
    HouseRule,
    Item,
    OneOf,
    Reading,
    RequiredChecks,
    Source,
    Verdict,
    YesNo,
    at_least,
    at_most,
    calculation,
    extra,
    figure,
    setting,
)
from wirecalc.engine.from_plugins import ProvidedCalculation, ProvidedRule
from wirecalc.engine.running import run
from wirecalc.jobs import sheet as jobsheet
from wirecalc.plugging.host import Catalogue
from wirecalc.rules import files as rules_file
from wirecalc.rules.requirements import ProvidedRequirement

BOUNDED = settings(deadline=None, max_examples=200)
BOOK = Source("book", "a book made up for this test", copies=1)
LEAST, MOST = 20.0, 400.0  # lbf, what is published of the made-up joint


@calculation(part="a test")
def sample(
    force: Annotated[float, Reading("lbf", low=0, high=500, text="force")],
    cut: Annotated[int, Count("cut strands", low=0, high=99), setting()] = 0,
    kind: Annotated[str, OneOf(("ring", "fork", "lug"), text="kind"), setting()] = "ring",
    tinned: Annotated[bool | None, YesNo("tinned"), extra("no limit is about it")] = None,
) -> Iterator[Item]:
    """Does this made-up joint hold?"""
    yield figure("half", force / 2, "lbf")
    yield at_least("held", force, LEAST, "lbf", source=BOOK)
    yield at_most("pulled", force, MOST, "lbf", source=BOOK)
    yield at_most("nicked", cut, 50, source=BOOK)


BUNDLED = wirecalc.build(bundled_only=True, rules=[])
KNOWN = {"sample": ProvidedCalculation("test", "1", sample)}


class Way(NamedTuple):
    """What a shop asks in its rules file, with inputs that keep to it and that do not."""

    asks: str
    kept: Mapping[str, object]
    missed: Mapping[str, object]


shares = st.floats(0.02, 0.9)  # how far a value is past a limit, or within it
factors = st.floats(1.1, 5).map(lambda f: round(f, 2))


def between(low: float, high: float, share: float) -> str:
    return f"{low + (high - low) * share:.2f} lbf"


def least(limit: float, asks: str, share: float) -> Way:
    """A least value: kept above it, missed below, both within what is published."""
    kept, missed = between(limit, MOST, share), between(limit, LEAST, share)
    return Way(asks, {"force": kept}, {"force": missed})


def most(limit: float, asks: str, share: float) -> Way:
    kept, missed = between(limit, LEAST, share), between(limit, MOST, share)
    return Way(asks, {"force": kept}, {"force": missed})


@st.composite
def ways(draw: st.DrawFn) -> Way:
    """Draw one of the ways in which a rule asks for more than what is published."""
    limit, share = round(draw(st.floats(30, 200)), 1), draw(shares)
    times = draw(factors)
    strands, more = draw(st.integers(0, 20)), draw(st.integers(1, 20))
    fewer = {"force": "50 lbf", "cut": strands}, {"force": "50 lbf", "cut": strands + more}
    ring, lug = {"force": "50 lbf", "kind": "ring"}, {"force": "50 lbf", "kind": "lug"}
    return draw(
        st.sampled_from(
            [
                least(LEAST * times, f'criterion = "held"\ntimes = {times}', share),
                most(MOST / times, f'criterion = "pulled"\ntimes = {1 / times!r}', share),
                least(limit, f'criterion = "held"\nat_least = "{limit} lbf"', share),
                most(limit, f'criterion = "pulled"\nat_most = "{limit} lbf"', share),
                least(limit, f'figure = "half"\nat_least = "{limit / 2!r} lbf"', share),
                most(limit, f'figure = "half"\nat_most = "{limit / 2!r} lbf"', share),
                least(limit, f'input = "force"\nat_least = "{limit} lbf"', share),
                most(limit, f'input = "force"\nat_most = "{limit} lbf"', share),
                Way(f'criterion = "nicked"\nat_most = {strands}', *fewer),
                Way(f'input = "cut"\nat_most = {strands}', *fewer),
                Way('input = "kind"\none_of = ["ring", "fork"]', ring, lug),
                Way('input = "kind"\nnot_one_of = ["lug"]', ring, lug),
                Way('forbid = true\nwhen = { kind = ["lug"] }', ring, lug),
            ]
        )
    )


MORE = {  # what may stand beside, and makes no limit milder
    "optional": "optional = true",
    "advisory": "advisory = true",
    "why": 'why = "the vans shake"',
    "caution": 'caution = "look"',
    "source": 'source = "sheet 4"',
}
more = st.sets(st.sampled_from(sorted(MORE)))


def ruled(text: str, given_: Mapping[str, object]) -> Finding:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.toml"
        path.write_text(text, encoding="utf-8")
        rules = rules_file.load([path], KNOWN).rules
    return run(KNOWN["sample"], given_, rules=rules)


def plain(given_: Mapping[str, object]) -> Finding:
    return run(KNOWN["sample"], given_)


def rule(asks: str, beside: Sequence[str] = ()) -> str:
    lines = ["[[rule]]", 'name = "ours"', 'calculations = ["sample"]', asks]
    return "\n".join([*lines, *(MORE[key] for key in beside)])


@BOUNDED
@given(ways(), more)
@example(Way('input = "cut"\nat_most = 0', {}, {"force": "50 lbf", "cut": 1}), {"optional"}).via(
    "a rule that may be left unjudged was left out where it failed, and no test knew"
)
def test_what_misses_a_rule_of_a_file_never_passes(way: Way, beside: set[str]) -> None:
    assert plain(way.missed).verdict is Verdict.PASS
    asked = Verdict.MARGINAL if "advisory" in beside else Verdict.FAIL
    found = ruled(rule(way.asks, sorted(beside)), way.missed)
    assert found.verdict is asked, way
    assert found.decided_by is not None
    assert found.decided_by.provider == "shop.toml"


@BOUNDED
@given(ways(), more)
def test_what_keeps_a_rule_of_a_file_is_as_it_is_without(way: Way, beside: set[str]) -> None:
    assert ruled(rule(way.asks, sorted(beside)), way.kept).verdict is Verdict.PASS


@BOUNDED
@given(ways(), more, st.sampled_from(["tinned", "kind"]))
def test_a_condition_that_holds_or_is_not_known_lets_nothing_pass(
    way: Way, beside: set[str], on: str
) -> None:
    assume("when" not in way.asks)
    words = {"tinned": ["yes"], "kind": ["ring", "fork", "lug"]}[on]
    when = f"when = {{ {on} = {json.dumps(words)} }}"
    text = rule(f"{way.asks}\n{when}", sorted(beside - {"optional"}))
    assert ruled(text, way.missed).verdict is not Verdict.PASS
    assert ruled(text, {**way.missed, "tinned": "yes"}).verdict is not Verdict.PASS


@BOUNDED
@given(ways(), st.integers(1, 30), st.booleans())
def test_a_meter_that_reaches_past_a_rule_never_passes(
    way: Way, percent: int, optional: bool
) -> None:
    assume("cut" not in way.missed and "kind" not in way.missed)
    force = str(way.missed["force"])
    read = {"force": f"{force} ±{percent}%"}
    text = rule(way.asks, ["optional"] if optional else [])
    assert ruled(text, read).verdict in (Verdict.FAIL, Verdict.CANNOT_TELL)


@BOUNDED
@given(st.floats(25, 350), shares, st.booleans())
def test_what_misses_a_rule_of_a_plugin_never_passes(
    limit: float, share: float, advisory: bool
) -> None:
    def ours(values: Mapping[str, Any], items: Sequence[Item]) -> Iterator[Item]:
        yield at_least("held", values["force"], limit, "lbf", source=BOOK, advisory=advisory)

    rules = [ProvidedRule("shop", "1", HouseRule("ours", ("sample",), ours))]
    way = least(limit, "", share)
    found = run(KNOWN["sample"], way.missed, rules=rules)
    assert found.verdict is (Verdict.MARGINAL if advisory else Verdict.FAIL)
    assert run(KNOWN["sample"], way.kept, rules=rules).verdict is Verdict.PASS


# the tables of a shop

PULLED = {"wire": "18 AWG", "terminal": "ring"}
SIDECAR = """
stricter_than = "pull-crimp"
title = "x"
purpose = "x"
not_for = "x"
checked = "x"
key = ["standard", "awg", "area_mm2"]
[sources.ours]
title = "ours"
[columns.standard]
type = "text"
[columns.awg]
type = "gauge"
[columns.area_mm2]
type = "number"
unit = "mm2"
[columns.minimum_lbf]
type = "number"
unit = "lbf"
[columns.minimum_N]
type = "number"
unit = "N"
"""
HEAD = "standard,awg,area_mm2,minimum_lbf,minimum_N,source,confidence,copies,note"


@BOUNDED
@given(st.floats(21, 40), shares, st.booleans())
def test_what_misses_a_row_of_a_stricter_table_never_passes(
    limit: float, share: float, in_a_batch: bool
) -> None:
    """UL 486A asks for 20 lbf (89.0 N, 3 copies seen) on 18 AWG."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "ours.toml").write_text(SIDECAR, encoding="utf-8")
        row = f"ul-486a,18,0.82,{limit!r},{limit * 4.4482216152605!r},ours,house,0,"
        (folder / "ours.csv").write_text(f"{HEAD}\n{row}\n", encoding="utf-8")
        catalogue = Catalogue(BUNDLED.calculations, folders=[folder])
        in_rows = catalogue.runner("pull")

        def found(force: float) -> Finding:
            given_ = {**PULLED, "force": f"{force!r} lbf"}
            return in_rows(given_) if in_a_batch else catalogue.run("pull", given_)

        missed, kept = found(limit + (20 - limit) * share), found(min(limit * (1 + share), 50.0))
    assert missed.verdict is Verdict.FAIL
    assert missed.house_rules == ("ours",)
    assert kept.verdict is Verdict.PASS


# required checks

AS_LEFT = '[job]\ntitle = "t"\nkind = "refrigerator"\n[[check]]\ncalculation = "pull"\n' + (
    'wire = "18 AWG"\nterminal = "ring"\nforce = "24 lbf"\nstage = "{stage}"\n'
)
CALCULATIONS = sorted(BUNDLED.calculations)


@BOUNDED
@given(
    st.sampled_from(CALCULATIONS),
    st.sampled_from([("*",), ("refrigerator",), ("Refrigerator",), ("dishwasher", "refrigerator")]),
    st.sampled_from(["", "no time", "not asked for"]),
)
def test_a_job_without_a_check_that_a_shop_requires_never_passes(
    name: str, kinds: tuple[str, ...], excuse: str
) -> None:
    asked = RequiredChecks("before it goes back", kinds, (name,))
    catalogue = Catalogue(
        BUNDLED.calculations, required=[ProvidedRequirement("shop.toml", "line 1", asked)]
    )
    text = AS_LEFT.format(stage="as left")
    if excuse:
        text += f'[[not_tested]]\nname = "x"\ncalculation = "{name}"\nreason = "{excuse}"\n'
    if excuse and name == "pull":
        return  # it stands there as tested
    job = jobsheet.evaluate(tomllib.loads(text), catalogue)
    named = [n for n in job.not_tested if n.required and "before it goes back" in n.rule]
    assert bool(named) is (name != "pull")
    if name != "pull":
        assert job.verdict in (Verdict.CANNOT_TELL, Verdict.FAIL)


@pytest.mark.parametrize("stage", ["as found", "option"])
def test_a_check_that_a_shop_requires_is_made_as_left(stage: str) -> None:
    asked = RequiredChecks("before it goes back", ("*",), ("pull",))
    catalogue = Catalogue(
        BUNDLED.calculations, required=[ProvidedRequirement("shop.toml", "line 1", asked)]
    )
    job = jobsheet.evaluate(tomllib.loads(AS_LEFT.format(stage=stage)), catalogue)
    assert job.verdict is Verdict.CANNOT_TELL
    assert any(n.required and "before it goes back" in n.rule for n in job.not_tested)
