"""The declared instruments, and at which values each can still tell, as text and as a page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..engine.sought.seeking import Sought
from ..engine.sought.words import span_words
from ..instruments.declared import Declared, Instrument
from ..said.verdicts import Verdict
from .html_building import el, page, section
from .html_building import table as html_table
from .layout import block, table, wrap

HEADS = ("instrument", "reads", "from", "to", "error")
OF_VALUES = ("reading", "instrument", "decides", "cannot tell")
_NONE = (
    "No instruments are declared. Write [[instrument]] in the settings file, in a file that "
    "instruments_files names there, or on a job sheet."
)


class Tells(NamedTuple):
    """At which values of a reading an instrument decides, and at which it cannot."""

    reading: str
    instrument: str
    decides: tuple[str, ...]
    cannot: tuple[str, ...]


def tells(instrument: str, found: Sought) -> Tells:
    """Part the spans of a reading by an instrument: decided there, or not."""
    decides, cannot = [], []
    for span in found.spans:
        if span.verdict is Verdict.CANNOT_TELL:
            cannot.append(span_words(found, span))
        elif span.verdict is not None:
            decides.append(f"{span.word} {span_words(found, span)}")
    return Tells(found.input, instrument, tuple(decides), tuple(cannot))


def about(instrument: Instrument) -> str:
    """Return category and date of an instrument in words."""
    category = str(instrument.category) if instrument.category else "no category declared"
    return f"{category}, due {instrument.due}" if instrument.due else category


def rows(declared: Declared) -> Iterator[tuple[str, ...]]:
    """Yield a row a range."""
    for instrument in declared.instruments:
        for number, one in enumerate(instrument.ranges):
            reads = f"{one.wave} {one.dimension}".strip()
            name = instrument.name if number == 0 else ""
            yield name, reads, *one.shown, f"±({one.said})"


def instruments_text(declared: Declared, found: Sequence[Tells], calculation: str) -> str:
    """Return the instruments as text."""
    if not declared.instruments:
        return "\n".join(wrap(_NONE))
    lines = [*table([HEADS, *rows(declared)])]
    lines += block("Marked", table([(i.name, about(i)) for i in declared.instruments]))
    lines += block("Meant where a reading names none", table(sorted(declared.meters.items())))
    if found:
        cells = [
            (t.reading, t.instrument, "; ".join(t.decides), "; ".join(t.cannot)) for t in found
        ]
        lines += block(f"For {calculation}, all else as given", table([OF_VALUES, *cells]))
    return "\n".join(lines)


def instruments_page(declared: Declared, found: Sequence[Tells], calculation: str) -> str:
    """Return the instruments as a page to print for the van."""
    marked = [(i.name, about(i)) for i in declared.instruments]
    meant = sorted(declared.meters.items())
    cells = [(t.reading, t.instrument, "; ".join(t.decides), "; ".join(t.cannot)) for t in found]
    body = el(
        "main",
        el("h1", "Instruments"),
        None if declared.instruments else el("p", _NONE),
        section("Ranges", html_table("What each reads", HEADS, rows(declared))),
        section("Marked",
                html_table("Of meter and leads", ("instrument", "category, due"), marked)),
        section("Meant where a reading names none",
                html_table("By what is read", ("reads", "instrument"), meant)),
        section(f"At which values each can tell, for {calculation}",
                html_table("All else as given", OF_VALUES, cells)) if found else None,
    )  # fmt: skip
    return page("Instruments", body)
