"""Made-up classes of known truth: the line on each learner and tool says what is true of it."""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from scipy import optimize, stats

import wirecalc

Pulled = list[tuple[str, str, float]]  # learner, tool, lbf
NOTHING = "no difference shown"


def pulled(counts: Callable[[int, int], int], off: Callable[[int, int], float]) -> Pulled:
    """Pulls of six learners with two tools about 28 lbf, normal scatter of 1 lbf, invented."""
    drawn = random.Random(7)
    return [
        (str(who), str(tool), round(28 + off(who, tool) + drawn.gauss(0, 1), 1))
        for who in range(1, 7)
        for tool in (1, 2)
        for _ in range(counts(who, tool))
    ]


def even(who: int, tool: int) -> int:
    return 4


def unequal(who: int, tool: int) -> int:
    """The third learner has the second tool mostly, the fifth pulled three times."""
    return {(3, 1): 3, (3, 2): 9, (5, 1): 2, (5, 2): 1, (2, 2): 3, (1, 1): 7}.get((who, tool), 5)


def with_outlier() -> Pulled:
    rows = pulled(even, lambda who, tool: 0)
    rows[26] = (rows[26][0], rows[26][1], 15.0)  # the fourth learner, the second tool
    return rows


def said(tmp_path: Path, rows: Pulled, by: tuple[str, ...]) -> dict[str, str]:
    """What is said of each learner and tool."""
    path = tmp_path / "class.csv"
    path.write_text("learner,tool,force [lbf]\n" + "".join(f"{w},{t},{f}\n" for w, t, f in rows))
    finding = wirecalc.run(
        "pull-batch", wire="18 AWG", terminal="ring", readings=str(path), by=list(by)
    )
    found: dict[str, str] = {}
    for answer in finding.answers:
        if answer.name == NOTHING:
            found |= dict.fromkeys(answer.text.split(", "), NOTHING)
        else:
            found[answer.name] = answer.text
    return found


def low(apart: Mapping[str, str]) -> dict[str, str]:
    everyone = [f"learner {n}" for n in range(1, 7)] + ["tool 1", "tool 2"]
    return dict.fromkeys(everyone, NOTHING) | dict(apart)


LEARNER = {"learner 3": "low with both tools"}
TOOL = {"tool 2": "low for everyone"}
CLASSES: dict[str, tuple[Pulled, dict[str, str]]] = {
    "one learner low": (pulled(even, lambda who, tool: -3.0 * (who == 3)), LEARNER),
    "one tool low": (pulled(even, lambda who, tool: -3.0 * (tool == 2)), TOOL),
    "both": (pulled(even, lambda who, tool: -4.0 * (who == 3) - 3.0 * (tool == 2)), LEARNER | TOOL),
    "unequal counts": (
        pulled(unequal, lambda who, tool: -3.0 * (tool == 2)),
        TOOL | {"learner 5": "too few pulls to say"},
    ),
    "an outlier": (
        with_outlier(),
        {"learner 4": f"{NOTHING}; one pull stands apart, pull 27 of the file"},
    ),
    "nothing": (pulled(even, lambda who, tool: 0.0), {}),
}


@pytest.mark.parametrize("name", CLASSES)
def test_a_line_says_what_is_true_of_each(tmp_path: Path, name: str) -> None:
    rows, apart = CLASSES[name]
    found = said(tmp_path, rows, ("learner", "tool"))
    assert {n: text for n, text in found.items() if low(apart).get(n) != text} == {}
    assert set(low(apart)) - set(found) <= {"tool 1"}  # the other of two that differ


def test_a_learner_who_had_the_low_tool_mostly_is_not_blamed(tmp_path: Path) -> None:
    """Grouped by learner alone, the tool is looked for all the same."""
    rows = pulled(
        lambda who, tool: 2 + 7 * ((who == 3) == (tool == 2)), lambda who, tool: -3.0 * (tool == 2)
    )
    found = said(tmp_path, rows, ("learner",))
    assert found["learner 3"] == "can't tell: not shown with tool accounted for"


