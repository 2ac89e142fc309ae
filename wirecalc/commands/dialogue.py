"""Being asked: the inputs of a calculation one at a time, until its verdict is settled.

There is no terminal here: `read(prompt)` returns the line that was typed and `say(text)` shows
some lines. Which question comes next and what is settled is known by `asking.Conversation`.
"""

from __future__ import annotations

import shlex
from collections.abc import Callable, Collection, Mapping, Sequence
from types import MappingProxyType
from typing import Any, NamedTuple

from ..asking.answers import BACK, HELP, SKIP, meaning
from ..asking.conversation import Conversation
from ..asking.plates import Offered
from ..asking.tried import Open
from ..base.errors import PluginDefect, Problem, did_you_mean
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.left_out import Word
from ..engine.trade_names import named
from ..output.layout import wrap
from ..output.text import word as verdict_word
from ..said.findings import Finding
from ..said.verdicts import Verdict
from .prompting import TYPE, Asked, GoBack, Instead, Reader, Sayer, ask

MORE = "more"  # the prompt where the verdict is settled
_LEAVE = "Ctrl-C leaves; nothing is kept."
_MENU = "A name answers one of them, help says what each is, Enter ends here."

_MOST = 3  # things taken for not there that are said in words


class Answered(NamedTuple):
    """What was answered, by the names of the inputs, and the finding on it."""

    given: Mapping[str, object]
    finding: Finding


def converse(
    calc: Calculation[Any],
    compute: Callable[[Mapping[str, object]], Finding],
    probe: Callable[[Mapping[str, object]], Finding],
    read: Reader,
    say: Sayer,
) -> Answered:
    """Ask for the inputs of a calculation and compute its finding from the answers.

    `probe` computes it from some of them, as of a sheet. Answers that cannot be used together are
    explained and asked again. What `read` raises at the end of the input, and PluginDefect of
    the calculation, goes through to the caller.
    """
    say("\n".join([*wrap(f"{calc.name}: {calc.question}"), *wrap(f"{TYPE} {_LEAVE}")]))
    talk = Conversation(calc, probe)
    try:
        while True:
            try:
                if not ask_next(talk, read, say):
                    return Answered(talk.given(), compute(talk.given()))
            except GoBack:
                if not talk.go_back():
                    say("This is the first question.")
    except PluginDefect:
        say(f"\nThe answers:\n{command_line(calc, talk.given(), [])}\n")
        raise


def ask_next(
    talk: Conversation,
    read: Reader,
    say: Sayer,
    offered: Mapping[str, Offered] = MappingProxyType({}),
) -> bool:
    """Ask the next question of a conversation; False where the person ends it.

    `offered` has answers that were given elsewhere. Raises GoBack.
    """
    _say_contradictions(talk, say)
    question = talk.next()
    if question is None:
        question = _settled(talk, read, say)
    if question is None:
        return False
    _ask(talk, question, read, say, offered)
    return True


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


def _ask(
    talk: Conversation,
    question: Input,
    read: Reader,
    say: Sayer,
    offered: Mapping[str, Offered],
) -> None:
    """Ask one question, or the one that the person would rather answer."""
    while True:
        name = question.name
        former = talk.former.get(name)
        asked = Asked(
            question,
            former if former is not None or name not in offered else offered[name].answer,
            "" if former is not None or name not in offered else offered[name].of,
            talk.why(question),
            talk.is_needed(question),
            talk.absent(question),
            talk.instead_of(question),
            command_line(talk.calc, {**talk.given(), name: []}, []),
            verdict_word(stays) if (stays := talk.stays(question)) else "",
        )
        try:
            talk.answer(name, ask(asked, read, say))
            return
        except Instead as other:
            question = talk.calc.input(other.name)


def _say_contradictions(talk: Conversation, say: Sayer) -> None:
    """Say what is wrong with the answers together; those that are named are asked again."""
    problems = talk.reopen_contradictions()
    if problems:
        lines = ["These answers cannot be used together:"]
        lines += [line for p in problems for line in wrap(f"{p}", "  ")]
        say("\n".join(["", *lines, *wrap("Change one here, or go back to another.")]))


def _settled(talk: Conversation, read: Reader, say: Sayer) -> Input | None:
    """Say what the answers come to, and what may still be answered; None where that is all."""
    offers = talk.offers()
    problems = talk.contradictions()
    if not offers and not problems:
        say("\n".join(["", *standing(talk, problems)]))
        return None
    say("\n".join(["", *standing(talk, problems), *_open(offers, talk.left), *wrap(_MENU)]))
    known = {i.name: i for i in talk.calc.inputs}
    while True:
        meant = meaning(read(f"{MORE}> "))
        if meant == BACK:
            raise GoBack
        if meant == HELP:
            lines = [wrap(_explained(o), indent="  ") for o in offers]
            say("\n".join([line for of_one in lines for line in of_one] + wrap(_MENU)))
        elif meant in ("", SKIP) and not problems:
            return None
        elif meant in ("", SKIP):
            say("\n".join(line for p in problems for line in wrap(f"{p}", "  ")))
        elif (name := named(meant, known)) in known:
            talk.reopen(name)
            return known[name]
        else:
            problem = Problem(repr(meant), "is none of these", did_you_mean(meant, sorted(known)))
            say("\n".join(wrap(f"{problem}", "  ")))


def _explained(offer: Open) -> str:
    absent = offer.word.word is Word.MAY_BE_ABSENT
    taken = f" (taken so: {offer.word.why})" if absent else ""
    return f"{offer.input.name}: {offer.input.kind.text}{taken}"


def standing(talk: Conversation, problems: Sequence[Problem] = ()) -> list[str]:
    """Say what the answers come to so far, or what is wrong with them together."""
    finding = talk.finding
    if finding is None:
        return [line for p in problems for line in wrap(f"{p}", "  ")]
    decided = finding.decided_by
    if decided is None:
        came_to = [f"{answer.name}: {answer.text}" for answer in finding.answers]
        lines = [line for text in came_to for line in wrap(text, indent="  ")]
        return [*wrap("So far figures only: nothing was given to judge."), *lines]
    lines = wrap(f"So far: {verdict_word(finding.verdict)}  {decided.because}", indent="  ")
    if finding.verdict is Verdict.CANNOT_TELL and decided.action:
        lines += wrap(f"Next: {decided.action}", indent="  ")
    return lines


def _open(offers: Sequence[Open], left: Collection[str]) -> list[str]:
    """Say what was taken without an answer, what may still change it, and what else is open."""
    absent = [o for o in offers if o.word.word is Word.MAY_BE_ABSENT]
    said = [o for o in absent if o.input.name in left]  # the person was asked for it
    unsaid = [o for o in absent if o not in said]
    taken = [f"{o.word.why} ({o.input.name})" for o in unsaid[:_MOST]]
    taken += [f"and {len(unsaid) - _MOST} more, see help"] if len(unsaid) > _MOST else []
    lines = wrap(f"Taken so: {'; '.join(taken)}", indent="  ") if taken else []
    for verdict in reversed(Verdict):
        names = [o.input.name for o in offers if o.to[:1] == (verdict,) and o not in said]
        could = f"Could still make it {verdict}: {', '.join(names)}"
        lines += wrap(could, indent="  ") if names else []
    rest = [o.input.name for o in offers if not o.to and o not in absent]
    return lines + (wrap(f"Open too: {', '.join(rest)}", indent="  ") if rest else [])
