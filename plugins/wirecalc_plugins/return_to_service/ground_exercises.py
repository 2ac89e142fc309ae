"""Exercises in the path to ground, with the slips that are made in it."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_PATH = "path to ground"
_CLOSED = "case to ground"


def _draw_leads(luck: Luck) -> Drawn:
    leads = float(luck.reading(0.08, 0.30, "0.01", "").strip())
    path = float(luck.reading(0.03, 0.25, "0.01", "").strip())
    given = {
        "ground_point": "wired-in",
        "ground_resistance": f"{leads + path:.2f} ohm",
        "lead_resistance": f"{leads:.2f} ohm",
        "same_range": "yes",
        "meter_resolution": "0.01 ohm",
    }
    return Drawn(given)


def _draw_drop(luck: Luck) -> Drawn:
    given = {
        "ground_point": "wired-in",
        "test_current": luck.reading(5.0, 12.0, "0.1", "A"),
        "path_drop": luck.reading(200, 1500, "5", "mV"),
    }
    return Drawn(given)


def _ohm(case: Case) -> float:
    return case.figure(_PATH)


EXERCISES = (
    Exercise(
        "From the case of a wired-in machine to its ground wire the meter shows "
        "{ground_resistance}, on the range on which the test leads held together show "
        "{lead_resistance}.",
        "What resistance has the path itself?",
        _draw_leads,
        _ohm,
        "ohm",
        "0.01",
        (
            Slip(
                "lead resistance left in",
                "You left the resistance of the test leads in the reading.",
                lambda case: case.value("ground_resistance"),
            ),
            Slip(
                "half of the leads taken off",
                "The leads held together show both of them: take off all of it.",
                lambda case: _ohm(case) + case.value("lead_resistance") / 2,
            ),
            Slip(
                "the leads for the path",
                "This is what the leads show; the path is what is left without them.",
                lambda case: case.value("lead_resistance"),
            ),
            Slip(
                "leads added",
                "You added the leads to the reading; they are in it already.",
                lambda case: case.value("ground_resistance") + case.value("lead_resistance"),
            ),
        ),
    ),
    Exercise(
        "A ground tester sends {test_current} from the case of a wired-in machine to its ground "
        "wire; across the path a meter shows {path_drop}.",
        "What resistance has the path?",
        _draw_drop,
        _ohm,
        "ohm",
        "0.001",
        (
            Slip(
                "mV for V",
                "You put millivolts over amperes and called it ohms: it is a thousandth of that.",
                lambda case: 1000 * _ohm(case),
            ),
            Slip(
                "upside down",
                "You put amperes over volts: ohms are volts over amperes.",
                lambda case: 1 / _ohm(case),
            ),
            Slip(
                "multiplied",
                "You multiplied volts and amperes: that gives watts.",
                lambda case: _ohm(case) * case.value("test_current") ** 2,
            ),
        ),
        judged=_CLOSED,
        meter={"path_drop": "±(2%+5)"},
    ),
)
