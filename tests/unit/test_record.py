"""One record of the shop: its name, its three files, and what is wrong with a damaged one."""

from __future__ import annotations

import datetime
import hashlib
import json
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from wirecalc.base.errors import BadInput, BadText
from wirecalc.jobs import record

DAY = datetime.date(2026, 11, 25)
JOB = json.dumps({"schema": "wirecalc.job/1", "verdict": "pass", "checks": [], "not_tested": []})
ONE = record.Record(DAY, "Does not cool!", b"[job]\n", JOB, "<!DOCTYPE html>")


def test_a_record_is_three_files_under_a_dated_name(tmp_path: Path) -> None:
    where, new = record.store(ONE, tmp_path / "shop")
    digits = hashlib.sha256(b"[job]\n" + JOB.encode() + b"<!DOCTYPE html>").hexdigest()[:8]
    assert new
    assert where == tmp_path / "shop" / f"2026-11-25-does-not-cool-{digits}"
    assert sorted(p.name for p in where.iterdir()) == ["job.json", "report.html", "sheet.toml"]
    assert (where / "sheet.toml").read_bytes() == b"[job]\n"
    assert record.read(where)["verdict"] == "pass"
    assert record.store(ONE, tmp_path / "shop") == (where, False)
    assert list(record.entries(tmp_path / "shop")) == [where.name]


@pytest.mark.parametrize(
    ("title", "plain"),
    [
        ("Refrigerator: does not cool", "refrigerator-does-not-cool"),
        ("../../etc/passwd", "etc-passwd"),
        ("Öl & Kühlung", "ol-kuhlung"),
        ("冷蔵庫", "job"),
        ("---", "job"),
        ("a" * 39 + " b", "a" * 39),
        ("w " * 60, "w-" * 19 + "w"),
    ],
)
def test_a_title_becomes_a_plain_name(title: str, plain: str) -> None:
    name = ONE._replace(title=title).name
    assert name.rpartition("-")[0] == f"2026-11-25-{plain}"
    assert record.named_date(name) == DAY


@pytest.mark.parametrize(
    ("said", "date"),
    [
        (DAY, DAY),
        (datetime.datetime(2026, 11, 25, 23, 30, tzinfo=datetime.UTC), DAY),
        ("2026-11-25", DAY),
        (" 2026-11-25T14:00 ", DAY),
        ("last Wednesday", None),
        ("25.11.2026", None),
        (20261125, None),
        (None, None),
        ("", None),
    ],
)
def test_the_date_of_a_sheet(said: object, date: datetime.date | None) -> None:
    assert record.date_of(said) == date


def _rewrite(path: Path, name: str, content: bytes) -> None:
    """Write a file of a record, and give the record the name that fits."""
    (path / name).write_bytes(content)
    fits = b"".join((path / n).read_bytes() for n in record.FILES)
    path.rename(path.with_name(path.name[:-8] + hashlib.sha256(fits).hexdigest()[:8]))


def _put_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def _put_file(path: Path) -> None:
    shutil.rmtree(path)
    path.write_bytes(b"")


CHANGED, NO_JSON = "was changed after it was recorded", "job.json is no JSON"
NO_JOB, NO_NAME = "job.json is not wirecalc.job/1", "is not named as a record is"
DAMAGE: dict[str, tuple[Callable[[Path], object], str]] = {
    "a file is missing": (lambda p: (p / "report.html").unlink(), "report.html is missing"),
    "a file was changed": (lambda p: (p / "sheet.toml").write_bytes(b"[jab]\n"), CHANGED),
    "a file was cut": (lambda p: (p / "report.html").write_bytes(b"<!DOC"), CHANGED),
    "a folder for a file": (lambda p: _put_folder(p / "job.json"), "job.json is no file"),
    "no JSON": (lambda p: _rewrite(p, "job.json", b"{"), NO_JSON),
    "too deep": (lambda p: _rewrite(p, "job.json", b"[" * 99_999), NO_JSON),
    "no text": (lambda p: _rewrite(p, "job.json", b'"\xff"'), NO_JSON),
    "a list": (lambda p: _rewrite(p, "job.json", b"[]"), NO_JOB),
    "another schema": (lambda p: _rewrite(p, "job.json", b'{"schema": "x/2"}'), NO_JOB),
    "another name": (lambda p: p.rename(p.with_name("mine")), NO_NAME),
    "no such day": (lambda p: p.rename(p.with_name(p.name.replace("11-25", "11-31"))), NO_NAME),
    "a file of that name": (_put_file, "is no folder"),
}


@pytest.mark.parametrize("name", DAMAGE)
def test_a_damaged_record_is_refused_with_the_reason(tmp_path: Path, name: str) -> None:
    damage, says = DAMAGE[name]
    where, _ = record.store(ONE, tmp_path)
    record.read(where)
    damage(where)
    (left,) = tmp_path.iterdir()
    with pytest.raises(BadText, match=says):
        record.read(left)


def test_a_name_that_is_taken_is_never_written_over(tmp_path: Path) -> None:
    """Two contents with the same eight digits, or a damaged record of the same job."""
    where, _ = record.store(ONE, tmp_path)
    (where / "sheet.toml").write_bytes(b"other")
    with pytest.raises(BadInput, match="holds something else"):
        record.store(ONE, tmp_path)
    assert (where / "sheet.toml").read_bytes() == b"other"
    assert list(tmp_path.iterdir()) == [where]


def test_a_file_in_place_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "shop").write_text("mine")
    for folder in (tmp_path / "shop", tmp_path / "shop" / "inside"):
        with pytest.raises(BadInput, match="there is a file of that name, or above it"):
            record.store(ONE, folder)
    assert (tmp_path / "shop").read_text() == "mine"


def test_a_folder_above_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="the folder above it is not there"):
        record.store(ONE, tmp_path / "a" / "b")
    assert list(tmp_path.iterdir()) == []


def test_a_full_disk_leaves_not_even_the_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: int, __: bytes) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("wirecalc.base.files._fill", full)
    with pytest.raises(BadInput, match="No space left on device"):
        record.store(ONE, tmp_path / "shop")
    assert list(tmp_path.iterdir()) == []


@pytest.fixture
def closed() -> Iterator[Path]:
    """A folder that this process may read and not write; root becomes nobody meanwhile."""
    folder = Path(tempfile.mkdtemp())
    folder.chmod(0o555)
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    if root:
        os.seteuid(65534)
    yield folder
    if root:
        os.seteuid(0)
    folder.chmod(0o755)
    shutil.rmtree(folder)


def test_a_folder_that_is_not_writable(closed: Path) -> None:
    with pytest.raises(BadInput, match=r"cannot be written \(Permission denied\)"):
        record.store(ONE, closed)
    with pytest.raises(BadInput, match=r"cannot be made \(Permission denied\)"):
        record.store(ONE, closed / "shop")
    assert list(closed.iterdir()) == []


def test_what_killed_runs_left_is_ignored_and_removed_when_it_is_dead(tmp_path: Path) -> None:
    where, _ = record.store(ONE, tmp_path)
    for ending in ("young123", "old12345"):
        left = where.with_name(f".{where.name}.{ending}")
        left.mkdir()
        (left / "sheet.toml").write_bytes(b"[jo")
    os.utime(left, (0, 0))
    assert list(record.entries(tmp_path)) == [where.name]
    record.store(ONE, tmp_path)
    hidden = [p.name for p in tmp_path.iterdir() if p.name.startswith(".")]
    assert hidden == [f".{where.name}.young123"]
