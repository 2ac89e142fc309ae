"""Ways to spoil any quantity, wire or count of a good run, beside those of each trial."""

from __future__ import annotations

from collections.abc import Iterator

from tests.calculations.trial import Bad, Trial
from tests.calculations.trials import CATALOGUE, TRIALS
from wirecalc import Nameplate, Reading
from wirecalc.typed.word_kinds import WireKind


def spoiled() -> dict[tuple[str, str], list[Bad]]:
    """Return all cases of each input of each calculation."""
    found: dict[tuple[str, str], list[Bad]] = {}
    for name, trial in TRIALS.items():
        for case in (*_of_kind(name, trial), *trial.bad):
            found.setdefault((name, case.input), []).append(case)
    return found


def _of_kind(calculation: str, trial: Trial) -> Iterator[Bad]:
    for name, given in trial.good.items():
        kind = CATALOGUE.calculations[calculation].calculation.input(name).kind
        if isinstance(kind, Reading | Nameplate):
            yield from _quantity(name, given, zero=name in trial.zero)
            yield from _meter_error(name, given, printed=name in trial.printed)
        elif isinstance(kind, WireKind):
            yield from _wire(name)
    for name in trial.counts:
        yield from _count(name)


def _quantity(name: str, given: str, *, zero: bool) -> Iterator[Bad]:
    """Yield a quantity of wrong dimension, unit, span and number."""
    number, _, unit = given.partition(" ")
    odd = "lbf" if unit in ("kWh", "J") else "J"
    yield Bad(name, f"3 {odd}", f"'{odd}'", unit)
    yield Bad(name, number, f"'{number}'", f"{number} {unit}")
    yield Bad(name, b"7", "7 has no unit", f'"7 {unit}"')
    yield Bad(name, f"2,5 {unit}", f"'2,5 {unit}'", f"2.5 {unit}")
    yield Bad(name, f"1e9 {unit}", f"'1e9 {unit}'", "write it out")
    yield Bad(name, f"10000000 {unit}", f"'10000000 {unit}'", unit)
    yield Bad(name, f"-300 {unit}", f"'-300 {unit}'", unit)
    for text in ("9**9**9", "2*3", "5+5", "8/0", "3.2.1"):
        yield Bad(name, f"{text} {unit}", f"'{text} {unit}'", "write")
    for text in ("nan", "NaN", "inf", "-inf", "infinity", "abs(5)", "(5)", "٥", "５"):
        yield Bad(name, f"{text} {unit}", f"'{text} {unit}'", "a number and a unit")
    for text in ("", "   ", unit):
        yield Bad(name, text, f"'{text.strip()}'", "a number and a unit")
    if not zero:
        yield Bad(name, f"0 {unit}", "0 ", unit)


def _meter_error(name: str, given: str, *, printed: bool) -> Iterator[Bad]:
    """Yield the meter's error: any on a printed value, of a reading one that cannot be read."""
    unit = given.partition(" ")[2]
    if printed:
        for error in ("±3%", f"+/-0.1 {unit}"):
            yield Bad(name, f"{given} {error}", f"'{given} {error}'", "drop the ±")
        return
    yield Bad(name, f"1/4 {unit} ±(2%+5)", "±(2%+5)", "as a decimal")
    yield Bad(name, f"{given} ±", f"'{given} ±'", "±3%")
    yield Bad(name, f"{given} ±-3%", "-3", "percentage")
    yield Bad(name, f"{given} ±nan%", "'nan'", "a number")
    yield Bad(name, f"{given} ±5", "±5", f"±5 {unit}")
    yield Bad(name, f"{given} ±(2%+1.5)", "1.5 counts", "whole counts")
    odd = "lbf" if given.endswith(("kWh", " J")) else "J"
    yield Bad(name, f"{given} ±1 {odd}", f"'{odd}'", "write it in")


def _wire(name: str) -> Iterator[Bad]:
    """Yield a wire of wrong unit, span, number or words beside it."""
    yield Bad(name, "18", "'18'", "18 AWG")
    yield Bad(name, "50 AWG", "50 AWG", "4/0 to 40 AWG")
    yield Bad(name, "18.5 AWG", "18.5 AWG", "mm2")
    yield Bad(name, "1,5 mm2", "'1,5 mm2'", "1.5 mm2")
    yield Bad(name, "2,050 cmil", "'2,050 cmil'", "write 2.050 cmil or 2050 cmil")
    yield Bad(name, "0 mm2", "'0 mm2'", "check mm")
    yield Bad(name, "5000 mm2", "'5000 mm2'", "check mm")
    yield Bad(name, "0x30 AWG", "'0x30 AWG'", "count the strands")
    yield Bad(name, "18 AWG solid stranded", "'18 AWG solid stranded'", "one wire")
    yield Bad(name, "18 AWG stranted", "'stranted'", "stranded")
    yield Bad(name, "-18 AWG", "'-18 AWG'", "a wire may be")
    yield Bad(name, "9**9 mm2", "'9**9 mm2'", "the one size of one wire")
    for text in ("2.5 mm", "0.5 mm stranded", "2.05mm copper"):
        yield Bad(name, text, "an area or a diameter", f"{text.split(' ')[0][:3]}")
    for text in ("", "nan mm2", "١٨ AWG", "blue", "3 J"):
        yield Bad(name, text, f"'{text}'", "write 18 AWG")
    yield Bad(name, b"18", "18", '"18 AWG"')


def _count(name: str) -> Iterator[Bad]:
    """Yield a count that is not whole, not in ASCII digits or out of its span."""
    for text in ("2.5", "2.0", "two", "", "1e1", "２", "0x2", "1/1", "2 wires", "nan"):
        yield Bad(name, text, f"'{text}'", "whole number")
    for text in ("0", "-1", "101"):
        yield Bad(name, text, text, "whole number")
    for toml in (b"2.5", b"2.0", b"nan", b"-1"):
        yield Bad(name, toml, toml.decode(), "whole number")
    yield Bad(name, b"true", "", "whole number")
