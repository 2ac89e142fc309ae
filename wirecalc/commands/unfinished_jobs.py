"""Jobs by questions that were left in a folder: which they are, how far each got, which goes on."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

from ..asking.job_question import Question, chosen
from ..asking.job_state import how_far
from ..base.errors import BadInput, BadText, Problem
from ..jobs import sheet as jobsheet
from ..jobs.sheet.shape import words_of
from ..output.layout import wrap
from .prompting import Reader, Sayer

HEAD = "Written by `wirecalc ask job`"  # how the first line of such a sheet begins
_MOST = 8  # that are offered, the latest first
_LARGEST = 1_000_000  # bytes; no sheet that was asked for is larger
_NEW = "a new job"


class Left(NamedTuple):
    """A sheet that is not asked to its end."""

    path: Path
    said: str


def unfinished(folder: Path) -> list[Left]:
    """Return the sheets of a folder whose questions did not come to their end, the latest first."""
    found: list[tuple[float, Left]] = []
    for path in folder.glob("*.toml"):
        try:
            about = path.stat()
            sheet = _sheet(path) if about.st_size <= _LARGEST else None
        except OSError:
            continue
        far = how_far(sheet) if sheet is not None else ""
        if sheet is not None and far:
            day = datetime.date.fromtimestamp(about.st_mtime)
            title = words_of(sheet["job"].get("title", "")) or "no words on it yet"
            found.append((about.st_mtime, Left(path, f"{path.name}: {title}; {far}; {day}")))
    return [left for _, left in sorted(found, key=lambda one: (-one[0], one[1].path.name))]


def _sheet(path: Path) -> Mapping[str, Any] | None:
    """Return a sheet that questions wrote; None where it is none, or cannot be read."""
    try:
        content = jobsheet.content(path)
        sheet = jobsheet.parse(content, path.name)
    except BadInput:
        return None
    if not content.startswith(f"# {HEAD}".encode()):
        return None
    return sheet if isinstance(sheet.get("job"), dict) else None


def which(folder: Path, read: Reader, say: Sayer) -> Path | None:
    """Ask which of the unfinished sheets of a folder goes on; None for a new one."""
    left = unfinished(folder)[:_MOST]
    if not left:
        return None
    first = left[0].path.name
    choices = [*(one.path.name for one in left), _NEW]
    question = Question("which", "", choices=choices, enter=f"goes on with {first}", default=first)
    lines = ["", *wrap("Unfinished here:" if len(left) > 1 else "Not finished yet:")]
    for number, one in enumerate((*(one.said for one in left), _NEW), start=1):
        lines += wrap(one, f"{number:>2} ")
    say("\n".join([*lines, *wrap(f"Enter: {question.enter}", "  ")]))
    while True:
        try:
            name = chosen(question, read("> "))[0]
        except BadText as error:
            say("\n".join(wrap(f"{Problem('', error.wrong, error.would_do)}", "  ")))
            continue
        return next((one.path for one in left if one.path.name == name), None)
