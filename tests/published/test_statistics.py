"""Statistics of samples against printed tables, worked examples and scipy.stats."""

import math

import numpy as np
import pytest
from scipy import stats

from wirecalc import statistics

# Demonstration sets of an invented class: worked by hand (mean, s) to the printed digits
SETS = {
    "A": ([24.1, 22.6, 25.0, 19.2, 23.4], 22.86, 2.23),
    "B": ([24.8, 21.3, 28.9, 20.6, 26.4], 24.40, 3.48),
    "C": ([27.9, 28.6, 27.2, 28.3, 27.5], 27.90, 0.57),
}


@pytest.mark.parametrize("name", SETS)
def test_mean_and_deviation(name):
    values, mean, deviation = SETS[name]
    found = statistics.summary(values)
    assert round(found.mean, 2) == mean
    assert round(found.deviation, 2) == deviation
    assert found.lowest == min(values)


@pytest.mark.parametrize(
    ("size", "population", "confidence", "k", "digits"),
    [
        (43, 0.90, 0.99, 1.8740, 4),  # NIST handbook example: exact value beside 1.8752 approximate
        (5, 0.90, 0.95, 3.407, 3),  # one-sided factor, n 5, 90 % of the population, 95 % confidence
        (10, 0.90, 0.95, 2.355, 3),  # B-basis factor of handbooks, from memory
        (30, 0.90, 0.95, 1.777, 3),  # the same
    ],
)
def test_tolerance_factor_against_printed_values(size, population, confidence, k, digits):
    assert round(statistics.tolerance_factor(size, population, confidence), digits) == k


@pytest.mark.parametrize("size", [2, 5, 10, 25, 100])
@pytest.mark.parametrize("population", [0.90, 0.95, 0.99])
def test_tolerance_factor_against_scipy_stats(size, population):
    away = stats.norm.ppf(population) * math.sqrt(size)
    expected = stats.nct.ppf(0.95, size - 1, away) / math.sqrt(size)
    assert statistics.tolerance_factor(size, population, 0.95) == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize(
    ("size", "limit"),
    [
        # Grubbs' two-sided critical values at 5 %: 1.887 for 6, 2.290 for 10, 2.709 for 20
        # (tables after ASTM E178, from memory; recomputed from the t distribution)
        (6, 1.887),
        (10, 2.290),
        (20, 2.709),
    ],
)
def test_outlier_limit(size, limit):
    def with_ratio(ratio):
        # n - 1 values +-1 about 0 and one far out: solve for the farthest value's ratio
        rest = [(-1.0) ** i for i in range(size - 1)]
        low, high = 1.0, 1e6
        for _ in range(200):
            middle = math.sqrt(low * high)
            values = [*rest, middle]
            found = abs(middle - np.mean(values)) / np.std(values, ddof=1)
            low, high = (middle, high) if found < ratio else (low, middle)
        return [*rest, low]

    assert statistics.outliers(with_ratio(limit - 0.005)) == []
    assert statistics.outliers(with_ratio(limit + 0.005)) == [size - 1]


def test_one_way_effect_against_scipy():
    values = [v for name in SETS for v in SETS[name][0]]
    labels = [name for name in SETS for _ in SETS[name][0]]
    (effect,) = statistics.effects(values, {"set": labels})
    expected = stats.f_oneway(*(SETS[name][0] for name in SETS))
    assert effect.probability == pytest.approx(expected.pvalue, rel=1e-9)
    assert (effect.freedom, effect.residual_freedom) == (2, 12)


def test_two_way_effects_against_a_balanced_layout_by_hand():
    # balanced 2 x 2 with two values a cell: sums of squares by the usual formulas
    cells = {("x", "p"): (10, 12), ("x", "q"): (14, 16), ("y", "p"): (11, 13), ("y", "q"): (15, 19)}
    values = [float(v) for pair in cells.values() for v in pair]
    one = [a for (a, _), pair in cells.items() for _ in pair]
    two = [b for (_, b), pair in cells.items() for _ in pair]
    grand = sum(values) / 8

    def between(labels):
        return sum(
            4 * (sum(v for v, w in zip(values, labels, strict=True) if w == level) / 4 - grand) ** 2
            for level in set(labels)
        )

    left = sum((v - grand) ** 2 for v in values) - between(one) - between(two)
    found = {e.factor: e for e in statistics.effects(values, {"one": one, "two": two})}
    for name, labels in (("one", one), ("two", two)):
        ratio = between(labels) / (left / 5)
        assert found[name].probability == pytest.approx(stats.f.sf(ratio, 1, 5), rel=1e-9)


def test_factors_that_cannot_be_told_apart_are_not_tested():
    values = [v for name in SETS for v in SETS[name][0]]
    labels = [name for name in SETS for _ in SETS[name][0]]
    tools = ["ratchet" if name == "C" else "hand" for name in labels]
    assert statistics.effects(values, {"learner": labels, "tool": tools}) is None
    assert statistics.effects(values, {"learner": ["A"] * 15}) is None


def test_small_samples():
    assert statistics.tolerance_bound([24.1], 0.9, 0.95) is None
    assert statistics.outliers([20.0, 21.0]) == []
    assert statistics.outliers([20.0, 20.0, 20.0]) == []
