"""What the shared tests need to know of `leakage`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={
        "leakage_current": "0.3 mA",
        "machine_kind": "stationary",
        "leakage_standard": "ul-101",
    }
    | {"connection": "plug", "neutral_strap": "no-strap"}
    | {"switched_on": "yes", "nameplate_power": "2585 W", "on_gfci": "yes"}
    | {"other_leakage": "0.5 mA"},
    zero=("leakage_current", "other_leakage"),
    printed=("nameplate_power",),
    bad=(
        Bad("leakage_current", "300 mA", "'300 mA'", "such as 0.3 mA"),
        Bad("leakage_current", "0.3 A", "'0.3 A'", "check the number and its unit"),
        Bad("leakage_current", "0.3 uA", "0.3 uA", "write 0.3 mA, or 0.0003 mA"),
        Bad("leakage_current", "0.3 V", "'V'", "mA, uA"),
        Bad("other_leakage", "500 mA", "'500 mA'", "such as 0.5 mA"),
        Bad("other_leakage", ["1 mA", "0.5 uA"], "0.5 uA", "write 0.5 mA, or 0.0005 mA"),
        Bad("connection", "socket", "'socket'", "plug"),
        Bad("neutral_strap", "loose", "'loose'", "fitted"),
        Bad("machine_kind", "fridge", "'fridge'", "refrigerator"),
        Bad("leakage_standard", "ul-102", "'ul-102'", "such as ul-101"),
        Bad("switched_on", "half", "'half'", "yes or no"),
        Bad("on_gfci", "no", "leakage of other machines", "leave other_leakage out"),
        Bad("nameplate_power", "0 W", "'0 W'", "2585 W"),
    ),
    sometimes={
        "leakage_current": near(0.25, 0.5, 0.75, 1.5, 3.5, 4, 5, 6, 10, high=12),
        "machine_kind": texts(["two-wire", "double-insulated", "portable", "stationary", "heater"]),
        "leakage_standard": texts(["ul-101", "iec-60335-1", "vde-0701-0702"]),
        "connection": texts(["plug", "plug", "large-plug", "wired-in"]),
        "neutral_strap": texts(["no-strap", "no-strap", "fitted", "removed"]),
        "rcd_rating": texts(["30 mA"]),
        "switched_on": texts(["yes", "yes", "no"]),
        "nameplate_power": texts(["500 W", "2585 W", "12 kW"]),
        "on_gfci": texts(["yes", "yes", "no"]),
    },
    apart=("rcd_rating",),  # one device feeds it
    why="Live, and the ground wire may be open at the meter: the case can be live.",
    cautions=("live-01", "meter-01", "wat-01", "gfci-01", "flam-01", "gnd-01"),
    not_checked=("106 %", "line and neutral swapped", "test button"),
    when=(
        When(
            "a machine without a ground lead has none to refit",
            {"machine_kind": "two-wire"},
            stays=("gnd-01",),
        ),
        When("of a kind that nobody told there may be one", {"machine_kind": ""}),
        When(
            "range with a strap",
            {"machine_kind": "heater", "neutral_strap": "fitted", "connection": "large-plug"},
            comes=("cord-02",),
        ),
    ),
    steps=(
        Step(
            "leakage current",
            "leakage_current",
            {"0.75 mA": "pass", "0.76 mA": "fail"},
            limit="refrigerators: 0.75 mA",
            source="UL 101, Table 1",
        ),
        Step(
            "leakage current",
            "leakage_current",
            {"0.5 mA": "pass", "0.51 mA": "fail"},
            given={"machine_kind": "portable"},
            limit="portable, grounded: 0.5 mA",
            source="UL 101, Table 1",
        ),
        Step(
            "sum on the GFCI",
            "other_leakage",
            {
                "3.5 mA": "pass",
                "3.51 mA": "marginal",
                "5.5 mA": "marginal",
                "5.51 mA": "cannot tell",
            },
            given={"leakage_current": "0.5 mA"},
            limit=(
                "it may trip from 4 mA and does at 6 mA; two leakages add up to their sum at most"
            ),
            source="UL 943",
        ),
        Step(
            "leakage current",
            "leakage_current",
            {"0.5 mA": "pass", "0.51 mA": "fail"},
            given={"machine_kind": "double-insulated"},
            limit="double-insulated: 0.5 mA",
            source="UL 101, Table 1",
        ),
        Step(
            "leakage current",
            "leakage_current",
            {"0.5 mA": "pass", "0.51 mA": "fail"},
            given={"machine_kind": "two-wire"},
            limit="two-wire: 0.5 mA",
            source="UL 101, Table 1",
        ),
        Step(
            "leakage current",
            "leakage_current",
            {"0.75 mA": "pass", "0.76 mA": "fail"},
            given={"machine_kind": "stationary"},
            limit="stationary: 0.75 mA",
            source="UL 101, Table 1",
        ),
        Step(
            "leakage current",
            "leakage_current",
            {"0.75 mA": "pass", "0.76 mA": "fail"},
            given={"machine_kind": "heater"},
            limit="heater: 0.75 mA",
            source="UL 101, Table 1",
        ),
    ),
)
