"""What a kind of job requires binds: left out, said to be untested, and what does not apply."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from wirecalc import tables
from wirecalc.base.errors import BadInput
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.job import Job
from wirecalc.jobs.sheet import confirmed, kinds
from wirecalc.jobs.sheet.gaps import gaps
from wirecalc.jobs.sheet.machine_facts import FACTS
from wirecalc.jobs.sheet.template import new_sheet
from wirecalc.output import summary
from wirecalc.output.gaps import gaps_object, gaps_text
from wirecalc.output.html import job_page
from wirecalc.output.job import job_text
from wirecalc.output.job_short import job_short
from wirecalc.output.json import job_object
from wirecalc.output.rows import FORMATS, job_rows
from wirecalc.plugging import host
from wirecalc.rules.requirements import ProvidedRequirement, RequiredChecks
from wirecalc.said.verdicts import Verdict

from . import sheets
from .sheets import ANSWERS, EVERY, answers, check, checks, whole

CATALOGUE = host.build(bundled_only=True)
KINDS = [k for k in kinds.table_kinds() if k != "bench"]
GAS_UNLESS_SAID = ("dryer", "range", "water-heater", "other")


def evaluate(text: str, *rules: RequiredChecks) -> Job:
    required = [ProvidedRequirement("shop", "1.0", rule) for rule in rules]
    catalogue = host.Catalogue(CATALOGUE.calculations, required=required)
    return jobsheet.evaluate(sheets.read(text), catalogue)


def refused(text: str) -> str:
    with pytest.raises(BadInput) as caught:
        evaluate(text)
    return str(caught.value)


def first_screen(job: Job) -> str:
    return " ".join(job_short(job).split())


# The table of kinds, row by row: what a careful shop asks of every such job besides the supply,
# the outlet of what has a plug, the ground path and one of insulation, leakage or screening
# (common practice, no source).
FIXED = "fixed speed"
BESIDES = {
    "refrigerator": {("inrush", FIXED)},
    "freezer": {("inrush", FIXED)},
    "air-conditioner": {
        ("inrush", FIXED),
        ("breaker", "cord-connected"),
        ("motor-circuit", "hard-wired"),
    },
    "dehumidifier": {("inrush", FIXED)},
    "washer": set(),
    "dryer": {("element", "electric"), ("breaker", "electric")},
    "gas-dryer": set(),
    "heat-pump-dryer": set(),
    "range": {("breaker", "electric")},
    "gas-range": set(),
    "dishwasher": {("breaker", "")},
    "water-heater": {("element", "electric"), ("breaker", "electric or heat pump")},
    "microwave": {("breaker", "")},
    "disposal": set(),
    "ice-machine": {
        ("inrush", FIXED),
        ("breaker", "cord-connected"),
        ("motor-circuit", "hard-wired"),
    },
    "fan": {("draw", "")},
    "portable-heater": {("draw", ""), ("breaker", "")},
    "sump-pump": {("inrush", ""), ("breaker", "")},
    "other": set(),
}


def test_what_each_kind_requires() -> None:
    every = {("supply", ""), ("outlet", "cord-connected"), ("ground", "")}
    every |= {(c, "") for c in ("insulation", "leakage", "screening")}
    assert set(KINDS) == set(BESIDES)
    for kind, besides in BESIDES.items():
        required = {(c.calculation, c.when) for c in kinds.usual(kind) if c.required}
        assert required == every | besides, kind
    assert [c for c in kinds.usual("bench") if c.required] == []


def test_of_insulation_leakage_and_screening_one_is_enough() -> None:
    for kind in KINDS:
        group = [c.calculation for c in kinds.usual(kind) if c.one_of]
        assert group == ["insulation", "leakage", "screening"]


def test_the_words_of_the_tables_are_those_of_a_sheet() -> None:
    known = {word for words in FACTS.values() for word in words}
    for name in ("job-kinds", confirmed.TABLE):
        for row in tables.load(name).rows:
            assert set(row.text("when").split(" or ")) <= known | {""}
    for row in tables.load(confirmed.TABLE).rows:
        assert row.text("may_not_apply") in ("yes", "with a reason", "no")
        assert set(row.text("applies_with").split()) <= set(CATALOGUE.calculations)
        assert row.text("kind") in {"*", *KINDS}


def test_what_a_check_is_made_with_is_an_input_of_it() -> None:
    rows = [row for row in tables.load("job-kinds").rows if row.text("holds_with")]
    assert [(row.text("kind"), row.text("calculation")) for row in rows] == [("*", "insulation")]
    for row in rows:
        name, _, word = row.text("holds_with").partition("=")
        calc = CATALOGUE.calculations[row.text("calculation")].calculation
        assert calc.input(name).kind.read(word).value == word


def passing(kind: str) -> dict[str, list[str]]:
    """The parts of a sheet of a kind that passes: facts, checks, and answers."""
    facts = ['energy = "electric"']
    required = [c for c in kinds.usual(kind) if c.required and not c.one_of]
    if kind == "air-conditioner":
        facts.append('connection = "cord-connected"')
        required = [c for c in required if c.calculation != "motor-circuit"]
    asked = [x.key for x in confirmed.lines_of(kind) if x.when != "gas"]
    return {
        "facts": facts,
        "checks": [check(c) for c in dict.fromkeys([*(c.calculation for c in required)])]
        + [check("insulation")],
        "answers": [f'{key} = "yes"\n' for key in asked],
    }


def written(kind: str, parts: dict[str, list[str]]) -> str:
    head = f'[job]\ntitle = "t"\nkind = "{kind}"\n' + "\n".join(parts["facts"]) + "\n"
    return head + "[confirmed]\n" + "".join(parts["answers"] + parts["checks"])


@pytest.mark.parametrize("kind", KINDS)
def test_without_any_one_of_what_a_kind_requires_nothing_passes(kind: str) -> None:
    parts = passing(kind)
    assert evaluate(written(kind, parts)).verdict == "pass"
    for part in ("checks", "answers"):
        for gone in parts[part]:
            less = {**parts, part: [x for x in parts[part] if x != gone]}
            job = evaluate(written(kind, less))
            assert job.verdict == "cannot tell", gone
            assert job.decided_by[0].why in ("not tested, and required", "not confirmed")


@pytest.mark.parametrize("required", ["", "required = false\n", "required = true\n"])
@pytest.mark.parametrize("kind", KINDS)
def test_what_a_kind_requires_binds_whatever_the_sheet_says_of_it(kind: str, required: str) -> None:
    parts = passing(kind)
    for calculation in EVERY:
        said = f'[[not_tested]]\nname = "x"\ncalculation = "{calculation}"\n'
        said += f'reason = "no time"\n{required}'
        less = {**parts, "checks": [x for x in parts["checks"] if f'"{calculation}"' not in x]}
        less["checks"] += [said]
        job = evaluate(written(kind, less))
        assert job.verdict == "cannot tell"
        assert [(n.name, n.reason) for n in job.not_tested] == [("x", "no time")]
        assert "x, which is needed: no time" in first_screen(job)
        also = " (or leakage, screening)" if calculation == "insulation" else ""
        assert f"test it: x{also} " in first_screen(job)


FAILS = {  # as found: readings that fail
    "supply": 'nameplate_voltage = "120 V"\nvoltage_running = "90.0 V"\n',
    "ground": 'ground_point = "plug-pin"\nground_resistance = "3 ohm"\nlead_resistance = "0 ohm"\n',
    "insulation": check("insulation").partition("\n")[2].replace("50 Mohm", "0.05 Mohm"),
    "leakage": check("leakage").partition("\n")[2].replace("0.12 mA", "9 mA"),
    "screening": check("screening").partition("\n")[2].replace("held = true", "held = false"),
}


def found(calculation: str, readings: str, removed: str) -> str:
    """A check as found, under a name of its own, of something that is said to be removed."""
    text = f'[[check]]\ncalculation = "{calculation}"\nname = "old"\nstage = "as found"\n'
    lines = [x for x in readings.splitlines() if not x.startswith("calculation")]
    return text + "\n".join(lines) + f'\nremoved = "{removed}"\n'


@pytest.mark.parametrize("calculation", list(FAILS))
def test_what_every_machine_must_have_is_never_taken_away(calculation: str) -> None:
    for said in ("none", "the cord is gone, the machine has a receptacle of its own"):
        text = whole() + found(calculation, FAILS[calculation], said)
        assert f"{calculation} is never taken away" in refused(text)
    again = found(calculation, FAILS[calculation], "x").replace('removed = "x"\n', "")
    assert evaluate(whole() + again).verdict == "cannot tell"


def test_a_kind_keeps_what_it_must_have_and_not_the_cord() -> None:
    cord = 'calculation = "extension"\nextension_cord = "16 AWG"\nextension_length = "50 ft"\n'
    cord += 'current = "8 A"\nmaker_allows = "no"\n'
    gone = found("extension", cord, "the cord is gone, the machine has a receptacle of its own")
    assert evaluate(whole() + gone).verdict == "pass"
    unplugged = found("extension", cord, "cord unplugged, plugged in at the wall")
    assert evaluate(whole() + unplugged).verdict == "pass"
    assert "does not say that it is gone" in refused(
        whole() + found("extension", cord, "unplugged")
    )
    assert evaluate(whole() + gone.partition("removed")[0]).verdict == "cannot tell"
    start = check("inrush").partition("\n")[2].replace("1.20 A", "9.00 A")
    fridge = whole(kind="refrigerator") + check("inrush")
    assert evaluate(fridge).verdict == "pass"
    assert "inrush is never taken away" in refused(fridge + found("inrush", start, "taken out"))


RANGE = """[job]
title = "range"
kind = "range"
[[check]]
calculation = "supply"
nameplate_voltage = "240 V"
voltage_running = "236.0 V ±(1%+3)"
[[not_tested]]
name = "ground path"
calculation = "ground"
reason = "no time"
[[not_tested]]
name = "insulation"
calculation = "insulation"
reason = "no time"
"""


def test_a_range_with_its_supply_alone_cannot_be_told() -> None:
    job = evaluate(RANGE)
    assert job.verdict == "cannot tell"
    assert summary.NOTHING_TO_DO not in first_screen(job)
    assert "ground path, which is needed: no time" in first_screen(job)


@pytest.mark.parametrize("kind", ["", "other", "boat", "refrigerater"])
def test_every_machine_needs_ground_supply_and_one_of_insulation_or_leakage(kind: str) -> None:
    assert evaluate(whole(kind=kind) + (check("inrush") if "fr" in kind else "")).verdict == "pass"
    head, _, _ = whole(kind=kind).partition("[[check]]")
    for alone in EVERY:
        assert evaluate(head + check(alone)).verdict == "cannot tell"
        others = checks(*(c for c in EVERY if c != alone))
        job = evaluate(head + others)
        assert job.verdict == "cannot tell"
        assert len([n for n in job.not_tested if n.required]) >= 1


def test_an_unknown_kind_is_a_note_and_no_refusal() -> None:
    job = evaluate(whole(kind="boat"))
    assert (job.verdict, job.kind) == ("pass", "boat")
    note = "There is no kind of job 'boat': what every machine must have is asked for."
    assert note in first_screen(job)
    assert note in " ".join(job_page(job).split()).replace("&#x27;", "'")
    assert job_object(job)["remarks"][0].startswith(note[:-1])
    known = evaluate(whole(kind="refrigerator", job="") + check("inrush"))
    assert not [said for said in known.remarks if "kind" in said]


def test_a_kind_that_is_nearly_a_known_one_must_have_what_that_must() -> None:
    job = evaluate(whole(kind="refrigerater"))
    assert job.verdict == "cannot tell"
    assert [n.calculation for n in job.not_tested if n.required] == ["inrush"]
    assert "did you mean refrigerator?" in first_screen(job)


def test_a_rule_for_a_kind_does_not_lose_a_kind_that_is_mistyped() -> None:
    rule = RequiredChecks("cold", ("refrigerator",), ("ground",))
    job = evaluate(whole(kind="boat"), rule)
    assert job.verdict == "cannot tell"
    assert "'boat' is no kind that is known: write kind" in first_screen(job)


@pytest.mark.parametrize("instead", ["leakage", "insulation"])
def test_insulation_or_leakage_will_do(instead: str) -> None:
    head, _, _ = whole().partition("[[check]]")
    assert evaluate(head + checks("supply", "outlet", "ground", instead)).verdict == "pass"


def test_a_screening_is_at_best_marginal_and_says_so_first() -> None:
    head, _, _ = whole().partition("[[check]]")
    job = evaluate(head + checks("supply", "outlet", "ground", "screening"))
    assert job.verdict == "marginal"
    assert "screened, not tested" in first_screen(job)
    assert job.not_tested == ()
    open_ = evaluate(head + checks("supply", "outlet", "screening"))
    assert open_.verdict == "cannot tell"
    assert "Marginal screening: screened, not tested" in first_screen(open_)


def test_a_rule_of_the_shop_may_forbid_a_screening(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text('[[rule]]\nname = "x"\ncalculations = ["screening"]\nforbid = true\n')
    head, _, _ = whole().partition("[[check]]")
    text = head + checks("supply", "outlet", "ground", "screening")
    done = jobsheet.evaluate(sheets.read(text), host.build(rules=[path]))
    assert done.verdict == "fail"
    assert evaluate(text).verdict == "marginal"
    tested = head + checks("supply", "outlet", "ground", "leakage")
    assert jobsheet.evaluate(sheets.read(tested), host.build(rules=[path])).verdict == "pass"


def test_a_table_of_the_shop_only_tightens(tmp_path: Path) -> None:
    head = {
        name: (tables.bundled_folder() / f"{name}.csv").read_text().splitlines()[0]
        for name in ("job-kinds", confirmed.TABLE)
    }
    end = ",practice,common practice,,\n"
    rows = {
        "job-kinds": "*,pull,joint,as left,pull,yes,insulation or leakage,,,,,,our way" + end
        + "*,ground,joint,as left,ground,no,,,,,,,not needed" + end,
        confirmed.TABLE: "*,covers_back,covers are back,yes,,,,,our way" + end
        + "*,test_jumpers_off,jumpers,no,,,,,our way" + end
        + "other,photo_taken,a photo was taken,yes,,,,,our way" + end,
    }  # fmt: skip
    for name, text in rows.items():
        (tmp_path / f"{name}-ours.csv").write_text(f"{head[name]}\n{text}")
        sidecar = (tables.bundled_folder() / f"{name}.toml").read_text()
        (tmp_path / f"{name}-ours.toml").write_text(sidecar)
    tables.use_folders([tmp_path])
    try:
        required = [n.name for n in evaluate(whole()).not_tested]
        assert required == ["insulation or leakage of job-kinds-ours"]
        less, _, _ = whole().partition(check("ground"))
        assert "ground path" in {n.name for n in evaluate(less + check("pull")).not_tested}
        assert "it always applies" in refused(answered("covers_back", '"does not apply"'))
        assert "it always applies" in refused(answered("test_jumpers_off", '"does not apply"'))
        assert "photo_taken" in {c.key for c in evaluate(whole()).confirmed}
    finally:
        tables.use_folders([])


@pytest.mark.parametrize(
    ("was", "now", "verdict"),
    [
        ("over_range = true", "over_range = false", "cannot tell"),
        ("over_range = true\n", "", "cannot tell"),
        ('ohm_range = "20 Mohm"', 'ohm_range = "200 ohm"', "cannot tell"),
        ('ohm_range = "20 Mohm"', 'ohm_range = "1.9 Mohm"', "cannot tell"),
        ('ohm_range = "20 Mohm"', 'ohm_range = "2 Mohm"', "marginal"),
        ("switched_on = true", "switched_on = false", "cannot tell"),
        ("switched_on = true\n", "", "cannot tell"),
        ("device_held = true", "device_held = false", "fail"),
        ("device_held = true\n", "", "cannot tell"),
        ("test_button_trips = true", "test_button_trips = false", "cannot tell"),
        ("test_button_trips = true\n", "", "cannot tell"),
        ('trip_current = "6 mA"', 'trip_current = "300 mA"', "cannot tell"),
        ('trip_current = "6 mA"', 'trip_current = "31 mA"', "cannot tell"),
        ('trip_current = "6 mA"', 'trip_current = "30 mA"', "marginal"),
    ],
)
def test_a_screening_needs_all_its_parts(was: str, now: str, verdict: str) -> None:
    text = check("screening")
    assert was in text
    head, _, _ = whole().partition("[[check]]")
    job = evaluate(head + checks("supply", "outlet", "ground") + text.replace(was, now))
    assert job.verdict == verdict


@pytest.mark.parametrize(
    ("kind", "fact", "other", "calculation"),
    [
        ("refrigerator", 'compressor = "fixed speed"', 'compressor = "inverter"', "inrush"),
        ("dryer", 'energy = "electric"', 'energy = "gas"', "element"),
        ("water-heater", 'energy = "electric"', 'energy = "heat pump"', "element"),
        ("air-conditioner", 'connection = "hard-wired"', 'connection = "cord-connected"',
         "motor-circuit"),
    ],
)  # fmt: skip
def test_what_binds_only_some_machines_binds_where_nothing_is_said(
    kind: str, fact: str, other: str, calculation: str
) -> None:
    def missing(said: str) -> list[str]:
        hard = "hard" in said
        every = checks(*(c for c in EVERY if c != "outlet" or not hard))
        every = every.replace("plug-pin", "wired-in" if hard else "plug-pin")
        job = evaluate(f'[job]\ntitle = "t"\nkind = "{kind}"\n{said}\n{every}')
        return [n.calculation for n in job.not_tested if n.required]

    assert calculation in missing("")
    assert calculation in missing(fact)
    assert calculation not in missing(other)
    job = evaluate(f'[job]\ntitle = "t"\nkind = "{kind}"\n{other}\n' + checks(*EVERY))
    assert calculation in [d.calculation for d in job.does_not_apply]
    assert "Does not apply" in first_screen(job)


def test_facts_are_read_strictly_and_are_of_one_machine() -> None:
    assert "did you mean hard-wired?" in refused(whole(job='connection = "hardwired"\n'))
    assert "write cord-connected or hard-wired" in refused(whole(job='connection = "x"\n'))
    for said, lacks in (
        ("plug", "breaker"),
        ("large-plug", "breaker"),
        ("Wired-in", "motor-circuit"),
    ):
        text = whole(kind="air-conditioner", job=f'connection = "{said}"\n')
        job = evaluate(text.replace("plug-pin", "wired-in") if said == "Wired-in" else text)
        assert sorted(n.calculation for n in job.not_tested) == sorted(["inrush", lacks])
    two = '[[machine]]\nname = "a"\n[[machine]]\nname = "b"\n'
    said = refused('[job]\ntitle = "t"\nenergy = "gas"\n' + two + check("supply"))
    assert "job: energy: whose it is cannot be told" in said
    of_own = two.replace('"a"\n', '"a"\nenergy = "electric"\n')
    job = evaluate('[job]\ntitle = "t"\n' + of_own + check("supply", "a"))
    gas = [(c.machine, c.key) for c in job.confirmed if c.key == sheets.OF_GAS]
    assert gas == [("b", sheets.OF_GAS)]


DOUBLE = '[[does_not_apply]]\ncalculation = "ground"\nreason = "{}"\n'
CLASS_II = check("insulation").replace("class-i", "class-ii")


def without_ground(reason: str, insulation: str = CLASS_II) -> str:
    head, _, _ = whole().partition("[[check]]")
    return head + checks("supply", "outlet") + insulation + DOUBLE.format(reason)


def test_what_does_not_apply_is_shown_first_and_does_not_count() -> None:
    reason = "two wires, double square on the plate"
    job = evaluate(without_ground(reason))
    assert job.verdict == "pass"
    shown = f"ground path: {reason}"
    assert f"Does not apply {shown}" in first_screen(job)
    assert shown in " ".join(job_text(job).split())
    assert shown in job_page(job)
    (entry,) = job_object(job)["does_not_apply"]
    assert entry == {
        "name": "ground path", "calculation": "ground", "reason": reason, "machine": "",
    }  # fmt: skip
    assert all(reason in job_rows(job, form) for form in FORMATS)
    assert evaluate(without_ground(reason).partition("[[does")[0]).verdict == "cannot tell"


@pytest.mark.parametrize(
    "reason",
    [
        "no time",
        "No meter",
        "not tested",
        "no low-ohm tester on the van",
        "out of time",
        "not measured today",
        "could not reach it",
        "couldn't be measured",
        "the tester is broken",
        "skipped",
        "later",
        "n/a",
        "not needed",
        "does not apply",
        "not required here",
        "forgot it",
        "customer did not want it",
        "untested",
        "will do it next visit",
        "no access to the back",
        "x",
        "ground",
        "-",
        "no need",
        "the cabinet was not opened",
        "the cord and its ground wire were not touched",
        "nothing was changed at this visit",
        "it already runs",
        "compressor is fine",
        "measured it last week",
        "clamp meter at home",
        "door gasket replaced only",
        "new house",
        "the electrician did the circuit",
        "double insulated or so",
        "plastic",
    ],
)
def test_an_excuse_is_no_reason(reason: str) -> None:
    said = refused(without_ground(reason))
    assert "does_not_apply ground: reason" in said
    assert "[[not_tested]]" in said


@pytest.mark.parametrize(
    "reason",
    [
        "two wires, double-insulated",
        "double square on the plate, no ground pin",
        "Double insulated: plastic case throughout",
        "class II by its plate",
        "fed by extra-low volts (a battery)",
    ],
)
def test_a_reason_of_the_machine_is_one(reason: str) -> None:
    assert evaluate(without_ground(reason)).verdict == "pass"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (without_ground("double insulated", check("insulation")), "says protection class-i"),
        (
            without_ground("double insulated", check("leakage")),
            "check leakage says machine_kind stationary: it applies",
        ),
        (
            whole().replace("class-i", "class-ii") + DOUBLE.format("double insulated"),
            "the sheet has a check of it",
        ),
        (whole() + DOUBLE.format("double insulated") * 2, "stands there twice"),
        (
            whole() + DOUBLE.format("fed by a battery").replace("ground", "supply"),
            "every machine has it",
        ),
        (
            whole() + DOUBLE.format("boards all over").replace("ground", "leakage"),
            "leave it out: insulation or leakage will do",
        ),
        (whole() + '[[does_not_apply]]\nreason = "double insulated"\n', "names no calculation"),
        (whole() + '[[does_not_apply]]\ncalculation = "groun"\nreason = "a b"\n', "mean ground?"),
        (whole() + '[[does_not_apply]]\ncalculation = "ring"\n', "it says no reason"),
        (
            whole() + '[[does_not_apply]]\ncalculation = "ring"\nreson = "double insulated"\n',
            "did you mean reason?",
        ),
        (
            without_ground("double insulated")
            + '[[not_tested]]\nname = "g"\ncalculation = "ground"\nreason = "y"\n',
            "it stands under [[not_tested]] too",
        ),
    ],
)
def test_what_cannot_be_so_is_refused(text: str, says: str) -> None:
    assert says in refused(text)


START = '[[does_not_apply]]\ncalculation = "{}"\nreason = "{}"\n'


def test_what_a_word_of_the_sheet_decides_is_not_waived_by_a_reason() -> None:
    fridge = whole(kind="refrigerator")
    said = refused(fridge + START.format("inrush", "compressor is fine"))
    assert '"no compressor", or compressor = "inverter"' in said
    cooler = START.format("inrush", "no compressor: cooled by a thermoelectric plate")
    assert evaluate(fridge + cooler).verdict == "pass"
    known = whole(kind="refrigerator", job='compressor = "fixed speed"\n')
    assert "it applies: the sheet says compressor = fixed speed" in refused(known + cooler)
    inverter = whole(kind="refrigerator", job='compressor = "inverter"\n')
    assert evaluate(inverter).verdict == "pass"
    oven = whole(kind="range").replace('energy = "electric"\n', "")
    said = refused(oven + START.format("breaker", "new house"))
    assert 'write energy = "gas"' in said
    washer = START.format("breaker", "the electrician did the circuit")
    assert "every machine has it" in refused(whole(kind="dishwasher") + washer)


@pytest.mark.parametrize("part", ["compressor", "motor", "heater"])
def test_insulation_of_a_part_is_not_that_of_the_machine(part: str) -> None:
    bare = whole().replace('tested_part = "machine"', f'tested_part = "{part}"')
    job = evaluate(bare)
    assert job.verdict == "cannot tell"
    assert f'made with tested_part = "{part}" and not "machine"' in first_screen(job)
    named = check("insulation").replace('"insulation"\n', '"insulation"\nname = "whole"\n', 1)
    assert evaluate(bare + named).verdict == "pass"
    assert evaluate(bare + check("leakage")).verdict == "pass"


def test_a_rule_of_the_shop_asks_for_the_machine_and_not_a_part() -> None:
    rule = RequiredChecks("all", ("*",), ("insulation",))
    bare = whole().replace('tested_part = "machine"', 'tested_part = "motor"') + check("leakage")
    assert evaluate(bare).verdict == "pass"
    assert evaluate(bare, rule).verdict == "cannot tell"
    assert evaluate(whole(), rule).verdict == "pass"


def test_what_need_not_be_there_takes_a_free_reason_and_no_excuse() -> None:
    cord = START.format("extension", "plugged in at the wall, no cord between")
    assert evaluate(whole() + cord).verdict == "pass"
    for excuse in ("no time", "x", "the cabinet was not opened"):
        assert "does_not_apply extension" in refused(whole() + START.format("extension", excuse))


def test_a_rule_of_the_shop_holds_for_what_does_not_apply_too() -> None:
    rule = RequiredChecks("all", ("*",), ("ground",))
    assert evaluate(without_ground("double insulated"), rule).verdict == "cannot tell"


def answered(key: str, answer: str, kind: str = "", more: str = "") -> str:
    text = whole(more, kind=kind)
    assert f'{key} = "yes"' in text
    return text.replace(f'{key} = "yes"\n', f"{key} = {answer}\n" if answer else "")


@pytest.mark.parametrize("key", ANSWERS)
def test_what_is_to_be_confirmed_counts(key: str) -> None:
    assert evaluate(answered(key, "true")).verdict == "pass"
    for open_ in ("", '""', '"unknown"'):
        job = evaluate(answered(key, open_))
        assert (job.verdict, [c.why for c in job.decided_by]) == ("cannot tell", ["not confirmed"])
        assert "Not confirmed" in first_screen(job)
        assert "answer it under [confirmed]" in first_screen(job)
    for no in ('"no"', "false", '"No"'):
        job = evaluate(answered(key, no))
        assert job.verdict == "fail"
        assert "1 check fails" in first_screen(job)
        assert "answered no" in first_screen(job)
    for none in ('"done"', '"later"', '"y"', '"yes no"', '"not applicable"', "3"):
        assert "is no answer" in refused(answered(key, none))


def test_each_answer_has_its_line_in_every_output() -> None:
    job = evaluate(answered("leads_clear", '"does not apply: the cabinet was not opened"'))
    assert job.verdict == "pass"
    shown = {c["name"]: c["answer"] for c in job_object(job)["confirmed"]}
    assert shown == {**dict.fromkeys(ANSWERS, "yes"), "leads_clear": "does not apply"}
    said = "leads are clear of heat, edges and what moves: does not apply: the cabinet was not"
    assert said in " ".join(job_text(job).split())
    assert said in job_page(job)
    assert "covers and bonding screws are back: yes" in job_text(job)
    for form in FORMATS:
        rows = [row for row in job_rows(job, form).splitlines() if "covers and bonding" in row]
        assert len(rows) == 1
        assert "confirmed" in rows[0]


@pytest.mark.parametrize(
    ("key", "answer", "kind", "says"),
    [
        ("covers_back", "does not apply", "", "it always applies"),
        ("covers_back", "does not apply: none was taken off", "", "it always applies"),
        ("leads_clear", "does not apply", "", "it says no reason"),
        ("leads_clear", "does not apply: no time", "", "'no time' is no reason for it"),
        ("test_jumpers_off", "does not apply: not checked", "", "is no reason for it"),
        ("test_jumpers_off", "does not apply: it already runs", "", "none was used"),
        ("cut_off_cause_found", "does not apply: it opened from age", "", "none had opened"),
        ("safety_switches_proved", "does not apply: none in it", "washer", "it always applies"),
    ],
)
def test_what_does_not_apply_must_be_plausible(key: str, answer: str, kind: str, says: str) -> None:
    assert says in refused(answered(key, f'"{answer}"', kind))


@pytest.mark.parametrize(
    ("key", "answer", "kind"),
    [
        ("test_jumpers_off", "does not apply", ""),
        ("cut_off_cause_found", "Does not apply", ""),
        ("cut_off_cause_found", "does not apply: none had opened", ""),
        ("leads_clear", "does not apply: the cabinet was not opened", ""),
        ("safety_switches_proved", "does not apply: it has none", ""),
        ("safety_switches_proved", "does not apply", "refrigerator"),
    ],
)
def test_what_plausibly_does_not_apply_passes(key: str, answer: str, kind: str) -> None:
    more = check("inrush") if kind else ""
    assert evaluate(answered(key, f'"{answer}"', kind, more)).verdict == "pass"


HIGH, DOOR = sheets.OF_MICROWAVE


def microwave(high: str, door: str, more: str = "") -> str:
    text = whole(kind="microwave") + check("breaker") + more
    lines = f'{HIGH} = "{high}"\n{DOOR} = "{door}"\n'
    return text.replace("[confirmed]\n", f"[confirmed]\n{lines}")


def test_the_high_voltage_of_a_microwave_applies_unless_its_cover_stayed_on() -> None:
    none = "does not apply"
    assert evaluate(microwave("yes", "yes")).verdict == "pass"
    for said in (none, f"{none}: it was unplugged", f"{none}: door is fine", f"{none}: no time"):
        assert HIGH in refused(microwave(said, "yes"))
        assert DOOR in refused(microwave("yes", said))
    closed = f"{none}: cover not opened"
    untouched = f"{none}: cover not opened and door not touched"
    assert evaluate(microwave(closed, "yes")).verdict == "pass"
    assert evaluate(microwave(closed, untouched)).verdict == "pass"
    assert DOOR in refused(microwave("yes", closed))
    assert "by the sheet's own check: strip" in refused(microwave(closed, "yes", STRIP))


@pytest.mark.parametrize("kind", GAS_UNLESS_SAID)
def test_an_electric_machine_leaves_no_gas_to_anybody(kind: str) -> None:
    def told(said: str, energy: str = "") -> str:
        text = whole(kind=kind).replace('energy = "electric"\n', energy)
        return text.replace("[confirmed]\n", f'[confirmed]\n{sheets.OF_GAS} = "{said}"\n')

    job = evaluate(told("does not apply: electric"))
    assert [c.said for c in job.confirmed if c.key == sheets.OF_GAS] == ["does not apply: electric"]
    assert not [c for c in job.counted if c.why == "not confirmed"]
    assert "is no reason for it" in refused(told("does not apply: gas line is fine"))
    with_gas = refused(told("does not apply: electric", 'energy = "gas"\n'))
    assert "it applies, the sheet says energy = gas" in with_gas


@pytest.mark.parametrize("kind", ["gas-dryer", "gas-range"])
def test_a_machine_that_burns_gas_is_not_electric(kind: str) -> None:
    text = whole(kind=kind)
    said = f'[confirmed]\n{sheets.OF_GAS} = "does not apply: electric"\n'
    assert "it always applies" in refused(text.replace("[confirmed]\n", said))


CUTOFF = '[[check]]\ncalculation = "cutoff"\n'
STRIP = '[[check]]\ncalculation = "strip"\nwire = "18 AWG"\nstyle = "closed"\n'


def test_after_the_work_that_it_is_about_a_line_applies() -> None:
    none = '"does not apply"'
    assert "by the sheet's own check: cutoff" in refused(
        answered("cut_off_cause_found", none, more=CUTOFF)
    )
    reason = '"does not apply: the cabinet was not opened"'
    assert "by the sheet's own check: strip" in refused(answered("leads_clear", reason, more=STRIP))


@pytest.mark.parametrize("kind", ["gas-dryer", "gas-range"])
def test_where_gas_is_burnt_a_licensed_person_is_asked_for(kind: str) -> None:
    text = whole(kind=kind)
    job = evaluate(text)
    assert job.verdict == "cannot tell"
    assert "gas tightness is not judged here: a licensed person" in first_screen(job)
    proved = text.replace("[confirmed]\n", f'[confirmed]\n{sheets.OF_GAS} = "yes"\n')
    assert evaluate(proved).verdict == "pass"
    assert evaluate(
        proved.replace(f'{sheets.OF_GAS} = "yes"', f'{sheets.OF_GAS} = "no"')
    ).verdict == ("fail")


@pytest.mark.parametrize("kind", GAS_UNLESS_SAID)
def test_what_may_burn_gas_is_asked_for_it_where_nothing_is_said(kind: str) -> None:
    def asks(job: str) -> bool:
        text = f'[job]\ntitle = "t"\nkind = "{kind}"\n{job}' + answers(*ANSWERS) + check("supply")
        return sheets.OF_GAS in {c.key for c in evaluate(text).confirmed}

    assert asks("")
    assert asks('energy = "gas"\n')
    assert not asks('energy = "electric"\n')


def test_of_a_microwave_the_high_voltage_comes_first() -> None:
    job = evaluate(whole(kind="microwave"))
    assert job.verdict == "cannot tell"
    assert "STOP: its high-voltage capacitor kills, unplugged too" in first_screen(job)
    assert {c.key for c in job.confirmed if not c.answer} == set(sheets.OF_MICROWAVE)
    head = new_sheet("microwave", "x.toml", CATALOGUE).partition("[job]")[0]
    assert "## STOP: its high-voltage capacitor kills, unplugged too" in head
    assert "STOP" not in new_sheet("washer", "x.toml", CATALOGUE).partition("[job]")[0]


def test_a_line_that_nobody_asks_for_is_refused_or_counts() -> None:
    assert "did you mean covers_back?" in refused(
        whole().replace('covers_back = "yes"', 'cover_back = "yes"')
    )
    more = f'{sheets.OF_GAS} = "no"\n'
    assert evaluate(whole().replace("[confirmed]\n", f"[confirmed]\n{more}")).verdict == "fail"


def test_each_of_several_machines_answers_for_itself() -> None:
    head = '[job]\ntitle = "t"\n'
    parts = [
        f'[[machine]]\nname = "{m}"\nenergy = "electric"\n'
        + answers(*ANSWERS, heading="machine.confirmed")
        for m in "ab"
    ]
    done = checks(*EVERY, machine="a") + checks(*EVERY, machine="b")
    assert evaluate(head + "".join(parts) + done).verdict == "pass"
    no = parts[1].replace('covers_back = "yes"', 'covers_back = "no"')
    job = evaluate(head + parts[0] + no + done)
    assert (job.verdict_of("a"), job.verdict_of("b")) == ("pass", "fail")
    assert "whose it is cannot be told" in refused(head + answers(*ANSWERS) + "".join(parts) + done)
    of_a = evaluate(head + "".join(parts) + checks(*EVERY, machine="a"))
    assert (of_a.verdict_of("a"), of_a.verdict_of("b")) == ("pass", "cannot tell")


def test_a_required_check_that_judges_nothing_is_not_made() -> None:
    head = whole(kind="air-conditioner", job='connection = "hard-wired"\n') + check("inrush")
    head = head.replace("plug-pin", "wired-in")
    assert evaluate(head + check("motor-circuit")).verdict == "pass"
    bare = 'motor_kind = "compressor"\nfastened_in_place = true\nrated_load_current = "6.4 A"\n'
    job = evaluate(f'{head}[[check]]\ncalculation = "motor-circuit"\n{bare}')
    assert job.verdict == "cannot tell"


FIGURES = (
    '[[check]]\ncalculation = "strip"\nwire = "18 AWG"\n'
    'style = "closed"\nbarrel_length = "6.5 mm"\n'
)


def test_figures_alone_are_no_check_that_a_shop_asks_for(tmp_path: Path) -> None:
    rule = RequiredChecks("ours", ("*",), ("strip",))
    assert evaluate(whole() + FIGURES, rule).verdict == "cannot tell"
    assert evaluate(whole() + FIGURES + 'stripped = "7.5 mm"\n', rule).verdict == "pass"
    columns = (tables.bundled_folder() / "job-kinds.csv").read_text().splitlines()[0]
    row = "*,strip,wire,as left,strip,yes,,,,,,,our way,practice,common practice,,\n"
    (tmp_path / "job-kinds-ours.csv").write_text(f"{columns}\n{row}")
    sidecar = (tables.bundled_folder() / "job-kinds.toml").read_text()
    (tmp_path / "job-kinds-ours.toml").write_text(sidecar)
    tables.use_folders([tmp_path])
    try:
        job = evaluate(whole() + FIGURES)
        assert job.verdict == "cannot tell"
        assert "comes to figures only" in first_screen(job)
        assert evaluate(whole() + FIGURES + 'stripped = "7.5 mm"\n').verdict == "pass"
    finally:
        tables.use_folders([])


BENCH = '[job]\ntitle = "t"\nkind = "bench"\n'
PULL = '[[check]]\ncalculation = "pull"\nwire = "18 AWG"\nterminal = "ring"\nforce = "24 lbf"\n'


def test_of_the_bench_nothing_is_required() -> None:
    job = evaluate(BENCH + PULL)
    assert (job.verdict, job.not_tested, job.confirmed, job.of_machine) == ("pass", (), (), False)
    assert evaluate('[job]\ntitle = "t"\n' + PULL).verdict == "cannot tell"


@pytest.mark.parametrize(
    "text",
    [
        BENCH + check("supply"),
        BENCH + check("ground"),
        BENCH + PULL + 'step = "power up"\n',
        BENCH + 'machine = "washer"\n' + PULL,
        BENCH + '[[machine]]\nname = "a"\n' + PULL,
        '[job]\ntitle = "t"\n[[machine]]\nname = "a"\nkind = "bench"\n' + PULL,
    ],
)
def test_a_machine_is_not_put_on_the_bench(text: str) -> None:
    assert "a bench is for samples and parts" in refused(text)


def shown_gaps(text: str) -> tuple[str, dict[str, object]]:
    job, sheet = evaluate(text), sheets.read(text)
    found = gaps(job, sheet, CATALOGUE)
    return gaps_text(job, found), gaps_object(job, found)


def test_what_is_not_confirmed_is_missing_with_the_lines_to_write() -> None:
    said, of = shown_gaps(answered("covers_back", ""))
    assert "[confirmed]" in said
    assert "covers_back" in said
    assert of["complete"] is False
    assert [c["name"] for c in of["confirmations"]] == ["covers_back"]  # type: ignore[attr-defined]
    said, of = shown_gaps(whole())
    assert (of["complete"], of["confirmations"]) == (True, [])


def test_what_is_asked_until_the_sheet_says_more_says_what_to_write() -> None:
    said, _ = shown_gaps(whole().replace('energy = "electric"\n', ""))
    assert 'not asked where the sheet says energy = "electric" or "heat pump"' in " ".join(
        said.split()
    )


def lines_of_group(text: str) -> Iterator[str]:
    return (line for line in text.splitlines() if "insulation" in line)


def test_of_a_group_the_first_is_written_and_the_others_are_named() -> None:
    head, _, _ = whole().partition("[[check]]")
    said, of = shown_gaps(head + checks("supply", "ground"))
    assert any('calculation = "insulation"' in line for line in lines_of_group(said))
    assert "leakage or screening will do too" in " ".join(said.split())
    assert of["complete"] is False


def test_a_no_is_nothing_missing() -> None:
    _, of = shown_gaps(answered("covers_back", '"no"'))
    assert of["complete"] is True


def test_the_verdict_of_a_fail_is_not_hidden_by_what_is_missing() -> None:
    head, _, _ = whole().partition("[[check]]")
    low = check("supply").replace("119.6 V", "90.0 V")
    job = evaluate(head + low + check("ground"))
    assert job.verdict is Verdict.FAIL
    assert "insulation or leakage" in first_screen(job)
