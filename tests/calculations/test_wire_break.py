"""What the shared tests need to know of `wire-break`."""

from __future__ import annotations

from .trial import Trial, texts

TRIAL = Trial(
    good={"wire": "18 AWG"},
    always={"wire": texts(["18 AWG", "17 AWG", "2.5 mm2", "40 AWG", "12 AWG aluminum"])},
    why="A wire is pulled until it parts: eyes, and the sample is gone.",
    cautions=("pull-01",),
    not_checked=("hard-drawn", "crimp"),
)
