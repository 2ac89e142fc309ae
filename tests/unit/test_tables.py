"""Tables: the real ones are whole, and a damaged one is refused with what is wrong."""

from dataclasses import replace
from pathlib import Path

import pytest

from wirecalc import tables
from wirecalc.base.errors import TableError
from wirecalc.published.sources import Confidence
from wirecalc.published.table_files import read_file

SIDECAR = """
title = "a table"
purpose = "tests"
not_for = "anything else"
checked = "by hand"
key = ["awg"]
[sources.demo]
title = "invented"
[columns.awg]
type = "gauge"
[columns.force_lbf]
type = "number"
unit = "lbf"
stricter = "higher"
[columns.remark]
type = "text"
required = false
[[rules]]
column = "force_lbf"
runs = "falling"
along = "awg"
"""
HEADER = "awg,force_lbf,remark,source,confidence,copies,note\n"
ROWS = "1/0,250,,demo,demo,0,\n18,20,thin,demo,confirmed,2,seen twice\n22,8,,demo,demo,0,\n"


def write(folder: Path, rows: str = ROWS, sidecar: str = SIDECAR, header: str = HEADER) -> Path:
    (folder / "t.csv").write_text(header + rows)
    (folder / "t.toml").write_text(sidecar)
    return folder


@pytest.mark.parametrize("name", tables.names())
def test_bundled_table_is_whole(name: str) -> None:
    table = tables.load(name)
    assert table.rows
    assert all(row.source.title for row in table.rows)
    assert len(table.title) <= 76


def test_reads(tmp_path: Path) -> None:
    table = tables.read(write(tmp_path), "t")
    row = table.row(awg="18")
    assert (row.number("force_lbf"), row.text("remark"), row.note) == (20.0, "thin", "seen twice")
    assert row.source.confidence is Confidence.CONFIRMED
    assert row.source.copies == 2
    assert table.find(awg="20") is None
    assert [r.text("awg") for r in table.where(remark=None)] == ["1/0", "22"]
    with pytest.raises(TableError, match="no row for awg 20"):
        table.row(awg="20")
    with pytest.raises(TableError, match="holds no number"):
        table.row(awg="22").number("remark")


def test_column_may_have_a_source_of_its_own(tmp_path: Path) -> None:
    own = SIDECAR.replace('stricter = "higher"', 'source = "other"\nconfidence = "memory"')
    table = tables.read(write(tmp_path, sidecar=own + '[sources.other]\ntitle = "recalled"\n'), "t")
    source = table.column_source(table.row(awg="18"), "force_lbf")
    assert (source.title, source.confidence, source.copies) == ("recalled", "memory", 0)
    assert table.column_source(table.row(awg="18"), "remark").title == "invented"
    assert table.column_source(table.row(awg="18"), "force_lbf") is source  # made once


def test_the_rows_confidence_and_copies_hold_for_a_columns_own_source(tmp_path: Path) -> None:
    own = SIDECAR.replace('stricter = "higher"', 'source = "other"')
    table = tables.read(write(tmp_path, sidecar=own + '[sources.other]\ntitle = "seen"\n'), "t")
    row = table.row(awg="18")
    source = table.column_source(row, "force_lbf")
    assert (source.title, source.confidence, source.copies) == (
        "seen",
        row.source.confidence,
        row.source.copies,
    )
    assert source.copies > 0


@pytest.mark.parametrize(
    ("rows", "wrong"),
    [
        (ROWS.replace("18,20", "18,abc"), "line 3: 'abc' in column force_lbf is no number"),
        (ROWS.replace("18,20", "18,2_0"), "line 3: '2_0' in column force_lbf is no number"),
        (ROWS.replace("18,20", "18,２０"), "line 3: '２０' in column force_lbf is no number"),
        (ROWS.replace("18,20", "18,"), "line 3: column force_lbf is empty"),
        (ROWS.replace("18,20", "18,inf"), "line 3: 'inf' in column force_lbf is no number"),
        (ROWS.replace("18,20", f"18,{'9' * 400}"), "line 3: force_lbf is not finite"),
        (ROWS.replace("18,20", "18,5"), "force_lbf is not falling from awg 18 to 22"),
        (ROWS.replace("22,8", "18,8"), "stands there twice"),
        (ROWS.replace("22,8", "99,8"), "'99' is no AWG name"),
        (ROWS.replace("confirmed,2", "confirmed,0"), "confirmed, and by no copy"),
        (ROWS.replace("confirmed,2", "sure,2"), "'sure' is not a valid Confidence"),
        (ROWS.replace("22,8,,demo", "22,8,,nobody"), "source 'nobody' is not in the sidecar"),
        (ROWS.replace("22,8,,demo,demo,0,", "22,8"), "line 4: 2 cells in place of 7"),
        ("", "it has no rows"),
    ],
)
def test_damaged_rows_are_refused(tmp_path: Path, rows: str, wrong: str) -> None:
    with pytest.raises(TableError) as caught:
        tables.read(write(tmp_path, rows), "t")
    assert wrong in str(caught.value)


