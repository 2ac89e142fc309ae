"""Exercises in the least pull-out force, with the slips that are made in it."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_SIZES = ["22 AWG", "20 AWG", "18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"]
_ABOUT = {"22 AWG": 8, "20 AWG": 13, "18 AWG": 20, "16 AWG": 30, "14 AWG": 50}  # lbf to draw near
_ABOUT |= {"12 AWG": 70, "10 AWG": 80}
_PULL = "pull-out force"
_N_PER_LBF, _LBF_PER_KGF = 4.4482216, 2.2046226


def _draw(luck: Luck) -> Drawn:
    wire = luck.pick(_SIZES)
    near = _ABOUT[wire]
    given = {
        "wire": wire,
        "terminal": luck.pick(["ring", "fork"]),
        "force": luck.reading(0.96 * near, 1.5 * near, "0.1", "lbf"),
    }
    return Drawn(given)


def _least(case: Case) -> float:
    return case.limit(_PULL)


def _over(case: Case) -> float:
    return case.value("force") - _least(case)


def _beside(case: Case, step: int) -> Case:
    """Return the run with the next thinner (-1) or thicker (+1) size of the table."""
    place = _SIZES.index(str(case.drawn.given["wire"])) + step
    if not 0 <= place < len(_SIZES):
        raise KeyError(place)
    return case.but(wire=_SIZES[place])


def _clamped(case: Case) -> Case:
    return case.but(terminal="clamp")


_THINNER = "row of the thinner wire", "You read one row off: that is the next thinner wire."
_THICKER = "row of the thicker wire", "You read one row off: that is the next thicker wire."
_CLAMP = "clamp table for a crimp", "That is the table of screw clamps; a crimp must hold far more."
_KGF = "kgf for lbf", "These are kgf; the question is in lbf, 2.205 of them to the kgf."
_NEWTON = "N for lbf", "These are newtons; the question is in lbf, 4.448 N each."
_CRIMP = "A {terminal} terminal was crimped on {wire} stranded copper and pulled: {force}."

EXERCISES = (
    Exercise(
        _CRIMP,
        "What is the least it must hold by UL 486A?",
        _draw,
        _least,
        "lbf",
        "0.1",
        (
            Slip(*_THINNER, lambda case: _least(_beside(case, -1))),
            Slip(*_THICKER, lambda case: _least(_beside(case, 1))),
            Slip(*_CLAMP, lambda case: _least(_clamped(case))),
            Slip(*_KGF, lambda case: _least(case) / _LBF_PER_KGF),
            Slip(*_NEWTON, lambda case: _least(case) * _N_PER_LBF),
        ),
        judged=_PULL,
        meter={"force": "±(1%+5)"},
    ),
    Exercise(
        _CRIMP,
        "How much more does it hold than the least of UL 486A (less: a minus before it)?",
        _draw,
        _over,
        "lbf",
        "0.1",
        (
            Slip(*_THINNER, lambda case: _over(_beside(case, -1))),
            Slip(*_THICKER, lambda case: _over(_beside(case, 1))),
            Slip(*_CLAMP, lambda case: _over(_clamped(case))),
            Slip(
                "kgf for lbf",
                "You took the tester's number for kgf; it shows lbf.",
                lambda case: case.value("force") * _LBF_PER_KGF - _least(case),
            ),
        ),
        judged=_PULL,
        meter={"force": "±(1%+5)"},
    ),
)
