"""The verdict arithmetic of one criterion."""

import inspect
import math

import pytest

from wirecalc.published.sources import PRACTICE, Source, confirmed, from_memory
from wirecalc.said.criteria import Criterion, Origin, at_least, at_most, cannot_tell, requires
from wirecalc.said.findings import Finding, Judged
from wirecalc.said.verdicts import Verdict, worst

PRINTED = confirmed("std", "a standard", "table 1", copies=2)
RECALLED = from_memory("std", "a standard", "table 1")


@pytest.mark.parametrize(
    ("actual", "verdict"),
    [(20.0, "pass"), (22.0, "pass"), (19.999, "fail"), (0.0, "fail")],
)
def test_at_least(actual: float, verdict: str) -> None:
    assert at_least("pull", actual, 20.0, "lbf", source=PRINTED).verdict == verdict


@pytest.mark.parametrize(
    ("actual", "verdict"),
    [(15.0, "pass"), (15.001, "fail"), (12.0, "pass"), (12.5, "pass")],
)
def test_at_most(actual: float, verdict: str) -> None:
    assert at_most("load", actual, 15.0, "A", source=PRINTED).verdict == verdict


@pytest.mark.parametrize(
    ("actual", "verdict"), [(19.0, "fail"), (20.0, "marginal"), (24.9, "marginal"), (25.0, "pass")]
)
def test_caution_level(actual: float, verdict: str) -> None:
    criterion = at_least("pull", actual, 20.0, "lbf", source=PRINTED, caution=25.0)
    assert criterion.verdict == verdict


def test_one_number_typed_in_two_ways_is_one_number() -> None:
    assert at_least("strip", 6.35, 25.4 / 4, "mm", source=PRINTED).verdict == "pass"
    assert at_most("load", 0.1 + 0.2, 0.3, "A", source=PRINTED).verdict == "pass"


@pytest.mark.parametrize(
    ("actual", "verdict"),
    [
        (25.0, "pass"),  # kept even if the remembered 20 lbf are 25 % too low
        (24.99, "marginal"),
        (20.0, "marginal"),
        (19.99, "fail"),
    ],
)
def test_a_remembered_limit_counts_as_far_off_as_it_may_be(actual: float, verdict: str) -> None:
    assert at_least("pull", actual, 20.0, "lbf", source=RECALLED).verdict == verdict
    upper = at_most("load", 40 - actual, 20.0, "lbf", source=RECALLED)
    assert upper.verdict == verdict


def test_a_limit_from_memory_is_marked_whether_it_is_kept_or_not() -> None:
    kept = at_least("pull", 30.0, 20.0, "lbf", source=RECALLED)
    assert kept.reason == (
        "30 lbf, at least 20 lbf; limit from memory, kept even if that is off by 25 %"
    )
    near = at_least("pull", 21.0, 20.0, "lbf", source=RECALLED)
    assert near.reason == "21 lbf, at least 20 lbf; limit from memory: confirm it"
    assert near.next_action == "confirm the limit in a copy of its source"
    assert requires("mix", True, says="", source=RECALLED).verdict == "marginal"


@pytest.mark.parametrize(
    ("off", "unit", "passes", "marginal"),
    [
        ("", "C", 120.0, 120.01),  # 10 K, unless the table says otherwise
        ("15 K", "C", 115.0, 115.01),
        ("10 %", "A", 117.0, 117.01),
        ("2 A", "A", 128.0, 128.01),
        ("2 A", "mm", 97.5, 97.51),  # no amount of this unit: 25 %
    ],
)
def test_how_far_off_is_in_the_terms_of_the_source(
    off: str, unit: str, passes: float, marginal: float
) -> None:
    source = RECALLED._replace(off=off)
    assert at_most("x", passes, 130.0, unit, source=source).verdict == "pass"
    assert at_most("x", marginal, 130.0, unit, source=source).verdict == "marginal"


def test_a_caution_level_of_a_remembered_limit_may_be_off_too() -> None:
    def of(actual: float) -> str:
        return at_most("x", actual, 100.0, "A", source=RECALLED, caution=80.0).verdict

    assert (of(60.0), of(60.1), of(80.1), of(100.1)) == ("pass", "marginal", "marginal", "fail")


def test_advisory_limit_missed_is_marginal() -> None:
    criterion = at_most("strip", 9.0, 8.0, "mm", source=PRACTICE, advisory=True)
    assert criterion.verdict == "marginal"
    assert "advised" in criterion.reason


def test_a_limit_without_a_number_is_not_kept() -> None:
    assert Criterion("x", "at most", None, 5.0).verdict is Verdict.FAIL
    assert Criterion("x", "at least", 5.0, None).verdict is Verdict.FAIL


def test_requires() -> None:
    assert requires("copper", True, says="no", source=PRINTED).verdict == "pass"
    failed = requires("copper", False, says="it is aluminium", source=PRINTED)
    assert (failed.verdict, failed.reason) == ("fail", "it is aluminium")


def test_cannot_tell_says_what_would_settle_it() -> None:
    criterion = cannot_tell("load", "ambient unknown", measure="measure the air")
    assert criterion.verdict == "cannot tell"
    assert (criterion.reason, criterion.action) == ("ambient unknown", "measure the air")


def test_reason_holds_actual_limit_and_unit() -> None:
    assert at_least("pull", 19.2, 20.0, "lbf", source=PRINTED).reason == "19.2 lbf is below 20 lbf"
    past = at_most("load", 13.0, 15.0, "A", source=PRINTED, caution=12.0)
    assert past.reason == "13 A is within the limit of 15 A and past the caution level of 12 A"


def test_margin_is_negative_outside() -> None:
    assert at_least("a", 19.0, 20.0, source=PRINTED).margin == -1.0
    assert at_most("a", 19.0, 20.0, source=PRINTED).margin == 1.0
    assert cannot_tell("a", "b").margin is None


