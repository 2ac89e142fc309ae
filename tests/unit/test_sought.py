"""What an input would have to be: what is asked, what is tried, and how it is put in spans."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Annotated

import pytest

import wirecalc
from wirecalc import (
    BadInput,
    BadText,
    Count,
    Item,
    Reading,
    Source,
    Verdict,
    Wire,
    at_least,
    at_most,
    calculation,
    requires,
)
from wirecalc.engine.from_plugins import ProvidedCalculation
from wirecalc.engine.sought.axis import Numbers, axis_of
from wirecalc.engine.sought.seeking import Sought, SoughtTable
from wirecalc.typed.trials import Ladder, Scale, is_sought, read_request, sought_in

LIMIT = Source("made-up", "a limit made up for tests")
AMPS = Reading("A", low=0, high=400, text="current")


def test_the_word_is_known_with_what_stands_behind_it() -> None:
    assert all(is_sought(t) for t in ("sought", " SOUGHT ", "sought 1 to 2 A", "sought in mm2"))
    assert not any(is_sought(t) for t in ("unknown", "soughtfully", "1 A", None, 3, "is sought"))
    given = {"a": "1 A", "b": "sought", "c": ["2 A", "sought"], "d": ("unknown",)}
    assert sought_in(given) == ("b", "c")


@pytest.mark.parametrize(
    ("text", "low", "high", "unit", "error", "step"),
    [
        ("sought", "", "", "", "", ""),
        ("sought 10 to 200 ft", "10", "200 ft", "", "", ""),
        ("sought 10 ft to 200 ft", "10 ft", "200 ft", "", "", ""),
        ("sought in mm2", "", "", "mm2", "", ""),
        ("sought ±3%", "", "", "", "3%", ""),
        ("sought +/-(2%+5) to 0.1 lbf", "", "", "", "(2%+5)", "0.1 lbf"),
        ("sought 1 to 9 A ±(2%+5) to 0.01 A", "1", "9 A", "", "(2%+5)", "0.01 A"),
    ],
)
def test_a_request_is_read(
    text: str, low: str, high: str, unit: str, error: str, step: str
) -> None:
    assert read_request(text) == (low, high, unit, error, step, "")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("sought ±(2%+5)", "0.1 lbf"),  # its digits are counted, and the display's is not said
        ("sought 5 A", "10 to 200 ft"),
        ("sought ±", "±3%"),
    ],
)
def test_a_request_that_is_not_understood_says_what_would_do(text: str, says: str) -> None:
    with pytest.raises(BadText, match=r"sought|±") as refused:
        read_request(text)
    assert says in refused.value.would_do


def numbers(low: float, high: float, **more: object) -> Numbers:
    return Numbers(Scale(low, high, "A", **more))  # type: ignore[arg-type]


def test_numbers_have_three_digits_and_stand_next_to_each_other() -> None:
    axis = numbers(0, 400)
    place = next(iter(axis.near(9.995))) + 1
    assert [axis.shown(p) for p in range(place, place + 3)] == ["9.99 A", "10 A", "10.1 A"]
    assert (axis.shown(0), axis.shown(1), axis.shown(axis.last)) == ("0 A", "0.0001 A", "400 A")


def test_a_span_below_zero_is_walked_through() -> None:
    axis = numbers(-40, 90)
    assert (axis.value(0), axis.value(axis.last)) == (-40.0, 90.0)
    values = [axis.value(p) for p in range(axis.last + 1)]
    assert values == sorted(values)
    assert 0.0 in values
    assert -10.1 in values


def test_the_end_that_is_no_value_is_not_tried() -> None:
    assert numbers(0, 100, above=True).value(0) == 0.0001  # six decades below
    assert numbers(12, 600).shown(0) == "12 A"


def test_a_display_shows_multiples_of_its_last_digit() -> None:
    axis = numbers(0, 3, step=0.05, behind="±(2%+5)")
    assert [axis.text(p) for p in (0, 1, 2)] == [f"{v} A ±(2%+5)" for v in ("0.00", "0.05", "0.10")]
    assert axis.shown(axis.last) == "3.00 A"


def offering(calc: wirecalc.Calculation) -> wirecalc.Catalogue:
    return wirecalc.Catalogue({calc.name: ProvidedCalculation("tests", "1", calc)})


def made(
    body: Callable[[float], Iterator[Item]], given: str = "sought", **more: bool | str
) -> Sought:
    """Seek the current of a calculation that is made up."""

    @calculation(part="made up")
    def made_up(current: Annotated[float, AMPS]) -> Iterator[Item]:
        """Is it made up?"""
        yield from body(current)

    found = offering(made_up).seeker("made-up", **more).seek({"current": given})
    assert isinstance(found, Sought)
    return found


def words(found: Sought) -> list[tuple[str, str, str]]:
    return [(s.first.shown, s.last.shown, s.word) for s in found.spans]


def test_both_sides_of_an_edge_are_run() -> None:
    found = made(lambda amps: iter([at_most("amps", amps, 7.125, "A", source=LIMIT)]))
    assert words(found) == [("0 A", "7.12 A", "pass"), ("7.13 A", "400 A", "fail")]
    assert found.complete


def test_a_value_at_the_limit_is_on_its_good_side() -> None:
    found = made(lambda amps: iter([at_least("amps", amps, 12.0, "A", source=LIMIT)]))
    assert words(found) == [("0 A", "11.9 A", "fail"), ("12 A", "400 A", "pass")]


def test_a_narrow_window_is_found_by_what_its_criteria_show() -> None:
    def window(amps: float) -> Iterator[Item]:
        yield at_least("low", amps, 33.35, "A", source=LIMIT)
        yield at_most("high", amps, 33.45, "A", source=LIMIT)

    assert words(made(window))[1] == ("33.4 A", "33.4 A", "pass")


def test_an_advised_level_parts_what_is_marginal() -> None:
    def two(amps: float) -> Iterator[Item]:
        yield at_most("advice", amps, 10, "A", source=LIMIT, advisory=True)
        yield at_most("limit", amps, 30, "A", source=LIMIT, caution=20)

    assert [s[:2] for s in words(made(two)) if s[2] == "marginal"] == [
        ("10.1 A", "20 A"),
        ("20.1 A", "30 A"),
    ]


def test_what_never_changes_is_set_aside_and_nothing_passes_beside_it() -> None:
    from wirecalc.output.sought import sought_text

    def body(amps: float) -> Iterator[Item]:
        yield wirecalc.cannot_tell("heat", "nobody said", measure="measure it")
        yield at_most("amps", amps, 10, "A", source=LIMIT)

    found = made(body)
    assert [j.criterion.name for j in found.aside] == ["heat"]
    assert words(found) == [("0 A", "10 A", "pass"), ("10.1 A", "400 A", "fail")]
    text = sought_text(found)
    assert text.startswith("CANNOT TELL, nothing else against it")
    assert "heat: nobody said" in text
    assert "PASS" not in text


def test_an_island_as_wide_as_a_step_of_the_grid_is_found() -> None:
    def island(amps: float) -> Iterator[Item]:
        yield requires("island", 100 <= amps <= 140, says="outside", source=LIMIT)

    assert words(made(island))[1] == ("100 A", "140 A", "pass")


def test_a_limit_that_is_shown_is_tried_with_its_neighbours() -> None:
    def narrow(amps: float) -> Iterator[Item]:
        yield requires("narrow", 33.35 <= amps <= 33.45, says="outside", source=LIMIT)
        yield at_most("beside", 1.0, 33.4, "A", source=LIMIT)

    assert words(made(narrow))[1] == ("33.4 A", "33.4 A", "pass")


def test_an_edge_without_a_shown_limit_lies_between_neighbours() -> None:
    for edge in (7.123, 77.71, 123.4, 301.2):

        def until(amps: float, edge: float = edge) -> Iterator[Item]:
            yield requires("until", amps <= edge, says="past", source=LIMIT)

        held, past = made(until).spans
        assert past.first.place - held.last.place == 1
        assert (held.last.value or 0) <= edge < (past.first.value or 0)


def test_a_criterion_that_always_passes_is_not_set_aside() -> None:
    def two(amps: float) -> Iterator[Item]:
        yield at_most("always", 1.0, 2.0, "A", source=LIMIT)
        yield at_most("amps", amps, 10, "A", source=LIMIT)

    assert made(two).aside == ()


@pytest.mark.parametrize("worse", ["marginal", "fail"])
def test_what_is_worse_everywhere_is_said_of_each_span(worse: str) -> None:
    from wirecalc.engine.sought.words import verdict_words

    def two(amps: float) -> Iterator[Item]:
        yield at_most("aside", 3.0, 2.0, "A", source=LIMIT, advisory=worse == "marginal")
        yield at_most("amps", amps, 30, "A", source=LIMIT, caution=10)

    found = made(two)
    said = [verdict_words(found, span) for span in found.spans]
    assert (
        said
        == {
            "marginal": ["MARGINAL, nothing else against it", "MARGINAL", "FAIL"],
            "fail": ["FAIL, nothing else against it", "FAIL, and MARGINAL", "FAIL"],
        }[worse]
    )


def test_nothing_would_pass_while_something_else_stays_open() -> None:
    from wirecalc.engine.sought.would_pass import would_pass

    given = {"current": "18 A", "breaker": "20 A", "building_wire": "14 AWG"}
    catalogue = wirecalc.build(bundled_only=True)
    found = catalogue.run("breaker", given)
    assert found.verdict is Verdict.FAIL  # and the air around the wire is not known
    assert would_pass(catalogue.seeker("breaker"), found, given) == ""


def test_what_would_pass_is_said_after_a_fail_alone() -> None:
    from wirecalc.engine.sought.would_pass import would_pass

    given = {"current": "12 A", "nameplate_voltage": "120 V", "building_wire": "14 AWG",
             "voltage_at_rest": "119 V"}  # fmt: skip
    catalogue = wirecalc.build(bundled_only=True)
    for length, verdict in (("150 ft", Verdict.CANNOT_TELL), ("60 ft", Verdict.MARGINAL)):
        found = catalogue.run("drop", {**given, "run_length": length})
        assert found.verdict is verdict
        assert would_pass(catalogue.seeker("drop"), found, {**given, "run_length": length}) == ""


def test_a_value_that_is_refused_is_a_state_of_its_own_with_its_reason() -> None:
    found = made(
        lambda amps: iter([at_most("amps", amps, 10, "A", source=LIMIT)]), "sought 0 to 300 A"
    )
    assert found.to == "300 A"
    force = wirecalc.seek("pull", "force", wire="18 AWG", terminal="ring")
    assert isinstance(force, Sought)
    (last,) = [s for s in force.spans if s.word == "refused"]
    assert "more than 18 AWG can bear" in last.first.refusal


def test_an_asked_span_is_kept_to() -> None:
    found = made(lambda a: iter([at_most("a", a, 10, "A", source=LIMIT)]), "sought 2 to 20 A")
    assert words(found) == [("2 A", "10 A", "pass"), ("10.1 A", "20 A", "fail")]


@pytest.mark.parametrize(
    "given", ["sought 20 to 2 A", "sought 2 to 900 A", "sought 2 to 20", "sought 2 to 20 V"]
)
def test_a_span_that_is_none_is_refused(given: str) -> None:
    with pytest.raises(BadInput, match="--current"):
        made(lambda a: iter([at_most("a", a, 10, "A", source=LIMIT)]), given)


def test_a_count_is_tried_by_ones() -> None:
    @calculation(part="made up")
    def made_up(wires: Annotated[int, Count("wires", low=1, high=5000)]) -> Iterator[Item]:
        """Is it made up?"""
        yield at_most("wires", wires, 1234, source=LIMIT)

    found = offering(made_up).seeker("made-up").seek({"wires": "sought"})
    assert isinstance(found, Sought)
    assert words(found) == [("1", "1234", "pass"), ("1235", "5000", "fail")]


def test_words_wires_and_ratings_are_tried_one_by_one() -> None:
    by_wire = wirecalc.seek("pull", "wire", force="24 lbf", terminal="ring")
    assert isinstance(by_wire, Sought)
    assert "18 AWG" in {t for s in by_wire.spans if s.word == "pass" for t in s.texts}
    assert not {"17 AWG", "13 AWG"} & {t for s in by_wire.spans for t in s.texts}
    metric = wirecalc.seek("pull", wire="sought in mm2", force="24 lbf", terminal="ring")
    assert isinstance(metric, Sought)
    assert {"1 mm2", "1.5 mm2"} <= {t for s in metric.spans for t in s.texts}
    handle = wirecalc.seek("breaker", "breaker", current="8.7 A", building_wire="14 AWG")
    assert isinstance(handle, Sought)
    assert handle.spans[-1].texts[0] == "20 A"


def test_two_that_are_sought_make_a_table() -> None:
    given = {"current": "12 A", "nameplate_voltage": "120 V"}
    found = wirecalc.seek("drop", "run_length", building_wire="sought 14 to 10 AWG", **given)
    assert isinstance(found, SoughtTable)
    assert found.across == "building_wire"
    assert [shown for shown, _ in found.rows] == ["14 AWG", "12 AWG", "10 AWG"]
    longest = [s.last.value for _, one in found.rows for s in one.spans if s.word == "pass"]
    assert longest == sorted(longest)
    assert len(set(longest)) == 3


def test_three_that_are_sought_are_refused() -> None:
    with pytest.raises(BadInput, match="two at most"):
        wirecalc.seek("drop", "run_length", "building_wire", "current", nameplate_voltage="120 V")


def test_one_more_load_is_sought_among_those_of_a_list() -> None:
    loads = ["6 A", "sought 0.1 to 40 A"]
    found = wirecalc.seek("circuit", breaker="15 A", plug_loads=loads, building_wire="14 AWG")
    assert isinstance(found, Sought)
    fails = next(s for s in found.spans if s.word == "fail")
    assert fails.first.value == pytest.approx(9.01)  # 6 A and 9 A are 15 A


def test_a_target_counts_beside_the_criteria_or_alone() -> None:
    given = {"current": "12 A", "nameplate_voltage": "120 V", "building_wire": "14 AWG"}
    beside = wirecalc.seek("drop", "run_length", target="drop share <= 1 %", **given)
    alone = wirecalc.seek(
        "drop", "run_length", target="drop share <= 8 %", target_alone=True, **given
    )
    assert isinstance(beside, Sought)
    assert isinstance(alone, Sought)
    ohm_per_foot = 2.525e-3  # 14 AWG at 20 C by the law of gauges; warmer copper has more
    assert (beside.spans[0].last.value or 0) < 0.01 * 120 / 24 / ohm_per_foot
    assert [s.word for s in alone.spans][:2] == ["pass", "fail"]


@pytest.mark.parametrize("target", ["drop share", "drop share < 3", "no such thing <= 3 %"])
def test_a_target_that_cannot_be_judged_is_refused(target: str) -> None:
    given = {"current": "12 A", "nameplate_voltage": "120 V", "building_wire": "14 AWG"}
    with pytest.raises(BadInput, match="--target"):
        wirecalc.seek("drop", "run_length", target=target, **given)


def test_what_cannot_be_tried_says_so() -> None:
    for name, given in (("choose", "stock"), ("pull-batch", "readings")):
        with pytest.raises(BadInput, match="cannot be sought"):
            wirecalc.seek(name, given, wire="18 AWG")


def test_other_inputs_are_refused_as_in_a_run() -> None:
    with pytest.raises(BadInput, match="--current") as refused:
        wirecalc.seek("drop", "run_length", current="12 V", building_wire="14 AWG")
    assert "--nameplate-voltage" in str(refused.value)


def test_a_run_with_values_refuses_the_word() -> None:
    with pytest.raises(BadInput, match="is sought"):
        wirecalc.run("pull", wire="18 AWG", force="sought", terminal="ring")


def test_a_printed_value_is_sought_without_an_error() -> None:
    with pytest.raises(BadInput, match="no meter error"):
        wirecalc.seek("drop", current="1 A", nameplate_voltage="sought ±3%", building_wire="14 AWG")


def test_the_steps_of_a_ladder_stand_in_the_order_given() -> None:
    axis = axis_of(Ladder(("14 AWG", "12 AWG")))
    assert (axis.all_tried, axis.text(1), axis.last) == (True, "12 AWG", 1)


def test_nothing_is_offered_beside_a_criterion_that_stays_open_whatever_is_chosen() -> None:
    from wirecalc.engine.sought.would_pass import would_pass

    @calculation(part="made up", chosen=("wire",))
    def made_up(
        wire: Annotated[Wire, "wire"], left_open: Annotated[bool, "open"] = False
    ) -> Iterator[Item]:
        """Is it made up?"""
        yield at_least("area", wire.area_cmil, 5000, "cmil", source=LIMIT)
        if left_open:
            yield wirecalc.cannot_tell("heat", "nobody said", measure="measure it")

    catalogue = offering(made_up)
    for left_open, said in (("no", "wire from 12 AWG on"), ("yes", "")):
        given = {"wire": "18 AWG", "left_open": left_open}
        found = catalogue.run("made-up", given)
        assert found.verdict is Verdict.FAIL
        assert would_pass(catalogue.seeker("made-up"), found, given).startswith(said)
        assert bool(would_pass(catalogue.seeker("made-up"), found, given)) is bool(said)


def test_the_volts_of_a_service_are_those_that_services_have() -> None:
    found = wirecalc.seek(
        "supply", "nominal_voltage", nameplate_voltage="208 V", voltage_at_rest="206 V"
    )
    assert isinstance(found, Sought)
    tried = [text for span in found.spans for text in span.texts]
    assert tried == ["120 V", "208 V", "230 V", "240 V"]  # ANSI C84.1, IEC 60038


@pytest.mark.parametrize(
    ("name", "given", "expected"),
    [
        # 0.100 less and more 0.006: three digits of what stands beside it
        (
            "measured_value",
            {"error": "0.006 units", "limit_high": "0.1 units"},
            ["up to 0.094", "0.0941 to 0.106", "from 0.107 on"],
        ),
        (
            "error",
            {"measured_value": "0.096 units", "limit_high": "0.1 units"},
            ["up to 0.004", "from 0.00401 on"],
        ),
        (
            "limit_high",
            {"measured_value": "0.0961 units", "error": "0.00605 units"},
            ["up to 0.09", "0.0901 to 0.102", "from 0.103 on"],
        ),
    ],
)
def test_what_is_sought_is_as_fine_as_what_stands_beside_it(
    name: str, given: dict[str, str], expected: list[str]
) -> None:
    found = wirecalc.seek("conforms", **{**given, name: "sought"})  # type: ignore[arg-type]
    assert isinstance(found, Sought)
    shown = [(s.first.shown, s.last.shown) for s in found.spans]
    ends = [(a.removesuffix(" units"), b.removesuffix(" units")) for a, b in shown]
    said = [
        f"up to {ends[0][1]}",
        *(f"{a} to {b}" for a, b in ends[1:-1]),
        f"from {ends[-1][0]} on",
    ]
    assert said == expected
