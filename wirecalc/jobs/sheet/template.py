"""A new job sheet to fill in, written from a kind of job and from what calculations declare.

Every line that starts with `#` and a key is an example to replace; lines that start with `##` are
words, or inputs that cannot stand beside the examples. Taking one `#` off every line gives a sheet
that can be evaluated.
"""

from __future__ import annotations

import shlex
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ...base.errors import BadInput, Problem
from ...engine.declaration import Calculation
from ...engine.inputs import Input
from ...engine.reading_inputs import prepare
from ...engine.remembered import Remembered
from ...plugging.host import Catalogue
from ..checks import AS_FOUND, AS_LEFT
from ..job import BENCH
from .confirmed import stops
from .kinds import UsualCheck, expected, find, usual
from .missing_inputs import cannot_do_without, example, runner
from .plan import on_plate
from .shape import as_toml
from .template_lines import confirmed_lines, facts_lines, key_line, words

_HEAD = """\
A job sheet for a {kind}: fill it in, then run  wirecalc job {file}
Take the # off a line and replace its value: every value here is an example, none was read.
A reading may carry its meter's error, as "1.30 A ±(2%+5)". What you cannot read: "unknown".
Lines with ## are words; one with "or" takes the place of a line above it. A check that is
left as it stands is not known, and so is the job: `wirecalc job {file} --check-only`
lists what is missing. A check whose [[check]] has a # is for a repair that touches it."""
_JOB = (
    ("date", "2026-01-31", "day of the repair"),
    ("technician", "initials", ""),
    ("machine", "make, type, volts", ""),
    ("work", "what was done, in words for the customer", ""),
    ("hand_over", "what the customer was told", ""),
    ("circuit", "cord, receptacle and circuit, in words for the customer", ""),
)
_END = """\
What the machine cannot have, such as a ground path of one with two wires and a double square:
[[does_not_apply]]
calculation = "ground"
reason = "two wires, double square on the plate"
"No time" and "no meter" are no such reasons: they stand under [[not_tested]]."""
_CALLBACK = (
    ("callback_of", "2026-01-05", "a job that came back: its date or number"),
    ("callback_cause", "high-resistance joint", "and why"),
)


def new_sheet(kind: str, file: str, catalogue: Catalogue) -> str:
    """Return a job sheet of a kind to fill in, as TOML.

    `file` is the name under which it will stand. Raises BadInput with the nearest known kind, or
    where the tables name a calculation that is not here.
    """
    kind = find(kind, catalogue)
    there = catalogue.calculations
    unknown = sorted({c.calculation for c in usual(kind)} - set(there))
    if unknown:
        wrong = f"a check of {kind} needs {', '.join(unknown)}, which is not here"
        raise BadInput([Problem("--new", wrong, "install the plugin that provides it")])
    checks = [c for c in expected(kind, catalogue) if c.calculation in there]
    absent = [c for c in expected(kind, catalogue) if c.calculation not in there]
    calculations = {c.calculation: catalogue.find(c.calculation).calculation for c in checks}
    plate = _plate(list(calculations.values()))
    lines = [
        *(f"## {line}" for line in _HEAD.format(kind=kind, file=shlex.quote(file)).splitlines()),
        *(text for why in stops(kind, {}) for text in words(why)),
        "",
        "[job]",
        f"title = {as_toml(f'{kind}: what is wrong')}",
        f"kind = {as_toml(kind)}",
        *(
            text
            for key, *said in (*_JOB, *_CALLBACK)
            if kind != BENCH or key != "machine"
            for text in key_line(key, *said)
        ),
        *facts_lines(kind),
        "",
        "## Printed values, and what a tester is set to: they feed every check that takes them.",
        "[nameplate]",
    ]
    filled = {name: example(i) for name, i in plate.items()}
    own = {name: _own(calc, filled) for name, calc in calculations.items()}
    marks = {n: _marks(calc, filled, own[n], catalogue) for n, calc in calculations.items()}
    for declared in plate.values():
        said = [f"{n} {m[declared.name]}" for n, m in marks.items() if declared.name in m]
        lines += _input(declared, "; ".join(said))
    for check in checks:
        calc = calculations[check.calculation]
        first = next(c for c in checks if c.one_of == check.one_of)
        instead = bool(check.one_of) and check is not first
        if not any(c.required for c in checks) and check is checks[0]:
            check = check._replace(required=True)  # a sheet lists one at least
        lines += ["", *_check(check, calc, own[calc.name], marks[calc.name], instead=instead)]
    for check in absent:
        why = check.why.removesuffix("it") + check.calculation
        lines += ["", *words(f"{why}: no calculation of that name is here.")]
    lines += ["", *confirmed_lines(kind), "", *_not_tested(checks)]
    lines += ["", *(f"## {line}" for line in _END.splitlines())] if kind != BENCH else []
    return "\n".join([*lines, ""])


