"""Heating elements against their plate, and at the volts they get."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PLATE,
    PRACTICE,
    Item,
    Origin,
    Problem,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    put,
    requires,
)

from ..maker_range import wrong_way_round
from .element_inputs import (
    WIRE,
    ElementKind,
    ElementOpen,
    ElementResistance,
    ElementVoltage,
    LeadResistance,
    MakerElement,
    MakerElementHigh,
    NameplatePower,
    NameplateVoltage,
    NominalVoltage,
    VoltageAtRest,
)
from .element_ohms import Known, against
from .element_volts import ElementSupply, heats, judge

LEAST_OHM, MOST_OHM = 0.5, 10_000.0  # elements of appliances; beyond: a slip of W and kW


def _refuse_element(
    element_resistance: float | None = None,
    lead_resistance: float | None = None,
    element_open: bool | None = None,
    nameplate_power: float | None = None,
    nameplate_voltage: float | None = None,
    maker_element: float | None = None,
    maker_element_high: float | None = None,
) -> Iterator[Problem]:
    yield from wrong_way_round("maker_element", maker_element, maker_element_high)
    if element_open and element_resistance is not None:
        yield Problem(
            "element_open",
            f"an element that reads {element_resistance:g} ohm is not open",
            "give the resistance, or element_open yes",
        )
    if element_resistance is not None and not at_or_below(
        lead_resistance or 0.0, element_resistance
    ):
        yield Problem(
            "element_resistance",
            f"{element_resistance:g} ohm is less than the leads of {lead_resistance:g} ohm",
            "give the reading with the leads in it, and the leads touched together",
        )
    if nameplate_power is not None and nameplate_voltage is not None:
        nominal = nameplate_voltage**2 / nameplate_power
        if not LEAST_OHM <= nominal <= MOST_OHM:
            yield Problem(
                "nameplate_power",
                f"{nameplate_power:g} W at {nameplate_voltage:g} V is an element of "
                f"{nominal:.3g} ohm",
                "check W and kW, and the volts",
            )


@calculation(
    part="heating element",
    words=(
        "heating element; heater element; heater; element ohms; heater ohms; resistance of heater",
        "burner; bake element; broil element; surface unit; hot plate; hob; grill; oven; cooker",
        "range; stove; kettle; iron; toaster; dryer; tumble dryer; dryer heater; water heater",
        "immersion; immersion heater; geyser; boiler; dishwasher; washer heater; defrost heater",
        "space heater; storage heater; radiator; shower; baseboard heater; furnace strip",
        "heat strip; no heat; not heating; will not heat; slow to heat; slow heat; lukewarm",
        "not hot; water cold; cold water; burnt out; blown element; open element; coil; ribbon",
        "sheath; wattage; watts; kW; heat output; halogen; quartz; infrared lamp; 208 on 240",
        "lower voltage; continuity of heater; bread maker; hob ring; ring dead; reads open",
        "takes too long; takes forever; not warm; weak heat; half heat; not drying; drying",
        "no hot water; no hot; coffee; fryer; griddle; sauna; towel rail; panel heater",
        "soldering iron; kiln; crankcase heater; heat tape; ohms to watts; watts from ohms",
        "waffle; steam; boil; heating; furnace; electric furnace; strip heater; duct heater",
        "kilowatts",
        "hot surface igniter; igniter; ignitor; igniter ohms; glow bar; glow plug",
        "heater reads open; burner ohms; burner watts; bake element ohms; oven element",
        "kettle element; washer element; heater coil; def heater; defrost heater ohms",
        "door heater; drain heater; sill heater; mullion heater; pan heater; ohms for watts",
        "what ohms should it be; ohms from watts; watts and volts; ohm's law; ohm to amp",
        "ohms to amps; 208; 240 on 208; 208 takes longer; on lower volts; heat lamp",
        "element test; test element; element check; bulb; lamp; incandescent; does not glow",
        "glows; half the heat; element grounded; runs all the time",
        "reads OL; reads 0.L; shows OL; element reads nothing; 0 ohms; filament; infrared",
        "door lock; door lock PTC; door lock heater; interlock ohms; wax motor; lock ohms",
        "PTC heater; PTC ohms of a lock",
        "lead resistance; zero the leads; subtract the leads; null the leads; two in parallel",
    ),
    go_on="read it to its case too (insulation), fit it, and read its amps",
    cautions=("dead-01", "dead-03", "hot-01", "heat-01", "flam-01"),
    not_checked=(
        "insulation of the element to its sheath and case",
        "the supply itself, and that both legs of it are there",
        "thermostat, relay, cut-off and joints in its path",
    ),
    refuse=_refuse_element,
    renamed={"voltage": "element_voltage"},
    example_with=("element_resistance", "lead_resistance", "nameplate_power", "nameplate_voltage"),
    exercises=".element_exercises",
)
def element(
    element_resistance: ElementResistance = None,
    lead_resistance: LeadResistance = None,
    element_open: ElementOpen = None,
    element_kind: ElementKind = None,
    maker_element: MakerElement = None,
    maker_element_high: MakerElementHigh = None,
    nameplate_power: NameplatePower = None,
    nameplate_voltage: NameplateVoltage = None,
    element_voltage: ElementVoltage = None,
    nominal_voltage: NominalVoltage = None,
    voltage_at_rest: VoltageAtRest = None,
) -> Iterator[Item]:
    """Is this heating element good, and what does it heat at these volts?

    The plate's resistance is volts squared over watts, hot. A reading less its leads within 10 %
    of it is good (one service text). Cold and with more watts than marked a wire element may
    read 14 % less: from 10 to 25 % under the maker's cold ohms decide (within 10 %, or within a
    printed range), further under it fails. Lamps and PTC heaters read far less cold and are judged
    by their maker's ohms alone. Current and power at the actual volts go with the reading, or with
    the plate where there is none. Volts over 110 % of the plate's are too many; under 90 % (makers'
    sheets) it can't be told: a 208 V service explains them, else the supply is at fault. An open
    element fails.

    For elements of water, air and defrost heaters, ranges and dryers; not for induction coils.
    Inputs: resistances in ohm (to 10000; leads to 2), power in W (over 0 to 20000), volts,
    kind. Leads that were not read count as 0 to 0.3 ohm. Yields resistance less leads, the
    deviation, current and power, and criteria. Refuses a reading under its leads, an open
    element with a reading, a plate under 0.5 or over 10000 ohm. Source: beside each limit.
    """
    nominal = None
    if nameplate_power is not None and nameplate_voltage is not None:
        nominal = nameplate_voltage**2 / nameplate_power
        yield figure(
            "resistance by the plate, hot",
            nominal,
            "ohm",
            source=PLATE,
            working=lambda: f"({put(nameplate_voltage)} V)^2 / {put(nameplate_power)} W",
        )
    if element_open is not None or element_resistance is not None:
        yield _conducts(element_open is True)
    if element_resistance is not None:
        kind = element_kind or WIRE
        known = Known(nominal, maker_element, kind, maker_element_high)
        yield from against(element_resistance, lead_resistance, known)
    elif not element_open:
        yield cannot_tell(
            "resistance, upper limit",
            "the element was not read",
            measure="pull both wires off it and read across it, dead and cold",
            needs=("element_resistance", "element_open"),
        )
    ohm = nominal if element_resistance is None else element_resistance - (lead_resistance or 0.0)
    if element_voltage is not None and not element_open:
        yield from heats(element_voltage, ohm, nameplate_power)
        if nameplate_voltage is None:
            return
        supply = ElementSupply(
            element_voltage, nameplate_voltage, nominal_voltage, voltage_at_rest, ohm
        )
        yield from judge(supply)


def _conducts(is_open: bool) -> Item:
    return requires(
        "the element conducts",
        not is_open,
        says="it reads open with its wires off",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="replace it by the maker's part; look why it opened, and at both its terminals",
    )
