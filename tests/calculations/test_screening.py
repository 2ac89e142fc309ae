"""What the shared tests need to know of `screening`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, texts

TRIAL = Trial(
    good={"over_range": "yes", "ohm_range": "20 Mohm", "switched_on": "yes"}
    | {"device_held": "yes", "test_button_trips": "yes", "trip_current": "6 mA"},
    printed=("ohm_range", "trip_current"),
    bad=(
        Bad("over_range", "OL", "'OL'", "yes or no"),
        Bad("ohm_range", "20 mohm", "'20 mohm'", "which unit was meant?"),
        Bad("ohm_range", "0 Mohm", "'0 Mohm'", "20 Mohm"),
        Bad("switched_on", "half", "'half'", "yes or no"),
        Bad("device_held", "tripped", "'tripped'", "yes or no"),
        Bad("test_button_trips", "maybe", "'maybe'", "yes or no"),
        Bad("trip_current", "6 A", "'6 A'", "check the number and its unit"),
        Bad("trip_current", "0.6 mA", "'0.6 mA'", "such as 6 mA"),
        Bad("trip_current", "30 ohm", "'ohm'", "mA"),
    ),
    sometimes={
        "over_range": texts(["yes", "yes", "no"]),
        "ohm_range": texts(["200 ohm", "2 Mohm", "20 Mohm"]),
        "switched_on": texts(["yes", "yes", "no"]),
        "device_held": texts(["yes", "yes", "no"]),
        "test_button_trips": texts(["yes", "yes", "no"]),
        "trip_current": texts(["6 mA", "30 mA", "300 mA"]),
    },
    figures=False,  # it compares marks, parts or yes and no
    why=("Hands on live parts joined, charge in them; then a full run on a GFCI, the ground on."),
    cautions=("dead-01", "dead-02", "cap-01", "gnd-01", "gfci-01", "flam-01"),
    not_checked=("weak insulation", "leakage under what trips", "ground path"),
    steps=(
        Step(
            "trip of the GFCI or RCD",
            "trip_current",
            {"30 mA": "not judged", "31 mA": "cannot tell"},
            limit="one that trips above 30 mA protects no person",
            source="IEC 60364-4-41, 415.1, from memory",
        ),
        Step(
            "range of the ohm reading",
            "ohm_range",
            {"2 Mohm": "not judged", "1.99 Mohm": "cannot tell"},
            limit="over a range of less than 2 Mohm says less than any limit",
            source="common practice, no source",
        ),
    ),
)
