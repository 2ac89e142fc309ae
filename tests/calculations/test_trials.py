"""Every calculation of the catalogue has its trial, and every trial its calculation."""

from __future__ import annotations

import pytest

from .trials import BUNDLED, FOLDER, TRIALS, file_of

PROPERTIES = FOLDER.parent / "properties"


@pytest.mark.parametrize("name", BUNDLED)
def test_a_calculation_has_its_trial(name: str) -> None:
    file = file_of(name)
    assert name in TRIALS, (
        f"{name} has no trial: write tests/calculations/{file.name} with TRIAL = Trial(...) as"
        " test_pull.py does; trial.py says what each part of it is for"
    )


@pytest.mark.parametrize("name", TRIALS)
def test_a_trial_has_a_good_run(name: str) -> None:
    trial = TRIALS[name]
    assert bool(trial.good) == (not trial.files), "without one no bad input is refused by it"


def test_a_trial_has_its_calculation() -> None:
    written = {path.name for path in FOLDER.glob("test_*.py")} - {"test_trials.py"}
    assert written == {file_of(name).name for name in BUNDLED}


@pytest.mark.parametrize("name", TRIALS)
def test_what_is_drawn_elsewhere_is_drawn_there(name: str) -> None:
    for file in TRIALS[name].drawn_in:
        assert f'"{name}"' in (PROPERTIES / file).read_text(encoding="utf-8")
