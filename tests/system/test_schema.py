"""The published JSON schemas: everything emitted fits them, and what is damaged does not."""

from __future__ import annotations

import copy
import json
import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

import wirecalc
from tests.calculations.trials import CATALOGUE, FILED, TRIALS
from wirecalc.commands import schema
from wirecalc.testing import Outside

SHEETS = sorted(Path(__file__).parents[2].glob("docs/examples/*.toml"))
SCHEMAS = Path(wirecalc.__file__).parent / "output" / "schemas"


def _schema(name: str) -> Any:
    return json.loads((SCHEMAS / f"{name}.json").read_text(encoding="utf-8"))


def _wrong(name: str, value: object) -> list[str]:
    """Return where a value does not fit a schema; nothing is looked up outside of it."""
    validator = Draft202012Validator(_schema(name))
    return [f"{e.json_path}: {e.message}" for e in validator.iter_errors(value)]


@pytest.mark.parametrize("name", schema.SCHEMAS)
def test_schema_command_prints_the_schema(cli_main: Callable[..., Any], name: str) -> None:
    done = cli_main("schema", name)
    assert (done.status, done.err) == (0, "")
    assert done.json == _schema(name)
    Draft202012Validator.check_schema(done.json)


def test_job_schema_holds_the_finding_schema() -> None:
    assert _schema("job")["$defs"]["finding"] == _schema("finding")


@pytest.mark.parametrize("working", [[], ["--working"]], ids=["plain", "working"])
@pytest.mark.parametrize("name", [n for n in TRIALS if n not in FILED])
def test_example_fits(cli_main: Callable[..., Any], name: str, working: list[str]) -> None:
    example = CATALOGUE.calculations[name].calculation.example
    done = cli_main(*shlex.split(example)[1:], "--format", "json", *working)
    assert done.status in (0, 1, 3), done.err
    assert _wrong("finding", done.json) == []
    _check_sources(done.json)


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda p: p.stem)
def test_job_sheet_fits(cli_main: Callable[..., Any], sheet: Path) -> None:
    job = cli_main("job", str(sheet), "--format", "json").json
    assert _wrong("job", job) == []
    assert job["checks"]
    for check in job["checks"]:
        assert _wrong("finding", check["finding"]) == []
        _check_sources(check["finding"])


def test_there_are_example_sheets() -> None:
    assert len(SHEETS) >= 3


def _check_sources(finding: dict[str, Any]) -> None:
    """Every source that is named stands in the finding, and none stands there for nothing."""
    named = {x["source"] for x in [*finding["figures"], *finding["criteria"]]} - {None}
    assert named == set(finding["sources"])


def test_every_kind_of_finding_fits(cli_main: Callable[..., Any]) -> None:
    verdicts = set()
    for force in ("24 lbf", "19.2 lbf", "20.3 lbf ±0.5 lbf", "unknown"):
        words = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", force)
        finding = cli_main(*words, "--format", "json").json
        assert _wrong("finding", finding) == []
        verdicts.add(finding["verdict"])
    assert verdicts == {"pass", "fail", "cannot tell"}


@pytest.fixture
def finding(cli_main: Callable[..., Any]) -> dict[str, Any]:
    """A finding with an entry in every list that a bundled calculation fills."""
    force = "24 lbf ±(2%+5)"
    words = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", force)
    made: dict[str, Any] = cli_main(*words, "--format", "json", "--working").json
    made["answers"] = [{"name": "a", "text": "b", "for": ["c"], "against": []}]
    made["listings"] = [{"title": "a", "columns": ["b"], "rows": [["c"], [1.5], [None]]}]
    made["charts"] = [{"title": "a", "file": "b.svg", "text": "c"}]
    assert _wrong("finding", made) == []
    return made


LISTS = (
    *("inputs", "answers", "figures", "criteria", "listings", "charts", "cautions"),
    "not_checked",
)
OPTIONAL = {
    "notes",
    "understood",
    "also",
    "action",
    "severity",
    "when",
}  # added since; a reader can do without


@pytest.mark.parametrize("key", [*LISTS, "schema", "calculation", "plugin", "version", "sources"])
def test_a_finding_without_a_field_does_not_fit(finding: dict[str, Any], key: str) -> None:
    del finding[key]
    assert len(_wrong("finding", finding)) == 1


@pytest.mark.parametrize("key", LISTS)
def test_an_entry_without_a_field_does_not_fit(finding: dict[str, Any], key: str) -> None:
    since = {"source"} if key == "cautions" else set()
    for field in set(finding[key][0]) - OPTIONAL - since:
        damaged = copy.deepcopy(finding)
        del damaged[key][0][field]
        assert _wrong("finding", damaged), field


