"""Kinds of job and the sheet that is written for one: right when empty, in part, and full."""

from __future__ import annotations

import functools
import re
import tomllib

import pytest

from wirecalc import tables
from wirecalc.base.errors import BadInput
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.checks import AS_LEFT, STAGES, STEPS
from wirecalc.jobs.sheet import kinds
from wirecalc.jobs.sheet.gaps import gaps
from wirecalc.jobs.sheet.plan import on_plate
from wirecalc.jobs.sheet.template import new_sheet
from wirecalc.plugging import host
from wirecalc.rules.requirements import ProvidedRequirement, RequiredChecks

CATALOGUE = host.build(bundled_only=True)
KINDS = kinds.table_kinds()
each_kind = pytest.mark.parametrize("kind", KINDS)


@functools.cache
def written(kind: str) -> str:
    """The sheet that is written for a kind where a shop asks for nothing."""
    return new_sheet(kind, "x.toml", CATALOGUE)


def full(sheet: str) -> str:
    """The sheet with one # off every line."""
    return "\n".join(re.sub("^# ?", "", line) for line in sheet.splitlines())


def test_kinds_of_the_trade_are_there() -> None:
    assert {"refrigerator", "freezer", "washer", "dryer", "range", "dishwasher"} <= set(KINDS)


def test_the_table_names_steps_stages_and_calculations_that_are_there() -> None:
    for row in tables.load("job-kinds").rows:
        assert row.text("step") in STEPS
        assert row.text("stage") in STAGES
        assert row.text("calculation") in CATALOGUE.calculations
        assert row.text("required") in ("yes", "no")
        assert row.text("required") == "no" or row.text("stage") == AS_LEFT
        assert row.source.confidence == "common practice"


# What belongs to a kind of machine and keeps none from going back (common practice, no source):
# its sensors, the wait before a start, its draw, and whether it does its work again.
COLD = {"restart-wait", "thermistor", "draw"}
OFFERED = {
    "refrigerator": COLD | {"thermostat", "cooling", "pull-down", "air-split", "duty", "discharge"},
    "freezer": COLD | {"thermostat", "cooling", "pull-down", "air-split", "duty", "discharge"},
    "air-conditioner": COLD | {"air-split", "discharge"},
    "dehumidifier": COLD | {"air-split", "discharge"},
    "ice-machine": COLD | {"thermostat", "air-split", "discharge"},
    "heat-pump-dryer": COLD | {"air-split", "discharge"},
    "dryer": {"thermistor", "thermostat", "draw", "air-split"},
    "gas-dryer": {"thermistor", "thermostat", "draw", "air-split"},
    "washer": {"thermistor", "draw", "water-heat", "discharge"},
    "dishwasher": {"thermistor", "thermostat", "draw", "water-heat", "discharge"},
    "water-heater": {"thermostat", "draw", "water-heat"},
    "range": {"rtd", "thermistor", "draw", "oven-swing"},
    "gas-range": {"rtd", "thermistor", "oven-swing"},
    "portable-heater": {"thermostat", "air-split"},
    "disposal": {"draw"},
    "other": {"thermistor", "thermostat", "draw"},
}
WORK = {"pull-down", "cooling", "air-split", "oven-swing", "water-heat", "duty"}


@pytest.mark.parametrize("kind", OFFERED)
def test_a_kind_offers_what_belongs_to_its_machine(kind: str) -> None:
    rows = [c for c in kinds.usual(kind) if not c.required]
    assert {c.calculation for c in rows} >= OFFERED[kind]
    left = {c.calculation: c.step for c in rows if c.stage == AS_LEFT}
    assert WORK & OFFERED[kind] <= set(left)
    assert all(left[name] in ("return to service", "afterwards") for name in WORK & set(left))
    for sensor in {"thermistor", "thermostat", "rtd"} & OFFERED[kind] - {"thermistor"}:
        assert {c.stage for c in rows if c.calculation == sensor} >= {"as found"}


