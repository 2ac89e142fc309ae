"""One load on its branch circuit: breaker, building wire, receptacle and cord."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain
from typing import Annotated

from wirecalc import Item, Problem, Wire, calculation, confirmed, extra, figure, put

from ..inputs import BREAKER, BUILDING_WIRE, CURRENT
from .breaker_inputs import (
    HEATER_RULE,
    Cord,
    CordConductors,
    CordType,
    FastenedInPlace,
    FeedsOthers,
    HasMotor,
    MaximumBreaker,
    NameplateCurrent,
    OnlyReceptacle,
    OtherCurrent,
    Outlet,
    RangeRating,
    RangeVoltage,
    RunTime,
    StorageWaterHeater,
)
from .building_inputs import (
    AroundWireOrCord,
    InsulationClass,
    TerminationTemperature,
    Together,
    WiringRules,
)
from .circuit_size import against_plate, needed_circuit, sizes, weakest_first
from .cord_load import GENERAL, cord_load
from .load_on_breaker import NAME, BreakerLoad, as_it_counts, factor, single_appliance
from .not_seen import WIRE_NOT_SEEN, zero_amps
from .one_load import Circuit, by_iec, by_nec
from .plate_load import RANGE, beside_plate, maybe_a_range, range_amps, range_load
from .wire_place import CONTINUOUS, WirePlace, below, place_of, too_low
from .wiring_rules import IEC, NEC

_INDIVIDUAL = confirmed("nec-210-22", "NEC", "210.22", copies=1)


def _refuse(
    insulation_class: float = 60.0,
    termination_temperature: float = 60.0,
    only_receptacle: bool | None = None,
    feeds_others: bool | None = None,
    other_current: float | None = None,
) -> Iterator[Problem]:
    yield from too_low(
        insulation_class=insulation_class, termination_temperature=termination_temperature
    )
    if only_receptacle and feeds_others:
        yield Problem(
            "feeds_others",
            "a circuit with one outlet feeds no others, and only_receptacle says that it has one",
            "say no to one of the two",
        )
    if only_receptacle and other_current:
        yield Problem(
            "other_current",
            f"{other_current:g} A of others, and only_receptacle says that there are none",
            "say no to only_receptacle, or leave the others out",
        )


@calculation(
    part="circuit",
    words=(
        "breaker size; fuse size; fuse rating; what size breaker; circuit breaker; MCB; fuse",
        "fused plug; breaker trips; keeps tripping; trips; tripping; overloaded",
        "overload on circuit; pops; 13 amp fuse; panel; consumer unit; fuse box; fusebox",
        "fused spur; spur; dedicated circuit; outlet; socket; receptacle; plug; NEMA",
        "80 percent rule; continuous load; 125 percent; amps; amperage; nameplate amps; load",
        "watts; dryer; range; cooker; oven; hob; stove; kettle; water heater; immersion; geyser",
        "shower; space heater; microwave; toaster; dishwasher; EV charger; wire gauge for heater",
        "cable size; MOP; breaker too small; breaker too big; oversized breaker",
        "undersized breaker; wattage; rated; big enough; hardwired; hard wired; RCBO; 15 amp",
        "20 amp; 30 amp; add a load; plug rating; socket rating; power cord; appliance cord",
        "cord replacement; NEMA plug; tandem breaker",
        "amps for watts; watts to amps; watts at volts; kW; kilowatt; what breaker; breaker sz",
        "what fuse; heater breaker; water heater breaker; heater on a socket; heater on a plug",
        "fuse in the plug; plug fuse; plug top; 3 amp fuse; 5 amp fuse; 13 amp plug; 16 amp plug",
        "range circuit; range cord; oven circuit; dryer circuit; dryer breaker; dryer cord",
        "amps of a heater; kettle amps; how many amps is; microwave circuit; enough for",
        "can this circuit take",
        "210.19; 210.20; NEC 210; BS 1363",
    ),
    go_on="close up, switch on, look at plug and outlet after an hour of load",
    chosen=("building_wire",),
    cautions=("brk-01", "cord-04", "live-01", "live-02", "meter-01"),
    not_checked=(
        "motor and compressor circuits (NEC 430 and 440: motor-circuit)",
        "browned, warm or loose plug, receptacle and joints: no breaker sees those",
        "the code edition in force here",
    ),
    refuse=_refuse,
    renamed={"wire": "building_wire", "plate_current": "nameplate_current"},
    example_with=(
        "building_wire=14 AWG",
        "insulation_class=60 C",
        "termination_temperature=60 C",
        "run_time",
        "only_receptacle",
        "fastened_in_place=no",
        "receptacle=15 A",
        "ambient=30 C",
        "conductors=3",
    ),
)
def breaker(
    current: Annotated[float, CURRENT],
    breaker: Annotated[float, BREAKER],
    wiring_rules: WiringRules = NEC,
    building_wire: Annotated[Wire | None, BUILDING_WIRE, extra(WIRE_NOT_SEEN)] = None,
    insulation_class: InsulationClass = 60.0,
    termination_temperature: TerminationTemperature = 60.0,
    run_time: RunTime = None,
    storage_water_heater: StorageWaterHeater = None,
    receptacle: Outlet = None,
    only_receptacle: OnlyReceptacle = None,
    other_current: OtherCurrent = None,
    fastened_in_place: FastenedInPlace = None,
    feeds_others: FeedsOthers = None,
    maximum_breaker: MaximumBreaker = None,
    nameplate_current: NameplateCurrent = None,
    has_motor: HasMotor = None,
    range_rating: RangeRating = None,
    nameplate_voltage: RangeVoltage = None,
    cord: Cord = None,
    cord_conductors: CordConductors = None,
    cord_type: CordType = GENERAL,
    ambient: AroundWireOrCord = None,
    conductors: Together = None,
) -> Iterator[Item]:
    """Do breaker, building wire, receptacle and cord carry this load?

    For appliances with cord or hard-wired, and what else is on the circuit; for a motor's own
    circuit see motor-circuit. The greater of the measured and the plate's amps counts, of a
    household range its demand (NEC Table 220.55). Breaker and wire before correction carry 125 % of
    a load of 3 hours or more (210.19, 210.20) and of a storage water heater (422.13); the wire
    after correction the load, by the termination's column (110.14(C)); small wire has a largest
    breaker (240.4(D)). On a shared 15 or 20 A circuit a plug-in load takes at most 80 % and Table
    210.21(B)(2), what is fastened in place half (210.23(A)). Cords: 400.5(A). The plate's largest
    breaker rules, else 422.11(E). By IEC rules a breaker carries its rated current without end.
    Inputs: currents and ratings in A, wire and cord, run_time in h, range_rating in kW,
    nameplate_voltage in V, temperatures in C, counts. What turns on an input left out can't be
    told. Yields the share of the breaker, sizes, the weakest link first, one criterion a limit.
    Source: tables nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors,
    standard-ratings, nec-receptacles, cords, iec-ampacity, iec-grouping, breaker-iec60898.
    """
    if current == 0:
        yield zero_amps(NAME)
        return
    place = place_of(insulation_class, termination_temperature, ambient, conductors)
    if building_wire is not None:
        yield from below(
            insulation_class=insulation_class, termination_temperature=termination_temperature
        )
    driven = False if storage_water_heater else has_motor
    amps, times = max(current, nameplate_current or 0.0), factor(run_time, storage_water_heater)
    rule = HEATER_RULE if storage_water_heater else None
    if range_rating is not None and nameplate_voltage is not None:
        yield from range_load(current, range_rating, nameplate_voltage)
        amps, times, rule = range_amps(range_rating, nameplate_voltage), 1.0, RANGE
    else:
        yield from beside_plate(current, nameplate_current, driven)
        yield from maybe_a_range(amps, breaker)
    load = BreakerLoad(amps, other_current or 0.0, times)
    plugged = _plugged(fastened_in_place, receptacle is not None or cord is not None)
    alone = _alone(only_receptacle, feeds_others, other_current)
    yield _share(load, breaker)
    circuit = Circuit(load, breaker, building_wire, place, receptacle, alone, plugged)
    if wiring_rules == IEC:
        links = by_iec(circuit)
    else:
        yield from _needed(load, breaker, building_wire, place)
        links = by_nec(circuit, rule)
    if cord is not None:
        links = chain(links, [cord_load(amps, cord, cord_conductors, ambient, cord_type)])
    yield from weakest_first(links)
    if maximum_breaker is not None:
        yield against_plate(breaker, maximum_breaker)
    elif wiring_rules == NEC and nameplate_current is not None and range_rating is None:
        yield from single_appliance(breaker, nameplate_current, driven, alone)


def _share(load: BreakerLoad, breaker: float) -> Item:
    return figure(
        "share of the breaker",
        100 * load.total / breaker,
        "%",
        source=_INDIVIDUAL,
        working=lambda: f"100 x {put(load.total)} A / {put(breaker)} A",
    )


def _needed(
    load: BreakerLoad, breaker: float, wire: Wire | None, place: WirePlace
) -> Iterator[Item]:
    """Say what carries the load, and how it counts."""
    own = load.amps * (load.factor or CONTINUOUS)
    yield from sizes("breaker for a circuit of its own", own, breaker, wire, place)
    yield from needed_circuit(load.amps, load.factor or 1.0, breaker, wire, place)
    yield from as_it_counts(load)


def _plugged(fastened: bool | None, has_plug: bool) -> bool | None:
    return not fastened if fastened is not None else has_plug or None


def _alone(only: bool | None, feeds_others: bool | None, others: float | None) -> bool | None:
    if only is not None or feeds_others is not None:
        return only if only is not None else not feeds_others
    return False if others else None
