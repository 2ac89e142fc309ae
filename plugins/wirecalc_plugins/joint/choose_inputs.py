"""The inputs of `choose`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    FileColumns,
    ReadingsFile,
    Wire,
    asked,
    extra,
    setting,
)

from ..inputs import CIRCUIT_VOLTAGE, CURRENT, WIRE
from ..inputs_joint import CONNECTOR, PLACE, TAB_WIDTH, WIRE_RATING

WireInput = Annotated[list[Wire], WIRE]
Connector = Annotated[str, CONNECTOR]
TabWidth = Annotated[
    float | None,
    TAB_WIDTH,
    asked("a push-on terminal is for one width of tab", when="connector=push-on"),
    setting("only a push-on terminal has a tab"),
]
WireTemperature = Annotated[
    float | None, WIRE_RATING, asked("a part is no better than the wire in it")
]
PlaceTemperature = Annotated[
    float | None, PLACE, asked("a rating is good for a place and not by itself")
]
Current = Annotated[
    float | None, CURRENT, extra("a part for the wire's gauge carries what its wire does")
]
CircuitVoltage = Annotated[
    float | None,
    CIRCUIT_VOLTAGE,
    extra("connectors are marked 300 V or 600 V, an ordinary appliance has up to 240 V"),
]
StockInput = Annotated[
    FileColumns | None,
    ReadingsFile(
        {},
        text="the stock, if not the shop's table: part, connector, barrel and more",
        typical="stock.csv",
    ),
    extra("the shop's own table serves without it; the invented one settles nothing"),
]
