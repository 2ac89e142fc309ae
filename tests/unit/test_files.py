"""A file, and a folder of files, is written whole or not at all."""

import os
import threading
import time
from pathlib import Path
from typing import Any

import pytest

from wirecalc.base import files, left_over, unfinished
from wirecalc.base.errors import BadInput


def test_writes_and_replaces(tmp_path: Path) -> None:
    target = tmp_path / "out.txt"
    files.write_whole(target, "one ±\n")
    files.write_whole(target, "two\n")
    assert target.read_text(encoding="utf-8") == "two\n"
    assert list(tmp_path.iterdir()) == [target]


def test_failure_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "out.txt"
    target.write_text("old\n")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("wirecalc.base.files.os.fsync", full)
    with pytest.raises(BadInput, match="No space left on device"):
        files.write_whole(target, "new\n")
    assert target.read_text() == "old\n"
    assert list(tmp_path.iterdir()) == [target]


def test_a_pipe_is_written_into_and_stays_a_pipe(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    reader = os.open(pipe, os.O_RDONLY | os.O_NONBLOCK)
    try:
        files.write_whole(pipe, "one\n")
        assert os.read(reader, 99) == b"one\n"
    finally:
        os.close(reader)
    assert pipe.is_fifo()
    assert list(tmp_path.iterdir()) == [pipe]


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    target = tmp_path / "real" / "out.txt"
    target.write_text("old\n")
    link = tmp_path / "link.txt"
    link.symlink_to(target)
    files.write_whole(link, "new\n")
    assert (link.is_symlink(), target.read_text()) == (True, "new\n")
    assert list((tmp_path / "real").iterdir()) == [target]


def test_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match=r"nowhere.*cannot be written"):
        files.write_whole(tmp_path / "nowhere" / "out.txt", "x")


TWO = {"a.txt": b"one", "b.txt": b"two"}


def test_a_folder_is_written_with_its_files(tmp_path: Path) -> None:
    target = tmp_path / "out"
    assert files.write_folder(target, TWO)
    assert {p.name: p.read_bytes() for p in target.iterdir()} == TWO
    assert list(tmp_path.iterdir()) == [target]


def test_a_folder_has_the_usual_rights(tmp_path: Path) -> None:
    (tmp_path / "usual").mkdir()
    (tmp_path / "usual" / "a.txt").write_bytes(b"")
    files.write_folder(tmp_path / "out", TWO)
    for usual, made in (("usual", "out"), ("usual/a.txt", "out/a.txt")):
        assert (tmp_path / made).stat().st_mode == (tmp_path / usual).stat().st_mode


def test_the_same_folder_is_not_written_again(tmp_path: Path) -> None:
    target = tmp_path / "out"
    files.write_folder(target, TWO)
    before = (target / "a.txt").stat().st_ino
    assert not files.write_folder(target, TWO)
    assert (target / "a.txt").stat().st_ino == before
    assert list(tmp_path.iterdir()) == [target]


def _state(path: Path) -> object:
    return {p.name: p.read_bytes() for p in path.iterdir()} if path.is_dir() else path.read_bytes()


@pytest.mark.parametrize("there", [{"a.txt": b"mine", "b.txt": b"two"}, {"a.txt": b"one"}, b"mine"])
def test_a_folder_with_something_else_is_never_changed(tmp_path: Path, there: Any) -> None:
    target = tmp_path / "out"
    if isinstance(there, bytes):
        target.write_bytes(there)
    else:
        files.write_folder(target, there)
    with pytest.raises(BadInput, match=r"out: is there already, and holds something else"):
        files.write_folder(target, TWO)
    assert list(tmp_path.iterdir()) == [target]
    assert _state(target) == there


