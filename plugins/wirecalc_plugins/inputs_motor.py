"""Inputs of motors and their starts that several calculations share."""

from __future__ import annotations

from wirecalc import Nameplate, OneOf, Reading, YesNo
from wirecalc.trade import motors, overcurrent

MOTOR_KIND = OneOf(("motor", "compressor"), text="open motor, or hermetic (sealed) compressor")
INVERTER = YesNo("a board drives its motor (inverter, variable speed)")
RATED_LOAD_CURRENT = Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate")
LOCKED_ROTOR_CURRENT = Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate")
CODE_LETTER = OneOf(
    motors.code_letters, text="locked-rotor code letter of an open motor", on_plate=True
)
HORSEPOWER = Nameplate("hp", above=0, high=10, typical="1/4 hp", text="power on the plate")
FREQUENCY = Nameplate("Hz", low=16, high=400, typical="60 Hz", text="frequency on the plate")
VOLTAGE = Reading("V", above=0, high=700, typical="117 V", text="volts at the plug")
SETTLE_TIME = Reading(
    "s",
    low=0,
    high=600,
    typical="0.4 s",
    text="time until the current settled; if it never does, until it cuts out",
)
DEVICE = OneOf(overcurrent.devices, text="standard or class of the breaker or fuse")
