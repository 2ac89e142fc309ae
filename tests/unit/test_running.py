"""One run: unknown is no pass, the instrument counts, house rules add, defects are named."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any

import pytest

from wirecalc import (
    Bands,
    Count,
    Finding,
    HouseRule,
    Item,
    Nameplate,
    Problem,
    Reading,
    answer,
    asked,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    caution,
    extra,
    figure,
    instead_of,
    listing,
    may_be_absent,
    not_checked,
    setting,
)
from wirecalc.base.errors import BadInput, PluginDefect
from wirecalc.engine.from_plugins import ProvidedCalculation, ProvidedRule
from wirecalc.engine.running import run
from wirecalc.published.sources import confirmed
from wirecalc.said.criteria import Criterion

PRINTED = confirmed("std", "a standard", "table 1", copies=2)
A = Reading("A", above=0, high=100, typical="5 A", text="amps")


def refuse(load: float, least: float, **_: object) -> Iterator[Problem]:
    if least > load * 10:
        yield Problem("least", "is more than ten times the load", "swap them")


@calculation(part="test", cautions=("live-02",), not_checked=("the rest",), refuse=refuse)
def sample(
    load: Annotated[float, A],
    least: Annotated[float, Reading("A", low=0, high=100, text="least"), setting()] = 1.0,
    ambient: Annotated[
        float | None, Reading("C", low=-40, high=90, text="air"), asked("it heats the load")
    ] = None,
    cord: Annotated[
        float | None, Reading("m", low=0, high=90, text="cord"), extra("no limit is about it")
    ] = None,
    live: Annotated[int, Count("live wires of the cord", goes_with="cord"), setting()] = 3,
    plate: Annotated[
        float | None, Nameplate("A", low=1, high=100, text="plate"), extra("no limit is about it")
    ] = None,
) -> Iterator[Item]:
    """Is the load between least and ten?"""
    yield figure("twice", 2 * load, "A", working=lambda: f"2 x {load:g}")
    yield at_least("not too little", load, least, "A", source=PRINTED, action="load it more")
    yield at_most("not too much", load, 10.0, "A", source=PRINTED, caution=8.0, action="less")
    if ambient is None:
        yield cannot_tell("heat", "no ambient", measure="measure the air", needs=("ambient",))
    else:
        yield at_most("heat", ambient, 40.0, "C", source=PRINTED)


@calculation(part="test")
def without_a_cord(
    load: Annotated[float, A],
    cord: Annotated[
        float | None, Reading("m", low=0, high=90, text="cord"), may_be_absent("no cord")
    ] = None,
    live: Annotated[int, Count("live wires of the cord", goes_with="cord"), setting()] = 3,
) -> Iterator[Item]:
    """Is the load small?"""
    yield at_most("not too much", load, 10.0, "A", source=PRINTED)


PROVIDED = ProvidedCalculation("demo", "1.0", sample)


def go(rules: Sequence[ProvidedRule] = (), **given: object) -> Finding:
    return run(PROVIDED, {"ambient": "25 C"} | given, rules=rules)


def test_finding_of_a_plain_run() -> None:
    finding = go(load="5 A")
    assert finding.verdict == "pass"
    assert (finding.calculation, finding.plugin, finding.version) == ("sample", "demo", "1.0")
    assert finding.figure("twice").figure.value == 10.0
    assert finding.figure("twice").low is None
    assert [i.origin for i in finding.inputs] == ["typed", "assumed", "typed"]
    assert finding.inputs[0].notes == ("taken as exact",)
    assert list(finding.sources) == ["std"]


def test_every_finding_ends_with_its_cautions_and_the_deferral() -> None:
    assert [c.key for c in go(load="5 A").cautions] == ["live-02", "ans-01", "ans-02"]


def test_left_out_is_not_checked_and_what_goes_with_it_is_silent() -> None:
    finding = go(load="5 A")
    assert [n.what for n in finding.not_checked] == ["the rest", "cord", "plate"]
    assert "live" not in {i.name for i in finding.inputs}
    assert "live" in {i.name for i in go(load="5 A", cord="2 m").inputs}


def test_what_goes_with_an_input_that_is_not_there_is_a_note() -> None:
    finding = go(load="5 A", live="2")
    (note,) = [n for n in finding.not_checked if n.what == "live"]
    assert note.why == "not used: it says something of cord, which was not given"
    assert next(i for i in finding.inputs if i.name == "live").given == "2"
    assert finding.verdict == go(load="5 A").verdict == "pass"
    assert "live" not in {n.what for n in go(load="5 A", cord="2 m", live="2").not_checked}
    with pytest.raises(BadInput, match="live"):
        go(load="5 A", live="two and a half")


def test_what_goes_with_an_input_that_is_said_not_to_exist_contradicts_it() -> None:
    with pytest.raises(BadInput, match="says something of cord, which was not given"):
        run(ProvidedCalculation("demo", "1.0", without_a_cord), {"load": "5 A", "live": "2"})


def test_left_out_where_every_job_has_it_is_cannot_tell() -> None:
    finding = run(PROVIDED, {"load": "5 A"})
    assert finding.verdict == "cannot tell"
    assert finding.criterion("heat").action == "measure the air"
    assert "ambient" not in {n.what for n in finding.not_checked}


def test_optional_unknown_is_cannot_tell_and_the_rest_runs() -> None:
    finding = go(load="5 A", cord="unknown")
    assert finding.criterion("cord").verdict == "cannot tell"
    assert finding.criterion("not too much").verdict == "pass"
    assert finding.criterion("cord").action == "find out: cord (from 0 up to 90 m)"
    assert next(i for i in finding.inputs if i.name == "cord").origin == "unknown"


def test_assumed_unknown_runs_with_the_default_and_says_so() -> None:
    finding = go(load="5 A", least="Unknown")
    assert finding.verdict == "cannot tell"
    record = next(i for i in finding.inputs if i.name == "least")
    assert record.notes == ("worked with 1 A",)


def test_required_unknown_is_cannot_tell_and_nothing_runs() -> None:
    finding = go(load="unknown")
    assert finding.verdict == "cannot tell"
    assert not finding.figures
    assert [c.criterion.name for c in finding.criteria] == ["load"]


def test_required_missing_is_refused_but_cannot_tell_in_a_sheet() -> None:
    with pytest.raises(BadInput, match="--load: is needed"):
        run(PROVIDED, {})
    finding = run(PROVIDED, {}, origin="sheet", missing_is_unknown=True)
    assert finding.verdict == "cannot tell"


def test_everything_wrong_is_listed_at_once() -> None:
    with pytest.raises(BadInput) as caught:
        go(load="5", least="x A", plate="5 A ±1 A", lod="5 A")
    names = [p.name for p in caught.value.problems]
    assert names == ["lod", "--load", "--least", "--plate"]
    assert "did you mean load?" in str(caught.value)


def test_inputs_that_contradict_each_other_are_refused_before_anything_runs() -> None:
    with pytest.raises(BadInput, match="--least: is more than ten times the load; swap them"):
        go(load="1 A", least="11 A")


@pytest.mark.parametrize(
    ("load", "verdict"),
    [
        ("5 A ±1 A", "pass"),
        ("7.5 A ±1 A", "marginal"),
        ("9.5 A ±1 A", "cannot tell"),
        ("12 A ±1 A", "fail"),
        ("10.5 A ±0.4 A", "fail"),
        ("10 A ±0.1 A", "cannot tell"),
    ],
)
def test_the_instrument_counts(load: str, verdict: str) -> None:
    assert go(load=load).criterion("not too much").verdict == verdict


def test_too_close_says_how_well_it_would_have_to_be_known() -> None:
    judged = go(load="9.5 A ±1 A").criterion("not too much")
    assert judged.reason == "8.5 to 10.5 A reaches across 10 A: too close for this meter"
    assert judged.action == "measure so that it is known to better than ±0.5 A"
    assert (judged.low, judged.high) == (8.5, 10.5)


def test_worst_run_is_shown_and_figures_show_low_and_high() -> None:
    finding = go(load="5 A ±1 A")
    assert finding.criterion("not too much").criterion.actual == 6.0
    assert finding.criterion("not too little").criterion.actual == 4.0
    twice = finding.figure("twice")
    assert (twice.figure.value, twice.low, twice.high) == (10.0, 8.0, 12.0)


def test_band_that_reaches_zero_cannot_be_told_from_it() -> None:
    finding = go(load="0.5 A ±1 A")
    assert finding.verdict == "cannot tell"
    assert finding.criterion("load").reason == "load: this meter can't tell it from zero"
    assert finding.criterion("not too much").verdict == "cannot tell"


def test_band_is_cut_at_the_span() -> None:
    record = go(load="50 A", least="99.9 A ±5 A").inputs[1]
    assert (record.low, record.high) == (pytest.approx(94.9), 100.0)


def test_more_than_six_readings_with_an_error_are_refused() -> None:
    @calculation(part="test")
    def many(
        a: Annotated[float, A],
        b: Annotated[float, A],
        c: Annotated[float, A],
        d: Annotated[float, A],
        e: Annotated[float, A],
        f: Annotated[float, A],
        g: Annotated[float, A],
    ) -> Iterator[Item]:
        """Is the sum small?"""
        yield at_most("sum", a + b + c + d + e + f + g, 35.5, "A", source=PRINTED)

    provided = ProvidedCalculation("demo", "1", many)
    exact = dict.fromkeys("abcdefg", "5 A")
    six = exact | dict.fromkeys("abcdef", "5 A ±0.1 A")
    assert run(provided, six).criterion("sum").verdict == "cannot tell"
    assert run(provided, six).criterion("sum").high == pytest.approx(35.6)
    with pytest.raises(BadInput, match="7 readings have an error"):
        run(provided, dict.fromkeys("abcdefg", "5 A ±0.1 A"))


def test_values_of_one_list_move_together() -> None:
    @calculation(part="test")
    def total(each: Annotated[list[float], A]) -> Iterator[Item]:
        """What is the sum?"""
        yield figure("sum", sum(each), "A")

    finding = run(
        ProvidedCalculation("demo", "1", total), {"each": ["5 A ±1 A", "7 A", "2 A ±1 A"]}
    )
    summed = finding.figure("sum")
    assert (summed.low, summed.figure.value, summed.high) == (12.0, 14.0, 16.0)


def test_answer_in_numbers_is_that_of_the_middle_and_says_so() -> None:
    @calculation(part="test")
    def length(load: Annotated[float, A]) -> Iterator[Item]:
        """How long?"""
        yield answer("length", f"{load:g} mm", in_numbers=True)

    finding = run(ProvidedCalculation("demo", "1", length), {"load": "5 A ±1 A"})
    assert finding.verdict is None
    assert finding.answers[0].text == "5 mm (at the middle of the meter's band)"
    exact = run(ProvidedCalculation("demo", "1", length), {"load": "5 A"})
    assert exact.answers[0].text == "5 mm"


def test_reason_that_nothing_can_be_told_for_says_whose_numbers_it_has() -> None:
    @calculation(part="test")
    def dip(load: Annotated[float, A]) -> Iterator[Item]:
        """Does it dip?"""
        yield cannot_tell("volts", f"{100 + load:g} V by arithmetic", measure="measure it")
        yield cannot_tell("heat", "not measured", measure="measure it")

    found = run(ProvidedCalculation("demo", "1", dip), {"load": "5 A ±1 A"})
    said = {c.criterion.name: c.reason for c in found.criteria}
    assert said["volts"] == "105 V by arithmetic (at the middle of the meter's band)"
    assert said["heat"] == "not measured"


def test_listing_that_changes_over_the_band_says_whose_it_is() -> None:
    @calculation(part="test")
    def shares(load: Annotated[float, A]) -> Iterator[Item]:
        """Which share?"""
        yield listing("Shares", ("link", "A"), [("breaker", load)])
        yield listing("Known motors", ("motor", "A"), [("fan", 0.5)])

    finding = run(ProvidedCalculation("demo", "1", shares), {"load": "5 A ±1 A"})
    assert [(x.title, x.rows[0][1]) for x in finding.listings] == [
        ("Shares, at the middle of the meter's band", 5.0),
        ("Known motors", 0.5),
    ]
    exact = run(ProvidedCalculation("demo", "1", shares), {"load": "5 A"})
    assert exact.listings[0].title == "Shares"


def test_answer_that_changes_over_the_band_is_cannot_tell() -> None:
    @calculation(part="test")
    def kind(load: Annotated[float, A]) -> Iterator[Item]:
        """What is it?"""
        yield answer("kind", "large" if load > 5 else "small")

    provided = ProvidedCalculation("demo", "1", kind)
    assert run(provided, {"load": "6 A"}).verdict is None
    finding = run(provided, {"load": "5.5 A ±1 A"})
    assert finding.verdict == "cannot tell"
    assert finding.answers[0].text == "cannot tell: large / small"


def shop(function: Any, *names: str) -> ProvidedRule:
    return ProvidedRule("shop", "2", HouseRule("rule", names or ("sample",), function))


def stricter(inputs: Mapping[str, Any], items: Sequence[Item]) -> Iterator[Item]:
    del items
    yield at_most("not too much", inputs["load"], 6.0, "A", source=PRINTED)


def test_house_rule_adds_and_never_replaces() -> None:
    finding = go(load="7 A", rules=[shop(stricter)])
    assert finding.verdict == "fail"
    assert finding.criterion("not too much").verdict == "pass"
    house = [c for c in finding.criteria if c.provider == "shop"]
    assert [(c.criterion.origin, c.verdict) for c in house] == [("house", "fail")]


def test_house_rule_counts_the_meter_too() -> None:
    finding = go(load="5.8 A ±0.5 A", rules=[shop(stricter)])
    assert [c.verdict for c in finding.criteria if c.provider == "shop"] == ["cannot tell"]


def test_house_rule_of_another_calculation_does_not_run() -> None:
    assert go(load="7 A", rules=[shop(stricter, "other")]).verdict == "pass"
    assert go(load="7 A", rules=[shop(stricter, "*")]).verdict == "fail"


def test_house_rule_that_raises_is_cannot_tell_with_the_reason() -> None:
    def broken(inputs: Any, items: Any) -> Iterator[Item]:
        yield at_most("fine", 1.0, 2.0, source=PRINTED)
        raise KeyError("wire")

    finding = go(load="5 A", rules=[shop(broken)])
    assert finding.verdict == "cannot tell"
    said = "house rule rule of shop failed: KeyError: there is no key 'wire'"
    assert said in str(finding.decided_by)


def test_house_rule_may_yield_criteria_and_cautions_only() -> None:
    def chatty(inputs: Any, items: Any) -> Iterator[Item]:
        yield caution("gnd-01")
        yield figure("x", 1.0)

    assert go(load="5 A", rules=[shop(chatty)]).verdict == "cannot tell"


@pytest.mark.parametrize(
    ("items", "wrong"),
    [
        ([figure("x", float("nan"))], "'x' is nan"),
        ([at_most("x", 1.0, float("inf"), source=PRINTED)], "'x' is inf"),
        (["text"], "a str, which is no item"),
        ([figure("x", 1.0), figure("x", 2.0)], "yields 'x' twice"),
        ([not_checked(str(i)) for i in range(10_001)], "more than 10000 items"),
    ],
)
def test_what_a_calculation_must_not_yield(items: list[Any], wrong: str) -> None:
    @calculation(part="test")
    def bad(load: Annotated[float, A]) -> Iterator[Item]:
        """Is it?"""
        yield from items

    with pytest.raises(PluginDefect, match=wrong):
        run(ProvidedCalculation("demo", "1", bad), {"load": "5 A"})


def test_calculation_that_raises_is_a_defect_never_a_verdict() -> None:
    @calculation(part="test")
    def bad(load: Annotated[float, A]) -> Iterator[Item]:
        """Is it?"""
        yield at_most("x", load / 0, 1.0, source=PRINTED)

    with pytest.raises(PluginDefect, match="bad of plugin demo 1 failed: ZeroDivisionError"):
        run(ProvidedCalculation("demo", "1", bad), {"load": "5 A"})


def test_criterion_type_is_what_the_merge_works_on() -> None:
    criteria = go(load="5 A").criteria
    assert criteria
    assert all(isinstance(c.criterion, Criterion) for c in criteria)


@calculation(part="test")
def dear(
    load: Annotated[float, A],
    other: Annotated[float, A] = 1.0,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Is twice the load at most ten, worked out once?"""
    runs_of_dear.append(dict(bands or {}))
    low, high = (bands or {}).get("load", (load, load))
    yield figure("twice", 2 * load, "A", band=(2 * low, 2 * high))
    yield at_most("not too much", 2 * load, 10.0, "A", source=PRINTED, band=(2 * low, 2 * high))


