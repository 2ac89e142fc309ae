"""The job sheet: what feeds what, what counts, and what is refused."""

import tomllib
from typing import Any

import pytest

from wirecalc.base.errors import BadInput
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.job import Job
from wirecalc.plugging import host

CATALOGUE = host.build(bundled_only=True)
PULL = 'calculation = "pull"\nwire = "18 AWG"\nterminal = "ring"\n'


def evaluate(text: str) -> Job:
    return jobsheet.evaluate(
        tomllib.loads('[job]\ntitle = "t"\nkind = "bench"\n' + text), CATALOGUE
    )


def problems(text: str) -> str:
    with pytest.raises(BadInput) as caught:
        evaluate(text)
    return str(caught.value)


def check(force: str, stage: str = "as left", name: str = "crimp") -> str:
    return f'[[check]]\n{PULL}force = "{force}"\nstage = "{stage}"\nname = "{name}"\n'


@pytest.mark.parametrize(
    ("text", "verdict", "reason"),
    [
        (check("24 lbf"), "pass", ""),
        (check("19 lbf"), "fail", "crimp: 19 lbf is below 20 lbf"),
        (check("19 lbf", "option") + check("24 lbf"), "pass", ""),
        (check("19 lbf", "option"), "cannot tell", "nothing was checked as left"),
        (check("19 lbf", "as found") + check("24 lbf"), "pass", ""),
        (check("19 lbf", "as found") + '[[check]]\ncalculation = "strip"\nname = "crimp"\n'
         'wire = "18 AWG"\nstyle = "closed"\nbarrel_length = "6 mm"\n', "cannot tell",
         "crimp: failed as found, not measured again"),
        (check("19 lbf", "as found") + check("24 lbf", name="other"), "cannot tell",
         "crimp: failed as found, not measured again"),
        (check("24 lbf", "as found"), "cannot tell", "nothing was checked as left"),
        (check("19 lbf", "as found") + 'removed = "cut off"\n' + check("24 lbf", name="other"),
         "pass", ""),
        (check("19 lbf", "as found") + 'removed = "cut off"\n', "cannot tell",
         "nothing was checked as left"),
        (check("19 lbf", "as found") + 'removed = " "\n' + check("24 lbf", name="other"),
         "cannot tell", "crimp: failed as found, not measured again"),
        (check("24 lbf") + '[[not_tested]]\nname = "x"\nrequired = true\nreason = "y"\n',
         "cannot tell", "x: not tested, and required"),
        (check("24 lbf") + '[[not_tested]]\nname = "x"\nreason = "y"\n', "pass", ""),
        (check("19 lbf") + '[[not_tested]]\nname = "x"\nrequired = true\nreason = "y"\n',
         "fail", "crimp: 19 lbf is below 20 lbf"),
        (check("unknown"), "cannot tell", "crimp: force is not known"),
        (f"[[check]]\n{PULL}", "cannot tell", "pull: force was not given"),
    ],
)  # fmt: skip
def test_verdict_of_a_job(text: str, verdict: str, reason: str) -> None:
    job = evaluate(text)
    assert job.verdict == verdict
    assert job.reasons == ((reason,) if reason else ())


SUPPLY = """[[check]]
calculation = "supply"
nameplate_voltage = "120 V"
voltage_running = "118 V"
stage = "{stage}"
{more}
"""


def test_what_failed_is_judged_again_not_only_the_check_of_that_name() -> None:
    def evaluated(left: str) -> Job:
        found = SUPPLY.format(stage="as found", more='voltage_at_start = "80 V"')
        text = found + SUPPLY.format(stage="as left", more=left)
        return jobsheet.evaluate(tomllib.loads('[job]\ntitle = "t"\n' + text), CATALOGUE)

    job = evaluated("")
    (told,) = [c for c in job.decided_by if c.why == "failed as found, not measured again"]
    assert told.judged is not None
    assert told.judged.criterion.name.endswith("volts at start")
    assert "with the same reading" in told.action
    mended = evaluated('voltage_at_start = "112 V"')
    assert not [c for c in mended.counted if c.why == "failed as found, not measured again"]


