"""What the shared tests need to know of `drop`."""

from __future__ import annotations

from .trial import RUN, Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"current": "1.6 A", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
    | {"run_length": "60 ft", "cord": "16 AWG", "cord_length": "50 ft", "other_current": "6.2 A"}
    | {"other_leg_current": "5 A", "system": "three-wire", "power_factor": "80 %"}
    | {"conductor_temperature": "60 C", "voltage_at_rest": "117.5 V"},
    zero=("other_current", "other_leg_current", "conductor_temperature"),
    printed=("nameplate_voltage", "power_factor"),
    bad=(
        Bad("current", "8.7 mA ±2%", "next to nothing", "which unit was meant? write 8.7 A, or"),
        Bad("run_length", "-60 ft", "'-60 ft'", "60 ft"),
        Bad(
            "run_length",
            "60 mm",
            "'60 mm' is next to nothing",
            "0.1969 ft if it is so little, or 60 ft",
        ),
        Bad("run_length", "11 in", "'11 in' is next to nothing", "or 11 ft"),
        Bad(
            "cord_length",
            "300 mm",
            "'300 mm' is next to nothing",
            "0.9843 ft if it is so little, or 300 ft",
        ),
        Bad("run_length", "2001 ft", "'2001 ft'", "60 ft"),
        Bad("run_length", "700 m", "'700 m'", "60 ft"),
        Bad("cord_length", "0 m", "'0 m'", "50 ft"),
        Bad("cord_length", "700 m", "'700 m'", "50 ft"),
        Bad("current", "184 W", "'W'", "divide by the voltage"),
        Bad("current", "0 A", "'0 A'", "1.6 A"),
        Bad("system", "two-wire", "no other leg", "three-wire"),
        Bad("system", "2-wire", "'2-wire'", "two-wire"),
        Bad("power_factor", "0.8", "'0.8'", "0.8 %"),
        Bad("power_factor", "0.8 %", "'0.8 %'", "80 %"),
        Bad("conductor_temperature", "167 C", "'167 C'", "167 F"),
        Bad("nameplate_voltage", "115 mV", "'115 mV'", "115 V"),
        Bad("voltage_at_rest", "236 V", "240 V outlet for a 115 V plate?", "read plate"),
    ),
    always={
        # 115 V: 3 and 5 % of 60 ft of 14 AWG are 9.16 and 15.3 A
        "current": near(1.6, 9.156, 15.26, high=40),
        "nameplate_voltage": texts(["115 V", "240 V"]),
    },
    sometimes=RUN
    | {
        "cord": texts(["18 AWG", "16 AWG", "1.5 mm2"]),
        "cord_length": near(50, high=200),
        "other_leg_current": near(5, 20, high=60),
        "system": texts(["two-wire", "three-wire"]),
        "power_factor": texts(["50 %", "90 %"]),
        "voltage_at_rest": near(103.5, 105.7, 115, low=100, high=130),
    },
    apart=("other_leg_current",),  # of a three-wire run; the example is two-wire
    why=(
        "A clamp on a live wire; the run in the wall is an electrician's; a loose plug "
        "trips nothing."
    ),
    cautions=("cord-04", "live-02", "meter-01", "brk-01"),
    not_checked=(
        "ampacity of wire and cord",
        "joints, plug and receptacle",
        "feeder and the service",
    ),
    when=(
        When(
            "a cord in the way, which may be an extension cord",
            {"cord": "16 AWG", "cord_length": "25 ft"},
            comes=("cord-03",),
        ),
        When("volts read in a live receptacle", {"voltage_at_rest": "118 V"}, comes=("live-01",)),
        When(
            "building wire of aluminium", {"building_wire": "12 AWG aluminium"}, comes=("alu-01",)
        ),
    ),
    steps=(
        Step(
            "drop while running",
            "current",
            {"9.15 A": "pass", "9.16 A": "marginal"},
            limit="3 % of 115 V is 3.45 V; 120 ft of 3.14 ohm/kft is 0.3768 ohm, so 9.156 A",
            source="NEC (NFPA 70), 210.19(A), informational note; chapter 9, Table 8",
        ),
        Step(
            "volts at the load while it runs",
            "run_length",
            {"1343 ft": "pass", "1344 ft": "fail"},
            given={
                "voltage_at_rest": "117 V",
                "conductor_temperature": "75 C",
                "power_factor": "100 %",
            },
            limit="103.5 V must be left: 13.5 V lost by 1.6 A in 2 x 3.14 ohm/kft is 1343.5 ft",
            source="makers' sheets, 90 % of the plate; NEC chapter 9, Table 8",
        ),
    ),
)
