"""An answer of one screen: what it keeps, how long it is, and when it is given."""

from __future__ import annotations

import re
import shlex
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.jobs import sheet as jobsheet
from wirecalc.output import job_short, short, summary, terminal_width, text
from wirecalc.plugging.worked_examples import worked_example
from wirecalc.said.findings import Finding
from wirecalc.said.items import Answer, NotChecked
from wirecalc.said.verdicts import Verdict

Cli = Callable[..., Any]
LOADED = wirecalc.build(bundled_only=True)
SHEETS = sorted(Path(__file__).parents[2].glob("docs/examples/*.toml"))
MOST, MOST_OF_A_PASS = 20, 12  # lines
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
DEFERRAL = "Local code, the maker's sheet and the inspector decide; this approves nothing."


def examples() -> list[Finding]:
    """The worked example of every calculation."""
    found = [worked_example(LOADED, p.calculation) for p in LOADED.calculations.values()]
    return [f for f in found if isinstance(f, Finding)]


EXAMPLES = examples()


def flat(said: str) -> str:
    """A text on one line."""
    return " ".join(said.split())


@pytest.mark.parametrize("finding", EXAMPLES, ids=lambda f: f.calculation)
def test_the_short_answer_keeps_what_somebody_acts_on(finding: Finding) -> None:
    lines = short.finding_short(finding).splitlines()
    said = flat("\n".join(lines))
    assert len(lines) <= MOST
    assert max(map(len, lines)) <= 80
    for columns in (40, 60):
        with terminal_width.shown_on(terminal_width.Screen(columns)):
            narrow = short.finding_short(finding).splitlines()
        assert max(map(len, narrow)) <= columns
    decided = finding.decided_by
    if decided is None:
        assert "NO VERDICT" in said
        assert all(flat(a.text) in said for a in finding.answers)
        assert all(f.figure.name in said for f in finding.figures[:4])
    else:
        assert lines[0].startswith(text.word(finding.verdict))
        assert flat(decided.reason) in said
        assert decided.criterion.name in said
        assert "Next  " in "\n".join(lines)
        assert decided.criterion.source is None or decided.criterion.source.short in said
    for judged in finding.criteria:
        if judged.verdict is not Verdict.PASS:
            name = judged.criterion.name
            assert name in said or name.replace("_", " ") in said
            assert text.word(judged.verdict) in said
    stops = [c for c in finding.cautions if c.severity == "stop"]
    assert [line[6:] for line in lines if line.startswith("STOP")] == [c.line for c in stops]
    if not stops:
        assert all(c.line in said for c in finding.cautions if c.severity == "caution")
    _keeps_what_was_taken(finding, said)
    if finding.not_checked:
        first = re.split(r":| \(", finding.not_checked[0].what.replace("_", " "))[0]  # no why
        assert first in said.partition("Not checked")[2]
    assert lines[-2] == DEFERRAL
    assert "--full" in lines[-1]


def _keeps_what_was_taken(finding: Finding, said: str) -> None:
    assumed = said.partition("Assumed")[2]
    for record in finding.inputs:
        if record.origin == "assumed":
            assert flat(record.notes[0]) in assumed
        for note in record.notes:
            if note.startswith("assumed "):
                assert note.removeprefix("assumed ") in assumed
    for name in finding.exact:
        assert name.replace("_", " ") in said.partition("Exact")[2].partition(":")[0]


@pytest.mark.parametrize("path", SHEETS, ids=lambda p: p.stem)
def test_the_short_job_keeps_what_decided_it_and_what_to_do(path: Path) -> None:
    content = jobsheet.content(path)
    job = jobsheet.evaluate(jobsheet.parse(content, str(path)), LOADED, path.parent)
    lines = job_short.job_short(job).splitlines()
    said = flat("\n".join(lines))
    assert len(lines) <= MOST
    assert lines[0].startswith(f"JOB: {text.word(job.verdict)}")
    for line in summary.lines(job, 3):
        beside = line.label == "Marginal" and job.verdict is Verdict.FAIL
        assert f"{line.label} {flat(line.said)}" in said or beside
    for counted in job.counted:
        if counted.verdict is not Verdict.PASS:
            assert flat(counted.name) in said
    decided = [c.check.finding for c in job.decided_by if c.check and c.check.finding]
    if job.verdict is not Verdict.PASS:
        stops = {c.line for f in decided for c in f.cautions if c.severity == "stop"}
        assert {line[6:] for line in lines if line.startswith("STOP")} >= stops
    for remark in job.remarks:  # a stop of the machine itself, whatever the verdict
        when = remark.removeprefix("STOP: ").partition(": ")[0]
        flame = "flammable gas" if "flame" in when else flat(remark)
        assert flame in said
    assert lines[-2] == DEFERRAL
    assert lines[-1] == "All of it, with the sources: `wirecalc job` with this sheet and --full"


