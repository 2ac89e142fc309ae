"""`--format html`: one file to hand over, read on a phone, printed, and never run."""

from __future__ import annotations

import dataclasses
import itertools
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import Element

import pytest

import wirecalc
from wirecalc.engine import made_when_shown as later
from wirecalc.jobs.checks import by_step
from wirecalc.output.html import finding_page, job_page
from wirecalc.said import charts

from .conftest import COMMAND
from .pages import EXAMPLES, SHEETS, evaluated, evil_job, of_class, parsed, text

Cli = Callable[..., Any]
EVIL = "</td></style></title><script>alert('1')</script>\"'&amp;<img src=x onerror=alert(2)>"
BATCH = {"wire": "18 AWG", "terminal": "ring", "pull_standard": ["ul-486a"]}
FORCES = [f"{force} lbf" for force in (24, 25, 23.5, 24.4, 26)]
sheets = pytest.mark.parametrize("sheet", SHEETS, ids=lambda p: p.stem)


@pytest.fixture(scope="module")
def pages() -> dict[str, str]:
    return {sheet.stem: job_page(evaluated(sheet)) for sheet in SHEETS}


def tags(root: Element) -> Counter[str]:
    """Count the elements, save marks of an axis: as many as its labels leave room for."""
    return Counter(tag for e in root.iter() if not (tag := str(e.tag)).endswith(("}use", "}g")))


def test_every_text_of_a_job_is_escaped() -> None:
    plain = parsed(job_page(evil_job("plain"), working=True))
    evil = parsed(job_page(evil_job(EVIL), working=True))
    for root in (plain, evil):
        for style in list(root.iter("style")):
            style.text = ""
    drawn = "{http://www.w3.org/2000/svg}text"  # a long title is wrapped to more lines
    assert {**tags(evil), drawn: 0} == {**tags(plain), drawn: 0}
    assert not list(evil.iter("script")) + list(evil.iter("img"))
    said = re.sub(r"\s+", " ", "".join(evil.itertext()))
    wanted = "".join(plain.itertext()).casefold().count("plain")
    assert wanted > 40
    assert said.casefold().count(EVIL.casefold()) == wanted
    for element in evil.iter():
        assert not [name for name in element.attrib if name.startswith("on")]


def test_texts_of_a_finding_are_escaped_and_control_characters_do_not_pass() -> None:
    finding = evil_job(f"{EVIL}\x00\x1b\u202e", chart=False).checks[0].finding
    assert finding is not None
    root = parsed(finding_page(finding, EVIL, working=True))
    assert not list(root.iter("script"))
    assert f"{EVIL}\ufffd\ufffd\ufffd" in "".join(root.itertext())


def test_a_sheet_cannot_bring_markup_in(cli_main: Cli, tmp_path: Path) -> None:
    sheet = tmp_path / "sheet.toml"
    evil = "'''" + EVIL.replace("'1'", "1").replace("\"'", '"') + "'''"
    sheet.write_text(
        f"[job]\ntitle = {evil}\nkind = 'bench'\nwork = {evil}\n"
        f"[[check]]\ncalculation = 'pull'\nname = {evil}\n"
        f"note = {evil}\nwire = '18 AWG'\nterminal = 'ring'\nforce = '24 lbf'\n"
        f"[[not_tested]]\nname = {evil}\nreason = {evil}\n",
        encoding="utf-8",
    )
    done = cli_main("job", str(sheet), "--format", "html")
    assert (done.status, done.err) == (0, "")
    root = parsed(done.out)
    assert not list(root.iter("script")) + list(root.iter("img"))
    assert "<script>alert(1)" in text(next(root.iter("h1")))


@sheets
def test_page_is_one_file_that_runs_and_fetches_nothing(sheet: Path, pages: Any) -> None:
    root = parsed(pages[sheet.stem])
    assert not list(root.iter("script")) + list(root.iter("link")) + list(root.iter("iframe"))
    assert not re.search(r"https?:|//\w|@import|url\((?!#)", pages[sheet.stem])
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    for element in root.iter():
        target = element.get("href") or element.get("src")
        assert target is None or (target[0] == "#" and target[1:] in ids)
        for name in ("aria-labelledby", "aria-describedby"):
            assert element.get(name) is None or element.get(name) in ids


