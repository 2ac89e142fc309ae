"""The reverse question: which part of the stock does this job?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any, NamedTuple

from wirecalc import (
    BadText,
    Criterion,
    FileColumns,
    Item,
    OneOf,
    Origin,
    Problem,
    ReadingsFile,
    Source,
    Verdict,
    Wire,
    answer,
    calculation,
    cannot_tell,
    listing,
    requires,
    tables,
)
from wirecalc.sources import Confidence
from wirecalc.wires import read_size_range

from ..inputs import CURRENT, PLACE, TAB_WIDTH, VOLTAGE, WIRE_RATING
from .joint_ratings import ROOM_K, TAB_SLACK_IN
from .splice import CONNECTORS, LISTED_FOR, splice

SHOP_TABLE, DEMO_TABLE = "stock", "stock-demo"
_NEEDED = ("part", "connector", "barrel")
_JUDGED = ("on_hand", "barrel", "tab_in", "listed_for", "wire_limit", "temperature_C", "voltage_V")
_ORIGIN = Origin.PRACTICE
MOST = 40_000  # more than any number in a stock list: a slip
SHOWN = 15  # rows of the list that are printed
_HOUSE = Source("stock", "the stock list", confidence=Confidence.HOUSE)
_DEMO = Source("stock-demo", "a stock list for demonstrations", confidence=Confidence.DEMO)


class _Wanted(NamedTuple):
    """What the job asks of a part."""

    wires: list[Wire]
    connector: str
    tab_width: float | None
    wire_temperature: float | None
    place_temperature: float | None
    current: float | None
    voltage: float | None


class _Judged(NamedTuple):
    """A part of the stock with its verdict and what speaks most against it."""

    part: str
    on_hand: str
    verdict: Verdict
    room: float
    why: str


def _refuse(**given: Any) -> Iterator[Problem]:
    file = given.get("stock")
    if file is None:
        return
    missing = [name for name in _NEEDED if name not in file.words]
    if missing:
        yield Problem(
            "stock",
            f"the file has no column {', '.join(missing)}",
            f"its columns: {', '.join(file.words)}",
        )


@calculation(
    part="wire and joint",
    cautions=("crimp-01", "sub-01"),
    not_checked=("the maker's sheet of the part", "insulation diameter", "the die of the tool"),
    refuse=_refuse,
    example_with=(
        "connector=push-on",
        "tab_width",
        "wire_temperature",
        "place_temperature",
        "current=6.2 A",
        "voltage",
    ),
)
def choose(
    wire: Annotated[list[Wire], "wire in the barrel; repeat it for each"],
    connector: Annotated[str, OneOf(CONNECTORS, text="kind of connector")],
    tab_width: Annotated[float | None, TAB_WIDTH] = None,
    wire_temperature: Annotated[float | None, WIRE_RATING] = None,
    place_temperature: Annotated[float | None, PLACE] = None,
    current: Annotated[float | None, CURRENT] = None,
    voltage: Annotated[float | None, VOLTAGE] = None,
    stock: Annotated[
        FileColumns | None,
        ReadingsFile({}, text="CSV of the stock, if not the shop's table", typical="stock.csv"),
    ] = None,
) -> Iterator[Item]:
    """Which part of the stock fits these wires in this place?

    Every part of the wanted kind is judged as `splice` judges it; the parts are ranked by verdict
    and by how much room they leave, each with what speaks most against it. The stock is the file,
    else the table `stock` that a shop's plugin adds, else an invented list for demonstrations.
    Its columns: part, connector, barrel; where known tab_in, listed_for, wire_limit,
    temperature_C, voltage_V, on_hand.

    Inputs: wire, connector, tab_width in inch, temperatures in C, current in A, voltage in V,
    stock. Yields the ranked list, the best part, or what to buy if nothing fits.
    Source: tables barrel-ranges, joint-currents, quick-connect-currents; stock-demo (invented).
    """
    wanted = _Wanted(
        wire, connector, tab_width, wire_temperature, place_temperature, current, voltage
    )
    rows, source = _stock(stock)
    judged = sorted(_all(rows, wanted), key=lambda j: (j.verdict.rank, -j.room, j.part))
    shown = [(j.part, j.on_hand, str(j.verdict), j.why) for j in judged[:SHOWN]]
    left = len(judged) - len(shown)
    title = f"Stock of {connector} parts" + (f" (best {SHOWN}, {left} more)" if left else "")
    yield listing(title, ("part", "on hand", "verdict", "what speaks most against it"), shown)
    yield from _best(judged, wanted, source)


def _best(judged: Sequence[_Judged], wanted: _Wanted, source: Source) -> Iterator[Item]:
    name = "something in stock fits"
    best = judged[0] if judged else None
    if source is _DEMO:
        yield cannot_tell(
            name,
            "the list is invented and only shows how this works",
            measure="give --stock, or have the shop's plugin add a table named stock",
            needs=("stock",),
            source=source,
        )
        return
    if best is not None and best.verdict in (Verdict.PASS, Verdict.MARGINAL):
        yield answer("best part", best.part, because=[best.why] if best.why else [])
        in_full = best.verdict is Verdict.PASS
        says = f"{best.part} fits with care; {best.why}"
        yield requires(name, in_full, says=says, source=source, origin=_ORIGIN, advisory=True)
        return
    buy = _to_buy(wanted)
    yield answer("buy", buy)
    if best is not None and best.verdict is Verdict.CANNOT_TELL:
        yield cannot_tell(name, f"{best.part}: {best.why}", measure=f"else buy: {buy}")
    else:
        why = f"of {len(judged)} {wanted.connector} parts none fits"
        yield requires(
            name, False, says=why, source=source, origin=Origin.HOUSE, action=f"buy: {buy}"
        )


def _to_buy(wanted: _Wanted) -> str:
    """Say by its properties what would do."""
    total = sum(w.area_cmil for w in wanted.wires)
    words = [f"{wanted.connector} connector whose barrel takes {total:.0f} cmil"]
    if len(wanted.wires) > 1 or not all(w.stranded for w in wanted.wires):
        words.append("listed for " + " with ".join(w.text for w in wanted.wires))
    if wanted.tab_width is not None:
        words.append(f"for a {wanted.tab_width:.3f} in tab")
    if wanted.place_temperature is not None:
        words.append(f"rated {wanted.place_temperature + ROOM_K:.0f} C or more")
    if wanted.voltage is not None:
        words.append(f"marked {wanted.voltage:g} V or more")
    return ", ".join(words)


def _stock(file: FileColumns | None) -> tuple[list[Mapping[str, str]], Source]:
    if file is not None:
        heads = list(file.words)
        return [
            dict(zip(heads, cells, strict=True)) for cells in zip(*file.words.values(), strict=True)
        ], _HOUSE
    name = SHOP_TABLE if SHOP_TABLE in tables.names() else DEMO_TABLE
    rows: list[Mapping[str, str]] = [row.printed for row in tables.load(name).rows]
    return rows, _HOUSE if name == SHOP_TABLE else _DEMO


def _all(rows: Sequence[Mapping[str, str]], wanted: _Wanted) -> Iterator[_Judged]:
    """Judge every part of the wanted kind; parts alike in all that is judged only once."""
    known: dict[tuple[str, ...], _Judged] = {}
    for row in rows:
        if row.get("connector", "").strip().casefold() != wanted.connector:
            continue
        part, on_hand = row.get("part", "?"), row.get("on_hand", "")
        alike = tuple(row.get(name, "") for name in _JUDGED)
        if alike not in known:
            known[alike] = _judge(row, wanted)
        yield known[alike]._replace(part=part, on_hand=on_hand)


def _judge(row: Mapping[str, str], wanted: _Wanted) -> _Judged:
    """Judge one part; a row that cannot be read says so in its own line."""
    part, on_hand = row.get("part", "?"), row.get("on_hand", "")
    try:
        criteria = list(_criteria(row, wanted))
    except (BadText, ValueError) as error:
        return _Judged(part, on_hand, Verdict.FAIL, 0.0, f"its row cannot be read: {error}")
    worst = min(criteria, key=lambda c: (-c.verdict.rank, c.closeness))
    room = min(c.closeness for c in criteria)
    why = "" if worst.verdict is Verdict.PASS else f"{worst.name}: {worst.reason}"
    return _Judged(part, on_hand, worst.verdict, room, why)


def _criteria(row: Mapping[str, str], wanted: _Wanted) -> Iterator[Criterion]:
    tab = _number(row, "tab_in")
    if wanted.tab_width is not None and tab is None:
        yield cannot_tell("tab", "the list does not say which tab it is for", measure="look at it")
    elif wanted.tab_width is not None and tab is not None:
        fits = abs(tab - wanted.tab_width) <= TAB_SLACK_IN
        yield requires("tab", fits, says=f"it is for a {tab:.3f} in tab", source=_HOUSE)
    if _whole(row, "on_hand") == 0:
        yield requires("on hand", False, says="none is left", source=_HOUSE)
    limit, listed = _whole(row, "wire_limit"), row.get("listed_for") or None
    if listed not in (None, *LISTED_FOR):
        raise ValueError(f"listed_for {listed!r} is none of {', '.join(LISTED_FOR)}")
    for item in splice(
        wire=wanted.wires,
        barrel=read_size_range(row.get("barrel", "")),
        connector=wanted.connector,
        listed_for=listed,
        wire_limit=limit,
        wire_temperature=wanted.wire_temperature,
        terminal_temperature=_number(row, "temperature_C"),
        place_temperature=wanted.place_temperature,
        current=wanted.current,
        tab_width=tab if wanted.tab_width is None else wanted.tab_width,
        voltage=wanted.voltage,
        terminal_voltage=_number(row, "voltage_V"),
    ):
        if isinstance(item, Criterion):
            yield item


def _number(row: Mapping[str, str], name: str) -> float | None:
    text = row.get(name, "")
    if not text:
        return None
    value = float(text)
    if not 0 <= value <= MOST:
        raise ValueError(f"{name} {text} is not a plain number")
    return value


def _whole(row: Mapping[str, str], name: str) -> int | None:
    value = _number(row, name)
    if value is not None and value != int(value):
        raise ValueError(f"{name} {row[name]} is no whole number")
    return None if value is None else int(value)
