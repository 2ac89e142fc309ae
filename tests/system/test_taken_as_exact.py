"""A pass that leans on readings without a meter error says so where the verdict stands."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

Cli = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
SAID = "Exact taken as exact, with no meter error given: force"


def first_block(text: str) -> str:
    return text.split("\n\n")[0]


@pytest.mark.parametrize("brief", [(), ("--brief",)])
def test_a_pass_on_exact_readings_says_so_on_its_first_lines(
    cli_main: Cli, brief: tuple[str, ...]
) -> None:
    assert SAID in first_block(cli_main(*PULL, "30 lbf", *brief).out)
    assert "Exact" not in first_block(cli_main(*PULL, "30 lbf ±1 lbf", *brief).out)
    assert "Exact" not in first_block(cli_main(*PULL, "10 lbf", *brief).out)  # a fail


def test_the_page_says_so_in_its_box(cli_main: Cli) -> None:
    page = cli_main(*PULL, "30 lbf", "--format", "html").out
    assert "taken as exact, with no meter error given: force" in page
    assert "taken as exact, with no" not in cli_main(*PULL, "9 lbf", "--format", "html").out
