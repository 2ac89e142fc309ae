"""One start to be simulated: the motor, its start device, its load and the supply."""

from __future__ import annotations

import math
from typing import NamedTuple

from .machines import MotorModel

CUT_OUT = 0.75  # share of synchronous speed at which relay or switch opens; common practice
AIR = 25.0  # C
OPEN_AT = 50.0  # times its cold resistance at which a PTC counts as open
MOST_RISE = 8.0  # natural logarithm of hot over cold ohm where a PTC rises no more: 3000
OPEN_OVER = 60.0  # or so many times the ohm of the start winding, if that comes first


class Ptc(NamedTuple):
    """A PTC start device: cold ohm, and how it heats. All but the ohm are estimates.

    3.2 to 3.5 W hold it hot on one component data sheet; from that and 125 K the cooling. The
    heat capacity is that of a third of a cubic centimetre of ceramic, and it rises tenfold every
    15 K above 120 C: both from memory, chosen so that it switches in a few tenths of a second.
    """

    cold: float
    switches_at: float = 120.0  # C
    rise: float = math.log(10) / 15  # 1/K
    heat_capacity: float = 1.0  # J/K
    cooling: float = 3.3 / 125  # W/K


class StartDevice(NamedTuple):
    """What is in series with the start winding, in F and ohm, and when it is taken out.

    `capacitor` is in circuit until the device opens, `run_capacitor` stays. A PTC beside a run
    capacitor bridges it. `cut_out` is a share of synchronous speed, None where nothing opens.
    """

    connected: bool = True
    capacitor: float | None = None
    run_capacitor: float | None = None
    resistance: float = 0.0
    ptc: Ptc | None = None
    cut_out: float | None = CUT_OUT


class ShaftLoad(NamedTuple):
    """What the shaft drives: N m and kg m2.

    `constant` at any speed, times 1 + `pulsation` sin(shaft angle) as a compressor's; `quadratic`
    at synchronous speed, rising with its square. `locked` holds the rotor.
    """

    inertia: float
    constant: float = 0.0
    quadratic: float = 0.0
    pulsation: float = 0.0
    locked: bool = False


class StartSupply(NamedTuple):
    """The supply: open-circuit V rms, ohm up to the motor, closing angle in degrees after zero."""

    voltage: float
    resistance: float = 0.0
    closing_angle: float = 0.0


class SimulatedStart(NamedTuple):
    """One start: the machine, its start device, load and supply."""

    machine: MotorModel
    device: StartDevice
    load: ShaftLoad
    supply: StartSupply
