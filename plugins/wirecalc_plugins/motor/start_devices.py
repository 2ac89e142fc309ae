"""How the readings of a start device are judged, by its kind."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    not_checked,
    requires,
    tables,
)

from ..leads import Ohms, less_leads, ohms_at_least, ohms_at_most, without_leads

RESISTORS = ("ptc", "run-thermistor")
RELAYS = ("current-relay", "potential-relay")
DEVICES = (*RESISTORS, *RELAYS)
SHORT_OHM = 1.0  # under it a device is short; practice
OPEN_TIMES = 10.0  # times the most that any text gives, and more, it is open; practice
PLATE_115 = (100.0, 130.0)  # plates that the manuals' ohms are for
_LEAST, _MOST = "resistance, lower limit", "resistance, upper limit"
_SHEET = "take its cold ohms from the maker's sheet, or compare with a new one of the same number"
_REPLACE = "fit the device that the compressor's maker names; find out why it failed"


class Readings(NamedTuple):
    """What was read of a start device and what its maker says; ohm, %, V."""

    reading: float | None
    leads: float | None
    is_open: bool
    maker: float | None
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
        row = _text("ptc", "wait before a reading", "manual")
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
    if readings.maker is None or readings.plate is None:
        return
    row = tables.load("ptc-start-devices").find(cold_ohm=readings.maker)
    if row is not None:
        yield at_most(
            "volts of the plate against the device",
            readings.plate,
            row.number("max_V"),
            "V",
            source=row.source,
            advisory=True,
            says="one maker's sheet for a device of these ohms",
            action="read the volts of this device on its own maker's sheet",
        )


def judge_resistor(
    device: str, readings: Readings, alone: bool | None, *, settled: bool
) -> Iterator[Item]:
    """Judge a device that is a resistor; `settled` says that it was off, and cold."""
    if readings.reading is None:
        yield from _unread(readings.is_open, settled)
        return
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
            action=_REPLACE,
        )
    if not settled:
        return
    if readings.maker is None:
        yield from _by_texts(device, ohms, readings.plate)
    elif device == "ptc":
        yield from _by_maker(ohms, readings.maker, readings.tolerance)
    else:
        yield from _by_mark(ohms, readings.maker)


def _unread(is_open: bool, settled: bool) -> Iterator[Item]:
    if not is_open:
        yield cannot_tell(
            "start device conducts",
            "it was not read",
            measure="take it off the compressor, let it cool, and read across it",
            needs=("device_resistance", "device_open"),
        )
    elif settled:
        yield requires(
            "start device conducts",
            False,
            says="it reads open, off and cold: the motor hums and trips its overload",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=_REPLACE,
        )


def _by_texts(device: str, ohms: Ohms, plate: float | None) -> Iterator[Item]:
    """Judge without the maker's ohms, by manuals and trade texts, which do not agree."""
    wide = {"ptc": "manuals", "run-thermistor": "trade-text"}[device]
    row = _text(device, "cold resistance", wide)
    least, most, caution = row.number("least"), row.number("most"), None
    widest = most
    if device == "ptc":
        caution = _text(device, "cold resistance", "stricter-manual").number("most")
        for said_by in ("trade-page", "data-sheets"):
            other = _text(device, "cold resistance", said_by)
            widest = max(widest, other.number("most"))
            where = f"{said_by.replace('-', ' ')}: cold ohms of a PTC device"
            for end in ("least", "most"):
                yield figure(f"{where}, {end}", other.number(end), "ohm", source=other.source)
    unsaid = device == "ptc" and plate is None
    fits_plate = device != "ptc" or (plate is not None and PLATE_115[0] <= plate <= PLATE_115[1])
    needs = ("nameplate_voltage", "maker_resistance") if unsaid else ("maker_resistance",)
    between = f"{ohms.high:.4g} ohm: manuals for 115 V units have {least:g} to {most:g}, "
    between += f"other devices up to {widest:g} ohm"
    if device != "ptc":
        between = f"{ohms.high:.4g} ohm: one text has {least:g} to {most:g} ohm"
    if fits_plate and at_or_below(-ohms.low, -least):
        yield at_least(_LEAST, ohms.low, least, "ohm", source=row.source)
    else:
        yield cannot_tell(_LEAST, between, measure=_SHEET, needs=needs, source=row.source)
    if fits_plate and at_or_below(ohms.high, most):
        yield at_most(
            _MOST,
            ohms.high,
            most,
            "ohm",
            caution=caution,
            source=row.source,
            says="another manual has less",
            action=_SHEET,
        )
    elif at_or_below(ohms.low, OPEN_TIMES * widest):
        yield cannot_tell(_MOST, between, measure=_SHEET, needs=needs, source=row.source)
    else:
        yield at_most(
            _MOST,
            ohms.low,
            OPEN_TIMES * widest,
            "ohm",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="as good as open",
            action=_REPLACE,
        )


