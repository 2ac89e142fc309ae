"""Being asked: the inputs of a calculation one at a time, until it can be run.

There is no terminal here: `read(prompt)` returns the line that was typed and `say(text)` shows
some lines. Each answer is read by the input's own kind, so what is wrong is said as the command
line says it.
"""

from __future__ import annotations

import shlex
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from ..base.errors import BadInput, BadText, Problem
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.one_input import UNKNOWN, says_unknown
from ..output.layout import wrap
from ..said.findings import Finding
from .help_texts import METER_ERROR

Answer = str | list[str] | None  # None: left out
Reader = Callable[[str], str]
Sayer = Callable[[str], None]

BACK, HELP, SKIP = "back", "help", "skip"
WORDS = {  # what may be typed in place of an answer -> what it means
    UNKNOWN: UNKNOWN,
    "don't know": UNKNOWN,
    "dont know": UNKNOWN,
    "do not know": UNKNOWN,
    "not known": UNKNOWN,
    "no idea": UNKNOWN,
    BACK: BACK,
    HELP: HELP,
    "?": HELP,
    SKIP: SKIP,
}
_TYPE = (
    "Type an answer, or unknown (don't know), back (to the question before), "
    "help, skip (leave it out). Ctrl-C leaves; nothing is kept."
)


class Asked(NamedTuple):
    """What was answered, by the names of the inputs, and the finding on it."""

    given: Mapping[str, object]
    finding: Finding


class _GoBack(Exception):
    """The person wants to see the question before."""


def converse(
    calc: Calculation[Any],
    compute: Callable[[Mapping[str, object]], Finding],
    read: Reader,
    say: Sayer,
) -> Asked:
    """Ask for every input of a calculation and compute its finding from the answers.

    Answers that cannot be computed together are explained and asked again. What `read` raises
    at the end of the input, and PluginDefect of the calculation, goes through to the caller.
    """
    say("\n".join([*wrap(f"{calc.name}: {calc.question}"), *wrap(_TYPE)]))
    talk = _Talk(questions(calc), read, say)
    while True:
        talk.ask_all()
        try:
            return Asked(talk.given(), compute(talk.given()))
        except BadInput as error:
            if not talk.ask_again(error.problems):
                raise


def questions(calc: Calculation[Any]) -> list[Input]:
    """Return the inputs as they are asked: needed ones first, each behind what it goes with."""
    left = sorted(calc.inputs, key=lambda i: not i.required)
    placed: list[Input] = []
    while left:
        done = {"", *(i.name for i in placed)}
        ready = (i for i in left if i.kind.goes_with in done)
        placed.append(next(ready, left[0]))
        left.remove(placed[-1])
    return placed


def command_line(calc: Calculation[Any], given: Mapping[str, object], more: Sequence[str]) -> str:
    """Return the command line with the given inputs, quoted for a POSIX shell.

    `more` are options to add as they were typed.
    """
    words = ["wirecalc", calc.name]
    for declared in calc.inputs:
        value = given.get(declared.name, [])
        for item in value if isinstance(value, list) else [value]:
            # a value that starts with a dash would be taken for an option
            dashed = str(item).startswith("-")
            words += [f"{declared.option}={item}"] if dashed else [declared.option, str(item)]
    return shlex.join([*words, *more])


