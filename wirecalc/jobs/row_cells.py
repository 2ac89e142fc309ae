"""Values of a data frame, of Parquet or of JSON as the cells of a row: texts as they are typed."""

from __future__ import annotations

import math
from decimal import Decimal


def cell_text(value: object) -> str:
    """Return a value as it would stand in a cell; empty where there is none.

    >>> cell_text(1e-05), cell_text(24), cell_text(True), cell_text(None)
    ('0.00001', '24', 'yes', '')
    >>> cell_text(["16 AWG", "14 AWG"])
    '16 AWG; 14 AWG'
    """
    if value is None:
        return ""
    if isinstance(value, str):
        return value.strip()
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{Decimal(repr(value)):f}" if math.isfinite(value) else str(value)
    if isinstance(value, list | tuple):
        return "; ".join(map(cell_text, value))
    return str(value)
