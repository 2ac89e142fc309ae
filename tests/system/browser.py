"""A headless browser for the pages: what it measures, what it complains of, what it prints."""

from __future__ import annotations

import html
import json
import re
import shutil
import subprocess
import tempfile
from pathlib import Path
from typing import Any

NAMES = ("chromium", "chromium-browser", "google-chrome")
CHROMIUM = next((found for name in NAMES if (found := shutil.which(name))), None)
LONGEST = 90  # seconds
_QUIET = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-dev-shm-usage",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
_MEASURE = """<script>
addEventListener("load", () => {
  document.getElementById("said").textContent = JSON.stringify(
    [...document.querySelectorAll("iframe")].map(frame => {
      const page = frame.contentDocument, root = page.documentElement;
      const box = page.querySelector(".box");
      return {
        width: frame.clientWidth, inner: root.clientWidth, needed: root.scrollWidth,
        box: box ? box.getBoundingClientRect().bottom : null,
        small: Math.min(...[...page.querySelectorAll("main, main *:not(svg *)")]
          .map(e => parseFloat(getComputedStyle(e).fontSize))),
      };
    }));
});
</script>"""


def _run(*options: str) -> subprocess.CompletedProcess[str]:
    assert CHROMIUM is not None
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as own:
        done = subprocess.run(
            [CHROMIUM, *_QUIET, f"--user-data-dir={own}", *options],
            capture_output=True,
            encoding="utf-8",
            timeout=LONGEST,
            check=False,
        )
    assert done.returncode == 0, done.stderr
    return done


def measure(page: str, folder: Path, *widths: int, height: int = 740) -> list[dict[str, Any]]:
    """Return widths, the end of the summary's box, and the smallest letters, in pixels."""
    frames = "".join(
        f'<iframe width="{width}" height="{height}" style="border: 0" '
        f'srcdoc="{html.escape(page)}"></iframe>'
        for width in widths
    )
    wrapper = folder / "frames.html"
    wrapper.write_text(
        f'<!DOCTYPE html><body><pre id="said"></pre>{frames}{_MEASURE}', encoding="utf-8"
    )
    dumped = _run("--window-size=1600,1000", "--dump-dom", wrapper.as_uri()).stdout
    said = re.search(r'<pre id="said">(.*?)</pre>', dumped, re.DOTALL)
    assert said is not None
    found: list[dict[str, Any]] = json.loads(html.unescape(said[1]))
    return found


def complaints(path: Path) -> list[str]:
    """Return what the browser's console says of a page."""
    done = _run("--enable-logging=stderr", "--dump-dom", path.as_uri())
    return [line for line in done.stderr.splitlines() if "CONSOLE" in line]


def print_pdf(path: Path) -> Path:
    """Print a page as the browser prints it by itself; return where the PDF is."""
    to = path.with_suffix(".pdf")
    _run("--no-pdf-header-footer", f"--print-to-pdf={to}", path.as_uri())
    return to