@pytest.mark.parametrize(
    "finding",
    [f for f in EXAMPLES if f.verdict is Verdict.PASS],
    ids=lambda f: f.calculation,
)
def test_a_pass_is_twelve_lines_and_one_for_each_stop_beyond_two(finding: Finding) -> None:
    """A line more where what was assumed, or made of what was typed, is long."""
    stops = sum(c.severity == "stop" for c in finding.cautions)
    lines = short.finding_short(finding).splitlines()
    assert len(lines) <= MOST_OF_A_PASS + max(0, stops - 2) + 1
    (next_,) = [line for line in lines if line.startswith("Next  ")]
    assert next_ == f"Next  {finding.go_on}"  # in one line


def test_each_calculation_that_can_pass_says_what_to_do_then() -> None:
    calculations = [p.calculation for p in LOADED.calculations.values()]
    figures_only = {"equivalent", "gauge", "pull-tester", "wire-break"}
    assert {c.name for c in calculations if not c.go_on} <= figures_only
    said = [c.go_on for c in calculations if c.go_on]
    assert all(len(text) <= 72 and not text.endswith(".") for text in said)
    named = {
        word for text in said for word in re.findall(r"[a-z]+-?[a-z]+", text.partition(":")[2])
    }
    assert {"inrush", "drop"} <= named  # names of calculations stand behind a colon


def test_a_pass_of_which_nothing_is_said_goes_on_with_the_work() -> None:
    finding = next(f for f in EXAMPLES if f.verdict is Verdict.PASS)
    assert "Next  go on with the work" in short.finding_short(replace(finding, go_on=""))


def test_names_of_one_assumption_are_said_together() -> None:
    (found,) = [f for f in EXAMPLES if f.calculation == "motor-circuit"]
    names = "branch selection current, minimum ampacity, maximum breaker: none on the plate"
    assert names in flat(short.finding_short(found))


def test_an_abbreviation_in_the_name_of_an_answer_keeps_its_capitals() -> None:
    finding = replace(EXAMPLES[0], criteria=(), answers=(Answer("size in AWG", "18"),))
    assert short.finding_short(finding).startswith("Size in AWG: 18")
    assert text.finding_text(finding, "What?").startswith("Size in AWG: 18")


def test_a_simple_pass_is_twelve_lines(cli_main: Cli) -> None:
    lines = cli_main(*PULL, "--short").out.splitlines()
    assert len(lines) <= MOST_OF_A_PASS
    assert lines[0].startswith("PASS  pull-out force: 24 lbf, at least 20 lbf [UL 486A")


def test_a_number_is_shown_as_typed_with_what_it_was_multiplied_by(cli_main: Cli) -> None:
    line = (
        'breaker --current "12 A" --breaker "15 A" --building-wire "14 AWG" --run-time "4 h" '
        '--insulation-class "60 C" --termination-temperature "60 C" --receptacle "15 A" '
        '--only-receptacle yes --fastened-in-place no --ambient "30 C" --conductors 3 --short'
    )
    said = flat(cli_main(*shlex.split(line)).out)
    assert said.startswith("PASS load on the breaker: 15 A, at most 15 A")
    assert "1.25 x 12 A = 15 A" in said
    newtons = flat(cli_main(*PULL, "--pull-standard", "iec-60352-2", "--short").out)
    assert "From force: 24 lbf" in newtons
    ends = flat(cli_main(*PULL[:-1], "10 lbf ±2%", "--short").out)
    assert ends.startswith("FAIL pull-out force: at most 10.2 lbf, below 20 lbf")
    assert "From force: 10 lbf ±2%" in ends
    as_typed = flat(cli_main(*PULL, "--short").out)
    assert "From" not in as_typed
    example = LOADED.calculations["leakage"].calculation.example_inputs
    summed = wirecalc.run("leakage", **{**example, "other_leakage": "4 mA"})
    said = short.finding_short(summed)
    assert "sum on the GFCI: 4.3 mA is within the limit" in said
    assert "From  leakage current: 0.3 mA; other leakage: 4 mA" in said


def test_what_was_meant_to_be_in_force_and_is_not_is_named_first() -> None:
    many = [NotChecked(f"a thing of the work, number {n}") for n in range(20)]
    lost = [
        NotChecked("house rules of plugin shop 1", "it does not load"),
        NotChecked("what W asks"),
    ]
    said = flat("\n".join(short.not_checked([*many, *lost])))
    assert said.startswith("Not checked house rules of plugin shop 1; what W asks; a thing")
    assert re.search(r"number (\d+); (\d+) more$", said)
    shown, more = (int(n) for n in re.findall(r"(\d+)(?:;| more)", said)[-2:])
    assert shown + 1 + more == 20


