"""What start-curve says of a start: whose the doubt is, the estimate's or the readings'."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from wirecalc_plugins.start_curve.in_words import said_of_healthy


def _healthy(**changed: Any) -> Any:
    """Return starts of which none comes to speed, of a motor that was measured."""
    machine = SimpleNamespace(start=object())
    meters = SimpleNamespace(settle_time=None, speed_time=None, settled=18.2)
    plain: dict[str, Any] = {
        "starts": [SimpleNamespace(meters=meters)],
        "motor": SimpleNamespace(estimated=False, machine=machine),
        "sure": False,
        "never": True,
        "assumed": (),
        "torque": (140.0, 140.0),
        "load": (250.0, 250.0),
    }
    return SimpleNamespace(**plain | changed)


STALLED = (
    "not at speed after 5 s: its torque at standstill is 140 % of rated, the load takes 250 %, "
    "and the meter stays near 18.2 A"
)


def test_a_motor_that_was_measured_is_no_estimate() -> None:
    assert said_of_healthy(_healthy(), 5.0) == STALLED


def test_the_estimate_of_a_motor_without_a_start_winding_has_no_doubt_of_its_torque() -> None:
    alone = SimpleNamespace(estimated=True, machine=SimpleNamespace(start=None))
    assert said_of_healthy(_healthy(motor=alone), 5.0) == STALLED


@pytest.mark.parametrize(
    ("changed", "says"),
    [
        ({}, "the estimate has too little torque for this load, and the estimate, not the motor"),
        (
            {"torque": (260.0, 280.0)},
            "cannot tell whether in time: torque at standstill 260",
        ),
        ({"never": False}, "the estimate cannot tell whether it starts this load"),
        ({"assumed": ("load_torque",)}, "starts the load that was assumed: torque at standstill"),
    ],
)
def test_an_estimate_says_that_the_doubt_is_its_own(changed: dict[str, Any], says: str) -> None:
    motor = SimpleNamespace(estimated=True, machine=SimpleNamespace(start=object()))
    assert says in said_of_healthy(_healthy(motor=motor, **changed), 5.0)