def _by_maker(ohms: Ohms, maker: float, tolerance: float | None) -> Iterator[Item]:
    """Judge by the maker's ohms; a tolerance that was not given lies between two sheets'."""
    sheet = _text("ptc", "tolerance", "sheet-b")
    near, far = (sheet.number(end) for end in ("least", "most"))
    source = sheet.source
    if tolerance is not None:
        near = far = tolerance
        source = MAKER
    says = f"more than {far:g} % from the maker's {maker:g} ohm"
    unsure = f"{ohms.high:.4g} ohm is {near:g} to {far:g} % from the maker's {maker:g} ohm"
    ends = [1 - near / 100, 1 - far / 100, 1 + near / 100, 1 + far / 100]
    low, lower, high, higher = (maker * end for end in ends)
    within_low, within_high = at_or_below(-ohms.low, -low), at_or_below(ohms.high, high)
    if not within_low and at_or_below(-ohms.high, -lower) and tolerance is None:
        yield _by_tolerance(_LEAST, unsure)
    else:
        limit = low if within_low else lower
        yield ohms_at_least(_LEAST, ohms, limit, source=source, says=says, action=_REPLACE)
    if not within_high and at_or_below(ohms.low, higher) and tolerance is None:
        yield _by_tolerance(_MOST, unsure)
    else:
        limit = high if within_high else higher
        yield ohms_at_most(_MOST, ohms, limit, source=source, says=says, action=_REPLACE)


def _by_tolerance(name: str, unsure: str) -> Item:
    source = _text("ptc", "tolerance", "sheet-b").source
    measure = "take its tolerance from the maker's sheet"
    return cannot_tell(name, unsure, measure=measure, needs=("maker_tolerance",), source=source)


def _by_mark(ohms: Ohms, mark: float) -> Iterator[Item]:
    """Judge a start thermistor across a run capacitor by its mark."""
    good = _text("run-thermistor", "share of the mark", "trade-text")
    bad = _text("run-thermistor", "replace above", "trade-text")
    least = good.number("least") / 100 * mark
    if at_or_below(-ohms.low, -least):
        yield at_least(_LEAST, ohms.low, least, "ohm", source=good.source)
    else:
        yield cannot_tell(
            _LEAST,
            f"{ohms.high:.4g} ohm is below the mark of {mark:g} ohm; well below it the text "
            "replaces it, and does not say how far",
            measure="compare with a new one of the same mark",
            source=good.source,
        )
    yield ohms_at_most(
        _MOST,
        ohms,
        bad.number("most") / 100 * mark,
        caution=good.number("most") / 100 * mark,
        source=bad.source,
        says="it grows with age",
        action=_REPLACE,
    )


def judge_relay(
    device: str, upright: str | None, inverted: str | None, coil_open: bool | None
) -> Iterator[Item]:
    """Judge a relay by its contact in each position, and its coil."""
    if device == "current-relay":
        yield _contact("contact as mounted", "contact_upright", upright, "open")
        yield _contact("contact upside down", "contact_inverted", inverted, "closed")
        yield not_checked("upright mounting, and that it matches the winding", "its maker's sheet")
    else:
        yield _contact("contact as mounted", "contact_upright", upright, "closed")
        yield not_checked("pick-up and drop-out volts", "its maker's sheet")
    if coil_open is None:
        yield cannot_tell(
            "coil conducts",
            "the coil was not read",
            measure="read across the coil, off the motor",
            needs=("coil_open",),
        )
    else:
        yield requires(
            "coil conducts",
            not coil_open,
            says="its coil reads open",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=_REPLACE,
        )


def _contact(name: str, needs: str, found: str | None, wanted: str) -> Item:
    if found is None:
        return cannot_tell(
            name,
            "the contact was not read",
            measure="read across the contact, off the motor, in this position",
            needs=(needs,),
        )
    trouble = "welded or stuck" if found == "closed" else "burnt or stuck"
    return requires(
        name,
        found == wanted,
        says=f"it reads {found}, {trouble}; it should be {wanted}",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=_REPLACE,
    )


def _text(part: str, quantity: str, said_by: str) -> tables.Row:
    return tables.load("start-parts").row(part=part, quantity=quantity, said_by=said_by)