runs_of_dear: list[dict[str, Any]] = []
DEAR = ProvidedCalculation("demo", "1.0", dear)


@pytest.mark.parametrize(
    ("load", "verdict"), [("4 A ±0.5 A", "pass"), ("4.9 A ±0.5 A", "cannot tell"), ("6 A", "fail")]
)
def test_a_band_of_its_own_is_worked_out_in_one_run(load: str, verdict: str) -> None:
    runs_of_dear.clear()
    finding = run(DEAR, {"load": load})
    assert finding.verdict == verdict
    assert len(runs_of_dear) == 1
    assert "bands" not in {i.name for i in finding.inputs}


def test_a_band_of_its_own_is_shown() -> None:
    finding = run(DEAR, {"load": "4 A ±0.5 A"})
    twice = finding.figure("twice")
    assert (twice.low, twice.figure.value, twice.high) == (7.0, 8.0, 9.0)
    judged = finding.criterion("not too much")
    assert (judged.low, judged.high, judged.criterion.actual) == (7.0, 9.0, 9.0)
    assert runs_of_dear[-1] == {"load": (3.5, 4.5)}


def test_a_house_rule_counts_the_meter_of_a_band_of_its_own() -> None:
    def stricter(inputs: Mapping[str, Any], items: Sequence[Item]) -> Iterator[Item]:
        yield at_most("our load", inputs["load"], 4.2, "A", source=PRINTED)
        twice = next(i for i in items if isinstance(i, Criterion))
        yield at_most("our twice", twice.actual or 0.0, 8.4, "A", source=PRINTED)

    rule = ProvidedRule("shop", "1.0", HouseRule("strict", ("dear",), stricter))
    finding = run(DEAR, {"load": "4 A ±0.5 A"}, rules=[rule])
    ours = {c.criterion.name: c.verdict for c in finding.criteria if c.provider == "shop"}
    assert ours == {"our load": "cannot tell", "our twice": "cannot tell"}


