"""What the published checks share: how far a printed number may be from the value it rounds."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from .spice import _spice  # noqa: F401  a fixture, for the checks by circuit simulation


def half_a_digit(printed: str) -> float:
    """Return half of the last printed digit: 0.0403 stands for 0.04025 to 0.04035."""
    return 0.5 * 10.0 ** -len(printed.partition(".")[2])


@pytest.fixture(name="half_a_digit")
def _half_a_digit() -> Callable[[str], float]:
    return half_a_digit
