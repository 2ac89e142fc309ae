"""One load on its branch circuit: breaker, building wire, receptacle and cord."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Count,
    Item,
    Nameplate,
    Problem,
    Reading,
    Source,
    Wire,
    YesNo,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    put,
)
from wirecalc.sources import confirmed

from ..inputs import (
    AROUND_WIRE,
    BREAKER,
    MAXIMUM_BREAKER,
    RECEPTACLE,
    SLIP_A,
    TERMINATION,
    TOGETHER,
    WIRE_CLASS,
)
from .building_wire import CONTINUOUS, Place, building_wire, wrong_columns
from .circuit_size import against_plate, needed_circuit, sizes, weakest_first
from .cord_load import cord_load
from .receptacle import receptacle_load
from .shared_circuit import SWITCH_OFF, fastened_load, plug_in_load
from .standard_ratings import rating_at_least

LONG_RUN_H = 3.0  # NEC article 100: a load of 3 hours or more is continuous
SMALL_APPLIANCE_A, SMALL_APPLIANCE_BREAKER_A = 13.3, 20.0  # NEC 422.11(E)(2)
APPLIANCE_SHARE = 1.5  # NEC 422.11(E)(3)

_CONTINUOUS = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)
_HEATER = confirmed("nec-422-13", "NEC", "422.13", copies=1)
_INDIVIDUAL = confirmed("nec-210-22", "NEC", "210.22", copies=1)
_APPLIANCE = confirmed("nec-422-11-e", "NEC", "422.11(E)", copies=2)
_FIT = "have an electrician fit the breaker that the appliance allows"


def _refuse(
    insulation_class: float = 60.0,
    termination_temperature: float = 60.0,
    only_receptacle: bool | None = None,
    feeds_others: bool | None = None,
    **_: object,
) -> Iterator[Problem]:
    yield from wrong_columns(
        insulation_class=insulation_class, termination_temperature=termination_temperature
    )
    if only_receptacle and feeds_others:
        yield Problem(
            "feeds_others",
            "a circuit with one outlet feeds no others, and only_receptacle says that it has one",
            "say no to one of the two",
        )


@calculation(
    part="circuit",
    cautions=("brk-01", "cord-04", "live-01"),
    not_checked=(
        "motor and compressor circuits (NEC 430 and 440: motor-circuit)",
        "browned, warm or loose plug, receptacle and joints: no breaker sees those",
        "other loads on the circuit (circuit)",
        "the code edition in force here",
    ),
    refuse=_refuse,
    example_with=(
        "wire=14 AWG",
        "run_time",
        "ambient=30 C",
        "conductors=3",
    ),
)
def breaker(
    current: Annotated[
        float,
        Reading(
            "A",
            above=0,
            high=100,
            typical="8.7 A",
            text="line current of the load",
            slip_under=SLIP_A,
        ),
    ],
    breaker: Annotated[float, BREAKER],
    wire: Annotated[Wire | None, "wire of the building circuit"] = None,
    insulation_class: Annotated[float, WIRE_CLASS] = 60.0,
    termination_temperature: Annotated[float, TERMINATION] = 60.0,
    run_time: Annotated[
        float | None,
        Reading("h", low=0, high=8760, typical="1 h", text="longest time that the load runs"),
    ] = None,
    storage_water_heater: Annotated[bool | None, "it is a water heater with a tank"] = None,
    receptacle: Annotated[float | None, RECEPTACLE] = None,
    only_receptacle: Annotated[bool | None, "it is the only outlet of its circuit"] = None,
    fastened_in_place: Annotated[bool | None, "it is built in or wired in, not plugged in"] = None,
    feeds_others: Annotated[
        bool | None,
        YesNo("the circuit also feeds lights or receptacles", goes_with="fastened_in_place"),
    ] = None,
    maximum_breaker: Annotated[float | None, MAXIMUM_BREAKER] = None,
    plate_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=100, typical="10.8 A", text="amps on the appliance's plate"),
    ] = None,
    has_motor: Annotated[
        bool | None, YesNo("the appliance is driven by a motor", goes_with="plate_current")
    ] = None,
    cord: Annotated[Wire | None, "wire of the flexible cord"] = None,
    cord_conductors: Annotated[
        int | None,
        Count("wires of the cord that carry current", low=2, high=3, goes_with="cord"),
    ] = None,
    ambient: Annotated[float | None, AROUND_WIRE] = None,
    conductors: Annotated[int | None, TOGETHER] = None,
) -> Iterator[Item]:
    """Do breaker, building wire, receptacle and cord carry this load?

    Breaker and wire before correction carry 125 % of a load of 3 hours or more (NEC 210.19,
    210.20) and of a storage water heater (422.13); the wire after correction the load, by the
    termination's column (110.14(C)); small wire has a largest breaker (240.4(D)). A plug-in load
    takes at most 80 % of a shared 15 or 20 A circuit (210.23(A)(1)) and the amps of Table
    210.21(B)(2), what is fastened in place half of it (210.23(A)(2)); cords: 400.5(A)(1), 30 C.
    The plate's largest breaker rules; a single appliance without one and without a motor has
    that of 422.11(E). Names the circuit that a load needs, never a larger breaker on its wire.

    Inputs: currents and ratings in A, wire and cord, run_time in h, temperatures in C, counts.
    What turns on an input left out can't be told. Yields the share of the breaker, sizes, the
    weakest link first and one criterion a limit. Source: tables nec-ampacity, nec-ambient,
    nec-conductor-count, nec-small-conductors, standard-ratings, nec-receptacles, cords.
    """
    factor = _factor(run_time, storage_water_heater)
    place = Place(int(insulation_class), int(termination_temperature), ambient, conductors)
    plugged = _plugged(fastened_in_place, receptacle is not None or cord is not None)
    alone = _alone(only_receptacle, feeds_others)
    yield figure(
        "share of the breaker",
        100 * current / breaker,
        "%",
        source=_INDIVIDUAL,
        working=lambda: f"100 x {put(current)} A / {put(breaker)} A",
    )
    yield from sizes(
        "breaker for a circuit of its own", current * (factor or CONTINUOUS), breaker, wire, place
    )
    yield from needed_circuit(current, factor or 1.0, breaker, wire, place)

    def links() -> Iterator[Item]:
        yield _on_breaker(current, factor, breaker, _HEATER if storage_water_heater else None)
        yield from plug_in_load(current, breaker, only_receptacle, plugged)
        if wire is not None:
            yield from building_wire(current, factor, breaker, wire, place)
        if receptacle is not None:
            yield from receptacle_load(current, breaker, receptacle, only_receptacle)
        if fastened_in_place:
            yield from fastened_load(current, breaker, feeds_others, "load fastened in place")
        if cord is not None:
            yield cord_load(current, cord, cord_conductors, ambient)

    yield from weakest_first(links())
    if maximum_breaker is not None:
        yield against_plate(breaker, maximum_breaker)
    elif plate_current is not None and not has_motor:
        yield from _single_appliance(breaker, plate_current, has_motor, alone)


def _factor(run_time: float | None, storage_water_heater: bool | None) -> float | None:
    """Return 1.25 for what counts as continuous, 1 for what does not, None where unknown."""
    if storage_water_heater:
        return CONTINUOUS
    if run_time is None:
        return None
    return 1.0 if run_time < LONG_RUN_H else CONTINUOUS


def _plugged(fastened: bool | None, has_plug: bool) -> bool | None:
    return not fastened if fastened is not None else has_plug or None


def _alone(only: bool | None, feeds_others: bool | None) -> bool | None:
    return only if only is not None or feeds_others is None else not feeds_others


def _on_breaker(
    current: float, factor: float | None, breaker: float, source: Source | None
) -> Item:
    """Judge the load on the breaker; how long it runs matters between 80 and 100 %."""
    name = "load on the breaker"
    if (
        factor is None
        and at_or_below(current, breaker)
        and not at_or_below(current * CONTINUOUS, breaker)
    ):
        return cannot_tell(
            name,
            f"{current:.4g} A on {breaker:g} A: from 3 h on the load counts 125 %, and it was not "
            "said how long it runs",
            measure="find out how long it runs at most",
            needs=("run_time",),
            source=_CONTINUOUS,
        )
    counted = current * (factor or (CONTINUOUS if at_or_below(current, breaker) else 1.0))
    return at_most(
        name,
        counted,
        breaker,
        "A",
        source=source or _CONTINUOUS,
        says="a load of 3 h or more counts 125 %" if counted > current else "",
        action="put the load on a circuit that carries it; never fit a larger breaker",
    )


def _single_appliance(
    breaker: float, plate_current: float, has_motor: bool | None, alone: bool | None
) -> Iterator[Item]:
    """Judge the breaker of a single appliance without a motor and without a marked maximum."""
    if alone is False:
        return
    name, limit = "breaker for this appliance", SMALL_APPLIANCE_BREAKER_A
    if not at_or_below(plate_current, SMALL_APPLIANCE_A):
        limit = rating_at_least(APPLIANCE_SHARE * plate_current)
    needs = [n for n, v in (("has_motor", has_motor), ("only_receptacle", alone)) if v is None]
    if needs and not at_or_below(breaker, limit):
        yield cannot_tell(
            name,
            f"at most {limit:g} A for a single appliance without a motor, and it was not said "
            "whether it is one",
            measure=f"read the plate; {SWITCH_OFF}",
            needs=needs,
            source=_APPLIANCE,
        )
        return
    yield at_most(name, breaker, limit, "A", source=_APPLIANCE, action=_FIT)
