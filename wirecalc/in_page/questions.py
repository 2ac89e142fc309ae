"""A job by questions, one page a question: what `wirecalc ask job` asks, as JSON."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from ..asking.answers import SKIP, Taken, meaning, taken
from ..asking.job_check import OfCheck
from ..asking.job_interview import Interview
from ..asking.job_question import Question
from ..asking.plates import of_the_machine
from ..base.errors import PluginDefect, Problem
from ..commands.dialogue import standing
from ..commands.job_stops import Stops, of_machine
from ..engine.inputs import Input
from ..engine.one_input import UNKNOWN
from ..plugging.host import Catalogue
from ..pocket.fields import field

_NOT_HERE = ("technician",)  # no names of people are kept in a browser


class JobQuestions:
    """A job that is asked; `sheet` may be empty. Raises BadInput for a sheet that is refused."""

    def __init__(
        self, sheet: Mapping[str, Any], catalogue: Catalogue, folder: Path, today: str
    ) -> None:
        self.interview = Interview(sheet, catalogue, folder, today)
        self._said: tuple[list[str], str] = ([], "")  # stops of the machine, step
        self._of_step = Stops()
        self._named = ""  # an input that the person asked for, where the verdict is settled

    def step(self, step: str, typed: str) -> dict[str, Any]:
        """Take an answer or a step aside; returns what is asked next, and the sheet as it stands.

        `step` is open, answer, more, back, later or drop; typed text is as at the terminal, and
        of more the name of an input that may still be answered.
        """
        asked = self.interview.next()
        problems: tuple[Problem, ...] = ()
        if step == "back":
            self.interview.back()
        elif isinstance(asked, Question) and step == "answer":
            meant = meaning(typed)
            problems = self.interview.answer(asked, "" if meant in (SKIP, UNKNOWN) else typed)
        elif isinstance(asked, OfCheck) and step == "drop":
            self.interview.drop(asked)
        elif isinstance(asked, OfCheck) and step == "later":
            self.interview.later(asked)
        elif isinstance(asked, OfCheck) and step == "answer":
            problems = self._answer(asked, typed)
        elif isinstance(asked, OfCheck) and step == "more":
            asked.talk.reopen(typed)
        self._named = typed if step == "more" else self._named if problems else ""
        asks = self._asks()
        return {"asks": asks, "sheet": self.interview.text(), "problems": _said(problems)}

    def _answer(self, asked: OfCheck, typed: str) -> tuple[Problem, ...]:
        """Take the answer to an input; an empty one leaves it out, or takes what is offered."""
        declared = self._declared(asked)
        if declared is None:  # it is settled, and nothing more is answered
            return self.interview.took(asked, ended=True)
        meant = meaning(typed)
        if not meant or meant == SKIP:
            offer = asked.talk.former.get(declared.name)
            if offer is None and declared.name in asked.offered:
                offer = asked.offered[declared.name].answer
            if declared.required and (offer is None or meant == SKIP):
                such = f"such as {declared.kind.example}, or unknown"
                return (Problem(declared.name, "is needed", such),)
            asked.talk.answer(declared.name, None if meant == SKIP else offer)
            return self.interview.took(asked)
        parts = [p.strip() for p in meant.split(";")] if declared.many else [meant]
        answers = [taken(declared, part) for part in parts if part]
        if wrong := tuple(a for a in answers if isinstance(a, Problem)):
            return wrong
        texts = [a.text for a in answers if isinstance(a, Taken)]
        asked.talk.answer(declared.name, texts if declared.many else texts[0])
        return self.interview.took(asked)

    def _declared(self, asked: OfCheck) -> Input | None:
        """Return the input that is asked for; none where the verdict is settled."""
        named = [i for i in asked.talk.calc.inputs if i.name == self._named]
        return named[0] if named else asked.talk.next()

    def _asks(self) -> dict[str, Any] | None:
        while (asked := self.interview.next()) is not None:
            if isinstance(asked, Question) and asked.key in _NOT_HERE:
                self.interview.answer(asked, "")
                continue
            if isinstance(asked, Question):
                return self._question(asked)
            try:
                return self._of_check(asked)
            except PluginDefect:
                self.interview.later(asked)  # the report names it
        return None

    def _stops(self, step: str) -> list[str]:
        """Return what hands are to keep to, where it was not said a screen before."""
        machine, before = self._said
        job = self.interview.sheet.get("job", {})
        now = of_machine(job)
        self._said = (now, step or before)
        found = now if now != machine else []
        return [*found, *(self._of_step.at(step, job) if step and step != before else [])]

    def _question(self, question: Question) -> dict[str, Any]:
        return {
            "of": "job",
            "says": question.says,
            "notes": list(question.notes),
            "choices": list(question.choices),
            "several": question.several,
            "free": question.free or not question.choices,
            "empty": question.enter,
            "default": question.default,
            "step": question.step,
            "stops": [*self._stops(question.step), *question.stops],
        }

    def _of_check(self, asked: OfCheck) -> dict[str, Any]:
        asked.talk.reopen_contradictions()
        stops = self._stops(asked.check.place.step)
        self._of_step.reads(asked.check.place.step)
        declared, check = self._declared(asked), asked.check
        offers = asked.talk.offers() if declared is None else []
        says = {i.name: i.kind.text for i in check.calculation.inputs}
        given = {n: v for n, v in check.given.items() if of_the_machine(check, n)}
        return {
            "of": "check",
            "check": check.name,
            "stage": check.place.stage,
            "step": check.place.step,
            "question": check.calculation.question,
            "plate": [f"{says.get(name, name)} {value}" for name, value in given.items()],
            "stops": stops,
            "field": _field(asked, declared) if declared is not None else None,
            "more": [{"name": o.input.name, "says": o.input.kind.text} for o in offers],
            "standing": _unwrapped(standing(asked.talk)),
        }


def _unwrapped(lines: list[str]) -> list[str]:
    """Return lines of a terminal as whole ones: what goes on is indented there."""
    whole: list[str] = []
    for line in lines:
        if line.startswith(" ") and whole:
            whole[-1] += f" {line.strip()}"
        else:
            whole.append(line)
    return whole


def _field(asked: OfCheck, declared: Input) -> dict[str, Any]:
    """Return a field, with what is offered for it and what leaving it out means here."""
    former = asked.talk.former.get(declared.name)
    offer = asked.offered.get(declared.name) if former is None else None
    given = offer.answer if offer else former
    return {
        **field(declared),
        "why": asked.talk.why(declared),
        "offered": "; ".join(given) if isinstance(given, list) else given or "",
        "of": offer.of if offer else "",
        "needed": asked.talk.is_needed(declared),
        "absent": asked.talk.absent(declared),
        "assumed": declared.assumed,
    }


def _said(problems: tuple[Problem, ...]) -> list[dict[str, str]]:
    return [{"name": p.name, "wrong": p.wrong, "would_do": p.would_do} for p in problems]