class _Talk:
    """The questions, what is answered, and former answers that are offered again."""

    def __init__(self, asked: Sequence[Input], read: Reader, say: Sayer) -> None:
        self._questions, self._read, self._say = asked, read, say
        self._answers: dict[str, Answer] = {}
        self._former: dict[str, Answer] = {}

    def given(self) -> dict[str, object]:
        """Return what was answered; what goes with something left out is left out too."""
        kept: dict[str, object] = {}
        for question in self._questions:
            answer = self._answers.get(question.name)
            if answer is not None and question.kind.goes_with in ("", *kept):
                kept[question.name] = answer
        return kept

    def ask_all(self) -> None:
        """Ask until every question that applies has its answer."""
        while (question := self._next()) is not None:
            try:
                self._answers[question.name] = self._ask(question)
            except _GoBack:
                self._go_back(question)

    def ask_again(self, problems: Sequence[Problem]) -> bool:
        """Say what is wrong with the answers together and take those named for unanswered."""
        if not self._answers:
            return False
        plain = {i.option: i.name for i in self._questions}
        named = [p._replace(name=plain.get(p.name, p.name)) for p in problems]
        lines = ["These answers cannot be used together:"]
        lines += [line for p in named for line in wrap(f"{p}", "  ")]
        self._say("\n".join(["", *lines, "Change one here, or go back to another."]))
        names = {p.name for p in named} & set(self._answers)
        for name in names or {list(self._answers)[-1]}:
            self._reopen(name)
        return True

    def _next(self) -> Input | None:
        there = ("", *self.given())
        waiting = (q for q in self._questions if q.name not in self._answers)
        return next((q for q in waiting if q.kind.goes_with in there), None)

    def _go_back(self, question: Input) -> None:
        there = ("", *self.given())
        before = self._questions[: self._questions.index(question)]
        seen = [q.name for q in before if q.name in self._answers and q.kind.goes_with in there]
        if seen:
            self._reopen(seen[-1])
        else:
            self._say("This is the first question.")

    def _reopen(self, name: str) -> None:
        self._former[name] = self._answers.pop(name)

    def _ask(self, question: Input) -> Answer:
        """Ask one question until it has an answer; a list until an empty line ends it."""
        self._say("\n".join(["", *_text(question, self._former.get(question.name))]))
        items: list[str] = []
        while True:
            count = f" {len(items) + 1} (Enter ends the list)" if items else ""
            typed = self._read(f"{question.name}{count}> ").strip()
            meant = WORDS.get(typed.casefold().replace("’", "'"), typed)
            if meant == HELP:
                self._say("\n".join([*_text(question, None), *wrap(METER_ERROR), *wrap(_TYPE)]))
            elif meant == BACK and items:
                self._say(f"Dropped {items.pop()}.")
            elif meant == BACK:
                raise _GoBack
            elif not meant and items:
                return items
            elif meant in ("", SKIP):
                if self._may_be_empty(question, skip=meant == SKIP):
                    return self._empty(question, skip=meant == SKIP)
            elif problem := _wrong(question, meant):
                self._say("\n".join(wrap(f"{problem}", "  ")))
            elif question.many:
                items.append(meant)
            else:
                return meant

    def _may_be_empty(self, question: Input, *, skip: bool) -> bool:
        offered = not skip and self._former.get(question.name) is not None
        if offered or not question.required:
            return True
        kind = question.kind
        wrong = f"is needed ({kind.text})"
        problem = Problem(question.name, wrong, f"such as {kind.example}, or unknown")
        self._say("\n".join(wrap(f"{problem}", "  ")))
        return False

    def _empty(self, question: Input, *, skip: bool) -> Answer:
        former = None if skip else self._former.get(question.name)
        if former is None and not question.assumed:
            said = f"Left out: {question.kind.text}. What needs it is not checked."
            self._say("\n".join(wrap(said, "  ")))
        return former


def _wrong(question: Input, typed: str) -> Problem | None:
    """Return what is wrong with an answer, in the words of the command line."""
    kind = question.kind
    if typed == UNKNOWN or (kind.of_file and Path(typed).is_file()):
        return None  # a file is read at the end, with the answers that say how
    try:
        for one in question.each(typed):
            if not says_unknown(one):
                kind.read(one)
    except BadText as error:
        return error.about(question.name)
    return None


def _text(question: Input, former: Answer) -> list[str]:
    """Say why an input is asked, what may be typed, and what an empty line does."""
    kind = question.kind
    shown = kind.example in kind.span.replace(" or ", ", ").split(", ")
    span = kind.span if shown else f"{kind.span}; such as {kind.example}"
    lines = [*wrap(f"{question.name}: {kind.text}"), *wrap(span, "  ")]
    if question.many:
        lines.append("  one at a time; after the last one Enter alone")
    if former is not None:
        kept = "; ".join(former) if isinstance(former, list) else former
        lines += wrap(f"Enter keeps {kept}", "  ")
    elif question.assumed:
        lines += wrap(f"Enter takes {question.assumed} (assumed)", "  ")
    elif not question.required:
        said = f" ({question.need})" if question.words else ""
        lines += wrap(f"Enter leaves it out{said}", "  ")
    return lines
