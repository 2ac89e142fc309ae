"""For how long a wire stands an overcurrent: by IEC 60364, by ICEA, and until copper melts."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, at_or_below, figure, not_checked, put, tables

from .adiabatic import HeatedWire, constant

ADIABATIC_S = 5.0  # IEC 60364-4-43, from memory: beyond it a wire sheds heat


def times(case: HeatedWire) -> Iterator[Item]:
    """Yield the time by IEC 60364, by ICEA, and when copper melts."""
    k, source = case.factor()
    seconds = case.time(k)
    yield figure(
        "time that the insulation stands",
        seconds,
        "s",
        source=source,
        toward="down",
        working=lambda: (
            f"({put(k)} x {put(case.area)} mm2 / {put(case.current)} A)^2; {put(case.start)} to "
            f"{put(case.insulation.final)} C"
        ),
    )
    icea = case.icea()
    if icea is not None:
        yield figure(
            "time by ICEA P-32-382",
            icea[0],
            "s",
            source=icea[1],
            toward="down",
            working=case.icea_working,
        )
    if case.metal == "copper":
        yield _melting(case)
    if not at_or_below(seconds, ADIABATIC_S):
        yield not_checked(
            "the heat that the wire sheds", f"over {ADIABATIC_S:g} s the time is a low bound"
        )


def _melting(case: HeatedWire) -> Item:
    constants = tables.load("adiabatic-constants")
    factor = constants.row(law="onderdonk", metal="copper", item="factor")
    melting = constant("onderdonk", "copper", "melting")
    zero = constant("onderdonk", "copper", "zero_resistance")
    ratio = (melting + zero) / (case.start + zero)
    return figure(
        "copper melts after",
        case.log_time("onderdonk", ratio),
        "s",
        source=factor.source,
        working=lambda: case.log_working("onderdonk", melting, zero),
    )
