"""What a circuit answers where nothing can be judged."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import BadInput


def test_no_load_is_refused() -> None:
    with pytest.raises(BadInput, match="no load was listed"):
        wirecalc.run("circuit", breaker="15 A")