MUTATIONS: list[tuple[str, Callable[[dict[str, Any]], object]]] = [
    ("another version", lambda f: f.update(schema="wirecalc.finding/2")),
    ("an unknown verdict", lambda f: f.update(verdict="safe")),
    ("a criterion without a verdict", lambda f: f["criteria"][0].update(verdict=None)),
    ("an unknown sense", lambda f: f["criteria"][0].update(sense="about")),
    ("an unknown origin", lambda f: f["criteria"][0].update(origin="seller")),
    ("a limit as text", lambda f: f["criteria"][0].update(limit="20 lbf")),
    ("a margin as text", lambda f: f["criteria"][0].update(margin="4")),
    ("a reason that is null", lambda f: f["criteria"][0].update(reason=None)),
    ("an input from nowhere", lambda f: f["inputs"][0].update({"from": "guessed"})),
    ("an input's bound as text", lambda f: f["inputs"][0].update(low="nan")),
    ("a value that is a list", lambda f: f["inputs"][0].update(value=[1])),
    ("a figure without a number", lambda f: f["figures"][0].update(value=None)),
    ("a unit that is null", lambda f: f["figures"][0].update(unit=None)),
    ("evidence as one text", lambda f: f["answers"][0].update({"for": "c"})),
    ("a row that is no list", lambda f: f["listings"][0].update(rows=["c"])),
    ("a caution without words", lambda f: f["cautions"][0].update(text="")),
    ("a source without a title", lambda f: next(iter(f["sources"].values())).pop("title")),
    ("an unknown confidence", lambda f: next(iter(f["sources"].values())).update(confidence="ok")),
    ("copies as text", lambda f: next(iter(f["sources"].values())).update(copies="3")),
    ("inputs as an object", lambda f: f.update(inputs={})),
    ("a row that is no number", lambda f: f.update(row="7")),
]


@pytest.mark.parametrize("damage", [m[1] for m in MUTATIONS], ids=[m[0] for m in MUTATIONS])
def test_damaged_finding_does_not_fit(
    finding: dict[str, Any], damage: Callable[[dict[str, Any]], object]
) -> None:
    damage(finding)
    assert _wrong("finding", finding)


def test_added_fields_fit(finding: dict[str, Any]) -> None:
    finding["row"] = 3
    for place in (finding, finding["criteria"][0], finding["inputs"][0]):
        place["added_later"] = {"anything": True}
    assert _wrong("finding", finding) == []


BROKEN = {  # distribution -> its module: one of each state
    "demo-good": "from wirecalc import HouseRule, hookimpl\n\n@hookimpl\n"
    "def wirecalc_house_rules():\n"
    "    return [HouseRule('tight', ('pull',), lambda inputs, items: [])]\n",
    "demo-part": "def wirecalc_house_rules():\n    return []\n",
    "demo-failed": "raise RuntimeError('broken')\n",
    "demo-left": "",
}


def test_the_plugins_in_every_state_fit(
    cli_main: Callable[..., Any], wirecalc_outside: Outside
) -> None:
    for name, source in BROKEN.items():
        wirecalc_outside.add(name.replace("-", "_"), source)
    allowed = ",".join(name for name in BROKEN if name != "demo-left")
    listed = cli_main("plugins", "--format", "json", "--only-plugins", allowed).json
    assert _wrong("plugins", listed) == []
    states = {p["distribution"]: p["state"] for p in listed["plugins"]}
    assert states.pop("wirecalc") == "loaded"
    assert states == {
        "demo-good": "loaded",
        "demo-part": "in part",
        "demo-failed": "failed",
        "demo-left": "left out",
    }
    assert _wrong("plugins", cli_main("plugins", "--format", "json", "--bundled-only").json) == []


PLUGIN_MUTATIONS: list[tuple[str, Callable[[dict[str, Any]], object]]] = [
    ("another version", lambda o: o.update(schema="wirecalc.plugins/2")),
    ("no plugins", lambda o: o.pop("plugins")),
    ("an unknown state", lambda o: o["plugins"][0].update(state="fine")),
    ("a failure without a reason", lambda o: o["plugins"][0].update(state="failed")),
    ("a time in words", lambda o: o["plugins"][0].update(load_time="fast")),
    ("a rule without a name", lambda o: o["plugins"][0].update(house_rules=[""])),
    ("slow in words", lambda o: o["plugins"][0].update(slow="no")),
    ("no distribution", lambda o: o["plugins"][0].pop("distribution")),
]


@pytest.mark.parametrize(
    "damage", [m[1] for m in PLUGIN_MUTATIONS], ids=[m[0] for m in PLUGIN_MUTATIONS]
)
def test_damaged_plugins_do_not_fit(
    cli_main: Callable[..., Any], damage: Callable[[dict[str, Any]], object]
) -> None:
    listed = cli_main("plugins", "--format", "json", "--bundled-only").json
    assert _wrong("plugins", listed) == []
    damage(listed)
    assert _wrong("plugins", listed)


JOB_MUTATIONS: list[tuple[str, Callable[[dict[str, Any]], object]]] = [
    ("no verdict", lambda j: j.pop("verdict")),
    ("a verdict of null", lambda j: j.update(verdict=None)),
    ("an unknown stage", lambda j: j["checks"][0].update(stage="before")),
    ("a check without a finding", lambda j: j["checks"][0].pop("finding")),
    ("a damaged finding inside", lambda j: j["checks"][0]["finding"].update(verdict="safe")),
    ("a damaged criterion inside", lambda j: j["checks"][0]["finding"]["criteria"][0].clear()),
    ("required as text", lambda j: j["not_tested"][0].update(required="no")),
    ("no reason", lambda j: j["not_tested"][0].pop("reason")),
    ("checks as an object", lambda j: j.update(checks={})),
]


@pytest.mark.parametrize("damage", [m[1] for m in JOB_MUTATIONS], ids=[m[0] for m in JOB_MUTATIONS])
def test_damaged_job_does_not_fit(
    cli_main: Callable[..., Any], damage: Callable[[dict[str, Any]], object]
) -> None:
    job = cli_main("job", str(SHEETS[0]), "--format", "json").json
    damage(job)
    assert _wrong("job", job)
