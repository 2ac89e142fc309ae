"""What the rows of a batch came to together."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc.base.errors import Problem
from wirecalc.jobs.batch_row import Found, RowResult, score_of
from wirecalc.jobs.batch_tally import MOST_CLOSE, Refused, Tally
from wirecalc.output.batch_summary import summary_lines


def pulled(force: str) -> wirecalc.Finding:
    """An 18 AWG ring: 20 lbf (UL 486A)."""
    return wirecalc.run("pull", wire="18 AWG", terminal="ring", force=force)


def row(number: int, force: str, label: str = "") -> RowResult:
    return RowResult(number, label, {}, Found(score=score_of(pulled(force))))


def refused(number: int, *problems: Problem) -> RowResult:
    return RowResult(number, "", {}, Found(problems=problems))


def watched(*rows: RowResult) -> Tally:
    tally = Tally()
    assert list(tally.watch(rows)) == list(rows)
    return tally


def test_what_decided_is_counted_by_its_verdict() -> None:
    forces = ("24 lbf", "30 lbf", "17 lbf", "unknown")
    tally = watched(*(row(n, f) for n, f in enumerate(forces, start=2)))
    assert tally.decided == {
        "pull-out force": {"pass": 2, "fail": 1},
        "force": {"cannot tell": 1},
    }


def test_the_closest_are_on_either_side_and_at_most_ten() -> None:
    forces = ("30 lbf", "19 lbf", "20.5 lbf", "17 lbf")  # 50, -5, 2.5 and -15 % of 20 lbf
    rows = [row(n, f, f"no. {n}") for n, f in enumerate(forces, start=2)]
    closest = watched(*rows).closest
    assert [c.row for c in closest] == [4, 3, 5, 2]
    assert [c.level.share for c in closest] == pytest.approx([0.025, -0.05, -0.15, 0.5])
    assert closest[0].label == "no. 4"
    assert MOST_CLOSE == 10
    many = watched(*(row(n, f"{20 + n} lbf") for n in range(14, 1, -1)))
    assert [c.row for c in many.closest] == [*range(2, 12)]


def test_a_band_across_the_limit_is_the_closest() -> None:
    rows = [row(n, f) for n, f in ((2, "20.1 lbf"), (3, "21 lbf ±2 lbf"))]
    tally = watched(*rows)
    assert [(c.row, c.level.share) for c in tally.closest] == [(3, 0.0), (2, pytest.approx(0.005))]
    said = " ".join(summary_lines(tally))
    assert "row 3: pull-out force 19 to 23 lbf, limit 20 lbf (+0.0%), cannot tell" in said


def test_of_rows_alike_the_first_are_the_closest() -> None:
    score = score_of(pulled("24 lbf"))
    alike = watched(*(RowResult(n, "", {}, Found(score=score)) for n in range(2, 20)))
    assert [c.row for c in alike.closest] == [*range(2, 12)]


def test_the_refused_are_counted_by_input_with_the_first_of_each() -> None:
    wrong = Problem("force", "'24,1' has a comma", "write 24.1")
    more = (Problem("force", "is not clear"), Problem("wire", "is no wire"))
    tally = watched(refused(2, wrong), refused(3, *more))
    assert tally.refused == 2
    assert tally.refusals == {
        "force": Refused(2, 2, "force: '24,1' has a comma; write 24.1"),
        "wire": Refused(1, 3, "wire: is no wire"),
    }


def test_the_summary_in_words() -> None:
    rows = [row(n, f) for n, f in ((2, "24 lbf"), (3, "19 lbf"))]
    said = "\n".join(summary_lines(watched(*rows, refused(4, Problem("", "x")))))
    assert "pull-out force: 1 pass, 1 fail" in said
    assert "row 3: pull-out force 19 lbf, limit 20 lbf (-5.0%), fail" in said
    assert said.index("row 3:") < said.index("row 2: pull-out force 24 lbf, limit 20 lbf (+20.0%)")
    assert "1 for the row, first row 4" in said
