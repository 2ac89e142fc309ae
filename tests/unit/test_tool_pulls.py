"""The pulls of a tool over time. The jobs here are invented and written by hand."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from wirecalc.base.errors import BadText
from wirecalc.jobs.tool_pulls import Pull, chart, pulls, same

DAY = datetime.date(2026, 3, 1)


def job(*criteria: tuple[Any, ...], tool: str | None = "A", stage: str = "as left") -> Any:
    """A job with one pull; a criterion has its name, actual value, limit and low end."""
    judged = [dict(zip(("name", "actual", "limit", "low"), c, strict=True)) for c in criteria]
    inputs = [{"name": "wire", "value": "18 AWG"}]
    finding = {"calculation": "pull", "criteria": judged, "inputs": inputs}
    return {"checks": [{"stage": stage, "tool": tool, "finding": finding}]}


PLAIN = ("pull-out force", 24.0, 20.0, None)


@pytest.mark.parametrize(
    ("found", "shares"),
    [
        (job(PLAIN), [120]),
        (job(("pull-out force", 19.5, 20.0, 18.5)), [92.5]),  # a fail: its actual is the high end
        (job(PLAIN, ("pull-out force", 24.0, 25.0, None)), [96]),  # a shop's own limit is stricter
        (job(PLAIN, ("hand tug", 1.0, 4.0, None)), [120]),
        (job(("pull-out force", None, 20.0, None)), []),
        (job(("pull-out force", 24.0, None, None)), []),
        (job(PLAIN, tool=None), []),
        (job(PLAIN, tool="  "), []),
        (job(PLAIN, stage="option"), []),
        (job(PLAIN, stage="as found"), [120]),
        ({"checks": [{"stage": "as left", "tool": "A", "finding": None}]}, []),
        ({"checks": [{**job(PLAIN)["checks"][0], "finding": {"calculation": "strip"}}]}, []),
    ],
)
def test_a_pull_is_a_share_of_the_strictest_limit_at_the_low_end(
    found: Any, shares: list[float]
) -> None:
    assert [p.share for p in pulls(DAY, found)] == shares


@pytest.mark.parametrize("bad", [{}, {"checks": 5}, {"checks": [{}]}])
def test_what_is_no_job_is_said(bad: Any) -> None:
    with pytest.raises(BadText, match="missing or wrong"):
        list(pulls(DAY, bad))


def test_a_name_is_one_whatever_its_case_and_spaces() -> None:
    assert same("Crimper  A") == same("crimper a") != same("crimper b")


def _months(shares: list[float]) -> list[Pull]:
    days = (DAY + datetime.timedelta(days=30 * n) for n in range(len(shares)))
    return [Pull(day, "A", "18 AWG" if n % 2 else "16 AWG", share)
            for n, (day, share) in enumerate(zip(days, shares, strict=True))]  # fmt: skip


def test_a_drift_is_told_from_ten_pulls_on() -> None:
    shares = [140.0, 150, 130, 145, 120, 118, 116, 112, 110, 104]
    drawn = chart(_months(shares))
    assert "10 pulls of A from 2026-03-01 to 2026-11-26" in drawn.text
    assert "Lowest: 104 % on 2026-11-26 (18 AWG)." in drawn.text
    # sorted by hand: 120 130 140 145 150 and 104 110 112 116 118
    assert "Median of the first 5: 140 %, of the last 5: 112 %." in drawn.text
    assert [p.name for p in drawn.points] == ["16 AWG", "18 AWG"]
    assert list(drawn.points[0].x) == [0, 60, 120, 180, 240]
    assert [(limit.name, limit.y) for limit in drawn.limits] == [("limit", 100)]
    nine = chart(_months(shares[:9])).text
    assert "Fewer than 10: too few to tell a drift." in nine
    assert "Median" not in nine


def test_the_lowest_is_never_shown_as_more_than_it_is() -> None:
    assert "Lowest: 99.99 % on" in chart(_months([99.998])).text
    assert "1 pull of A" in chart(_months([99.998])).text
