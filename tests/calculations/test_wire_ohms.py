"""What the shared tests need to know of `wire-ohms`, and its published checks."""

from __future__ import annotations

import math

import pytest

import wirecalc
from tests.published.records import independent, source

from .trial import Bad, Span, Step, Trial, When, near, texts

METRIC = {
    "wire": "1.5 mm2 solid",
    "conductor_length": "1000 m",
    "conductor_temperature": "20 C",
    "measured_resistance": "12 ohm",
    "measured_way": "one-way",
    "lead_resistance": "0 ohm",
}
PRINTED = METRIC | {
    "wire": "",
    "resistance_per_length": "12 ohm/km",
    "conductor_metal": "copper",
    "greatest_per_length": "12.5 ohm/km",
}

TRIAL = Trial(
    good={"wire": "14 AWG", "conductor_length": "100 ft", "conductor_temperature": "20 C"}
    | {"measured_resistance": "0.72 ohm", "measured_way": "loop", "lead_resistance": "0.1 ohm"}
    | {"resistivity": "17.241 nohm m", "known_at": "20 C", "conductor_metal": "copper"}
    | {"greatest_per_length": "2.7 ohm/kft"},
    zero=("conductor_temperature", "known_at", "lead_resistance"),
    printed=("resistance_per_length", "resistivity", "known_at", "greatest_per_length"),
    bad=(
        Bad("resistance_per_length", "3 ohm/kft", "both were given", "give wire alone"),
        Bad("measured_resistance", "0.1 ohm", "no more than the 0.1 ohm", "subtracted here"),
        Bad("measured_way", "two-way", "'two-way'", "one-way"),
        Bad("conductor_metal", "tungsten", "'tungsten'", "copper"),
        Bad("conductor_temperature", "167 C", "'167 C'", "167 F"),
    ),
    always={
        "wire": texts(["14 AWG", "1.5 mm2", "12 AWG aluminum", "22 AWG tinned"]),
        "measured_resistance": near(0.3, 0.6, 1.2, high=5),
        "measured_way": texts(["one-way", "loop"]),
    },
    sometimes={
        "conductor_length": near(100, high=300),
        "conductor_temperature": near(20, 75, low=-20, high=110),
        "lead_resistance": near(0.1, high=0.25),
        "greatest_per_length": near(2.7, 5, high=10),
        "resistivity": near(17.241, 28.2, high=60),
        "known_at": near(20, 25, low=0, high=80),
    },
    apart=("resistance_per_length", "conductor_metal"),  # in place of the wire; it says its own
    spans={
        "conductor_length": Span(
            "0 ft", "100000 ft", "a pigtail to a whole drum's worth", over=True
        ),
        "measured_resistance": Span(
            "0 ohm", "1000000 ohm", "a meter's ohms of a conductor", over=True
        ),
        "resistance_per_length": Span(
            "0 ohm/kft", "1000000 ohm/kft", "copper to heating", over=True
        ),
        "greatest_per_length": Span("0 ohm/kft", "1000000 ohm/kft", "copper to heating", over=True),
        "resistivity": Span("15 nohm m", "2000 nohm m", "silver has 15.9, heating alloys 1400"),
        "known_at": Span("-40 C", "150 C", "temperatures at which sheets print ohms"),
    },
    why="Ohms are read on a wire that was fed a minute ago: dead first.",
    cautions=("dead-01",),
    not_checked=("joints, terminals and the fault", "size it is named by", "ampacity"),
    when=(
        When("wire of aluminium", {"wire": "12 AWG aluminium"}, comes=("alu-01",)),
        When("clad wire", {"wire": "12 AWG copper-clad aluminium"}, comes=("alu-01",)),
    ),
    steps=(
        Step(
            "ohms of this length, IEC 60228",
            "measured_resistance",
            {"12.1 ohm": "pass", "12.11 ohm": "fail"},
            given=METRIC,
            limit="12.1 ohm/km of 1.5 mm2 class 1",
            source="IEC 60228, 2004, Table 1",
        ),
        Step(
            "ohms of this length",
            "measured_resistance",
            {"12.5 ohm": "pass", "12.51 ohm": "fail"},
            given=PRINTED,
            limit="12.5 ohm/km as typed",
            source="the maker's sheet",
        ),
        Step(
            "ohms against the size",
            "measured_resistance",
            {"9.19 ohm": "cannot tell", "9.20 ohm": "not judged"},
            given=METRIC,
            limit="0.8 of 17.241 / 1.5 ohm/km, which is 9.195 ohm",
            source="common practice, no source; IACS copper",
        ),
    ),
)


