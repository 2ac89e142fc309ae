"""The ohms of a start device that is a resistor, by texts, its maker, or its mark."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
    figure,
    tables,
)

from ..lead_resistance import Ohms, ohms_at_least, ohms_at_most

REPLACE = "fit the device that the compressor's maker names; find out why it failed"
OPEN_TIMES = 10.0  # times the most that any text gives, and more, it is open; practice
PLATE_115 = (100.0, 130.0)  # plates that the manuals' ohms are for
PLATE_220 = (200.0, 253.0)  # plates that the repair texts' ohms are for
_LEAST, _MOST = "resistance, lower limit", "resistance, upper limit"
_SHEET = "take its cold ohms from the maker's sheet, or compare with a new one of the same number"


def by_texts(device: str, ohms: Ohms, plate: float | None) -> Iterator[Item]:
    """Judge without the maker's ohms, by manuals and trade texts, which do not agree."""
    wide = {"ptc": "manuals", "run-thermistor": "trade-text"}[device]
    row = start_row(device, "cold resistance", wide)
    least, most, caution = row.number("least"), row.number("most"), None
    widest = most
    if device == "ptc":
        caution = start_row(device, "cold resistance", "stricter-manual").number("most")
        for said_by in ("trade-page", "data-sheets"):
            other = start_row(device, "cold resistance", said_by)
            widest = max(widest, other.number("most"))
            where = f"{said_by.replace('-', ' ')}: cold ohms of a PTC device"
            for end in ("least", "most"):
                yield figure(f"{where}, {end}", other.number(end), "ohm", source=other.source)
    if device == "ptc" and plate is not None and PLATE_220[0] <= plate <= PLATE_220[1]:
        row = start_row(device, "cold resistance", "texts-220")
        least, most, caution = row.number("least"), row.number("most"), None
    unsaid = device == "ptc" and plate is None
    spans = (PLATE_115, PLATE_220)
    fits_plate = device != "ptc" or (plate is not None and any(a <= plate <= b for a, b in spans))
    needs = ("nameplate_voltage", "maker_resistance") if unsaid else ("maker_resistance",)
    whose = "texts on 220 V units" if row.text("said_by") == "texts-220" else "manuals for 115 V"
    between = f"{ohms.high:.4g} ohm: {whose} have {least:g} to {most:g}, "
    between += f"other devices up to {widest:g} ohm"
    if device != "ptc":
        between = f"{ohms.high:.4g} ohm: one text has {least:g} to {most:g} ohm"
    if fits_plate and at_or_above(ohms.low, least):
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
            action=REPLACE,
        )


def by_range(ohms: Ohms, least: float, most: float) -> Iterator[Item]:
    """Judge by the range that the maker prints; it is its own tolerance."""
    says = f"outside the maker's {least:g} to {most:g} ohm"
    yield ohms_at_least(_LEAST, ohms, least, source=MAKER, says=says, action=REPLACE)
    yield ohms_at_most(_MOST, ohms, most, source=MAKER, says=says, action=REPLACE)


def by_maker(ohms: Ohms, maker: float, tolerance: float | None) -> Iterator[Item]:
    """Judge by the maker's ohms; a tolerance that was not given lies between two sheets'."""
    sheet = start_row("ptc", "tolerance", "sheet-b")
    near, far = (sheet.number(end) for end in ("least", "most"))
    source = sheet.source
    if tolerance is not None:
        near = far = tolerance
        source = MAKER
    says = f"more than {far:g} % from the maker's {maker:g} ohm"
    unsure = f"{ohms.high:.4g} ohm is {near:g} to {far:g} % from the maker's {maker:g} ohm"
    ends = [1 - near / 100, 1 - far / 100, 1 + near / 100, 1 + far / 100]
    low, lower, high, higher = (maker * end for end in ends)
    within_low, within_high = at_or_above(ohms.low, low), at_or_below(ohms.high, high)
    if not within_low and at_or_above(ohms.high, lower) and tolerance is None:
        yield _by_tolerance(_LEAST, unsure)
    else:
        limit = low if within_low else lower
        yield ohms_at_least(_LEAST, ohms, limit, source=source, says=says, action=REPLACE)
    if not within_high and at_or_below(ohms.low, higher) and tolerance is None:
        yield _by_tolerance(_MOST, unsure)
    else:
        limit = high if within_high else higher
        yield ohms_at_most(_MOST, ohms, limit, source=source, says=says, action=REPLACE)


def _by_tolerance(name: str, unsure: str) -> Item:
    source = start_row("ptc", "tolerance", "sheet-b").source
    measure = "take its tolerance from the maker's sheet"
    return cannot_tell(name, unsure, measure=measure, needs=("maker_tolerance",), source=source)


def by_mark(ohms: Ohms, mark: float) -> Iterator[Item]:
    """Judge a start thermistor across a run capacitor by its mark."""
    good = start_row("run-thermistor", "share of the mark", "trade-text")
    bad = start_row("run-thermistor", "replace above", "trade-text")
    least = good.number("least") / 100 * mark
    if at_or_above(ohms.low, least):
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
        action=REPLACE,
    )


def start_row(part: str, quantity: str, said_by: str) -> tables.Row:
    """Return what a kind of text says of a start device."""
    return tables.load("start-parts").row(part=part, quantity=quantity, said_by=said_by)
