"""The ground path of a machine: from its case to the pin of its plug, or to its ground wire."""

from __future__ import annotations

import math
from collections.abc import Callable, Generator, Iterator, Sequence
from typing import Annotated, NamedTuple

from wirecalc import (
    PRACTICE,
    Caution,
    Item,
    OneOf,
    Origin,
    Problem,
    Reading,
    Wire,
    YesNo,
    answer,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    figure,
    not_checked,
    put,
    requires,
    tables,
)
from wirecalc.runs import Run, known_metal
from wirecalc.tables import Row

from ..inputs import CONDUCTOR_TEMPERATURE, LEADS
from ..leads import LEADS_OHM, Ohms, less_leads, without_leads

STANDARDS = ("ul-507", "iec-60335-1", "en-50106", "vde-0701-0702")  # the strictest first
M_PER_FT = 0.3048
THIN_MM2, SHORT_M = 1.5, 5.0  # EN 50678: a cord for which it keeps 0.3 ohm
RESOLUTION_OHM = 0.1  # of a common meter; a reading may be so much under the cord's own
BETTER = "a four-wire low-ohm tester"
NAME = "case to ground"
_OPEN = "find the break: the lead off its screw, a painted face, the cord, the pin of the plug"
_REQUIRED = Caution(
    "ground-required",
    "Refrigerators, freezers, washers, dryers, dishwashers, disposals and air conditioners must "
    "be grounded, unless double insulated and so marked. A GFCI does not stand in for the ground.",
    "NEC 250.114(3), the list partly from memory; local code",
    "stop",
    "cord-connected appliance in a dwelling",
)


class _Path(NamedTuple):
    """The path in ohm as far as a standard counts it; high is infinite where that is not known."""

    ohms: Ohms
    needs: tuple[str, ...] = ()
    measure: str = ""


def _refuse(
    ground_resistance: float | None,
    ground_open: bool | None,
    ground_point: str,
    lead_resistance: float | None,
    cord: Wire | None,
    cord_length: float | None,
    conductor_temperature: float,
    standard: str,
) -> Iterator[Problem]:
    if ground_point == "wired-in" and standard == "vde-0701-0702":
        yield Problem(
            "standard",
            "vde-0701-0702 is given here for machines with a cord",
            "take another standard, or another ground_point",
        )
    if ground_resistance is None:
        return
    if ground_open:
        yield Problem(
            "ground_open",
            f"a path of {ground_resistance:g} ohm is not open",
            "give the resistance, or ground_open yes",
        )
    if lead_resistance is not None and not at_or_below(lead_resistance, ground_resistance):
        yield Problem(
            "lead_resistance",
            f"leads of {lead_resistance:g} ohm in a reading of {ground_resistance:g} ohm",
            "give the reading with the leads in it; 0 ohm if the meter was zeroed on them",
        )
    elif ground_point == "plug-pin" and cord is not None and known_metal(cord):
        of_cord = Run(cord, cord_length or 0.0, least=True).one_way(conductor_temperature)
        if ground_resistance - (lead_resistance or 0.0) + RESOLUTION_OHM < of_cord:
            yield Problem(
                "cord_length",
                f"the cord alone would have {of_cord:.3g} ohm, more than was read",
                "check ft and m and the gauge; the length is one way",
            )


