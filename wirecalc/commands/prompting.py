"""One question at the terminal: what is asked and why, what may be typed, until it has an answer.

`read(prompt)` returns the line that was typed, `say(text)` shows some lines.
"""

from __future__ import annotations

import shlex
from collections.abc import Callable, Sequence
from typing import NamedTuple

from ..asking.answers import BACK, HELP, SKIP, WORDS, Answer, Taken, choices, meaning, taken
from ..base.errors import Problem
from ..engine.inputs import Input
from ..engine.trade_names import named
from ..output.layout import command, wrap
from ..published.measuring import ways
from ..typed.trials import is_sought
from .help_texts import METER_ERROR

Reader = Callable[[str], str]
Sayer = Callable[[str], None]

TYPE = (
    "Type an answer, or unknown (don't know), back (to the question before), "
    "help, skip (leave it out)."
)


class GoBack(Exception):
    """The person wants to see the question before."""


class Instead(Exception):
    """The person would rather answer another question, whose `name` this is."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name


class Asked(NamedTuple):
    """An input to ask for, with what is known of it.

    `former` is an answer that is offered again, and `of` what it was given for; `why` says why it
    is asked, `needed` that it cannot tell without it, `absent` what
    leaving it out says, `others` are inputs that may be answered in
    place of it. `line` is the command line of what is answered so far, this input left out,
    `stays` the verdict that it stays where nobody says whether what is assumed is so.
    """

    input: Input
    former: Answer = None
    of: str = ""
    why: str = ""
    needed: bool = False
    absent: str = ""
    others: Sequence[Input] = ()
    line: str = ""
    stays: str = ""


def ask(question: Asked, read: Reader, say: Sayer) -> Answer:
    """Ask one question until it has an answer; a list until an empty line ends it.

    None leaves it out. Raises GoBack and Instead.
    """
    declared = question.input
    say("\n".join(["", *_text(question)]))
    items: list[str] = []
    while True:
        count = f" {len(items) + 1} (Enter ends the list)" if items else ""
        meant = _typed(question, f"{declared.name}{count}> ", read, say)
        if items and meant in ("", BACK):
            if not meant:
                return items
            say(f"Dropped {items.pop()}.")
        elif meant == BACK:
            raise GoBack
        elif meant in ("", SKIP):
            if _may_be_empty(question, say, skip=meant == SKIP):
                return question.former if not meant else None
        elif not items and (other := _instead(question, meant)):
            raise Instead(other)
        elif (text := _read(declared, meant, read, say)) is not None:
            if not declared.many:
                return text
            items.append(text)


def _instead(question: Asked, meant: str) -> str:
    """Return the name of the input that the person would rather answer; empty where none is."""
    names = [other.name for other in question.others]
    return found if (found := named(meant, names)) in names else ""


def _how_sought(question: Asked, meant: str) -> list[str]:
    """Say how a value is sought: on one line, with the rest of the answers."""
    name = question.input.name
    says = f"{name} is sought on one line, with all else given; here it is answered."
    line = f"{question.line} {question.input.option} {shlex.quote(meant.casefold())}"
    return [*wrap(says, "  "), *command(line)]


def _typed(question: Asked, prompt: str, read: Reader, say: Sayer) -> str:
    """Return what is typed, help shown as often as it is asked for, and how a value is sought."""
    while (meant := meaning(read(prompt))) == HELP or is_sought(meant):
        say("\n".join(_help(question) if meant == HELP else _how_sought(question, meant)))
    return meant


def _read(declared: Input, typed: str, read: Reader, say: Sayer) -> str | None:
    """Read an answer; None where it is to be typed again. What had no unit is looked at first."""
    answer: Taken | Problem = taken(declared, typed)
    while isinstance(answer, Taken) and answer.doubtful:
        say("\n".join(wrap(f"{answer.read_back}? Enter takes it; else type it again.", "  ")))
        again = meaning(read(f"{declared.name}> "))
        if again.casefold() in ("", "y", "yes"):
            return answer.text
        if again in WORDS:
            return None
        answer = taken(declared, again)
    if isinstance(answer, Problem):
        say("\n".join(wrap(f"{answer}", "  ")))
        return None
    if answer.read_back:
        say(f"  {answer.read_back}")
    return answer.text


def _may_be_empty(question: Asked, say: Sayer, *, skip: bool) -> bool:
    declared = question.input
    kind = declared.kind
    if question.former is not None and not skip:
        return True
    if declared.required:
        problem = Problem(declared.name, f"is needed ({kind.text})", f"such as {kind.example}, or ")
        say("\n".join(wrap(f"{problem}unknown", "  ")))
        return False
    if not declared.assumed and not question.absent:
        say("\n".join(wrap(f"Left out: {kind.text}.", "  ")))
    return True


def _text(question: Asked) -> list[str]:
    """Say what is asked and why, what may be typed, and what an empty line does."""
    declared, kind = question.input, question.input.kind
    if numbered := choices(declared):
        # a number stays on the line of its word
        span = ", ".join(f"{n}\xa0{word}" for n, word in enumerate(numbered, start=1))
    else:
        shown = kind.example in kind.span.replace(" or ", ", ").split(", ")
        span = kind.span if shown else f"{kind.span}; such as {kind.example}"
    lines = wrap(f"{declared.name}: {kind.text}")
    lines += [line.replace("\xa0", " ") for line in wrap(span, "  ")]
    lines += wrap(f"why: {question.why}", "  ") if question.why else []
    for other in question.others:
        lines += wrap(f"or {other.name} ({other.kind.text}): type that name", "  ")
    if declared.many:
        lines += wrap("one at a time; after the last one Enter alone", "  ")
    if question.former is not None:
        former = question.former
        kept = "; ".join(former) if isinstance(former, list) else former
        of = f", as for {question.of}" if question.of else ""
        lines += wrap(f"Enter: {kept}{of}" if of else f"Enter keeps {kept}", "  ")
    elif question.absent:
        lines += wrap(f"Enter: {question.absent}", "  ")
    elif question.stays:
        says = f"Enter: not known: {declared.assumed} is assumed, and it stays {question.stays}"
        lines += wrap(says, "  ")
    elif declared.assumed:
        then = ", and cannot tell by it alone" if question.needed else ""
        lines += wrap(f"Enter: {declared.assumed}, assumed{then}", "  ")
    elif not declared.required:
        lines += wrap(f"Enter: {'cannot tell without it' if question.needed else 'left out'}", "  ")
    return lines


def _help(question: Asked) -> list[str]:
    lines = _text(question)
    if choices(question.input):
        lines += wrap("A number of the list is taken for its word.")
    return [*lines, *how_read(question.input.name), *wrap(METER_ERROR), *wrap(TYPE)]


def how_read(name: str) -> list[str]:
    """Say how an input is measured, where that is declared."""
    return [line for way in ways([name]) for line in wrap(f"How: {way.text}", "  ")]
