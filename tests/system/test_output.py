"""What the commands print: lines as wide as the terminal, tables that parse back, declarations as
JSON schemas.
"""

from __future__ import annotations

import csv
import io
import re
import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

import wirecalc
from wirecalc import commands, tables

Cli = Callable[..., Any]
CALCULATIONS = {
    name: provided.calculation
    for name, provided in wirecalc.build(bundled_only=True).calculations.items()
}
SHEETS = sorted(Path(__file__).parents[2].glob("docs/examples/*.toml"))
BATCH = f"batch pull '{SHEETS[0].with_name('pulls.csv')}' --label sample --keep learner"
FOLDER = Path(__file__).parents[2] / "tables"
TABLES = sorted(path.stem for path in FOLDER.glob("*.csv"))
PULL = "pull --wire '18 AWG stranded tinned copper' --terminal ring --force "
LONG_LINES = [
    PULL + "'19.2 lbf'",
    PULL + "'20.3 lbf ±0.5 lbf'",
    PULL + "unknown",
    PULL + "'24 lbf' --pull-standard iec-60352-2",
    "splice --wire '14 AWG solid copper' --wire '16 AWG stranded copper' --barrel '16-14 AWG' "
    "--listed-for combination --connector closed-end --current '8.7 A ±(2%+5)' "
    "--circuit-voltage '240 V'",
    "breaker --current '12.5 A ±(2%+5)' --breaker '15 A' --building-wire '14 AWG copper' "
    "--cord '18 AWG' --receptacle '15 A' --only-receptacle yes --ambient '45 C ±2 C' "
    "--conductors 6",
    "inrush --code-letter L --horsepower '1/4 hp' --nameplate-voltage '115 V' --peak '11 A ±3%' "
    "--settled '9 A ±3%' --settle-time '8 s ±1 s' --breaker '15 A' --voltage '104 V'",
    "strip --wire '18 AWG' --wire '14 AWG solid' --style twist-on --stripped '1/2 in'",
]


def _commands() -> list[str]:
    named = [c for name in CALCULATIONS for c in (f"{name} --help", f"explain {name}")]
    needs_a_file = {"trace"}  # tests/system/test_trace.py
    shown = [c for name, c in CALCULATIONS.items() if name not in needs_a_file]
    examples = [c.example.removeprefix("wirecalc ") for c in shown]
    return [
        *("", "--help", "--version", "plugins", "tables", "rules", "job --new"),
        *("drill drop pull --level 3 --key", "drill tab --learners 2", "instruments"),
        f"drill --grade '{SHEETS[0].with_name('drill-answers.csv')}'",
        f"job --history '{SHEETS[0].with_name('shop-year')}'",
        "instruments --for breaker",
        "drop --current sought --building-wire '14 AWG' --run-length '60 ft' "
        "--nameplate-voltage '115 V'",
        "tables pull-crimp --where standard=ul-486a --where awg=18",
        *(f"{name} --help" for name in commands.COMMANDS),
        BATCH,
        *named,
        *examples,
        *(f"{line} --working" for line in [*examples, *LONG_LINES]),
        *(f"job '{sheet}'{more}" for sheet in SHEETS for more in ("", " --check-only")),
        *(f"tables {name}" for name in TABLES),
    ]


@pytest.mark.parametrize("line", _commands(), ids=lambda line: re.sub(r"'/.*/", "'", line)[:60])
def test_no_line_is_wider_than_the_terminal(
    cli_main: Cli, monkeypatch: pytest.MonkeyPatch, line: str
) -> None:
    for columns in (40, 60, 80):
        monkeypatch.setenv("COLUMNS", str(columns))
        done = cli_main(*shlex.split(line))
        assert done.status in (0, 1, 3), done.err
        assert done.out.strip()
        wide = [text for text in done.out.splitlines() if len(text) > columns]
        assert wide == []
        assert "\t" not in done.out


RULE = """
[[rule]]
name = "crimps of this shop hold a quarter more than what is published"
calculations = ["pull"]
criterion = "pull-out force"
times = 1.25
why = "the shop saw crimps slip that had kept the published minimum by very little"
when = { terminal = ["ring", "fork"], wire = ["18 AWG"] }
"""
METER = """
[[instrument]]
name = "clamp of the van with a long name"
category = "CAT III 600 V"
due = 2027-01-31

[[instrument.range]]
reads = "current"
from = "0.50 A"
to = "60.00 A"
error = "2% + 5"
wave = "ac"

[meters]
current = "clamp of the van with a long name"
"""


