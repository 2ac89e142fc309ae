"""Strands: what a nick or a cut leaves, and the force that breaks the wire itself."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Count,
    Criterion,
    Item,
    OneOf,
    Problem,
    Source,
    Verdict,
    Wire,
    answer,
    at_most,
    calculation,
    cannot_tell,
    caution,
    extra,
    figure,
    gauge_number,
    put,
    requires,
    tables,
)
from wirecalc.trade import conductors as trade

from ..inputs import WIRE
from ..inputs_joint import CUT_STRANDS, STRANDS

STANDARDS = ("none", "ipc-a-620-class-2", "ipc-a-620-class-3", "faa-ac-43-13", "nasa-8739-4")
_DAMAGED = "nicked or cut strands"
_REMAKE = "cut back and remake it with a new terminal, every strand whole"


def _total(wire: Wire, strands: int | None) -> int | None:
    """Return how many strands there are: by the wire, one where it is solid, else as counted."""
    if wire.strands is not None:
        return wire.strands
    return strands if wire.stranded else 1


def _refuse(
    wire: Wire,
    cut_strands: int,
    nicked_strands: int,
    strands: int | None = None,
    strand_standard: str = "none",
) -> Iterator[Problem]:
    if strands is not None and wire.strands is not None and strands != wire.strands:
        yield Problem(
            "strands", f"{strands}, and {wire} has {wire.strands}", "count again, or drop one"
        )
    elif strands == 1 and wire.stranded and "stranded" not in wire.assumed:
        yield Problem("strands", f"1, and {wire} is stranded", "count the strands")
    total = _total(wire, strands)
    if total is not None and cut_strands + nicked_strands > total:
        yield Problem(
            "cut_strands",
            f"{cut_strands} cut and {nicked_strands} nicked of {total} strands",
            "count each damaged strand once",
        )


@calculation(
    part="wire and joint",
    words=(
        "nicked; nick; nicks; cut strands; broken strands; missing strands; strand broke; frayed",
        "frayed wire; fraying; damaged wire; damaged strands; damaged conductor; stripper damage",
        "stripping damage; scraped; scored; stray strands; stripper; wire stripper; strippers",
        "knife; workmanship; few strands left; lost strands; wire half cut; stripping",
        "chewed wire; IPC; stranded wire damage; hairs; strands cut; partly cut; cut through",
        "severed; wire damage; damaged by stripper; knife cut; nicked wire; nicked conductor",
        "birdcage; birdcaging; brush; strand damage",
        "lost a few strands; strands broke off; strands left; cut into the copper; cut copper",
        "nicked copper; nicked by the stripper; stripper too deep; ring cut; scratched wire",
        "how many strands; strands missing; strand broken; of 19; of 26; of 41; wire pinched",
        "crushed wire; pinched",
    ),
    go_on="lay all strands into the barrel, crimp, look at it and tug",
    cautions=("dead-01",),
    not_checked=("strands folded back or left outside of the barrel: look",),
    refuse=_refuse,
    renamed={"standard": "strand_standard"},
    example_with=(
        "wire=26x30 AWG",
        "cut_strands=1",
        "nicked_strands=1",
    ),
)
def strands(
    wire: Annotated[Wire, WIRE],
    cut_strands: Annotated[int, CUT_STRANDS],
    nicked_strands: Annotated[int, Count("strands nicked or scraped, not cut", low=0, high=5000)],
    strands: Annotated[
        int | None,
        STRANDS.but(goes_with="wire"),
        extra(
            "makers accept no damage, whatever the count; where a standard turns on it, it is asked"
        ),
    ] = None,
    strand_standard: Annotated[
        str,
        OneOf(STANDARDS, text="standard to judge by; none: the terminal makers' sheets"),
        extra("the terminal makers' rule is the strictest: no strand nicked, none cut"),
    ] = "none",
) -> Iterator[Item]:
    """Are too many strands nicked or cut?

    The inspection sheets of terminal makers accept no nicked and no missing strand, and that is
    the rule here (none). Allowances are used only where their standard is named: IPC/WHMA-A-620
    class 2 and 3 count scraped, nicked and cut strands together, FAA AC 43.13-1B counts nicked
    and broken ones apart for listed builds, NASA-STD-8739.4 accepts none.

    For stranded wire before it is crimped, not for solid wire.
    Inputs: wire; cut_strands and nicked_strands; strands, where the wire does not say how many;
    strand_standard. Yields the share of strands and the area that are left, and the gauge by which
    what is left carries current; one criterion, two for the FAA. Refuses more damaged strands than
    there are. Can't tell where a standard has no row for so many strands.
    Source: table strand-damage.
    """
    total = _total(wire, strands)
    if total is not None:
        yield from _left(wire, total, cut_strands)
    judged = list(_judge(wire, total, cut_strands, nicked_strands, strand_standard))
    yield from judged
    if any(isinstance(x, Criterion) and x.verdict is not Verdict.PASS for x in judged):
        yield caution("crimp-02")


def _left(wire: Wire, total: int, cut: int) -> Iterator[Item]:
    share = (total - cut) / total
    area = wire.area_mm2 * share
    yield figure(
        "strands left", 100 * share, "%", working=lambda: f"100 x ({total} - {cut}) / {total}"
    )
    yield figure(
        "area left", area, "mm2", working=lambda: f"{put(wire.area_mm2)} mm2 x {put(share)}"
    )
    if cut == total:
        return
    left = wire
    if cut:
        left = wire._replace(
            area_cmil=wire.area_cmil * share, gauge=None, nominal_mm2=None, strands=total - cut
        )
    gauge = trade.counted_gauge(left)
    yield answer("carries current as", f"{gauge} AWG" if gauge else "thinner than 40 AWG")


def _judge(wire: Wire, total: int | None, cut: int, nicked: int, standard: str) -> Iterator[Item]:
    row, why = _row(wire, total, standard)
    if row is None:
        yield cannot_tell(
            _DAMAGED,
            why,
            measure="count the strands" if total is None else "go by the terminal maker's sheet",
            needs=("strands",) if total is None else (),
        )
        return
    if standard != "none":
        yield answer(
            "whose allowance",
            f"{row.source.title}, {row.source.where}",
            because=[row.note] if row.note else [],
            against=["the sheets of terminal makers accept none"],
        )
    if row.cells["max_nicked"] is not None:
        yield _at_most("nicked strands", nicked, row.number("max_nicked"), row.source)
        yield _at_most("cut strands", cut, row.number("max_broken"), row.source)
    elif row.cells["max_damaged"] is not None:
        yield _at_most(_DAMAGED, cut + nicked, row.number("max_damaged"), row.source)
    elif row.cells["max_percent"] is not None:
        most = math.floor(row.number("max_percent") * (total or 0) / 100)
        yield _at_most(_DAMAGED, cut + nicked, most, row.source)
    elif cut + nicked:
        yield _solid(cut, row)
    else:
        yield _at_most(_DAMAGED, 0, 0, row.source)


def _solid(cut: int, row: tables.Row) -> Item:
    if cut:
        return requires(
            _DAMAGED, False, says="the solid wire is cut", source=row.source, action=_REMAKE
        )
    return cannot_tell(
        _DAMAGED, row.note, measure="measure how deep the nick is", source=row.source
    )


def _row(wire: Wire, total: int | None, standard: str) -> tuple[tables.Row | None, str]:
    """Return the row that judges, or None and why there is none."""
    rows = list(tables.load("strand-damage").where(standard=standard))
    if standard == "none":
        return rows[0], ""
    rows = [r for r in rows if r.cells["metal"] == wire.metal]
    if total is None and any(r.cells["strands_max"] is not None for r in rows):
        return None, f"what {standard} allows turns on how many strands there are"
    for row in rows:
        if _of_count(total, row) and _of_size(wire, row):
            return row, ""
    return None, f"{standard} has no row for {wire}" + (f" of {total} strands" if total else "")


def _of_count(total: int | None, row: tables.Row) -> bool:
    """Whether so many strands are in a row; an unknown number is where the row has no end."""
    if row.cells["strands_max"] is None:
        return total is None or row.number("strands_min") <= total
    return total is not None and row.number("strands_min") <= total <= row.number("strands_max")


def _of_size(wire: Wire, row: tables.Row) -> bool:
    if not row.text("thickest_awg"):
        return True
    gauge = trade.known_gauge(wire)
    if gauge is None:
        return False
    ends = (gauge_number(row.text(c)) for c in ("thickest_awg", "thinnest_awg"))
    thick, thin = ends
    return thick <= gauge_number(gauge) <= thin


def _at_most(name: str, count: int, most: float, source: Source) -> Item:
    return at_most(name, count, most, source=source, action=_REMAKE)
