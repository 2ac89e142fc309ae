"""`wirecalc ask [NAME]`: asks for the inputs of a calculation at the terminal, then runs it.

Questions go to the terminal, wherever the result goes. Ctrl-C and Ctrl-D leave without a result.
"""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ..asking.answers import WORDS
from ..base.errors import BadInput, Problem
from ..engine.declaration import Calculation
from ..jobs.sheet.written import entry_text
from ..output import screen
from ..output.layout import printable
from ..plugging.host import Catalogue
from ..said.findings import Finding
from . import COMMANDS, help_texts
from .calculate import check_chart, report
from .dialogue import Answered, command_line, converse
from .load_plugins import catalogue, find
from .options import MOST_WORDS, split
from .result import Result
from .usage import GENERAL


def run(words: Sequence[str]) -> Result:
    """Ask for the inputs of a calculation and run it; the command line comes with the result.

    Raises BadInput where stdin is no terminal, and KeyboardInterrupt where the person leaves.
    """
    options = split(words, COMMANDS["ask"], most_words=MOST_WORDS)
    options.refuse()
    check_chart(options)
    name = " ".join(options.words)
    loaded = catalogue(words)
    calc = find(loaded, name, asked_by="ask") if name else None
    if sys.stdin is None or not sys.stdin.isatty():
        how = calc.example if calc else "`wirecalc NAME --help` has an example of each"
        wrong = "asks at a terminal, and the input is none"
        raise BadInput([Problem("ask", wrong, f"run it without questions: {how}")])
    more = _given_options(words)
    with _terminal():
        calc, asked = _asked(loaded, calc, more)
    again = _again(calc, asked.given, more)
    try:
        return report(loaded, asked.finding, calc, options)._replace(closing=again)
    except BadInput:
        print(again, file=sys.stderr)  # the answers are not lost
        raise


def _asked(
    loaded: Catalogue, wanted: Calculation[Any] | None, more: Sequence[str]
) -> tuple[Calculation[Any], Answered]:
    """Ask for a calculation, unless one is wanted, and its inputs, and run it."""
    try:
        calc = wanted or _which(loaded)

        def compute(given: Mapping[str, object]) -> Finding:
            return loaded.run(calc.name, given)

        def probe(given: Mapping[str, object]) -> Finding:
            return loaded.run(calc.name, given, origin="sheet", missing_is_unknown=True)

        asked = converse(calc, compute, probe, _read, _say)
    except (EOFError, KeyboardInterrupt):
        _say("\nLeft. Nothing was computed.")
        raise KeyboardInterrupt from None
    _say("")
    return calc, asked


def _again(calc: Calculation[Any], given: Mapping[str, object], more: Sequence[str]) -> str:
    """Return the line that gives the finding again, and its entry of a job sheet."""
    entry = entry_text("check", {"calculation": calc.name, **given})
    line = command_line(calc, given, more)
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


def _which(loaded: Catalogue) -> Calculation[Any]:
    """Ask which calculation is wanted, until there is one of the name."""
    _say("\n".join(help_texts.by_part(loaded)))
    while True:
        typed = _read("\ncalculation> ").strip()
        try:
            if typed and WORDS.get(typed) is None:
                return find(loaded, typed, asked_by="ask")
            _say("Type one of the names above; Ctrl-C leaves.")
        except BadInput as error:
            _say(str(error))


@contextlib.contextmanager
def _terminal() -> Iterator[None]:
    """Lead what is printed to the terminal that stdin is, also where stdout goes elsewhere.

    `input()` edits lines (readline) only where Python's own stdout is a terminal; so descriptor 1
    is the terminal while there are questions.
    """
    with contextlib.suppress(ImportError):
        import readline  # noqa: F401  its import is what gives input() editing and history
    try:
        kept = os.dup(1)
    except OSError:  # stdout is closed
        kept = -1
    _use_terminal()
    try:
        with (
            open(1, "w", encoding=_encoding(), errors="replace", closefd=False) as terminal,
            contextlib.redirect_stdout(terminal),
            screen.shown_on(screen.looked_at(terminal)),
        ):
            yield
    finally:
        os.close(1)
        if kept >= 0:
            os.dup2(kept, 1)
            os.close(kept)


def _use_terminal() -> None:
    """Make descriptor 1 the terminal that stdin is."""
    try:
        handle = os.open(os.ttyname(0), os.O_WRONLY | os.O_NOCTTY)
    except OSError:  # a terminal without a name here, as in some containers
        handle = os.dup(0)
    if handle != 1:
        os.dup2(handle, 1)
        os.close(handle)


def _encoding() -> str:
    return sys.stdin.encoding or "ascii"


def _read(prompt: str) -> str:
    while True:
        try:
            return input(prompt)
        except UnicodeDecodeError:
            _say("That is no text in this terminal's encoding; type it again.")


def _say(text: str) -> None:
    print(printable(text, _encoding()), flush=True)
