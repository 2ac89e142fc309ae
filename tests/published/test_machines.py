"""Single-phase machines: the revolving-field circuit against solutions by other ways.

The parameter sets are those of the textbooks named beside them (table textbook-motors); the
books' printed results are not used. Each expected value is worked out here with numpy: the main
winding alone by a nodal solution of the circuit, two windings by the two-axis equations in
phasors, a formulation that knows no forward and no backward field.
"""

from __future__ import annotations

import cmath
import math

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from wirecalc import tables
from wirecalc_plugins.start_curve import estimate, machines
from wirecalc_plugins.start_curve.machines import MotorModel, StartWinding
from wirecalc_plugins.start_curve.members import (
    Kind,
    capacitor_start,
    main_winding_alone,
    resistance_start,
)
from wirecalc_plugins.start_curve.motor_plate import MotorPlate, Series

from .records import independent, memory, practice, source

# Electric Machinery, 6th ed., example 9.2; the start winding from
# Analysis of Electric Machinery (from memory)
F2 = MotorModel(
    110, 60, 4, 2.02, 2.79, 4.12, 2.12, 66.8, 24, 13, 0.05, StartWinding(7.14, 3.22, 1.18)
)
# Electric Machinery and Transformers, example 10.2 (p. 576)
G2 = MotorModel(120, 60, 4, 2.5, 1.25, 3.75, 1.25, 65, 25, 2, 0.05)
# Introduction to Electrical Machines and Transformers, chapter 6, examples 1 and 2
M1 = MotorModel(115, 60, 4, 1.9, 2.6, 3.6, 2.6, 56, 0, 25, 0.05, StartWinding(12, 6.5, 1.6))
# Electric Machinery Fundamentals, problem 9-1
C1 = MotorModel(120, 60, 4, 2.0, 2.56, 2.8, 2.56, 60.5, 0, 51, 0.05)
# the same book, example 10.3 (p. 590): 4 uF stay in series
G3 = MotorModel(
    230, 50, 6, 34.14, 35.9, 23.25, 29.32, 248.59, 19.88, 1.9, 0.06,
    StartWinding(149.78, 1.73**2 * 35.9, 1.73),
)  # fmt: skip
MAIN_ONLY = {"F2": F2, "G2": G2, "M1": M1, "C1": C1}
G3_CAPACITOR = -1j / (2 * math.pi * 50 * 4e-6)


def nodal(branches: list[tuple[int, int, complex]], voltage: float) -> complex:
    """Solve a network with its source from node 1 to ground; return the source's current."""
    size = 1 + max(max(a, b) for a, b, _ in branches)
    y = np.zeros((size, size), dtype=complex)
    for a, b, z in branches:
        y[a, a] += 1 / z
        y[b, b] += 1 / z
        y[a, b] -= 1 / z
        y[b, a] -= 1 / z
    inner = np.linalg.solve(y[2:, 2:], -y[2:, 1] * voltage)
    return complex(y[1, 1] * voltage + y[1, 2:] @ inner)


def by_nodes(m: MotorModel, slip: float) -> complex:
    """Return the main winding's current: R1, X1, then the forward and the backward branch."""
    return nodal(
        [
            (1, 2, m.r1),
            (2, 3, 1j * m.x1),
            (3, 4, 0.5j * m.xm),
            (3, 5, 0.5j * m.x2),
            (5, 4, 0.5 * m.r2 / slip),
            (4, 0, 0.5j * m.xm),
            (4, 6, 0.5j * m.x2),
            (6, 0, 0.5 * m.r2 / (2 - slip)),
        ],
        m.voltage,
    )


