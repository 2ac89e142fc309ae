"""Three winding readings of a single-phase motor: which pin is which, and do they fit."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import product
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    not_checked,
    put,
    requires,
)
from wirecalc.rounding import show
from wirecalc.sources import confirmed

from .winding_heat import LEADS, LEADS_OHM
from .winding_pins import Pair, no_more_than_leads, pins

MAKER_SHARE, MAKER_C = 0.07, 25.0  # a maker's winding resistance holds within 7 % at 25 C
CASE_MOHM = 1.0
PAIRS = ("1-2", "1-3", "2-3")

_TOLERANCE = confirmed(
    "winding-tolerance", "compressor makers' texts", "winding resistance, 7 % at 25 C", copies=2
)
_OVERLOAD = confirmed(
    "line-break-overload", "one room air-conditioner service manual", "internal overload", copies=1
)
_INSULATION = confirmed(
    "vde-0701", "DIN VDE 0701 and UK in-service inspection guides", "insulation, class I", copies=2
)
_COPPER = confirmed("copper-234-5", "a compressor application guideline", "234.5 C", copies=1)

Ends = tuple[float, float]


def _resistance(pair: str) -> Reading:
    return Reading(
        "ohm",
        low=0,
        high=1000,
        typical="4.6 ohm",
        text=f"between pins {pair}",
        if_open="leave it out; a pin that reads OL to both others is open_pin",
    )


def _refuse(
    reading_1_2: float | None = None,
    reading_1_3: float | None = None,
    reading_2_3: float | None = None,
    open_pin: str = "none",
    maker_run: float | None = None,
    maker_start: float | None = None,
    **others: object,
) -> Iterator[Problem]:
    if maker_run is not None and maker_start is not None and maker_run > maker_start:
        yield Problem(
            "maker_run",
            f"{maker_run:g} ohm of the run winding is over the {maker_start:g} ohm of the start",
            "the run winding has the fewer ohms: the two swapped?",
        )
    readings = dict(zip(PAIRS, (reading_1_2, reading_1_3, reading_2_3), strict=True))
    for pair, reading in readings.items():
        if reading is not None and (open_pin == "all" or open_pin in pair.split("-")):
            yield Problem(
                f"reading_{pair.replace('-', '_')}",
                f"{reading:g} ohm between {pair}, and pin {open_pin} was said to read open",
                "leave this reading out, or leave open_pin out: an open pin is open to both others",
            )


@calculation(
    part="motor and start",
    cautions=("dead-01", "cap-01", "pin-01", "ins-01"),
    not_checked=(
        "shorted turns, unless the maker's ohms are given: a good winding may read 2 ohm or less",
        "insulation at its test voltage: an ohmmeter is no insulation tester",
    ),
    refuse=_refuse,
    example_with=(
        "reading_1_2",
        "reading_1_3=16.4 ohm",
        "reading_2_3=12.0 ohm",
        "lead_resistance",
    ),
)
def windings(
    reading_1_2: Annotated[float | None, _resistance("1-2")] = None,
    reading_1_3: Annotated[float | None, _resistance("1-3")] = None,
    reading_2_3: Annotated[float | None, _resistance("2-3")] = None,
    open_pin: Annotated[
        str,
        OneOf(("none", "1", "2", "3", "all"), text="pin that reads open (OL) to the other two"),
    ] = "none",
    lead_resistance: Annotated[float | None, LEADS] = None,
    common_pin: Annotated[
        str | None, OneOf(("1", "2", "3"), text="common pin, where a marking names it")
    ] = None,
    winding_temperature: Annotated[
        float | None,
        Reading("C", low=-40, high=150, typical="25 C", text="temperature of the winding"),
    ] = None,
    maker_run: Annotated[
        float | None,
        Nameplate("ohm", above=0, high=1000, typical="4.6 ohm", text="run winding by its maker"),
    ] = None,
    maker_start: Annotated[
        float | None,
        Nameplate("ohm", above=0, high=1000, typical="12 ohm", text="start winding by its maker"),
    ] = None,
    case_resistance: Annotated[
        float | None,
        Reading(
            "Mohm", low=0, high=1e6, typical="20 Mohm", text="any pin to the bare case", past=">"
        ),
    ] = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Which pin of this motor is common, start, run, and do its windings read right?

    Number the pins, take all wires off, read each pair cold. The largest pair leaves common out;
    of the other two the lower is common to run, the higher common to start. The two must add up
    to the largest within 0.3 ohm or 5 % (common practice): if not, the readings contradict each
    other and nothing is named. Start under 1.2 times run: a reversing motor has two like windings,
    a three-phase or inverter motor three; no pin is named, and the motor is not condemned.

    Inputs: readings and leads in ohm (0 to 1000, leads to 2), open_pin, common_pin, maker's ohms
    (7 % at 25 C, with winding_temperature in C), case_resistance in Mohm. Yields each pair less
    the leads, closure, ratio, the pins, and ratios of known motors. Refuses a reading on an open
    pin, and maker's run ohms over start. To the case an ohmmeter can fail, never pass.
    Source: table winding-ratios.
    """
    ends = dict(bands or {})
    given = dict(zip(PAIRS, (reading_1_2, reading_1_3, reading_2_3), strict=True))
    if lead_resistance is None:
        yield not_checked("test leads", "taken as 0 ohm; they have 0.1 to 0.3: touch and read them")
    pairs = list(_less_leads(given, ends, lead_resistance or 0.0))
    for pair in pairs:
        yield _pair_figure(pair, given[pair.name], lead_resistance)
    if case_resistance is not None:
        yield from _to_case(case_resistance, ends.get("case_resistance"))
    if open_pin != "none":
        yield _open(open_pin, common_pin, len(pairs))
        return
    if len(pairs) < len(PAIRS):
        missing = [p for p, reading in given.items() if reading is None]
        yield _not_read(missing)
        return
    yield requires("no winding is open", True, says="", source=PRACTICE, origin=Origin.PRACTICE)
    low, middle, high = sorted(pairs, key=lambda p: p.ohm)
    lowest = min(pairs, key=lambda p: p.low)
    if at_or_below(lowest.low, 0.0):
        yield no_more_than_leads(lowest)
        return
    named = yield from pins(low, middle, high, common_pin)
    temperature = winding_temperature, ends.get("winding_temperature")
    for name, pair, said in (("run", low, maker_run), ("start", middle, maker_start)):
        if said is not None and named:
            yield from _by_maker(name, pair, said, temperature, lead_resistance is None)
        elif said is not None:
            yield not_checked(f"{name} winding by its maker", "the winding could not be named")


