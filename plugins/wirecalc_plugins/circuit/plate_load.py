"""What the plate says of the load: its amps beside those measured, a household range's demand."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Criterion,
    Item,
    at_or_below,
    cannot_tell,
    figure,
    from_memory,
    not_checked,
    put,
)

RANGE = from_memory("nec-220-55", "NEC", "Table 220.55, column C and note 4", off="10 %")
_PAIR = "current beside the plate"
OVER_PLATE = 1.25  # of the plate's amps: more is no reading of this machine; practice
PART_OF_PLATE, SLIPPED = 0.5, 0.125  # of a heater's plate; of any that may be one; practice
RANGE_FLAT_KW, RANGE_DEMAND_KW = 12.0, 8.0  # NEC Table 220.55, column C: one range
RANGE_STEP = 0.05  # note 1: for each kW, or major part of one, above 12 kW
RANGE_PART = 0.8  # columns A and B: one appliance of less than 8.75 kW
RANGE_LEAST_KW = 8.75
RANGE_BREAKERS = (40.0, 50.0)  # A; practice


def beside_plate(
    current: float, plate: float | None, has_motor: bool | None
) -> Iterator[Criterion]:
    """Question a reading in A that the plate's amps contradict.

    A machine with a motor may draw far less than its plate, which has its heater on it too.
    """
    if plate is None:
        return
    least = 0.0 if has_motor else plate * (SLIPPED if has_motor is None else PART_OF_PLATE)
    if at_or_below(current, OVER_PLATE * plate) and at_or_below(least, current):
        return
    why = "a slipped point, or not all of it was on"
    if current > plate:
        why = "another machine was measured, it is overloaded, or the plate was misread"
    yield cannot_tell(
        _PAIR,
        f"{current:.4g} A was measured and its plate has {plate:g} A: {why}",
        measure="read both again, with all of it on",
        needs=("current", "nameplate_current"),
        source=PRACTICE,
    )


def maybe_a_range(load: float, breaker: float) -> Iterator[Item]:
    """Point out that a household range counts less, where a load in A is over such a breaker."""
    if RANGE_BREAKERS[0] <= breaker <= RANGE_BREAKERS[1] and not at_or_below(load, breaker):
        yield not_checked("a household range", "it counts less than all of it on: --range-rating")


def range_demand(rating: float) -> float:
    """Return the load in kW that one household range of a rating in kW puts on its circuit.

    >>> range_demand(12), range_demand(14), range_demand(8)
    (8.0, 8.8, 6.4)
    """
    if rating < RANGE_LEAST_KW:
        return round(RANGE_PART * rating, 9)
    over = max(0.0, rating - RANGE_FLAT_KW)
    steps = int(over) + (over % 1 >= 0.5)
    return round(RANGE_DEMAND_KW * (1 + RANGE_STEP * steps), 9)


def range_amps(rating: float, volts: float) -> float:
    """Return that load in A at the plate's volts."""
    return 1000 * range_demand(rating) / volts


def range_load(current: float, rating: float, volts: float) -> Iterator[Item]:
    """Say what counts of a range of a rating in kW, and question a reading above its plate."""
    amps = range_amps(rating, volts)
    yield figure(
        "load of the range as it counts",
        amps,
        "A",
        source=RANGE,
        working=lambda: f"1000 x {put(range_demand(rating), 'kW')} / {put(volts, 'V')}",
    )
    yield from beside_plate(current, 1000 * rating / volts, True)
    if current > amps:
        yield not_checked(
            "the range with everything on",
            f"{current:.4g} A was measured; the code counts {amps:.4g} A, since all of it is "
            "seldom on at once, and the breaker may trip when it is",
        )
