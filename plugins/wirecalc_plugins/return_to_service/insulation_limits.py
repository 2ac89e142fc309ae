"""The limits of an insulation resistance, by class of protection and by what was tested."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import PRACTICE, Caution, Item, caution, figure, not_checked, tables

from .insulation_doubts import BARE

_VACUUM = Caution(
    "compressor-vacuum",
    "No test voltage on a compressor that is under vacuum: it can arc inside.",
    "the maker's sheet",
    "stop",
    "insulation test of a hermetic compressor",
    PRACTICE,
    "no test voltage on a compressor that is under vacuum",
)


def shown(rows: Sequence[tables.Row], part: str) -> Iterator[Item]:
    """Show the limits, and the cautions of a compressor."""
    for row in rows:
        of = "" if row.text("tested_part") == "any" else f", {part}"
        name = f"least, {row.text('said_by')}{of}"
        yield figure(name, row.number("limit_Mohm"), "Mohm", source=row.source)
    if part in BARE:
        yield from _ieee_43()
    if part == "compressor":
        yield caution("ins-02")
        yield _VACUUM
        yield caution("flam-01")


def rows_of(protection: str, part: str) -> Iterator[tables.Row]:
    """Yield the rows of a class of protection for what was tested."""
    for row in tables.load("insulation-limits").rows:
        of_class = row.text("protection") in (protection, "any")
        of_part = row.text("tested_part") in (part, "any")
        general = row.text("tested_part") == "any" and row.text("binding") == "no"
        if of_class and of_part and not (part == "heater" and general):  # elements leak by nature
            yield row


def binding(rows: Sequence[tables.Row]) -> tables.Row:
    """Return the standard's row: that of the part itself before that of any."""
    standard = [r for r in rows if r.text("binding") == "yes"]
    return max(standard, key=lambda r: r.text("tested_part") != "any")


def _ieee_43() -> Iterator[Item]:
    row = tables.load("insulation-limits").row(
        protection="ieee-43", tested_part="random-wound", said_by="IEEE 43"
    )
    yield figure(
        "of a machine of 1 hp or more, at 40 C", row.number("limit_Mohm"), "Mohm", source=row.source
    )
    yield not_checked("IEEE 43", "it does not cover motors under 1 hp; its limit is only shown")
