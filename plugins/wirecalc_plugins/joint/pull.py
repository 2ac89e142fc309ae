"""Pull tests of crimps."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Wire,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    not_checked,
    put,
)
from wirecalc.trade import crimps

from ..inputs_joint import OWN, ListedFor
from .joint_ratings import listed
from .pull_inputs import Force, PullStandard, Terminal, WireInput, refuse

_PULL = "pull-out force"
_RECALLED = {  # what is said beside a verdict by a table from memory
    "ul-310": "",
    "ul-486c": "UL 486A asks more of a terminal; half of it, from memory, is asked of a splice",
}


@calculation(
    part="wire and joint",
    words=(
        "tug; tug test; pull test; pull out; pull-out force; pull force; pulled out; pulls out",
        "crimp; crimp test; crimp strength; tensile; tensile test; came off; comes off; falls off",
        "fell off; slipped out; slips out; wire came out; terminal pulled off; loose crimp",
        "bad crimp; weak crimp; poor crimp; cold crimp; crimp quality; crimper; crimping",
        "crimping tool; crimp tool; ratchet; pull tester; force gauge; spring scale; fish scale",
        "luggage scale; newtons; pounds; retention; lug; terminal; push on terminal",
        "quick connect; QC terminal; spade terminal; butt splice; butt connector",
        "is the crimp good; crimped; yank; yank test; pull check; tug check; hold; holding force",
        "comes loose; came loose; pulled loose; grip; crimp check; crimp okay; lbf; kgf",
        "pound-force; fell out; fell out of crimp; indent; crimp failed",
        "how hard to pull; pull of; pounds to hold; lbs to hold; holds how much; minimum pull",
        "newtons for; pulled off at; came off at; slides off; slides out; hand tug; tug by hand",
        "crimp holds; crimp lbs; crimp newtons; loose in crimp; pull gauge; crimper check",
        "crimper ratchet; ratchet check; tool check; pull value; pull test value; pull strength",
        "UL 486A; 486A; 486; UL 310; IEC 60352; pull standard; min pull; minimum pull force",
    ),
    go_on="keep wire, terminal, die and force on the list; crimp on with them",
    cautions=("pull-01", "crimp-03"),
    not_checked=(
        "the one-minute hold of the UL test (a peak just above the minimum does not prove it)",
        "crimp height and the look of the crimp",
    ),
    refuse=refuse,
    renamed={"standard": "pull_standard"},
    exercises=".pull_exercises",
)
def pull(
    wire: WireInput,
    force: Force,
    terminal: Terminal,
    pull_standard: PullStandard = OWN,
    listed_for: ListedFor = None,
) -> Iterator[Item]:
    """Does this crimp hold the least pull-out force of its standard?

    The terminal's own standard judges it: ring, fork and lug UL 486A-486B, push-on UL 310, butt
    and closed-end splices UL 486C, a clamp terminal UL 486E. UL 310 and UL 486C are from memory;
    where UL 486A has the same minimum, it judges, and below UL 486A's a splice is at best
    marginal. Another standard of the same family may be named; a clamp's table never judges a
    crimp. A wire between two listed sizes passes at the larger one's minimum, fails below the
    smaller one's, and can't be told between. Solid wire needs a terminal listed for it.

    Meant for one wire in a sample of the same terminal and tool; of two wires in a barrel pull each
    by itself, the thinner one judges.

    Inputs: wire; force in lbf (0 to 7000); terminal; pull_standard; listed_for. Yields the minimum,
    the share of the wire's own breaking force (soft copper, from 31 ksi) and its criteria.
    Refuses a standard of the other family, and a force that no copper of the size bears.
    Source: tables pull-crimp and pull-clamp.
    """
    own = crimps.TERMINALS[terminal]
    judge = own if pull_standard == OWN else pull_standard
    yield from _own_strength(wire, force)
    if terminal != "clamp":
        yield from listed([wire], listed_for)
    if judge != own:
        yield not_checked(f"the standard of a {terminal} terminal, {own}", f"{judge} was named")
    named = crimps.pull_minimum(wire, judge)
    minimum = crimps.judging_minimum(wire, judge)
    seen = None if judge == crimps.CONFIRMED else crimps.pull_minimum(wire, crimps.CONFIRMED)
    if named is None or minimum is None:
        yield cannot_tell(
            _PULL,
            f"no minimum of {judge} for {wire} on a {terminal} terminal was seen",
            measure="take the minimum from the terminal maker's sheet, or name a --pull-standard",
        )
        return
    if named.above is None:
        yield _shown(f"minimum of {judge}", named)
    if seen is not None and seen.above is None and judge in _RECALLED:
        yield _shown("UL 486A minimum of the same size", seen)
    yield _judge(force, minimum, judge, crimps.careful_minimum(wire, judge))


def _shown(name: str, minimum: crimps.PullMinimum) -> Item:
    in_newtons = (minimum.lbf * crimps.NEWTONS_PER_LBF, "N")
    first, second = (minimum.lbf, "lbf"), in_newtons
    if minimum.written_in == "N":
        first, second = second, first
    return figure(name, *first, source=minimum.source, also=[second], toward="up")


def _own_strength(wire: Wire, force: float) -> Iterator[Item]:
    if wire.metal != "copper":
        return
    weakest, strongest = crimps.breaking_force(wire)
    if not at_or_below(force, strongest):
        yield cannot_tell(
            "force against the wire's own",
            f"{force:.4g} lbf, and soft copper of this size breaks at {weakest:.3g} to "
            f"{strongest:.3g} lbf: newtons typed as lbf, or another gauge?",
            measure="look at the unit on the tester and at the gauge, and type what it reads",
            source=crimps.SOFT_COPPER_FROM,
        )
    yield figure(
        "share of the wire's own breaking force",
        100 * force / weakest,
        "%",
        source=crimps.SOFT_COPPER_FROM,
        working=lambda: f"100 x {put(force)} lbf / {put(weakest)} lbf; 31 ksi times its area",
    )


def _judge(force: float, minimum: crimps.PullMinimum, judge: str, careful: float | None) -> Item:
    """Judge in the unit that the source is written in; below `careful` it is marginal."""
    scale = crimps.NEWTONS_PER_LBF if minimum.written_in == "N" else 1.0
    limit = minimum.decides(force)
    if limit is None:
        return cannot_tell(
            _PULL,
            f"{judge} lists no such size: {minimum.lbf:.4g} lbf for the next thinner wire, "
            f"{minimum.above:.4g} lbf for the next thicker one",
            measure="take the minimum from the terminal maker's sheet",
            source=minimum.source,
        )
    return at_least(
        _PULL,
        force * scale,
        limit * scale,
        minimum.written_in,
        caution=None if careful is None or careful <= limit else careful * scale,
        source=minimum.source,
        says=_RECALLED.get(judge, minimum.note),
        action="cut back and remake it with the right die, then pull another sample",
    )
