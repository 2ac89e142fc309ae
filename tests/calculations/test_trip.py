"""What the shared tests need to know of `trip`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"device": "ul-489", "breaker": "15 A", "locked_rotor_current": "40 A"}
    | {"settle_time": "0.4 s", "settled": "5 A", "on_time": "60 s", "off_time": "20 s"}
    | {"starts": "3", "device_ambient": "30 C", "other_current": "6.2 A"},
    zero=("settle_time", "settled", "on_time", "off_time", "device_ambient", "other_current"),
    printed=("breaker", "locked_rotor_current"),
    bad=(
        Bad("device", "ul-498", "'ul-498'", "did you mean ul-489?"),
        Bad("breaker", "115 A", "'115 A'", "15 A"),
        Bad("breaker", "0 A", "'0 A'", "15 A"),
        Bad("settled", "1200 W", "'W'", "divide by the voltage"),
        Bad("settle_time", "2 m", "'m'", "min"),
        Bad("settle_time", "400 min", "'400 min'", "such as 0.4 s"),
        Bad("settled", "41 A", "41 A is above the start current", "LRA"),
        Bad("device_ambient", "104 C", "'104 C'", "104 F"),
        Bad("starts", "1001", "1001 is outside", "whole number"),
        Bad("starts", "2.5", "'2.5'", "whole number"),
        Bad("curve", "no-such-file.csv", "no-such-file.csv", "check the name"),
    ),
    always={
        "device": texts(
            ["ul-489", "iec-60898-b", "iec-60898-d", "fuse-ul-248-14", "fuse-class-k-time-delay"]
        ),
        "breaker": texts(["10 A", "15 A", "70 A"]),
    },
    sometimes={
        "overcurrent": near(10, 11.3, 13.5, 14.5, 15, 20, 25.5, 30, 50, 100, high=250),
        "overcurrent_time": near(0.1, 1, 8, 60, 120, 3600, 7200, high=20000),
        "locked_rotor_current": texts(["12 A", "40 A"]),
        "settle_time": near(0.1, 0.4, 1, 8, 120, high=600),
        "settled": near(1.2, 10, 11.3, high=12),
        "on_time": near(5, 600, 3600, high=20000),
        "off_time": near(2, 120, high=3600),
        "starts": texts(["1", "2", "7"]),
        "device_ambient": near(25, 30, 40, low=-40, high=90),
        "other_current": near(0.5, 5, high=20),
    },
    apart=("starts",),  # a current was given
    why=("Asked when something trips: no larger device, no reset to see, no start after start."),
    cautions=("brk-01", "start-01", "pin-02", "live-02", "meter-01"),
    not_checked=("heat the breaker had before", "start current above the plate's", "GFCI or AFCI"),
    steps=(
        Step(
            "highest current, however short",
            "overcurrent",
            {"15 A": "pass", "15.1 A": "marginal"},
            given={"overcurrent_time": "24 h"},
            limit="it carries its rating without end",
            source="UL 489, 7.1.2 (100 % calibration)",
        ),
        Step(
            "time at what must trip it",
            "overcurrent_time",
            {"3600 s": "pass", "3601 s": "fail"},
            given={"overcurrent": "20.3 A"},
            limit="135 % of 15 A is 20.25 A: it must trip within an hour, to 50 A",
            source="UL 489, 135 % calibration",
        ),
        Step(
            "air around the device",
            "device_ambient",
            {"40 C": "pass", "41 C": "marginal"},
            given={"overcurrent": "10.6 A"},
            limit="rated in air up to 40 C: advice, no factor is published",
            source="UL 489, marking; from memory",
        ),
        Step(
            "air around the device",
            "device_ambient",
            {"60 C": "pass", "61 C": "marginal"},
            given={"overcurrent": "10.5 A"},
            limit=(
                "0.7 of 15 A is 10.5 A, held in air up to 60 C: makers take under 1 % off a kelvin"
            ),
            source="common practice, no source",
        ),
        Step(
            "highest current, however short",
            "overcurrent",
            {"15 A": "pass", "15.1 A": "marginal"},
            given={"device": "fuse-ul-248-14"},
            limit="a fuse carries its rating without end",
            source="UL 248-14, 100 %",
        ),
    ),
)
