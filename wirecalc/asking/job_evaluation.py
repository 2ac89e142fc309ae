"""What a sheet that is being asked comes to: a check that lacks a reading refuses none of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, PluginDefect, Problem
from ..jobs import sheet as jobsheet
from ..jobs.job import Job
from ..jobs.sheet import contradictions
from ..jobs.sheet.machine_facts import Subject
from ..jobs.sheet.plan import Check, plan, plates_of
from ..plugging.host import Catalogue
from .conversation import Run
from .of_kind import has


def runner(check: Check, catalogue: Catalogue, folder: Path) -> Run:
    """Return what runs a check on other answers than its own, as a sheet does."""

    def run(given: Mapping[str, object]) -> Any:
        files = check._replace(given=given).files(folder)
        return catalogue.run(
            check.calculation.name, {**given, **files}, origin="sheet", missing_is_unknown=True
        )

    return run


def contradicted(
    sheet: Mapping[str, Any], planned: Sequence[Check], index: int, subject: Subject
) -> Callable[[Mapping[str, object]], bool]:
    """Return what says whether a sheet rules out some answers to one of its checks."""

    def refuses(answers: Mapping[str, object]) -> bool:
        own = planned[index].given
        if any(not has(subject.kind, name) for name in answers if name not in own):
            return True
        checks = [*planned]
        checks[index] = checks[index]._replace(given=answers)
        return any(contradictions.problems_of(checks, [subject], plates_of(sheet)))

    return refuses


def of_complete(sheet: Mapping[str, Any], catalogue: Catalogue, folder: Path) -> Job | None:
    """Evaluate a sheet without the checks that cannot be run at all before more is answered.

    None where no check is left; raises BadInput for what is wrong.
    """
    entries = sheet.get("check", [])
    problems: list[Problem] = []
    planned = plan(sheet, catalogue, [], problems)
    if not problems:
        lacking = [_lacks(check, catalogue, folder) for check in planned]
        entries = [entry for entry, lacks in zip(entries, lacking, strict=True) if not lacks]
    sheet = {**sheet, "check": entries}
    if entries or sheet.get("not_tested"):
        return jobsheet.evaluate(sheet, catalogue, folder)
    job = {"title": "not asked yet", **sheet.get("job", {})}
    nothing = [{"name": "any check", "reason": "not asked yet"}]
    jobsheet.evaluate({**sheet, "job": job, "not_tested": nothing}, catalogue, folder)
    return None


def _lacks(check: Check, catalogue: Catalogue, folder: Path) -> bool:
    """Whether a check is refused only for what is not there yet."""
    try:
        runner(check, catalogue, folder)(check.given)
    except BadInput as error:
        return not {p.name for p in error.problems} & set(check.given)
    except PluginDefect:  # the job says so of the check
        pass
    return False
