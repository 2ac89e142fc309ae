"""What the shared tests need to know of `start-curve`."""

from __future__ import annotations

from .trial import Bad, Trial

TRIAL = Trial(
    good={"nameplate_voltage": "115 V", "frequency": "60 Hz", "horsepower": "1/4 hp"}
    | {"locked_rotor_current": "20 A", "rated_load_current": "4.4 A", "poles": "4"}
    | {"main_winding": "2 ohm", "start_winding": "7 ohm", "voltage_at_rest": "117 V"}
    | {"duration": "1 s", "start_method": "ptc", "ptc_resistance": "6.8 ohm"}
    | {"inertia": "0.001 kg m2", "load_torque": "30 %"},
    zero=("load_torque",),
    printed=(
        "nameplate_voltage",
        "frequency",
        "horsepower",
        "locked_rotor_current",
        "rated_load_current",
        "duration",
        "load_torque",
        "inertia",
    ),
    bad=(
        Bad("inertia", "-0.001 kg m2", "'-0.001 kg m2'", "0.005 kg m2"),
        Bad("inertia", "0 kg m2", "'0 kg m2'", "0.005 kg m2"),
        Bad("inertia", "0.001 kg", "'kg'", "write it in kg m2"),
        Bad("poles", "3", "3 is odd", "poles come in pairs"),
        Bad("poles", "1725", "1725 is outside 2 to 24", "whole number"),
        Bad("rated_speed", "1725 rpm", "'1725 rpm'", "whole number"),
        Bad("rated_speed", "50", "50 is outside 100 to 24000", "whole number"),
        Bad("spread", "yes", "'yes'", "whole number"),
        Bad("spread", "10", "10 is outside 20 to 5000", "whole number"),
        Bad("fit", "nowhere.csv", "there is no file", "check the name"),
        Bad("frequency", "60 rpm", "'rpm'", "Hz"),
        Bad("start_capacitor", "189 uF", "no place in this start", "start-capacitor"),
        Bad("start_method", "capacitor", "'capacitor'", "start-capacitor"),
        Bad("variants", ["healthy", "lockd-rotor"], "'lockd-rotor'", "locked-rotor?"),
        Bad("variants", ["healthy", "healthy"], "stands there twice", "name it once"),
        Bad("variants", ["weak-capacitor"], "this start has none", "leave it out"),
        Bad("textbook_motor", "capacitor-start-110V", "was given too", "motor or a plate"),
        Bad("locked_rotor_current", "4 A", "4 A is not above", "the plate again"),
        Bad("main_winding", "7 ohm", "7 ohm alone", "measure it again"),
        Bad("main_winding", "0 ohm", "'0 ohm'", "2 ohm"),
        Bad("start_winding", "700 ohm", "700 ohm is over 30 times", "1.2 to 5 times"),
        Bad("ptc_resistance", "15 kohm", "'15 kohm'", "such as 6.8 ohm"),
        Bad("ptc_resistance", "6.8 V", "'V'", "ohm"),
        Bad("load_torque", "-5 %", "'-5 %'", "50 %"),
        Bad("load_torque", "0.5 N", "'N'", "%"),
    ),
    light=False,  # it simulates
    drawn_in=("test_start_curve.py",),
    apart=("nameplate_voltage",),  # a plate stands in place of a machine
    # a motor is given by its name or by its plate, not by both
    dear=(
        "voltage_at_rest",
        "source_resistance",
        "cord",
        "cord_length",
        "load_torque",
        "load_curve",
        "inertia",
    ),
    why="A picture of a start, which somebody then measures.",
    cautions=("start-01", "live-02", "meter-01", "pin-01", "flam-01"),
    not_checked=("motor at hand is like this one", "overload and breaker"),
)
