"""The lowest volts of a start, measured or by arithmetic, against what a motor starts on."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Problem,
    at_least,
    at_or_below,
    cannot_tell,
    not_checked,
    show,
)
from wirecalc.trade.wire_runs import WirePath

from .dip_model import LEAST_SHARE, StartOverPath
from .volts_left import plate_limits

NAME, LEAST = "volts at start", "least volts at start"
LRA = "LRA beside the rated current"
LRA_TIMES = 3.0  # least times the rated current of an induction motor; common practice
PLUG_A, PLUG_240_A = 16.0, 24.0  # 80 % of the largest plug of a 120 and a 240 V machine; practice
ONE_LEG = 150.0  # V on a plate; more is leg to leg

_MEND = "no extension cord, nothing else on this wire, or a receptacle nearer to the panel"
_MEASURE = (
    "measure the lowest volts at the plug during a start with min-hold, with all that runs beside "
    "it (voltage_at_start)"
)
_SLOW = "read again with min-hold, and read the LRA on the compressor's or motor's own label"


def judge_measured(at_start: float, plate: float) -> Iterator[Item]:
    """Judge the lowest volts of a start in V: 90 % of the plate is advice, 80 % binds."""
    limits = plate_limits(plate)
    yield at_least(
        NAME,
        at_start,
        limits.low,
        "V",
        source=limits.source,
        origin=Origin.MAKER,
        advisory=True,
        behind="80 % of the plate's volts at a start, 64 % of the torque",
        says="makers ask for it while the machine runs; no limit of a start was seen",
        action=_MEND,
    )
    yield _least(at_start, plate)


def _least(volts: float, plate: float, says: str = "") -> Item:
    share = f"80 % of the plate, {100 * LEAST_SHARE**2:.0f} % of the torque"
    return at_least(
        LEAST,
        volts,
        LEAST_SHARE * plate,
        "V",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says=f"{says}; {share}" if says else share,
        action=_MEND,
    )


def judge_start(
    start: StartOverPath, path: WirePath | None, at_start: float | None
) -> Iterator[Item]:
    """Judge a start by what was measured, unless the wire does not let so many volts through.

    Then, and where nothing was measured, by where arithmetic says that they may lie.
    """
    if at_start is not None and path is None:
        yield not_checked("whether the meter caught the lowest cycle", "give the wire and its run")
        yield from judge_measured(at_start, start.plate)
    elif path is not None and at_start is None:
        yield from _by_arithmetic(start, path)
    elif path is not None and at_start is not None and _missed(start, path, at_start):
        if at_or_below(plate_limits(start.plate).low, start.lowest(path)):
            yield from _by_arithmetic(start, path)  # good even with all that the wire may take
        else:
            yield _contradicted(start, path, at_start)
    elif at_start is not None:
        yield from judge_measured(at_start, start.plate)


def _missed(start: StartOverPath, path: WirePath, at_start: float) -> bool:
    """Whether more volts were read than the wire lets through."""
    return not at_or_below(at_start, start.highest(path))


def _contradicted(start: StartOverPath, path: WirePath, at_start: float) -> Item:
    """What was read and what is typed cannot both be: neither decides."""
    reason = (
        f"{at_start:.4g} V were read, and this wire lets {start.highest(path):.4g} V through at "
        "the most: a meter too slow for the dip, or not this motor's LRA"
    )
    return cannot_tell(LEAST, reason, measure=_SLOW, needs=("voltage_at_start",))


def _by_arithmetic(start: StartOverPath, path: WirePath) -> Iterator[Item]:
    low, kindest = start.lowest(path), start.highest(path)
    least = LEAST_SHARE * start.plate
    if not at_or_below(least, kindest):
        yield _least(kindest, start.plate, "the most that it may be")
    elif not at_or_below(least, low):
        yield _untold(start, path)
    elif path.wire is None:
        yield cannot_tell(
            LEAST,
            f"{low:.4g} V or more behind the cord, and the building wire before it was not given",
            measure="read gauge and length of the building wire, or measure the lowest volts",
            needs=("building_wire", "run_length", "voltage_at_start"),
            source=PRACTICE,
        )
    else:
        yield from judge_measured(low, start.plate)


def _untold(start: StartOverPath, path: WirePath) -> Item:
    low, kindest = start.lowest(path), start.highest(path)
    least = show(LEAST_SHARE * start.plate, "V", toward="up")
    high = start.modelled(path, start.factors[0])
    cold = start.at_limit(kindest) and not start.at_limit(high)
    more = f", up to {kindest:.4g} V with a cold wire" if cold else ""
    return cannot_tell(
        LEAST,
        f"{low:.4g} to {high:.4g} V by arithmetic{more}, and the least is {least}",
        measure=_MEASURE,
        needs=("voltage_at_start",),
        source=PRACTICE,
    )


def judge_locked(locked: float, plate: float, rated: float | None, name: str) -> Iterator[Item]:
    """Question an LRA that may be a rated current in A, or another motor's; `name` is its input."""
    own = "read LRA and RLA on the label of the compressor or motor itself, not of the cabinet"
    if rated is None:
        if at_or_below(locked, PLUG_A if plate <= ONE_LEG else PLUG_240_A):
            yield cannot_tell(
                LRA,
                f"{locked:.4g} A may be a rated current, of which a start takes several times",
                measure=own,
                needs=(name,),
            )
    elif not at_or_below(LRA_TIMES * rated, locked):
        yield cannot_tell(
            LRA,
            f"{locked:.4g} A is {locked / rated:.2g} times the rated {rated:.4g} A, and an "
            f"induction motor takes {LRA_TIMES:g} times or more at a start",
            measure=own,
            needs=(name,),
            source=PRACTICE,
        )


def not_above(locked: float, rated: float, what: str) -> Iterator[Problem]:
    """Refuse an LRA that is not above a rated or running current."""
    if locked <= rated:
        yield Problem(
            "locked_rotor_current",
            f"{locked:g} A is not above the {what} of {rated:g} A",
            "look at the plate again: LRA is several times the rated current",
        )
