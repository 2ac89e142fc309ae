"""What the rows of a batch came to together, as text and as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from ..base.rounding import show, show_band
from ..jobs.batch_row import RowFinding
from ..jobs.batch_tally import Close, Tally
from ..said.items import Caution, NotChecked
from ..said.verdicts import Verdict
from .json import caution_object, dump
from .layout import block, visible, wrap

MOST_NOTES = 1_000  # of each kind


class InCommon:
    """What is said of many rows alike: cautions, what was not checked, sources; each once."""

    def __init__(self) -> None:
        self.cautions: dict[str, Caution] = {}
        self.not_checked: dict[str, NotChecked] = {}
        self.sources: dict[str, None] = {}

    def watch(self, found: Iterable[RowFinding]) -> Iterator[RowFinding]:
        """Gather it from rows as they go by."""
        for row in found:
            if row.finding is not None:
                self.cautions.update({c.key: c for c in row.finding.cautions})
                if len(self.not_checked) < MOST_NOTES:
                    self.not_checked.update({n.what: n for n in row.finding.not_checked})
                if len(self.sources) < MOST_NOTES:
                    self.sources.update({s.cite(): None for s in row.finding.sources.values()})
            yield row


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
    criterion = close.judged.criterion
    return {
        "row": close.row,
        "label": close.label,
        "criterion": criterion.name,
        "verdict": close.judged.verdict,
        "actual": criterion.actual,
        "limit": criterion.limit,
        "unit": criterion.unit,
        "margin": criterion.margin,
        "share": close.share,
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
    criterion = close.judged.criterion
    assert criterion.actual is not None and criterion.limit is not None
    named = f" ({visible(' '.join(close.label.split()))})" if close.label else ""
    low, high = close.judged.low, close.judged.high
    actual, limit = (show(n, criterion.unit, digits=6) for n in (criterion.actual, criterion.limit))
    if low is not None and high is not None:
        actual = show_band(low, high, criterion.unit)
    said = f"{criterion.name} {actual}, limit {limit} ({close.share:+.1%})"
    return f"row {close.row}{named}: {said}, {close.judged.verdict}"
