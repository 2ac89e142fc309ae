"""The trials of all bundled calculations, found by the catalogue."""

from __future__ import annotations

import importlib
from pathlib import Path

import wirecalc

from .trial import Trial

FOLDER = Path(__file__).parent
CATALOGUE = wirecalc.build(bundled_only=True)
BUNDLED = [name for p in CATALOGUE.plugins if p.bundled for name in p.calculations]


def file_of(name: str) -> Path:
    """Return the file that holds the trial of a calculation."""
    return FOLDER / f"test_{name.replace('-', '_')}.py"


def _trial(name: str) -> Trial:
    trial: Trial = importlib.import_module(f".{file_of(name).stem}", __package__).TRIAL
    return trial


TRIALS = {name: _trial(name) for name in BUNDLED if file_of(name).exists()}
FILED = [name for name, trial in TRIALS.items() if trial.files]  # their example names a file
