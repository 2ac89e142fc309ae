"""What the shared tests need to know of `pull-batch`."""

from __future__ import annotations

from .trial import Bad, Trial

TRIAL = Trial(
    good={"wire": "18 AWG", "terminal": "ring", "force": "24.1 lbf"},
    zero=("force",),
    bad=(
        Bad("terminal", "rnig", "'rnig'", "did you mean ring?"),
        Bad("force", "24 lb", "'lb'", "lbf"),
        Bad("force", ["24.1 lbf", "23.4 lb", "25.0 lbf"], "'lb'", "lbf"),
        Bad("force", ["24.1 lbf", "2380 lbf"], "2380 lbf is more than 18 AWG", "check the unit"),
        Bad("force", ["24.1 lbf", "24.1 lbf"], "all 2 forces are 24.1 lbf", "check the record"),
    ),
    light=False,  # its bounds are statistics
    drawn_in=("test_batch.py",),
    why="As for one pull.",
    cautions=("pull-01", "crimp-03"),
    not_checked=("one-minute hold", "crimp height", "qualification of a learner", "capability"),
)