def by_axes(
    m: MotorModel, slip: float, external: complex, rs: float = 0.0, ahead: complex = 0j
) -> tuple[complex, ...]:
    """Return main, start and both rotor currents, and the torque, from the two-axis equations.

    `external` is in series with the start winding, `ahead` with the main one, `rs` with both.
    """
    w = m.start
    assert w is not None
    a, turn = w.turns, 1 - slip  # speed voltages are the speed's share of the reactances
    own, rotor = w.reactance + a * a * m.xm, m.x2 + m.xm
    z = np.array(
        [
            [rs + m.r1 + ahead + 1j * (m.x1 + m.xm), rs, 1j * m.xm, 0],
            [rs, rs + w.resistance + external + 1j * own, 0, 1j * a * m.xm],
            [1j * m.xm, -turn * a * m.xm, m.r2 + 1j * rotor, -turn * rotor],
            [turn * m.xm, 1j * a * m.xm, turn * rotor, m.r2 + 1j * rotor],
        ]
    )
    im, ia, iq, i_d = np.linalg.solve(z, np.array([m.voltage, m.voltage, 0, 0]))
    omega = 2 * math.pi * m.frequency
    flux_q, flux_d = (m.xm * im + rotor * iq) / omega, (a * m.xm * ia + rotor * i_d) / omega
    torque = m.poles / 2 * (flux_q * np.conj(i_d) - flux_d * np.conj(iq)).real
    return im, ia, iq, i_d, torque


@independent("nodal solution of the same circuit, by numpy")
@pytest.mark.parametrize("name", MAIN_ONLY)
@pytest.mark.parametrize("slip", [0.02, 0.05, 0.3, 1.0])
def test_main_winding_alone_is_the_nodal_solution(name: str, slip: float) -> None:
    machine = MAIN_ONLY[name]
    found, expected = machines.main_alone(machine, machine.voltage, slip), by_nodes(machine, slip)
    assert found.main == pytest.approx(expected, rel=1e-9)
    assert found.input_power == pytest.approx(machine.voltage * expected.real)


def shaft_power(m: MotorModel, slip: float) -> float:
    """Return input less copper and rotor loss: currents of the nodal solution's rotor branches."""
    current = by_nodes(m, slip)
    lost = abs(current) ** 2 * m.r1
    for share in (slip, 2 - slip):
        branch, z = 0.5 * m.r2 / share + 0.5j * m.x2, 0.5j * m.xm
        lost += abs(current * z / (z + branch)) ** 2 * 0.5 * m.r2
    return m.voltage * current.real - lost


@independent("power balance of the nodal solution: input less copper, rotor and given losses")
@pytest.mark.parametrize("slip", [0.05, 0.3])
def test_shaft_power_is_what_the_copper_and_the_losses_leave(slip: float) -> None:
    expected = shaft_power(F2, slip) - 24 - 13
    found = machines.main_alone(F2, 110, slip)
    assert found.shaft_power == pytest.approx(expected)
    speed = (1 - slip) * 4 * math.pi * 60 / 4
    assert found.shaft_torque == pytest.approx(expected / speed)


@memory("Electric Machinery, 6th edition, example 9.2 (p. 467): 3.59 A, 0.62, 147 W")
def test_the_quarter_horse_motor_yields_what_is_recalled_of_its_example() -> None:
    found = machines.main_alone(F2, 110, 0.05)
    assert abs(found.main) == pytest.approx(3.59, rel=0.01)
    assert found.input_power / (110 * abs(found.main)) == pytest.approx(0.62, rel=0.01)
    assert found.shaft_power == pytest.approx(147, rel=0.01)


@independent("two-axis equations in phasors, by numpy")
@pytest.mark.parametrize(
    ("machine", "slip", "external"),
    [
        (G3, 0.06, G3_CAPACITOR),
        (G3, 1.0, G3_CAPACITOR),
        (F2, 1.0, 3 - 14.5j),
        (F2, 0.25, 3 - 14.5j),
        (M1, 1.0, -20j),
    ],
)
@pytest.mark.parametrize("rs", [0.0, 0.9])
def test_two_windings_are_the_two_axis_solution(
    machine: MotorModel, slip: float, external: complex, rs: float
) -> None:
    main, start, _, _, torque = by_axes(machine, slip, external, rs)
    found = machines.both_windings(machine, machine.voltage, slip, external, rs)
    assert found.main == pytest.approx(main, rel=1e-9)
    assert found.start == pytest.approx(start, rel=1e-9)
    assert found.torque == pytest.approx(torque, rel=1e-9)
    assert found.torque > 0  # the start winding's current leads: it turns forward


