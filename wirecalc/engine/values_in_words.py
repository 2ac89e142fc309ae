"""Values among the words of somebody who looks for a calculation: 12 ga, 1/3 hp, 35 mfd, -10.

A value says what is at hand, and so which calculations can take it. Nothing here reads a value
for a calculation: what is taken for one by mistake only changes what is offered first.
"""

from __future__ import annotations

import functools
import re
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ..typed.odd_units import SHORT_UNITS
from ..typed.unit_names import SPELLINGS
from .word_stems import stems

_SIZE = "size of a wire"
# what a unit is of, where one quantity means several things: a leak is in mA, a load in A
_KINDS = {
    **{"mA": "small current", "uA": "small current", "mV": "small voltage", "hp": "horsepower"},
    **{"mohm": "small resistance", "kohm": "sensor resistance", "Mohm": "insulation"},
    **{"m": "run", "ft": "run", "min": "wait", "h": "wait", "K": "temperature"},
}
_WORDS = {  # what people call a quantity; of the others a unit says nothing by itself
    **{_SIZE: "awg", "current": "amp", "voltage": "volt", "resistance": "ohm", "power": "watt"},
    **{"capacitance": "uf", "temperature": "temperature", "run": "length", "horsepower": "hp"},
    **{"small voltage": "mv", "insulation": "megohm", "force": "force", "small current": "ma"},
}
_SAID = {  # unit as it is said -> our name of it
    **{"amps": "A", "deg": "C", "degs": "C", "degree": "C", "degrees": "C", "°": "C", "k": "kohm"},
    **{"meg": "Mohm", "megs": "Mohm", "megohm": "Mohm", "gig": "Mohm", "m": "m", "meters": "m"},
    **{"mf": "uF", "mfd": "uF", "u": "uF", "vdc": "V", "dc": "V", "vac": "V", "yd": "ft"},
    **{"yards": "ft", "k-ohm": "kohm", "f": "F", "r": "ohm", "kva": "kW", "va": "W", "n": "N"},
    **{"ma": "mA", "mv": "mV", "kw": "kW", "horse": "hp", "mm": "mm", "days": "h", "min": "min"},
}
_METRIC = ("0.5", "0.75", "1", "1.0", "1.5", "2.5", "4", "6", "10", "16", "25", "35")  # mm2
_NUMBER = r"(?:\d+[ -])?\d+/\d+|\d*\.?\d+"
_OF_SIZE = re.compile(
    rf"#\s*\d+|\b\d/0\b|\b(?:{_NUMBER})\s*-?\s*(?:ga|gauges?|gage|guage|awg|mm2|mm²|sq\.?\s?mm|sqmm"
    r"|mm\s?sq|mm\^2|mmq|kcmil|mcm)\b|\b(?:awg|gauge|ga)\s*\d+|\b(?:18|16|14|12|10|8)/[2345]\b"
)
_WITH_CURVE = re.compile(r"\b[bcd]\s?(?:6|10|13|16|20|25|32|40|50|63)\b")  # A, on a breaker
_VALUE = re.compile(rf"(?<![\w./])([-−]?)({_NUMBER})\s*-?\s?(°?\s*[a-zµμωΩ°\"'%]+)?", re.IGNORECASE)
_MAINS = ("100", "110", "115", "120", "127", "208", "220", "230", "240", "277", "400", "480")  # V
_MANY_WATTS = 1000  # a number from here on and without a unit is of watts most often


class Values(NamedTuple):
    """What the values of a text are of, each with how surely; and the texts of all numbers."""

    of: Mapping[str, float]
    texts: tuple[str, ...]

    @property
    def stems(self) -> frozenset[str]:
        """The words that the values are made of, as they are compared."""
        return frozenset(stems(" ".join(self.texts)))

    @property
    def words(self) -> list[str]:
        """What people call the quantities."""
        return [
            _WORDS[quantity] for quantity, sure in self.of.items() if sure and quantity in _WORDS
        ]


@functools.lru_cache(maxsize=2_000)
def values_in(text: str) -> Values:
    """Return what the values of a text are of.

    >>> values_in("1/3 hp amps").of
    {'horsepower': 1.0, 'power': 0.5}
    >>> values_in("what fits 12 ga").texts
    ('12 ga',)
    """
    of: dict[str, float] = {}
    texts: list[str] = []
    plain = re.sub(r"\b(?:minus|below)\s+(?=\d)", "-", text.casefold())
    for found in _OF_SIZE.finditer(plain):
        texts.append(found[0])
        of[_SIZE] = 1.0
    plain = _OF_SIZE.sub(" , ", plain)
    for found in _WITH_CURVE.finditer(plain):
        texts.append(found[0])
        of["current"] = 1.0
    for found in _VALUE.finditer(plain):
        word = (found[3] or "").strip()
        meant = dict(_meant(found[1], found[2], word))
        texts.append(found[2] + (f" {word}" if _unit(word) else ""))
        of |= {quantity: max(sure, of.get(quantity, 0.0)) for quantity, sure in meant.items()}
    return Values(of, tuple(texts))


def _meant(sign: str, number: str, word: str) -> Iterator[tuple[str, float]]:
    """Yield what a number with the word behind it is of, each with how surely."""
    if word == "mm" and number in _METRIC:
        yield _SIZE, 1.0
    if unit := _unit(word):
        dimension, name = unit
        kind = _KINDS.get(name, dimension)
        yield kind, 1.0
        if kind != dimension:
            yield dimension, 0.5
    elif sign and number.isdigit():
        yield "temperature", 0.5
    elif number in _MAINS:
        yield "voltage", 0.5
    elif number.isdigit() and int(number) >= _MANY_WATTS and number.endswith("00"):
        yield "power", 0.5


@functools.cache
def _units() -> dict[str, tuple[str, str]]:
    """Return each spelling of a unit in lower case, with its dimension and our name of it."""
    known: dict[str, tuple[str, str]] = {}
    for dimension, units in SPELLINGS.items():
        for name, more in units.items():
            known |= {s.casefold(): (dimension, name) for s in (name, *more)} | known
        for said, name in SHORT_UNITS.get(dimension, {}).items():
            known.setdefault(said.casefold(), (dimension, name))
    by_name = {n: (d, n) for d, units in reversed(SPELLINGS.items()) for n in units}
    return known | {said: by_name[name] for said, name in _SAID.items()}


def _unit(word: str) -> tuple[str, str] | None:
    return _units().get(word.replace(" ", "")) if word else None
