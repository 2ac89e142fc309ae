"""What the shared tests need to know of `pull`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"wire": "18 AWG", "force": "24 lbf", "terminal": "ring"},
    zero=("force",),
    bad=(
        Bad("force", "6000 kgf", "'6000 kgf'", "6000 lbf"),
        Bad("force", "60 kgf", "132.3 lbf", "kgf"),  # more than 18 AWG bears
        Bad("force", "24 lb", "'lb'", "lbf"),
        Bad("force", "24 pounds", "'pounds'", "lbf"),
        Bad("force", "11 kg", "'kg'", "kgf"),
        Bad("terminal", "rnig", "'rnig'", "did you mean ring?"),
        Bad("pull_standard", "ul-486", "'ul-486'", "did you mean ul-486"),
        Bad("pull_standard", "ul-486e", "ul-486e", "ul-486a"),  # a clamp's table on a ring
        Bad("terminal", "", "''", "ring"),
        Bad("terminal", b"3", "3", '"ring"'),
        Bad("terminal", ["ring", "fork"], "2 times", "once"),
        Bad("force", ["24 lbf", "25 lbf"], "2 times", "once"),
        Bad("force", b"nan", "nan", "24 lbf"),
        Bad("force", b"inf", "inf", "24 lbf"),
        Bad("force", b"true", "", '"24 lbf"'),
        Bad("force", b"{ value = 24 }", "24", '"24 lbf"'),
        Bad("wire", b"[]", "empty list", "18 AWG"),
        Bad("force", "OL", "past the meter's range", "or write unknown"),
    ),
    always={
        "wire": texts(["22 AWG", "18 AWG", "17 AWG", "14 AWG", "3 mm2", "0.75 mm2", "0.1 mm2"]),
        "force": near(6.75, 9, 13, 20, 30, 50, high=60),
        "terminal": texts(["ring", "push-on", "butt", "clamp"]),
    },
    sometimes={
        "pull_standard": texts(["own", "ul-486a", "as7928", "nasa-8739-4", "iec-60352-2"]),
        "listed_for": texts(["stranded", "solid", "either"]),
    },
    why="The sample is destroyed and what lets go flies; a tug is no pull test.",
    cautions=("pull-01", "crimp-03"),
    not_checked=("one-minute hold", "crimp height"),
    steps=(
        Step(
            "pull-out force",
            "force",
            {"20 lbf": "pass", "19.9 lbf": "fail"},
            limit="18 AWG: 20 lbf",
            source="UL 486A, pull-out test values",
        ),
        Step(
            "pull-out force",
            "force",
            {"8 lbf": "pass", "7.9 lbf": "fail"},
            given={"wire": "22 AWG"},
            limit="22 AWG: 8 lbf",
            source="UL 486A, pull-out test values",
        ),
        Step(
            "pull-out force",
            "force",
            {"30 lbf": "pass", "29.9 lbf": "fail"},
            given={"wire": "16 AWG"},
            limit="16 AWG: 30 lbf",
            source="UL 486A, pull-out test values",
        ),
        Step(
            "pull-out force",
            "force",
            {"50 lbf": "pass", "49.9 lbf": "fail"},
            given={"wire": "14 AWG"},
            limit="14 AWG: 50 lbf",
            source="UL 486A, pull-out test values",
        ),
        Step(
            "pull-out force",
            "force",
            {"70 lbf": "pass", "69.9 lbf": "fail"},
            given={"wire": "12 AWG"},
            limit="12 AWG: 70 lbf",
            source="UL 486A, pull-out test values",
        ),
        Step(
            "pull-out force",
            "force",
            {"80 lbf": "pass", "79.9 lbf": "fail"},
            given={"wire": "10 AWG"},
            limit="10 AWG: 80 lbf",
            source="UL 486A, pull-out test values",
        ),
    ),
)
