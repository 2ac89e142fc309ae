"""Exercises in a heating element, with the slips that are made in them."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_PLATES = {"1200 W": "120 V", "1500 W": "120 V", "2500 W": "240 V", "4500 W": "240 V"}


def _draw(luck: Luck) -> Drawn:
    power = luck.pick(list(_PLATES))
    plate = _PLATES[power]
    volts = float(plate.split()[0])
    hot = volts**2 / float(power.split()[0])
    leads = luck.pick(["0.4 ohm", "0.5 ohm", "0.6 ohm"])
    cold = hot * float(luck.pick(["0.93", "0.95", "0.97", "1.0", "1.03"]))
    given = {
        "element_resistance": f"{cold + float(leads.split()[0]):.1f} ohm",
        "lead_resistance": leads,
        "nameplate_power": power,
        "nameplate_voltage": plate,
        "element_voltage": luck.reading(round(volts * 0.91), round(volts * 0.98), "1", "V"),
    }
    return Drawn(given)


def _watts(case: Case) -> float:
    return case.figure("power at these volts")


def _of_plate(case: Case) -> float:
    return case.value("element_voltage") / case.value("nameplate_voltage")


EXERCISES = (
    Exercise(
        "A heating element marked {nameplate_power} at {nameplate_voltage} reads "
        "{element_resistance}, unplugged and with one end off; the test leads held together read "
        "{lead_resistance}. While it heats there are {element_voltage} across it. Take its ohms to "
        "be the same hot and cold.",
        "How many watts does it make of these volts?",
        _draw,
        _watts,
        "W",
        "10",
        (
            Slip(
                "lead resistance left in",
                "You left the resistance of the test leads in the ohms.",
                lambda case: case.value("element_voltage") ** 2 / case.value("element_resistance"),
            ),
            Slip(
                "volts of the plate",
                "You worked with the plate's volts; those across the element count.",
                lambda case: _watts(case) / _of_plate(case) ** 2,
            ),
            Slip(
                "volts not squared",
                "You took the plate's watts in the share of the volts: they go with the square.",
                lambda case: case.value("nameplate_power") * _of_plate(case),
            ),
            Slip(
                "peak for rms",
                "You took 1.414 times the volts, and so twice the watts: the meter shows rms.",
                lambda case: 2 * _watts(case),
            ),
            Slip(
                "the plate's watts",
                "This is what is printed on it, at the volts that are printed on it.",
                lambda case: case.value("nameplate_power"),
            ),
        ),
    ),
)
