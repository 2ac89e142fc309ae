"""A circuit solved by ngspice in batch mode, as an independent check of arithmetic.

    solved = spice("V1 1 0 AC 120", "R1 1 2 0.5", "R2 2 0 10", frequency=60)
    solved["v(2)"]                       # complex, rms where the source is given as rms

The fixture `spice` skips, with the reason, where ngspice is not installed.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest

COMMAND = shutil.which("ngspice")
LONGEST_RUN = 30  # s
Solve = Callable[..., dict[str, complex]]


def solve(*elements: str, frequency: float = 60.0) -> dict[str, complex]:
    """Return every node voltage and source current at one frequency, by ngspice's name of it."""
    assert COMMAND is not None
    with tempfile.TemporaryDirectory() as folder:
        values = Path(folder) / "values"
        deck = [
            "* one frequency",
            *elements,
            ".control",
            "set filetype=ascii",
            f"ac lin 1 {frequency} {frequency}",
            f"write {values} all",
            ".endc",
            ".end",
        ]
        netlist = Path(folder) / "circuit.cir"
        netlist.write_text("\n".join(deck) + "\n", encoding="utf-8")
        done = subprocess.run(
            [COMMAND, "-b", netlist], capture_output=True, timeout=LONGEST_RUN, check=False
        )
        assert values.is_file(), (done.stdout + done.stderr).decode()
        return _read(values.read_text(encoding="utf-8"))


def _read(text: str) -> dict[str, complex]:
    """Read ngspice's ascii file of one point: the names, then a complex number for each."""
    head, _, body = text.partition("Values:")
    names = re.findall(r"^\t\d+\t(\S+)\t", head, re.MULTILINE)
    numbers = re.findall(r"(\S+),(\S+)", body)
    assert len(names) == len(numbers), text
    return {n: complex(float(re_), float(im)) for n, (re_, im) in zip(names, numbers, strict=True)}


@pytest.fixture(name="spice", scope="session")
def _spice() -> Solve:
    if COMMAND is None:
        pytest.skip("ngspice is not installed; the numpy check beside it runs")
    return solve
