"""What the shared tests need to know of `ampacity`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"use": "building", "wire": "14 AWG", "insulation_class": "60 C"}
    | {"termination_temperature": "60 C", "conductors": "2", "cord_conductors": "2"}
    | {"wire_temperature": "105 C", "place_temperature": "60 C", "ambient": "25 C"}
    | {"current": "8.7 A"},
    zero=("place_temperature", "ambient", "current"),
    printed=("insulation_class", "termination_temperature", "wire_temperature"),
    counts=("conductors", "cord_conductors"),
    bad=(
        Bad("use", "bilding", "'bilding'", "did you mean building?"),
        Bad("insulation_class", "50 C", "50 C", "60 C, 75 C or 90 C"),
        Bad("termination_temperature", "40 C", "40 C", "60 C, 75 C or 90 C"),
        Bad("ambient", "110 C", "'110 C'", "110 F"),
        Bad("current", "8700 A", "'8700 A'", "such as 8.7 A"),
    ),
    always={
        "use": texts(["building", "cord", "fixture", "appliance"]),
        "wire": texts(["30 AWG", "18 AWG", "15 AWG", "12 AWG aluminum", "4 AWG", "1 mm2"]),
    },
    sometimes={
        "insulation_class": texts(["60 C", "75 C", "90 C"]),
        "termination_temperature": texts(["60 C", "75 C", "90 C"]),
        "conductors": texts(["2", "4", "10"]),
        "cord_conductors": texts(["2", "3"]),
        "cord_type": texts(["general", "heater"]),
        "wire_temperature": texts(["80 C", "105 C", "150 C", "250 C"]),
        "place_temperature": near(30, 40, 70, 90, 125, 150, low=-40, high=260),
        "ambient": near(10, 30, 40, 55, 70, 85, low=-40, high=90),
        "current": near(0.7, 6, 7, 8, 10, 13, 16, 18, 20, 25, 30, 68, high=120),
    },
    why="Wire in a wall is for those licensed, and no larger breaker cures it.",
    cautions=("brk-01",),
    not_checked=("125 %", "terminals at both ends", "breaker of 15 A"),
    when=(
        When("building wire of aluminium", {"wire": "12 AWG aluminium"}, comes=("alu-01",)),
        When(
            "wire inside a machine: the joint's lowest rating decides",
            {
                "use": "appliance",
                "insulation_class": "",
                "termination_temperature": "",
                "conductors": "",
                "ambient": "",
                "wire_temperature": "105 C",
                "place_temperature": "60 C",
            },
            comes=("heat-01",),
            stays=("brk-01",),
        ),
        When(
            "flexible cord",
            {
                "use": "cord",
                "insulation_class": "",
                "termination_temperature": "",
                "conductors": "",
                "cord_conductors": "2",
            },
            stays=("brk-01",),
        ),
    ),
    steps=(
        Step(
            "load on the wire",
            "current",
            {"15 A": "pass", "15.1 A": "fail"},
            limit="14 AWG copper, terminals of 60 C: 15 A",
            source="NEC (NFPA 70), Table 310.16; 110.14(C)",
        ),
        Step(
            "load on the wire",
            "ambient",
            {"50 C": "pass", "51 C": "fail"},
            given={"current": "15 A"},
            limit="20 A of the 75 C column x 0.75 up to 50 C is 15 A, x 0.67 from 51 C is 13.4 A",
            source="NEC (NFPA 70), Table 310.15(B)(1)",
        ),
        Step(
            "load on the wire",
            "conductors",
            {"6": "pass", "7": "fail"},
            given={"current": "14.5 A", "ambient": "30 C"},
            limit=(
                "20 A of the 75 C column x 80 % for 4 to 6 wires is 16 A, x 70 % for 7 to 9 is 14 A"
            ),
            source="NEC (NFPA 70), Table 310.15(C)(1)",
        ),
        Step(
            "load against the largest breaker of this wire",
            "current",
            {"20 A": "pass", "20.1 A": "cannot tell"},
            given={"wire": "12 AWG"},
            limit="12 AWG copper: 20 A, but for motor circuits",
            source="NEC (NFPA 70), 240.4(D) and (G)",
        ),
        Step(
            "load on the wire",
            "current",
            {"10 A": "pass", "10.1 A": "fail"},
            given={
                "use": "cord",
                "wire": "18 AWG",
                "insulation_class": "",
                "termination_temperature": "",
                "conductors": "",
                "cord_conductors": "2",
                "ambient": "30 C",
            },
            limit="18 AWG cord, two wires loaded: 10 A",
            source="NEC (NFPA 70), Table 400.5(A)(1), column B",
        ),
        Step(
            "load on the wire",
            "current",
            {"10 A": "pass", "10.1 A": "cannot tell"},
            given={
                "use": "cord",
                "wire": "16 AWG",
                "insulation_class": "",
                "termination_temperature": "",
                "conductors": "",
                "cord_conductors": "3",
                "ambient": "30 C",
            },
            limit="16 AWG cord, three wires loaded: 10 A; 13 A if one of them is a neutral",
            source="NEC (NFPA 70), Table 400.5(A)(1), column A",
        ),
    ),
)
