"""One run in its parts: what is read and remembered, merged over the band, refused and tried."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any

import pytest

from wirecalc import (
    PRACTICE,
    Count,
    Finding,
    HouseRule,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    YesNo,
    answer,
    assumed,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    extra,
    figure,
    may_be_absent,
    not_checked,
    setting,
)
from wirecalc.base.errors import BadInput
from wirecalc.engine.example_variants import variants
from wirecalc.engine.from_plugins import ProvidedCalculation, ProvidedRule
from wirecalc.engine.remembered import Remembered
from wirecalc.engine.running import run
from wirecalc.published.sources import confirmed

PRINTED = confirmed("std", "a standard", "table 1", copies=2)
A = Reading("A", low=0, high=100, typical="5 A", text="amps")


def go(calc: Any, given: dict[str, object], **how: Any) -> Finding:
    return run(ProvidedCalculation("demo", "1.0", calc), given, **how)


@calculation(part="test")
def limited(load: Annotated[float, A]) -> Iterator[Item]:
    """Is the load between two limits that need more digits than are shown?"""
    yield at_most("not too much", load, 3.00012, "A", source=PRINTED, action="less")
    yield at_least("not too little", load, 2.00012, "A", source=PRINTED, action="more")
    yield at_most("no limit at all", load, 1000.0, "A", source=PRINTED)


def test_a_reading_without_an_error_is_judged_as_it_stands() -> None:
    judged = go(limited, {"load": "4 A"}).criterion("not too much")
    assert (judged.reason, judged.action) == ("4 A is above 3 A", "less")
    assert (judged.low, judged.high) == (None, None)


def test_a_band_against_a_limit_is_shown_with_the_limit_rounded_to_its_strict_side() -> None:
    high = go(limited, {"load": "3 A ±0.5 A"}).criterion("not too much")
    assert high.reason == "2.5 to 3.5 A reaches across 3 A: too close for this meter"
    low = go(limited, {"load": "2 A ±0.5 A"}).criterion("not too little")
    assert low.reason == "1.5 to 2.5 A reaches across 2.001 A: too close for this meter"


def test_a_fail_over_the_whole_band_is_shown_where_it_is_mildest() -> None:
    judged = go(limited, {"load": "5 A ±0.5 A"}).criterion("not too much")
    assert judged.reason == "at least 4.5 A, above 3 A"
    assert (judged.criterion.actual, judged.low, judged.high) == (4.5, 4.5, 5.5)


def test_a_band_cut_at_the_span_has_two_ends_all_the_same() -> None:
    """At the end of the span the reading itself is the high end: 95 to 100 A."""
    finding = go(limited, {"load": "100 A ±5 A"})
    judged = finding.criterion("no limit at all")
    assert (judged.low, judged.high) == (95.0, 100.0)
    assert (finding.inputs[0].low, finding.inputs[0].high) == (95.0, 100.0)


@calculation(part="test", not_checked=("the rest",))
def told(load: Annotated[float, A]) -> Iterator[Item]:
    """What is it?"""
    yield answer("metal", "copper")
    yield answer("kind", "large" if load > 5 else "small")
    yield answer("length", f"{load:g} mm", in_numbers=True)
    yield answer("place", "dry")
    yield not_checked("the cord", "it is not seen")
    if load > 5:
        yield figure("over", load - 5, "A")
    yield figure("twice", 2 * load, "A")
    yield figure("constant", 7.0, "A")


def test_every_answer_is_kept_whatever_comes_before_it() -> None:
    finding = go(told, {"load": "5 A ±1 A"})
    assert [(a.name, a.text) for a in finding.answers] == [
        ("metal", "copper"),
        ("kind", "cannot tell: large / small"),
        ("length", "5 mm (at the middle of the meter's band)"),
        ("place", "dry"),
    ]
    assert [(c.criterion.name, str(c.verdict)) for c in finding.criteria] == [
        ("kind", "cannot tell")
    ]
    assert finding.criteria[0].reason == "over the meter's band: large / small"
    assert finding.criteria[0].action == "measure with a better instrument"


def test_what_is_not_checked_is_what_every_run_says() -> None:
    finding = go(told, {"load": "5 A ±1 A"})
    assert [(n.what, n.why) for n in finding.not_checked] == [
        ("the rest", ""),
        ("the cord", "it is not seen"),
    ]


def test_a_figure_has_a_band_where_all_runs_have_it_and_it_moves() -> None:
    finding = go(told, {"load": "5.5 A ±1 A"})  # at 4.5 A there is no figure over 5 A
    assert [(f.figure.name, f.low, f.high) for f in finding.figures] == [
        ("over", None, None),
        ("twice", 9.0, 13.0),
        ("constant", None, None),
    ]


@calculation(part="test")
def with_plate(
    load: Annotated[float, A],
    cord: Annotated[float | None, Nameplate("m", text="cord"), may_be_absent("no cord")] = None,
    live: Annotated[int, Count("live wires", goes_with="cord"), setting()] = 3,
    plate: Annotated[float | None, A, extra("no limit is about it")] = None,
    wet: Annotated[bool, YesNo("wet"), setting()] = False,
) -> Iterator[Item]:
    """Is the load small?"""
    yield at_most("load", load + (plate or 0.0), 10.0, "A", source=PRINTED)


def test_what_stands_behind_an_input_that_is_not_there_is_read_all_the_same() -> None:
    finding = go(with_plate, {"load": "5 A", "plate": "7 A", "wet": True})
    assert finding.criterion("load").criterion.actual == 12.0
    given = {i.name: (i.given, i.value) for i in finding.inputs}
    assert given["plate"] == ("7 A", 7.0)
    assert given["wet"] == ("yes", "yes")
    assert "live" not in given


def test_what_is_needed_is_said_with_its_option_only_where_options_are_typed() -> None:
    with pytest.raises(BadInput, match=r'--load: is needed \(amps\); such as --load "5 A"'):
        go(with_plate, {})
    with pytest.raises(BadInput) as refused:
        go(with_plate, {}, origin="sheet")
    assert str(refused.value) == 'load: is needed (amps); such as "5 A"'
    with pytest.raises(BadInput, match="was given 2 times"):
        go(with_plate, {"load": ["5 A", "6 A"]})
    with pytest.raises(BadInput, match="is an empty list; such as 5 A"):
        go(with_plate, {"load": []})


@calculation(part="test")
def measured(
    load: Annotated[float, Reading("A", low=0, high=100, text="amps", error_input="meter_error")],
    meter_error: Annotated[str | None, "the meter's error", setting()] = None,
) -> Iterator[Item]:
    """Is the load small?"""
    yield figure("load", load, "A")


def test_a_text_is_remembered_only_where_it_is_all_that_counts() -> None:
    remembered = Remembered()
    assert go(with_plate, {"load": "5 A"}, remembered=remembered).verdict == "pass"
    assert ("load", "5 A") in remembered.plain
    rows = Remembered()
    bands = [
        go(measured, {"load": "10 A", "meter_error": error}, remembered=rows).figure("load")
        for error in ("1%", "2%", None)
    ]
    assert [(band.low, band.high) for band in bands] == [
        (pytest.approx(9.9), pytest.approx(10.1)),
        (pytest.approx(9.8), pytest.approx(10.2)),
        (None, None),
    ]


def no_more_than_fifty(load: float, rating: float, **_: object) -> Iterator[Problem]:
    if rating > 50 * load:
        yield Problem("rating", "is fifty times the load", "look again")


@calculation(part="test", refuse=no_more_than_fifty)
def refused_with_some(
    load: Annotated[float, A],
    rating: Annotated[float, A, assumed("4 A", "90 A", source=PRACTICE)] = 10.0,
) -> Iterator[Item]:
    """Is the load within the rating, and is that within 80 A?"""
    yield at_most("load", load, rating, "A", source=PRINTED)
    yield at_most("rating", rating, 80.0, "A", source=PRINTED)


def test_a_plausible_value_that_is_refused_is_not_tried() -> None:
    """At 1 A a rating of 90 A is refused, at 2 A it is tried and is over 80 A."""
    assert go(refused_with_some, {"load": "1 A"}).verdict == "pass"
    found = go(refused_with_some, {"load": "2 A"}).criterion("rating")
    assert found.verdict == "cannot tell"
    assert found.reason == "rating 10 A was assumed; with rating 90 A fail: 90 A is above 80 A"
    milder = go(refused_with_some, {"load": "5 A", "rating": "10 A"})
    assert milder.verdict == "pass"


@calculation(part="test")
def cautious(
    load: Annotated[float, A],
    level: Annotated[float, A, assumed("8 A", "7 A", source=PRACTICE)] = 10.0,
) -> Iterator[Item]:
    """Is the load within 20 A, and below a caution level?"""
    yield at_most("load", load, 20.0, "A", source=PRINTED, caution=level)


def test_a_plausible_value_that_makes_a_pass_marginal_is_named() -> None:
    judged = go(cautious, {"load": "9 A"}).criterion("load")
    assert judged.verdict == "marginal"
    assert judged.reason == (
        "9 A is within the limit of 20 A and past the caution level of 8 A (with level 8 A)"
    )
    assert go(cautious, {"load": "9 A", "level": "10 A"}).verdict == "pass"
    assert "with level 7 A" in go(cautious, {"load": "7.5 A"}).criterion("load").reason
    assert go(cautious, {"load": "6 A"}).criterion("load").reason == "6 A, at most 10 A"


def test_a_house_rule_that_yields_something_else_says_what() -> None:
    def chatty(inputs: Any, items: Any) -> Iterator[Item]:
        yield at_most("fine", 1.0, 2.0, "A", source=PRINTED)
        yield figure("x", 1.0)

    rule = ProvidedRule("shop", "1", HouseRule("rule", ("limited",), chatty))
    finding = go(limited, {"load": "2.5 A"}, rules=[rule])
    (own,) = [c for c in finding.criteria if c.provider == "shop"]
    assert own.reason.startswith(
        "house rule rule of shop failed: TypeError: it yields a Figure; criteria and cautions only"
        " (unit/test_engine_parts.py, line "
    )
    assert finding.house_rules == ("shop",)


def test_a_gap_of_the_shop_does_not_stand_in_for_the_calculations_own() -> None:
    def asks(inputs: Any, items: Any) -> Iterator[Item]:
        yield cannot_tell("shop", "no plate", needs=("plate",))

    rule = ProvidedRule("shop", "1", HouseRule("rule", ("with-plate",), asks))
    finding = go(with_plate, {"load": "5 A", "plate": "unknown"}, rules=[rule])
    assert [c.criterion.name for c in finding.criteria] == ["plate", "load", "shop"]


@calculation(part="test", example_with=("kind",))
def chosen(
    load: Annotated[float, A],
    kind: Annotated[str, OneOf(("ring", "fork"), text="kind"), setting()] = "ring",
    wet: Annotated[bool, YesNo("wet"), setting()] = False,
) -> Iterator[Item]:
    """Is it?"""
    yield figure("load", load, "A")


def test_variants_take_every_word_of_a_choice_alone_and_with_all_others() -> None:
    example = {"load": "5 A", "kind": "ring"}
    whole = example | {"wet": "yes"}
    assert [dict(given) for given in variants(chosen)] == [
        example,
        whole,
        whole,
        *[base | {"kind": word} for word in ("ring", "fork") for base in (example, whole)],
        *[base | {"wet": word} for word in ("yes", "no") for base in (example, whole)],
    ]
