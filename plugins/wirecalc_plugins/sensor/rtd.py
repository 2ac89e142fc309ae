"""A platinum resistance thermometer by its ohms, against IEC 60751 and its class."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    MAKER,
    Item,
    Origin,
    calculation,
    cannot_tell,
    confirmed,
    figure,
    put,
    show,
    tables,
)

from ..lead_resistance import less_leads
from .rtd_inputs import (
    IceResistance,
    PairResistance,
    RtdBuild,
    RtdClass,
    SensorResistance,
    SensorTemperature,
    TemperatureTolerance,
    refuse,
)
from .sensor_inputs import (
    PLAIN,
    WARMTH,
    InIceWater,
    LeadResistance,
    Read,
    SensorOpen,
    beside,
    conducts,
    within_both,
)

A, B, C = 3.9083e-3, -5.775e-7, -4.183e-12  # IEC 60751, per C, C2 and C4
COLDEST_C, HOTTEST_C = -200.0, 850.0
CURVE = confirmed(
    "iec-60751-curve",
    "IEC 60751, platinum resistance thermometers, 2008 and 2022, as a library carries it",
    "R = R0 (1 + A t + B t2 + C (t - 100) t3), C only below 0 C",
    1,
)


def ratio_at(celsius: float) -> float:
    """Return R/R0 at a temperature in C."""
    below = C * (celsius - 100) * celsius**3 if celsius < 0 else 0.0
    return 1 + A * celsius + B * celsius**2 + below


def celsius_at(ratio: float) -> float:
    """Return the temperature in C that a ratio R/R0 means, no less than -273.15 C."""
    root = A * A - 4 * B * (1 - ratio)
    celsius = (-A + math.sqrt(max(root, 0.0))) / (2 * B)
    for _ in range(8 if celsius < 0 else 0):  # the fourth power below 0 C, by Newton
        slope = A + 2 * B * celsius + C * (4 * celsius**3 - 300 * celsius**2)
        celsius = max(celsius - (ratio_at(celsius) - ratio) / slope, -273.15)
    return celsius


@calculation(
    part="sensor and switch",
    words=(
        "RTD; PT100; PT1000; Pt500; platinum sensor; resistance thermometer; oven sensor; range",
        "oven temperature probe; oven sensor ohms; 1080 ohm oven sensor; three wire probe",
        "class A; class B; oven too hot; oven too cold; sensor error F3; meat probe",
        "pt100 ohm; pt100 ohms; pt1000 ohms; ohms of pt100; oven probe ohms; oven sensor 1080",
        "sensor of oven; oven sensor test; oven sensor bad; room temp ohms",
        "ohms at room temperature; oven temperature sensor; F1; F3; meat thermometer",
        "range sensor; platinum",
    ),
    go_on="plug it in, and compare what the board shows with a thermometer",
    cautions=("dead-01", "hot-01", "sub-01", "heat-01"),
    not_checked=(
        "ohms of its own cable where it has two wires: 0.39 ohm is 1 K of a Pt100",
        "plug, harness and board: read the sensor again at the board's plug",
        "insulation from the sheath: moisture in a probe lowers its ohms",
    ),
    refuse=refuse,
    example_with=(
        "sensor_resistance=1091 ohm",
        "sensor_temperature=22 C",
        "rtd_class",
        "rtd_build",
        "lead_resistance",
    ),
)
def rtd(
    ice_resistance: IceResistance,
    sensor_resistance: SensorResistance = None,
    sensor_temperature: SensorTemperature = None,
    in_ice_water: InIceWater = None,
    sensor_open: SensorOpen = None,
    rtd_class: RtdClass = None,
    rtd_build: RtdBuild = None,
    temperature_tolerance: TemperatureTolerance = None,
    pair_resistance: PairResistance = None,
    lead_resistance: LeadResistance = None,
) -> Iterator[Item]:
    """Does this platinum sensor (RTD) have the ohms of its temperature?

    R = R0 (1 + A t + B t2 + C (t - 100) t3), the last only below 0 C, with the coefficients of IEC
    60751. Its class is a tolerance in kelvin that grows with the temperature, within a span that
    is narrower for film: AA 0.1 + 0.0017 t, A 0.15 + 0.002 t, B 0.3 + 0.005 t, C 0.6 + 0.01 t; a
    maker's tolerance in K may stand in its place. Of three wires, what is read between the pair of
    one colour is taken off: it is the loop of cable and leads. With two wires the cable is in the
    reading. Ice water is 0 C within 0.5 K (common practice).

    For platinum of 3850 ppm, unplugged; not for nickel or copper, nor for NTC (thermistor). Inputs:
    resistances in ohm, temperatures in C, tolerance in K. Yields the temperature by the ohms, the
    ohms due, and how far it is off. Refuses a reading no more than its leads. Source: IEC 60751,
    table rtd-classes.
    """
    if sensor_open is not None or sensor_resistance is not None:
        yield conducts(sensor_open is True)
    known = beside(sensor_temperature, in_ice_water)
    if sensor_resistance is None:
        return
    ohms = less_leads(
        sensor_resistance, lead_resistance if pair_resistance is None else pair_resistance
    )
    yield figure(
        "temperature by its ohms",
        celsius_at(ohms.high / ice_resistance),
        "C",
        source=CURVE,
        working=lambda: f"R/R0 = {put(ohms.high, 'ohm')} / {put(ice_resistance, 'ohm')}",
    )
    if known is None:
        return
    at, ends = known
    yield figure("ohms due at this temperature", ice_resistance * ratio_at(at), "ohm", source=CURVE)
    away = Read((ohms.low, ohms.high), ends, at).ends(
        lambda r, c: celsius_at(r / ice_resistance) - c
    )
    if not COLDEST_C <= at <= HOTTEST_C:
        yield from _no_class(at, "the curve of IEC 60751 ends at -200 and 850 C", ())
    elif temperature_tolerance is not None:
        yield from within_both(WARMTH, away, (temperature_tolerance, "K"))
    elif rtd_class is not None:
        yield from _by_class(at, away, rtd_class, rtd_build)


def _by_class(
    at: float, off: tuple[float, float], rtd_class: str, build: str | None
) -> Iterator[Item]:
    rows = tables.load("rtd-classes").where(rtd_class=rtd_class)
    mine = [r for r in rows if build in (None, r.text("rtd_build"))]
    reach = [r for r in mine if r.number("from_C") <= at <= r.number("to_C")]
    if len(reach) < len(mine):
        needs = ("rtd_build",) if reach else ()
        yield from _no_class(at, f"class {rtd_class} does not reach {show(at, 'C')}", needs)
        return
    row = reach[0]
    tolerance = row.number("at_0C_K") + row.number("per_C_K") * abs(at)
    yield figure(
        "tolerance of its class",
        tolerance,
        "K",
        source=row.source,
        toward="down",
        working=lambda: f"{row.number('at_0C_K'):g} + {row.number('per_C_K'):g} x {abs(at):g}",
    )
    yield from within_both(WARMTH, off, (tolerance, "K"), row.source, Origin.STANDARD)


def _no_class(at: float, why: str, needs: tuple[str, ...]) -> Iterator[Item]:
    for name in WARMTH:
        yield cannot_tell(
            name,
            f"{why}{' for both builds' if needs else ''}",
            measure="read it nearer to room temperature, or take the maker's tolerance",
            needs=needs,
            source=MAKER,
            plain=PLAIN,
        )
