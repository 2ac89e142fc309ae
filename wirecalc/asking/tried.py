"""What an answer that is not there yet could change: found by trying some."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from typing import NamedTuple

from ..base.errors import BadInput, PluginDefect
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


class Tries:
    """Findings on answers that nobody gave yet.

    `run` computes a finding from some answers; `refuses` says whether what is known of the machine
    rules some answers out.
    """

    def __init__(
        self,
        run: Callable[[Mapping[str, object]], Finding],
        refuses: Callable[[Mapping[str, object]], bool] | None = None,
    ) -> None:
        self._run, self._refuses = run, refuses

    def finding(self, given: Mapping[str, object]) -> Finding | None:
        """Return what answers come to; None where they cannot be given together."""
        if self._refuses is not None and self._refuses(given):
            return None
        try:
            return self._run({k: v for k, v in given.items() if v is not None})
        except (BadInput, PluginDefect):
            return None

    def on(self, given: Mapping[str, object], declared: Input) -> Iterator[Finding]:
        """Yield what answers to one input come to, those that cannot be given left out."""
        for text in tried_texts(declared) if not declared.kind.of_file else ():
            found = self.finding({**given, declared.name: [text] if declared.many else text})
            if found is not None:
                yield found

    def changes(
        self, given: Mapping[str, object], declared: Input, now: Verdict | None
    ) -> tuple[Verdict, ...]:
        """Return the other verdicts that some answer was found to lead to, worst first."""
        found = {f.verdict for f in self.on(given, declared) if f.verdict is not None}
        return tuple(sorted(found - {now}, key=lambda v: -v.rank))

    def matters(self, given: Mapping[str, object], declared: Input) -> bool:
        """Whether some answer is judged otherwise than none; it may where not all can be tried."""
        if not isinstance(declared.kind, YesNo | OneOf):
            example = declared.kind.example
            text = {declared.name: [example] if declared.many else example}
            return self._refuses is None or not self._refuses({**given, **text})
        without = self.finding({k: v for k, v in given.items() if k != declared.name})
        return any(_judged(found) != _judged(without) for found in self.on(given, declared))


def _judged(finding: Finding | None) -> object:
    if finding is None:
        return None
    return [(c.criterion.name, c.verdict, c.because) for c in finding.criteria]
