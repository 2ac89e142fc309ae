"""A target on a figure, beside or in place of the criteria: `--target "volts lost <= 3 V"`."""

from __future__ import annotations

import re
from typing import NamedTuple

from ...base.errors import BadText, nearest
from ...published.sources import Confidence, Source
from ...said.criteria import Origin, at_least, at_most
from ...said.findings import BandFigure, Finding, Judged
from ...said.verdicts import Verdict
from ...typed.quantities import read_number, read_quantity
from ...typed.units import dimension_of

PROVIDER = "target"
_TARGET = re.compile(r"\s*(?P<name>\S.*?)\s*(?P<sense><=|>=)\s*(?P<limit>\S.*)")
_ASKED = Source("target", "asked for with the question", confidence=Confidence.TYPED)


class Target(NamedTuple):
    """A figure by its name, and the least or largest value that is asked of it."""

    name: str
    at_most: bool
    limit: str

    def judged(self, finding: Finding) -> Judged:
        """Judge it on a finding, over the band of the meters; raises BadText."""
        found = next((f for f in finding.figures if f.figure.name.casefold() == self.name), None)
        if found is None:
            names = [f.figure.name for f in finding.figures]
            close = nearest(self.name, names)
            do = f"did you mean {close}?" if close else f"its figures are: {', '.join(names)}"
            raise BadText(f"{finding.calculation} works out no {self.name!r}", do)
        return self._of(found)

    def _of(self, found: BandFigure) -> Judged:
        figure = found.figure
        limit = self._limit(figure.unit)
        make = at_most if self.at_most else at_least
        ends = [v for v in (found.low, figure.value, found.high) if v is not None]
        each = [
            make(figure.name, v, limit, figure.unit, source=_ASKED, origin=Origin.HOUSE)
            for v in ends
        ]
        verdicts = {criterion.verdict for criterion in each}
        worst = max(each, key=lambda c: (c.verdict.rank, -c.closeness))
        if len(verdicts) > 1:
            return Judged(worst, PROVIDER, Verdict.CANNOT_TELL, "too close for this meter", "")
        return Judged(worst, PROVIDER, worst.verdict, worst.reason, "", found.low, found.high)

    def _limit(self, unit: str) -> float:
        if not unit:
            number, rest = read_number(self.limit)
            if rest:
                raise BadText(f"{self.name} is a plain number", f"write {number.value:g}")
            return number.value
        try:
            dimension = dimension_of(unit)
        except LookupError:
            raise BadText(f"{self.name} is in {unit}, which cannot be typed", "") from None
        return read_quantity(self.limit, dimension, unit).value


def read_target(text: str) -> Target:
    """Read a target; raises BadText.

    >>> read_target("volts lost <= 3 V")
    Target(name='volts lost', at_most=True, limit='3 V')
    """
    match = _TARGET.fullmatch(text)
    if match is None:
        raise BadText(f"{text!r} is no target", 'such as "volts lost <= 3 V", or with >=')
    return Target(match["name"].casefold(), match["sense"] == "<=", match["limit"].strip())
