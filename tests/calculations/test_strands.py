"""What the shared tests need to know of `strands`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, texts

TRIAL = Trial(
    good={"wire": "16 AWG", "cut_strands": "0", "nicked_strands": "1", "strands": "26"}
    | {"strand_standard": "none"},
    bad=(
        Bad("cut_strands", "26", "26 cut and 1 nicked", "count each damaged strand once"),
        Bad("cut_strands", "-1", "'-1'", "whole number"),
        Bad("nicked_strands", "1.5", "'1.5'", "whole number"),
        Bad("nicked_strands", "one", "'one'", "whole number"),
        Bad("strands", "0", "0 is outside", "whole number"),
        Bad("strand_standard", "ipc-a-620", "'ipc-a-620'", "did you mean ipc-a-620-class-"),
    ),
    always={
        "wire": texts(["26x30 AWG", "19x29 AWG", "18 AWG", "14 AWG solid", "8 AWG aluminum"]),
        "cut_strands": texts(["0", "1", "3"]),
        "nicked_strands": texts(["0", "1", "2"]),
    },
    sometimes={
        "strands": texts(["1", "7", "26", "65", "168"]),
        "strand_standard": texts(
            ["none", "ipc-a-620-class-2", "ipc-a-620-class-3", "faa-ac-43-13", "nasa-8739-4"]
        ),
    },
    why="Bare wire in the hand; what is damaged is cut back, with a new terminal.",
    cautions=("crimp-02", "dead-01"),
    not_checked=("folded back",),
    when=(
        When("one strand nicked, none cut", {"cut_strands": "0", "nicked_strands": "1"}),
        When("one strand cut, none nicked", {"cut_strands": "1", "nicked_strands": "0"}),
        When(
            "no damage: nothing to cut back",
            {"cut_strands": "0", "nicked_strands": "0"},
            stays=("crimp-02",),
        ),
    ),
    steps=(
        Step(
            "nicked or cut strands",
            "cut_strands",
            {"0": "pass", "1": "fail"},
            given={"nicked_strands": "0"},
            limit="none cut",
            source="two terminal makers' inspection sheets",
        ),
    ),
)