def test_what_was_removed_is_not_measured_as_left_too() -> None:
    said = problems(check("19 lbf", "as found") + 'removed = "cut off"\n' + check("24 lbf"))
    assert "check crimp: removed: the same check stands there as left" in said
    assert "leave removed out" in said


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("none", "does not say that it is gone"),
        ("-", "does not say that it is gone"),
        ("n/a", "does not say that it is gone"),
        ("no time", "does not say that it is gone"),
        ("customer said ok", "does not say that it is gone"),
        ("customer said it is gone", "does not say that it is gone"),
        ("not removed", "does not say that it is gone"),
        ("will be cut off", "does not say that it is gone"),
        ("to be taken away", "does not say that it is gone"),
        ("could not be cut off", "does not say that it is gone"),
        ("wasn't removed", "does not say that it is gone"),
        ("it was unplugged", "does not say that it is gone"),
        ("cord unplugged, plugged in at the wall", "does not say that it is gone"),
        ("is it gone?", "does not say that it is gone"),
        ("replaced", "measured again instead"),
        ("taped", "measured again instead"),
        ("mended", "measured again instead"),
        ("tightened", "measured again instead"),
        ("cut off and crimped anew", "measured again instead"),
        ("old one gone, new terminal", "measured again instead"),
    ],
)
def test_what_is_still_there_was_not_removed(said: str, why: str) -> None:
    found = check("19 lbf", "as found") + f'removed = "{said}"\n'
    text = problems(found + check("24 lbf", name="other"))
    assert "check crimp: removed" in text
    assert why in text


@pytest.mark.parametrize(
    "said",
    [
        "cut off",
        "cut out",
        "the cord is gone, the machine has a receptacle of its own",
        "taken away",
        "took the cord off",
        "thrown away",
        "the cord is gone, new receptacle put in",
    ],
)
def test_what_is_gone_was_removed(said: str) -> None:
    found = check("19 lbf", "as found") + f'removed = "{said}"\n'
    assert evaluate(found + check("24 lbf", name="other")).verdict == "pass"


@pytest.mark.parametrize("stage", ["as left", "option"])
def test_only_what_was_found_can_have_been_removed(stage: str) -> None:
    said = problems(check("24 lbf", stage) + 'removed = "cut off"\n')
    assert f"check crimp: removed: this check is {stage}" in said
    assert 'write stage = "as found"' in said


def inputs(job: Job, number: int = 0) -> dict[str, Any]:
    finding = job.checks[number].finding
    assert finding is not None
    return {i.name: (i.given, i.origin) for i in finding.inputs}


def test_nameplate_feeds_nameplate_inputs_only() -> None:
    text = '[nameplate]\nbreaker = "15 A"\nrated_load_current = "1.6 A"\n'
    job = evaluate(text + '[[check]]\ncalculation = "breaker"\ncurrent = "8 A"\n')
    assert inputs(job)["breaker"] == ("15 A", "sheet")
    assert "rated_load_current" not in inputs(job)
    assert "current" not in inputs(evaluate(text + '[[check]]\ncalculation = "inrush"\n'))


def test_a_reading_on_the_nameplate_is_refused() -> None:
    said = problems('[nameplate]\ncurrent = "8 A"\n' + check("24 lbf"))
    assert "nameplate: current: no calculation takes this from a plate" in said


def test_a_plate_that_no_check_needs_may_be_unknown() -> None:
    assert evaluate('[nameplate]\nbreaker = "Unknown"\n' + check("24 lbf")).verdict == "pass"
    said = problems('[nameplate]\nbreaker = "unknow"\n' + check("24 lbf"))
    assert "nameplate: breaker" in said


