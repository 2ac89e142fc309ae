"""A job as a whole: steps of the repair, several machines, before and after, a kind of job."""

from __future__ import annotations

import dataclasses
import re
import tomllib
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from wirecalc.base.errors import BadInput
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.checks import AS_LEFT, STEPS, JobCheck, by_step
from wirecalc.jobs.job import Job
from wirecalc.jobs.sheet import kinds
from wirecalc.jobs.sheet.gaps import Gaps, gaps
from wirecalc.output.gaps import gaps_text
from wirecalc.output.html import job_page
from wirecalc.output.job import job_text
from wirecalc.output.job_short import job_short
from wirecalc.output.json import job_object
from wirecalc.output.rows import FORMATS, job_rows
from wirecalc.plugging import host
from wirecalc.rules.requirements import ProvidedRequirement, RequiredChecks

from . import sheets

CATALOGUE = host.build(bundled_only=True)
TWO = '[[machine]]\nname = "fridge"\n[[machine]]\nname = "freezer"\nkind = "freezer"\n'


def good(machine: str, kind: str = "other") -> str:
    """A machine on which all that it must have is good."""
    answers = sheets.answers(*sheets.ANSWERS, heading="machine.confirmed")
    required = {c.calculation for c in kinds.usual(kind) if c.required and not c.one_of}
    more = sheets.checks(*sorted(required), "insulation", machine=machine)
    head = f'[[machine]]\nname = "{machine}"\nkind = "{kind}"\nenergy = "electric"\n'
    return head + answers + more


PULL = '[[check]]\ncalculation = "pull"\nwire = "18 AWG"\nterminal = "ring"\n'


def check(force: str, **keys: str) -> str:
    return f'{PULL}force = "{force}"\n' + "".join(f'{k} = "{v}"\n' for k, v in keys.items())


def of_job(text: str, job: str | None) -> str:
    """The words of [job]: where nothing is said, samples on the bench, of which nothing is due."""
    of_machine = (
        "[[machine]]",
        '"ground"',
        '"insulation"',
        '"before power"',
        '"power up"',
        '"return to service"',
    )
    bench = "" if any(words in text for words in of_machine) else 'kind = "bench"\n'
    return bench if job is None else job


def evaluate(text: str, *rules: RequiredChecks, job: str | None = None) -> Job:
    catalogue = host.Catalogue(
        CATALOGUE.calculations,
        required=[ProvidedRequirement("shop", "1.0", rule) for rule in rules],
    )
    head = f'[job]\ntitle = "t"\n{of_job(text, job)}'
    return jobsheet.evaluate(tomllib.loads(head + text), catalogue)


def shown_gaps(text: str, *rules: RequiredChecks, job: str | None = None) -> tuple[Gaps, str]:
    sheet = tomllib.loads(f'[job]\ntitle = "t"\n{of_job(text, job)}' + text)
    done = evaluate(text, *rules, job=job)
    of = gaps(done, sheet, CATALOGUE)
    return of, gaps_text(done, of)


def problems(text: str, job: str | None = None) -> str:
    with pytest.raises(BadInput) as caught:
        evaluate(text, job=job)
    return str(caught.value)


def test_checks_stand_in_the_order_of_the_work() -> None:
    job = evaluate(
        check("24 lbf", name="c", step="power up")
        + check("24 lbf", name="a")
        + check("24 lbf", name="b", step="dead tests")
    )
    assert [(s, [c.name for c in found]) for s, found in by_step(job.checks)] == [
        ("dead tests", ["b"]), ("power up", ["c"]), ("", ["a"]),
    ]  # fmt: skip
    text = job_text(job)
    assert text.index("DEAD TESTS") < text.index("POWER UP") < text.index("AT NO STEP")
    assert text.index("\nb (dead tests, as left)") < text.index("\nc (power up, as left)")
    assert [c["step"] for c in job_object(job)["checks"]] == ["power up", "", "dead tests"]


def test_without_steps_no_section_is_shown() -> None:
    assert "AT NO STEP" not in job_text(evaluate(check("24 lbf")))


