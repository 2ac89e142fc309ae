"""`wirecalc ask [NAME]`: asks for the inputs of a calculation at the terminal, then runs it.

Questions go to the terminal, wherever the result goes. Ctrl-C and Ctrl-D leave without a result.
"""

from __future__ import annotations

import sys
from collections.abc import Mapping, Sequence
from typing import Any

from ..asking.answers import WORDS
from ..base.errors import BadInput, Problem
from ..engine.declaration import Calculation
from ..jobs.sheet.written import entry_text
from ..output.layout import command, wrap
from ..plugging.host import Catalogue
from ..said.findings import Finding
from . import COMMANDS, help_texts, terminal
from .calculate import check_chart, report, with_more
from .dialogue import Answered, command_line, converse
from .load_plugins import catalogue, find
from .options import MOST_WORDS, split
from .result import Result
from .usage import GENERAL

JOB = "job"  # in place of a name: leads through a job sheet
_OF_JOB = {JOB: COMMANDS[JOB]}


def run(words: Sequence[str]) -> Result:
    """Ask for the inputs of a calculation and run it; the command line comes with the result.

    Raises BadInput where stdin is no terminal, and KeyboardInterrupt where the person leaves.
    """
    options = split(words, COMMANDS["ask"], most_words=MOST_WORDS)
    options.refuse()
    check_chart(options)
    if options.words[:1] == [JOB]:
        from .ask_job import ask_job

        return ask_job(words, options)
    name = " ".join(options.words)
    loaded = catalogue(words)
    there = terminal.is_there()
    calc = find(loaded, name, _OF_JOB, asked_by="ask") if name and not there else None
    if not there:
        how = calc.example if calc else "`wirecalc NAME --help` has an example of each"
        wrong = "asks at a terminal, and the input is none"
        raise BadInput([Problem("ask", wrong, f"run it without questions: {how}")])
    more = _given_options(words)
    with terminal.at_terminal():
        calc, asked = _asked(loaded, name, more)
    again = _again(calc, asked.given, more)
    try:
        found = with_more(loaded, calc, asked.finding, asked.given)
        return report(loaded, found, calc, options)._replace(closing=again)
    except BadInput:
        print(again, file=sys.stderr)  # the answers are not lost
        raise


def _asked(
    loaded: Catalogue, wanted: str, more: Sequence[str]
) -> tuple[Calculation[Any], Answered]:
    """Ask for the inputs of a calculation, and which it is unless its name is given; run it."""
    try:
        calc = _which(loaded, wanted)

        def compute(given: Mapping[str, object]) -> Finding:
            return loaded.run(calc.name, given)

        def probe(given: Mapping[str, object]) -> Finding:
            return loaded.run(calc.name, given, origin="sheet", missing_is_unknown=True)

        asked = converse(calc, compute, probe, terminal.read, terminal.say)
    except (EOFError, KeyboardInterrupt):
        terminal.say("\nLeft. Nothing was computed.")
        raise KeyboardInterrupt from None
    terminal.say("")
    return calc, asked


def _again(calc: Calculation[Any], given: Mapping[str, object], more: Sequence[str]) -> str:
    """Return the line that gives the finding again, and its entry of a job sheet."""
    entry = entry_text("check", {"calculation": calc.name, **given})
    line = "\n".join(command(command_line(calc, given, more)))
    return f"\nFor a job sheet:\n{entry}\n\nThe same again:\n{line}"


def _given_options(words: Sequence[str]) -> list[str]:
    """Return the options that were given to `ask` itself, as typed, for the command line."""
    given: list[str] = []
    rest = iter(words)
    for word in rest:
        if word.startswith("--"):
            given.append(word)
            if GENERAL.get(word, ("", ""))[0]:
                given.append(next(rest))
    return given


def _which(loaded: Catalogue, typed: str = "") -> Calculation[Any]:
    """Ask which calculation is wanted, by name, by words, or by its number among those that fit."""
    fits: list[str] = []
    if not typed:
        terminal.say("\n".join(help_texts.by_part(loaded)))
    while True:
        number = int(typed) - 1 if typed.isascii() and typed.isdigit() else -1
        if 0 <= number < len(fits):
            typed = fits[number]
        if typed in loaded.calculations:
            return loaded.calculations[typed].calculation
        if typed and typed not in WORDS:
            fits = _fitting(loaded, typed)
        else:
            terminal.say("Type a name, or words for it; Ctrl-C leaves.")
        typed = terminal.read("\ncalculation> ").strip()


def _fitting(loaded: Catalogue, typed: str) -> list[str]:
    """Say what fits some words, numbered, and return the names."""
    from .suggestions import fitting, suggested  # dear: it loads every calculation

    found = fitting(loaded, typed, _OF_JOB)
    names = [name for name in found.names if name != JOB]
    if not names:
        terminal.say(str(suggested(loaded, typed, _OF_JOB, asked_by="ask")))
        return []
    lines = ["", *wrap(f"What fits {typed!r}, best first:")]
    for number, name in enumerate(names, start=1):
        question = loaded.calculations[name].offered.question
        lines += wrap(f"{name}: {question}", f"{number} ", "    ")
    if found.unchecked:
        name, what = found.unchecked[0]
        lines += wrap(f"Not checked by {name}: {what}.")
    if JOB in found.names:
        lines += wrap(
            f"A whole repair, step by step: leave with Ctrl-C, then `wirecalc ask {JOB}`."
        )
    lines += wrap("Type the number of one of these, a name, or other words.")
    terminal.say("\n".join(lines))
    return names
