"""What was sought as a page."""

from __future__ import annotations

from ..engine.sought.seeking import Sought, SoughtTable
from ..engine.sought.words import because, best, edges, span_words, verdict_words
from ..version import VERSION
from .html_building import Element, el, page, pairs, picture, section, table
from .html_technician import caution_items
from .sought import all_cautions, tried_words
from .sought_chart import sought_chart


def sought_page(found: Sought | SoughtTable) -> str:
    """Return what was sought as a page: what passes, the spans, the edges, the picture."""
    rows = found.rows if isinstance(found, SoughtTable) else (("", found),)
    findings = [f for _, one in rows for f in one.findings]
    parts = [part for shown, one in rows for part in _one(shown, one)]
    cautions = all_cautions(findings)
    body = el(
        "main",
        el("h1", found.question),
        _box(rows),
        *parts,
        section("Picture", picture(sought_chart(found), "sought")),
        section("Take care", caution_items(cautions)),
        el("p", f"Worked out by wirecalc {VERSION}.", class_="note"),
    )
    return page(f"{found.calculation}: what {rows[0][1].input} would have to be", body)


def _box(rows: tuple[tuple[str, Sought], ...]) -> Element:
    said = []
    for shown, one in rows:
        words, spans = best(one)
        values = "; ".join(span_words(one, s) for s in spans)
        said.append((shown or one.input, f"{words}: {values}"))
    return el("div", pairs(said, "decided"), class_="box")


def _one(shown: str, one: Sought) -> list[Element | None]:
    heading = f"{one.input}, with {shown}" if shown else one.input
    spans = [(span_words(one, s), verdict_words(one, s)) for s in one.spans]
    ends = [(end.shown, verdict_words(one, s), because(end)) for s, end in edges(one)]
    aside = [(j.verdict.upper(), j.because) for j in one.aside]
    return [
        section(
            heading,
            pairs(aside, "about") if aside else None,
            table("By verdict", ("value", "verdict"), spans),
            table("At each edge", ("value", "verdict", "what decides"), ends),
            el("p", tried_words(one), class_="note"),
        )
    ]
