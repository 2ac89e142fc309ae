"""What a sheet that is being asked comes to: a check that lacks a reading refuses none of it."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, PluginDefect, Problem
from ..jobs import sheet as jobsheet
from ..jobs.job import Job
from ..jobs.sheet import machine_facts
from ..jobs.sheet.plan import Check, plan
from ..jobs.sheet.shape import problems_of
from ..plugging.host import Catalogue
from .conversation import Run


def runner(check: Check, catalogue: Catalogue, folder: Path) -> Run:
    """Return what runs a check on other answers than its own, as a sheet does."""

    def run(given: Mapping[str, object]) -> Any:
        files = check._replace(given=given).files(folder)
        return catalogue.run(
            check.calculation.name, {**given, **files}, origin="sheet", missing_is_unknown=True
        )

    return run


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
    job = sheet.get("job", {})
    wrong = [p for p in problems_of(sheet) if p.name != "check"]
    wrong = [p for p in wrong if job.get("title") or p.name != "job"]  # it is asked yet
    wrong += machine_facts.problems_of(job, "job")
    if wrong:
        raise BadInput(wrong)
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
