"""A plugin as a real wheel beside wirecalc in an environment of its own, as a shop has it."""

from __future__ import annotations

import json
import shutil
import zipfile
from pathlib import Path

import pytest

from .environments import build_wheel, done, install, make_environment, once, run, the_wheel

GAP = ("shop-bench-gap", "--seal-gap")
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
SHEET = """
[job]
title = "Parts of an invented shop"
kind = "bench"

[[check]]
calculation = "shop-bench-gap"
seal_gap = "0.4 mm"

[[check]]
calculation = "pull"
wire = "18 AWG"
terminal = "ring"
force = "24 lbf"
"""


@pytest.fixture(scope="session")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with `environment`, which has the plugin's wheel, and the plugin's `shop-bench`."""

    def make(folder: Path) -> None:
        make_environment(folder / "environment", the_wheel(tmp_path_factory), also=("pytest",))
        done(folder / "environment" / "bin" / "wirecalc", "new-plugin", "shop-bench", cwd=folder)
        (folder / "built").mkdir()
        built = build_wheel(folder / "shop-bench", folder / "built")
        install(folder / "environment", built)

    return once(tmp_path_factory, "shop", make)


@pytest.fixture
def command(shop: Path) -> Path:
    return shop / "environment" / "bin" / "wirecalc"


def test_listing_names_it(command: Path, empty_folder: Path) -> None:
    assert "\nshop\n  shop-bench-gap  Is the door seal" in done(command, cwd=empty_folder)
    printed = json.loads(done(command, "plugins", "--format", "json", cwd=empty_folder))
    listed = printed["plugins"]
    assert [p["state"] for p in listed] == ["loaded", "loaded"]
    own = next(p for p in listed if p["name"] == "shop_bench")
    assert (own["distribution"], own["version"]) == ("shop-bench", "0.1.0")
    assert own["calculations"] == ["shop-bench-gap"]


@pytest.mark.parametrize(
    ("gap", "status", "word"),
    [
        ("0.4 mm", 0, "PASS"),
        ("1.2 mm", 1, "FAIL"),
        ("0.95 mm ±0.1 mm", 3, "CANNOT TELL"),
        ("0.4", 2, ""),
    ],
)
def test_command_line(command: Path, empty_folder: Path, gap: str, status: int, word: str) -> None:
    came_to = run(command, *GAP, gap, cwd=empty_folder)
    assert came_to.returncode == status
    assert came_to.stdout.startswith(word)
    assert bool(came_to.stderr) == (status == 2)


def test_house_rule_and_caution(command: Path, empty_folder: Path) -> None:
    assert run(command, *PULL, "24 lbf", cwd=empty_folder).returncode == 1
    assert run(command, *PULL, "24 lbf", "--bundled-only", cwd=empty_folder).returncode == 0
    assert "reach behind the seal" in done(command, *GAP, "0.4 mm", cwd=empty_folder)


def test_job_sheet_and_report(command: Path, empty_folder: Path) -> None:
    (empty_folder / "repair.toml").write_text(SHEET, encoding="utf-8")
    job = run(command, "job", "repair.toml", "--format", "json", cwd=empty_folder)
    assert job.returncode == 1
    gap, pull = (c["finding"] for c in json.loads(job.stdout)["checks"])
    assert (gap["verdict"], gap["plugin"], gap["version"]) == ("pass", "shop_bench", "0.1.0")
    assert {c["provider"]: c["verdict"] for c in pull["criteria"]} == {
        "bundled": "pass",
        "shop_bench": "fail",
    }
    report = ("--format", "html", "--output", "report.html")
    assert run(command, "job", "repair.toml", *report, cwd=empty_folder).returncode == 1
    page = (empty_folder / "report.html").read_text(encoding="utf-8")
    assert "shop-bench pull-out force" in page
    assert "reach behind the seal" in page


def test_batch(command: Path, empty_folder: Path) -> None:
    rows = "machine,seal_gap [mm]\n1,0.4\n2,1.2\n3,0.95 ±20%\n4,many\n"
    (empty_folder / "gaps.csv").write_text(rows, encoding="utf-8")
    batch = ("batch", GAP[0], "gaps.csv", "--keep", "machine", "--format", "json")
    came_to = run(command, *batch, cwd=empty_folder)
    assert came_to.returncode == 1
    found = [json.loads(line) for line in came_to.stdout.splitlines()]
    assert [f.get("verdict") for f in found[:3]] == ["pass", "fail", "cannot tell"]
    assert len(found) >= 4


def test_its_own_tests_pass_there(shop: Path) -> None:
    words = ("-m", "pytest", "-q", "-p", "no:cacheprovider", "tests")
    printed = done(shop / "environment" / "bin" / "python", *words, cwd=shop / "shop-bench")
    assert " passed" in printed


def test_its_wheel_carries_its_tables(shop: Path, tmp_path: Path) -> None:
    """A folder of tables works in an editable install anyway; a wheel has only what is packed."""
    shutil.copytree(shop / "shop-bench", tmp_path / "source")
    folder = tmp_path / "source" / "shop_bench" / "tables"
    folder.mkdir()
    for name in ("frost.csv", "frost.toml"):
        (folder / name).write_text("", encoding="utf-8")
    (tmp_path / "built").mkdir()
    with zipfile.ZipFile(build_wheel(tmp_path / "source", tmp_path / "built")) as wheel:
        packed = set(wheel.namelist())
    assert {f"shop_bench/tables/frost.{end}" for end in ("csv", "toml")} <= packed
    assert "shop_bench/py.typed" in packed
