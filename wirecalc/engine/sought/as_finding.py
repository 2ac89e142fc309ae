"""What was sought as a finding without a verdict: an option on a job sheet."""

from __future__ import annotations

from ...said.findings import Finding
from ...said.items import Answer
from ..from_plugins import ProvidedCalculation
from .seeking import Sought, SoughtTable
from .words import because, edges, span_words, verdict_words


def as_finding(provided: ProvidedCalculation, found: Sought | SoughtTable) -> Finding:
    """Return a finding that answers what the input would have to be, and judges nothing.

    What was sought is none of its inputs: it is no reading.
    """
    rows = found.rows if isinstance(found, SoughtTable) else (("", found),)
    sought = {one.input for _, one in rows} | (
        {found.across} if isinstance(found, SoughtTable) else set()
    )
    ends = [finding for _, one in rows for finding in one.findings]
    return Finding(
        calculation=found.calculation,
        plugin=provided.plugin,
        version=provided.version,
        inputs=tuple(i for i in (ends[0].inputs if ends else ()) if i.name not in sought),
        answers=tuple(_answer(shown, one) for shown, one in rows),
        cautions=tuple(dict.fromkeys(c for f in ends for c in f.cautions)),
        not_checked=tuple(dict.fromkeys(n for f in ends for n in f.not_checked)),
    )


def _answer(shown: str, one: Sought) -> Answer:
    name = f"{one.input.replace('_', ' ')} sought" + (f", {shown}" if shown else "")
    spans = (f"{span_words(one, s)}: {verdict_words(one, s)}" for s in one.spans)
    at_edges = tuple(f"{end.shown}: {because(end)}" for _, end in edges(one))
    aside = tuple(f"whatever it is, {j.verdict}: {j.because}" for j in one.aside)
    return Answer(name, "; ".join(spans), at_edges, aside)
