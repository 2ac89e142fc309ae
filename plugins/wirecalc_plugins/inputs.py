"""Inputs that several calculations share: one quantity at one place, declared once."""

from __future__ import annotations

from wirecalc import Count, Nameplate, OneOf, Reading, YesNo

from .steps import CLASSES, PLATE_VOLTS, SERVICES, breakers, receptacles

SLIP_A = 0.1  # a line current below it that is typed in mA is a slip of the unit
SLIP_FT = 1.0  # a run or cord below it that is typed in mm or inches is a slip of the unit
SLIP_MOHM = 1e-6  # 1 ohm: fewer, typed in mohm, is a slip of mohm and Mohm
SLIP_S = 0.001  # a fault is cleared in a few milliseconds at the least; less is a slip
CURRENT = Reading(
    "A",
    wave="ac",
    low=0,
    high=400,
    typical="8.7 A",
    text="line current of the load",
    slip_under=SLIP_A,
)
LOAD_ON_A_RUN = CURRENT.but(typical="1.6 A", not_zero="without current a run takes no volts")
SETTLED = Reading(
    "A",
    wave="ac",
    low=0,
    high=400,
    typical="1.2 A",
    text="current once it has settled; if it never does, what it stays at",
    slip_under=SLIP_A,
)
CIRCUIT_VOLTAGE = Reading(
    "V", wave="ac", low=0, high=1000, typical="120 V", text="voltage of the circuit"
)
OVERCURRENT = Reading(
    "A",
    wave="ac",
    above=0,
    high=20_000,
    typical="180 A",
    text="current of the overload or fault, rms",
    slip_under=SLIP_A,
)
OVERCURRENT_TIME = Reading(
    "s", above=0, high=86_400, typical="0.5 s", text="how long it flows", slip_under=SLIP_S
)
WIRE = "wire that is worked on"
BREAKER = Nameplate(
    "A",
    low=1,
    high=100,
    typical="15 A",
    text="rating on the breaker handle or fuse",
    steps=breakers,
)
NAMEPLATE_VOLTAGE = Nameplate(
    "V", low=12, high=600, typical="115 V", text="volts on the plate", steps=PLATE_VOLTS
)
NAMEPLATE_POWER = Nameplate(
    "W", above=0, high=20_000, typical="2585 W", text="power of the heating elements"
)
NAMEPLATE_CURRENT = Nameplate(
    "A", above=0, high=100, typical="6.5 A", text="amps on the appliance's plate"
)
BUILDING_WIRE = "wire of the building, from the panel to the receptacle"
RUN_LENGTH = Reading(
    "ft",
    slip_under=SLIP_FT,
    above=0,
    high=2000,
    typical="60 ft",
    text="length of the building wire, one way",
    goes_with="building_wire",
)
CORD_LENGTH = Reading(
    "ft",
    slip_under=SLIP_FT,
    above=0,
    high=2000,
    typical="50 ft",
    text="length of the cord, one way",
    goes_with="cord",
)
CORD = "wire of the flexible cord"
CORD_CONDUCTORS = Count(
    "wires of the cord that carry current, without the ground and without the neutral of a dryer "
    "or range",
    low=2,
    high=3,
)
EXTENSION_CORD = "wire of the extension cord"
EXTENSION_LENGTH = Reading(
    "ft",
    slip_under=SLIP_FT,
    above=0,
    high=2000,
    typical="50 ft",
    text="length of the extension cord, one way",
    goes_with="extension_cord",
)
OTHER_CURRENT = Reading(
    "A",
    wave="ac",
    low=0,
    high=200,
    typical="6.2 A",
    text="other loads on the same circuit",
    slip_under=SLIP_A,
    goes_with="building_wire",
)
CONDUCTOR_TEMPERATURE = Reading(
    "C", low=-40, high=150, typical="75 C", text="temperature of the metal of wire and cord"
)
VOLTAGE_AT_REST = Reading(
    "V",
    wave="ac",
    low=0,
    high=700,
    typical="117.5 V",
    text="volts at the plug with nothing running",
)
VOLTAGE_RUNNING = Reading(
    "V", wave="ac", low=0, high=700, typical="117.2 V", text="volts at the plug while the load runs"
)
VOLTAGE_AT_START = Reading(
    "V", wave="ac", low=0, high=700, typical="106 V", text="lowest volts at the plug during a start"
)
ALIVE = "a dead outlet: nothing runs on 0 V"  # why these volts are not 0 in most calculations
NOMINAL_VOLTAGE = Nameplate(
    "V", low=90, high=600, typical="240 V", text="volts the service is named by", steps=SERVICES
)
RECEPTACLE = Nameplate(
    "A",
    low=5,
    high=60,
    typical="15 A",
    text="rating of the receptacle",
    steps=receptacles,
)
MAXIMUM_BREAKER = Nameplate(
    "A",
    above=0,
    high=200,
    typical="20 A",
    text="largest fuse or breaker marked on the plate",
    steps=breakers,
)

# how a building wire lies
WIRE_CLASS = Nameplate(
    "C",
    low=0,
    high=300,
    typical="60 C",
    text="insulation class of the building wire",
    steps=CLASSES,
)
TERMINATION = Nameplate(
    "C",
    low=0,
    high=300,
    typical="60 C",
    text="rating marked on the terminations of the building wire",
    steps=CLASSES,
)
AROUND_WIRE = Reading(
    "C",
    low=-40,
    high=90,
    typical="25 C",
    text="temperature around building wire or cord in the building",
)
TOGETHER = Count("current-carrying wires in the cable or raceway", low=1, high=100)
LEADS = Reading("ohm", low=0, high=2, typical="0.2 ohm", text="resistance of the test leads")
MARKED_CAPACITANCE = Nameplate("uF", above=0, high=2000, typical="30 uF", text="size marked on it")
CAPACITOR_VOLTAGE = Reading(
    "V", above=0, high=20_000, typical="214 V", text="volts across the capacitor, running"
)
PROTECTION = OneOf(
    ("class-i", "class-ii", "class-iii"),
    text="class-i: ground pin; class-ii: double square, no ground pin; class-iii: fed by "
    "extra-low volts",
)
FEEDS_OTHERS = YesNo("the circuit also feeds lights or receptacles, in use or not")
HAS_MOTOR = YesNo("the appliance is driven by a motor")