def _less_leads(given: Mapping[str, float | None], ends: Bands, leads: float) -> Iterator[Pair]:
    lead_low, lead_high = ends.get("lead_resistance", (leads, leads))
    for name, reading in given.items():
        if reading is not None:
            own = ends.get(f"reading_{name.replace('-', '_')}", (reading, reading))
            yield Pair(name, reading - leads, own[0] - lead_high, own[1] - lead_low)


def _pair_figure(pair: Pair, reading: float | None, leads: float | None) -> Item:
    return figure(
        f"{pair.name} less leads",
        pair.ohm,
        "ohm",
        band=(pair.low, pair.high),
        working=lambda: (
            "as read: the leads were not read"
            if leads is None
            else f"{put(reading or 0.0, 'ohm')} - {put(leads, 'ohm')}"
        ),
    )


def _not_read(missing: Sequence[str]) -> Item:
    return cannot_tell(
        "no winding is open",
        f"not read: {', '.join(missing)}; one pair alone is never open, a pin is",
        measure="read all three pairs; where a pin reads OL to both others, say so with open_pin",
        needs=tuple(f"reading_{p.replace('-', '_')}" for p in missing),
    )


def _open(pin: str, common: str | None, read: int) -> Item:
    """Judge open readings: a common pin that is open may be no more than an open overload."""
    name = "no winding is open"
    if pin != "all" and common is not None and common != pin:
        return requires(
            name,
            False,
            says=f"pin {pin} is not common and reads open to both others: its winding, or the lead "
            "to it, is open",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="look for a loose or burnt lead first; a winding open inside ends the motor",
        )
    if pin == "all":
        why = "no pair reads at all: more than one break, the wrong pins, or the meter's leads"
        return cannot_tell(
            name, why, measure="touch the leads together, clean the pins, read again"
        )
    other = "the other two " + ("are joined" if read else "were not read against each other")
    needs = (
        ()
        if read
        else tuple(f"reading_{p.replace('-', '_')}" for p in PAIRS if pin not in p.split("-"))
    )
    return cannot_tell(
        name,
        f"pin {pin} reads open to both others; {other}. If {pin} is common, an internal overload "
        "may be open, and it closes when cool; if not, a winding or its lead is open",
        measure="let it cool, up to an hour, and read again; find common by the marking",
        needs=needs + (() if common else ("common_pin",)),
        source=_OVERLOAD,
    )


