"""The inputs of `windings`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    OneOf,
    Problem,
    Reading,
    asked,
    assumed,
    extra,
    instead_of,
    setting,
)

from ..inputs import LEADS, SLIP_MOHM
from ..inputs_motor import MOTOR_KIND
from ..lead_resistance import LEADS_COUNT
from ..maker_range import wrong_way_round
from .winding_open import PAIRS

_ALL = "one pair alone is never open, a pin is"

_WARM = "18 K move its resistance by 7 %"


def _resistance(pair: str) -> Reading:
    return Reading(
        "ohm",
        low=0,
        high=1000,
        typical="4.6 ohm",
        text=f"between pins {pair}",
        if_open="leave it out; a pin that reads OL to both others is open_pin",
    )


Reading12 = Annotated[
    float | None, _resistance("1-2"), instead_of("open_pin", when="open_pin!=none"), asked(_ALL)
]
Reading13 = Annotated[
    float | None, _resistance("1-3"), instead_of("open_pin", when="open_pin!=none"), asked(_ALL)
]
Reading23 = Annotated[
    float | None, _resistance("2-3"), instead_of("open_pin", when="open_pin!=none"), asked(_ALL)
]
OpenPin = Annotated[
    str,
    OneOf(("none", "1", "2", "3", "all"), text="pin that reads open (OL) to the other two"),
    instead_of("reading_1_2", "reading_1_3", "reading_2_3"),
]
LeadResistance = Annotated[float | None, LEADS, extra(LEADS_COUNT)]
CommonPin = Annotated[
    str | None,
    OneOf(("1", "2", "3"), text="common pin, where a marking names it"),
    extra("the readings name it themselves; an open pin asks for it"),
]
WindingTemperature = Annotated[
    float | None,
    Reading("C", low=-40, high=150, typical="25 C", text="temperature of the winding"),
    asked(_WARM, when="maker_run"),
    asked(_WARM, when="maker_start"),
    asked(_WARM, when="maker_each"),
    setting("only the maker's ohms go with it"),
]
CaseResistance = Annotated[
    float | None,
    Reading(
        "Mohm",
        low=0,
        high=1e6,
        typical="20 Mohm",
        text="any pin to the bare case",
        past=">",
        slip_under=SLIP_MOHM,
    ),
    asked("no motor goes back that reads to its case"),
]
MotorKind = Annotated[
    str,
    MOTOR_KIND,
    assumed("motor", source=PRACTICE, why="a compressor's case reading is advised higher"),
]


def refuse(
    reading_1_2: float | None = None,
    reading_1_3: float | None = None,
    reading_2_3: float | None = None,
    open_pin: str = "none",
    maker_run: float | None = None,
    maker_start: float | None = None,
    maker_each: float | None = None,
    maker_run_high: float | None = None,
    maker_start_high: float | None = None,
    maker_each_high: float | None = None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if maker_run is not None and maker_start is not None and maker_run > maker_start:
        yield Problem(
            "maker_run",
            f"{maker_run:g} ohm of the run winding is over the {maker_start:g} ohm of the start",
            "the run winding has the fewer ohms: the two swapped?",
        )
    yield from wrong_way_round("maker_run", maker_run, maker_run_high)
    yield from wrong_way_round("maker_start", maker_start, maker_start_high)
    yield from wrong_way_round("maker_each", maker_each, maker_each_high)
    readings = dict(zip(PAIRS, (reading_1_2, reading_1_3, reading_2_3), strict=True))
    for pair, reading in readings.items():
        if reading is not None and (open_pin == "all" or open_pin in pair.split("-")):
            yield Problem(
                f"reading_{pair.replace('-', '_')}",
                f"{reading:g} ohm between {pair}, and pin {open_pin} was said to read open",
                "leave this reading out, or leave open_pin out: an open pin is open to both others",
            )
