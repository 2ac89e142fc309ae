"""What tests of several rooms share: how examples are drawn, a motor's start in closed form, and
writing a recording.
"""

from __future__ import annotations

import functools
import math
import os
import sys
from collections.abc import Callable, Iterator, Sequence
from importlib import metadata
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pytest
from hypothesis import HealthCheck, settings
from hypothesis.internal.conjecture import providers

from wirecalc import Catalogue, tables
from wirecalc.plugging import discovery, host
from wirecalc.plugging.settings import TESTED_WITH

pytest_plugins = ["wirecalc.testing.fixtures"]

BY_DAY = 0.5  # of the examples that a test asks for: the ordinary line has minutes
BY_NIGHT = 20  # times as many examples, and fresh ones: --hypothesis-profile=nightly
settings.register_profile("steady", derandomize=True)  # the same examples on every run
settings.register_profile("nightly", derandomize=False, database=None, print_blob=True)
settings.load_profile("steady")


def pytest_collection_modifyitems(items: Sequence[pytest.Item]) -> None:
    """Let no test of random examples depend on the speed of a machine; by night draw many more."""
    times = BY_DAY if settings.default.derandomize else BY_NIGHT
    for test in {getattr(item, "function", None) for item in items}:
        own = getattr(test, "_hypothesis_internal_use_settings", None)
        if own is not None:
            test._hypothesis_internal_use_settings = settings(
                own,
                max_examples=max(1, round(own.max_examples * times)),
                deadline=None,
                suppress_health_check=(*own.suppress_health_check, HealthCheck.too_slow),
            )


@pytest.fixture(autouse=True, scope="session")
def same_examples_in_any_order() -> Iterator[None]:
    """Draw none of the numbers that stand in the modules imported so far.

    Which these are depends on the order of the tests, and on how they are shared out to processes.
    """
    with pytest.MonkeyPatch.context() as patch:
        if settings.default.derandomize:
            patch.setattr(providers, "_get_local_constants", providers.Constants, raising=False)
        yield


@pytest.fixture(autouse=True, scope="session")
def installed_read_once() -> Iterator[None]:
    """Read once what is installed: it stays as it is while the tests run, and reading it anew is
    most of what many a run in this process takes. What a test puts on the path is read as ever.
    """
    kept = {entry: list(metadata.distributions(path=[entry])) for entry in sys.path if entry}
    for distribution in (d for found in kept.values() for d in found):
        distribution.read_text = functools.cache(distribution.read_text)

    def distributions() -> Iterator[metadata.Distribution]:
        for entry in sys.path:
            yield from kept[entry] if entry in kept else metadata.distributions(path=[entry])

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(discovery, "distributions", distributions)
        yield


@pytest.fixture
def built_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Load the bundled plugins once for all runs of a test: for what a run says of a text."""
    built = bundled()
    monkeypatch.setattr(host, "build", lambda *_, **__: built)


@functools.cache
def bundled() -> Catalogue:
    """What the bundled plugins offer."""
    return host.build(bundled_only=True)


class Start(NamedTuple):
    """A start in closed form: an R-L circuit closed at the voltage zero whose forced part falls.

    i(u) = sqrt2 [ (s + (L - s) exp(-u / tau)) sin(w u - phi) + L sin(phi) exp(-w u / tan phi) ]
    for u = t - begin > 0, with locked-rotor rms L, settled rms s, and phi = acos(power factor).
    """

    locked: float = 12.0
    settled: float = 1.2
    tau: float = 0.12
    power_factor: float = 0.6
    frequency: float = 60.0
    begin: float = 0.35
    end: float = 2.2

    def at(self, t: Any) -> Any:
        """Return the current in A at some times."""
        phi, w = math.acos(self.power_factor), 2 * math.pi * self.frequency
        u = np.maximum(np.asarray(t, dtype=float) - self.begin, 0.0)
        forced = self.settled + (self.locked - self.settled) * np.exp(-u / self.tau)
        free = self.locked * math.sin(phi) * np.exp(-w * u / math.tan(phi))
        current = math.sqrt(2) * (forced * np.sin(w * u - phi) + free)
        return np.where(np.asarray(t) > self.begin, current, 0.0)

    def sampled(self, rate: float) -> tuple[Any, Any]:
        """Return times and currents at a sampling rate, in Hz."""
        t = np.arange(round(self.end * rate)) / rate
        return t, self.at(t)


def write_recording(path: Path, t: Any, x: Any, head: str = "t_s,current_A") -> Path:
    """Write a recording with enough digits to tell every sample."""
    rows = np.column_stack((t, x))
    np.savetxt(path, rows, delimiter=",", fmt=["%.6f", "%.5f"], header=head, comments="")
    return path


@pytest.fixture
def start() -> type[Start]:
    """The closed form of a start."""
    return Start


@pytest.fixture
def record() -> Callable[..., Path]:
    """Write a recording."""
    return write_recording


@pytest.fixture(autouse=True)
def nothing_settled(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Leave aside what the person who runs the tests, or a test before, has settled."""
    for name in os.environ:
        own = name.startswith("WIRECALC_") and name not in TESTED_WITH
        if own or name in ("COLUMNS", "LINES"):  # which workers of a test run are given
            monkeypatch.delenv(name)
    monkeypatch.setenv("WIRECALC_CONFIG", os.devnull)
    yield
    tables.use_folders([])
