"""The shape of a job sheet: its sections, their keys, and what is wrong before any check is read.

[job]                       title; kind, date, technician, callback_of, callback_cause,
                            connection, energy, compressor, and whatever else in words;
                            asked_up_to, where questions led through it
[nameplate]                 printed values; feed the inputs declared as nameplate values
[confirmed]                 a line for each that a person answers for, when the work is done
[[machine]]                 name, kind, words, [machine.nameplate] and [machine.confirmed]: one
                            of several
[readings.NAME]             readings that a check takes with  uses = "NAME"
[[check]]                   calculation, name, stage, step, machine, uses, note, tool, part,
                            removed, meter, and inputs of its own
[[instrument]] and [meters] instruments, and which is meant where a reading names none
[[not_tested]]              name, required, reason, step, machine, calculation
[[does_not_apply]]          calculation, reason, machine
"""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ...base.errors import Problem, did_you_mean, nearest
from ..checks import AS_LEFT, STAGES, STEPS

SEVERAL = (
    "check",
    "not_tested",
    "does_not_apply",
    "machine",
    "instrument",
)  # of which there is an entry each
SECTIONS = ("job", "nameplate", "confirmed", "readings", "meters", *SEVERAL)
OF_MACHINE = ("nameplate", "confirmed")  # tables of one machine, or of each
ASKED_UP_TO = "asked_up_to"  # how far a person was led through the sheet: nothing of the job
JOB_KEYS = (
    "title",
    "kind",
    "date",
    "technician",
    "callback_of",
    "callback_cause",
    "work",
    "machine",
    "hand_over",
    "circuit",
    "connection",
    "energy",
    "compressor",
    "refrigerant",
    ASKED_UP_TO,
)
MACHINE_KEYS = ("name", "kind", *OF_MACHINE)
_ALIKE = 0.85  # from which a free key of [job] is taken for a slip of a known one


class Place(NamedTuple):
    """Where a check stands: stage, step, and machine (empty for the job as a whole)."""

    stage: str
    step: str
    machine: str


def problems_of(sheet: Mapping[str, Any]) -> Iterator[Problem]:
    """Yield what is wrong with the sections, so that the rest may trust their shape."""
    for key in sheet:
        if key not in SECTIONS:
            yield Problem(key, "a job sheet has no such section", did_you_mean(key, SECTIONS))
    yield from _job(sheet.get("job"))
    for key in (*OF_MACHINE, "readings"):
        if not isinstance(sheet.get(key, {}), dict):
            yield Problem(key, "is written wrongly", f"write [{key}]")
        elif key == "readings":
            yield from _readings(sheet.get(key, {}))
    for key in SEVERAL:
        entries = sheet.get(key, [])
        if not isinstance(entries, list) or not all(isinstance(e, dict) for e in entries):
            yield Problem(key, "is written wrongly", f"write [[{key}]] above each entry")
        elif key == "machine":
            yield from _machines(entries, [k for k in OF_MACHINE if sheet.get(k)])
    if not sheet.get("check") and not sheet.get("not_tested"):
        yield Problem("check", "the sheet lists no check", "write [[check]] and a calculation")


def _job(job: object) -> Iterator[Problem]:
    if not isinstance(job, dict) or not words_of(job.get("title", "")):
        yield Problem("job", "the sheet has no title", 'write [job] and title = "..." below it')
        return
    for key in job:
        close = "" if key in JOB_KEYS else nearest(key, JOB_KEYS, _ALIKE)
        if close:
            yield Problem(f"job: {key}", "is nearly a known key", f"did you mean {close}?")
    yield from tables_among(job, list(job), "job")
    date = job.get("date")
    if date is not None and not _is_date(date):
        yield Problem("job: date", f"{date!r} is no date", "write it as 2026-01-31")


def tables_among(entry: Mapping[str, Any], keys: Iterable[str], label: str) -> Iterator[Problem]:
    """Report the keys that have a table where words belong."""
    for key in keys:
        if isinstance(entry.get(key), dict):
            yield Problem(f"{label}: {key}", "is written wrongly", f'write {key} = "..."')


def _is_date(value: object) -> bool:
    if isinstance(value, datetime.date):
        return True
    try:
        return bool(datetime.date.fromisoformat(value)) if isinstance(value, str) else False
    except ValueError:
        return False


def _readings(readings: Mapping[str, Any]) -> Iterator[Problem]:
    for name, values in readings.items():
        if not isinstance(values, dict):
            yield Problem(
                f"readings.{name}", "is not a set of readings", f"write [readings.{name}]"
            )


def _machines(entries: Sequence[Mapping[str, Any]], shared: Sequence[str]) -> Iterator[Problem]:
    seen: set[str] = set()
    for number, entry in enumerate(entries, start=1):
        name = words_of(entry.get("name", ""))
        if not isinstance(entry.get("name"), str) or not name:
            yield Problem(f"machine {number}", "has no name", 'write name = "..."')
            continue
        if name in seen:
            yield Problem(f"machine {name}", "stands there twice", "give each a name of its own")
        seen.add(name)
        for key in OF_MACHINE:
            if not isinstance(entry.get(key, {}), dict):
                yield Problem(f"machine {name}", f"has no table {key}", f"write [machine.{key}]")
            elif key in shared and (len(entries) > 1 or entry.get(key)):
                would_do = f"write [machine.{key}] below the [[machine]] that it is of, such as "
                yield Problem(key, "whose it is cannot be told", would_do + name)
                return
        for key, value in entry.items():
            if isinstance(value, dict) and key not in OF_MACHINE:
                would_do = did_you_mean(key, MACHINE_KEYS)
                yield Problem(f"machine {name}: {key}", "is no table of a machine", would_do)


def place_of(
    raw: Mapping[str, Any], label: str, machines: Sequence[str], problems: list[Problem]
) -> Place:
    """Read stage, step and machine of an entry; what is wrong goes to `problems`."""
    place = Place(
        *(
            _word(raw.get(key, default), key, label, known, problems)
            for key, default, known in (
                ("stage", AS_LEFT, STAGES),
                ("step", "", STEPS),
                ("machine", "", machines),
            )
        )
    )
    return place._replace(machine="") if len(machines) == 1 else place


def _word(
    given: object, key: str, label: str, known: Sequence[str], problems: list[Problem]
) -> str:
    if given in known or (given == "" and key != "stage"):
        return str(given)
    would_do = did_you_mean(str(given), known)
    if not known:
        would_do = f'write [[machine]] and name = "{given}" above the checks'
    elif not would_do.startswith("did"):
        would_do = f"write {', '.join(known)}"
    problems.append(Problem(label, f"{key} {given!r} is not known", would_do))
    return ""


def as_toml(value: object) -> str:
    """Write a text or a list of texts as TOML: a text in JSON is one in TOML."""
    return json.dumps(value, ensure_ascii=False)


def words_of(value: object) -> str:
    """Return what a free key says, as one line; several texts stand in one list."""
    if isinstance(value, list):
        return ", ".join(words_of(v) for v in value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    return re.sub(r"\s*\n\s*", " ", str(value)).strip()
