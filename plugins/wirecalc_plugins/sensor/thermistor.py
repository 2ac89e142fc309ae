"""A thermistor by its ohms at a temperature, against its maker's sheet."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    answer,
    calculation,
    cannot_tell,
    computed,
    figure,
    put,
    requires,
    show,
)

from ..lead_resistance import less_leads
from .sensor_curve import NTC, Curve, curve_of
from .sensor_inputs import (
    PLAIN,
    REPLACE,
    WARMTH,
    InIceWater,
    LeadResistance,
    Read,
    SensorOpen,
    beside,
    conducts,
    within_both,
)
from .thermistor_inputs import (
    BValue,
    SensorResistance,
    SensorTemperature,
    SensorTolerance,
    Sheet,
    SheetResistance,
    SheetTemperature,
    TemperatureTolerance,
    WarmedResistance,
    points_of,
    refuse,
)

LAW = computed("b-law", "B value law", "R = R1 exp(B (1/T - 1/T1)), in kelvin")

OHMS = ("ohms over its curve", "ohms under its curve")


@calculation(
    part="sensor and switch",
    words=(
        "thermistor; NTC; PTC sensor; temperature sensor; sensor ohms; sensor resistance; probe",
        "air sensor; fridge sensor; evaporator sensor; defrost sensor; fin sensor; coil sensor",
        "ice maker thermistor; dryer thermistor; water temperature sensor; beta value; B25/85",
        "10k sensor; 5k sensor; ice water; ice bath; sensor reads wrong; wrong temperature shown",
        "error code sensor; sensor open; sensor shorted; refrigerator too cold; sensor table",
        "NTC ohms; sensor kohm; kohm at; k at; k ohms; sensor value; temp sensor",
        "temperature probe; fridge thermistor; sensor test; test a sensor; sensor in ice water",
        "thermistor chart; thermistor curve; freezer sensor; dishwasher sensor; washer sensor",
        "tank sensor; outdoor sensor; sensor off; sensor drift; reads wrong temperature",
        "displays wrong temperature",
        "PTC ohms; door lock PTC",
    ),
    go_on="plug it in, and compare what the board shows with a thermometer",
    cautions=("dead-01", "hot-01", "sub-01"),
    not_checked=(
        "plug, harness and board: read the sensor again at the board's plug",
        "where it sits: a sensor off its clip tells another temperature than its place has",
        "one temperature is one point: a sensor can be right there and wrong elsewhere",
    ),
    refuse=refuse,
    example_with=(
        "sensor_resistance",
        "sensor_temperature",
        "sheet_resistance=16300 ohm; 5000 ohm",
        "sheet_temperature=0 C; 25 C",
        "sensor_tolerance",
        "lead_resistance",
    ),
)
def thermistor(
    sensor_resistance: SensorResistance = None,
    sensor_temperature: SensorTemperature = None,
    in_ice_water: InIceWater = None,
    sensor_open: SensorOpen = None,
    sheet_resistance: SheetResistance = None,
    sheet_temperature: SheetTemperature = None,
    b_value: BValue = None,
    sheet: Sheet = None,
    sensor_tolerance: SensorTolerance = None,
    temperature_tolerance: TemperatureTolerance = None,
    warmed_resistance: WarmedResistance = None,
    lead_resistance: LeadResistance = None,
) -> Iterator[Item]:
    """Does this thermistor have the ohms of its temperature?

    Its ohms, less the leads, against its maker's sheet: ohms at one temperature with the B value,
    two points or more, or a table in a file. Between points an NTC follows R = R1 exp(B (1/T -
    1/T1)) in kelvin, a PTC a straight line; past the ends of a sheet nothing is judged. Ice water
    is 0 C within 0.5 K (common practice). The sheet's tolerance judges, of ohms or of temperature;
    without it nothing is too far off. Ohms that fall as it warms are an NTC, that rise a PTC.

    For sensors read by ohms, unplugged; a PTC start device has `start-device`. Inputs: resistances
    in ohm (over 0 to 2 million), temperatures in C (-200 to 1300), B in K, tolerances in % or K.
    Yields the ohms due, the temperature that the ohms mean, and which kind. Refuses points that
    contradict themselves. Source: the maker's sheet as typed.
    """
    if sensor_open is not None or sensor_resistance is not None:
        yield conducts(sensor_open is True)
    curve = curve_of(*points_of(sheet, sheet_resistance, sheet_temperature), b_value)
    if sensor_resistance is not None and warmed_resistance is not None:
        yield _told_apart(sensor_resistance, warmed_resistance)
        if curve is not None:
            yield _goes_its_way(curve, sensor_resistance, warmed_resistance)
    elif curve is not None:
        yield answer("kind of sensor", _KINDS[curve.kind], because=["so its sheet goes"])
    known = beside(sensor_temperature, in_ice_water)
    if curve is None and sheet_resistance and b_value is None:
        yield cannot_tell(
            "ohms against its sheet",
            "one point of the sheet is no curve",
            measure="give a second point of the sheet, or the B value",
            needs=("b_value",),
            source=MAKER,
            plain=PLAIN,
        )
    if curve is None or sensor_resistance is None or known is None:
        return
    at, celsius = known
    ohms = less_leads(sensor_resistance, lead_resistance)
    read = Read((ohms.low, ohms.high), celsius, at)
    yield from _figures(curve, read)
    yield from _judged(curve, read, sensor_tolerance, temperature_tolerance)


_KINDS = {"NTC": "NTC: its ohms fall as it warms", "PTC": "PTC: its ohms rise as it warms"}


def _told_apart(before: float, warmed: float) -> Item:
    if before == warmed:
        return cannot_tell(
            "ohms move with warmth",
            "its ohms did not move as it was warmed",
            measure="warm it for longer; a sensor that never moves is done",
            source=PRACTICE,
            plain=PLAIN,
        )
    kind = NTC if warmed < before else "PTC"
    return answer(
        "kind of sensor", _KINDS[kind], because=[f"{before:g} ohm, then {warmed:g} ohm warmed"]
    )


def _goes_its_way(curve: Curve, before: float, warmed: float) -> Item:
    falls = curve.kind == NTC
    return requires(
        "moves as its sheet says",
        warmed < before if falls else warmed > before,
        says=f"its sheet is that of an {curve.kind}",
        source=MAKER,
        origin=Origin.MAKER,
        action=REPLACE,
        plain=PLAIN,
    )


def _figures(curve: Curve, read: Read) -> Iterator[Item]:
    middle = max(read.reading[1], 0.0)
    yield figure(
        "ohms due at this temperature",
        curve.ohms_at(read.at),
        "ohm",
        source=MAKER,
        working=lambda: _working(curve, read.at),
    )
    yield figure("temperature by its ohms", curve.celsius_at(middle), "C", source=LAW)
    if curve.b is None and curve.kind == NTC:
        yield figure("B value of the end points", curve.b_between(), "K", source=LAW)


def _working(curve: Curve, at: float) -> str:
    if curve.b is None:
        return "between the two points of the sheet beside it"
    return (
        f"{put(curve.ohms[0], 'ohm')} x exp({put(curve.b, 'K')} x (1/({at:g} + 273.15) - "
        f"1/({curve.celsius[0]:g} + 273.15)))"
    )


def _judged(
    curve: Curve, read: Read, percent: float | None, kelvin: float | None
) -> Iterator[Item]:
    if not curve.reaches(read.at):
        yield from _outside(read.at, percent, kelvin)
        return
    if percent is not None:
        yield from within_both(
            OHMS,
            read.ends(lambda r, c: 100 * (r / curve.ohms_at(c) - 1)),
            (percent, "%"),
        )
    if kelvin is not None:
        yield from within_both(
            WARMTH,
            read.ends(lambda r, c: curve.celsius_at(r) - c),
            (kelvin, "K"),
        )


def _outside(at: float, percent: float | None, kelvin: float | None) -> Iterator[Item]:
    for names, tolerance in ((OHMS, percent), (WARMTH, kelvin)):
        for name in names if tolerance is not None else ():
            yield cannot_tell(
                name,
                f"{show(at, 'C')} is outside the points of the sheet that were given",
                measure="give a point of the sheet on either side of it",
                source=MAKER,
                plain=PLAIN,
            )
