"""What a heating element draws and heats at its volts, and volts that are far off its plate's."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    PLATE,
    PRACTICE,
    Item,
    answer,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
    caution,
    confirmed,
    figure,
    put,
)

OVER_VOLTS, UNDER_VOLTS = 1.1, 0.9  # share of the plate's, or of the service's, volts
EXPLAINS = 0.85  # share of the plate's volts from which a service explains less heat: 208 of 240
SERVICE_208 = 208.0
_PLATES_ON_208 = (230.0, 250.0)  # plates that are met on a 208 V service
_VOLTS = confirmed("plate-volts", "makers' sheets", "volts within 10 % of the plate's", 2)
_FEWER = "fewer watts than on the plate, normal for these volts: no part at fault"
_MAY_BE_208 = "fewer watts: normal on a 208 V service, else a lost leg or a bad joint in the supply"
_LOW = "far fewer watts: the volts are too low; look for a bad joint in the supply"
_BY_SHARE = (  # share of the plate's volts up to which an answer holds
    (0.45, "hardly any heat: look for a lost neutral or leg, or a bad joint in the supply"),
    (0.55, "a quarter of the watts: half the plate's volts, a leg lost or a 120 V supply"),
)
_TOO_MANY = "more watts than the plate's: the volts are too high for this element"


class ElementSupply(NamedTuple):
    """Volts at the element, on its plate, of the service by name and at rest; ohms it has."""

    volts: float
    plate: float
    nominal: float | None
    at_rest: float | None
    ohm: float | None

    @property
    def services(self) -> list[float]:
        """What is known of the service."""
        return [v for v in (self.nominal, self.at_rest) if v is not None]

    @property
    def explains(self) -> bool:
        """Whether the service itself has so few volts, and little is lost on the way."""
        known = self.services
        near = all(v >= EXPLAINS * self.plate for v in known)
        return bool(known) and near and all(not _under(self.volts, v) for v in known)

    @property
    def enough(self) -> bool:
        """Whether the volts are those of the plate, or of a service that is named."""
        return not _under(self.volts, self.plate) or self.explains


def _under(volts: float, wanted: float) -> bool:
    return not at_or_above(volts, UNDER_VOLTS * wanted)


def heats(voltage: float, ohm: float | None, power: float | None) -> Iterator[Item]:
    """Yield what it draws and heats at the actual volts."""
    yield caution("live-01")
    yield caution("meter-01")
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


def judge(supply: ElementSupply) -> Iterator[Item]:
    """Say what it heats, and judge volts that are far off."""
    share = supply.volts / supply.plate
    yield answer(
        "heat at these volts", _says(supply), because=[f"{share:.1%} of the plate's volts"]
    )
    yield at_most(
        "volts not above the plate's",
        supply.volts,
        OVER_VOLTS * supply.plate,
        "V",
        source=_VOLTS,
        says="an element on too many volts burns out, and burns its terminals",
        action="switch off; find out what the supply is, and which element belongs here",
    )
    name = "volts enough for its heat"
    if supply.enough:
        wanted = min([supply.plate, *supply.services])
        yield at_least(name, supply.volts, UNDER_VOLTS * wanted, "V", source=_VOLTS)
        return
    yield cannot_tell(
        name,
        f"{supply.volts:.4g} V are {share:.1%} of the plate's{_lost(supply)}: {_says(supply)}",
        measure="read the volts at rest and running, each leg to neutral: wirecalc supply; find "
        "out what service it is",
        needs=() if supply.services else ("nominal_voltage", "voltage_at_rest"),
        source=_VOLTS,
    )


def _lost(supply: ElementSupply) -> str:
    """Say what is lost on the way, in volts and watts; nothing where the service is not known."""
    lost = max(supply.services, default=0.0) - supply.volts
    if lost <= 0 or not supply.ohm or supply.ohm <= 0:
        return ""
    return f", {lost:.3g} V and {lost * supply.volts / supply.ohm:.3g} W are lost on the way"


def _says(supply: ElementSupply) -> str:
    share = supply.volts / supply.plate
    if not at_or_below(share, OVER_VOLTS):
        return _TOO_MANY
    if not _under(supply.volts, supply.plate):
        return "about the watts of the plate"
    if supply.explains:
        return _FEWER
    by_share = next((said for most, said in _BY_SHARE if at_or_below(share, most)), "")
    if by_share:
        return by_share
    low, high = _PLATES_ON_208
    on_208 = low <= supply.plate <= high and not _under(supply.volts, SERVICE_208)
    return _MAY_BE_208 if on_208 and not supply.services else _LOW
