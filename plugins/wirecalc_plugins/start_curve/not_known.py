"""What is not known of a start, and its ends."""

from __future__ import annotations

import math

from .start_case import Ptc

# which end of a band is slow
SLOWER = {"voltage_at_rest": 0, "source_resistance": 1, "cord_length": 1}
ASSUMED = ("load_torque", "inertia")  # both ends are run where they are left out
# of a PTC, all from memory: J/K, C, and the K in which it rises tenfold
PTC_SPANS = {"heat_capacity": (0.6, 1.6), "switches_at": (100.0, 140.0), "tenfold": (10.0, 20.0)}
# what the model of a motor that was not measured leaves out: shares, as textbook machines showed
WIDER = {"inrush": 0.02, "cycle": 0.03, "peak": 0.03, "settled": 0.08, "start_heat": 0.15}
WIDER["held"] = 0.08  # a max-hold shows between the first 100 ms and the settled current
WIDER |= {"settle_time": 0.12, "speed_time": 0.12}


def ptc_ends(ptc: Ptc) -> list[Ptc]:
    """Return the PTC that opens soonest and the one that opens latest."""
    return [
        ptc._replace(heat_capacity=joule, switches_at=celsius, rise=math.log(10) / kelvin)
        for joule, celsius, kelvin in zip(*PTC_SPANS.values(), strict=True)
    ]
