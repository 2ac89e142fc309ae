"""`wirecalc` alone, and every `--help`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..base.errors import BadInput, Problem
from ..version import VERSION
from . import help_texts
from .load_plugins import HELP, catalogue, catalogue_with, find, leading, warnings
from .options import split
from .result import Result
from .usage import LISTING, Command

Commands = Mapping[str, Command]


def list_all(words: Sequence[str], commands: Commands) -> Result:
    """List all calculations by part of the trade, and the commands."""
    options = split(words, LISTING, most_words=1)
    if options.words:
        wrong = f"{options.words[0]!r} stands behind {words[0]}"
        would_do = "write the calculation or command first: "
        would_do += f"wirecalc {options.words[0]} {words[0]} ..."
        raise BadInput([Problem("", wrong, would_do)])
    options.refuse()
    loaded = catalogue(words)
    text = help_texts.listing(loaded, VERSION, commands)
    return Result(text, output=options.output, warnings=warnings(loaded))


def show_help(words: Sequence[str], commands: Commands) -> Result:
    """Show the help of a command or calculation, or list all."""
    if not words:
        return list_all([], commands)
    name = words[0]
    if name in commands:
        return Result(help_texts.command_help(commands[name]))
    loaded = catalogue_with(name, words)
    said = name if name in loaded.calculations else " ".join([name, *leading(words[1:])])
    return Result(help_texts.calculation_help(find(loaded, said, commands, asked_by=HELP)))
