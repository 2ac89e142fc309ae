"""What the shared tests need to know of `choose`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"wire": "18 AWG", "connector": "push-on", "tab_width": "0.250 in", "current": "6.2 A"}
    | {"wire_temperature": "105 C", "place_temperature": "60 C", "circuit_voltage": "120 V"},
    zero=("current", "place_temperature", "circuit_voltage"),
    printed=("tab_width", "wire_temperature"),
    bad=(
        Bad("connector", "pusho", "'pusho'", "did you mean push-on?"),
        Bad("tab_width", "6.3 in", "'6.3 in'", "6.3 mm"),
        Bad("current", "750 W", "'W'", "divide by the voltage"),
    ),
    always={
        "wire": texts([["18 AWG"], ["14 AWG"], ["14 AWG solid", "16 AWG"], ["2.5 mm2"]]),
        "connector": texts(["push-on", "closed-end", "ring"]),
    },
    sometimes={
        "tab_width": texts(["0.187 in", "0.250 in"]),
        "wire_temperature": texts(["105 C", "250 C"]),
        "place_temperature": near(60, 85, 105, 230, low=-40, high=260),
        "current": near(4, 7, 15, high=30),
        "circuit_voltage": near(300, 600, high=700),
    },
    figures=False,  # it compares marks, parts or yes and no
    why=(
        "Stock is no maker's part: its wire, its heat, its rating, its seal beside flammable gas."
    ),
    cautions=("heat-01", "crimp-01", "sub-01", "flam-02"),
    not_checked=("maker's sheet of the part", "insulation diameter", "die of the tool"),
    steps=(
        Step(
            "temperature rating of the wire",
            "place_temperature",
            {"85 C": "pass", "86 C": "fail"},
            limit="105 C less the 20 K that a joint warms by",
            source="common practice, no source",
        ),
    ),
)
