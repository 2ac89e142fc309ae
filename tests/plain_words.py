"""Which criteria of a finding have no words that a customer reads."""

from __future__ import annotations

from wirecalc.said.criteria import Origin
from wirecalc.said.findings import Finding
from wirecalc.said.plain_words import plain_words


def without_plain_words(finding: Finding) -> list[str]:
    """Return their names; a shop's rule has its own name for a customer."""
    own = [j.criterion for j in finding.criteria if j.criterion.origin is not Origin.HOUSE]
    return [c.name for c in own if not plain_words(c)]
