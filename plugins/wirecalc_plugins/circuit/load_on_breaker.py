"""One load, and what else runs on its circuit, on the breaker; the breaker of one appliance."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import Item, Source, at_most, at_or_below, cannot_tell, confirmed, figure, put

from .shared_circuit import SWITCH_OFF
from .standard_ratings import rating_at_least
from .wire_place import CONTINUOUS
from .wiring_rules import on_iec_breaker

LONG_RUN_H = 3.0  # NEC article 100: a load of 3 hours or more is continuous
SMALL_APPLIANCE_A, SMALL_APPLIANCE_BREAKER_A = 13.3, 20.0  # NEC 422.11(E)(2)
APPLIANCE_SHARE = 1.5  # NEC 422.11(E)(3)
NAME = "load on the breaker"

_CONTINUOUS = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)
_APPLIANCE = confirmed("nec-422-11-e", "NEC", "422.11(E)", copies=2)
_FIT = "have an electrician fit the breaker that the appliance allows"
_ELSEWHERE = "put the load on a circuit that carries it; never fit a larger breaker"
_MOVE = "move what else hangs on it to another circuit; never fit a larger breaker"


class BreakerLoad(NamedTuple):
    """A load and what else runs beside it, in A; `factor` 1.25 from 3 hours on, None unknown."""

    amps: float
    others: float
    factor: float | None

    @property
    def total(self) -> float:
        """All that flows, in A."""
        return self.amps + self.others

    @property
    def total_factor(self) -> float | None:
        """The factor of all of it: how long the others run is not known."""
        return self.factor if not self.others or self.factor == CONTINUOUS else None

    @property
    def least(self) -> float:
        """What it counts in A at the least."""
        return self.amps * (self.factor or 1.0) + self.others

    @property
    def most(self) -> float:
        """What it counts in A at the most."""
        return self.amps * (self.factor or CONTINUOUS) + self.others * CONTINUOUS


def factor(run_time: float | None, storage_water_heater: bool | None) -> float | None:
    """Return 1.25 for what counts as continuous, 1 for what does not, None where unknown."""
    if storage_water_heater:
        return CONTINUOUS
    if run_time is None:
        return None
    return 1.0 if run_time < LONG_RUN_H else CONTINUOUS


def as_it_counts(load: BreakerLoad) -> Iterator[Item]:
    """Show what a load, and what is beside it, counts at the most, in A, where that is more."""
    own = load.factor or CONTINUOUS
    if not load.others and own == 1:
        return
    others = f" + {put(CONTINUOUS)} x {put(load.others)} A; how long the others run was not said"
    yield figure(
        "load as it counts at the most",
        load.most,
        "A",
        source=_CONTINUOUS,
        working=lambda: f"{put(own)} x {put(load.amps)} A{others if load.others else ''}",
        toward="up",
    )


def on_breaker(load: BreakerLoad, breaker: float, source: Source | None) -> Item:
    """Judge the load on the breaker in A; how long it runs matters between 80 and 100 %."""
    if at_or_below(load.least, breaker) and not at_or_below(load.most, breaker):
        whose = "how long the others run" if load.factor else "how long it runs"
        return cannot_tell(
            NAME,
            f"{load.total:.4g} A on {breaker:g} A: from 3 h on a load counts 125 %, and it was not "
            f"said {whose}",
            measure="list each load by how long it runs, in circuit"
            if load.factor
            else "find out how long it runs at most",
            needs=() if load.factor else ("run_time",),
            source=_CONTINUOUS,
        )
    counted = load.most if at_or_below(load.most, breaker) else load.least
    return at_most(
        NAME,
        counted,
        breaker,
        "A",
        source=source or _CONTINUOUS,
        says="a load of 3 h or more counts 125 %" if counted > load.total else "",
        action=_MOVE if load.others else _ELSEWHERE,
    )


def on_breaker_by_iec(load: BreakerLoad, breaker: float) -> Item:
    """Judge the load on the breaker in A by IEC rules."""
    return on_iec_breaker(NAME, load.total, breaker, _MOVE if load.others else _ELSEWHERE)


def single_appliance(
    breaker: float, nameplate_current: float, has_motor: bool | None, alone: bool | None
) -> Iterator[Item]:
    """Judge the breaker of a single appliance without a motor and without a marked maximum."""
    if alone is False or has_motor:
        return
    name, limit = "breaker for this appliance", SMALL_APPLIANCE_BREAKER_A
    if not at_or_below(nameplate_current, SMALL_APPLIANCE_A):
        limit = rating_at_least(APPLIANCE_SHARE * nameplate_current)
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
