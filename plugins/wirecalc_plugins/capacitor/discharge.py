"""How long a capacitor takes to discharge through a resistor."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Problem,
    answer,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    confirmed,
    figure,
    put,
    show,
)

from .after_bleed import after, pulse, rating
from .bleed_course import LIVE_V, PROVEN_V, Bleed, course
from .bleed_resistor import loaded
from .discharge_inputs import (
    BledFor,
    CapacitorVoltage,
    LeftVoltage,
    MarkedCapacitance,
    MarkedHigh,
    PulseEnergy,
    Resistor,
    ResistorPower,
    ResistorVoltage,
    VoltsAfter,
)
from .high_voltage import HIGH_CREST_V, HIGH_V, high_voltage
from .marked_capacitance import range_problem

LOW_OHM, USUAL_OHM = 1000.0, 20_000.0
CREST_SLACK = 1.1  # how far dc volts that are left may lie above the crest, by two meters; practice

_USUAL = confirmed(
    "discharge-resistor", "makers' service texts", "20 kohm, 2 W; one says 20 to 30 ohm", copies=3
)


def _refuse(
    marked_capacitance: float,
    marked_high: float | None,
    capacitor_voltage: float | None,
    left_voltage: float | None,
    volts_after: float | None,
) -> Iterator[Problem]:
    yield from range_problem(marked_capacitance, marked_high)
    yield from high_voltage("capacitor_voltage", capacitor_voltage, HIGH_V)
    yield from high_voltage("left_voltage", left_voltage, HIGH_CREST_V)
    yield from high_voltage("volts_after", volts_after, HIGH_CREST_V)


@calculation(
    part="motor and start",
    words=(
        "bleed; bleeder; bleed resistor; bleed down; drain; discharging; discharge capacitor",
        "drain cap; charged cap; charged; stored charge; stored energy; shock from capacitor; zap",
        "high voltage capacitor; microwave; microwave capacitor; residual voltage",
        "how long to wait; wait time; short out a cap; time constant; resistor across cap",
        "inverter board; dc bus; bus capacitor; cap; run cap; start cap; flash capacitor",
        "charge left; still charged; live cap; screwdriver; short it; light bulb",
        "flyback; television; strobe; drain the cap; empty a cap; kick; jolt; lockout; lock out",
        "after the bleed; volts after; still has volts; bleed resistor rating; pulse rating",
        "tagout; LOTO; prove dead; proving dead; before I touch it; magnetron capacitor",
        "isolate; isolation; isolate and lock; isolation procedure; lock off; locked off",
        "dead test; prove it dead; proving unit; make it dead",
        "is it discharged; bleeds; capacitor still live; discharge tool; discharge resistor",
        "microwave diode; hv diode; high voltage diode; high voltage; hv cap",
        "inverter board cap; board caps; wait before touching; minutes to bleed; bleed time",
        "volts left",
        "before opening; open the machine; prove it dead; safe to open",
    ),
    go_on="wait that long, then prove under 5 V, meter across its terminals",
    cautions=("cap-01", "dead-01", "cap-02", "flam-01"),
    not_checked=(
        "a broken resistor or clip: it discharges nothing, and shows nothing",
        "volts that come back by themselves after a while: leave it shorted when proven",
    ),
    refuse=_refuse,
    example_with=("capacitor_voltage", "resistor_power"),
)
def discharge(
    marked_capacitance: MarkedCapacitance,
    resistor: Resistor,
    marked_high: MarkedHigh = None,
    capacitor_voltage: CapacitorVoltage = None,
    left_voltage: LeftVoltage = None,
    resistor_power: ResistorPower = None,
    resistor_voltage: ResistorVoltage = None,
    pulse_energy: PulseEnergy = None,
    bled_for: BledFor = None,
    volts_after: VoltsAfter = None,
) -> Iterator[Item]:
    """How long must this capacitor bleed before it is proven?

    V = V0 exp(-t / RC). It may be left with the crest of its running volts, 1.414 times the
    reading; dc volts read on it count as they are, the higher of the two is taken. A marked range
    counts with its upper end. Hold for five time constants, and until 5 V by the sum. Service texts
    use 20 kohm of 2 W; one says 20 to 30 ohm: it sparks and is marginal. Up to ten times its power
    the resistor stands a bleed (practice), else its pulse rating decides; more heat than a
    short-time overload leaves fails, and in one under 0.1 s the wire alone is heated. After it the
    meter on its terminals proves under 5 V (practice); a time shorter than to hold is marginal, and
    fewer volts than it can leave of those read before (parts 20 and 10 % under their marks) cannot
    tell.

    For motor capacitors; a high-voltage one (microwave ovens) is refused. Inputs: capacitances in
    uF (to 2000), resistor in ohm (5 to 1000000), volts in V, resistor_power in W (to 500), pulse in
    J, time in s. Yields times, energy (C V^2 / 2), first instant (V^2 / R), criteria. Source: the
    law of the decay; makers' service texts for the resistor.
    """
    size = marked_capacitance if marked_high is None else marked_high
    if capacitor_voltage is None and left_voltage is None:
        yield cannot_tell(
            "peak voltage",
            "no volts were given",
            measure="read the volts across it while it runs, or those left on it",
            needs=("capacitor_voltage", "left_voltage"),
        )
        return
    crest = 0.0 if capacitor_voltage is None else math.sqrt(2) * capacitor_voltage
    bleed = Bleed(max(crest, left_voltage or 0.0), resistor, size)
    yield answer(
        "bleed",
        f"hold the resistor across it for {show(bleed.hold, 's', toward='up', digits=3)}, then "
        f"prove under {PROVEN_V:g} V by meter",
        in_numbers=True,
    )
    yield figure(
        "peak voltage",
        bleed.start,
        "V",
        working=lambda: (
            f"sqrt(2) x {put(capacitor_voltage)} V"
            if bleed.start == crest and capacitor_voltage is not None
            else "the dc volts as read, which are the higher"
        ),
    )
    yield from course(bleed)
    if capacitor_voltage is not None and not at_or_below(LIVE_V, capacitor_voltage):
        yield cannot_tell(
            "running volts",
            f"{capacitor_voltage:.4g} V across it: in a motor's circuit it has the line's or more",
            measure="read again while it runs, on its own terminals; a slipped point?",
            source=PRACTICE,
        )
    yield from loaded(bleed, resistor_power, pulse_energy)
    yield from rating(bleed.start, resistor_voltage)
    yield from pulse(bleed.energy, pulse_energy)
    yield from after(bleed, bled_for, volts_after, left_voltage is not None)
    if left_voltage is not None and crest and not at_or_below(left_voltage, CREST_SLACK * crest):
        yield cannot_tell(
            "volts left on it",
            f"{left_voltage:.4g} V is more than the crest of its running volts, {crest:.4g} V",
            measure="read both again, on its own terminals; the higher is counted until then",
        )
    if resistor < LOW_OHM:
        yield _sparks(bleed)


def _sparks(bleed: Bleed) -> Item:
    """Advise against a resistor of a few ohm."""
    return at_least(
        "discharge resistor",
        bleed.ohm,
        USUAL_OHM,
        "ohm",
        source=_USUAL,
        origin=Origin.MAKER,
        advisory=True,
        says="one manual does say 20 to 30 ohm; it sparks and takes "
        f"{bleed.start / bleed.ohm:.3g} A in the first instant. If 20 kohm was meant, type kohm",
        action="take 20 kohm of 2 W or more",
        behind="its load and its heat: past ten times its power it cannot be told, past the "
        "heat of a short-time overload it fails",
    )