@pytest.mark.parametrize("kind", [k for k in KINDS if k != "bench"])
def test_every_machine_may_have_a_sleeve_a_shared_barrel_and_a_sample(kind: str) -> None:
    assert {"sleeve", "shared-barrel", "pull"} <= {c.calculation for c in kinds.usual(kind)}


@each_kind
def test_an_empty_sheet_is_valid_and_cannot_be_told(kind: str) -> None:
    job = jobsheet.evaluate(tomllib.loads(written(kind)), CATALOGUE)
    assert (job.verdict, job.kind) == ("cannot tell", kind)
    required = [c for c in kinds.usual(kind) if c.required]
    instead = {"leakage", "screening"}  # of insulation, which is written
    checks = {c.calculation for c in required} - instead or {kinds.usual(kind)[0].calculation}
    assert {c.calculation for c in job.checks} == checks
    assert all(c.verdict == "cannot tell" for c in job.checks)


@each_kind
def test_every_line_of_a_sheet_can_be_taken_at_once(kind: str) -> None:
    sheet = tomllib.loads(full(written(kind)))
    job = jobsheet.evaluate(sheet, CATALOGUE)
    assert len(job.checks) == len(kinds.usual(kind))
    assert all(c.finding is not None and c.finding.inputs for c in job.checks)
    assert job.not_tested
    assert all(c.answer == "yes" for c in job.confirmed)


@each_kind
def test_each_check_filled_in_alone_is_no_error(kind: str) -> None:
    """The nameplate and one check after the other, the rest as it was written."""
    text = written(kind)
    parts = re.split(r"\n\n(?=## )", text)
    judged = set()
    for number in range(1, len(parts)):
        chosen = [full(p) if i in (1, number) else p for i, p in enumerate(parts)]
        job = jobsheet.evaluate(tomllib.loads("\n\n".join(chosen)), CATALOGUE)
        judged |= {c.calculation for c in job.checks if c.finding and c.finding.inputs}
    assert judged >= {c.calculation for c in kinds.usual(kind)}


@each_kind
def test_a_sheet_shows_every_input_of_its_checks_with_text_and_span(kind: str) -> None:
    text = written(kind)
    words = " ".join(line.removeprefix("## ") for line in text.splitlines())
    for check in kinds.usual(kind):
        for declared in CATALOGUE.find(check.calculation).calculation.inputs:
            assert re.search(rf"^(# |## or ){declared.name} = ", text, re.MULTILINE)
            if not on_plate(declared.kind):  # what several checks take stands once, above
                assert f"{declared.kind.text} ({declared.kind.span}; " in words
    assert all(len(line) <= 100 for line in text.splitlines())


def test_needed_inputs_come_first_and_nameplate_values_stand_above() -> None:
    text = written("dryer")
    plate, _, rest = text.partition("[nameplate]\n")[2].partition("\n\n")
    assert "# nameplate_voltage = " in plate
    assert "# nameplate_voltage = " not in rest
    ground = rest.partition('calculation = "ground"')[2].partition("[[")[0]
    assert ground.index("ground_point") < ground.index("ground_resistance")
    said = " ".join(line.removeprefix("## ") for line in ground.splitlines())
    points = "(plug-pin, cord-end, wired-in, neutral-blade; needed)"
    assert said.index(points) < said.index("# ground_point")
    assert '## or ground_open = "yes"' in ground


def asking(*rules: RequiredChecks) -> host.Catalogue:
    provided = [ProvidedRequirement("shop", "1.0", rule) for rule in rules]
    return host.Catalogue(CATALOGUE.calculations, required=provided)


