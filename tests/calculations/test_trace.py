"""What the shared tests need to know of `trace`."""

from __future__ import annotations

from .trial import Trial

TRIAL = Trial(
    drawn_in=("test_trace.py",),
    files={"recording": "tests/data/traces/vacuum_current_1hz.csv", "recorded": "rms"},
    why=("A recorder at a live machine that starts, its clamp round one wire; no larger breaker."),
    example={"recording": "tests/data/blind/fridge-good-invented.csv"},
    cautions=("live-01", "live-02", "meter-01", "start-01", "pin-01", "flam-01", "brk-01"),
    not_checked=("cools, pumps or turns", "which load it was", "highest instantaneous current"),
)
