"""The shop's record: a folder with a folder in it for each job that was recorded.

    2026-11-25-refrigerator-does-not-cool-1f0c9a7e/
        sheet.toml    the job sheet, byte by byte
        job.json      what it came to, "wirecalc.job/1"
        report.html   the page to hand over

The name is the date, the title, and the first eight hex digits of the SHA-256 of the three files
one after the other. What has another name is no record; hidden names are left out.
"""

from __future__ import annotations

import contextlib
import datetime
import hashlib
import json
import os
import re
import unicodedata
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from ..base import files, left_over
from ..base.errors import BadInput, BadText, Problem

SHEET, JOB, REPORT = FILES = ("sheet.toml", "job.json", "report.html")
JOB_SCHEMA = "wirecalc.job/1"
_NAME = r"(\d{4}-\d\d-\d\d)-[a-z0-9]+(?:-[a-z0-9]+)*-([0-9a-f]{8})"
_LONGEST_TITLE = 40  # characters of a title in a name


class Record(NamedTuple):
    """What is recorded of one job."""

    date: datetime.date
    title: str
    sheet: bytes
    job: str
    report: str

    @property
    def contents(self) -> dict[str, bytes]:
        """Its files."""
        return {SHEET: self.sheet, JOB: self.job.encode(), REPORT: self.report.encode()}

    @property
    def name(self) -> str:
        """The name that it is recorded under."""
        digits = _digits(*self.contents.values())
        return f"{self.date.isoformat()}-{_plain(self.title)}-{digits}"


def store(record: Record, folder: Path) -> tuple[Path, bool]:
    """Record a job in a folder, which is made if it is not there: whole, or nothing is left.

    Returns where the record is, and whether it is new: the same one is never written twice. Any
    number of these may run at once. Raises BadInput where it cannot be written.
    """
    made = make_folder(folder)
    path = folder / record.name
    try:
        new = files.write_folder(path, record.contents)
    except BadInput:
        if made:
            with contextlib.suppress(OSError):
                folder.rmdir()
        raise
    left_over.remove_dead(folder, _NAME, FILES)
    return path, new


def date_of(said: object) -> datetime.date | None:
    """Return the date that a sheet says, as a TOML date or in ISO 8601; None where it says none."""
    if isinstance(said, datetime.datetime):
        return said.date()
    if isinstance(said, datetime.date):
        return said
    with contextlib.suppress(ValueError):
        return (
            datetime.datetime.fromisoformat(said.strip()).date() if isinstance(said, str) else None
        )
    return None


def entries(folder: Path) -> Iterator[str]:
    """Yield the names of all that is in a folder of records and not hidden, in no order.

    Raises BadInput for a folder that is not there or cannot be read.
    """
    try:
        with os.scandir(folder) as found:
            yield from (e.name for e in found if not e.name.startswith("."))
    except FileNotFoundError:
        raise BadInput(
            [Problem(str(folder), "there is no such folder", "check the name")]
        ) from None
    except OSError as error:
        wrong = f"is no folder that can be read ({error.strerror or error})"
        raise BadInput([Problem(str(folder), wrong, "name a folder of records")]) from None


def named_date(name: str) -> datetime.date | None:
    """Return the date in the name of a record; None for what is no such name."""
    named = re.fullmatch(_NAME, name)
    with contextlib.suppress(ValueError):
        return datetime.date.fromisoformat(named[1]) if named else None
    return None


def read(path: Path) -> dict[str, Any]:
    """Return the job of a record, as it stands in its JSON.

    Raises BadText, with what is wrong, for what is no record or is damaged.
    """
    named = re.fullmatch(_NAME, path.name)
    if named is None or named_date(path.name) is None:
        raise BadText("is not named as a record is")
    if not path.is_dir():
        raise BadText("is no folder")
    sheet, job, report = (_content(path / name) for name in FILES)
    if _digits(sheet, job, report) != named[2]:
        raise BadText("was changed after it was recorded: its name does not fit what it holds")
    try:
        found = json.loads(job)
    except (ValueError, RecursionError) as error:
        raise BadText(f"{JOB} is no JSON ({error})") from None
    if not isinstance(found, dict) or found.get("schema") != JOB_SCHEMA:
        raise BadText(f"{JOB} is not {JOB_SCHEMA}")
    return found


def make_folder(folder: Path) -> bool:
    """Make a folder; False if it is there already. Raises BadInput where it cannot be made."""
    if os.path.isdir(folder):  # noqa: PTH112 (Path.is_dir raises where a folder above is closed)
        return False
    would_do = "name another folder"
    try:
        folder.mkdir(exist_ok=True)
        files.sync_folder(folder.parent)
    except FileNotFoundError:
        wrong, would_do = "cannot be made: the folder above it is not there", "make that one first"
    except (FileExistsError, NotADirectoryError):
        wrong = "cannot be made: there is a file of that name, or above it"
    except OSError as error:
        wrong = f"cannot be made ({error.strerror or error})"
    else:
        return True
    raise BadInput([Problem(str(folder), wrong, would_do)])


def _content(path: Path) -> bytes:
    try:
        if path.exists() and not path.is_file():
            raise BadText(f"{path.name} is no file")
        return path.read_bytes()
    except FileNotFoundError:
        raise BadText(f"{path.name} is missing") from None
    except OSError as error:
        raise BadText(f"{path.name} cannot be read ({error.strerror or error})") from None


def _digits(*contents: bytes) -> str:
    return hashlib.sha256(b"".join(contents)).hexdigest()[:8]


def _plain(title: str) -> str:
    """Return a title as it stands in a name: lower case, digits and hyphens."""
    ascii_only = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode()
    words = re.sub(r"[^a-z0-9]+", "-", ascii_only.lower()).strip("-")
    return words[:_LONGEST_TITLE].strip("-") or "job"
