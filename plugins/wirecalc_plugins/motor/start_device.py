"""Start device and overload, read dead, cold and off the motor."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    YesNo,
    calculation,
)

from ..inputs import LEADS
from .start_devices import (
    DEVICES,
    RELAYS,
    RESISTORS,
    Readings,
    judge_relay,
    judge_resistor,
    not_by_itself,
    plate_volts,
)

_CONTACT = ("open", "closed")
_ONLY = {  # inputs that only some devices have
    "device_resistance": RESISTORS,
    "device_open": RESISTORS,
    "maker_resistance": RESISTORS,
    "maker_tolerance": ("ptc",),
    "contact_upright": RELAYS,
    "contact_inverted": ("current-relay",),
    "coil_open": RELAYS,
}


def _refuse(
    start_device: str,
    device_resistance: float | None = None,
    lead_resistance: float | None = None,
    device_open: bool | None = None,
    by_itself: bool | None = None,
    device_cold: bool | None = None,
    maker_resistance: float | None = None,
    maker_tolerance: float | None = None,
    nameplate_voltage: float | None = None,
    contact_upright: str | None = None,
    contact_inverted: str | None = None,
    coil_open: bool | None = None,
) -> Iterator[Problem]:
    given = {
        "device_resistance": device_resistance,
        "device_open": device_open,
        "maker_resistance": maker_resistance,
        "maker_tolerance": maker_tolerance,
        "contact_upright": contact_upright,
        "contact_inverted": contact_inverted,
        "coil_open": coil_open,
    }
    for name, value in given.items():
        if value is not None and start_device not in _ONLY[name]:
            yield Problem(
                name,
                f"a {start_device} has none to read",
                f"it is read on: {', '.join(_ONLY[name])}",
            )
    if device_open and device_resistance is not None:
        yield Problem(
            "device_open",
            f"a device that reads {device_resistance:g} ohm is not open",
            "give the resistance, or device_open yes",
        )


@calculation(
    part="motor and start",
    cautions=("dead-01", "cap-01", "flam-02", "sub-01"),
    not_checked=(
        "that it switches in service: the inrush of the next start shows it",
        "that it is the device which the compressor's maker names",
    ),
    refuse=_refuse,
    example_with=(
        "device_resistance",
        "by_itself",
        "device_cold",
        "lead_resistance",
        "nameplate_voltage",
    ),
)
def start_device(
    start_device: Annotated[str, OneOf(DEVICES, text="kind of start device")],
    device_resistance: Annotated[
        float | None,
        Reading(
            "ohm",
            low=0,
            high=1_000_000,
            typical="6.8 ohm",
            text="across the start device",
            if_open="leave it out and give device_open yes",
        ),
    ] = None,
    lead_resistance: Annotated[float | None, LEADS] = None,
    device_open: Annotated[bool | None, YesNo("the start device reads open")] = None,
    by_itself: Annotated[
        bool | None, YesNo("it was read off the compressor, with no wire or capacitor on it")
    ] = None,
    device_cold: Annotated[
        bool | None, YesNo("it is as cold as the room, without power for five minutes")
    ] = None,
    maker_resistance: Annotated[
        float | None,
        Nameplate("ohm", above=0, high=1000, typical="6.8 ohm", text="cold ohms by its maker"),
    ] = None,
    maker_tolerance: Annotated[
        float | None,
        Nameplate(
            "%",
            above=0,
            high=50,
            typical="25 %",
            text="tolerance of those ohms",
            goes_with="maker_resistance",
        ),
    ] = None,
    nameplate_voltage: Annotated[
        float | None, Nameplate("V", low=12, high=600, typical="115 V", text="volts on the plate")
    ] = None,
    contact_upright: Annotated[
        str | None, OneOf(_CONTACT, text="relay contact the way it is mounted, no power")
    ] = None,
    contact_inverted: Annotated[
        str | None, OneOf(_CONTACT, text="relay contact turned upside down, no power")
    ] = None,
    coil_open: Annotated[bool | None, YesNo("the relay's coil reads open")] = None,
) -> Iterator[Item]:
    """Is this start device good?

    Off the compressor and cold. The maker's ohms rule: within their tolerance good; where it was
    not given, within 20 % good, past 30 % bad (two data sheets). Without them a PTC of a 115 V
    unit (say its volts) reads 3 to 12 ohm (one manual; another 10); a trade page: 10 to 100. Under
    1 ohm is short, over 10 times the most is open (common practice); between: cannot tell. A start
    thermistor on a run capacitor: 100 to 180 % of its mark. A current relay is open upright and
    closed inverted, a potential relay closed; the coil of either conducts (common practice).

    Inputs: start_device; resistances in ohm (leads to 2); by_itself and device_cold: no or unsaid
    can't be told; maker's ohms and %; contacts, coil_open. Yields a criterion a question. Refuses
    readings that the device has not. Source: tables start-parts, ptc-start-devices.
    """
    readings = Readings(
        device_resistance,
        lead_resistance,
        device_open is True,
        maker_resistance,
        maker_tolerance,
        nameplate_voltage,
    )
    unsettled = list(not_by_itself(by_itself, device_cold, start_device))
    yield from unsettled
    if start_device in RELAYS:
        if not unsettled:
            yield from judge_relay(start_device, contact_upright, contact_inverted, coil_open)
    else:
        yield from plate_volts(readings)
        yield from judge_resistor(start_device, readings, by_itself, settled=not unsettled)
