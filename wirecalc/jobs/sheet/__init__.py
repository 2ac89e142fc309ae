"""The job sheet: one TOML file with the readings of one repair, evaluated as a whole.

`shape` knows its sections and their keys, `plan` what each check is given, `kinds` and `complete`
what a kind of job must have, `facts` what decides that, `untested`, `waived`, `removed` and
`confirmed` what the sheet says of the rest, `contradictions` what of it cannot be so together,
`needs` what a calculation asks for, `gaps` what is missing, `template` how a new one is written.

A malformed value refuses the whole sheet, with everything that is wrong; a value that is missing
or "unknown" is a `cannot tell` and the rest goes on. The same sheet gives the same job: no clock
is read.
"""

from __future__ import annotations

import datetime
import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from ...base.errors import BadInput, BadText, PluginDefect, Problem
from ...base.text_files import MOST_TOML, read_content, toml_of
from ...engine.sought.as_finding import as_finding
from ...engine.trade_names import under_names
from ...instruments import declared
from ...plugging.host import Catalogue
from ...typed.trials import sought_in
from ..checks import OPTION, Confirmation, JobCheck, Machine
from ..job import Job
from . import bench, confirmed, contradictions, machine_facts, not_tested, removed
from . import does_not_apply as waiver
from .kinds import as_listed, known_kinds, remark
from .machine_facts import Subject
from .plan import Check, plan, plates_of, unused
from .required_checks import with_kind, with_required
from .shape import ASKED_UP_TO, MACHINE_KEYS, SEVERAL, problems_of, words_of


def read(path: Path) -> dict[str, Any]:
    """Read a job sheet; raises BadInput where the file or its TOML cannot be read."""
    return parse(content(path), str(path))


def content(path: Path) -> bytes:
    """Return what stands in the file of a sheet; raises BadInput where it cannot be read."""
    try:
        return read_content(path, MOST_TOML)
    except FileNotFoundError:
        raise BadInput([Problem(str(path), "there is no such file", "check the name")]) from None
    except BadText as error:
        raise BadInput([error.about(str(path))]) from None
    except OSError as error:
        wrong = f"cannot be read ({error.strerror or error})"
        raise BadInput([Problem(str(path), wrong)]) from None


def parse(content: bytes, name: str) -> dict[str, Any]:
    """Read the TOML of a sheet; raises BadInput, with the name of its file, where it is none."""
    try:
        text = content.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
        sheet = toml_of(text)
    except UnicodeDecodeError as error:
        problem = Problem(name, f"is not UTF-8 text (byte {error.start + 1})", "save it as UTF-8")
    except tomllib.TOMLDecodeError as error:
        single = _single_brackets(text, name)
        if single and str(error).startswith("Cannot"):  # one heading against another
            raise BadInput(single) from None
        hint = 'texts stand in quotes, as wire = "18 AWG"'
        problem = Problem(name, f"is not TOML: {error}", hint)
    except BadText as error:
        problem = error.about(name)
    else:
        several = any(isinstance(sheet.get(key), dict) for key in SEVERAL)
        if several and (single := _single_brackets(text, name)):
            raise BadInput(single)
        return _under_names(sheet)
    raise BadInput([problem])


def _under_names(sheet: dict[str, Any]) -> dict[str, Any]:
    """Return a sheet with what its plates and readings say in abbreviations under its names."""
    plates = [sheet, *(m for m in _tables(sheet.get("machine")))]
    for of in plates:
        if isinstance(of.get("nameplate"), dict):
            of["nameplate"] = under_names(of["nameplate"])
    if isinstance(sheet.get("readings"), dict):
        for name, values in sheet["readings"].items():
            sheet["readings"][name] = under_names(values) if isinstance(values, dict) else values
    return sheet


def _tables(entries: object) -> list[dict[str, Any]]:
    return [e for e in entries if isinstance(e, dict)] if isinstance(entries, list) else []


def _single_brackets(text: str, name: str) -> list[Problem]:
    """Return a complaint for each heading of one of several entries that has single brackets."""
    headings = (re.match(r"\s*\[\s*(\w+)\s*\]", line) for line in text.splitlines())
    return [
        Problem(
            f"{name}, line {number}", f"[{found[1]}] has single brackets", f"write [[{found[1]}]]"
        )
        for number, found in enumerate(headings, start=1)
        if found and found[1] in SEVERAL
    ]


