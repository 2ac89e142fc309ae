"""What contradicts itself in the inputs of a simulated start."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wirecalc import Problem

from .start_curve_inputs import NONE, OWN, PTC, RELAY, RUN_CAPACITOR, START_CAPACITOR

LEAST_SPEED = 0.8  # of the synchronous speed at full load; practice
MOST_RATIO = 30.0  # ohm of start over main winding that is no good winding any more; practice
_PLATE = (
    "nameplate_voltage",
    "locked_rotor_current",
    "rated_load_current",
    "horsepower",
    "poles",
    "main_winding",
)


def refuse(given: dict[str, Any]) -> Iterator[Problem]:
    """Yield what is wrong with the inputs together, before anything is simulated."""
    get = given.get
    yield from _refuse_motor(given)
    method = get("start_method") or OWN
    textbook = get("textbook_motor") is not None
    if not textbook and get("start_winding") is None and method != NONE:
        yield Problem("start_winding", "was not given", "give its ohm, or start_method none")
    if method == OWN:
        method = "textbook" if textbook else RELAY
    yield from _refuse_parts(given, method, textbook)
    capacitor = get("start_capacitor") is not None or get("run_capacitor") is not None
    capacitor = capacitor or (textbook and method in ("textbook", START_CAPACITOR, RUN_CAPACITOR))
    yield from _refuse_variants(get("variants") or [], capacitor, method != NONE)


def _refuse_variants(variants: list[str], capacitor: bool, winding: bool) -> Iterator[Problem]:
    """Faults of parts that are not there, and one that is named twice."""
    for variant in variants:
        if variants.count(variant) > 1:
            yield Problem("variants", f"{variant} stands there twice", "name it once")
            return
        if variant == "weak-capacitor" and not capacitor:
            yield Problem("variants", "weak-capacitor: this start has none", "leave it out")
        if variant in ("open-start-winding", "swapped-leads") and not winding:
            yield Problem("variants", f"{variant}: there is no start winding", "leave it out")


def _refuse_motor(given: dict[str, Any]) -> Iterator[Problem]:
    """Either a textbook machine or a whole plate, of numbers that fit each other."""
    get = given.get
    there = [name for name in (*_PLATE, "start_winding") if get(name) is not None]
    missing = [name for name in _PLATE if get(name) is None]
    if get("fit") is not None:
        yield from _refuse_fit(given)
    if get("textbook_motor") is not None and there:
        yield Problem("textbook_motor", f"{there[0]} was given too", "give a motor or a plate")
    elif get("textbook_motor") is None and missing:
        do = "give it, or a textbook machine"
        yield Problem(missing[0], f"is needed for an estimate; with {', '.join(_PLATE)}", do)
    elif get("textbook_motor") is None:
        volts, locked, rated = (given[name] for name in _PLATE[:3])
        if locked <= rated:
            said = f"{locked:g} A is not above the rated load of {rated:g} A"
            yield Problem("locked_rotor_current", said, "look at the plate again")
        elif volts / locked <= given["main_winding"]:
            said = f"{given['main_winding']:g} ohm alone would let through less than {locked:g} A"
            yield Problem("main_winding", said, "measure it again, cold, less the leads' ohm")
    main, start = get("main_winding"), get("start_winding")
    if main is not None and start is not None and start > MOST_RATIO * main:
        said = f"{start:g} ohm is over {MOST_RATIO:g} times the main winding's {main:g} ohm"
        yield Problem("start_winding", said, "measure both again: 1.2 to 5 times is usual")
    yield from _refuse_speed(given)
    poles, cord = get("poles") or 2, get("cord")
    if poles % 2:
        yield Problem("poles", f"{poles} is odd", "poles come in pairs, such as 4")
    if cord is not None and cord.metal not in ("copper", "aluminium"):
        yield Problem("cord", f"the ohm of {cord.metal} is not known", "such as 16 AWG")


def _refuse_fit(given: dict[str, Any]) -> Iterator[Problem]:
    """A recording of a motor that is known already, or beside what it takes the place of."""
    if given.get("textbook_motor") is not None:
        yield Problem("fit", "a textbook's motor is known already", "give the plate of this one")
    if given.get("spread") is not None:
        said = "a recording draws its own starts from what is not known"
        yield Problem("spread", said, "give one of them")


def _refuse_speed(given: dict[str, Any]) -> Iterator[Problem]:
    """A speed that no motor of these poles has at full load."""
    speed, poles = given.get("rated_speed"), given.get("poles")
    if speed is None or not poles or poles % 2:
        return
    hertz = given.get("frequency") or 60.0
    synchronous = 120 * hertz / poles
    if not LEAST_SPEED * synchronous <= speed < synchronous:
        said = (
            f"{speed} does not go with {poles} poles at {hertz:g} Hz, {synchronous:g} without load"
        )
        yield Problem("rated_speed", said, "look at the plate again: speed, poles and frequency")


def _refuse_parts(given: dict[str, Any], method: str, textbook: bool) -> Iterator[Problem]:
    """The parts that a way of starting needs, and those that mean nothing with it."""
    parts = {
        "start_capacitor": (START_CAPACITOR,),
        "run_capacitor": (START_CAPACITOR, RUN_CAPACITOR, PTC),
        "ptc_resistance": (PTC,),
    }
    for name, methods in parts.items():
        if given.get(name) is not None and method not in methods:
            yield Problem(
                name, f"has no place in this start ({method})", f"goes with {', '.join(methods)}"
            )
    needs = {PTC: "ptc_resistance"}
    if not textbook:
        needs |= {START_CAPACITOR: "start_capacitor", RUN_CAPACITOR: "run_capacitor"}
    needed = needs.get(method)
    if needed is not None and given.get(needed) is None:
        yield Problem(needed, f"is needed for start_method {method}", "read it on the part")
