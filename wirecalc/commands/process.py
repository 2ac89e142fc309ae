"""The process of the installed command: its output and its exit status are the core's.

A plugin is code of this process, so nothing keeps one out that means harm. What happens by
accident is kept out: what it prints, wherever to, is none of the result; it cannot end the run, nor
hold up its end, nor give it another status.
"""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Callable
from typing import Any, NoReturn

_ENDS = ("_exit", "execv", "execve")  # of os: all others lead to these
_end_at_once = os._exit


class Ending(BaseException):
    """A plugin wants to end the run, which is not its to end."""


def take_over() -> None:
    """Make stdout and the exit status those of the core, once, before a plugin is loaded."""
    _take_stdout()
    owner = os.getpid()
    for name in _ENDS:
        setattr(os, name, _only_in_children(getattr(os, name), owner))


def _take_stdout() -> None:
    """Lead `sys.stdout` to a descriptor of its own; the usual one is stderr from now on."""
    try:
        if sys.stdout is None or sys.stdout.fileno() != 1:
            return
        _open_all_three()
        mine = os.dup(1)
        os.dup2(2, 1)
    except (OSError, ValueError):
        return
    how: dict[str, Any] = {"encoding": sys.stdout.encoding, "errors": sys.stdout.errors}
    sys.stdout = open(mine, "w", **how)  # noqa: PTH123, SIM115 (open while the process runs)


def _open_all_three() -> None:
    """Lead nowhere what a shell has closed of the first three, so that nothing else gets there."""
    while (handle := os.open(os.devnull, os.O_RDWR)) <= 2:
        pass
    os.close(handle)


def _only_in_children(ends: Callable[..., Any], owner: int) -> Callable[..., Any]:
    """Return a function that ends a forked process as ever, and in this one raises Ending."""

    def end(*how: Any) -> Any:
        if os.getpid() != owner:
            return ends(*how)
        raise Ending("it wants to end the run")

    return end


def end(status: int) -> NoReturn:
    """End with this status at once, when all is written.

    Nothing that a plugin left behind runs any more: no function for the end, no thread. And what
    Python would tidy up before it ends goes with the process, which takes no time.
    """
    for stream in (sys.stdout, sys.stderr, sys.__stdout__, sys.__stderr__):
        with contextlib.suppress(OSError, ValueError, AttributeError):
            stream.flush()  # type: ignore[union-attr]
    _end_at_once(status)