@pytest.mark.parametrize("step", STEPS)
def test_every_step_is_known(step: str) -> None:
    assert evaluate(check("24 lbf", step=step)).checks[0].step == step


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (check("24 lbf", step="power-up"), "did you mean power up?"),
        (check("24 lbf", step="x"), "write before leaving, arrival"),
        (check("24 lbf", stage=""), "stage '' is not known"),
        (check("24 lbf", machine="x"), "write [[machine]]"),
        (TWO + check("24 lbf", machine="fridg"), "did you mean fridge?"),
        ('[nameplate]\nbreaker = "15 A"\n' + TWO + check("24 lbf"), "whose it is cannot be told"),
        ('[[machine]]\nkind = "x"\n' + check("24 lbf"), "machine 1: has no name"),
        (TWO + '[[machine]]\nname = "fridge"\n' + check("24 lbf"), "stands there twice"),
        (TWO + '[[machine]]\nname = " fridge"\n' + check("24 lbf"), "stands there twice"),
        ('[[machine]]\nname = "a"\nnameplate = 3\n' + check("24 lbf"), "[machine.nameplate]"),
        ('[[machine]]\nname = "a"\n[machine.nameplat]\n' + check("24 lbf"), "mean nameplate?"),
        ('[machine]\nname = "a"\n' + check("24 lbf"), "write [[machine]]"),
        (
            TWO + '[machine.nameplate]\nbreeker = "15 A"\n' + check("24 lbf"),
            "machine freezer: namep",
        ),
        ('[[not_tested]]\nname = "x"\nreason = "y"\nstep = "arival"\n', "did you mean arrival?"),
        ('[[not_tested]]\nname = "x"\nreason = "y"\ncalculation = "groun"\n', "mean ground?"),
        ('[[not_tested]]\nname = "x"\nreason = "y"\nrequird = true\n', "did you mean required?"),
        (check("24 lbf", tol="x"), "did you mean tool?"),
    ],
)
def test_refused(text: str, says: str) -> None:
    assert says in problems(text)


@pytest.mark.parametrize(
    ("job", "says"),
    [
        ('date = "31/01/2026"\n', "write it as 2026-01-31"),
        ("date = 2026\n", "write it as 2026-01-31"),
        ('callback_couse = "x"\n', "did you mean callback_cause?"),
        ('tecnician = "x"\n', "did you mean technician?"),
        ('who = {name = "x"}\n', 'write who = "..."'),
    ],
)
def test_refused_words_of_the_job(job: str, says: str) -> None:
    assert says in problems(check("24 lbf"), job)


def test_other_words_of_the_job_are_free() -> None:
    job = evaluate(
        check("24 lbf"),
        job='date = 2026-01-31\ncustomer = "x"\nvans = ["a", "b"]\nkind = "range"\n',
    )
    assert (job.kind, dict(job.about)) == (
        "range", {"date": "2026-01-31", "customer": "x", "vans": "a, b"},
    )  # fmt: skip


def test_each_machine_has_its_own_verdict_and_the_job_takes_the_worst() -> None:
    job = evaluate(
        good("fridge")
        + good("freezer", "freezer")
        + check("24 lbf", machine="fridge")
        + check("19 lbf", machine="freezer")
        + check("24 lbf", name="building")
    )
    assert (job.verdict_of("fridge"), job.verdict_of("freezer")) == ("pass", "fail")
    assert job.verdict == "fail"
    assert job.reasons == ("freezer: pull: 19 lbf is below 20 lbf",)
    machines = {m["name"]: (m["verdict"], m["kind"]) for m in job_object(job)["machines"]}
    assert machines == {"fridge": ("pass", "other"), "freezer": ("fail", "freezer")}


def test_a_machine_of_which_nothing_was_checked_cannot_be_told() -> None:
    bare = '[[machine]]\nname = "freezer"\nkind = "freezer"\n'
    job = evaluate(good("fridge") + bare + check("9 lbf", machine="freezer", stage="option"))
    assert (job.verdict_of("fridge"), job.verdict_of("freezer")) == ("pass", "cannot tell")
    assert job.verdict == "cannot tell"
    assert "freezer: nothing was checked as left" in job.reasons
    assert all(reason.startswith("freezer: ") for reason in job.reasons)


