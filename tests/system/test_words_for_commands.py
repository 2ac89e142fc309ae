"""Words for a whole repair, a file that is none, and the heading over what fits."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from wirecalc.testing import Outcome

Command = Callable[..., Outcome]


def _fits(err: str) -> list[str]:
    """The names of what is offered, in their order."""
    return re.findall(r"^([a-z-]+): ", err, re.MULTILINE)


@pytest.mark.parametrize("words", ["job card", "job ticket", "rules shop", "instruments register"])
def test_words_behind_a_command_that_name_no_file_are_words(cli_main: Command, words: str) -> None:
    done = cli_main(*words.split())
    assert (done.status, done.out) == (2, "")
    command, word = words.split()
    assert done.err.startswith(f"There is no file '{word}' here.\n") == (command != "instruments")
    assert _fits(done.err)[0] == command
    assert ("\n  wirecalc ask job\n" in done.err) == (command == "job")


@pytest.mark.parametrize("file", ["absent.toml", "./absent", "absent1"])
def test_a_name_of_a_file_that_is_not_there_is_no_word(cli_main: Command, file: str) -> None:
    assert "there is no such file" in cli_main("job", file).err


def test_words_for_a_whole_repair_lead_to_its_questions(cli_main: Command) -> None:
    for typed in ("good to go?", "red tag", "lock out", "job card"):
        err = cli_main(typed).err
        assert "job: " in err and "\n  wirecalc ask job\n" in err, typed
    err = cli_main("ask", "red", "tag").err
    assert "\n  wirecalc ask job\n" in err and "job FILE" not in err


@pytest.mark.parametrize(
    ("typed", "first"),
    [("pt100 ohm", "rtd"), ("oven 25 off", "oven-swing"), ("N-G 3 volts", "outlet")],
)
def test_what_is_declared_is_not_headed_as_not_checked(
    cli_main: Command, typed: str, first: str
) -> None:
    err = cli_main(typed).err
    assert err.startswith(f"What fits {typed!r}, best first:")
    assert _fits(err)[0] == first
