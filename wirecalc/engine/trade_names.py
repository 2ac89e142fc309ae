"""What the trade calls an input, where that is not its name."""

from __future__ import annotations

MEANT = {  # what people call an input -> the inputs that may be meant, the likeliest first
    "lra": ("locked_rotor_current",),
    "rla": ("rated_load_current",),
    "fla": ("full_load_current", "rated_load_current"),
    "hp": ("horsepower",),
    "amps": ("current", "joint_current", "overcurrent", "settled"),
    "volts": (
        "voltage",
        "circuit_voltage",
        "element_voltage",
        "voltage_at_rest",
        "nameplate_voltage",
    ),
    "temp": (
        *("ambient", "cord_ambient", "place_temperature", "device_ambient"),
        *("temperature_before", "conductor_temperature"),
    ),
    "temperature": ("ambient", "place_temperature", "conductor_temperature"),
    "length": (
        "run_length",
        "cord_length",
        "extension_length",
        "barrel_length",
        "joint_length",
    ),
    "time": ("overcurrent_time", "settle_time", "run_time", "high_time"),
    "gauge": ("wire", "building_wire", "extension_cord", "cord"),
    "awg": ("wire", "building_wire", "extension_cord", "cord"),
    "capacitance": ("marked_capacitance", "measured_capacitance"),
    "resistance": ("element_resistance", "device_resistance", "overload_resistance"),
    "file": ("recording", "readings", "stock"),
}
