"""What the shared tests need to know of `ground`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, Worded, near, texts

TRIAL = Trial(
    good={"ground_point": "plug-pin", "ground_resistance": "0.25 ohm", "ground_open": "no"}
    | {"lead_resistance": "0.2 ohm", "ground_standard": "iec-60335-1", "cord": "16 AWG"}
    | {"cord_length": "6 ft", "conductor_temperature": "20 C"},
    zero=("ground_resistance", "lead_resistance", "conductor_temperature"),
    bad=(
        Bad("ground_point", "pin", "'pin'", "plug-pin"),
        Bad("ground_resistance", "0.25 Mohm", "'0.25 Mohm'", "which was meant?"),
        Bad("ground_resistance", "OL", "past the meter's range", "give ground_open yes"),
        Bad("ground_resistance", ">10 ohm", "no one number", "higher range"),
        Bad("ground_open", "yes", "0.25 ohm is not open", "give the resistance"),
        Bad("lead_resistance", "0.3 ohm", "0.3 ohm in a reading of 0.25 ohm", "zeroed"),
        Bad("ground_standard", "iec-60335", "'iec-60335'", "did you mean iec-60335-1?"),
        Bad("cord", "16", "'16'", "16 AWG"),
        Bad("cord_length", "200 ft", "more than was read", "ft and m"),
        Bad("cord_length", "301 ft", "no machine has a cord of 301 ft", "ft and m"),
        Bad("cord_length", "6 lbf", "'lbf'", "ft"),
        Bad("conductor_temperature", "200 C", "'200 C'", "200 F"),
    ),
    always={
        "ground_point": texts(["plug-pin", "plug-pin", "cord-end", "wired-in", "neutral-blade"])
    },
    sometimes={
        # 6 ft of 16 AWG are 0.0246 ohm at 20 C; 5 and 12.5 m are 16.404 and 41.01 ft
        "ground_resistance": near(0.1, 0.1246, 0.2, 0.3, 0.4, 0.6, 1, 1.3, high=2),
        "ground_open": texts(["no"]),
        "lead_resistance": near(0.1, 0.2, high=0.3),
        "same_range": texts(["yes", "no"]),
        "meter_resolution": texts(["0.1 ohm", "0.01 ohm"]),
        "test_current": near(1, 2, 10, high=25),
        "path_drop": near(100, 200, 250, 1000, high=3000),
        "ground_standard": texts(["ul-507", "iec-60335-1", "en-50106", "vde-0701-0702"]),
        "cord": texts(["16 AWG", "18 AWG", "1.5 mm2", "16 AWG cca"]),
        "cord_length": near(6, 16.404199475, 41.01, high=60),
        "conductor_temperature": near(20, low=-20, high=60),
        "cord_ground_closed": texts(["yes", "no"]),
        "neutral_strap": texts(["no-strap", "fitted", "lifted", "removed"]),
        "neutral_open": texts(["yes", "no"]),
    },
    apart=("ground_open",),
    why=("Off, in your own sight or locked; every ground lead back; two leads settle little."),
    cautions=("gnd-01", "dead-02", "dead-03", "gnd-02", "ground-required"),
    not_checked=("receptacle and of the building", "few strands"),
    when=(
        When(
            "a machine with a plug: the plug in the hand is the lock",
            {"ground_point": "plug-pin"},
            stays=("dead-03",),
        ),
        When(
            "a current through the path: low volts alone, and it may spark where it opens",
            {
                "ground_resistance": "",
                "lead_resistance": "",
                "test_current": "25 A",
                "path_drop": "1.5 V",
            },
            comes=("flam-01", "test-current"),
        ),
        When(
            "three-wire range or dryer: which strap is law",
            {"ground_point": "neutral-blade", "neutral_strap": "fitted"},
            comes=("cord-02",),
            stays=("dead-03",),
        ),
    ),
    worded={
        "ground-required": Worded(
            "stop",
            (
                "Refrigerators, freezers, washers, dryers, dishwashers",
                "must be grounded",
                "double insulated and so marked",
                "A GFCI does not stand in",
            ),
            ("NEC 250.114", "local code"),
        ),
        "test-current": Worded(
            "stop",
            ("Unplug the machine", "12 V at most", "limits it", "never from the mains"),
            ("licensed practice",),
        ),
    },
    steps=(
        Step(
            "case to ground",
            "ground_resistance",
            {
                "0.099 ohm ±0.001 ohm": "pass",
                "0.100 ohm ±0.001 ohm": "cannot tell",
                "0.101 ohm ±0.001 ohm": "cannot tell",
                "0.102 ohm ±0.001 ohm": "fail",
            },
            limit="0.1 ohm",
            source="IEC 60335-1, 27.5",
        ),
        Step(
            "case to ground",
            "ground_resistance",
            {
                "0.299 ohm ±0.001 ohm": "pass",
                "0.300 ohm ±0.001 ohm": "cannot tell",
                "0.302 ohm ±0.001 ohm": "fail",
            },
            given={
                "ground_point": "plug-pin",
                "ground_standard": "vde-0701-0702",
                "cord": "18 AWG",
                "cord_length": "6 ft",
            },
            limit="0.3 ohm, the cord counted, up to 5 m of it",
            source="DIN VDE 0701-0702",
        ),
        Step(
            "test current",
            "test_current",
            {"1 A ±0.001 A": "not judged", "0.99 A ±0.001 A": "cannot tell"},
            given={"ground_resistance": "", "lead_resistance": "", "path_drop": "50 mV ±1 mV"},
            limit="under 1 A a bond of few strands reads whole",
            source="common practice, no source",
        ),
        Step(
            "case to ground",
            "path_drop",
            {"998 mV ±1 mV": "pass", "1000 mV ±1 mV": "cannot tell", "1002 mV ±1 mV": "fail"},
            given={"ground_resistance": "", "lead_resistance": "", "test_current": "10 A ±0.001 A"},
            limit="0.1 ohm at 10 A is 1000 mV",
            source="IEC 60335-1, 27.5",
        ),
        Step(
            "path against its cord",
            "ground_resistance",
            {"0.0005 ohm ±0.0005 ohm": "not judged", "0.0004 ohm ±0.0005 ohm": "cannot tell"},
            given={"ground_point": "plug-pin"},
            limit="3 ft of 6 AWG, the shortest thick cord, have 0.001 ohm",
            source="common practice, no source",
        ),
    ),
)
