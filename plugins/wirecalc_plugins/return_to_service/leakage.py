"""Leakage current of one machine, and the sum of several on one GFCI or RCD."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Problem,
    calculation,
    cannot_tell,
    caution,
)

from .leakage_inputs import (
    _LEAKS,
    SMALL_PLUG,
    Connection,
    LeakageCurrent,
    LeakageStandard,
    MachineKind,
    NameplatePower,
    NeutralStrap,
    OnGfci,
    OtherLeakage,
    RcdRating,
    SwitchedOn,
)
from .leakage_limits import LEAKAGE, UL_101, judge, limits_of, shown, without_kind
from .neutral import leakage_bond
from .residual_devices import on_devices


def _refuse(
    on_gfci: bool | None, other_leakage: list[float] | None, rcd_rating: float | None
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
    words=(
        "earth leakage; leakage current; touch current; leak current; current leak; leaks current",
        "residual current; GFCI; GFI; ground fault interrupter; GFCI trips; GFI trips",
        "trips the GFCI; RCD; RCD trips; RCBO; ELCB; RCCB; GPO; safety switch; ground fault",
        "earth fault; mA; milliamp; milliamps; leakage clamp; nuisance trip; nuisance tripping",
        "shock; shocks; tingle; tingling; electric shock; zap; bites; buzz when touched; hot case",
        "PAT; PAT test; EMI filter; washer; washing machine; dishwasher; fridge; freezer; kettle",
        "oven; cooker; water heater; trips the RCD; jolt; belt; leccy; electrocuted",
        "stray current; stray voltage; touch voltage; earth current; ground current",
        "leak to earth; differential; outdoor outlet; garage outlet; bathroom; wet floor",
        "trips as soon as plugged in; RCD tripping; GFCI tripping; filter; gives a buzz",
        "buzzes me; buzz from metal; leak; leaks; leaking; leaks to earth; leak test",
        "gfci pops; rcd pops; gfci trips when compressor starts; rcd goes; rcd goes off",
        "rcd will not reset; gfci will not reset; trips rcd when hot; trips when heating",
        "trips when wet; earth trip; main switch trips; safety switch trips; trip switch",
        "leak clamp; clamp on earth wire; clamp both wires; milliamp clamp; tingles",
        "tingle off the door; buzz off the metal; shocking; shocks me; minor shock; barefoot",
        "wet hands; static or leak; touch the sink and the",
        "PAT testing; portable appliance test; test and tag; tag test; 3760; 0701; 62638",
        "class 2 appliance; class II; double insulated; class 1 appliance; appliance limits",
        "leakage limit; leakage limits; suppressor; suppressor blew; interference suppressor",
        "mains filter; RFI filter; X2; Y capacitor; filter capacitor",
        "protective conductor current",
        "current kills; dangerous current; deadly current; how much current is dangerous",
    ),
    go_on="press the GFCI's or RCD's test button, then hand the machine back",
    cautions=("meter-01", "wat-01", "gfci-01", "flam-01"),
    not_checked=(
        "leakage at 106 % of the plate's volts, as IEC 60335-1 reads it: it grows with the volts",
        "leakage with line and neutral swapped at the plug: the higher one counts",
        "the GFCI or RCD itself: press its test button",
    ),
    refuse=_refuse,
    exercises=".leakage_exercises",
    example_with=(
        "leakage_current",
        "machine_kind=refrigerator",
        "leakage_standard=ul-101",
        "switched_on",
        "on_gfci",
        "other_leakage",
    ),
    renamed={"standard": "leakage_standard"},
)
def leakage(
    leakage_current: LeakageCurrent = None,
    machine_kind: MachineKind = None,
    leakage_standard: LeakageStandard = UL_101,
    connection: Connection = None,
    neutral_strap: NeutralStrap = None,
    switched_on: SwitchedOn = None,
    nameplate_power: NameplatePower = None,
    on_gfci: OnGfci = None,
    rcd_rating: RcdRating = None,
    other_leakage: OtherLeakage = None,
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
            yield without_kind(leakage_current, leakage_standard, switched_on)
        else:
            limits = limits_of(machine_kind, nameplate_power)
            in_scope = leakage_standard != UL_101 or connection in (None, SMALL_PLUG)
            yield from shown(limits, nameplate_power)
            yield from judge(leakage_current, limits, leakage_standard, switched_on, in_scope)
    yield caution("live-01")
    if machine_kind not in ("two-wire", "double-insulated"):
        yield caution("gnd-01")
    each = [*([] if leakage_current is None else [leakage_current]), *(other_leakage or ())]
    if each and not bonded:
        yield from on_devices(each, leakage_current is None, (on_gfci, rcd_rating, other_leakage))
