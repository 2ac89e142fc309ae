"""Ordinary plates, all invented: a motor that was not seen fails on no estimate.

What each may say was written down by what is known of such motors, before the program was asked.
"""

from __future__ import annotations

import pytest

import wirecalc

from .records import memory, practice


def plate(volts: int, hertz: int, locked: float, rated: float, power: str, poles: int,
          main: float, start: float) -> dict[str, object]:  # fmt: skip
    return {
        "nameplate_voltage": f"{volts} V", "frequency": f"{hertz} Hz",
        "locked_rotor_current": f"{locked} A", "rated_load_current": f"{rated} A",
        "horsepower": f"{power} hp", "poles": poles, "main_winding": f"{main} ohm",
        "start_winding": f"{start} ohm", "voltage_at_rest": f"{volts + 2} V",
        "source_resistance": "0.4 ohm",
    }  # fmt: skip


def load(share: int, curve: str, inertia: float) -> dict[str, object]:
    return {"load_torque": f"{share} %", "load_curve": curve, "inertia": f"{inertia} kg m2"}


RELAY, PTC = {"start_method": "relay"}, {"start_method": "ptc", "ptc_resistance": "6.8 ohm"}


def starts(farads: int) -> dict[str, object]:
    return {"start_method": "start-capacitor", "start_capacitor": f"{farads} uF"}


def stays(farads: int) -> dict[str, object]:
    return {"start_method": "run-capacitor", "run_capacitor": f"{farads} uF"}


OFF = {"pass", "marginal"}
OPEN = {"cannot tell"}
PLATES = [
    ("a quarter horse on a fan", plate(115, 60, 20, 4.4, "1/4", 4, 2, 7) | RELAY
     | load(30, "fan", 0.003), OFF),
    ("a quarter horse, its load not said", plate(115, 60, 20, 4.4, "1/4", 4, 2, 7) | RELAY, OPEN),
    ("a third on a blower", plate(115, 60, 31, 6, "1/3", 4, 1.4, 6) | RELAY
     | load(60, "fan", 0.006), OFF),
    ("a half-horse grinder, idle", plate(115, 60, 40, 8, "1/2", 4, 1.0, 5) | RELAY
     | load(5, "constant", 0.008), OFF),
    ("a washing machine of Europe", plate(230, 50, 9, 2.2, "1/3", 4, 8, 24) | RELAY
     | load(20, "constant", 0.004), OFF | OPEN),
    ("a refrigerator, relay", plate(115, 60, 12, 1.6, "1/6", 2, 3, 10) | RELAY
     | load(40, "compressor", 0.0004), OFF | OPEN),
    ("a refrigerator, PTC", plate(115, 60, 10, 1.3, "1/8", 2, 4.5, 14) | PTC
     | load(30, "compressor", 0.0003), OFF | OPEN),
    ("a refrigerator of Europe", plate(230, 50, 5, 0.9, "1/8", 2, 16, 22) | PTC
     | load(30, "compressor", 0.0003), OFF | OPEN),
    ("a freezer with a start capacitor", plate(115, 60, 23, 3.6, "1/4", 2, 1.8, 7) | starts(200)
     | load(60, "compressor", 0.0006), OFF),
    ("a pump of one horse", plate(230, 60, 34, 7, "1", 4, 1.5, 4.5) | starts(250)
     | load(80, "constant", 0.01), OFF),
    ("a condenser fan with a run capacitor", plate(230, 60, 4, 1.4, "1/4", 6, 18, 25) | stays(7)
     | load(90, "fan", 0.01), OFF | OPEN),
    ("a blower with a run capacitor", plate(115, 60, 14, 4.6, "1/3", 4, 2.5, 5) | stays(15)
     | load(90, "fan", 0.008), OFF | OPEN),
]  # fmt: skip


def run(**given: object) -> wirecalc.Finding:
    return wirecalc.run("start-curve", **given)


def said(finding: wirecalc.Finding) -> str:
    cells = [str(cell) for found in finding.listings for row in found.rows for cell in row]
    reasons = [c.reason for c in finding.criteria]
    return "; ".join([*(a.text for a in finding.answers), *reasons, *cells])


@practice("a healthy motor of an ordinary plate starts a light load, and no plate condemns a motor")
@memory(
    "resistance start 1.5 to 2, capacitor start 3 to 4.5 times rated torque; run capacitor less"
)
@pytest.mark.parametrize(("about", "given", "may"), PLATES, ids=[p[0] for p in PLATES])
def test_an_ordinary_plate_is_answered_in_sensible_words(
    about: str, given: dict[str, object], may: set[str]
) -> None:
    finding = run(**given)
    assert finding.verdict in may, said(finding)
    assert "does not come to speed" not in said(finding)
    locked = float(str(given["locked_rotor_current"]).split()[0])
    volts = float(str(given["nameplate_voltage"]).split()[0])
    inrush = finding.figure("inrush reading, first 100 ms")
    cycle = finding.figure("highest one-cycle rms current")
    # LRA at the volts of the supply, less its own drop: no reading is over 1.2 times it
    assert inrush.high is not None and cycle.low is not None and cycle.high is not None
    most = locked * (volts + 2) / volts
    assert inrush.high <= 1.06 * most
    assert 0.75 * locked <= cycle.high <= 1.25 * most
    torque = finding.figure("torque at standstill, share of rated")
    assert torque.low is not None and torque.high is not None
    assert torque.low <= torque.figure.value <= torque.high
    assert torque.low < torque.high
    if "the estimate" in said(finding) and "leaves" not in said(finding):
        names = {f.figure.name for f in finding.figures}
        assert "heat in the start winding" not in names
        assert not [c for c in finding.criteria if c.criterion.unit == "s"]