@independent("T = 4 a |Im||Ia| Re(Zf) sin(angle) / ws at standstill, by hand")
def test_starting_torque_is_the_textbooks_formula() -> None:
    # T = 4 a |Im||Ia| Re(Zf) sin(angle) / ws at standstill, Zf the half branch
    forward = 0.5j * 56 * (3.6 + 2.6j) / (3.6 + 58.6j)
    main = 115 / (1.9 + 2.6j + 2 * forward)
    start = 115 / (12 + 6.5j - 20j + 2 * 1.6**2 * forward)
    angle = cmath.phase(start) - cmath.phase(main)
    expected = 4 * 1.6 * abs(main) * abs(start) * forward.real * math.sin(angle) / (60 * math.pi)
    found = machines.locked_rotor(M1, 115, -20j)
    assert found.torque == pytest.approx(expected)
    assert machines.locked_rotor(M1, 115).torque == 0.0


# windings at standstill (editions as far as the copies state them): Electric Machinery, 6th ed.,
# example 9.1, p. 459; Electric Machines (theory, operation, applications), 6.1, p. 257; another
# Electric Machinery and Transformers than that above, 2nd ed., 10-1, p. 341 (4 A at -15 and 6 A at
# -40 degrees at 110 V); Basic Electrical Engineering, 17.2; Principles of Electric Machines and
# Power Electronics, 7.4; a third book named Electric Machines, 10.4
WINDINGS = {
    "EM6 9.1": (4.5 + 3.7j, 9.5 + 3.5j),
    "EM 6.1": (2 + 3.5j, 9.15 + 8.4j),
    "EMT 10-1": (cmath.rect(110 / 6, math.radians(40)), cmath.rect(110 / 4, math.radians(15))),
    "BEE 17.2": (5 + 12j, 12 + 5j),
    "PEM 7.4": (1.5 + 4j, 3 + 6j),
    "EM 10.4": (3 + 2.7j, 7 + 3j),
}


@independent("numerical maximum of |Im||Ia| sin(angle), by scipy.optimize")
@pytest.mark.parametrize("name", WINDINGS)
def test_capacitor_for_most_torque_is_where_the_torque_peaks(name: str) -> None:
    main, start = WINDINGS[name]

    def torque(reactance: float) -> float:  # |Im||Ia| sin(angle), to a constant
        return (np.conj(1 / main) / (start - 1j * reactance)).imag

    best = minimize_scalar(lambda x: -torque(x), bounds=(0.1, 200), method="bounded")
    assert machines.reactance_for_most_torque(main, start) == pytest.approx(best.x, rel=1e-4)


@independent("phase of the two currents V/Zm and V/(Za - jXc)")
@pytest.mark.parametrize("name", WINDINGS)
def test_capacitor_for_quadrature_puts_the_currents_ninety_degrees_apart(name: str) -> None:
    main, start = WINDINGS[name]
    series = start - 1j * machines.reactance_for_quadrature(main, start)
    assert machines.phase(main) - machines.phase(series) == pytest.approx(90)


@independent("C = 1/(2 pi f X), by hand: 1/(377.0 x 14.5) = 182.9 uF")
def test_capacitance_of_a_reactance() -> None:
    assert machines.capacitance(14.5, 60) * 1e6 == pytest.approx(182.9, rel=1e-3)  # 1/(2 pi f X)


