"""What comes with wirecalc: where each calculation is, and what a listing says of it.

Nothing else is imported until a calculation is asked for. Part and question are those that the
calculation declares itself; loading it compares them.
"""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import Deferred, deferred, hookimpl

_PARTS = {
    "circuit": {
        "wire.ampacity:ampacity": "How much current does a published table give this wire in this use?",
        "circuit.breaker:breaker": "Do breaker, building wire, receptacle and cord carry this load?",
        "circuit.branch_circuit:circuit": "Does this branch circuit carry all that hangs on it?",
        "supply.drop:drop": "How many volts does the run take while the load runs?",
        "supply.extension:extension": "May this extension cord feed this machine?",
        "circuit.motor_circuit:motor_circuit": "Do wire and breaker of this motor or compressor keep to NEC 430 and 440?",
        "overcurrent.instant_trip:instant_trip": "Does this breaker trip at once where its mark says, on a test set?",
        "overcurrent.short_time:short_time": "How long does this wire stand this current before its insulation is damaged?",
        "supply.outlet:outlet": "Is this outlet wired right, as far as volts can tell?",
        "supply.supply:supply": "Is the supply voltage acceptable?",
        "overcurrent.trip:trip": "Does the breaker or fuse hold, may it trip, or does it trip?",
        "supply.upstream:upstream": "Is something upstream of the plug bad?",
    },
    "heat and cold": {
        "heat_and_cold.air_split:air_split": "How much does the air change in temperature across it, and what heat is that?",
        "heat_and_cold.cooling:cooling": "Is this refrigerator or freezer as cold as food must be kept?",
        "heat_and_cold.oven_swing:oven_swing": "Does this oven keep to its setting?",
        "heat_and_cold.pull_down:pull_down": "When will this refrigerator or freezer be cold, by its readings so far?",
        "heat_and_cold.water_heat:water_heat": "Does this heater put its watts into the water?",
    },
    "heating element": {
        "element.cutoff:cutoff": "May this thermal cut-off take the place of the old one?",
        "element.element:element": "Is this heating element good, and what does it heat at these volts?",
    },
    "motor and start": {
        "capacitor.capacitor:capacitor": "Is this capacitor weak?",
        "capacitor.capacitor_swap:capacitor_swap": "May this capacitor take the place of that one?",
        "supply.dip:dip": "Do the volts stay high enough while the motor starts?",
        "capacitor.discharge:discharge": "How long must this capacitor bleed before it is proven?",
        "motor.duty:duty": "How much of the time does it run, and how much energy is that?",
        "motor.inrush:inrush": "Do start and running current make sense, and does the breaker hold?",
        "motor.locked:locked": "Is the motor locked, or its overload weak?",
        "motor.overload:overload": "Is this overload good?",
        "start_curve.start_curve:start_curve": "What does the start of this motor look like on the meters?",
        "motor.restart_wait:restart_wait": "How long must it stand before the next start?",
        "motor.start_device:start_device": "Is this start device good?",
        "trace.trace:trace": "How did it start, where did it settle, and when was it on?",
        "motor.winding_heat:winding_heat": "How hot was this winding when it was switched off?",
        "motor.windings:windings": "Which pin of this motor is common, start, run, and do its windings read right?",
    },
    "reading": {
        "reading.conforms:conforms": "Will this reading decide, and how sure is it?",
    },
    "return to service": {
        "return_to_service.draw:draw": "Does it draw what its plate says, at the volts that are there?",
        "return_to_service.ground:ground": "Is the path from the case to ground good?",
        "return_to_service.insulation:insulation": "Is the insulation good between live parts and the case?",
        "return_to_service.leakage:leakage": "Does this machine leak too much, and does its GFCI hold?",
        "return_to_service.screening:screening": "Does anything show a fault to the case, where nobody could measure insulation or leakage?",
    },
    "sensor and switch": {
        "sensor.rtd:rtd": "Does this platinum sensor (RTD) have the ohms of its temperature?",
        "sensor.thermocouple:thermocouple": "Does this thermocouple have the millivolts of its temperature?",
        "sensor.thermostat:thermostat": "Does this thermostat open and close where its mark says?",
        "sensor.thermistor:thermistor": "Does this thermistor have the ohms of its temperature?",
    },
    "wire and joint": {
        "joint.choose:choose": "Which part of the stock fits these wires in this place?",
        "wire.equivalent:equivalent": "Which size of the other system may stand in for this wire?",
        "wire.gauge:gauge": "Which size is this unmarked wire?",
        "joint.crimp_height:crimp_height": "Is this crimp as high and as wide as its maker wants it?",
        "joint.heat_rating:heat_rating": "Is every part of this joint rated for the heat of the place?",
        "joint.joint_drop:joint_drop": "Is this joint heating?",
        "joint.pull:pull": "Does this crimp hold the least pull-out force of its standard?",
        "joint.pull_batch:pull_batch": "Is this batch of crimps good, and does the learner or the tool make the difference?",
        "joint.pull_tester:pull_tester": "How far do pulls of one and the same wire scatter on this tester?",
        "joint.ring:ring": "Does this ring terminal suit its stud, and what torque is published for it?",
        "joint.shared_barrel:shared_barrel": "Do two wires or more hold in one barrel?",
        "joint.sleeve:sleeve": "Does this heat-shrink sleeve fit, hold and stand the place?",
        "joint.splice:splice": "Does this barrel take this wire or these wires, and may it sit in this place?",
        "wire.strands:strands": "Are too many strands nicked or cut?",
        "joint.strip:strip": "How long must this wire be stripped, and is a stripped length right?",
        "wire.substitute:substitute": "May this wire take the place of that one?",
        "joint.tab:tab": "Is this push-on terminal good for this current on this tab?",
        "wire.wire_break:wire_break": "At what force does this wire itself break?",
        "wire.wire_ohms:wire_ohms": "How many ohms has this length of conductor, or how long or warm is it by its ohms?",
    },
}


@hookimpl
def wirecalc_calculations() -> Sequence[Deferred]:
    """Provide all bundled calculations."""
    return [
        deferred(f"wirecalc_plugins.{target}", part=part, question=question)
        for part, questions in _PARTS.items()
        for target, question in questions.items()
    ]
