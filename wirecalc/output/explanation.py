"""What `wirecalc explain NAME` prints: all of it from the declaration, the docstring, the tables
that the docstring names, and the declared example worked through.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ..base.rounding import show
from ..engine.declaration import Calculation
from ..engine.left_out import option_of
from ..published import tables
from ..published.measuring import ways
from ..published.shop_tables import over
from ..published.sources import Confidence, Source
from ..said.criteria import Criterion
from ..said.findings import Finding, Judged
from ..said.items import NotChecked, library_caution
from .citations import Citations
from .inputs import input_lines
from .layout import block, command, table, wrap
from .rules import ListedRule
from .text import caution_lines, evidence, headline, not_checked_lines, sources_block

Example = Finding | str  # the finding of the example, or why it was not worked


def explanation(
    calc: Calculation[Any],
    example: Example,
    files: Mapping[str, str],
    rules: Sequence[ListedRule] = (),
    not_loaded: Sequence[NotChecked] = (),
) -> str:
    """Explain a calculation to a person: what it asks and how it answers, with an example.

    `example` is the finding of the declared example, or a text that says why there is none;
    `files` are the files that the example reads, by name; `rules` are the house rules in force
    that concern it, and `not_loaded` where there may be others.
    """
    lines = [*wrap(f"{calc.name}: {calc.question}"), "", "How it is worked out"]
    lines += _paragraphs(calc.doc)
    lines += ["", "Inputs"]
    for declared in calc.inputs:
        lines += input_lines(declared)
    lines += block("How to measure", _measured(calc))
    lines += block("Tables", _tables(calc.doc))
    if isinstance(example, Finding):
        lines += block("Limits in the example below; other inputs have others", _limits(example))
        lines += sources_block(Citations([example]))
        lines += _house(calc, rules, not_loaded)
        lines += block("Take care", caution_lines(example.cautions))
        lines += block("Never checked", not_checked_lines(_never(calc, example)))
    else:
        lines += _house(calc, rules, not_loaded)
        known = [c for c in map(library_caution, calc.cautions) if c is not None]
        lines += block("Take care", caution_lines(known))
        lines += block("Never checked", (f"- {what}" for what in calc.not_checked))
    return "\n".join([*lines, *worked(calc, example, files)])


def _house(
    calc: Calculation[Any], rules: Sequence[ListedRule], not_loaded: Sequence[NotChecked]
) -> list[str]:
    """List what the shop asks beyond the published limits, and what of it was not loaded."""
    said = [f"- {rule.name}: {rule.asks} ({rule.origin})" for rule in rules]
    for shop in over(tables_named(calc.doc)):
        rows = f"{len(shop.rows)} row{'' if len(shop.rows) == 1 else 's'}"
        said.append(f"- {rows} beside those of {shop.table.name} (table {', '.join(shop.by)})")
    missing = [f"- {gap.what}: {gap.why}" for gap in not_loaded]
    lines = []
    for title, texts in (("House rules in force", said), ("Not loaded", missing)):
        lines += block(title, (line for text in texts for line in wrap(text, indent="  ")))
    return lines


def tables_named(doc: str) -> list[str]:
    """Return the tables that a docstring names as its sources, in its order."""
    known = set(tables.names())
    cited = re.findall(r"[a-z0-9]+(?:-[a-z0-9]+)*", doc.rpartition("Source:")[2])
    return [name for name in dict.fromkeys(cited) if name in known]


def _measured(calc: Calculation[Any]) -> Iterator[str]:
    for way in ways([declared.name for declared in calc.inputs]):
        by = ", ".join(map(option_of, way.inputs))
        yield from wrap(f"- {way.name} ({by}): {way.text}", indent="  ")


def _paragraphs(doc: str) -> Iterator[str]:
    """Yield the paragraphs below the first line, wrapped to the width of the terminal."""
    paragraphs = [" ".join(p.split()) for p in doc.split("\n\n")[1:]]
    for number, paragraph in enumerate(paragraphs):
        yield from ("",) if number else ()
        yield from wrap(paragraph, "  ")


def _tables(doc: str) -> Iterator[str]:
    """Yield what each table holds, and each of its sources with how far it may be trusted."""
    for name in tables_named(doc):
        found = tables.load(name)
        by_source: dict[Source, list[Source]] = {}
        for row in found.rows:
            bare = row.source._replace(confidence=Confidence.CONFIRMED, copies=0)
            by_source.setdefault(bare, []).append(row.source)
        yield from wrap(f"{name}: {found.title}", indent="    ")
        for bare, used in by_source.items():
            cited = ", ".join(p for p in (bare.title, bare.edition, bare.where) if p)
            yield from wrap(f"- {cited} ({trust_said(used)})", "  ", "    ")


def trust_said(used: Sequence[Source]) -> str:
    """Say how far the rows of one source may be trusted; some may be more so than others."""
    copies = {s.copies for s in used if s.confidence is Confidence.CONFIRMED}
    said = [s.trust for s in used if s.confidence is not Confidence.CONFIRMED]
    if copies:
        few, many = min(copies), max(copies)
        one = next(s.trust for s in used if s.confidence is Confidence.CONFIRMED)
        said.insert(0, one if few == many else f"confirmed, {few} to {many} copies seen")
    return "; ".join(dict.fromkeys(said))


def _limits(finding: Finding) -> Iterator[str]:
    mark = Citations([finding]).mark
    rows = []
    for judged in finding.criteria:
        criterion = judged.criterion
        origin = criterion.origin
        rows.append((criterion.name, limit_said(judged), origin, mark(criterion.source)))
    yield from table(rows)


def limit_said(judged: Judged) -> str:
    """Say what a criterion asks: its limit, whether it is advised, and its caution level."""
    criterion = judged.criterion
    if criterion.sense == "cannot tell":
        return "cannot be told here"
    advised = ", advised" if criterion.advisory else ""
    if criterion.sense == "requires":
        return f"must hold{advised}"
    said = f"{criterion.sense} {_level(criterion, criterion.limit)}{advised}"
    if criterion.caution_limit is None:
        return said
    return f"{said}; marginal past {_level(criterion, criterion.caution_limit)}"


def _level(criterion: Criterion, level: float | None) -> str:
    toward = "up" if criterion.sense == "at least" else "down"
    return "" if level is None else show(level, criterion.unit, toward=toward)


def _never(calc: Calculation[Any], finding: Finding) -> list[Any]:
    return [gap for gap in finding.not_checked if gap.what in calc.not_checked]


def worked(calc: Calculation[Any], example: Example, files: Mapping[str, str]) -> Iterator[str]:
    """Yield the example: its command line, its files, and what it comes to with its working."""
    yield from ("", "Worked example", *command(calc.example))
    for name, content in files.items():
        yield from block(f"{name} (invented)", content.splitlines())
    yield ""
    if isinstance(example, str):
        yield from wrap(f"It was not worked here: {example}", "  ")
        return
    yield from headline(example)
    yield from evidence(example, Citations([example]).mark, working=True)
