"""What the tests of pages share: reading a page, and jobs made to be written as one."""

from __future__ import annotations

from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib

from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.checks import AS_LEFT, JobCheck, NotTested
from wirecalc.jobs.job import Job
from wirecalc.plugging import host
from wirecalc.published.sources import Source
from wirecalc.said import charts, items
from wirecalc.said.criteria import Criterion
from wirecalc.said.findings import BandFigure, Finding, InputRecord, Judged, collect_sources

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
SHEETS = sorted(EXAMPLES.glob("*.toml"))
CATALOGUE = host.build(bundled_only=True)


def evaluated(sheet: Path) -> Job:
    return jobsheet.evaluate(jobsheet.read(sheet), CATALOGUE)


def parsed(page: str) -> Element:
    """Read a page as a browser would; a slip in its nesting is an error."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    root: Element = parser.parse(page)
    return root


def text(element: Element) -> str:
    return " ".join("".join(element.itertext()).split())


def of_class(root: Element, tag: str, name: str) -> list[Element]:
    return [e for e in root.iter(tag) if name in e.get("class", "").split()]


def evil_job(said: str, *, chart: bool = True) -> Job:
    """A job in which every text is `said`."""
    source = Source(said, said, said, said)
    criterion = Criterion(said, "requires", source=source, says=said, action=said)
    drawn = charts.Chart(
        said, said, charts.Axis(said), charts.Axis(said), (charts.Points(said, [1, 2], [3, 4]),)
    )
    finding = Finding(
        said, said, said,
        inputs=(InputRecord(said, said, said, said, None, None, "sheet", (said,)),),
        answers=(items.Answer(said, said, (said,), (said,)),),
        figures=(BandFigure(items.Figure(said, 1.0, said, source, lambda: said)),),
        criteria=(Judged(criterion, said, criterion.verdict, said, said),),
        listings=(items.Listing(said, (said,) * 4, ((said, 1.0, None, said),)),),
        charts=(lambda: drawn,) if chart else (),
        cautions=(items.Caution(said, said, said, "stop", said),),
        not_checked=(items.NotChecked(said, said), items.NotChecked(said, f"not given ({said})")),
        sources=collect_sources([source]),
    )  # fmt: skip
    checks = (
        JobCheck(said, AS_LEFT, said, finding, note=said),
        JobCheck(said, AS_LEFT, said, None, said, said),
    )
    about = dict.fromkeys(("work", "machine", "circuit", said), said)
    return Job(said, about, checks, (NotTested(said, True, said),))
