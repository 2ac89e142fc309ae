"""Writing a file, or a folder of files, whole or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
import stat
import tempfile
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import IO

from . import left_over
from .errors import BadInput, Problem

_TAKEN = (errno.EEXIST, errno.ENOTEMPTY, errno.ENOTDIR)  # what a rename onto something says
_ELSEWHERE = "choose another place with --output"
_NO_SYNC = (errno.EINVAL, errno.ENOTSUP)  # a file system that flushes no folder says so


def encoded(text: str) -> bytes:
    """Return a text as UTF-8, with a question mark for bytes of a name that were no text."""
    return text.encode(errors="replace")


def write_whole(path: Path, text: str) -> None:
    """Write a text file whole, as UTF-8; raises BadInput where it cannot be written."""
    write_bytes(path, encoded(text))


def write_new(path: Path, text: str) -> None:
    """Write a text file whole, as UTF-8, where none is; raises BadInput where one is there."""
    with _beside(path, _link) as file:
        file.write(encoded(text))


def write_bytes(path: Path, content: bytes) -> None:
    """Write a file whole; raises BadInput where it cannot be written."""
    with whole(path) as file:
        file.write(content)


def whole(path: Path) -> contextlib.AbstractContextManager[IO[bytes]]:
    """Give a file to write piece by piece: beside its place, then flushed, then renamed.

    The file is there whole when the block has ended, and nothing is left where it did not end.
    A link stays a link to it. A pipe or a device has no whole and is written into as it is, never
    replaced. Raises BadInput, naming the file, where it cannot be written.
    """
    if is_special(path):
        return _into(path)
    linked = os.path.islink(path)  # noqa: PTH114 (Path's raises where a folder above is closed)
    return _beside(Path(os.path.realpath(path)) if linked else path, os.replace)


@contextlib.contextmanager
def whole_by_name(path: Path) -> Iterator[Path]:
    """Give the name of an empty file that another library writes; else as `whole`."""
    with _beside(path, os.replace) as file:
        yield Path(file.name)


def is_special(path: Path) -> bool:
    """Whether a pipe, a device or the like is there."""
    with contextlib.suppress(OSError):
        mode = path.stat().st_mode
        return not (stat.S_ISREG(mode) or stat.S_ISDIR(mode))
    return False


@contextlib.contextmanager
def _into(path: Path) -> Iterator[IO[bytes]]:
    try:
        with path.open("wb") as file:
            yield file
    except OSError as error:
        raise unwritten(path, error, _ELSEWHERE) from None


def _link(beside: str, path: Path) -> None:
    """Give a finished file its name, unless another has it: nothing is ever overwritten."""
    try:
        os.link(beside, path)
    except FileExistsError:
        wrong = "is there already, and stays as it is"
        raise BadInput([Problem(str(path), wrong, _ELSEWHERE)]) from None
    except OSError:  # a disk that knows no links
        if path.exists():
            raise
        os.replace(beside, path)  # noqa: PTH105
    else:
        os.unlink(beside)  # noqa: PTH108


@contextlib.contextmanager
def _beside(path: Path, name_it: Callable[[str, Path], None]) -> Iterator[IO[bytes]]:
    beside = None
    try:
        left_over.remove_dead_beside(path)
        handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        left_over.lock(handle)
        with open(beside, "wb", opener=lambda *_: handle) as file:
            yield file
            _flush(file)
        os.chmod(beside, mode_of(path))  # noqa: PTH101
        name_it(beside, path)
    except BaseException as error:  # an interrupt leaves nothing behind either
        if beside is not None:
            with contextlib.suppress(OSError):
                os.unlink(beside)  # noqa: PTH108
        if not isinstance(error, OSError):
            raise
        raise unwritten(path, error, _ELSEWHERE) from None


def mode_of(path: Path) -> int:
    """Return the rights of a file that is replaced, else those of any new one."""
    with contextlib.suppress(OSError):
        return stat.S_IMODE(path.stat().st_mode) & 0o777
    return 0o666 & ~_umask()


def write_folder(
    path: Path,
    contents: Mapping[str, bytes],
    would_do: str = "look into it; if it is damaged, move it away",
) -> bool:
    """Write a new folder of files beside its place, flush all of it, and rename it.

    It is there whole or not at all, whenever this is killed, and one that is there is never
    changed: the answer is False where it holds the same already. Raises BadInput, naming the
    folder, where it cannot be written or holds something else; then `would_do` says what to do.
    """
    beside = None
    try:
        if not os.path.lexists(path):
            beside = Path(tempfile.mkdtemp(dir=path.parent, prefix=f".{path.name}."))
            for name, content in contents.items():
                (beside / name).parent.mkdir(parents=True, exist_ok=True)
                _fill(beside / name, content)
            beside.chmod(0o777 & ~_umask())
            sync_folder(beside)
            if _renamed(beside, path):
                beside = None
                sync_folder(path.parent)
                return True
        same = _holds(path, contents)
    except OSError as error:
        raise unwritten(path, error, "choose another folder") from None
    finally:  # also when interrupted
        if beside is not None:
            shutil.rmtree(beside, ignore_errors=True)
    if same:
        return False
    wrong = "is there already, and holds something else"
    raise BadInput([Problem(str(path), wrong, would_do)])


def sync_folder(path: Path) -> None:
    """Flush the names that stand in a folder, where the system has that; raises OSError."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    handle = os.open(path, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in _NO_SYNC:
            raise
    finally:
        os.close(handle)


def _fill(path: Path, content: bytes) -> None:
    with path.open("xb") as file:
        file.write(content)
        _flush(file)


def _flush(file: IO[bytes]) -> None:
    file.flush()
    os.fsync(file.fileno())


def _renamed(beside: Path, path: Path) -> bool:
    """Rename a folder; False where something is there, which a rename never replaces."""
    try:
        os.rename(beside, path)  # noqa: PTH104
    except OSError as error:
        if error.errno in _TAKEN:
            return False
        raise
    return True


def _holds(path: Path, contents: Mapping[str, bytes]) -> bool:
    try:
        return all((path / name).read_bytes() == content for name, content in contents.items())
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError):
        return False


def unwritten(path: Path, error: OSError, would_do: str) -> BadInput:
    """Return what is wrong with a file or a folder that cannot be written."""
    if isinstance(error, PermissionError):
        with contextlib.suppress(OSError):
            held = path.is_file()
            would_do = f"is it open in another program? Else {would_do}" if held else would_do
    return BadInput(
        [Problem(str(path), f"cannot be written ({error.strerror or error})", would_do)]
    )


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
