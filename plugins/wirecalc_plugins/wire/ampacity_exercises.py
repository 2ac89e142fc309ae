"""Exercises in the ampacity of building wire, with the slips that are made in it."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_SIZES = ["12 AWG", "10 AWG", "8 AWG", "6 AWG"]
_ABOUT = {"12 AWG": 18, "10 AWG": 24, "8 AWG": 34, "6 AWG": 45}  # A to draw near
_LIES = "ampacity as it lies"


def _draw(luck: Luck) -> Drawn:
    wire = luck.pick(_SIZES)
    given = {
        "use": "building",
        "wire": wire,
        "insulation_class": luck.pick(["75 C", "90 C"]),
        "termination_temperature": "75 C",
        "conductors": luck.pick(["4", "6", "8", "9"]),
        "ambient": luck.reading(31, 50, "1", "C"),
        "current": luck.reading(0.75 * _ABOUT[wire], 1.25 * _ABOUT[wire], "0.1", "A"),
    }
    return Drawn(given)


def _amps(case: Case) -> float:
    return case.figure(_LIES)


EXERCISES = (
    Exercise(
        "{conductors} copper wires of {wire} with {insulation_class} insulation, all carrying "
        "current, lie in one raceway where it is {ambient} warm. Their terminals are marked "
        "{termination_temperature}. Each carries {current}.",
        "How much may each carry as it lies, by NEC Table 310.16 (its breaker not counted)?",
        _draw,
        _amps,
        "A",
        "0.1",
        (
            Slip(
                "wrong column",
                "You read the column of another insulation: 75 C for 90 C, or 90 C for 75 C.",
                lambda case: _amps(case.but(insulation_class=_other_class(case))),
            ),
            Slip(
                "number of wires left out",
                "You left out the factor for more than three wires that carry current.",
                lambda case: _amps(case.but(conductors="3")),
            ),
            Slip(
                "warmth of the place left out",
                "You left out the factor for a place that is warmer than 30 C.",
                lambda case: _amps(case.but(ambient="30 C")),
            ),
            Slip(
                "the table alone",
                "This is what the table says for 30 C and three wires: both factors are missing.",
                lambda case: case.figure("ampacity of the table"),
            ),
            Slip(
                "wrong row",
                "You read the row of the next thinner wire.",
                lambda case: _amps(case.but(wire=_thinner(case))),
            ),
        ),
        judged="load on the wire",
        meter={"current": "±(2%+5)"},
    ),
)


def _other_class(case: Case) -> str:
    return {"75 C": "90 C", "90 C": "75 C"}[str(case.drawn.given["insulation_class"])]


def _thinner(case: Case) -> str:
    return ["14 AWG", *_SIZES][_SIZES.index(str(case.drawn.given["wire"]))]
