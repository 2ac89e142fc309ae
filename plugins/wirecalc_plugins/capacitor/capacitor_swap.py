"""Whether a capacitor may take the place of another."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    confirmed,
    requires,
)

from .capacitor_classes import life, protection
from .capacitor_swap_inputs import (
    CutoffVoltage,
    NewCapacitor,
    NewCapacitorDuty,
    NewCapacitorHigh,
    NewCapacitorLife,
    NewCapacitorProtection,
    NewCapacitorTemperature,
    NewCapacitorVoltage,
    OldCapacitor,
    OldCapacitorDuty,
    OldCapacitorHigh,
    OldCapacitorLife,
    OldCapacitorProtection,
    OldCapacitorTemperature,
    OldCapacitorVoltage,
    refuse,
)
from .marked_capacitance import no_run_part
from .start_range import cut_off, in_range

SAME_SIZE = 0.05  # a run capacitor of another size than this: only where the maker says; practice


_VOLTS = confirmed("capacitor-volts", "trade texts and one component maker's guide", "", copies=4)
_DUTY = confirmed("capacitor-duty", "trade texts and one component maker's guide", "", copies=4)


@calculation(
    part="motor and start",
    words=(
        "replace capacitor; replacement capacitor; replacement cap; substitute capacitor; new cap",
        "swap cap; cap rating; cap voltage; higher voltage; 370; 440; 450; 250; volts on cap",
        "bigger cap; different mfd; bigger capacitor; start cap; run cap; start cap for run cap",
        "wrong cap; cross reference; universal capacitor; interchange; uF; mfd; microfarad",
        "capacitor size; cap size; dual cap; swollen cap; bulging cap; blown cap; bad cap",
        "in place of; instead of; can I use; compatible; larger cap; smaller cap; higher uF; VAC",
        "generic cap; class of cap; swelled; mfd for mfd; replacing cap; size up",
        "cap substitution; substitution; substitute cap",
        "370 for 440; 440 for 370; hard start kit; hard start kit size; hard start capacitor",
        "what cap for; cap for a motor; capacitor for hp; capacitor for a motor; next size cap",
        "two caps in parallel; parallel caps; cap in place of; instead of cap; cap uprate",
        "closest cap; wrong uF; film cap; electrolytic; cap from stock; 45 uF; 50 for 45",
        "can I fit a bigger cap",
    ),
    go_on="discharge the old one, wire the new one the same, start, read the amps",
    cautions=("cap-03", "cap-01", "dead-01", "cap-02", "cap-04", "sub-01", "flam-02"),
    not_checked=(
        "the maker's own list of parts, which goes first",
        "size of the case, its mounting, terminals, and a rating for 50 or 60 Hz alone",
        "a part with two sections: hold each section against its own",
    ),
    refuse=refuse,
    example_with=(
        "old_capacitor_temperature",
        "new_capacitor_temperature",
        "old_capacitor_protection",
    ),
)
def capacitor_swap(
    old_capacitor: OldCapacitor,
    new_capacitor: NewCapacitor,
    old_capacitor_voltage: OldCapacitorVoltage,
    new_capacitor_voltage: NewCapacitorVoltage,
    old_capacitor_duty: OldCapacitorDuty,
    new_capacitor_duty: NewCapacitorDuty,
    old_capacitor_high: OldCapacitorHigh = None,
    new_capacitor_high: NewCapacitorHigh = None,
    old_capacitor_temperature: OldCapacitorTemperature = None,
    new_capacitor_temperature: NewCapacitorTemperature = None,
    cutoff_voltage: CutoffVoltage = None,
    old_capacitor_protection: OldCapacitorProtection = None,
    new_capacitor_protection: NewCapacitorProtection = None,
    old_capacitor_life: OldCapacitorLife = None,
    new_capacitor_life: NewCapacitorLife = None,
) -> Iterator[Item]:
    """May this capacitor take the place of that one?

    Run: the same size (within 5 %, common practice, unless the maker says otherwise), no fewer
    volts, and a run part. Start: inside the range marked on the old part, no fewer volts; where
    the volts at cut-off were measured, they stay within the limit of the new part's class. A start
    part never sits in a run place; a run part in a start place is for the maker to say. No lower
    temperature, and no part without protection (S0, P0) in the place of a protected one.

    For run and start capacitors of motors, each section of a two-section part by itself. Inputs:
    sizes in uF (over 0 to 2000), ranges by their upper end, volts in V (50 to 1000), duty,
    temperatures in C, classes of protection and life. Yields a criterion a line. Refuses a range
    on a run part. Source: table start-capacitors.
    """
    yield from _duty(old_capacitor_duty, new_capacitor_duty)
    yield at_least(
        "volts",
        new_capacitor_voltage,
        old_capacitor_voltage,
        "V",
        source=_VOLTS,
        origin=Origin.MAKER,
        action="take a part marked with as many volts or more",
    )
    if old_capacitor_duty == "run":
        yield from _same_size(old_capacitor, new_capacitor)
        yield from no_run_part(old_capacitor)
    else:
        new_end = new_capacitor if new_capacitor_duty == "run" else new_capacitor_high
        yield from in_range((old_capacitor, old_capacitor_high), (new_capacitor, new_end))
    if new_capacitor_duty == "start":
        yield from cut_off(new_capacitor_voltage, cutoff_voltage)
    yield from _temperature(old_capacitor_temperature, new_capacitor_temperature)
    yield from protection(old_capacitor_protection, new_capacitor_protection)
    yield from life(old_capacitor_life, new_capacitor_life)


def _duty(old: str, new: str) -> Iterator[Item]:
    name = "duty"
    if old == "start" and new == "run":
        yield cannot_tell(
            name,
            "a run part in a start place stands the duty, and motors are not made for it",
            measure="ask the maker's list of parts",
            source=PRACTICE,
        )
        return
    yield requires(
        name,
        old == new,
        says="a start part in a run place: it is made for seconds, and overheats",
        source=_DUTY,
        origin=Origin.MAKER,
        action="take a run part",
    )


def _same_size(old: float, new: float) -> Iterator[Item]:
    action = "take the marked size, unless the maker's sheet names another"
    for side, limit, compare in (
        ("lower limit", old * (1 - SAME_SIZE), at_least),
        ("upper limit", old * (1 + SAME_SIZE), at_most),
    ):
        yield compare(
            f"size, {side}",
            new,
            limit,
            "uF",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=action,
        )


def _temperature(old: float | None, new: float | None) -> Iterator[Item]:
    name = "temperature rating"
    if old is not None and new is not None:
        yield at_least(
            name,
            new,
            old,
            "C",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="take a hotter part",
        )
