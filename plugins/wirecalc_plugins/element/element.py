"""Heating elements against their plate, and at the volts they get."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PLATE,
    PRACTICE,
    Item,
    Nameplate,
    Origin,
    Problem,
    Reading,
    YesNo,
    answer,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    figure,
    not_checked,
    put,
    requires,
)
from wirecalc.sources import confirmed

from ..inputs import LEADS
from ..leads import less_leads, ohms_at_least, ohms_at_most, without_leads

TOLERANCE = 0.10  # of the plate's resistance
LEAST_OHM, MOST_OHM = 0.5, 10_000.0  # elements of appliances; beyond: a slip of W and kW
OVER_VOLTS = 1.1  # share of plate volts that an appliance stands
LOW_VOLTS = 0.9 * 208 / 240  # a 240 V plate on a 208 V supply that is 10 % low; practice
_TOLERANCE = confirmed("element-tolerance", "service text", "element against its plate", 1)
_VOLTS = confirmed("plate-volts", "makers' sheets", "volts within 10 % of the plate's", 2)
_FEWER_VOLTS = "fewer watts than on the plate, normal for these volts: no part at fault"
_BY_VOLTS = (  # share of plate volts up to which an answer holds
    (0.45, "hardly any heat: look for a lost neutral or leg, or a bad joint in the supply"),
    (0.55, "a quarter of the watts: half the plate's volts, a leg lost or a 120 V supply"),
    (LOW_VOLTS, "far fewer watts: the volts are too low; look for a bad joint in the supply"),
    (0.90, _FEWER_VOLTS),
    (OVER_VOLTS, "about the watts of the plate"),
)
_TOO_MANY = "more watts than the plate's: the volts are too high for this element"


def _refuse_element(
    element_resistance: float | None = None,
    lead_resistance: float | None = None,
    element_open: bool | None = None,
    nameplate_power: float | None = None,
    nameplate_voltage: float | None = None,
    voltage: float | None = None,
) -> Iterator[Problem]:
    del voltage
    if element_open and element_resistance is not None:
        yield Problem(
            "element_open",
            f"an element that reads {element_resistance:g} ohm is not open",
            "give the resistance, or element_open yes",
        )
    if element_resistance is not None and at_or_below(element_resistance, lead_resistance or 0.0):
        yield Problem(
            "element_resistance",
            f"{element_resistance:g} ohm is no more than the leads of {lead_resistance:g} ohm",
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
    cautions=("dead-01", "dead-03", "hot-01", "heat-01"),
    not_checked=(
        "insulation of the element to its sheath and case",
        "the supply itself, and that both legs of it are there",
        "thermostat, relay, cut-off and joints in its path",
    ),
    refuse=_refuse_element,
    example_with=("element_resistance", "lead_resistance", "nameplate_power", "nameplate_voltage"),
)
def element(
    element_resistance: Annotated[
        float | None,
        Reading(
            "ohm",
            above=0,
            high=10_000,
            typical="22.6 ohm",
            text="across the element, wires off",
            if_open="leave it out and give element_open yes",
        ),
    ] = None,
    lead_resistance: Annotated[float | None, LEADS] = None,
    element_open: Annotated[bool | None, YesNo("the element reads open, wires off")] = None,
    nameplate_power: Annotated[
        float | None,
        Nameplate("W", above=0, high=20_000, typical="2585 W", text="power of the element"),
    ] = None,
    nameplate_voltage: Annotated[
        float | None,
        Nameplate("V", low=12, high=600, typical="240 V", text="volts that go with that power"),
    ] = None,
    voltage: Annotated[
        float | None,
        Reading("V", low=1, high=700, typical="232 V", text="volts across it while it heats"),
    ] = None,
) -> Iterator[Item]:
    """Is this heating element good, and what does it heat at these volts?

    The plate's resistance is volts squared over watts, hot. A reading less its leads within 10 %
    of it is good (one service text); a cold element reads a little lower than a hot one. Current
    and power at the actual volts go with the reading, or with the plate where there is none.
    Volts over 110 % of the plate's are too many (makers' sheets); fewer give fewer watts and
    fault no part, under 78 % (a 208 V supply, 10 % low) marginal. An open element fails.

    Inputs: resistances in ohm (over 0 to 10000; leads to 2), power in W (over 0 to 20000), volts.
    Leads that were not read count as 0 to 0.3 ohm. Yields resistance less leads, the deviation,
    current and power, and criteria. Refuses a reading not above its leads, an open element with a
    reading, a plate under 0.5 or over 10000 ohm. Source: named beside each limit.
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
        yield from _against_plate(element_resistance, lead_resistance, nominal)
    elif not element_open:
        yield cannot_tell(
            "resistance, upper limit",
            "the element was not read",
            measure="pull both wires off it and read across it, dead and cold",
            needs=("element_resistance", "element_open"),
        )
    ohm = nominal if element_resistance is None else element_resistance - (lead_resistance or 0.0)
    if voltage is not None and not element_open:
        yield from _at_volts(voltage, ohm, nameplate_power, nameplate_voltage)