def test_a_fail_of_one_machine_is_not_cured_by_the_other() -> None:
    job = evaluate(
        TWO
        + check("24 lbf", machine="fridge")
        + check("24 lbf", machine="freezer", name="other")
        + check("19 lbf", machine="freezer", stage="as found")
    )
    assert job.verdict_of("freezer") == "cannot tell"


PLATES = (
    '[[machine]]\nname = "a"\n[machine.nameplate]\nbreaker = "15 A"\n'
    '[[machine]]\nname = "b"\n[machine.nameplate]\nbreaker = "20 A"\n'
)


def test_each_machine_feeds_its_own_checks_from_its_own_plate() -> None:
    breaker = '[[check]]\ncalculation = "breaker"\ncurrent = "8 A"\n'
    job = evaluate(PLATES + f'{breaker}machine = "a"\n{breaker}machine = "b"\n{breaker}')
    given = [{i.name: i.given for i in c.finding.inputs} for c in job.checks if c.finding]
    assert [g["breaker"] for g in given] == ["15 A", "20 A", None]


@pytest.mark.parametrize(
    "plate", ['[nameplate]\nbreaker = "15 A"\n[[machine]]\nname = "a"\n',
              '[[machine]]\nname = "a"\n[machine.nameplate]\nbreaker = "15 A"\n'],
)  # fmt: skip
def test_one_machine_needs_not_be_named(plate: str) -> None:
    breaker = '[[check]]\ncalculation = "breaker"\ncurrent = "5 A"\n'
    breaker += "only_receptacle = true\n"
    job = evaluate(
        plate + breaker + breaker.replace("current", 'machine = "a"\nname = "x"\ncurrent')
    )
    assert {c.verdict for c in job.checks} == {"pass"}
    assert {c["machine"] for c in job_object(job)["checks"]} == {"a"}
    assert {c["machine"] for c in job_object(job)["confirmed"]} == {"a"}
    assert job.verdict_of("a") == job.verdict == "cannot tell"


def test_before_and_after_show_the_same_number_twice() -> None:
    job = evaluate(check("19 lbf", stage="as found") + check("24 lbf") + check("24 lbf", name="x"))
    (pair,) = job.before_and_after
    assert (pair.found.verdict, pair.left.verdict) == ("fail", "pass")
    lines = job_text(job).partition("Before and after\n")[2].splitlines()
    assert lines[0].split() == ["pull"]
    assert "FAIL" in lines[1] and "19 lbf is below 20 lbf" in lines[1]
    assert "PASS" in lines[2] and "24 lbf, at least 20 lbf" in lines[2]
    (shown,) = job_object(job)["before_and_after"]
    assert [shown[k]["decided_by"][0]["actual"] for k in ("found", "left")] == [19, 24]


def test_what_decided_before_stands_beside_what_decides_after() -> None:
    heat = '[[check]]\ncalculation = "joint-drop"\nwire = "16 AWG"\njoint_length = "150 mm"\n'
    heat += 'joint_current = "8.7 A"\n'
    job = evaluate(f'{heat}drop = "360 mV"\nstage = "as found"\n{heat}drop = "24 mV"\n')
    (pair,) = job.before_and_after
    then = pair.then
    assert then is not None
    assert pair.now[0].criterion.name == then.criterion.name
    decided = pair.left.decided_by
    assert pair.now[-1] == decided


