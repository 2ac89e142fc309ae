"""Exercises in the windings of a compressor, with the slips that are made in them."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip


def _draw(luck: Luck) -> Drawn:
    run = float(luck.reading(1.5, 6.0, "0.1", "").strip())
    start = round(run * float(luck.pick(["2.2", "2.6", "3.0", "3.4"])), 1)
    leads = float(luck.reading(0.2, 0.6, "0.1", "").strip())
    given = {
        "reading_1_2": f"{run + leads:.1f} ohm",
        "reading_1_3": f"{run + start + leads:.1f} ohm",
        "reading_2_3": f"{start + leads:.1f} ohm",
        "lead_resistance": f"{leads:.1f} ohm",
        "case_resistance": ">40 Mohm",
        "motor_kind": "compressor",
    }
    return Drawn(given)


def _start(case: Case) -> float:
    return case.figure("2-3 less leads")


def _ratio(case: Case) -> float:
    return case.figure("ratio")


def _both(case: Case) -> float:
    return case.figure("1-3 less leads")


_PINS = (
    "A compressor reads {reading_1_2} between pins 1 and 2, {reading_2_3} between 2 and 3, "
    "{reading_1_3} between 1 and 3. The test leads held together read {lead_resistance}. "
    "Nothing conducts to the case."
)
_LEFT_IN = "lead resistance left in", "You left the resistance of the test leads in."
_ALL = "both windings for one", "Between 1 and 3 lie run and start winding, one behind the other."

EXERCISES = (
    Exercise(
        _PINS,
        "How many ohms has the start winding?",
        _draw,
        _start,
        "ohm",
        "0.1",
        (
            Slip(*_LEFT_IN, lambda case: case.value("reading_2_3")),
            Slip(
                "lead resistance taken off twice",
                "The leads held together read both of them at once: take that off once.",
                lambda case: _start(case) - case.value("lead_resistance"),
            ),
            Slip(*_ALL, _both),
            Slip(
                "run winding for start winding",
                "The run winding has the fewest ohms, the start winding more.",
                lambda case: case.figure("1-2 less leads"),
            ),
        ),
    ),
    Exercise(
        _PINS,
        "How many times the run winding's ohms are the start winding's?",
        _draw,
        _ratio,
        "",
        "0.01",
        (
            Slip(*_LEFT_IN, lambda case: case.value("reading_2_3") / case.value("reading_1_2")),
            Slip("upside down", "You put run over start.", lambda case: 1 / _ratio(case)),
            Slip(*_ALL, lambda case: _both(case) / case.figure("1-2 less leads")),
        ),
    ),
)
