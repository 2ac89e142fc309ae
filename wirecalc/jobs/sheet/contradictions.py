"""What a sheet says of one machine that cannot be so together: it is refused.

Which of the two is wrong, the program does not know; a verdict by either would be one by chance.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ...base.errors import BadText, Problem
from ...engine.one_input import says_unknown
from ...typed.kinds import Kind
from ...typed.quantity_kinds import Nameplate
from ..checks import AS_LEFT, OPTION
from .machine_facts import Subject
from .plan import Check
from .shape import words_of

_PLATE_VOLTS = "nameplate_voltage"
_MOST_OF_CLASS_III = 50.0  # V ac, extra-low voltage of IEC 61140; from memory
_FIXED, _OUTLET = "hard-wired", "outlet"
_NOT_BESIDE: Mapping[
    str, Mapping[str, Sequence[str]]
] = {  # a connection as [job] says it: words of readings that it rules out
    "cord-connected": {"ground_point": ("wired-in",), "connection": ("wired-in",)},
    _FIXED: {
        "ground_point": ("plug-pin", "neutral-blade"),
        "connection": ("plug", "large-plug"),
        "fastened_in_place": ("no",),
    },
}
_COLD = ("refrigerator", "freezer", "ice-machine")
_DRY = (
    *("washer", "range", "gas-range", "gas-dryer", "dishwasher", "microwave", "disposal"),
    *("fan", "portable-heater", "sump-pump"),
)
_NO_STRAP = (  # 120 V, or grounded by a wire of its own: ranges and dryers alone have one
    *_COLD,
    *(kind for kind in _DRY if kind != "range"),
    "air-conditioner",
    "dehumidifier",
    "water-heater",
)
_NOT_OF = {  # words of readings, and the kinds of machine that they are not of; common practice
    ("machine_kind", ("refrigerator",)): (*_DRY, "dryer", "heat-pump-dryer", "water-heater"),
    ("machine_kind", ("stationary", "heater")): _COLD,
    ("ground_point", ("neutral-blade",)): _NO_STRAP,
    ("neutral_strap", ("fitted", "lifted", "removed")): _NO_STRAP,
}
_WITHOUT_GROUND = {  # words of readings of a machine that has no ground path
    "protection": ("class-ii", "class-iii"),
    "machine_kind": ("double-insulated",),
}


def problems_of(
    planned: Sequence[Check], subjects: Sequence[Subject], plates: Mapping[str, Mapping[str, Any]]
) -> Iterator[Problem]:
    """Yield what does not go together on a sheet; `plates` are those of its machines, by name."""
    for subject in subjects:
        ours = [c for c in planned if c.place.machine == subject.machine]
        ours = [c for c in ours if c.place.stage != OPTION]
        plate = plates.get(subject.machine, {}).get(_PLATE_VOLTS)
        yield from _connection(ours, subject)
        yield from _kind_of_machine(ours, subject.kind)
        yield from _no_ground(ours)
        yield from _extra_low(ours, plate)
        yield from _two_plates(ours, plate)


def _connection(checks: Sequence[Check], subject: Subject) -> Iterator[Problem]:
    said = subject.facts.get("connection", "")
    for check, name, word in _words(checks, _NOT_BESIDE.get(said, {})):
        wrong = f'{word!r}, and the sheet says connection = "{said}"'
        yield Problem(f"check {check.name}: {name}", wrong, "write what the machine has")
    for check in checks if said == _FIXED else ():
        if check.calculation.name == _OUTLET:
            wrong = f'is of an outlet, and the sheet says connection = "{said}"'
            would_do = "leave it out, or write how the machine is connected"
            yield Problem(f"check {check.name}", wrong, would_do)


def _kind_of_machine(checks: Sequence[Check], kind: str) -> Iterator[Problem]:
    """Report words of another kind of machine: its limit is another too."""
    for (name, words), kinds in _NOT_OF.items():
        for check, _, word in _words(checks, {name: words}) if kind in kinds else ():
            wrong = f'{word!r}, and the sheet says kind = "{kind}"'
            would_do = "write what the machine is, in the check or as its kind"
            yield Problem(f"check {check.name}: {name}", wrong, would_do)


def _no_ground(checks: Sequence[Check]) -> Iterator[Problem]:
    grounds = [c for c in checks if c.calculation.name == "ground" and c.place.stage == AS_LEFT]
    for check, name, word in _words(checks, _WITHOUT_GROUND) if grounds else ():
        wrong = f"{word!r} has no ground path, and check {grounds[0].name} is of one"
        yield Problem(f"check {check.name}: {name}", wrong, "write what stands on its plate")


def _extra_low(checks: Sequence[Check], plate: object) -> Iterator[Problem]:
    volts = [v for c in checks if (v := _volts(c, c.given.get(_PLATE_VOLTS))) is not None]
    volts += [v for c in checks if (v := _volts(c, plate)) is not None]
    if not volts or max(volts) <= _MOST_OF_CLASS_III:
        return
    for check, name, word in _words(checks, {"protection": ("class-iii",)}):
        most = f"{_MOST_OF_CLASS_III:g} V at most"
        wrong = f"{word!r} is fed by {most}, and a plate says {max(volts):g} V"
        yield Problem(f"check {check.name}: {name}", wrong, "write what stands on its plate")


def _two_plates(checks: Sequence[Check], plate: object) -> Iterator[Problem]:
    """Report volts that are not those of the machine's plate; a named part has its own."""
    told = [("the nameplate", plate)] if plate is not None else []
    for check in checks:
        if check.part and check.calculation.name != "supply":
            continue
        own = _volts(check, check.given.get(_PLATE_VOLTS))
        if own is None:
            continue
        if not told:
            told.append((f"check {check.name}", check.given[_PLATE_VOLTS]))
        where, of = told[0]
        first = _volts(check, of)
        if first is not None and own != first:
            wrong = f"{own:g} V, and {where} says {first:g} V: one machine has one plate"
            would_do = 'write what stands on it, or part = "..." where it is the plate of a part'
            yield Problem(f"check {check.name}: {_PLATE_VOLTS}", wrong, would_do)


def _words(
    checks: Sequence[Check], among: Mapping[str, Sequence[str]]
) -> Iterator[tuple[Check, str, str]]:
    """Yield each check that is given one of some words, with its input and the word."""
    for check in checks:
        for name, words in among.items():
            given = words_of(check.given.get(name, "")).casefold()
            if given in words:
                yield check, name, given


def _volts(check: Check, given: object) -> float | None:
    """Return printed volts; None where there are none, or none that can be read."""
    kind = _kind(check)
    if kind is None or given is None or says_unknown(given):
        return None
    try:
        return float(kind.read(given).value)
    except BadText:
        return None


def _kind(check: Check) -> Kind | None:
    kinds = (i.kind for i in check.calculation.inputs if i.name == _PLATE_VOLTS)
    return next((k for k in kinds if isinstance(k, Nameplate)), None)
