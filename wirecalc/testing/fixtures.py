"""Fixtures of pytest, for `pytest_plugins = ["wirecalc.testing.fixtures"]`."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from ..plugging.host import Catalogue
from .command import Outcome, run_command
from .outside import Outside
from .sets import plugin_set


@pytest.fixture
def wirecalc_cli() -> Callable[..., Outcome]:
    """Run the command line in this process: `wirecalc_cli("pull", "--help").out`."""
    return run_command


@pytest.fixture
def wirecalc_only() -> Iterator[Callable[..., Catalogue]]:
    """Have only some plugins and the bundled ones to the end of the test: `wirecalc_only(mine)`."""
    with contextlib.ExitStack() as stack:
        yield lambda *plugins: stack.enter_context(plugin_set(*plugins))


@pytest.fixture
def wirecalc_outside(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Outside]:
    """A place for distributions from outside, which this process finds; others with its `env`."""
    folder = tmp_path / "site"
    folder.mkdir()
    monkeypatch.syspath_prepend(folder)
    outside = Outside(folder)
    yield outside
    outside.forget()
