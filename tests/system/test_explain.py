"""`wirecalc explain`: what it says of every calculation, and the example that it works through."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import tables
from wirecalc.output.explanation import tables_named
from wirecalc.plugging import settings

Cli = Callable[..., Any]
CATALOGUE = wirecalc.build(bundled_only=True)
CALCULATIONS = {
    name: CATALOGUE.calculations[name].calculation
    for plugin in CATALOGUE.plugins
    if plugin.bundled
    for name in plugin.calculations
}
HEADINGS = (
    *("How it is worked out", "Inputs", "Take care", "Never checked", "Worked example"),
    "Given",
)
# tables that hardly any calculation can do without, and that no result comes from by itself
EVERYWHERE = {"cautions", "awg", "strandings"}


def flat(text: str) -> str:
    """Text with its line breaks and indents taken out."""
    return " ".join(text.split())


@pytest.fixture(params=CALCULATIONS)
def explained(cli_main: Cli, request: pytest.FixtureRequest) -> tuple[Any, str, dict[str, Any]]:
    """A calculation, its explanation as text, and the same as JSON."""
    name = request.param
    done = cli_main("explain", name)
    assert (done.status, done.err) == (0, "")
    return CALCULATIONS[name], done.out, cli_main("explain", name, "--format", "json").json


def test_explanation_is_whole(explained: tuple[Any, str, dict[str, Any]]) -> None:
    calc, text, as_json = explained
    lines = text.splitlines()
    assert max(map(len, lines)) <= 80
    missing = [h for h in HEADINGS if h not in lines]
    assert missing == []
    assert flat(calc.question) in flat(text)
    for paragraph in calc.doc.split("\n\n")[1:]:
        assert flat(paragraph) in flat(text)
    for what in calc.not_checked:
        assert flat(what) in flat(text)
    finding = as_json["worked_example"]
    assert finding is not None
    assert as_json["not_worked"] is None
    for cited in finding["sources"].values():
        for part in ("title", "edition", "where", "confidence"):
            assert flat(cited[part]) in flat(text)
    for warned in finding["cautions"]:
        assert flat(warned["text"]) in flat(text)
        assert warned["defers_to"] in ("", "-") or flat(warned["defers_to"]) in flat(text)
    for name in tables_named(calc.doc):
        assert f"{name}: {tables.load(name).title}" in flat(text)
    assert all(c["name"] in flat(text) for c in finding["criteria"])


def test_example_comes_to_what_the_explanation_says(
    explained: tuple[Any, str, dict[str, Any]],
    cli_main: Cli,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The command line is run as it stands, with the files that the explanation prints."""
    _, text, as_json = explained
    monkeypatch.chdir(tmp_path)
    for name, content in as_json["example_files"].items():
        (tmp_path / name).write_text(content, encoding="utf-8")
    words = shlex.split(as_json["example"])[1:]
    done = cli_main(*words, "--format", "json", "--working")
    assert done.status in (0, 1, 3), done.err
    of_run = {
        "holds": None,
        "would_pass": None,
    }  # found by running it again, which an explanation does not
    assert done.json | of_run == as_json["worked_example"]
    shown = text.partition("\nWorked example\n")[2]
    assert shlex.split(shown.partition("\n\n")[0].replace("\\\n", " "))[1:] == words
    run = cli_main(*words, "--working").out
    evidence = run.partition("\nGiven\n")[2].partition("\nNot checked\n")[0]
    assert evidence.strip() in shown
    assert shown.count((done.json["verdict"] or "no verdict").upper()) >= 1


@pytest.mark.parametrize("name", CALCULATIONS)
def test_docstring_says_what_a_reader_needs(name: str) -> None:
    doc = CALCULATIONS[name].doc
    assert doc.split("\n", 1)[0].endswith("?")
    assert re.search(r"\bInputs?\b", doc)
    assert "Yields" in doc
    assert "Source" in doc
    assert len(doc.splitlines()) <= 16
    assert re.search(r"\b(For|Meant for|Not for|not for)\b", doc), "for which machines or parts"
    inputs = doc[re.search(r"\bInputs?\b", doc).start() :]  # type: ignore[union-attr]
    units = {i.kind.unit for i in CALCULATIONS[name].inputs} - {""}
    said = re.findall(r"[A-Za-z%]+", inputs)
    spelled = {"V": "volts", "in": "inch", "hp": "horsepower", "%": "percent", "C": "temperature"}
    missing = [u for u in units if u not in said and spelled.get(u, u) not in doc]
    assert missing == []


@pytest.mark.parametrize("name", CALCULATIONS)
def test_docstring_names_the_tables_that_the_example_uses(
    name: str, cli_main: Cli, monkeypatch: pytest.MonkeyPatch
) -> None:
    used: set[str] = set()
    load = tables._load

    def noted(table: str) -> tables.Table:
        used.add(table)
        return load(table)

    monkeypatch.setattr(tables, "_load", noted)
    monkeypatch.setattr(noted, "cache_clear", load.cache_clear, raising=False)
    cli_main("explain", name, "--format", "json")
    assert used - EVERYWHERE - set(tables_named(CALCULATIONS[name].doc)) == set()


