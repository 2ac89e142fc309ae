"""What the shared tests need to know of `cutoff`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"old_functioning_temperature": "130 C", "new_functioning_temperature": "130 C"}
    | {"old_cutoff_current": "15 A", "new_cutoff_current": "15 A", "old_cutoff_voltage": "250 V"}
    | {"new_cutoff_voltage": "250 V", "holding_temperature": "100 C", "place_temperature": "80 C"}
    | {"cause_found": "yes"},
    zero=("place_temperature",),
    printed=(
        "old_functioning_temperature",
        "new_functioning_temperature",
        "old_cutoff_current",
        "new_cutoff_current",
        "old_cutoff_voltage",
        "new_cutoff_voltage",
        "holding_temperature",
    ),
    bad=(
        Bad("new_functioning_temperature", "500 C", "'500 C'", "500 F"),
        Bad("old_functioning_temperature", "120 F", "'120 F'", "120 C"),
        Bad("holding_temperature", "130 C", "130 C", "the lower of the two"),
        Bad("new_cutoff_current", "1500 W", "'W'", "divide by the voltage"),
        Bad("cause_found", "perhaps", "'perhaps'", "yes or no"),
    ),
    always={
        "old_functioning_temperature": texts(["130 C", "184 C"]),
        "new_functioning_temperature": texts(["125 C", "128 C", "130 C", "140 C"]),
    },
    sometimes={
        "old_cutoff_current": texts(["10 A", "15 A"]),
        "new_cutoff_current": texts(["10 A", "15 A"]),
        "old_cutoff_voltage": texts(["250 V"]),
        "new_cutoff_voltage": texts(["120 V", "250 V"]),
        "holding_temperature": texts(["100 C"]),
        "place_temperature": near(100, low=-40, high=130),
        "cause_found": texts(["yes", "no"]),
        "paired_part": texts(["no-pair", "both-new", "one-new"]),
    },
    why=("It opened for a cause; bridged it is a fire; it and its joints sit in the heat."),
    cautions=("heat-02", "dead-01", "heat-01", "heat-03", "hot-01", "sub-01"),
    not_checked=("sit as the old one did", "crimp or solder joint"),
    steps=(
        Step(
            "functioning temperature not higher",
            "new_functioning_temperature",
            {"130 C": "pass", "131 C": "fail"},
            limit="no higher than the old one's 130 C",
            source="makers' service sheets",
        ),
        Step(
            "functioning temperature not lower",
            "new_functioning_temperature",
            {"130 C": "pass", "129 C": "marginal", "125 C": "marginal", "124 C": "fail"},
            limit="the same; 5 K lower is as near as steps of parts come",
            source="common practice, no source",
        ),
        Step(
            "current rating",
            "new_cutoff_current",
            {"15 A": "pass", "14.9 A": "fail"},
            limit="at least the old one's 15 A",
            source="makers' service sheets",
        ),
        Step(
            "voltage rating",
            "new_cutoff_voltage",
            {"250 V": "pass", "249 V": "fail"},
            limit="at least the old one's 250 V",
            source="makers' service sheets",
        ),
        Step(
            "place below where the new one may open",
            "place_temperature",
            {"120 C": "pass", "121 C": "fail"},
            given={"holding_temperature": ""},
            limit="it may open 10 K under its 130 C",
            source="IEC 60691, functioning temperature +0/-10 K",
        ),
    ),
)
