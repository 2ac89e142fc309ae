"""What `--working` prints is true: typed into a calculator, it comes to the figure beside it.

The arithmetic is read here by a grammar of its own, of numbers, units, + - x / ^, brackets and
four functions. A working that it cannot read must say in words what was done.
"""

from __future__ import annotations

import math
import operator
import random
import re
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from tests.calculations.trials import BUNDLED, CATALOGUE, FILED, TRIALS
from wirecalc import BadInput, Finding, OneOf, Reading, ReadingsFile, ReadingsStream
from wirecalc.base.rounding import show
from wirecalc.engine.declaration import Calculation
from wirecalc.engine.inputs import Input
from wirecalc.said.items import Figure
from wirecalc.typed.counts import Count
from wirecalc.typed.word_kinds import RangeKind, WireKind, YesNo

CALCULATIONS: dict[str, Calculation[Any]] = {
    name: CATALOGUE.calculations[name].calculation for name in BUNDLED
}
# figures that are an input as it was given; every other one without a working has a source
AS_GIVEN = ("length of the wire", "length of the cord", "any pin to the case")
UNITS = (
    *(
        "ohm/kft",
        "mohm/m",
        "mA/kW",
        "L/min",
        "m3/h",
        "N m",
        "lbf",
        "ohm",
        "mohm",
        "cmil",
        "mm2",
        "in2",
        "psi",
    ),
    *("kWh", "uF", "Hz", "rad", "min", "mA", "mm", "ft", "kW", "A", "V", "W", "C", "K", "J"),
    *("h", "s", "m", "%", "km", "L", "mV", "units", "L/min", "m3/h"),
)
UNIT = "|".join(re.escape(u) for u in sorted(UNITS, key=len, reverse=True))
TOKEN = re.compile(r"\d+(?:\.\d+)?|sqrt|log10|ln|exp|pi|[x/+\-^()]")
FUNCTIONS: dict[str, Callable[[float], float]] = {
    "sqrt": math.sqrt,
    "log10": math.log10,
    "ln": math.log,
    "exp": math.exp,
}
STEPS = {"+": operator.add, "-": operator.sub, "x": operator.mul, "/": operator.truediv}


class NoArithmetic(ValueError):
    """A text that is no arithmetic."""


def evaluate(text: str) -> float:
    """Work out what stands before the note of a working; raises NoArithmetic."""
    bare = text.partition(";")[0].replace("[", "(").replace("]", ")")
    bare = re.sub(rf"(?<=[\d)]) (?:{UNIT})(?![\w/])", "", bare)
    tokens = TOKEN.findall(bare)
    if "".join(tokens) != bare.replace(" ", "") or not tokens:
        raise NoArithmetic(text)
    value, rest = _sum(tokens)
    if rest:
        raise NoArithmetic(text)
    return value


def _sum(tokens: list[str]) -> tuple[float, list[str]]:
    return _chain(tokens, _product, "+-")


def _product(tokens: list[str]) -> tuple[float, list[str]]:
    return _chain(tokens, _power, "x/")


def _chain(tokens: list[str], part: Callable[..., Any], steps: str) -> tuple[float, list[str]]:
    value, rest = part(tokens)
    while rest and rest[0] in steps:
        step = STEPS[rest[0]]
        right, rest = part(rest[1:])
        value = step(value, right)
    return value, rest


def _power(tokens: list[str]) -> tuple[float, list[str]]:
    value, rest = _atom(tokens)
    if rest[:1] == ["^"]:
        exponent, rest = _atom(rest[1:])
        value **= exponent
    return value, rest


def _atom(tokens: list[str]) -> tuple[float, list[str]]:
    if not tokens:
        raise NoArithmetic("it ends too soon")
    first, rest = tokens[0], tokens[1:]
    if first == "-":
        value, rest = _power(rest)
        return -value, rest
    if first in FUNCTIONS:
        value, rest = _atom(rest)
        return FUNCTIONS[first](value), rest
    if first == "(":
        value, rest = _sum(rest)
        if rest[:1] != [")"]:
            raise NoArithmetic("a bracket stays open")
        return value, rest[1:]
    if first == "pi":
        return math.pi, rest
    if not first[0].isdigit():
        raise NoArithmetic(first)
    return float(first), rest


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("100 x 8.7 A / 15 A", 58),
        ("2 + 3 x 4^2 - 1", 49),
        ("10^6 x 2 A / (2 x pi x 60 Hz x 100 V)", 1e6 * 2 / (2 * math.pi * 60 * 100)),
        ("(-5 C + 10 K) x [3 - 1]; a note, 7", 10),
        ("sqrt(9) + ln(exp(2)) + log10(1000)", 8),
        ("120 ft x 7.95 ohm/kft / 1000", 0.954),
        ("0.6 s x ln(302 V / 50 V)", 0.6 * math.log(6.04)),
    ],
)
def test_the_reader_of_this_test_reckons_right(text: str, value: float) -> None:
    assert evaluate(text) == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize("text", ["", "as read", "1/2 hp, column of 115 V", "2 x", "(2", "2 A 3"])
