"""What the shared tests need to know of `winding-heat`."""

from __future__ import annotations

from .trial import Bad, Step, Trial

TRIAL = Trial(
    good={"cold_resistance": "4.5 ohm", "cold_temperature": "22 C"}
    | {"hot_resistance": "5.9 ohm", "hot_time": "20 s", "room_temperature": "24 C"}
    | {"lead_resistance": "0.1 ohm", "winding_metal": "copper", "winding_class": "B"},
    zero=("cold_temperature", "hot_time", "room_temperature", "lead_resistance"),
    bad=(
        Bad("hot_resistance", "4.4 ohm", "4.4 ohm hot is below", "swapped"),
        Bad("hot_time", ["20 s", "50 s"], "2 times for 1", "a time for each"),
        Bad("hot_time", "2 m", "'m'", "min"),
        Bad("cold_resistance", "0.1 ohm", "no more than the 0.1 ohm", "subtracted here"),
        Bad("cold_temperature", "72 C", "'72 C'", "72 F"),
        Bad("winding_metal", "aluminum", "'aluminum'", "did you mean aluminium?"),
        Bad("winding_class", "G", "'G'", "A, E, B, F, H"),
    ),
    drawn_in=("test_monotone_windings.py",),
    why=("Ohms within seconds of switch-off: dead first, the capacitor bled, a hot shell."),
    cautions=("dead-01", "cap-01", "hot-01", "pin-01"),
    not_checked=("hottest spot", "machine's own standard", "cooling before the one reading"),
    steps=(
        Step(
            "one reading, soon after switch-off",
            "hot_time",
            {"30 s": "marginal", "31 s": "not judged"},
            limit="30 s after switch-off",
            source="IEC 60034-1, from memory",
        ),
        Step(
            "winding temperature at switch-off",
            "hot_resistance",
            {"5.80 ohm": "pass", "5.81 ohm": "fail"},
            given={"winding_class": "A"},
            limit="100 C of class A: from 22 C, k 235, 335 / 257 x 4.3 + 0.2 is 5.805 ohm",
            source="a gear-motor maker; a hydropower guide",
        ),
        Step(
            "winding temperature at switch-off",
            "hot_resistance",
            {"6.05 ohm": "pass", "6.06 ohm": "fail"},
            given={"winding_class": "E"},
            limit="115 C of class E: from 22 C, k 235, 350 / 257 x 4.3 + 0.2 is 6.056 ohm",
            source="a gear-motor maker",
        ),
        Step(
            "winding temperature at switch-off",
            "hot_resistance",
            {"6.13 ohm": "pass", "6.14 ohm": "fail"},
            given={"winding_class": "B"},
            limit="120 C of class B: from 22 C, k 235, 355 / 257 x 4.3 + 0.2 is 6.140 ohm",
            source="IEC 60034-1, Table 8",
        ),
        Step(
            "winding temperature at switch-off",
            "hot_resistance",
            {"6.47 ohm": "pass", "6.48 ohm": "fail"},
            given={"winding_class": "F"},
            limit="140 C of class F: from 22 C, k 235, 375 / 257 x 4.3 + 0.2 is 6.474 ohm",
            source="a hydropower guide",
        ),
        Step(
            "winding temperature at switch-off",
            "hot_resistance",
            {"6.80 ohm": "pass", "6.81 ohm": "fail"},
            given={"winding_class": "H"},
            limit="160 C of class H: from 22 C, k 235, 395 / 257 x 4.3 + 0.2 is 6.809 ohm",
            source="a hydropower guide",
        ),
        Step(
            "cold as the room",
            "room_temperature",
            {"32 C": "not judged", "32.1 C": "cannot tell"},
            limit="a room changes by 10 K at most from the 22 C of the cold winding",
            source="common practice, no source",
        ),
    ),
)
