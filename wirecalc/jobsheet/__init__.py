"""The job sheet: one TOML file with the readings of one repair, evaluated as a whole.

`shape` knows its sections and their keys, `plan` what each check is given, `complete` what a kind
of job must have, `needs` what a calculation asks for, `gaps` what is missing, `template` how a new
one is written.

A malformed value refuses the whole sheet, with everything that is wrong; a value that is missing
or "unknown" is a `cannot tell` and the rest goes on. The same sheet gives the same job: no clock
is read.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from ..checks import JobCheck, Machine, NotTested
from ..errors import BadInput, PluginDefect, Problem, did_you_mean
from ..host import Catalogue
from ..job import Job
from ..reserved import NOT_TESTED_KEYS
from .complete import with_required, with_usual
from .plan import Check, plan
from .shape import MACHINE_KEYS, SEVERAL, place_of, problems_of, words_of


def read(path: Path) -> dict[str, Any]:
    """Read a job sheet; raises BadInput where the file or its TOML cannot be read."""
    return parse(content(path), str(path))


def content(path: Path) -> bytes:
    """Return what stands in the file of a sheet; raises BadInput where it cannot be read."""
    try:
        return path.read_bytes()
    except FileNotFoundError:
        raise BadInput([Problem(str(path), "there is no such file", "check the name")]) from None
    except OSError as error:
        wrong = f"cannot be read ({error.strerror or error})"
        raise BadInput([Problem(str(path), wrong)]) from None


def parse(content: bytes, name: str) -> dict[str, Any]:
    """Read the TOML of a sheet; raises BadInput, with the name of its file, where it is none."""
    try:
        text = content.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
        sheet = tomllib.loads(text)
    except UnicodeDecodeError as error:
        problem = Problem(name, f"is not UTF-8 text (byte {error.start + 1})", "save it as UTF-8")
    except tomllib.TOMLDecodeError as error:
        single = _single_brackets(text, name)
        if single and str(error).startswith("Cannot"):  # one heading against another
            raise BadInput(single) from None
        hint = 'texts stand in quotes, as wire = "18 AWG"'
        problem = Problem(name, f"is not TOML: {error}", hint)
    except RecursionError:
        problem = Problem(name, "is nested too deeply", "a sheet needs two levels at most")
    except ValueError:  # Python reads no longer one
        problem = Problem(name, "a number in it has too many digits", "write it as a text")
    else:
        several = any(isinstance(sheet.get(key), dict) for key in SEVERAL)
        if several and (single := _single_brackets(text, name)):
            raise BadInput(single)
        return sheet
    raise BadInput([problem])


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
    kind = _kind(sheet["job"], catalogue, problems)
    machines = [
        _machine(raw, _kind(raw, catalogue, problems) or kind) for raw in sheet.get("machine", [])
    ]
    names = [m.name for m in machines]
    planned = plan(sheet, catalogue, names, problems)
    said = [
        entry
        for number, raw in enumerate(sheet.get("not_tested", []), start=1)
        for entry in _not_tested(number, raw, names, catalogue, problems)
    ]
    checks = tuple(c for check in planned for c in _run(check, catalogue, folder, problems))
    problems += _twice(said)
    if problems:
        raise BadInput(problems)
    several = len(machines) > 1
    kinds = [(m.name if several else "", m.kind) for m in machines] or [("", kind)]
    asked = with_required(kinds, checks, said, catalogue.required, catalogue.calculations)
    not_tested = with_usual(kinds, checks, asked)
    about = {k: words_of(v) for k, v in sheet["job"].items() if k not in ("title", "kind")}
    title = words_of(sheet["job"]["title"])
    return Job(title, about, checks, not_tested, kind, tuple(machines))


def _machine(raw: Mapping[str, Any], kind: str) -> Machine:
    about = {k: words_of(v) for k, v in raw.items() if k not in MACHINE_KEYS}
    return Machine(words_of(raw["name"]), kind, about)


def _kind(raw: Mapping[str, Any], catalogue: Catalogue, problems: list[Problem]) -> str:
    """Read a kind of job as it is listed, in either case.

    One that is not known is refused: what is asked of it would be forgotten silently.
    """
    said = words_of(raw.get("kind", ""))
    if not said:
        return ""
    from .kinds import as_listed, known_kinds, unknown

    known = known_kinds(catalogue)
    kind = as_listed(said, known)
    wrong = unknown("kind", said, known)
    if kind not in known and wrong not in problems:
        problems.append(wrong)
    return kind


def _not_tested(
    number: int,
    raw: Mapping[str, Any],
    machines: Sequence[str],
    catalogue: Catalogue,
    problems: list[Problem],
) -> Iterator[NotTested]:
    name, reason = (words_of(raw.get(key, "")) for key in ("name", "reason"))
    label = f"not_tested {name or number}"
    before = len(problems)
    problems += [
        Problem(f"{label}: {k}", "an entry has no such key", did_you_mean(k, NOT_TESTED_KEYS))
        for k in raw
        if k not in NOT_TESTED_KEYS
    ]
    lacks = [key for key, said in (("name", name), ("reason", reason)) if not said]
    if lacks:
        would_do = "write name, reason, and required = true or false"
        problems.append(Problem(label, f"has no {' and no '.join(lacks)}", would_do))
    required = raw.get("required", False)
    if not isinstance(required, bool):
        wrong = f"{required!r} is neither true nor false"
        problems.append(Problem(f"{label}: required", wrong, "write required = true"))
    place = place_of(raw, label, machines, problems)
    named = words_of(raw.get("calculation", ""))
    if named and named not in catalogue.calculations:
        wrong = f"there is no calculation {named!r}"
        problems.append(Problem(label, wrong, catalogue.would_do(named)))
    if len(problems) == before:
        yield NotTested(name, required, reason, place.step, place.machine, named)


def _twice(said: Sequence[NotTested]) -> Iterator[Problem]:
    """Report entries of what was not tested that cannot be told apart."""
    seen: set[tuple[str, str]] = set()
    for entry in said:
        same = entry.machine, " ".join(entry.name.casefold().split())
        if same in seen:
            wrong, would_do = "stands there twice", "take one out, or give each a name of its own"
            yield Problem(f"not_tested {entry.title}", wrong, would_do)
        seen.add(same)


def _run(
    check: Check, catalogue: Catalogue, folder: Path, problems: list[Problem]
) -> Iterator[JobCheck]:
    calc, place = check.calculation, check.place
    files = check.files(folder)
    finding, defect = None, ""
    try:
        finding = catalogue.run(
            calc.name, {**check.given, **files}, origin="sheet", missing_is_unknown=True
        ).with_names({path: str(check.given[name]) for name, path in files.items()})
    except BadInput as error:
        label = f"check {place.machine + ': ' if place.machine else ''}{check.name}"
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
