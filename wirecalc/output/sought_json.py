"""What was sought as JSON: `wirecalc.sought/1`."""

from __future__ import annotations

from typing import Any

from ..engine.sought.seeking import Sought, SoughtTable
from ..engine.sought.spans import End, Span
from ..engine.sought.words import because, verdict_words
from ..said.findings import Judged
from .sought import all_cautions, all_not_checked

SCHEMA = "wirecalc.sought/1"


def sought_object(found: Sought | SoughtTable) -> dict[str, Any]:
    """Return what was sought as one object; of two inputs with an entry a value of the first."""
    if isinstance(found, SoughtTable):
        first = found.rows[0][1]
        findings = [f for _, one in found.rows for f in one.findings]
        head: dict[str, Any] = {"across": found.across}
        rows = [{"value": shown, **_one(one)} for shown, one in found.rows]
    else:
        first, findings, head = found, list(found.findings), {"across": None}
        rows = [{"value": None, **_one(found)}]
    return {
        "schema": SCHEMA,
        "calculation": found.calculation,
        "input": first.input,
        "unit": first.unit,
        "target": first.target or None,
        "tried": {"from": first.from_, "to": first.to},
        **head,
        "rows": rows,
        "cautions": [
            {"key": c.key, "text": c.text, "severity": c.severity, "when": c.when}
            for c in all_cautions(findings)
        ],
        "not_checked": [{"what": n.what, "why": n.why} for n in all_not_checked(findings)],
    }


def _one(found: Sought) -> dict[str, Any]:
    return {
        "spans": [_span(found, span) for span in found.spans],
        "the_same_throughout": [_judged(j) for j in found.aside],
        "runs": found.runs,
        "complete": found.complete,
    }


def _span(found: Sought, span: Span) -> dict[str, Any]:
    return {
        "verdict": span.word,
        "words": verdict_words(found, span).casefold(),
        "values": list(span.texts),
        "from": _end(span.first),
        "to": _end(span.last),
    }


def _end(end: End) -> dict[str, Any]:
    by = end.judged.by
    return {
        "text": end.shown,
        "value": end.value,
        "decided_by": by.criterion.name if by else None,
        "because": because(end),
    }


def _judged(judged: Judged) -> dict[str, Any]:
    return {
        "name": judged.criterion.name,
        "verdict": judged.verdict,
        "reason": judged.reason,
        "action": judged.action,
    }
