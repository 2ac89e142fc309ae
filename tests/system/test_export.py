"""`wirecalc job --export FOLDER`, and the chart of `--history`: what a shop asks its records."""

from __future__ import annotations

import contextlib
import csv
import re
import shutil
import sqlite3
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from wirecalc.jobs import record
from wirecalc.jobs.record_rows import rows_of
from wirecalc.jobs.record_tables import TABLES

from .exported import recorded

pytest.importorskip("pyarrow")
Command = Callable[..., Any]
PAGE = Path(__file__).parents[2] / "docs" / "export.md"
FILES = {"records.sqlite"} | {f"{t.name}.{e}" for t in TABLES for e in ("csv", "parquet")}


@pytest.fixture(scope="module")
def year(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The records of the invented shop, in their folder."""
    return recorded(tmp_path_factory.mktemp("year") / "records")


@pytest.fixture
def shop(year: Path, tmp_path: Path) -> Path:
    """A copy of them, to change."""
    return Path(shutil.copytree(year, tmp_path / "records"))


def rows(folder: Path, table: str) -> list[tuple[Any, ...]]:
    with contextlib.closing(sqlite3.connect(folder / "records.sqlite")) as opened:
        return opened.execute(f"SELECT * FROM {table} ORDER BY record").fetchall()


def lines(folder: Path, table: str) -> list[dict[str, str]]:
    with (folder / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def all_of(folder: Path) -> dict[str, Any]:
    """All that an export says: the files to the byte, but the rows of the database."""
    found: dict[str, Any] = {t.name: rows(folder, t.name) for t in TABLES}
    found |= {p.name: p.read_bytes() for p in folder.iterdir() if p.suffix != ".sqlite"}
    return found


def test_an_export_has_every_file_and_every_job(cli_main: Command, shop: Path) -> None:
    done = cli_main("job", "--export", str(shop))
    to = shop.with_name("records-tables")
    assert (done.status, done.err, done.out.splitlines()[0]) == (0, "", "7 new")
    assert {p.name for p in to.iterdir()} == FILES
    assert [r["date"] for r in lines(to, "records")] == sorted(p.name[:10] for p in shop.iterdir())
    forces = {r["value"]: r["low"] for r in lines(to, "readings") if r["name"] == "force"}
    assert forces["25.4"] == "25.2"  # 25.4 lbf ±0.2 lbf
    (pull,) = (r for r in lines(to, "criteria") if r["low"] == "25.2")
    assert (pull["limit_at"], pull["unit"], pull["verdict"]) == ("20.0", "lbf", "pass")
    assert "UL 486A" in pull["source"]
    assert {r["tool"] for r in lines(to, "checks")} == {"", "crimper A", "crimper B"}


def test_csv_parquet_and_the_database_say_the_same(cli_main: Command, shop: Path) -> None:
    from pyarrow import parquet

    cli_main("job", "--export", str(shop))
    to = shop.with_name("records-tables")
    for table in TABLES:
        found = parquet.read_table(to / f"{table.name}.parquet").to_pylist()
        assert [tuple(row.values()) for row in found] == rows(to, table.name)
        text = [["" if v is None else str(v) for v in row.values()] for row in found]
        assert [list(row.values()) for row in lines(to, table.name)] == text
        shown = [c.name for c in table.columns if not c.names]
        assert (list(found[0]), list(lines(to, table.name)[0])) == (shown, shown)


def test_a_second_export_reads_only_what_is_new(
    cli_main: Command, shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    later = shop / max(p.name for p in shop.iterdir())
    away = Path(shutil.move(later, tmp_path / later.name))
    to = shop.with_name("records-tables")
    cli_main("job", "--export", str(shop))
    read: list[str] = []
    plain = record.read

    def watched(path: Path) -> dict[str, Any]:
        read.append(path.name)
        return plain(path)

    monkeypatch.setattr(record, "read", watched)
    before = {p.name: p.stat().st_mtime_ns for p in to.iterdir()}
    again = cli_main("job", "--export", str(shop))
    assert again.out.startswith("0 new, 6 as before\n")
    assert (read, before) == ([], {p.name: p.stat().st_mtime_ns for p in to.iterdir()})
    shutil.move(away, shop)
    more = cli_main("job", "--export", str(shop))
    assert (more.out.splitlines()[0], read) == ("1 new, 6 as before", [later.name])
    cli_main("job", "--export", str(shop), "--output", str(tmp_path / "at once"))
    assert all_of(to) == all_of(tmp_path / "at once")


def test_what_was_deleted_leaves_the_tables_and_their_files(cli_main: Command, shop: Path) -> None:
    to = shop.with_name("records-tables")
    cli_main("job", "--export", str(shop))
    assert b"QA-12" in (to / "records.sqlite").read_bytes()
    (dryer,) = shop.glob("2026-04-13-*")
    shutil.rmtree(dryer)
    done = cli_main("job", "--export", str(shop))
    assert done.out.startswith("0 new, 1 taken away, 6 as before\n")
    for path in to.iterdir():
        assert b"QA-12" not in path.read_bytes(), path.name
    assert all(known[:10] != "2026-04-13" for t in TABLES for known, *_ in rows(to, t.name))


def test_a_damaged_record_is_named_and_tried_again(
    cli_main: Command, shop: Path, tmp_path: Path
) -> None:
    (hurt,) = shop.glob("2026-03-02-*")
    page = (hurt / "report.html").read_bytes()
    (hurt / "report.html").write_bytes(b"")
    (shop / "notes.txt").write_text("mine")
    twice = shutil.copytree(next(shop.glob("2026-01-12-*")), shop / "2026-01-12-x-00000000")
    twice.rename(shop / next(shop.glob("2026-01-12-h*")).name.replace("hums", "zums"))
    done = cli_main("job", "--export", str(shop))
    assert (done.status, done.out.count("not read: ")) == (3, 3)
    said = " ".join(done.out.split())
    assert f"{hurt.name}: was changed after it was recorded" in said
    assert "notes.txt: is not named as a record is" in said
    assert "once more" in said
    (hurt / "report.html").write_bytes(page)
    assert cli_main("job", "--export", str(shop)).out.splitlines()[0] == "1 new, 6 as before"


SECRET = "Zz"  # stands in every word that may name somebody
NAMING = """
[job]
title = "Zztitle of Mrs Zzname"
kind = "other"
date = 2026-05-05
technician = "Zztech"
work = "Zzwork"
hand_over = "Zzover"
circuit = "Zzcircuit"
customer = "Zzcustomer, Zzstreet 5"
callback_of = "Zzearlier"
machine = "washer QA-7"

[[check]]
calculation = "pull"
name = "pump lead of Zzcheck"
note = "Zznote"
tool = "=HYPERLINK(1)"
part = "-ring"
wire = "18 AWG"
terminal = "ring"
force = "24 lbf"

[[check]]
calculation = "pull-batch"
wire = "18 AWG"
terminal = "ring"
readings = "Zzclass.csv"
by = ["trainee"]
names = "yes"

[[not_tested]]
name = "insulation for Zzmissing"
required = false
reason = "Zzreason"
"""


@pytest.fixture
def naming(cli_main: Command, tmp_path: Path) -> Path:
    (tmp_path / "naming.toml").write_text(NAMING, encoding="utf-8")
    pulls = (f"{who},{force}" for who in ("Zzann", "Zzbob") for force in (24, 25, 26, 25.5, 24.5))
    (tmp_path / "Zzclass.csv").write_text("\n".join(["trainee,force_lbf", *pulls, ""]))
    shop = tmp_path / "records"
    assert cli_main("job", str(tmp_path / "naming.toml"), "--record", str(shop)).status in (1, 3)
    return shop


def test_no_person_is_named_unless_it_is_asked_for(cli_main: Command, naming: Path) -> None:
    from pyarrow import parquet

    to = naming.with_name("records-tables")

    def said() -> str:
        files = [p.read_bytes().decode("utf-8", "replace") for p in to.iterdir()]
        parts = [str(parquet.read_table(p).to_pylist()) for p in to.glob("*.parquet")]
        return "".join([*files, *parts]).casefold()

    for words in ((), ("--with-names",), ()):
        done = cli_main("job", "--export", str(naming), *words)
        assert done.out.splitlines()[0] == "1 new"  # other columns: all is made anew
        named = {w.casefold() for w in [*re.findall(r"Zz\w+", NAMING), "Zzann", "Zzbob"]}
        assert {w for w in named if w in said()} == (named if words else set())
    assert len(list(to.iterdir())) == len(FILES)
    assert {c["name"][:9] for c in lines(to, "criteria")} >= {"group 1: ", "group 2: "}
    assert "file, 10 rows" in {r["words"] for r in lines(to, "readings")}


def test_a_formula_is_defused_in_csv_alone(cli_main: Command, naming: Path) -> None:
    cli_main("job", "--export", str(naming))
    to = naming.with_name("records-tables")
    check, _ = lines(to, "checks")
    assert (check["tool"], check["part"]) == ("'=HYPERLINK(1)", "'-ring")
    at = [c.name for c in TABLES[1].shown(with_names=False)].index("tool")
    assert rows(to, "checks")[0][at] == "=HYPERLINK(1)"


@pytest.mark.parametrize("at", [1, 3, 11])
def test_an_export_that_is_broken_off_is_done_again(
    cli_main: Command, shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, at: int
) -> None:
    """The disk is full at the first, third, last file."""
    away = Path(shutil.move(next(shop.glob("2026-06-*")), tmp_path))
    to = shop.with_name("records-tables")
    cli_main("job", "--export", str(shop))
    shutil.move(away, shop)
    flushed: list[int] = []

    def full(handle: int) -> None:
        flushed.append(handle)
        if len(flushed) == at:
            raise OSError(28, "No space left on device")

    with monkeypatch.context() as broken:
        broken.setattr("wirecalc.base.files.os.fsync", full)
        done = cli_main("job", "--export", str(shop))
    assert (done.status, done.out) == (2, "")
    assert "No space left on device" in done.err
    assert {p.name for p in to.iterdir()} == FILES
    assert len(rows(to, "records")) == 6
    assert cli_main("job", "--export", str(shop)).out.splitlines()[0] == "1 new, 6 as before"
    cli_main("job", "--export", str(shop), "--output", str(tmp_path / "at once"))
    assert all_of(to) == all_of(tmp_path / "at once")


def test_a_file_of_tables_that_was_lost_is_written_again(cli_main: Command, shop: Path) -> None:
    to = shop.with_name("records-tables")
    cli_main("job", "--export", str(shop))
    (to / "checks.csv").unlink()
    cli_main("job", "--export", str(shop))
    assert len(lines(to, "checks")) == 11  # 7 pulls and 4 starts


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--export", "{shop}", "x.toml"), "'x.toml': --export takes no sheet"),
        (("--export", "{shop}", "--format", "json"), "write text, or leave it out"),
        (("--export", "{shop}", "--record", "{shop}"), "--record: means nothing beside --export"),
        (("--export", "{shop}", "--output", "{shop}/tables"), "is the folder of the records, or"),
        (("--export", "{shop}", "--output", "{shop}"), "is the folder of the records, or in it"),
        (("--export", "{shop}-none"), "there is no such folder"),
        (("--export", ""), "--export: is empty"),
        (("--export", "{shop}", "--output", "{shop}-a/b"), "the folder above it is not there"),
        (("x.toml", "--with-names"), "--with-names: means nothing without --export"),
        (("x.toml", "--chart", "x.svg"), "--chart: means nothing without --history"),
        (("--history", "{shop}", "--tool", "A"), "--tool: means nothing without --chart"),
        (("--history", "{shop}", "--chart", "x.jpg"), "'x.jpg' is none of .svg, .png, .csv"),
        (("--history", "{shop}", "--chart", "{shop}.svg"), "name one of crimper A, crimper B"),
        (("--history", "{shop}", "--chart", "{shop}.svg", "--tool", "C"), "'C' pulled nothing"),
    ],
)  # fmt: skip
def test_what_cannot_be_done_is_said(
    cli_main: Command, year: Path, words: tuple[str, ...], said: str
) -> None:
    done = cli_main("job", *(w.replace("{shop}", str(year)) for w in words))
    assert (done.status, done.out) == (2, "")
    assert said in done.err
    assert {p.name for p in year.parent.iterdir()} <= {"records"}


@pytest.mark.parametrize("content", [b"mine", "a database of another"])
def test_a_file_of_another_is_not_written_over(
    cli_main: Command, shop: Path, content: bytes | str
) -> None:
    path = shop.with_name("records-tables") / "records.sqlite"
    path.parent.mkdir()
    if isinstance(content, bytes):
        path.write_bytes(content)
    else:
        with contextlib.closing(sqlite3.connect(path)) as other:
            other.execute("CREATE TABLE records (a)")
    before = path.read_bytes()
    done = cli_main("job", "--export", str(shop))
    assert (done.status, path.read_bytes()) == (2, before)
    assert f"{path}: " in done.err


def test_the_database_says_what_its_columns_hold(cli_main: Command, shop: Path) -> None:
    cli_main("job", "--export", str(shop))
    with contextlib.closing(sqlite3.connect(shop.with_name("records-tables") / "records.sqlite")) as opened:  # fmt: skip  # noqa: E501
        told = opened.execute("SELECT of_table, name FROM columns").fetchall()
    assert told == [(t.name, c.name) for t in TABLES for c in t.columns if not c.names]


def test_every_column_is_filled_by_its_own_cell(shop: Path) -> None:
    """A cell too many or too few would move all behind it."""
    for path in shop.iterdir():
        for name, found in rows_of(path.name, record.read(path), with_names=True).items():
            (columns,) = (t.columns for t in TABLES if t.name == name)
            assert {len(row) for row in found} <= {len(columns)}
            types = {"text": str, "number": float | None, "integer": int}
            assert all(isinstance(v, types[c.type]) for row in found
                       for v, c in zip(row, columns, strict=True))  # fmt: skip


# What the sheets of docs/examples/shop-year come to, worked out from them by hand: a pull of F lbf
# ±0.2 lbf on 18 AWG is (F - 0.2) / 20 of its least, 26.8 / 20 = 134 %.
ANSWERS = [
    [("2026-02-09", "2.1"), ("2026-06-08", "1.4")],
    [("crimper A", "2026-01", "1", "134"), ("crimper A", "2026-02", "1", "126"),
     ("crimper A", "2026-03", "1", "118"), ("crimper A", "2026-04", "1", "109.5"),
     ("crimper A", "2026-06", "1", "103.5"), ("crimper B", "2026-03", "1", "130"),
     ("crimper B", "2026-05", "1", "129")],
    [("2026-03-16", "crimp came off", "2026-02-09", "pull", "ring 18 AWG (invented)", "crimper A",
      "pass")],
    [("refrigerator",)] * 4 + [("washer",)] * 4,
    [("2026-06-08", "pull", "pull-out force", "20.7", "20", "lbf", "3.5"),
     ("2026-04-13", "pull", "pull-out force", "21.9", "20", "lbf", "9.5")],
]  # fmt: skip


def test_the_answers_of_the_page_are_those_of_the_sheets() -> None:
    """That they are what the database says is tested where the page is made."""
    shown = re.findall(r"^```text\n(.*?)^```", PAGE.read_text(encoding="utf-8"), re.M | re.S)
    cells = [[re.split(r"  +", line) for line in answer.splitlines()[1:]] for answer in shown]
    assert len(cells) == 5
    for found, expected in zip(cells, ANSWERS, strict=True):
        assert [tuple(f[: len(e)]) for f, e in zip(found, expected, strict=True)] == expected


def test_the_pulls_of_a_tool_are_drawn_over_time(
    cli_main: Command, shop: Path, tmp_path: Path
) -> None:
    words = ("job", "--history", str(shop), "--tool", "CRIMPER a", "--chart")
    told = cli_main(*words, str(tmp_path / "a.csv"))
    assert (told.status, told.out) == (0, cli_main("job", "--history", str(shop)).out)
    drawn = list(csv.reader((tmp_path / "a.csv").read_text(encoding="utf-8").splitlines()))
    assert drawn[0][2:] == ["time since 2026-01-12 (days)", "pull, of the least that it had to hold (%)"]  # fmt: skip  # noqa: E501
    found = [(float(x), round(float(y), 6)) for kind, _, x, y in drawn[1:] if kind == "point"]
    # days from 12 January to 9 February, 16 March, 13 April, 8 June
    assert found == [(0, 134), (28, 126), (63, 118), (91, 109.5), (147, 103.5)]
    assert drawn[-1] == ["limit", "limit", "", "100.0"]
    cli_main(*words, str(tmp_path / "a.svg"))
    said = " ".join((tmp_path / "a.svg").read_text(encoding="utf-8").split())
    assert "5 pulls of crimper A from 2026-01-12 to 2026-06-08" in said
    assert "Lowest: 103.5 % on 2026-06-08" in said
    assert "Fewer than 10: too few to tell a drift." in said