@calculation(
    part="return to service",
    cautions=("gnd-02", "dead-02"),
    not_checked=(
        "whether it carries current: the standards test at 10 A or more, 12 V at most",
        "the ground of the receptacle and of the building",
    ),
    refuse=_refuse,
    example_with=("ground_resistance", "lead_resistance"),
)
def ground(
    ground_point: Annotated[
        str,
        OneOf(
            ("plug-pin", "cord-end", "wired-in"),
            text="read from the case to: the pin of the plug; the ground wire where the cord "
            "ends in the machine; the ground wire of a machine without a cord",
        ),
    ],
    ground_resistance: Annotated[
        float | None,
        Reading(
            "ohm",
            low=0,
            high=10_000,
            typical="0.25 ohm",
            text="case to that point",
            past="<",
            if_open="leave it out and give ground_open yes",
        ),
    ] = None,
    ground_open: Annotated[bool | None, YesNo("the path reads open (OL)")] = None,
    lead_resistance: Annotated[float | None, LEADS] = None,
    standard: Annotated[str, OneOf(STANDARDS, text="standard to judge by")] = "ul-507",
    cord: Annotated[Wire | None, "wire of the flexible cord"] = None,
    cord_length: Annotated[
        float | None,
        Reading("ft", above=0, high=300, typical="6 ft", text="length of the cord, one way"),
    ] = None,
    conductor_temperature: Annotated[float, CONDUCTOR_TEMPERATURE] = 20.0,
) -> Iterator[Item]:
    """Is the path from the case to ground good?

    The reading less the leads, against 0.1 ohm with the cord counted (UL 507, the strictest);
    0.1 ohm without the cord, whose own ground wire is computed and taken off (IEC 60335-1 27.5);
    0.2 ohm with a cord, 0.1 without one (EN 50106); 0.3 ohm plus 0.1 a started 7.5 m of cord
    beyond 5 m, 1 at most, the cord counted (DIN VDE 0701/0702). A reading at the cord's end
    proves nothing of its ground wire. Leads that were not read count as 0 to 0.3 ohm.

    Inputs: ground_point, resistance (0 to 10000) and leads in ohm, cord, cord_length in ft one
    way (over 0 to 300), conductor_temperature in C. Yields the path with and without the cord,
    all limits, and a criterion. Refuses a reading under its leads or far under its cord, and an
    open path with a reading. Source: table ground-limits.
    """
    yield caution("gnd-01")
    yield _REQUIRED
    if ground_resistance is None and not ground_open:
        yield cannot_tell(
            NAME,
            "the path was not read",
            measure="unplug it; touch the leads together and read them, then case to ground",
            needs=("ground_resistance",),
        )
        return
    yield requires(
        "the path to ground is closed",
        not ground_open,
        says="it reads open: the case can become live",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=_OPEN,
    )
    metres = None if cord_length is None else cord_length * M_PER_FT
    yield from _limits(ground_point, metres)
    if ground_resistance is None:
        return
    ohms = _floored(less_leads(ground_resistance, lead_resistance))
    if lead_resistance is not None:
        yield without_leads("path less leads", ohms, ground_resistance, lead_resistance)
    own = None
    if cord is not None and cord_length is not None and known_metal(cord):
        own = yield from _of_cord(Run(cord, cord_length), conductor_temperature)
    row = _row(standard, ground_point)
    counted = row.text("cord") == "counted"
    yield _says_which(counted, ground_point)
    path = _counted(ohms, ground_point) if counted else _without(ohms, ground_point, own)
    if path.needs and cord is not None and not known_metal(cord):
        path = path._replace(needs=())
    limit = _limit(row, metres)
    needs = [*path.needs, *(["cord_length"] if limit.low != limit.high else [])]
    if lead_resistance is None:
        needs.append("lead_resistance")
    yield _judge(path, limit, row, needs)
    if standard == "vde-0701-0702" and not _thin_and_short(cord, metres):
        yield not_checked(
            "EN 50678, EN 50699", "for a cord over 1.5 mm2 or of 5 m they compute a limit, unseen"
        )
    if ground_point == "cord-end" and not counted:
        yield not_checked("the ground wire of the cord", "it was not in the reading")


def _thin_and_short(cord: Wire | None, metres: float | None) -> bool:
    """Whether it is known that EN 50678 has the same limit."""
    thin = cord is not None and at_or_below(cord.area_mm2, THIN_MM2)
    return thin and metres is not None and metres < SHORT_M


def _floored(ohms: Ohms) -> Ohms:
    return Ohms(max(0.0, ohms.low), max(0.0, ohms.high))


def _of_cord(run: Run, temperature: float) -> Generator[Item, None, Ohms]:
    """Yield the resistance of the cord's ground wire, one way; return its least and greatest."""
    ends = []
    for name, least in (("greatest", False), ("least", True)):
        one = run._replace(least=least)
        ends.append(one.one_way(temperature))
        if ends[0] != ends[-1] or not least:
            yield _ground_wire(name, one, temperature)
    return Ohms(*sorted(ends))


def _ground_wire(name: str, run: Run, temperature: float) -> Item:
    per_length = run.per_length(temperature)
    return figure(
        f"ground wire of the cord, {name}",
        run.one_way(temperature),
        "ohm",
        source=per_length.source,
        working=lambda: (
            f"{put(run.length_ft, 'ft')} x {put(per_length.ohm_per_kft, 'ohm/kft')} / 1000; one "
            f"way at {put(temperature, 'C')}"
        ),
    )


def _row(standard: str, point: str) -> Row:
    rows = tables.load("ground-limits").where(standard=standard)
    wanted = ("any", "wired-in" if point == "wired-in" else "cord")
    return next(r for r in rows if r.text("applies_to") in wanted)


