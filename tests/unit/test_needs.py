"""What a check asks for again: what was not said, and nothing that was."""

from __future__ import annotations

from typing import Any

import pytest

import wirecalc
from wirecalc.typed.wires import read_wire
from wirecalc_plugins.motor.settled_checks import judge_turning
from wirecalc_plugins.wire.sizes import _builds


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


@pytest.mark.parametrize(
    ("strand", "build"), [("0.29", ["16 AWG"]), ("0.27", []), ("0.26", ["18 AWG"])]
)
def test_a_build_is_named_where_a_calliper_may_have_missed_it(
    strand: str, build: list[str]
) -> None:
    """19 strands of 0.254 mm are 18 AWG, of 0.287 mm 16 AWG: 0.27 mm is over 8 % off of both."""
    said = list(_builds(read_wire(f"19x{strand} mm")))
    assert [one.partition(" it would be ")[2] for one in said] == build


def test_a_curve_goes_from_the_rating_to_fifty_times_it() -> None:
    """Under 100 % nothing trips; at 5000 % a breaker of 15 A is at 750 A, past its instant trip."""
    trip = wirecalc.build(bundled_only=True).calculations["trip"].calculation
    kind: Any = trip.input("curve").kind
    multiple = kind.columns["multiple"]
    assert [multiple.read(text).value for text in ("100 %", "5000 %")] == [100.0, 5000.0]
    for text in ("99 %", "5001 %"):
        with pytest.raises(wirecalc.BadText):
            multiple.read(text)


@pytest.mark.parametrize(
    ("amps", "inverter", "needs"),
    [(0.75, None, ("inverter",)), (0.75, False, ()), (0.1, None, ())],
)
def test_a_motor_that_settles_too_low_may_be_driven_by_a_board(
    amps: float, inverter: bool | None, needs: tuple[str, ...]
) -> None:
    """15 % of 5 A: asked where it was not said; at 2 % it does not turn, whatever drives it."""
    (said,) = judge_turning(amps, 5.0, seen=False, inverter=inverter)
    assert isinstance(said, wirecalc.Criterion)
    assert (said.sense, said.needs) == ("cannot tell", needs)
