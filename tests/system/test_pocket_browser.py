"""The built file in a browser without a network, on a phone's screen."""

from __future__ import annotations

import contextlib
import http.server
import json
import threading
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from wirecalc.cli import main
from wirecalc.in_page.asked import Page

from .browser import AXE, CHROMIUM, Browser, Tab
from .pocket import NEEDS_RUNTIME, RUNTIME, answered

pytestmark = [
    NEEDS_RUNTIME,
    pytest.mark.skipif(CHROMIUM is None, reason="needs Chromium (Debian's package chromium)"),
]
LONGEST = 60  # seconds, on a machine that is busy
OFF = {"offline": True, "latency": 0, "downloadThroughput": 0, "uploadThroughput": 0}


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The file, built once."""
    to = tmp_path_factory.mktemp("pocket") / "wirecalc.html"
    assert main(["pocket", "--runtime", str(RUNTIME), "--output", str(to)]) == 0
    return to


@pytest.fixture(scope="module")
def tab(built: Path) -> Iterator[Tab]:
    """The file, opened from disk with the network off."""
    with Browser() as running, running.page(built, 390, 800) as opened:
        opened.call("Network.enable")
        opened.call("Network.emulateNetworkConditions", **OFF)
        yield opened


@contextlib.contextmanager
def reached() -> Iterator[tuple[str, list[str]]]:
    """Listen on this machine; yield the address, and what was asked of it."""
    seen: list[str] = []

    class Answer(http.server.BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            seen.append(self.path)
            self.send_response(200)
            self.send_header("Access-Control-Allow-Origin", "*")
            self.end_headers()

        def do_POST(self) -> None:
            self.do_GET()

        def log_message(self, *_: object) -> None: ...

    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), Answer) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}", seen
        server.shutdown()


def until(tab: Tab, script: str) -> Any:
    """Wait until a script comes to something true, and return that."""
    ends = time.monotonic() + LONGEST
    while time.monotonic() < ends:
        if found := tab.value(script):
            return found
        time.sleep(0.05)
    raise AssertionError(f"{script}: {tab.value('main.innerText')}")


def press(tab: Tab, text: str) -> None:
    """Press the button that begins with a text."""
    found = "[...document.querySelectorAll('button')].find"
    until(tab, f"!!{found}((b) => b.textContent.startsWith({json.dumps(text)}) && !b.disabled)")
    tab.value(f"{found}((b) => b.textContent.startsWith({json.dumps(text)})).click()")


def put(tab: Tab, name: str, text: str) -> None:
    """Type into a field, as a hand does."""
    tab.value(f"document.getElementById({json.dumps(name)}).focus()")
    tab.call("Input.insertText", text=text)


def shown(tab: Tab) -> str:
    """Return what is shown."""
    return str(tab.value("main.innerText"))


def result(tab: Tab) -> str:
    """Return the text of the page that came out."""
    until(tab, "!!document.querySelector('iframe')?.contentDocument?.querySelector('main')")
    return str(tab.value("document.querySelector('iframe').contentDocument.body.innerText"))


def test_words_lead_to_a_form_and_a_pass_is_read_after_its_stops(tab: Tab) -> None:
    assert tab.complaints == []
    put(tab, "words", "voltage drop")
    press(tab, "How many volts does the run take")
    for name, typed in (("current", "1.6"), ("nameplate_voltage", "115"), ("run_length", "60")):
        put(tab, f"field-{name}", typed)
    put(tab, "field-building_wire", "14 AWG")
    press(tab, "check it")
    until(tab, "document.querySelector('h1').textContent === 'Read this first'")
    assert shown(tab).count("STOP") >= 3
    assert "PASS" not in shown(tab)
    press(tab, "I have read it")
    assert "PASS" in result(tab)
    assert "0.5242 %" in result(tab)  # 1.6 A in 120 ft of 3.14 ohm/kft is 0.603 V of 115 V
    assert "no house rules" in shown(tab)
    press(tab, "change an answer")
    assert tab.value("document.getElementById('field-current').value") == "1.6"


def test_what_is_refused_stands_under_its_field(tab: Tab) -> None:
    tab.value("form(named('drop'))")
    put(tab, "field-current", "1.6 Q")
    press(tab, "check it")
    said = until(tab, "document.getElementById('field-current-problem').textContent")
    assert said == "unit 'Q' is not known here; write it in A, mA, uA"
    assert "needed" in tab.value(
        "document.getElementById('field-nameplate_voltage-problem').innerText"
    )


@pytest.mark.parametrize(
    ("verdict", "heading"),
    [("pass", "Read this first"), ("marginal", "Read this first"), ("fail", "a"), (None, "a")],
)
def test_what_may_go_on_is_read_after_its_stops(
    tab: Tab, verdict: str | None, heading: str
) -> None:
    done = json.dumps({"finding": {"verdict": verdict}, "stops": ["hot"], "page": "<p>b</p>"})
    assert tab.value(f"showResult('a', {done}); document.querySelector('h1').innerText") == heading


def test_nothing_can_be_fetched_and_no_text_becomes_html(tab: Tab) -> None:
    with reached() as (address, seen):
        tab.call("Network.emulateNetworkConditions", **{**OFF, "offline": False})
        assert urllib.request.urlopen(f"{address}/by-hand").status == 200
        tab.value(f"""(async () => {{
          const image = new Image();
          const asked = new Promise((done) => (image.onload = image.onerror = done));
          image.src = "{address}/image";
          navigator.sendBeacon("{address}/beacon", "a");
          document.body.append(el("form", {{ method: "post", action: "{address}/form" }}));
          document.forms[document.forms.length - 1].submit();
          await Promise.allSettled([fetch("{address}/fetch"), asked]);
        }})()""")
        tab.call("Network.emulateNetworkConditions", **OFF)
        assert seen == ["/by-hand"]
    tab.value("""show('a', el('p', {}, '<img src=x onerror="window.evil = 1">'))""")
    assert tab.value("main.querySelector('img') === null && window.evil === undefined")


def test_no_screen_scrolls_sideways_and_each_keeps_the_rules_of_accessibility(tab: Tab) -> None:
    screens = ["start()", "form(named('drop'))", "form(named('trace'))", "about()", "pullClass()"]
    for screen in screens:
        tab.value(f"{screen}; null")
        for width in (320, 390):
            size = {"width": width, "height": 800, "deviceScaleFactor": 1, "mobile": False}
            tab.call("Emulation.setDeviceMetricsOverride", **size)
            assert tab.value("document.documentElement.scrollWidth") <= width, screen
        if AXE is not None:
            tab.value(AXE.read_text(encoding="utf-8") + "; null")
            wrong = "axe.run().then((f) => f.violations.map((v) => v.id + v.nodes[0].html))"
            assert tab.value(wrong) == [], screen


def test_a_pull_is_shown_beside_its_limit(tab: Tab) -> None:
    tab.value("pullClass()")
    put(tab, "field-wire", "18 AWG")
    tab.value("document.getElementById('field-terminal').value = 'ring'")
    for force in ("24", "9"):
        put(tab, "field-force", force)
        press(tab, "put the pull down")
        until(tab, f"main.innerText.includes('{force} lbf: ')")
    assert tab.value("main.querySelectorAll('svg circle').length") == 1
    assert tab.value("main.querySelectorAll('svg path').length") == 1
    assert tab.value("kept.get('pulls').length") == 2


def test_a_job_is_kept_taken_up_again_and_gives_the_report_of_the_command_line(tab: Tab) -> None:
    tab.value("kept.erase('job'); start()")
    press(tab, "begin a job")
    press(tab, "bench")
    until(tab, "main.innerText.includes('What is wrong')")
    put(tab, "typed", "a sample crimp")
    press(tab, "go on")
    until(tab, "main.innerText.includes('On which day')")
    tab.value("location.reload()")  # left in the middle
    press(tab, "go on with the job")
    until(tab, "main.innerText.includes('On which day')")
    press(tab, "leave empty")
    until(tab, "!main.innerText.includes('On which day')")
    _pull_on_the_bench(tab)
    sheet = str(tab.value("kept.get('job').sheet"))
    own = answered(Page(), {"do": "report", "sheet": sheet})
    assert own["job"]["verdict"] == "pass"
    done = tab.value("python.do('job', { step: 'report' }).then((done) => done.job)")
    assert done == own["job"]
    taken = f"openJob({json.dumps(sheet)}).then(() => null)"
    tab.value(taken)
    again = tab.value("python.do('job', { step: 'report' }).then((done) => done.job)")
    assert again == own["job"]


# what a hand answers to a question on the screen; the first that is there is done
_ANSWERS = """(() => {
  const all = [...main.querySelectorAll('button')];
  const button = (text) => all.find((b) => b.textContent.startsWith(text));
  const typed = {
    wire: '18 AWG stranded', force: '24', terminal: 'ring', pull_standard: 'ul-486a' };
  const box = main.querySelector('input[type=checkbox][value=crimp]');
  if (box) { box.checked = true; button('go on').click(); return 'crimp'; }
  if (document.documentElement.scrollWidth > innerWidth) throw Error(main.innerText);
  const word = Object.values(typed).map((t) => all.find((b) => b.textContent === t)).find(Boolean);
  if (word) { word.click(); return word.textContent; }
  const entry = main.querySelector('.field input, .field select');
  const name = entry?.id.replace('field-', '');
  if (entry && name in typed) { entry.value = typed[name]; button('go on').click(); return name; }
  const away = button('leave') ?? main.querySelector('form + button') ?? button('go on');
  away.click();
  return away.textContent;
})()"""


def _pull_on_the_bench(tab: Tab) -> None:
    """Answer what a job on the bench asks, with a crimp that was pulled."""
    done = []
    for _ in range(40):
        heading = tab.value("document.querySelector('h1').textContent")
        if heading in ("The job", "Read this first"):
            assert {"crimp", "wire", "force", "ring"} <= set(done)
            return
        before = tab.value("main.innerHTML")
        done.append(tab.value(_ANSWERS))
        until(tab, f"main.innerHTML !== {json.dumps(before)}")
    raise AssertionError(shown(tab))
