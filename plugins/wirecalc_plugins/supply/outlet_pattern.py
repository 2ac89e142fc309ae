"""What the three readings of an outlet look like together: the fault, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wirecalc import Caution, Item, answer, at_or_above, at_or_below, put

from .outlet_judge import LITTLE, NAMES

_RIGHT = "as it should be wired, as far as volts can tell"
_OPEN_GROUND = "an open ground: what a meter shows on it are phantom volts"
_NEUTRAL = "an open or loose neutral: phantom volts, or volts that a load takes in it"
_BOOTLEG = "ground joined to neutral inside, with line and neutral exchanged: all cases are live"
_PATTERNS: Mapping[
    tuple[str, ...], str
] = {  # line to neutral, line to ground, neutral to ground; common practice, no source
    ("full", "full", "none"): _RIGHT,
    ("full", "none", "full"): "line and neutral are exchanged",
    ("none", "full", "full"): "an open neutral with a load plugged in, or line and ground "
    "exchanged: unplug all on the circuit and read again; touch no case meanwhile",
    ("none", "none", "none"): "dead: an open line, its breaker off, or a GFCI that tripped",
    ("none", "full", "none"): "an open neutral",
    ("part", "full", "none"): _NEUTRAL,
    ("part", "full", "part"): _NEUTRAL,
    ("none", "full", "part"): _NEUTRAL,
    ("full", "none", "none"): _OPEN_GROUND,
    ("full", "part", "part"): _OPEN_GROUND,
    ("full", "part", "none"): _OPEN_GROUND,
    ("full", "none", "part"): _OPEN_GROUND,
    ("full", "full", "part"): "a loose or loaded neutral, or a ground that carries current",
    ("over", "full", "full"): "the neutral contact is on a second line",
}
_UNKNOWN = "no fault that is known by these three: read them again, one right after the other"
_PIN_LIVE = Caution(
    "outlet-live-ground",
    "STOP: the ground contact may be live, and with it the case of what is plugged in. Touch no "
    "such machine; breaker off, then an electrician.",
    "electrician",
    "stop",
    "the ground contact of an outlet may be live",
    in_a_line="the ground contact may be live: touch no machine on it, breaker off",
)


def looks_like(
    volts: Mapping[str, float], other_ground: float | None, leg: float
) -> Iterator[Item]:
    """Yield what line to neutral, line to ground and neutral to ground show together.

    Volts from the ground contact to another ground show what these three can't.
    """
    names = ("line_neutral", "line_ground", "neutral_ground")
    on_ground = other_ground is not None and not at_or_below(other_ground, LITTLE * leg)
    seen = tuple(_class(volts[name], leg) for name in names if name in volts)
    if len(seen) == len(names):
        text = _PATTERNS.get(seen, _UNKNOWN)
        yield answer(
            "what it looks like",
            _BOOTLEG if on_ground and text == _RIGHT else text,
            because=[f"{NAMES[n]} {put(volts[n], 'V')}" for n in names],
        )
    if on_ground or seen == ("none", "full", "full"):
        yield _PIN_LIVE


def _class(volts: float, leg: float) -> str:
    if at_or_below(volts, LITTLE * leg):
        return "none"
    if not at_or_above(volts, 0.9 * leg):
        return "part"
    return "full" if at_or_below(volts, 1.1 * leg) else "over"
