"""A thermocouple by its millivolts, against its reference function and its class."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Source,
    answer,
    calculation,
    cannot_tell,
    figure,
    put,
    tables,
)

from .sensor_inputs import (
    PLAIN,
    WARMTH,
    InIceWater,
    Read,
    SensorOpen,
    beside,
    conducts,
    within_both,
)
from .thermocouple_inputs import (
    ColdJunction,
    SensorTemperature,
    TemperatureTolerance,
    ThermocoupleType,
    ThermocoupleVoltage,
    ToleranceClass,
    refuse,
)

REVERSED_K = 5.0  # junctions this far apart have a sign of their own; common practice


class Function:
    """The reference function of a type: mV over C, the cold junction at 0 C."""

    def __init__(self, table: tables.Table, letter: str) -> None:
        rows = list(table.where(thermocouple_type=letter))
        self.source: Source = rows[0].source
        self.pieces: dict[tuple[float, float], dict[str, float]] = {}
        for row in rows:
            span = row.number("from_C"), row.number("to_C")
            self.pieces.setdefault(span, {})[row.text("term")] = row.number("coefficient")
        self.low = min(low for low, _ in self.pieces)
        self.high = max(high for _, high in self.pieces)

    def mv(self, celsius: float) -> float:
        """Return the mV at a temperature in C within its span."""
        terms = next(t for (_, high), t in sorted(self.pieces.items()) if celsius <= high)
        powers = [terms[f"c{n}"] for n in range(sum(name.startswith("c") for name in terms))]
        total = 0.0
        for coefficient in reversed(powers):
            total = total * celsius + coefficient
        if "a0" in terms:
            total += terms["a0"] * math.exp(terms["a1"] * (celsius - terms["a2"]) ** 2)
        return total

    def celsius(self, mv: float) -> float | None:
        """Return the temperature in C of so many mV, None past the ends of its span."""
        low, high = self.low, self.high
        if not self.mv(low) <= mv <= self.mv(high):
            return None
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if self.mv(middle) < mv else (low, middle)
        return (low + high) / 2


@calculation(
    part="sensor and switch",
    words=(
        "thermocouple; type K; type J; type T; millivolts; mV; thermopile; probe; oven probe",
        "flame sensor millivolts; pilot; kiln; temperature probe of a meter; cold junction",
        "reference junction; reversed polarity; thermocouple reads backward; K-type probe",
        "flame failure; flame goes out; pilot goes out; pilot will not stay lit",
        "will not stay lit; mv at; millivolts at; type N; type S; K type; oven thermocouple",
        "gas oven; gas cooker; gas hob; meter probe; temperature probe; red and yellow",
        "compensating cable",
    ),
    go_on="plug it in, and compare what the board shows with a thermometer",
    cautions=("dead-01", "hot-01", "sub-01"),
    not_checked=(
        "extension wire of another type, and joints in it that are not as warm as each other",
        "a meter that shows degrees corrects its cold junction itself: mV need a mV range",
        "whether the tip touches what it should tell",
    ),
    refuse=refuse,
    example_with=(
        "thermocouple_type=K",
        "thermocouple_voltage",
        "cold_junction",
        "sensor_temperature=100 C",
        "tolerance_class",
    ),
)
def thermocouple(
    thermocouple_type: ThermocoupleType,
    thermocouple_voltage: ThermocoupleVoltage = None,
    cold_junction: ColdJunction = None,
    sensor_temperature: SensorTemperature = None,
    in_ice_water: InIceWater = None,
    sensor_open: SensorOpen = None,
    tolerance_class: ToleranceClass = None,
    temperature_tolerance: TemperatureTolerance = None,
) -> Iterator[Item]:
    """Does this thermocouple have the millivolts of its temperature?

    Millivolts as read, and those of the cold junction, where its wires meet the copper of the
    meter, make the temperature of the tip by the reference function of its type (NIST Monograph
    175, IEC 60584-1). Its class is the larger of an amount and a share of the temperature (from
    memory); a maker's tolerance in K may stand in its place. Millivolts of the wrong sign, with the
    tip 5 K or more from the cold junction, are reversed leads. Ice water is 0 C within 0.5 K
    (common practice).

    For a meter with a mV range and types E, J, K, N and T. Inputs: thermocouple_voltage in mV (-20
    to 100), temperatures in C, tolerance in K. Yields the temperature of the tip, the millivolts
    due, and how far it is off. Refuses an open one with a reading. Source: tables
    thermocouple-functions and thermocouple-classes.
    """
    if sensor_open is not None or thermocouple_voltage is not None:
        yield conducts(sensor_open is True)
    if thermocouple_voltage is None or cold_junction is None:
        return
    function = tables.load("thermocouple-functions").made(Function, thermocouple_type)
    total = thermocouple_voltage + function.mv(cold_junction)
    tip = function.celsius(total)
    if tip is not None:
        yield figure(
            "temperature of the tip",
            tip,
            "C",
            source=function.source,
            working=lambda: (
                f"of {put(thermocouple_voltage, 'mV')} + {put(function.mv(cold_junction), 'mV')}"
            ),
        )
    known = beside(sensor_temperature, in_ice_water)
    if known is None:
        return
    at, ends = known
    if tip is None or not function.low <= at <= function.high:
        yield from _no_limit(
            f"type {thermocouple_type} ends at {function.low:g} and {function.high:g} C"
        )
        return
    due = function.mv(at) - function.mv(cold_junction)
    yield figure("millivolts due", due, "mV", source=function.source)
    if abs(at - cold_junction) >= REVERSED_K and due * thermocouple_voltage < 0:
        yield answer("polarity", "reversed: swap the leads, or its wires are swapped")
    off = Read((tip, tip), ends, at).ends(lambda r, c: r - c)
    if temperature_tolerance is not None:
        yield from within_both(WARMTH, off, (temperature_tolerance, "K"), needs=())
    elif tolerance_class is not None:
        yield from _by_class(thermocouple_type, tolerance_class, at, off)


def _by_class(letter: str, of_class: str, at: float, off: tuple[float, float]) -> Iterator[Item]:
    row = tables.load("thermocouple-classes").row(
        thermocouple_type=letter, tolerance_class=float(of_class[-1])
    )
    if not row.number("from_C") <= at <= row.number("to_C"):
        yield from _no_limit(f"{of_class} of type {letter} does not reach {at:g} C")
        return
    tolerance = max(row.number("least_K"), row.number("share_of_C") * abs(at))
    yield figure("tolerance of its class", tolerance, "K", source=row.source, toward="down")
    yield from within_both(WARMTH, off, (tolerance, "K"), row.source, Origin.STANDARD, ())


def _no_limit(why: str) -> Iterator[Item]:
    for name in WARMTH:
        yield cannot_tell(
            name,
            why,
            measure="read it nearer to room temperature; check type, polarity and millivolts",
            source=PRACTICE,
            plain=PLAIN,
        )
