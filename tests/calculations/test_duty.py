"""What the shared tests need to know of `duty`."""

from __future__ import annotations

from .trial import Bad, Step, Trial

TRIAL = Trial(
    good={"on_times": "18 min", "off_times": "22 min", "running_power": "120 W"}
    | {"after_restock": "no"},
    zero=("off_times",),
    bad=(
        Bad("on_times", "1800 min", "'1800 min'", "such as 18 min"),
        Bad("on_times", "18 m", "'m'", "min"),
        Bad("on_times", "0 min", "'0 min'", "18 min"),  # it must have run
        Bad("on_times", ["18 min", "19 min", "18 min"], "3 times on and 1 off", "take turns"),
        Bad("running_power", "120 kW", "'120 kW'", "check the number and its unit"),
        Bad("running_power", "1.2 A", "'A'", "W"),
        Bad("after_restock", "maybe", "'maybe'", "yes or no"),
    ),
    drawn_in=("test_monotone_parts.py",),
    why="A clamp or a meter at a live cord.",
    cautions=("live-02", "meter-01"),
    not_checked=("room is a normal one", "that it cools"),
    steps=(
        Step(
            "share of the time that it runs",
            "off_times",
            {"10 min": "pass", "9.98 min": "marginal"},
            given={"on_times": ["40 min"]},
            limit="80 % of the time",
            source="common practice, no source",
        ),
        Step(
            "shortest time on",
            "on_times",
            {"1 min": "pass", "0.9 min": "marginal"},
            given={"off_times": ["21 min", "20 min"]},
            limit="one minute: advice, it may have been cut",
            source="common practice, no source",
        ),
        Step(
            "time on, the middle one",
            "on_times",
            {"3 min": "pass", "2.9 min": "marginal", "1 min": "marginal", "0.9 min": "fail"},
            limit="three minutes are usual, under one it cycles short",
            source="common practice, no source",
        ),
    ),
)
