"""Plain text for a terminal: the verdict and what to do first, then the rest."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from ..base.rounding import show, show_band
from ..published.sources import Source
from ..said.findings import BandFigure, Finding
from ..said.items import GRAVITY, Caution, NotChecked
from ..said.verdicts import Verdict
from .citations import Citations
from .inputs import given
from .layout import begun, block, table, wrap

CENTRE = "(where low and high are shown, the arithmetic is that of the centre)"
_SIGNS = (" x ", " / ", " + ", " - ")  # of arithmetic; a working without any is in words

Mark = Callable[[Source | None], str]


def finding_text(finding: Finding, question: str, *, working: bool = False) -> str:
    """Return a finding as text: the first lines hold verdict, deciding number and next action."""
    sources = Citations([finding])
    parts = [
        *headline(finding),
        "",
        *wrap(f"{finding.calculation}: {question}"),
        *evidence(finding, sources.mark, working=working),
        *block("Not checked", not_checked_lines(finding.not_checked)),
        *sources_block(sources),
        *house_block(finding.house_rules),
        *block("Take care", caution_lines(finding.cautions)),
    ]
    return "\n".join(parts)


def short_text(finding: Finding) -> str:
    """Return the verdict, the number that decided it and what to do next."""
    return "\n".join(_verdict(finding))


def word(verdict: Verdict | None) -> str:
    """Return a verdict as it is printed."""
    return verdict.upper() if verdict else "NO VERDICT"


def headline(finding: Finding, mark: Mark | None = None) -> Iterator[str]:
    """Yield the first lines: verdict, deciding number, next action, gravest caution, answers.

    The source of the number stands below it, or where `mark` is given by its number behind it.
    """
    if finding.decided_by is None:  # figures alone: what was asked for stands first
        yield from _short_answers(finding)
        yield from _verdict(finding, mark)
        return
    yield from _verdict(finding, mark)
    yield from gravest(finding.cautions)
    yield from _short_answers(finding)


def _verdict(finding: Finding, mark: Mark | None = None) -> Iterator[str]:
    decided = finding.decided_by
    if decided is None:
        yield "NO VERDICT  figures only"
        return
    source = decided.criterion.source
    behind = f" {mark(source)}".rstrip() if mark else ""
    yield from wrap(f"{word(finding.verdict)}  {decided.because}{behind}", indent=" " * 6)
    if source is not None and not mark:
        yield from wrap(source.cite(), "      ")
    if decided.action and decided.verdict is not Verdict.PASS:
        yield from wrap("Next  " + decided.action, indent=" " * 6)
    yield from wrap(
        f"Would pass  {finding.would_pass}" if finding.would_pass else "", indent=" " * 6
    )
    if decided.verdict is Verdict.PASS and finding.exact:
        yield from wrap(f"Exact {exact(finding.exact, finding.holds)}", indent=" " * 6)


def exact(names: Sequence[str], holds: str = "") -> str:
    """Say that readings were taken as exact, and up to which error a pass on them holds."""
    readings = ", ".join(n.replace("_", " ") for n in names)
    behind = f"; {holds}" if holds else ""
    return f"taken as exact, with no meter error given: {readings}{behind}"


def gravest(cautions: Iterable[Caution]) -> Iterator[str]:
    """Yield the gravest of some cautions; nothing where there are only notes."""
    first = min(cautions, key=lambda c: GRAVITY.index(c.severity), default=None)
    if first is not None and first.severity != "note":
        stop = "STOP: " if first.severity == "stop" else ""
        yield from wrap(f"Care  {stop}{_when(first)}{first.text}", indent=" " * 6)


def _short_answers(finding: Finding) -> Iterator[str]:
    for answer in finding.answers:
        yield from wrap(f"{begun(answer.name)}: {answer.text}", indent=" " * 6)


def sources_block(sources: Citations) -> list[str]:
    """Return the block of the sources, each with its number."""
    cited = [wrap(f"[{number}] {text}", indent="    ") for number, text in sources.listed]
    return block("Sources", (line for lines in cited for line in lines))


def house_block(rules: Sequence[str]) -> list[str]:
    """Return the block of whose house rules were in force; nothing where none were."""
    return block("House rules", wrap(", ".join(rules)))


def evidence(finding: Finding, mark: Mark, *, working: bool) -> Iterator[str]:
    """Yield the blocks of what was given, worked out and checked, and the listings."""
    yield from block("Given", table([(i.name, *given(i)) for i in finding.inputs]))
    yield from _answers(finding)
    yield from block("Worked out", table(_figures(finding, mark)))
    if working:
        yield from block("Working", _working(finding))
    yield from block("Checked", table(_checked(finding, mark)))
    for listing in finding.listings:
        cells = [tuple("" if c is None else str(c) for c in row) for row in listing.rows]
        yield from block(listing.title, table([listing.columns, *cells], head=True))


def _figures(finding: Finding, mark: Mark) -> list[tuple[str, str, str]]:
    return [(f.figure.name, _figure(f), mark(f.figure.source)) for f in finding.figures]


def _answers(finding: Finding) -> Iterator[str]:
    for answer in finding.answers:
        if not (answer.evidence_for or answer.evidence_against):
            continue
        yield from block(begun(answer.name), wrap(answer.text))
        yield from wrap("; ".join(answer.evidence_for), "    for: ")
        yield from wrap("; ".join(answer.evidence_against), "    against: ")


def _working(finding: Finding) -> Iterator[str]:
    """Yield the arithmetic of each figure and what it comes to; with a band, of its centre."""
    banded = False
    for figure, low, _ in finding.figures:
        if figure.working is None:
            continue
        banded = banded or low is not None
        sum_, note, more = figure.working().partition(";")
        if any(sign in sum_ for sign in _SIGNS):
            sum_ += f" = {show(figure.value, figure.unit, toward=figure.toward)}"
        yield from wrap(f"{figure.name}: {sum_}{note}{more}", indent="  ")
    if banded:
        yield from wrap(CENTRE)


def _checked(finding: Finding, mark: Mark) -> list[tuple[str, str, str]]:
    return [
        (
            word(c.verdict),
            _house(c.criterion.origin) + c.because,
            mark(c.criterion.source),
        )
        for c in finding.criteria
    ]


def _house(origin: str) -> str:
    return "house rule, " if origin == "house" else ""


def _figure(banded: BandFigure) -> str:
    figure = banded.figure
    text = show(figure.value, figure.unit, toward=figure.toward)
    if figure.also:
        text += f" ({', '.join(show(v, u, toward=figure.toward) for v, u in figure.also)})"
    if banded.low is not None and banded.high is not None:
        text += f", {show_band(banded.low, banded.high)}"
    return text


def caution_lines(cautions: Iterable[Caution]) -> Iterator[str]:
    """Yield cautions, each with when it applies, what it defers to and where it comes from."""
    for caution in cautions:
        stop = "STOP: " if caution.severity == "stop" else ""
        backing = f" ({caution.backing})" if caution.backing else ""
        yield from wrap(f"- {stop}{_when(caution)}{caution.text}{backing}", indent="  ")


def _when(caution: Caution) -> str:
    return f"{caution.when}: " if caution.when not in ("", "always") else ""


def not_checked_lines(found: Sequence[NotChecked]) -> Iterator[str]:
    """Yield the lines of what was not checked, and why."""
    for item in found:
        yield from wrap(f"- {item.what}{': ' + item.why if item.why else ''}", indent="  ")
