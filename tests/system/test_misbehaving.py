"""Kinds of plugins that misbehave, each with what it may harm: itself, its own calculation, or by a
house rule the findings that the rule is for. None changes what a bundled calculation found, and
none turns a fail into anything else.
"""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterator
from typing import Any, NamedTuple

import pytest

import wirecalc
from wirecalc import Catalogue, Finding, Verdict

from .conftest import Outside
from .test_broken_plugins import AT_LOADING, STRANGE, calculation
from .test_plugin_edges import AT_IMPORT, LATER, MARKED, MUTE, rule
from .test_plugins import BROKEN

ITSELF, ITS_OWN, FINDINGS, NOTHING = "itself", "its own calculation", "findings", "nothing"
ODD = ("odd", "--current", "5 A")
PULL = {"wire": "18 AWG", "terminal": "ring"}
NAMES = "from wirecalc import *\nfrom wirecalc import tables\n"


class Kind(NamedTuple):
    """A plugin, what it may harm, and words that say why."""

    source: str
    harms: str
    says: str = ""


BODIES = {  # of a calculation -> words that say why it is a defect
    "raises": ("yield 1 / 0", "ZeroDivisionError"),
    "raises behind a figure": ("yield figure('a', 1.0)\n    raise KeyError('a')", "no key 'a'"),
    "raises what is no exception": ("raise type('Odd', (BaseException,), {})('gone')", "Odd: gone"),
    "cannot say what": ("raise Mute", "Mute: it cannot say what"),
    "ends the process": ("raise SystemExit(0)", "SystemExit"),
    "closes itself": ("raise GeneratorExit\n    yield", "GeneratorExit"),
    "stops": ("raise StopIteration\n    yield", "StopIteration"),
    "calls itself for ever": ("yield from odd(current)", "RecursionError"),
    "runs out of memory": ("raise MemoryError\n    yield", "MemoryError"),
    "never ends": ("while True: yield figure(f'f{id(object())}', 1.0)", ""),
    "yields too much": ("yield from (figure(f'f{i}', 1.0) for i in range(20000))", "10000"),
    "yields a text": ("yield 'a text'", "str, which is no item"),
    "yields nothing at all": ("yield None", "NoneType, which is no item"),
    "yields a mapping": ("yield {'verdict': 'pass'}", "dict, which is no item"),
    "yields a verdict": ("yield Verdict.PASS", "Verdict, which is no item"),
    "yields a record of its own": (
        "yield type('Criterion', (Criterion,), {})('a', 'requires')",
        "",
    ),
    "yields a sense of its own": ("yield Criterion('a', 'better', 1.0, 2.0)", "'better'"),
    "yields what is infinite": ("yield figure('a', float('inf'))", "is inf"),
    "yields what is no number": ("yield figure('a', float('nan'))", "is nan"),
    "judges what is no number": (
        "yield at_least('a', float('nan'), 1.0, source=PRACTICE)",
        "is nan",
    ),
    "limits by what is infinite": (
        "yield at_most('a', 1.0, float('inf'), source=PRACTICE)",
        "is inf",
    ),
    "judges a truth": ("yield at_most('a', True, 1.0, source=PRACTICE)", "is True"),
    "judges a text": ("yield at_most('a', '1', 1.0, source=PRACTICE)", "is '1'"),
    "has no source": ("yield at_most('a', 1.0, 2.0)", "'source'"),
    "has a text as source": ("yield at_most('a', 1.0, 2.0, source='me')", "is 'me'"),
    "has a name that is none": ("yield at_most(7, 1.0, 2.0, source=PRACTICE)", "is 7"),
    "yields a name twice": ("for _ in 'ab': yield figure('a', 1.0)", "'a' twice"),
    "returns a number": ("return 7", "int"),
    "returns a criterion": ("return at_most('a', 1, 2, source=PRACTICE)", "returns a Criterion"),
    "returns nothing": ("figure('a', 1.0)", "returns None"),
    "warns of what there is not": ("yield caution('odd-99')", "no caution 'odd-99'"),
    "reads a table that there is not": ("yield tables.load('odd-99')", "odd-99"),
    "lists what is no text": ("yield listing('a', ['b'], [[object()]])", ""),
}
RULES = {  # bodies of a house rule -> words that say why nobody can tell
    "raises": ("return [1 / 0]", "ZeroDivisionError"),
    "raises what is no exception": ("raise type('Odd', (BaseException,), {})('gone')", "gone"),
    "ends the process": ("raise SystemExit(0)", "SystemExit"),
    "closes itself": ("raise GeneratorExit", "GeneratorExit"),
    "asks for what there is not": ("return [inputs['forc']]", "did you mean force?"),
    "returns nothing": ("items", "returns None"),
    "returns one criterion": ("return at_least('a', 1, 0, source=PRACTICE)", "returns a Criterion"),
    "yields a figure": ("return [figure('a', 1.0)]", "it yields a Figure"),
    "yields a verdict": ("return [Verdict.PASS]", "no item"),
    "changes what was found": ("items[0] = None", "TypeError"),
    "takes the inputs away": ("inputs.clear()\n    return [inputs['force']]", "no input 'force'"),
    "yields too much": (
        "return (requires(f'r{i}', True, says='', source=PRACTICE) for i in range(20000))",
        "10000",
    ),
}
HARMLESS = {  # bodies of a house rule that try to loosen, and change nothing
    "passes under the name of the published one": (
        "return [at_least('pull-out force', 99.0, 0.0, 'lbf', source=PRACTICE)]"
    ),
    "changes its copy of the inputs": "inputs['force'] = 99.0\n    return []",
    "empties what it was given": "inputs.clear()\n    return []",
    "warns of nothing under a published key": (
        "return [Caution('pull-01', 'nothing to take care of')]"
    ),
}


