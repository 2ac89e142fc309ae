"""A file of many lines that grows under another name until it is whole: NAME.part.

Where its run is broken off, however it was, what was written stands there for all to see, and a
later run may go on behind it.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path
from typing import IO

from . import left_over
from .errors import BadInput, Problem
from .files import is_special, mode_of, unwritten, whole

_ELSEWHERE = "choose another place with --output"


def part_of(path: Path) -> Path:
    """Return the name under which a file grows, beside the file itself where it is a link."""
    place = Path(os.path.realpath(path)) if os.path.islink(path) else path  # noqa: PTH114
    return place.with_name(f"{place.name}.part")


def refuse_unfinished(path: Path, would_do: str) -> None:
    """Raise BadInput where a run that was broken off left a part, and none is to go on with it."""
    if os.path.lexists(part_of(path)):
        wrong = "is there from a run that was broken off"
        raise BadInput([Problem(str(part_of(path)), wrong, would_do)])


@contextlib.contextmanager
def growing(path: Path, keep: int) -> Iterator[IO[bytes]]:
    """Give the part of a file to write on, behind so many bytes of it that are kept.

    It is flushed and gets its name when the block has ended; if it does not end, the part stays,
    unless nothing was written. A pipe or a device is written into as it is. Raises BadInput, naming
    the file, where it cannot be written, or is written by another run.
    """
    if is_special(path):
        with whole(path) as file:
            yield file
        return
    part = part_of(path)
    try:
        with part.open("r+b" if keep else "wb") as file:
            if not left_over.lock(file.fileno()):
                raise BadInput([Problem(str(part), "is written by another run", _ELSEWHERE)])
            os.chmod(part, mode_of(path))  # noqa: PTH101
            file.truncate(keep)
            file.seek(keep)
            try:
                yield file
            except BaseException:
                file.flush()
                if not file.tell():
                    part.unlink()
                raise
            file.flush()
            os.fsync(file.fileno())
        part.replace(part.with_name(part.name.removesuffix(".part")))
    except OSError as error:
        raise unwritten(path, error, _ELSEWHERE) from None
