"""Motor capacitors: is it weak, and how long does it take to discharge."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Problem,
    calculation,
    caution,
    figure,
    put,
)

from .capacitor_inputs import (
    CapacitorCurrent,
    CapacitorDuty,
    CapacitorRating,
    CapacitorVoltage,
    Frequency,
    MarkedCapacitance,
    MarkedHigh,
    MeasuredCapacitance,
    ProbesOnCapacitor,
    Tolerance,
    ToleranceAbove,
    Voltage,
)
from .high_voltage import HIGH_V, high_voltage
from .marked_capacitance import (
    Mark,
    ReadCapacitance,
    against_mark,
    by_meter,
    range_problem,
    under_load,
)
from .under_load import UNDER_LOAD, by_load, line_volts, not_marked, not_read, stress

# Cautions of readings under load, beside blades or the pins of a compressor.
_RUNNING = ("live-01", "live-02", "meter-01", "mov-01", "pin-01", "flam-01")


def _refuse(
    capacitor_current: float | None,
    capacitor_voltage: float | None,
    measured_capacitance: float | None,
    marked_capacitance: float | None,
    marked_high: float | None,
) -> Iterator[Problem]:
    if None not in (capacitor_current, capacitor_voltage, measured_capacitance):
        yield Problem(
            "measured_capacitance",
            "amps and volts give a capacitance too: one check judges one reading of it",
            "leave one way out, and judge it in a check of its own",
        )
    yield from range_problem(marked_capacitance, marked_high)
    yield from high_voltage("capacitor_voltage", capacitor_voltage, HIGH_V)


@calculation(
    part="motor and start",
    words=(
        "cap; run cap; start cap; run capacitor; start capacitor; motor capacitor; dual cap",
        "dual run capacitor; mfd; uF; microfarad; farad; capacitance; test a capacitor; cap test",
        "measure cap; cap under load; weak cap; bad cap; blown cap; dead cap; swollen",
        "swollen cap; bulging; bulged; leaking cap; low mfd; out of tolerance; percent off",
        "amps times 2652; condenser; condenser fan; fan slow; fan will not start",
        "fan not spinning; motor slow; motor hums; hums; humming; will not start; spins by hand",
        "washing machine; AC not cooling; AC; pump; pump hums; compressor; condensor; slow motor",
        "weak motor; drum will not turn; reads low; reads high; swelled; puffed; popped cap",
        "oil leak; barely turns; turns slow; spins slow; needs a push; push start; outdoor unit",
        "blower; pool pump; garage door; gate motor; round; oval; AC fan; turbine",
        "cap value; uf off; mfd off; cap percent; cap weak; cap test under load; mfd reading; mf",
        "uF reading; reads below; marked; rated uf; cap 10 percent; motor will not start",
        "needs a spin; push to start; no start; hums no start; dual cap reading; herm; fan side",
        "capacitor meter; cap tester; how much under; cap range; 88-108; leaking capacitor",
        "capacitor bulged; capacitor smells",
        "ceiling fan; fan regulator; slow fan; fan capacitor; motor turns slow",
        "suppressor; X2 capacitor; suppression capacitor",
    ),
    go_on="refit cover and terminals, start the motor and read its amps: inrush",
    cautions=("cap-01",),
    not_checked=(
        "leakage, swelling and oil: replace a swollen part unseen",
        "that the start winding and its relay or PTC are out of the circuit",
        "a part with two sections (three terminals): read each against its own mark",
    ),
    refuse=_refuse,
    example_with=(
        *("capacitor_current", "capacitor_voltage", "frequency"),
        *("marked_capacitance", "tolerance=10 %", "capacitor_rating", "voltage"),
        "capacitor_current=2.25 A",
    ),
    exercises=".capacitor_exercises",
)
def capacitor(
    capacitor_current: CapacitorCurrent = None,
    capacitor_voltage: CapacitorVoltage = None,
    probes_on_capacitor: ProbesOnCapacitor = None,
    frequency: Frequency = None,
    measured_capacitance: MeasuredCapacitance = None,
    marked_capacitance: MarkedCapacitance = None,
    capacitor_duty: CapacitorDuty = None,
    marked_high: MarkedHigh = None,
    tolerance: Tolerance = None,
    tolerance_above: ToleranceAbove = None,
    capacitor_rating: CapacitorRating = None,
    voltage: Voltage = None,
) -> Iterator[Item]:
    """Is this capacitor weak?

    C = I / (2 pi f V): 2652.6 I/V in uF at 60 Hz, 3183.1 at 50 Hz, with the current in its own
    lead and the volts across it; or a capacitance meter's reading. It must lie within the marked
    tolerance, or the marked range of a start capacitor. Where no tolerance was read, it is good
    within the narrowest that is marked on parts of its duty (run 5 %, start 0/+20 %), bad outside
    the widest, and not to be told between; without its duty both count. Volts that equal the
    line's are suspected to be the line's. Figures and criteria have the same names both ways, so
    that a shop's rule holds for both.

    For run and start capacitors of motors; each section of a two-section part by itself; not for
    those of boards or ovens. Inputs: capacitor_current in A (to 50), volts in V, frequency
    in Hz, capacitances in uF (to 2000), duty, tolerances in %. Yields capacitance, its deviation,
    the limits, a criterion a side; with capacitor_rating also volts and amps against it. Refuses
    both ways at once, and a range the wrong way round. Source: table capacitor-tolerances.
    """
    yield caution("cap-01")
    if measured_capacitance is None or capacitor_current is not None or capacitor_voltage:
        yield from (caution(key) for key in _RUNNING)
    if capacitor_duty == "start" or marked_high is not None:
        yield caution("cap-02")
        yield caution("start-01")
    read: ReadCapacitance | None = None
    if measured_capacitance is not None:
        read = by_meter(measured_capacitance)
    elif capacitor_current is not None and capacitor_voltage is not None and frequency is not None:
        read = under_load(by_load(capacitor_current, capacitor_voltage, frequency))
        yield figure(
            "capacitance",
            read.uf,
            "uF",
            source=UNDER_LOAD,
            working=lambda: (
                f"10^6 x {put(capacitor_current)} A / (2 x pi x {put(frequency)} Hz x "
                f"{put(capacitor_voltage)} V)"
            ),
        )
    else:
        yield not_read(capacitor_current, capacitor_voltage)
    if capacitor_voltage is not None:
        yield from line_volts(capacitor_voltage, voltage, probes_on_capacitor)
    if marked_capacitance is None:
        yield not_marked()
    elif probes_on_capacitor is not False:  # by volts of something else nothing can be told
        duty = capacitor_duty or ("run" if capacitor_current is not None else None)
        mark = Mark(marked_capacitance, marked_high, tolerance, tolerance_above, duty)
        yield from against_mark(read, mark)
    if capacitor_rating is not None:
        yield from stress(
            (capacitor_current, capacitor_voltage), capacitor_rating, marked_capacitance, frequency
        )