@source(
    "Electric Machinery",
    "6th",
    "example 9.2, p. 467",
    seen="three copies of the problem in companion code",
)
@source(
    "Electric Machinery and Transformers",
    "edition not stated in the copies",
    "example 10.2, p. 576; example 10.3, p. 590",
    seen="two copies in companion code",
)
@source(
    "Introduction to Electrical Machines and Transformers",
    "edition not stated in the copy",
    "chapter 6, example 1, p. 111; example 2, p. 115",
    seen="one copy in companion code",
)
@source(
    "Electric Machinery Fundamentals",
    "edition not stated in the copies",
    "problem 9-1",
    seen="two copies of the statement",
)
@memory(
    "Analysis of Electric Machinery, single-phase machines: start winding 7.14 + j3.22 ohm, 1.18"
)
def test_the_tables_hold_these_machines() -> None:
    rows = {row.text("motor"): row for row in tables.load("textbook-motors").rows}
    for name, machine in {
        "capacitor-start-110V": F2,
        "split-phase-120V": G2,
        "split-phase-115V": M1,
        "quarter-hp-120V": C1,
        "capacitor-run-230V": G3,
    }.items():
        cells = rows[name].cells
        values = [v for k, v in cells.items() if k not in ("motor", "inertia_kg_m2")]
        assert values == pytest.approx(list(machine[:-1]))
    for row in tables.load("textbook-start-windings").rows:
        machine = {"c": F2, "s": M1}[row.text("motor")[0]]
        machine = G3 if row.text("stays_in") == "yes" else machine
        assert row.number("resistance_ohm") == machine.start.resistance
        assert row.number("reactance_ohm") == pytest.approx(machine.start.reactance, rel=1e-3)
        assert row.number("turns_ratio") == machine.start.turns


@independent("two-axis equations of the first machine, the capacitor put before its main winding")
@pytest.mark.parametrize("slip", [1.0, 0.3])
@pytest.mark.parametrize("external", [3 - 14.5j, 5 + 0j])
def test_exchanged_leads_are_the_main_winding_behind_the_capacitor(
    slip: float, external: complex
) -> None:
    # what was the main winding is the start winding then, and its lead turns it the other way
    main, start, _, _, torque = by_axes(F2, 2 - slip, 0j, ahead=external)
    found = machines.both_windings(machines.swapped(F2), 110, slip, external)
    assert found.main == pytest.approx(start)
    assert found.start == pytest.approx(main)
    assert found.torque == pytest.approx(-torque)


@independent("the estimate's circuit solved by nodes and by axes; the plate is invented")
@pytest.mark.parametrize(
    ("kind", "series"),
    [
        (main_winding_alone(), Series()),
        (resistance_start(), Series(locked=0j)),
        (resistance_start(), Series(locked=6.8 + 0j)),
        (capacitor_start(), Series(locked=1.4 - 14j)),
    ],
    ids=["main alone", "relay", "PTC", "capacitor"],
)
def test_each_machine_of_an_estimate_has_the_plate_that_it_was_made_from(
    kind: Kind, series: Series
) -> None:
    plate = MotorPlate(115, 60, 4, 20, 4.4, 186.4, 2.0, 7.0)
    found = estimate.machines_of(plate, kind, series)
    assert len(found) >= 3
    for machine in found:
        outside = series.locked
        alone = outside is None
        locked = by_nodes(machine, 1.0) if alone else sum(by_axes(machine, 1.0, outside or 0j)[:2])
        assert abs(locked) == pytest.approx(20, rel=2e-3)
        shaft = shaft_power(machine, machine.slip) - machine.rotational_loss
        assert shaft == pytest.approx(186.4, rel=1e-3)
        assert abs(by_nodes(machine, machine.slip)) == pytest.approx(4.4, rel=1e-3)


@practice("a capacitor in series needs a start winding to be in series with")
def test_no_start_winding_is_said() -> None:
    with pytest.raises(ValueError, match="no start winding"):
        machines.both_windings(G2, 120, 1.0)
    with pytest.raises(ValueError, match="no start winding"):
        machines.swapped(G2)
