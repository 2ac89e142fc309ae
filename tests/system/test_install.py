"""The wheel in an environment of its own: it carries its tables, and runs without its plugins."""

from __future__ import annotations

import json
import zipfile
from pathlib import Path

import pytest

from .conftest import BUNDLED
from .environments import PROJECT, done, make_environment, run, the_wheel

PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")


@pytest.fixture(scope="session")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of wirecalc."""
    return the_wheel(tmp_path_factory)


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An environment that holds the wheel and what it says that it needs, and nothing else."""
    folder = tmp_path_factory.mktemp("environment")
    make_environment(folder, wheel)
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
    assert {"wirecalc/output/schemas/finding.json", "wirecalc/output/schemas/job.json"} <= names
    for path in (PROJECT / "wirecalc").rglob("*"):
        if path.suffix in (".tmpl", ".css", ".json"):
            assert str(path.relative_to(PROJECT)) in names
    assert {"wirecalc/py.typed", "wirecalc/typed/units.txt", "wirecalc_plugins/py.typed"} <= names
    assert {name.partition("/")[0].partition("-")[0] for name in names} == {
        "wirecalc",
        "wirecalc_plugins",
        "wirecalc_tables",
    }


def test_installed_wheel_lists_all(its_command: Path, empty_folder: Path) -> None:
    printed = json.loads(done(its_command, "plugins", "--format", "json", cwd=empty_folder))
    plugins = printed["plugins"]
    assert {p["state"] for p in plugins} == {"loaded"}
    found = [name for p in plugins for name in p["calculations"]]
    assert found == sorted(name for names in BUNDLED.values() for name in names)
    listing = done(its_command, cwd=empty_folder)
    assert all(f"\n  {name} " in listing for name in found)


@pytest.mark.parametrize(
    ("force", "status"), [("24 lbf", 0), ("107 N", 0), ("85 N", 1), ("20.3 lbf ±0.5 lbf", 3)]
)
def test_installed_wheel_runs(
    its_command: Path, empty_folder: Path, force: str, status: int
) -> None:
    """20 lbf are 88.96 N, so 85 N fail; newtons need pint and the short unit file."""
    came_to = run(its_command, *PULL, force, cwd=empty_folder)
    assert (came_to.returncode, came_to.stderr) == (status, "")


def test_installed_wheel_has_its_tables_and_schemas(its_command: Path, empty_folder: Path) -> None:
    assert "4/0" in done(its_command, "tables", "awg", cwd=empty_folder)
    printed = json.loads(done(its_command, "schema", "job", cwd=empty_folder))
    assert printed["properties"]["schema"] == {"const": "wirecalc.job/1"}


def test_example_sheet_with_the_installed_wheel(its_command: Path, empty_folder: Path) -> None:
    sheet = PROJECT / "docs" / "examples" / "refrigerator.toml"
    assert done(its_command, "job", sheet, cwd=empty_folder).startswith("JOB: ")


def test_host_without_its_plugins_lists_none(
    its_command: Path, installed: Path, empty_folder: Path
) -> None:
    (bundled,) = installed.glob("lib/python*/site-packages/wirecalc_plugins")
    aside = bundled.rename(bundled.with_name("set_aside"))
    try:
        listing = run(its_command, cwd=empty_folder)
        pull = run(its_command, *PULL, "24 lbf", cwd=empty_folder)
        awg = run(its_command, "tables", "awg", cwd=empty_folder)
        plugins = run(its_command, "plugins", cwd=empty_folder)
    finally:
        aside.rename(bundled)
    assert listing.returncode == 0
    assert "plugin bundled of wirecalc" in listing.stderr
    assert "needs the module wirecalc_plugins" in listing.stderr
    assert "No calculations" in listing.stdout
    assert "pull" not in listing.stdout
    assert (pull.returncode, pull.stdout) == (2, "")
    assert (awg.returncode, plugins.returncode) == (0, 0)
