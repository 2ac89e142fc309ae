"""The reverse question: which part of the stock does this job?"""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    FileColumns,
    Item,
    Problem,
    calculation,
    listing,
    not_checked,
)

from . import joint_ratings
from .choose_inputs import (
    CircuitVoltage,
    Connector,
    Current,
    PlaceTemperature,
    StockInput,
    TabWidth,
    WireInput,
    WireTemperature,
)
from .joint_current import above_the_wire
from .joint_ratings import metals
from .stock import NEEDED, by_part, read_stock
from .stock_best import best_of
from .stock_judged import Wanted, all_judged

SHOWN = 15  # rows of the list that are printed


def _refuse(stock: FileColumns | None) -> Iterator[Problem]:
    if stock is None:
        return
    missing = [name for name in NEEDED if name not in stock.words]
    if missing:
        yield Problem(
            "stock",
            f"the file has no column {', '.join(missing)}",
            f"its columns: {', '.join(stock.words)}",
        )


@calculation(
    part="wire and joint",
    words=(
        "connector; connectors; terminal; terminals; which terminal; which connector",
        "what connector; pick; select; stock; inventory; parts bin; van stock; part number",
        "crimp connector; butt connector; butt splice; closed end connector; wire nut; twist-on",
        "spade; spade terminal; fork; fork terminal; ring; eyelet; lug; push-on; push on terminal",
        "quick connect; quick disconnect; QC; female terminal; red blue yellow; red connector",
        "blue connector; yellow connector; color; colour; insulated terminal",
        "heat shrink connector; which crimp; join wires; connect wires; high temperature terminal",
        "ferrule; assortment; kit of terminals; pigtail; closed end; crimp terminal; bullet",
        "eyelet size; terminal size; what part; which part; which lug; find a part; recommend",
        "right terminal; size of connector; color code; colour code; terminal for wire",
        "connector for wire; suitable; van; end cap; male; female; disconnect; splice",
        "wire connector; insulated; uninsulated; brass; copper lug",
        "what parts do we have; what do we have; have we got; left on the truck; on the truck",
        "truck; truck stock; in the van; in stock; stock list; our stock; parts list",
        "how many left; spares; spare parts; drawer; shelf; shop stock",
        "low stock; store; storeroom; bench stock; pick a terminal",
        "pick a connector; solder or crimp; stranded vs solid; solid wire crimp",
        "connector for aluminium; waterproof connector; wet location connector; wet area",
        "lever connector; push-in connector; choc block; chocolate block; terminal block",
        "heat proof connector; ceramic connector; porcelain connector; mouse chewed; rats",
        "chewed; harness repair",
        "reorder; run out of terminals; out of terminals",
    ),
    go_on="strip to its barrel, crimp with its own tool, look and tug: strip",
    cautions=("crimp-01", "sub-01", "flam-02"),
    not_checked=("the maker's sheet of the part", "insulation diameter", "the die of the tool"),
    refuse=_refuse,
    example_with=(
        "connector=push-on",
        "tab_width",
        "wire_temperature",
        "place_temperature",
        "current=6.2 A",
        "circuit_voltage",
    ),
    renamed={"voltage": "circuit_voltage"},
)
def choose(
    wire: WireInput,
    connector: Connector,
    tab_width: TabWidth = None,
    wire_temperature: WireTemperature = None,
    place_temperature: PlaceTemperature = None,
    current: Current = None,
    circuit_voltage: CircuitVoltage = None,
    stock: StockInput = None,
) -> Iterator[Item]:
    """Which part of the stock fits these wires in this place?

    Every part of the wanted kind is judged as `splice` judges it; the parts are ranked by verdict
    and by how much room they leave, each with what speaks most against it. What is wrong with the
    wire itself, its rating or its metal, is judged once: no part mends it. The stock is the file,
    else the table `stock` that a shop's plugin adds, else an invented list for demonstrations.
    Its columns: part, connector, barrel; where known tab_in, listed_for, wire_limit,
    temperature_C, voltage_V, on_hand. A row that cannot be read, a count left empty, and rows of
    one part number that differ leave that part untold; rows that agree are counted together.

    For joints inside appliances, not for building wire.

    Inputs: wire, connector, tab_width in inch, temperatures in C, current in A, circuit_voltage in
    V, stock. Yields the ranked list, the best part, or what to buy if nothing fits.
    Source: tables barrel-ranges, joint-currents, quick-connect-currents, cords, metric-cords;
    stock-demo (invented).
    """
    wanted = Wanted(
        wire, connector, tab_width, wire_temperature, place_temperature, current, circuit_voltage
    )
    yield from _of_the_wire(wanted)
    too_much = above_the_wire(wire, current) if current is not None else None
    if too_much is not None:
        yield too_much
        wanted = wanted._replace(current=None)
    rows, source = read_stock(stock)
    judged = sorted(
        all_judged(by_part(rows, connector), wanted),
        key=lambda j: (j.verdict.rank, j.unread, -j.room, j.part),
    )
    shown = [(j.part, j.on_hand, str(j.verdict), j.why) for j in judged[:SHOWN]]
    more = len(judged) - len(shown)
    title = f"Stock of {connector} parts" + (f" (best {SHOWN}, {more} more)" if more else "")
    if judged:
        yield listing(title, ("part", "on hand", "verdict", "what speaks most against it"), shown)
    if rows and "on_hand" not in rows[0]:
        yield not_checked("how many are left", "the list has no column on_hand")
    yield from best_of(judged, wanted, source)


def _of_the_wire(wanted: Wanted) -> Iterator[Item]:
    """Judge what no part of the stock can mend: the place, the rating and the metal of the wire."""
    yield joint_ratings.known_place(wanted.place_temperature)
    yield from joint_ratings.rating_of("wire", wanted.wire_temperature, wanted.place_temperature)
    yield from metals(wanted.wires)
