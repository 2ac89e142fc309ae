"""A pass that leans on readings without a meter error says so where the verdict stands."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

Cli = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
SAID = "Exact taken as exact, with no meter error given: force"


def first_block(text: str) -> str:
    return text.split("\n\n")[0]


def test_a_pass_on_exact_readings_says_so_on_its_first_lines(cli_main: Cli) -> None:
    assert SAID in first_block(cli_main(*PULL, "30 lbf").out)
    assert "Exact" not in first_block(cli_main(*PULL, "30 lbf ±1 lbf").out)
    assert "Exact" not in first_block(cli_main(*PULL, "10 lbf").out)  # a fail


def test_the_short_answer_says_so(cli_main: Cli) -> None:
    assert "\nExact  force: no meter error" in cli_main(*PULL, "30 lbf", "--short").out
    assert "\nExact" not in cli_main(*PULL, "30 lbf ±1 lbf", "--short").out


def test_the_page_says_so_in_its_box(cli_main: Cli) -> None:
    page = cli_main(*PULL, "30 lbf", "--format", "html").out
    assert "taken as exact, with no meter error given: force" in page
    assert "taken as exact, with no" not in cli_main(*PULL, "9 lbf", "--format", "html").out
