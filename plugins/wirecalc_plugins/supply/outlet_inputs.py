"""The inputs of `outlet`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import OneOf, Problem, Reading, asked, extra

from ..inputs import NOMINAL_VOLTAGE, PROTECTION
from .outlet_kinds import KINDS, OUTLET_KIND, TWO_WIRE, having, where
from .supply_service import LEGS_208
from .volts_left import MOST_V

LOW_IMPEDANCE, LOOP_TESTER, GFCI_TRIP, NOT_SEEN = (
    "low-impedance",
    "loop-tester",
    "gfci-trip",
    "high-impedance",
)
PROOFS = (LOW_IMPEDANCE, LOOP_TESTER, GFCI_TRIP, NOT_SEEN)
RISE = 0.03  # share by which a supply may rise between two readings; common practice, no source
_WITH_GROUND = tuple(kind for kind, outlet in KINDS.items() if outlet.has_ground)


def _volts(text: str, typical: str, goes_with: str = "") -> Reading:
    return Reading("V", wave="ac", low=0, high=700, typical=typical, text=text, goes_with=goes_with)


OutletKind = Annotated[str, OUTLET_KIND]
LineNeutral = Annotated[
    float | None,
    _volts("line to neutral of the outlet, nothing running", "121.3 V"),
    asked("a dead, low or exchanged contact shows there", when=having("line_neutral")),
]
LineGround = Annotated[
    float | None,
    _volts("line to ground of the outlet, nothing running", "121.2 V"),
    asked("an open ground shows there", when=having("line_ground")),
]
NeutralGround = Annotated[
    float | None,
    _volts("neutral to ground of the outlet, nothing running", "0.2 V"),
    asked("exchanged wires and a loose neutral show there", when=having("neutral_ground")),
]
SecondLineNeutral = Annotated[
    float | None,
    _volts("second line to neutral of a 240 V outlet, nothing running", "120.9 V", "line_line"),
    asked("each leg has its own fuse or pole", when=having("second_line_neutral")),
]
SecondLineGround = Annotated[
    float | None,
    _volts("second line to ground of a 240 V outlet, nothing running", "120.9 V", "line_line"),
    asked("each leg has its own fuse or pole", when=having("second_line_ground")),
    extra("second line to neutral, and neutral to ground, say it", when=having("line_line")),
]
LineLine = Annotated[
    float | None,
    _volts("line to line of a 240 V outlet, nothing running", "242.2 V"),
    asked("two contacts of one leg show there", when=having("line_line")),
]
NominalVoltage = Annotated[
    float | None,
    NOMINAL_VOLTAGE.but(typical="240 V", goes_with="line_line"),
    extra("240 V are taken; where it is a 208 V service, they are too few"),
]
LineNeutralLoaded = Annotated[
    float | None,
    _volts("line to neutral of the outlet, the load running", "118.6 V"),
    asked("how much is lost goes with it", when="neutral_ground_loaded"),
    extra("volts under load are judged by supply"),
]
NeutralGroundLoaded = Annotated[
    float | None,
    _volts("neutral to ground of the outlet, the load running", "1.4 V"),
    asked("where the volts are lost goes with it", when="line_neutral_loaded"),
    extra("a loose neutral, and one joined to ground at the outlet, stay unseen without a load"),
]
GroundProof = Annotated[
    str | None,
    OneOf(
        PROOFS,
        text="how current was seen to flow from line to the ground contact (of 240-neutral: to "
        "neutral). low-impedance: read on a low-impedance range or with a lamp across; "
        "loop-tester: 1 ohm or less; gfci-trip: a tester plugged in tripped it from line to "
        "ground; high-impedance: it was not, all readings are of a high-impedance meter",
    ),
    asked("an open conductor shows any volts on a high-impedance meter", when=where(_WITH_GROUND)),
]
OtherGroundVoltage = Annotated[
    float | None,
    _volts("ground contact to a proven ground that does not come by this outlet", "0.3 V"),
    extra(
        "a ground joined to neutral inside, with line and neutral exchanged, reads right and makes "
        "every case live: unseen",
        when="line_ground",
    ),
]
Protection = Annotated[
    str | None,
    PROTECTION,
    asked("such an outlet has no ground", when=where(TWO_WIRE)),
]


def refuse(
    outlet_kind: str,
    line_neutral: float | None,
    line_ground: float | None,
    neutral_ground: float | None,
    second_line_neutral: float | None,
    second_line_ground: float | None,
    line_line: float | None,
    nominal_voltage: float | None,
    line_neutral_loaded: float | None,
    neutral_ground_loaded: float | None,
    other_ground_voltage: float | None,
) -> Iterator[Problem]:
    """Yield readings that such an outlet does not have, that no house has, or that rise."""
    outlet = KINDS[outlet_kind]
    volts = {
        "line_neutral": line_neutral,
        "line_ground": line_ground,
        "neutral_ground": neutral_ground,
        "second_line_neutral": second_line_neutral,
        "second_line_ground": second_line_ground,
        "line_line": line_line,
        "line_neutral_loaded": line_neutral_loaded,
        "neutral_ground_loaded": neutral_ground_loaded,
        "other_ground_voltage": other_ground_voltage,
    }
    reads = outlet.reads + outlet.also
    for name, value in volts.items():
        if value is not None and name not in reads:
            would_do = f"leave it out; it has {', '.join(reads)}"
            yield Problem(name, f"an outlet {outlet_kind} has no such reading here", would_do)
        elif value is not None and value > MOST_V:
            wrong = f"{value:g} V is no line of a house"
            yield Problem(name, wrong, "check the meter's range and unit; plug nothing in")
    if nominal_voltage is not None and nominal_voltage not in LEGS_208:
        would_do = "two lines have 240 V, or 208 V of a three-phase service"
        yield Problem("nominal_voltage", f"{nominal_voltage:g} V", would_do)
    if line_neutral is None or line_neutral_loaded is None:
        return
    if line_neutral_loaded > line_neutral * (1 + RISE):
        yield Problem(
            "line_neutral_loaded",
            f"{line_neutral_loaded:g} V is over the {line_neutral:g} V before the load was on",
            "are the readings exchanged? Measure again, one right after the other",
        )
