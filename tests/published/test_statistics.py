"""Statistics of samples against printed tables, worked examples and their definitions."""

import math
from statistics import NormalDist

import numpy as np
import pytest
from scipy import stats
from scipy.integrate import simpson

from wirecalc_plugins.joint import statistics

from .records import independent, memory, source

# mean and s to the printed digits
SETS = {
    "A": ([24.1, 22.6, 25.0, 19.2, 23.4], 22.86, 2.23),
    "B": ([24.8, 21.3, 28.9, 20.6, 26.4], 24.40, 3.48),
    "C": ([27.9, 28.6, 27.2, 28.3, 27.5], 27.90, 0.57),
}


@independent("sets of an invented class: mean and root of the squares over n - 1, by hand")
@pytest.mark.parametrize("name", SETS)
def test_mean_and_deviation(name):
    values, mean, deviation = SETS[name]
    found = statistics.summary(values)
    assert round(found.mean, 2) == mean
    assert round(found.deviation, 2) == deviation
    assert found.lowest == min(values)


@source(
    "NIST/SEMATECH e-Handbook of Statistical Methods",
    "online, undated",
    "7.2.6.3, example: 43 values, 90 %, 99 %",
    seen="one copy",
)
@memory("factors of handbooks for 95/90: 3.407 for 5, 2.355 for 10, 1.777 for 30 values")
@pytest.mark.parametrize(
    ("size", "population", "confidence", "k", "digits"),
    [
        (43, 0.90, 0.99, 1.8740, 4),  # exact value beside the example's 1.8752, an approximation
        (5, 0.90, 0.95, 3.407, 3),
        (10, 0.90, 0.95, 2.355, 3),
        (30, 0.90, 0.95, 1.777, 3),
    ],
)
def test_tolerance_factor_against_printed_values(size, population, confidence, k, digits):
    assert round(statistics.tolerance_factor(size, population, confidence), digits) == k


@independent("chance that mean + k s lies above the quantile, by Simpson's rule over s")
@pytest.mark.parametrize("size", [2, 5, 10, 25, 100])
@pytest.mark.parametrize("population", [0.90, 0.95, 0.99])
def test_tolerance_factor_by_its_definition(size, population):
    # mean + k s >= z where (mean - z) sqrt(n) / sigma, normal, is above -k sqrt(n) s / sigma, and
    # s / sigma is chi of n - 1 over sqrt(n - 1)
    k, free = statistics.tolerance_factor(size, population, 0.95), size - 1
    normal = NormalDist()
    away = normal.inv_cdf(population) * math.sqrt(size)
    chi = np.linspace(0, math.sqrt(free) + 9, 4001)
    density = 2 ** (1 - free / 2) / math.gamma(free / 2) * chi ** (free - 1) * np.exp(-(chi**2) / 2)
    above = [normal.cdf(k * math.sqrt(size / free) * c - away) for c in chi]
    assert simpson(density * np.array(above), x=chi) == pytest.approx(0.95, abs=1e-8)


@memory("Grubbs' two-sided critical values at 5 %, tables after ASTM E178")
@independent("(n - 1)/sqrt(n) sqrt(t2/(n - 2 + t2)), t of scipy.stats at 0.05/(2 n)")
@pytest.mark.parametrize(
    ("size", "limit"),
    [
        (6, 1.887),
        (10, 2.290),
        (20, 2.709),
    ],
)
def test_outlier_limit(size, limit):
    t2 = stats.t.ppf(1 - 0.05 / (2 * size), size - 2) ** 2
    exact = (size - 1) / math.sqrt(size) * math.sqrt(t2 / (size - 2 + t2))
    assert exact == pytest.approx(limit, abs=0.001)  # 2.7082 of 20 is printed 2.709

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


@independent("scipy.stats.f_oneway")
def test_one_way_effect_against_scipy():
    values = [v for name in SETS for v in SETS[name][0]]
    labels = [name for name in SETS for _ in SETS[name][0]]
    (effect,) = statistics.effects(values, {"set": labels})
    expected = stats.f_oneway(*(SETS[name][0] for name in SETS))
    assert effect.probability == pytest.approx(expected.pvalue, rel=1e-9)
    assert (effect.freedom, effect.residual_freedom) == (2, 12)


@independent("sums of squares of a balanced layout by hand, F distribution of scipy.stats")
def test_two_way_effects_against_a_balanced_layout_by_hand():
    # balanced 2 x 2 with two values a cell
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


@independent(
    "two factors that change together span one column: no sum of squares is left to either"
)
def test_factors_that_cannot_be_told_apart_are_not_tested():
    values = [v for name in SETS for v in SETS[name][0]]
    labels = [name for name in SETS for _ in SETS[name][0]]
    tools = ["ratchet" if name == "C" else "hand" for name in labels]
    assert statistics.effects(values, {"learner": labels, "tool": tools}) is None
    assert statistics.effects(values, {"learner": ["A"] * 15}) is None


@independent("one value has no deviation, two lie equally far from their mean, equal ones at it")
def test_small_samples():
    assert statistics.tolerance_bound([24.1], 0.9, 0.95) is None
    assert statistics.outliers([20.0, 21.0]) == []
    assert statistics.outliers([20.0, 20.0, 20.0]) == []