def test_no_word_of_a_sheet_moves_the_cursor_or_turns_letters_round() -> None:
    moves = "\\u001b[2J\\r\\u000b\\u009b1m\\u0007\\u0008\\u202e\\u2066"
    keys = {k: f"{k}{moves}" for k in ("name", "note", "tool", "part")}
    text = (
        f'[[machine]]\nname = "m{moves}"\nserial = "{moves}"\n[[machine]]\nname = "n"\n'
        + check("12 lbf", stage="as found", machine="n", **keys)
        + check("unknown", machine="n", **keys)
        + f'[[not_tested]]\nname = "x{moves}"\nreason = "y{moves}"\nmachine = "m{moves}"\n'
        + 'calculation = "ground"\nrequired = true\n'
    )
    of_job = f'"k{moves}" = "{moves}"\n'
    job = evaluate(text, job=of_job)
    texts = [job_text(job), shown_gaps(text, job=of_job)[1], *(job_rows(job, f) for f in FORMATS)]
    for text in texts:
        assert text.replace("\n", "").isprintable()
        assert "name?" in text.replace("\\", "")


class Walked(tuple[JobCheck, ...]):
    """Checks that count how often somebody goes through them."""

    times = 0

    def __iter__(self) -> Iterator[JobCheck]:
        Walked.times += 1
        return super().__iter__()


@pytest.mark.parametrize("show", [job_text, job_page, job_object])
def test_a_long_sheet_is_gone_through_as_often_as_a_short_one(
    show: Callable[[Job], object],
) -> None:
    """A job of thousands of checks takes time by their number, not by its square."""
    times = []
    for number in (2, 20):
        text = "".join(
            check("unknown", name=f"n{i}") + check("9 lbf", name=f"n{i}", stage="as found")
            for i in range(number)
        )
        job = evaluate(text)
        Walked.times = 0
        show(dataclasses.replace(job, checks=Walked(job.checks)))
        times.append(Walked.times)
    assert times[0] == times[1]


def test_sources_of_a_job_stand_once_under_one_number_each() -> None:
    strip = '[[check]]\ncalculation = "strip"\nwire = "18 AWG"\nstyle = "closed"\n'
    job = evaluate(
        check("24 lbf", name="b", step="power up")
        + strip
        + 'step = "wire"\nbarrel_length = "6.5 mm"\nstripped = "6.6 mm"\n'
        + check("27 lbf", name="c")
    )
    before, _, after = job_text(job).partition("\nSources\n")
    listed = after.partition("\nTake care\n")[0]
    numbers = re.findall(r"^  (\[\d+\])", listed, re.MULTILINE)
    assert numbers == [f"[{n}]" for n in range(1, len(numbers) + 1)]
    cited = " ".join(listed.split())
    decided = [c.decided_by.criterion.source for c in job.checks if c.decided_by]
    assert len(decided) == 3
    for source in decided:
        assert source is not None
        assert cited.count(source.cite()) == 1
        assert source.cite() not in " ".join(before.split())
    of_pull = re.search(r"(\[\d+\]) " + re.escape(decided[0].cite() if decided[0] else ""), cited)
    assert of_pull is not None
    assert f"PASS  pull-out force: 24 lbf, at least 20 lbf {of_pull[1]}\n" in before
    assert f"PASS  pull-out force: 27 lbf, at least 20 lbf {of_pull[1]}\n" in before


def test_the_short_job_has_the_cautions_of_what_decided() -> None:
    other = '[[check]]\ncalculation = "breaker"\ncurrent = "8 A"\nbreaker = "15 A"\n'
    job = evaluate(other + check("9 lbf"))
    of_other, of_pull = ([c.line for c in k.finding.cautions] for k in job.checks if k.finding)
    said = job_short(job)
    assert of_pull[0] in said
    assert of_other[0] not in said


def test_tool_and_part_go_into_every_output() -> None:
    job = evaluate(check("24 lbf", tool="crimper 4", part="F-18"))
    assert "tool: crimper 4" in job_text(job)
    assert "part: F-18" in job_text(job)
    (shown,) = job_object(job)["checks"]
    assert (shown["tool"], shown["part"]) == ("crimper 4", "F-18")


GROUND = RequiredChecks("our list", ("refrigerator",), ("ground",))


def missing(job: Job) -> list[tuple[str, bool, str]]:
    return [(n.name, n.required, n.rule) for n in job.not_tested if not n.usual]


