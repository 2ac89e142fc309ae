"""What exercises come to by hand: running time, a motor that hums, leakage, an unmarked wire.

The leakage of a stationary heater is 0.75 mA per kW by IEC 60335-1 (13.2, no less than 0.75 mA and
no more than 5 mA) and 1 mA per kW by DIN VDE 0701-0702 (no less than 3.5 mA, no more than 10 mA),
that of a refrigerator 1.5 mA by IEC 60335-2-24.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

Told = Mapping[str, str]
ByHand = Callable[[Told], float]


def n(told: Told, name: str) -> float:
    """Return the number of a quantity as it stands on the sheet."""
    return float(told[name].split()[0])


def several(told: Told, name: str) -> list[float]:
    return [float(one.split()[0]) for one in told[name].split(", ")]


def duty(told: Told) -> float:
    on, off = sum(several(told, "on_times")), sum(several(told, "off_times"))
    return on / (on + off) * 100


def energy(told: Told, hours: float = 24) -> float:
    return n(told, "running_power") / 1000 * hours * duty(told) / 100


def rests(told: Told) -> dict[str, str]:
    return {**told, "on_times": told["off_times"], "off_times": told["on_times"]}


def first_cycle(told: Told) -> float:
    on, off = several(told, "on_times")[0], several(told, "off_times")[0]
    return 100 * on / (on + off)


def of_locked_rotor(told: Told, power: float = 1, plate: str = "locked_rotor_current") -> float:
    volts = n(told, "voltage") / n(told, "nameplate_voltage")
    return 100 * n(told, "high_current") / (n(told, plate) * volts**power)


def leaks(told: Told) -> list[float]:
    return [n(told, "leakage_current"), *several(told, "other_leakage")]


def kilowatts(told: Told) -> float:
    return n(told, "nameplate_power") / 1000


def strand(told: Told) -> float:
    return math.pi * (n(told, "strand_diameter") / 2) ** 2


def cross_section(told: Told) -> float:
    return n(told, "strands") * strand(told)


def mils(told: Told) -> float:
    return n(told, "strand_diameter") / 25.4 * 1000


def circular_mils(told: Told) -> float:
    return n(told, "strands") * mils(told) ** 2


BY_HAND: dict[str, tuple[ByHand, ...]] = {
    "duty": (duty, energy),
    "gauge": (cross_section, circular_mils),
    "leakage": (
        lambda t: sum(leaks(t)) / 4 * 100,
        lambda t: min(max(0.75, 0.75 * kilowatts(t)), 5),
    ),
    "locked": (of_locked_rotor,),
}
SLIPS: dict[tuple[str, int], dict[str, ByHand]] = {
    ("duty", 1): {
        "on over off": lambda t: sum(several(t, "on_times")) / sum(several(t, "off_times")) * 100,
        "rest for run": lambda t: duty(rests(t)),
        "an hour for the whole": lambda t: sum(several(t, "on_times")) / 0.6,
        "one cycle for all": first_cycle,
    },
    ("duty", 2): {
        "on all day": lambda t: n(t, "running_power") * 0.024,
        "rest for run": lambda t: energy(rests(t)),
        "an hour for a day": lambda t: energy(t, hours=1),
        "Wh for kWh": lambda t: 1000 * energy(t),
    },
    ("gauge", 1): {
        "diameter for radius": lambda t: n(t, "strands") * math.pi * n(t, "strand_diameter") ** 2,
        "square for circle": lambda t: n(t, "strands") * n(t, "strand_diameter") ** 2,
        "one strand for all": strand,
        "square left out": lambda t: n(t, "strands") * math.pi / 4 * n(t, "strand_diameter"),
    },
    ("gauge", 2): {
        "pi/4 put in": lambda t: 0.78539816 * circular_mils(t),
        "one strand for all": lambda t: mils(t) ** 2,
        "square left out": lambda t: n(t, "strands") * mils(t),
        "diameter for radius": lambda t: 3.14159265 * circular_mils(t),
    },
    ("leakage", 1): {
        "the others left out": lambda t: 25 * n(t, "leakage_current"),
        "6 mA for 4 mA": lambda t: sum(leaks(t)) / 6 * 100,
        "mean for sum": lambda t: sum(leaks(t)) / 3 / 4 * 100,
        "root of the squares": lambda t: 25 * math.hypot(*leaks(t)),
    },
    ("leakage", 2): {
        "its power left out": lambda t: 0.75,
        "row of the other standard": lambda t: min(max(3.5, kilowatts(t)), 10),
        "its cap for its limit": lambda t: 5.0,
        "row of another machine": lambda t: 1.5,
        "the reading for the limit": lambda t: n(t, "leakage_current"),
    },
    ("locked", 1): {
        "volts left out": lambda t: of_locked_rotor(t, power=0),
        "volts upside down": lambda t: of_locked_rotor(t, power=-1),
        "RLA for LRA": lambda t: of_locked_rotor(t, plate="rated_load_current"),
        "peak for rms": lambda t: 1.41421356 * of_locked_rotor(t),
    },
}
