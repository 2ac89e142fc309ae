"""What a pass is of, for a customer: no bare word, but what was checked and what was not."""

from __future__ import annotations

from collections.abc import Sequence

from ..jobs.checks import AS_LEFT, NotTested
from ..jobs.job import Job
from ..said.findings import Finding

WITHIN = "checked: within the limits"
_HEADED = 3  # names in a heading
_NOT_GIVEN = "not given"  # how a gap begins that is an input's


def checked_of(job: Job) -> str:
    """Say of a job that passes what the pass is of, and the first of what was not checked."""
    findings = [c.finding for c in job.checks if c.stage == AS_LEFT and c.finding]
    return checked(findings, job.not_tested, " at the end of the work")


def checked(
    findings: Sequence[Finding], not_tested: Sequence[NotTested] = (), when: str = ""
) -> str:
    """Say of a pass what it is of, and the first of what was not checked."""
    own = [n.what for f in findings for n in f.not_checked if not n.why.startswith(_NOT_GIVEN)]
    names = list(dict.fromkeys([*(n.title for n in not_tested), *own]))
    more = [f"{len(names) - _HEADED} more, below"] if len(names) > _HEADED else []
    open_ = f"; not checked: {'; '.join([*names[:_HEADED], *more])}" if names else ""
    return f"{WITHIN}{when}{open_}"
