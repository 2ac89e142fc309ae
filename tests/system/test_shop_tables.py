"""Tables from outside: they are added, replace nothing, and a damaged one is refused alone."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from .conftest import Outside

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
SIDECAR = """
title = "Shop crimps, invented"
purpose = "demonstration"
not_for = "work"
checked = "invented"
key = ["awg"]
[sources.shop]
title = "shop sheet, invented"
[columns.awg]
type = "integer"
[columns.minimum_lbf]
type = "number"
"""
HEADER = "awg,minimum_lbf,source,confidence,copies,note\n"
TABLES_HOOK = """
from pathlib import Path
from wirecalc import hookimpl

@hookimpl
def wirecalc_tables():
    return [Path(__file__).parent / "tables_of_ours"]
"""


def _add_table(outside: Outside, name: str, rows: str) -> None:
    outside.add("demo_tables", TABLES_HOOK)
    folder = outside.folder / "tables_of_ours"
    folder.mkdir()
    (folder / f"{name}.toml").write_text(SIDECAR, encoding="utf-8")
    (folder / f"{name}.csv").write_text(HEADER + rows, encoding="utf-8")


def test_table_of_a_shop_is_added(command: Command, outside: Outside) -> None:
    _add_table(outside, "shop-crimps", "18,25,shop,house,,\n")
    assert "shop-crimps" in command("tables", env=outside.env).out
    done = command("tables", "shop-crimps", "--format", "json", env=outside.env)
    assert [r["minimum_lbf"] for r in done.json["rows"]] == [25]


def test_table_of_a_shop_replaces_no_published_one(command: Command, outside: Outside) -> None:
    _add_table(outside, "pull-crimp", "18,1,shop,house,,\n")
    published = command("tables", "pull-crimp").out
    assert command("tables", "pull-crimp", env=outside.env).out == published
    assert command(*PULL, "19 lbf", env=outside.env).status == 1


def test_damaged_table_of_a_shop_is_refused_alone(command: Command, outside: Outside) -> None:
    _add_table(outside, "shop-crimps", "18,many,shop,house,,\n")
    assert command(*PULL, "24 lbf", env=outside.env).status == 0
    assert command("tables", "awg", env=outside.env).status == 0
    done = command("tables", "shop-crimps", env=outside.env)
    assert done.status not in (0, 1, 3)
    assert done.out == ""
    assert "'many'" in done.err
