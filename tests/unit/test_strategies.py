"""The ready-made properties: they hold for what keeps to the contract, and find what does not."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from types import SimpleNamespace
from typing import Annotated, Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import (
    PRACTICE,
    Bands,
    Count,
    Criterion,
    HouseRule,
    Item,
    Nameplate,
    OneOf,
    PluginDefect,
    Reading,
    Wire,
    YesNo,
    asked,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    extra,
)
from wirecalc.engine import running
from wirecalc.testing import finding_of
from wirecalc.testing.properties import (
    PROPERTIES,
    any_text_is_read_or_refused,
    left_out_is_no_better_than_unknown,
    rules_only_tighten,
    the_band_is_judged_as_its_points,
)
from wirecalc.testing.strategies import plausible, texts, typed

Gap = Annotated[float, Reading("mm", low=0, high=20, typical="0.4 mm", text="gap of the seal")]


@calculation(part="shop")
def seal(
    gap: Gap,
    wires: Annotated[list[Wire], "wires"],
    volts: Annotated[float, Nameplate("V", above=0, text="supply")],
    screws: Annotated[int, Count("screws", low=2, high=9)],
    kind: Annotated[str, OneOf(("new", "old"), text="seal")],
    depth: Annotated[float | None, Reading("mm", text="depth"), asked("it is deep")] = None,
    warm: Annotated[bool | None, YesNo("warmed", goes_with="depth"), extra("cold too")] = None,
) -> Iterator[Item]:
    """Is it tight?"""
    yield at_most("gap", gap, 1.0, "mm", source=PRACTICE)
    if depth is None:
        yield cannot_tell("depth", "unknown", needs=("depth",))


def offering(*calculations: object, rules: Sequence[HouseRule] = ()) -> SimpleNamespace:
    hooks: dict[str, Callable[[], list[Any]]] = {
        "wirecalc_calculations": lambda: [*calculations],
        "wirecalc_house_rules": lambda: [*rules],
    }
    return SimpleNamespace(**{n: wirecalc.hookimpl(body) for n, body in hooks.items()})


@settings(deadline=None)
@given(typed(seal))
def test_what_is_drawn_for_a_calculation_is_read(drawn: dict[str, Any]) -> None:
    assert {"gap", "wires", "volts", "screws", "kind"} <= set(drawn)
    assert "depth" in drawn or "warm" not in drawn
    assert finding_of(seal, drawn).verdict is not None


@given(typed(seal, "depth"))
def test_an_input_may_be_asked_for(drawn: dict[str, Any]) -> None:
    assert "depth" in drawn


def test_the_whole_span_is_drawn() -> None:
    drawn: list[float] = []

    @given(plausible(seal.input("gap")))
    def draw(text: str) -> None:
        drawn.append(float(text.removesuffix(" mm")))

    draw()
    assert min(drawn) == 0
    assert max(drawn) > 10


@given(st.data())
def test_any_text_is_a_text(data: st.DataObject) -> None:
    assert isinstance(data.draw(texts()), str)


def harder(inputs: Any, items: Any) -> Iterator[Item]:
    yield at_least("harder", inputs["force"], 25, "lbf", source=PRACTICE)


@pytest.mark.parametrize("holds", PROPERTIES)
def test_a_plugin_that_keeps_the_contract(holds: Callable[[object], None]) -> None:
    holds(offering(seal, rules=[HouseRule("harder", ("pull",), harder)]))


def test_a_text_on_which_it_fails_is_found() -> None:
    @calculation(part="shop")
    def odd(remark: Annotated[str, "what is said"]) -> Iterator[Item]:
        """Is it odd?"""
        most = 40.0 if remark.isascii() else 1 / 0
        yield at_most("letters", float(len(remark)), most, source=PRACTICE)

    with pytest.raises(PluginDefect, match="ZeroDivisionError"):
        any_text_is_read_or_refused(offering(odd))


def test_a_limit_with_two_sides_is_found() -> None:
    @calculation(part="shop")
    def sides(gap: Gap) -> Iterator[Item]:
        """Is it?"""
        yield at_least("gap", abs(gap - 10), 1.0, "mm", source=PRACTICE)

    with pytest.raises(AssertionError, match=r"'gap' is (pass|fail) for gap"):
        the_band_is_judged_as_its_points(offering(sides))


def test_a_limit_that_passes_in_the_middle_alone_is_found() -> None:
    @calculation(part="shop")
    def middle(gap: Gap) -> Iterator[Item]:
        """Is it?"""
        yield at_most("gap", abs(gap - 10), 1.0, "mm", source=PRACTICE)

    with pytest.raises(AssertionError, match="'gap' is fail for gap"):
        the_band_is_judged_as_its_points(offering(middle))


def test_a_plugin_that_is_not_whole_holds_nothing() -> None:
    @calculation(part="shop")
    def vague(gap: float) -> Iterator[Item]:
        """Is it?"""
        yield at_most("gap", gap, 1.0, "mm", source=PRACTICE)

    for holds in PROPERTIES:
        with pytest.raises(AssertionError, match=r"it is in part: vague\(gap\)"):
            holds(offering(vague))


def test_a_band_that_counts_for_nothing_is_found() -> None:
    @calculation(part="shop")
    def deaf(gap: Gap, bands: Bands | None = None) -> Iterator[Item]:
        """Is it?"""
        yield at_most("gap", gap, 1.0, "mm", source=PRACTICE)

    with pytest.raises(AssertionError, match="'gap' is"):
        the_band_is_judged_as_its_points(offering(deaf))


def test_what_is_milder_left_out_than_unknown_is_found() -> None:
    @calculation(part="shop")
    def milder(
        gap: Gap,
        depth: Annotated[float | None, Reading("mm", low=0, text="depth"), extra("no")] = None,
    ) -> Iterator[Item]:
        """Is it?"""
        yield at_most("gap", gap, 20.0, "mm", source=PRACTICE)
        if depth is None:
            yield at_most("depth", 0.0, 1.0, source=PRACTICE)._replace(needs=("depth",))

    with pytest.raises(AssertionError, match="depth left out is pass, unknown is cannot tell"):
        left_out_is_no_better_than_unknown(offering(milder))


def test_a_rule_that_loosens_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """There is no way for a rule to loosen; so the core is spoiled here."""
    real = running.with_rules

    def without_the_first(*of: Any) -> Any:
        return real(*of)[bool(of[-1]) :]

    monkeypatch.setattr(running, "with_rules", without_the_first)
    with pytest.raises(AssertionError, match="pull is cannot tell, and with the rules pass"):
        rules_only_tighten(offering(rules=[HouseRule("harder", ("pull",), harder)]))


def test_a_rule_that_changes_what_was_found_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    real = running.with_rules

    def another_action(*of: Any) -> Any:
        return [
            given._replace(item=given.item._replace(action="nothing"))
            if of[-1] and isinstance(given.item, Criterion)
            else given
            for given in real(*of)
        ]

    monkeypatch.setattr(running, "with_rules", another_action)
    with pytest.raises(AssertionError, match="the criteria of pull are others"):
        rules_only_tighten(offering(rules=[HouseRule("harder", ("pull",), harder)]))
