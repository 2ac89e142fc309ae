"""A folder of records survives a kill at any moment: every record that shows is whole."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from .conftest import clean_environment

DRIVER = Path(__file__).with_name("killed.py")
KILLS = 200
FILES = ["job.json", "report.html", "sheet.toml"]
PULL = {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork and SIGKILL")


@pytest.fixture
def kills(write_sheet: Callable[..., Path], tmp_path: Path) -> Iterator[tuple[Path, Iterator[str]]]:
    """The folder in which processes record and are killed, and a line for each kill."""
    folder = tmp_path / "shop"
    words = [sys.executable, DRIVER, write_sheet(PULL), folder, str(KILLS), "6"]
    with subprocess.Popen(
        words, stdout=subprocess.PIPE, text=True, env=clean_environment()
    ) as driver:
        assert driver.stdout is not None
        yield folder, iter(driver.stdout)
        driver.stdout.read()
    assert driver.returncode == 0


def _whole(path: Path) -> bytes:
    """Return the digest of a record that is whole, worked out as docs/record.md says."""
    assert sorted(p.name for p in path.iterdir()) == FILES
    content = [(path / name).read_bytes() for name in ("sheet.toml", "job.json", "report.html")]
    assert json.loads(content[1])["schema"] == "wirecalc.job/1"
    assert content[2].rstrip().endswith(b"</html>")
    digest = sha256(b"".join(content))
    assert path.name.endswith("-" + digest.hexdigest()[:8])
    return digest.digest()


def test_200_kills_leave_every_record_whole(
    kills: tuple[Path, Iterator[str]], cli_main: Callable[..., Any], tmp_path: Path
) -> None:
    folder, lines = kills
    seen: dict[str, bytes] = {}
    left = KILLS
    for _ in lines:  # while the next process is recording
        left -= 1
        shown = {p.name for p in folder.iterdir() if not p.name.startswith(".")}
        assert seen.keys() <= shown
        seen |= {name: _whole(folder / name) for name in shown - seen.keys()}
    assert left == 0
    assert len(seen) > KILLS / 2
    last = {p.name: _whole(p) for p in folder.iterdir() if not p.name.startswith(".")}
    assert {name: last[name] for name in seen} == seen
    halves = [p for p in folder.iterdir() if p.name.startswith(".")]
    assert len(halves) > KILLS / 10, "hardly any kill hit a process that was writing"
    told = cli_main("job", "--history", str(folder), "--format", "json")
    assert (told.status, told.json["n"]) == (0, len(last))
    again = cli_main("job", str(tmp_path / "sheet.toml"), "--record", str(folder))
    assert "recorded before" in again.err
