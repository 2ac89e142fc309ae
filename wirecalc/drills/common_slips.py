"""Slips that can happen with any reading of a kind: the wrong unit, peak for rms, 50 for 60 Hz."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from ..engine.exercises import Case, Slip
from ..engine.inputs import Input
from ..typed.quantities import read_number
from ..typed.quantity_kinds import QuantityKind

PEAK = 2**0.5
_UNITS = {  # unit -> the one that it is mistaken for
    **{"mm": "in", "in": "mm", "ft": "m", "m": "ft", "lbf": "kgf", "kgf": "lbf", "N": "lbf"},
    **{"C": "F", "F": "C", "mV": "V", "mA": "A"},
}


_SIZES = ("22", "20", "18", "16", "14", "12", "10", "8", "6")  # AWG, of appliances and buildings


def sizes_beside(text: str) -> list[str]:
    """Return a size of wire and those beside it that are sold; nothing for another text.

    >>> sizes_beside("18 AWG"), sizes_beside("1.5 mm2")
    (['20 AWG', '18 AWG', '16 AWG'], [])
    """
    size, _, unit = text.partition(" ")
    if unit != "AWG" or size not in _SIZES:
        return []
    place = _SIZES.index(size)
    return [f"{one} AWG" for one in _SIZES[max(place - 1, 0) : place + 2]]


def in_place_of(figure: str) -> Slip:
    """Return the slip of giving another figure of the same unit."""
    return Slip("another figure", f"This is: {figure}.", lambda case: case.figure(figure))


def common_slips(
    inputs: Mapping[str, tuple[Input, str]],
    wires: Mapping[str, Sequence[str]],
    answer: Callable[[Case], float],
) -> Iterator[Slip]:
    """Yield the slips that the inputs of a calculation can have, each a run with it in it.

    `inputs` has each quantity with the text of the worked example, `wires` the sizes of each wire;
    `answer` is what is asked for.
    """
    for name, sizes in wires.items():
        yield _wrong_row(name, sizes, answer)
    for name, (declared, example) in inputs.items():
        told, unit = declared.kind.text, example.rpartition(" ")[2]

        def slip(
            called: str, sentence: str, change: Callable[[str], str], name: str = name
        ) -> Slip:
            def wrong(case: Case) -> float:
                return answer(case.but(**{name: change(str(case.drawn.given[name]))}))

            return Slip(called, sentence, wrong)

        if name == "lead_resistance":
            left_in = "You left the resistance of the test leads in the reading."
            yield slip("lead resistance left in", left_in, lambda _: "0 ohm")
            continue
        if unit in _UNITS:
            taken = f"It was given in {unit}, and you took it for {_UNITS[unit]}: {told}."
            yield slip(f"{_UNITS[unit]} for {unit}", taken, _other_unit)
        if unit == "Hz":
            other = "You worked with the other frequency: 50 for 60 Hz, or 60 for 50 Hz."
            yield slip("50 for 60 Hz", other, lambda t: "60 Hz" if t.startswith("50") else "50 Hz")
        if isinstance(declared.kind, QuantityKind) and declared.kind.wave == "ac":
            crest = f"You took the crest, 1.414 times the rms value, of: {told}."
            yield slip("peak for rms", crest, _crest)


def _wrong_row(name: str, sizes: Sequence[str], answer: Callable[[Case], float]) -> Slip:
    def wrong(case: Case) -> float:
        place = sizes.index(str(case.drawn.given[name]))
        return answer(case.but(**{name: sizes[place - 1 if place else 1]}))

    return Slip("wrong row", "You read the row of the size beside it.", wrong)


def _other_unit(text: str) -> str:
    number, _, unit = text.rpartition(" ")
    return f"{number} {_UNITS[unit]}"


def _crest(text: str) -> str:
    number, unit = read_number(text)
    return f"{number.value * PEAK:.6g} {unit}"
