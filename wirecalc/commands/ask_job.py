"""`wirecalc ask job [SHEET.toml]`: leads through a job, and writes its sheet as it goes.

The sheet is written whole after every answer, so that it can be left at any question and taken up
again.
"""

from __future__ import annotations

import contextlib
import datetime
import shlex
from collections.abc import Sequence
from itertools import count
from pathlib import Path

from ..asking.job_interview import Interview
from ..asking.job_state import file_name
from ..base.errors import BadInput, Problem
from ..base.files import encoded, write_new, write_whole
from ..jobs import sheet as jobsheet
from ..jobs.sheet.written import sheet_text
from ..output.layout import command
from . import terminal
from .job import finished
from .job_dialogue import lead_through
from .load_plugins import catalogue
from .options import Options
from .result import Result, refuse_onto
from .unfinished_jobs import HEAD, which

_HEAD = HEAD + ", which takes it up again: wirecalc ask job {file}"


class _File:
    """The file of a sheet: its name, and what was read from it or written to it last."""

    def __init__(self, path: Path | None) -> None:
        self.path = path
        self._content: bytes | None = None
        self._by_hand = False

    def read(self) -> dict[str, object]:
        """Return the sheet that stands there; an empty one where none does."""
        if self.path is None or not self.path.exists():
            return {}
        self._content = jobsheet.content(self.path)
        sheet = jobsheet.parse(self._content, str(self.path))
        self._by_hand = _below_head(self._content) != _below_head(
            encoded(sheet_text(sheet, "head"))
        )
        return sheet

    def keep(self, interview: Interview) -> None:
        """Write the sheet where it is not written yet; raises BadInput where that cannot be.

        A new one takes a name that is free, and nothing that another program wrote is lost.
        """
        if not interview.kind:
            return
        if self.path is None:
            names = (Path(file_name(interview.kind, number)) for number in count(1))
            self.path = next(path for path in names if not path.exists())
        text = interview.text(_HEAD.format(file=shlex.quote(self.path.name)))
        if self._content == encoded(text):
            return
        self._refuse_changed()
        try:
            self._write(text)
        except BadInput as error:
            would_do = "it is as it was before this answer; take it up again"
            raise BadInput(p._replace(would_do=would_do) for p in error.problems) from None
        self._content = encoded(text)

    def _refuse_changed(self) -> None:
        """Refuse to write over what another program wrote since this one read or wrote it."""
        assert self.path is not None
        if self._content is None or (
            self.path.exists() and self.path.read_bytes() == self._content
        ):
            return
        wrong = "was changed by another program meanwhile, and stays as it is"
        raise BadInput([Problem(str(self.path), wrong, "take it up again")])

    def _write(self, text: str) -> None:
        assert self.path is not None
        if self._content is None:
            write_new(self.path, text)
            return
        if self._by_hand:
            names = (self.path.with_name(f"{self.path.stem}-before-{n}.toml") for n in count(1))
            former = next(path for path in names if not path.exists())
            write_new(former, self._content.decode(errors="replace"))
            terminal.say(f"As it was, with its comments, it is kept in {former}.")
            self._by_hand = False
        write_whole(self.path, text)


def _below_head(content: bytes) -> bytes:
    """Return what stands below the words on a sheet, which say the name of its file."""
    first, _, rest = content.partition(b"\n")
    return rest if first.startswith(b"#") else content


def ask_job(words: Sequence[str], options: Options) -> Result:
    """Lead through a job by questions, then give its report.

    Raises BadInput where stdin is no terminal or the sheet is refused, and KeyboardInterrupt where
    the person leaves.
    """
    if len(options.words) > 2:
        wrong = f"{' '.join(options.words[1:])!r} is no one file"
        raise BadInput([Problem("ask job", wrong, "such as ask job repair.toml")])
    if options.chart:
        raise BadInput([Problem("--chart", "means nothing beside job", "leave it out")])
    if not terminal.is_there():
        wrong = "asks at a terminal, and the input is none"
        how = "run it without questions: wirecalc job --new KIND"
        raise BadInput([Problem("ask job", wrong, how)])
    if len(options.words) == 2 and not Path(options.words[1]).parent.is_dir():
        wrong = "its folder is not there"
        raise BadInput([Problem(options.words[1], wrong, "make it, or choose another")])
    loaded = catalogue(words)
    file = _File(Path(options.words[1]) if len(options.words) == 2 else _which())
    sheet = file.read()
    if file.path:
        refuse_onto(options.output, [str(file.path)])
    folder = file.path.parent if file.path else Path()
    today = datetime.date.today().isoformat()
    interview = Interview(sheet, loaded, folder, today)
    with terminal.at_terminal():
        _lead(interview, file)
    assert file.path is not None
    done = interview.evaluated()
    return finished(done, options, loaded, says_rest=False)._replace(closing=_then(file.path))


def _which() -> Path | None:
    """Ask which unfinished job of this folder goes on, where there is one."""
    with terminal.at_terminal():
        try:
            return which(Path(), terminal.read, terminal.say)
        except (EOFError, KeyboardInterrupt):
            terminal.say("\nLeft. Nothing was written.")
            raise KeyboardInterrupt from None


def _lead(interview: Interview, file: _File) -> None:
    try:
        lead_through(interview, terminal.read, terminal.say, lambda: file.keep(interview))
    except (EOFError, KeyboardInterrupt):
        with contextlib.suppress(OSError):  # the terminal may be gone
            terminal.say(_left(file.path))
        raise KeyboardInterrupt from None


def _left(path: Path | None) -> str:
    if path is None:
        return "\nLeft. Nothing was written."
    again = command(f"wirecalc ask job {shlex.quote(str(path))}")
    return "\n".join([f"\nLeft. {path} has what was answered; take it up again with", *again])


def _then(path: Path) -> str:
    """Say how to get the page, and how to take the sheet up again."""
    sheet, page = shlex.quote(str(path)), shlex.quote(str(path.with_suffix(".html")))
    lines = ["", "All of it:", *command(f"wirecalc job {sheet} --full")]
    lines += ["The page to hand over:"]
    lines += command(f"wirecalc job {sheet} --format html --output {page}")
    return "\n".join([*lines, "To go on with it:", *command(f"wirecalc ask job {sheet}")])
