"""How long a name and a text of a plugin may be."""

import pytest

from wirecalc import PRACTICE, answer, at_least, figure
from wirecalc.base.plain_texts import wrong_text
from wirecalc.engine.reserved import check_name
from wirecalc.said.item_checks import check


@pytest.mark.parametrize(
    ("most", "make"),
    [
        (200, lambda text: figure(text, 1.0, source=PRACTICE)),
        (200, lambda text: figure("made", 1.0, text, source=PRACTICE)),
        (200, lambda text: answer(text, "x")),
        (200, lambda text: at_least(text, 1.0, 1.0, "A", source=PRACTICE)),
        (200, lambda text: at_least("held", 1.0, 1.0, text, source=PRACTICE)),
        (10_000, lambda text: at_least("held", 1.0, 1.0, "A", source=PRACTICE, action=text)),
        (10_000, lambda text: answer("made", text)),
        (10_000, lambda text: answer("made", "x", because=[text])),
    ],
)
def test_a_text_of_an_item_has_a_longest(most: int, make: object) -> None:
    assert callable(make)
    check(make("x" * most))
    with pytest.raises(ValueError, match=f"has {most + 1} characters, and {most} are the most"):
        check(make("x" * (most + 1)))


def test_a_text_that_is_none_is_said() -> None:
    assert wrong_text("x" * 10_000) == ""
    assert wrong_text("x" * 10_001).startswith("has 10001 characters")
    assert wrong_text(5) == "is int and no text"


def test_a_name_of_a_calculation_has_a_longest() -> None:
    check_name("x" * 60)
    with pytest.raises(TypeError, match="is longer than 60 letters"):
        check_name("x" * 61)
