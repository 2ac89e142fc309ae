"""A shop's folder of tables: what was meant as a table and is none is said, the rest is named."""

from __future__ import annotations

from pathlib import Path

import pytest

from wirecalc.base.errors import TableError
from wirecalc.published.tables import bundled_folder
from wirecalc.rules.requirements import kinds_in
from wirecalc.rules.shop_folder import check_tables, meant_name, not_used, refuse_folder

SIDECAR = """
title = "Shop crimps, invented"
purpose = "demonstration"
not_for = "work"
checked = "invented"
stands_alone = true
key = ["awg"]
[sources.shop]
title = "shop sheet, invented"
[columns.awg]
type = "integer"
[columns.minimum_lbf]
type = "number"
"""
ROWS = "awg,minimum_lbf,source,confidence,copies,note\n18,25,shop,house,,\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with one table that stands alone."""
    ours = tmp_path / "ours"
    ours.mkdir()
    (ours / "crimps.toml").write_text(SIDECAR, encoding="utf-8")
    (ours / "crimps.csv").write_text(ROWS, encoding="utf-8")
    return ours


def test_a_folder_of_tables_that_all_have_a_use_leaves_nothing_over(folder: Path) -> None:
    refuse_folder(folder)
    assert check_tables(folder) == []
    assert not_used(folder, []) == ([], [])


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("rules.py", "a plugin is not looked for here; it stands in the plugin_folder of the"),
        ("alone.csv", "has no alone.toml beside it"),
        ("stock.CSV", "was it to be stock.csv? It is not read as it is called"),
        ("stock.tmol", "was it to be stock.toml? It is not read as it is called"),
        ("stock.csv.txt", "was it to be stock.csv? It is not read as it is called"),
        ("pull-crimp.txt", "is no table: one is pull-crimp.csv and pull-crimp.toml"),
    ],
)
def test_a_file_that_was_meant_as_a_table_is_said(folder: Path, name: str, why: str) -> None:
    (folder / name).write_text(ROWS, encoding="utf-8")
    left = not_used(folder, [])
    assert [one.file for one in left.meant] == [f"ours/{name}"]
    assert left.meant[0].why.startswith(why)
    assert not_used(folder, [folder / name]).meant == []  # it has a use of its own


def test_a_file_that_nobody_meant_is_named_and_a_hidden_one_is_not(folder: Path) -> None:
    for name in ("notes.txt", "photo.jpg", ".keep", "._crimps.toml"):
        (folder / name).write_text("", encoding="utf-8")
    assert not_used(folder, []) == (
        [],
        [("other files of ours", "not read: notes.txt, photo.jpg")],
    )


def test_a_folder_in_the_folder_is_said_where_it_holds_a_table(folder: Path) -> None:
    (folder / "photos").mkdir()
    assert not_used(folder, []).meant == []
    (folder / "old").mkdir()
    (folder / "old" / "crimps.CSV").write_text(ROWS, encoding="utf-8")
    (said,) = not_used(folder, []).meant
    assert said.file == "ours/old"
    assert said.why == "holds crimps.CSV; nothing is looked for in folders of a folder"


def test_a_table_that_does_not_say_for_whom_it_is_is_said(folder: Path) -> None:
    (folder / "crimps.toml").write_text(SIDECAR.replace("stands_alone = true\n", ""))
    (said,) = not_used(folder, []).meant
    assert said.why == (
        'does not say for whom it is; write stricter_than = "...", or stands_alone = true'
    )
    other = SIDECAR.replace("stands_alone = true", 'stricter_than = "pull-crimps"')
    (folder / "crimps.toml").write_text(other)
    (said,) = not_used(folder, []).meant
    assert said.why.startswith("there is no published table 'pull-crimps'; did you mean pull-crimp")


def test_an_empty_folder_and_one_that_is_none(folder: Path, tmp_path: Path) -> None:
    empty = tmp_path / "empty"
    empty.mkdir()
    (said,) = not_used(empty, []).meant
    assert (said.file, said.why) == ("empty", "holds no table; one is NAME.csv and NAME.toml")
    assert check_tables(empty) == [f"{empty} holds no table: a table is NAME.csv and NAME.toml"]
    for none in (tmp_path / "nowhere", folder / "crimps.csv", tmp_path / ("x" * 300)):
        with pytest.raises(TableError, match="is no folder of tables"):
            refuse_folder(none)
    (empty / "pull-crimp.toml").write_text(SIDECAR)
    with pytest.raises(TableError, match="pull-crimp is a bundled table; add one under another"):
        refuse_folder(empty)


def test_a_table_alone_and_a_hidden_file_in_a_check(folder: Path) -> None:
    for name in ("alone.csv", ".hidden.csv", "crimps.txt"):
        (folder / name).write_text(ROWS, encoding="utf-8")
    assert check_tables(folder) == ["ours/alone.csv: has no alone.toml beside it"]
    (folder / "crimps.csv").write_text(ROWS.replace("25", "many"), encoding="utf-8")
    assert any("'many'" in why for why in check_tables(folder))


def test_the_name_that_a_file_should_have_had(tmp_path: Path) -> None:
    names = ("a.CSV", "a.csvv", "a.tom", "a.csv", "a.jpg", ".a.tom", "a")
    assert [meant_name(tmp_path / name) for name in names] == [
        "a.csv",
        "a.csv",
        "a.toml",
        "",
        "",
        "",
        "",
    ]
    (tmp_path / "a.csv").write_text("")
    assert meant_name(tmp_path / "a.CSV") == ""  # the right one is there


def test_kinds_of_job_are_those_of_the_table_without_the_sign_for_all() -> None:
    kinds = list(kinds_in([bundled_folder()]))
    assert "refrigerator" in kinds
    assert "*" not in kinds
