"""What one call costs inside a process: bare functions, whole runs, units, tables.

Compared in groups: the bare function of each bundled calculation on plain floats (budget: 3 to
20 us) beside a whole run of it from texts in the declared units and in other units; a quantity
read without and with a conversion, beside pint itself; a table read and a table looked up.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

import pint
import pytest

import wirecalc
from tests.calculations.trials import CATALOGUE, FILED, TRIALS
from wirecalc import tables
from wirecalc.engine.reading_inputs import prepare
from wirecalc.typed.quantities import read_quantity

LIGHT = {"max_time": 0.2, "min_rounds": 5}

# declared unit -> another, and how many of it make one
OTHER = {
    **{"A": ("mA", 1000), "mA": ("uA", 1000), "V": ("mV", 1000), "W": ("kW", 0.001)},
    **{"s": ("ms", 1000), "h": ("min", 60), "min": ("s", 60), "ohm": ("mohm", 1000)},
    **{"Mohm": ("kohm", 1000), "uF": ("nF", 1000), "lbf": ("N", 4.448221615)},
    **{"mm": ("in", 1 / 25.4), "in": ("mm", 25.4), "ft": ("m", 0.3048)},
}
GIVEN: dict[str, Mapping[str, Any]] = {  # texts in the declared units
    name: trial.good or CATALOGUE.calculations[name].calculation.example_inputs
    for name, trial in TRIALS.items()
    if name not in FILED  # test_trace.py
}


def in_another_unit(name: str) -> Mapping[str, Any]:
    """Return the same with the first of its quantities that has one in another unit."""
    calc = CATALOGUE.calculations[name].calculation
    for key, given in GIVEN[name].items():
        number, _, unit = str(given).partition(" ")
        if unit in OTHER and not calc.input(key).many:
            other, share = OTHER[unit]
            return {**GIVEN[name], key: f"{float(Fraction(number)) * share:.10g} {other}"}
    return GIVEN[name]


names = pytest.mark.parametrize("name", sorted(GIVEN))
Benchmark = Callable[..., Any]


@names
@pytest.mark.benchmark(group="one call: bare function on floats", **LIGHT)
def test_bare_function(benchmark: Benchmark, name: str) -> None:
    calc = CATALOGUE.calculations[name].calculation
    values = prepare(calc, GIVEN[name], "typed", missing_is_unknown=False).values
    assert benchmark(lambda: list(calc(**values)))


@names
@pytest.mark.benchmark(group="one call: run from texts in the declared units", **LIGHT)
def test_run_in_declared_units(benchmark: Benchmark, name: str) -> None:
    finding = benchmark(CATALOGUE.run, name, GIVEN[name])
    assert finding.criteria or finding.figures


@names
@pytest.mark.benchmark(group="one call: run from texts in other units", **LIGHT)
def test_run_in_other_units(benchmark: Benchmark, name: str) -> None:
    finding = benchmark(CATALOGUE.run, name, in_another_unit(name))
    assert finding.criteria or finding.figures


@pytest.mark.parametrize("error", ["", " ±(2%+5)"], ids=["exact", "with the meter's error"])
@pytest.mark.benchmark(group="one call: three runs for a reading with an error", **LIGHT)
def test_run_over_a_band(benchmark: Benchmark, error: str) -> None:
    given = GIVEN["pull"] | {"force": f"24.0 lbf{error}"}
    finding = benchmark(CATALOGUE.run, "pull", given)
    assert finding.verdict is not None


@pytest.mark.parametrize("text", ["23.4 lbf", "104 N", "23.4 lbf ±(2%+5)", "104 N ±2 N"])
@pytest.mark.benchmark(group="reading a quantity in lbf", **LIGHT)
def test_read_quantity(benchmark: Benchmark, text: str) -> None:
    assert 23 < benchmark(read_quantity, text, "force", "lbf").value < 24


@pytest.mark.benchmark(group="reading a quantity in lbf", **LIGHT)
def test_pint_reads_the_same_quantity(benchmark: Benchmark) -> None:
    registry = pint.UnitRegistry()
    value = benchmark(lambda: registry.Quantity("104 newton").to("force_pound").magnitude)
    assert 23 < value < 24


@pytest.mark.parametrize("name", ["awg", "cautions", "nec-ampacity"])
@pytest.mark.benchmark(group="a table read from its files", **LIGHT)
def test_table_read(benchmark: Benchmark, name: str) -> None:
    assert benchmark(tables.read, tables.bundled_folder(), name).rows


@pytest.mark.benchmark(group="a table that is loaded", **LIGHT)
def test_table_load_again(benchmark: Benchmark) -> None:
    assert benchmark(tables.load, "nec-ampacity").rows


@pytest.mark.benchmark(group="a table that is loaded", **LIGHT)
def test_table_row(benchmark: Benchmark) -> None:
    assert benchmark(tables.load("code-letters").row, letter="V").cells["letter"] == "V"


@pytest.mark.benchmark(group="plugins found and loaded again", **LIGHT)
def test_build_the_catalogue(benchmark: Benchmark) -> None:
    assert benchmark(wirecalc.build, bundled_only=True).calculations
