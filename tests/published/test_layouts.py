"""Differences in a layout of pulls against other ways to work them out."""

import math

import numpy as np
import pytest
from scipy import optimize, stats

from wirecalc_plugins.joint import layouts

from .records import independent

ONE = [24.1, 22.6, 25.0, 19.2, 23.4]
TWO = [24.8, 21.3, 28.9, 20.6, 26.4, 25.5, 24.0]


@independent("scipy.stats.ttest_ind, Welch's beside Student's where scipy.stats.bartlett says so")
@pytest.mark.parametrize("two", [TWO, [27.9, 28.6, 27.2, 28.3, 27.5]])
def test_two_sets_against_scipy(two):
    layout = layouts.Layout([*ONE, *two], {"who": ["a"] * len(ONE) + ["b"] * len(two)})
    found = layout.difference("who", "a", ["b"])
    unlike = stats.bartlett(ONE, two).pvalue < 0.05
    assert unlike == (two is not TWO)
    ways = (True, False) if unlike else (True,)
    tests = [stats.ttest_ind(ONE, two, equal_var=alike) for alike in ways]
    assert found.by == pytest.approx(np.mean(ONE) - np.mean(two))
    assert found.probability == pytest.approx(max(t.pvalue for t in tests))
    wide = max((t.confidence_interval(0.95) for t in tests), key=lambda i: i.high - i.low)
    assert (found.low, found.high) == pytest.approx((wide.low, wide.high))


@independent("scipy.stats.bartlett, two sets stretched until its probability is 5 %")
@pytest.mark.parametrize("times", [0.98, 1.02])
def test_spreads_that_differ(times):
    stretch = times * optimize.brentq(
        lambda k: stats.bartlett(ONE, [k * v for v in TWO]).pvalue - 0.05, 1.0, 9.0
    )
    assert layouts.unlike([ONE, [stretch * v for v in TWO], [1.0]]) is (times > 1)


@independent("normal equations with a mean and dummies, solved by hand for an unequal 2 x 2 layout")
def test_two_way_difference_of_unequal_counts_against_another_coding():
    who = ["a"] * 4 + ["b"] * 5 + ["a"] * 2 + ["b"]
    tool = ["1"] * 4 + ["1"] * 5 + ["2"] * 2 + ["2"]
    values = [*ONE, *TWO]
    design = np.array(
        [[1.0, w == "a", t == "2"] for w, t in zip(who, tool, strict=True)], dtype=float
    )
    inverse = np.linalg.inv(design.T @ design)
    fit = inverse @ design.T @ np.array(values)
    squares = float(((np.array(values) - design @ fit) ** 2).sum())
    found = layouts.Layout(values, {"who": who, "tool": tool}).difference("who", "a", ["b"])
    assert found.by == pytest.approx(fit[1])
    assert found.error == pytest.approx(math.sqrt(squares / 9 * inverse[1, 1]))
    assert found.freedom == 9


@independent("a factor that spans the same column as another leaves no difference to it")
def test_what_the_layout_does_not_determine():
    who = list("aaabbbccc")
    tool = list("111111222")
    layout = layouts.Layout([float(i * i % 7) for i in range(9)], {"who": who, "tool": tool})
    assert layout.together("who", list("abc")) == [["a", "b"], ["c"]]
    assert layout.together("tool", list("12")) == [["1"], ["2"]]


@independent("F of a balanced 2 x 2 by sums of squares: (a1 - a2 - b1 + b2)^2 over the cells")
def test_whether_one_factor_hangs_on_the_other():
    cells = {("a", "1"): (10, 12), ("a", "2"): (14, 16), ("b", "1"): (11, 13), ("b", "2"): (10, 14)}
    values = [float(v) for pair in cells.values() for v in pair]
    factors = {
        "who": [w for w, _ in cells for _ in "12"],
        "tool": [t for _, t in cells for _ in "12"],
    }
    means = {cell: sum(pair) / 2 for cell, pair in cells.items()}
    away = means["a", "1"] - means["a", "2"] - means["b", "1"] + means["b", "2"]
    inside = sum((v - means[c]) ** 2 for c, pair in cells.items() for v in pair)
    ratio = (away**2 / 2) / (inside / 4)  # 2 pulls a cell: sum of squares 2 away^2 / 4
    assert layouts.Layout(values, factors).depends() == pytest.approx(stats.f.sf(ratio, 1, 4))