def _plate(calculations: Sequence[Calculation[Any]]) -> dict[str, Input]:
    """Return what the calculations take from a plate, as far as their examples go together."""
    plate: dict[str, Input] = {}
    for calc in calculations:
        for declared in calc.inputs:
            if not on_plate(declared.kind) or declared.name in plate or declared.kind.goes_with:
                continue
            tried = {**plate, declared.name: declared}
            given = {name: example(i) for name, i in tried.items()}
            takes = (c for c in calculations if any(i.name == declared.name for i in c.inputs))
            if all(_goes(c, _shared(c, given)) for c in takes):  # the others see nothing new
                plate = tried
    needed = {i.name: i for c in calculations for i in c.inputs if i.required}
    return {name: needed.get(name, declared) for name, declared in plate.items()}


def _shared(calc: Calculation[Any], filled: Mapping[str, object]) -> dict[str, object]:
    return {i.name: filled[i.name] for i in calc.inputs if i.name in filled and on_plate(i.kind)}


def _check(
    check: UsualCheck,
    calc: Calculation[Any],
    own: _Own,
    marks: Mapping[str, str],
    *,
    instead: bool = False,
) -> Iterator[str]:
    off = "" if check.required and not instead else "# "
    yield from words(f"{check.name}, {check.stage}: {check.why}")
    if check.one_of and check.required:
        yield from words(f"Of the checks for {check.one_of} one is needed: take the others out.")
    if check.unless and check.required:
        yield from words(f"Take it out where [job] says {check.unless}.")
    yield f"{off}[[check]]"
    yield f"{off}calculation = {as_toml(check.calculation)}"
    yield f"{off}name = {as_toml(check.name)}"
    if check.step:
        yield f"{off}step = {as_toml(check.step)}"
    yield f"{off}stage = {as_toml(check.stage)}"
    yield from words(calc.question)
    for declared in own.inputs:
        mark = marks.get(declared.name, "")
        yield from _input(declared, mark, instead=declared.name not in own.together)
    yield from key_line("note", "what you saw", "")
    if check.stage == AS_FOUND:
        yield from key_line("removed", "", "how what failed was taken away, if it was")
    if check.stage == AS_LEFT and check.step in ("wire", "joint", "prove the joint", "parts"):
        yield from key_line("tool", "number of the crimper", "")
        yield from key_line("part", "number of the terminal or part", "")


class _Own(NamedTuple):
    """The inputs that stand in a check itself, and which of them go together."""

    inputs: list[Input]
    together: set[str]


def _own(calc: Calculation[Any], filled: Mapping[str, object]) -> _Own:
    own = [i for i in calc.inputs if i.name not in filled]
    own.sort(key=lambda i: (not i.required, i.name not in calc.example_inputs))
    return _Own(own, _together(calc, own, _shared(calc, filled)))


def _marks(
    calc: Calculation[Any], filled: Mapping[str, object], own: _Own, catalogue: Catalogue
) -> dict[str, str]:
    """Return what is to be said of the inputs that a calculation cannot tell without."""
    examples = {i.name: example(i) for i in own.inputs if i.name in own.together}
    given = _shared(calc, filled) | examples
    strictly, among = cannot_do_without(calc, runner(catalogue, calc), given)
    without = "cannot tell without it"
    return dict.fromkeys(among, f"{without} or others") | dict.fromkeys(strictly, without)


def _together(
    calc: Calculation[Any], inputs: Sequence[Input], shared: Mapping[str, object]
) -> set[str]:
    """Return the inputs whose examples can all be given at once, those of the example first."""
    first = [i for i in inputs if i.required or i.name in calc.example_inputs]
    given = {**shared, **{i.name: example(i) for i in first}}
    read = Remembered()
    if not _goes(calc, given, read):
        given = dict(shared)
    grown = True
    while grown:  # one may go with another that comes later
        grown = False
        for declared in inputs:
            tried = {**given, declared.name: example(declared)}
            if declared.name not in given and _goes(calc, tried, read):
                given, grown = tried, True
    return set(given)


def _goes(
    calc: Calculation[Any], given: Mapping[str, object], read: Remembered | None = None
) -> bool:
    try:
        prepare(calc, given, "sheet", missing_is_unknown=True, remembered=read)
    except BadInput:
        return False
    return True


def _input(declared: Input, mark: str, *, instead: bool = False) -> Iterator[str]:
    kind = declared.kind
    need = mark if mark and not declared.required else declared.need
    yield from words(f"{kind.text} ({kind.span}; {need})")
    line = f"{declared.name} = {as_toml(example(declared))}"
    yield f"## or {line}" if instead else f"# {line}"


def _not_tested(checks: Sequence[UsualCheck]) -> Iterator[str]:
    named = next((c for c in reversed(checks) if c.required and not c.one_of), checks[-1])
    yield from words(
        "A check that was not made: take it out above, and say here why. One block for each."
    )
    yield "# [[not_tested]]"
    yield f"# name = {as_toml(named.name)}"
    yield f"# calculation = {as_toml(named.calculation)}"
    yield f"# step = {as_toml(named.step)}"
    yield "# required = true"
    yield '# reason = "why it was not made"'
