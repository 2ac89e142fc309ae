"""What a part of the stock comes to for a job: its verdict, its room, what speaks against it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from wirecalc import BadText, Criterion, Verdict, Wire, cannot_tell, requires

from .joint_current import same_width
from .splice import splice
from .stock import HOUSE, Row, Stocked, left, properties, read_row

_WIRE_ALONE = ("temperature of the place", "temperature rating of the wire", "copper only")


class Wanted(NamedTuple):
    """What the job asks of a part."""

    wires: list[Wire]
    connector: str
    tab_width: float | None
    wire_temperature: float | None
    place_temperature: float | None
    current: float | None
    voltage: float | None


class JudgedPart(NamedTuple):
    """A part of the stock with its verdict and what speaks most against it."""

    part: str
    on_hand: str
    verdict: Verdict
    room: float
    why: str
    unread: bool = False


def all_judged(parts: Iterable[Sequence[Row]], wanted: Wanted) -> Iterator[JudgedPart]:
    """Judge every part; parts alike in all that is judged only once."""
    known: dict[tuple[tuple[str, ...], ...], JudgedPart] = {}
    for rows in parts:
        alike = tuple((*properties(row), row.get("on_hand", "")) for row in rows)
        if alike not in known:
            known[alike] = _judge(rows, wanted)
        yield known[alike]._replace(part=rows[0].get("part", "?"))


def _judge(rows: Sequence[Row], wanted: Wanted) -> JudgedPart:
    """Judge one part by its rows; a row that cannot be read says so in its own line."""
    part, on_hand = rows[0].get("part", "?"), rows[0].get("on_hand", "")
    if len(rows) > 1:
        counts = " + ".join(row.get("on_hand", "") or "?" for row in rows)
        on_hand = f"{counts} ({len(rows)} rows)"
    if len({properties(row) for row in rows}) > 1:
        why = f"it stands in {len(rows)} rows that differ: look at the part"
        return JudgedPart(part, on_hand, Verdict.CANNOT_TELL, 0.0, why)
    try:
        criteria = [*_on_hand(rows), *_criteria(read_row(rows[0]), wanted)]
    except BadText as error:
        why = f"its row cannot be read: {error}"
        return JudgedPart(part, on_hand, Verdict.CANNOT_TELL, 0.0, why, unread=True)
    worst = min(criteria, key=lambda c: (-c.verdict.rank, c.closeness))
    room = min(c.closeness for c in criteria)
    why = "" if worst.verdict is Verdict.PASS else f"{worst.name}: {worst.reason}"
    return JudgedPart(part, on_hand, worst.verdict, room, why)


def _on_hand(rows: Sequence[Row]) -> Iterator[Criterion]:
    if "on_hand" not in rows[0]:
        return
    count = left(rows)
    if count is None:
        yield cannot_tell("on hand", "the list does not say how many are left", measure="look")
    elif count == 0:
        yield requires("on hand", False, says="none is left", source=HOUSE)


def _criteria(part: Stocked, wanted: Wanted) -> Iterator[Criterion]:
    tab = part.tab
    if wanted.tab_width is not None and tab is None:
        yield cannot_tell("tab", "the list does not say which tab it is for", measure="look at it")
    elif wanted.tab_width is not None and tab is not None:
        fits = same_width(tab, wanted.tab_width)
        yield requires("tab", fits, says=f"it is for a {tab:.3f} in tab", source=HOUSE)
    marked = part.voltage is not None
    if wanted.voltage is not None and not marked:
        yield cannot_tell("voltage", "the list does not say its voltage", measure="look at it")
    for item in splice(
        wire=wanted.wires,
        barrel=part.barrel,
        connector=wanted.connector,
        listed_for=part.listed_for,
        wire_limit=part.wire_limit,
        wire_temperature=wanted.wire_temperature,
        terminal_temperature=part.temperature,
        place_temperature=wanted.place_temperature,
        current=wanted.current,
        tab_width=tab if wanted.tab_width is None else wanted.tab_width,
        circuit_voltage=wanted.voltage if marked else None,
        terminal_voltage=part.voltage,
    ):
        if isinstance(item, Criterion) and item.name not in _WIRE_ALONE:
            yield item