@pytest.mark.parametrize("columns", [40, 60, 80])
def test_no_line_about_files_of_a_shop_is_wider_than_the_terminal(
    cli_main: Cli, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, columns: int
) -> None:
    for name, text in (("rules.toml", RULE), ("settings.toml", METER)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", str(columns))
    monkeypatch.setenv("WIRECALC_CONFIG", str(tmp_path / "settings.toml"))
    lines = [
        *("rules rules.toml", "instruments", "instruments --for breaker", "job --new oven"),
        f"{BATCH} --summary summary.json",
        f"{BATCH} --criteria",
        f"job '{SHEETS[0]}' --record records",
        *("job --history records", "job --export records --output tables"),
        "new-plugin shop-lift --output lift",
    ]
    for line in lines:
        done = cli_main(*shlex.split(line))
        assert done.status in (0, 1, 3), done.err
        assert done.out.strip() or done.err.strip(), line
        said = [*done.out.splitlines(), *done.err.splitlines()]
        assert [text for text in said if len(text) > columns] == [], line


def test_every_command_is_looked_at() -> None:
    looked_at = {line.split(" ")[0] for line in _commands() if not line.endswith("--help")}
    programs = {"completion", "schema"}  # what they print is for programs
    in_files = {"batch", "job", "new-plugin", "pocket", "rules"}  # above, and test_pocket
    conversations = {"ask"}  # tests/system/test_ask.py
    assert set(commands.COMMANDS) - looked_at <= programs | in_files | conversations


WRONG = [
    "frobnicate",
    "breaker keeps tripping",
    "breaker",
    "motor-circuit",
    "pull --force 24 --bogus 3 --wire '18 awgs' --terminal quick",
    "capacitor --mfd 30 --marked-capacitance '35uf +-6%' --measured-capacitance '88-108 mfd'",
    "pull --brief",
    "tables nothing",
    "tables awg --where awg=1000",
    "job nothing.toml",
    "job --new nothing",
    "batch pull nothing.csv",
    "explain",
    "schema nothing",
    "rules nothing.toml",
    "ask pull",
    "new-plugin",
]


@pytest.mark.parametrize("line", WRONG)
def test_no_line_of_a_refusal_is_wider_than_the_terminal(
    cli_main: Cli, monkeypatch: pytest.MonkeyPatch, line: str
) -> None:
    for columns in (40, 60, 80):
        monkeypatch.setenv("COLUMNS", str(columns))
        done = cli_main(*shlex.split(line))
        assert done.status == 2
        assert [text for text in done.err.splitlines() if len(text) > columns] == []
        assert done.err.strip()


def test_without_a_terminal_a_refusal_is_a_line_a_problem(
    cli_main: Cli, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("COLUMNS", raising=False)
    lines = cli_main("motor-circuit").complaints
    assert all(line.startswith(("--", "related: ")) for line in lines)
    assert max(map(len, lines)) > 80


@pytest.mark.parametrize("line", [BATCH, *(f"job '{sheet}'" for sheet in SHEETS)])
def test_no_line_of_a_short_text_is_wider_than_the_terminal(
    cli_main: Cli, monkeypatch: pytest.MonkeyPatch, line: str
) -> None:
    for columns in (40, 60, 80):
        monkeypatch.setenv("COLUMNS", str(columns))
        out = cli_main(*shlex.split(line), "--short").out
        assert [text for text in out.splitlines() if len(text) > columns] == []


@pytest.mark.parametrize(
    ("words", "content"),
    [
        (("job", "x.toml"), '[job]\ntitle = "t"\n[[check]]\ncalculation = "ring"\n'),
        (("batch", "pull", "x.csv", "--wire", "18 AWG", "--terminal", "ring"), "force\n24 lbf\n"),
        (
            ("pull-batch", "--wire", "18 AWG", "--terminal", "ring", "--readings", "x.csv"),
            "force\n24 lbf\n25 lbf\n",
        ),
    ],
)
@pytest.mark.parametrize("other", [False, True])
def test_no_result_takes_the_place_of_what_was_read(
    in_folder: Cli, empty_folder: Path, words: tuple[str, ...], content: str, other: bool
) -> None:
    read = next(Path(w) for w in words if w.startswith("x."))
    (empty_folder / read).write_text(content)
    (empty_folder / "link").symlink_to(read)
    done = in_folder(*words, "--output", "link" if other else f"./{read}")
    assert (done.status, done.out) == (2, "")
    assert "is read for this result" in done.err
    assert (empty_folder / read).read_text() == content
    assert in_folder(*words, "--output", "else").status in (0, 3)


def test_no_chart_takes_the_place_of_what_was_read(in_folder: Cli, empty_folder: Path) -> None:
    (empty_folder / "x.csv").write_text("force\n24 lbf\n25 lbf\n")
    words = ("pull-batch", "--wire", "18 AWG", "--terminal", "ring", "--readings", "x.csv")
    assert in_folder(*words, "--chart", "x.csv").status == 2
    assert (empty_folder / "x.csv").read_text() == "force\n24 lbf\n25 lbf\n"


def test_a_reading_past_the_range_is_not_shown_to_the_end_of_the_span(cli_main: Cli) -> None:
    words = ("insulation", "--insulation-resistance", ">999 Mohm", "--protection", "class-i")
    words += ("--tested-part", "machine", "--test-voltage", "500 V", "--switched-on", "yes")
    words += ("--electronics-unplugged", "yes")
    out = cli_main(*words).out
    said = [line.split() for line in out.splitlines()]
    assert ["insulation_resistance", ">999", "Mohm", "more", "than", "999", "Mohm"] in said
    assert "1000000" not in out + cli_main(*words, "--format", "html").out


def test_all_tables_are_listed(cli_main: Cli) -> None:
    assert tables.names() == TABLES
    listed = [line for line in cli_main("tables").out.splitlines() if line and line[0] != " "]
    assert listed == TABLES
    as_json = cli_main("tables", "--format", "json").json
    assert as_json["schema"] == "wirecalc.tables/1"
    assert [t["name"] for t in as_json["tables"]] == TABLES


def _published(name: str) -> list[dict[str, str]]:
    """Read a table's own file, apart from the program."""
    with (FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _as_file(printed: list[dict[str, str]], name: str) -> list[dict[str, str]]:
    """Return printed rows in the words of the file: its columns, numbers as numbers."""
    columns = [c for c in _published(name)[0] if c not in ("source", "confidence", "copies")]
    return [{c: _plain(row[c]) for c in columns} for row in printed]


def _plain(cell: object) -> Any:
    try:
        return float(str(cell))
    except ValueError:
        return "" if cell is None else cell


@pytest.mark.parametrize("name", TABLES)
def test_table_as_csv_parses_back(cli_main: Cli, name: str) -> None:
    out = cli_main("tables", name, "--format", "csv").out
    rows = list(csv.DictReader(io.StringIO(out)))
    assert _as_file(rows, name) == _as_file(_published(name), name)
    assert all(row["source"] and row["confidence"] for row in rows)


@pytest.mark.parametrize("name", TABLES)
def test_table_as_json_parses_back(cli_main: Cli, name: str) -> None:
    table = cli_main("tables", name, "--format", "json").json
    assert table["name"] == name
    assert _as_file(table["rows"], name) == _as_file(_published(name), name)
    for row, published in zip(table["rows"], _published(name), strict=True):
        assert row["source"] == published["source"]
        assert row["confidence"] == published["confidence"]
        assert row["source"] in table["sources"]


@pytest.mark.parametrize("name", TABLES)
def test_table_as_markdown_parses_back(cli_main: Cli, name: str) -> None:
    lines = cli_main("tables", name, "--format", "markdown").out.splitlines()
    header, rule, *rows = ([*_cells(line)] for line in lines if line.startswith("|"))
    assert set(rule) == {"---"}
    printed = [dict(zip(header, row, strict=True)) for row in rows]
    assert _as_file(printed, name) == _as_file(_published(name), name)


def _cells(line: str) -> list[str]:
    inside = line.strip().removeprefix("|").removesuffix("|")
    return [c.strip().replace("\\|", "|") for c in re.split(r"(?<!\\)\|", inside)]


def test_tables_refuses_what_it_cannot_print(cli_main: Cli) -> None:
    done = cli_main("tables", "awg", "--format", "svg")
    assert (done.status, done.out) == (2, "")
    assert "text, json, csv, markdown, html" in done.err
    done = cli_main("tables", "pull-crimps")
    assert (done.status, done.out) == (2, "")
    assert "  wirecalc tables pull-crimp\n" in done.err


@pytest.mark.parametrize("name", CALCULATIONS)
def test_explain_as_json_is_a_schema_of_the_inputs(cli_main: Cli, name: str) -> None:
    done = cli_main("explain", name, "--format", "json")
    assert (done.status, done.err) == (0, "")
    inputs = done.json["inputs"]
    Draft202012Validator.check_schema(inputs)
    validator = Draft202012Validator(inputs)
    good = _typed(done.json["example"])
    assert not list(validator.iter_errors(good))
    assert list(validator.iter_errors(good | {"frce": "24 lbf"}))
    for wanted in inputs["required"]:
        assert list(validator.iter_errors({k: v for k, v in good.items() if k != wanted}))
        assert not list(validator.iter_errors(good | {wanted: "unknown"}))
        assert list(validator.iter_errors(good | {wanted: 24.5}))


def _typed(example: str) -> dict[str, Any]:
    """Return the inputs of a command line; a count is a number, what is repeated a list."""
    words = shlex.split(example)[2:]
    given: dict[str, list[str | int]] = {}
    for option, word in zip(words[::2], words[1::2], strict=True):
        name = option.removeprefix("--").replace("-", "_")
        given.setdefault(name, []).append(int(word) if word.isdecimal() else word)
    return {name: texts[0] if len(texts) == 1 else texts for name, texts in given.items()}


def test_explain_says_what_help_says(cli_main: Cli) -> None:
    """The same inputs stand in help, explanation and schema: they have one declaration."""
    for name, calc in CALCULATIONS.items():
        declared = {i.name for i in calc.inputs}
        assert set(cli_main("explain", name, "--format", "json").json["inputs"]["properties"]) == (
            declared
        )
        for words in ((name, "--help"), ("explain", name)):
            inputs = cli_main(*words).out.partition("\nWorked example\n")[0]
            listed = re.findall(r'^  --([a-z0-9-]+) "', inputs, re.MULTILINE)
            assert {w.replace("-", "_") for w in listed} == declared


def test_every_command_is_listed(cli_main: Cli) -> None:
    listed = cli_main().out.partition("\ncommands\n")[2]
    for name in commands.COMMANDS:
        assert re.search(rf"^  {name}\b", listed, re.MULTILINE), name