def test_code_letter_stands_on_a_plate() -> None:
    text = '[nameplate]\ncode_letter = "H"\n[[check]]\ncalculation = "inrush"\n'
    assert inputs(evaluate(text))["code_letter"] == ("H", "sheet")


def test_own_input_comes_before_used_readings_before_the_nameplate() -> None:
    text = (
        '[nameplate]\nbreaker = "15 A"\n[readings.a]\ncurrent = "8 A"\nbreaker = "20 A"\n'
        '[[check]]\ncalculation = "breaker"\nuses = "a"\n'
        '[[check]]\ncalculation = "breaker"\nname = "own"\nuses = "a"\n'
        'current = "9 A"\nbreaker = "30 A"\n'
    )
    job = evaluate(text)
    assert (inputs(job)["current"][0], inputs(job)["breaker"][0]) == ("8 A", "20 A")
    assert (inputs(job, 1)["current"][0], inputs(job, 1)["breaker"][0]) == ("9 A", "30 A")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('[[chek]]\ncalculation = "pull"\n', "did you mean check?"),
        ("", "the sheet lists no check"),
        ('[[check]]\nname = "x"\n', "names no calculation"),
        ('[[check]]\ncalculation = "pul"\n', "did you mean pull?"),
        ('[[check]]\ncalculation = "pull"\nstage = "left"\n', "stage 'left' is not known"),
        (f'[[check]]\n{PULL}forc = "24 lbf"\n', "did you mean force?"),
        (f"[[check]]\n{PULL}force = 24\n", 'write it as text: "24 lbf"'),
        (f'[[check]]\n{PULL}force = "24 lb"\n', "pounds of pull are lbf"),
        (f'[[check]]\n{PULL}uses = "b"\n[readings.a]\nforce = "2 lbf"\n', "known: a"),
        (f'[[check]]\n{PULL}uses = "a"\n[readings.a]\nforc = "2 lbf"\n', "did you mean force?"),
        ('[nameplate]\nbreeker = "15 A"\n' + check("24 lbf"), "did you mean breaker?"),
        (check("24 lbf") + check("25 lbf"), "stands there twice as left"),
        ('[nameplate]\nbreaker = "garbage"\n' + check("24 lbf"), "nameplate: breaker"),
        ('[[not_tested]]\nname = "x"\n', "not_tested x: has no reason"),
        ('[[not_tested]]\nname = " "\nreason = ""\n', "not_tested 1: has no name and no reason"),
        ('[[not_tested]]\nname = "x"\nreason = "y"\nwhy = "z"\n', "not_tested x: why"),
        (
            '[[not_tested]]\nname = "x"\nreason = "y"\nrequired = "yes"\n',
            "not_tested x: required: 'yes' is neither true nor false",
        ),
        (
            check("24 lbf") + "note = {a = 1}\n",
            "check 1: note: is written wrongly; write note =",
        ),
        (f"[[check]]\n{PULL}name = {{a = 1}}\n", "check 1: name: is written wrongly; write name ="),
        (f'[[check]]\n{PULL}uses = "b"\n', "no such readings; write [readings.b]"),
        ('[check]\ncalculation = "pull"\n', "write [[check]]"),
        (
            '[[not_tested]]\nname = "x y"\nreason = "a"\n'
            '[[not_tested]]\nname = "X  y"\nreason = "b"\nrequired = true\n',
            "not_tested X  y: stands there twice; take one out, or give each a name of its own",
        ),
    ],
)
def test_refused_sheets(text: str, says: str) -> None:
    assert says in problems(text)


def test_readings_that_no_check_uses_are_a_note_and_judge_nothing() -> None:
    job = evaluate('[readings.a]\nforce = "2 lbf"\n' + check("24 lbf"))
    assert job.verdict == "pass"
    assert job.remarks[-1] == 'readings.a: no check uses them, none was judged; uses = "a"'
    used = '[readings.a]\nforce = "2 lbf"\n' + f'[[check]]\n{PULL}uses = "a"\n'
    assert (evaluate(used).verdict, evaluate(used).remarks) == ("fail", ())