def test_a_new_sheet_has_what_the_shop_asks_for() -> None:
    shop = asking(
        RequiredChecks("list", ("Refrigerator",), ("ground", "leakage", "trip")),
        RequiredChecks("all", ("*",), ("strands", "trip")),
        RequiredChecks("other", ("washer",), ("ring",)),
    )
    text = new_sheet("refrigerator", "x.toml", shop)
    job = jobsheet.evaluate(tomllib.loads(text), shop)
    left = [c.calculation for c in job.checks if c.stage == AS_LEFT]
    assert sorted(left) == sorted(
        {"inrush", "supply", "outlet", "ground", "insulation", "leakage", "trip", "strands"}
    )
    assert not [n for n in job.not_tested if n.required]
    said = " ".join(line.removeprefix("## ") for line in text.splitlines())
    assert (
        "leakage, as left: what leaks to the case, with the machine on; “list” of plugin shop"
        in said
    )
    assert "trip, as left: “list” of plugin shop asks for it; “all” of plugin shop asks" in said
    jobsheet.evaluate(tomllib.loads(full(text)), shop)


def test_what_is_asked_for_and_is_not_here_is_said_in_words() -> None:
    text = new_sheet("dryer", "x.toml", asking(RequiredChecks("list", ("dryer",), ("grund",))))
    assert "## “list” of plugin shop asks for grund: no calculation of that name is here." in text
    tomllib.loads(full(text))


def test_a_kind_that_only_a_rule_names_has_a_sheet() -> None:
    shop = asking(RequiredChecks("list", ("Boat",), ("trip",)))
    sheet = tomllib.loads(new_sheet("boat", "x.toml", shop))
    assert sheet["job"]["kind"] == "Boat"
    assert [c["calculation"] for c in sheet["check"]] == [
        "ground",
        "insulation",
        "outlet",
        "supply",
        "trip",
    ]


def words_above(text: str, line: str) -> str:
    """The words that stand above a line of a sheet."""
    before = text[: text.index(f"\n{line}")].splitlines()
    words: list[str] = []
    while before and before[-1].startswith("## "):
        words.insert(0, before.pop().removeprefix("## "))
    return " ".join(words)


def test_what_a_check_cannot_tell_without_is_marked_so() -> None:
    text = written("refrigerator")
    plate, _, rest = text.partition("[nameplate]\n")[2].partition("\n\n")
    assert "tester is set to (over 0 up to 1000 V; insulation cannot tell without it)" in (
        words_above(plate, "# test_voltage = ")
    )
    assert "; inrush cannot tell without it or others" in words_above(plate, "# code_letter")
    assert words_above(plate, "# temperature_tolerance").endswith("; in place of sensor_tolerance)")
    insulation = rest.partition('calculation = "insulation"')[2]
    assert words_above(insulation, "# switched_on").endswith("; cannot tell without it)")
    assert "; may be left out: " in words_above(insulation, "# dried")
    ground = rest.partition('calculation = "ground"')[2]
    by_ohms = words_above(ground, "# ground_resistance")  # or by a known current and its drop
    assert by_ohms.endswith("; cannot tell without it or others)")
    start = rest.partition('calculation = "inrush"')[2]
    assert words_above(start, "# peak").endswith("; cannot tell without it or others)")


@each_kind
def test_what_is_marked_is_what_the_gaps_name(kind: str) -> None:
    """What an empty sheet will ask for one after the other is marked as needed in it."""
    text = written(kind)
    sheet = tomllib.loads(text)
    for reading in gaps(jobsheet.evaluate(sheet, CATALOGUE), sheet, CATALOGUE).readings:
        block = text.partition(f'\n[[check]]\ncalculation = "{reading.check.calculation}"')[2]
        shared = reading.where == "in [nameplate]"
        of = text.partition("[nameplate]\n")[2] if shared else block
        line = next(m[0] for m in re.finditer(rf"^(# |## or ){reading.input} = ", of, re.MULTILINE))
        said = words_above(of, line)
        assert "needed)" in said or "cannot tell without" in said, (reading.input, said)


def test_an_unknown_kind_is_refused_with_the_nearest() -> None:
    with pytest.raises(BadInput, match=r"did you mean dishwasher\? The kinds are refrigerator"):
        new_sheet("dishwaser", "x.toml", CATALOGUE)
