"""What the plate of a unit says of its circuit: least ampacity and largest device."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PLATE,
    PRACTICE,
    Item,
    Wire,
    answer,
    at_or_below,
    cannot_tell,
    confirmed,
    figure,
    put,
)

from .building_wire import load_on_wire
from .circuit_size import against_plate, copper_carrying
from .motor_rules import COMPRESSOR, CONDUCTOR, table_current
from .standard_ratings import rating_at_least
from .thin_wire import too_thin
from .wire_place import WirePlace

_COMPRESSOR = confirmed("nec-440-32", "NEC", "440.32", copies=1)
_DEVICE = confirmed("nec-440-22-a", "NEC", "440.22(A)", copies=2)
MOST_SHARE, LEAST_DEVICE_A = 2.25, 15.0  # of a compressor's current; any device may be 15 A
ROUNDED = 0.95  # a plate's least ampacity is rounded; less than this of 125 % is no rounding
SLIPPED = 0.25  # of the table's amps: less is no plate of that motor; practice
_AGAIN = "read both on the plate again: one of them is of another machine, or misread"


def by_plate(
    ampacity: float,
    largest: float | None,
    breaker: float | None,
    wire: Wire | None,
    place: WirePlace,
    *,
    questioned: bool = False,
) -> Iterator[Item]:
    """Judge wire and device of a unit by its plate: least ampacity and largest device, in A.

    `questioned` says that its values are in doubt already.
    """
    yield figure(
        "current that the wire must carry",
        ampacity,
        "A",
        source=PLATE,
        working=lambda: f"{put(ampacity, 'A')}, the plate's least ampacity and any other loads",
        toward="up",
    )
    if wire is None:
        gauge = copper_carrying(ampacity, place)
        if gauge is not None:
            yield answer(
                "what this circuit needs",
                f"{gauge} AWG copper or thicker",
                against=["to change wire or device is a job for an electrician"],
            )
    else:
        yield from load_on_wire(ampacity, 1.0, None, wire, place)
        yield from too_thin(wire)
    if largest is not None:
        if not questioned:
            yield from _too_large_for(ampacity, largest)
        yield figure("largest device by the plate", largest, "A", source=PLATE)
        if breaker is not None:
            yield against_plate(breaker, largest)


def under_compressor(kind: str, amps: float, ampacity: float | None) -> bool:
    """Whether a plate's least ampacity in A is too little for the compressor of these amps."""
    return kind == COMPRESSOR and ampacity is not None and ampacity < ROUNDED * CONDUCTOR * amps


def _too_large_for(ampacity: float, largest: float) -> Iterator[Item]:
    """Question a largest device that no rule gives a unit of this least ampacity, both in A.

    125 % of its compressor is in the least ampacity, at most 225 % in the largest device.
    """
    most = max(rating_at_least(MOST_SHARE / CONDUCTOR * ampacity), LEAST_DEVICE_A)
    if not at_or_below(largest, most):
        yield cannot_tell(
            "largest device beside the least ampacity",
            f"largest device {largest:g} A beside a least ampacity of {ampacity:g} A: it would be "
            f"{most:g} A at the most",
            measure=_AGAIN,
            needs=("minimum_ampacity", "maximum_breaker"),
            source=_DEVICE,
        )


def contradictions(
    kind: str, amps: float, ampacity: float | None, largest: float | None
) -> Iterator[Item]:
    """Question plate values in A that cannot stand on one plate.

    The least ampacity of a unit counts 125 % of its compressor, so it is never below that; its
    largest device is never below the current that it runs on.
    """
    if kind != COMPRESSOR:
        return
    if under_compressor(kind, amps, ampacity):
        yield cannot_tell(
            "plate values together",
            f"least ampacity {ampacity:g} A beside {amps:g} A: it would be 125 % of that, "
            f"{CONDUCTOR * amps:.4g} A",
            measure=_AGAIN,
            needs=("minimum_ampacity", "rated_load_current"),
            source=_COMPRESSOR,
        )
    elif largest is not None and largest < amps:
        yield cannot_tell(
            "plate values together",
            f"largest device {largest:g} A beside {amps:g} A, on which it would not run",
            measure=_AGAIN,
            needs=("maximum_breaker", "rated_load_current"),
            source=_COMPRESSOR,
        )


def beside_table(
    horsepower: float | None, voltage: float | None, plate: float | None
) -> Iterator[Item]:
    """Question a motor's plate whose amps are far under the table's for its hp and volts."""
    if horsepower is None or voltage is None or plate is None:
        return
    usual = table_current("nec-motor-full-load", horsepower, voltage)
    if usual is not None and plate < SLIPPED * usual.amps:
        yield cannot_tell(
            "plate's amps beside the table",
            f"{plate:g} A on the plate, and {usual.amps:g} A in the table for such a motor: a "
            "slipped point, or the plate of another",
            measure="read hp, volts and amps on the plate again",
            needs=("full_load_current", "horsepower"),
            source=PRACTICE,
        )
