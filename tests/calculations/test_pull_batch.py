"""What the shared tests need to know of `pull-batch`."""

from __future__ import annotations

from .trial import Trial

TRIAL = Trial(
    drawn_in=("test_batch.py",),
    why="As for one pull.",
    cautions=("pull-01", "crimp-03"),
    not_checked=("one-minute hold", "crimp height", "qualification of a learner", "capability"),
)
