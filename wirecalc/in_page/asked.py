"""What the page asks of Python, and what it gets: JSON both ways.

Every answer is that of the command line: the same findings, the same pages. What cannot be used is
returned as `refused`, a problem a name; a plugin's defect as `defect`.
"""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, PluginDefect, Problem
from ..commands.calculate import with_more
from ..commands.suggestions import fitting
from ..jobs import sheet as jobsheet
from ..jobs.job import Job
from ..output.html import finding_page, job_page
from ..output.html_sought import sought_page
from ..output.html_technician import gathered
from ..output.json import finding_object, job_object
from ..output.sought_json import sought_object
from ..plugging.host import Catalogue, build
from ..plugging.settings import read
from ..pocket.fields import needs_computer
from ..said.items import Caution
from ..typed.trials import sought_in
from .questions import JobQuestions

_FOLDER = Path("/tmp")  # of the browser's own files; a sheet reads none there


class Page:
    """The Python of one page that is open; `ends` is the day after which nothing is computed."""

    def __init__(self, ends: str = "") -> None:
        self._loaded: Catalogue = build(read())
        self._ends = ends
        self._job: JobQuestions | None = None
        self._does: dict[str, Callable[..., dict[str, Any]]] = {
            "fits": self.fits,
            "answer": self.answer,
            "report": self.report,
            "job": self.job,
        }

    def do(self, asked: str) -> str:
        """Do what is asked, a JSON object with `do` and what goes with it; returns a JSON object.

        >>> json.loads(Page().do('{"do": "fits", "words": "voltage drop"}'))["names"][0]
        'drop'
        """
        request = json.loads(asked)
        try:
            self._refuse_past_its_day(str(request["do"]))
            done = self._does[request.pop("do")](**request)
        except BadInput as error:
            done = {"refused": [problem_object(p) for p in error.problems]}
        except PluginDefect as error:
            done = {"defect": str(error)}
        return json.dumps(done, ensure_ascii=False)

    def fits(self, words: str) -> dict[str, Any]:
        """Return the names of the calculations that words may mean, best first."""
        return {"names": list(fitting(self._loaded, words, {}).names)}

    def answer(self, name: str, given: Mapping[str, Any]) -> dict[str, Any]:
        """Run a calculation, or seek what is sought of it."""
        calc = self._loaded.find(name).calculation
        if why := needs_computer(calc):
            raise BadInput([Problem(name, f"needs the computer: {why}", "run it there")])
        if sought_in(given):
            found = self._loaded.seeker(name).seek(given)
            return {"sought": sought_object(found), "page": sought_page(found)}
        finding = with_more(self._loaded, calc, self._loaded.run(name, given), given)
        return {
            "finding": finding_object(finding),
            "stops": _stops(finding.cautions),
            "page": finding_page(finding, calc.question),
        }

    def report(self, sheet: str) -> dict[str, Any]:
        """Return what a job sheet comes to, as `wirecalc job` does."""
        done = jobsheet.evaluate(self._sheet(sheet), self._loaded, _FOLDER)
        return _of_job(done)

    def job(self, step: str, **more: Any) -> dict[str, Any]:
        """Take a step in a job by questions, or return its report, or erase it."""
        if step == "erase":
            self._job = None
            return {}
        if step == "open":
            today = datetime.date.today().isoformat()
            sheet = self._sheet(more["sheet"]) if more.get("sheet") else {}
            self._job = JobQuestions(sheet, self._loaded, _FOLDER, today)
        if self._job is None:
            raise BadInput([Problem("job", "none is open", "begin one, or import its sheet")])
        if step == "report":
            return _of_job(self._job.interview.evaluated())
        return self._job.step(step, str(more.get("typed", "")))

    def _sheet(self, text: str) -> Mapping[str, Any]:
        sheet = jobsheet.parse(text.encode(), "sheet")
        for check in sheet.get("check", []):
            name = check.get("calculation", "") if isinstance(check, dict) else ""
            if name in self._loaded.calculations:
                why = needs_computer(self._loaded.find(name).calculation)
                if why:
                    wrong = f"{name} needs the computer: {why}"
                    raise BadInput([Problem("check", wrong, "run this sheet there")])
        return sheet

    def _refuse_past_its_day(self, do: str) -> None:
        if self._ends and do != "fits":
            today = datetime.date.today().isoformat()
            if today > self._ends:
                wrong = f"its last day was {self._ends}: its rules and tables may be others by now"
                raise BadInput([Problem("this file", wrong, "get the one of today")])


def _of_job(done: Job) -> dict[str, Any]:
    stops = _stops(gathered(done.checks))
    return {"job": job_object(done), "stops": stops, "page": job_page(done)}


def _stops(cautions: Any) -> list[str]:
    """Return the cautions that stop the work, a line each."""
    found: list[Caution] = [c for c in cautions if c.severity == "stop"]
    return list(dict.fromkeys(f"{c.when}: {c.line}" if c.when else c.line for c in found))


def problem_object(problem: Problem) -> dict[str, str]:
    """Return what is wrong with a field: its name is the input's, without an option's dashes."""
    name = problem.name.removeprefix("--").replace("-", "_")
    wrong = re.sub(r"^is needed \(.*\)$", "is needed", problem.wrong)  # its field has the words
    how = re.sub(r'^such as --[a-z0-9-]+[ =]"?([^"]*)"?$', r"such as \1", problem.would_do)
    return {"name": name, "wrong": wrong, "would_do": how}
