"""Writing a file whole or not at all."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Callable
from pathlib import Path

from .errors import BadInput, Problem


def write_whole(path: Path, text: str) -> None:
    """Write a text file whole, as UTF-8; raises BadInput where it cannot be written."""
    write_bytes(path, text.encode())


def write_new(path: Path, text: str) -> None:
    """Write a text file whole, as UTF-8, where none is; raises BadInput where one is there."""
    _write(path, text.encode(), _link)


def write_bytes(path: Path, content: bytes) -> None:
    """Write a file beside its place, flush it, and rename it: whole, or nothing is left.

    Raises BadInput, naming the file, where it cannot be written.
    """
    _write(path, content, os.replace)


def _link(beside: str, path: Path) -> None:
    """Give a finished file its name, unless another has it: nothing is ever overwritten."""
    try:
        os.link(beside, path)
    except FileExistsError:
        os.unlink(beside)  # noqa: PTH108
        wrong = "is there already, and stays as it is"
        raise BadInput([Problem(str(path), wrong, "choose another place with --output")]) from None
    except OSError:  # a disk that knows no links
        if path.exists():
            raise
        os.replace(beside, path)  # noqa: PTH105
    else:
        os.unlink(beside)  # noqa: PTH108


def _write(path: Path, content: bytes, name_it: Callable[[str, Path], None]) -> None:
    beside = None
    try:
        handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(beside, 0o666 & ~_umask())  # noqa: PTH101
        name_it(beside, path)
    except OSError as error:
        if beside is not None:
            with contextlib.suppress(OSError):
                os.unlink(beside)  # noqa: PTH108
        wrong = f"cannot be written ({error.strerror or error})"
        raise BadInput([Problem(str(path), wrong, "choose another place with --output")]) from None


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
