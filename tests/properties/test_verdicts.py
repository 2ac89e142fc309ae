"""The verdict arithmetic: a remembered limit may be off; a fail is shown where it is mildest."""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import given
from hypothesis import strategies as st

from wirecalc.engine.band import Given, merge_criteria
from wirecalc.published.sources import confirmed, from_memory
from wirecalc.said.criteria import Criterion, at_least, at_most
from wirecalc.said.verdicts import Verdict

PRINTED = confirmed("std", "a standard", "table 1", copies=2)
NUMBERS = st.floats(0.01, 1000.0)
OFF = st.sampled_from([("", "A", 0.25, 0.0), ("40 %", "A", 0.4, 0.0), ("3 A", "A", 0.0, 3.0)])
OFF_C = st.sampled_from([("", "C", 0.0, 10.0), ("15 K", "C", 0.0, 15.0)])


@given(NUMBERS, NUMBERS, OFF | OFF_C, st.sampled_from([at_least, at_most]))
def test_moving_a_remembered_limit_as_far_as_it_may_be_off_makes_no_pass_a_fail(
    actual: float,
    limit: float,
    off: tuple[str, str, float, float],
    judge: Callable[..., Criterion],
) -> None:
    text, unit, share, amount = off
    recalled = judge("x", actual, limit, unit, source=from_memory("m", "a standard", off=text))
    shift = share * limit + amount
    moved = [
        judge("x", actual, limit + way * shift, unit, source=PRINTED).verdict for way in (-1, 0, 1)
    ]
    if recalled.verdict is Verdict.PASS:
        assert set(moved) == {Verdict.PASS}
        assert "from memory" in recalled.reason
    elif recalled.verdict is Verdict.MARGINAL:
        assert moved[1] is Verdict.PASS and Verdict.FAIL in moved
    else:
        assert moved[1] is Verdict.FAIL


@given(st.lists(NUMBERS, min_size=2, max_size=27), NUMBERS, st.booleans())
def test_a_fail_is_shown_at_the_end_of_the_band_that_makes_it_sure(
    actuals: list[float], limit: float, upper: bool
) -> None:
    judge = at_most if upper else at_least
    runs = [[Given(judge("x", a, limit, "A", source=PRINTED), "me")] for a in actuals]
    (judged,) = merge_criteria(runs, 0).values()
    mildest = min(actuals) if upper else max(actuals)
    worst = max(actuals) if upper else min(actuals)
    if judged.verdict is Verdict.FAIL:
        assert judged.criterion.actual == mildest
        if len(set(actuals)) > 1:
            assert judged.reason.startswith("at least " if upper else "at most ")
    else:
        assert judged.criterion.actual == worst
