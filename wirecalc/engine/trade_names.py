"""What the trade calls an input, where that is not its name.

An abbreviation of a plate stands for its input wherever a name is typed: as an option, a key of a
sheet, a column, in Python. It does so only where it can be one input alone; where it can be two it
is refused with both, and a word that says less than a name (amps, length) is never taken for one.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

ABBREVIATIONS = {  # what a plate or a part has printed -> the inputs that it may be
    "bcsc": ("branch_selection_current",),
    "fla": ("full_load_current",),
    "hp": ("horsepower",),
    "hz": ("frequency",),
    "lra": ("locked_rotor_current",),
    "mca": ("minimum_ampacity",),
    "mfd": ("marked_capacitance", "measured_capacitance"),
    "mocp": ("maximum_breaker",),
    "mop": ("maximum_breaker",),
    "pf": ("power_factor", "start_power_factor"),
    "rla": ("rated_load_current",),
    "sfa": ("service_factor_current",),
    "uf": ("marked_capacitance", "measured_capacitance"),
}
MEANT = {  # words that say less than a name -> the inputs that may be meant, the likeliest first
    "fla": ("rated_load_current",),
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


def candidates(typed: str, inputs: Collection[str]) -> list[str]:
    """Return the inputs of a calculation that a typed name may mean, the likeliest first."""
    plain = typed.lstrip("-").replace("-", "_").casefold()
    meant = dict.fromkeys((*ABBREVIATIONS.get(plain, ()), *MEANT.get(plain, ())))
    return [name for name in meant if name in inputs]


def abbreviations(inputs: Collection[str]) -> dict[str, str]:
    """Return the abbreviations that stand for one of these inputs alone, each with that one.

    >>> abbreviations(["marked_capacitance"])["mfd"]
    'marked_capacitance'
    >>> "mfd" in abbreviations(["marked_capacitance", "measured_capacitance"])
    False
    """
    there = {k: [n for n in names if n in inputs] for k, names in ABBREVIATIONS.items()}
    return {k: names[0] for k, names in there.items() if len(names) == 1 and k not in inputs}


def named(typed: str, inputs: Collection[str]) -> str:
    """Return the input that is meant by a name or its abbreviation; what was typed where none is.

    >>> named("LRA", ["peak", "locked_rotor_current"]), named("hp", ["peak"])
    ('locked_rotor_current', 'hp')
    """
    plain = typed.strip().casefold().replace("-", "_").replace(" ", "_")
    return plain if plain in inputs else abbreviations(inputs).get(plain, typed)


def under_names(given: Mapping[str, Any], inputs: Collection[str] | None = None) -> dict[str, Any]:
    """Return what was given under the names of its inputs.

    What stands under both its name and an abbreviation is left so, and refused as a name that
    there is not. Without `inputs` only what is one input in every calculation is taken.
    """
    if inputs is not None and all(name in inputs for name in given):
        return dict(given)
    known = {k: v[0] for k, v in ABBREVIATIONS.items() if len(v) == 1}
    short = known if inputs is None else abbreviations(inputs)
    named = {k: short.get(k.casefold(), k) for k in given}
    return {k if k != n and n in given else n: given[k] for k, n in named.items()}
