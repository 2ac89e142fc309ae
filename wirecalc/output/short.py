"""An answer in a screen: what a person at a terminal acts on. `--full` has the rest.

Kept, whatever the finding: the verdict and every criterion that does not pass, each number with its
limit and where that comes from, what to do, every stop, what was assumed or taken as exact, what
was not checked, and who decides.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Sequence

from ..base.rounding import show, show_band
from ..said.criteria import Criterion
from ..said.findings import BandFigure, Finding, InputRecord, Judged
from ..said.items import Caution, NotChecked
from ..said.verdicts import Verdict
from ..typed.units import convert, dimension_of
from . import terminal_width
from .layout import begun, table, wrap
from .text import word

ARITHMETIC = re.compile(r"\d[^;]* [x/+-] ")  # of a working; one without any is in words
_TIMES_ONE = re.compile(r"[^x]+(?: x 1)+")  # nothing was corrected
GO_ON = "go on with the work; what stands under Not checked is still open"
REST = "All of it, with the sources: the same line with --full"
_INDENT = " " * 6
_NOTE = "assumed "  # goes before what was taken of a text
_SHORT_WORD = 3  # letters; a longer word of a name says of what something was assumed
_MOST_LEFT = 150  # letters of what was not checked; the rest is counted
_MOST_FIGURES = 4
_MOST_TYPED = 3  # inputs that are named for one number
_LINE = 80  # letters
_SCREEN, _PASS = 20, 12  # lines of an answer, and of a simple pass, as far as they go
_STOPS = 2  # of a simple pass; each more is a line more


def finding_short(finding: Finding) -> str:
    """Return what a person at a terminal acts on, in a screen as far as it goes."""
    lines: list[str] = []
    for whole, few in ((3, False), (3, True), (2, True), (1, True), (0, True)):
        lines = [*_parts(finding, whole, few=few)]
        if len(lines) * terminal_width.width() <= _most(finding) * _LINE:
            break
    return "\n".join(lines)


def _most(finding: Finding) -> int:
    """Return how many lines an answer is to have; a pass that has much to stop at may have more."""
    if finding.decided_by is None or finding.verdict is not Verdict.PASS:
        return _SCREEN
    told = sum(c.severity == "stop" for c in finding.cautions)
    return min(_SCREEN, _PASS + max(0, told - _STOPS))


def _parts(finding: Finding, whole: int, *, few: bool) -> Iterator[str]:
    """Yield the lines, with so many of what else does not pass in whole."""
    decided = finding.decided_by
    if decided is None:
        yield from _figures(finding)
    else:
        yield from wrap(f"{word(decided.verdict)}  {cited(decided)}", indent=_INDENT)
        yield from _answers(finding)
        yield from _made_of(finding, decided)
        yield from _next(decided, finding.go_on)
        yield from wrap(finding.would_pass, "Would pass  ", _INDENT)
        yield from _others(finding, decided, whole)
    yield from stops(finding.cautions)
    yield from _taken(finding, few=few)
    yield from not_checked(finding.not_checked, few=few)
    yield from closing(finding.cautions)


def cited(judged: Judged) -> str:
    """Return what a criterion says, with a few words of where its limit comes from."""
    source = judged.criterion.source
    reason = judged.reason
    said = reason if reason.startswith(judged.criterion.name) else judged.because
    return f"{said} [{source.short}]" if source else said


def stops(cautions: Iterable[Caution]) -> Iterator[str]:
    """Yield each stop in a line; where there is none, each caution."""
    told = sorted(cautions, key=lambda c: c.severity != "stop")
    grave = [c for c in told if c.severity == "stop"]
    for caution in grave or [c for c in told if c.severity == "caution"]:
        yield from wrap(f"{'STOP' if grave else 'Care'}  {caution.line}", indent=_INDENT)


def not_checked(found: Sequence[NotChecked], *, few: bool = False) -> Iterator[str]:
    """Yield what was not checked, what was meant to be in force and is not before all else.

    Where there are to be few words each is cut where it begins to say why.
    """
    meant = re.compile(r" of plugin |^what ")  # though it was meant to be in force
    ordered = sorted(found, key=lambda n: not meant.search(n.what))
    names = [n.what.replace("_", " ") for n in ordered]
    if few:
        names = [re.split(r": | \(", name)[0] for name in names]
    most = _MOST_LEFT // 3 if few else _MOST_LEFT
    kept = names[: max(1, sum(1 for n in found if meant.search(n.what)))]
    while len(kept) < len(names) and len("; ".join([*kept, names[len(kept)]])) <= most:
        kept.append(names[len(kept)])
    more = [f"{len(names) - len(kept)} more"] if len(names) > len(kept) else []
    yield from wrap("; ".join([*kept, *more]), "Not checked  ", _INDENT)


def closing(cautions: Iterable[Caution], rest: str = REST) -> Iterator[str]:
    """Yield who decides, in a line, and where the rest is."""
    for caution in cautions:
        if caution.severity == "note" and caution.when in ("", "always"):
            yield from wrap(caution.line, indent="  ")
    yield from wrap(rest, indent="  ") if rest else []


def _figures(finding: Finding) -> Iterator[str]:
    """Yield what was asked for, where there is nothing to judge."""
    yield from _answers(finding)
    yield "NO VERDICT  figures only"
    rows = [(f.figure.name, figure(f)) for f in finding.figures]
    yield from (f"  {line}" for line in table(rows[:_MOST_FIGURES]))
    if more := len(rows[_MOST_FIGURES:]):
        yield f"  {more} more figures"


def _answers(finding: Finding) -> Iterator[str]:
    for answer in finding.answers:
        yield from wrap(f"{begun(answer.name)}: {answer.text}", indent=_INDENT)


def figure(banded: BandFigure) -> str:
    """Return a figure with its unit, and its band if it has one."""
    text = show(banded.figure.value, banded.figure.unit, toward=banded.figure.toward)
    if banded.low is None or banded.high is None:
        return text
    return f"{text}, {show_band(banded.low, banded.high)}"


def _made_of(finding: Finding, decided: Judged) -> Iterator[str]:
    """Yield how the number that decided, and its limit, come from what was typed."""
    criterion = decided.criterion
    said = {
        _of_actual(finding, criterion): None,
        _origin(finding, criterion, criterion.limit): None,
    }
    for one in said:
        yield from wrap(one, "From  ", _INDENT)


def _of_actual(finding: Finding, criterion: Criterion) -> str:
    """Say what a judged number was made of: its sum, else what was typed of its kind."""
    actual, unit = criterion.actual, criterion.unit
    found = _origin(finding, criterion, actual)
    if found or actual is None or any(actual == i.value for i in finding.inputs if i.unit == unit):
        return found
    typed = [i for i in finding.inputs if i.given and i.unit and i.unit == unit]
    return "; ".join(map(_typed, typed[:_MOST_TYPED])) if len(typed) <= _MOST_TYPED else ""


def _origin(finding: Finding, criterion: Criterion, value: float | None) -> str:
    """Say what a judged number was made of; nothing of one that was typed as it stands."""
    if value is None:
        return ""
    for banded in finding.figures:
        found = banded.figure
        ends = (found.value, banded.low, banded.high)
        if found.unit != criterion.unit or not _among(value, ends):
            continue
        sum_, _, _ = found.working().partition(";") if found.working else ("", "", "")
        if ARITHMETIC.search(sum_) and not _TIMES_ONE.fullmatch(sum_):
            return f"{found.name}: {sum_} = {figure(banded)}"
    typed = next((i for i in finding.inputs if _is_same(i, value, criterion.unit)), None)
    return _typed(typed) if typed and (typed.unit != criterion.unit or value != typed.value) else ""


def _typed(record: InputRecord) -> str:
    return f"{record.name.replace('_', ' ')}: {record.given}" if record.given else ""


def _is_same(record: InputRecord, value: float, unit: str) -> bool:
    """Return whether a judged number is what was typed for an input, or an end of its band."""
    try:
        if isinstance(record.value, str | None) or dimension_of(record.unit) != dimension_of(unit):
            return False
    except LookupError:
        return False
    ends = [v for v in (record.value, record.low, record.high) if v is not None]
    return _among(value, [convert(end, record.unit, unit) for end in ends])


def _among(value: float, ends: Iterable[float | None]) -> bool:
    return any(end is not None and math.isclose(value, end, rel_tol=1e-9) for end in ends)


def _next(decided: Judged, go_on: str) -> Iterator[str]:
    """Yield what to do next; after a pass what its calculation says, if anything."""
    action = go_on or GO_ON if decided.verdict is Verdict.PASS else decided.action
    yield from wrap(f"Next  {action or 'see the limit above'}", indent=_INDENT)


def _others(finding: Finding, decided: Judged, most: int) -> Iterator[str]:
    """Yield what else does not pass: of what is as bad the first with what to do, else its name."""
    said = {decided.action}
    rest = [c for c in finding.criteria if c is not decided and c.verdict is not Verdict.PASS]
    whole = [c for c in rest if c.verdict is decided.verdict][:most]
    for judged in whole:
        do = "" if judged.action in said else f". Next: {judged.action}"
        said.add(judged.action)
        yield from _also(judged.verdict, f"{cited(judged)}{do}")
    for verdict in sorted({c.verdict for c in rest}, key=lambda v: -v.rank):
        names = [c.criterion.name for c in rest if c.verdict is verdict and c not in whole]
        yield from _also(verdict, "; ".join(n.replace("_", " ") for n in names))


def _also(verdict: Verdict, said: str) -> list[str]:
    return wrap(f"Also  {word(verdict)}  {said}", indent=_INDENT) if said else []


def _taken(finding: Finding, *, few: bool) -> Iterator[str]:
    """Yield what was assumed, and which readings were taken as exact; in few words if need be."""
    yield from wrap("; ".join(_assumed(finding.inputs)), "Assumed  ", _INDENT)
    if finding.exact:
        names = ", ".join(n.replace("_", " ") for n in finding.exact)
        why = "no meter error was given"
        holds = (
            finding.holds
            if few and finding.holds
            else "; ".join(filter(None, (why, finding.holds)))
        )
        yield from wrap(f"Exact  {names}: {holds}", indent=_INDENT)


def _assumed(inputs: Iterable[InputRecord]) -> Iterator[str]:
    """Yield what each input was taken for, or what of it was, with its name or what was typed."""
    said: dict[str, list[str]] = {}  # what they were taken for -> the names, where it needs any
    for record in inputs:
        if record.origin == "assumed":
            name, words = record.name.replace("_", " "), record.notes[0]
            of_it = any(part in words for part in name.split() if len(part) > _SHORT_WORD)
            said.setdefault(words, []).extend([] if of_it else [name])
        elif found := [n.removeprefix(_NOTE) for n in record.notes if n.startswith(_NOTE)]:
            said.setdefault(", ".join(found), []).append(record.given or record.name)
    for words, names in said.items():
        yield f"{', '.join(dict.fromkeys(names))}: {words}" if names else words
