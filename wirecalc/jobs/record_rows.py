"""One recorded job as rows of the flat tables of `record_tables`."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ..base.errors import BadText
from . import record
from .record_names import unnamed
from .record_tables import CHECKS, CRITERIA, NOT_TESTED, READINGS, RECORDS

Cell = str | float | int | None
Row = tuple[Cell, ...]
UNKNOWN = "unknown"  # where a reading comes from that is said to be unknown
_OF_NO_JOB = (AttributeError, KeyError, TypeError, ValueError)  # a field is missing or wrong
_NAME = re.compile(r"(\d{4}-\d\d-\d\d)-.*-([0-9a-f]{8})")


def id_of(name: str) -> str:
    """Return what a record is known by, which names nobody; empty for what is no record's name.

    >>> id_of("2026-11-25-refrigerator-does-not-cool-be8bf280")
    '2026-11-25-be8bf280'
    """
    named = _NAME.fullmatch(name) if record.named_date(name) else None
    return f"{named[1]}-{named[2]}" if named else ""


def rows_of(name: str, job: Mapping[str, Any], *, with_names: bool) -> dict[str, list[Row]]:
    """Return the rows of each table of a job, as it stands in its JSON, recorded under a name.

    Without names what could be one is replaced in the columns that are not left out as a whole.
    Raises BadText for what is no job.
    """
    known_by = id_of(name)
    try:
        if not with_names:
            job = {**job, "checks": [unnamed(check) for check in job["checks"]]}
        return {
            RECORDS.name: [_record(known_by, name, job)],
            CHECKS.name: [_check(known_by, *c, job) for c in _numbered(job)],
            CRITERIA.name: [row for n, c in _numbered(job) for row in _criteria(known_by, n, c)],
            READINGS.name: [row for n, c in _numbered(job) for row in _readings(known_by, n, c)],
            NOT_TESTED.name: [_not_tested(known_by, missing) for missing in job["not_tested"]],
        }
    except (*_OF_NO_JOB, OverflowError, RecursionError) as error:
        raise BadText(f"a field of its job is missing or wrong ({error})") from None


def _numbered(job: Mapping[str, Any]) -> Iterator[tuple[int, Mapping[str, Any]]]:
    return enumerate(job["checks"], start=1)


def _record(known_by: str, name: str, job: Mapping[str, Any]) -> Row:
    about: Mapping[str, Any] = job.get("about") or {}
    machines: Sequence[Mapping[str, Any]] = job.get("machines") or ()
    words = "; ".join(_words(m.get("name")) for m in machines) or _words(about.get("machine"))
    kinds = dict.fromkeys(_words(m.get("kind")) for m in machines if m.get("kind"))
    kind = _words(job.get("kind") or about.get("kind")) or "; ".join(kinds)
    earlier, day = _earlier(_words(about.get("callback_of")))
    said = {"job": about, "machines": [m.get("about") or {} for m in machines]}
    return (
        known_by,
        known_by[:10],
        kind,
        _words(job["verdict"]),
        words,
        *(_words(about.get(key)) for key in ("connection", "energy", "compressor", "refrigerant")),
        earlier,
        day,
        _words(about.get("callback_cause")),
        _words(job.get("title")),
        _words(about.get("technician")),
        name,
        json.dumps(said, ensure_ascii=False, sort_keys=True),
    )


def _earlier(said: str) -> tuple[str, str]:
    """Return the record and the day of the job that a callback goes back to, where it says so."""
    if known_by := id_of(said):
        return known_by, known_by[:10]
    day = record.date_of(said)
    return "", day.isoformat() if day else ""


def _check(known_by: str, number: int, check: Mapping[str, Any], job: Mapping[str, Any]) -> Row:
    finding: Mapping[str, Any] = check["finding"] or {}
    own = [m for m in job.get("machines") or () if m.get("name") == check.get("machine")]
    kind = own[0].get("kind") if own else job.get("kind")
    of_finding = (_words(finding.get(key)) for key in ("calculation", "plugin", "version"))
    of_check = (_words(check.get(k)) for k in ("stage", "step", "machine"))
    return (
        known_by,
        number,
        *of_finding,
        *of_check,
        _words(kind),
        *(_words(check.get(key)) for key in ("tool", "part")),
        _words(finding.get("verdict")),
        _words(finding.get("decided_by")),
        *(_words(check.get(key)) for key in ("name", "removed", "note")),
    )


def _criteria(known_by: str, number: int, check: Mapping[str, Any]) -> Iterator[Row]:
    finding: Mapping[str, Any] = check["finding"] or {}
    sources: Mapping[str, Any] = finding.get("sources") or {}
    for c in finding.get("criteria") or ():
        source: Mapping[str, Any] = sources.get(c.get("source")) or {}
        cited = (source.get(part) for part in ("title", "edition", "where"))
        yield (
            known_by,
            number,
            *(_words(c.get(key)) for key in ("name", "provider", "origin", "sense")),
            *(_number(c.get(key)) for key in ("actual", "limit", "caution_limit")),
            _words(c.get("unit")),
            *(_number(c.get(key)) for key in ("low", "high", "margin")),
            _words(c["verdict"]),
            _words(c.get("reason")),
            ", ".join(part for part in cited if part),
            _words(source.get("confidence")),
        )


def _readings(known_by: str, number: int, check: Mapping[str, Any]) -> Iterator[Row]:
    for given in (check["finding"] or {}).get("inputs") or ():
        value = given["value"]
        if value is None and given["from"] != UNKNOWN:  # left out
            continue
        yield (
            known_by,
            number,
            _words(given["name"]),
            _number(value),
            _words(value) if _number(value) is None else "",
            _words(given.get("unit")),
            _number(given.get("low")),
            _number(given.get("high")),
            _words(given["from"]),
            _words(given.get("given")),
        )


def _not_tested(known_by: str, missing: Mapping[str, Any]) -> Row:
    return (
        known_by,
        _words(missing.get("calculation")),
        int(bool(missing["required"])),
        *(_words(missing.get(key)) for key in ("step", "machine", "rule", "name", "reason")),
    )


def _number(value: object) -> float | None:
    """Return a number; None for anything else, for true and false too."""
    plain = isinstance(value, int | float) and not isinstance(value, bool)
    return float(value) if plain else None  # type: ignore[arg-type]


def _words(value: object) -> str:
    """Return a value in words, on one line; empty where there is none."""
    if value is None:
        return ""
    if isinstance(value, list):
        return "; ".join(_words(part) for part in value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    text = " ".join(str(value).split())
    return text if text.isascii() else text.encode(errors="replace").decode()
