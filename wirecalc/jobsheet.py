"""The job sheet: one TOML file with the readings of one repair, evaluated as a whole.

    [job]                       title, and who, where, when (free text)
    [nameplate]                 printed values; feed the inputs declared as nameplate values
    [readings.NAME]             readings that a check takes with  uses = "NAME"
    [[check]]                   calculation, name, stage, uses, note, and inputs of its own
    [[not_tested]]              name, required, reason

A malformed value refuses the whole sheet, with everything that is wrong; a value that is missing
or "unknown" is a `cannot tell` and the rest goes on.
"""

from __future__ import annotations

import contextlib
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from .declaration import Calculation
from .errors import BadInput, BadText, PluginDefect, Problem, did_you_mean
from .host import Catalogue
from .job import AS_LEFT, STAGES, Job, JobCheck, NotTested
from .kinds import Kind, Nameplate, OneOf

_SECTIONS = ("job", "nameplate", "readings", "check", "not_tested")
_CHECK_KEYS = ("calculation", "name", "stage", "uses", "note")
_NOT_TESTED_KEYS = ("name", "required", "reason")


class _Check(NamedTuple):
    name: str
    stage: str
    note: str
    uses: str
    calculation: Calculation[Any]
    given: Mapping[str, object]


def read(path: Path) -> dict[str, Any]:
    """Read a job sheet; raises BadInput where the file or its TOML cannot be read."""
    try:
        return tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except FileNotFoundError:
        raise BadInput([Problem(str(path), "there is no such file", "check the name")]) from None
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", None) or error
        raise BadInput([Problem(str(path), f"cannot be read ({why})")]) from None
    except tomllib.TOMLDecodeError as error:
        hint = 'texts stand in quotes, as wire = "18 AWG"'
        raise BadInput([Problem(str(path), f"is not TOML: {error}", hint)]) from None


def evaluate(sheet: Mapping[str, Any], catalogue: Catalogue) -> Job:
    """Evaluate a job sheet that was read; raises BadInput with everything that is wrong in it."""
    problems = list(_check_shape(sheet))
    if problems:
        raise BadInput(problems)
    planned = [
        p
        for i, raw in enumerate(sheet.get("check", []), start=1)
        for p in _plan(i, raw, sheet, catalogue, problems)
    ]
    problems += _unused(sheet, planned, catalogue)
    not_tested = [n for raw in sheet.get("not_tested", []) for n in _not_tested(raw, problems)]
    checks = [c for check in planned for c in _run(check, catalogue, problems)]
    if problems:
        raise BadInput(problems)
    about = {k: str(v) for k, v in sheet["job"].items() if k != "title"}
    return Job(str(sheet["job"]["title"]), about, tuple(checks), tuple(not_tested))


def _check_shape(sheet: Mapping[str, Any]) -> Iterator[Problem]:
    for key in sheet:
        if key not in _SECTIONS:
            yield Problem(key, "a job sheet has no such section", did_you_mean(key, _SECTIONS))
    job = sheet.get("job")
    if not isinstance(job, dict) or not job.get("title"):
        yield Problem("job", "the sheet has no title", 'write [job] and title = "..." below it')
    for key in ("nameplate", "readings"):
        if not isinstance(sheet.get(key, {}), dict):
            yield Problem(key, "is written wrongly", f"write [{key}]")
        elif key == "readings":
            yield from _check_readings(sheet.get(key, {}))
    for key in ("check", "not_tested"):
        entries = sheet.get(key, [])
        if not isinstance(entries, list) or not all(isinstance(e, dict) for e in entries):
            yield Problem(key, "is written wrongly", f"write [[{key}]] above each entry")
    if not sheet.get("check") and not sheet.get("not_tested"):
        yield Problem("check", "the sheet lists no check", "write [[check]] and a calculation")


def _check_readings(readings: Mapping[str, Any]) -> Iterator[Problem]:
    for name, values in readings.items():
        if not isinstance(values, dict):
            yield Problem(
                f"readings.{name}", "is not a set of readings", f"write [readings.{name}]"
            )


def _plan(
    number: int,
    raw: Mapping[str, Any],
    sheet: Mapping[str, Any],
    catalogue: Catalogue,
    problems: list[Problem],
) -> Iterator[_Check]:
    """Gather what one check is given: its own inputs, the readings it uses, the nameplate."""
    label = f"check {number}"
    named = raw.get("calculation") if isinstance(raw, dict) else None
    if not isinstance(named, str):
        problems.append(Problem(label, "names no calculation", 'write calculation = "pull"'))
        return
    label = f"check {raw.get('name', named)}"
    if named not in catalogue.calculations:
        known = sorted(catalogue.calculations)
        wrong = f"there is no calculation {named!r}"
        problems.append(Problem(label, wrong, did_you_mean(named, known)))
        return
    stage = raw.get("stage", AS_LEFT)
    if stage not in STAGES:
        problems.append(
            Problem(label, f"stage {stage!r} is not known", f"write {', '.join(STAGES)}")
        )
        return
    calc = catalogue.calculations[named].calculation
    shared = _nameplate(calc, sheet.get("nameplate", {}))
    if "uses" in raw:
        shared |= _used(calc, label, raw["uses"], sheet.get("readings", {}), problems)
    given = _that_go_with(calc, shared, raw)
    inputs = {i.name for i in calc.inputs}
    for key, value in raw.items():
        if key in inputs:
            given[key] = value
        elif key not in _CHECK_KEYS:
            known_keys = [*sorted(inputs), *_CHECK_KEYS]
            problems.append(
                Problem(
                    f"{label}: {key}", f"{named} has no such input", did_you_mean(key, known_keys)
                )
            )
    name, note, uses = (
        str(raw.get(k, d)) for k, d in (("name", named), ("note", ""), ("uses", ""))
    )
    yield _Check(name, stage, note, uses, calc, given)


