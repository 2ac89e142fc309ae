"""What the shared tests need to know of `upstream`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"voltage_at_rest": "119.8 V", "voltage_running": "116.6 V", "current": "8.7 A"}
    | {
        "building_wire": "14 AWG",
        "run_length": "40 ft",
        "extension_cord": "16 AWG",
        "extension_length": "6 ft",
    }
    | {"conductor_temperature": "20 C", "panel_at_rest": "120.1 V", "panel_running": "119.6 V"}
    | {"load_kind": "motor", "power_factor": "80 %"}
    | {"second_leg_at_rest": "119.9 V", "second_leg_running": "118.2 V"}
    | {"second_leg_current": "8.7 A"},
    zero=("conductor_temperature", "second_leg_running"),
    printed=("power_factor",),
    bad=(
        Bad("voltage_running", "120.6 V", "120.6 V with the load on", "exchanged"),
        Bad("voltage_running", "0.1166 V", "0.1166 V is no supply", "range and unit"),
        Bad("voltage_running", "116.6 mV", "next to nothing", "write 116.6 V, or 0.1166 V"),
        Bad("voltage_running", "21 V", "21 V are left of 119.8 V", "check the unit"),
        Bad("voltage_at_rest", "19.9 V", "19.9 V is no supply", "range and unit"),
        Bad("voltage_at_rest", "0 V", "a dead outlet", "119.8 V"),
        Bad("voltage_at_rest", "600 V", "600 V is no line of a house", "range and unit"),
        Bad("second_leg_current", "0.2 A", "'0.2 A'", "8.7 A"),
        Bad("current", "0.49 A", "0.49 A is too little", "0.5 A or more"),
        Bad("current", "8.7 mA", "'8.7 mA'", "8.7 A"),
        Bad("current", "1044 W", "'W'", "divide by the voltage"),
        Bad("run_length", "2000 ft", "half of the volts", "check ft and m"),
        Bad("extension_length", "700 m", "'700 m'", "50 ft"),
        Bad("conductor_temperature", "167 C", "'167 C'", "167 F"),
        Bad("panel_running", "120.6 V", "120.6 V with the load on", "exchanged"),
        Bad("panel_running", "114 V", "6.1 V lost at the panel", "the same load"),
        Bad("load_kind", "heater", "a heater has 100 %", "is a motor"),
        Bad("load_kind", "toaster", "'toaster'", "heater"),
        Bad("power_factor", "0.8", "'0.8'", "write 80 %"),
        Bad("second_leg_at_rest", "239 V", "239 V", "each leg to neutral"),
    ),
    always={
        # 8.7 A on 40 ft of 14 AWG at 20 C is 1.78 V; 1 and 5 W more are 0.12 and 0.58 V
        "voltage_at_rest": near(120, low=119.5, high=122),
        "voltage_running": near(118.2, 117.6, 119.9, low=112, high=119.9),
        "current": near(1, 8.7, low=0.5, high=20),
    },
    sometimes={
        "building_wire": texts(["14 AWG", "14 AWG solid", "12 AWG aluminum", "12 AWG cca"]),
        "run_length": near(40, 100, high=150),
        "extension_cord": texts(["16 AWG", "1.5 mm2"]),
        "extension_length": near(6, high=25),
        "conductor_temperature": near(20, 75, low=-20, high=110),
        "panel_at_rest": near(120, low=119.5, high=122),
        "panel_running": near(119.5, low=119, high=119.5),
        "second_leg_at_rest": near(120, low=118, high=122),
        "second_leg_running": near(117.6, 119.4, 122.4, 126, low=110, high=130),
        "second_leg_current": near(1, 8.7, low=0.5, high=20),
        "load_kind": texts(["heater", "heater", "heater", "motor"]),
        "power_factor": texts(["100 %", "95 %", "50 %"]),
    },
    why="Probes in a live receptacle and a clamp; a bad one heats and trips nothing.",
    cautions=("live-01", "live-02", "meter-01", "brk-01", "cord-04"),
    not_checked=(
        "which part it is",
        "service ahead of the panel",
        "length that is given too long",
        "more than 12 A",
    ),
    when=(
        When(
            "building wire of aluminium", {"building_wire": "12 AWG aluminium"}, comes=("alu-01",)
        ),
    ),
    steps=(
        Step(
            "heat beyond the wiring",
            "voltage_running",
            {
                "118.1 V": "cannot tell",
                "118.0 V": "pass",
                "117.5 V": "pass",
                "117.4 V": "marginal",
                "117.1 V": "marginal",
                "117.0 V": "cannot tell",
            },
            given={"conductor_temperature": "75 C"},
            limit=(
                "80 ft of 14 AWG at 3.14 ohm/kft take 2.185 V of 8.7 A: 80 % of that is 1.748 "
                "V, 1 W more is 2.300 V, 5 W more 2.760 V"
            ),
            source="common practice, no source",
        ),
        Step(
            "heat beyond the wiring at 12 A",
            "power_factor",
            {"95 %": "pass", "94 %": "refused"},
            limit="a heater has no less than 95 %",
            source="common practice, no source",
        ),
    ),
)