@pytest.mark.parametrize(
    ("sidecar", "wrong"),
    [
        (SIDECAR.replace('title = "a table"', ""), "its sidecar lacks title"),
        (SIDECAR.replace('key = ["awg"]', 'key = ["size"]'), "key size is not a column"),
        (SIDECAR.replace('"gauge"', '"colour"'), "column awg has type 'colour'"),
        (SIDECAR.replace('"higher"', '"harder"'), "stricter is higher, lower or narrower"),
        (SIDECAR.replace('"falling"', '"down"'), "'down' is none of"),
        (SIDECAR + "x = [", "its sidecar cannot be read"),
        (SIDECAR.replace("unit =", "units ="), "no key 'units' in [columns.force_lbf]; did you"),
        (SIDECAR.replace("unit =", "units =") + "[[rules]]\nwithn = 1\n", "no key 'withn' in [["),
        ("Key = 1\n" + SIDECAR, "no key 'Key' in a sidecar; did you mean key?"),
        (SIDECAR.replace('type = "gauge"\n', ""), "is described wrongly"),
    ],
)
def test_damaged_sidecar_is_refused(tmp_path: Path, sidecar: str, wrong: str) -> None:
    with pytest.raises(TableError) as caught:
        tables.read(write(tmp_path, sidecar=sidecar), "t")
    assert wrong in str(caught.value)


ODD = ("5", "true", '"x"', '""', "[]", '["x"]', '[["x"]]', "{}", "{ x = 5 }", "[{ x = 5 }]")


@pytest.mark.parametrize("odd", ODD)
@pytest.mark.parametrize("line", [n for n, text in enumerate(SIDECAR.splitlines()) if "=" in text])
def test_a_value_of_another_kind_in_a_sidecar_is_refused_or_read(
    tmp_path: Path, line: int, odd: str
) -> None:
    """Nothing but a TableError is raised: what is damaged is the table's alone."""
    lines = SIDECAR.splitlines()
    lines[line] = f"{lines[line].partition('=')[0]}= {odd}"
    try:
        table = tables.read(write(tmp_path, sidecar="\n".join(lines)), "t")
    except TableError as error:
        assert str(tmp_path / "t.") in str(error)
    else:
        assert [row.text("awg") for row in table.rows] == ["1/0", "18", "22"]


@pytest.mark.parametrize("odd", ODD)
@pytest.mark.parametrize("section", ["sources", "columns", "rules"])
def test_a_section_of_another_kind_is_refused(tmp_path: Path, section: str, odd: str) -> None:
    kept = [
        part
        for part in SIDECAR.split("\n[")
        if not part.lstrip("[").startswith((f"{section}.", f"{section}]"))
    ]
    sidecar = f"{section} = {odd}\n" + "\n[".join(kept)
    if section == "rules" and odd == "[]":  # no rule is a sound list of rules
        tables.read(write(tmp_path, sidecar=sidecar), "t")
        return
    with pytest.raises(TableError):
        tables.read(write(tmp_path, sidecar=sidecar), "t")


@pytest.mark.parametrize(
    ("rule", "wrong"),
    [
        ('column = "size"\nruns = "falling"\nalong = "awg"', "'size', which is no column"),
        ('column = "remark"\nruns = "falling"\nalong = "awg"', "compares remark, which is text"),
        ('runs = "falling"\nalong = "awg"', "None, which is no column"),
        ('column = "force_lbf"\nalong = "awg"', "None is none of rising"),
        ('no_gaps = ["awg", "force_lbf"]', "compares awg, which is gauge"),
        ("no_gaps = 5", "names two columns"),
        ('column = "force_lbf"\nruns = "falling"\nalong = "awg"\nwithin = ["x"]', "'x', which is"),
    ],
)
def test_a_rule_that_cannot_be_checked_is_refused(tmp_path: Path, rule: str, wrong: str) -> None:
    with pytest.raises(TableError) as caught:
        sidecar = SIDECAR.partition("[[rules]]")[0] + f"[[rules]]\n{rule}\n"
        tables.read(write(tmp_path, sidecar=sidecar), "t")
    assert wrong in str(caught.value)


