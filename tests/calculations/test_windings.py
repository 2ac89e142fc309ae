"""What the shared tests need to know of `windings`."""

from __future__ import annotations

from .trial import Bad, Trial, When, near, texts

TRIAL = Trial(
    good={"reading_1_2": "4.1 ohm", "reading_1_3": "16.2 ohm", "reading_2_3": "12.2 ohm"}
    | {"lead_resistance": "0.1 ohm", "open_pin": "none", "common_pin": "2", "maker_run": "4 ohm"}
    | {"maker_start": "12 ohm", "winding_temperature": "24 C", "case_resistance": "20 Mohm"}
    | {"maker_each": "6.2 ohm"},
    zero=(
        "reading_1_2",
        "reading_1_3",
        "reading_2_3",
        "lead_resistance",
        "winding_temperature",
        "case_resistance",
    ),
    printed=("maker_run", "maker_start", "maker_each"),
    bad=(
        Bad("maker_run_high", "3.9 ohm", "not above 4 ohm", "low to high"),
        Bad("maker_start_high", "11 ohm", "not above 12 ohm", "low to high"),
        Bad("maker_each_high", "5 kohm", "'5 kohm'", "6.8 ohm"),
        Bad("reading_1_2", "4.6 kohm", "'4.6 kohm'", "check the number and its unit"),
        Bad("reading_1_3", "OL", "past the meter's range", "is open_pin"),
        Bad("reading_2_3", "-0.1 ohm", "'-0.1 ohm'", "up to 1000 ohm"),
        Bad("reading_1_2", "4.6 W", "'W'", "write it in ohm"),
        Bad("lead_resistance", "4.6 ohm", "'4.6 ohm'", "up to 2 ohm"),
        Bad("open_pin", "4", "'4'", "such as none"),
        Bad("open_pin", "OL", "'OL'", "such as none"),
        Bad("common_pin", "C", "'C'", "such as 1"),
        Bad("winding_temperature", "200 C", "'200 C'", "200 F"),
        Bad("case_resistance", "20 mega", "'mega'", "did you mean"),
    ),
    sometimes={
        "reading_1_2": near(4, 4.6, 8, 10, 12, 15.2, high=20),
        "reading_1_3": near(8, 12, 4.6, 4.8, 15.2, 16.84, high=20),
        "reading_2_3": near(15.2, 16, 16.84, 4, 9.3, high=20),
        "open_pin": texts(["none", "none", "1", "3", "all"]),
        "lead_resistance": near(0.1, 0.3, high=0.5),
        "common_pin": texts(["1", "3"]),
        "winding_temperature": near(7.1, 25, 43.2, low=-40, high=120),
        "maker_run": texts(["4 ohm", "4.3 ohm"]),
        "maker_start": texts(["12 ohm", "11.2 ohm"]),
        "case_resistance": near(1, 2, high=30),
        "maker_each": texts(["4 ohm", "6.2 ohm"]),
        "maker_run_high": texts(["4.5 ohm"]),
        "maker_start_high": texts(["13 ohm"]),
        "maker_each_high": texts(["6.8 ohm"]),
        "motor_kind": texts(["compressor", "motor"]),
    },
    why="Hands on the pins of a motor that may hold charge.",
    cautions=("dead-01", "cap-01", "pin-01", "ins-01"),
    not_checked=("shorted turns", "insulation at its test voltage", "insulation to the case"),
    when=(
        When(
            "three equal readings: an inverter's motor",
            {"reading_1_2": "4.6 ohm", "reading_1_3": "4.6 ohm", "reading_2_3": "4.6 ohm"},
            comes=("inv-01",),
        ),
    ),
)
