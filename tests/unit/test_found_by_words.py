"""Which calculations fit some words: the ranking, slips of the pen, and what nothing speaks of."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

import pytest

from wirecalc import Item, OneOf, Reading, calculation, figure
from wirecalc.base.errors import DeclarationError
from wirecalc.engine.declaration import Calculation
from wirecalc.engine.found_by_words import of_calculations
from wirecalc.engine.values_in_words import values_in
from wirecalc.engine.word_stems import stems


def _made(name: str, question: str, *words: str, not_checked: tuple[str, ...] = ()) -> Calculation:
    def function(
        load: Annotated[float, Reading("lbf", text="load on the rope")],
        kind: Annotated[str, OneOf(("hemp", "steel"), text="kind")] = "hemp",
    ) -> Iterator[Item]:
        yield figure("load", load, "lbf")

    function.__name__ = name
    function.__doc__ = f"{question}\n\nMore."
    return calculation(part="lift", words=words, not_checked=not_checked)(function)


HOIST = _made(
    "hoist",
    "Does the hoist lift it?",
    "winch; chain block",
    "slips under load; cut-out",
    not_checked=("wear of the hook",),
)
ROPE = _made("rope_wear", "Is this rope worn?", "frayed; strand; winch rope")
BRAKE = _made("brake", "Does the brake hold?", "shoe; winch slips back; aluminium shoe")
INDEX = of_calculations([HOIST, ROPE, BRAKE])


@pytest.mark.parametrize(
    ("typed", "names"),
    [
        ("hoist", ["hoist"]),  # its name
        ("chain block", ["hoist"]),  # a phrase
        ("the block of the chain, please", ["hoist"]),  # in any order, among others
        ("winch", ["hoist", "rope-wear", "brake"]),  # declared alone, and in longer phrases
        ("winch rope", ["rope-wear", "hoist"]),  # a whole phrase goes before its parts
        ("lift", ["hoist"]),  # its question
        ("FRAYED", ["rope-wear"]),
        ("frays", ["rope-wear"]),  # endings
        ("strnad", ["rope-wear"]),  # a slip
        ("Aluminum", ["brake"]),  # another spelling
        ("chainblock", ["hoist"]),
        ("rope wear", ["rope-wear"]),
        ("cutout", ["hoist"]),
        ("cut out", ["hoist"]),
        ("cut-out", ["hoist"]),
        ("steel", ["brake", "hoist", "rope-wear"]),  # a choice that all have: by name
        ("xy", []),
        ("is it of the and", []),
        ("", []),
        ("4711", []),
        ("\u0000\ud800 ☃", []),
    ],
)
def test_what_fits(typed: str, names: list[str]) -> None:
    found = INDEX.find(typed).names
    assert list(found[: len(names)]) == names
    assert bool(found) == bool(names)


def test_words_that_nothing_speaks_of() -> None:
    assert INDEX.find("banana winch").strange == ("banana",)
    assert INDEX.find("Banana, banana").strange == ("Banana",)
    assert INDEX.find("will not cut out").strange == ()
    assert INDEX.find("don't winch").strange == ()


def test_what_is_said_not_to_be_checked() -> None:
    assert INDEX.find("hook wear").unchecked == (("hoist", "wear of the hook"),)
    assert INDEX.find("rope wear").unchecked == ()
    assert INDEX.find("wear").unchecked == ()  # of a word that one has nobody knows what is asked
    found = INDEX.find("hook")  # of a word that none has it is all that is known
    assert (found.names, found.unchecked) == (("hoist",), (("hoist", "wear of the hook"),))
    more = [_made(name, "What?", not_checked=("the hook",)) for name in ("a", "b", "c")]
    assert of_calculations([*more, ROPE]).find("hook").unchecked == ()


def test_strange_words_that_carry_the_question_leave_what_is_named_as_a_whole() -> None:
    assert INDEX.find("banana winch").names == ("hoist",)
    assert INDEX.find("banana chain").names == ()
    assert INDEX.find("banana chain block frayed rope").names[0] == "hoist"


def test_what_none_is_about_as_a_whole() -> None:
    assert INDEX.find("chain back").in_part  # half of a phrase each
    assert not INDEX.find("chain block").in_part
    assert INDEX.find("block").in_part
    assert not INDEX.find("lift").in_part  # its question
    assert not INDEX.find("winch slips").in_part


def test_who_does_it_is_named_by_what_is_done() -> None:
    assert INDEX.find("slipper").names == INDEX.find("slips").names != ()


def test_of_the_same_calculations_the_words_are_gathered_once() -> None:
    assert of_calculations([HOIST, ROPE]) is of_calculations([HOIST, ROPE])
    assert of_calculations([HOIST, ROPE]) is not of_calculations([HOIST, BRAKE])


def test_a_name_is_more_than_a_word_and_a_rare_word_more_than_a_frequent_one() -> None:
    assert INDEX.find("brake winch").names[0] == "brake"
    assert INDEX.find("rope frayed").names == ("rope-wear",)


def test_words_that_are_no_texts_are_refused() -> None:
    with pytest.raises(DeclarationError, match="are no texts"):
        _made("odd", "Odd?", 1)  # type: ignore[arg-type]
    with pytest.raises(DeclarationError, match="are no texts"):
        calculation(part="lift", words="winch")(HOIST.function)  # type: ignore[arg-type]


def test_words_are_parted_by_semicolons() -> None:
    assert HOIST.words == ("winch", "chain block", "slips under load", "cut-out")


def test_endings_that_change_no_meaning() -> None:
    assert stems("nicked nicks nicking") == ["nick"] * 3
    assert stems("tripping trips tripped") == ["trip"] * 3
    assert stems("class glass bus") == ["class", "glass", "bus"]
    assert stems("won't 14ga 1/4") == ["not", "14", "ga", "1", "4"]


def test_a_value_says_little_beside_a_word() -> None:
    size = _made("size", "Which size?", "AWG; 14")
    hook = _made("hook", "Does the hook hold?", "load hook; swivel")
    index = of_calculations([size, hook, HOIST, BRAKE])
    assert index.find("14 AWG").names[0] == "size"
    assert index.find("swivel on 14 AWG").names[0] == "hook"
    assert index.find("swivel for AWG").names == (
        "hook",
        "size",
    )  # a unit behind no number is a word


def test_forms_of_one_word() -> None:
    assert stems("held broken blew burnt swollen") == stems("hold break blow burn swell")
    assert stems("three comp term") == stems("3 compressor terminal")


def test_other_words_for_the_same_thing_lead_on_and_count_less() -> None:
    fuse = _made("fuse_box", "Does it hold?", "fuse blows")
    breaker = _made("panel", "Does it trip?", "breaker blows")
    index = of_calculations([fuse, breaker, HOIST])
    assert index.find("MCB blows").names[:2] == ("fuse-box", "panel")
    assert index.find("fuse blows").names == ("fuse-box", "panel")
    assert index.find("MCB").strange == ()


def test_an_equal_fit_goes_to_the_one_whose_question_has_the_word() -> None:
    asks = _made("zeta", "Does the sling hold?", "sling")
    other = _made("alpha", "Does the hook hold?", "sling")
    assert of_calculations([other, asks]).find("sling").names == ("zeta", "alpha")


@pytest.mark.parametrize(
    ("typed", "of"),
    [
        ("12 ga", {"size of a wire"}),
        ("#14 to 2/0", {"size of a wire"}),
        ("14-gauge", {"size of a wire"}),
        ("12/2", {"size of a wire"}),
        ("2.5mm", {"size of a wire", "length"}),
        ("2.6mm", {"length"}),
        ("1/3 hp", {"horsepower", "power"}),
        ("35mf", {"capacitance"}),
        (".8 mA", {"small current", "current"}),
        ("C16", {"current"}),
        ("50 ft", {"run", "length"}),
        ("freezer -10", {"temperature"}),
        ("minus 10", {"temperature"}),
        ("4-10", set()),
        ("heater 4500", {"power"}),
        ("1080 sensor", set()),
        ("on 208", {"voltage"}),
        ("350", set()),
        ("ohms", set()),
    ],
)
def test_values_among_words(typed: str, of: set[str]) -> None:
    assert set(values_in(typed).of) == of


def test_a_value_counts_for_what_can_take_it_and_alone_for_nothing() -> None:
    def lift_motor(power: Annotated[float, Reading("W", text="what it takes")]) -> Iterator[Item]:
        """Does the motor lift?"""
        yield figure("power", power, "W")

    motor = calculation(part="lift", words=("motor",))(lift_motor)
    rope = _made("rope_motor", "Does the rope hold?", "motor")
    index = of_calculations([rope, motor])
    assert index.find("750 W motor").names[0] == "lift-motor"
    assert index.find("20 lbf motor").names[0] == "rope-motor"
    assert index.find("motor 4711").names == index.find("motor").names
    assert index.find("20 lbf").strange == ()
