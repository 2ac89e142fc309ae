"""What the shared tests need to know of `dip`."""

from __future__ import annotations

from .trial import RUN, Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"locked_rotor_current": "14.2 A", "nameplate_voltage": "115 V"}
    | {"voltage_at_rest": "117.5 V", "rated_load_current": "1.6 A", "building_wire": "14 AWG"}
    | {"run_length": "60 ft", "cord": "16 AWG", "cord_length": "50 ft", "other_current": "6.2 A"}
    | {"voltage_at_start": "104 V", "start_power_factor": "65 %", "conductor_temperature": "60 C"},
    zero=("other_current", "conductor_temperature"),
    printed=(
        "locked_rotor_current",
        "nameplate_voltage",
        "rated_load_current",
        "start_power_factor",
    ),
    bad=(
        Bad("voltage_at_rest", "236 V", "240 V outlet for a 115 V plate?", "read plate"),
        Bad("voltage_at_rest", "12 V", "12 V", "115 V plate"),
        Bad("voltage_at_rest", "0.1175 V", "0.1175 V", "read plate"),
        Bad("voltage_at_rest", "117.5 mV", "next to nothing", "write 117.5 V, or 0.1175 V"),
        Bad("locked_rotor_current", "1.2 A", "1.2 A", "look at the plate"),
        Bad("locked_rotor_current", "1633 W", "'W'", "divide by the voltage"),
        Bad("voltage_at_start", "125 V", "125 V", "lowest reading"),
        Bad("conductor_temperature", "-60 C", "'-60 C'", "75 C"),
        Bad("run_length", "1500 ft", "would be lost on the way", "check ft and m"),
    ),
    always={
        "locked_rotor_current": texts(["14.2 A", "30 A"]),
        "nameplate_voltage": texts(["115 V"]),
        "voltage_at_rest": near(103.5, 108.4, 115.9, 117.5, low=85, high=140),
    },
    sometimes=RUN
    | {
        "rated_load_current": texts(["1.6 A", "5 A"]),
        "cord": texts(["18 AWG", "16 AWG", "1.5 mm2"]),
        "cord_length": near(50, 150, high=300),
        "voltage_at_start": near(92, 103.5, high=140),
        "start_power_factor": texts(["50 %", "80 %"]),
    },
    why=(
        "Starts one after the other, volts read in a live receptacle, covers on; no larger breaker."
    ),
    cautions=("live-01", "meter-01", "start-01", "pin-01", "flam-01", "brk-01"),
    not_checked=("LRA of its plate", "service and the feeder", "joints, plug and receptacle"),
    when=(
        When(
            "a cord in the way, which may be an extension cord",
            {"cord": "16 AWG", "cord_length": "25 ft"},
            comes=("cord-03",),
        ),
        When(
            "building wire of aluminium", {"building_wire": "12 AWG aluminium"}, comes=("alu-01",)
        ),
    ),
    steps=(
        Step(
            "volts at start",
            "voltage_at_start",
            {"103.5 V": "pass", "103.4 V": "marginal"},
            limit="90 % of 115 V, as makers ask while it runs: advice at a start",
            source="makers' sheets",
        ),
        Step(
            "least volts at start",
            "voltage_at_start",
            {"92 V": "pass", "91.9 V": "fail"},
            limit="80 % of 115 V, 64 % of the torque",
            source="common practice, no source",
        ),
        Step(
            "volts at rest",
            "voltage_at_rest",
            {"80.5 V": "fail", "80.4 V": "refused"},
            limit="under 70 % of 115 V it is another plug or a slip",
            source="common practice, no source",
        ),
    ),
)
