"""Two wires or more crimped in one barrel, each pulled by itself, and what is seen of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated

from wirecalc import (
    MAKER,
    Item,
    Origin,
    Problem,
    Reading,
    SizeRange,
    Wire,
    YesNo,
    asked,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    confirmed,
    extra,
    figure,
    from_memory,
    requires,
    tables,
)
from wirecalc.trade import crimps

from ..inputs import WIRE
from ..inputs_joint import FORCE, TERMINAL, ListedFor
from .joint_ratings import listed
from .pull_inputs import TOO_STRONG_PSI

CLAMP = "clamp"
THIN_MM2 = 0.6  # from 18 AWG (0.82 mm2) the wider clearance counts, to 20 AWG (0.52) the narrow one
SOLDERED = confirmed(
    "nasa-8739-4-tinned", "NASA-STD-8739.4, crimping", "4.3.4, solder-tinned strand", 4
)
SCREWED = from_memory("iec-60335-23-9", "IEC 60335-1", "23.9, soldered ends under a clamp")
HANDBOOK = confirmed(
    "crimp-handbook", "component maker's crimp handbook", "double crimps: pull each wire alone", 1
)
_REMAKE = "cut back, and remake it with the barrel for these wires"
_PLAIN = "whether each of the wires holds in its connector"


def _refuse(
    wire: Sequence[Wire],
    force: Sequence[float] | None,
) -> Iterator[Problem]:
    if force is not None and len(force) != len(wire):
        yield Problem(
            "force",
            f"{len(force)} forces for {len(wire)} wires",
            "pull each wire by itself, and give them in the order of the wires",
        )
    for one, pulled in zip(wire, force or (), strict=False):
        most = crimps.breaking_force(one)[0] * TOO_STRONG_PSI / crimps.SOFT_COPPER_PSI[0]
        if pulled > most:
            yield Problem(
                "force", f"{pulled:g} lbf is more than {one} bears", "look at the unit: N, kgf?"
            )
            return


@calculation(
    part="wire and joint",
    words=(
        "double crimp; two wires; two wires in one terminal; two wires in a barrel; shared barrel",
        "piggyback; jumper; daisy chain; second wire pulls out; uneven pull; 2 wires one crimp",
        "tinned strands; soldered end; solder dipped; soldered wire in a screw terminal; gap",
        "two in one; two wires same crimp; double up; doubled up; solder in crimp",
        "solder then crimp; soldered then crimped; solder the crimp; solder in harness",
        "tin the strands; tinned; twist and solder; insulation gap; loop through",
        "share a terminal; share a crimp; second wire; both wires in one terminal",
    ),
    go_on="strip all wires alike, crimp once, and tug each wire by itself",
    cautions=("pull-01", "crimp-02", "crimp-03"),
    not_checked=(
        "whether the barrel takes these wires: see `splice`",
        "the lay: wires parallel and not twisted together, all seated at the stop",
        "that the maker lists this combination",
    ),
    refuse=_refuse,
    example_with=(
        "wire=18 AWG; 16 AWG",
        "force=24 lbf; 35 lbf",
        "insulation_gap",
        "barrel=16-14 AWG",
        "stamp=16-14 AWG",
        "soldered_ends=no",
    ),
)
def shared_barrel(
    wire: Annotated[list[Wire], WIRE],
    terminal: Annotated[str, TERMINAL],
    force: Annotated[
        list[float] | None,
        FORCE,
        asked("each wire is pulled by itself, in the order of the wires"),
    ] = None,
    insulation_gap: Annotated[
        float | None,
        Reading(
            "mm",
            low=0,
            high=50,
            typical="0.8 mm",
            text="gap between barrel and the insulation furthest from it",
        ),
        asked("bare wire behind a barrel touches, and insulation in it is no contact"),
    ] = None,
    barrel: Annotated[
        SizeRange | None,
        "range of the barrel, as stamped or as on the bag",
        asked("the stamp agrees with it", when="stamp"),
        extra("`splice` judges wires against it"),
    ] = None,
    stamp: Annotated[
        SizeRange | None,
        "range stamped into the terminal itself",
        extra("many carry none"),
    ] = None,
    soldered_ends: Annotated[
        bool | None,
        YesNo("an end was soldered or dipped in solder before it went in"),
        asked("solder under a crimp or a screw creeps, and it loosens"),
    ] = None,
    listed_for: ListedFor = None,
) -> Iterator[Item]:
    """Do two wires or more hold in one barrel?

    Each wire is pulled by itself and holds the minimum of its own size (pull-crimp); pulled
    together they flatter the result. A crimp maker's handbook judges a double crimp as if only its
    thinnest wire were there: that minimum is shown, and a thicker wire is asked its own. The gap
    to the insulation is at most 1.25 mm, 0.75 mm for 20 AWG and thinner (NASA-STD-8739.4). A stamp
    agrees with the bag. Strands that were soldered do not go into a crimp (NASA-STD-8739.4 4.3.4)
    nor under a screw (IEC 60335-1 23.9, from memory), where solder creeps.

    For samples that are destroyed; wires of copper, of any sizes. Inputs: wire, force in lbf and in
    the order of the wires, insulation_gap in mm. Yields the minima and a criterion a wire. Refuses
    lists of unequal length. Source: tables pull-crimp and strip-rules.
    """
    if soldered_ends is not None:
        yield requires(
            "no solder in the barrel",
            not soldered_ends,
            says="solder creeps under pressure, and the joint loosens and heats",
            source=SCREWED if terminal == CLAMP else SOLDERED,
            action="cut the soldered end off and strip it anew",
            plain="solder in a joint that is pressed or screwed",
        )
    if stamp is not None and barrel is not None:
        yield _agrees(stamp, barrel)
    if insulation_gap is not None:
        yield _gap(insulation_gap, min(w.area_mm2 for w in wire))
    if terminal != CLAMP:
        yield from listed(wire, listed_for)
    for number, one in enumerate(wire, 1):
        pulled = None if force is None else force[number - 1]
        yield from _holds(f"wire {number} by itself", one, pulled, crimps.TERMINALS[terminal])


def _agrees(stamp: SizeRange, barrel: SizeRange) -> Item:
    return requires(
        "stamp agrees with the bag",
        (stamp.low_cmil, stamp.high_cmil) == (barrel.low_cmil, barrel.high_cmil),
        says=f"{stamp} is stamped, {barrel} is on the bag",
        source=MAKER,
        origin=Origin.MAKER,
        action="the wrong bag: take terminals whose stamp is that of the wires",
        plain="whether the connector is the one for these wires",
    )


def _gap(gap: float, thinnest: float) -> Item:
    thin = tables.load("strip-rules").row(rule_id="NASA1" if thinnest < THIN_MM2 else "NASA2")
    return at_most(
        "gap to the insulation",
        gap,
        thin.number("max_mm"),
        "mm",
        source=thin.source,
        action=_REMAKE,
        plain="bare wire behind the connector",
    )


def _holds(name: str, wire: Wire, force: float | None, standard: str) -> Iterator[Item]:
    minimum = crimps.judging_minimum(wire, standard)
    limit = None if minimum is None or force is None else minimum.decides(force)
    if minimum is None or (force is not None and limit is None):
        yield cannot_tell(
            name,
            f"{standard} lists no {wire}",
            measure="take the minimum from the terminal maker's sheet",
            source=None if minimum is None else minimum.source,
            plain=_PLAIN,
        )
        return
    if minimum.above is None:
        yield figure(f"minimum of {name.split(' by')[0]}", minimum.lbf, "lbf",
                     source=minimum.source, toward="up")  # fmt: skip
    if force is None or limit is None:
        return
    scale = crimps.NEWTONS_PER_LBF if minimum.written_in == "N" else 1.0
    careful = crimps.careful_minimum(wire, standard)
    yield at_least(
        name,
        force * scale,
        limit * scale,
        minimum.written_in,
        caution=None if careful is None or careful <= limit else careful * scale,
        source=minimum.source,
        action=_REMAKE,
        plain=_PLAIN,
    )
