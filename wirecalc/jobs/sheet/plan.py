"""What each check of a sheet is given: its own inputs, the readings it uses, the nameplate."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from ...base.errors import BadText, PluginDefect, Problem, did_you_mean
from ...engine.declaration import Calculation
from ...engine.inputs import Input
from ...engine.one_input import METER, says_unknown
from ...engine.reserved import CHECK_KEYS
from ...engine.trade_names import candidates, under_names
from ...plugging.host import Catalogue
from ...typed.kinds import Kind
from ...typed.quantity_kinds import Nameplate
from ...typed.word_kinds import OneOf
from ..checks import AS_FOUND, AS_LEFT, OPTION
from .shape import Place, place_of, tables_among, words_of

_TEXTS = ("name", "note", "tool", "part", "removed")  # keys of a check that hold words


class Check(NamedTuple):
    """One check as it is planned: what it is called, where it stands, and what it is given."""

    name: str
    place: Place
    note: str
    uses: str
    tool: str
    part: str
    removed: str
    calculation: Calculation[Any]
    given: Mapping[str, object]

    @property
    def same_as(self) -> tuple[str, str, str]:
        """What makes two checks the same one, at whatever stage: as of a JobCheck."""
        return self.name, self.calculation.name, self.place.machine

    def files(self, folder: Path) -> dict[str, str]:
        """Return the files that it is given, by input, as they are found from a folder."""
        named = {i.name for i in self.calculation.inputs if i.kind.of_file}
        return {
            name: str(folder / file)
            for name, file in self.given.items()
            if name in named and isinstance(file, str) and not says_unknown(file)
        }


def plan(
    sheet: Mapping[str, Any], catalogue: Catalogue, machines: list[str], problems: list[Problem]
) -> list[Check]:
    """Plan the checks of a sheet whose shape is right; what is wrong goes to `problems`."""
    plates = plates_of(sheet)
    planned = [
        check
        for number, raw in enumerate(sheet.get("check", []), start=1)
        for check in _plan(number, raw, sheet, plates, catalogue, machines, problems)
    ]
    problems += _unused_plates(plates, planned, machines, catalogue)
    problems += _unused_readings(sheet, planned)
    problems += _twice(planned)
    return planned


def plates_of(sheet: Mapping[str, Any]) -> dict[str, Mapping[str, object]]:
    """Return the nameplate of each machine by its name; a shared or only one has no name."""
    entries = sheet.get("machine", [])
    if len(entries) > 1:
        return {words_of(m["name"]): m.get("nameplate", {}) for m in entries}
    own = entries[0].get("nameplate", {}) if entries else {}
    return {"": own or sheet.get("nameplate", {})}


def _plan(
    number: int,
    raw: Mapping[str, Any],
    sheet: Mapping[str, Any],
    plates: Mapping[str, Mapping[str, object]],
    catalogue: Catalogue,
    machines: list[str],
    problems: list[Problem],
) -> Iterator[Check]:
    named = raw.get("calculation")
    if not isinstance(named, str):
        problems.append(
            Problem(f"check {number}", "names no calculation", 'write calculation = "pull"')
        )
        return
    wrong = list(tables_among(raw, _TEXTS, f"check {number}"))
    if wrong:
        problems += wrong
        return
    name = words_of(raw.get("name", "")) or named
    label = f"check {name}"
    if named not in catalogue.calculations:
        none = f"there is no calculation {named!r}"
        problems.append(Problem(label, none, catalogue.would_do(named)))
        return
    before = len(problems)
    place = place_of(raw, label, machines, problems)
    text = {k: words_of(raw.get(k, "")) for k in ("note", "uses", "tool", "part", "removed")}
    if text["removed"] and place.stage in (OPTION, AS_LEFT):
        gone = f"this check is {place.stage}, and only what was found can have been removed"
        problems.append(Problem(f"{label}: removed", gone, f'write stage = "{AS_FOUND}"'))
    if len(problems) > before:
        return
    calc = catalogue.calculations[named].calculation
    shared = {k: v for k, v in plates.get(place.machine, {}).items() if _is_nameplate(calc, k)}
    if "uses" in raw:
        shared |= _used(calc, label, raw["uses"], sheet.get("readings", {}), problems)
    own = _own(calc, label, raw, problems)
    given = _that_go_with(calc, shared, own) | own
    yield Check(name, place, **text, calculation=calc, given=given)


def _own(
    calc: Calculation[Any], label: str, raw: Mapping[str, Any], problems: list[Problem]
) -> dict[str, object]:
    """Return the inputs that stand in the check itself."""
    inputs = {i.name for i in calc.inputs}
    raw = under_names(raw, inputs)
    for key in raw:
        if now := calc.name_now(key):
            problems.append(Problem(f"{label}: {key}", now))
        elif key not in inputs and key not in CHECK_KEYS:
            near = did_you_mean(key, [*sorted(inputs), *CHECK_KEYS])
            meant = " or ".join(candidates(key, inputs))
            would_do = f"did you mean {meant}?" if meant else near
            problems.append(Problem(f"{label}: {key}", f"{calc.name} has no such input", would_do))
    return {key: value for key, value in raw.items() if key in (*inputs, METER)}


def _is_nameplate(calc: Calculation[Any], name: str) -> bool:
    return any(i.name == name and on_plate(i.kind) for i in calc.inputs)


def on_plate(kind: Kind) -> bool:
    """Whether an input of this kind is printed on a nameplate."""
    return isinstance(kind, Nameplate) or (isinstance(kind, OneOf) and kind.on_plate)


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
        would_do = did_you_mean(str(uses), sorted(readings)) if readings else ""
        problems.append(Problem(label, wrong, would_do or f"write [readings.{words_of(uses)}]"))
        return {}
    inputs = {i.name for i in calc.inputs}
    return {k: v for k, v in readings[uses].items() if k in inputs}


def _unused_plates(
    plates: Mapping[str, Mapping[str, object]],
    planned: list[Check],
    machines: list[str],
    catalogue: Catalogue,
) -> Iterator[Problem]:
    """Report what nothing takes from a plate: a slip of the pen, or a value that is unreadable."""
    for machine, plate in plates.items():
        users = [c for c in planned if c.place.machine == machine]
        taken = {name for check in users for name in check.given}
        spare = {k: v for k, v in plate.items() if k not in taken}
        kinds = _plate_kinds(catalogue) if spare else {}
        label = f"machine {machine}: nameplate" if len(machines) > 1 else "nameplate"
        for key, value in spare.items():
            if key in kinds:
                yield from _unreadable(f"{label}: {key}", kinds[key], value)
            elif now := _name_now(users, key):
                yield Problem(f"{label}: {key}", now)
            else:
                wrong = "no calculation takes this from a plate"
                yield Problem(f"{label}: {key}", wrong, did_you_mean(key, sorted(kinds)))


def _name_now(users: list[Check], name: str) -> str:
    """Say what an input of some checks is called now that had another name once, or nothing."""
    return next(filter(None, (c.calculation.name_now(name) for c in users)), "")


def _plate_kinds(catalogue: Catalogue) -> dict[str, Input]:
    """Return all that any calculation takes from a plate; one that does not load takes nothing."""
    kinds: dict[str, Input] = {}
    for provided in catalogue.calculations.values():
        with contextlib.suppress(PluginDefect):
            kinds |= {i.name: i for i in provided.calculation.inputs if on_plate(i.kind)}
    return kinds


def _unreadable(label: str, declared: Input, value: object) -> Iterator[Problem]:
    values = value if declared.many and isinstance(value, list) else [value]
    try:
        for one in values if not says_unknown(value) else ():
            declared.kind.read(one)
    except BadText as error:
        yield error.about(label)


def _unused_readings(sheet: Mapping[str, Any], planned: list[Check]) -> Iterator[Problem]:
    for name, values in sheet.get("readings", {}).items():
        users = [c for c in planned if c.uses == name]
        known = sorted({i.name for c in users for i in c.calculation.inputs})
        for key in values if users else ():
            if key in known:
                continue
            wrong = "no check that uses it has such an input"
            now = _name_now(users, key)
            would_do = "" if now else did_you_mean(key, known)
            yield Problem(f"readings.{name}: {key}", now or wrong, would_do)


def unused(sheet: Mapping[str, Any], planned: list[Check]) -> list[str]:
    """Return a note on each set of readings that no check uses: nothing of it was judged."""
    used = {check.uses for check in planned}
    spare = [name for name in sheet.get("readings", {}) if name not in used]
    return [f'readings.{n}: no check uses them, none was judged; uses = "{n}"' for n in spare]


def _twice(planned: list[Check]) -> Iterator[Problem]:
    """Report checks that cannot be told apart."""
    seen: set[tuple[tuple[str, str, str], str]] = set()
    for check in planned:
        same = (check.same_as, check.place.stage)
        if same in seen:
            wrong = f"stands there twice {check.place.stage}"
            yield Problem(f"check {check.name}", wrong, "give each a name of its own")
        seen.add(same)
