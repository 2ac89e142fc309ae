"""The decorator: what a signature declares, and what it refuses."""

from collections.abc import Iterator
from typing import Annotated

import pytest

from wirecalc import Count, Item, Nameplate, OneOf, Reading, SizeRange, Wire, calculation, figure
from wirecalc.base.errors import BadText, DeclarationError, Problem
from wirecalc.typed.word_kinds import RangeKind, WireKind, YesNo


@calculation(part="test", example_with=("rating",))
def everything(
    wire: Annotated[list[Wire], "wires"],
    force: Annotated[float, Reading("lbf", low=0, high=100, typical="24 lbf", text="force")],
    barrel: Annotated[SizeRange | None, "barrel"] = None,
    rating: Annotated[float, Nameplate("A", text="rating", typical="15 A")] = 15.0,
    count: Annotated[int, Count("count", high=9)] = 2,
    kind: Annotated[str, OneOf(("ring", "fork"), text="kind")] = "ring",
    live: Annotated[bool, "live"] = False,
) -> Iterator[Item]:
    """Does it declare everything?

    More text.
    """
    yield figure("force", force + len(wire), "lbf")


def test_name_question_and_inputs() -> None:
    assert everything.name == "everything"
    assert everything.question == "Does it declare everything?"
    names = ["wire", "force", "barrel", "rating", "count", "kind", "live"]
    assert [i.name for i in everything.inputs] == names
    assert [i.required for i in everything.inputs] == [True, True, *[False] * 5]
    assert everything.input("wire").many
    assert isinstance(everything.input("wire").kind, WireKind)
    assert isinstance(everything.input("barrel").kind, RangeKind)
    assert isinstance(everything.input("live").kind, YesNo)


def test_defaults_are_shown_as_they_would_be_typed() -> None:
    shown = {i.name: i.assumed for i in everything.inputs if not i.required}
    assert shown == {"barrel": "", "rating": "15 A", "count": "2", "kind": "ring", "live": "no"}


def test_example_is_a_command_line() -> None:
    assert everything.example == (
        'wirecalc everything --wire "18 AWG" --force "24 lbf" --rating "15 A"'
    )


def test_bare_function_stays_callable() -> None:
    (item,) = everything([], 20.0)
    assert item == figure("force", 20.0, "lbf")


def declare(annotation: object, *, name: str = "value", default: object = ..., doc: str = "Is it?"):  # type: ignore[no-untyped-def]
    def body(value=default): ...  # type: ignore[no-untyped-def]

    if default is ...:

        def body(value): ...  # type: ignore[no-untyped-def]

    body.__annotations__ = {"value": annotation}
    body.__name__, body.__doc__ = name, doc
    return calculation(part="test")(body)


@pytest.mark.parametrize(
    ("annotation", "wrong"),
    [
        (float, "write Annotated"),
        (Annotated[float, "a text"], "is no kind of input"),
        (Annotated[int, Reading("A", text="x")], "is no kind of input"),
        (Annotated[float, Reading("A", text="")], "its kind has no text"),
        (Annotated[Wire, ""], "its text is empty"),
        (Annotated[dict, "x"], "is no kind of input"),
        (Annotated[Wire | None, "x"], "may be None, and has no default"),
    ],
)
def test_incomplete_declarations_are_refused(annotation: object, wrong: str) -> None:
    with pytest.raises(DeclarationError, match=wrong):
        _ = declare(annotation).inputs


def test_reserved_words_are_refused() -> None:
    with pytest.raises(DeclarationError, match="reserved word"):
        declare(Annotated[Wire, "x"], name="job")
    with pytest.raises(DeclarationError, match="no docstring"):
        declare(Annotated[Wire, "x"], name="fine", doc="")
    with pytest.raises(DeclarationError, match="reserved"):

        @calculation(part="test")
        def bad(output: Annotated[str, "x"]) -> Iterator[Item]:
            """Is it?"""
            yield figure("a", 1.0)

        _ = bad.inputs


def test_goes_with_must_name_an_input() -> None:
    with pytest.raises(DeclarationError, match="goes with an unknown input"):
        _ = declare(Annotated[bool, YesNo("x", goes_with="nothing")], default=False).inputs


def test_a_shared_kind_goes_with_another_input_in_one_calculation() -> None:
    shared = Reading("ft", above=0, high=2000, typical="50 ft", text="length of the cord")
    here = shared.but(goes_with="cord", error_input="length_error")
    assert (here.text, here.span, here.goes_with) == (shared.text, shared.span, "cord")
    assert here.companions == ("length_error",)
    assert (shared.goes_with, shared.companions) == ("", ())


def test_a_calculation_that_can_use_no_zero_says_why() -> None:
    shared = Reading("A", low=0, high=200, typical="8 A", text="line current", slip_under=0.1)
    here = shared.but(not_zero="a run drops nothing without current")
    assert (shared.span, here.span) == ("from 0 up to 200 A", "over 0 up to 200 A")
    assert shared.read("0 A").value == 0
    with pytest.raises(BadText, match="'0 A': a run drops nothing without current; such as 8 A"):
        here.read("0 A")
    assert here.read("0.2 A ±0.1 A").excluded is False
    assert here.read("0.2 A ±0.3 A")[:4] == (0.2, 0.0, 0.5, True)
    assert shared.read("0.2 A ±0.3 A").excluded is False
    with pytest.raises(BadText, match="outside over 0 up to 200 A"):
        here.read("201 A")


@pytest.mark.parametrize("what", ["text", "unit", "low", "high", "above", "options"])
def test_what_a_shared_kind_is_stays_in_every_calculation(what: str) -> None:
    with pytest.raises(DeclarationError, match=what):
        Reading("A", above=0, high=200, text="line current").but(**{what: 1})


def test_a_side_past_the_range_needs_an_end_of_the_span() -> None:
    for past, span in ((">", {"low": 0}), ("<", {"above": 0, "high": 9})):
        with pytest.raises(DeclarationError, match="the span has no end"):
            Reading("ohm", text="ohms", past=past, **span)  # type: ignore[arg-type]


def test_unknown_unit_is_refused_at_import() -> None:
    with pytest.raises(DeclarationError, match="fortnight"):
        Reading("fortnight", text="x")


@pytest.mark.parametrize("about", ["cautions", "not_checked", "example_with"])
@pytest.mark.parametrize("odd", [5, "one text", (5,), {"a": "b"}])
def test_texts_of_a_declaration_are_several_texts(about: str, odd: object) -> None:
    with pytest.raises(DeclarationError, match="are no texts"):
        calculation(part="test", **{about: odd})(everything.function)  # type: ignore[arg-type]


def test_a_refusal_gets_the_inputs_that_it_names() -> None:
    seen: list[dict[str, float]] = []

    def of_one(more: float) -> Iterator[Problem]:
        seen.append({"more": more})
        yield Problem("more", "is too much")

    def of_all(**given: float) -> Iterator[Problem]:
        seen.append(given)
        yield Problem("load", "is too much")

    for refuse in (of_one, of_all):
        declared = calculation(part="test", refuse=refuse)(_two_inputs)
        assert len(list(declared.refused({"load": 1.0, "more": 2.0}))) == 1
    assert seen == [{"more": 2.0}, {"load": 1.0, "more": 2.0}]
    assert list(calculation(part="test")(_two_inputs).refused({"load": 1.0, "more": 2.0})) == []


def _two_inputs(
    load: Annotated[float, Reading("A", low=0, text="load")],
    more: Annotated[float, Reading("A", low=0, text="more")],
) -> Iterator[Item]:
    """Is it so?"""
    yield from ()
