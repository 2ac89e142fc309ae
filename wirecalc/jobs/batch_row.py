"""What one row of a batch came to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ..base.errors import Problem
from ..said.findings import Finding


class RowFinding(NamedTuple):
    """What a row came to: a finding, or the problems or the defect that kept it from one."""

    row: int
    label: str = ""
    kept: Mapping[str, str] = {}
    finding: Finding | None = None
    problems: Sequence[Problem] = ()
    defect: str = ""
