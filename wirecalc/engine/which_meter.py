"""Which instrument would settle what this one cannot, and up to which error a pass would hold.

Both are found by running the calculation again, as it would be run with that reading.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from ..base.errors import BadInput, BadText
from ..instruments.readings import MAINS, declared, split
from ..said.criteria import Criterion
from ..said.findings import Finding, Judged
from ..said.verdicts import Verdict
from ..typed.quantities import split_error
from ..typed.quantity_kinds import Reading
from .declaration import Calculation
from .reading_inputs import MOST_BANDS

Again = Callable[[Mapping[str, object]], Finding]
ERRORS = (*(n / 10 for n in range(1, 10)), *(float(n) for n in range(1, 51)))  # per cent


def with_meters(
    calc: Calculation[Any], finding: Finding, given: Mapping[str, object], again: Again
) -> Finding:
    """Name, for each criterion that a meter's error leaves open, the instrument that decides it."""
    open_ = [j for j in finding.criteria if _is_open(j)]
    if not declared().instruments or not open_ or calc.own_band:
        return finding
    tried = list(_tried(calc, finding, given, again))
    criteria = tuple(_settled(j, tried) if j in open_ else j for j in finding.criteria)
    return replace(finding, criteria=criteria)


def _is_open(judged: Judged) -> bool:
    """Whether a criterion is open for the band of a meter alone."""
    return judged.verdict is Verdict.CANNOT_TELL and judged.criterion.sense != "cannot tell"


def _tried(
    calc: Calculation[Any], finding: Finding, given: Mapping[str, object], again: Again
) -> Iterator[tuple[str, Finding]]:
    """Yield what comes of each banded reading, taken by each instrument that reads such."""
    for record in finding.inputs:
        kind = next((i.kind for i in calc.inputs if i.name == record.name), None)
        text = given.get(record.name)
        if record.low is None or not isinstance(kind, Reading) or not isinstance(text, str):
            continue
        bare = split_error(split(text).value)[0]
        hertz = MAINS if kind.wave == "ac" else ()
        for instrument in declared().instruments:
            ranges = instrument.of(kind.dimension, kind.wave, hertz)
            if not ranges or any(f"by {instrument.name}," in note for note in record.notes):
                continue
            try:
                found = again({**given, record.name: f"{bare} by {instrument.name}"})
            except (BadInput, BadText):
                continue
            by = next((n for i in found.inputs if i.name == record.name for n in i.notes), "")
            yield f"{record.name.replace('_', ' ')} {by}", found


def _settled(judged: Judged, tried: list[tuple[str, Finding]]) -> Judged:
    for words, found in tried:
        other = _same(judged.criterion, judged.provider, found)
        if other is not None and other.verdict is not Verdict.CANNOT_TELL:
            return judged._replace(to_do=f"read {words}: that would decide it")
    none = "none of the declared instruments would decide it; "
    return judged._replace(to_do=f"{none if tried else ''}{judged.action}")


def _same(criterion: Criterion, provider: str, found: Finding) -> Judged | None:
    return next(
        (j for j in found.criteria if (j.criterion.name, j.provider) == (criterion.name, provider)),
        None,
    )


def holds_to(finding: Finding, given: Mapping[str, object], again: Again) -> str:
    """Say up to which error of all readings that were taken as exact a pass would hold.

    Empty where there is none, where it is no pass, or where more readings would have an error than
    one run takes.
    """
    exact = [n for n in finding.exact if isinstance(given.get(n), str)]
    banded = {i.name for i in finding.inputs if i.low is not None}
    if finding.verdict is not Verdict.PASS or not exact or len({*exact, *banded}) > MOST_BANDS:
        return ""

    def passes(percent: float) -> bool:
        worse = {n: f"{given[n]} ±{percent:g}%" for n in exact}
        try:
            return again({**given, **worse}).verdict is Verdict.PASS
        except BadInput:
            return False

    low, high = -1, len(ERRORS)  # the last that passes, the first that does not
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if passes(ERRORS[middle]) else (low, middle)
    each = "the reading" if len(exact) == 1 else "each reading"
    if low < 0:
        return f"does not hold to ±{ERRORS[0]:g} % of {each}"
    return f"holds to ±{ERRORS[low]:g} % of {each}"
