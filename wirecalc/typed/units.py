"""Units: what people write for them, and turning one into another.

A unit belongs to a *dimension* ("force", "temperature"), and a spelling is looked up inside the
dimension that is wanted. So F is a temperature where a temperature is asked for and a
capacitance where a capacitance is; m is never minutes. Text is looked up in this closed list
and never evaluated. pint does the arithmetic of a conversion, and is loaded only when the
typed unit differs from the declared one.
"""

from __future__ import annotations

import functools
from collections.abc import Callable
from pathlib import Path
from typing import Any

from ..base.errors import BadText, nearest

# dimension -> our name of the unit -> other spellings of it
SPELLINGS: dict[str, dict[str, tuple[str, ...]]] = {
    "current": {
        "A": ("amp", "amps", "ampere", "amperes", "Aac", "A ac", "Arms", "A rms"),
        "mA": ("milliamp", "milliamps"),
        "uA": ("µA", "μA"),
    },
    "voltage": {
        "V": ("volt", "volts", "Vac", "VAC", "V ac", "V~", "Vrms", "V rms"),
        "mV": ("millivolt", "millivolts"),
        "kV": (),
    },
    "resistance": {
        "ohm": ("ohms", "Ω", "Ω"),
        "mohm": ("mΩ", "mΩ", "milliohm", "milliohms", "mohms"),
        "kohm": ("kΩ", "kΩ", "kilohm", "kilohms", "kohms"),
        "Mohm": ("MΩ", "MΩ", "megohm", "megohms", "meg", "megs", "Mohms"),
    },
    "power": {
        "W": ("watt", "watts"),
        "mW": (),
        "kW": ("kilowatt", "kilowatts"),
        "hp": ("HP", "h.p.", "horsepower"),
    },
    "force": {
        "lbf": ("lb-f", "lb f", "pound-force", "pounds-force"),
        "N": ("newton", "newtons"),
        "kgf": ("kilogram-force",),
        "ozf": ("ounce-force",),
    },
    "length": {
        "mm": ("millimetre", "millimeter", "millimetres", "millimeters"),
        "cm": ("centimetre", "centimeter"),
        "m": ("metre", "meter", "metres", "meters"),
        "um": ("µm", "μm", "micron", "microns"),
        "in": ('"', "inch", "inches", "″"),
        "ft": ("'", "foot", "feet", "′"),
        "mil": ("mils", "thou"),
    },
    "area": {
        "mm2": ("mm²", "mm^2", "sqmm", "sq mm", "mm sq", "mmq"),
        "cmil": ("CMA", "circular mil", "circular mils"),
        "kcmil": ("MCM",),
    },
    "temperature": {
        "C": ("°C", "degC", "deg C", "degrees C", "Celsius", "degrees Celsius"),
        "F": ("°F", "degF", "deg F", "degrees F", "Fahrenheit", "degrees Fahrenheit"),
        "K": ("kelvin",),
    },
    "temperature difference": {
        "K": ("kelvin", "C", "°C", "degC", "deg C"),
        "F": ("°F", "degF", "deg F"),
    },
    "time": {
        "s": ("sec", "secs", "second", "seconds"),
        "ms": ("msec", "msecs", "millisecond", "milliseconds"),
        "min": ("mins", "minute", "minutes"),
        "h": ("hr", "hrs", "hour", "hours"),
    },
    "frequency": {"Hz": ("hertz", "cps", "cycles"), "kHz": ()},
    "capacitance": {
        "uF": ("µF", "μF", "uFd", "µFd", "MFD", "mfd", "microfarad", "microfarads"),
        "nF": (),
        "pF": (),
        "F": ("farad", "farads"),
    },
    "energy": {"J": ("joule", "joules")},
    "angle": {"deg": ("°", "degree", "degrees")},
    "inertia": {"kg m2": ("kg m²", "kg m^2", "kgm2", "kgm²")},
    "ratio": {"%": ("percent", "pct")},
    "resistance of a length": {
        "ohm/km": (),
        "ohm/kft": ("ohm/1000ft", "ohm/1000 ft"),
        "mohm/m": (),
        "ohm/m": (),
        "ohm/ft": (),
    },
    "resistivity": {
        "nohm m": ("nΩ m",),
        "uohm cm": ("µΩ cm", "μΩ cm"),
        "ohm mm2/m": ("Ω mm²/m", "ohm mm²/m"),
        "ohm cmil/ft": (),
    },
}

_PINT_NAMES = {
    "F": "farad",
    "in": "inch",
    "ft": "foot",
    "min": "minute",
    "h": "hour",
    "mm2": "mm**2",
    "um": "micrometer",
    "mohm": "milliohm",
    "kohm": "kiloohm",
    "Mohm": "megaohm",
    "uF": "microfarad",
    "nF": "nanofarad",
    "pF": "picofarad",
    "%": "percent",
    "ohm/kft": "ohm/kilofoot",
    "mohm/m": "milliohm/m",
    "ohm/ft": "ohm/foot",
    "nohm m": "nanoohm*meter",
    "uohm cm": "microohm*centimeter",
    "ohm mm2/m": "ohm*mm**2/meter",
    "ohm cmil/ft": "ohm*cmil/foot",
}

