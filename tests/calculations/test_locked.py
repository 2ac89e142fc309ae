"""What the shared tests need to know of `locked`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"high_time": "6 s", "high_current": "11 A", "locked_rotor_current": "12 A"}
    | {"rated_load_current": "1.6 A", "nameplate_voltage": "115 V", "voltage": "117 V"}
    | {"settled": "1.2 A", "overload_trips": "3", "reset_time": "3 min"},
    zero=("high_time", "settled"),
    printed=("locked_rotor_current", "rated_load_current", "nameplate_voltage"),
    bad=(
        Bad("high_time", "6 min", "'6 min'", "check the number and its unit"),
        Bad("reset_time", "300 min", "'300 min'", "such as 3 min"),
        Bad("high_current", "1 A", "1 A", "while it stays high"),  # below the settled one
        Bad("locked_rotor_current", "1.2 A", "1.2 A", "look at the plate"),
        Bad("overload_trips", "0", "never opened", "count its clicks"),
        Bad("overload_trips", "2.5", "'2.5'", "whole number"),
    ),
    always={"high_time": near(1, 3, high=10)},
    sometimes={
        "high_current": near(7.56, 8.4, 9.24, high=14),
        "locked_rotor_current": texts(["12 A"]),
        "rated_load_current": texts(["1.6 A"]),
        "nameplate_voltage": texts(["115 V"]),
        "voltage": near(92, 103.5, 115, 126.5, 138, high=150),
        "settled": near(0.32, 0.48, 1.6, 1.76, 2.304, high=3),
        "overload_trips": texts(["0", "3"]),
        "reset_time": near(1, 60, high=100),
        "motor_kind": texts(["motor", "compressor"]),
        "inverter": texts(["yes", "no"]),
    },
    why=("Full current into a motor that stands: heat, gas; it starts by itself once it is free."),
    cautions=("start-01", "live-02", "meter-01", "pin-01", "flam-01", "heat-03", "mov-01"),
    not_checked=("windings, start device and capacitor", "mechanically stuck"),
    steps=(
        Step(
            "time at high current",
            "high_time",
            {"1 s": "pass", "1.01 s": "marginal", "3 s": "marginal", "3.01 s": "fail"},
            limit="within 1 s normal, over 3 s stop",
            source="common practice, no source",
        ),
        Step(
            "overload stays closed",
            "overload_trips",
            {"0": "pass", "1": "fail"},
            given={"reset_time": ""},
            limit="it does not open in an hour",
            source="common practice, no source",
        ),
        Step(
            "time to reset, lower limit",
            "reset_time",
            {"1 min": "pass", "0.9 min": "marginal"},
            limit="one minute: advice, it may be a control",
            source="common practice, no source",
        ),
        Step(
            "time to reset, upper limit",
            "reset_time",
            {"60 min": "pass", "61 min": "marginal"},
            limit="an hour: advice",
            source="a room air conditioner maker's service manual",
        ),
    ),
)
