"""Each reading of an outlet against what it should show, and the readings against each other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    requires,
    tables,
)

LITTLE, LITTLE_CARE = 0.05, 0.015  # of a leg's volts, neutral to ground; half of the 3 % advised
SLACK = 0.05  # of the volts: two meter errors, and drift between the readings; practice
FED = 0.9  # of a leg's volts: as far as line to ground has them, current can flow there
LOST_V, LEAST_SHARE = 2.0, 0.1  # volts lost that show where they are lost, and in the neutral

NAMES = {
    "line_neutral": "line to neutral",
    "line_ground": "line to ground",
    "neutral_ground": "neutral to ground",
    "second_line_neutral": "second line to neutral",
    "second_line_ground": "second line to ground",
    "line_line": "line to line",
    "line_neutral_loaded": "line to neutral, loaded",
    "neutral_ground_loaded": "neutral to ground, loaded",
    "other_ground_voltage": "ground contact to another ground",
}
_OPEN = "plug nothing in that needs it; have the outlet opened and mended by an electrician"
_LOOSE = "a loose or overloaded neutral, or a ground that carries current: an electrician finds it"
_LOW = "plug nothing in; breaker, fuse, GFCI, an open or loose wire: ask supply, upstream"
_HIGH = "plug nothing in: an open neutral, or another service; tell an electrician or the utility"
_LIVE = "plug nothing in, touch no machine on it: the ground contact may be live; breaker off"
PROVE = (
    "read line to ground on a low-impedance range, or with a loop tester; it trips a GFCI, and "
    "that shows the ground too"
)


def full(name: str, volts: float, nominal: float) -> Iterator[Item]:
    """Judge volts that should be those of the service, by what every plate of it allows."""
    row = tables.load("supply-ranges").row(range="plate")
    said = NAMES[name]
    for end, sense, action in (("low", at_least, _LOW), ("high", at_most, _HIGH)):
        share = row.number(end)
        yield sense(
            f"{said}, {'lower' if end == 'low' else 'upper'} limit",
            volts,
            share / 100 * nominal,
            "V",
            source=row.source,
            origin=Origin.MAKER,
            says=f"{share:g} % of {nominal:g} V",
            action=_OPEN if (end, name) == ("low", "line_ground") else action,
        )


def little(name: str, volts: float, leg: float) -> Item:
    """Judge volts that should be next to none."""
    return at_most(
        NAMES[name],
        volts,
        LITTLE * leg,
        "V",
        caution=LITTLE_CARE * leg,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says=f"5 % of {leg:g} V; half of the 3 % of the NEC's advice are {LITTLE_CARE * leg:.3g} V",
        action=_LIVE if name == "other_ground_voltage" else _LOOSE,
    )


def together(volts: Mapping[str, float], leg: float) -> Iterator[Item]:
    """Judge three volts between three contacts: none is more than the two others together.

    Where one is, the contact that the two others share floats: each of them is a phantom.
    """
    if "line_ground" in volts and "neutral_ground" in volts:
        for name, (whole, *two) in _BESIDE.items():
            yield _floats(name, volts[whole] - math.fsum(volts[n] for n in two), leg)
    if "line_line" not in volts:
        return
    of, name = "neutral", "neutral between the lines"
    if "line_neutral" not in volts:
        of, name = "ground", "ground between the lines"
    legs = volts[f"line_{of}"] + volts[f"second_line_{of}"]
    yield _floats(name, volts["line_line"] - legs, 2 * leg)


_BESIDE = {  # the volts that can't be more than the two behind it together
    "volts beside the ground": ("line_neutral", "line_ground", "neutral_ground"),
    "volts beside the neutral": ("line_ground", "line_neutral", "neutral_ground"),
    "volts beside the line": ("neutral_ground", "line_neutral", "line_ground"),
}


def _floats(name: str, over: float, of: float) -> Item:
    return at_most(
        name,
        over,
        SLACK * of,
        "V",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="more than the two others together: phantom volts of an open wire, or readings that "
        "are not of one outlet",
        action="read again on a low-impedance range; an open wire is an electrician's",
    )


def carries(proof: str | None, not_seen: str) -> Iterator[Item]:
    """Say whether current was seen to flow to the ground contact; volts alone show none."""
    name = "ground carries current"
    if proof == not_seen:
        yield cannot_tell(
            name,
            "an open ground, or one through many ohms, shows these volts too on such a meter",
            measure=PROVE,
            needs=("ground_proof",),
            source=PRACTICE,
        )
    elif proof is not None:
        yield requires(name, True, says="", source=PRACTICE, origin=Origin.PRACTICE)


def joined(lost: float, rise: float) -> Iterator[Item]:
    """Say that a neutral that loses nothing while volts are lost may be joined to ground there."""
    if at_or_below(LOST_V, lost) and not at_or_below(LEAST_SHARE * lost, rise):
        yield cannot_tell(
            "neutral and ground joined at the outlet",
            f"{lost:.3g} V are lost with the load and neutral to ground rises by {rise:.2g} V: "
            "they may be joined inside, or all of it is lost in the line or ahead of the panel",
            measure="have the outlet opened, power off: no wire or strap from neutral to ground",
            source=PRACTICE,
        )


def for_machine(protection: str | None) -> Iterator[Item]:
    """Judge an outlet without a ground by whether the machine needs one."""
    if protection is not None:
        yield requires(
            "a ground for this machine",
            protection != "class-i",
            says="the machine needs a ground, and the outlet has none",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="no adapter and no cut-off pin: an outlet with a proven ground",
        )