@sheets
def test_page_has_an_order_that_can_be_followed(sheet: Path, pages: Any) -> None:
    root = parsed(pages[sheet.stem])
    assert root.get("lang") == "en"
    levels = [int(e.tag[1]) for e in root.iter() if re.fullmatch("h[1-6]", e.tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in itertools.pairwise(levels))
    heads = list(root.iter("th"))
    assert heads
    assert all(e.get("scope") in ("col", "row", "rowgroup") for e in heads)
    assert all(e.find("caption") is not None for e in root.iter("table") if "overview" not in
               e.get("class", ""))  # fmt: skip
    said = [text(e) for e in root.iter("h2")]
    evidence = "Evidence" if sheet.stem == "pull-class" else "Evidence, for the technician"
    assert said.index("What was checked") < said.index(evidence)
    assert said[-1] == "Limits of this answer"
    assert "It does not approve the appliance" in text(list(root.iter("section"))[-1])


@sheets
def test_page_says_all_that_the_job_says_and_each_thing_once(sheet: Path, pages: Any) -> None:
    job, root = evaluated(sheet), parsed(pages[sheet.stem])
    findings = [c.finding for _, found in by_step(job.checks) for c in found if c.finding]
    shown = [e for t in of_class(root, "table", "criteria") for e in t.iter("tr")][0:]
    rows = [[text(c) for c in e] for e in shown if e.find("td") is not None]
    assert [(r[0].removeprefix("house rule, "), r[1], r[2]) for r in rows] == [
        (c.criterion.name, c.verdict.upper(), " ".join(c.reason.split()))
        for f in findings
        for c in f.criteria
    ]
    given = [e for t in of_class(root, "table", "given") for e in t.iter("tr")]
    assert len(given) == sum(len(f.inputs) + 1 for f in findings)
    listed = [text(e) for e in root.iter("li") if (e.get("id") or "").startswith("source-")]
    assert sorted(listed) == sorted({" ".join(s.cite().split()) for f in findings
                                     for s in f.sources.values()})  # fmt: skip
    whole = text(root)
    for caution in {c.key: c for f in findings for c in f.cautions}.values():
        first = any(caution.text in remark for remark in job.remarks)  # what stands before all
        assert whole.count(caution.text) == 1 + first
    for missing in job.not_tested:
        assert f"{missing.name}{' (required)' if missing.required else ''}: {missing.reason}" in (
            whole
        )
    overview = [
        [text(c) for c in r]
        for r in of_class(root, "table", "overview")[0].iter("tr")
        if len(r) > 1
    ][1:]
    for row in overview:
        row[0] = row[0].removesuffix(", as found").removesuffix(", option, not counted")
    words = {c.name + "/" + (c.verdict.upper() if c.verdict else "NO VERDICT") for c in job.checks}
    assert {f"{r[0]}/{r[1]}" for r in overview} == words


@pytest.mark.parametrize(
    ("sheet", "verdict", "number", "next_action"),
    [
        ("refrigerator", "PASS", "116.1 V, at least 113 V", "nothing that these checks ask for"),
        ("washer", "PASS", "at most 26.84 uF, below 28.5 uF", "nothing that these checks ask for"),
        ("dishwasher", "FAIL", "at least 8.476 A, above 7.5 A", "give it a circuit of its own"),
        ("oven", "PASS", "229.4 V, at least 216 V", "nothing that these checks ask for"),
        ("shed-freezer", "FAIL", "the maker's sheet allows none", "take the extension cord away"),
        ("pull-class", "FAIL", "at most 19.39 lbf, below", "set up the tool again"),
    ],
)
def test_summary_has_verdict_number_and_next_action(
    sheet: str, verdict: str, number: str, next_action: str, pages: Any
) -> None:
    root = parsed(pages[sheet])
    box = of_class(root, "div", "box")[0]
    assert text(of_class(box, "strong", "verdict")[0]) == verdict
    assert number in text(box)
    assert next_action in text(box)
    heading = "checked: within the limits" if verdict == "PASS" else verdict
    assert text(next(root.iter("title"))).startswith(heading)
    assert ("not checked: " in text(box)) is (verdict == "PASS")  # a pass is no bare word
    before = list(next(root.iter("main")))[: list(next(root.iter("main"))).index(box)]
    assert [e.tag for e in before] == ["h1"]  # nothing but the title stands above it


def test_all_four_verdicts_are_words_with_borders_of_their_own(pages: Any) -> None:
    root = [e for page in pages.values() for e in of_class(parsed(page), "strong", "verdict")]
    words = {text(e): e.get("class") for e in root}
    assert set(words) == {"PASS", "MARGINAL", "CANNOT TELL", "FAIL", "NO VERDICT"}
    assert len(set(words.values())) == len(words)


def test_a_page_is_black_white_and_grey(pages: Any) -> None:
    page = pages["pull-class"]
    assert "<svg" in page
    for colour in re.findall(r"#([0-9a-f]{3}|[0-9a-f]{6})\b[;\" }]", page):
        parts = re.findall(".." if len(colour) == 6 else ".", colour)
        assert len(set(parts)) == 1, colour


@sheets
def test_what_was_not_checked_stands_once_and_later_checks_point_to_it(
    sheet: Path, pages: Any
) -> None:
    job, root = evaluated(sheet), parsed(pages[sheet.stem])
    by_head = {next(e.iter("h3")).get("id"): e for e in of_class(root, "section", "check")}
    assert len(by_head) == len(job.checks)
    options = {e.get("id") for s in of_class(root, "section", "option") for e in s.iter("h3")}
    for section in by_head.values():
        for link in (a for gaps in of_class(section, "dl", "gaps") for a in gaps.iter("a")):
            pointed = str(link.get("href")).removeprefix("#")
            assert pointed in by_head
            assert pointed not in options  # an option is not on paper
            assert "the same as" not in text(of_class(by_head[pointed], "dl", "gaps")[0])
    said = [n.what for c in job.checks if c.finding for n in c.finding.not_checked
            if not n.why.startswith("not given")]  # fmt: skip
    whole = text(root)
    assert all(" ".join(what.split()) in whole for what in said)


def test_the_number_on_top_is_what_a_meter_read(pages: Any) -> None:
    box = text(of_class(parsed(pages["washer"]), "div", "box")[0])
    assert "what the capacitor still holds: 29.8 uF, at least 28.5 uF" in box
    assert "500 V" not in box  # the tester's range stands at its limit because it was set there
    assert "A reading is shown with its meter's error against it" in box


def test_a_number_on_top_has_its_source(pages: Any) -> None:
    root = parsed(pages["dishwasher"])
    (mark,) = of_class(of_class(root, "div", "box")[0], "a", "mark")
    ids = {e.get("id"): text(e) for e in root.iter("li")}
    assert "210.23(A)(2)" in ids[str(mark.get("href")).removeprefix("#")]


@pytest.mark.parametrize(
    ("line", "status"),
    [("24 lbf", 0), ("19.2 lbf", 1), ("20.3 lbf ±0.5 lbf", 3), ("24 V", 2)],
)
def test_a_finding_exits_as_its_text_does(
    cli_main: Cli, tmp_path: Path, line: str, status: int
) -> None:
    words = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", line)
    assert cli_main(*words).status == status
    done = cli_main(*words, "--format", "html")
    assert done.status == status
    to = tmp_path / "finding.html"
    assert cli_main(*words, "--format", "html", "--output", str(to)).status == status
    if status == 2:
        assert (done.out, to.exists()) == ("", False)
        return
    assert to.read_text(encoding="utf-8") == done.out
    assert text(next(parsed(done.out).iter("h1"))).endswith("?")


def test_working_stands_in_a_page_only_when_asked_for(cli_main: Cli) -> None:
    words = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
    finding = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    working = next(f.figure.working() for f in finding.figures if f.figure.working)
    plain = parsed(cli_main(*words, "--format", "html").out)
    shown = parsed(cli_main(*words, "--format", "html", "--working").out)
    assert (working in text(plain), working in text(shown)) == (False, True)


def test_figures_alone_are_no_verdict(cli_main: Cli) -> None:
    done = cli_main("wire-break", "--wire", "18 AWG", "--format", "html")
    assert done.status == 0
    assert text(of_class(parsed(done.out), "strong", "verdict")[0]) == "NO VERDICT"


@pytest.mark.parametrize("name", ["plugins", "tables", "explain pull", "schema finding"])
def test_what_is_no_finding_has_no_page(cli_main: Cli, name: str) -> None:
    done = cli_main(*name.split(), "--format", "html")
    assert (done.status, done.out) == (2, "")
    assert "html" in done.err


def test_a_chart_stands_in_the_page_with_its_words(pages: Any) -> None:
    root = parsed(pages["pull-class"])
    figures = list(root.iter("figure"))
    assert len(figures) == 3
    for figure in figures:
        words = figure.find("figcaption")
        assert words is not None
        svg = next(e for e in figure.iter() if str(e.tag).endswith("svg"))
        assert svg.get("role") == "img"
        assert svg.get("aria-describedby") == words.get("id")
        assert "Worst specimen" in text(words)


def test_a_chart_that_its_plugin_cannot_build_costs_no_page() -> None:
    def broken() -> charts.Chart:
        raise ZeroDivisionError("nothing was read")

    finding = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    finding = dataclasses.replace(finding, charts=(later.drawn("frost of plugin shop", broken),))
    root = parsed(finding_page(finding, "Does it hold?"))
    assert text(of_class(root, "strong", "verdict")[0]) == "PASS"
    (said,) = [text(e) for e in root.iter("p") if text(e).startswith("No picture")]
    assert "the chart of frost of plugin shop failed" in said
    assert "nothing was read" in said


def test_without_matplotlib_the_words_stand_in_place_of_the_chart(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    finding = wirecalc.run("pull-batch", force=FORCES, **BATCH)
    monkeypatch.setitem(sys.modules, "matplotlib", None)
    page = finding_page(finding, "?")
    assert "<svg" not in page
    assert "Worst specimen: 23.5 lbf" in text(parsed(page))
    assert "pip install 'wirecalc[analysis]'" in page


@pytest.mark.filterwarnings("ignore:Glyph")
@pytest.mark.parametrize("name", ["\x00", r"$\frac{$"])
def test_a_name_that_cannot_be_drawn_costs_no_report(name: str) -> None:
    root = parsed(job_page(evil_job(name)))
    assert text(next(root.iter("figure"))).endswith("No picture: a text in it cannot be drawn")
    assert text(list(root.iter("h2"))[-1]) == "Limits of this answer"


def test_the_installed_command_writes_the_page(tmp_path: Path) -> None:
    to = tmp_path / "report.html"
    words = ["job", str(EXAMPLES / "refrigerator.toml"), "--format", "html", "--output", str(to)]
    done = subprocess.run([COMMAND, *words], capture_output=True, check=False, cwd=tmp_path)
    assert (done.returncode, done.stdout, done.stderr) == (0, b"", b"")
    assert to.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    assert [p.name for p in tmp_path.iterdir()] == ["report.html"]


MACHINES = """[job]
title = "two"
kind = "freezer"
hand_over = "keep it closed"
[[machine]]
name = "fridge"
serial = "7"
[[machine]]
name = "chest"
[[check]]
calculation = "pull"
machine = "fridge"
step = "prove the joint"
wire = "18 AWG"
terminal = "ring"
force = "24 lbf"
tool = "crimper 4"
part = "F-18"
[[check]]
calculation = "pull"
machine = "chest"
step = "dead tests"
stage = "as found"
wire = "18 AWG"
terminal = "ring"
force = "18 lbf"
[[check]]
calculation = "pull"
name = "spare lead"
machine = "chest"
step = "dead tests"
stage = "as found"
wire = "18 AWG"
terminal = "ring"
force = "17 lbf"
removed = "cut off <b>"
[[check]]
calculation = "pull"
machine = "chest"
step = "prove the joint"
wire = "18 AWG"
terminal = "ring"
force = "19 lbf"
"""


def test_machines_steps_and_before_and_after_stand_in_a_page(cli_main: Cli, tmp_path: Path) -> None:
    sheet = tmp_path / "two.toml"
    sheet.write_text(MACHINES, encoding="utf-8")
    root = parsed(cli_main("job", str(sheet), "--format", "html").out)
    machines = [[text(c) for c in r] for r in of_class(root, "table", "machines")[0].iter("tr")]
    assert [r[:2] for r in machines[1:]] == [["fridge", "CANNOT TELL"], ["chest", "FAIL"]]
    assert "19 lbf is below 20 lbf" in machines[2][2]
    assert machines[1][3] == "serial 7"
    pair = [[text(c) for c in r] for r in of_class(root, "table", "pairs")[0].iter("tr")][1]
    assert pair[0] == "chest: pull"
    assert ("18 lbf" in pair[1], "19 lbf" in pair[2]) == (True, True)
    overview = of_class(root, "table", "steps")[0]
    heads = [text(e) for e in overview.iter("th") if e.get("scope") == "rowgroup"]
    assert heads == ["Dead tests", "Prove the joint"]
    evidence = [text(e) for e in root.iter("h3")]
    assert evidence[0] == "Dead tests: chest: pull, as found FAIL"
    made = [text(e) for e in of_class(root, "dl", "made")]
    assert "cut off <b>" in made[0]
    assert "crimper 4" in made[1]
    assert "chest: spare lead, as found, removed since" in [text(e) for e in overview.iter("th")]
    assert "keep it closed" in text(root)
