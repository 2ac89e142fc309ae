"""Bad input is refused before anything is computed, from the command line and from a job sheet.

Each refusal: exit 2, nothing on stdout, one line on stderr for each wrong input that names it,
says what was given and what would do; no file is written.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from tests.calculations.trial import Bad
from tests.calculations.trials import TRIALS

from .spoiling import spoiled

Cli = Callable[..., Any]
pytestmark = pytest.mark.usefixtures("built_once")
GOOD = {name: trial.good for name, trial in TRIALS.items() if trial.good}
BY_INPUT = spoiled()


def _words(calculation: str, inputs: Mapping[str, str | list[str]]) -> Iterator[str]:
    yield calculation
    for name, given in inputs.items():
        for text in [given] if isinstance(given, str) else given:
            yield from (_option(name), text)


def _option(name: str) -> str:
    return "--" + name.replace("_", "-")


def _refused(done: Any) -> list[str]:
    """Check that a run was refused and return the lines that say why."""
    assert (done.status, done.out) == (2, "")
    assert "Traceback" not in done.err
    lines: list[str] = done.complaints
    return lines


@pytest.fixture(autouse=True)
def nothing_is_written(empty_folder: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Run in an empty folder, and check that it is empty afterwards."""
    monkeypatch.chdir(empty_folder)
    yield
    assert list(empty_folder.iterdir()) == []


@pytest.mark.parametrize("calculation", GOOD)
def test_good_run_is_computed(cli_main: Cli, calculation: str) -> None:
    """Without this, the refusals below could have another cause."""
    done = cli_main(*_words(calculation, GOOD[calculation]))
    assert done.status in (0, 1, 3)
    assert done.err == ""


def test_there_are_cases_for_every_input() -> None:
    assert {(c, i) for c, inputs in GOOD.items() for i in inputs} <= set(BY_INPUT)


each_input = pytest.mark.parametrize(
    ("calculation", "cases"),
    [(calculation, cases) for (calculation, _), cases in BY_INPUT.items()],
    ids=[f"{calculation}-{name}" for calculation, name in BY_INPUT],
)


@each_input
def test_command_line_refuses(cli_main: Cli, calculation: str, cases: list[Bad]) -> None:
    """A run for every case that can be typed."""
    missed = []
    for case in cases:
        if isinstance(case.given, bytes):
            continue
        words = _words(calculation, {**GOOD[calculation], case.input: case.given})
        lines = _refused(cli_main(*words, "--output", "finding.json", "--format", "json"))
        if len(lines) != 1 or not case.refused_by(_option(case.input), lines[0]):
            missed.append((case, lines))
    assert missed == []


@each_input
def test_job_sheet_refuses(
    cli_main: Cli, write_sheet: Callable[..., Path], calculation: str, cases: list[Bad]
) -> None:
    """One sheet with a check for every case: each is refused, each in a line of its own."""
    checks = [
        {"calculation": calculation, "name": f"case {number}"}
        | GOOD[calculation]
        | {case.input: case.given}
        for number, case in enumerate(cases)
    ]
    lines = _refused(
        cli_main("job", str(write_sheet(*checks, kind="other")), "--output", "job.json")
    )
    missed = []
    for number, case in enumerate(cases):
        mine = [line for line in lines if line.startswith(f"check case {number}: ")]
        if len(mine) != 1 or not case.refused_by(case.input, mine[0]):
            missed.append((case, mine))
    assert missed == []
    assert len(lines) == len(cases)


def test_all_that_is_wrong_is_listed_at_once(cli_main: Cli) -> None:
    done = cli_main("pull", "--wire", "18", "--force", "24", "--terminal", "rnig")
    lines = _refused(done)
    assert [line.split(":")[0] for line in lines] == ["--wire", "--force", "--terminal"]


def test_all_that_is_wrong_in_a_sheet_is_listed_at_once(
    cli_main: Cli, write_sheet: Callable[..., Path]
) -> None:
    sheet = write_sheet(
        {"calculation": "pull", "wire": "18", "force": b"24", "terminal": "rnig"},
        {"calculation": "strip", "wire": "18 AWG", "style": "closed", "stripped": "nan mm"},
        {"calculation": "breaker", "current": "8,7 A", "breaker": "15 A"},
    )
    lines = _refused(cli_main("job", str(sheet)))
    wrong = ("pull: wire", "pull: force", "pull: terminal", "strip: stripped", "breaker: current")
    assert [": ".join(line.split(": ")[:2]) for line in lines] == [f"check {w}" for w in wrong]


@pytest.mark.parametrize("joined", [False, True])
def test_unknown_missing_and_malformed_are_reported_together(cli_main: Cli, joined: bool) -> None:
    unknown = ["--frce=24 lbf"] if joined else ["--frce", "24 lbf"]
    lines = _refused(cli_main("pull", *unknown, "--terminal", "rnig", "--wire", "18 AWG"))
    found = {line.split(":")[0]: line for line in lines}
    assert sorted(found) == ["--force", "--frce", "--terminal"]
    assert "did you mean --force?" in found["--frce"]
    assert "is needed" in found["--force"]
    assert '--force "24 lbf"' in found["--force"]
    assert "did you mean ring?" in found["--terminal"]