@pytest.mark.parametrize(
    ("more", "is_short"),
    [
        ((), True),
        (("--full",), False),
        (("--short",), True),
        (("--working",), False),
        (("--format", "text"), True),
    ],
)
def test_a_terminal_gets_the_short_text_and_a_pipe_the_full_one(
    cli_main: Cli, monkeypatch: pytest.MonkeyPatch, more: tuple[str, ...], is_short: bool
) -> None:
    sheet = ("job", str(SHEETS[0]))
    full, brief = (cli_main(*PULL, o).out for o in ("--full", "--short"))
    assert cli_main(*PULL).out == full != brief
    assert cli_main(*sheet).out == cli_main(*sheet, "--full").out
    monkeypatch.setattr(terminal_width, "looked_at", lambda _: terminal_width.Screen(80, True))
    shown = cli_main(*PULL, *more).out
    assert (shown == brief) is is_short
    assert ("\nSources\n" in shown) is not is_short
    assert ("\nSources\n" in cli_main(*sheet, *more).out) is not is_short


def test_a_file_gets_the_full_text(
    cli_main: Cli, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(terminal_width, "looked_at", lambda _: terminal_width.Screen(40, True))
    cli_main(*PULL, "--output", str(tmp_path / "x.txt"))
    monkeypatch.undo()
    assert (tmp_path / "x.txt").read_text(encoding="utf-8") == cli_main(*PULL).out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((*PULL, "--brief"), "--brief: there is no such option; write --short"),
        ((*PULL, "--short", "--full"), "--short: is a short text, and --full asks for another"),
        ((*PULL, "--short", "--working"), "--short: is a short text, and --working asks"),
        ((*PULL, "--short", "--format", "csv"), "--short: is a short text, and --format csv asks"),
        (("tables", "awg", "--short"), "--short: is not an option of this command"),
        (("job", str(SHEETS[0]), "--check-only", "--short"), "--short: means nothing beside --ch"),
        (("job", "--history", ".", "--full"), "--full: means nothing beside --history"),
        (("job", "--new", "washer", "--short"), "--short: means nothing beside --new"),
    ],
)
def test_a_length_is_refused_where_it_means_nothing(
    cli_main: Cli, words: tuple[str, ...], says: str
) -> None:
    done = cli_main(*words)
    assert (done.status, done.out) == (2, "")
    assert says in done.err


def test_each_caution_has_its_line() -> None:
    rows = wirecalc.tables.load("cautions").rows
    assert all(len(r.text("in_a_line")) <= 72 for r in rows if r.text("severity") != "note")


def test_the_short_batch_keeps_each_row_and_shortens_what_holds_for_all(cli_main: Cli) -> None:
    words = ("batch", "pull", str(SHEETS[0].with_name("pulls.csv")), "--label", "sample")
    words += ("--keep", "learner")
    full, brief = (cli_main(*words, o).out for o in ("--full", "--short"))
    assert cli_main(*words).out == full
    rows = full.partition("\nNot checked")[0]
    assert brief.startswith(rows)
    rest = brief.removeprefix(rows).splitlines()
    assert len(rest) <= 8
    assert any("one-minute hold" in line for line in rest)
    assert DEFERRAL in rest


@pytest.mark.parametrize("row", wirecalc.tables.load("cautions").rows, ids=lambda r: r.text("key"))
def test_the_line_of_a_caution_says_what_its_text_says(row: wirecalc.tables.Row) -> None:
    line, whole = row.text("in_a_line"), f"{row.text('text')} {row.text('applies_when')}"
    for number in re.findall(r"\d+(?: V| Hz)?|CAT I+", line):
        assert number in whole
    forbids = re.compile(r"\b(?:never|no|not|without|nothing|none|approve[sd]? nothing)\b", re.I)
    if re.search(r"\b[Nn]ever\b|\b[Dd]o not\b", row.text("text").partition(". ")[0]):
        assert forbids.search(line)
    words = {w[:5] for w in re.findall(r"[a-z]{5,}", line.casefold())}
    known = {w[:5] for w in re.findall(r"[a-z]{5,}", whole.casefold())}
    assert len(words & known) >= len(words) / 2


def test_an_answer_with_much_left_out_is_cut_to_twenty_lines(cli_main: Cli) -> None:
    line = 'breaker --current "14 A" --breaker "15 A" --building-wire "14 AWG" --short'
    lines = cli_main(*shlex.split(line)).out.splitlines()
    assert len(lines) <= MOST
    assert lines[0].startswith("CANNOT TELL  ")
    assert "load on the wire, corrected" in flat("\n".join(lines))