def test_a_learner_who_alone_had_a_tool_is_not_told_from_it(tmp_path: Path) -> None:
    rows = [
        (who, "2" if who == "3" else "1", force)
        for who, _, force in pulled(even, lambda who, tool: -4.0 * (who == 3))
    ]
    assert said(tmp_path, rows, ("learner",))["learner 3"] == "can't tell: tool changes with it"
    both = said(tmp_path, rows, ("learner", "tool"))
    assert both["learner 3"] == "can't tell it from the tool that goes with it"
    assert both["tool 2"] == "can't tell it from the learner that goes with it"
    assert both["learner 1"] == NOTHING


def test_a_learner_who_is_low_with_one_tool_only_is_told_so(tmp_path: Path) -> None:
    rows = pulled(even, lambda who, tool: -5.0 * ((who, tool) == (4, 2)))
    assert said(tmp_path, rows, ("learner", "tool"))["learner 4"] == "low with tool 2"


def test_a_difference_that_one_pull_makes_is_not_told(tmp_path: Path) -> None:
    """Two learners: the lower one by its lowest pull alone."""
    one = [28.0, 28.4, 27.6, 28.2, 27.8, 28.1, 27.9, 28.3]
    two = [27.8, 27.5, 27.6, 27.4, 27.7, 27.5, 27.6, 26.0]
    rows = [("1", "1", f) for f in one] + [("2", "1", f + 0.25) for f in two]
    assert said(tmp_path, rows, ("learner",))["learner 2"].startswith(
        ("can't tell: hangs on one pull that stands apart, pull 16", NOTHING)
    )


def test_a_lesson_sets_each_learner_beside_himself(tmp_path: Path) -> None:
    """The second column of the made-up rows is before (1) and after (2) the lesson."""
    everyone = pulled(even, lambda who, tool: 2.0 * (tool == 2) - 2.0 * (who == 1))
    assert said(tmp_path, everyone, ("learner", "tool"))["tool 1"] == "low for everyone"
    one = pulled(even, lambda who, tool: 6.0 * ((who, tool) == (4, 2)))
    assert said(tmp_path, one, ("learner", "tool"))["tool 1"] == "low with learner 4"


def test_who_has_nobody_with_enough_pulls_beside_him_is_told_so(tmp_path: Path) -> None:
    rows = pulled(lambda who, tool: 5 if who == 1 else 1, lambda who, tool: 0.0)
    for by in (("learner",), ("learner", "tool")):
        found = said(tmp_path, rows, by)
        assert found["learner 1"] == "too few pulls of the others to say"
        assert found["learner 2"] == "too few pulls to say"


@pytest.mark.parametrize(("few", "text"), [(4, "too few pulls to say"), (5, NOTHING)])
def test_five_pulls_say_something_and_four_do_not(tmp_path: Path, few: int, text: str) -> None:
    rows = pulled(lambda who, tool: few if who == 2 else 6, lambda who, tool: 0.0)
    found = said(tmp_path, [row for row in rows if row[1] == "1"], ("learner",))
    assert found["learner 2"] == text


@pytest.mark.parametrize(("few", "enough"), [(3, True), (2, False)])
def test_with_a_tool_three_pulls_are_enough_and_two_are_not(
    tmp_path: Path, few: int, enough: bool
) -> None:
    rows = pulled(
        lambda who, tool: few if (who, tool) == (4, 2) else 6,
        lambda who, tool: -6.0 * ((who, tool) == (4, 2)),
    )
    found = said(tmp_path, rows, ("learner", "tool"))["learner 4"]
    assert found.startswith("low")
    assert (found == "low with tool 2") is enough


