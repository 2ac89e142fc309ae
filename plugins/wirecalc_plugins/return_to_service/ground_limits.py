"""The limits of a ground path, and a path judged by them."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    Item,
    Wire,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    not_checked,
    put,
    tables,
)

from ..lead_resistance import LEADS_OHM, Ohms
from .ground_path import ReadPath, Span

UNNAMED, ADVICE = "iec-60335-1", "ul-507"  # what binds, and what advises, where none is named
STANDARDS = ("iec-60335-1", "ul-507", "en-50106", "vde-0701-0702")
NAME, COUNTED = "case to ground", "case to ground, the cord counted"
LONG_CORD_OHM = 0.398  # 15 m of 18 AWG at 75 C: no machine's own cord is longer; practice
THIN_MM2, SHORT_M = 1.5, 5.0  # EN 50678: a cord for which it keeps 0.3 ohm
BETTER = "a four-wire low-ohm tester"
_MEND = "clean and tighten every ground joint, replace a cord that is high, read again"
_BEHIND_COUNTED = "0.1 ohm without the cord (IEC 60335-1 27.5) fails"


class GroundPath(NamedTuple):
    """The path in ohm as far as a standard counts it; high is infinite where that is not known.

    `needs` and `measure` say what it lacks; `exact` names the readings without a meter's error.
    """

    ohms: Ohms
    needs: tuple[str, ...] = ()
    measure: str = ""
    exact: tuple[str, ...] = ()


def _row(standard: str, point: str) -> tables.Row:
    """Return the row of a standard for a machine with or without a cord."""
    rows = tables.load("ground-limits").where(standard=standard)
    wanted = ("any", "wired-in" if point == "wired-in" else "cord")
    return next(r for r in rows if r.text("applies_to") in wanted)


def _limit(row: tables.Row, metres: Span | None) -> Ohms:
    """Return the limit; a span where it grows with a length that is not known."""
    limit = row.number("limit_ohm")
    if row.cells["step_ohm"] is None:
        return Ohms(limit, limit)
    most = row.number("most_ohm")
    if metres is None:
        return Ohms(limit, most)
    return Ohms(*(min(limit + _steps(row, m) * row.number("step_ohm"), most) for m in metres))


def _steps(row: tables.Row, metres: float) -> int:
    """Count the started steps of a cord; a length at the end of one, typed in ft, is not past."""
    return max(0, math.ceil((metres - row.number("free_m")) / row.number("step_m") - 1e-9))


def shown(point: str, metres: Span | None) -> Iterator[Item]:
    """Show the limits of all standards side by side."""
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


def _limit_working(row: tables.Row, limit: Ohms, metres: Span | None) -> Callable[[], str] | None:
    """Return how a limit grows with the cord; None for one that the table has as it is."""
    if row.cells["step_ohm"] is None or metres is None:
        return None
    step, least = row.number("step_ohm"), row.number("limit_ohm")
    if limit.low >= row.number("most_ohm"):
        return lambda: f"the most that it allows, for {put(metres[0], 'm')} of cord"
    steps = round((limit.low - least) / step)
    return lambda: (
        f"{put(least, 'ohm')} + {steps} x {put(step, 'ohm')}; {put(metres[0], 'm')} of cord"
    )


def _says_which(counted: bool, point: str) -> Item:
    """Say whether the cord counts in the limit that binds."""
    if point == "wired-in":
        text = "there is no cord"
    else:
        text = "counted" if counted else "not counted: its own ground wire is taken off"
    return answer("the cord in this limit", text)


def other_editions(cord: Wire | None, metres: Span | None) -> Iterator[Item]:
    """Say where newer editions have a limit that was not seen."""
    thin = cord is not None and at_or_below(cord.area_mm2, THIN_MM2)
    if not (thin and metres is not None and metres[1] < SHORT_M):
        yield not_checked(
            "EN 50678, EN 50699", "for a cord over 1.5 mm2 or of 5 m they compute a limit, unseen"
        )


def judged(
    read: ReadPath,
    standard: str | None,
    at: tuple[str, Span | None, Ohms | None, bool],
    unread: tuple[str, ...],
) -> Iterator[Item]:
    """Judge a path by its standard; where none is named, by the limit without the cord."""
    point, metres, own, blind = at
    row = _row(standard or UNNAMED, point)
    counted = row.text("cord") == "counted"
    yield _says_which(counted, point)
    path = _counted(read.ends, point) if counted else _without(read.ends, point, own, blind)
    path = path._replace(exact=read.exact, needs=() if blind else path.needs)
    limit = _limit(row, metres)
    length = ("cord_length",) if limit.low != limit.high else ()
    yield _judge(path, limit, row, [*path.needs, *length, *unread])
    if standard is None and point in ("plug-pin", "neutral-blade"):
        yield _advise(read.ends, _row(ADVICE, point))


def _counted(ohms: Ohms, point: str) -> GroundPath:
    """Return the path with the cord in it."""
    if point != "cord-end":
        return GroundPath(ohms)
    return GroundPath(
        Ohms(ohms.low, math.inf),
        measure="read from the case to the pin of the plug: the cord counts, and was not read",
    )


def _without(ohms: Ohms, point: str, own: Ohms | None, blind: bool) -> GroundPath:
    """Return the path without the cord; `blind` of one whose metal says no resistance."""
    if point not in ("plug-pin", "neutral-blade"):
        return GroundPath(ohms)
    measure = "read from the case to the ground wire where the cord ends in the machine"
    if own is None:
        least = 0.0 if blind else max(0.0, ohms.low - LONG_CORD_OHM)
        return GroundPath(Ohms(least, ohms.high), ("cord", "cord_length"), measure)
    return GroundPath(
        Ohms(max(0.0, ohms.low - own.high), max(0.0, ohms.high - own.low)), (), measure
    )


def _judge(path: GroundPath, limit: Ohms, row: tables.Row, needs: Sequence[str]) -> Item:
    """Judge a path by the limit that binds; without the meter's errors it can't pass."""
    low, high = path.ohms
    if at_or_below(high, limit.low) and path.exact:
        return _unproven(path, row)
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
        action=_MEND,
        better=BETTER,
    )


def _advise(ohms: Ohms, row: tables.Row) -> Item:
    """Judge the path with its cord by the limit of a standard that is not this product's."""
    limit = row.number("limit_ohm")
    return at_most(
        COUNTED,
        ohms.low if not at_or_below(ohms.low, limit) else ohms.high,
        limit,
        "ohm",
        source=row.source,
        advisory=True,
        says="a standard of electric fans, the cord counted; others leave the cord out",
        action="find out the standard of this product, and name it; clean the ground joints",
        better=BETTER,
        behind=_BEHIND_COUNTED,
    )


def _unproven(path: GroundPath, row: tables.Row) -> Item:
    two = len(path.exact) > 1 or "lead_resistance" in path.exact
    what = "a difference of two small readings" if two else "a small reading"
    return cannot_tell(
        NAME,
        f"{path.ohms.high:.4g} ohm is {what}, and the meter's error was not given: "
        + ", ".join(path.exact),
        measure="type the error of the meter's sheet with it, such as 0.25 ohm ±(1%+3), and "
        "same_range if one meter read path and leads; or send 1 A or more through the path and "
        "read the millivolts across it; best with " + BETTER,
        source=row.source,
    )


def _undecided(path: GroundPath, limit: Ohms, row: tables.Row, needs: Sequence[str]) -> Item:
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
