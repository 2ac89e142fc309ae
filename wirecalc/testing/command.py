"""Running the command line in this process."""

from __future__ import annotations

import contextlib
import io
import json
from typing import Any, NamedTuple

from .. import cli


class Outcome(NamedTuple):
    """What a command came to: its exit status, and what it wrote to stdout and stderr."""

    status: int
    out: str
    err: str

    @property
    def complaints(self) -> list[str]:
        """The lines on stderr, without the name of the command."""
        return [line.removeprefix("wirecalc: ") for line in self.err.splitlines()]

    @property
    def json(self) -> Any:
        """What stdout holds, read as JSON; raises ValueError where it holds something else."""
        return json.loads(self.out)


def run_command(*words: str) -> Outcome:
    """Run `wirecalc` with these words in this process, and say what it came to.

    It is no terminal and writes UTF-8. Nothing is raised for what a person may type wrongly: that
    is exit status 2 and a text on stderr.
    """
    out, err = _pipe(), _pipe()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        status = cli.main(words)
    return Outcome(status, _written(out), _written(err))


def _pipe() -> io.TextIOWrapper:
    return io.TextIOWrapper(io.BytesIO(), encoding="utf-8", newline="\n", write_through=True)


def _written(pipe: io.TextIOWrapper) -> str:
    pipe.seek(0)
    return pipe.read()
