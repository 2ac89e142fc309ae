"""Run tests in a child of this process, which has loaded all that is slow to load but wirecalc."""

from __future__ import annotations

import gc
import importlib
import json
import os
import signal
import sys
import time
import traceback
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import coverage
import pytest

HEAVY = ("numpy", "scipy.optimize", "scipy.stats", "hypothesis", "pint", "pluggy", "tabulate")
HEAVY += (
    "jsonschema",
    "html5lib",
    "pypdf",
    "matplotlib.figure",
    "fluids",
    "tqdm",
    "_pytest.doctest",
)
PLAIN = [
    "-n0",
    "--assert=plain",
    "-q",
    "--tb=no",
    "--no-header",
    "-p",
    "no:cacheprovider",
    "--benchmark-disable",
]
Covered = dict[str, tuple[float, dict[str, list[int]]]]  # test: its seconds, and the lines it runs


def load_heavy() -> None:
    """Load once what no mutant changes; a child has it for nothing."""
    for name in HEAVY:
        importlib.import_module(name)
    gc.freeze()  # no child looks through it again


def in_child(work: Callable[[], Any], tree: Path, seconds: float) -> Any:
    """Return what some work yields in a child that imports wirecalc from a tree; None: no end.

    `work` yields what JSON can say. A child that takes longer is ended, with its own children.
    """
    said = tree.parent / "said.json"
    said.unlink(missing_ok=True)
    if (child := os.fork()) == 0:
        _as_child(work, tree, said)
    until = time.monotonic() + seconds
    while os.waitpid(child, os.WNOHANG) == (0, 0):
        if time.monotonic() > until:
            os.killpg(child, signal.SIGKILL)
            os.waitpid(child, 0)
            return None
        time.sleep(0.005)
    return json.loads(said.read_text()) if said.exists() else ["the child ended"]


def _as_child(work: Callable[[], Any], tree: Path, said: Path) -> None:
    """Work and end, whatever happens; nothing returns to the parent's code."""
    try:
        os.setpgid(0, 0)
        os.chdir(tree)
        sys.path[:0] = [str(tree), str(tree / "plugins")]
        sys.dont_write_bytecode = True
        os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
        out = os.open(tree.parent / "last.txt", os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
        os.dup2(out, 1)
        os.dup2(out, 2)
        said.write_text(json.dumps(work()))
    except BaseException:
        traceback.print_exc()
    finally:
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(0)


class _First:
    """Keeps the name of the first test that fails."""

    def __init__(self) -> None:
        self.failed: list[str] = []

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.failed.append(report.nodeid)

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed:
            self.failed.append(f"{report.nodeid} cannot be loaded")


def first_failure(tests: Sequence[str]) -> list[str]:
    """Run tests in their order up to the first that fails; its name, none if all pass."""
    first = _First()
    code = pytest.main([*PLAIN, "-x", *tests], plugins=[first])
    return first.failed[:1] or ([] if code == 0 else [f"pytest ended with {code}"])


class _Recorder:
    """Keeps, for each test that passes, how long it takes and which lines it runs."""

    def __init__(self, tree: Path) -> None:
        source = [str(tree / "wirecalc"), str(tree / "plugins")]
        self.measured = coverage.Coverage(data_file=None, source=source, config_file=False)
        self.seconds: dict[str, float] = {}
        self.failed: set[str] = set()

    def pytest_collection_finish(self) -> None:
        self.measured.start()

    @pytest.hookimpl(wrapper=True, tryfirst=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Any:
        self.measured.switch_context(item.nodeid)
        begin = time.perf_counter()
        try:
            return (yield)
        finally:
            self.seconds[item.nodeid] = time.perf_counter() - begin

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if not report.passed:
            self.failed.add(report.nodeid)


def lines_of(file: str, tree: Path) -> Covered:
    """Run the tests of a file; what each runs."""
    recorder = _Recorder(tree)
    pytest.main([*PLAIN, file], plugins=[recorder])
    recorder.measured.stop()
    data = recorder.measured.get_data()
    lines: dict[str, dict[str, list[int]]] = {test: {} for test in recorder.seconds}
    for name in data.measured_files():
        for line, tests in data.contexts_by_lineno(name).items():
            for test in tests:
                if test in lines:
                    lines[test].setdefault(str(Path(name).relative_to(tree)), []).append(line)
    return {t: (s, lines[t]) for t, s in recorder.seconds.items() if t not in recorder.failed}
