"""What fits words that name no calculation: a few, best first, each with the line to type.

It is said on stderr and the exit status is that of a wrong command, so that no script takes it for
a pass.
"""

from __future__ import annotations

import contextlib
from collections.abc import Mapping, Sequence
from typing import Any

from ..base.errors import OtherWords, Problem, TableError, nearest
from ..engine.declaration import Calculation
from ..engine.described_words import described
from ..engine.found_by_words import Found, WordIndex, of_calculations
from ..output.layout import command, wrap
from ..plugging.host import Catalogue
from ..published import tables
from .load_plugins import HELP, catalogue
from .usage import Command

_MOST = 4  # that are shown
_LESS = 3  # of what is about a part of the words
_LINES = 17  # with an example that is shown; where it is longer, the help has it
_RELATED = 3  # that are named beside one
_NEARLY = 0.7  # how like a command a word is that is taken for a slip of the pen


def fitting(loaded: Catalogue, typed: str, commands: Mapping[str, Command] | None = None) -> Found:
    """Return the names of the calculations, and commands, that fit some words, best first."""
    loaded.load_all()
    calculations = (p.calculation for p in loaded.calculations.values())
    tools = ((name, one.words) for name, one in (commands or {}).items())
    found = of_calculations(calculations, tools).find(typed)
    exact = [n for n in ("-".join(typed.split()), typed.split(" ")[0]) if n in loaded.calculations]
    names = dict.fromkeys([*found.names[:1], *exact, *found.names[1:]])
    most = _LESS if found.in_part or found.strange else _MOST
    return found._replace(names=tuple(names)[:most])


def suggested(
    loaded: Catalogue,
    typed: str,
    commands: Mapping[str, Command] | None = None,
    *,
    asked_by: str = "",
) -> OtherWords:
    """Return the refusal of words that name no calculation, with what fits them.

    `commands` may be meant too; `asked_by` is the command that was to have the name, or HELP.
    """
    commands = commands or {}
    found = fitting(loaded, typed, commands)
    first = typed.split(" ", 1)[0]
    command_meant = "" if first in commands else nearest(first, list(commands), _NEARLY)
    lines = [*wrap(_first(typed, found, command_meant)), *_missing(loaded), ""]
    for name in found.names:
        if name in commands:
            lines += [*wrap(f"{name}: {commands[name].text}", indent="  ")]
            lines += _to_type_command(name, commands[name], asked_by)
        else:
            calc = loaded.calculations[name].calculation
            lines += [*wrap(f"{name}: {calc.question}", indent="  "), *_to_type(calc, asked_by)]
    lines += [] if found.names or command_meant else _parts(loaded)
    closing = "`wirecalc` lists all calculations with their questions."
    if found.names and not asked_by:
        lines += _on_one_line(loaded, found.names[0], _LINES - len(lines))
        closing = "`wirecalc NAME --help` has the inputs of each; `wirecalc` lists all."
    return OtherWords("\n".join([*lines, "", *wrap(closing)]))


def _on_one_line(loaded: Catalogue, name: str, room: int) -> list[str]:
    """Return the example of a calculation, where there is room for it."""
    if name not in loaded.calculations:
        return []
    example = loaded.calculations[name].calculation.example
    lines = ["", *wrap("On one line, with readings such as these:"), *command(example)]
    return lines if len(lines) <= room else []


def suggested_table(typed: str) -> OtherWords:
    """Return the refusal of words that name no table, with the tables that fit them."""
    titles: dict[str, str] = {}
    texts: dict[str, list[str]] = {}
    for name in tables.names():
        with contextlib.suppress(TableError):  # a damaged one is named where tables are listed
            table = tables.load(name)
            sources = [s.title for s in table.sources.values()]
            titles[name], texts[name] = table.title, [table.purpose, *sources]
    found = WordIndex(described(n, titles[n], texts[n]) for n in titles).find(typed)
    fits = found.names[:_MOST]
    said = f"There is no table {typed!r}. What fits, best first:"
    lines = wrap(said if fits else f"There is no table {typed!r}, and none speaks of it.")
    for name in fits:
        lines += ["", *wrap(f"{name}: {titles[name]}", indent="  ")]
        lines += command(f"wirecalc tables {name}")
    return OtherWords("\n".join([*lines, "", *wrap("`wirecalc tables` lists them all.")]))


def _first(typed: str, found: Found, command_meant: str) -> str:
    strange = " or ".join(repr(word) for word in found.strange)
    if command_meant:
        said = f"{typed!r} is no calculation or command; did you mean {command_meant}?"
        return f"{said} Of the words:" if found.names else said
    if found.unchecked:
        name, what = found.unchecked[0]
        return f"Not checked by {name}: {what}. What fits a part of the words, best first:"
    if found.names and strange:
        return f"Nothing here speaks of {strange}. What fits the rest, best first:"
    if found.names and found.in_part:
        whole = "for itself" if len(typed.split()) == 1 else "as a whole"
        return f"Nothing here speaks of {typed!r} {whole}. What is near it, best first:"
    if found.names:
        return f"What fits {typed!r}, best first:"
    return f"Nothing here speaks of {strange or repr(typed)}. The parts of the trade that it knows:"


def _to_type(calc: Calculation[Any], asked_by: str) -> list[str]:
    if asked_by == HELP:
        return command(f"wirecalc {calc.name} --help")
    if asked_by == "batch":
        return command(f"wirecalc batch {calc.name} FILE.csv")
    return command(f"wirecalc {asked_by or 'ask'} {calc.name}")


def _to_type_command(name: str, meant: Command, asked_by: str) -> list[str]:
    if asked_by == "ask":
        return command(f"wirecalc {meant.also}")
    lines = command(f"wirecalc {name if asked_by else meant.usage} {asked_by}")
    return [*lines, *(command(f"wirecalc {meant.also}") if meant.also and not asked_by else ())]


def of_command(
    name: str, said: Sequence[str], words: Sequence[str], commands: Mapping[str, Command]
) -> OtherWords:
    """Return the refusal of words behind a command that name no file: `job card`, `rules shop`."""
    typed = " ".join(said)
    found = suggested(catalogue(words), f"{name} {typed}", commands)
    no_file = wrap(f"There is no file {typed!r} here.") if "FILE" in commands[name].usage else []
    return OtherWords("\n".join([*no_file, str(found)]))


def _parts(loaded: Catalogue) -> list[str]:
    parts: dict[str, list[str]] = {}
    for name, provided in loaded.calculations.items():
        parts.setdefault(provided.offered.part, []).append(name)
    rows = sorted(parts.items())
    return [line for p, names in rows for line in wrap(f"{p}: {', '.join(names)}", indent="  ")]


def _missing(loaded: Catalogue) -> list[str]:
    return [line for said in loaded.may_have() for line in wrap(said, indent="  ")]


def related(loaded: Catalogue, calc: Calculation[Any]) -> list[Problem]:
    """Return what is related to a calculation, each with its question, for its refusal."""
    loaded.load_all()
    others = [p.calculation for n, p in loaded.calculations.items() if n != calc.name]
    said = " ".join([calc.name, calc.question, *calc.words[:_RELATED]])
    found = of_calculations(others).find(said)
    names = found.names[:_RELATED]
    return [
        Problem("related", f"{name}: {loaded.calculations[name].offered.question}")
        for name in names
    ]