def test_a_folder_that_came_up_meanwhile_is_never_changed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two writers may both have seen that it was not there; the second rename fails."""
    target = tmp_path / "out"
    files.write_folder(target, TWO)
    monkeypatch.setattr("wirecalc.base.files.os.path.lexists", lambda _: False)
    assert not files.write_folder(target, TWO)
    with pytest.raises(BadInput, match="holds something else"):
        files.write_folder(target, TWO | {"a.txt": b"other"})
    assert {p.name: p.read_bytes() for p in target.iterdir()} == TWO
    assert list(tmp_path.iterdir()) == [target]


def test_every_file_is_flushed_before_the_folder_shows_and_its_name_after(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A kill does not show this, a power cut would: the order of what is asked of the disk."""
    done: list[str] = []
    flush, rename = os.fsync, os.rename

    def spied_flush(handle: int) -> None:
        flush(handle)
        done.append(Path(f"/proc/self/fd/{handle}").readlink().name)

    def spied_rename(old: Any, new: Any) -> None:
        rename(old, new)
        done.append("renamed")

    if not Path("/proc/self/fd").is_dir():
        pytest.skip("which file a number stands for is seen under /proc only")
    monkeypatch.setattr("wirecalc.base.files.os.fsync", spied_flush)
    monkeypatch.setattr("wirecalc.base.files.os.rename", spied_rename)
    files.write_folder(tmp_path / "out", TWO)
    assert done[:2] == ["a.txt", "b.txt"]
    assert done[2].startswith(".out.")
    assert done[3:] == ["renamed", tmp_path.name]


@pytest.mark.parametrize("at", [1, 2, 3])
@pytest.mark.parametrize("error", [OSError(28, "No space left on device"), KeyboardInterrupt()])
def test_a_folder_that_fails_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, at: int, error: BaseException
) -> None:
    calls = 0

    def full(_: int) -> None:
        nonlocal calls
        calls += 1
        if calls == at:
            raise error

    monkeypatch.setattr("wirecalc.base.files.os.fsync", full)
    with pytest.raises((BadInput, KeyboardInterrupt)) as raised:
        files.write_folder(tmp_path / "out", TWO)
    assert "No space left" in str(raised.value) or isinstance(error, KeyboardInterrupt)
    assert list(tmp_path.iterdir()) == []