COOL = """[[check]]
calculation = "heat-rating"
part = "bake element"
stage = "as found"
place_temperature = "100 C"
wire_temperature = "90 C"
terminal_temperature = "150 C"
"""
JOINT = """[[check]]
calculation = "splice"
part = "{part}"
wire = "18 AWG"
barrel = "22-18 AWG"
connector = "butt"
wire_temperature = "{wire}"
terminal_temperature = "150 C"
place_temperature = "100 C"
"""


@pytest.mark.parametrize(
    ("left", "verdict"),
    [
        (JOINT.format(part="Bake  element", wire="150 C"), "pass"),
        (JOINT.format(part="bake element", wire="90 C"), "fail"),
        (JOINT.format(part="broil element", wire="150 C"), "cannot tell"),
        (JOINT.format(part="bake element", wire="150 C").replace("part", "note"), "cannot tell"),
        (
            check("24 lbf")
            + JOINT.format(part="bake element", wire="150 C")
            + 'stage = "option"\n',
            "cannot tell",
        ),
        (  # of the same calculation under another name: it may be another joint of such parts
            COOL.replace('"as found"', '"as left"\nname = "x"').replace("90 C", "150 C"),
            "cannot tell",
        ),
        (check("24 lbf") + 'part = "bake element"\n', "cannot tell"),  # another criterion
    ],
)
def test_another_calculation_settles_what_it_judges_on_the_same_part(
    left: str, verdict: str
) -> None:
    assert evaluate(COOL + left).verdict == verdict


def test_a_part_of_another_machine_settles_nothing() -> None:
    both = "".join(f'[[machine]]\nname = "{name}"\n' for name in "ab")
    sheet = COOL + 'machine = "a"\n' + JOINT.format(part="bake element", wire="150 C")
    again = "failed as found, not measured again"
    for machine, settled in (("a", True), ("b", False)):
        text = f'[job]\ntitle = "t"\n{both}{sheet}machine = "{machine}"\n'
        job = jobsheet.evaluate(tomllib.loads(text), CATALOGUE)
        assert (again not in [c.why for c in job.counted]) is settled


def test_names_are_told_apart_by_their_words() -> None:
    found = f'[[check]]\n{PULL}force = "19 lbf"\nstage = "as found"\nname = " a\\nb "\n'
    job = evaluate(found + f'[[check]]\n{PULL}force = "24 lbf"\nname = "a b"\n')
    assert (job.verdict, len(job.before_and_after)) == ("pass", 1)
    assert evaluate(f'[[check]]\n{PULL}force = "24 lbf"\nname = " "\n').checks[0].name == "pull"


def test_sections_of_the_wrong_shape_are_refused() -> None:
    sheet = {"job": {"title": "t"}, "readings": "x", **tomllib.loads(check("24 lbf"))}
    with pytest.raises(BadInput, match=r"write \[readings\]"):
        jobsheet.evaluate(sheet, CATALOGUE)


def test_everything_wrong_in_a_sheet_is_listed_at_once() -> None:
    said = problems(
        check("24 lb") + '[[check]]\ncalculation = "breaker"\ncurrent = "8"\nbreaker = "115 A"\n'
    )
    assert len(said.splitlines()) == 3
    assert "check crimp: force" in said
    assert "check breaker: current" in said
    assert "check breaker: breaker" in said


@pytest.mark.parametrize("job", ["", "[job]\n", '[job]\ntitle = " \\n "\n'])
def test_sheet_without_title_is_refused(job: str) -> None:
    with pytest.raises(BadInput, match="the sheet has no title"):
        jobsheet.evaluate(tomllib.loads(job + check("24 lbf")), CATALOGUE)