def test_the_reader_of_this_test_refuses_words(text: str) -> None:
    with pytest.raises(NoArithmetic):
        evaluate(text)


def figures_of(finding: Finding) -> Iterator[Figure]:
    return (f.figure for f in finding.figures)


def check(figure: Figure, *, closely: bool) -> None:
    """Compare a figure with its working; without one it is read off a table or an input."""
    if figure.working is None:
        assert figure.source is not None or figure.name in AS_GIVEN, figure.name
        return
    said = figure.working()
    try:
        found = evaluate(said)
    except NoArithmetic:
        assert not re.search(r"[\d)\]] (x|/|\+|-|\^) [\d(\[]", said), (figure.name, said)
        assert len(re.findall(r"[A-Za-z]{2,}", said)) >= 2, (figure.name, said)
        return
    shown = show(found, figure.unit, toward=figure.toward)
    wanted = show(figure.value, figure.unit, toward=figure.toward)
    if closely:
        assert shown == wanted, (figure.name, said)
    else:  # a last digit may fall the other way, and a small difference of large numbers
        terms = [abs(float(n)) for n in re.findall(r"\d+(?:\.\d+)?", said)]
        slack = 1e-3 * abs(figure.value) + 5e-6 * max([100.0, *terms]) * 1e-1
        assert abs(found - figure.value) <= slack, (figure.name, said, found, figure.value)


def worked(name: str, given: Mapping[str, object]) -> Finding | None:
    try:
        return CATALOGUE.run(name, given)
    except BadInput:
        return None


@pytest.mark.parametrize("name", CALCULATIONS)
def test_the_example_shows_its_arithmetic(name: str) -> None:
    calc = CALCULATIONS[name]
    files = [n for n in calc.example_inputs if calc.input(n).kind.sample]
    if files or name in FILED:
        pytest.skip("its example reads a file: test_trace.py")
    finding = CATALOGUE.run(name, calc.example_inputs)
    shown = list(figures_of(finding))
    assert bool(shown) == TRIALS[name].figures
    for figure in shown:
        check(figure, closely=True)


RECORDINGS = Path(__file__).parents[1] / "data" / "traces"


@pytest.mark.parametrize("path", sorted(RECORDINGS.glob("*.csv")), ids=lambda p: p.stem)
def test_a_recording_shows_its_arithmetic(path: Path) -> None:
    plate = {"rated_load_current": "1.6 A", "locked_rotor_current": "12 A"}
    finding = CATALOGUE.run("trace", {"recording": str(path), **plate})
    shown = list(figures_of(finding))
    assert shown
    for figure in shown:
        check(figure, closely=True)


WIRES = ("18 AWG", "14 AWG", "12 AWG aluminum", "1.5 mm2", "26x30 AWG", "14 AWG solid")


def some_text(of: Input, rng: random.Random) -> object:
    """Return something that may be given for an input: near its example, or one of its words."""
    kind = of.kind
    if isinstance(kind, WireKind):
        return rng.choice(WIRES)
    if isinstance(kind, RangeKind):
        return rng.choice(["16-14 AWG", "22-18 AWG", "2050-5180 cmil", "1.5-6 mm2"])
    if isinstance(kind, YesNo):
        return rng.choice(["yes", "no"])
    if isinstance(kind, OneOf):
        return rng.choice(kind.words)
    number, _, unit = kind.example.partition(" ")
    if isinstance(kind, Count):
        return str(max(1, round(int(number) * rng.choice([0.5, 1, 1, 2]))))
    if isinstance(kind, Reading) or unit:
        try:
            value = float(number) * rng.choice([0.3, 0.9, 1, 1, 1.07, 1.3, 3])
        except ValueError:  # a fraction
            return kind.example
        return f"{value:.5g} {unit}"
    return kind.example


MANY = 150
A_FEW = 8  # where each simulates


@pytest.mark.parametrize("name", [n for n in CALCULATIONS if n not in FILED])
def test_whatever_is_given_shows_its_arithmetic(name: str) -> None:
    """Most of what is drawn here is refused; what runs takes many ways through a calculation."""
    rng = random.Random(name)
    calc, dear = CALCULATIONS[name], TRIALS[name].dear
    of_file = ReadingsFile | ReadingsStream
    usual = [
        i for i in calc.inputs if not isinstance(i.kind, of_file) and i.name in (dear or (i.name,))
    ]
    ran, times = 0, A_FEW if dear else MANY
    for _ in range(times):
        base: dict[str, object] = dict(calc.example_inputs)
        share = rng.choice([0.1, 0.3, 0.6])
        for declared in usual:
            if rng.random() < share:
                base[declared.name] = (
                    [some_text(declared, rng) for _ in range(rng.choice([1, 2, 3]))]
                    if declared.many
                    else some_text(declared, rng)
                )
        finding = worked(name, base)
        if finding is None:
            continue
        ran += 1
        for figure in figures_of(finding):
            check(figure, closely=False)
    assert ran >= times / 40