UNITS = {  # declared at import -> why they are refused
    "a unit of wirecalc, another factor": (
        "declare_unit('lbf', dimension='force', factor=100)",
        "force is a dimension of wirecalc's own, and takes no other units; there are lbf",
    ),
    "a unit of wirecalc, elsewhere": (
        "declare_unit('lbf', dimension='pull', factor=100)",
        "'lbf' is a spelling of lbf (force) already",
    ),
    "a spelling of wirecalc": (
        "declare_unit('pound', dimension='mass', factor=0.45359237, spellings=('newton',))",
        "'newton' is a spelling of N (force) already",
    ),
    "a unit that was refused until now": (
        "declare_unit('lb', dimension='force', factor=100)",
        "force is a dimension of wirecalc's own",
    ),
}


def kinds() -> Iterator[tuple[str, Kind]]:
    """Yield every kind with its name."""
    at_loading: dict[str, tuple[Any, ...]] = {**AT_LOADING, **STRANGE, **BROKEN, **MARKED}
    for name, (source, says, *_) in {**at_loading, **AT_IMPORT}.items():
        yield f"loading: {name}", Kind(source, ITSELF, says)
    for name, (body, says) in UNITS.items():
        source = NAMES + calculation("odd")
        yield (
            f"unit: {name}",
            Kind(f"from wirecalc import declare_unit\n{body}\n{source}", ITSELF, says),
        )
    for name, (body, says) in BODIES.items():
        yield f"calculation: {name}", Kind(NAMES + calculation("odd", body) + MUTE, ITS_OWN, says)
    for refuse, made in LATER.items():
        source = calculation("odd").replace('(part="shop")', f'(part="shop", {refuse})')
        yield f"refusal: {refuse}", Kind(made + source, ITS_OWN)
    for name, (body, says) in RULES.items():
        yield f"rule: {name}", Kind(NAMES + rule(body=body), FINDINGS, says)
    for name, body in HARMLESS.items():
        yield f"rule: {name}", Kind(NAMES + rule(body=body), NOTHING)


KINDS = dict(kinds())


def test_there_are_at_least_66_kinds() -> None:
    assert len({kind.source for kind in KINDS.values()}) >= 66


@functools.cache
def alone(force: str) -> Finding:
    """The finding without any plugin from outside."""
    return wirecalc.build(bundled_only=True).run("pull", PULL | {"force": force})


def own_of(finding: Finding) -> list[Any]:
    """What the bundled calculation itself found."""
    criteria = [c for c in finding.criteria if c.provider == finding.plugin]
    return criteria + [(f.figure.name, f.figure.value, f.low, f.high) for f in finding.figures]


@pytest.mark.parametrize("name", KINDS)
def test_it_harms_no_more_than_it_may(
    outside: Outside, wirecalc_cli: Callable[..., Any], name: str
) -> None:
    kind = KINDS[name]
    outside.add("demo_misbehaving", kind.source)
    loaded: Catalogue = wirecalc.build()
    (plugin,) = (p for p in loaded.plugins if p.name == "demo_misbehaving")
    assert plugin.broken is (kind.harms == ITSELF), plugin.reason
    for force, verdict in (("24 lbf", Verdict.PASS), ("19 lbf", Verdict.FAIL)):
        found = loaded.run("pull", PULL | {"force": force})
        assert own_of(found) == own_of(alone(force))
        assert {c.text for c in found.cautions} >= {c.text for c in alone(force).cautions}
        unsure = kind.harms == FINDINGS and verdict is Verdict.PASS
        assert found.verdict is (Verdict.CANNOT_TELL if unsure else verdict)
        gaps = [n.what for n in found.not_checked if "demo_misbehaving" in n.what]
        assert bool(gaps) is plugin.broken
    if kind.harms == ITSELF:
        assert kind.says in plugin.reason
    elif kind.harms == FINDINGS:
        (why,) = [c.reason for c in found.criteria if c.provider == "demo_misbehaving"]
        assert kind.says in why
        assert "(demo_misbehaving.py, line " in why
    elif kind.harms == ITS_OWN:
        done = wirecalc_cli(*ODD)
        assert (done.status, done.out) == (4, "")
        assert "odd of plugin demo_misbehaving 1.0 failed" in done.err
        assert kind.says in done.err
        assert "(demo_misbehaving.py, line " in done.err


def test_of_two_that_mean_another_unit_the_second_is_named(
    outside: Outside, wirecalc_cli: Callable[..., Any]
) -> None:
    """None of its calculations is there, so nothing is read by the factor of the other."""
    declares = (
        "from wirecalc import declare_unit\ndeclare_unit('bar', dimension='pressure', factor={})\n"
    )
    outside.add("demo_a", declares.format(100000) + calculation("a_bar"))
    outside.add("demo_b", declares.format(1) + calculation("b_bar"))
    assert wirecalc_cli("a-bar", "--current", "5 A").status == 0
    done = wirecalc_cli("b-bar", "--current", "5 A")
    assert done.status == 2
    said = "demo_a declared it already, as bar of pressure, 100000 in SI; here it is bar of"
    assert said in " ".join(done.err.split())
