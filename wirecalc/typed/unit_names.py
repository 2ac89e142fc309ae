"""The units that there are, their spellings by dimension, and what is said of others."""

from __future__ import annotations

# dimension -> our name of the unit -> other spellings of it
SPELLINGS: dict[str, dict[str, tuple[str, ...]]] = {
    "current": {
        "A": ("amp", "amps", "ampere", "amperes", "Aac", "A ac", "Arms", "A rms"),
        "mA": ("milliamp", "milliamps"),
        "uA": ("µA", "μA", "microamp", "microamps"),
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
        "kgf": ("kilogram-force", "kg-f", "kp"),
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
        "mm2": ("mm²", "mm^2", "sqmm", "sq mm", "mm sq", "mmq", "qmm"),
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
    "energy": {
        "J": ("joule", "joules"),
        "Wh": ("watt-hour", "watt-hours"),
        "kWh": ("kilowatt-hour", "kilowatt-hours"),
    },
    "angle": {"deg": ("°", "degree", "degrees")},
    "volume": {
        "L": ("l", "litre", "litres", "liter", "liters"),
        "gal": ("US gal", "gallon", "gallons"),
    },
    "flow": {
        "L/min": ("l/min", "lpm", "LPM"),
        "gal/min": ("gpm", "GPM"),
    },
    "air flow": {
        "m3/h": ("m³/h", "m^3/h"),
        "ft3/min": ("ft³/min", "cfm", "CFM"),
        "L/s": ("l/s",),
    },
    "number": {"units": ("unit",)},
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

PINT_NAMES = {
    "F": "farad",
    "in": "inch",
    "ft": "foot",
    "min": "minute",
    "h": "hour",
    "mm2": "mm**2",
    "Wh": "watt*hour",
    "kWh": "kilowatt*hour",
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
    "L": "liter",
    "gal": "gallon",
    "L/min": "liter/minute",
    "gal/min": "gallon/minute",
    "m3/h": "meter**3/hour",
    "ft3/min": "foot**3/minute",
    "L/s": "liter/second",
}

DEGREES = {"C": "degC", "F": "degF", "K": "kelvin"}

_NO_AMPS = "watts are not amps: divide by the voltage, or read the plate for amps"
HINTS = {
    **{("force", u): "pounds of pull are lbf" for u in ("lb", "lbs", "pound", "pounds")},
    **{("force", u): "kilograms of pull are kgf" for u in ("kg", "kgs")},
    **{("force", u): "that is a torque" for u in ("ft-lb", "ft lb", "in-lb", "in lb")},
    **{("force", u): "that is a torque" for u in ("Nm", "newton meters", "newton metres")},
    **{("current", u): "a share of a rating: work out the amps" for u in ("%", "x", "times")},
    ("time", "m"): "m is metres; minutes are min",
    **{("length", u): "a mile is 5280 ft" for u in ("mi", "mile", "miles")},
    **{("length", u): "a km is 1000 m" for u in ("km", "kms")},
    **{("power", u): "that is heat moved, not watts taken" for u in ("BTU", "BTU/h", "btuh")},
    **{("current", u): _NO_AMPS for u in ("W", "kW", "VA", "kVA")},
    ("capacitance", "mF"): "a capacitor's MF, MFD or mF is uF",
    ("capacitance", "MF"): "a capacitor's MF, MFD or mF is uF",
    ("voltage", "VDC"): "ac or dc is said by what is asked for: V alone",
    ("area", "AWG"): "a gauge is a name, not an area",
}

FACTORS: dict[str, float] = {}  # units that plugins declared -> one of it in the SI unit
