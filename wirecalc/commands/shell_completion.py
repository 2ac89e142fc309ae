"""Completing a command line for a shell: which words may come next.

The shell's code (`wirecalc completion`) starts the command with the line in its environment.
argcomplete reads the line, asks an argparse parser what may stand at the cursor, and quotes it for
the shell. The parser here describes only the command or calculation at hand.
"""

from __future__ import annotations

import argparse
import os
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from typing import TYPE_CHECKING, Any, NoReturn

from ..plugging.host import build
from ..typed.word_kinds import OneOf, YesNo
from . import COMMANDS
from .load_plugins import catalogue_with
from .options import join_negative
from .usage import CALCULATION

if TYPE_CHECKING:
    from ..engine.declaration import Calculation

Words = Mapping[str, str]  # a word that may come -> what it means


def complete() -> NoReturn:
    """Answer the shell and end; a line that can't be completed gets no word and no complaint."""
    with suppress(BaseException):
        from argcomplete.finders import ExclusiveCompletionFinder
        from argcomplete.lexers import split_line

        words = split_line(os.environ["COMP_LINE"], int(os.environ["COMP_POINT"]))[3]
        parser = _parser(words[1:])
        everywhere = len(words) > 1 and words[1] not in COMMANDS
        ExclusiveCompletionFinder()(parser, always_complete_options=everywhere)
    os._exit(1)


class _Parser(argparse.ArgumentParser):
    def parse_known_args(self, args: Any = None, namespace: Any = None) -> Any:
        return super().parse_known_args(join_negative(args or ()), namespace)


def _parser(words: Sequence[str]) -> _Parser:
    """Describe what may stand on a line behind these words."""
    name = words[0] if words else ""
    parser = _Parser(prog="wirecalc", add_help=False, allow_abbrev=False)
    _offer(parser.add_argument("command"), _names)
    if not name:
        for option, text in (("--help", "list all"), ("--version", "print the version")):
            parser.add_argument(option, action="store_true", help=_escaped(text))
        return parser
    if name == "batch":
        _offer(parser.add_argument("calculation"), _calculations)
        _offer(parser.add_argument("file"), _files(("csv",)))
        if len(words) > 1:
            _add_inputs(parser, catalogue_with(words[1]).find(words[1]).calculation)
        own = COMMANDS[name].described
    elif name in COMMANDS or name == "help":
        _offer(parser.add_argument("word", nargs="?"), _behind(name))
        own = COMMANDS[name].described if name in COMMANDS else {}
    else:
        _add_inputs(parser, catalogue_with(name).find(name).calculation)
        own = CALCULATION.described
    for option, (value, text) in own.items():
        if value:
            action = parser.add_argument(option, help=_escaped(text))
            _offer(action, _value(name, option, value))
        else:
            parser.add_argument(option, action="store_true", help=_escaped(text))
    return parser


def _add_inputs(parser: _Parser, calc: Calculation[Any]) -> None:
    """Add the options of a calculation; one that takes a list may be given again."""
    for declared in calc.inputs:
        kind, how = declared.kind, "append" if declared.many else "store"
        action = parser.add_argument(declared.option, action=how, help=_escaped(kind.text))
        if isinstance(kind, OneOf):
            _offer(action, dict.fromkeys(kind.words, ""))
        elif isinstance(kind, YesNo):
            _offer(action, {"yes": "", "no": ""})
        else:
            _offer(action, _files() if kind.of_file else {})


def _behind(name: str) -> Words | Callable[..., Any]:
    """Return what may stand behind a command."""
    if name == "ask":
        return _askable
    if name == "explain":
        return _calculations
    if name == "help":
        return _names
    if name == "tables":
        return _tables
    if name == "schema":
        from .schema import SCHEMAS

        return dict.fromkeys(SCHEMAS, "")
    if name == "completion":
        from .completion import SHELLS

        return dict.fromkeys(SHELLS, "")
    return _value(name, "", COMMANDS[name].usage, ("toml",) if name == "job" else ())


def _value(
    name: str, option: str, value: str, endings: Sequence[str] = ()
) -> Words | Callable[..., Any]:
    """Return what may stand for the FILE, FOLDER or FORM of an option."""
    if option == "--format":
        return dict.fromkeys(COMMANDS.get(name, CALCULATION).forms, "")
    if option == "--new":
        return _kinds_of_job
    if "FOLDER" in value:
        from argcomplete.completers import DirectoriesCompleter

        return DirectoriesCompleter()
    return _files(endings) if "FILE" in value else {}


def _files(endings: Sequence[str] = ()) -> Callable[..., Any]:
    from argcomplete.completers import FilesCompleter

    return FilesCompleter(endings)


def _askable(**_: object) -> dict[str, str]:
    return {**_calculations(), "job": "lead through a repair, and write its sheet"}


def _calculations(**_: object) -> dict[str, str]:
    offered = build().calculations
    return {name: provided.offered.question for name, provided in offered.items()}


def _names(**_: object) -> dict[str, str]:
    return {**_calculations(), **{name: c.text for name, c in COMMANDS.items()}}


def _tables(**_: object) -> list[str]:
    from ..published import tables

    build()  # plugins may add tables
    return list(tables.names())


def _kinds_of_job(**_: object) -> list[str]:
    from ..jobs.sheet.kinds import table_kinds

    build()  # plugins may add tables
    return list(table_kinds())


def _offer(action: argparse.Action, words: Words | Callable[..., Any]) -> None:
    """Give an action what completes it: a function of argcomplete's, or words as they are."""
    action.completer = words if callable(words) else lambda **_: dict(words)  # type: ignore[attr-defined]


def _escaped(text: str) -> str:
    return text.replace("%", "%%")
