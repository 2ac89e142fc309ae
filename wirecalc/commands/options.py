"""Splitting the words of a command line. argparse does only that: no types, no abbreviations.

What is unknown, repeated or missing is reported together with what cannot be read.
"""

from __future__ import annotations

import argparse
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

from ..base.errors import BadInput, Problem, nearest
from ..engine.left_out import option_of
from ..engine.trade_names import abbreviations, candidates
from ..output import terminal_width
from .usage import CALCULATION, FORMATS, GENERAL, SWITCHES, Command

if TYPE_CHECKING:
    from ..engine.declaration import Calculation
    from ..engine.inputs import Input

_MOST_MEANT = 3  # inputs that are named for one word
_GONE = {"brief": "write --short; a terminal gets that without it"}  # options of before

MOST_WORDS = 40  # that say what is wanted where the name of a calculation may stand


@dataclass
class Options:
    """The options of a command, its own words, and what is wrong so far.

    `own` has the command's own options that were given, by their names without dashes; one that
    takes no value is "" there. `repeated` has all values of those that may be given several times.
    `short` says that the text is to be short, and `length` what was said of that: --full, --short
    or nothing.
    """

    format: str = "text"
    output: Path | None = None
    chart: Path | None = None
    short: bool = False
    length: str = ""
    working: bool = False
    no_marginal: bool = False
    help: bool = False
    given: dict[str, object] = field(default_factory=dict)
    own: dict[str, str] = field(default_factory=dict)
    repeated: dict[str, list[str]] = field(default_factory=dict)
    words: list[str] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)

    def form_refused(self, beside: str, forms: Sequence[str] = FORMATS) -> list[Problem]:
        """Return the complaint about a form in which what an option asks for is not written."""
        if self.length:
            return [Problem(self.length, f"means nothing beside {beside}", "leave it out")]
        if self.format in forms:
            return []
        wrong = f"{beside} is not written as {self.format}"
        return [Problem("--format", wrong, f"write {' or '.join(forms)}, or leave it out")]

    def refuse(self) -> None:
        """Raise BadInput if anything was wrong."""
        if self.problems:
            raise BadInput(self.problems)


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise BadInput([Problem("", message)])


def split(
    words: Sequence[str],
    command: Command = CALCULATION,
    calc: Calculation[Any] | None = None,
    *,
    most_words: int = 0,
) -> Options:
    """Split the words behind a command; `calc` gives options beside those of the command.

    An option that another command takes, and this one does not, is refused like an unknown one.
    """
    parser = _Parser(prog="wirecalc", add_help=False, allow_abbrev=False)
    described = command.described
    for option, (value, _) in described.items():
        parser.add_argument(option, action="append" if value else "store_true")
    inputs = calc.inputs if calc else ()
    takes = [*(i.name for i in inputs), *(calc.renamed if calc else ())]  # the run refuses these
    short = abbreviations([i.name for i in inputs])
    for name in takes:
        also = [f"--{w}" for s, n in short.items() if n == name for w in (s, s.upper())]
        parser.add_argument(option_of(name), *also, dest=f"input {name}", action="append")
    needs_value = {o for o, (value, _) in described.items() if value}
    needs_value |= {option_of(name) for name in takes} | {f"--{s}" for s in short}
    kept, empty = _without_empty(join_negative(words), needs_value)
    parsed, extra = parser.parse_known_args(kept)
    found = vars(parsed)
    options = Options(
        help=found["help"],
        working=bool(found.get("working")),
        no_marginal=bool(found.get("no_marginal")),
    )
    options.problems += [Problem(name, "has no value behind it") for name in empty]
    for name in takes:
        values = found[f"input {name}"]
        if values is not None:
            options.given[name] = values[0] if len(values) == 1 else values
    _single(options, found, {o: d for o, d in described.items() if o not in command.repeated})
    options.own = {o.lstrip("-"): _value(found, o) for o in command.own if found[_destination(o)]}
    options.repeated = {o.lstrip("-"): found[_destination(o)] or [] for o in command.repeated}
    _general(options, found, command.forms)
    _extra(options, extra, command, inputs, most_words)
    return options


