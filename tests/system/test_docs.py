"""README and docs: every transcript is what the command prints, every example runs."""

from __future__ import annotations

import re
import shlex
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.checks import STEPS
from wirecalc.plugging import host
from wirecalc.testing import run_command

from .followed import FOLLOWED
from .written import PAGES, ROOT, as_far_as
from .written import printed as printed_by


def blocks(page: Path, language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```", page.read_text(), re.DOTALL | re.MULTILINE)


def transcripts() -> list[tuple[str, str, str]]:
    found = []
    for page in PAGES:
        if page.name == "plugin.md" or page in FOLLOWED:  # run from end to end: test_tutorial*.py
            continue
        for block in blocks(page, "console"):
            for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
                command, _, printed = part.partition("\n")
                found.append((page.name, command, printed))
    return found


@pytest.mark.parametrize(("page", "command", "printed"), transcripts())
def test_transcript_is_what_the_command_prints(
    page: str, command: str, printed: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    if page == "README.md":  # by a process of its own, as a reader runs it; the others in this one
        assert printed_by(command) == printed.strip(), page
        return
    monkeypatch.chdir(ROOT)
    line, refused, _ = command.partition(" 2>&1")
    first, *words = shlex.split(line)
    assert first == "wirecalc", command
    done = run_command(*words)
    now = (done.err if refused else done.out).strip()
    assert as_far_as(printed.strip(), now) == printed.strip(), page


def test_readme_opens_with_the_job_and_one_real_output() -> None:
    text = (ROOT / "README.md").read_text()
    assert text.index("refrigerator") < text.index("```console") < text.index("## Set up")
    assert len(blocks(ROOT / "README.md", "console")[0].splitlines()) > 10


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_links_between_pages_lead_somewhere(page: Path) -> None:
    for target in re.findall(r"\]\(([^)#]+)\)", page.read_text()):
        assert (page.parent / target).exists(), target


def test_readme_python_example_runs(capsys: pytest.CaptureFixture[str]) -> None:
    exec(blocks(ROOT / "README.md", "python")[0], {})
    assert capsys.readouterr().out.startswith("pass ")


SHELF = re.findall(
    r"^\| [^|]+ \| \[[^]]+\]\(([^)]+)\)[^|]* \| `([^`]+)` \|$",
    (ROOT / "docs" / "plugin-reference.md").read_text(),
    re.MULTILINE,
)


@pytest.mark.parametrize(("path", "look_for"), SHELF)
def test_example_to_copy_is_there(path: str, look_for: str) -> None:
    assert len(SHELF) >= 10
    assert look_for in (ROOT / "docs" / path).read_text()


def test_rules_page_is_a_working_file(tmp_path: Path, cli_main: Callable[..., Any]) -> None:
    path = tmp_path / "shop.toml"
    path.write_text(blocks(ROOT / "docs" / "rules.md", "toml")[0])
    checked = cli_main("rules", str(path))
    assert (checked.status, checked.err) == (0, "")
    shop = host.build(rules=[path])
    pull = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
    assert shop.run("pull", pull).verdict == "fail"
    assert (
        shop.run("pull", pull | {"terminal": "push-on", "pull_standard": "ul-486a"}).verdict
        == "pass"
    )
    assert shop.run("pull", pull | {"terminal": "lug", "force": "60 lbf"}).verdict == "fail"
    strands = {"wire": "16 AWG", "strands": "26", "nicked_strands": "0", "cut_strands": "1"}
    decided = shop.run("strands", strands | {"strand_standard": "ipc-a-620-class-2"}).decided_by
    assert decided is not None
    assert decided.criterion.name == "no cut strands"
    marked = {"marked_capacitance": "30 uF", "tolerance": "10 %", "capacitor_voltage": "214 V"}
    load = marked | {"capacitor_current": "2.25 A", "frequency": "60 Hz"}
    meter = {"marked_capacitance": "30 uF", "tolerance": "10 %", "measured_capacitance": "27.9 uF"}
    for way in (load, meter):
        decided = shop.run("capacitor", way).decided_by  # 27.9 uF is -7 %
        assert decided is not None
        assert (decided.verdict, decided.criterion.name) == ("fail", "capacitor down to -5 %")
    assert len(shop.required) == 1


def test_tables_page_holds_a_stricter_table(tmp_path: Path) -> None:
    page = ROOT / "docs" / "tables.md"
    named, sidecar = blocks(page, "toml")[1:3]
    (tmp_path / "shop.toml").write_text(named)
    folder = tmp_path / "our-tables"
    folder.mkdir()
    (folder / "our-pull.toml").write_text(sidecar)
    (folder / "our-pull.csv").write_text(blocks(page, "csv")[0])
    shop = host.build(rules=[tmp_path / "shop.toml"])
    finding = shop.run("pull", {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"})
    host.build(bundled_only=True)  # whose folders of tables are its own
    limits = [(c.provider, c.criterion.limit, str(c.verdict)) for c in finding.criteria]
    assert limits == [("bundled", 20.0, "pass"), ("our-pull", 25.0, "fail")]


def test_job_sheet_page_is_a_working_sheet() -> None:
    sheet = tomllib.loads(blocks(ROOT / "docs" / "job-sheet.md", "toml")[0])
    job = jobsheet.evaluate(sheet, host.build(bundled_only=True))
    assert {c.name: str(c.verdict) for c in job.checks} == {"start": "cannot tell", "pull": "pass"}
    assert job.verdict == "cannot tell"
    several = tomllib.loads(blocks(ROOT / "docs" / "job-sheet.md", "toml")[1])
    job = jobsheet.evaluate(several, host.build(bundled_only=True))
    assert [(m.name, str(job.verdict_of(m.name))) for m in job.machines] == [
        ("range", "cannot tell"), ("dishwasher", "cannot tell"),
    ]  # fmt: skip
    assert {c.why for c in job.decided_by} == {"not tested, and required", "not confirmed"}
    assert {c.verdict for c in job.checks} == {"pass"}


def test_job_sheet_page_names_every_step() -> None:
    page = " ".join((ROOT / "docs" / "job-sheet.md").read_text().split())
    assert f"*{', '.join(STEPS)}*" in page


def test_batch_page_shows_the_example_file() -> None:
    (shown,) = blocks(ROOT / "docs" / "batch.md", "csv")
    assert shown == (ROOT / "docs/examples/pulls.csv").read_text()


@pytest.mark.parametrize(
    "path", sorted((ROOT / "docs/examples").glob("*.toml")), ids=lambda p: p.stem
)
def test_example_sheet_exits_as_it_says(path: Path) -> None:
    said = re.search(r"xpected exit of\W+`wirecalc job` on this sheet: (\d)", path.read_text())
    assert said is not None
    expected = int(said[1])
    assert run_command("job", str(path)).status == expected
    assert "invented" in path.read_text()


def test_glossary_names_every_input_with_its_unit() -> None:
    page = (ROOT / "docs" / "inputs.md").read_text()
    listed = dict(re.findall(r"^\| `(\w+)` \|([^|]*)\|", page, re.MULTILINE))
    declared = {
        i.name: i.kind.unit
        for p in host.build(bundled_only=True).calculations.values()
        for i in p.calculation.inputs
    }
    assert {name: unit.strip() for name, unit in listed.items()} == declared


def test_readme_lists_every_bundled_calculation_with_its_question() -> None:
    text = (ROOT / "README.md").read_text()
    for name, provided in host.build(bundled_only=True).calculations.items():
        assert f"| `{name}` |" in text
        assert provided.calculation.question.endswith("?")


def test_public_names_exist() -> None:
    assert all(hasattr(wirecalc, name) for name in wirecalc.__all__)
