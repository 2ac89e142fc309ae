"""Leakage current of one machine, and the sum of several on one GFCI or RCD."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    YesNo,
    asked,
    assumed,
    calculation,
    cannot_tell,
    caution,
    extra,
    may_be_absent,
    setting,
)

from .leakage_limits import (
    LEAKAGE,
    UL_101,
    judge,
    kinds,
    limits_of,
    shown,
    standards,
    without_kind,
)
from .neutral import NO_STRAP, STRAP, leakage_bond
from .residual_devices import on_devices

SLIP_MA = 0.001  # less than a leakage tester shows: typed in uA it is a slip of the unit
SMALL_PLUG = "plug"

_LEAKS = "read it with a leakage tester or a leakage clamp, everything switched on"
_NO_ZERO = (
    "a reading of exactly 0: a machine that runs leaks something; a clamp around all its wires, or "
    "one that was off, shows none",
    "clamp line and neutral together, without the ground, and read again; type less than it shows "
    "as such, <0.1 mA of a meter of tenths",
)


def _refuse(
    on_gfci: bool | None,
    other_leakage: list[float] | None,
    rcd_rating: float | None,
    **_others: object,
) -> Iterator[Problem]:
    if on_gfci is False and other_leakage and rcd_rating is None:
        yield Problem(
            "on_gfci",
            "no GFCI, and leakage of other machines on it",
            "say on_gfci yes, or leave other_leakage out",
        )
    if on_gfci and rcd_rating is not None:
        yield Problem(
            "rcd_rating",
            f"an RCD of {rcd_rating:g} mA, and a class A GFCI, which trips at 6 mA at most",
            "give the one that feeds it: on_gfci or rcd_rating",
        )


@calculation(
    part="return to service",
    cautions=("wat-01", "gfci-01", "flam-01"),
    not_checked=(
        "leakage at 106 % of the plate's volts, as IEC 60335-1 reads it: it grows with the volts",
        "leakage with line and neutral swapped at the plug: the higher one counts",
        "the GFCI or RCD itself: press its test button",
    ),
    refuse=_refuse,
    example_with=(
        "leakage_current",
        "machine_kind=refrigerator",
        "standard=ul-101",
        "switched_on",
        "on_gfci",
        "other_leakage",
    ),
)
def leakage(
    leakage_current: Annotated[
        float | None,
        Reading(
            "mA",
            low=0,
            high=50,
            typical="0.3 mA",
            text="leakage of this machine, from its case or ground wire to ground",
            past="<",
            slip_under=SLIP_MA,
            zero=_NO_ZERO,
        ),
        asked(_LEAKS),
    ] = None,
    machine_kind: Annotated[
        str | None,
        OneOf(
            kinds,
            text="two-wire: no ground pin; double-insulated: double square; with a ground pin: "
            "portable, stationary (motor), refrigerator, heater (stationary)",
        ),
        extra(
            "within the least limit of its standard it is good as any kind; else it is asked for"
        ),
    ] = None,
    standard: Annotated[
        str,
        OneOf(
            standards,
            text="standard of its region: ul-101 in North America, iec-60335-1 (new) or "
            "vde-0701-0702 (repaired) for 230 V; or the strictest of all",
        ),
        assumed("iec-60335-1", "vde-0701-0702", source=PRACTICE),
    ] = UL_101,
    connection: Annotated[
        str | None,
        OneOf(
            (SMALL_PLUG, "large-plug", "wired-in"),
            text="plug: cord and plug of up to 20 A; large-plug: of more (ranges, dryers); "
            "wired-in: none",
        ),
        asked(
            "UL 101 is of plugs up to 20 A",
            when="standard=ul-101 and machine_kind=heater",
        ),
        may_be_absent("a cord and plug of up to 20 A"),
    ] = None,
    neutral_strap: Annotated[str | None, STRAP, may_be_absent(NO_STRAP)] = None,
    switched_on: Annotated[
        bool | None,
        YesNo("switches, thermostats and relays were closed, so that all was in the reading"),
        asked("what lies behind an open one does not leak into the reading"),
    ] = None,
    nameplate_power: Annotated[
        float | None,
        Nameplate("W", above=0, high=20_000, typical="2585 W", text="power of the elements"),
        assumed("20000 W", source=PRACTICE, why="the least limit", when="machine_kind=heater"),
        setting("only elements are judged by their power"),
    ] = None,
    on_gfci: Annotated[
        bool | None, YesNo("it is fed through a class A GFCI"), may_be_absent("no GFCI feeds it")
    ] = None,
    rcd_rating: Annotated[
        float | None,
        Nameplate(
            "mA", low=5, high=500, typical="30 mA", text="rating of the RCD that feeds it (230 V)"
        ),
        may_be_absent("no RCD feeds it"),
    ] = None,
    other_leakage: Annotated[
        list[float] | None,
        Reading(
            "mA",
            low=0,
            high=50,
            typical="0.5 mA",
            text="leakage of each other machine on the same GFCI or RCD",
            past="<",
            slip_under=SLIP_MA,
            zero=_NO_ZERO,
        ),
        may_be_absent("no other machine on the same GFCI or RCD"),
    ] = None,
) -> Iterator[Item]:
    """Does this machine leak too much, and does its GFCI hold?

    The limits of UL 101, IEC 60335-1 and DIN VDE 0701-0702 stand side by side; that of its region
    is judged by, a stricter one of the same region is advice. UL 101 is of cords and plugs of up
    to 20 A. That of a stationary heater grows with its power. With parts switched off a low
    reading shows nothing. A class A GFCI trips between 4 and 6 mA, an RCD between half and all of
    its rating (practice). Leakage adds up to the plain sum at most, and on one leg to the root of
    the sum of squares at least: where only that reaches the trip it fails.

    For one whole machine that is on; not for ranges and dryers whose neutral is strapped to the
    frame (a live test with the strap lifted has no ground): their insulation is read, unplugged.
    Inputs: leakage in mA (0 to 50), kind, standard, connection, strap, nameplate_power in W (over 0
    to 20000), rcd_rating in mA (5 to 500), other_leakage in mA, yes or no of the rest. Yields
    limits, share of 4 mA, criteria. Refuses under 1 uA that is not 0: uA for mA. Source: table
    leakage-limits, UL 943.
    """
    if leakage_current is None and other_leakage is None:
        yield cannot_tell(
            LEAKAGE, "nothing was read", measure=_LEAKS, needs=("leakage_current", "other_leakage")
        )
    yield from leakage_bond(neutral_strap)
    bonded = neutral_strap in ("fitted", "lifted")
    if leakage_current is not None and not bonded:
        if machine_kind is None:
            yield without_kind(leakage_current, standard, switched_on)
        else:
            limits = limits_of(machine_kind, nameplate_power)
            in_scope = standard != UL_101 or connection in (None, SMALL_PLUG)
            yield from shown(limits, nameplate_power)
            yield from judge(leakage_current, limits, standard, switched_on, in_scope)
    yield caution("live-01")
    if machine_kind not in ("two-wire", "double-insulated"):
        yield caution("gnd-01")
    each = [*([] if leakage_current is None else [leakage_current]), *(other_leakage or ())]
    if each and not bonded:
        yield from on_devices(each, leakage_current is None, (on_gfci, rcd_rating, other_leakage))
