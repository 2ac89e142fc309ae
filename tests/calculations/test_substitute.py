"""What the shared tests need to know of `substitute`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, texts

TRIAL = Trial(
    good={"old_wire": "18 AWG", "new_wire": "16 AWG", "old_wire_temperature": "80 C"}
    | {"new_wire_temperature": "105 C", "old_wire_voltage": "300 V", "new_wire_voltage": "600 V"}
    | {"old_oil_resistant": "no", "new_oil_resistant": "no", "old_flame_rated": "yes"}
    | {"new_flame_rated": "yes"},
    printed=(
        "old_wire_temperature",
        "new_wire_temperature",
        "old_wire_voltage",
        "new_wire_voltage",
    ),
    bad=(
        Bad("old_wire_temperature", "900 C", "'900 C'", "900 F"),
        Bad("new_wire_voltage", "6000 V", "'6000 V'", "such as 600 V"),
        *(
            Bad(f"{whose}_{what}", "maybe", "'maybe'", "yes or no")
            for whose in ("old", "new")
            for what in ("oil_resistant", "flame_rated")
        ),
    ),
    always={
        "old_wire": texts(["16 AWG tinned", "14 AWG solid", "1.5 mm2", "19x29 AWG"]),
        "new_wire": texts(["18 AWG", "16 AWG tinned", "14 AWG solid", "12 AWG aluminum"]),
    },
    sometimes={
        "old_wire_temperature": texts(["80 C", "105 C"]),
        "new_wire_temperature": texts(["80 C", "200 C"]),
        "old_wire_voltage": texts(["300 V", "600 V"]),
        "new_wire_voltage": texts(["300 V", "600 V"]),
        "old_oil_resistant": texts(["yes", "no"]),
        "new_oil_resistant": texts(["yes", "no"]),
        "old_flame_rated": texts(["yes", "no"]),
        "new_flame_rated": texts(["yes", "no"]),
    },
    why=("A lower or unknown rating does not go in; paper alone, so nothing is touched yet."),
    cautions=(),
    not_checked=("maker's sheet", "fits the barrel", "current"),
    when=(
        When("new wire for less heat", {"new_wire_temperature": "104 C"}, comes=("sub-01",)),
        When("new wire for fewer volts", {"new_wire_voltage": "599 V"}, comes=("sub-01",)),
        When("thinner wire", {"new_wire": "20 AWG"}, comes=("sub-01",)),
        When(
            "what the new wire stands is not known: unknown counts as lower",
            {"new_wire_temperature": "unknown"},
            comes=("sub-01",),
        ),
        When(
            "an oil-resistant wire is replaced by one that is not known to be",
            {"old_oil_resistant": "yes"},
            comes=("sub-01",),
        ),
        When(
            "aluminium in place of copper",
            {"new_wire": "12 AWG aluminium"},
            comes=("sub-01", "alu-01"),
        ),
        When(
            "the wire to be replaced is aluminium: its terminals are not for copper",
            {"old_wire": "18 AWG aluminium"},
            comes=("sub-01", "alu-01"),
        ),
    ),
    steps=(
        Step(
            "temperature rating",
            "new_wire_temperature",
            {"105 C": "pass", "104 C": "fail"},
            limit="no lower than the old wire's 105 C",
            source="common practice, no source",
        ),
        Step(
            "voltage rating",
            "new_wire_voltage",
            {"600 V": "pass", "599 V": "fail"},
            limit="no lower than the old wire's 600 V",
            source="common practice, no source",
        ),
    ),
)
