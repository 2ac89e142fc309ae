"""`wirecalc new-plugin`: a package that is ready, written whole or not at all."""

from __future__ import annotations

import importlib.util
import os
import re
import subprocess
import sys
import tomllib
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import pytest

from wirecalc.base import files

from .conftest import clean_environment

Command = Callable[..., Any]
ROOT = Path(__file__).parents[2]
LONG = "the-thirty-letter-name-of-shop"
NAMES = ["shop-bench", "x", LONG]


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def _files(folder: Path) -> list[str]:
    return sorted(str(p.relative_to(folder)) for p in folder.rglob("*") if p.is_file())


@pytest.mark.parametrize("name", NAMES)
def test_writes_a_package(cli_main: Command, here: Path, name: str) -> None:
    module = name.replace("-", "_")
    done = cli_main("new-plugin", name)
    assert (done.status, done.err) == (0, "")
    assert [line for line in done.out.splitlines() if len(line) > 80] == []
    wanted = ["README.md", f"{module}/__init__.py", f"{module}/py.typed", "pyproject.toml"]
    assert _files(here / name) == sorted([*wanted, f"tests/test_{module}.py"])
    project = tomllib.loads((here / name / "pyproject.toml").read_text(encoding="utf-8"))
    assert project["project"]["entry-points"]["wirecalc"] == {module: module}
    for path in (here / name).rglob("*.*"):
        assert "$" not in path.read_text(encoding="utf-8")
    for text in ("README.md", f"{module}/__init__.py"):
        assert "invented" in (here / name / text).read_text(encoding="utf-8")
    assert f"{name}-gap" in done.out


def test_writes_where_it_is_told(cli_main: Command, here: Path) -> None:
    assert cli_main("new-plugin", "shop-bench", "--output", "elsewhere").status == 0
    assert [p.name for p in here.iterdir()] == ["elsewhere"]
    assert (here / "elsewhere" / "shop_bench" / "__init__.py").is_file()


TAKEN_IN_ITS_TESTS = ("finding", "gap", "done", "plugin", "plugin-set", "run-command")
PYTEST = (sys.executable, "-m", "pytest", "-p", "no:cacheprovider")


def _make(cli_main: Command, names: Iterable[str]) -> None:
    for name in names:
        assert cli_main("new-plugin", name).status == 0


def test_its_tests_pass_at_once(cli_main: Command, here: Path) -> None:
    _make(cli_main, ["shop-bench"])
    done = subprocess.run([*PYTEST], cwd=here / "shop-bench", capture_output=True, check=False)
    assert done.returncode == 0, done.stdout.decode()
    assert b"passed" in done.stdout


def test_its_tests_pass_under_any_name(cli_main: Command, here: Path) -> None:
    """One run over the tests of all of them: it is starting pytest that takes the time."""
    names = {*NAMES, *TAKEN_IN_ITS_TESTS, "wirecalc-shop"}
    _make(cli_main, names)
    env = clean_environment() | {"PYTHONPATH": os.pathsep.join(str(here / name) for name in names)}
    ordinary = ("-v", "-k", "not property")  # which take long, and no name changes them
    done = subprocess.run([*PYTEST, *ordinary], cwd=here, env=env, capture_output=True, check=False)
    printed = done.stdout.decode()
    assert done.returncode == 0, printed
    for name in names:
        tests = f"{name}/tests/test_{name.replace('-', '_')}.py::"
        assert len(re.findall(f"^{tests}.* PASSED ", printed, re.MULTILINE)) >= 5, name


