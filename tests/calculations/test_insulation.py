"""What the shared tests need to know of `insulation`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, Worded, near, texts

TRIAL = Trial(
    good={"insulation_resistance": "50 Mohm", "protection": "class-i"}
    | {"tested_part": "heater", "test_voltage": "500 V", "switched_on": "yes"}
    | {"electronics_unplugged": "yes", "dried": "no", "nameplate_power": "2585 W"}
    | {"nameplate_voltage": "240 V"},
    zero=("insulation_resistance",),
    printed=("test_voltage", "nameplate_power", "nameplate_voltage"),
    bad=(
        Bad(
            "insulation_resistance",
            "20 mohm",
            "20 mohm",
            "which unit was meant? write 20 Mohm, or 0.00000002 Mohm",
        ),
        Bad("insulation_resistance", "-1 Mohm", "'-1 Mohm'", "50 Mohm"),
        Bad("protection", "grounded", "'grounded'", "class-i"),
        Bad("protection", "class-1", "'class-1'", "did you mean class-i"),
        Bad("tested_part", "heaters", "'heaters'", "did you mean heater?"),
        Bad("test_voltage", "500 mA", "'mA'", "write it in V"),
        Bad("test_voltage", "5000 V", "'5000 V'", "such as 500 V"),
        Bad("switched_on", "on", "'on'", "yes or no"),
        Bad("electronics_unplugged", "partly", "'partly'", "yes or no"),
        Bad("dried", "damp", "'damp'", "yes or no"),
        Bad("nameplate_voltage", "5 V", "'5 V'", "such as 115 V"),
        Bad("nameplate_power", "2585 kW", "'2585 kW'", "check the number and its unit"),
        Bad("insulation_resistance", "OL", "past the meter's range", "with >, such as"),
        Bad("insulation_resistance", "<3 Mohm", "no one number", "0 to 3 Mohm"),
        Bad("insulation_resistance", ">9 Mohm ±5%", "a side and an error", "drop the ±"),
        Bad("insulation_resistance", ">2000000 Mohm", "outside", "which was meant?"),
    ),
    always={
        "insulation_resistance": near(0.01, 0.25, 0.3, 1, 2, 10, high=50),
        "protection": texts(["class-i", "class-i", "class-ii", "class-iii"]),
        "tested_part": texts(["machine", "heater", "compressor", "motor"]),
    },
    sometimes={
        "test_voltage": texts(["500 V", "500 V", "250 V", "9 V"]),
        "switched_on": texts(["yes", "yes", "no"]),
        "electronics_unplugged": texts(["yes", "yes", "no"]),
        "dried": texts(["yes", "no"]),
        "nameplate_power": texts(["2585 W", "4 kW"]),
        "nameplate_voltage": texts(["12 V", "24 V"]),
        "neutral_strap": texts(["no-strap", "no-strap", "fitted", "lifted", "removed"]),
    },
    why="500 V on a part: dead, unplugged, bled; boards out; none where gas may be.",
    cautions=("dead-01", "dead-02", "cap-01", "ins-01", "ins-02"),
    not_checked=("boards and surge parts", "shorted turns"),
    when=(
        When(
            "a compressor: a spark beside its gas, and none of its windings in a vacuum",
            {"tested_part": "compressor"},
            comes=("flam-01", "compressor-vacuum"),
        ),
        When(
            "strap lifted for the test: it goes back",
            {"neutral_strap": "lifted"},
            comes=("cord-02",),
        ),
    ),
    worded={
        "compressor-vacuum": Worded("stop", ("No test voltage", "under vacuum"), ("maker's sheet",))
    },
    steps=(
        Step(
            "insulation to the case",
            "insulation_resistance",
            {"1 Mohm": "pass", "0.99 Mohm": "fail"},
            limit="class I: 1 Mohm",
            source="DIN VDE 0701-0702",
        ),
        Step(
            "insulation to the case",
            "insulation_resistance",
            {"2 Mohm": "pass", "1.99 Mohm": "fail"},
            given={"protection": "class-ii"},
            limit="class II: 2 Mohm",
            source="DIN VDE 0701-0702",
        ),
        Step(
            "insulation by an inspection guide",
            "insulation_resistance",
            {"2 Mohm": "pass", "1.99 Mohm": "marginal"},
            limit="2 Mohm, advice",
            source="an inspection guide",
        ),
        Step(
            "tested at 500 V dc",
            "test_voltage",
            {"500 V": "pass", "499 V": "marginal", "250 V": "marginal", "249 V": "not judged"},
            limit="500 V dc; under 250 V a good reading shows nothing",
            source="DIN VDE 0701-0702; 250 V is common practice",
        ),
        Step(
            "insulation to the case",
            "insulation_resistance",
            {"0.3 Mohm": "pass", "0.29 Mohm": "cannot tell"},
            given={"tested_part": "heater"},
            limit="switched-on heaters of class I: 0.3 Mohm; a low one is dried first",
            source="DIN VDE 0701-0702",
        ),
    ),
)