def test_bytes_that_are_no_text_are_refused(tmp_path: Path) -> None:
    (write(tmp_path) / "t.toml").write_bytes(SIDECAR.encode() + b"# \xff")
    with pytest.raises(TableError, match="its sidecar cannot be read"):
        tables.read(tmp_path, "t")


def test_wrong_header_is_refused(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"the header has .size., and its sidecar no such column"):
        tables.read(write(tmp_path, header=HEADER.replace("awg", "size")), "t")


@pytest.mark.parametrize(
    ("bands", "wrong"),
    [
        ("1,3\n4,6\n7,\n", ""),
        ("1,3\n5,6\n7,\n", "after 3 comes 5"),
        ("1,3\n3,6\n7,\n", "after 3 comes 3"),
    ],
)
def test_bands_without_gaps(tmp_path: Path, bands: str, wrong: str) -> None:
    sidecar = """
title = "bands"
purpose = "tests"
not_for = "anything else"
checked = "by hand"
key = ["from_count"]
[sources.demo]
title = "invented"
[columns.from_count]
type = "integer"
[columns.to_count]
type = "integer"
required = false
[[rules]]
no_gaps = ["from_count", "to_count"]
"""
    rows = "".join(f"{line},demo,demo,0,\n" for line in bands.split())
    write(tmp_path, rows, sidecar, "from_count,to_count,source,confidence,copies,note\n")
    if wrong:
        with pytest.raises(TableError, match=wrong):
            tables.read(tmp_path, "t")
    else:
        assert len(tables.read(tmp_path, "t").rows) == 3


def test_unknown_table_names_the_nearest() -> None:
    with pytest.raises(TableError, match=r"did you mean pull-crimp\?"):
        tables.load("pull-crimps")


def test_added_folder_is_searched_behind_the_bundled_one(tmp_path: Path) -> None:
    write(tmp_path)
    try:
        tables.use_folders([tmp_path])
        assert "t" in tables.names()
        assert tables.load("t").folder == str(tmp_path)
        assert tables.load("awg").folder == str(tables.bundled_folder())
    finally:
        tables.use_folders([])
    with pytest.raises(TableError, match="there is no table t"):
        tables.load("t")


def test_what_is_made_of_a_table_is_made_once_and_ends_with_it() -> None:
    made: list[str] = []

    def first(table: tables.Table, column: str) -> str:
        made.append(table.name)
        return table.rows[0].text(column)

    published = tables.load("awg")
    assert published.made(first, "awg") == published.made(first, "awg")
    assert published.made(first, "diameter_in") != published.made(first, "awg")
    assert made == ["awg", "awg"]  # once for each key
    turned = replace(published, rows=published.rows[::-1])
    with tables.instead([turned]):
        assert tables.load("awg").made(first, "awg") == turned.rows[0].text("awg")
    assert tables.load("awg").made(first, "awg") == published.rows[0].text("awg")


def test_nobody_changes_a_published_value() -> None:
    table = tables.load("pull-crimp")
    row = table.rows[0]
    for part in (row.cells, row.printed, table.sources):
        with pytest.raises(TypeError, match="does not support item assignment"):
            part["minimum_lbf"] = 1.0  # type: ignore[index]


NO_LIMITS = {  # remembered values of these are no limits: properties, textbook motors, words
    "cautions",
    "job-confirmed",
    "metals",
    "strandings",
    "textbook-start-windings",
    "wire-break",
}


@pytest.mark.parametrize("name", [n for n in tables.names() if n not in NO_LIMITS])
def test_a_table_says_how_far_off_its_remembered_limits_may_be(name: str) -> None:
    recalled = {r.source for r in tables.load(name).rows if r.source.confidence == "memory"}
    assert [s.key for s in recalled if not s.off] == []


def test_how_far_off_is_an_amount_and_its_unit(tmp_path: Path) -> None:
    said = SIDECAR.replace('title = "invented"', 'title = "invented"\noff = "OFF"')
    write(tmp_path, sidecar=said.replace("OFF", "2 lbf"))
    assert read_file(tmp_path, "t")[0].rows[0].source.off == "2 lbf"
    write(tmp_path, sidecar=said.replace("OFF", "a lot"))
    with pytest.raises(TableError, match="may be off by 'a lot'"):
        read_file(tmp_path, "t")
