"""Published questions the other way round: the longest run, the least wire, the next rating."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc.engine.sought.seeking import Sought

from .records import independent, memory, practice, source
from .seen import DEVICE_430_52, NEXT_RATING_430_52_C, RATINGS_240_6_A

# NEC Chapter 9 Table 8, 75 C, stranded uncoated and coated copper, ohm per 1000 ft
TABLE_8 = {"14 AWG": (3.14, 3.26), "12 AWG": (1.98, 2.05), "10 AWG": (1.24, 1.29)}


def seek(name: str, *sought: str, **given: str) -> Sought:
    found = wirecalc.seek(name, *sought, **given)
    assert isinstance(found, Sought)
    return found


@source("NEC (NFPA 70)", "2008 to 2023", "Chapter 9 Table 8, 75 C", seen="two copies")
@pytest.mark.parametrize("gauge", TABLE_8)
@pytest.mark.parametrize(("build", "column"), [("stranded", 0), ("stranded tinned", 1)])
def test_longest_run_that_keeps_three_per_cent(gauge: str, build: str, column: int) -> None:
    ohm_per_foot = TABLE_8[gauge][column] / 1000
    longest = 0.03 * 120 / (2 * 10 * ohm_per_foot)
    found = seek(
        "drop",
        run_length="sought 1 to 500 ft",
        current="10 A",
        nameplate_voltage="120 V",
        building_wire=f"{gauge} {build}",
        conductor_temperature="75 C",
        target="drop share <= 3 %",
        target_alone="yes",
    )
    (passing,) = [s for s in found.spans if s.word == "pass"]
    assert passing.last.value == pytest.approx(longest, rel=0.01)  # three digits of each


@source("NEC (NFPA 70)", "2008 to 2023", "240.4(D), 240.6(A)", seen="two copies")
@pytest.mark.parametrize(("gauge", "largest"), [("14", "15 A"), ("12", "20 A"), ("10", "30 A")])
def test_largest_breaker_of_a_small_wire(gauge: str, largest: str) -> None:
    found = seek(
        "breaker", "breaker", current="5 A", building_wire=f"{gauge} AWG", ambient="25 C",
        conductors="2", insulation_class="60 C", termination_temperature="60 C", run_time="1 h",
        only_receptacle="no",
    )  # fmt: skip
    held = [t for s in found.spans if s.word != "fail" for t in s.texts]
    assert held[-1] == largest


@source("UL 486A", "8th edition, 1991/1995", "section 12", seen="three copies")
@pytest.mark.parametrize(("gauge", "least"), [(18, 20.0), (16, 30.0), (14, 50.0)])
def test_least_pull_of_a_gauge(gauge: int, least: float) -> None:
    found = seek("pull", "force", wire=f"{gauge} AWG", terminal="ring")
    assert next(s for s in found.spans if s.word == "pass").first.value == least


@practice("a barrel marked 16-14 AWG takes 16 and 14 AWG")
def test_wires_that_a_marked_barrel_takes() -> None:
    found = seek("splice", "wire", barrel="16-14 AWG", wire_temperature="105 C",
                 terminal_temperature="105 C", place_temperature="60 C", current="5 A")  # fmt: skip
    taken = [t for s in found.spans if s.word != "fail" for t in s.texts]
    assert taken == ["16 AWG", "14 AWG"]


@source("NEC (NFPA 70)", "2008 to 2023", "Chapter 9 Table 8, 75 C", seen="two copies")
@pytest.mark.parametrize(("feet", "least"), [(57, "14 AWG"), (58, "12 AWG"), (91, "10 AWG")])
def test_least_size_that_keeps_three_per_cent(feet: int, least: str) -> None:
    # 3.6 V over 10 A and twice the feet: 3.158, 3.103 and 1.978 ohm/kft at the most
    found = seek(
        "drop", run_length=f"{feet} ft", current="10 A", nameplate_voltage="120 V",
        building_wire="sought 18 to 8 AWG", conductor_temperature="75 C",
        target="drop share <= 3 %", target_alone="yes",
    )  # fmt: skip
    assert next(s for s in found.spans if s.word == "pass").texts[0] == least


@source("NEC (NFPA 70)", "2008 to 2023", "Chapter 9 Table 8, 75 C", seen="two copies")
@pytest.mark.parametrize("gauge", TABLE_8)
@pytest.mark.parametrize(("build", "column"), [("stranded", 0), ("stranded tinned", 1)])
def test_longest_wire_of_so_many_ohms(gauge: str, build: str, column: int) -> None:
    found = seek(
        "wire-ohms", wire=f"{gauge} {build}", conductor_length="sought 1 to 2000 ft",
        conductor_temperature="75 C", target="resistance, there and back <= 1 ohm",
        target_alone="yes",
    )  # fmt: skip
    (passing,) = [s for s in found.spans if s.word == "pass"]
    longest = 1000 / (2 * TABLE_8[gauge][column])
    assert passing.last.value == pytest.approx(longest, rel=0.01)  # three digits of each


@DEVICE_430_52
@NEXT_RATING_430_52_C
@RATINGS_240_6_A
@pytest.mark.parametrize(
    ("horsepower", "next_rating"),  # 250 % of 9.8, 13.8, 16 and 24 A: 24.5, 34.5, 40 and 60 A
    [("1/2 hp", "25 A"), ("3/4 hp", "35 A"), ("1 hp", "40 A"), ("2 hp", "60 A")],
)
def test_next_standard_breaker_of_a_motor(horsepower: str, next_rating: str) -> None:
    found = seek("motor-circuit", "breaker", horsepower=horsepower, nameplate_voltage="115 V",
                 motor_kind="motor", fastened_in_place="yes")  # fmt: skip
    (passing,) = [s for s in found.spans if s.word == "pass"]
    assert passing.texts[-1] == next_rating


@memory("closed barrels by the US classes: 16-14 AWG takes 2583 to 4107 cmil")
@independent("ASTM B258: 18 AWG has 1624 cmil, 20 AWG 1022, 22 AWG 642")
@pytest.mark.parametrize("bundle", ["18 AWG; 18 AWG", "20 AWG; 20 AWG; 20 AWG", "18 AWG; 20 AWG"])
def test_barrel_for_a_bundle_by_its_area(bundle: str) -> None:
    found = seek(
        "splice", "barrel", wire=bundle, wire_temperature="105 C", terminal_temperature="105 C",
        place_temperature="60 C", current="5 A", connector="closed-end",
        listed_for="combination", wire_limit="3",
    )  # fmt: skip
    assert [t for s in found.spans if s.word == "pass" for t in s.texts] == ["16-14 AWG"]
