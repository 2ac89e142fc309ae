"""An input: as its declaration has it, and as it stands under Given, with what was made of it."""

from __future__ import annotations

from ..base.rounding import show_band
from ..engine.inputs import Input
from ..engine.left_out import option_of
from ..said.findings import InputRecord
from .layout import command, wrap


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


def input_lines(declared: Input) -> list[str]:
    """Show an input with an example, its unit and span, and whether it is needed."""
    kind = declared.kind
    repeat = ", repeat it for more" if declared.many else ""
    lines = command(f'{declared.option} "{kind.example}"')
    goes = f"goes with {option_of(kind.goes_with)}: " if kind.goes_with else ""
    need = f"{goes}{declared.need_spelled(option_of)}{repeat}"
    lines += wrap(f"{kind.text} ({kind.span}; {need})", "      ")
    return lines
