"""What leaving an optional input out means: the words, and what the core makes of each."""

from collections.abc import Iterator
from typing import Annotated, Any

import pytest

from wirecalc import (
    PRACTICE,
    DeclarationError,
    Finding,
    HouseRule,
    Item,
    Reading,
    Verdict,
    YesNo,
    asked,
    assumed,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    extra,
    instead_of,
    may_be_absent,
    setting,
)
from wirecalc.engine.assumptions import choices
from wirecalc.engine.from_plugins import ProvidedCalculation
from wirecalc.engine.left_out import LeftOut, in_words, option_of, terms
from wirecalc.engine.running import run
from wirecalc.published.sources import confirmed
from wirecalc.testing.calculations import finding_of
from wirecalc.testing.left_out import check_left_out

PRINTED = confirmed("std", "a standard", "table 1", copies=2)
A = Reading("A", above=0, high=100, typical="5 A", text="amps")
C = Reading("C", low=-40, high=200, typical="25 C", text="degrees")


@calculation(part="test")
def sample(
    load: Annotated[float, A],
    device: Annotated[float | None, A, asked("it protects the wire")] = None,
    cord: Annotated[float | None, A, may_be_absent("no cord")] = None,
    rating: Annotated[float, C, assumed("75 C", "90 C", source=PRACTICE)] = 60.0,
    printed: Annotated[float | None, A, instead_of("device")] = None,
    more: Annotated[float | None, A, extra("the load is judged without it")] = None,
    kept: Annotated[bool, YesNo("a note is kept"), setting()] = False,
    open_style: Annotated[bool, YesNo("open"), setting()] = False,
    window: Annotated[float | None, A, asked(when="open_style=yes"), extra("none there")] = None,
) -> Iterator[Item]:
    """Is the load within 10 A, or within the rating less 40 K?"""
    yield at_most("load", load, 10.0, "A", source=PRINTED)
    yield at_most("load at the rating", load, (rating - 40) / 4, "A", source=PRINTED)
    if device is not None:
        yield at_least("device", device, load, "A", source=PRINTED)


def go(calc: Any = sample, **given: object) -> Finding:
    return run(ProvidedCalculation("demo", "1.0", calc), given)


def test_an_asked_input_left_out_is_cannot_tell_with_what_to_find_out() -> None:
    finding = go(load="4 A")
    judged = finding.criterion("device")
    assert finding.verdict is Verdict.CANNOT_TELL
    assert judged.reason == "device was not given: it protects the wire"
    assert judged.action == "find out: amps (over 0 up to 100 A)"
    assert go(load="4 A", device="5 A").verdict is Verdict.PASS


def test_an_input_without_a_word_counts_as_asked() -> None:
    @calculation(part="test")
    def silent(
        load: Annotated[float, A], more: Annotated[float | None, A] = None
    ) -> Iterator[Item]:
        """Is the load within 10 A?"""
        yield at_most("load", load, 10.0, "A", source=PRINTED)

    finding = go(silent, load="4 A")
    assert finding.verdict is Verdict.CANNOT_TELL
    assert "its plugin does not say" in finding.criterion("more").reason
    assert go(silent, load="4 A", more="1 A").verdict is Verdict.PASS


def test_an_asked_input_counts_only_where_its_condition_holds() -> None:
    shut = go(load="4 A", device="5 A")
    assert shut.verdict is Verdict.PASS
    assert "none there" in next(n.why for n in shut.not_checked if n.what == "window")
    opened = go(load="4 A", device="5 A", open_style="yes")
    assert (opened.verdict, opened.decided_by.criterion.name) == (Verdict.CANNOT_TELL, "window")


def test_what_may_be_absent_is_said_to_be_absent() -> None:
    finding = go(load="4 A", device="5 A")
    cord = next(i for i in finding.inputs if i.name == "cord")
    assert (cord.origin, cord.value, cord.notes) == ("assumed", None, ("no cord",))
    assert go(load="4 A", device="5 A", cord="unknown").verdict is Verdict.CANNOT_TELL


def test_a_further_check_is_not_checked_and_says_why_that_is_honest() -> None:
    gaps = {n.what: n.why for n in go(load="4 A", device="5 A").not_checked}
    assert gaps["more"] == "not given (amps): the load is judged without it"
    assert {"printed", "kept", "device", "rating"}.isdisjoint(gaps)


