"""A tutorial followed as it stands: its files written, its lines run in this process, in order."""

from __future__ import annotations

import os
import re
import shlex
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from wirecalc.testing import run_command

DOCS = Path(__file__).parents[2] / "docs"
FOLLOWED = tuple(DOCS / f"first-{page}.md" for page in ("day", "lesson", "shop-day"))
_BLOCK = re.compile(r"^(?P<before>[^\n]*)\n\n```(?P<kind>\w+)\n(?P<inside>.*?)^```", re.M | re.S)
_NAMED = re.compile(r"`([\w./-]+)`:$")


class Step(NamedTuple):
    """A block of a page: a file to write, or lines to run with what they print."""

    kind: str
    file: str
    text: str


def steps(page: str) -> Iterator[Step]:
    """Yield the blocks of a page; the line before a file ends in its name and a colon."""
    for block in _BLOCK.finditer(page):
        named = _NAMED.search(block["before"])
        yield Step(block["kind"], named[1] if named else "", block["inside"])


def followed(page: str, folder: Path) -> str:
    """Return a page with what its lines print now, followed from front to back in a folder."""
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        patch.setenv("PWD", str(folder))
        return _BLOCK.sub(lambda block: _done(block, patch), page)


def _done(block: re.Match[str], patch: pytest.MonkeyPatch) -> str:
    whole, inside = block[0], block["inside"]
    named = _NAMED.search(block["before"])
    if named:
        path = Path(named[1])
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(inside, encoding="utf-8")
    if block["kind"] == "sh":
        for line in inside.splitlines():
            _run(line, patch)
    if block["kind"] != "console":
        return whole
    commands = re.findall(r"^\$ (.*)$", inside, re.MULTILINE)
    printed = "".join(f"$ {line}\n{_run(line, patch)}" for line in commands)
    return whole.replace(inside, printed)


def _run(line: str, patch: pytest.MonkeyPatch) -> str:
    """Run a line, and return what it prints; only what a tutorial needs is known here."""
    command, refused, _ = line.partition(" 2>&1")
    first, *words = shlex.split(command, comments=True)
    if first == "export":
        name, _, value = words[0].partition("=")
        patch.setenv(name, value.replace("$PWD", os.environ["PWD"]))
        return ""
    assert first == "wirecalc", line
    done = run_command(*words)
    return ((done.err if refused else done.out).strip() + "\n").lstrip("\n")