_DEGREES = {"C": "degC", "F": "degF", "K": "kelvin"}

_HINTS = {
    ("force", "lb"): "pounds of pull are lbf",
    ("force", "lbs"): "pounds of pull are lbf",
    ("force", "pound"): "pounds of pull are lbf",
    ("force", "pounds"): "pounds of pull are lbf",
    ("force", "kg"): "kilograms of pull are kgf",
    ("force", "kgs"): "kilograms of pull are kgf",
    ("time", "m"): "m is metres; minutes are min",
    ("current", "W"): "watts are not amps: divide by the voltage, or read the plate for amps",
    ("current", "kW"): "watts are not amps: divide by the voltage, or read the plate for amps",
    ("capacitance", "mF"): "a capacitor's MF, MFD or mF is uF",
    ("capacitance", "MF"): "a capacitor's MF, MFD or mF is uF",
    ("resistance", "gigohm"): "a gigohm is 1000 Mohm",
    ("resistance", "Gohm"): "a Gohm is 1000 Mohm",
    ("current", "kA"): "a kA is 1000 A",
    ("voltage", "VDC"): "ac or dc is said by what is asked for: V alone",
    ("force", "ft-lb"): "that is a torque",
    ("force", "in-lb"): "that is a torque",
    ("area", "AWG"): "a gauge is a name, not an area",
}


def dimension_of(unit: str) -> str:
    """Return the dimension that a unit of ours belongs to.

    >>> dimension_of("lbf")
    'force'

    K is a temperature here; a difference of temperatures is asked for by name.
    Raises LookupError for a unit that is not in the list.
    """
    for dimension, units in SPELLINGS.items():
        if unit in units:
            return dimension
    raise LookupError(f"{unit!r} is not a unit of wirecalc")


@functools.cache
def read_unit(text: str, dimension: str) -> str:
    """Return our name of the unit that somebody typed, within the dimension wanted.

    >>> read_unit("MFD", "capacitance")
    'uF'
    >>> read_unit("volts", "voltage")
    'V'

    Raises BadText, saying what would do, for a unit of another kind or an unknown one.
    """
    units = SPELLINGS[dimension]
    exact = {name for name, others in units.items() if text == name or text in others}
    if len(exact) == 1:
        return exact.pop()
    folded = text.casefold()
    alike = sorted(
        name for name, others in units.items() if folded in {s.casefold() for s in (name, *others)}
    )
    if len(alike) == 1:
        return alike[0]
    if len(alike) > 1:
        raise BadText(f"unit {text!r} could be {' or '.join(alike)}", "the case of a letter counts")
    raise _unknown_unit(text, dimension)


def _unknown_unit(text: str, dimension: str) -> BadText:
    units = SPELLINGS[dimension]
    do = "write it in " + ", ".join(units)
    folded = text.casefold()
    for (wanted, unit), hint in _HINTS.items():
        if wanted == dimension and unit.casefold() == folded:
            return BadText(f"{text!r} does not fit here ({hint})", do)
    for other, theirs in SPELLINGS.items():
        spelled = {s for name, more in theirs.items() for s in (name, *more)}
        if text in spelled or (len(text) > 1 and folded in {s.casefold() for s in spelled}):
            return BadText(f"{text!r} is a unit of {other}, and a {dimension} is wanted", do)
    known = [s for name, others in units.items() for s in (name, *others)]
    guess = nearest(text, known, start=3) if len(text) > 2 else ""
    return BadText(f"unit {text!r} is not known here", f"did you mean {guess}?" if guess else do)


def converter(unit: str, to: str, dimension: str) -> Callable[[float], float]:
    """Return the function that turns a number in one unit into another of the same dimension."""
    if unit == to:
        return float
    if dimension == "temperature":
        return lambda value: float(_registry().Quantity(value, _DEGREES[unit]).to(_DEGREES[to]).m)
    factor = _factor(unit, to, dimension)
    return lambda value: value * factor


def convert(value: float, unit: str, to: str) -> float:
    """Turn a number in one unit into another.

    >>> round(convert(1, "in", "mm"), 6)
    25.4
    >>> round(convert(212, "F", "C"), 6)
    100.0

    Raises LookupError for an unknown unit, ValueError for units of different dimensions.
    """
    dimension = dimension_of(unit)
    if to not in SPELLINGS[dimension]:
        raise ValueError(f"{unit} and {to} measure different things")
    return converter(unit, to, dimension)(value)


@functools.cache
def _factor(unit: str, to: str, dimension: str) -> float:
    if dimension == "temperature difference":
        return {("K", "F"): 1.8, ("F", "K"): 1 / 1.8}[unit, to]
    return float(_registry().Quantity(1.0, _pint(unit)).to(_pint(to)).magnitude)


def _pint(unit: str) -> str:
    return _PINT_NAMES.get(unit, unit)


@functools.cache
def _registry() -> Any:
    import pint  # dear to import: only when a typed unit differs from the declared one

    return pint.UnitRegistry(str(Path(__file__).with_name("units.txt")))
