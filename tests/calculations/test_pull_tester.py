"""What the shared tests need to know of `pull-tester`, and its published checks."""

from __future__ import annotations

import math
import random
from pathlib import Path

import pytest
from scipy import stats

import wirecalc
from tests.published.records import independent, memory, practice
from wirecalc_plugins.joint.repeated_pulls import repeated

from .trial import Bad, Trial

TRIAL = Trial(
    good={"force": "24.1 lbf"},
    zero=("force",),
    bad=(
        Bad("force", "24 lb", "'lb'", "lbf"),
        Bad("force", ["24.1 lbf", "23.4 lb", "25.0 lbf"], "'lb'", "lbf"),
        Bad("force", ["24.1 lbf", "24.1 lbf"], "all 2 forces are 24.1 lbf", "check the record"),
    ),
    light=False,  # its intervals are statistics
    drawn_in=("test_batch.py",),
    why="As for one pull: every sample is destroyed.",
    cautions=("pull-01",),
    not_checked=("reads true", "the wire's own"),
)

# Resistivity of silicon by five instruments, ohm cm; taken as lbf here
SILICON = {
    "1": (196.3052, 196.1240, 196.1890, 196.2569, 196.3403),
    "2": (196.3042, 196.3825, 196.1669, 196.3257, 196.0422),
    "3": (196.1303, 196.2005, 196.2889, 196.0343, 196.1811),
    "4": (196.2795, 196.1748, 196.1494, 196.1485, 195.9885),
    "5": (196.2119, 196.1051, 196.1850, 196.0052, 196.2090),
}


@memory(
    "NIST Statistical Reference Datasets, analysis of variance, SiRstv: mean squares "
    "1.27865654E-02 and 1.08318280E-02, F 1.18046237440255, residual deviation 1.04076068334656E-01"
)
def test_mean_squares_of_the_reference_data() -> None:
    """The certified sums come out of the data, so that both are remembered rightly."""
    found = repeated(list(SILICON.values()))
    assert found is not None
    assert found.squares == pytest.approx((1.27865654e-2, 1.08318280e-2), rel=1e-9)
    assert found.within == pytest.approx(1.04076068334656e-1, rel=1e-9)
    assert found.chance == pytest.approx(stats.f.sf(1.18046237440255, 4, 20), rel=1e-9)
    assert found.between == pytest.approx(math.sqrt((1.27865654e-2 - 1.08318280e-2) / 5), rel=1e-9)


@independent("by hand: occasions of 2, 3 and 4 pulls, means 30, 32 and 31")
def test_components_of_unequal_counts() -> None:
    found = repeated([[29.0, 31.0], [31.0, 32.0, 33.0], [30.0, 30.0, 32.0, 32.0]])
    assert found is not None
    # within: (2 + 2 + 4) / (9 - 3); grand mean 280 / 9; n0 = (9 - (4 + 9 + 16) / 9) / 2 = 26 / 9
    grand = 280 / 9
    between = (2 * (30 - grand) ** 2 + 3 * (32 - grand) ** 2 + 4 * (31 - grand) ** 2) / 2
    assert found.squares == pytest.approx((between, 8 / 6))
    assert found.weight == pytest.approx(26 / 9)
    assert found.between == pytest.approx(math.sqrt((between - 8 / 6) / (26 / 9)))
    parts = between / (26 / 9), (1 - 9 / 26) * 8 / 6
    assert found.one_pull == pytest.approx(math.sqrt(sum(parts)))
    assert found.freedom == pytest.approx(sum(parts) ** 2 / (parts[0] ** 2 / 2 + parts[1] ** 2 / 6))
    assert found.half == pytest.approx(found.one_pull * stats.t.ppf(0.975, found.freedom))


@independent("by hand: two occasions of one mean, (2 + 8) / 4 within them and nothing between")
def test_occasions_that_do_not_differ_add_nothing() -> None:
    found = repeated([[29.0, 30.0, 31.0], [28.0, 30.0, 32.0]])
    assert found is not None
    assert (found.between, found.chance) == (0.0, 1.0)
    assert found.one_pull == pytest.approx(math.sqrt(10 / 4))
    assert found.half == pytest.approx(math.sqrt(10 / 4) * stats.t.ppf(0.975, 4))


@independent("600 drawn testers: their components on the average, and how often the interval holds")
def test_components_are_those_that_were_drawn_from() -> None:
    drawn = random.Random(4)
    within, between, holds = 0.0, 0.0, 0
    for _ in range(600):
        groups = [
            [day + drawn.gauss(0, 0.5) for _ in range(n)]
            for n in (3, 5, 8, 4, 6, 4)
            for day in (30 + drawn.gauss(0, 1.0),)
        ]
        found = repeated(groups)
        assert found is not None
        assert found.between is not None
        within += found.within**2 / 600
        between += found.between**2 / 600
        holds += found.low <= 0.5 <= found.high
    assert within == pytest.approx(0.25, rel=0.03)
    assert between == pytest.approx(1.0, rel=0.06)
    assert holds / 600 == pytest.approx(0.95, abs=0.02)


@independent("scipy: s, chi-square interval and t of one occasion")
def test_one_occasion() -> None:
    pulls = [31.2, 30.8, 31.5, 31.1, 30.9]
    finding = wirecalc.run("pull-tester", force=[f"{v} lbf" for v in pulls])
    s = stats.tstd(pulls)
    half = s * stats.t.ppf(0.975, 4)
    expected = {
        "one pull to the next": s,
        "one pull to the next, least": s * math.sqrt(4 / stats.chi2.ppf(0.975, 4)),
        "one pull to the next, most": s * math.sqrt(4 / stats.chi2.ppf(0.025, 4)),
        "95 % of such pulls lie within, plus or minus": half,
    }
    for name, value in expected.items():
        assert finding.figure(name).figure.value == pytest.approx(value), name
    assert finding.verdict is None
    assert "the tester's own part within it" in finding.answers[0].text
    assert len(wirecalc.run("pull-tester", force=["31 lbf", "32 lbf", "30 lbf"]).criteria) == 1


@independent(
    "the reference data above, and a sixth day that lies far off: F of 1.18, and of far more"
)
@pytest.mark.parametrize(
    ("silicon", "said"),
    [(SILICON, "no difference shown"), ({**SILICON, "6": (190.0, 190.1, 190.2)}, "they differ")],
)
def test_occasions_of_a_file(
    tmp_path: Path, silicon: dict[str, tuple[float, ...]], said: str
) -> None:
    path = tmp_path / "spool.csv"
    rows = [f"day {day},{force}" for day, its in silicon.items() for force in its]
    path.write_text("\n".join(["day,force [lbf]", *rows, ""]), encoding="utf-8")
    finding = wirecalc.run("pull-tester", readings=str(path), by=["day"])
    assert finding.answers[1].text.startswith(said)
    assert [row[0] for row in finding.listings[0].rows] == [f"day {day}" for day in silicon]


@practice("five pulls at least, and two on one occasion")
def test_what_cannot_be_told() -> None:
    def unsure(*forces: float) -> list[str]:
        finding = wirecalc.run("pull-tester", force=[f"{v} lbf" for v in forces])
        return [c.criterion.name for c in finding.criteria]

    assert unsure(31.0, 31.2, 31.4, 31.1) == ["number of pulls"]
    assert unsure(31.0, 31.2, 31.4, 31.1, 30.9) == []
    assert unsure(31.0) == ["number of pulls", "pulls of one occasion"]
