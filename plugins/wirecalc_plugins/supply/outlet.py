"""The outlet itself: line, neutral and ground, each reading and all of them together."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, at_or_above, calculation, caution, figure, put

from .outlet_inputs import (
    GFCI_TRIP,
    NOT_SEEN,
    GroundProof,
    LineGround,
    LineLine,
    LineNeutral,
    LineNeutralLoaded,
    NeutralGround,
    NeutralGroundLoaded,
    NominalVoltage,
    OtherGroundVoltage,
    OutletKind,
    Protection,
    SecondLineGround,
    SecondLineNeutral,
    refuse,
)
from .outlet_judge import FED, carries, for_machine, full, joined, little, together
from .outlet_kinds import KINDS
from .outlet_pattern import looks_like
from .supply_service import against_service


@calculation(
    part="circuit",
    words=(
        "outlet; receptacle; socket; wall plug; polarity; reverse polarity; reversed polarity",
        "hot and neutral swapped; hot neutral reversed; open ground; no ground; bootleg ground",
        "false ground; open neutral; loose neutral; dead outlet; three lights; outlet tester",
        "receptacle tester; phantom voltage; ghost voltage; stray voltage; hot to ground",
        "hot to neutral; neutral to ground; live to earth; live to neutral; neutral to earth",
        "open earth; two prong; two pin; 14-30; 14-50; 10-30; 6-20; 5-15; dryer outlet",
        "range outlet; stove outlet; both legs; leg to neutral; wired wrong; miswired; cheater",
        "ungrounded; earth pin live; tingle; shock from case; wall outlet; power point; schuko",
        "plug wired backwards; wired backwards; wired wrong way round; crossed wires",
        "wires swapped; live and neutral swapped; reversed; polarity wrong; N-G; N-G volts; H-N",
        "H-G; L-N; L-E; N-E; neutral ground voltage; neutral to ground volts",
        "volts between neutral and ground; volts on the ground pin; plug tester; socket tester",
        "wall point; GPO; ring of lights; both slots hot; hot slot; wide slot; wall socket wrong",
        "bad outlet; check the outlet; outlet test; 4 prong; 3 prong; open hot; no earth",
        "missing earth; missing ground; 240 outlet; leg dead; neutral amps; ungrounded outlet",
        "two slot outlet; volts to ground",
        "live left; which hole is live; farmhouse; old wiring without earth",
        "socket without earth; no earth at the socket",
    ),
    go_on="plug the machine in and read the volts while it runs: upstream",
    cautions=("live-01", "meter-01", "cord-04", "brk-01"),
    not_checked=(
        "how tight the contacts hold a plug, and whether they heat: load it, ask upstream",
        "whether its GFCI or AFCI works: ask leakage or screening",
        "a supply that has no grounded neutral (two lines of 115 or 127 V): it looks like a fault",
        "how many ohms its ground has, and whether a breaker trips by it: a loop tester says it",
        "a GFCI marked as without equipment ground: it may be lawful, and is no ground of a case",
    ),
    refuse=refuse,
    example_with=("line_neutral", "line_ground", "neutral_ground", "ground_proof"),
)
def outlet(
    outlet_kind: OutletKind,
    line_neutral: LineNeutral = None,
    line_ground: LineGround = None,
    neutral_ground: NeutralGround = None,
    second_line_neutral: SecondLineNeutral = None,
    second_line_ground: SecondLineGround = None,
    line_line: LineLine = None,
    nominal_voltage: NominalVoltage = None,
    line_neutral_loaded: LineNeutralLoaded = None,
    neutral_ground_loaded: NeutralGroundLoaded = None,
    ground_proof: GroundProof = None,
    other_ground_voltage: OtherGroundVoltage = None,
    protection: Protection = None,
) -> Iterator[Item]:
    """Is this outlet wired right, as far as volts can tell?

    Line to neutral, to ground and to line within 90 to 110 % of the service (what every plate
    allows); neutral to ground at most 5 % of a leg, marginal over 1.5 % (practice; half of the 3 %
    that the NEC advises for line and neutral together). Of the volts between three contacts none is
    more than the two others together, beyond 5 % for meters and drift; else a contact floats. A
    high-impedance meter shows any volts on an open wire: a ground passes only where current was
    seen to flow to it. With a load, 2 V or more lost and under a tenth of it between neutral and
    ground, they may be joined at the outlet: cannot tell. Line to neutral (or to line) also against
    the ranges of the service, as advice (see supply).

    For outlets of a house with a grounded neutral. Inputs: volts in V (0 to 700), read one right
    after the other at the contacts, with nothing running unless loaded; contacts of a kind that
    takes a plug both ways: line is the live one. Yields what they look like together, criteria.
    Refuses readings that such an outlet does not have, over 300 V, a rise of over 3 % with the
    load. Source: table supply-ranges, practice.
    """
    kind = KINDS[outlet_kind]
    given = {
        "line_neutral": line_neutral,
        "line_ground": line_ground,
        "neutral_ground": neutral_ground,
        "second_line_neutral": second_line_neutral,
        "second_line_ground": second_line_ground,
        "line_line": line_line,
    }
    volts = {name: v for name, v in given.items() if v is not None}
    between = nominal_voltage or kind.between
    if ground_proof == GFCI_TRIP:
        yield caution("gfci-01")
    yield from looks_like(volts, other_ground_voltage, kind.leg)
    for name, value in volts.items():
        if name == "neutral_ground":
            yield little(name, value, kind.leg)
        else:
            yield from full(name, value, between if between and name == "line_line" else kind.leg)
    if all(name in volts for name in kind.reads):
        yield from together(volts, kind.leg)
    whole = line_neutral if kind.between is None else line_line
    if whole is not None:
        yield from against_service(whole, between or kind.leg, "")
    fed = line_ground if kind.grounded else line_neutral
    if kind.has_ground and fed is not None and at_or_above(fed, FED * kind.leg):
        yield from carries(ground_proof, NOT_SEEN)
    if other_ground_voltage is not None:
        yield little("other_ground_voltage", other_ground_voltage, kind.leg)
    if not kind.has_ground:
        yield from for_machine(protection)
    if None not in (line_neutral, neutral_ground, line_neutral_loaded, neutral_ground_loaded):
        assert line_neutral is not None and neutral_ground is not None
        assert line_neutral_loaded is not None and neutral_ground_loaded is not None
        lost = (line_neutral, line_neutral_loaded, neutral_ground, neutral_ground_loaded)
        yield from _with_load(*lost, kind.leg)


def _with_load(
    line_neutral: float, loaded: float, neutral_ground: float, rises_to: float, leg: float
) -> Iterator[Item]:
    """Judge the readings with the load on, and show where volts are lost."""
    lost, rise = line_neutral - loaded, rises_to - neutral_ground
    yield figure(
        "volts lost with the load",
        lost,
        "V",
        working=lambda: f"{put(line_neutral, 'V')} - {put(loaded, 'V')}",
    )
    yield figure(
        "of it in the neutral",
        rise,
        "V",
        working=lambda: (
            f"{put(rises_to, 'V')} - {put(neutral_ground, 'V')}; what is lost ahead of "
            "the panel does not show there"
        ),
    )
    yield from full("line_neutral_loaded", loaded, leg)
    yield little("neutral_ground_loaded", rises_to, leg)
    yield from joined(lost, rise)
