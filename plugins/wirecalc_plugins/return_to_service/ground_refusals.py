"""What contradicts itself in a ground path, and the cautions of reading one."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Caution, Problem, Wire, at_or_below

from .ground_path import least_of_cord

MOST_CORD_FT = 300.0  # longer than any cord of a machine; common practice, no source
RESOLUTION_OHM = 0.1  # of a common meter; a reading may be so much under the cord's own

REQUIRED = Caution(
    "ground-required",
    "Refrigerators, freezers, washers, dryers, dishwashers, disposals and air conditioners must "
    "be grounded, unless double insulated and so marked. A GFCI does not stand in for the ground.",
    "NEC 250.114(3), the list partly from memory; local code",
    "stop",
    "cord-connected appliance in a dwelling",
    in_a_line="ground the machine, unless marked double insulated; a GFCI is no ground",
)
LOW_VOLTAGE = Caution(
    "test-current",
    "Unplug the machine. The current comes from a low-voltage source of 12 V at most that limits "
    "it, for as long as the reading takes; never from the mains. Probes inside the clips.",
    "the source's own sheet; licensed practice",
    "stop",
    "a known current is sent through a ground path",
    PRACTICE,
    "unplug it; the test current from 12 V at most, never from the mains",
)


def refuse(
    ground_resistance: float | None,
    ground_open: bool | None,
    ground_point: str,
    lead_resistance: float | None,
    cord: Wire | None,
    cord_length: float | None,
    conductor_temperature: float,
    ground_standard: str | None,
    neutral_strap: str | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if ground_point == "wired-in" and ground_standard == "vde-0701-0702":
        yield Problem(
            "ground_standard",
            "vde-0701-0702 is given here for machines with a cord",
            "take another standard, or another ground_point",
        )
    if ground_point == "neutral-blade" and neutral_strap in ("removed", "no-strap"):
        yield Problem(
            "ground_point",
            f"neutral-blade beside neutral_strap {neutral_strap}: a four-wire machine is grounded "
            "by the pin of its plug",
            "read to plug-pin; case to neutral must be open there",
        )
    if cord_length is not None and cord_length > MOST_CORD_FT:
        yield Problem(
            "cord_length",
            f"no machine has a cord of {cord_length:g} ft",
            "check ft and m; the length is one way",
        )
        return
    if ground_resistance is None:
        return
    if ground_open:
        yield Problem(
            "ground_open",
            f"a path of {ground_resistance:g} ohm is not open",
            "give the resistance, or ground_open yes",
        )
    if lead_resistance is not None and not at_or_below(lead_resistance, ground_resistance):
        yield Problem(
            "lead_resistance",
            f"leads of {lead_resistance:g} ohm in a reading of {ground_resistance:g} ohm",
            "give the reading with the leads in it; 0 ohm if the meter was zeroed on them",
        )
    elif ground_point == "plug-pin":
        of_cord = least_of_cord(cord, cord_length, conductor_temperature)
        if ground_resistance - (lead_resistance or 0.0) + RESOLUTION_OHM < of_cord:
            yield Problem(
                "cord_length",
                f"the cord alone would have {of_cord:.3g} ohm, more than was read",
                "check ft and m and the gauge; the length is one way",
            )
