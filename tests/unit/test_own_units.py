"""A unit that a plugin declares: read, turned into others of its dimension, and never in the place
of one that is there.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

import wirecalc
from wirecalc import BadText, DeclarationError, Nameplate, Reading, declare_unit
from wirecalc.testing import Outside, run_command
from wirecalc.typed.own_units import declared_units, forget_units
from wirecalc.typed.unit_names import SPELLINGS
from wirecalc.typed.units import convert, read_unit

HERE = __name__.partition(".")[0]


@pytest.fixture(autouse=True)
def none_left() -> Iterator[None]:
    before = {d: dict(units) for d, units in SPELLINGS.items()}
    yield
    forget_units([HERE])
    assert before == SPELLINGS


def masses() -> None:
    declare_unit("g", dimension="mass", factor=0.001, spellings=("gram", "grams"))
    declare_unit("kg", dimension="mass", factor=1)


def test_it_is_read_as_others_are() -> None:
    masses()
    kind = Reading("g", low=0, high=5000, text="frost scraped off")
    assert kind.dimension == "mass"
    for typed, grams in {"20 g": 20, "20grams": 20, "1.5 kg": 1500, "0.3 KG": 300}.items():
        assert kind.read(typed).value == pytest.approx(grams, rel=1e-12)
    read = kind.read("1.5 kg ±2%")
    assert (read.low, read.high) == pytest.approx((1470, 1530))
    with pytest.raises(BadText, match="is a unit of force, and a mass is wanted"):
        kind.read("20 lbf")
    with pytest.raises(BadText, match=r"write 2 g \(or kg\)"):
        kind.read("2")
    with pytest.raises(BadText, match=r"write 20 g$"):  # 20 kg is past its span
        kind.read("20")
    assert convert(2, "kg", "g") == 2000
    assert Nameplate("g", text="charge").read("50 g").value == 50


def test_a_unit_of_a_plugin_is_refused_where_another_is_wanted() -> None:
    masses()
    with pytest.raises(BadText, match="'g' is a unit of mass, and a force is wanted"):
        read_unit("g", "force")
    done = run_command("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "9000 g")
    assert (done.status, done.out) == (2, "")


TAKEN: dict[str, tuple[dict[str, Any], str]] = {
    "a unit of wirecalc": ({"symbol": "lbf"}, "'lbf' is a spelling of lbf (force) already"),
    "a spelling of wirecalc": ({"symbol": "mils"}, "'mils' is a spelling of mil (length) already"),
    "a spelling among its own": (
        {"symbol": "lump", "spellings": ("MFD",)},
        "'MFD' is a spelling of uF (capacitance) already",
    ),
    "a dimension of wirecalc": (
        {"symbol": "tonf", "dimension": "force"},
        "force is a dimension of wirecalc's own, and takes no other units; there are lbf, N, kgf",
    ),
    "pounds as a force": ({"symbol": "lb", "dimension": "force"}, "force is a dimension of wirec"),
    "no dimension": ({"dimension": " "}, "write what it measures"),
    "no factor": ({"factor": 0}, "its factor is 0; write how much one of it is"),
    "a factor below nothing": ({"factor": -1.0}, "its factor is -1.0"),
    "a factor without end": ({"factor": float("inf")}, "its factor is inf"),
    "no number": ({"factor": float("nan")}, "its factor is nan"),
    "true": ({"factor": True}, "its factor is True"),
    "a text as factor": ({"factor": "0.001"}, "its factor is '0.001'"),
    "one text as spellings": ({"spellings": "gram"}, "write them as a list"),
    "an empty spelling": ({"spellings": ("",)}, "write a text of 1 to 24 characters"),
    "a long spelling": ({"spellings": ("g" * 25,)}, "write a text of 1 to 24 characters"),
    "digits in front": ({"symbol": "2g"}, "'102g' would be 102; take letters"),
    "a sign": ({"symbol": "g±"}, "take letters"),
    "a range": ({"symbol": "to 5"}, "take letters"),
    "the same again, by case": ({"symbol": "KG"}, "'KG' is a spelling of kg (mass) already"),
    "the same, typed otherwise": (
        {"symbol": "g", "spellings": ("gramme",)},
        "here it is g of mass, 0.001 in SI, also gramme: give yours a name of its own",
    ),
    "the same, another way": (
        {"symbol": "g", "factor": 1.0},
        "declared it already, as g of mass, 0.001 in SI, also gram, grams",
    ),
}


@pytest.mark.parametrize("case", TAKEN)
def test_what_cannot_stand_beside_the_others_is_refused_by_name(case: str) -> None:
    masses()
    before = {d: dict(units) for d, units in SPELLINGS.items()}
    own, says = TAKEN[case]
    asked: dict[str, Any] = {"symbol": "dram", "dimension": "mass", "factor": 0.001} | own
    with pytest.raises(DeclarationError) as refused:
        declare_unit(asked.pop("symbol"), **asked)
    assert says in str(refused.value)
    assert before == SPELLINGS


def test_a_spelling_may_have_24_characters() -> None:
    long = "hundredweight-of-a-shop-"
    assert declare_unit(long, dimension="mass", factor=45.359237) == long
    assert Reading(long, text="ice").read(f"2 {long}").value == 2


def test_what_is_forgotten_from_outside_leaves_no_unit(wirecalc_outside: Outside) -> None:
    declares = 'from wirecalc import declare_unit\ndeclare_unit("stone", dimension="mass", '
    wirecalc_outside.add("demo_stones", f"{declares}factor=6.35029318)\n")
    wirecalc.build()
    assert "stone" in SPELLINGS["mass"]
    wirecalc_outside.forget()
    assert "mass" not in SPELLINGS


def test_the_same_may_be_declared_twice() -> None:
    masses()
    masses()
    assert [own.symbol for own in declared_units()] == ["g", "kg"]


def test_an_unknown_unit_says_what_there_is_and_what_would_do() -> None:
    with pytest.raises(DeclarationError) as refused:
        Reading("furlong", text="way")
    said = str(refused.value)
    would_do = "declare one of your own with declare_unit; there are A, mA"
    assert said.startswith(f"'furlong' is no unit that wirecalc knows; {would_do}")
    for units in SPELLINGS.values():
        assert all(f" {name}," in said or said.endswith(f" {name}") for name in units)
    with pytest.raises(DeclarationError, match="no unit of time that wirecalc knows"):
        Reading("mm", text="way", dimension="time")
    with pytest.raises(DeclarationError, match="'speed' is no dimension; there are current"):
        Reading("mm", text="way", dimension="speed")
    with pytest.raises(DeclarationError, match="did you mean volts, which is V"):
        Reading("volts", text="supply")