def join_negative(words: Sequence[str]) -> list[str]:
    """Join `--ambient -18C` to one word: argparse would take -18C for an option."""
    joined: list[str] = []
    for word in words:
        before = joined[-1] if joined else ""
        if re.match(r"[-−][\d.]", word) and before.startswith("--") and "=" not in before:
            joined[-1] = f"{before}={word}"
        else:
            joined.append(word)
    return joined


def _without_empty(words: Sequence[str], takes_value: set[str]) -> tuple[list[str], list[str]]:
    """Take out the options that should have a value behind them and have none."""
    kept: list[str] = []
    empty: list[str] = []
    for word, after in pairwise([*words, "--"]):
        (empty if word in takes_value and after.startswith("--") else kept).append(word)
    return kept, empty


def _destination(option: str) -> str:
    return option.lstrip("-").replace("-", "_")


def _single(
    options: Options, found: Mapping[str, Any], described: Mapping[str, tuple[str, str]]
) -> None:
    for option, (value, _) in described.items():
        if value and len(found[_destination(option)] or ()) > 1:
            options.problems.append(Problem(option, "was given twice", "give it once"))


def _value(found: Mapping[str, Any], option: str) -> str:
    values = found[_destination(option)]
    return str(values[0]) if isinstance(values, list) else ""


def _general(options: Options, found: Mapping[str, Any], formats: Sequence[str]) -> None:
    if found.get("format"):
        options.format = found["format"][0]
        if options.format not in formats:
            options.problems.append(
                Problem(
                    "--format",
                    f"{options.format!r} is not known here",
                    f"write {', '.join(formats)}",
                )
            )
    empty = [f"--{name}" for name in ("output", "chart") if found.get(name) == [""]]
    options.problems += [Problem(option, "is empty", "name a file") for option in empty]
    if found.get("output"):
        options.output = Path(found["output"][0])
        terminal_width.for_a_file()
    _length(options, full=bool(found.get("full")), short=bool(found.get("short")))
    if found.get("chart"):
        options.chart = Path(found["chart"][0])


def _length(options: Options, *, full: bool, short: bool) -> None:
    """Take --full or --short; without them a terminal gets the short text, all else the full one.

    The arithmetic is part of the full text.
    """
    options.length = "--short" if short else "--full" if full else ""
    beside = [o for o, given in (("--full", full), ("--working", options.working)) if given]
    if options.format != "text":
        beside = [f"--format {options.format}"]
    if short and beside:
        wrong = f"is a short text, and {beside[0]} asks for another"
        options.problems.append(Problem("--short", wrong, "leave one of them out"))
    on_terminal = terminal_width.now().terminal and not beside
    options.short = options.format == "text" and (short or on_terminal)


def _meant(option: str, known: Sequence[str]) -> str:
    """Return what to try in place of an unknown option: by the trade's word, else by spelling."""
    plain = option.lstrip("-").replace("_", "-").casefold()
    if plain in _GONE:
        return _GONE[plain]
    names = [name.lstrip("-").replace("-", "_") for name in known]
    if meant := candidates(plain, names):
        return f"did you mean {' or '.join(map(option_of, meant[:_MOST_MEANT]))}?"
    close = nearest(plain, [name.lstrip("-") for name in known])
    return f"did you mean --{close}?" if close else ""


def _extra(
    options: Options,
    extra: Sequence[str],
    command: Command,
    inputs: Sequence[Input],
    most_words: int,
) -> None:
    """Report unknown options, each with its nearest known name, and stray words."""
    known = [*command.described, *(i.option for i in inputs)]
    after_unknown = False
    for word in extra:
        if word.startswith("-") and len(word) > 1:
            name = word.split("=", 1)[0]
            if name in GENERAL:
                takes = f"it takes {', '.join(o for o in command.described if o not in SWITCHES)}"
                if name == "--chart" and "html" in command.forms and "--working" in command.takes:
                    takes = "leave it out; --format html shows the charts"
                problem = Problem(name, "is not an option of this command", takes)
            else:
                would_do = _meant(name, known) or "--help lists them"
                problem = Problem(name, "there is no such option", would_do)
            options.problems.append(problem)
            after_unknown = "=" not in word and bool(GENERAL.get(name, ("its value",))[0])
            continue
        if after_unknown:  # the value of an unknown option is no complaint of its own
            after_unknown = False
        elif len(options.words) < most_words:
            options.words.append(word)
        else:
            options.problems.append(
                Problem(repr(word), "was not expected", "put texts with spaces in quotes")
            )
