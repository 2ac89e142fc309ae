"""The pages in a browser: on a phone, on a desk, on paper."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdf import PdfReader

from wirecalc.output.html import job_page

from . import browser
from .pages import EXAMPLES, evaluated, evil_job

LONG = "unbroken" * 40
pytestmark = pytest.mark.skipif(
    browser.CHROMIUM is None, reason="needs Chromium (Debian's package chromium)"
)


@pytest.mark.parametrize(
    "sheet", ["refrigerator", "washer", "shed-freezer", "pull-class", "dishwasher"]
)
def test_no_page_scrolls_sideways(sheet: str, tmp_path: Path) -> None:
    page = job_page(evaluated(EXAMPLES / f"{sheet}.toml"))
    widths = (320, 360, 1200)
    for width, found in zip(widths, browser.measure(page, tmp_path, *widths), strict=True):
        assert found["needed"] <= found["inner"] <= found["width"] == width
        assert found["small"] >= 11
        if width >= 360:  # verdict, number and next action on a phone's first screen
            assert found["box"] <= 640


def test_long_words_do_not_widen_a_page(tmp_path: Path) -> None:
    page = job_page(evil_job(LONG, chart=False))
    (found,) = browser.measure(page, tmp_path, 360)
    assert found["needed"] <= found["inner"] <= 360


def test_the_browser_check_sees_what_is_wrong(tmp_path: Path) -> None:
    wide = "<!DOCTYPE html><body><main><div style='width: 900px'>wide</div></main>"
    (found,) = browser.measure(wide, tmp_path, 360)
    assert found["needed"] >= 900
    bad = tmp_path / "bad.html"
    bad.write_text("<!DOCTYPE html><body><script>undefined_name()</script>", encoding="utf-8")
    assert browser.complaints(bad)


@pytest.mark.parametrize("sheet", ["refrigerator", "pull-class"])
def test_an_ordinary_job_prints_on_two_pages_without_complaint(sheet: str, tmp_path: Path) -> None:
    path = tmp_path / f"{sheet}.html"
    path.write_text(job_page(evaluated(EXAMPLES / f"{sheet}.toml")), encoding="utf-8")
    assert browser.complaints(path) == []
    reader = PdfReader(browser.print_pdf(path))
    assert len(reader.pages) <= 2
    printed = " ".join(" ".join(p.extract_text() for p in reader.pages).split())
    assert "Limits of this answer" in printed
    for check in evaluated(EXAMPLES / f"{sheet}.toml").checks:
        assert check.verdict is None or check.verdict.upper() in printed
