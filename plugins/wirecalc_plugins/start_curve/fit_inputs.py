"""The inputs of a start that was recorded, beside those of `start-curve`."""

from __future__ import annotations

from typing import Annotated

from wirecalc import Reading, ReadingsStream, RecordedColumns, extra, may_be_absent, setting

from ..inputs_recording import (
    CLAMP,
    COLUMN,
    CURRENT_ERROR,
    DECIMAL_COMMA,
    EXACT,
    FIRST_COLUMN,
    HOW_READ,
    IN_AMPERES,
)

Fit = Annotated[
    RecordedColumns | None,
    ReadingsStream(
        ("current",),
        {"current": Reading("A", low=-5000, high=5000, text="current")},
        text="CSV or Parquet of time and current: the waveform of a start of this very machine",
        error_input="current_error",
        comma_input="decimal_comma",
        column_input="column",
        clamp_input="clamp",
        typical="start.csv",
    ),
    extra("the band is that of all motors that may have this plate"),
]
Column = Annotated[
    str | None,
    COLUMN.but(goes_with="fit"),
    may_be_absent(FIRST_COLUMN),
]
Clamp = Annotated[
    str | None,
    CLAMP.but(goes_with="fit"),
    may_be_absent(IN_AMPERES),
]
CurrentError = Annotated[str | None, CURRENT_ERROR.but(goes_with="fit"), may_be_absent(EXACT)]
DecimalComma = Annotated[bool, DECIMAL_COMMA.but(goes_with="fit"), setting(HOW_READ)]
