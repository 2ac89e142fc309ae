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


SCRAPED = '''"""Frost that was scraped off, weighed: wirecalc has no unit of mass."""

from collections.abc import Iterator
from typing import Annotated

from wirecalc import PRACTICE, Item, Reading, at_most, calculation, declare_unit

GRAM = declare_unit("g", dimension="mass", factor=0.001, spellings=("gram", "grams"))
OUNCE = declare_unit("oz", dimension="mass", factor=0.028349523125)


@calculation(part="shop", words=("frost; ice",))
def scraped(
    frost_mass: Annotated[
        float, Reading(GRAM, low=0, high=9000, typical="300 g", text="frost that was scraped off")
    ],
) -> Iterator[Item]:
    """Was there too much frost?

    Input: frost_mass in g, 0 to 9000. Yields one criterion. Source: invented.
    """
    yield at_most("frost scraped off", frost_mass, 500.0, GRAM, source=PRACTICE)
'''


def weigh_too(folder: Path) -> None:
    """Give a plugin that was just written a second calculation, with a unit of its own."""
    (folder / "scraped.py").write_text(SCRAPED, encoding="utf-8")
    whole = (folder / "__init__.py").read_text(encoding="utf-8")
    whole = whole.replace("return [shop_bench_gap]", "return [shop_bench_gap, scraped]")
    whole = whole.replace("\n# where the", "\nfrom .scraped import scraped\n\n# where the")
    (folder / "__init__.py").write_text(whole, encoding="utf-8")


@pytest.fixture(scope="session")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with `environment`, which has the plugin's wheel, and the plugin's `shop-bench`."""

    def make(folder: Path) -> None:
        make_environment(
            folder / "environment", the_wheel(tmp_path_factory), also=("pytest", "hypothesis")
        )
        done(folder / "environment" / "bin" / "wirecalc", "new-plugin", "shop-bench", cwd=folder)
        weigh_too(folder / "shop-bench" / "shop_bench")
        (folder / "built").mkdir()
        built = build_wheel(folder / "shop-bench", folder / "built")
        install(folder / "environment", built)

    return once(tmp_path_factory, "shop", make)


@pytest.fixture
def command(shop: Path) -> Path:
    return shop / "environment" / "bin" / "wirecalc"


def test_listing_names_it(command: Path, empty_folder: Path) -> None:
    listed = done(command, cwd=empty_folder)
    assert "\nshop\n  scraped         Was there too much frost?\n" in listed
    assert "\n  shop-bench-gap  Is the door seal" in listed
    printed = json.loads(done(command, "plugins", "--format", "json", cwd=empty_folder))
    listed = printed["plugins"]
    assert [p["state"] for p in listed] == ["loaded", "loaded"]
    own = next(p for p in listed if p["name"] == "shop_bench")
    assert (own["distribution"], own["version"]) == ("shop-bench", "0.1.0")
    assert own["calculations"] == ["scraped", "shop-bench-gap"]


@pytest.mark.parametrize(
    ("mass", "status", "says"),
    [  # 500 g at most; an avoirdupois ounce is 28.349523125 g (NIST SP 811, appendix B.8)
        ("490 grams", 0, "PASS  frost scraped off: 490 g, at most 500 g"),
        ("17.7 oz", 1, "FAIL  frost scraped off: 501.8 g is above 500 g"),
        ("17.6 oz ±1%", 3, "CANNOT TELL  frost scraped off: 493.9 to 504 g reaches across 500 g"),
        ("500 lbf", 2, "'lbf' is a unit of force, and a mass is wanted; write it in g, oz"),
        ("sought", 0, "up to 500 g"),
    ],
)
def test_a_unit_of_its_own_on_the_command_line(
    command: Path, empty_folder: Path, mass: str, status: int, says: str
) -> None:
    came_to = run(command, "scraped", "--frost-mass", mass, cwd=empty_folder)
    assert came_to.returncode == status
    assert says in " ".join((came_to.stdout + came_to.stderr).split("\n")).replace("      ", "")


def test_a_unit_of_its_own_in_a_sheet_a_batch_and_on_a_page(
    command: Path, empty_folder: Path
) -> None:
    check = '\n[[check]]\ncalculation = "scraped"\nfrost_mass = "1 oz"\n'
    (empty_folder / "repair.toml").write_text(SHEET + check, encoding="utf-8")
    page = ("job", "repair.toml", "--format", "html", "--output", "page.html")
    assert run(command, *page, cwd=empty_folder).returncode == 1  # for the house rule of pull
    assert "28.35 g" in (empty_folder / "page.html").read_text(encoding="utf-8")
    rows = "tray,frost_mass [oz]\n1,17.6\n2,17.7\n3,17.6 ±1%\n"
    (empty_folder / "trays.csv").write_text(rows, encoding="utf-8")
    batch = ("batch", "scraped", "trays.csv", "--label", "tray", "--format", "json")
    came_to = run(command, *batch, cwd=empty_folder)
    found = [json.loads(line).get("verdict") for line in came_to.stdout.splitlines()]
    assert found[:3] == ["pass", "fail", "cannot tell"]


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
