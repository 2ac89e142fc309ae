"""The wheel in an environment of its own: it carries its tables, and runs without its plugins."""

from __future__ import annotations

import importlib.util
import json
import shutil
import subprocess
import sys
import venv
import zipfile
from collections.abc import Iterator
from importlib import metadata
from pathlib import Path

import pytest
from packaging.requirements import Requirement

from .conftest import clean_environment

PROJECT = Path(__file__).parents[2]
LEFT_OUT = shutil.ignore_patterns(".*", "*.egg-info", "build", "dist", "__pycache__", "tests")
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")


def _run(*words: str | Path, cwd: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        words,
        cwd=cwd,
        env=clean_environment(),
        capture_output=True,
        encoding="utf-8",
        check=False,
        timeout=300,
    )


def _done(*words: str | Path, cwd: Path) -> str:
    done = _run(*words, cwd=cwd)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from a copy so that nothing is left in the repository.

    The build takes setuptools from here where it is installed, else from the index.
    """
    folder = tmp_path_factory.mktemp("wheel")
    shutil.copytree(PROJECT, folder / "source", ignore=LEFT_OUT)
    here = all(importlib.util.find_spec(name) for name in ("setuptools", "wheel"))
    how = ["--no-build-isolation"] if here else []
    pip = (sys.executable, "-m", "pip", "wheel", "--no-deps", "--quiet", *how)
    _done(*pip, "--wheel-dir", folder, folder / "source", cwd=folder)
    (built,) = folder.glob("*.whl")
    return built


def _needed(name: str) -> Iterator[metadata.Distribution]:
    """Yield the distributions that one needs to run, extras aside."""
    for line in metadata.distribution(name).requires or ():
        wanted = Requirement(line)
        if wanted.marker is None or wanted.marker.evaluate({"extra": ""}):
            yield metadata.distribution(wanted.name)
            yield from _needed(wanted.name)


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An environment that holds the wheel and what it says that it needs, and nothing else.

    What it needs is copied from here; pip checks that it suffices, without the index.
    """
    folder = tmp_path_factory.mktemp("environment")
    venv.create(folder, symlinks=True)
    (site,) = folder.glob("lib/python*/site-packages")
    for distribution in _needed("wirecalc"):
        for file in distribution.files or ():
            if ".." not in file.parts and "__pycache__" not in file.parts:
                (site / file).parent.mkdir(parents=True, exist_ok=True)
                shutil.copy(str(file.locate()), site / file)
    pip = (sys.executable, "-m", "pip", "--python", folder / "bin" / "python", "install")
    _done(*pip, "--quiet", "--no-index", wheel, cwd=folder)
    return folder


@pytest.fixture
def its_command(installed: Path) -> Path:
    """The command of that environment."""
    return installed / "bin" / "wirecalc"


def test_wheel_carries_tables_schemas_and_no_tests(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    for kind in ("csv", "toml"):
        for path in PROJECT.glob(f"tables/*.{kind}"):
            assert f"wirecalc_tables/{path.name}" in names
    assert {"wirecalc/schemas/finding.json", "wirecalc/schemas/job.json"} <= names
    assert {"wirecalc/py.typed", "wirecalc/units.txt", "wirecalc_plugins/py.typed"} <= names
    assert {name.partition("/")[0].partition("-")[0] for name in names} == {
        "wirecalc",
        "wirecalc_plugins",
        "wirecalc_tables",
    }


def test_installed_wheel_lists_all(its_command: Path, empty_folder: Path) -> None:
    plugins = json.loads(_done(its_command, "plugins", "--format", "json", cwd=empty_folder))
    assert {p["state"] for p in plugins} == {"loaded"}
    found = [name for p in plugins for name in p["calculations"]]
    assert sorted(found) == [
        "ampacity",
        "breaker",
        "choose",
        "equivalent",
        "gauge",
        "heat-rating",
        "inrush",
        "joint-drop",
        "pull",
        "pull-batch",
        "ring",
        "splice",
        "start-curve",
        "strands",
        "strip",
        "substitute",
        "tab",
        "wire-break",
    ]
    listing = _done(its_command, cwd=empty_folder)
    assert all(f"\n  {name} " in listing for name in found)


@pytest.mark.parametrize(
    ("force", "status"), [("24 lbf", 0), ("107 N", 0), ("85 N", 1), ("20.3 lbf ±0.5 lbf", 3)]
)
def test_installed_wheel_runs(
    its_command: Path, empty_folder: Path, force: str, status: int
) -> None:
    """20 lbf are 88.96 N, so 85 N fail; newtons need pint and the short unit file."""
    done = _run(its_command, *PULL, force, cwd=empty_folder)
    assert (done.returncode, done.stderr) == (status, "")


def test_installed_wheel_has_its_tables_and_schemas(its_command: Path, empty_folder: Path) -> None:
    assert "4/0" in _done(its_command, "tables", "awg", cwd=empty_folder)
    printed = json.loads(_done(its_command, "schema", "job", cwd=empty_folder))
    assert printed["properties"]["schema"] == {"const": "wirecalc.job/1"}


def test_example_sheet_with_the_installed_wheel(its_command: Path, empty_folder: Path) -> None:
    sheet = PROJECT / "docs" / "examples" / "refrigerator.toml"
    assert _done(its_command, "job", sheet, cwd=empty_folder).startswith("JOB: ")


def test_host_without_its_plugins_lists_none(
    its_command: Path, installed: Path, empty_folder: Path
) -> None:
    (points,) = installed.glob("lib/python*/site-packages/wirecalc-*.dist-info/entry_points.txt")
    whole = points.read_text(encoding="utf-8")
    scripts, group, _ = whole.partition("[wirecalc]")
    assert group
    points.write_text(scripts, encoding="utf-8")
    try:
        listing = _run(its_command, cwd=empty_folder)
        run = _run(its_command, *PULL, "24 lbf", cwd=empty_folder)
        awg = _run(its_command, "tables", "awg", cwd=empty_folder)
        plugins = _run(its_command, "plugins", cwd=empty_folder)
    finally:
        points.write_text(whole, encoding="utf-8")
    assert (listing.returncode, listing.stderr) == (0, "")
    assert "No calculations" in listing.stdout
    assert "pull" not in listing.stdout
    assert (run.returncode, run.stdout) == (2, "")
    assert (awg.returncode, plugins.returncode) == (0, 0)