@independent("10,000 drawn samples of two sets: share in which Student's t is past 5 %")
def test_power_against_drawn_samples():
    drawn = np.random.default_rng(5)
    one, two = drawn.normal(0, 1, (10000, 8)), drawn.normal(1.3, 1, (10000, 8))
    share = float((stats.ttest_ind(one, two, axis=1).pvalue < 0.05).mean())
    away = 1.3 / math.sqrt(2 / 8)
    assert layouts.power(away, 14, 0.05) == pytest.approx(share, abs=0.015)
    assert layouts.power(layouts.errors_shown(14, 0.05), 14, 0.05) == pytest.approx(0.80, abs=1e-6)


@independent(
    "scipy.stats.nct, both sides of a two-sided test; far off the other side has no chance"
)
@pytest.mark.parametrize("away", [0.0, 0.5, 1.5, 3.0, 7.5])
def test_power_has_both_sides(away):
    most = stats.t.isf(0.15, 6)
    both = stats.nct.sf(most, 6, away) + stats.nct.cdf(-most, 6, away)
    assert layouts.power(away, 6, 0.30) == pytest.approx(both, abs=1e-9)
    assert layouts.power(40.0, 6, 0.05) == pytest.approx(1.0)


@independent(
    "scipy.stats.nct: the first number of pulls of two sets that has a power of 80 %; statsmodels "
    "0.15, TTestIndPower().solve_power(0.9, alpha=0.05, power=0.8): 20.39 in each"
)
def test_how_many_pulls_a_difference_takes():
    def has(count):
        free, away = count - 2, 0.9 / math.sqrt(4 / count)
        most = stats.t.isf(0.025, free)
        return stats.nct.sf(most, free, away) + stats.nct.cdf(-most, free, away)

    first = next(n for n in range(10, 200) if has(n) >= 0.80)
    assert first == math.ceil(2 * 20.39)
    five_each = 0.9 / math.sqrt(2 / 5), 8, 10, 0.05
    assert layouts.pulls_needed(*five_each, 200) == first
    assert layouts.pulls_needed(*five_each, first) == first
    assert layouts.pulls_needed(*five_each, first - 1) is None
    assert layouts.pulls_needed(9.0, *five_each[1:], 200) == 10  # shown by these already


@independent("10,000 drawn classes of as many pulls as are asked for: share in which t is past 5 %")
def test_so_many_more_pulls_have_the_power():
    need = layouts.pulls_needed(1.2 / math.sqrt(1 / 4 + 1 / 8), 10, 12, 0.05, 240)
    assert need % 3 == 0  # shared as these are: a third and two thirds
    drawn = np.random.default_rng(8)
    one = drawn.normal(0, 1, (10000, need // 3))
    two = drawn.normal(1.2, 1, (10000, 2 * need // 3))
    share = float((stats.ttest_ind(one, two, axis=1).pvalue < 0.05).mean())
    assert share == pytest.approx(0.80, abs=0.015)


@independent("t of the deleted residual by a fit without the value, scipy.stats.t, 5 % over eight")
def test_a_pull_that_stands_apart():
    sets = [[0, 1, 2, 3], [4, 5, 6, 7]]

    def chance(value):
        rest = [24.0, 25.0, 24.4]
        others = [27.0, 28.0, 27.5, 27.1]
        squares = sum((v - np.mean(s)) ** 2 for s in (rest, others) for v in s)
        error = math.sqrt(squares / 5 * (1 + 1 / 3))
        return 2 * stats.t.sf(abs(value - np.mean(rest)) / error, 5) * 8

    for value in (20.0, 21.5, 22.0, 22.5, 23.0):
        found = layouts.apart([24.0, 25.0, 24.4, value, 27.0, 28.0, 27.5, 27.1], sets)
        assert (found == [3]) == (chance(value) < 0.05), value
    assert {bool(chance(v) < 0.05) for v in (20.0, 23.0)} == {True, False}
