"""What the runs that were tried of a calculation show together."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ..base.rounding import show
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..said.criteria import Criterion
from ..said.findings import Finding, Judged
from ..said.verdicts import Verdict

SHORTEST = 3  # letters of a text that is looked for in a name
ERROR = 20  # percent, of the meter that a reading is tried with
PASSES = (Verdict.PASS, Verdict.MARGINAL)


class Made(NamedTuple):
    """A finding, and what it was made with; of a sweep the value of the reading that swept."""

    typed: Mapping[str, object]
    finding: Finding
    value: float = 0.0


def check_runs(example: Mapping[str, object], runs: Sequence[Made]) -> Iterator[str]:
    """Yield what is wrong with what runs came to: each kind of it once."""
    for make in (_nothing, _caution_levels, _renamed):
        yield from list(make(example, runs))[:1]


def _nothing(example: Mapping[str, object], runs: Sequence[Made]) -> Iterator[str]:
    """Find a run that ends without an answer: nobody would know what it came to."""
    for typed, finding, _ in runs:
        if not (finding.figures or finding.answers or finding.criteria or finding.listings):
            other = [f"{n} {value}" for n, value in typed.items() if example.get(n) != value]
            where = f"with {', '.join(other)} " if other else ""
            yield f"{where}it yields nothing; yield a figure, an answer or a criterion"


def _caution_levels(_: Mapping[str, object], runs: Sequence[Made]) -> Iterator[str]:
    for criterion in (c.criterion for run in runs for c in run.finding.criteria):
        if _past_limit(criterion):
            level, limit = (
                show(value or 0.0, criterion.unit)
                for value in (criterion.caution_limit, criterion.limit)
            )
            wrong = f"{criterion.name!r} has its caution level of {level} past its limit of {limit}"
            yield f"{wrong}: nobody is ever warned"


def _past_limit(criterion: Criterion) -> bool:
    if criterion.caution_limit is None or criterion.limit is None:
        return False
    beyond = criterion.caution_limit - criterion.limit
    return beyond < 0 if criterion.sense == "at least" else beyond > 0


def _renamed(_: Mapping[str, object], runs: Sequence[Made]) -> Iterator[str]:
    """Find names of criteria that carry a number or a word that was typed, and so change with it.

    A name that no run has beside the other is taken for the same criterion, renamed.
    """
    seen: dict[str, tuple[str, Mapping[str, object]]] = {}
    for typed, finding, _value in runs:
        here = {c.criterion.name for c in finding.criteria}
        for name in sorted(here):
            for mask in _masks(name, typed):
                first, other = seen.setdefault(mask, (name, typed))
                if first != name and first not in here:
                    changed = [n for n in typed if other.get(n) != typed[n]]
                    yield (
                        f"a criterion is called {first!r}, and {name!r} where "
                        f"{' and '.join(changed)} is another: its name must be constant text"
                    )


def _masks(name: str, typed: Mapping[str, object]) -> Iterator[str]:
    """Yield a name with its numbers, or one of the texts that were typed, taken out."""
    yield re.sub(r"\d+(\.\d+)?", "#", name)
    for of, given in typed.items():
        if isinstance(given, str) and len(given) >= SHORTEST and given in name:
            yield name.replace(given, f"<{of}>")


def check_band(
    calc: Calculation[Any], declared: Input, example: str, banded: Finding, points: Sequence[Made]
) -> Iterator[str]:
    """Yield where a meter's band is judged otherwise than a point inside it, or not at all.

    `banded` is the finding of a reading with its error, as `example` says, `points` those without.
    """
    (record,) = (r for r in banded.inputs if r.name == declared.name)
    if record.low is None or record.high is None:
        return
    inside = [p for p in points if record.low <= p.value <= record.high]
    for judged in banded.criteria:
        criterion = judged.criterion
        if calc.own_band and criterion.band is None and _is_deaf(criterion, record.value, points):
            yield f"{criterion.name!r} has no band=(low, high), so {example} counts for nothing"
            return
        for point in inside:
            for there in point.finding.criteria:
                if there.criterion.name == criterion.name and _against(judged, there):
                    at = f"{there.verdict} at {show(point.value, declared.kind.unit)}"
                    yield f"{criterion.name!r} is {judged.verdict} for {example}, and {at}"
                    return


def check_unit(declared: Input, points: Sequence[Made]) -> Iterator[str]:
    """Yield what has the number of a reading at every point of its span, and another unit."""
    own = declared.kind.unit
    seen: dict[tuple[str, str], int] = {}
    for point in points:
        figures = ((f.name, f.value, f.unit) for f in (b.figure for b in point.finding.figures))
        criteria = (j.criterion for j in point.finding.criteria)
        for name, value, unit in (*figures, *((c.name, c.actual, c.unit) for c in criteria)):
            another = unit and unit != own and not unit.startswith(f"{own} ")  # ft one way
            if value == point.value and another:
                seen[name, unit] = seen.get((name, unit), 0) + 1
    for (name, unit), times in seen.items():
        if times > len(points) / 2:
            yield f"{name!r} is {declared.name} as it is, in {own}, and says {unit}"


def _is_deaf(criterion: Criterion, centre: object, points: Sequence[Made]) -> bool:
    """Whether a limit follows the reading, and has at its centre what it has with an error."""
    actual = {
        point.value: c.criterion.actual
        for point in points
        for c in point.finding.criteria
        if c.criterion.name == criterion.name
    }
    return len({*actual.values()}) > 1 and criterion.actual in [
        value for at, value in actual.items() if value is not None and at == centre
    ]


def _against(band: Judged, point: Judged) -> bool:
    """Whether a band passes with a point inside it that fails, or fails with one that passes.

    A point may be a cannot tell by itself, where a calculation asks for the meter's error.
    """
    return (band.verdict in PASSES and point.verdict is Verdict.FAIL) or (
        band.verdict is Verdict.FAIL and point.verdict in PASSES
    )