def test_a_kind_of_job_without_a_check_that_a_rule_asks_for_cannot_be_told() -> None:
    said = "“our list” of plugin shop"
    rule = RequiredChecks("our list", ("refrigerator",), ("ring",))
    whole = sheets.whole(sheets.check("inrush"), kind="refrigerator").partition('"t"\n')[2]
    job = evaluate(whole, rule, job="")
    assert (job.verdict, missing(job)) == ("cannot tell", [("ring", True, said)])
    assert job.not_tested[0].reason == f"{said} asks for it in every job of kind refrigerator"
    assert job.reasons == ("ring: not tested, and required",)
    other = evaluate(whole.replace('"refrigerator"', '"freezer"'), rule, job="")
    assert (other.verdict, missing(other)) == ("pass", [])


def test_a_sheet_without_a_kind_does_not_slip_through() -> None:
    job = evaluate(check("24 lbf"), GROUND, job="")
    assert job.verdict == "cannot tell"
    assert "the sheet names none: write kind" in job.not_tested[0].reason


def test_a_rule_for_every_kind_needs_no_kind() -> None:
    job = evaluate(check("24 lbf"), RequiredChecks("all", ("*",), ("pull", "ground")))
    assert [n.name for n in job.not_tested] == ["ground"]
    assert job.not_tested[0].reason.endswith("asks for it in every job")


@pytest.mark.parametrize("stage", ["as found", "option", AS_LEFT])
def test_only_a_check_as_left_is_what_a_rule_asks_for(stage: str) -> None:
    rule = RequiredChecks("all", ("*",), ("pull",))
    job = evaluate(check("24 lbf", stage=stage) + check("24 lbf", name="x"), rule)
    assert job.not_tested == ()
    job = evaluate(check("24 lbf", stage=stage), rule)
    assert bool(job.not_tested) == (stage != AS_LEFT)


def test_what_the_sheet_says_of_it_becomes_required() -> None:
    said = '[[not_tested]]\nname = "earth"\ncalculation = "ground"\nreason = "no tester"\n'
    job = evaluate(check("24 lbf") + said, GROUND, job='kind = "refrigerator"\n')
    (entry,) = [n for n in job.not_tested if n.calculation == "ground"]
    assert (entry.name, entry.required, entry.reason) == ("earth", True, "no tester")
    assert "“our list” of plugin shop" in entry.rule
    assert "earth (required): no tester [“our list” of plugin shop]" in job_text(job)


def test_a_rule_holds_for_each_machine_of_its_kind() -> None:
    rule = RequiredChecks("cold", ("freezer",), ("pull",))
    job = evaluate(
        TWO + check("24 lbf", machine="fridge") + check("24 lbf"), rule, job='kind = "range"\n'
    )
    asked = [(n.machine, n.name) for n in job.not_tested if not n.usual]
    assert asked == [("freezer", "pull")]
    assert ("fridge", "circuit") in [(n.machine, n.name) for n in job.not_tested if n.usual]


def test_a_rule_that_asks_for_nothing_that_is_here_stays_open() -> None:
    job = evaluate(check("24 lbf"), RequiredChecks("x", ("*",), ("grund",)))
    assert job.verdict == "cannot tell"
    assert "no calculation of that name is here" in job.not_tested[0].reason


@pytest.mark.parametrize("said", ["Refrigerator", "REFRIGERATOR"])
def test_a_kind_is_read_in_either_case_as_it_is_listed(said: str) -> None:
    job = evaluate(check("24 lbf"), GROUND, job=f'kind = "{said}"\n')
    assert (job.kind, [n.name for n in job.not_tested if n.rule]) == ("refrigerator", ["ground"])
    of_machine = f'[[machine]]\nname = "a"\nkind = "{said}"\n'
    job = evaluate(of_machine + check("24 lbf"), GROUND)
    assert [m.kind for m in job.machines] == ["refrigerator"]