def _limit(row: Row, metres: float | None) -> Ohms:
    """Return the limit; a span where it grows with a length that is not known."""
    limit = row.number("limit_ohm")
    if row.cells["step_ohm"] is None:
        return Ohms(limit, limit)
    most = row.number("most_ohm")
    if metres is None:
        return Ohms(limit, most)
    beyond = metres - row.number("free_m")
    # a length at the end of a step, typed in another unit, is not in the next one
    steps = max(0, math.ceil(beyond / row.number("step_m") - 1e-9))
    limit = min(limit + steps * row.number("step_ohm"), most)
    return Ohms(limit, limit)


def _limits(point: str, metres: float | None) -> Iterator[Item]:
    for row in tables.load("ground-limits").rows:
        applies = row.text("applies_to")
        if applies != "any" and (applies == "wired-in") != (point == "wired-in"):
            continue
        name = f"most by {row.text('standard')}, {row.text('cord')}"
        name += f", {applies}" if applies.endswith(" cord") else ""
        limit = _limit(row, metres)
        yield figure(
            name,
            limit.low,
            "ohm",
            source=row.source,
            toward="down",
            working=_limit_working(row, limit, metres),
        )


def _limit_working(row: Row, limit: Ohms, metres: float | None) -> Callable[[], str] | None:
    """Return how a limit grows with the cord; None for one that the table has as it is."""
    if row.cells["step_ohm"] is None or metres is None:
        return None
    step, least = row.number("step_ohm"), row.number("limit_ohm")
    if limit.low >= row.number("most_ohm"):
        return lambda: f"the most that it allows, for {put(metres, 'm')} of cord"
    steps = round((limit.low - least) / step)
    return lambda: f"{put(least, 'ohm')} + {steps} x {put(step, 'ohm')}; {put(metres, 'm')} of cord"


def _says_which(counted: bool, point: str) -> Item:
    if point == "wired-in":
        text = "there is no cord"
    else:
        text = "counted" if counted else "not counted: its own ground wire is taken off"
    return answer("the cord in this limit", text)


def _counted(ohms: Ohms, point: str) -> _Path:
    """Return the path with the cord in it."""
    if point != "cord-end":
        return _Path(ohms)
    return _Path(
        Ohms(ohms.low, math.inf),
        measure="read from the case to the pin of the plug: the cord counts, and was not read",
    )


def _without(ohms: Ohms, point: str, own: Ohms | None) -> _Path:
    """Return the path without the cord."""
    if point != "plug-pin":
        return _Path(ohms)
    measure = "read from the case to the ground wire where the cord ends in the machine"
    if own is None:
        return _Path(Ohms(0.0, ohms.high), ("cord", "cord_length"), measure)
    return _Path(_floored(Ohms(ohms.low - own.high, ohms.high - own.low)), (), measure)


def _judge(path: _Path, limit: Ohms, row: Row, needs: Sequence[str]) -> Item:
    low, high = path.ohms
    if not at_or_below(high, limit.low) and at_or_below(low, limit.high):
        return _undecided(path, limit, row, needs)
    within = at_or_below(high, limit.low)
    return at_most(
        NAME,
        high if within else low,
        limit.low if within else limit.high,
        "ohm",
        source=row.source,
        says="do not return it to service",
        action="clean and tighten every ground joint, replace a cord that is high, read again",
        better=BETTER,
    )


def _undecided(path: _Path, limit: Ohms, row: Row, needs: Sequence[str]) -> Item:
    low, high = path.ohms
    span = f"{low:.4g} to {high:.4g} ohm" if low != high else f"{low:.4g} ohm"
    if math.isinf(high):
        span = f"{low:.4g} ohm or more"
    limits = f"{limit.low:g}" if limit.low == limit.high else f"{limit.low:g} to {limit.high:g}"
    leads = f"; leads that were not read have up to {LEADS_OHM:g} ohm"
    measure = [path.measure] if path.measure else []
    if "lead_resistance" in needs:
        measure.append("touch the leads together and read them")
    if "cord_length" in needs:
        measure.append("measure the cord")
    return cannot_tell(
        NAME,
        f"{span} as this limit counts it, against {limits} ohm"
        + (leads if "lead_resistance" in needs else ""),
        measure="; ".join([*measure, f"best with {BETTER}"]),
        needs=needs,
        source=row.source,
    )
