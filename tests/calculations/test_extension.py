"""What the shared tests need to know of `extension`."""

from __future__ import annotations

from .trial import RUN, Bad, Step, Trial, When, Worded, near, texts

TRIAL = Trial(
    good={"extension_cord": "16 AWG", "extension_length": "50 ft", "current": "1.6 A"}
    | {"maker_allows": "no", "grounding": "yes", "cord_rating": "15 A", "cord_conductors": "2"}
    | {"cord_ambient": "25 C", "nameplate_voltage": "115 V", "locked_rotor_current": "14.2 A"}
    | {"voltage_at_rest": "117.5 V", "voltage_at_start": "104 V", "building_wire": "14 AWG"}
    | {"run_length": "60 ft", "other_current": "6.2 A", "conductor_temperature": "60 C"}
    | {"has_motor": "yes", "motor_start": "direct", "protection": "class-i"},
    zero=("cord_ambient", "other_current", "conductor_temperature"),
    printed=("cord_rating", "nameplate_voltage", "locked_rotor_current"),
    bad=(
        Bad("voltage_at_start", "600 V", "600 V during the start", "range and unit"),
        Bad("protection", "class 2", "'class 2'", "class-i, class-ii"),
        Bad("motor_start", "soft", "'soft'", "direct, inverter"),
        Bad("maker_allows", "maybe", "'maybe'", "no, three-wire grounding, yes"),
        Bad("grounding", "three", "'three'", "yes or no"),
        Bad("cord_conductors", "4", "4 is outside", "whole number, 2 to 3"),
        Bad("cord_rating", "1875 W", "'W'", "divide by the voltage"),
        Bad(
            "extension_length",
            "50 mm",
            "'50 mm' is next to nothing",
            "0.164 ft if it is so little, or 50 ft",
        ),
        Bad("extension_length", "-50 ft", "'-50 ft'", "50 ft"),
        Bad("locked_rotor_current", "1.5 A", "1.5 A", "look at the plate"),
        Bad("cord_ambient", "104 C", "'104 C'", "104 F"),
        Bad("has_motor", "no", "an LRA on the plate", "look at the plate"),
    ),
    always={
        "extension_cord": texts(["18 AWG", "16 AWG", "14 AWG", "1.5 mm2"]),
        "extension_length": near(50, 150, high=300),
        "current": near(1.6, 10, 13, 15, 18, high=30),
    },
    sometimes=RUN
    | {
        "maker_allows": texts(["no", "three-wire grounding", "yes", "not stated"]),
        "grounding": texts(["yes", "no"]),
        "cord_rating": texts(["10 A", "15 A"]),
        "cord_conductors": texts(["2", "3"]),
        "cord_ambient": near(30, low=-40, high=90),
        "nameplate_voltage": texts(["115 V"]),
        "locked_rotor_current": texts(["14.2 A", "40 A"]),
        "voltage_at_rest": near(103.5, 108.4, 115.9, low=85, high=140),
        "voltage_at_start": near(92, 103.5, high=140),
        "has_motor": texts(["yes", "no"]),
        "motor_start": texts(["direct", "inverter"]),
        "protection": texts(["class-i", "class-ii"]),
    },
    why="A clamp on a live wire; how a cord lies; its plug browns and trips nothing.",
    cautions=("cord-laid", "live-02", "meter-01", "cord-04"),
    not_checked=("cuts, crushed or warm", "water, sun"),
    when=(
        When(
            "the maker allows none: it goes, however it lies",
            {"maker_allows": "no"},
            comes=("cord-away",),
            stays=("cord-laid",),
        ),
        When("the maker says nothing of it", {"maker_allows": "not stated"}, comes=("cord-03",)),
        When("nobody has read what the maker says", {"maker_allows": ""}, comes=("cord-03",)),
        When("volts read in a live receptacle", {"voltage_at_rest": "117 V"}, comes=("live-01",)),
        When(
            "building wire of aluminium", {"building_wire": "12 AWG aluminium"}, comes=("alu-01",)
        ),
    ),
    worded={
        "cord-laid": Worded(
            "stop",
            ("uncoiled", "not under a rug", "No adapter", "no second cord"),
            ("maker's sheet",),
        ),
        "cord-away": Worded(
            "stop", ("Take it away", "no cord will do", "no adapter"), ("maker's sheet",)
        ),
    },
    steps=(
        Step(
            "load on the cord",
            "current",
            {"18 A": "pass", "18.1 A": "fail"},
            given={"building_wire": "10 AWG"},
            limit="14 AWG cord, two wires loaded: 18 A",
            source="NEC (NFPA 70), Table 400.5(A)(1), column B",
        ),
        Step(
            "load against the printed rating",
            "current",
            {"15 A": "pass", "15.1 A": "fail"},
            given={"building_wire": "10 AWG"},
            limit="the 15 A that are printed on it",
            source="makers' sheets",
        ),
        Step(
            "rating of the cord",
            "cord_rating",
            {"15 A": "pass", "14.9 A": "fail"},
            limit="15 A or more",
            source="makers' sheets that allow a cord",
        ),
    ),
)