def test_a_band_that_reaches_zero_is_cannot_tell_for_a_band_of_its_own_too() -> None:
    assert run(DEAR, {"load": "0.1 A ±0.2 A"}).verdict == "cannot tell"


def test_one_excluded_reading_leaves_the_other_its_band() -> None:
    finding = run(DEAR, {"load": "4.9 A ±0.5 A", "other": "0.1 A ±0.2 A"})
    assert finding.criterion("not too much").verdict == "cannot tell"
    assert finding.criterion("other").verdict == "cannot tell"
    assert runs_of_dear[-1] == {"load": pytest.approx((4.4, 5.4))}


def only_one(load: float | None = None, plate: list[float] | None = None) -> Iterator[Problem]:
    if load is None and plate is None:
        yield Problem("load", "there is nothing to judge", "give a load")
    if load is not None and load > 50:
        yield Problem("load", "is too much", "look again")


@calculation(part="test", refuse=only_one)
def either(
    load: Annotated[float | None, A, instead_of("plate")] = None,
    plate: Annotated[list[float] | None, A, instead_of("load")] = None,
) -> Iterator[Item]:
    """Is what was given at most ten?"""
    yield at_most("sum", sum(plate or []) + (load or 0.0), 10.0, "A", source=PRINTED)


EITHER = ProvidedCalculation("demo", "1.0", either)


def test_what_is_unknown_is_not_refused_as_missing() -> None:
    with pytest.raises(BadInput, match="nothing to judge"):
        run(EITHER, {})
    finding = run(EITHER, {"load": "unknown"})
    assert [c.criterion.name for c in finding.criteria] == ["load"]
    assert finding.verdict == "cannot tell"
    with pytest.raises(BadInput, match="too much"):
        run(EITHER, {"load": "60 A", "plate": "unknown"})


def test_one_unknown_of_a_list_is_cannot_tell_and_the_rest_runs() -> None:
    finding = run(EITHER, {"plate": ["3 A", "unknown", "4 A"]})
    assert finding.criterion("plate").reason == "not all of plate is known"
    assert finding.criterion("sum").criterion.actual == 7.0
    assert run(EITHER, {"plate": ["unknown", "unknown"]}).verdict == "cannot tell"


def test_a_band_of_its_own_that_reaches_an_excluded_value_leaves_no_fail_standing() -> None:
    finding = run(DEAR, {"load": "6 A", "other": "0.1 A ±0.2 A"})
    assert finding.criterion("not too much").verdict == "cannot tell"  # as for any calculation
    assert finding.verdict == "cannot tell"
