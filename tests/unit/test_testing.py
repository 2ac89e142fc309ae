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
    Bands,
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


WORDS = ("gap of a door; draught",)


@calculation(part="shop", words=WORDS)
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
    return calculation(part="shop", words=WORDS)(broken)


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
    "nothing": (_broken(lambda g: []), "it yields nothing"),
    "nothing somewhere": (
        _broken(lambda g: [_criterion(g)] if g < 19 else []),
        "with gap 19.166666667 mm it yields nothing",
    ),
    "a truth for a number": (
        _broken(lambda g: [at_most("gap", g < 1, 1.0, source=PRACTICE)]),
        "is True; write a number",
    ),
    "a caution level past a largest": (
        _broken(lambda g: [at_most("gap", g, 1.0, "mm", caution=1.1, source=PRACTICE)]),
        "'gap' has its caution level of 1.1 mm past its limit of 1 mm",
    ),
    "a caution level past a least": (
        _broken(lambda g: [at_least("gap", g, 1.0, "mm", caution=0.9, source=PRACTICE)]),
        "'gap' has its caution level of 0.9 mm past its limit of 1 mm",
    ),
    "a limit in another unit": (
        _broken(lambda g: [at_most("gap", g, 1.0, "cm", source=PRACTICE)]),
        "'gap' is gap as it is, in mm, and says cm",
    ),
    "a figure in another unit": (
        _broken(lambda g: [figure("width", g, "in")]),
        "'width' is gap as it is, in mm, and says in",
    ),
    "no words": (calculation(part="shop")(seal.function), "write words=("),
    "defers to nowhere": (deferred("json:dumps", part="a", question="b?"), "no calculation"),
}


@pytest.mark.parametrize("case", BREACHES)
def test_breach_is_found(case: str) -> None:
    calc, says = BREACHES[case]
    found = check_calculation(calc)
    assert len(found) == 1
    assert says in found[0]


def test_a_caution_level_may_be_the_limit_itself() -> None:
    for make in (at_least, at_most):
        body = [make("gap", 1.0, 1.0, "mm", caution=1.0, source=PRACTICE)]
        assert check_calculation(_broken(lambda g, body=body: body)) == []  # type: ignore[misc]


OTHER_UNITS = {  # of an input in mm
    "gap of the seal in inches": "in inches",
    "gap of the seal (cm)": "in cm",
    'gap of the seal, in "': 'in "',
}


@pytest.mark.parametrize("text", OTHER_UNITS)
def test_a_text_in_another_unit_than_the_declared_one_is_found(text: str) -> None:
    def gap_of(gap: float) -> Iterator[Item]:
        """Is it, in mm?"""
        yield _criterion(gap)

    gap_of.__annotations__ = {"gap": Annotated[float, Reading("mm", low=0, high=20, text=text)]}
    (found,) = check_calculation(calculation(part="shop", words=WORDS)(gap_of))
    assert f"gap is in mm, and its text says {OTHER_UNITS[text]}" in found


@pytest.mark.parametrize("text", ["gap in the seal", "gap in millimetres", "gap (in use)"])
def test_a_text_in_no_other_unit_is_let_be(text: str) -> None:
    def gap_of(gap: float) -> Iterator[Item]:
        """Is it, in mm?"""
        yield _criterion(gap)

    gap_of.__annotations__ = {"gap": Annotated[float, Reading("mm", low=0, high=20, text=text)]}
    assert check_calculation(calculation(part="shop", words=WORDS)(gap_of)) == []


def test_a_docstring_in_another_unit_is_found() -> None:
    calc = _broken(lambda g: [_criterion(g)], "Is it?\n\nInput: gap in cm (some mm), 0 to 2.")
    (found,) = check_calculation(calc)
    assert "gap is in mm, and its docstring says in cm" in found


def test_a_name_with_the_word_of_an_input_is_found() -> None:
    @calculation(part="shop", words=WORDS)
    def seals(
        gap: Gap, seal: Annotated[str, OneOf(("new", "old", "none"), text="seal")]
    ) -> Iterator[Item]:
        """Is it, in mm?"""
        yield _criterion(gap, f"gap of the {seal} seal")

    (found,) = check_calculation(seals)
    assert "a criterion is called 'gap of the new seal', and 'gap of the old seal' where" in found
    assert "where seal is another: its name must be constant text" in found


def test_names_that_stand_side_by_side_are_no_one_renamed() -> None:
    def both(gap: float) -> list[Item]:
        return [_criterion(gap, f"gap of edition {edition}") for edition in (1, 2)]

    assert check_calculation(_broken(both)) == []


def _own(gap: float, bands: Bands | None, band: bool) -> Item:
    ends = (bands or {}).get("gap")
    return at_most("gap", gap, 1.0, "mm", source=PRACTICE, band=ends if band else None)


def test_a_limit_without_its_band_is_found_where_the_band_is_its_own() -> None:
    @calculation(part="shop", words=WORDS)
    def with_band(gap: Gap, bands: Bands | None = None) -> Iterator[Item]:
        """Is it, in mm?"""
        yield _own(gap, bands, True)

    @calculation(part="shop", words=WORDS)
    def without(gap: Gap, bands: Bands | None = None) -> Iterator[Item]:
        """Is it, in mm?"""
        yield _own(gap, bands, False)

    @calculation(part="shop", words=WORDS)
    def of_another(gap: Gap, depth: Gap, bands: Bands | None = None) -> Iterator[Item]:
        """Is it, in mm?"""
        yield _own(gap, bands, True)
        ends = (bands or {}).get("depth")
        yield at_most("depth", depth, 1.0, "mm", source=PRACTICE, band=ends)

    assert check_calculation(with_band) == []
    assert check_calculation(of_another) == []
    (found,) = check_calculation(without)
    assert "'gap' has no band=(low, high), so gap 0.4 mm ±20% counts for nothing" in found


def test_a_band_that_is_too_narrow_is_found() -> None:
    @calculation(part="shop", words=WORDS)
    def narrow(gap: Gap, bands: Bands | None = None) -> Iterator[Item]:
        """Is it, in mm?"""
        yield at_most("gap", gap, 0.45, "mm", source=PRACTICE, band=(gap, gap))

    (found,) = check_calculation(narrow)
    assert "'gap' is pass for gap 0.4 mm ±20%, and fail at 0.4667 mm" in found


def test_undeclared_input_is_found() -> None:
    def vague(gap: float) -> Iterator[Item]:
        """Is it vague?"""
        yield figure("gap", gap)

    (found,) = check_calculation(calculation(part="shop", words=WORDS)(vague))
    assert "vague(gap)" in found


def test_example_that_is_refused_is_found() -> None:
    kind = Reading("mm", low=0, high=1, typical="5 mm", text="gap")

    def narrow(gap: float) -> Iterator[Item]:
        """Is it narrow, in mm?"""
        yield figure("gap", gap)

    narrow.__annotations__ = {"gap": Annotated[float, kind]}
    calc = calculation(part="shop", words=WORDS)(narrow)
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
        offering(calculation(part="shop", words=WORDS, cautions=("shop-99",))(seal.function)),
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
    calc = calculation(part="shop", words=WORDS, cautions=("shop-98",))(seal.function)
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


@calculation(part="a test", words=WORDS)
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
    @calculation(part="a test", words=WORDS)
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
