"""The kit for plugin authors: what it finds, and that bundled calculations keep to it."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Annotated, Any

import pytest

import wirecalc
from tests.calculations.trials import TRIALS
from wirecalc import (
    PRACTICE,
    BadInput,
    Caution,
    HouseRule,
    Item,
    OneOf,
    Reading,
    RequiredChecks,
    YesNo,
    at_least,
    at_most,
    calculation,
    deferred,
    extra,
    figure,
    tables,
)
from wirecalc.plugging import host
from wirecalc.testing import (
    Outcome,
    Outside,
    check_calculation,
    check_hooks,
    check_plugin,
    check_tables,
    finding_of,
    plugin_set,
    run_command,
)

BUNDLED = host.build(bundled_only=True).calculations
Gap = Annotated[float, Reading("mm", low=0, high=20, typical="0.4 mm", text="gap of the seal")]
RUN_PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
PULL = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}


@calculation(part="shop")
def seal(gap: Gap) -> Iterator[Item]:
    """Is a seal of this gap, in mm, tight?"""
    yield at_most("seal gap", gap, 1.0, "mm", source=PRACTICE)


def plugin(**hooks: Callable[..., object]) -> SimpleNamespace:
    return SimpleNamespace(**{name: wirecalc.hookimpl(body) for name, body in hooks.items()})


def offering(*calculations: object) -> SimpleNamespace:
    return plugin(wirecalc_calculations=lambda: list(calculations))


# a calculation


@pytest.mark.parametrize("name", TRIALS)
def test_bundled_calculation_keeps_the_contract(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(Path(__file__).parents[2])
    assert check_calculation(BUNDLED[name].offered, TRIALS[name].files or None) == []


def test_calculation_that_keeps_the_contract() -> None:
    assert check_calculation(seal) == []
    assert check_calculation(seal, {"gap": "3 mm ±1 mm"}) == []


def _broken(body: Callable[[float], Any], doc: str = "Is it, in mm?") -> Any:
    def broken(gap: Gap) -> Iterator[Item]:
        yield from body(gap)

    broken.__doc__ = doc
    broken.__annotations__ = {"gap": Gap}
    return calculation(part="shop")(broken)


def _criterion(gap: float, name: str = "gap", limit: float = 1.0) -> Item:
    return at_most(name, gap, limit, "mm", source=PRACTICE)


def _raises_when_wide(gap: float) -> Iterator[Item]:
    yield figure("share", 1 / (0 if gap > 19 else 1))


BREACHES = {
    "no question": (_broken(lambda g: [_criterion(g)], "It is in mm."), "no question"),
    "no unit": (_broken(lambda g: [_criterion(g)], "Is it comm?"), "gap is in mm"),
    "a number in a name": (_broken(lambda g: [_criterion(g, f"gap of {g} mm")]), "constant text"),
    "two sides": (_broken(lambda g: [_criterion(abs(g - 5))]), "two criteria"),
    "two sides, far off": (_broken(lambda g: [_criterion(abs(g - 15))]), "two criteria"),
    "not finite": (_broken(lambda g: [figure("f", float("inf"))]), "inf"),
    "not finite somewhere": (
        _broken(lambda g: [figure("f", float("inf") if g > 18 else 1.0)]),
        "18",
    ),
    "raises": (_broken(lambda g: [1 / 0]), "ZeroDivisionError"),
    "raises somewhere": (_broken(_raises_when_wide), "ZeroDivisionError"),
    "yields a text": (_broken(lambda g: ["text"]), "str"),
    "twice": (_broken(lambda g: [_criterion(g), _criterion(g)]), "twice"),
    "defers to nowhere": (deferred("json:dumps", part="a", question="b?"), "no calculation"),
}


@pytest.mark.parametrize("case", BREACHES)
def test_breach_is_found(case: str) -> None:
    calc, says = BREACHES[case]
    found = check_calculation(calc)
    assert len(found) == 1
    assert says in found[0]


def test_undeclared_input_is_found() -> None:
    def vague(gap: float) -> Iterator[Item]:
        """Is it vague?"""
        yield figure("gap", gap)

    (found,) = check_calculation(calculation(part="shop")(vague))
    assert "vague(gap)" in found


def test_example_that_is_refused_is_found() -> None:
    kind = Reading("mm", low=0, high=1, typical="5 mm", text="gap")

    def narrow(gap: float) -> Iterator[Item]:
        """Is it narrow, in mm?"""
        yield figure("gap", gap)

    narrow.__annotations__ = {"gap": Annotated[float, kind]}
    calc = calculation(part="shop")(narrow)
    assert "5 mm" in check_calculation(calc)[0]
    assert check_calculation(calc, {"gap": "0.5 mm"}) == []


def test_finding_of_one_calculation() -> None:
    assert finding_of(seal).verdict == "pass"
    assert finding_of(seal, {"gap": "1 mm ±0.1 mm"}).verdict == "cannot tell"
    rule = HouseRule("half", ("seal",), lambda inputs, items: [_criterion(inputs["gap"], "h", 0.5)])
    assert finding_of(seal, {"gap": "0.7 mm"}, rules=[rule]).verdict == "fail"
    with pytest.raises(BadInput, match="is needed"):
        finding_of(seal, {})


# a plugin


def test_plugin_that_keeps_the_contract() -> None:
    assert check_plugin(offering(seal)) == []


def _rules(*rules: object) -> SimpleNamespace:
    return plugin(wirecalc_house_rules=lambda: list(rules))


def _harder(inputs: Any, items: Any) -> Iterator[Item]:
    yield at_least("harder", inputs["force"], 25, "lbf", source=PRACTICE)


PLUGINS = {
    "no hook": (SimpleNamespace(), "no hook"),
    "no mark": (SimpleNamespace(wirecalc_cautions=list), "@hookimpl"),
    "nearly a hook": (SimpleNamespace(wirecalc_calculation=list), "wirecalc_calculations"),
    "unknown hook": (plugin(wirecalc_house_rule=lambda: []), "wirecalc_house_rules"),
    "wrapper": (
        SimpleNamespace(wirecalc_tables=wirecalc.hookimpl(lambda: (yield), wrapper=True)),
        "wraps",
    ),
    "bundled name": (offering(_broken(lambda g: []), BUNDLED["pull"].calculation), "pull"),
    "breach in a calculation": (offering(BREACHES["two sides"][0]), "two criteria"),
    "rule for nothing": (_rules(HouseRule("h", ("pul",), _harder)), "did you mean pull?"),
    "rule that raises": (_rules(HouseRule("h", ("pull", "strip"), _harder)), "strip"),
    "required check of nothing": (_rules(RequiredChecks("r", ("*",), ("pulls",))), "pulls"),
    "unknown caution": (
        offering(calculation(part="shop", cautions=("shop-99",))(seal.function)),
        "shop-99",
    ),
    "no folder": (plugin(wirecalc_tables=lambda: [Path("nowhere")]), "nowhere"),
}


@pytest.mark.parametrize("case", PLUGINS)
def test_breach_of_a_plugin_is_found(case: str) -> None:
    breaks, says = PLUGINS[case]
    found = check_plugin(breaks)
    assert found
    assert any(says in text for text in found)


def test_hooks_that_are_marked_are_well() -> None:
    assert check_hooks(offering(seal)) == []
    assert check_hooks(sys.modules["wirecalc_plugins.shelf"]) == []


def test_own_caution_is_known_to_its_plugin() -> None:
    calc = calculation(part="shop", cautions=("shop-98",))(seal.function)
    hooks: dict[str, Callable[..., object]] = {
        "wirecalc_calculations": lambda: [calc],
        "wirecalc_cautions": lambda: [Caution("shop-98", "Unplug it.")],
    }
    assert check_plugin(plugin(**hooks)) == []
    assert "shop-98" in check_calculation(calc)[0]


# tables


def test_bundled_tables_are_well_but_for_their_names(tmp_path: Path) -> None:
    for path in tables.bundled_folder().glob("awg.*"):
        content = path.read_text(encoding="utf-8")
        (tmp_path / path.name).write_text(content, encoding="utf-8")
        (tmp_path / f"shop-{path.name}").write_text(content, encoding="utf-8")
    assert check_tables(tmp_path) == ["table awg: a bundled table has this name; take another"]


@calculation(part="a test")
def choosy(
    gap: Annotated[float, Reading("mm", low=0, high=20, text="gap")],
    seal: Annotated[str, OneOf(("new", "old", "none"), text="seal")],
    warm: Annotated[bool | None, YesNo("warmed"), extra("it seals cold too")] = None,
    depth: Annotated[
        float | None,
        Reading("mm", low=0, high=9, typical="4 mm", text="depth"),
        extra("the gap seals"),
    ] = None,
) -> Iterator[Item]:
    """Does it seal?

    Inputs: gap and depth in mm.
    """
    if seal == "none":
        raise KeyError("none")
    if warm is False:
        raise ValueError("cold")
    if depth is not None:
        raise ValueError("deep")
    yield at_most("gap", gap, 5.0, "mm", source=PRACTICE)


def test_every_choice_is_tried_once() -> None:
    found = check_calculation(choosy)
    assert [text for text in found if "with seal none: " in text and "KeyError" in text]
    assert [text for text in found if "with warm no: " in text and "cold" in text]
    assert [text for text in found if "with depth " in text and "deep" in text]
    assert len(found) == 3


def test_example_of_an_input_that_may_be_left_out_fits_too() -> None:
    @calculation(part="a test")
    def shallow(
        gap: Gap,
        depth: Annotated[
            float | None, Reading("mm", low=0, high=9, text="depth"), extra("none is asked for")
        ] = None,
    ) -> Iterator[Item]:
        """Is it shallow, in mm?"""
        yield at_most("gap", gap, 5.0, "mm", source=PRACTICE)

    assert check_calculation(shallow) == [
        "shallow: the example of depth is refused: '10 mm' is outside from 0 up to 9 mm; "
        "say what is typical"
    ]


def test_damaged_tables_are_found(tmp_path: Path) -> None:
    assert "holds no table" in check_tables(tmp_path)[0]
    (tmp_path / "alone.csv").write_text("a\n1\n", encoding="utf-8")
    (tmp_path / "empty.toml").write_text("", encoding="utf-8")
    found = check_tables(tmp_path)
    assert found[0] == f"{tmp_path.name}/alone.csv: has no alone.toml beside it"
    assert "empty" in found[1]


# running


def test_only_these_plugins_are_there(
    wirecalc_outside: Outside, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("WIRECALC_RULES", "nowhere.toml")
    assert run_command("pull", "--help").status == 0
    assert run_command(*RUN_PULL).status != 0
    with plugin_set():
        assert run_command(*RUN_PULL).status == 0
    monkeypatch.delenv("WIRECALC_RULES")
    wirecalc_outside.add("demo_loud", "raise RuntimeError('imported')\n")
    assert "demo_loud" in run_command().err
    with plugin_set(offering(seal)) as plugins:
        assert [p.name for p in plugins.plugins] == ["bundled", "SimpleNamespace"]
        assert run_command("seal", "--gap", "1.2 mm").status == 1
        assert wirecalc.run("seal", gap="0.2 mm").verdict == "pass"
        assert run_command("pull", "--help").status == 0
    assert run_command("seal", "--gap", "1.2 mm").status == 2
    with pytest.raises(BadInput):
        wirecalc.run("seal", gap="0.2 mm")


def test_nothing_of_a_set_is_left(tmp_path: Path) -> None:
    hooks: dict[str, Callable[..., object]] = {
        "wirecalc_tables": lambda: [tmp_path],
        "wirecalc_cautions": lambda: [Caution("shop-97", "Unplug it.")],
    }
    with pytest.raises(RuntimeError), plugin_set(plugin(**hooks)):
        assert wirecalc.caution("shop-97").text == "Unplug it."
        assert tmp_path in tables.folders()
        raise RuntimeError
    with pytest.raises(wirecalc.TableError):
        wirecalc.caution("shop-97")
    assert tmp_path not in tables.folders()


def test_outcome_of_a_command() -> None:
    done = run_command("pull", "--force", "24")
    assert (done.status, done.out) == (2, "")
    assert any(line.startswith("--force") for line in done.complaints)
    done = run_command("pull", "--help")
    assert "±(2%+5)" in done.out
    assert run_command("schema", "job").json["properties"]


def test_fixtures(
    wirecalc_cli: Callable[..., Outcome], wirecalc_only: Callable[..., host.Catalogue]
) -> None:
    plugins = wirecalc_only(offering(seal))
    assert plugins.run("seal", {"gap": "0.2 mm"}).verdict == "pass"
    assert wirecalc_cli("seal", "--gap", "0.2 mm").status == 0