@pytest.mark.parametrize("asked", ["Refrigerator", "Boat"])
def test_a_rule_asks_by_the_kind_in_either_case(asked: str) -> None:
    rule = RequiredChecks("list", (asked,), ("ground",))
    job = evaluate(check("24 lbf"), rule, job=f'kind = "{asked.lower()}"\n')
    (entry,) = [n for n in job.not_tested if n.rule]
    assert entry.name == "ground"
    assert entry.reason.endswith(f"in every job of kind {job.kind}")


def test_a_shop_may_name_kinds_of_its_own() -> None:
    whole = sheets.whole(check("24 lbf"), kind="boat").partition('"t"\n')[2]
    rule = RequiredChecks("x", ("boat",), ("pull",))
    job = evaluate(whole, rule, job="")
    assert (job.verdict, job.remarks) == ("pass", ())
    assert evaluate(whole.partition(PULL)[0], rule, job="").verdict == "cannot tell"


def found(text: str, job: str | None = None) -> dict[str, Any]:
    of, said = shown_gaps(text, job=job)
    return {
        "counts": of.counts,
        "readings": [(r.input, r.said_unknown, r.counts) for r in of.readings],
        "checks": [(c.name, c.required) for c in of.checks],
        "again": [c.name for c in of.again],
        "text": said,
    }


def test_gaps_of_a_whole_sheet() -> None:
    of = found(check("24 lbf"))
    assert (of["counts"], of["readings"], of["checks"], of["again"]) == (False, [], [], [])
    assert of["text"].startswith("SHEET: NOTHING MISSING  t")


def test_a_fail_is_nothing_missing() -> None:
    of = found(check("9 lbf"))
    assert not of["counts"]
    assert "FAIL" not in of["text"]


def test_readings_that_are_missing_or_unknown() -> None:
    of = found(check("unknown", name="a") + PULL + check("unknown", name="b", stage="option"))
    assert of["readings"] == [
        ("force", True, True), ("force", False, True), ("force", True, False),
    ]  # fmt: skip
    assert of["counts"]
    assert "- force, said to be unknown: find out: force at which it let go" in of["text"]


@pytest.mark.parametrize(
    ("text", "where"),
    [
        (PULL, 'force, not given: find out: force at which it let go (from 0 up to 7000 lbf); in '
               "the check"),
        (check("unknown"), 'force, said to be unknown: find out: force at which it let go (from 0 '
                           'up to 7000 lbf); in place of "unknown"'),
        (PULL + 'uses = "a"\n[readings.a]\nterminal = "ring"\n', "7000 lbf); in [readings.a]"),
        ('[[check]]\ncalculation = "breaker"\ncurrent = "8 A"\n', "100 A); in [nameplate]"),
        (TWO + '[[check]]\ncalculation = "breaker"\nmachine = "fridge"\ncurrent = "8 A"\n',
         "100 A); in [machine.nameplate] of fridge"),
        (TWO + '[[check]]\ncalculation = "breaker"\ncurrent = "8 A"\n', "100 A); in the check"),
        ('[[machine]]\nname = "a"\n[machine.nameplate]\nbreaker = "unknown"\n'
         '[[check]]\ncalculation = "element"\nelement_resistance = "9 ohm"\n'
         '[[check]]\ncalculation = "breaker"\ncurrent = "8 A"\nbreaker = "15 A"\n',
         "in [machine.nameplate]"),
    ],
)  # fmt: skip
def test_a_missing_reading_says_where_on_the_sheet_it_is_written(text: str, where: str) -> None:
    assert where in " ".join(found(text)["text"].split())


def test_readings_that_are_found_out_alike_stand_together_each_with_what_it_is() -> None:
    lines = found('[[check]]\ncalculation = "inrush"\nname = "start"\n')["text"].splitlines()
    said = " ".join(" ".join(lines).split())
    assert said.count("read LRA on the plate of the compressor or motor") == 1
    assert "- code_letter, not given: locked-rotor code letter of an open motor (A, B," in said
    assert "- nameplate_voltage, not given: volts on the plate (from 12 up to 600 V); in [n" in said