def test_more_than_eight_of_whom_nothing_is_shown_are_counted(tmp_path: Path) -> None:
    drawn = random.Random(1)
    for many, text in ((8, "learner 8"), (9, "9 of the column learner")):
        flat = [
            (str(w), "1", round(drawn.gauss(28, 1), 1)) for w in range(1, many + 1) for _ in "12345"
        ]
        assert text in said(tmp_path, flat, ("learner",))


def test_who_has_too_few_is_told_how_many_are_missing(tmp_path: Path) -> None:
    path = tmp_path / "few.csv"
    rows = [("A", f) for f in (24.0, 24.6, 25.1, 23.8, 24.3)] + [
        ("B", f) for f in (24.2, 24.9, 24.4)
    ]
    path.write_text("learner,force [lbf]\n" + "".join(f"{w},{f}\n" for w, f in rows))
    finding = wirecalc.run(
        "pull-batch", wire="18 AWG", terminal="ring", readings=str(path), by=["learner"]
    )
    assert [a.evidence_against for a in finding.answers if a.name == "learner B"] == [
        ("5 at least: 2 more",)
    ]


def more_said(tmp_path: Path, apart: float) -> str:
    """What is said of more pulls, for two learners of six pulls each so many lbf apart."""
    one = [24.0, 24.6, 25.1, 23.8, 24.3, 24.2]
    rows = [("A", "1", f) for f in one] + [("B", "1", round(f + apart, 9)) for f in one]
    path = tmp_path / "two.csv"
    path.write_text("learner,force [lbf]\n" + "".join(f"{w},{f:.9f}\n" for w, _, f in rows))
    finding = wirecalc.run(
        "pull-batch", wire="18 AWG", terminal="ring", readings=str(path), by=["learner"]
    )
    return next(said for a in finding.answers for said in a.evidence_for if "power of 80%" in said)


def test_how_many_more_pulls_a_claim_takes_is_counted(tmp_path: Path) -> None:
    """Against scipy's noncentral t; up to twenty times as many as there are, 12 here."""
    scatter = stats.tstd([24.0, 24.6, 25.1, 23.8, 24.3, 24.2])

    def power(apart: float, count: int) -> float:
        away, most = apart / scatter / (4 / count) ** 0.5, stats.t.isf(0.025, count - 2)
        return float(stats.nct.sf(most, count - 2, away) + stats.nct.cdf(-most, count - 2, away))

    need = next(n for n in range(13, 240) if power(0.4, n) >= 0.80)
    assert (
        f"it takes about {need - 12} more pulls, shared as these are, to show it so"
    ) in more_said(tmp_path, 0.4)
    shown = optimize.brentq(lambda apart: power(apart, 12) - 0.80, 0.1, 1.5)
    assert float(more_said(tmp_path, 0.4).partition(" show ")[2].split()[0]) == pytest.approx(
        shown, rel=1e-3
    )
    least = optimize.brentq(lambda apart: power(apart, 240) - 0.80, 0.01, 0.4)
    assert "about 228 more pulls" in more_said(tmp_path, 1.0001 * least)
    assert "more than 20 times as many pulls" in more_said(tmp_path, 0.9999 * least)


def test_what_a_tug_finds_and_what_it_cannot() -> None:
    """The invented tugged and pulled crimps: two came off; of ten that held three are below."""
    finding = wirecalc.run(
        "pull-batch",
        wire="18 AWG",
        terminal="ring",
        readings=str(Path(__file__).parents[2] / "docs/examples/tug-and-pull.csv"),
        by=["tug"],
    )
    lowest = {
        name: finding.criterion(f"{name}: lowest pull, ul-486a").criterion.actual
        for name in ("held", "came off")
    }
    assert lowest == {"held": 11.2, "came off": 4.2}
    (build,) = finding.charts
    points = [(x, y) for series in build().points for x, y in zip(series.x, series.y, strict=True)]
    assert sorted(y for x, y in points if x == 0 and y < 20) == [11.2, 13.6, 17.9]
    assert sum(x == 0 and y >= 24.7 for x, y in points) == 7
