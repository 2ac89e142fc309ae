"""A shop's own plugin: a calculation, a house rule, a caution and a table of its own."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .conftest import Outside

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
SHOP = '''
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated
from wirecalc import (
    Caution, Confidence, Criterion, HouseRule, Item, Reading, Source, at_least, at_most,
    calculation, caution, figure, hookimpl, not_checked, requires,
)

SHEET = Source("shop", "shop sheet", "invented", confidence=Confidence.HOUSE)


@calculation(part="shop")
def lead(
    run_length: Annotated[float, Reading("m", above=0, high=100, text="one way to the load")],
) -> Iterator[Item]:
    """Is this lead short enough for the shop's van?"""
    yield figure("there and back", 2 * run_length, "m")
    yield at_most("length of the lead", run_length, 15.0, "m", source=SHEET)


@hookimpl
def wirecalc_calculations():
    return [lead]


def _rule(inputs, items):
    {rule}


@hookimpl
def wirecalc_house_rules():
    return [HouseRule("shop pull", ("pull",), _rule)]
'''
CAUTIONS = """

@hookimpl
def wirecalc_cautions():
    return [
        Caution("shop-01", "Hang the tag on the machine.", "the shop"),
        Caution("pull-01", "Nothing to worry about.", "the shop"),
    ]
"""
TIGHTER = 'yield at_least("shop pull-out force", inputs["force"], 25.0, "lbf", source=SHEET)'


def _shop(rule: str = TIGHTER) -> str:
    return SHOP.replace("{rule}", rule)


@pytest.mark.parametrize(
    ("length", "status"), [("15 m", 0), ("49 ft", 0), ("50 ft", 1), ("14.9 m ±0.2 m", 3), ("5", 2)]
)
def test_outside_calculation_gets_what_a_bundled_one_gets(
    plugged: Command, outside: Outside, length: str, status: int
) -> None:
    """50 ft are 15.24 m: units, meter error, refusals and exit status come with the signature."""
    outside.add("demo_shop", _shop())
    done = plugged("lead", "--run-length", length)
    assert done.status == status
    assert bool(done.err) == (status == 2)


def test_outside_calculation_is_listed_explained_and_helped(
    plugged: Command, outside: Outside
) -> None:
    outside.add("demo_shop", _shop())
    listing = plugged()
    assert (listing.status, listing.err) == (0, "")
    assert "\nshop\n  lead  Is this lead short enough" in listing.out
    for words in (("lead", "--help"), ("explain", "lead")):
        done = plugged(*words)
        assert (done.status, done.err) == (0, "")
        assert "--run-length" in done.out
    plugins = {p["name"]: p for p in plugged("plugins", "--format", "json").json["plugins"]}
    assert plugins["demo_shop"]["state"] == "loaded"
    assert plugins["demo_shop"]["calculations"] == ["lead"]


def _by_provider(finding: dict[str, Any]) -> dict[str, dict[str, Any]]:
    return {c["provider"]: c for c in finding["criteria"]}


def test_house_rule_tightens(plugged: Command, outside: Outside) -> None:
    outside.add("demo_shop", _shop())
    assert plugged(*PULL, "24 lbf", "--bundled-only").status == 0
    done = plugged(*PULL, "24 lbf")
    assert (done.status, done.err) == (1, "")
    assert "20 lbf" in done.out
    assert "25 lbf" in done.out
    assert "house rule" in done.out
    assert "shop sheet" in done.out
    finding = plugged(*PULL, "24 lbf", "--format", "json").json
    found = _by_provider(finding)
    assert (found["bundled"]["verdict"], found["bundled"]["limit"]) == ("pass", 20)
    assert (found["demo_shop"]["verdict"], found["demo_shop"]["limit"]) == ("fail", 25)
    assert found["demo_shop"]["origin"] == "house"
    assert found["bundled"]["origin"] == "standard"
    assert finding["decided_by"] == "shop pull-out force"


@pytest.mark.parametrize(
    ("force", "status"),
    [("26 lbf", 0), ("25.2 lbf ±0.5 lbf", 3), ("19 lbf", 1), ("120 N", 0), ("unknown", 3)],
)
def test_meter_counts_for_the_house_rule_too(
    plugged: Command, outside: Outside, force: str, status: int
) -> None:
    """120 N are 26.98 lbf; 24.7 to 25.7 lbf reaches across the shop's limit of 25 lbf."""
    outside.add("demo_shop", _shop())
    assert plugged(*PULL, force).status == status


def test_house_rule_in_a_job_sheet(
    plugged: Command, outside: Outside, write_sheet: Callable[..., Path]
) -> None:
    outside.add("demo_shop", _shop())
    inputs = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
    sheet = write_sheet(
        {"calculation": "pull", **inputs}, {"calculation": "lead", "run_length": "3 m"}
    )
    job = plugged("job", str(sheet), "--format", "json")
    assert job.status == 1
    pull, lead = (c["finding"] for c in job.json["checks"])
    assert _by_provider(pull)["demo_shop"]["origin"] == "house"
    assert (pull["verdict"], lead["verdict"]) == ("fail", "pass")


def test_bundled_only_leaves_it_out_and_says_so(plugged: Command, outside: Outside) -> None:
    outside.add("demo_shop", _shop())
    done = plugged(*PULL, "24 lbf", "--bundled-only")
    assert (done.status, done.err) == (0, "")
    not_checked = done.out.partition("\nNot checked\n")[2].partition("\n\n")[0]
    assert "demo_shop of demo-shop 1.0" in " ".join(not_checked.split())
    finding = plugged(*PULL, "24 lbf", "--bundled-only", "--format", "json").json
    assert any("demo_shop" in n["what"] for n in finding["not_checked"])
    plugins = plugged("plugins", "--bundled-only", "--format", "json").json["plugins"]
    assert [p["state"] for p in plugins if p["name"] == "demo_shop"] == ["left out"]
    lead = plugged("lead", "--run-length", "3 m", "--bundled-only")
    assert (lead.status, lead.out) == (2, "")


CANNOT_LOOSEN = {
    "a milder limit": TIGHTER.replace("25.0", "1.0"),
    "the published name": TIGHTER.replace("25.0", "1.0").replace("shop pull", "pull"),
    "other inputs": "inputs['force'] = 1000.0\n    return []",
    "fewer items": "list(items).clear()\n    return []",
}


@pytest.mark.parametrize("case", CANNOT_LOOSEN)
def test_house_rule_cannot_loosen(plugged: Command, outside: Outside, case: str) -> None:
    outside.add("demo_shop", _shop(CANNOT_LOOSEN[case]))
    finding = plugged(*PULL, "19 lbf", "--format", "json")
    assert finding.status == 1
    own = [c for c in finding.json["criteria"] if c["provider"] == "bundled"]
    assert [(c["verdict"], c["limit"], c["actual"]) for c in own] == [("fail", 20, 19)]


SPOILING = """
def _spoil(inputs, items):
    for column in (*inputs["readings"].numbers.values(), *inputs["readings"].words.values()):
        column[:] = [1000.0] * len(column)
    return []


def _least(inputs, items):
    yield at_least("shop least", min(inputs["readings"].numbers["force"]), 20, "lbf", source=SHEET)


@hookimpl
def wirecalc_house_rules():
    return [HouseRule("a", ("pull-batch",), _spoil), HouseRule("b", ("pull-batch",), _least)]
"""


def test_a_rule_spoils_no_file_of_readings_for_another(
    plugged: Command, outside: Outside, tmp_path: Path
) -> None:
    outside.add("demo_shop", _shop() + SPOILING)
    path = tmp_path / "pulls.csv"
    path.write_text("force_lbf,by\n25,ann\n19,ben\n27,ann\n26,ben\n", encoding="utf-8")
    words = ("pull-batch", "--wire", "18 AWG", "--terminal", "ring", "--readings", str(path))
    found = {c["name"]: c["verdict"] for c in plugged(*words, "--format", "json").json["criteria"]}
    assert found["shop least"] == "fail"
    assert found["house rule a"] == "cannot tell"


BAD_RULES = {
    "raises": "1 / 0",
    "raises later": f"{TIGHTER}\n    1 / 0",
    "exits": "raise SystemExit(0)",
    "yields a figure": "yield figure('a', 1.0)",
    "yields nothing known": "yield 'a text'",
    "returns a number": "return 7",
    "nan": TIGHTER.replace("25.0", "float('nan')"),
    "a number beyond all": "yield at_least('a', 10**400, 2.0, source=SHEET)",
    "no class of its own": "class Mine(Criterion):\n        verdict = 'great'\n"
    "    yield Mine('a', 'at least', 3.0, 2.0, source=SHEET)",
    "no source of its own": "class Mine(Source):\n        __eq__ = lambda *two: True\n"
    "    yield at_least('a', 3.0, 2.0, source=Mine('k', 'any'))",
    "a source in words": "yield at_least('a', 3.0, 2.0, source='sheet 4')",
    "a source of unknown worth": "yield at_least('a', 3.0, 2.0, source=Source('k', 'any', "
    "confidence='superb'))",
    "a decimal": "from decimal import Decimal\n    "
    "yield at_least('a', Decimal(3), Decimal(2), source=SHEET)",
    "a number for a name": "yield at_least(7, 3.0, 2.0, source=SHEET)",
    "no unit": "yield at_least('a', 3.0, 2.0, None, source=SHEET)",
    "no such sense": "yield Criterion('a', 'about', 3.0, 2.0, source=SHEET)",
    "half a band": "yield at_least('a', 3.0, 2.0, source=SHEET, band=(3.0,))",
    "a reason in pieces": "yield requires('a', False, says=['so'], source=SHEET)",
    "held in words": "yield requires('a', 'no', says='so', source=SHEET)",
    "an action that is none": "yield requires('a', True, says='so', source=SHEET, action=object())",
    "needs that are none": "yield Criterion('a', 'cannot tell', needs=7)",
    "a caution of unknown gravity": "yield Caution('shop-02', 'Wait.', severity='mild')",
    "a caution without words": "yield Caution('shop-02', '')",
    "a caution without a key": "yield Caution([], 'Wait.')",
    "a gap that is none": "yield not_checked('the rest', 7)",
}


@pytest.mark.parametrize("case", BAD_RULES)
def test_rule_that_cannot_be_used_is_cannot_tell(
    plugged: Command, outside: Outside, case: str
) -> None:
    outside.add("demo_shop", _shop(BAD_RULES[case]))
    done = plugged(*PULL, "26 lbf", "--format", "json")
    assert done.status == 3, done.err
    assert "shop pull" in _by_provider(done.json)["demo_shop"]["reason"]
    for form in ("text", "csv", "html"):
        assert plugged(*PULL, "19 lbf", "--format", form).status == 1


def test_rule_may_add_a_caution(command: Command, outside: Outside) -> None:
    outside.add("demo_shop", _shop("yield caution('shop-01')") + CAUTIONS)
    done = command(*PULL, "24 lbf", env=outside.env)
    assert done.status == 0
    assert "Hang the tag on the machine." in done.out


@pytest.mark.parametrize("severity", ["note", "caution"])
def test_a_caution_of_a_rule_stands_behind_those_of_the_calculation(
    plugged: Command, outside: Outside, severity: str
) -> None:
    """The first lines have room for one caution: a shop's remark takes it from no hazard."""
    rule = f"yield Caution('shop-02', 'The van leaves at five.', severity={severity!r})"
    outside.add("demo_shop", _shop(rule))
    out = plugged(*PULL, "26 lbf").out
    assert out.partition("\nCare  ")[2].startswith("class or sample test: Eye protection")
    assert "The van leaves at five." in out


def test_a_grave_caution_of_a_rule_stands_in_the_first_lines(
    plugged: Command, outside: Outside
) -> None:
    outside.add("demo_shop", _shop("yield Caution('shop-02', 'Two people.', severity='stop')"))
    assert "\nCare  STOP: Two people.\n" in plugged(*PULL, "26 lbf").out


def test_outsider_cannot_reword_a_bundled_caution(command: Command, outside: Outside) -> None:
    outside.add("demo_shop", _shop() + CAUTIONS)
    done = command(*PULL, "26 lbf", env=outside.env)
    assert "Nothing to worry about." not in done.out
    assert "Eye protection" in done.out


def test_installed_command_takes_the_shop_along(command: Command, outside: Outside) -> None:
    outside.add("demo_shop", _shop() + CAUTIONS)
    done = command(*PULL, "24 lbf", env=outside.env)
    assert (done.status, done.err) == (1, "")
    assert "25 lbf" in done.out
    assert command("lead", "--run-length", "50 ft", env=outside.env).status == 1
