"""What is known of a motor that nobody has taken apart."""

from __future__ import annotations

from typing import NamedTuple


class MotorPlate(NamedTuple):
    """What a nameplate and an ohmmeter say of a motor, in V, Hz, A, W and ohm.

    `slip` is that of the speed on the plate, None where none stands there.
    """

    voltage: float
    frequency: float
    poles: int
    locked_rotor_current: float
    rated_load_current: float
    power: float
    main_resistance: float
    start_resistance: float | None
    slip: float | None = None


class Series(NamedTuple):
    """What is in series with the start winding in ohm, locked and running; None: it is out."""

    locked: complex | None = None
    running: complex | None = None
