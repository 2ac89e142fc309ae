"""How hot a winding was when it was switched off, by its resistance."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Bands,
    Item,
    Source,
    answer,
    calculation,
    cannot_tell,
    figure,
    not_checked,
    put,
    show,
    show_band,
    tables,
)

from ..lead_resistance import LEADS_OHM
from .winding_class import NAME, judge, ohms_of, stood_by
from .winding_cooling import (
    CoolingReadings,
    WindingTemperature,
    at_switch_off,
    doubts,
    soon_enough,
    working_of,
)
from .winding_heat_inputs import (
    ColdResistance,
    ColdTemperature,
    HotResistance,
    HotTime,
    LeadResistance,
    RoomTemperature,
    WindingClass,
    WindingMetal,
    refuse,
)


@calculation(
    part="motor and start",
    words=(
        "winding temperature; motor temperature; compressor temperature; how hot; hot motor",
        "motor hot; runs hot; overheated motor; motor overheats; overheats; overheating",
        "temperature rise; rise by resistance; resistance method; hot resistance; hot ohms",
        "insulation class; class B; class F; class H; motor smells; smells hot; burnt smell",
        "burning smell; motor winding resistance; winding resistance; too hot to touch",
        "burnt motor; compressor hot; transformer; casing; motor casing; shell; class rise",
        "hot to touch; too hot; burning; winding temp; delta ohms; motor temp; temp rise",
        "fan motor hot; insulation life; change of resistance; resistance change",
        "motor warm; motor warm to touch; warm motor; motor gets hot; runs warm; smells burnt",
        "smells of burning; smells like burning; burnt varnish; varnish; motor smoke",
        "motor smokes; smoking motor; smoke; hot after; hot after an hour",
        "temperature of winding; pump hot; fan motor warm; compressor too hot; burning hands",
        "transformer hot; coil hot; solenoid hot; valve coil hot",
        "fridge back hot; back of the fridge hot; fridge side hot; sides hot",
        "compressor body hot",
    ),
    go_on="close up; read it again if it runs longer than it ran now",
    cautions=("dead-01", "cap-01", "hot-01", "pin-01"),
    not_checked=(
        "the hottest spot: resistance gives the average of the winding",
        "the rise against the limit of the machine's own standard",
    ),
    refuse=refuse,
    example_with=("hot_time", "winding_class", "lead_resistance", "winding_metal"),
)
def winding_heat(
    cold_resistance: ColdResistance,
    cold_temperature: ColdTemperature,
    hot_resistance: HotResistance,
    room_temperature: RoomTemperature,
    hot_time: HotTime = None,
    lead_resistance: LeadResistance = None,
    winding_metal: WindingMetal = "copper",
    winding_class: WindingClass = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """How hot was this winding when it was switched off?

    For a winding of copper or aluminium, of a motor or a transformer. t2 = R2/R1 (k + t1) - k: an
    average, so limits by resistance judge it and not the letter's hottest spot. Two families of
    them are shown, and the lower judges; a compressor's is 140 C, and over 130 C marginal. The
    constants of two standards are shown, and the higher judges. Readings at several times are
    carried back to switch-off along a straight line through the logarithm of the rise over the
    room (least squares). One reading counts as it is within 30 s (IEC 60034-1, from memory);
    later, or without a time, the winding has been hotter: then it can fail, and not pass.

    Inputs: resistances in ohm with the leads in them (hot_resistance and hot_time are repeated, in
    the same order), temperatures in C, times in s. Yields temperature, rise, the least class that
    stands it, and a criterion where winding_class is given. Refuses hot below cold, and lists of
    unequal length. Source: tables winding-constants and winding-limits.
    """
    leads = lead_resistance or 0.0
    if lead_resistance is None:
        yield not_checked("test leads", f"taken as 0 to {LEADS_OHM:g} ohm: touch and read them")
    read = CoolingReadings(
        cold_resistance, cold_temperature, hot_resistance, hot_time, room_temperature, leads
    )
    ends = dict(bands or {})
    if lead_resistance is None:
        ends["lead_resistance"] = (0.0, LEADS_OHM)
    if (
        ends.get("cold_resistance", (cold_resistance,))[0]
        <= ends.get("lead_resistance", (leads,))[-1]
    ):
        yield cannot_tell(
            NAME,
            "the cold winding reads no more than the leads, over this meter's band",
            measure="read it with a four-wire low-ohm meter",
        )
        return
    constants = tables.load("winding-constants").where(metal=winding_metal)
    rows = {r.number("constant_C"): r for r in constants}
    for k in sorted(rows):
        found = at_switch_off(k, read, ends)
        if found is None:
            yield cannot_tell(
                NAME,
                "the readings do not fall toward the room's temperature, or reach too far back",
                measure="take the first within a minute, and read on for at least as long again",
            )
            return
        yield figure(
            f"temperature at switch-off, k {k:g}" if found.known else f"hot winding, k {k:g}",
            found.at,
            "C",
            source=rows[k].source,
            working=working_of(k, read),
            band=(found.low, found.high),
        )
        if k == max(rows):
            yield _answer(found)
            yield stood_by(found)
            yield from doubts(found, read, ends)
            yield from _rise(found, read, ends, rows[k].source)
            if found.known and len(hot_resistance) == 1 and hot_time:
                yield soon_enough(hot_time[0], ends)
            if winding_class is not None:
                ohm = ohms_of(found, winding_class, k, read)
                yield from judge(winding_class, found, lead_resistance is not None, ohm)


def _answer(found: WindingTemperature) -> Item:
    when = "at switch-off" if found.known else "when it was read, and hotter at switch-off"
    text = f"{show(found.at, 'C')} {when}"
    if found.low != found.high:
        text += f"; {show_band(found.low, found.high, 'C')} with meter and leads"
    return answer("winding", text)


def _rise(
    found: WindingTemperature, read: CoolingReadings, ends: Bands, source: Source
) -> Iterator[Item]:
    """Yield the rise over the room, by the highest constant."""
    room = ends.get("room_temperature", (read.room, read.room))
    yield figure(
        "rise over the room",
        found.at - read.room,
        "K",
        source=source,
        band=(found.low - room[1], found.high - room[0]),
        working=lambda: f"{put(found.at, 'C')} - {put(read.room, 'C')}",
    )
    if found.known and len(read.hot) == 1:
        yield not_checked("cooling before the one reading", "none is counted")
