"""What an extension cord and the wire before it leave of the volts, running and at a start."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, cannot_tell, figure, not_checked, put
from wirecalc.trade.wire_runs import WirePath

from .dip_model import StartOverPath, volts
from .path import DROP, judge_drop, running_drop
from .start_volts import LEAST, judge_measured, judge_start
from .volts_left import judge_left, too_many


def cord_drop(
    path: WirePath | Item, current: float, other: float, plate: float | None, at_rest: float | None
) -> Iterator[Item]:
    """Judge the drop of a load in A over a path, or say what it lacks."""
    if not isinstance(path, WirePath):
        yield path
        return
    lost = running_drop(current, other, path)
    more = f" + {put(other, 'A')} x {put(path.shared.real, 'ohm')}" if other else ""
    yield figure(
        "drop" if path.wire is not None else "drop in the cord",
        lost,
        "V",
        working=lambda: f"{put(current, 'A')} x {put(path.whole.real, 'ohm')}{more}",
    )
    needs = [] if plate is not None else ["nameplate_voltage"]
    needs += [] if path.wire is not None else ["building_wire", "run_length"]
    if plate is None or needs:
        yield cannot_tell(
            DROP,
            f"{lost:.3g} V"
            + (" and the building wire's" if path.wire is None else "")
            + (", of a plate that was not given" if plate is None else ""),
            measure="read the volts on the plate, and gauge and length of the building wire",
            needs=needs,
        )
    else:
        yield judge_drop(lost, plate)
        yield judge_left(lost, plate, at_rest)
        yield from too_many(lost, plate, at_rest)


def cord_dip(
    path: WirePath | Item,
    given: dict[str, float | None],
    other: float,
    at_start: float | None,
    has_motor: bool | None,
) -> Iterator[Item]:
    """Judge a start over a path by what was given of it, or say what it lacks."""
    locked_rotor, plate, at_rest = given.values()
    arithmetic = isinstance(path, WirePath) and locked_rotor is not None and at_rest is not None
    if at_start is not None and plate is not None and not arithmetic:
        yield not_checked("whether the meter caught the lowest cycle", "give LRA, wire and its run")
        yield from judge_measured(at_start, plate)
    elif not isinstance(path, WirePath):
        yield path
    elif locked_rotor is None or plate is None or at_rest is None:
        left_out = [name for name, value in given.items() if value is None]
        kind = "motor_start" if has_motor else "has_motor"
        asked_too = [kind] if locked_rotor is None else []
        yield cannot_tell(
            LEAST,
            f"{', '.join(left_out)} not given; a machine without a motor has no start, one with an "
            "inverter or brushes no LRA",
            measure="read the plate, and the volts at the plug with nothing running",
            needs=[*left_out, *asked_too],
        )
    else:
        start = StartOverPath(at_rest, plate, locked_rotor, other)
        yield from volts(start, path)
        yield from judge_start(start, path, at_start)