def test_many_writers_of_one_folder_agree(tmp_path: Path) -> None:
    target, wrote = tmp_path / "out", []
    ready = threading.Barrier(8)

    def write() -> None:
        ready.wait()
        wrote.append(files.write_folder(target, TWO))

    threads = [threading.Thread(target=write) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(wrote) == [False] * 7 + [True]
    assert list(tmp_path.iterdir()) == [target]


def _aged(path: Path, seconds: float) -> None:
    path.mkdir()
    (path / "a.txt").write_bytes(b"half")
    os.utime(path, (time.time() - seconds,) * 2)


def test_what_is_dead_is_removed_and_nothing_else(tmp_path: Path) -> None:
    day = left_over.DEAD_AFTER
    for name, age in {
        ".out.abcd_123": day + 60,
        ".out.efgh4567-dead": day + 60,
        ".out.young123": day - 60,
        ".other.abcd1234": day + 60,
        ".out": day + 60,
        "out": day + 60,
    }.items():
        _aged(tmp_path / name, age)
    (tmp_path / ".out.afile123").write_bytes(b"")
    os.utime(tmp_path / ".out.afile123", (0, 0))
    _aged(tmp_path / ".out.more1234", day - 60)
    (tmp_path / ".out.more1234" / "notes.txt").write_text("a person's")
    os.utime(tmp_path / ".out.more1234", (0, 0))
    left_over.remove_dead(tmp_path, "out", TWO)
    assert sorted(p.name for p in tmp_path.iterdir()) == [
        *(".other.abcd1234", ".out", ".out.afile123", ".out.more1234-dead", ".out.young123"),
        "out",
    ]
    assert [p.name for p in (tmp_path / ".out.more1234-dead").iterdir()] == ["notes.txt"]


def test_a_writer_that_slept_too_long_fails_as_a_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What it had written was taken for dead meanwhile: no half of it may show."""
    rename = os.rename

    def late(old: Any, new: Any) -> None:
        os.utime(old, (0, 0))
        monkeypatch.setattr("wirecalc.base.files.os.rename", rename)
        left_over.remove_dead(tmp_path, "out", ["a.txt"])
        rename(old, new)

    monkeypatch.setattr("wirecalc.base.files.os.rename", late)
    with pytest.raises(BadInput, match="cannot be written"):
        files.write_folder(tmp_path / "out", TWO)
    assert [p.name for p in tmp_path.iterdir() if not p.name.startswith(".")] == []


def test_pieces_are_there_when_the_last_is_written(tmp_path: Path) -> None:
    target = tmp_path / "out.txt"
    with files.whole(target) as file:
        file.write(b"one\n")
        assert not target.exists()
        file.write(b"two\n")
    assert target.read_bytes() == b"one\ntwo\n"


@pytest.mark.parametrize("broken_by", [KeyboardInterrupt, RuntimeError])
def test_what_is_broken_off_leaves_nothing(tmp_path: Path, broken_by: type[BaseException]) -> None:
    target = tmp_path / "out.txt"
    target.write_text("old\n")
    with pytest.raises(broken_by), files.whole(target) as file:
        file.write(b"half")
        raise broken_by
    assert target.read_text() == "old\n"
    assert list(tmp_path.iterdir()) == [target]


@pytest.mark.parametrize("mode", [0o600, 0o640, 0o444])
def test_what_is_replaced_keeps_its_mode(tmp_path: Path, mode: int) -> None:
    """A customer's report that nobody else may read stays so."""
    target = tmp_path / "report.html"
    target.write_text("old\n")
    target.chmod(mode)
    files.write_whole(target, "new\n")
    assert (target.read_text(), target.stat().st_mode & 0o777) == ("new\n", mode)


def _left_by_a_killed_run(folder: Path, name: str, days: float) -> Path:
    path = folder / name
    path.write_text("half of it")
    at = time.time() - days * 24 * 3600
    os.utime(path, (at, at))
    return path


def test_what_killed_runs_left_beside_a_file_is_removed(tmp_path: Path) -> None:
    dead = _left_by_a_killed_run(tmp_path, ".rows.csv.abcd_123", 1.01)
    stay = [
        _left_by_a_killed_run(tmp_path, ".rows.csv.abcd_124", 0.99),  # it may be at work
        _left_by_a_killed_run(tmp_path, ".rows.csv.abcd", 9),
        _left_by_a_killed_run(tmp_path, ".other.csv.abcd_123", 9),
        _left_by_a_killed_run(tmp_path, "rows.csv.abcd_123", 9),
    ]
    files.write_whole(tmp_path / "rows.csv", "all of it")
    assert not dead.exists()
    assert all(path.exists() for path in stay)


def test_what_is_at_work_for_more_than_a_day_stays(tmp_path: Path) -> None:
    """A batch that waits for its rows holds its file, whatever the clock says."""
    with files.whole(tmp_path / "rows.csv") as file:
        file.write(b"first\n")
        file.flush()
        (beside,) = tmp_path.iterdir()
        _left_by_a_killed_run(tmp_path, beside.name, 3)
        files.write_whole(tmp_path / "rows.csv", "another run")
        assert beside.exists()
        file.write(b"last\n")
    assert [p.name for p in tmp_path.iterdir()] == ["rows.csv"]


@pytest.mark.parametrize("mode", [0o600, 0o640])
def test_a_file_that_grows_has_the_rights_of_what_it_replaces_from_the_start(
    tmp_path: Path, mode: int
) -> None:
    target = tmp_path / "rows.csv"
    target.write_text("old\n")
    target.chmod(mode)
    with unfinished.growing(target, 0) as file:
        assert unfinished.part_of(target).stat().st_mode & 0o777 == mode
        file.write(b"new\n")
    assert (target.read_text(), target.stat().st_mode & 0o777) == ("new\n", mode)
