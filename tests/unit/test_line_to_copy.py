"""A command line that is laid out for the screen: a shell takes it for the same."""

from __future__ import annotations

import shlex

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from wirecalc.output.layout import command

TYPED = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Zl", "Zp"]))


@pytest.mark.parametrize("columns", [40, 80])
@settings(max_examples=40)
@given(TYPED, TYPED)
@example("it's", "a 'b' \"c\"")
@example("it's a very long name of a file that fits on no line at all.csv", "x --y z")
@example("a" * 100, "1 A ±(2%+5)")
def test_broken_line_is_the_same_to_a_shell(columns: int, one: str, two: str) -> None:
    line = shlex.join(["wirecalc", "trace", "--recording", one, f"--current={two}", "--working"])
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("COLUMNS", str(columns))
        broken = "\n".join(command(line))
    assert shlex.split(broken.replace("\\\n", "")) == shlex.split(line)
