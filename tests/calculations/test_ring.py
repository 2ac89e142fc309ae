"""What the shared tests need to know of `ring`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"stud": "No.8", "wire": "14 AWG", "hole": "4.4 mm", "stud_terminals": "2"},
    counts=("stud_terminals",),
    bad=(
        Bad("stud", "#8", "'#8'", "No.8"),
        Bad("stud", "M45", "'M45'", "such as No."),
        Bad("hole", "5.1 in", "'5.1 in'", "5.1 mm"),
    ),
    always={
        "stud": texts(["No.6", "No.8", "No.10", "1/4", "M4", "M5", "M10"]),
        "wire": texts(["18 AWG", "10 AWG", "6 AWG", "2.5 mm2", "12 AWG aluminum"]),
    },
    sometimes={
        "hole": near(3.5052, 4, 4.09, 4.1656, 4.68, 4.77, 4.826, 5, 5.41, 6.35, high=12),
        "stud_terminals": texts(["1", "4", "5"]),
        "listed_for": texts(["stranded", "solid"]),
    },
    why="Hands on a stud; ground leads sit on studs and go back on; not for every wire.",
    cautions=("dead-01", "crimp-01", "gnd-01"),
    not_checked=("torque itself", "clean, flat faces", "barrel takes this wire"),
    when=(When("wire of aluminium", {"wire": "14 AWG aluminium"}, comes=("alu-01",)),),
    steps=(
        Step(
            "hole clears the stud",
            "hole",
            {"2.85 mm": "pass", "2.84 mm": "fail"},
            limit="No. 4 screw, 0.112 in: 2.845 mm",
            source="ASME B1.1, major diameter of No. 4",
        ),
        Step(
            "hole leaves a seat",
            "hole",
            {"4.26 mm": "pass", "4.27 mm": "fail"},
            limit="one and a half diameters of 2.845 mm: 4.267 mm",
            source="common practice, no source",
        ),
        Step(
            "hole is that of this stud",
            "hole",
            {"3.55 mm": "pass", "3.56 mm": "marginal"},
            limit="a ring of No. 4 has 3.17 mm, and makers' holes spread by 0.38 mm: advice",
            source="common practice, no source",
        ),
        Step(
            "terminals on the stud",
            "stud_terminals",
            {"4": "pass", "5": "fail"},
            limit="four terminals on a stud",
            source="FAA AC 43.13-1B, 11-174 b",
        ),
    ),
)
