"""A job by questions, at a terminal: shows what is asked, and hands over what is typed.

There is no terminal here: `read(prompt)` returns the line that was typed, `say(text)` shows some
lines, `keep()` writes the sheet. What is asked next is known by `asking.job_interview`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from ..asking.answers import BACK, HELP, SKIP, meaning
from ..asking.job_check import OfCheck
from ..asking.job_interview import Interview
from ..asking.job_question import Question
from ..asking.plates import of_the_machine
from ..base.errors import PluginDefect, Problem
from ..engine.one_input import UNKNOWN
from ..output import terminal_width
from ..output.layout import wrap
from .dialogue import ask_next
from .job_stops import Stops, of_machine
from .prompting import GoBack, Reader, Sayer

_MOST_LINES = 9  # of a list, so that what stops the work stays on a small screen above it
_ASIDE = ("later", "drop")
_ABOUT_CHECK = "unknown, back and help serve anywhere; later: not now; drop: not this check."
_HELP = "back: the question before. Ctrl-C leaves; what was answered stays in the sheet."


class _Aside(Exception):
    """The person leaves a check for later, or takes it out."""

    def __init__(self, word: str) -> None:
        super().__init__(word)
        self.word = word


def lead_through(interview: Interview, read: Reader, say: Sayer, keep: Callable[[], None]) -> None:
    """Ask all there is to ask; the sheet is kept after every answer."""
    shown = _Shown(interview, say)
    taken_up = interview.is_taken_up
    while (asked := interview.next()) is not None:
        keep()
        try:
            if taken_up:
                taken_up = False
                shown.again(asked)
                read("Enter goes on> ")
            if isinstance(asked, Question):
                shown.question(asked)
                _ask(interview, asked, read, say)
            else:
                shown.check(asked)
                _ask_of_check(interview, asked, read, say)
        except GoBack:
            if not interview.back():
                say("This is the first question.")
    keep()


class _Shown:
    """What is said above a question: what stops all, the step, the check; each where it is new."""

    def __init__(self, interview: Interview, say: Sayer) -> None:
        self._interview, self._say = interview, say
        self._stops = Stops()
        self._of_machine: list[str] = []
        self._step = self._title = self._told = ""
        self._explained = False

    def again(self, asked: Question | OfCheck) -> None:
        """Say what is to be known before a sheet goes on that was left."""
        self._machine()
        step = asked.step if isinstance(asked, Question) else asked.check.place.step
        self._step_stops(step)
        self._told = step
        self._say("\n".join(wrap(_ABOUT_CHECK)))
        self._explained = True

    def question(self, asked: Question) -> None:
        """Say what stands above a question of the job."""
        if asked.key != "title":
            self._machine()
        if asked.step and asked.step != self._step:
            self._say(f"\n--- {asked.step.upper()}")
            self._step_stops(asked.step, apart=False)
        self._step, self._title = asked.step or self._step, ""

    def check(self, asked: OfCheck) -> None:
        """Say what stands above a question of a check."""
        self._machine()
        step = asked.check.place.step
        if _title(asked) != self._title:
            if step != self._step:
                self._step_stops(step)
            aside = [] if self._explained else wrap(_ABOUT_CHECK)
            self._say("\n".join(["", *_about(asked), *aside]))
            self._explained = True
        self._step, self._title = step or self._step, _title(asked)
        self._stops.reads(self._step)

    def _step_stops(self, step: str, *, apart: bool = True) -> None:
        if step != self._told:
            stops = self._stops.at(step, self._interview.sheet.get("job", {}))
            lines = [line for stop in stops for line in wrap(stop, indent="      ")]
            if lines:
                self._say("\n".join([*([""] if apart else []), *lines]))
        self._told = ""

    def _machine(self) -> None:
        stops = of_machine(self._interview.sheet.get("job", {}))
        if stops and stops != self._of_machine:
            self._say("\n".join(["", *(line for stop in stops for line in wrap(stop))]))
        self._of_machine = stops


def _ask(interview: Interview, question: Question, read: Reader, say: Sayer) -> None:
    """Ask a question of the job until it has an answer that the sheet takes."""
    say("\n".join(["", *_text(question)]))
    while True:
        typed = meaning(read("> "))
        if typed == BACK:
            raise GoBack
        if typed == HELP:
            say("\n".join([*_text(question, whole=True), *wrap(_HELP)]))
            continue
        problems = interview.answer(question, "" if typed in (SKIP, UNKNOWN) else typed)
        if not problems:
            return
        _say_problems(problems, say)


def _text(question: Question, *, whole: bool = False) -> list[str]:
    """Say what is asked; of a long list the words on each choice only where `whole`."""
    lines = [line for stop in question.stops for line in wrap(stop, indent="      ")]
    lines += wrap(question.says)
    if len(question.notes) != len(question.choices):
        lines += [line for note in question.notes for line in wrap(note, "  ")]
        shown: Sequence[str] = question.choices
    else:
        shown = question.notes  # a note on each choice
    if not whole and sum(len(wrap(word, "10 ")) for word in shown) > _MOST_LINES:
        shown = question.choices
        lines += wrap("? says why each is checked", "  ") if question.several else []
    fits = max(map(len, shown), default=0) < terminal_width.width() - len("  10 , ") - 2
    short = sum(map(len, shown)) + 4 * len(shown) <= 4 * 76 and shown is question.choices and fits
    if short:
        numbered = (f"{n} {word}".replace(" ", "\xa0") for n, word in enumerate(shown, start=1))
        lines += [line.replace("\xa0", " ") for line in wrap(", ".join(numbered), "  ")]
    else:
        for number, word in enumerate(shown, start=1):
            lines += wrap(word, f"{number:>2} ")
    such = "Such as 1 2; " if question.several and len(question.choices) > 1 else ""
    return lines + (wrap(f"{such}Enter: {question.enter}", "  ") if question.enter else [])


def _ask_of_check(interview: Interview, asked: OfCheck, read: Reader, say: Sayer) -> None:
    """Ask the next question of a check, and keep its answer."""

    def read_aside(prompt: str) -> str:
        typed = read(prompt)
        if typed.strip().casefold() in _ASIDE:
            raise _Aside(typed.strip().casefold())
        return typed

    try:
        ended = not ask_next(asked.talk, read_aside, say, asked.offered)
    except PluginDefect as error:
        say("\n".join(wrap(f"{error}", "  ")))
        interview.later(asked)
        return
    except _Aside as aside:
        if aside.word == "drop":
            interview.drop(asked)
        else:
            interview.later(asked)
        return
    if problems := interview.took(asked, ended=ended):
        say("\n".join(["", *wrap("That does not go with what the sheet has:")]))
        _say_problems(problems, say)
        say("\n".join(wrap("Another answer, or back to change what was answered before.", "  ")))


def _title(asked: OfCheck) -> str:
    check = asked.check
    step = f"{check.place.step.upper()}: " if check.place.step else ""
    return f"--- {step}{check.name}, {check.place.stage}"


def _about(asked: OfCheck) -> list[str]:
    """Say which check it is, what it answers, and what of the plate serves it."""
    check = asked.check
    plate = [
        f"{name} {value}" for name, value in check.given.items() if of_the_machine(check, name)
    ]
    lines = [*wrap(_title(asked)), *wrap(f"{check.calculation.name}: {check.calculation.question}")]
    lines += wrap(f"From the plate: {', '.join(plate)}", indent="  ") if plate else []
    return lines


def _say_problems(problems: Iterable[Problem], say: Sayer) -> None:
    say("\n".join(line for problem in problems for line in wrap(f"{problem}", "  ")))