def _is_nameplate(calc: Calculation[Any], name: str) -> bool:
    kind = next((i.kind for i in calc.inputs if i.name == name), None)
    return isinstance(kind, Nameplate) or (isinstance(kind, OneOf) and kind.on_plate)


def _nameplate(calc: Calculation[Any], plate: Mapping[str, object]) -> dict[str, object]:
    return {k: v for k, v in plate.items() if _is_nameplate(calc, k)}


def _that_go_with(
    calc: Calculation[Any], shared: Mapping[str, object], own: Mapping[str, object]
) -> dict[str, object]:
    """Leave out what all checks share and this one has no use for: a class without its wire."""
    kept = dict(shared)
    while True:
        there = {*kept, *own}
        idle = [i.name for i in calc.inputs if i.kind.goes_with and i.kind.goes_with not in there]
        if not any(name in kept for name in idle):
            return kept
        kept = {name: value for name, value in kept.items() if name not in idle}


def _used(
    calc: Calculation[Any],
    label: str,
    uses: object,
    readings: Mapping[str, Mapping[str, object]],
    problems: list[Problem],
) -> dict[str, object]:
    if not isinstance(uses, str) or uses not in readings:
        wrong = f"uses {uses!r}, and there are no such readings"
        problems.append(Problem(label, wrong, did_you_mean(str(uses), sorted(readings))))
        return {}
    inputs = {i.name for i in calc.inputs}
    return {k: v for k, v in readings[uses].items() if k in inputs}


def _unused(
    sheet: Mapping[str, Any], planned: list[_Check], catalogue: Catalogue
) -> Iterator[Problem]:
    """Report what nothing takes, and checks that cannot be told apart: slips of the pen."""
    taken = {name for check in planned for name in check.given}
    spare = {k: v for k, v in sheet.get("nameplate", {}).items() if k not in taken}
    kinds = _plate_kinds(catalogue) if spare else {}
    for key, value in spare.items():
        if key not in kinds:
            yield Problem(
                f"nameplate: {key}",
                "no calculation takes this from a plate",
                did_you_mean(key, sorted(kinds)),
            )
        else:
            yield from _unreadable(f"nameplate: {key}", kinds[key], value)
    for name, values in sheet.get("readings", {}).items():
        users = [c for c in planned if c.uses == name]
        known = sorted({i.name for c in users for i in c.calculation.inputs})
        if not users:
            yield Problem(
                f"readings.{name}", "no check uses these readings", f'write uses = "{name}"'
            )
        for key in values if users else ():
            if key not in known:
                yield Problem(
                    f"readings.{name}: {key}",
                    "no check that uses it has such an input",
                    did_you_mean(key, known),
                )
    seen: set[tuple[str, str, str]] = set()
    for check in planned:
        same = (check.name, check.calculation.name, check.stage)
        if same in seen:
            yield Problem(
                f"check {check.name}",
                f"stands there twice {check.stage}",
                "give each a name of its own",
            )
        seen.add(same)


def _plate_kinds(catalogue: Catalogue) -> dict[str, Kind]:
    """Return all that any calculation takes from a plate; one that does not load takes nothing."""
    kinds: dict[str, Kind] = {}
    for provided in catalogue.calculations.values():
        with contextlib.suppress(PluginDefect):
            calc = provided.calculation
            kinds |= {i.name: i.kind for i in calc.inputs if _is_nameplate(calc, i.name)}
    return kinds


def _unreadable(label: str, kind: Kind, value: object) -> Iterator[Problem]:
    try:
        kind.read(value)
    except BadText as error:
        yield error.about(label)


def _not_tested(raw: Mapping[str, Any], problems: list[Problem]) -> Iterator[NotTested]:
    wrong = [k for k in raw if k not in _NOT_TESTED_KEYS]
    required = raw.get("required", False)
    if wrong or not raw.get("name") or not raw.get("reason") or not isinstance(required, bool):
        problems.append(
            Problem(
                "not_tested",
                f"an entry is incomplete or has unknown keys ({', '.join(wrong)})",
                "write name, reason, and required = true or false",
            )
        )
        return
    yield NotTested(str(raw["name"]), required, str(raw["reason"]))


def _run(check: _Check, catalogue: Catalogue, problems: list[Problem]) -> Iterator[JobCheck]:
    calc = check.calculation
    try:
        finding = catalogue.run(calc.name, check.given, origin="sheet", missing_is_unknown=True)
    except BadInput as error:
        problems += [
            Problem(f"check {check.name}: {p.name}".rstrip(": "), p.wrong, p.would_do)
            for p in error.problems
        ]
    except PluginDefect as error:
        yield JobCheck(check.name, check.stage, calc.name, None, str(error), check.note)
    else:
        yield JobCheck(check.name, check.stage, calc.name, finding, note=check.note)