def evaluate(sheet: Mapping[str, Any], catalogue: Catalogue, folder: Path = Path()) -> Job:
    """Evaluate a job sheet that was read; raises BadInput with everything that is wrong in it.

    `folder` is the one that the sheet stands in: the files that it names are looked for there.
    """
    problems = list(problems_of(sheet))
    if problems:
        raise BadInput(problems)
    catalogue = _with_instruments(sheet, catalogue, problems)
    known = known_kinds(catalogue)
    job = _subject(sheet["job"], "", "", {}, known)
    several = len(sheet.get("machine", [])) > 1
    problems += machine_facts.problems_of(sheet["job"], "job", of_several=several)
    subjects, machines = [], []
    for raw in sheet.get("machine", []):
        name = words_of(raw["name"])
        subjects.append(_subject(raw, name, job.kind, job.facts, known))
        machines.append(Machine(name, subjects[-1].kind, _about(raw, MACHINE_KEYS)))
        problems += machine_facts.problems_of(raw, f"machine {name}")
    names = [m.name for m in machines]
    planned = plan(sheet, catalogue, names, problems)
    said = not_tested.read(sheet.get("not_tested", []), names, catalogue, problems)
    checks = tuple(c for check in planned for c in _run(check, catalogue, folder, problems))
    if not several:  # what is of an only machine needs not say so
        subjects = [(subjects or [job])[0]._replace(machine="")]
    problems += bench.problems_of(sheet, subjects)
    problems += removed.problems_of(planned, subjects)
    problems += contradictions.problems_of(planned, subjects, plates_of(sheet))
    entries = sheet.get("does_not_apply", [])
    waived = waiver.read(entries, waiver.Sheet(subjects, planned, said, catalogue), problems)
    answers = [c for s in subjects for c in _confirmed(sheet, s, planned, problems)]
    if problems:
        raise BadInput(problems)
    asked = with_required(subjects, checks, said, catalogue.required, catalogue.calculations)
    asked = with_kind(subjects, checks, asked, waived)
    waived += [w for s in subjects for w in waiver.by_facts(s)]
    about, title = (
        _about(sheet["job"], ("title", "kind", ASKED_UP_TO)),
        words_of(sheet["job"]["title"]),
    )
    return Job(
        title,
        about,
        checks,
        asked,
        job.kind,
        tuple(machines),
        tuple(answers),
        tuple(waived),
        (
            *dict.fromkeys(r for s in subjects for r in _remarks(s, known)),
            *unused(sheet, planned),
        ),
    )


def _with_instruments(
    sheet: Mapping[str, Any], catalogue: Catalogue, problems: list[Problem]
) -> Catalogue:
    """Return the catalogue with the instruments of a sheet and its date beside the shop's."""
    names = [i.name for i in catalogue.instruments.instruments]
    own, wrong = declared.read(
        sheet.get("instrument", []), sheet.get("meters", {}), "job sheet", names
    )
    problems += wrong
    date = sheet["job"].get("date")
    day = datetime.date.fromisoformat(str(date)) if date is not None else None
    found = catalogue.instruments.and_then(own._replace(date=day))
    return replace(catalogue, instruments=found)


def _subject(
    raw: Mapping[str, Any], name: str, kind: str, said: Mapping[str, str], known: Sequence[str]
) -> Subject:
    """Return what is judged: kind and facts of its own, before those of the job."""
    own = as_listed(words_of(raw.get("kind", "")), known)
    return Subject(name, own or kind, {**said, **machine_facts.facts_of(raw)})


def _remarks(subject: Subject, known: Sequence[str]) -> list[str]:
    """Return what is to be known of a machine first, and how a kind that is not known is taken."""
    unknown = remark(subject.kind, known)
    return [*confirmed.stops(subject.kind, subject.facts), *([unknown] if unknown else [])]


def _about(raw: Mapping[str, Any], without: Sequence[str]) -> dict[str, str]:
    return {k: words_of(v) for k, v in raw.items() if k not in without}


def _confirmed(
    sheet: Mapping[str, Any], subject: Subject, planned: Sequence[Check], problems: list[Problem]
) -> Iterator[Confirmation]:
    """Yield what is confirmed of a machine."""
    machines = sheet.get("machine", [])
    named = [m for m in machines if words_of(m["name"]) == subject.machine] or machines[:1]
    own = named[0].get("confirmed") if named else None
    tested = [c.calculation.name for c in planned if c.place.machine == subject.machine]
    yield from confirmed.read(own or sheet.get("confirmed", {}), subject, tested, problems)


def _run(
    check: Check, catalogue: Catalogue, folder: Path, problems: list[Problem]
) -> Iterator[JobCheck]:
    calc, place = check.calculation, check.place
    files = check.files(folder)
    finding, defect = None, ""
    label = f"check {place.machine + ': ' if place.machine else ''}{check.name}"
    if sought_in(check.given) and place.stage != OPTION:
        wrong = "is sought, and a value that is asked for judges nothing"
        for name in sought_in(check.given):
            problems.append(Problem(f"{label}: {name}", wrong, f'give it, or stage = "{OPTION}"'))
        return
    try:
        given = {**check.given, **files}
        if sought_in(given):
            finding = as_finding(catalogue.find(calc.name), catalogue.seeker(calc.name).seek(given))
        else:
            finding = catalogue.run(calc.name, given, origin="sheet", missing_is_unknown=True)
        finding = finding.with_names({path: str(check.given[n]) for n, path in files.items()})
    except BadInput as error:
        problems += [
            Problem(f"{label}: {p.name}".rstrip(": "), p.wrong, p.would_do) for p in error.problems
        ]
        return
    except PluginDefect as error:
        defect = str(error)
    yield JobCheck(
        check.name,
        place.stage,
        calc.name,
        finding,
        defect,
        check.note,
        place.step,
        place.machine,
        check.tool,
        check.part,
        check.removed,
    )
