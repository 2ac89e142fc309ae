"""What the benchmarks share: how big they are when they are measured, and when they only run."""

from __future__ import annotations

from collections.abc import Callable

import pytest

QUICK = 100  # times smaller where benchmarks are disabled, as in an ordinary run of the tests


@pytest.fixture(scope="session")
def sized(request: pytest.FixtureRequest) -> Callable[[int], int]:
    """Say how many there are of something: all that a group is named for only when measured."""
    option = request.config.getoption
    measured = option("--benchmark-enable") or not option("--benchmark-disable")
    return lambda full: full if measured else full // QUICK
