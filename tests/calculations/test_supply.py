"""What the shared tests need to know of `supply`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, Worded, near, texts

TRIAL = Trial(
    good={"nameplate_voltage": "240 V", "nameplate_voltage_low": "208 V"}
    | {"voltage_at_rest": "236 V", "voltage_running": "232 V", "voltage_at_start": "225 V"}
    | {"nominal_voltage": "240 V", "current": "18 A"},
    zero=("voltage_at_rest", "voltage_running", "voltage_at_start"),
    printed=("nameplate_voltage", "nameplate_voltage_low", "nominal_voltage"),
    bad=(
        Bad("voltage_running", "23.2 V", "23.2 V is neither", "check the unit"),
        Bad("voltage_running", "0.232 V", "0.232 V is neither", "check the unit"),
        Bad("voltage_running", "232 mV", "next to nothing", "write 232 V, or 0.232 V"),
        Bad("voltage_running", "244 V", "244 V is over the 236 V", "exchanged"),
        Bad("voltage_at_start", "240 V", "240 V is over the 232 V", "exchanged"),
        Bad("voltage_at_rest", "2320 V", "'2320 V'", "such as 119.4 V"),
        Bad("nominal_voltage", "220 V", "220 V", "120 V, 208 V, 230 V or 240 V"),
        Bad("voltage_at_rest", "400 V", "400 V is no line of a house", "range and unit"),
        Bad("current", "4320 W", "'W'", "divide by the voltage"),
        Bad("nameplate_voltage", "240 W", "'W'", "V"),
        Bad("nameplate_voltage_low", "120 V", "120/240 V", "leave it out"),
        Bad("nameplate_voltage_low", "250 V", "250 V is not below", "exchange them"),
    ),
    always={"nameplate_voltage": texts(["115 V", "120 V"])},
    sometimes={
        "voltage_running": near(103.5, 108, 126.5, 132, low=95, high=134),
        "voltage_at_rest": near(103.5, 108, 113, 114, 126, 127, 132, low=95, high=135),
        "voltage_at_start": near(92, 96, 103.5, 108, low=80, high=112),
        "nameplate_voltage_low": texts(["110 V"]),
        "nominal_voltage": texts(["120 V", "208 V"]),
        "current": near(0.9, 2.6, 6.8, 12, high=20),
    },
    why=("Probes in a live receptacle, a clamp for the current; the building is an electrician's."),
    cautions=("live-01", "live-02", "meter-01", "brk-01"),
    not_checked=("maker's narrower span", "another time of the day"),
    when=(
        When("no current was read", {"current": ""}, stays=("live-02",)),
        When(
            "over 5 % of the volts at rest are lost: something on the way burns",
            {"voltage_at_rest": "120 V", "voltage_running": "113.9 V"},
            comes=("loss-stop",),
        ),
        When("just 5 % of them", {"voltage_at_rest": "120 V", "voltage_running": "114 V"}),
    ),
    worded={
        "loss-stop": Worded(
            "stop",
            (
                "STOP",
                "heat in a wire or a joint",
                "no breaker sees it",
                "for nothing until it is found",
            ),
            ("electrician",),
        )
    },
    steps=(
        Step(
            "running volts, lower limit",
            "voltage_running",
            {"103.5 V": "pass", "103.4 V": "fail"},
            given={"voltage_at_rest": "", "current": ""},
            limit="90 % of a plate of 115 V",
            source="makers' sheets of household refrigerators",
        ),
        Step(
            "running volts, upper limit",
            "voltage_running",
            {"126.5 V": "pass", "126.6 V": "fail"},
            given={"voltage_at_rest": "", "current": ""},
            limit="110 % of a plate of 115 V",
            source="makers' sheets of household refrigerators",
        ),
        Step(
            "volts lost with the load, of those at rest",
            "voltage_running",
            {"116.4 V": "pass", "116.3 V": "marginal"},
            given={"voltage_at_rest": "120 V"},
            limit="3 % of 120 V is 3.6 V",
            source="NEC (NFPA 70), 210.19(A), informational note",
        ),
        Step(
            "service volts, lower limit",
            "voltage_at_rest",
            {"114 V": "pass", "113.9 V": "marginal"},
            given={"voltage_running": "", "current": ""},
            limit="120 V less 5 %: range A",
            source="ANSI C84.1, Table 1, from memory",
        ),
        Step(
            "service volts, upper limit",
            "voltage_at_rest",
            {"126 V": "pass", "126.1 V": "marginal"},
            given={"voltage_running": "", "current": ""},
            limit="120 V and 5 %: range A",
            source="ANSI C84.1, Table 1, from memory",
        ),
        Step(
            "running volts, lower limit",
            "voltage_running",
            {"28.8 V": "fail", "28.7 V": "refused"},
            given={"voltage_at_rest": "", "current": ""},
            limit="under 25 % of 115 V it is an open wire or a slip",
            source="common practice, no source",
        ),
        Step(
            "volts lost with the load, of those at rest",
            "voltage_running",
            {"120.5 V": "pass", "120.6 V": "refused"},
            given={"voltage_at_rest": "117 V", "current": ""},
            limit="117 V rises by 3 % at most, 3.51 V",
            source="common practice, no source",
        ),
    ),
)