@pytest.mark.parametrize(
    ("words", "names"),
    [
        (("ruff", "format", "--check", "--config", str(ROOT / "pyproject.toml")), NAMES),
        (("ruff", "check", "--config", str(ROOT / "pyproject.toml")), NAMES),
        (("mypy", "--follow-imports=silent"), ["shop-bench"]),  # slow, and any name would do
    ],
    ids=["format", "lint", "types"],
)
def test_it_is_formatted_and_typed(
    cli_main: Command, here: Path, words: tuple[str, ...], names: list[str], monkeypatch: Any
) -> None:
    if importlib.util.find_spec(words[0]) is None:
        pytest.skip(f"needs {words[0]}, which comes with the extra dev")
    _make(cli_main, names)
    monkeypatch.setenv("MYPYPATH", str(ROOT))
    for name in names:  # each in its own folder, as its author would
        tool = (sys.executable, "-m", *words, ".")
        done = subprocess.run(tool, cwd=here / name, capture_output=True, check=False)
        assert done.returncode == 0, done.stdout.decode() + done.stderr.decode()


REFUSED = {
    "class": "word of Python",
    "match": "word of Python",
    "job": "command of wirecalc",
    "new-plugin": "command of wirecalc",
    "pull": "calculation already",
    "pull-batch": "calculation already",
    "bundled": "plugin that comes with wirecalc",
    "json": "Python's own library",
    "wirecalc": "is here already",
    "wirecalc-plugins": "is here already",
    "pluggy": "is here already",
    "tests": "is here already",
    "Shop Bench": "did you mean shop-bench?",
    "shop_bench": "did you mean shop-bench?",
    "9lives": "letter first",
    "a--b": "did you mean a-b?",
    "../shop": "did you mean shop?",
    "": "such as shop-bench",
    "größe": "lower-case letters",
    f"{LONG}s": "31 characters",
}


@pytest.mark.parametrize("name", REFUSED)
def test_bad_name_is_refused_with_the_reason(cli_main: Command, here: Path, name: str) -> None:
    done = cli_main("new-plugin", name)
    assert (done.status, done.out) == (2, "")
    assert REFUSED[name] in done.err
    assert list(here.iterdir()) == []


@pytest.mark.parametrize(
    "words", [(), ("shop-bench", "again"), ("shop-bench", "--format", "json"), ("shop", "--x", "1")]
)
def test_wrong_words_are_refused(cli_main: Command, here: Path, words: tuple[str, ...]) -> None:
    assert cli_main("new-plugin", *words).status == 2
    assert list(here.iterdir()) == []


@pytest.mark.parametrize("kind", ["folder", "file", "link"])
def test_nothing_is_overwritten(cli_main: Command, here: Path, kind: str) -> None:
    place = here / "shop-bench"
    if kind == "folder":
        place.mkdir()
    elif kind == "file":
        place.write_text("mine", encoding="utf-8")
    else:
        place.symlink_to(here / "nowhere")
    done = cli_main("new-plugin", "shop-bench")
    assert (done.status, done.out) == (2, "")
    assert done.complaints == [
        "shop-bench: is there already, and holds something else; choose another place with --output"
    ]
    assert [p.name for p in here.iterdir()] == ["shop-bench"]
    assert kind != "file" or place.read_text(encoding="utf-8") == "mine"
    assert kind != "folder" or list(place.iterdir()) == []


def test_place_that_is_not_there_is_refused(cli_main: Command, here: Path) -> None:
    done = cli_main("new-plugin", "shop-bench", "--output", "nowhere/shop")
    assert done.status == 2
    assert "cannot be written" in done.err
    assert list(here.iterdir()) == []


@pytest.mark.parametrize("error", [OSError(28, "No space left on device"), KeyboardInterrupt()])
def test_nothing_is_left_where_it_breaks_off(
    cli_main: Command, here: Path, monkeypatch: pytest.MonkeyPatch, error: BaseException
) -> None:
    written: list[object] = []

    def third_fails(path: Path, content: bytes) -> None:
        path.touch()
        written.append(content)
        if len(written) == 3:
            raise error

    monkeypatch.setattr(files, "_fill", third_fails)
    done = cli_main("new-plugin", "shop-bench")
    assert (done.status, done.out) == (2 if isinstance(error, OSError) else 130, "")
    assert len(written) == 3
    assert list(here.iterdir()) == []