def test_file_that_is_missing_or_no_toml(tmp_path: Any) -> None:
    with pytest.raises(BadInput, match="there is no such file"):
        jobsheet.read(tmp_path / "none.toml")
    (tmp_path / "bad.toml").write_text("force = 24 lbf\n")
    with pytest.raises(BadInput, match=r"is not TOML: .*line 1"):
        jobsheet.read(tmp_path / "bad.toml")
    (tmp_path / "bom.toml").write_text('\ufeff[job]\ntitle = "t"\n', encoding="utf-8")
    assert jobsheet.read(tmp_path / "bom.toml") == {"job": {"title": "t"}}


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"\xff\xfe[\x00j\x00", "is not UTF-8"),
        (b'[job]\ntitle = "caf\xe9"\n', "save it as UTF-8"),
        (b"[job]\nx = " + b"[" * 9000 + b"]" * 9000, "is nested too deeply"),
        (b"[job]\nx = " + b"{a = " * 9000 + b"1" + b"}" * 9000, "is nested too deeply"),
        (b"[job]\nx = " + b"9" * 5000, "with too many digits"),
    ],
)
def test_file_that_no_sheet_can_be_read_from(tmp_path: Any, content: bytes, says: str) -> None:
    (tmp_path / "bad.toml").write_bytes(content)
    with pytest.raises(BadInput, match=says):
        jobsheet.read(tmp_path / "bad.toml")


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (f"[check]\n{PULL}[check]\n{PULL}", "line 1"),
        (f"[[check]]\n{PULL}[ check ] # a\n{PULL}", "line 5"),
        (f"note = 3\n[check]\n{PULL}", "line 2"),
    ],
)
def test_single_brackets_are_told_with_their_line(tmp_path: Any, text: str, line: str) -> None:
    path = tmp_path / "x.toml"
    path.write_text(text)
    with pytest.raises(BadInput) as caught:
        jobsheet.read(path)
    assert f"x.toml, {line}: [check] has single brackets; write [[check]]" in str(caught.value)


def test_single_brackets_within_a_note_are_words() -> None:
    sheet = f"[[check]]\n{PULL}note = '''\n[check]\n'''\n"
    assert jobsheet.parse(sheet.encode(), "x.toml")["check"][0]["note"] == "[check]\n"


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_lines_may_end_as_any_system_ends_them(tmp_path: Any, end: str) -> None:
    (tmp_path / "x.toml").write_bytes(f'[job]{end}title = "t"{end}'.encode())
    assert jobsheet.read(tmp_path / "x.toml") == {"job": {"title": "t"}}


def test_a_shared_value_that_a_check_has_no_use_for_is_left_out_of_it() -> None:
    job = evaluate(
        '[nameplate]\ntolerance = "5 %"\n'
        '[[check]]\ncalculation = "capacitor"\nmeasured_capacitance = "30 uF"\n'
        '[[check]]\ncalculation = "capacitor"\nname = "marked"\n'
        'measured_capacitance = "30 uF"\nmarked_capacitance = "30 uF"\n'
    )
    assert "tolerance" not in inputs(job)
    assert inputs(job, 1)["tolerance"] == ("5 %", "sheet")


def test_an_unknown_one_of_a_list_is_cannot_tell() -> None:
    loads = 'breaker = "15 A"\nplug_loads = ["3 A", "unknown"]\n'
    job = evaluate('[[check]]\ncalculation = "circuit"\n' + loads)
    assert job.verdict == "cannot tell"


@pytest.mark.parametrize(
    ("said", "is_one"),
    [
        *((word, "flammable") for word in ("R600a", "r-600a", "R 290", "600a", "HC-290")),
        *((word, "flammable") for word in ("isobutane", "Propane")),
        *((word, "not flammable") for word in ("R134a", "134a", "HFC-134a", "R-22", "HCFC-22")),
        *((word, word) for word in ("R9999", "green", "134")),
    ],
)
def test_a_refrigerant_by_its_number(said: str, is_one: str) -> None:
    from wirecalc.jobs.sheet.machine_facts import facts_of

    assert facts_of({"refrigerant": said}) == {"refrigerant": is_one}
