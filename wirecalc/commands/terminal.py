"""The terminal that questions are asked at, wherever the result goes."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator

from ..output import terminal_width
from ..output.layout import printable


def is_there() -> bool:
    """Whether the input is a terminal, so that somebody can be asked."""
    return sys.stdin is not None and sys.stdin.isatty()


@contextlib.contextmanager
def at_terminal() -> Iterator[None]:
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
            terminal_width.shown_on(terminal_width.looked_at(terminal)),
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
    except (OSError, AttributeError):  # without a name here, as in some containers, or at all
        handle = os.dup(0)
    if handle != 1:
        os.dup2(handle, 1)
        os.close(handle)


def _encoding() -> str:
    return sys.stdin.encoding or "ascii"


def read(prompt: str) -> str:
    """Return a line that was typed; raises EOFError at the end of the input."""
    while True:
        try:
            return input(prompt)
        except OSError:  # the terminal is gone
            raise EOFError from None
        except UnicodeDecodeError:
            say("That is no text in this terminal's encoding; type it again.")


def say(text: str) -> None:
    """Show some lines."""
    print(printable(text, _encoding()), flush=True)
