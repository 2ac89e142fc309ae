"""The Python of a browser gives the findings that this one gives."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

from wirecalc.in_page.asked import Page
from wirecalc.pocket.installed import archive, packages

from .pocket import NEEDS_RUNTIME, RUNTIME, answered, every_example

pytestmark = [
    NEEDS_RUNTIME,
    pytest.mark.skipif(shutil.which("node") is None, reason="needs node"),
]
SCRIPT = Path(__file__).with_name("pocket.mjs")


def without_pictures(done: dict[str, Any]) -> dict[str, Any]:
    """Return an answer without what is drawn by a library that no browser has."""
    page = re.sub(r"<figure>.*?</figure>", "", str(done.get("page", "")), flags=re.DOTALL)
    return {**done, "page": page}


def test_every_example_and_sheet_comes_out_the_same(tmp_path: Path) -> None:
    requests = every_example()
    (tmp_path / "packages.zip").write_bytes(archive(packages()))
    (tmp_path / "requests.json").write_text(json.dumps(requests), encoding="utf-8")
    files = [str(tmp_path / n) for n in ("packages.zip", "requests.json", "answers.json")]
    folder = str(RUNTIME)
    subprocess.run(["node", str(SCRIPT), folder, *files], check=True, timeout=300)
    there = json.loads((tmp_path / "answers.json").read_text(encoding="utf-8"))
    here = [answered(Page(), request) for request in requests]
    assert len(there) == len(here) >= 48
    for request, ours, theirs in zip(requests, here, there, strict=True):
        assert without_pictures(theirs) == without_pictures(ours), request
