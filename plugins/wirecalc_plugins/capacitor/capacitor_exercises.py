"""Exercises in a capacitor under load, with the slips that are made in it."""

from __future__ import annotations

import math

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_SOLD = ["10 uF", "15 uF", "20 uF", "25 uF", "30 uF", "35 uF", "40 uF", "45 uF"]
_SHARES = ["0.84", "0.89", "0.92", "0.945", "0.97", "1.0", "1.03"]  # of the mark: what is left
_LINES = [  # volts and frequency of the line, and from where to where those of the capacitor lie
    *[("118 V", "60 Hz", 180, 260), ("122 V", "60 Hz", 180, 260)],
    *[("236 V", "60 Hz", 300, 400), ("230 V", "50 Hz", 300, 400)],
]
_OTHER = {"60 Hz": "50 Hz", "50 Hz": "60 Hz"}
_TOLERANCE = "6 %"


def _draw(luck: Luck) -> Drawn:
    marked, (line, hertz, low, high) = luck.pick(_SOLD), luck.pick(_LINES)
    volts = luck.reading(low, high, "1", "V")
    farad = float(luck.pick(_SHARES)) * float(marked.split()[0]) * 1e-6
    amps = 2 * math.pi * float(hertz.split()[0]) * farad * float(volts.split()[0])
    given = {
        "capacitor_current": f"{amps:.2f} A",
        "capacitor_voltage": volts,
        "frequency": hertz,
        "marked_capacitance": marked,
        "tolerance": _TOLERANCE,
    }
    return Drawn(given, {"line": line})


def _uf(case: Case) -> float:
    return case.figure("capacitance")


EXERCISES = (
    Exercise(
        "The motor runs from {line} at {frequency}. In the lead of its run capacitor the clamp "
        "shows {capacitor_current}; across its terminals the meter shows {capacitor_voltage}. It "
        "is marked {marked_capacitance} ±{tolerance}.",
        "What capacitance does it show?",
        _draw,
        _uf,
        "uF",
        "0.1",
        (
            Slip(
                "50 for 60 Hz",
                "You worked with the other frequency: the plate says which it is.",
                lambda case: _uf(case.but(frequency=_OTHER[str(case.drawn.given["frequency"])])),
            ),
            Slip(
                "peak for rms",
                "You took 1.414 times the volts: the meter shows rms, and so does the clamp.",
                lambda case: _uf(case) / math.sqrt(2),
            ),
            Slip(
                "volts of the line",
                "You took the volts of the line; the volts across the capacitor count.",
                lambda case: _uf(case) * case.value("capacitor_voltage") / case.beside("line"),
            ),
            Slip(
                "2 pi left out",
                "You left out 2 pi: C = I / (2 pi f V).",
                lambda case: _uf(case) * 2 * math.pi,
            ),
            Slip(
                "the mark for the reading",
                "This is what is marked on it, not what it shows.",
                lambda case: case.value("marked_capacitance"),
            ),
        ),
        judged="capacitance, lower limit",
        meter={"capacitor_current": "±(1.5%+3)"},
    ),
)