def _by_maker(
    name: str,
    pair: Pair,
    maker: float,
    temperature: tuple[float | None, Ends | None],
    leads_unknown: bool,
) -> Iterator[Item]:
    """Judge a winding against its maker's resistance, both at 25 C."""
    what = f"{name} winding"
    warm, warm_ends = temperature
    if warm is None:
        yield cannot_tell(
            f"{what} by its maker",
            "the winding's temperature was not given, and 18 K move its resistance by 7 %",
            measure="let it stand until it has the room's temperature, and give that",
            needs=("winding_temperature",),
        )
        return
    at_25 = pair.ohm * _to_25(warm)
    leads = (0.0, LEADS_OHM) if leads_unknown else (0.0, 0.0)
    band = _span(
        lambda ohm, t, lead: (ohm - lead) * _to_25(t),
        (pair.low, pair.high),
        warm_ends or (warm, warm),
        leads,
    )
    yield figure(
        f"{what} at 25 C",
        at_25,
        "ohm",
        source=_COPPER,
        band=band,
        working=lambda: f"{put(pair.ohm, 'ohm')} x (234.5 + 25) / (234.5 + {put(warm, 'C')})",
    )
    action = "read it again cold, leads subtracted; then it has shorted turns"
    for side, limit, compare, toward in (
        ("lower limit", maker * (1 - MAKER_SHARE), at_least, "up"),
        ("upper limit", maker * (1 + MAKER_SHARE), at_most, "down"),
    ):
        if leads_unknown and at_or_below(limit, band[0]) != at_or_below(limit, band[1]):
            yield cannot_tell(
                f"{what}, {side}",
                f"{at_25:.4g} ohm with the leads in it, against "
                f"{show(limit, 'ohm', toward=toward)}",
                measure="touch the test leads together and read them",
                needs=("lead_resistance",),
                source=_TOLERANCE,
            )
            continue
        yield compare(
            f"{what}, {side}",
            at_25,
            limit,
            "ohm",
            source=_TOLERANCE,
            origin=Origin.MAKER,
            action=action if compare is at_least else "read it again cold, on clean pins",
            band=band,
        )


def _to_25(temperature: float, constant: float = 234.5) -> float:
    return (constant + MAKER_C) / (constant + temperature)


def _span(of: Callable[..., float], *ends: Ends) -> Ends:
    found = [of(*point) for point in product(*ends)]
    return min(found), max(found)


def _to_case(value: float, band: Ends | None) -> Iterator[Item]:
    """Judge a reading to the case that is low; at few volts a high one shows nothing."""
    yield figure("any pin to the case", value, "Mohm", band=band)
    if at_or_below(CASE_MOHM, value if band is None else band[0]):
        yield not_checked(
            "insulation to the case",
            "an ohmmeter's few volts are no insulation test: see insulation",
        )
        return
    yield at_least(
        "any pin to the case, by ohmmeter",
        value,
        CASE_MOHM,
        "Mohm",
        source=_INSULATION,
        action="dry and clean the terminal, read again; below 1 Mohm do not power it",
        band=band,
    )
