"""Sheets of machines on which all is good, in parts: one text a calculation, and the answers.

What a calculation comes to ask for is added here, and nowhere else.
"""

from __future__ import annotations

import tomllib
from typing import Any

GOOD = {  # as left, of one machine
    "supply": 'nameplate_voltage = "120 V"\nvoltage_running = "119.6 V ±(1%+3)"\n',
    "outlet": 'outlet_kind = "120-grounded"\nline_neutral = "120.4 V ±(1%+3)"\n'
    'line_ground = "120.3 V ±(1%+3)"\nneutral_ground = "0.20 V ±(1%+3)"\n'
    'ground_proof = "low-impedance"\n',
    "ground": 'ground_point = "plug-pin"\nground_resistance = "0.061 ohm ±(1%+2)"\n'
    'lead_resistance = "0 ohm"\n',
    "insulation": 'insulation_resistance = "50 Mohm ±(5%+1)"\nprotection = "class-i"\n'
    'tested_part = "machine"\ntest_voltage = "500 V"\nswitched_on = true\n'
    "electronics_unplugged = true\n",
    "leakage": 'leakage_current = "0.12 mA ±(2%+2)"\nmachine_kind = "stationary"\n'
    'connection = "plug"\n'
    "switched_on = true\non_gfci = true\n",
    "screening": 'over_range = true\nohm_range = "20 Mohm"\nswitched_on = true\n'
    'device_held = true\ntest_button_trips = true\ntrip_current = "6 mA"\n',
    "pull": 'wire = "18 AWG"\nterminal = "ring"\nforce = "24 lbf"\n',
    "breaker": 'breaker = "15 A"\ncurrent = "8.00 A ±(2%+5)"\nrun_time = "1 h"\n'
    "only_receptacle = true\n",
    "motor-circuit": 'motor_kind = "compressor"\nfastened_in_place = true\n'
    'rated_load_current = "6.4 A"\nbranch_selection_current = "6.4 A"\n'
    'minimum_ampacity = "9 A"\nmaximum_breaker = "15 A"\nbreaker = "15 A"\n'
    'building_wire = "14 AWG copper"\ninsulation_class = "60 C"\nambient = "25 C"\nconductors = 2\n'
    'other_current = "0 A"\n',
    "inrush": 'nameplate_voltage = "120 V"\nrated_load_current = "1.6 A"\n'
    'locked_rotor_current = "12 A"\nbreaker = "15 A"\nvoltage = "117.2 V ±(1%+3)"\n'
    'meter_mode = "inrush"\npeak = "10.9 A ±(2%+5)"\nsettled = "1.20 A ±(2%+5)"\n'
    'settle_time = "0.4 s ±0.1 s"\n',
    "draw": 'draw_kind = "motor"\nnameplate_voltage = "120 V"\nnameplate_current = "1.0 A"\n'
    'voltage_running = "119.6 V ±(1%+3)"\ncurrent = "0.80 A ±(2%+2)"\n'
    'measured_power = "82 W ±2%"\n',
    "element": 'nameplate_power = "646 W"\nnameplate_voltage = "120 V"\n'
    'element_resistance = "22.6 ohm ±(1%+1)"\nlead_resistance = "0.2 ohm"\n'
    'element_voltage = "119.0 V ±(1%+3)"\n',
}
ANSWERS = (
    "test_jumpers_off",
    "safety_switches_proved",
    "covers_back",
    "leads_clear",
    "cut_off_cause_found",
)
OF_GAS = "gas_left_to_licensed"
OF_MICROWAVE = ("high_voltage_discharged", "door_leakage_measured")
EVERY = ("supply", "outlet", "ground", "insulation")  # what every machine must have


def check(calculation: str, machine: str = "") -> str:
    """One good check of a calculation."""
    of = f'machine = "{machine}"\n' if machine else ""
    return f'[[check]]\ncalculation = "{calculation}"\n{of}{GOOD[calculation]}'


def checks(*calculations: str, machine: str = "") -> str:
    """Good checks of several calculations."""
    return "".join(check(c, machine) for c in calculations)


def answers(*keys: str, heading: str = "confirmed") -> str:
    """Answer yes to some lines."""
    return f"[{heading}]\n" + "".join(f'{key} = "yes"\n' for key in keys)


def whole(*more: str, kind: str = "", job: str = "") -> str:
    """A sheet of one machine with all that every one needs, and what is `more`."""
    of = f'kind = "{kind}"\n' if kind else ""
    head = f'[job]\ntitle = "t"\nenergy = "electric"\n{of}{job}'
    wired = any(word in job.casefold() for word in ("hard-wired", "wired-in"))  # it has no outlet
    every = [c for c in EVERY if c != "outlet" or not wired]
    return head + answers(*ANSWERS) + checks(*every) + "".join(more)


def read(text: str) -> dict[str, Any]:
    """Read the TOML of a sheet."""
    return tomllib.loads(text)
