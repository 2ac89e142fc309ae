"""What a command comes to: a text, where it goes, and the exit status."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from ..base.errors import BadInput, Problem

if TYPE_CHECKING:
    from pathlib import Path

    from ..said.verdicts import Verdict

PASS, FAIL, WRONG, CANNOT_TELL = 0, 1, 2, 3
DEFECT = 4


class Stream(NamedTuple):
    """Lines that are printed as they come, and the exit status once they have."""

    lines: Iterator[str]
    status: Callable[[], int]


class Result(NamedTuple):
    """A text, where it goes, the exit status, and what to say on stderr before and after it.

    Where `grows_behind` is a number, the output grows as a part behind so many bytes of it.

    `again` is what is said once more below a text that is longer than the terminal it goes to.
    """

    text: str | Stream
    status: int = PASS
    output: Path | None = None
    warnings: Sequence[str] = ()
    closing: str = ""
    again: str = ""
    grows_behind: int | None = None


def refuse_onto(path: Path | None, read: Iterable[str]) -> None:
    """Raise BadInput where a result would be written over one of the files that are read for it."""
    for name in read if path else ():
        same = False
        with contextlib.suppress(OSError, ValueError):  # what can be no name of a file
            same = path is not None and path.is_file() and path.samefile(name)
        if same:
            wrong = "is read for this result, which would be written over it"
            raise BadInput([Problem(str(path), wrong, "choose another file")])


def status_of(
    verdicts: Iterable[Verdict | None],
    *,
    defect: bool = False,
    refused: bool = False,
    no_marginal: bool = False,
) -> int:
    """Return the exit status of some verdicts: a fail first, a defect, a refusal, cannot tell."""
    from ..said.verdicts import Verdict

    found = set(verdicts)
    if Verdict.FAIL in found:
        return FAIL
    if defect:
        return DEFECT
    if refused:
        return WRONG
    if Verdict.CANNOT_TELL in found or (no_marginal and Verdict.MARGINAL in found):
        return CANNOT_TELL
    return PASS