def test_a_fail_that_rests_on_an_assumption_alone_cannot_be_told() -> None:
    finding = go(load="8 A", device="9 A")  # 60 C carries 5 A, 75 C 8.75 A
    judged = finding.criterion("load at the rating")
    assert judged.verdict is Verdict.CANNOT_TELL
    assert judged.reason.startswith("rating 60 C was assumed; with rating 75 C pass: 8 A")
    assert (judged.action, judged.criterion.needs) == ("find out: degrees", ("rating",))
    assert go(load="8 A", device="9 A", rating="60 C").verdict is Verdict.FAIL
    assert go(load="8 A", device="9 A", rating="75 C").verdict is Verdict.PASS


def test_a_fail_that_rests_on_what_is_said_to_be_unknown_cannot_be_told() -> None:
    finding = go(load="8 A", device="9 A", rating="unknown")
    assert finding.verdict is Verdict.CANNOT_TELL
    assert go(load="10.5 A", device="11 A", rating="unknown").verdict is Verdict.FAIL


def test_a_fail_with_all_that_is_plausible_stays_a_fail() -> None:
    finding = go(load="10.5 A", device="11 A")
    assert finding.verdict is Verdict.FAIL
    assert finding.criterion("load at the rating").verdict is Verdict.CANNOT_TELL


@calculation(part="test")
def kind_default(
    load: Annotated[float, A],
    rating: Annotated[float, C, assumed("60 C", source=PRACTICE)] = 90.0,
    metal: Annotated[bool, YesNo("metal"), assumed("no", source=PRACTICE)] = True,
) -> Iterator[Item]:
    """Is the load within the rating?"""
    yield at_most("load", load, (rating - 40) / 4, "A", source=PRINTED)
    if not metal:
        yield cannot_tell("plastic", "no value for it", measure="look")


def test_a_pass_that_a_plausible_value_undoes_cannot_be_told() -> None:
    finding = go(kind_default, load="8 A", metal="yes")  # 90 C carries 12.5 A, 60 C 5 A
    assert finding.verdict is Verdict.CANNOT_TELL
    assert "with rating 60 C fail" in finding.criterion("load").reason
    assert go(kind_default, load="4 A", metal="yes").verdict is Verdict.PASS


def test_a_gap_that_only_another_value_shows_is_a_gap() -> None:
    finding = go(kind_default, load="4 A")
    assert finding.criterion("plastic").verdict is Verdict.CANNOT_TELL
    assert finding.criterion("plastic").criterion.needs == ("metal",)


def test_the_meter_counts_beside_an_assumption() -> None:
    judged = go(kind_default, load="4.9 A ±0.2 A", metal="yes").criterion("load")
    assert judged.verdict is Verdict.CANNOT_TELL
    assert "rating 90 C was assumed; with rating 60 C cannot tell" in judged.reason


def test_a_house_rule_is_tried_with_the_other_values_too() -> None:
    def cool(values: Any, items: Any) -> Iterator[Item]:
        yield at_least("cool", values["rating"], 75.0, "C", source=PRINTED)

    given = {"load": "4 A", "metal": "yes"}
    finding = finding_of(kind_default, given, rules=[HouseRule("r", ("kind-default",), cool)])
    assert finding.verdict is Verdict.CANNOT_TELL


@calculation(part="test")
def asks_itself(
    load: Annotated[float, A],
    device: Annotated[float | None, A, asked()] = None,
) -> Iterator[Item]:
    """Is the device given?"""
    yield at_most("load", load, 10.0, "A", source=PRINTED)
    if device is None:
        yield cannot_tell("overload", "no device", measure="read it", needs=("device",))


@pytest.mark.parametrize("given", [{}, {"device": "unknown"}])
def test_what_the_calculation_asks_for_itself_is_said_once(given: dict[str, str]) -> None:
    finding = go(asks_itself, load="4 A", **given)
    assert [c.criterion.name for c in finding.criteria] == ["overload", "load"][::-1]
    assert finding.verdict is Verdict.CANNOT_TELL


