"""Words that name no calculation lead to those that fit: on stderr, with exit 2."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from wirecalc.commands import COMMANDS
from wirecalc.commands.suggestions import fitting
from wirecalc.plugging import host
from wirecalc.testing import Outcome

from .conftest import Outside

Command = Callable[..., Outcome]

QUERIES = Path(__file__).parents[1] / "data" / "words"


def _fits(err: str) -> list[str]:
    """The names of the calculations that are offered, in their order."""
    return re.findall(r"^([a-z-]+): ", err, re.MULTILINE)


@pytest.mark.parametrize(
    ("typed", "fits"),
    [
        (["relay"], {"start-device"}),
        (["voltage drop"], {"drop"}),
        (["voltage", "drop"], {"drop"}),
        (["breaker", "keeps", "tripping"], {"trip", "breaker"}),
        (["brekaer"], {"breaker"}),
        (["pul", "--force", "24 lbf"], {"pull"}),
        (["relais"], {"start-device"}),
        (["crimps", "--help"], {"pull"}),
        (["voltage", "drop", "--help"], {"drop"}),
        (["help", "voltage", "drop"], {"drop"}),
        (["explain", "potential", "relay"], {"start-device"}),
        (["explain", "pull", "batch"], {"pull-batch"}),
        (["ask", "crimp"], {"pull"}),
        (["ask", "pull", "test"], {"pull"}),
        (["batch", "pull-out force", "x.csv"], {"pull"}),
        (["batch", "voltage", "drop", "x.csv"], {"drop"}),
        (["batch", "of", "crimps"], {"pull", "pull-batch"}),
        (["fridge won't start"], {"start-device"}),
        (["earth leakage"], {"leakage"}),
        (["over load protector"], {"overload"}),
        (["megger"], {"insulation"}),
        (["leak"], {"leakage"}),
        (["lockout"], {"discharge"}),
        (["3 prong dryer"], {"ground"}),
        (["three prong dryer"], {"ground"}),
        (["term strip 60c"], {"ampacity", "heat-rating"}),
    ],
)
def test_words_lead_to_the_calculations_that_fit(
    cli_main: Command, typed: list[str], fits: set[str]
) -> None:
    done = cli_main(*typed)
    assert (done.status, done.out) == (2, "")
    assert fits & set(_fits(done.err)[:1]), done.err
    assert max(map(len, done.err.splitlines())) <= 80
    assert "did you mean" not in done.err


def test_each_is_offered_with_its_question_and_the_line_to_type(cli_main: Command) -> None:
    err = cli_main("potential relay").err
    assert "start-device: Is this start device good?\n  wirecalc ask start-device\n" in err
    assert "wirecalc start-device --start-device" in err
    err = cli_main("explain", "potential relay").err
    assert "start-device: Is this start device good?\n  wirecalc explain start-device\n" in err
    err = cli_main("potential relay", "--help").err
    assert "start-device: Is this start device good?\n  wirecalc start-device --help\n" in err


def test_more_words_behind_a_name_are_words_and_values_are_not(cli_main: Command) -> None:
    assert "breaker" in _fits(cli_main("breaker", "ambient").err)
    values = cli_main("pull", "--wire", "18", "AWG", "--terminal", "ring", "--force", "24 lbf")
    assert "'AWG': was not expected; put texts with spaces in quotes" in values.err


def test_a_name_without_inputs_says_what_it_needs_and_what_is_related(cli_main: Command) -> None:
    done = cli_main("splice")
    assert (done.status, done.out) == (2, "")
    assert "--wire: is needed" in done.err and "--barrel: is needed" in done.err
    assert "related: choose: " in done.err and "related: splice" not in done.err
    assert "related" not in cli_main("splice", "--wire", "18 AWG").err


def test_words_that_fit_nothing_are_said_and_the_parts_of_the_trade(cli_main: Command) -> None:
    done = cli_main("banana")
    assert (done.status, done.out) == (2, "")
    assert done.err.startswith("Nothing here speaks of 'banana'")
    assert "heating element: cutoff, element\n" in done.err
    some = cli_main("banana relay").err
    assert some.startswith("Nothing here speaks of 'banana'") and "start-device:" in some


@pytest.mark.parametrize(
    ("typed", "says", "fits"),
    [
        ("superheat", "Nothing here speaks of 'superheat'", []),
        ("magnetron", "Nothing here speaks of 'magnetron' for itself", ["discharge"]),
        ("strain relief", "Not checked by substitute: whether", ["wire-break"]),
        ("cat iii", "Nothing here speaks of 'cat'", []),
        ("bearing noise", "Nothing here speaks of 'noise'", ["locked"]),
    ],
)
def test_where_nothing_answers_the_question_it_is_said_first_and_little_offered(
    cli_main: Command, typed: str, says: str, fits: list[str]
) -> None:
    err = cli_main(typed).err
    assert err.startswith(says)
    assert [name for name in _fits(err) if " " not in name] == fits or not fits
    assert bool(fits) == ("The parts of the trade that it knows" not in err)


def test_words_that_no_calculation_has_together_are_told_so(cli_main: Command) -> None:
    err = cli_main("fault loop").err
    assert err.startswith("Nothing here speaks of 'fault loop' as a whole. What is near it")
    assert len(_fits(err)) == 3
    assert cli_main("shorted windings").err.startswith("What fits 'shorted windings'")


@pytest.mark.parametrize(
    ("typed", "line"),
    [
        ("meter accuracy", "wirecalc instruments"),
        ("work order", "wirecalc job FILE"),
        ("quiz", "wirecalc drill TOPIC ..."),
        ("house rules", "wirecalc rules [FILE]"),
    ],
)
def test_words_lead_to_commands_too(cli_main: Command, typed: str, line: str) -> None:
    done = cli_main(typed)
    assert (done.status, done.out) == (2, "")
    assert done.err.splitlines()[2].startswith(f"{line.split()[1]}: ")
    assert f"\n  {line}\n" in done.err
    assert f"\n  {line.split()[0]} {line.split()[1]} --help\n" in cli_main(typed, "--help").err
    assert f"{line.split()[1]}: " not in cli_main("explain", typed).err


def test_the_few_that_fit_are_few(cli_main: Command) -> None:
    assert len(_fits(cli_main("motor").err)) == 4
    assert cli_main("tables", "wire size").err.count("\n  wirecalc tables ") == 4
    assert cli_main("splice").err.count("related: ") == 3


@pytest.mark.parametrize("columns", [40, 60, 80])
@pytest.mark.parametrize(
    "typed", ["motor", "gfci trips", "fridge won't start", "breaker", "banana"]
)
def test_what_fits_is_a_screen_of_a_phone(
    cli_main: Command, monkeypatch: pytest.MonkeyPatch, typed: str, columns: int
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    lines = cli_main(typed).err.splitlines()
    assert max(map(len, lines)) <= columns
    assert len(lines) <= (34 if typed == "banana" else 20)  # banana: all that there is, by name


def test_words_lead_to_tables_too(cli_main: Command) -> None:
    for words in (["pull-crimps"], ["crimp", "force"], ["least pull-out force"]):
        done = cli_main("tables", *words)
        assert (done.status, done.out) == (2, "")
        assert _fits(done.err)[0] == "pull-crimp"
        assert "\n  wirecalc tables pull-crimp\n" in done.err
    done = cli_main("tables", "banana")
    assert (done.status, done.out, _fits(done.err)) == (2, "", [])
    assert "none speaks of it" in done.err


def test_a_file_where_the_name_belongs_is_no_word(cli_main: Command) -> None:
    done = cli_main("batch", "x.csv")
    assert (done.status, done.out, len(done.complaints)) == (2, "", 1)
    assert "batch: needs the name of a calculation, and a file" in done.err


def test_a_misspelt_command_is_named(cli_main: Command) -> None:
    assert "did you mean tables?" in cli_main("tabels").err
    assert "did you mean explain?" in cli_main("explian", "pull").err


PLUGIN = """
from collections.abc import Iterator
from typing import Annotated
from wirecalc import Item, Reading, at_most, calculation, hookimpl, PRACTICE

