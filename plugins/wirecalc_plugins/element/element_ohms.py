"""The ohms of a heating element against its plate or its maker."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    MAKER,
    PLATE,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_or_above,
    cannot_tell,
    confirmed,
    figure,
    put,
    show,
)

from ..lead_resistance import Ohms, less_leads, ohms_at_least, ohms_at_most, without_leads

TOLERANCE = 0.10  # of the plate's or the maker's resistance
FAR_UNDER = 0.25  # no wire element reads so much less cold; practice (nichrome reaches 14 %)
UPPER, LOWER = "resistance, upper limit", "resistance, lower limit"
_TOLERANCE = confirmed("element-tolerance", "service text", "element against its plate", 1)
_OTHER_VOLTS = (  # reading over the plate's: watts of one plate at other volts
    (3.6, 4.4, "four times its plate's: an element for twice these volts"),
    (0.225, 0.275, "a quarter of its plate's: an element for half these volts"),
)


class Known(NamedTuple):
    """What is known of the element: ohms by plate and by maker, and its kind."""

    plate: float | None
    maker: float | None
    kind: str
    high: float | None = None  # upper end, where the maker prints a range


def against(reading: float, leads: float | None, known: Known) -> Iterator[Item]:
    """Compare a reading less its leads with its maker's ohms, or with those of the plate."""
    ohms = less_leads(reading, leads)
    if leads is not None:
        yield without_leads("resistance less leads", ohms, reading, leads)
    wanted = known.maker or known.plate
    if wanted is None:
        yield cannot_tell(
            UPPER,
            "no watts and volts of the element to compare with",
            measure="read the power and the volts on the element or its plate",
            needs=("nameplate_power", "nameplate_voltage"),
        )
        return
    if known.maker and known.high:
        yield from _by_range(ohms, known.maker, known.high)
        return
    by = "maker" if known.maker else "plate"
    yield figure(
        f"deviation from the {by}",
        100 * (ohms.high / wanted - 1),
        "%",
        source=MAKER if known.maker else PLATE,
        working=lambda: f"100 x ({put(ohms.high)} / {put(wanted)} - 1)",
    )
    yield ohms_at_most(
        UPPER,
        ohms,
        (1 + TOLERANCE) * wanted,
        source=_TOLERANCE,
        says=_other_volts(ohms.high / wanted) or "too little heat; is the plate this element's?",
        action=_CLEAN,
    )
    if known.maker:
        yield ohms_at_least(LOWER, ohms, (1 - TOLERANCE) * wanted, source=_TOLERANCE, action=_AGAIN)
    else:
        yield _under_its_plate(ohms, wanted, known.kind)


def _by_range(ohms: Ohms, least: float, most: float) -> Iterator[Item]:
    """Judge by the range of cold ohms that its maker prints."""
    says = f"outside its maker's {least:g} to {most:g} ohm"
    yield ohms_at_most(UPPER, ohms, most, source=MAKER, says=says, action=_CLEAN)
    yield ohms_at_least(LOWER, ohms, least, source=MAKER, says=says, action=_AGAIN)


_CLEAN = "read it again at its own clean tabs; if it stays so, replace it"
_AGAIN = "read it again with every wire off; if it stays so, replace it"


def _under_its_plate(ohms: Ohms, plate: float, kind: str) -> Item:
    """Judge a low side that is compared with the plate, which is of the hot element."""
    good, bad = (1 - TOLERANCE) * plate, (1 - FAR_UNDER) * plate
    if kind != "wire":
        return cannot_tell(
            LOWER,
            f"a {kind} has other ohms cold than hot, and the plate's are those of the hot one",
            measure="take its cold ohms from the maker's sheet",
            needs=("maker_element",),
            source=PRACTICE,
        )
    if at_or_above(ohms.low, good):
        return at_least(LOWER, ohms.low, good, "ohm", source=_TOLERANCE)
    if not at_or_above(ohms.high, bad):
        return at_least(
            LOWER,
            ohms.high,
            bad,
            "ohm",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says=_other_volts(ohms.high / plate)
            or "part of it is bridged, or the plate is not this element's",
            action=_AGAIN,
        )
    span = f"{ohms.high:.4g} ohm" if ohms.low == ohms.high else f"{ohms.low:.4g} to {ohms.high:.4g}"
    return cannot_tell(
        LOWER,
        f"{span} is under {show(good, 'ohm', toward='up')} by its plate; a wire element "
        "may read 14 % less cold",
        measure="take its cold ohms from the maker's sheet; touch the leads together and read them",
        needs=("maker_element", "lead_resistance") if ohms.low != ohms.high else ("maker_element",),
        source=PRACTICE,
    )


def _other_volts(ratio: float) -> str:
    return next((says for low, high, says in _OTHER_VOLTS if low <= ratio <= high), "")
