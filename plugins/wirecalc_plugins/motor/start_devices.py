"""How the readings of a start device are judged, by its kind."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import PRACTICE, Item, Origin, at_most, at_or_below, cannot_tell, requires, tables

from ..lead_resistance import less_leads, ohms_at_least, without_leads
from .start_resistors import REPLACE, by_maker, by_mark, by_range, by_texts, start_row

RESISTORS = ("ptc", "run-thermistor")
RELAYS = ("current-relay", "potential-relay")
UNREAD = ("electronic-relay", "combined-kit")  # no ohmmeter tells a good one
DEVICES = (*RESISTORS, *RELAYS, *UNREAD)
SHORT_OHM = 1.0  # under it a device is short; practice
FAR_OVER = 1.25  # times the largest volts of a device: it is one for lower mains; practice


class Readings(NamedTuple):
    """What was read of a start device and what its maker says; ohm, %, V."""

    reading: float | None
    leads: float | None
    is_open: bool
    maker: float | None
    high: float | None
    tolerance: float | None
    plate: float | None


def not_by_itself(alone: bool | None, cold: bool | None, device: str) -> Iterator[Item]:
    """Yield why a reading means nothing yet: wires on it, or a device that is still warm."""
    if not alone:
        unsaid = "it was not said whether wires were on"
        said = unsaid if alone is None else "it was read in circuit"
        yield cannot_tell(
            "start device by itself",
            f"{said}: the windings read along with it",
            measure="take it off the compressor, with no wire on it, and read it again",
            needs=("by_itself",) if alone is None else (),
            source=PRACTICE,
        )
    if not cold and device in RESISTORS:
        row = start_row("ptc", "wait before a reading", "manual")
        said = "it was not said whether it is cold" if cold is None else "it is not yet cold"
        yield cannot_tell(
            "start device cold",
            f"{said}: warm, a good one reads high or open",
            measure=f"wait {row.number('least'):g} min or more, until it is as cold as the room",
            needs=("device_cold",) if cold is None else (),
            source=row.source,
        )


def plate_volts(readings: Readings) -> Iterator[Item]:
    """Compare the plate's volts with the largest volts of a device of these ohms."""
    if readings.maker is None or readings.high is not None or readings.plate is None:
        return
    row = tables.load("ptc-start-devices").find(cold_ohm=readings.maker)
    if row is None:
        return
    name, most = "volts of the plate against the device", row.number("max_V")
    if not at_or_below(readings.plate, FAR_OVER * most):
        yield cannot_tell(
            name,
            f"{readings.plate:g} V is far over the {most:g} V of a device of these ohms: is it one "
            "for lower mains?",
            measure="read on the compressor maker's sheet which device belongs to it",
            source=row.source,
        )
        return
    yield at_most(
        name,
        readings.plate,
        most,
        "V",
        source=row.source,
        advisory=True,
        behind="over 1.25 times the device's largest volts it cannot be told: it may be one for "
        "lower mains",
        says="one maker's sheet for a device of these ohms",
        action="read the volts of this device on its own maker's sheet",
    )


def judge_looks(bad: bool | None) -> Iterator[Item]:
    """Judge a device by its looks: browned, cracked or rattling it goes, whatever it reads."""
    if bad is not None:
        yield requires(
            "start device sound by its looks",
            not bad,
            says="browned, cracked or rattling: it is replaced whatever it reads",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=REPLACE,
        )


def judge_resistor(
    device: str, readings: Readings, alone: bool | None, *, settled: bool
) -> Iterator[Item]:
    """Judge a device that is a resistor; `settled` says that it was off, and cold."""
    if readings.reading is None:
        yield from _unread(readings.is_open, settled)
        return
    yield _conducts(True)
    ohms = less_leads(readings.reading, readings.leads)
    if readings.leads is not None:
        yield without_leads("resistance less leads", ohms, readings.reading, readings.leads)
    if alone:  # warmth makes it read high, never short
        yield ohms_at_least(
            "start device not shorted",
            ohms,
            SHORT_OHM,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="short: the start winding would stay in and burn",
            action=REPLACE,
        )
    if not settled:
        return
    if readings.maker is None:
        yield from by_texts(device, ohms, readings.plate)
    elif device == "ptc" and readings.high is not None:
        yield from by_range(ohms, readings.maker, readings.high)
    elif device == "ptc":
        yield from by_maker(ohms, readings.maker, readings.tolerance)
    else:
        yield from by_mark(ohms, readings.maker)


def _unread(is_open: bool, settled: bool) -> Iterator[Item]:
    if not is_open:
        yield cannot_tell(
            "start device conducts",
            "it was not read",
            measure="take it off the compressor, let it cool, and read across it",
            needs=("device_resistance", "device_open"),
        )
    elif settled:
        yield _conducts(False)


def _conducts(conducts: bool) -> Item:
    return requires(
        "start device conducts",
        conducts,
        says="it reads open, off and cold: the motor hums and trips its overload",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=REPLACE,
    )
