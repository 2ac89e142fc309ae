"""Exercises in strip length, with the slips that are made in it."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_MM_PER_IN = 25.4


def _draw(luck: Luck) -> Drawn:
    given: dict[str, str | list[str]] = {
        "wire": [luck.pick(["18 AWG", "16 AWG", "14 AWG"])],
        "style": luck.pick(["closed", "open"]),
        "barrel_length": luck.reading(5.0, 9.0, "0.1", "mm"),
    }
    return Drawn(given)


def _least(case: Case) -> float:
    return case.figure("least strip length")


def _most(case: Case) -> float:
    return case.figure("most strip length")


def _other_style(case: Case) -> Case:
    other = {"closed": "open", "open": "closed"}[str(case.drawn.given["style"])]
    return case.but(style=other)


_BARREL = "the barrel alone", "This is the barrel: the wire must show a little at its end."
_STYLE = "row of the other barrel", "You took the allowance of the other kind of barrel."
_INCH = "in for mm", "These are inches; the question is in mm, 25.4 of them to the inch."
_TOLD = (
    "A conductor of {wire} goes into a barrel of the {style} kind, {barrel_length} long. Take the "
    "allowances of the table strip-rules (`wirecalc tables strip-rules` prints it)."
)

EXERCISES = (
    Exercise(
        _TOLD,
        "How long must it be stripped at least?",
        _draw,
        _least,
        "mm",
        "0.01",
        (
            Slip(*_BARREL, lambda case: case.value("barrel_length")),
            Slip(*_STYLE, lambda case: _least(_other_style(case))),
            Slip(*_INCH, lambda case: _least(case) / _MM_PER_IN),
            Slip("most for least", "This is the most; the least is asked for.", _most),
        ),
    ),
    Exercise(
        _TOLD,
        "How long may it be stripped at most?",
        _draw,
        _most,
        "mm",
        "0.01",
        (
            Slip(*_BARREL, lambda case: case.value("barrel_length")),
            Slip(*_STYLE, lambda case: _most(_other_style(case))),
            Slip(*_INCH, lambda case: _most(case) / _MM_PER_IN),
            Slip("least for most", "This is the least; the most is asked for.", _least),
        ),
    ),
)
