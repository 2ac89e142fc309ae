"""What the system tests share: the command in process, the installed command, plugins from
outside, and job sheets.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from tests.calculations.trials import CATALOGUE
from wirecalc.testing import Outcome, Outside

COMMAND = Path(sys.executable).with_name("wirecalc")
BUNDLED: dict[str, list[str]] = {}  # all calculations, by part of the trade, as listed
for _name, _provided in sorted(CATALOGUE.calculations.items()):
    BUNDLED.setdefault(_provided.calculation.part, []).append(_name)
LONGEST_RUN = 60  # seconds; a hung command fails its test and does not hold up the rest


@pytest.fixture
def cli_main(wirecalc_cli: Callable[..., Outcome]) -> Callable[..., Outcome]:
    """Run the command line in this process."""
    return wirecalc_cli


@pytest.fixture
def empty_folder(tmp_path: Path) -> Path:
    """A folder with nothing in it, to run in."""
    folder = tmp_path / "empty"
    folder.mkdir()
    return folder


@pytest.fixture
def command(empty_folder: Path) -> Callable[..., Outcome]:
    """Run the installed command in a process of its own, in an empty folder."""

    def call(
        *words: str, env: Mapping[str, str] | None = None, cwd: Path | None = None, **how: Any
    ) -> Outcome:
        done = subprocess.run(
            [COMMAND, *words],
            cwd=cwd or empty_folder,
            env=clean_environment() | dict(env or {}),
            timeout=LONGEST_RUN,
            check=False,
            **({"capture_output": True} | how),
        )
        out, err = (b.decode() if b is not None else "" for b in (done.stdout, done.stderr))
        return Outcome(done.returncode, out, err)

    return call


@pytest.fixture
def in_folder(
    empty_folder: Path, monkeypatch: pytest.MonkeyPatch, wirecalc_cli: Callable[..., Outcome]
) -> Callable[..., Outcome]:
    """Run the command line in this process, in an empty folder: a start of its own takes long."""

    def call(*words: str, cwd: Path = empty_folder) -> Outcome:
        monkeypatch.chdir(cwd)
        return wirecalc_cli(*words)

    return call


def clean_environment() -> dict[str, str]:
    """The environment without what would change how Python starts, finds modules or prints."""
    return {k: v for k, v in os.environ.items() if not k.startswith(("PYTHON", "LC_", "LANG"))} | {
        "PYTHONIOENCODING": "utf-8"
    }


@pytest.fixture
def outside(wirecalc_outside: Outside) -> Outside:
    """A place for distributions from outside; run the command with its `env` to have them."""
    return wirecalc_outside


@pytest.fixture
def plugged(wirecalc_cli: Callable[..., Outcome], outside: Outside) -> Callable[..., Outcome]:
    """Run the command line in this process, with the distributions from outside."""
    del outside
    return wirecalc_cli


@pytest.fixture
def write_sheet(tmp_path: Path) -> Callable[..., Path]:
    """Write a job sheet; each check is a mapping of its keys to texts, lists or TOML in bytes.

    Where nothing else is said it is of the bench: nothing is required of it.
    """

    def write(*checks: Mapping[str, object], more: str = "", kind: str = "bench") -> Path:
        path = tmp_path / "sheet.toml"
        lines = ["[job]", 'title = "invented"', *([f'kind = "{kind}"'] if kind else [])]
        for check in checks:
            lines += ["", "[[check]]", *(f"{key} = {_toml(v)}" for key, v in check.items())]
        path.write_text("\n".join(lines) + "\n" + more, encoding="utf-8")
        return path

    return write


def _toml(value: object) -> str:
    """Write texts and lists as TOML: a text in JSON is one in TOML. Bytes are TOML already."""
    return value.decode() if isinstance(value, bytes) else json.dumps(value, ensure_ascii=False)
