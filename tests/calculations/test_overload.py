"""What the shared tests need to know of `overload`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"overload_resistance": "0.6 ohm", "lead_resistance": "0.2 ohm"}
    | {"overload_cold": "yes", "trip_temperature": "110 C", "reset_temperature": "68 C"},
    zero=("overload_resistance", "lead_resistance"),
    bad=(
        Bad("trip_temperature", "230 C", "'230 C'", "230 F"),
        Bad("reset_temperature", "115 C", "115 C", "cooler than it opens"),
        Bad("overload_cold", "tepid", "'tepid'", "yes or no"),
        Bad("overload_resistance", "OL", "past the meter's range", "overload_open yes"),
    ),
    sometimes={
        "overload_resistance": near(0.3, 1, 1.3, 40, high=60),
        "nameplate_voltage": texts(["115 V", "230 V"]),
        "lead_resistance": near(0.3, high=1),
        "overload_open": texts(["yes", "no"]),
        "overload_cold": texts(["yes", "no"]),
        "trip_temperature": near(70, 107.22, 121.11, 160, low=40, high=200),
        "reset_temperature": near(65.56, 71.11, low=20, high=100),
    },
    apart=("overload_open",),
    why=("Hands on hot pins with a capacitor on them; never bridged; it closes by itself."),
    cautions=("dead-01", "cap-01", "hot-01", "heat-03", "pin-01", "flam-01", "flam-02", "mov-01"),
    not_checked=("very overload", "how soon"),
    steps=(
        Step(
            "overload conducts",
            "overload_resistance",
            {"1.2 ohm": "pass", "1.3 ohm": "fail"},
            given={"nameplate_voltage": "115 V", "overload_cold": "yes"},
            limit="1 ohm, the leads of 0.2 ohm taken off",
            source="a repair manual",
        ),
        Step(
            "opens hot enough",
            "trip_temperature",
            {"158 F": "marginal", "157 F": "cannot tell"},
            limit="the shell of a good compressor comes to 70 C, 158 F",
            source="common practice, no source",
        ),
        Step(
            "overload conducts",
            "overload_resistance",
            {"40.2 ohm": "cannot tell", "40.3 ohm": "fail"},
            given={"overload_cold": "yes", "nameplate_voltage": "230 V"},
            limit="40 ohm, and the leads of 0.2 ohm: as good as open, ten times one for 230 V",
            source="common practice, no source",
        ),
        Step(
            "overload conducts",
            "nameplate_voltage",
            {"100 V": "fail", "99 V": "cannot tell"},
            given={"overload_cold": "yes", "overload_resistance": "1.5 ohm"},
            limit="the manual's 1 ohm is of units for 115 V, 100 V on a plate at the end",
            source="common practice, no source",
        ),
        Step(
            "overload conducts",
            "nameplate_voltage",
            {"130 V": "fail", "131 V": "cannot tell"},
            given={"overload_cold": "yes", "overload_resistance": "1.5 ohm"},
            limit="the manual's 1 ohm is of units for 115 V, 130 V on a plate at the end",
            source="common practice, no source",
        ),
    ),
)