OUTSIDE = '''
from typing import Annotated
from wirecalc import FileColumns, Reading, ReadingsFile, calculation, figure, hookimpl


@calculation(part="shop")
def broken(length: Annotated[float, Reading("mm", typical="6.5 mm", text="length")]):
    """Does it break? Input: length in mm."""
    raise ValueError("out of order")
    yield


@calculation(part="shop")
def from_file(readings: Annotated[FileColumns, ReadingsFile(
    {"force": Reading("lbf", text="force")}, text="CSV of forces")]):
    """How many are there? Input: readings."""
    yield figure("how many", readings.rows)


@hookimpl
def wirecalc_calculations():
    return [broken, from_file]
'''


@pytest.mark.parametrize(
    ("name", "why"),
    [("broken", "out of order"), ("from-file", "a file of yours, a CSV file with the column")],
)
def test_example_that_does_not_run_is_said_so(
    plugged: Cli, outside: Any, name: str, why: str
) -> None:
    outside.add("demo_shop", OUTSIDE)
    done = plugged("explain", name)
    assert (done.status, done.err) == (0, "")
    assert "It was not worked here: " in done.out
    assert why in flat(done.out)
    as_json = plugged("explain", name, "--format", "json").json
    assert as_json["worked_example"] is None
    assert why in as_json["not_worked"]


RULES = """
[[rule]]
name = "a third more"
calculations = ["pull"]
criterion = "pull-out force"
times = 1.35

[[rule]]
name = "no cord"
calculations = ["extension"]
forbid = true

[[required]]
name = "before it goes back"
kinds = ["refrigerator"]
calculations = ["ground"]
"""


def test_house_rules_in_force_are_explained(
    cli_main: Cli, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """UL 486A asks for 20 lbf on 18 AWG; a third more is 27, and the example has 23.4."""
    path = tmp_path / "shop.toml"
    path.write_text(RULES, encoding="utf-8")
    monkeypatch.setenv(settings.RULES, str(path))
    for name, asks, origin in (
        ("pull", "a third more: pull-out force: its limit x 1.35", "shop.toml, line 2"),
        ("extension", "no cord: not to be used", "shop.toml, line 8"),
        ("ground", "before it goes back: must be checked in every job", "shop.toml, line 13"),
    ):
        done = cli_main("explain", name)
        assert (done.status, done.err) == (0, "")
        house = flat(done.out.partition("\nHouse rules in force\n")[2])
        assert house.startswith(f"- {asks}")
        assert f"({origin})" in house
        as_json = cli_main("explain", name, "--format", "json").json
        assert [rule["origin"] for rule in as_json["house_rules"]] == [origin]
        if name == "ground":
            continue
        line = cli_main(*shlex.split(as_json["example"])[1:], "--working", "--format", "json")
        assert (line.status, line.json) == (1, as_json["worked_example"])
    assert "House rules" not in cli_main("explain", "strip").out
    left_out = cli_main("explain", "extension", "--bundled-only").out
    assert "House rules in force" not in left_out
    assert "house rules of shop.toml: only bundled plugins were asked for" in flat(left_out)


LINE = ("duty", "--on-times", "18 min ±1 min", "--off-times", "22 min", "--after-restock", "no")


def test_working_is_of_the_centre_of_a_band(cli_main: Cli) -> None:
    shown = cli_main(*LINE, "--working").out
    assert "duty: 100 x 18 min / (18 min + 22 min) = 45 %" in flat(shown)
    assert "the arithmetic is that of the centre" in flat(shown)
    page = cli_main(*LINE, "--working", "--format", "html").out
    assert "at the centre: 100 x 18 min" in page
    exact = cli_main(*(w.replace(" ±1 min", "") for w in LINE), "--working").out
    assert "the centre" not in exact


def test_working_of_a_job_stands_in_every_form(
    cli_main: Cli, write_sheet: Callable[..., Path]
) -> None:
    inputs = {"on_times": ["18 min"], "off_times": ["22 min"], "after_restock": "no"}
    sheet = str(write_sheet({"calculation": "duty", **inputs}))
    said = "100 x 18 min / (18 min + 22 min)"
    for form in ("text", "json", "html"):
        assert said not in flat(cli_main("job", sheet, "--format", form).out)
        assert said in flat(cli_main("job", sheet, "--format", form, "--working").out)


def test_list_of_an_example_is_given_once_each(cli_main: Cli) -> None:
    example = cli_main("explain", "duty", "--format", "json").json["example"]
    assert example.count("--on-times") == 2
    assert json.dumps(example)
