"""How insulation was tested: at which volts, and with the boards unplugged or not."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    at_or_below,
    confirmed,
    requires,
)

from .insulation_doubts import LEAST_TEST_V
from .insulation_inputs import (
    VDE,
)

TEST_V = 500.0  # the limits hold at this voltage

_GUIDES = confirmed("inspection-guides", "UK in-service inspection guides", "boards at 500 V", 2)


def how_tested(test_voltage: float | None, electronics_unplugged: bool | None) -> Iterator[Item]:
    """Advise on the volts of the test, and on boards that were in it."""
    if test_voltage is None or not at_or_below(LEAST_TEST_V, test_voltage):
        return
    yield requires(  # how the reading was made, no reading: it never comes closest to a limit
        "tested at 500 V dc",
        at_or_below(TEST_V, test_voltage),
        says=f"the limits hold at {TEST_V:g} V dc, and {test_voltage:g} V was used",
        source=VDE,
        advisory=True,
        action="test at 500 V dc, boards unplugged",
        behind="under 250 V a good reading passes nothing",
    )
    if electronics_unplugged is not None:
        yield requires(
            "boards unplugged for the test",
            electronics_unplugged,
            says="test voltage went into boards or surge parts, which it can damage",
            source=_GUIDES,
            advisory=True,
            action="check that the boards still work; unplug them the next time",
            behind="nothing: the reading stands, and what it harmed shows when the machine runs",
        )