def figures(**given: str) -> dict[str, float]:
    found = wirecalc.run("wire-ohms", **given).figures
    return {shown.figure.name: shown.figure.value for shown in found}


def answers(**given: str) -> dict[str, str]:
    return {shown.name: shown.text for shown in wirecalc.run("wire-ohms", **given).answers}


def law_mm2(gauge: int) -> float:
    return math.pi / 4 * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2


@independent("ASTM B258 law of the gauge with 17.241 nohm m of the IACS, R = rho x l / A")
@pytest.mark.parametrize("gauge", [14, 18, 24, 30])
def test_resistivity_over_the_area_of_a_gauge(gauge: int) -> None:
    got = figures(wire=f"{gauge} AWG solid", resistivity="17.241 nohm m", conductor_length="1000 m")
    assert got["resistance, one way"] == pytest.approx(17.241 / law_mm2(gauge), rel=1e-6)
    assert got["resistance, there and back"] == pytest.approx(34.482 / law_mm2(gauge), rel=1e-6)


@independent("10.371 ohm cmil/ft is 17.241 nohm m: a circular mil is pi/4 square mil")
@pytest.mark.parametrize("typed", ["10.371 ohm cmil/ft", "1.7241 uohm cm", "0.017241 ohm mm2/m"])
def test_a_resistivity_in_other_units(typed: str) -> None:
    got = figures(wire="2.5 mm2 solid", resistivity=typed, conductor_length="100 m")
    assert got["resistance, one way"] == pytest.approx(0.68964, rel=1e-5)


@source("NEC (NFPA 70)", "2008 to 2023", "Chapter 9 Table 8, 75 C", seen="two copies")
@pytest.mark.parametrize(
    ("wire", "ohm"),
    [("14 AWG", 3.14), ("14 AWG tinned", 3.26), ("12 AWG solid", 1.93), ("10 AWG tinned", 1.29)],
)
def test_bare_and_tinned_wire_at_75_c(wire: str, ohm: float) -> None:
    got = figures(wire=wire, conductor_length="1000 ft", conductor_temperature="75 C")
    assert got["resistance, one way"] == pytest.approx(ohm, rel=1e-9)


@source("IEC 60228", "2004", "Tables 1 and 3, 20 C", seen="two to four copies")
@pytest.mark.parametrize(
    ("wire", "most"),
    [("1.5 mm2 solid", 12.1), ("2.5 mm2 solid", 7.41), ("0.75 mm2", 26.0), ("1 mm2 tinned", 20.0)],
)
def test_most_of_a_metric_wire(wire: str, most: float) -> None:
    got = figures(wire=wire, conductor_length="1 m")
    assert got["resistance, one way"] == pytest.approx(most / 1000, rel=1e-6)


@source("ASTM B33", "2004, a scan", "Table 2, 0.16454 ohm g/m2 of strands", seen="one copy")
def test_tinned_wire_that_table_8_does_not_list() -> None:
    # 0.16454 ohm g/m2 over 8.89 g/cm3; 2 % of lay (common practice); 22 AWG of 34 AWG strands
    got = figures(wire="22 AWG tinned", conductor_length="1000 m")
    expected = 1.02 * 0.16454 / 8.89 * 1000 / law_mm2(22)
    assert got["resistance, one way"] == pytest.approx(expected, rel=1e-4)


@source("ASTM B566", "edition not stated", "classes 10A and 15A, 62.9 and 64.4 %", seen="one sheet")
def test_clad_wire_lies_between_its_two_classes() -> None:
    shown = wirecalc.run("wire-ohms", wire="12 AWG solid CCA", conductor_length="1000 m").figures
    band = next(f.figure.band for f in shown if f.figure.name == "resistance, one way")
    assert band == pytest.approx(
        [17.241 / share / law_mm2(12) for share in (0.644, 0.629)], rel=1e-3
    )


