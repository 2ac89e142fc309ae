"""The head of a recording: its first lines, its delimiter, and columns with their units."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from ..base.errors import BadText
from ..typed.quantity_kinds import Reading
from ..typed.units import converter, read_unit
from .files import delimiter_of, refuse_pipe, unreadable

_HEAD = 65536  # bytes in which the header and the first rows are looked for
_STAMP = re.compile(r"^(t|time|timestamp|date|datetime|clock|elapsed)(?![a-z])", re.IGNORECASE)
_UNIT = re.compile(r"^(?P<name>.*?)[\s_]*[\s_(\[](?P<unit>[^\s_()\[\]]+)[)\]]?$")
CLOCK = re.compile(r"\s*(\d{4}-\d\d-\d\d|\d{1,2}:\d\d)")


class FileLine(NamedTuple):
    """A line of the file: its text, the byte at which it begins, and its number."""

    text: str
    begins: int
    number: int


def first_lines(path: Path) -> tuple[list[FileLine], str]:
    """Return the first lines that say something, and the delimiter."""
    refuse_pipe(path)
    try:
        with path.open("rb") as file:
            start = file.read(_HEAD)
    except (OSError, ValueError) as error:
        raise unreadable(path, error) from None
    if b"\0" in start:
        raise BadText(f"{str(path)!r} is not text", "save it as CSV, UTF-8")
    lines, at = [], 0
    for number, raw in enumerate(start.splitlines(keepends=True), start=1):
        text = raw.decode("utf-8-sig" if at == 0 else "utf-8", errors="replace").strip("\r\n")
        if text.strip() and not text.startswith("#"):
            lines.append(FileLine(text, at, number))
        at += len(raw)
    if not lines:
        raise BadText(f"{str(path)!r} holds no readings", "write t_s and current_A, and rows")
    return lines, delimiter_of(lines[0].text)


def cells_of(line: FileLine, delimiter: str) -> list[str]:
    """Return the cells of a line, without quotes."""
    return [cell.strip().strip('"').strip() for cell in line.text.split(delimiter)]


def is_value(cell: str, comma: bool) -> bool:
    """Whether a cell holds a number, or a clock time, and so is no header."""
    try:
        float(cell.replace(",", ".") if comma else cell)
    except ValueError:
        return CLOCK.match(cell) is not None
    return True


def stamps_of(head: Sequence[str]) -> tuple[list[int], float]:
    """Return where the stamps are (date and time may be two columns), and their unit in s."""
    found = [i for i, h in enumerate(head) if _STAMP.match(h)]
    dates = [i for i in found if head[i].casefold() == "date"]
    if dates and len(found) > 1:
        return [dates[0], next(i for i in found if i != dates[0])], 1.0
    at = found[0] if found else 0
    match = _UNIT.match(head[at])
    unit = "s"
    if match is not None:
        try:
            unit = read_unit(match["unit"], "time")
        except BadText:
            if head[at].endswith((")", "]")):
                raise
    return [at], converter(unit, "s", "time")(1.0)


def unit_of(head: str, kind: Reading) -> tuple[str, str]:
    """Split a header into name and unit; raises BadText where it ends in no unit of the kind."""
    match = _UNIT.match(head)
    if match is None:
        raise BadText(f"{head!r} has no unit", f"write {head}_{kind.unit}")
    return match["name"], read_unit(match["unit"], kind.dimension)


def unit_behind_name(head: str) -> str | None:
    """Return what stands behind a header's name as its unit, whatever it is."""
    match = _UNIT.match(head)
    return None if match is None else match["unit"]


def has_unit(head: str) -> bool:
    """Whether a header ends in what may be a unit."""
    return _UNIT.match(head) is not None


def bare_name(head: str) -> str:
    """Return a header without its unit, in lower case."""
    match = _UNIT.match(head)
    return match["name"].casefold() if match is not None else head.casefold()


def fits(head: str, name: str, kind: Reading, named: bool) -> bool:
    """Whether a header has the unit, and, if `named`, begins with the name."""
    try:
        own, _ = unit_of(head, kind)
    except BadText:
        return False
    return not named or own.casefold() == name or own.casefold().startswith(f"{name}_")