def test_what_a_check_will_ask_for_next_is_listed_too() -> None:
    of = found('[[check]]\ncalculation = "inrush"\nname = "start"\n')
    assert ("voltage", False, True) in of["readings"]
    assert "- then voltage, not given: find out: volts at the plug" in of["text"]
    of = found('[[check]]\ncalculation = "insulation"\n')
    assert {"test_voltage", "protection"} <= {name for name, *_ in of["readings"]}
    whole = found(check("24 lbf"))
    assert whole["readings"] == []


def test_a_reading_of_an_option_keeps_no_sheet_open() -> None:
    assert not found(check("24 lbf") + check("unknown", name="b", stage="option"))["counts"]


def test_an_optional_reading_that_the_check_needs_is_missing() -> None:
    of = found('[[check]]\ncalculation = "ground"\nground_point = "plug-pin"\n')
    assert ("ground_resistance", False, True) in of["readings"]


def test_checks_that_are_missing() -> None:
    lacks = '[[not_tested]]\nname = "x"\nreason = "y"\n'
    assert found(check("24 lbf") + lacks)["checks"] == [("x", False)]
    assert not found(check("24 lbf") + lacks)["counts"]
    of = found(check("24 lbf") + lacks + "required = true\n")
    assert (of["checks"], of["counts"]) == ([("x", True)], True)
    of = found(check("19 lbf", stage="as found", name="c") + check("24 lbf"))
    assert (of["again"], of["counts"]) == (["c"], True)
    assert found(check("24 lbf", stage="as found"))["checks"] == [("the work", True)]


def test_what_the_kind_requires_and_is_not_on_the_sheet_is_listed_as_not_tested() -> None:
    said = '[[not_tested]]\nname = "earth"\ncalculation = "ground"\nreason = "z"\n'
    job = evaluate(check("24 lbf") + said, job='kind = "range"\n')
    assert [(n.name, n.required) for n in job.not_tested] == [
        ("earth", True), ("insulation or leakage", True), ("outlet", True), ("supply", True),
        ("circuit", True),
    ]  # fmt: skip
    assert job.verdict == "cannot tell"
    text = " ".join(job_text(job).split())
    assert "circuit (required): not on the sheet, and every job of kind range needs it: a" in text


def test_what_a_rule_asks_for_is_listed_once() -> None:
    rule = RequiredChecks("proof", ("range",), ("ground",))
    job = evaluate(check("24 lbf"), rule, job='kind = "range"\n')
    of_ground = [(n.name, n.required) for n in job.not_tested if n.calculation == "ground"]
    assert of_ground == [("ground", True)]


def test_a_missing_check_is_shown_with_the_lines_to_write() -> None:
    text = TWO + check("24 lbf", machine="fridge")
    _, said = shown_gaps(text, GROUND, job='kind = "refrigerator"\n')
    lines = [line.strip() for line in said.splitlines()]
    at = next(i for i, line in enumerate(lines) if line.startswith("- fridge: ground: "))
    block = lines[lines.index("[[check]]", at) :][:3]
    assert block == ["[[check]]", 'calculation = "ground"', 'machine = "fridge"']
    lacks = '[[not_tested]]\nname = "x"\nreason = "y"\nrequired = true\n'
    absent = RequiredChecks("x", ("*",), ("grund",))
    for of in (shown_gaps(check("24 lbf") + lacks), shown_gaps(check("24 lbf"), absent)):
        assert "[[check]]" not in of[1]  # nobody knows which calculation, or it is not here


def test_what_the_kind_requires_and_is_not_there_is_missing() -> None:
    of = found(check("24 lbf"), job='kind = "range"\n')
    assert [n for n, required in of["checks"] if required] == [
        "ground path", "insulation or leakage", "outlet", "supply", "circuit",
    ]  # fmt: skip
    said = '[[not_tested]]\nname = "earth"\ncalculation = "ground"\nreason = "z"\n'
    of = found(check("24 lbf") + said, job='kind = "range"\n')
    assert ("ground path", True) not in of["checks"]
    assert ("earth", True) in of["checks"]
