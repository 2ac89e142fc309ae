"""The map of the rooms says what the code says, and what is public is there."""

from __future__ import annotations

import ast
import importlib
import inspect
import re
import subprocess
import sys
from pathlib import Path

import pytest

import wirecalc

from .reference import names_of, trade_modules

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "wirecalc"
MAP = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
ROOMS = sorted(p.parent.name for p in PACKAGE.glob("*/__init__.py"))


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_is_on_the_map_with_its_promise(room: str) -> None:
    promise = inspect.getdoc(importlib.import_module(f"wirecalc.{room}")) or ""
    listed = re.search(rf"^\| `{room}/` \| (.+?) \|", MAP, re.M)
    assert listed is not None, room
    assert " ".join(promise.split()).startswith(listed[1].rstrip(".")), (promise, listed[1])


def test_the_map_has_no_other_rooms() -> None:
    assert sorted(re.findall(r"^\| `(\w+)/` \|", MAP, re.M)) == ROOMS


def test_the_package_is_rooms_and_few_files() -> None:
    files = sorted(p.name for p in PACKAGE.iterdir() if p.is_file())
    assert files == ["__init__.py", "calls.py", "cli.py", "py.typed", "version.py"]


def test_the_map_names_the_modules_of_the_trade() -> None:
    for module in trade_modules():
        assert f"`{module.__name__.rpartition('.')[2]}`" in MAP, module.__name__
        assert names_of(module), module.__name__


def test_no_module_is_longer_than_one_sitting() -> None:
    modules = [*PACKAGE.rglob("*.py"), *(ROOT / "plugins").rglob("*.py")]
    long = {
        str(p.relative_to(ROOT)): lines
        for p in modules
        if (lines := len(p.read_text(encoding="utf-8").splitlines())) > 250
    }
    assert long == {}


def test_what_is_public_is_there() -> None:
    assert all(hasattr(wirecalc, name) for name in wirecalc.__all__)
    assert set(wirecalc.__all__) <= set(dir(wirecalc))


def test_a_type_checker_is_told_of_each_public_name_where_it_is() -> None:
    """What is imported for the types alone is what `__getattr__` loads."""
    tree = ast.parse(inspect.getsource(wirecalc))
    told = {
        name.name: node.module
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and node.level == 1
        for name in node.names
    }
    modules = {name: module.rpartition(".")[0] for name, module in wirecalc._MODULES.items()}
    assert told == wirecalc._MODULE_OF | modules
    assert sorted(told) == sorted(wirecalc.__all__)


def test_the_package_and_its_version_load_little() -> None:
    code = """
import sys, wirecalc
print(*(m for m in sys.modules if m.startswith("wirecalc")))
from wirecalc.cli import main
main(["--version"])
rooms = {m.split(".")[1] for m in sys.modules if m.startswith("wirecalc.")}
print(*rooms, "pathlib" in sys.modules)
"""
    words = (sys.executable, "-I", "-S", "-c", f"import sys; sys.path[:0] = {sys.path!r}\n{code}")
    done = subprocess.run(words, capture_output=True, text=True, check=True)
    alone, version, behind = done.stdout.splitlines()
    assert (alone, version) == ("wirecalc", f"wirecalc {wirecalc.version.VERSION}")
    assert {*behind.split()} == {
        *("base", "cli", "commands", "output", "typed", "version"),
        "False",
    }


def test_a_name_that_is_not_public_is_not_there() -> None:
    with pytest.raises(AttributeError, match="module 'wirecalc' has no attribute 'pull'") as error:
        wirecalc.pull  # noqa: B018
    assert (error.value.name, error.value.obj) == ("pull", wirecalc)
