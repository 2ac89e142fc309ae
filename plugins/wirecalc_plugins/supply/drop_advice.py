"""How far a wire reaches within the advised drop, and which wire reaches that far."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import GAUGES, Item, Wire, figure, gauge_cmil, gauge_number, listing, put, tables
from wirecalc.trade.wire_runs import WirePath

from .drop_load import DropLoad
from .path import ADVICE, ADVISED_PCT

_LEAST_GAUGE = {"copper": "14", "aluminium": "12"}  # thinnest building wire


def for_advice(load: DropLoad, path: WirePath, in_cord: float, plate: float) -> Iterator[Item]:
    """Say how far this wire reaches within 3 %, and which wire reaches this far."""
    budget = ADVISED_PCT / 100 * plate
    if path.wire is None:
        run, taken, budget_left = path.cord, load.in_cord(path.lead), budget
    else:
        run, taken, budget_left = path.wire, load.in_wire(path.shared), budget - in_cord
    if run is None or taken <= 0 or budget_left <= 0:
        return
    kind = "cord" if path.wire is None else "wire"
    yield figure(
        f"longest {kind} for 3 %",
        run.length_ft * budget_left / taken,
        "ft one way",
        source=ADVICE,
        toward="down",
        working=lambda: (
            f"{put(run.length_ft, 'ft')} x {put(budget_left, 'V')} / {put(taken, 'V')}; "
            f"{ADVISED_PCT:g} % is {put(budget, 'V')}"
        ),
    )
    for gauge in _standard_sizes(run.wire, kind):
        loop = run._replace(wire=gauge, printed=None).loop_impedance(path.temperature)
        volts = load.in_cord(loop) if kind == "cord" else load.in_wire(loop) + in_cord
        if volts <= budget:
            yield listing(
                f"Smallest {kind} for 3 % on this length (what it carries is another question)",
                (kind, "drop V", "drop %"),
                [(str(gauge), round(volts, 2), round(100 * volts / plate, 2))],
            )
            return


def _standard_sizes(wire: Wire, kind: str) -> Iterator[Wire]:
    """Yield the sizes of Table 8 in the metal of a wire, thin to thick, in its build if listed."""
    table = tables.load("nec-ch9-table8")
    least = _LEAST_GAUGE[wire.metal] if kind == "wire" else "18"
    for gauge in reversed(GAUGES[: GAUGES.index(least) + 1]):
        solid = not wire.stranded and table.find(awg=gauge, stranding="solid") is not None
        if table.find(awg=gauge, stranding="solid" if solid else "stranded") is not None:
            metal = "" if wire.metal == "copper" else " aluminium"
            yield Wire(
                f"{gauge} AWG{' solid' if solid else ''}{metal}",
                gauge_cmil(gauge_number(gauge)),
                gauge=gauge,
                stranded=not solid,
                metal=wire.metal,
                coating=wire.coating,
            )
