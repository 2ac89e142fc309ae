"""What an answer that is not there yet could change: found by trying some."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import NamedTuple

from ..engine.inputs import Input
from ..engine.left_out import LeftOut
from ..said.findings import Finding
from ..said.verdicts import Verdict
from ..typed.counts import Count
from ..typed.quantity_kinds import Nameplate, Reading
from ..typed.word_kinds import OneOf, WireKind, YesNo

_MOST_WORDS = 12  # of a list that are tried
_WIRES = ("18 AWG", "14 AWG", "10 AWG")  # sizes of the trade, from a lead to a dryer's cord


class Open(NamedTuple):
    """An input that is not answered and may be: what leaving it out means, what it may change.

    `to` are the verdicts that some answer to it was found to lead to, other than the present one.
    """

    input: Input
    word: LeftOut
    to: tuple[Verdict, ...] = ()


def tried_texts(declared: Input) -> list[str]:
    """Return answers to try: all of a list, the example and the ends of a span, some wires."""
    kind = declared.kind
    if isinstance(kind, YesNo):
        return ["yes", "no"]
    if isinstance(kind, OneOf):
        return kind.words[:_MOST_WORDS]
    if isinstance(kind, WireKind):
        return list(_WIRES)
    if isinstance(kind, Count):
        return [kind.example, str(kind.low), str(min(kind.high, 10 * max(kind.low, 1)))]
    if isinstance(kind, Reading | Nameplate):
        return [kind.example, *map(kind.show, _span(kind))]
    return []


def _span(kind: Reading | Nameplate) -> list[float]:
    """Return both ends of a span and some between; the lower one where it cannot be reached."""
    high = kind.high if kind.high is not None else 1e3
    low = kind.low if kind.low is not None else kind.above
    if low is None:
        return [high]
    inside = low if not kind.excludes(low) else low + (high - low) / 1000
    least = max(inside, high / 1e4)
    return [inside, math.sqrt(least * high) if least > 0 else high / 2, high]


def changes(
    run: Callable[[Mapping[str, object]], Finding | None],
    given: Mapping[str, object],
    declared: Input,
    now: Verdict | None,
) -> tuple[Verdict, ...]:
    """Return the other verdicts that some answer to an input was found to lead to, worst first."""
    if declared.kind.of_file:
        return ()
    found: set[Verdict] = set()
    for text in tried_texts(declared):
        value = [text] if declared.many else text
        finding = run({**given, declared.name: value})
        if finding is not None and finding.verdict not in (None, now):
            found.add(finding.verdict)
    return tuple(sorted(found, key=lambda v: -v.rank))
