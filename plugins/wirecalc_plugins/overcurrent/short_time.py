"""A wire in an overcurrent: how long until its insulation is damaged, and until copper melts."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Problem,
    Wire,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    figure,
    put,
    show,
)
from wirecalc.trade.conductors import area_working

from .adiabatic import WEAKEST, HeatedWire, formula_source, insulation_of
from .short_time_inputs import (
    CutStrands,
    Insulation,
    Overcurrent,
    OvercurrentTime,
    Strands,
    TemperatureBefore,
    WireInput,
)
from .wire_times import ADIABATIC_S, times

_THICKER = "a thicker wire, or a breaker that opens sooner; test the insulation after a fault"
_NAME = "time to the limit of the insulation"


def _total(wire: Wire, strands: int | None) -> int | None:
    return strands if wire.strands is None else wire.strands


def _refuse(
    wire: Wire,
    overcurrent: float,
    overcurrent_time: float | None,
    insulation: str,
    temperature_before: float | None,
    cut_strands: int | None,
    strands: int | None,
) -> Iterator[Problem]:
    if strands is not None and wire.strands is not None and strands != wire.strands:
        yield Problem(
            "strands", f"{strands}, and {wire} has {wire.strands}", "count again, or drop one"
        )
    if strands is not None and (wire.strands or strands) == strands:
        yield from _build(wire, strands)
    total = _total(wire, strands)
    if cut_strands and total is None:  # none of them cut is none of any number
        yield Problem(
            "cut_strands",
            f"{cut_strands} of how many? {wire} does not say",
            "give strands, or write the wire as 26x30 AWG",
        )
    elif cut_strands is not None and total is not None and cut_strands >= total:
        yield Problem("cut_strands", f"{cut_strands} of {total}", "nothing is left: count again")
    final = insulation_of(wire.metal, wire.area_mm2, insulation).final
    if temperature_before is not None and temperature_before >= final:
        yield Problem(
            "temperature_before",
            f"{temperature_before:g} C is over the limit in a fault, {final:g} C",
            "the temperature before the overcurrent is meant",
        )


def _build(wire: Wire, strands: int) -> Iterator[Problem]:
    """Refuse strands of a solid wire, and one strand of a wire that is called stranded."""
    if not wire.stranded and strands > 1:
        yield Problem("strands", f"{strands}, and {wire} has one", "a solid wire has no strands")
    elif wire.stranded and strands == 1 and "stranded" not in wire.assumed:
        yield Problem("strands", f"1, and {wire} has more", "count again, or write solid")


@calculation(
    part="circuit",
    words=(
        "short circuit; fault current; let-through energy; I2t; withstand; adiabatic",
        "prospective fault current; wire damage; cooked wire; burnt wire; burned wire",
        "scorched wire; burnt insulation; melted wire; insulation damaged by overload",
        "wire after a short; fusing current; melted insulation; wire smoked; fried wire",
        "toasted wire; charred wire; crispy wire; smoke; wire on fire; let the smoke out",
        "dead short; short; fusing; wire fusing; fuse a wire",
        "burn back; fuse wire; wire glows; wire survive; wire damage by short",
        "short circuit in wire; insulation melted in a short; wire fused; one second",
        "for seconds; overload on wire; wire takes; dead short on; smells burnt; smoke from wire",
        "flash over",
    ),
    go_on="look along the run all the same: browned or soft insulation goes",
    cautions=("brk-01", "pin-02"),
    not_checked=(
        "steady current: ask ampacity",
        "joints, terminals and what touches the wire, which may stand less",
        "the offset of the first cycles of a short circuit under 0.1 s",
    ),
    refuse=_refuse,
    renamed={"current": "overcurrent", "conductor_temperature": "temperature_before"},
    example_with=("overcurrent_time=0.1 s", "insulation=pvc-90"),
)
def short_time(
    wire: WireInput,
    overcurrent: Overcurrent,
    overcurrent_time: OvercurrentTime = None,
    insulation: Insulation = WEAKEST,
    temperature_before: TemperatureBefore = None,
    cut_strands: CutStrands = None,
    strands: Strands = None,
) -> Iterator[Item]:
    """How long does this wire stand this current before its insulation is damaged?

    t = (k x area / I)^2, all heat staying in the wire (IEC 60364-4-43): with the published k from
    full load, or from another temperature by k = sqrt(Qc (beta + 20) / rho20 x ln((beta + Tf) /
    (beta + Ti))), whose constants are from memory and reproduce every published k. ICEA P-32-382
    stands beside it: the stricter rules where both are confirmed, and past ICEA from memory is
    marginal. Over 5 s (from memory) a wire sheds heat: the time is a low bound, and more than it
    can't be told. Insulation not said: the weakest may pass it, PVC of 105 C as in appliances,
    and only the strongest may fail it.

    Meant for PVC, rubber and XLPE; not for silicone, PTFE, glass or bare wire in an appliance.

    Inputs: wire; overcurrent in A (over 0 to 20000), overcurrent_time in s (over 0 to 86400),
    insulation, temperature_before in C (-40 to 150), cut_strands of strands. Yields the times,
    the temperature, when copper melts (Onderdonk); one criterion if a time was given. Refuses as
    many cut strands as there are. Source: tables adiabatic-k and adiabatic-constants.
    """
    if wire.metal != "copper":
        yield caution("alu-01")
    if wire.metal not in ("copper", "aluminium"):
        yield cannot_tell(
            _NAME,
            f"no constants of {wire.metal} wire were seen",
            measure="take the short-time current from the maker's sheet",
        )
        return
    total = _total(wire, strands)
    share = (total - cut_strands) / total if cut_strands and total else 1.0
    area = wire.area_mm2 * share
    yield figure(
        "area",
        area,
        "mm2",
        working=lambda: (
            area_working(wire)
            if share == 1
            else f"{put(wire.area_mm2, 'mm2')} x ({total} - {cut_strands}) / {total}"
        ),
    )
    kind = insulation_of(wire.metal, wire.area_mm2, insulation)
    case = HeatedWire(wire.metal, area, overcurrent, kind, temperature_before)
    yield from times(case)
    if overcurrent_time is not None:
        reached = case.temperature_after(overcurrent_time)
        if reached is not None:
            yield figure(
                "temperature then",
                reached,
                "C",
                source=formula_source(),
                working=lambda: case.temperature_working(overcurrent_time),
            )
        yield _judge(case, overcurrent_time)


def _seconds(limit: float) -> str:
    return show(limit, "s", toward="down")


def _judge(case: HeatedWire, time: float) -> Item:
    """Judge a time in s by the limit of the insulation."""
    limit = case.limit(time)
    if not at_or_below(time, limit.seconds) and not at_or_below(limit.seconds, ADIABATIC_S):
        return cannot_tell(
            _NAME,
            f"{_seconds(limit.seconds)} if no heat is shed; over {ADIABATIC_S:g} s some is, and "
            "how much is not known",
            measure=f"ask trip how soon the breaker opens, and ampacity what it carries for good; "
            f"have it switched off within {ADIABATIC_S:g} s, or ask the wire's maker",
            source=limit.source,
        )
    if limit.care is not None and at_or_below(time, limit.seconds):
        allowed, source = limit.care
        if not at_or_below(time, allowed):
            return at_most(
                _NAME,
                time,
                allowed,
                "s",
                source=source,
                advisory=True,
                behind="the limit of IEC 60364-4-43 for the same insulation",
                says=f"ICEA P-32-382; IEC 60364 allows {_seconds(limit.seconds)}",
                action=_THICKER,
            )
    return at_most(
        _NAME,
        time,
        limit.seconds,
        "s",
        source=limit.source,
        says=f"{case.insulation.final:g} C is the limit of the insulation in a fault",
        action=_THICKER,
    )
