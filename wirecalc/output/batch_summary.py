"""What the rows of a batch came to together, as text and as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any, TypeVar

from ..base.rounding import show, show_band
from ..jobs.batch_row import NOTHING, Common, RowResult
from ..jobs.batch_tally import Close, Tally
from ..said.items import Caution, NotChecked
from ..said.verdicts import Verdict
from .json import caution_object, dump
from .layout import block, visible, wrap

MOST_NOTES = 1_000  # of each kind
T = TypeVar("T")


class InCommon:
    """What is said of many rows alike, each once, and at most so many of each kind.

    `limits` are the sources of what decided.
    """

    def __init__(self, most: int = MOST_NOTES) -> None:
        self.most = most
        self.cautions: dict[str, Caution] = {}
        self.not_checked: dict[str, NotChecked] = {}
        self.sources: dict[str, None] = {}
        self.limits: dict[str, None] = {}

    def watch(self, results: Iterable[RowResult]) -> Iterator[RowResult]:
        """Gather it from rows as they go by."""
        for row in results:
            if row.found.common is not NOTHING:
                self._add(row.found.common)
            yield row

    def _add(self, common: Common) -> None:
        self._keep(self.cautions, ((c.key, c) for c in common.cautions))
        self._keep(self.not_checked, ((n.what, n) for n in common.not_checked))
        self._keep(self.sources, ((source, None) for source in common.sources))
        self._keep(self.limits, ((source, None) for source in common.limits))

    def _keep(self, kept: dict[str, T], more: Iterable[tuple[str, T]]) -> None:
        for key, one in more:
            if len(kept) < self.most:
                kept.setdefault(key, one)


def summary_json(calculation: str, tally: Tally, common: InCommon) -> str:
    """Return the summary of a batch, with what is said of its rows alike."""
    return dump(
        {
            "schema": "wirecalc.batch/1",
            "calculation": calculation,
            "rows": tally.rows,
            "verdicts": {str(v): tally.verdicts.get(v, 0) for v in Verdict},
            "without_verdict": tally.verdicts.get(None, 0),
            "refused": tally.refused,
            "defects": tally.defects,
            "decided_by": [
                {"criterion": name, "verdicts": {str(v): n for v, n in by.items()}}
                for name, by in tally.decided.items()
            ],
            "closest": [_close_object(close) for close in tally.closest],
            "refused_for": [
                {"input": name, "rows": r.rows, "first_row": r.first, "said": r.said}
                for name, r in tally.refusals.items()
            ],
            "cautions": [caution_object(c) for c in common.cautions.values()],
            "sources": list(common.sources),
            "not_checked": [{"what": n.what, "why": n.why} for n in common.not_checked.values()],
        }
    )


def _close_object(close: Close) -> dict[str, Any]:
    level = close.level
    return {
        "row": close.row,
        "label": close.label,
        "criterion": close.criterion,
        "verdict": close.verdict,
        "actual": level.actual,
        "limit": level.limit,
        "unit": level.unit,
        "margin": level.margin,
        "share": level.share,
    }


def summary_lines(tally: Tally) -> Iterator[str]:
    """Yield what decided, the rows closest to their limits, and what was refused, for a text."""
    decided = (
        f"{name}: {', '.join(f'{by[v]} {v}' for v in Verdict if v in by)}"
        for name, by in sorted(tally.decided.items(), key=lambda d: -sum(d[1].values()))
    )
    yield from block("Decided by", _wrapped(decided))
    if tally.rows > 1:
        yield from block("Closest to their limits", _wrapped(map(_close, tally.closest)))
    refused = (
        f"{r.rows} for {name or 'the row'}, first row {r.first}"
        for name, r in tally.refusals.items()
    )
    yield from block("Refused", _wrapped(refused))


def _wrapped(texts: Iterable[str]) -> Iterator[str]:
    return (line for text in texts for line in wrap(f"- {text}", indent="  "))


def _close(close: Close) -> str:
    level = close.level
    named = f" ({visible(' '.join(close.label.split()))})" if close.label else ""
    actual, limit = (show(n, level.unit, digits=6) for n in (level.actual, level.limit))
    if level.low is not None and level.high is not None:
        actual = show_band(level.low, level.high, level.unit)
    said = f"{close.criterion} {actual}, limit {limit} ({level.share:+.1%})"
    return f"row {close.row}{named}: {said}, {close.verdict}"
