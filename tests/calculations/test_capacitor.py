"""What the shared tests need to know of `capacitor`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"capacitor_current": "2.05 A", "capacitor_voltage": "214 V"}
    | {"frequency": "60 Hz", "marked_capacitance": "30 uF"}
    | {"tolerance": "5 %", "capacitor_rating": "250 V", "voltage": "120 V"},
    zero=("capacitor_current", "tolerance"),
    printed=("frequency", "marked_capacitance", "tolerance", "capacitor_rating"),
    bad=(
        Bad("capacitor_current", "439 W", "'W'", "divide by the voltage"),
        Bad("capacitor_current", "2050 A", "'2050 A'", "such as 2.05 A"),
        Bad("capacitor_voltage", "0 V", "'0 V'", "214 V"),
        Bad("capacitor_voltage", "2100 V", "high-voltage", "can kill unplugged"),
        Bad("marked_capacitance", "30 mF", "'mF'", "is uF"),
        Bad("marked_capacitance", "30000 uF", "'30000 uF'", "such as 30 uF"),
        Bad("marked_capacitance", "30 V", "'V'", "write it in uF"),
        Bad("tolerance", "5", "'5'", "5 %"),
        Bad("tolerance", "60 %", "'60 %'", "up to 50 %"),
        Bad("measured_capacitance", "26 uF", "one check judges one", "leave one way out"),
        Bad("marked_high", "25 uF", "25 uF is not above 30 uF", "low to high"),
    ),
    sometimes={
        "capacitor_current": near(2.0572, 2.2993, 2.5413, 2.7833, 3.15, high=5),
        "capacitor_voltage": near(120, 122.4, 214, 250, 275, high=400),
        "frequency": texts(["60 Hz", "50 Hz"]),
        "measured_capacitance": near(25.5, 27, 28.5, 30, 31.5, 34.5, 36, high=60),
        "marked_capacitance": texts(["30 uF", "25 uF"]),
        "marked_high": texts(["36 uF"]),
        "tolerance": texts(["5 %", "10 %"]),
        "tolerance_above": texts(["20 %"]),
        "capacitor_rating": texts(["250 V", "370 V"]),
        "probes_on_capacitor": texts(["yes", "yes", "no"]),
        "capacitor_duty": texts(["run", "start"]),
        "voltage": near(120, high=250),
    },
    apart=("measured_capacitance",),  # one check judges one reading
    why=("A charged part, read live beside the pins of a compressor or the blades of a fan."),
    cautions=("cap-01", "live-01", "live-02", "meter-01", "mov-01", "pin-01", "flam-01"),
    not_checked=("leakage, swelling and oil", "out of the circuit", "two sections"),
    when=(
        When(
            "by a capacitance meter: off and discharged, nothing is live",
            {
                "capacitor_current": "",
                "capacitor_voltage": "",
                "frequency": "",
                "measured_capacitance": "29 uF",
            },
            stays=("live-01", "live-02", "meter-01", "mov-01", "pin-01", "flam-01"),
        ),
        When(
            "a start capacitor: its bleeder stays, no second start before it is cold",
            {"capacitor_duty": "start"},
            comes=("cap-02", "start-01"),
        ),
        When(
            "a range marked, as on start capacitors",
            {"tolerance": "", "marked_high": "36 uF"},
            comes=("cap-02", "start-01"),
        ),
    ),
    steps=(
        Step(
            "capacitance, lower limit",
            "measured_capacitance",
            {"27 uF": "pass", "26.9 uF": "fail"},
            given={"capacitor_current": "", "capacitor_voltage": "", "frequency": ""},
            limit="30 uF less 10 %",
            source="the mark",
        ),
        Step(
            "capacitance, upper limit",
            "measured_capacitance",
            {"33 uF": "pass", "33.1 uF": "fail"},
            given={"capacitor_current": "", "capacitor_voltage": "", "frequency": ""},
            limit="30 uF and 10 %",
            source="the mark",
        ),
        Step(
            "volts against its rating",
            "capacitor_voltage",
            {"250 V": "pass", "251 V": "marginal", "275 V": "marginal", "276 V": "fail"},
            limit="its 250 V, and 1.1 times that",
            source="IEC 60252-1, as a data sheet names it",
        ),
        Step(
            "amps against its rating",
            "capacitor_current",
            {"3.67 A": "pass", "3.68 A": "fail"},
            limit="1.3 x 2 pi x 60 Hz x 30 uF x 250 V is 3.676 A",
            source="IEC 60252-1, as a data sheet names it",
        ),
        Step(
            "marked range",
            "marked_high",
            {"45 uF": "not judged", "45.1 uF": "cannot tell"},
            given={
                "tolerance": "",
                "capacitor_current": "",
                "capacitor_voltage": "",
                "frequency": "",
                "measured_capacitance": "31 uF",
            },
            limit="30 uF to 1.5 times that: no start capacitor is marked wider",
            source="common practice, no source",
        ),
        Step(
            "size of a run part",
            "marked_capacitance",
            {"150 uF": "not judged", "151 uF": "cannot tell"},
            given={
                "capacitor_duty": "run",
                "capacitor_current": "",
                "capacitor_voltage": "",
                "frequency": "",
                "measured_capacitance": "151 uF",
            },
            limit="run parts end near 100 uF; over 150 uF it is none",
            source="common practice, no source",
        ),
        Step(
            "volts across the capacitor",
            "capacitor_voltage",
            {
                "122.4 V": "cannot tell",
                "122.5 V": "not judged",
                "117.6 V": "cannot tell",
                "117.5 V": "not judged",
            },
            given={"voltage": "120 V"},
            limit="within 2 % of the line's 120 V, 2.4 V",
            source="common practice, no source",
        ),
    ),
)
