"""What the shared tests need to know of `discharge`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"marked_capacitance": "30 uF", "resistor": "20000 ohm"}
    | {"capacitor_voltage": "214 V", "left_voltage": "300 V", "resistor_power": "2 W"},
    zero=("left_voltage",),
    printed=("marked_capacitance", "resistor", "resistor_power"),
    bad=(
        Bad("resistor", "R 20", "'R 20'", "a number and a unit"),
        Bad("resistor", "20 Mohm", "'20 Mohm'", "up to"),
        Bad("resistor_power", "2 A", "'A'", "write it in W"),
    ),
    always={
        "marked_capacitance": texts(["5 uF", "30 uF", "108 uF"]),
        "resistor": texts(["20 ohm", "1 kohm", "15 kohm", "20 kohm"]),
    },
    sometimes={
        "capacitor_voltage": near(5 / 2**0.5, 214, high=500),
        "left_voltage": near(5, 50, 300, high=600),
        "resistor_power": texts(["2 W"]),
        "marked_high": texts(["106 uF"]),
    },
    why=("A charged part in a machine that must be off; a spark beside gas; the bleeder stays."),
    cautions=("cap-01", "dead-01", "cap-02", "flam-01"),
    not_checked=("under 5 V", "broken resistor", "pulse rating", "come back by themselves"),
    steps=(
        Step(
            "load on the resistor",
            "resistor_power",
            {"1.94 W": "pass", "1.93 W": "cannot tell"},
            given={"capacitor_voltage": "440 V"},
            limit=(
                "2 x 440^2 / 20000 is 19.36 W, tenfold for a second; beyond it its pulse rating"
                " decides"
            ),
            source="common practice, no source",
        ),
        Step(
            "volts left on it",
            "left_voltage",
            {"684 V": "not judged", "685 V": "cannot tell"},
            given={"capacitor_voltage": "440 V"},
            limit="440 V has a crest of 622.3 V; 1.1 times that is 684.5 V",
            source="common practice, no source",
        ),
    ),
)
