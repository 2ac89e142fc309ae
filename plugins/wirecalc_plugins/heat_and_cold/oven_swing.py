"""An oven's highs and lows against its setting."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Nameplate,
    Origin,
    Problem,
    Reading,
    asked,
    at_most,
    calculation,
    cannot_tell,
    extra,
    figure,
    put,
)

CYCLES = 3  # fewer highs and lows say little of a mean; common practice
ACTION = "check the sensor and its place, the door seal and the offset setting of the control"
_PLAIN = "how well the oven keeps to its setting"
HOT, COLD, SWING = "mean no hotter than set", "mean no colder than set", "swing"


def _oven(text: str, typical: str) -> Reading:
    return Reading("C", low=30, high=350, typical=typical, text=text)


def _kelvin(text: str, typical: str) -> Nameplate:
    return Nameplate(
        "K",
        above=0,
        high=100,
        typical=typical,
        text=text,
        dimension="temperature difference",
    )


def _refuse(oven_high: list[float], oven_low: list[float]) -> Iterator[Problem]:
    if abs(len(oven_high) - len(oven_low)) > 1:
        yield Problem(
            "oven_low",
            f"{len(oven_low)} lows for {len(oven_high)} highs",
            "a cycle has one of each: read them in turn",
        )
    if min(oven_high) < max(oven_low):
        yield Problem(
            "oven_low",
            f"a low of {max(oven_low):g} C is over a high of {min(oven_high):g} C",
            "sort the readings, and leave the preheating out",
        )


@calculation(
    part="heat and cold",
    words=(
        "oven temperature; oven too hot; oven too cold; oven not accurate; burns; underbakes",
        "oven swing; oven cycles; calibrate oven; offset; bakes unevenly; 350 F; thermostat",
        "oven thermometer; range; wall oven; setting; average temperature",
        "oven; oven off; degrees off; degrees out; off by; runs hot; runs cold; reads hot",
        "set to and reads; undercooks; overcooks; cakes burn; cake sinks; raw in the middle",
        "cooks uneven; temperature swings; oven over temperature; oven under temperature",
        "oven overshoot; overshoots; cycling; calibration of the oven; preheat",
        "takes long to preheat; gas mark; broiler; cooker; stove; bakes wrong; baking",
    ),
    go_on="note setting and mean on the sheet; tell the owner how to set the knob",
    cautions=("hot-01", "dead-03", "heat-01"),
    not_checked=(
        "other settings: a control may be right at one and off at another",
        "the place: the middle of the oven counts, empty, the door shut",
        "a thermometer in still air lags: the swing that it shows is less than that of the air",
    ),
    refuse=_refuse,
    example_with=(
        "oven_high=182 C; 183 C; 182 C",
        "oven_low=168 C; 169 C; 169 C",
        "mean_tolerance",
        "most_swing",
    ),
)
def oven_swing(
    oven_setting: Annotated[
        float,
        Nameplate(
            "C",
            low=30,
            high=350,
            typical="177 C",
            text="temperature the oven is set to",
            either_scale=True,
        ),
    ],
    oven_high: Annotated[list[float], _oven("highest of each cycle, after preheating", "182 C")],
    oven_low: Annotated[list[float], _oven("lowest of each cycle", "168 C")],
    mean_tolerance: Annotated[
        float | None,
        _kelvin("how far the mean may be from the setting, by the maker's sheet", "14 K"),
        asked("without the maker's tolerance no oven is off"),
    ] = None,
    most_swing: Annotated[
        float | None,
        _kelvin("greatest swing from low to high, by the maker's sheet", "40 K"),
        extra("the mean is judged without it"),
    ] = None,
) -> Iterator[Item]:
    """Does this oven keep to its setting?

    The mean lies half way between the mean of the highs and the mean of the lows, over three cycles
    or more after preheating (common practice; fewer can't be told). Mean and swing, which is from
    the lowest low to the highest high, are judged by the maker's sheet. 25 F (14 K) each way is
    what many sheets print for the mean (from memory).

    For household ovens, electric or gas, in the middle of the empty oven. Inputs: temperatures in C
    (30 to 350), tolerances in K; highs and lows are repeated. Yields mean, how far off, swing.
    Refuses lows over highs. Source: the maker's sheet as typed.
    """
    mean = (sum(oven_high) / len(oven_high) + sum(oven_low) / len(oven_low)) / 2
    yield figure(
        "mean",
        mean,
        "C",
        source=PRACTICE,
        also=[(mean * 1.8 + 32, "F")],
        working=lambda: f"({_mean(oven_high)} + {_mean(oven_low)}) / 2",
    )
    yield figure("off its setting", mean - oven_setting, "K", source=PRACTICE)
    swing = max(oven_high) - min(oven_low)
    yield figure("swing", swing, "K", source=PRACTICE, also=[(swing * 1.8, "F")])
    if min(len(oven_high), len(oven_low)) < CYCLES:
        for name in (HOT, COLD):
            yield cannot_tell(
                name,
                f"{min(len(oven_high), len(oven_low))} cycles, and fewer than {CYCLES} say little",
                measure="read on for three cycles after preheating",
                source=PRACTICE,
                plain=_PLAIN,
            )
    elif mean_tolerance is not None:
        yield _at_most(HOT, mean - oven_setting, mean_tolerance)
        yield _at_most(COLD, oven_setting - mean, mean_tolerance)
    if most_swing is not None:
        yield _at_most(SWING, swing, most_swing)


def _mean(each: list[float]) -> str:
    return f"({' + '.join(put(one, 'C') for one in each)}) / {len(each)}"


def _at_most(name: str, off: float, limit: float) -> Item:
    return at_most(
        name, off, limit, "K", source=MAKER, origin=Origin.MAKER, action=ACTION, plain=_PLAIN
    )
