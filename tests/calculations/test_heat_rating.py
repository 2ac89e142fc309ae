"""What the shared tests need to know of `heat-rating`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"place_temperature": "60 C", "near_heater": "yes", "wire_temperature": "105 C"}
    | {"terminal_temperature": "105 C", "terminal_material": "nylon"}
    | {"sleeve_temperature": "125 C", "sleeve_material": "PVC tubing"},
    zero=("place_temperature",),
    printed=("wire_temperature", "terminal_temperature", "sleeve_temperature"),
    bad=(
        Bad("place_temperature", "900 C", "'900 C'", "900 F"),
        Bad("wire_temperature", "600 C", "'600 C'", "600 F"),
        Bad("sleeve_temperature", "39 C", "'39 C'", "125 C"),
        Bad("near_heater", "maybe", "'maybe'", "yes or no"),
        Bad("terminal_material", "vynil", "'vynil'", "did you mean vinyl?"),
        Bad("sleeve_material", "nylon", "'nylon'", "polyolefin tubing"),
    ),
    sometimes={
        "place_temperature": near(40, 55, 85, 105, 151, 155, 180, 230, low=-40, high=300),
        "near_heater": texts(["yes", "no"]),
        "wire_temperature": texts(["105 C", "200 C", "250 C"]),
        "terminal_temperature": texts(["105 C", "250 C"]),
        "terminal_material": texts(["vinyl", "nylon", "tin-plated copper", "nickel-plated steel"]),
        "sleeve_temperature": texts(["125 C", "250 C"]),
        "sleeve_material": texts(["polyolefin tubing", "PVC tubing"]),
    },
    why="The lowest part of the joint decides; who looks for the heat finds it.",
    cautions=("heat-01", "hot-01"),
    not_checked=("heat that the joint makes itself", "tape and solder"),
    steps=(
        Step(
            "temperature rating of the wire",
            "place_temperature",
            {"85 C": "pass", "86 C": "fail"},
            limit="105 C less the 20 K that a joint warms by",
            source="common practice, no source",
        ),
        Step(
            "temperature of the place",
            "place_temperature",
            {"40 C": "cannot tell", "41 C": "not judged"},
            given={"near_heater": "yes"},
            limit="beside a heater that runs no place is as cold as a warm room, 40 C",
            source="common practice, no source",
        ),
    ),
)
