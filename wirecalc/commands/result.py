"""What a command comes to: a text, where it goes, and the exit status."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import NamedTuple

from ..criteria import Verdict

PASS, FAIL, CANNOT_TELL = 0, 1, 3
DEFECT = 4


class Result(NamedTuple):
    """A text, where it goes, the exit status, and what to say on stderr."""

    text: str
    status: int = PASS
    output: Path | None = None
    warnings: Sequence[str] = ()


def status_of(
    verdicts: Iterable[Verdict | None], *, defect: bool = False, no_marginal: bool = False
) -> int:
    """Return the exit status of some verdicts: a fail first, then a defect, then cannot tell."""
    found = set(verdicts)
    if Verdict.FAIL in found:
        return FAIL
    if defect:
        return DEFECT
    if Verdict.CANNOT_TELL in found or (no_marginal and Verdict.MARGINAL in found):
        return CANNOT_TELL
    return PASS
