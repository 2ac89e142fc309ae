"""JSON: one object a finding ("wirecalc.finding/1"), one a job ("wirecalc.job/1").

Within version 1 fields are added, never renamed or removed. The schemas stand in
`wirecalc/schemas`; `wirecalc schema finding` prints one.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from ..jobs.checks import JobCheck, house_rules
from ..jobs.job import BeforeAfter, Job
from ..jobs.sheet.gaps import reading_object, readings_missing
from ..published.sources import Source
from ..said.charts import Chart
from ..said.findings import BandFigure, Finding, InputRecord, Judged
from ..said.items import Caution


def dump(value: object) -> str:
    """Return JSON as it is printed."""
    return json.dumps(value, indent=2, ensure_ascii=False, allow_nan=False)


def finding_object(
    finding: Finding, *, working: bool = False, drawn: Sequence[tuple[Chart, str]] = ()
) -> dict[str, Any]:
    """Return a finding as a JSON object; the working is filled in only when it was asked for."""
    decided = finding.decided_by
    return {
        "schema": "wirecalc.finding/1",
        "calculation": finding.calculation,
        "plugin": finding.plugin,
        "version": finding.version,
        "verdict": finding.verdict,
        "decided_by": decided.criterion.name if decided else None,
        "inputs": [_input(i) for i in finding.inputs],
        "answers": [
            {
                "name": a.name,
                "text": a.text,
                "for": list(a.evidence_for),
                "against": list(a.evidence_against),
            }
            for a in finding.answers
        ],
        "figures": [_figure(finding, f, working) for f in finding.figures],
        "criteria": [_criterion(finding, c) for c in finding.criteria],
        "listings": [
            {"title": x.title, "columns": list(x.columns), "rows": [list(r) for r in x.rows]}
            for x in finding.listings
        ],
        "charts": [{"title": c.title, "file": file, "text": c.text} for c, file in drawn],
        "cautions": [caution_object(c) for c in finding.cautions],
        "sources": {k: _source(s) for k, s in finding.sources.items()},
        "not_checked": [{"what": n.what, "why": n.why} for n in finding.not_checked],
        "house_rules": list(finding.house_rules),
        "holds": finding.holds or None,
        "would_pass": finding.would_pass or None,
    }


def caution_object(caution: Caution) -> dict[str, Any]:
    """Return a caution as a JSON object."""
    return {
        "key": caution.key,
        "text": caution.text,
        "defers_to": caution.defers_to,
        "severity": caution.severity,
        "when": caution.when,
        "source": caution.source.cite() if caution.source else "",
    }


def job_object(job: Job, *, working: bool = False) -> dict[str, Any]:
    """Return a job as a JSON object."""
    only = job.machines[0].name if len(job.machines) == 1 else ""
    return {
        "schema": "wirecalc.job/1",
        "title": job.title,
        "kind": job.kind,
        "about": dict(job.about),
        "verdict": job.verdict,
        "reasons": list(job.reasons),
        "machines": [
            {
                "name": m.name,
                "kind": m.kind,
                "about": dict(m.about),
                "verdict": job.verdict_of(m.name),
            }
            for m in job.machines
        ],
        "checks": [_check(c, only, working=working) for c in job.checks],
        **_not_checked(job, only),
        "remarks": list(job.remarks),
        "before_and_after": [_before_after(pair, only) for pair in job.before_and_after],
        "missing": [reading_object(r) for c in job.checks for r in readings_missing(c)],
        "house_rules": list(house_rules(job.checks)),
    }


def _check(check: JobCheck, only: str, *, working: bool) -> dict[str, Any]:
    """Return a check of a job with its finding."""
    return {
        "name": check.name,
        "stage": check.stage,
        "step": check.step,
        "machine": check.machine or only,
        "note": check.note,
        "tool": check.tool,
        "part": check.part,
        "removed": check.removed,
        "finding": finding_object(check.finding, working=working) if check.finding else None,
        "defect": check.defect or None,
    }


def _not_checked(job: Job, only: str) -> dict[str, Any]:
    """Return what was not tested, what does not apply, and what a person confirmed."""
    return {
        "not_tested": [
            {
                "name": n.name,
                "required": n.required,
                "reason": n.reason,
                "step": n.step,
                "machine": n.machine or only,
                "calculation": n.calculation,
                "rule": n.rule,
                "instead": list(n.instead),
            }
            for n in job.not_tested
        ],
        "does_not_apply": [
            {
                "name": d.name,
                "calculation": d.calculation,
                "reason": d.reason,
                "machine": d.machine or only,
            }
            for d in job.does_not_apply
        ],
        "confirmed": [
            {
                "name": c.key,
                "says": c.says,
                "answer": c.answer or None,
                "reason": c.reason,
                "machine": c.machine or only,
            }
            for c in job.confirmed
        ],
    }


def _before_after(pair: BeforeAfter, only: str) -> dict[str, Any]:
    """Return the same check twice: verdicts, and the numbers that decided."""
    found = pair.found
    return {
        "name": found.name,
        "machine": found.machine or only,
        "calculation": found.calculation,
        "found": {"verdict": found.verdict, "decided_by": [_deciding(j) for j in _one(pair.then)]},
        "left": {"verdict": pair.left.verdict, "decided_by": [_deciding(j) for j in pair.now]},
    }


def _one(judged: Judged | None) -> list[Judged]:
    return [] if judged is None else [judged]


def _deciding(judged: Judged) -> dict[str, Any]:
    criterion = judged.criterion
    return {
        "name": criterion.name,
        "actual": criterion.actual,
        "limit": criterion.limit,
        "unit": criterion.unit,
        "verdict": judged.verdict,
        "reason": judged.reason,
    }


def _input(record: InputRecord) -> dict[str, Any]:
    return {
        "name": record.name,
        "given": record.given,
        "value": record.value,
        "unit": record.unit,
        "low": record.low,
        "high": record.high,
        "from": record.origin,
        "notes": list(record.notes),
        "understood": record.understood or None,
    }


def _figure(finding: Finding, banded: BandFigure, working: bool) -> dict[str, Any]:
    figure = banded.figure
    return {
        "name": figure.name,
        "value": figure.value,
        "low": banded.low,
        "high": banded.high,
        "unit": figure.unit,
        "also": [{"value": v, "unit": u} for v, u in figure.also],
        "working": figure.working() if working and figure.working else None,
        "source": finding.source_key(figure.source),
    }


def _criterion(finding: Finding, judged: Judged) -> dict[str, Any]:
    criterion = judged.criterion
    return {
        "name": criterion.name,
        "provider": judged.provider,
        "origin": criterion.origin,
        "sense": criterion.sense,
        "actual": criterion.actual,
        "limit": criterion.limit,
        "caution_limit": criterion.caution_limit,
        "unit": criterion.unit,
        "low": judged.low,
        "high": judged.high,
        "verdict": judged.verdict,
        "margin": criterion.margin,
        "reason": judged.reason,
        "action": judged.action,
        "source": finding.source_key(criterion.source),
    }


def _source(source: Source) -> dict[str, Any]:
    return {
        "title": source.title,
        "edition": source.edition,
        "where": source.where,
        "confidence": source.confidence,
        "copies": source.copies,
    }
