"""The equations of a single-phase induction motor that starts: currents, flux, speed, heat.

Two-axis model in the stationary frame: the main winding lies on one axis, the start winding with
`a` times its effective turns on the other, a quarter of a pole pair away, and the rotor is two
equal windings seen from the main one (s: supply, m: main, a: start winding, q and d: rotor on
the axes of m and a; flux linkage L, currents i, poles/2 = p, shaft speed w):

    vt = vs - Rs (im + ia)                      Lm = (l1 + M) im + M iq
    dLm/dt = vt - R1 im                         Lq = M im + (l2 + M) iq
    dLa/dt = vt - (Ra + Rx) ia - vc             La = (la + a^2 M) ia + a M id
    dLq/dt = p w Ld - R2 iq                     Ld = a M ia + (l2 + M) id
    dLd/dt = -p w Lq - R2 id                    dvc/dt = ia / C
    T = p (Lq id - Ld iq)                       J dw/dt = T - load - friction

The form is that of Analysis of Electric Machinery, chapter on symmetrical and unsymmetrical two-
phase and single-phase machines (equations from memory; they follow from the winding axes, and the
checks compare them with the circuit of `start_curve.machines` and with a circuit simulator). Iron
loss and saturation are left out; friction and windage brake in proportion to speed; the supply has
resistance only. A contact opens at the next zero of the start winding's current. A PTC is one lump
of ceramic: its resistance is flat and rises from a switching temperature on, it heats by its own
loss and cools to the air. Once it has risen fifty-fold, or to 60 times the winding's own ohm, the
winding counts as open, and the trickle that keeps it hot is left out.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any, NamedTuple

from .start_case import AIR, MOST_RISE, OPEN_AT, OPEN_OVER, SimulatedStart

STILL = 1.0  # rad/s; below it a load torque only holds, it does not drive
BRAKE = 2000.0  # 1/s; a light rotor stops no faster than this, which widens the band above
LM, LA, LQ, LD, VC, SPEED, ANGLE, HEAT = range(8)  # the states, in this order


class Branch(NamedTuple):
    """The start branch as it is connected; for several machines each value is an array."""

    g1: Any  # currents from flux linkages on the start winding's axis
    g2: Any
    g3: Any
    closed: Any
    cold: Any
    rise: Any
    series: Any  # 1: the resistance is in series; 0: not
    leak: Any  # 1: it bridges the capacitor; 0: not
    elastance: Any  # 1/C, 0 without a capacitor


class Constants(NamedTuple):
    """What does not change during a start; for several machines each value is an array."""

    k1: Any
    k2: Any
    k3: Any
    r1: Any
    ra: Any
    r2: Any
    rs: Any
    peak: Any
    omega: Any
    phase: Any
    pairs: Any
    inertia_inverse: Any
    constant: Any
    pulsation: Any
    quadratic: Any
    viscous: Any
    switches_at: Any
    heat_inverse: Any
    cooling: Any
    still: Any


def constants(case: SimulatedStart) -> Constants:
    """Work out what the equations need of a case."""
    machine, load, supply, ptc = case.machine, case.load, case.supply, case.device.ptc
    omega = 2 * math.pi * machine.frequency
    mutual, own, rotor = (
        x / omega for x in (machine.xm, machine.x1 + machine.xm, machine.x2 + machine.xm)
    )
    determinant = own * rotor - mutual**2
    winding = machine.start
    rated = (1 - machine.slip) * machine.synchronous
    return Constants(
        k1=rotor / determinant,
        k2=mutual / determinant,
        k3=own / determinant,
        r1=machine.r1,
        ra=winding.resistance if winding else 1.0,
        r2=machine.r2,
        rs=supply.resistance,
        peak=supply.voltage * math.sqrt(2),
        omega=omega,
        phase=math.radians(supply.closing_angle),
        pairs=machine.poles / 2,
        inertia_inverse=0.0 if load.locked else 1 / load.inertia,
        constant=load.constant,
        pulsation=load.pulsation,
        quadratic=load.quadratic / machine.synchronous**2,
        viscous=machine.rotational_loss / rated**2,
        switches_at=ptc.switches_at if ptc else AIR,
        heat_inverse=1 / ptc.heat_capacity if ptc else 0.0,
        cooling=ptc.cooling if ptc else 0.0,
        still=max(STILL, load.constant / (BRAKE * load.inertia)),
    )


def branches(case: SimulatedStart) -> tuple[Branch, Branch]:
    """Return the start branch before and after the device has opened."""
    machine, device = case.machine, case.device
    omega = 2 * math.pi * machine.frequency
    rotor = (machine.x2 + machine.xm) / omega
    none = Branch(0.0, 0.0, 1 / rotor, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0)
    winding = machine.start
    if winding is None or not device.connected:
        return none, none
    own = (winding.reactance + winding.turns**2 * machine.xm) / omega
    mutual = winding.turns * machine.xm / omega
    determinant = own * rotor - mutual**2
    coils = (rotor / determinant, mutual / determinant, own / determinant, 1.0)
    run, ptc = device.run_capacitor, device.ptc
    after = none if run is None else Branch(*coils, 1.0, 0.0, 0.0, 0.0, 1 / run)
    farads = (device.capacitor or 0.0) + (run or 0.0)
    elastance = 1 / farads if farads else 0.0
    if ptc is None:
        ohm = device.resistance
        return Branch(*coils, ohm or 1.0, 0.0, float(ohm > 0), 0.0, elastance), after
    bridged = float(run is not None)
    before = Branch(*coils, ptc.cold, ptc.rise, 1.0 - bridged, bridged, elastance)
    return before, after


def slopes(
    c: Constants,
    b: Branch,
    sin: Callable[[Any], Any] = math.sin,
    tanh: Callable[[Any], Any] = math.tanh,
    exp: Callable[[Any], Any] = math.exp,
    least: Callable[[Any, Any], Any] = min,
) -> Callable[[float, Any], tuple[Any, ...]]:
    """Return the right-hand side of the model; with numpy's functions, for many machines at once.

    The PTC's resistance goes over smoothly from flat to exponential, within some 5 K. A value that
    is the number 0 for all (rise, pulsation) takes what hangs on it out of the arithmetic.
    """
    k1, k2, k3, r1, ra, r2, rs, peak, omega, phase, pairs, inverse = c[:12]
    constant, pulsation, quadratic, viscous, switches_at, heat_inverse, cooling, still = c[12:]
    g1, g2, g3, closed, cold, rise, series, leak, elastance = b
    heats, pulses = not _is_zero(rise), not _is_zero(pulsation)

    def at(t: float, y: Any) -> tuple[Any, ...]:
        lm, la, lq, ld, vc, speed, angle, heat = y
        im, iq = k1 * lm - k2 * lq, k3 * lq - k2 * lm
        ia, i_d = g1 * la - g2 * ld, g3 * ld - g2 * la
        rx, bridge, warming = cold, 0.0, 0.0
        if heats:
            over = heat - switches_at
            rx = cold * exp(least(rise * 0.5 * (over + (over * over + 25.0) ** 0.5), MOST_RISE))
            bridge = leak * vc / rx
            warming = series * rx * ia * ia + bridge * vc - cooling * (heat - AIR)
        vt = peak * sin(omega * t + phase) - rs * (im + ia)
        turning = pairs * speed
        drag = constant * tanh(speed / still)
        if pulses:
            drag = drag * (1 + pulsation * sin(angle))
        drag = drag + (quadratic * abs(speed) + viscous) * speed
        return (
            vt - r1 * im,
            closed * (vt - (ra + series * rx) * ia - vc),
            turning * ld - r2 * iq,
            -turning * lq - r2 * i_d,
            (ia - bridge) * elastance,
            inverse * (pairs * (lq * i_d - ld * iq) - drag),
            speed,
            heat_inverse * warming,
        )

    return at


def _is_zero(value: Any) -> bool:
    return isinstance(value, float) and value == 0


def open_rise(limit: float) -> float:
    """Return the rise over the cold ohm at which a PTC counts as open: 50, or less but over 2."""
    return min(OPEN_AT, max(limit, 2.0))


def opens_at(case: SimulatedStart) -> tuple[int, float] | None:
    """Return the state, and its level, at which the start device opens; None where none does."""
    device = case.device
    if case.machine.start is None or not device.connected:
        return None
    if device.ptc is not None:
        winding = case.machine.start
        hot = OPEN_OVER * (winding.resistance + winding.reactance) / device.ptc.cold
        return HEAT, device.ptc.switches_at + math.log(open_rise(hot)) / device.ptc.rise
    if device.cut_out is None:
        return None
    return SPEED, device.cut_out * case.machine.synchronous
