"""How a recording is read: the same file and the same words wherever one is asked for."""

from __future__ import annotations

from wirecalc import OneOf, Reading, ReadingsStream, Words, YesNo

_KINDS = {
    "current": Reading("A", low=-5000, high=5000, text="current"),
    "power": Reading("W", low=-100_000, high=100_000, text="power"),
    "voltage": Reading("V", low=-1500, high=1500, text="volts at the plug"),
    "peak": Reading(
        "A", low=-5000, high=5000, text="highest instantaneous current of each reading"
    ),
}

# an invented log of two starts, for the example
_SAMPLE = (
    "t_s,current_A 0,0.02 1,0.02 2,7.8 3,1.42 4,1.31 5,1.27 6,1.26 7,1.25 8,1.26 9,1.25 10,0.02 "
    "11,0.02 12,0.02 13,0.02 14,7.6 15,1.40 16,1.30 17,1.26 18,1.25 19,1.26 20,1.25 21,1.26 "
    "22,0.02 23,0.02"
).replace(" ", "\n")

RECORDING = ReadingsStream(
    ("current", "power"),
    _KINDS,
    beside=("voltage", "peak"),
    text="time and current (or power), and volts and peaks if recorded",
    error_input="current_error",
    comma_input="decimal_comma",
    column_input="column",
    clamp_input="clamp",
    typical="start.csv",
    sample=_SAMPLE,
)
RECORDED = OneOf(
    ("auto", "instantaneous", "rms", "power"),
    text="what the values are; auto: by the header and the values",
)
COLUMN = Words("header of the column to take, if not the first that fits")
CLAMP = Words("scale of a clamp that gives volts", typical="100 mV/A")
CURRENT_ERROR = Words("meter error of every value, as 2% or (2%+5)", typical="2%")
DECIMAL_COMMA = YesNo("the numbers of the file have decimal commas")
BY_ITSELF = "found by the header and the values, and said"
FIRST_COLUMN = "the first column that fits"
IN_AMPERES = "the file is in A, or its header says the scale"
EXACT = "readings taken as exact"
HOW_READ = "how the file is read"
