"""The two pictures of the README: `python -m docs.book.pictures` makes them anew.

Pixels and letters differ from machine to machine. So what a picture was made from is kept beside it
as a sum, the numbers of the chart and the text of the page, and a test compares that.
"""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path

from wirecalc.testing import run_command

DOCS = Path(__file__).parents[1]
PICTURES = DOCS / "pictures"
SUMS = PICTURES / "made-from.json"
CLASS = DOCS / "examples" / "class.csv"
CHART, PHONE = "class-chart.svg", "page-on-a-phone.png"
HIGH = 930  # of a page at the width of a phone, as far as its evidence
WORDS: dict[str, Sequence[str]] = {
    CHART: (
        *("pull-batch", "--wire", "18 AWG", "--terminal", "push-on", "--readings", str(CLASS)),
        *("--by", "learner", "--by", "tool"),
    ),
    PHONE: ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "20.3 lbf ±0.5 lbf"),
}


def sums() -> dict[str, str]:
    """Return the sum of what each picture is made from now."""
    with tempfile.TemporaryDirectory() as folder:
        chart = Path(folder) / "chart.csv"
        run_command(*WORDS[CHART], "--chart", str(chart))
        page = run_command(*WORDS[PHONE], "--format", "html").out
        made_from = {CHART: chart.read_text(encoding="utf-8"), PHONE: page}
    return {name: hashlib.sha256(text.encode()).hexdigest() for name, text in made_from.items()}


def make() -> None:
    """Draw both anew, and note what they were made from; raises OSError without a browser."""
    browser = shutil.which("chromium") or shutil.which("google-chrome")
    if browser is None:
        raise FileNotFoundError("the page is drawn by Chromium, and none is installed")
    run_command(*WORDS[CHART], "--chart", str(PICTURES / CHART))
    with tempfile.TemporaryDirectory() as folder:
        page, phone = Path(folder) / "page.html", Path(folder) / "phone.html"
        run_command(*WORDS[PHONE], "--format", "html", "--output", str(page))
        frame = f'<iframe src="page.html" style="border:0;width:390px;height:{HIGH}px"></iframe>'
        phone.write_text(f'<body style="margin:0">{frame}', encoding="utf-8")
        quiet = ("--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars")
        size, shot = f"--window-size=390,{HIGH}", f"--screenshot={PICTURES / PHONE}"
        subprocess.run(
            [browser, *quiet, size, shot, phone.as_uri()], check=True, capture_output=True
        )
    SUMS.write_text(json.dumps(sums(), indent=2) + "\n", encoding="utf-8")


if __name__ == "__main__":
    os.environ["WIRECALC_CONFIG"] = os.devnull  # no settings of whoever draws them
    make()
