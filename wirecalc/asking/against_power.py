"""What stands against putting power on: what was measured before it, and failed or cannot tell."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeVar

from ..jobs.checks import AS_LEFT, STEPS
from ..jobs.job import Job
from ..said.verdicts import Verdict
from .job_question import Question
from .job_work import LATER

POWER = "power up"
_BEFORE = STEPS[: STEPS.index(POWER)]
_STANDS = {
    Verdict.FAIL: "No power before it is mended and measured again.",
    Verdict.CANNOT_TELL: "Settle it before power is put on.",
}
T = TypeVar("T")


def guarded(asked: T, job: Callable[[], Job | None]) -> T:
    """Return what is asked; before power with what stands against it: after a fail later is meant.

    `job` returns what the sheet comes to.
    """
    if not isinstance(asked, Question) or asked.step != POWER:
        return asked
    stands = list(against(job()))
    guard = asked._replace(says=" ".join([*(line for _, line in stands), asked.says]))
    if LATER in asked.choices and any(verdict is Verdict.FAIL for verdict, _ in stands):
        guard = guard._replace(enter=LATER, default=LATER)
    return guard


def against(job: Job | None) -> Iterator[tuple[Verdict, str]]:
    """Yield what fails, or cannot tell, of what is left and was checked without power: a line."""
    for check in job.checks if job else ():
        if check.stage == AS_LEFT and check.step in _BEFORE and check.verdict in _STANDS:
            judged = check.decided_by
            because = f": {judged.because}" if judged else ""
            said = f"STOP  {check.title} {str(check.verdict).upper()}{because}."
            yield check.verdict, f"{said} {_STANDS[check.verdict]}"
