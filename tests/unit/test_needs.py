"""What a check asks for again: what was not said, and nothing that was."""

from __future__ import annotations

from typing import Any

import pytest

import wirecalc


def _example(name: str) -> dict[str, Any]:
    found = wirecalc.build(bundled_only=True).calculations[name].calculation.example_inputs
    return dict(found)


def _needs(name: str, criterion: str, **given: Any) -> tuple[str, ...]:
    typed = {k: v for k, v in (_example(name) | given).items() if v != ""}
    return tuple(wirecalc.run(name, **typed).criterion(criterion).criterion.needs)


@pytest.mark.parametrize(("said", "needs"), [("", ("by_itself",)), ("no", ())])
def test_a_start_device_that_may_have_wires_on_it(said: str, needs: tuple[str, ...]) -> None:
    """Windings beside it read along: asked where it was not said; read again where they were."""
    assert _needs("start-device", "start device by itself", by_itself=said) == needs


@pytest.mark.parametrize(("said", "needs"), [("", ("device_cold",)), ("no", ())])
def test_a_start_device_that_may_be_warm(said: str, needs: tuple[str, ...]) -> None:
    assert _needs("start-device", "start device cold", by_itself="yes", device_cold=said) == needs


def test_the_share_of_a_locked_rotor_current_is_of_what_the_plate_says() -> None:
    """9 A held of the 12 A on the plate are 75 %."""
    typed = _example("locked") | {"high_current": "9 A", "locked_rotor_current": "12 A"}
    typed = {k: v for k, v in typed.items() if k not in ("voltage", "nameplate_voltage")}
    share = wirecalc.run("locked", **typed).figure("share of locked-rotor current")
    assert share.figure.value == pytest.approx(75.0)
