"""What the shared tests need to know of `equivalent`."""

from __future__ import annotations

from .trial import Trial, When, texts

TRIAL = Trial(
    good={"wire": "14 AWG"},
    always={"wire": texts(["0.75 mm2", "14 AWG", "26x30 AWG", "120 mm2", "2 AWG"])},
    why="A size alone makes no substitute: the ratings count, and the metal.",
    cautions=("sub-01",),
    not_checked=("insulation, temperature, voltage", "fits the barrel"),
    when=(
        When("wire of aluminium", {"wire": "12 AWG aluminium"}, comes=("alu-01",)),
        When(
            "clad wire counts as aluminium",
            {"wire": "12 AWG copper-clad aluminium"},
            comes=("alu-01",),
        ),
    ),
)
