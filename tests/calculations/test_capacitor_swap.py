"""What the shared tests need to know of `capacitor-swap`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"old_capacitor": "30 uF", "new_capacitor": "30 uF"}
    | {"old_capacitor_voltage": "250 V", "new_capacitor_voltage": "370 V"}
    | {"old_capacitor_duty": "run", "new_capacitor_duty": "run"}
    | {"old_capacitor_temperature": "70 C", "new_capacitor_temperature": "85 C"}
    | {"cutoff_voltage": "280 V"},
    printed=(
        "old_capacitor",
        "new_capacitor",
        "old_capacitor_voltage",
        "new_capacitor_voltage",
        "old_capacitor_temperature",
        "new_capacitor_temperature",
    ),
    bad=(
        Bad("old_capacitor_duty", "strat", "'strat'", "did you mean start?"),
        Bad("new_capacitor_duty", "motor run", "'motor run'", "run"),
        Bad("new_capacitor_high", "36 uF", "one size", "a start part?"),
        Bad("new_capacitor_voltage", "370 mV", "'370 mV'", "370 V"),
    ),
    always={
        "old_capacitor": texts(["30 uF", "88 uF"]),
        "new_capacitor": texts(["28.5 uF", "30 uF", "35 uF", "88 uF", "90 uF"]),
        "old_capacitor_voltage": texts(["125 V", "250 V", "370 V"]),
        "new_capacitor_voltage": texts(["110 V", "250 V", "330 V", "440 V"]),
        "old_capacitor_duty": texts(["run", "start"]),
        "new_capacitor_duty": texts(["run", "start"]),
    },
    sometimes={
        "old_capacitor_high": texts(["106 uF"]),
        "new_capacitor_high": texts(["106 uF", "120 uF"]),
        "old_capacitor_temperature": texts(["70 C"]),
        "new_capacitor_temperature": texts(["65 C", "85 C"]),
        "cutoff_voltage": near(160, 300, 400, high=500),
        "old_capacitor_protection": texts(["none-marked", "s0", "s3", "protected"]),
        "new_capacitor_protection": texts(["none-marked", "s3"]),
        "old_capacitor_life": texts(["b"]),
        "new_capacitor_life": texts(["a", "c"]),
    },
    figures=False,  # it compares marks, parts or yes and no
    why=(
        "A charged part comes off; fewer volts, a start part, or a wrong lead bursts "
        "it; gas near by."
    ),
    cautions=("cap-03", "dead-01", "cap-01", "cap-02", "cap-04", "sub-01", "flam-02"),
    not_checked=("maker's own list", "size of the case", "two sections"),
    when=(
        When(
            "start capacitors: no start after start on a new one",
            {"old_capacitor_duty": "start", "new_capacitor_duty": "start"},
            comes=("start-01",),
        ),
    ),
    steps=(
        Step(
            "size, lower limit",
            "new_capacitor",
            {"28.5 uF": "pass", "28.49 uF": "fail"},
            limit="30 uF less 5 %",
            source="common practice, no source",
        ),
        Step(
            "size, upper limit",
            "new_capacitor",
            {"31.5 uF": "pass", "31.51 uF": "fail"},
            limit="30 uF and 5 %",
            source="common practice, no source",
        ),
        Step(
            "volts",
            "new_capacitor_voltage",
            {"250 V": "pass", "249 V": "fail"},
            limit="no lower than the old part's 250 V",
            source="four trade texts and a component guide",
        ),
        Step(
            "temperature rating",
            "new_capacitor_temperature",
            {"70 C": "pass", "69 C": "fail"},
            limit="no lower than the old part's 70 C",
            source="common practice, no source",
        ),
    ),
)
