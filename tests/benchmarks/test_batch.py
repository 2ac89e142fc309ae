"""A batch beside the same calculation through pint quantities, row by row (budget: 10x faster).

The plain way does what the function does and no more: it reads each cell with pint, looks the
limit up, works out figures and margin as quantities, and compares. The batch reads a file, and
gives of each row its finding: inputs, figures, criterion with its reason, sources, cautions, all
printed. Measured with readings as a gauge shows them, 0.1 lbf apart, of which a long file has most
more than once, and with every reading different, where the cost is that of the findings.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pint
import pytest

import wirecalc
from wirecalc.jobs import batch, batch_columns, batch_tally
from wirecalc.jobs.batch_rows import RowsFile
from wirecalc.output import batch as output
from wirecalc.trade import crimps
from wirecalc.typed.wires import read_wire

ROWS = 10_000
WIRES = ("18 AWG", "16 AWG", "14 AWG")
CATALOGUE = wirecalc.build(bundled_only=True)
UNITS = pint.UnitRegistry()
SOFT = 36 * UNITS.kpsi
Benchmark = Callable[..., Any]
Sized = Callable[[int], int]
ONE_PASS = {"max_time": 0.5, "min_rounds": 3}


def readings(count: int, *, distinct: bool) -> list[tuple[str, str]]:
    """Pull forces about 28 lbf, as invented learners made them."""
    chance = random.Random(7)
    places = 5 if distinct else 1
    forces = (f"{min(max(chance.gauss(28, 4), 5), 60):.{places}f} lbf" for _ in range(count))
    return [(chance.choice(WIRES), force) for force in forces]


def by_pint(rows: list[tuple[str, str]]) -> dict[bool, int]:
    counts = {True: 0, False: 0}
    for wire_text, force_text in rows:
        wire = read_wire(wire_text)
        force = UNITS.Quantity(force_text).to("lbf")
        minimum = crimps.pull_minimum(wire, "ul-486a")
        assert minimum is not None
        limit = UNITS.Quantity(minimum.lbf, "lbf")
        share = (force / (UNITS.Quantity(wire.area_mm2, "mm**2") * SOFT)).to("percent")
        margin, shown = force - limit, limit.to("newton")
        counts[bool(force >= limit)] += 1
        assert share.m > 0 and margin.m > -100 and shown.m > 0
    return counts


def by_batch(path: Path, form: str) -> batch_tally.Tally:
    file = RowsFile(str(path))
    calc = CATALOGUE.calculations["pull"].calculation
    planned = batch_columns.plan(calc, file.header, {"terminal": "ring"})
    tally = batch_tally.Tally()
    how = output.Form(form)
    run = CATALOGUE.outcomes("pull", origin="sheet")
    worker = batch.Worker(run, planned, how.make, gather=form == "text", most=how.most)
    found = tally.watch(batch.results(worker, file.rows()))
    lines = {
        "text": lambda: output.text_lines(found, tally, labels=False),
        "json": lambda: output.json_lines(found, "pull"),
        "csv": lambda: output.table_lines(found, "pull", how, kept=[], labels=False),
    }[form]()
    for _ in lines:
        pass
    return tally


distincts = pytest.mark.parametrize("distinct", [False, True], ids=["as shown", "all differ"])


@distincts
@pytest.mark.benchmark(group=f"a batch of {ROWS} pulls", **ONE_PASS)
def test_through_pint_row_by_row(benchmark: Benchmark, sized: Sized, distinct: bool) -> None:
    rows = readings(sized(ROWS), distinct=distinct)
    assert sum(benchmark(by_pint, rows).values()) == len(rows)


@distincts
@pytest.mark.parametrize("form", ["text", "json", "csv"])
@pytest.mark.benchmark(group=f"a batch of {ROWS} pulls", **ONE_PASS)
def test_batch(
    benchmark: Benchmark, sized: Sized, tmp_path: Path, form: str, distinct: bool
) -> None:
    rows = readings(sized(ROWS), distinct=distinct)
    path = tmp_path / "rows.csv"
    path.write_text("wire,force\n" + "".join(f"{w},{f}\n" for w, f in rows), encoding="utf-8")
    tally = benchmark(by_batch, path, form)
    assert sum(tally.verdicts.values()) == len(rows)
    assert {bool(v == "pass"): n for v, n in tally.verdicts.items()} == by_pint(rows)
