"""What the shared tests need to know of `start-device`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"start_device": "ptc", "device_resistance": "6.8 ohm"}
    | {"lead_resistance": "0.2 ohm"}
    | {"by_itself": "yes", "device_cold": "yes", "maker_resistance": "6.8 ohm"}
    | {"maker_tolerance": "25 %", "nameplate_voltage": "115 V"},
    zero=("device_resistance", "lead_resistance"),
    printed=("maker_resistance", "maker_tolerance", "nameplate_voltage"),
    bad=(
        Bad("start_device", "PTCs", "'PTCs'", "ptc"),
        Bad("device_resistance", "6.8 Mohm", "'6.8 Mohm'", "which was meant?"),
        Bad("maker_tolerance", "80 %", "'80 %'", "25 %"),
        Bad("maker_resistance_high", "6.8 ohm", "not above 6.8 ohm", "low to high"),
        Bad("maker_resistance", "15-28 ohm", "a range", "28 ohm as maker_resistance_high"),
        Bad("by_itself", "off", "'off'", "yes or no"),
        Bad("device_cold", "cold", "'cold'", "yes or no"),
        Bad("device_resistance", "OL", "past the meter's range", "device_open yes"),
    ),
    always={
        "start_device": texts(
            ["ptc", "ptc", "run-thermistor", "current-relay", "potential-relay", "combined-kit"]
        )
    },
    sometimes={
        "device_resistance": near(1, 3, 5.1, 8.84, 10, 12, 25, 50, 500, 1000, high=2000),
        "lead_resistance": near(0.3, high=1),
        "device_open": texts(["yes", "no"]),
        "by_itself": texts(["yes", "yes", "no"]),
        "device_cold": texts(["yes", "yes", "no"]),
        "maker_resistance": texts(["6.8 ohm", "33 ohm"]),
        "maker_resistance_high": texts(["50 ohm"]),
        "maker_tolerance": texts(["20 %", "25 %"]),
        "nameplate_voltage": texts(["115 V", "230 V"]),
        "contact_upright": texts(["open", "closed"]),
        "contact_inverted": texts(["open", "closed"]),
        "coil_open": texts(["yes", "no"]),
        "browned_or_rattling": texts(["no", "no", "yes"]),
    },
    apart=("coil_open", "contact_inverted", "contact_upright", "device_open"),
    why=("Hands on the pins, a capacitor on them, the device hot; only what the maker names."),
    cautions=("dead-01", "cap-01", "hot-01", "flam-01", "flam-02", "sub-01"),
    not_checked=("switches in service", "compressor's maker names"),
    steps=(
        Step(
            "start device not shorted",
            "device_resistance",
            {"1.2 ohm": "pass", "1.1 ohm": "fail"},
            limit="1 ohm, the leads of 0.2 ohm taken off",
            source="common practice, no source",
        ),
        Step(
            "resistance, lower limit",
            "device_resistance",
            {"3.2 ohm": "pass", "3.1 ohm": "cannot tell"},
            limit=(
                "3 to 12 ohm of a PTC for 115 V, other devices have up to 100, the leads of 0.2"
                " ohm taken off"
            ),
            source="service manuals",
        ),
        Step(
            "resistance, upper limit",
            "device_resistance",
            {
                "10.2 ohm": "pass",
                "10.3 ohm": "marginal",
                "12.2 ohm": "marginal",
                "12.3 ohm": "cannot tell",
            },
            limit="3 to 10 ohm, other manuals 3 to 12, the leads of 0.2 ohm taken off",
            source="service manuals",
        ),
        Step(
            "resistance, upper limit",
            "device_resistance",
            {"1000.2 ohm": "cannot tell", "1000.3 ohm": "fail"},
            limit="ten times the 100 ohm of any text, and the leads of 0.2 ohm: open",
            source="common practice, no source",
        ),
        Step(
            "resistance, upper limit",
            "device_resistance",
            {"50.2 ohm": "pass", "50.3 ohm": "cannot tell"},
            given={"start_device": "run-thermistor"},
            limit="25 to 50 ohm across the run capacitor, and the leads of 0.2 ohm",
            source="a trade text",
        ),
        Step(
            "resistance, lower limit",
            "device_resistance",
            {"25.2 ohm": "pass", "25.1 ohm": "cannot tell"},
            given={"start_device": "run-thermistor"},
            limit="25 to 50 ohm across the run capacitor, and the leads of 0.2 ohm",
            source="a trade text",
        ),
    ),
)
