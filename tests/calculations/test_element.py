"""What the shared tests need to know of `element`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"maker_element": "22 ohm"}
    | {"element_resistance": "22.6 ohm", "lead_resistance": "0.2 ohm"}
    | {"nameplate_power": "2585 W", "nameplate_voltage": "240 V", "element_voltage": "232 V"},
    zero=("element_resistance", "lead_resistance"),
    printed=("nameplate_power", "nameplate_voltage", "maker_element"),
    bad=(
        Bad("nameplate_power", "2585 kW", "'2585 kW'", "check the number and its unit"),
        Bad("nameplate_power", "2.585 W", "2.585 W", "check W and kW"),
        Bad("nameplate_power", "10.8 A", "'A'", "W"),
        Bad("element_resistance", "-1 ohm", "'-1 ohm'", "22.6 ohm"),
        Bad("element_resistance", "22.4 kohm", "'22.4 kohm'", "such as 22.6 ohm"),
        Bad("element_resistance", "0.15 ohm", "0.15 ohm", "touched together"),  # the leads
        Bad("lead_resistance", "20 ohm", "'20 ohm'", "0.2 ohm"),
        Bad("element_voltage", "232 mV", "'232 mV'", "232 V"),
        Bad("maker_element_high", "500 kohm", "'500 kohm'", "25 ohm"),
        Bad("element_resistance", "O.L. ohm", "past the meter's", "element_open yes"),
    ),
    sometimes={
        # 2585 W at 240 V are 22.28 ohm: 10 % less and more are 20.05 and 24.51
        "element_resistance": near(0.5, 20.05, 20.35, 22.28, 24.51, 24.81, high=60),
        "lead_resistance": near(0.3, high=1),
        "element_open": texts(["yes", "no"]),
        "nameplate_power": texts(["2585 W"]),
        "nameplate_voltage": texts(["240 V"]),
        "element_voltage": near(120, 187.2, 208, 216, 232, 264, high=300),
        "element_kind": texts(["wire", "wire", "ptc"]),
        "maker_element": texts(["21.5 ohm"]),
        "maker_element_high": texts(["24 ohm"]),
        "nominal_voltage": texts(["208 V", "240 V"]),
        "voltage_at_rest": near(209, 240, high=300),
    },
    apart=("element_open",),
    why=(
        "Ohms on a dead, cold element of two legs; its joints sit in the heat; defrost beside gas."
    ),
    cautions=("dead-01", "dead-03", "hot-01", "heat-01", "flam-01"),
    not_checked=("sheath and case", "both legs", "thermostat, relay, cut-off"),
    when=(
        When(
            "volts read across it while it heats",
            {"element_voltage": "238 V"},
            comes=("live-01", "meter-01"),
        ),
    ),
    steps=(
        Step(
            "resistance, upper limit",
            "element_resistance",
            {"24.7 ohm": "pass", "24.8 ohm": "fail"},
            limit="240^2 / 2585 is 22.28 ohm; 10 % more is 24.51, the leads of 0.2 ohm taken off",
            source="common practice, no source",
        ),
        Step(
            "resistance, lower limit",
            "element_resistance",
            {"20.3 ohm": "pass", "20.2 ohm": "cannot tell"},
            limit=(
                "22.28 ohm less 10 % is 20.05, the leads of 0.2 ohm taken off; cold wire may "
                "read less"
            ),
            source="common practice, no source",
        ),
        Step(
            "volts enough for its heat",
            "element_voltage",
            {"216 V": "pass", "215.9 V": "cannot tell"},
            limit="90 % of 240 V",
            source="makers' sheets",
        ),
        Step(
            "volts not above the plate's",
            "element_voltage",
            {"264 V": "pass", "264.1 V": "fail"},
            limit="110 % of 240 V",
            source="makers' sheets",
        ),
        Step(
            "resistance, lower limit",
            "element_resistance",
            {"17 ohm": "cannot tell", "16.9 ohm": "fail"},
            limit=(
                "22.28 ohm less 25 % is 16.71, and the leads of 0.2 ohm: no wire reads so much "
                "less cold"
            ),
            source="common practice, no source",
        ),
        Step(
            "resistance, upper limit",
            "element_resistance",
            {
                "24.5 ohm": "pass",
                "24.6 ohm": "cannot tell",
                "24.8 ohm": "cannot tell",
                "24.9 ohm": "fail",
            },
            given={"lead_resistance": ""},
            limit="24.51 ohm; leads that were not read have up to 0.3 ohm",
            source="common practice, no source",
        ),
    ),
)
