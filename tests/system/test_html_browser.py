"""The pages in a browser: on a phone, on a desk, on paper."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from matplotlib.image import imread
from pypdf import PdfReader

from wirecalc.jobs.checks import OPTION
from wirecalc.output.html import job_page
from wirecalc.said.verdicts import Verdict

from .browser import AXE, CHROMIUM, Browser
from .pages import EXAMPLES, SHEETS, evaluated, evil_job

LONG = "unbroken" * 40
MANY = 10  # checks, from which on a job prints on three pages
WHOLE = 20  # checks, from which on a repair from complaint to hand-over prints on five
pytestmark = pytest.mark.skipif(
    CHROMIUM is None, reason="needs Chromium (Debian's package chromium)"
)


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """One browser for all pages."""
    with Browser() as running:
        yield running


@pytest.mark.parametrize("sheet", [s.stem for s in SHEETS])
def test_no_page_scrolls_sideways(browser: Browser, sheet: str, tmp_path: Path) -> None:
    page = job_page(evaluated(EXAMPLES / f"{sheet}.toml"))
    widths = (320, 360, 1200)
    for width, found in zip(widths, browser.measure(page, tmp_path, *widths), strict=True):
        assert found["needed"] <= found["inner"] <= found["width"] == width
        assert found["small"] >= 11
        if width >= 360:  # verdict, number and next action on a phone's first screen
            assert found["box"] <= 640


def test_long_words_do_not_widen_a_page(browser: Browser, tmp_path: Path) -> None:
    page = job_page(evil_job(LONG, chart=False))
    (found,) = browser.measure(page, tmp_path, 360)
    assert found["needed"] <= found["inner"] <= 360


def test_the_browser_check_sees_what_is_wrong(browser: Browser, tmp_path: Path) -> None:
    wide = "<!DOCTYPE html><body><main><div style='width: 900px'>wide</div></main>"
    (found,) = browser.measure(wide, tmp_path, 360)
    assert found["needed"] >= 900
    bad = tmp_path / "bad.html"
    bad.write_text("<!DOCTYPE html><body><script>undefined_name()</script>", encoding="utf-8")
    assert browser.print_pdf(bad)[1]


@pytest.mark.parametrize(
    ("paper", "sheet"),
    [("letter", s.stem) for s in SHEETS]  # the shorter paper; whole repairs on the other as one
    + [("A4", s.stem) for s in SHEETS if s.stem[:6] != "repair" or s.stem[-3:] == "tor"],
)
def test_a_job_prints_on_few_pages_without_complaint(
    browser: Browser, paper: str, sheet: str, tmp_path: Path
) -> None:
    job = evaluated(EXAMPLES / f"{sheet}.toml")
    path = tmp_path / f"{sheet}.html"
    sized = f"<style>@page {{ size: {paper} }}</style></head>"
    path.write_text(job_page(job).replace("</head>", sized), encoding="utf-8")
    pdf, complaints = browser.print_pdf(path)
    assert complaints == []
    reader = PdfReader(pdf)
    most = 5 if len(job.checks) >= WHOLE else 3 if len(job.checks) >= MANY else 2
    assert len(reader.pages) <= most
    printed = " ".join(" ".join(p.extract_text() for p in reader.pages).split())
    assert "Limits of this answer" in printed
    for check in job.checks:
        assert check.title in printed
        assert check.verdict is None or check.verdict.upper() in printed
        if check.finding and check.stage != OPTION:  # an option has its line alone
            assert all(c.criterion.name in printed for c in check.finding.criteria)
            assert all(f.figure.name in printed for f in check.finding.figures) or (
                check.verdict is Verdict.PASS
            )


@pytest.mark.skipif(AXE is None, reason="needs axe-core: WIRECALC_AXE names its script")
@pytest.mark.parametrize("sheet", ["refrigerator", "washer", "oven", "pull-class"])
def test_a_page_breaks_no_rule_of_accessibility(
    browser: Browser, sheet: str, tmp_path: Path
) -> None:
    found = browser.audit(job_page(evaluated(EXAMPLES / f"{sheet}.toml")), tmp_path)
    assert found["wrong"] == []
    assert found["passed"] >= 20


@pytest.mark.skipif(AXE is None, reason="needs axe-core: WIRECALC_AXE names its script")
def test_the_audit_sees_what_is_wrong(browser: Browser, tmp_path: Path) -> None:
    page = "<!DOCTYPE html><html><body><p style='color: #ddd'>pale</p><img src=''></body></html>"
    wrong = " ".join(browser.audit(page, tmp_path)["wrong"])
    assert "color-contrast" in wrong
    assert "image-alt" in wrong


@pytest.mark.parametrize(("width", "height"), [(500, 800), (1200, 900)])
def test_the_first_screen_is_a_picture_with_dark_words_on_light_paper(
    browser: Browser, width: int, height: int, tmp_path: Path
) -> None:
    path = tmp_path / "page.html"
    path.write_text(job_page(evaluated(EXAMPLES / "refrigerator.toml")), encoding="utf-8")
    grey = imread(browser.screenshot(path, width, height))[:, :, :3].mean(axis=2)
    assert grey.shape == (height, width)
    assert (grey > 0.9).mean() > 0.5
    assert 0.005 < (grey < 0.4).mean() < 0.3
