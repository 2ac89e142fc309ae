"""A headless browser for the pages: what it measures, what it complains of, what it prints."""

from __future__ import annotations

import html
import json
import os
import re
import shutil
import subprocess
import tempfile
from pathlib import Path
from typing import Any

NAMES = ("chromium", "chromium-browser", "google-chrome")
CHROMIUM = next((found for name in NAMES if (found := shutil.which(name))), None)
AXE = Path(os.environ["WIRECALC_AXE"]) if os.environ.get("WIRECALC_AXE") else None
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
_SIZE = ("--window-size=1600,1000",)
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
_AUDIT = """<script>
addEventListener("load", async () => {
  const found = await axe.run(document, {
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"],
  });
  const said = document.createElement("pre");
  said.id = "said";
  said.textContent = JSON.stringify({
    passed: found.passes.length,
    wrong: found.violations.map(v => v.id + ": " + v.nodes.map(n => n.html).join(" | ")),
  });
  document.body.append(said);
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
    found: list[dict[str, Any]] = _said(_run(*_SIZE, "--dump-dom", wrapper.as_uri()).stdout)
    return found


def audit(page: str, folder: Path) -> dict[str, Any]:
    """Return how many rules of accessibility a page keeps, and where it breaks one (axe-core).

    The page lets no script run; the copy that is audited does.
    """
    assert AXE is not None
    path = folder / "audit.html"
    script = f"<script>{AXE.read_text(encoding='utf-8')}</script>{_AUDIT}"
    open_page = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page)
    path.write_text(open_page.replace("</body>", f"{script}</body>"), encoding="utf-8")
    dumped = _run(*_SIZE, "--virtual-time-budget=60000", "--dump-dom", path.as_uri()).stdout
    found: dict[str, Any] = _said(dumped)
    return found


def screenshot(path: Path, width: int, height: int) -> Path:
    """Take a picture of a page's first screen; return where the PNG is."""
    to = path.with_name(f"{path.stem}-{width}.png")
    _run(
        f"--window-size={width},{height}", "--hide-scrollbars", f"--screenshot={to}", path.as_uri()
    )
    return to


def _said(dumped: str) -> Any:
    said = re.search(r'<pre id="said">(.*?)</pre>', dumped, re.DOTALL)
    assert said is not None
    return json.loads(html.unescape(said[1]))


def _complaints(done: subprocess.CompletedProcess[str]) -> list[str]:
    """Return what the browser's console says of a page."""
    return [line for line in done.stderr.splitlines() if "CONSOLE" in line]


def print_pdf(path: Path) -> tuple[Path, list[str]]:
    """Print a page as the browser does by itself; return where the PDF is, and its complaints."""
    to = path.with_suffix(".pdf")
    done = _run(
        "--enable-logging=stderr", "--no-pdf-header-footer", f"--print-to-pdf={to}", path.as_uri()
    )
    return to, _complaints(done)