def test_words_are_shown_in_the_declaration() -> None:
    said = {i.name: i.need for i in sample.inputs}
    assert said["load"] == "needed"
    assert said["device"] == "asked"
    assert said["cord"] == "left out means no cord"
    assert said["rating"] == "assumed 60 C, 75 C and 90 C tried too"
    assert said["printed"] == "in place of device"
    assert said["more"] == "may be left out: the load is judged without it"
    assert said["kept"] == "no bearing on the verdict, no if left out"
    assert said["window"] == "asked where open_style is yes; otherwise may be left out: none there"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([asked(when="cord")], "asked where --cord is given; otherwise not needed"),
        ([asked(when="not cord_end")], "asked unless --cord-end is given"),
        ([asked(when="not cord"), instead_of("cord")], "asked unless --cord is given"),
        (
            [instead_of("cord", when="cord"), asked()],
            "not needed where --cord is given; otherwise asked",
        ),
        (
            [asked(when="cord"), asked(when="wire"), may_be_absent("no wire")],
            "asked where --cord or --wire is given; otherwise left out means no wire",
        ),
        (
            [asked(when="use=a|b|c"), asked(when="cord and not wire"), setting()],
            "asked where --use is a, b or c, or --cord is given and --wire is not given; "
            "otherwise no bearing on the verdict",
        ),
        (
            [asked(when="a=b"), instead_of("c", when="d")],
            "asked where --a is b; otherwise not needed",
        ),
        (
            [assumed("9 A", source=PRACTICE, why="the least", when="cord"), setting()],
            "where --cord is given: assumed the least, 9 A tried too; "
            "otherwise no bearing on the verdict",
        ),
        (
            [assumed("yes", "no", source=PRACTICE, why="either way")],
            "assumed either way: yes and no tried",
        ),
    ],
)
def test_several_words_of_an_input_read_as_one_rule(words: list[LeftOut], said: str) -> None:
    assert in_words(tuple(words), "", option_of) == said


@pytest.mark.parametrize("when", ["not cord=x", "Cord", "cord and", "cord or wire"])
def test_a_condition_that_is_none_is_refused(when: str) -> None:
    with pytest.raises(DeclarationError, match="is no condition"):
        list(terms(when))


@pytest.mark.parametrize(
    ("when", "values", "holds"),
    [
        ("", {}, True),
        ("cord", {"cord": None}, False),
        ("cord", {"cord": 0.0}, True),
        ("not cord", {"cord": None}, True),
        ("style=a|b", {"style": "b"}, True),
        ("style!=a|b", {"style": "b"}, False),
        ("grounded=no", {"grounded": False}, True),
        ("cord and style=a", {"cord": 1.0, "style": "b"}, False),
    ],
)
def test_conditions(when: str, values: dict[str, object], holds: bool) -> None:
    assert asked(when=when).counts(values) is holds


def test_words_that_name_no_input_or_stand_at_a_needed_one_are_refused() -> None:
    def needed(load: Annotated[float, A, asked()]) -> Iterator[Item]:
        """Is it?"""
        yield from ()

    def unknown(load: Annotated[float | None, A, asked(when="wire")] = None) -> Iterator[Item]:
        """Is it?"""
        yield from ()

    with pytest.raises(DeclarationError, match="is needed"):
        _ = calculation(part="t")(needed).inputs
    with pytest.raises(DeclarationError, match="names wire"):
        _ = calculation(part="t")(unknown).inputs
    with pytest.raises(DeclarationError, match="needs its text"):
        extra(" ")


def test_the_kit_finds_missing_words_and_settings_that_count() -> None:
    @calculation(part="test")
    def careless(
        load: Annotated[float, A],
        silent: Annotated[float | None, A] = None,
        rating: Annotated[float, C, assumed("60 C", source=PRACTICE)] = 60.0,
        hot: Annotated[bool, YesNo("hot"), setting()] = False,
    ) -> Iterator[Item]:
        """Is the load within the rating?"""
        yield at_most("load", load, 5.0 if hot else 8.0, "A", source=PRINTED)

    found = list(check_left_out(careless, {"load": "6 A"}, lambda g: finding_of(careless, g)))
    assert found == [
        "silent may be left out, and no word says what that means",
        "rating: 60 C is what is assumed",
        "hot is a setting, and with yes the verdict is another",
    ]


def test_several_assumed_inputs_are_tried_together_up_to_thirty_two_ways() -> None:
    few = {"a": [1, 2, 3], "b": [1, 2, 3], "c": [1]}  # 4 x 4 x 2 ways
    tried = choices(few)
    assert len(tried) == 31  # all but what is assumed of each
    assert [len(one) for one in tried] == sorted(len(one) for one in tried)
    assert {"a": 3, "b": 3, "c": 1} in tried
    many = {"a": [1, 2, 3], "b": [1, 2, 3], "c": [1, 2]}  # 48 ways
    assert choices(many) == [{n: v} for n, values in many.items() for v in values]
