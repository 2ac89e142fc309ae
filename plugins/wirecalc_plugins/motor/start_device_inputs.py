"""The inputs of `start-device`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Problem,
    Reading,
    YesNo,
    asked,
    extra,
    instead_of,
    may_be_absent,
    setting,
)

from ..inputs import LEADS, NAMEPLATE_VOLTAGE
from ..lead_resistance import LEADS_COUNT
from ..maker_range import upper_end, wrong_way_round
from .start_devices import (
    DEVICES,
    RELAYS,
    RESISTORS,
)

_CONTACT = ("open", "closed")

_IS_RESISTOR = "start_device=ptc|run-thermistor"

_IS_READ = f"{_IS_RESISTOR}|current-relay|potential-relay"

StartDevice = Annotated[str, OneOf(DEVICES, text="kind of start device")]
DeviceResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        low=0,
        high=1_000_000,
        typical="6.8 ohm",
        text="across the start device",
        if_open="leave it out and give device_open yes",
    ),
    instead_of("device_open", when="device_open=yes"),
    asked("it is what tells a good one", when=_IS_RESISTOR),
]
LeadResistance = Annotated[float | None, LEADS, extra(LEADS_COUNT)]
DeviceOpen = Annotated[
    bool | None,
    YesNo("the start device reads open"),
    instead_of("device_resistance", when=_IS_RESISTOR),
]
BrownedOrRattling = Annotated[
    bool | None,
    YesNo("it is browned, cracked or rattles when it is shaken"),
    asked("such a one is replaced whatever it reads"),
]
ByItself = Annotated[
    bool | None,
    YesNo("it was read off the compressor, with no wire or capacitor on it"),
    asked("the windings read along with it", when=_IS_READ),
]
DeviceCold = Annotated[
    bool | None,
    YesNo("it is as cold as the room, without power for five minutes"),
    asked("warm, a good one reads high or open", when=_IS_RESISTOR),
    extra("a relay reads the same warm and cold", when=_IS_READ),
]
MakerResistance = Annotated[
    float | None,
    Nameplate("ohm", above=0, high=1000, typical="6.8 ohm", text="cold ohms by its maker"),
    extra("the ranges of manuals judge without, and where they do not it is asked for"),
]
MakerResistanceHigh = Annotated[
    float | None,
    upper_end("maker_resistance", "28 ohm"),
    may_be_absent("its maker prints one value, no range"),
]
MakerTolerance = Annotated[
    float | None,
    Nameplate(
        "%",
        above=0,
        high=50,
        typical="25 %",
        text="tolerance of those ohms",
        goes_with="maker_resistance",
    ),
    extra("between the 20 and 30 % of two data sheets it is asked for"),
]
NameplateVoltage = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE,
    asked("a device for other mains has other ohms", when="start_device=ptc"),
    setting("only a PTC's ohms go with the mains"),
]
ContactUpright = Annotated[
    str | None,
    OneOf(_CONTACT, text="relay contact the way it is mounted, no power"),
    asked(when="start_device=current-relay|potential-relay"),
]
ContactInverted = Annotated[
    str | None,
    OneOf(_CONTACT, text="relay contact turned upside down, no power"),
    asked(when="start_device=current-relay"),
    may_be_absent("no contact that gravity opens", when="start_device=potential-relay"),
]
CoilOpen = Annotated[
    bool | None,
    YesNo("the relay's coil reads open"),
    asked(when="start_device=current-relay|potential-relay"),
]


_ONLY = {  # inputs that only some devices have
    "device_resistance": RESISTORS,
    "device_open": RESISTORS,
    "maker_resistance": RESISTORS,
    "maker_resistance_high": ("ptc",),
    "maker_tolerance": RESISTORS,
    "contact_upright": RELAYS,
    "contact_inverted": RELAYS,
    "coil_open": RELAYS,
}


def refuse(
    start_device: str,
    device_resistance: float | None = None,
    device_open: bool | None = None,
    maker_resistance: float | None = None,
    maker_resistance_high: float | None = None,
    **others: object,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    given = {
        "device_resistance": device_resistance,
        "device_open": device_open,
        "maker_resistance": maker_resistance,
        "maker_resistance_high": maker_resistance_high,
    } | others
    yield from wrong_way_round("maker_resistance", maker_resistance, maker_resistance_high)
    for name, value in given.items():
        if value is not None and start_device not in _ONLY.get(name, (start_device,)):
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
