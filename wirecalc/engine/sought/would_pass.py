"""After a fail: what of that which a person may choose would pass, all else as given."""

from __future__ import annotations

from collections.abc import Mapping

from ...base.errors import BadInput
from ...said.findings import Finding
from ...said.verdicts import Verdict
from ..left_out import option_of
from .seeking import Seeker, Sought
from .spans import Span
from .words import span_words


def would_pass(seeker: Seeker, finding: Finding, given: Mapping[str, object]) -> str:
    """Say which values of one input would pass; empty where none does or none may be chosen.

    What would still be open whatever is chosen is not hidden: nothing is said then.
    """
    if finding.verdict is not Verdict.FAIL:
        return ""
    for name in seeker.calc.chosen:
        if not isinstance(given.get(name), str):
            continue
        try:
            found = seeker.seek({**given, name: "sought"})
        except BadInput:
            continue
        if isinstance(found, Sought) and not found.aside:
            passing = [s for s in found.spans if s.verdict in (Verdict.PASS, Verdict.MARGINAL)]
            if passing:
                values = "; ".join(_values(s, found) for s in passing)
                return f"{name.replace('_', ' ')} {values}: {option_of(name)} sought shows it"
    return ""


def _values(span: Span, found: Sought) -> str:
    marginal = ", marginal" if span.verdict is Verdict.MARGINAL else ""
    return f"{span_words(found, span)}{marginal}"
