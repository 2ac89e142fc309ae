"""How much of the time a machine runs, and what that uses."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Problem,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    not_checked,
    put,
)

from .duty_cycles import cycling, starts
from .duty_inputs import AfterRestock, Inverter, OffTimes, OnTimes, RunningPower

MUCH = 80.0  # % of the time; practice
LOOK = "look at door seals, fans, the condenser and the charge"
_NAME = "share of the time that it runs"


def _refuse(on_times: list[float], off_times: list[float]) -> Iterator[Problem]:
    if abs(len(on_times) - len(off_times)) > 1:
        yield Problem(
            "on_times",
            f"{len(on_times)} times on and {len(off_times)} off do not take turns",
            "give one time off for each time on; they may differ by one",
        )


@calculation(
    part="motor and start",
    words=(
        "duty cycle; run time; runs all the time; runs constantly; always running; never stops",
        "never shuts off; will not shut off; does not cycle; short cycling; short cycle",
        "cycles too often; on off; on off times; percent run time; cycle time; energy; kWh",
        "consumption; power use; running cost; electric bill; high bill; electricity; cost",
        "energy meter; watt meter; plug-in meter; fridge; refrigerator; freezer; not cold",
        "warm fridge; not cooling; dehumidifier; ice maker; defrost; door gasket; compressor runs",
        "watts; dead compressor; never cycles off; cycles; energy use; usage; kilowatt",
        "watt hours; how long it runs; runs too long; runs too much; off time; per day; standby",
        "thermostat stuck; frost; 24 hours; constantly; non-stop; continuously",
        "runs nonstop; never off; running too much; electricity of a fridge; kwh a day",
        "kw hour a day; kWh per day; kw hours; cost per day; cost to run; how much does it cost",
        "off for; on for; on for minutes; minutes on; minutes off; percent on; 10 on 20 off",
        "ice maker slow; no ice; defrost timer; frosted; compressor never stops; light stays on",
        "door left open; gasket",
        "cut off not happening; no cut off; does not cut off; never cuts off; will not cut out",
        "will not turn off; never turns off; will not switch off; stays on; runs on and on",
    ),
    go_on="note the share with the heat of the day, to compare next time",
    cautions=("live-02", "meter-01"),
    not_checked=(
        "whether the room is a normal one, and how often the door was opened",
        "that it cools: a share of the time proves no fault, and none of its absence",
    ),
    refuse=_refuse,
    exercises=".duty_exercises",
    example_with=(
        "on_times=18 min; 20 min",
        "off_times=22 min; 21 min",
        "running_power",
        "after_restock=no",
        "inverter=no",
    ),
)
def duty(
    on_times: OnTimes,
    off_times: OffTimes,
    running_power: RunningPower = None,
    after_restock: AfterRestock = None,
    inverter: Inverter = None,
) -> Iterator[Item]:
    """How much of the time does it run, and how much energy is that?

    For a machine with a compressor. Duty is the time on over time on and off. Over 80 % in a
    normal room is a sign of a fault, not proof: marginal; one with an inverter runs so by design.
    After a restock or a defrost it pulls down for a day and runs much: then, or where it was not
    said, it can't be told. A compressor runs and rests for minutes: where the middle one of its
    times is under 1 min, an overload or control is cycling it; under 3 min is marginal. Over
    12 starts in an hour fail, over 6 are marginal (all common practice). Energy of a day is running
    power times 24 h times the duty.

    Inputs: on_times in min (over 0 to 1440) and off_times in min (0 to 1440; 0 for never off), each
    as a list of whole times; running_power in W; after_restock; inverter. Yields duty, cycles an
    hour, energy a day and the criteria. Refuses lists that cannot have taken turns. Source: common
    practice.
    """
    on, off = math.fsum(on_times), math.fsum(off_times)
    share = 100 * on / (on + off)
    yield figure(
        "duty",
        share,
        "%",
        source=PRACTICE,
        working=lambda: f"100 x {put(on)} min / ({put(on)} min + {put(off)} min); the sums",
    )
    if off > 0:
        yield figure(
            "cycles in an hour",
            60 * len(on_times) / (on + off),
            source=PRACTICE,
            working=lambda: f"60 min x {len(on_times)} / ({put(on, 'min')} + {put(off, 'min')})",
        )
    if running_power is not None:
        yield figure(
            "energy in a day",
            running_power * 24 * share / 100_000,
            "kWh",
            source=PRACTICE,
            working=lambda: f"{put(running_power)} W x 24 h x {put(share)} % / 100 / 1000",
        )
    yield from cycling(on_times, off_times)
    yield from starts(on_times, off_times)
    if inverter:
        yield not_checked(_NAME, "a board drives it: it runs much by design")
    else:
        yield _judge(share, after_restock, inverter)


def _judge(share: float, after_restock: bool | None, inverter: bool | None) -> Item:
    if not at_or_below(share, MUCH) and after_restock is not False:
        said = "and it is pulling down" if after_restock else "and it was not said whether it was "
        said += "" if after_restock else "filled or defrosted in the last day"
        return cannot_tell(
            _NAME,
            f"{share:.4g} % is over {MUCH:g} %, {said}",
            measure="time it again a day later, with the door kept shut",
            needs=() if after_restock else ("after_restock",),
            source=PRACTICE,
        )
    if not at_or_below(share, MUCH) and inverter is None:
        return cannot_tell(
            _NAME,
            f"{share:.4g} % is over {MUCH:g} %, and an inverter machine runs so by design",
            measure="see whether a board drives its compressor (three like windings)",
            needs=("inverter",),
            source=PRACTICE,
        )
    return at_most(
        _NAME,
        share,
        MUCH,
        "%",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        behind="nothing: a share of the time is a sign, and proves no fault by itself",
        says="a sign, not proof of a fault",
        action=LOOK,
    )
