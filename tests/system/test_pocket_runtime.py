"""The Python of a browser gives the findings that this one gives, a shop's own included."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

from wirecalc.in_page.asked import Page
from wirecalc.plugging.settings import Settings, read
from wirecalc.pocket import building, bytecode, runtime, shop
from wirecalc.pocket.installed import archive, packages, zipped

from .pocket import NEEDS_RUNTIME, ROOT, RUNTIME, answered, every_example

pytestmark = [
    NEEDS_RUNTIME,
    pytest.mark.skipif(shutil.which("node") is None, reason="needs node"),
]
SCRIPT = Path(__file__).with_name("pocket.mjs")
PLUGIN = '''
from typing import Annotated
from wirecalc import PRACTICE, Reading, at_most, calculation, hookimpl

@calculation(part="bench")
def seal_gap(gap: Annotated[float, Reading("mm", text="gap of the seal", low=0, high=20)]):
    """Does the door seal close?"""
    yield at_most("gap", gap, 1.5, "mm", source=PRACTICE)

@hookimpl
def wirecalc_calculations():
    return [seal_gap]
'''


@pytest.fixture(scope="module")
def archives() -> bytecode.Archives:
    """What is embedded, with bytecode, once."""
    assert RUNTIME is not None
    made = bytecode.made(runtime.read(RUNTIME), archive(packages()), shutil.which("node") or "")
    assert made.compiled
    return made


def there(
    asked: Sequence[dict[str, Any]], settings: Settings, folder: Path, archives: bytecode.Archives
) -> list[Any]:
    """Return what the Python of a browser answers."""
    (folder / "library.zip").write_bytes(archives.library)
    (folder / "packages.zip").write_bytes(archives.packages)
    (folder / "shop.zip").write_bytes(zipped(shop.files(settings)))
    (folder / "worker.js").write_text(building._own("worker.js"), encoding="utf-8")
    said = {"settings": shop.settings_name(settings), "asked": asked}
    (folder / "requests.json").write_text(json.dumps(said), encoding="utf-8")
    subprocess.run(["node", str(SCRIPT), str(RUNTIME), str(folder)], check=True, timeout=300)
    return list(json.loads((folder / "answers.json").read_text(encoding="utf-8")))


def without_pictures(done: dict[str, Any]) -> dict[str, Any]:
    """Return an answer without what is drawn by a library that no browser has."""
    page = re.sub(r"<figure>.*?</figure>", "", str(done.get("page", "")), flags=re.DOTALL)
    return {**done, "page": page}


def test_every_example_and_sheet_comes_out_the_same(
    tmp_path: Path, archives: bytecode.Archives
) -> None:
    asked = every_example()
    theirs = there(asked, Settings(), tmp_path, archives)
    assert len(theirs) == len(asked) >= 48
    source = json.loads((tmp_path / "source.json").read_text(encoding="utf-8"))
    assert {name.partition(".")[0] for name in source} == {
        "wirecalc_plugins"
    }  # the rest is bytecode
    for request, answer in zip(asked, theirs, strict=True):
        ours = without_pictures(answered(Page(), request))
        assert without_pictures(answer) == ours, request


def test_a_shops_rules_plugin_and_instruments_hold_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, archives: bytecode.Archives
) -> None:
    blocks = {
        name: "\n".join(
            re.findall(r"```toml\n(.*?)```", (ROOT / "docs" / name).read_text(), re.DOTALL)[:1]
        )
        for name in ("rules.md", "instruments.md")
    }
    own = tmp_path / "own"
    (own / "plugins").mkdir(parents=True)
    (own / "plugins" / "seal.py").write_text(PLUGIN, encoding="utf-8")
    (own / "rules.toml").write_text(blocks["rules.md"], encoding="utf-8")
    (own / "van.toml").write_text(blocks["instruments.md"], encoding="utf-8")
    settings = own / "wirecalc.toml"
    settings.write_text(
        'rules_files = ["rules.toml"]\nplugin_folder = "plugins"\n'
        'instruments_files = ["van.toml"]\n',
        encoding="utf-8",
    )
    monkeypatch.setenv("WIRECALC_CONFIG", str(settings))
    pull = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
    drop = {"current": "1.6 A by clamp 1", "nameplate_voltage": "115 V"}
    asked = [
        {"do": "answer", "name": "pull", "given": pull},  # 24 lbf is under 1.25 of 20 lbf
        {"do": "answer", "name": "seal-gap", "given": {"gap": "2 mm"}},
        {"do": "answer", "name": "drop", "given": drop},
        {"do": "answer", "name": "extension", "given": {}},
    ]
    theirs = there(asked, read(), tmp_path, archives)
    assert [a["finding"]["verdict"] for a in theirs[:2]] == ["fail", "fail"]
    assert theirs[0]["finding"]["house_rules"]
    for request, answer in zip(asked, theirs, strict=True):
        assert without_pictures(answer) == without_pictures(answered(Page(), request)), request