@source("IEC 60028", "as cited by a property table", "0.00393 per K at 20 C", seen="one copy")
@pytest.mark.parametrize(("celsius", "times"), [(50, 1.1179), (75, 1.21615), (0, 0.9214)])
def test_copper_rises_with_temperature(celsius: int, times: float) -> None:
    given = {"resistance_per_length": "10 ohm/km", "conductor_metal": "copper"}
    got = figures(**given, conductor_length="1000 m",
                  conductor_temperature=f"{celsius} C")  # fmt: skip
    assert got["resistance, one way"] == pytest.approx(10 * times, rel=1e-6)
    back = figures(**given, conductor_length="1000 m", measured_resistance=f"{10 * times} ohm",
                   measured_way="one-way", lead_resistance="0 ohm")  # fmt: skip
    assert back["temperature"] == pytest.approx(celsius, abs=0.01)


@independent("arithmetic: (0.72 - 0.10) ohm / (2 x 10 ohm/km) is 31 m; 1 % of 0.72 is 0.36 m")
def test_loop_to_a_fault_is_counted_twice() -> None:
    given = {"resistance_per_length": "10 ohm/km", "measured_way": "loop"}
    given |= {"measured_resistance": "0.72 ohm ±1%", "lead_resistance": "0.10 ohm"}
    given |= {"conductor_temperature": "20 C", "conductor_metal": "copper"}
    got = wirecalc.run("wire-ohms", **given).figures
    length = next(f.figure for f in got if f.figure.name == "length")
    assert length.value * 0.3048 == pytest.approx(31)
    assert [ft * 0.3048 for ft in length.band] == pytest.approx([30.64, 31.36])
    one_way = figures(**given | {"measured_way": "one-way"})
    assert one_way["length"] == pytest.approx(2 * length.value)


@independent("0 to 0.3 ohm of leads in 0.72 ohm at 10 ohm/km: 42 to 72 m")
def test_leads_that_were_not_read_widen_the_length() -> None:
    got = wirecalc.run("wire-ohms", resistance_per_length="10 ohm/km", measured_way="one-way",
                       measured_resistance="0.72 ohm", conductor_temperature="20 C",
                       conductor_metal="copper").figures  # fmt: skip
    length = next(f.figure for f in got if f.figure.name == "length")
    assert [ft * 0.3048 for ft in length.band] == pytest.approx([42, 72])


@independent("20 C + (R / 1 ohm - 1) / 0.00393: 1.9039 ohm is 250 C, 0.7642 ohm is -40 C")
@pytest.mark.parametrize(
    ("ohm", "told"), [("1.903", True), ("1.905", False), ("0.765", True), ("0.763", False)]
)
def test_a_warmth_that_no_conductor_has(ohm: str, told: bool) -> None:
    found = wirecalc.run("wire-ohms", resistance_per_length="10 ohm/km", conductor_metal="copper",
                         conductor_length="100 m", measured_resistance=f"{ohm} ohm",
                         measured_way="one-way", lead_resistance="0 ohm")  # fmt: skip
    assert (found.verdict is None) == told


@independent("ohms printed for one temperature say nothing of another without the metal")
def test_another_temperature_needs_the_metal() -> None:
    found = wirecalc.run("wire-ohms", resistance_per_length="10 ohm/km", conductor_length="10 m",
                         conductor_temperature="60 C")  # fmt: skip
    assert str(found.verdict) == "cannot tell"
    assert not [f for f in found.figures if f.figure.name == "resistance, one way"]


@source("ASTM B33", "2004, a scan", "Table 2, 0.15940 ohm g/m2 of strands", seen="one copy")
def test_tinned_wire_without_a_listed_build_counts_as_seven_strands() -> None:
    # 15 AWG of seven: 21.6 mil a strand; 2 % of lay (common practice)
    got = figures(wire="15 AWG tinned", conductor_length="1000 m")
    expected = 1.02 * 0.15940 / 8.89 * 1000 / law_mm2(15)
    assert got["resistance, one way"] == pytest.approx(expected, rel=1e-4)
