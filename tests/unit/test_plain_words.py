"""What a criterion is about in a customer's words: declared with it, or in the table."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import wirecalc
from tests.plain_words import without_plain_words
from wirecalc import PRACTICE, at_least, cannot_tell
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.checks import NotTested
from wirecalc.output.html import finding_page
from wirecalc.output.passed import WITHIN, checked
from wirecalc.plugging import host
from wirecalc.published.tables import load
from wirecalc.said.criteria import Criterion
from wirecalc.said.findings import Judged
from wirecalc.said.plain_words import plain_words, told
from wirecalc.testing import Outside

PUT_TOGETHER = (  # names that the code puts together
    r"heat beyond the wiring at|insulation by |leakage by |lowest pull|margin in s|number of pulls|"
    r"scatter|pair \d-\d|settles within|shortest time|sum on the |temperature rating of|time o"
)
EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"


def _named(name: str, plain: str = "") -> Criterion:
    return at_least(name, 3.0, 2.0, "lbf", source=PRACTICE, plain=plain)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("pull-out force", "how hard the crimp holds"),
        ("strip length, lower limit", "the length of bare wire"),
        ("time on, the middle one", "the usual run"),  # its own row goes first
        ("Ana: lowest pull, ul-486a", "the weakest crimp (Ana)"),
        ("frost on the coil", ""),
    ],
)
def test_words_of_a_name(name: str, words: str) -> None:
    assert plain_words(_named(name)) == words


def test_words_that_are_declared_go_first() -> None:
    assert plain_words(_named("pull-out force", "how it holds")) == "how it holds"
    assert (
        plain_words(cannot_tell("frost", "not read", plain="ice on the coil")) == "ice on the coil"
    )


def test_what_is_told_has_words_and_reason() -> None:
    def judged(criterion: Criterion) -> str:
        return told(Judged(criterion, "demo", criterion.verdict, criterion.reason))

    assert judged(_named("pull-out force")) == "how hard the crimp holds: 3 lbf, at least 2 lbf"
    assert judged(_named("frost on the coil")) == "frost on the coil: 3 lbf, at least 2 lbf"


def test_an_input_that_was_not_given_is_told_by_what_it_is() -> None:
    finding = wirecalc.run("breaker", current="8.7 A", breaker="15 A")
    assert not without_plain_words(finding)
    (gap,) = (j for j in finding.criteria if j.criterion.name == "only_receptacle")
    assert told(gap).startswith("it is the only outlet of its circuit: was not given: what else")


def test_a_table_of_a_plugin_has_words_too(wirecalc_outside: Outside, tmp_path: Path) -> None:
    own = tmp_path / "plain-words-frost.csv"
    own.write_text(
        "criterion,words,source,confidence,copies,note\n"
        "frost on the coil,ice on the coil,own,common practice,,\n",
        encoding="utf-8",
    )
    bundled = Path(str(host.__file__)).parents[2] / "tables" / "plain-words.toml"
    own.with_suffix(".toml").write_text(bundled.read_text(encoding="utf-8"), encoding="utf-8")
    source = (
        "from pathlib import Path\nfrom wirecalc import hookimpl\n\n@hookimpl\n"
        f"def wirecalc_tables():\n    return [Path({str(tmp_path)!r})]\n"
    )
    wirecalc_outside.add("demo_frost", source)
    with host.build().in_use():
        assert plain_words(_named("frost on the coil")) == "ice on the coil"
    with host.build(bundled_only=True).in_use():
        assert plain_words(_named("frost on the coil")) == ""


@pytest.mark.parametrize("sheet", sorted(EXAMPLES.glob("*.toml")), ids=lambda s: s.stem)
def test_every_criterion_of_the_example_sheets_has_plain_words(sheet: Path) -> None:
    job = jobsheet.evaluate(jobsheet.read(sheet), host.build(bundled_only=True))
    assert not [n for c in job.checks if c.finding for n in without_plain_words(c.finding)]


def test_every_word_of_the_table_is_of_a_criterion_and_reads_as_a_customers() -> None:
    code = "".join(
        path.read_text(encoding="utf-8")
        for path in (Path(wirecalc.__file__).parents[1] / "plugins").rglob("*.py")
    )
    for row in load("plain-words").rows:
        name, words = row.text("criterion"), row.text("words")
        assert not re.search(r"approv|certif|complian|guarante|\bsafe\b", words), words
        assert not re.search(r"[_()=]|\b(LRA|RLA|GFCI|RCD|OL)\b", words), words
        assert f'"{name}' in code or re.match(PUT_TOGETHER, name), name


def test_a_pass_says_what_it_is_of_and_what_was_not_checked() -> None:
    finding = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    said = checked([finding])
    assert said.startswith("checked: within the limits; not checked: the one-minute hold")
    assert "crimp height" in said and "pull_standard" not in said
    assert checked([finding, finding]) == said  # each once
    untested = [NotTested(f"check {n}", False, "no tester") for n in range(4)]
    headed = checked([], untested, " at the end")
    assert headed == f"{WITHIN} at the end; not checked: check 0; check 1; check 2; 1 more, below"
    assert checked([]) == WITHIN
    page = finding_page(finding, "Does it hold?")
    box = page.partition('class="box"')[2].partition("</div>")[0]
    assert "how hard the crimp holds: 24 lbf" in page and "pull-out force" not in box
    assert "<title>Does it hold? checked: within the limits</title>" in page