@calculation(part="lift", words=("paternoster; dumb waiter", "stuck between floors"))
def lift(load: Annotated[float, Reading("lbf", text="load of the cabin")]) -> Iterator[Item]:
    \"\"\"Does the lift lift?\"\"\"
    yield at_most("load", load, 5.0, "lbf", source=PRACTICE, action="unload it")

@hookimpl
def wirecalc_calculations():
    return [lift]
"""


@pytest.mark.parametrize("typed", ["paternoster", "dumb waiter", "stuck between floors", "cabin"])
def test_words_of_a_plugin_from_outside_lead_to_it(
    plugged: Command, outside: Outside, typed: str
) -> None:
    outside.add("demo_lift", PLUGIN)
    assert _fits(plugged(typed).err)[0] == "lift"
    assert "words" in plugged("explain", "lift", "--format", "json").json


@pytest.mark.parametrize(
    ("file", "least"),
    [
        *(("invented_first", 98), ("invented_forty", 98), ("invented_late", 98)),
        *(("invented_last", 98), ("invented_hurried", 98), ("invented_values", 98)),
        *(("invented_shop_floor", 98), ("invented_strangers", 97), ("invented_elsewhere", 98)),
    ],
)
def test_hurried_words_lead_to_what_fits_among_the_first_three(file: str, least: int) -> None:
    bundled = host.build(bundled_only=True)
    with (QUERIES / f"{file}.csv").open(encoding="utf-8") as rows:
        asked = [(row["query"], row["fitting"].split(";")) for row in csv.DictReader(rows)]
    offered = {q: fitting(bundled, q, COMMANDS).names[:3] for q, _ in asked}
    missed = [(q, fit, offered[q]) for q, fit in asked if not set(fit) & set(offered[q])]
    assert 100 * len(missed) <= (100 - least) * len(asked), missed
