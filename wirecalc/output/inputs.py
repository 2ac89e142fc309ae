"""An input as it stands under Given: as it was typed, and what was made of it."""

from __future__ import annotations

from ..findings import InputRecord
from ..rounding import show_band


def given(record: InputRecord) -> tuple[str, str]:
    """Return the value of an input in words, and its band, what was assumed, or what to measure."""
    if record.origin == "assumed":
        return record.notes[0], "assumed"
    if record.origin == "unknown":
        return "unknown", "; ".join(record.notes)
    typed = record.understood or record.given or ""
    notes = list(record.notes)
    one_side = typed.strip()[:1] in ("<", ">")  # its other end is only that of the span
    if record.low is not None and record.high is not None and not one_side:
        notes.insert(0, show_band(record.low, record.high, record.unit))
    return typed, ", ".join(notes)
