"""What an entry of a rules file asks, in words, and the amounts that it gives."""

from __future__ import annotations

from ..base.errors import BadText
from ..typed.quantities import read_number, read_quantity
from ..typed.unit_names import SPELLINGS
from ..typed.units import dimension_of
from .entries import BOUNDS, WORDS, Entry


def amount(given: object, unit: str) -> float:
    """Return a limit that a rules file gives, in the unit of what it limits; raises BadText."""
    if isinstance(given, int | float):
        if unit:
            raise BadText(f"{given} has no unit", f'write it as text: "{given} {unit}"')
        return float(given)
    text = str(given)
    dimension = "temperature difference" if unit == "K" else _dimension(unit)
    if dimension:
        quantity = read_quantity(text, dimension, unit)
        if quantity.low is not None:
            raise BadText(f"{text!r}: a limit has no meter error", "drop the ± part")
        return quantity.value
    number, rest = read_number(text)
    if rest != unit:
        raise BadText(f"{text!r} is not in {unit or 'plain numbers'}", f"write {unit or 'none'}")
    return number.value


def _dimension(unit: str) -> str:
    return dimension_of(unit) if any(unit in units for units in SPELLINGS.values()) else ""


def asks(entry: Entry) -> str:
    """Say in words what a rule asks."""
    given = entry.given
    of = next((str(given[k]) for k in ("criterion", "figure", "input") if k in given), "")
    parts = []
    if "times" in given:
        parts.append(f"{of}: its limit x {given['times']:g}")
    for key in (*BOUNDS, *WORDS):
        if key in given:
            parts.append(f"{of} {_said(key, given[key])}")
    if given.get("forbid"):
        parts.append("not to be used")
    if "caution" in given:
        parts.append(f"caution: {given['caution']}")
    if given.get("advisory"):
        parts.append("advised: missed it is marginal, and no fail")
    when = [
        f"{name} {' '.join(_said(k, v) for k, v in wanted.items())}"
        if isinstance(wanted, dict)
        else f"{name} {wanted if isinstance(wanted, str) else ' or '.join(wanted)}"
        for name, wanted in given.get("when", {}).items()
    ]
    return "; ".join(parts) + (f" (when {' and '.join(when)})" if when else "")


def _said(key: str, value: object) -> str:
    shown = ", ".join(value) if isinstance(value, list) else str(value)
    return f"{key.replace('_', ' ')} {shown}"
