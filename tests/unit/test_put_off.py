"""What is put off until somebody reads it: the rows of a listing, the words of a criterion."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any

import pytest

from wirecalc import (
    PRACTICE,
    BadInput,
    HouseRule,
    Item,
    PluginDefect,
    Reading,
    asked,
    at_most,
    calculation,
    extra,
    listing,
    requires,
    setting,
)
from wirecalc.engine.from_plugins import ProvidedCalculation, ProvidedRule
from wirecalc.engine.running import Runner
from wirecalc.said.items import Listing

A = Reading("A", low=0, high=100, text="current of the load")
made: list[float] = []


def rows_of(load: float) -> list[tuple[str, float]]:
    made.append(load)
    return [("load", load)]


@calculation(part="test")
def listed(load: Annotated[float, A]) -> Iterator[Item]:
    """Is the load within 15 A?"""
    yield at_most("load", load, 15.0, "A", source=PRACTICE)
    yield listing("Loads", ("what", "A"), lambda: rows_of(load))


@calculation(part="test")
def badly_listed(load: Annotated[float, A]) -> Iterator[Item]:
    """Is the load within 15 A?"""
    yield at_most("load", load, 15.0, "A", source=PRACTICE)
    yield listing("Loads", ("what", "A"), lambda: [(load, object())])  # type: ignore[list-item]


def runner(calc: Any, *rules: ProvidedRule) -> Runner:
    return Runner(ProvidedCalculation("demo", "1.0", calc), rules=rules)


def test_rows_that_are_put_off_are_made_when_the_finding_is_asked_for() -> None:
    made.clear()
    outcome = runner(listed).outcome({"load": "16 A"})
    assert (outcome.verdict, made) == ("fail", [])
    assert outcome.finding().listings == (Listing("Loads", ("what", "A"), (("load", 16.0),)),)
    assert made == [16.0]


def test_rows_that_change_over_the_band_say_so() -> None:
    (found,) = runner(listed).outcome({"load": "10 A ±10%"}).finding().listings
    assert found.title == "Loads, at the middle of the meter's band"
    assert found.rows == (("load", 10.0),)


def test_rows_that_can_not_be_listed_are_a_defect_of_their_plugin() -> None:
    outcome = runner(badly_listed).outcome({"load": "10 A"})
    with pytest.raises(PluginDefect, match="the listing 'Loads' of badly-listed of plugin demo"):
        outcome.finding()


def test_a_house_rule_sees_the_rows() -> None:
    def no_load(values: Mapping[str, Any], items: Sequence[Item]) -> Iterator[Item]:
        (seen,) = (i for i in items if isinstance(i, Listing))
        yield requires("no load", not seen.rows, says=f"{seen.rows}", source=PRACTICE)

    rule = ProvidedRule("shop", "1.0", HouseRule("no load", ("listed",), no_load))
    found = runner(listed, rule).outcome({"load": "10 A"})
    assert found.verdict == "fail"
    assert found.decided_by is not None
    assert found.decided_by.reason == "(('load', 10.0),)"


def test_a_refusal_is_said_again_and_a_name_that_there_is_not_each_time() -> None:
    again = runner(listed)
    for _ in range(2):
        assert again.outcome({"load": "10 A"}).verdict == "pass"
        with pytest.raises(BadInput, match="load"):
            again.outcome({})
        with pytest.raises(BadInput, match="lode"):
            again.outcome({"load": "10 A", "lode": None})
        with pytest.raises(BadInput, match="101"):
            again.outcome({"load": "101 A"})


NEVER_0 = Reading("ohm", low=0, high=100, text="ohms", zero=("shorted leads read 0", "part them"))
OF_CORD = Reading("A", low=0, high=100, text="current in the cord", goes_with="cord")


@calculation(part="test")
def corded(
    ohms: Annotated[float, NEVER_0],
    cord: Annotated[str | None, "kind of cord", setting()] = None,
    cord_current: Annotated[float | None, OF_CORD, setting()] = None,
    load: Annotated[
        float | None, A, extra("no load counts", when="cord=thin"), asked("it is there")
    ] = None,
) -> Iterator[Item]:
    """Are the ohms within 50?"""
    yield at_most("ohms", ohms, 50.0, "ohm", source=PRACTICE)


@pytest.mark.parametrize(
    "given",
    [
        {"ohms": "0 ohm"},  # is no reading, however often it is read
        {"ohms": "1 ohm ±10%", "cord": "thin"},
        {"ohms": "1 ohm", "cord": "thin", "cord_current": "3 A"},
        {"ohms": "1 ohm", "cord_current": "3 A"},  # goes with a cord, and there is none
        {"ohms": "1 ohm", "cord": "thick"},  # what the load left out means turns on the cord
        {"ohms": "1 ohm", "load": "unknown"},
    ],
)
def test_what_was_run_before_changes_nothing(given: dict[str, str]) -> None:
    again = runner(corded)
    for before in ("thin", "thick"):
        again.outcome({"ohms": "0 ohm", "cord": before, "cord_current": "3 A"})
        again.outcome({"ohms": "1 ohm ±10%", "cord": before})
        again.outcome({"ohms": "1 ohm", "cord": before, "load": "unknown"})
        again.outcome({"ohms": "1 ohm", "cord": before})
    assert again.outcome(given).finding() == runner(corded).outcome(given).finding()
    assert again.outcome(given).finding() == again.outcome(given).finding()