def test_no_maker_of_criteria_takes_a_verdict() -> None:
    for maker in (at_least, at_most, requires, cannot_tell, Criterion):
        assert "verdict" not in inspect.signature(maker).parameters


def test_worst() -> None:
    assert worst([Verdict.PASS, Verdict.CANNOT_TELL, Verdict.MARGINAL]) is Verdict.CANNOT_TELL
    assert worst([Verdict.CANNOT_TELL, Verdict.FAIL]) is Verdict.FAIL
    assert worst([]) is None


def test_closeness_finds_the_weakest_link() -> None:
    tight = at_most("a", 14.0, 15.0, "A", source=PRINTED)
    loose = at_most("b", 1.0, 15.0, "A", source=PRINTED)
    without_numbers = requires("c", True, says="", source=PRINTED)
    assert tight.closeness < loose.closeness < without_numbers.closeness == math.inf


@pytest.mark.parametrize(
    ("criterion", "share"),
    [
        (at_most("a", 10.0, 15.0, "A", source=PRINTED, caution=12.0), 2 / 12),  # kept: to caution
        (at_most("a", 13.0, 15.0, "A", source=PRINTED, caution=12.0), 2 / 15),  # past caution
        (at_least("a", 15.0, 10.0, "A", source=PRINTED, caution=12.0), 3 / 12),
        (at_least("a", 11.0, 10.0, "A", source=PRINTED, caution=12.0), 1 / 10),
        (at_most("a", 18.0, 15.0, "A", source=PRINTED, caution=12.0), -3 / 15),
        (at_most("a", -20.0, -10.0, "C", source=PRINTED), 10 / 10),  # 10 K below -10 C
        (at_least("a", -20.0, -40.0, "C", source=PRINTED), 20 / 40),
        (at_least("a", -50.0, -40.0, "C", source=PRINTED), -10 / 40),
        (at_most("a", 0.0, 0.0, "A", source=PRINTED), math.inf),  # no share of nothing
        (at_most("a", 1.0, 0.0, "A", source=PRINTED), 0.0),
        (at_most("a", 1.0, 0.0, "A", source=PRINTED, advisory=True), math.inf),
        (requires("a", False, says="no", source=PRINTED), 0.0),
        (cannot_tell("a", "not known"), 0.0),
    ],
)
def test_closeness_is_a_share_of_the_level_that_is_next(criterion: Criterion, share: float) -> None:
    assert criterion.closeness == pytest.approx(share)


def test_what_to_do_is_the_criterions_own_unless_only_memory_is_in_the_way() -> None:
    def next_action(actual: float, source: Source = PRINTED) -> str:
        criterion = at_most("a", actual, 15.0, "A", source=source, caution=12.0, action="size up")
        return criterion.next_action

    assert (next_action(10.0), next_action(13.0), next_action(16.0)) == ("size up",) * 3
    assert next_action(11.9, RECALLED) == "confirm the limit in a copy of its source"
    assert next_action(13.0, RECALLED) == "size up"


def test_sure_reason_is_of_the_mildest_end_of_the_band() -> None:
    low = at_least("pull", 19.0, 20.0, "lbf", source=PRINTED, says="recrimp")
    assert low.sure_reason == "at most 19 lbf, below 20 lbf; recrimp"
    high = at_most("load", 16.0, 15.0, "A", source=PRINTED)
    assert high.sure_reason == "at least 16 A, above 15 A"
    kept = at_most("load", 14.0, 15.0, "A", source=PRINTED)
    assert kept.sure_reason == kept.reason == "14 A, at most 15 A"
    without = requires("copper", False, says="it is aluminium", source=PRINTED)
    assert without.sure_reason == "it is aluminium"


def test_reason_of_what_holds_without_numbers() -> None:
    assert requires("copper", True, says="it is aluminium", source=PRINTED).reason == ""
    recalled = requires("copper", True, says="it is aluminium", source=RECALLED)
    assert recalled.reason == "limit from memory: confirm it"


def test_reason_names_the_level_that_is_kept() -> None:
    kept = at_most("load", 10.0, 15.0, "A", source=PRINTED, caution=12.0, says="size up")
    assert kept.reason == "10 A, at most 12 A"
    advised = at_most("strip", 9.0, 8.0, "mm", source=PRACTICE, advisory=True, says="trim it")
    assert advised.reason == "9 mm is above 8 mm, the advised limit; trim it"


def test_of_two_that_failed_the_published_limit_decides_before_the_shops_own() -> None:
    """19 lbf misses the printed 20 by less than the shop's 25, and is worse news."""
    printed = at_least("pull", 19.0, 20.0, "lbf", source=PRINTED)
    own = at_least("shop pull", 19.0, 25.0, "lbf", source=PRINTED, origin=Origin.HOUSE)
    between = printed._replace(actual=21.0)
    assert own.closeness < printed.closeness
    assert _decider(own, printed) == "pull"
    assert _decider(own, between) == "shop pull"
    near = own._replace(actual=25.5)
    assert _decider(near, printed._replace(actual=25.5)) == "shop pull"


def _decider(*criteria: Criterion) -> str:
    judged = tuple(Judged(c, "bundled", c.verdict, c.reason) for c in criteria)
    decided = Finding("pull", "bundled", "1", (), criteria=judged).decided_by
    assert decided is not None
    return decided.criterion.name


def test_a_caution_level_above_a_least_is_said_as_it_lies() -> None:
    low = at_least("start peak", 10.8, 0.867, "A", source=PRINTED, caution=12.14)
    assert (
        low.reason == "10.8 A is over the least of 0.867 A and under the caution level of 12.14 A"
    )
