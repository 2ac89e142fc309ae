"""The receptacle: whether it belongs on its circuit, and what may be plugged into it (NEC)."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, at_least, at_most, at_or_below, cannot_tell, confirmed, requires, tables

_SINGLE = confirmed("nec-210-21-b-1", "NEC", "210.21(B)(1)", copies=2)
_SEVERAL = confirmed("nec-210-21-b-3", "NEC", "Table 210.21(B)(3)", copies=2)


def receptacle_load(
    current: float,
    circuit: float,
    receptacle: float,
    only: bool | None,
    *,
    asks: str = "only_receptacle",
) -> Iterator[Item]:
    """Judge the receptacle on its circuit, and the load on the receptacle, all in A.

    `only` says whether it is the only outlet of its circuit, None where that is not known; `asks`
    names the input that says it.
    """
    table = tables.load("nec-receptacles")
    row = table.find(circuit_A=circuit, receptacle_A=receptacle)
    yield _fits_circuit(circuit, receptacle, only, row, asks)
    name = "load on the receptacle"
    action = "put the load on a circuit of its own"
    if only or row is None or not row.cells["max_plug_load_A"]:
        source = _SINGLE if row is None or only else row.source
        yield at_most(name, current, receptacle, "A", source=source, action=action)
        return
    shared = row.number("max_plug_load_A")
    source = table.column_source(row, "max_plug_load_A")
    if only is None and not at_or_below(current, shared) and at_or_below(current, receptacle):
        yield cannot_tell(
            name,
            f"over {shared:g} A, and it was not said whether the circuit has other outlets",
            measure="switch the breaker off and see what else goes dead",
            needs=(asks,),
            source=source,
        )
        return
    limit = shared if only is False or at_or_below(current, shared) else receptacle
    yield at_most(name, current, limit, "A", source=source, action=action)


def _fits_circuit(
    circuit: float, receptacle: float, only: bool | None, row: tables.Row | None, asks: str
) -> Item:
    """A single receptacle has the circuit's rating or more; several those of the table."""
    name = "receptacle on this circuit"
    action = "have an electrician fit the receptacle that belongs on this circuit"
    if only or (row is None and receptacle < circuit):
        return at_least(name, receptacle, circuit, "A", source=_SINGLE, action=action)
    if row is not None:
        return requires(name, True, says="", source=row.source)
    if only is False:
        says = f"no {receptacle:g} A receptacle belongs on a {circuit:g} A circuit with others"
        return requires(name, False, says=says, source=_SEVERAL, action=action)
    return cannot_tell(
        name,
        "a single receptacle may be larger than its circuit, one of several may not",
        measure="switch the breaker off and see what else goes dead",
        needs=(asks,),
        source=_SEVERAL,
    )
