"""The meter's band of a list of readings: a batch is judged as its points inside the band are."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc

BOUNDED = settings(deadline=None, max_examples=60)
FORCES = st.lists(st.floats(17.0, 30.0), min_size=5, max_size=8).filter(
    lambda values: max(values) - min(values) > 0.1
)


def run(values: list[float], error: str = "") -> wirecalc.Finding:
    given_: dict[str, Any] = {"wire": "18 AWG", "terminal": "ring", "shop_minimum": "25 lbf"}
    return wirecalc.run("pull-batch", **given_, force=[f"{v!r} lbf{error}" for v in values])


@BOUNDED
@given(FORCES, st.floats(0.001, 0.08), st.floats(-1, 1))
def test_no_point_inside_the_band_is_judged_against_it(
    values: list[float], error: float, share: float
) -> None:
    over = {c.criterion.name: c.verdict for c in run(values, f" ±{100 * error:.6f}%").criteria}
    inside = run([v * (1 + share * error) for v in values])
    for judged in inside.criteria:
        name, verdict = judged.criterion.name, judged.verdict
        if over[name] == "pass":
            assert verdict == "pass", name
        if over[name] == "fail":
            assert verdict == "fail", name


@BOUNDED
@given(FORCES, st.integers(0, 7), st.floats(0.5, 5))
def test_a_weaker_pull_never_improves_the_verdict(
    values: list[float], which: int, less: float
) -> None:
    weaker = list(values)
    weaker[which % len(values)] = min(values) - less
    before, after = run(values).verdict, run(weaker).verdict
    assert before is not None
    assert after is not None
    lowest = [run(v).criterion("lowest pull, ul-486a").verdict.rank for v in (values, weaker)]
    assert lowest[1] >= lowest[0]


@settings(BOUNDED, max_examples=15)
@given(FORCES, st.floats(0.001, 0.08), st.floats(-1, 1))
def test_the_scatter_of_a_tester_lies_in_its_band(
    values: list[float], error: float, share: float
) -> None:
    def found(factor: float, band: str = "") -> wirecalc.Finding:
        return wirecalc.run("pull-tester", force=[f"{factor * v!r} lbf{band}" for v in values])

    over, inside = found(1, f" ±{100 * error:.6f}%"), found(1 + share * error)
    for of, at in zip(over.figures, inside.figures, strict=True):
        assert of.low is not None
        assert of.high is not None
        assert of.low * (1 - 1e-6) <= at.figure.value <= of.high * (1 + 1e-6), at.figure.name
