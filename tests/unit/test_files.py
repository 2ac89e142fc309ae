"""A file is written whole or not at all."""

from pathlib import Path

import pytest

from wirecalc import files
from wirecalc.errors import BadInput


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

    monkeypatch.setattr("wirecalc.files.os.fsync", full)
    with pytest.raises(BadInput, match="No space left on device"):
        files.write_whole(target, "new\n")
    assert target.read_text() == "old\n"
    assert list(tmp_path.iterdir()) == [target]


def test_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match=r"nowhere.*cannot be written"):
        files.write_whole(tmp_path / "nowhere" / "out.txt", "x")
