"""What is said of code that is not ours and failed: what, where in its files, what would do."""

from __future__ import annotations

import contextlib
import os
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from types import CodeType, FrameType, GeneratorType
from typing import Any

from .errors import PluginDefect, WirecalcError, did_you_mean

TRACEBACK = "WIRECALC_TRACEBACK"  # a variable: the whole way to what failed goes to stderr
_PLACE = "wirecalc_place"  # an attribute of an error whose place is known without its way
_NOT_THEIRS = {"wirecalc", "pluggy", "pint", *sys.stdlib_module_names}


def described(error: BaseException) -> str:
    """Say what went wrong, with the kind of an error that is not ours; never raises itself."""
    try:
        said = str(error)
    except BaseException:  # a text of its own may do anything, exit too
        said = "it cannot say what"
    if isinstance(error, WirecalcError):
        return said
    if isinstance(error, ImportError) and (better := _of_import(error, said)):
        return better
    if isinstance(error, SyntaxError) and isinstance(error.msg, str):
        said = error.msg  # its text has the file, which is said apart
    if type(error) is KeyError:
        said = f"there is no key {said}"
    named = f"{type(error).__name__}: {said}" if said else type(error).__name__
    hint = "" if "did you mean" in said.casefold() else _hint(error, said)
    return f"{named}; {hint}" if hint else named


def with_place(error: BaseException, function: object = None) -> str:
    """Say what went wrong, and in which file and line of a plugin (see `placed`)."""
    return f"{described(error)}{placed(error, function)}"


def placed(error: BaseException | None, function: object = None) -> str:
    """Return the place of an error in a plugin, in brackets; empty where nobody knows it.

    Where the error came up in no code of the plugin, it is that of the `function` that it is about.
    Where the variable asks for it, the whole way to the error goes to stderr.
    """
    place = ""
    if error is not None:
        show_traceback(error)
        place = place_of(error)
    place = place or place_in(function)
    return f" ({place})" if place else ""


def show_traceback(error: BaseException) -> None:
    """Print the whole way to an error where the variable asks for it."""
    if os.environ.get(TRACEBACK) and sys.stderr is not None:
        import traceback

        with contextlib.suppress(Exception):
            traceback.print_exception(error)


class Blamed:
    """Within this, whatever is raised is a defect of a plugin, whose code is run.

    Ctrl-C goes on, and so do errors of the kinds that are `expected`. `function` is what is run.
    """

    def __init__(self, what: str, *expected: type[BaseException], function: object = None) -> None:
        self.what, self.function = what, function
        self.expected: tuple[type[BaseException], ...] = (KeyboardInterrupt, *expected)

    def __enter__(self) -> None:
        """Begin."""

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: object
    ) -> None:
        """Raise PluginDefect for what was raised."""
        if error is not None and not isinstance(error, self.expected):
            raise PluginDefect(f"{self.what}: {with_place(error, self.function)}") from error


def place_of(error: BaseException) -> str:
    """Return file and line of the deepest frame of the plugin whose code raised; else "".

    The plugin is the first on the way that is neither wirecalc nor Python's own. A file is named
    from its package on: where a shop keeps it is nobody's business.
    """
    if noted := error.__dict__.get(_PLACE):
        return str(noted)
    if isinstance(error, SyntaxError) and error.filename and error.lineno:
        return _named(error.filename, "", error.lineno)
    whose, found = "", ""
    for frame, line in _way_to(error):
        root = _root(frame)
        whose = whose or (root if root not in _NOT_THEIRS else "")
        if whose and root == whose:
            found = _named(frame.f_code.co_filename, root, line)
    return found


def place_in(function: object) -> str:
    """Return file and line where a function of a plugin is written; "" where nobody knows."""
    code = getattr(function, "__code__", None)
    root = str(getattr(function, "__module__", "")).partition(".")[0]
    if not isinstance(code, CodeType) or root in _NOT_THEIRS:
        return ""
    return _named(code.co_filename, root, code.co_firstlineno)


def at_yield(error: BaseException, stream: object) -> None:
    """Note on an error where a generator stands that yielded what is wrong."""
    while isinstance(stream, GeneratorType) and stream.gi_frame is not None:
        frame, stream = stream.gi_frame, stream.gi_yieldfrom
        note = _named(frame.f_code.co_filename, _root(frame), frame.f_lineno)
        error.__dict__[_PLACE] = note


def about(function: object, error: WirecalcError) -> WirecalcError:
    """Return an error with a note of the function that it is about."""
    error.__dict__[_PLACE] = place_in(function)
    return error


def _way_to(error: BaseException) -> Iterator[tuple[FrameType, int]]:
    step = error.__traceback__
    while step is not None:
        yield step.tb_frame, step.tb_lineno
        step = step.tb_next


def _root(frame: FrameType) -> str:
    return str(frame.f_globals.get("__name__", "")).partition(".")[0]


def _named(file: str, root: str, line: int) -> str:
    parts = Path(file).parts
    start = max((i for i, part in enumerate(parts) if part == root), default=len(parts) - 1)
    return f"{'/'.join(parts[start:])}, line {line}"


def _of_import(error: ImportError, said: str) -> str:
    """Say what an import did not find, and what would do."""
    if type(error) is ModuleNotFoundError and error.name:
        would_do = "install it, and name it under `dependencies` in its pyproject.toml"
        return f"it needs the module {error.name}, which is not installed beside it; {would_do}"
    found = re.match(r"cannot import name '(\w+)' from", said)
    module = sys.modules.get(error.name or "")
    if found is None or module is None:
        return ""
    guess = did_you_mean(found[1], _public(module))
    return f"{error.name} has no {found[1]!r}" + (f"; {guess}" if guess else "")


def _public(module: Any) -> list[str]:
    return list(getattr(module, "__all__", ())) or [n for n in vars(module) if n[:1] != "_"]


def _hint(error: BaseException, said: str) -> str:
    """Return what would do, where the kind of error or what it `said` shows it."""
    if type(error) is KeyError:
        return "ask for one that there is, or with get"
    if isinstance(error, ZeroDivisionError):
        return "refuse the inputs that lead there, or yield cannot_tell"
    if missing := re.search(r"missing \d required keyword-only argument: '(\w+)'$", said):
        return f"write {missing[1]}=..."
    with contextlib.suppress(Exception):  # a class of the plugin may answer with anything
        if isinstance(error, NameError) and error.name and error.__traceback__:
            return _near(error.name, _names_at(error))
        if isinstance(error, AttributeError) and error.name and error.obj is not None:
            return _near(error.name, (n for n in dir(error.obj) if n[:1] != "_"))
    return ""


def _near(name: str, known: Iterator[str]) -> str:
    guess = did_you_mean(name, list(known))
    return guess if guess.startswith("did") else ""


def _names_at(error: BaseException) -> Iterator[str]:
    """Yield the names that there are where an error was raised."""
    frames = [frame for frame, _ in _way_to(error)]
    yield from frames[-1].f_locals
    yield from frames[-1].f_globals
    yield from vars(sys.modules["builtins"])
