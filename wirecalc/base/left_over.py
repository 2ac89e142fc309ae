"""What killed runs left behind: it is removed when it is certainly dead."""

from __future__ import annotations

import contextlib
import os
import re
import stat
import tempfile
from collections.abc import Iterable
from pathlib import Path

DEAD_AFTER = 24 * 3600  # seconds; writing a folder takes less than one


def lock(handle: int) -> bool:
    """Hold a file that is written, where the system has that; False where another holds it."""
    try:
        import fcntl
    except ImportError:  # there an open file cannot be removed anyway
        return True
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:  # a disk that knows no locks
        return True
    return True


def remove_dead_beside(path: Path) -> None:
    """Remove what killed runs left beside a file that they were to write; trouble is passed over.

    Dead is what nobody has touched for a day and no run on this machine holds. Most folders have
    none, and then nothing but their names is looked at.
    """
    left_over = re.compile(rf"\.{re.escape(path.name)}\.\w{{8}}")
    with contextlib.suppress(OSError):
        with os.scandir(path.parent) as entries:
            found = [Path(e) for e in entries if left_over.fullmatch(e.name)]
        now = _clock(path.parent) if found else 0.0
        for one in found:
            with contextlib.suppress(OSError):
                about = one.lstat()
                dead = stat.S_ISREG(about.st_mode) and now - about.st_mtime > DEAD_AFTER
                if dead and not _held(one):
                    one.unlink()


def remove_dead(folder: Path, names: str, contents: Iterable[str]) -> None:
    """Remove from a folder what killed runs of `files.write_folder` left there.

    `names` is a pattern of the names that are written there, `contents` the files in each;
    nothing else is touched, and trouble is passed over.

    Dead is what nobody has touched for a day, by the clock of the file system: machines may share
    the folder, so that the number of a process says nothing. It is renamed first. A writer that
    slept for so long then finds its folder gone and fails as a whole.
    """
    left_over = re.compile(rf"\.(?:{names})\.\w{{8}}(-dead)?")
    with contextlib.suppress(OSError):
        now = _clock(folder)
        with os.scandir(folder) as entries:
            dead = [Path(e) for e in entries if left_over.fullmatch(e.name) and _old(e, now)]
        for path in dead:
            with contextlib.suppress(OSError):
                marked = path.with_name(path.name.removesuffix("-dead") + "-dead")
                path.rename(marked)
                _remove(marked, contents)


def _clock(folder: Path) -> float:
    """Return the time by the clock of the disk that a folder is on: machines may share it."""
    with tempfile.TemporaryFile(dir=folder, prefix=".") as probe:
        return os.fstat(probe.fileno()).st_mtime


def _held(path: Path) -> bool:
    with path.open("rb") as file:
        return not lock(file.fileno())


def _old(entry: os.DirEntry[str], now: float) -> bool:
    try:
        touched = entry.stat(follow_symlinks=False).st_mtime
    except FileNotFoundError:  # its writer has just renamed it
        return False
    return entry.is_dir(follow_symlinks=False) and now - touched > DEAD_AFTER


def _remove(folder: Path, contents: Iterable[str]) -> None:
    with contextlib.suppress(OSError):
        for name in contents:
            (folder / name).unlink(missing_ok=True)
        folder.rmdir()