def _conducts(is_open: bool) -> Item:
    return requires(
        "the element conducts",
        not is_open,
        says="it reads open with its wires off",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="replace it by the maker's part; look why it opened, and at both its terminals",
    )


def _against_plate(reading: float, leads: float | None, nominal: float | None) -> Iterator[Item]:
    """Compare a reading less its leads with the resistance of the plate."""
    ohms = less_leads(reading, leads)
    if leads is not None:
        yield without_leads("resistance less leads", ohms, reading, leads)
    if nominal is None:
        yield cannot_tell(
            "resistance, upper limit",
            "no watts and volts of the element to compare with",
            measure="read the power and the volts on the element or its plate",
            needs=("nameplate_power", "nameplate_voltage"),
        )
        return
    yield figure(
        "deviation from the plate",
        100 * (ohms.high / nominal - 1),
        "%",
        source=PLATE,
        working=lambda: f"100 x ({put(ohms.high)} / {put(nominal)} - 1)",
    )
    yield ohms_at_most(
        "resistance, upper limit",
        ohms,
        (1 + TOLERANCE) * nominal,
        source=_TOLERANCE,
        says="too little heat; is the plate this element's?",
        action="read it again at its own clean tabs; if it stays so, replace it",
    )
    yield ohms_at_least(
        "resistance, lower limit",
        ohms,
        (1 - TOLERANCE) * nominal,
        source=_TOLERANCE,
        says="part of it is bridged, or the plate is not this element's; cold reads a little low",
        action="read it again with every wire off; if it stays so, replace it",
    )


def _at_volts(
    voltage: float, ohm: float | None, power: float | None, plate: float | None
) -> Iterator[Item]:
    """Yield what it draws and heats at the actual volts, and judge volts that are far off."""
    yield caution("live-01")
    if ohm is not None and ohm <= 0:
        yield cannot_tell(
            "current at these volts",
            "less its leads the reading may be nothing",
            measure="read it on the lowest range, with the leads read too",
        )
    elif ohm is not None:
        yield figure(
            "current at these volts",
            voltage / ohm,
            "A",
            source=PRACTICE,
            working=lambda: f"{put(voltage)} V / {put(ohm)} ohm",
        )
        watts = voltage**2 / ohm
        yield figure(
            "power at these volts",
            watts,
            "W",
            source=PRACTICE,
            working=lambda: f"({put(voltage)} V)^2 / {put(ohm)} ohm",
        )
        if power is not None:
            yield figure(
                "share of the plate's power",
                100 * watts / power,
                "%",
                source=PLATE,
                working=lambda: f"100 x {put(watts, 'W')} / {put(power, 'W')}",
            )
    if plate is None:
        yield not_checked("volts against the plate", "nameplate_voltage was not given")
        return
    share = voltage / plate
    text = next((said for most, said in _BY_VOLTS if at_or_below(share, most)), _TOO_MANY)
    yield answer("heat at these volts", text, because=[f"{share:.1%} of the plate's volts"])
    yield at_most(
        "volts not above the plate's",
        voltage,
        OVER_VOLTS * plate,
        "V",
        source=_VOLTS,
        says="an element on too many volts burns out, and burns its terminals",
        action="switch off; find out what the supply is, and which element belongs here",
    )
    yield at_least(
        "volts enough for its heat",
        voltage,
        LOW_VOLTS * plate,
        "V",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        says="lower than a 208 V supply gives a 240 V plate; the element may be good",
        action="look for a lost leg or neutral, a bad joint, or the wrong supply",
    )
