"""Exercises in a batch of pulls, where the mean hides a bad crimp."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_ABOUT = {"18 AWG": 20, "16 AWG": 30, "14 AWG": 50}  # lbf to draw near
_GOOD = 7  # crimps that hold well; one more is drawn near the least
_LOWEST = "lowest pull, ul-486a"


def _draw(luck: Luck) -> Drawn:
    wire = luck.pick(list(_ABOUT))
    near = _ABOUT[wire]
    forces = [luck.reading(1.2 * near, 1.5 * near, "0.1", "lbf") for _ in range(_GOOD)]
    bad = luck.reading(0.8 * near, 1.15 * near, "0.1", "lbf")
    forces.insert(luck.pick(range(_GOOD)), bad)
    return Drawn({"wire": wire, "terminal": "ring", "force": forces})


def _lowest(case: Case) -> float:
    return case.figure("lowest")


def _over(case: Case) -> float:
    return _lowest(case) - case.limit(_LOWEST)


def _middle(case: Case) -> float:
    forces = sorted(float(text.split()[0]) for text in case.drawn.given["force"])
    return forces[len(forces) // 2]


EXERCISES = (
    Exercise(
        "Eight ring terminals crimped by one learner on {wire} stranded copper let go at: {force}.",
        "How far above the least of UL 486A is the pull that decides (below it: a minus)?",
        _draw,
        _over,
        "lbf",
        "0.1",
        (
            Slip(
                "mean for lowest",
                "You took the mean: every crimp must hold by itself, so the lowest decides.",
                lambda case: case.figure("mean") - case.limit(_LOWEST),
            ),
            Slip(
                "middle for lowest",
                "You took the pull in the middle: half of the crimps lie below it.",
                lambda case: _middle(case) - case.limit(_LOWEST),
            ),
            Slip(
                "the lowest itself",
                "This is the lowest pull; the question is how far it lies from the least.",
                _lowest,
            ),
        ),
    ),
    Exercise(
        "Eight ring terminals crimped by one learner on {wire} stranded copper let go at: {force}.",
        "What is the mean of the pulls (which does not decide)?",
        _draw,
        lambda case: case.figure("mean"),
        "lbf",
        "0.1",
        (
            Slip("lowest for mean", "This is the lowest; here the mean is asked for.", _lowest),
            Slip(
                "one pull left out",
                "You left the lowest pull out of the mean: a bad crimp is no error of the tester.",
                lambda case: (case.figure("mean") * (_GOOD + 1) - _lowest(case)) / _GOOD,
            ),
            Slip(
                "middle for mean",
                "This is the middle of the pulls by size, not their sum over their number.",
                _middle,
            ),
        ),
    ),
)