def test_option_without_a_value_is_reported_with_the_rest(cli_main: Cli) -> None:
    lines = _refused(cli_main("pull", "--terminal", "rnig", "--wire", "18 AWG", "--force"))
    assert sorted({line.split(":")[0] for line in lines}) == ["--force", "--terminal"]


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        (("breaker", "--amps", "8 A"), "--current"),
        (("trip", "--file", "start.csv"), "--recording"),
        (("drop", "--run_lenght", "60 ft"), "--run-length"),
    ],
)
def test_a_word_of_the_trade_finds_its_option(
    cli_main: Cli, words: tuple[str, ...], meant: str
) -> None:
    lines = _refused(cli_main(*words))
    (line,) = (line for line in lines if "no such option" in line)
    assert f"did you mean {meant}?" in line


def test_no_abbreviated_option(cli_main: Cli) -> None:
    lines = _refused(cli_main("pull", "--forc", "24 lbf", *_words("", GOOD["pull"])))
    assert any("did you mean --force?" in line for line in lines)


def test_unknown_key_of_a_sheet(cli_main: Cli, write_sheet: Callable[..., Path]) -> None:
    check = {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "frce": "24 lbf"}
    lines = _refused(cli_main("job", str(write_sheet(check))))
    assert len(lines) == 1
    assert "frce" in lines[0]
    assert "did you mean force?" in lines[0]


def test_unknown_calculation(cli_main: Cli, write_sheet: Callable[..., Path]) -> None:
    lines = _refused(cli_main("job", str(write_sheet({"calculation": "pul"}))))
    assert "did you mean pull?" in lines[0]


def test_input_that_goes_with_another_one(cli_main: Cli) -> None:
    words = ("drop", "--current", "8 A", "--nameplate-voltage", "115 V", "--cord-length", "6 ft")
    (line,) = _refused(cli_main(*words))
    assert line.startswith("--cord-length: ")
    assert "cord, which was not given" in line


PLATE = "[job]\ntitle = 'x'\n[nameplate]\nbreaker = '15 A'\n[[check]]\ncalculation = 'pull'\n"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "[job]"),
        ("[job]\ntitle = 'x'\n", "[[check]]"),
        ("[job]\ntitle = 'x'\n[[chek]]\ncalculation = 'pull'\n", "did you mean check?"),
        ("[job]\ntitle = 'x'\n[check]\ncalculation = 'pull'\n", "[[check]]"),
        ("[job]\ntitle = 'x'\n[[check]]\nwire = '18 AWG'\n", 'calculation = "pull"'),
        ("[job]\ntitle = 'x'\n[[check]]\ncalculation = pull\n", "not TOML"),
        ("[job]\ntitle = 'x'\ntitle = 'y'\n", "not TOML"),
        ("[job]\ntitle = 'x'\n[[check]]\ncalculation = 'pull'\nuses = 'after'\n", "'after'"),
        ("[job]\ntitle = 'x'\n[[check]]\ncalculation = 'pull'\nstage = 'later'\n", "as left"),
        ("check = []\n[job]\ntitle = 'x'\n[nameplate]\nbraker = '15 A'\n", "[[check]]"),
        (PLATE.replace("breaker", "braker"), "did you mean breaker?"),
        ("[job]\ntitle = 'x'\n[[not_tested]]\nname = 'ground'\n", "reason"),
        ("not_tested = 3\n[job]\ntitle = 'x'\n", "[[not_tested]]"),
        ("not_tested = [3]\n[job]\ntitle = 'x'\n", "not_tested"),
        ("check = ['pull']\n[job]\ntitle = 'x'\n", "check"),
    ],
)
def test_sheet_that_is_written_wrongly(cli_main: Cli, tmp_path: Path, text: str, says: str) -> None:
    sheet = tmp_path / "sheet.toml"
    sheet.write_text(text, encoding="utf-8")
    assert any(says in line for line in _refused(cli_main("job", str(sheet))))


def test_sheet_that_cannot_be_read(cli_main: Cli, tmp_path: Path) -> None:
    assert "no such file" in _refused(cli_main("job", "nowhere.toml"))[0]
    assert "cannot be read" in _refused(cli_main("job", str(tmp_path)))[0]
    other = tmp_path / "latin1.toml"
    other.write_bytes("[job]\ntitle = 'é'\n".encode("latin-1"))
    assert "latin1.toml" in _refused(cli_main("job", str(other)))[0]


def test_refused_run_leaves_an_old_file_alone(cli_main: Cli, tmp_path: Path) -> None:
    old = tmp_path / "finding.txt"
    old.write_text("an older finding", encoding="utf-8")
    _refused(cli_main(*_words("pull", GOOD["pull"] | {"force": "24"}), "--output", str(old)))
    assert old.read_text(encoding="utf-8") == "an older finding"


@pytest.mark.parametrize(
    ("calculation", "name", "given"),
    [
        ("pull", "force", "3 J"),
        ("overload", "overload_resistance", "8/0 ohm"),
        ("ground", "conductor_temperature", "200 C"),
    ],
)
def test_installed_command_refuses(command: Cli, calculation: str, name: str, given: str) -> None:
    case = next(c for c in BY_INPUT[calculation, name] if c.given == given)
    words = _words(calculation, {**GOOD[calculation], name: given})
    (line,) = _refused(command(*words, "--output", "finding.txt"))
    assert case.refused_by(_option(name), line)
