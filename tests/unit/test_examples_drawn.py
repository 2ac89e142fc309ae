"""Random examples are the same on every run, whatever ran before; `nightly` draws fresh ones."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

STEADY = pytest.mark.skipif(
    settings.get_current_profile_name() == "nightly", reason="fresh examples are wanted"
)


def drawn() -> list[int]:
    """Draw some numbers, as a test of properties does."""
    seen: list[int] = []

    @settings(max_examples=400)
    @given(st.integers())
    def keep(number: int) -> None:
        seen.append(number)

    keep()
    return seen


@STEADY
def test_examples_do_not_depend_on_what_was_imported(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A module from outside is imported in between, with numbers that would be drawn else."""
    before = drawn()
    path = tmp_path / "invented_numbers.py"
    path.write_text("\n".join(f"N{n} = {n}" for n in range(7_000_001, 7_000_099)), encoding="utf-8")
    spec = importlib.util.spec_from_file_location(path.stem, path)
    assert spec is not None
    monkeypatch.setitem(sys.modules, path.stem, importlib.util.module_from_spec(spec))
    assert drawn() == before
    assert len(set(before)) > 100


@STEADY
def test_no_test_depends_on_how_fast_the_machine_is(request: pytest.FixtureRequest) -> None:
    """Of all tests that were collected with this one; a slow draw or run is no failure."""
    for item in request.session.items:
        own = getattr(getattr(item, "function", None), "_hypothesis_internal_use_settings", None)
        if own is not None:
            assert own.derandomize, item.nodeid
            assert own.deadline is None, item.nodeid
            assert HealthCheck.too_slow in own.suppress_health_check, item.nodeid


@settings(max_examples=30)
@given(st.integers())
def test_property_among_those_that_are_looked_at(number: int) -> None:
    assert number - number == 0


def test_by_night_twenty_times_as_many_are_drawn() -> None:
    one = f"{__file__}::{test_property_among_those_that_are_looked_at.__name__}"
    words = ["-n", "0", "--hypothesis-profile=nightly", "--hypothesis-show-statistics", one]
    done = subprocess.run(
        [sys.executable, "-m", "pytest", *words],
        cwd=Path(__file__).parents[2],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout
    assert "settings.max_examples=600" in done.stdout
