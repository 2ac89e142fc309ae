"""The technician's part of a report: each check with its criteria, figures and inputs.

Sources and cautions are gathered over all checks, so that each stands once in a report.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from ..base.errors import PluginDefect
from ..base.rounding import show, show_band
from ..jobs.checks import OPTION, JobCheck
from ..published.sources import Source
from ..said.charts import ChartMaker
from ..said.findings import BandFigure, Finding, InputRecord, Judged
from ..said.items import Caution, Listing, NotChecked
from ..said.verdicts import Verdict
from ..typed.kinds import TAKEN_AS_EXACT
from .citations import Citations
from .html_building import Element, Inside, badge, el, items, pairs, picture, section, table, wide
from .inputs import given
from .layout import begun

_NOT_GIVEN = "not given"


class ReportGaps:
    """What the checks of a report did not check; where two leave out the same, one says it."""

    def __init__(self) -> None:
        self._first: dict[tuple[str, ...], tuple[str, str]] = {}

    def of(self, check: JobCheck, finding: Finding, key: str) -> Element | None:
        """Return the gaps of one check; a later check points to it by `key`."""
        found = finding.not_checked
        missing = [n for n in found if n.why.startswith(_NOT_GIVEN)]
        said = tuple(f"{n.what}{': ' + n.why if n.why else ''}" for n in found if n not in missing)
        rows: list[tuple[str, Inside]] = []
        if said:
            title = f"{check.title}, {check.stage}"
            first, name = self._first.get(said, (key, title))
            if check.stage != OPTION:  # paper has no options, so nothing points to one
                self._first.setdefault(said, (key, title))
            same = el("span", "the same as for ", el("a", name, href=f"#{first}"))
            rows.append(("Not checked", items(said, "run") if first == key else same))
        if missing:
            rows.append(("Not given", items(map(_missing, missing), "run")))
        return pairs(rows, "gaps")


def cited(sources: Citations, source: Source | None) -> Element | None:
    """Return the number of a source, as a link to where it stands."""
    mark = sources.mark(source)
    return el("a", mark, href=f"#source-{mark.strip('[]')}", class_="mark") if mark else None


def sources_section(sources: Citations) -> Element | None:
    """Return the list of sources."""
    rows = [el("li", text, id=f"source-{n}") for n, text in sources.listed]
    return section("Sources", el("ol", *rows), name="sources") if rows else None


def check_section(
    check: JobCheck,
    number: int,
    sources: Citations,
    gaps: ReportGaps,
    *,
    working: bool,
    titled: bool = True,
) -> Element:
    """Return one check with all that was given, worked out and judged."""
    key = f"check-{number}"
    head: list[Inside] = []
    if titled:
        verdict = badge(check.verdict, "DEFECT" if check.defect else "NO VERDICT")
        step = f"{check.step.capitalize()}: " if check.step else ""
        head = [el("h3", f"{step}{check.title}, {check.stage} ", verdict, id=key)]
    if check.note:
        head.append(el("p", check.note, class_="note"))
    said = (("Tool", check.tool), ("Part", check.part), ("Removed", check.removed))
    made = [(k, v) for k, v in said if v]
    head.append(pairs(made, "made"))
    if check.finding is None:
        head.append(el("p", check.defect))
    else:
        if titled:  # one finding alone has it in its summary
            head.append(_next(check.finding))
        head += _body(check.finding, key, sources, working)
        head.append(gaps.of(check, check.finding, key))
    name = f"check {_on_paper(check)}".strip() if titled else "check"
    return el("section", *head, class_=name, aria_labelledby=key if titled else "")


def _on_paper(check: JobCheck) -> str:
    """Return how much of a check paper has: an option nothing more than its line above."""
    if check.stage == OPTION:
        return "option"
    bare = check.finding is None or not check.finding.criteria
    return "short" if check.verdict is Verdict.PASS and not bare else ""


def _next(finding: Finding) -> Element | None:
    decided = finding.decided_by
    if decided is None or not decided.action or decided.verdict is Verdict.PASS:
        return None
    return pairs([("Next", decided.action)], "next")


def _body(finding: Finding, key: str, sources: Citations, working: bool) -> Iterator[Inside]:
    yield table(
        "Checked", ("Criterion", "Verdict", "Reading and limit", "Source"),
        [_criterion(c, sources) for c in finding.criteria], "criteria",
    )  # fmt: skip
    yield pairs(_answers(finding), "answers")
    yield el("div", table(
        "Given", ("Input", "Reading", "Over the meter's error, or assumed"),
        [_given(i) for i in finding.inputs], "given runs",
    ), _figures(finding, sources, working), class_="beside")  # fmt: skip
    for listing in finding.listings:
        yield _listing(listing)
    for number, build in enumerate(finding.charts, start=1):
        yield _picture(build, f"{key}-{number}")


def _picture(build: ChartMaker, key: str) -> Element:
    """Return a chart; one that its plugin cannot build takes neither page nor verdict along."""
    try:
        chart = build()
    except PluginDefect as error:
        return el("p", f"No picture: {error}", class_="note")
    return picture(chart, key)


def _criterion(judged: Judged, sources: Citations) -> Sequence[Inside]:
    house = "house rule, " if judged.criterion.origin == "house" else ""
    mark = cited(sources, judged.criterion.source)
    return house + judged.criterion.name, badge(judged.verdict), judged.reason, mark


def _figures(finding: Finding, sources: Citations, working: bool) -> Element | None:
    rows = [
        (f.figure.name, _value(f, working), cited(sources, f.figure.source))
        for f in finding.figures
    ]
    return table("Worked out", ("Figure", "Value", "Source"), rows, "figures runs")


def _value(banded: BandFigure, working: bool) -> Inside:
    figure = banded.figure
    text = show(figure.value, figure.unit, toward=figure.toward)
    if figure.also:
        text += f" ({', '.join(show(v, u, toward=figure.toward) for v, u in figure.also)})"
    if banded.low is not None and banded.high is not None:
        text += f", {show_band(banded.low, banded.high)}"
    if working and figure.working is not None:
        of_centre = "at the centre: " if banded.low is not None else ""
        return el("span", text, el("br"), of_centre + figure.working())
    return text


def _answers(finding: Finding) -> Iterator[tuple[str, str]]:
    for answer in finding.answers:
        said = [answer.text]
        said += [f"for: {'; '.join(answer.evidence_for)}"] if answer.evidence_for else []
        said += (
            [f"against: {'; '.join(answer.evidence_against)}"] if answer.evidence_against else []
        )
        yield begun(answer.name), ". ".join(said)


def _given(record: InputRecord) -> tuple[str, str, Inside]:
    typed, said = given(record)
    exact = said == TAKEN_AS_EXACT  # on paper said once for all, below
    return _plain(record.name), typed, el("span", said, class_="gloss") if exact else said


def _plain(name: str) -> str:
    """Return the name of an input as words; between digits stands a dash, as in 1-2."""
    return re.sub(r"(?<=\d)_(?=\d)", "-", name).replace("_", " ")


def _listing(listing: Listing) -> Element | None:
    rows = [tuple("" if c is None else str(c) for c in row) for row in listing.rows]
    made = table(listing.title, listing.columns, rows, "listing")
    return wide(made, listing.title) if made is not None and len(listing.columns) > 3 else made


def _missing(gap: NotChecked) -> Element:
    what = el("span", f" {gap.why.removeprefix(_NOT_GIVEN).strip()}", class_="gloss")
    return el("span", _plain(gap.what), what)


def gathered(checks: Iterable[JobCheck]) -> list[Caution]:
    """Return the cautions of all checks, each once, those that only note something last."""
    once: dict[str, Caution] = {}
    for check in checks:
        for caution in check.finding.cautions if check.finding else ():
            once.setdefault(caution.key, caution)
    return sorted(once.values(), key=lambda c: ("stop", "caution", "note").index(c.severity))


def caution_items(found: Iterable[Caution], name: str = "") -> Element | None:
    """Return cautions as a list, each with when it applies, what it defers to and its source."""
    return items((_caution(c) for c in found), name)


def _caution(caution: Caution) -> Element:
    when = f"{caution.when}: " if caution.when not in ("", "always") else ""
    backing = f" ({caution.backing})" if caution.backing else ""
    stop = el("strong", "STOP") if caution.severity == "stop" else None
    lead = " " if stop is not None else ""
    start = when[:1].upper() + when[1:]
    return el("span", stop, lead, el("em", start) if start else None, f"{caution.text}{backing}")
