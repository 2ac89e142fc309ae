"""A headless browser for the pages: what it measures, what it complains of, what it prints.

One process for all pages of a run, a tab each; it is told what to do by JSON through two pipes.
"""

from __future__ import annotations

import base64
import contextlib
import json
import os
import select
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
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
_COMPLAINTS = ("Runtime.exceptionThrown", "Runtime.consoleAPICalled", "Log.entryAdded")
_MEASURE = """(() => {
  const root = document.documentElement, box = document.querySelector(".box");
  return {
    width: innerWidth, inner: root.clientWidth, needed: root.scrollWidth,
    box: box ? box.getBoundingClientRect().bottom : null,
    small: Math.min(...[...document.querySelectorAll("main, main *:not(svg *)")]
      .map(e => parseFloat(getComputedStyle(e).fontSize))),
  };
})()"""
_AUDIT = """axe.run(document, {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"],
}).then(found => ({
  passed: found.passes.length,
  wrong: found.violations.map(v => v.id + ": " + v.nodes.map(n => n.html).join(" | ")),
}))"""


class Tab:
    """A page that is open; `complaints` is what the browser's console says of it."""

    def __init__(self, browser: Browser, session: str) -> None:
        self._browser, self._session = browser, session
        self.complaints: list[str] = []

    def call(self, method: str, **params: Any) -> Any:
        """Tell the browser to do something with this page, and return what it answers."""
        return self._browser.call(method, self._session, **params)

    def value(self, script: str) -> Any:
        """Return what a script comes to; the page itself lets none run."""
        done = self.call(
            "Runtime.evaluate", expression=script, returnByValue=True, awaitPromise=True
        )
        assert "exceptionDetails" not in done, done
        return done["result"].get("value")


class Browser:
    """A browser that runs until the block ends."""

    def __enter__(self) -> Browser:
        assert CHROMIUM is not None
        self._own = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
        told, self._to = os.pipe()
        self._from, says = os.pipe()
        command = (
            CHROMIUM,
            *_QUIET,
            "--remote-debugging-pipe",
            f"--user-data-dir={self._own.name}",
        )
        self._process = subprocess.Popen(  # it reads from 3 and writes to 4
            ["bash", "-c", f'exec 98<&{told} 99>&{says}; exec "$@" 3<&98 4>&99', "bash", *command],
            pass_fds=(told, says),
            stderr=subprocess.DEVNULL,
        )
        os.close(told)
        os.close(says)
        self._read, self._number = b"", 0
        self._events: list[dict[str, Any]] = []
        return self

    def __exit__(self, *_: object) -> None:
        self.call("Browser.close")
        self._process.wait(LONGEST)
        os.close(self._to)
        os.close(self._from)
        self._own.cleanup()

    def call(self, method: str, session: str = "", **params: Any) -> Any:
        """Tell the browser to do something, and return what it answers."""
        self._number += 1
        said: dict[str, Any] = {"id": self._number, "method": method, "params": params}
        content = json.dumps(said | ({"sessionId": session} if session else {})).encode() + b"\0"
        while content:
            content = content[os.write(self._to, content) :]
        while (answer := self._next()).get("id") != self._number:
            self._events.append(answer)
        assert "error" not in answer, answer
        return answer["result"]

    def _next(self) -> dict[str, Any]:
        """Return the next thing that the browser says."""
        while b"\0" not in self._read:
            assert select.select([self._from], [], [], LONGEST)[0], "the browser says nothing"
            more = os.read(self._from, 1 << 20)
            assert more, "the browser has ended"
            self._read += more
        said, _, self._read = self._read.partition(b"\0")
        answer: dict[str, Any] = json.loads(said)
        return answer

    @contextlib.contextmanager
    def page(self, path: Path, width: int = 1600, height: int = 1000) -> Iterator[Tab]:
        """Open a page in a window of a size, and wait until it is loaded."""
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        attached = self.call("Target.attachToTarget", targetId=target, flatten=True)
        tab = Tab(self, attached["sessionId"])
        for domain in ("Page", "Runtime", "Log"):
            tab.call(f"{domain}.enable")
        size = {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": False}
        tab.call("Emulation.setDeviceMetricsOverride", **size)
        self._events.clear()
        tab.call("Page.navigate", url=path.as_uri())
        while not any(e["method"] == "Page.loadEventFired" for e in self._events):
            self._events.append(self._next())
        tab.value("document.fonts.ready.then(() => null)")
        tab.complaints = [json.dumps(e) for e in self._events if e["method"] in _COMPLAINTS]
        yield tab
        self.call("Target.closeTarget", targetId=target)

    def measure(
        self, page: str, folder: Path, *widths: int, height: int = 740
    ) -> Iterator[dict[str, Any]]:
        """Yield widths, the end of the summary's box, and the smallest letters, in pixels."""
        path = folder / "measured.html"
        path.write_text(page, encoding="utf-8")
        for width in widths:
            with self.page(path, width, height) as tab:
                yield tab.value(_MEASURE)

    def audit(self, page: str, folder: Path) -> dict[str, Any]:
        """Return how many rules of accessibility a page keeps, and where it breaks one."""
        assert AXE is not None
        path = folder / "audit.html"
        path.write_text(page, encoding="utf-8")
        with self.page(path) as tab:
            tab.value(AXE.read_text(encoding="utf-8") + "; null")
            found: dict[str, Any] = tab.value(_AUDIT)
        return found

    def screenshot(self, path: Path, width: int, height: int) -> Path:
        """Take a picture of a page's first screen; return where the PNG is."""
        to = path.with_name(f"{path.stem}-{width}.png")
        with self.page(path, width, height) as tab:
            tab.call("Emulation.setScrollbarsHidden", hidden=True)
            to.write_bytes(base64.b64decode(tab.call("Page.captureScreenshot")["data"]))
        return to

    def print_pdf(self, path: Path) -> tuple[Path, list[str]]:
        """Print a page on its own paper; return where the PDF is, and its complaints."""
        to = path.with_suffix(".pdf")
        with self.page(path) as tab:
            how = {"preferCSSPageSize": True, "printBackground": True}
            to.write_bytes(base64.b64decode(tab.call("Page.printToPDF", **how)["data"]))
        return to, tab.complaints
