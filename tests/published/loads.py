"""One load on its circuit, as several files of checks run it."""

from __future__ import annotations

from typing import Any

import wirecalc
from wirecalc import Finding, Verdict

LOAD, WIRE, PROTECTION = "load on the breaker", "load on the wire", "breaker on this wire"
READ = {"insulation_class": "60 C", "termination_temperature": "60 C"}  # on wire and breaker
OWN_CIRCUIT = {"only_receptacle": "yes", "fastened_in_place": "no"}


def breaker(**given: Any) -> Finding:
    """Run it for an hour; the wire, where one is given, with what is read on it."""
    read = READ if "building_wire" in given else {}
    return wirecalc.run("breaker", **({"run_time": "1 h"} | read | given))


def verdict(criterion: str, **given: Any) -> Verdict:
    """Return the verdict of one criterion of it."""
    return breaker(**given).criterion(criterion).verdict
