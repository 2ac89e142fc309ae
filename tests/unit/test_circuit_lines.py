"""What the checks of a circuit say beside their limits."""

from __future__ import annotations

from typing import Any

import pytest

import wirecalc
from wirecalc.typed.wires import read_wire
from wirecalc_plugins.circuit.circuit_size import carries
from wirecalc_plugins.circuit.wire_place import WirePlace

LOADS: dict[str, dict[str, Any]] = {
    "breaker": {"current": "8 A", "breaker": "20 A"},
    "circuit": {"plug_loads": ["8 A"], "breaker": "20 A"},
    "motor-circuit": {
        "motor_kind": "motor",
        "fastened_in_place": "yes",
        "horsepower": "1/2 hp",
        "nameplate_voltage": "115 V",
        "breaker": "20 A",
    },
}
COLUMN = "insulation_class of 105 C itself"


@pytest.mark.parametrize("name", LOADS)
def test_a_class_that_the_table_has_not_is_said_of_a_wire_that_is_there(name: str) -> None:
    """NEC Table 310.16 has 60, 75 and 90 C; wire marked 105 C counts by the 90 C column."""
    given = LOADS[name] | {"insulation_class": "105 C", "termination_temperature": "75 C"}
    wire = wirecalc.run(name, **given, building_wire="12 AWG")
    (said,) = (n for n in wire.not_checked if n.what == COLUMN)
    assert "the 90 C column was taken" in said.why
    none = wirecalc.run(name, **given, building_wire="unknown")
    assert COLUMN not in [n.what for n in none.not_checked]


@pytest.mark.parametrize(("rules", "amps"), [("iec", 8.0), ("nec", 10.0)])
def test_a_long_load_counts_a_quarter_more_by_the_nec_alone(rules: str, amps: float) -> None:
    """NEC 210.20(A): 125 % of 8 A; an IEC 60898 breaker carries its rating without end."""
    found = wirecalc.run("circuit", long_plug_loads=["8 A"], breaker="16 A", wiring_rules=rules)
    assert found.figure("sum as it counts").figure.value == amps


@pytest.mark.parametrize(("strands", "refused"), [("1", False), ("2", True)])
def test_a_solid_wire_has_one_strand(strands: str, refused: bool) -> None:
    given = {"wire": "14 AWG solid", "overcurrent": "200 A", "strands": strands}
    if not refused:
        wirecalc.run("short-time", **given, cut_strands="0")
        return
    with pytest.raises(wirecalc.BadInput, match="a solid wire has no strands"):
        wirecalc.run("short-time", **given, cut_strands="0")


def test_a_load_of_the_same_amps_is_pointed_out_by_the_line_it_may_be() -> None:
    """5, 3 and 5 A: the third may be the first, listed twice."""
    found = wirecalc.run("circuit", plug_loads=["5 A", "3 A", "5 A"], breaker="20 A")
    (listing,) = (one for one in found.listings if one.title == "Loads as counted")
    assert [row[-1] for row in listing.rows] == ["", "", "as line 1"]
    assert "loads of the same amps" in [n.what for n in found.not_checked]


def test_what_is_part_of_a_start_is_named_by_the_first_that_was_given() -> None:
    with pytest.raises(wirecalc.BadInput) as caught:
        wirecalc.run(
            "trip",
            breaker="15 A",
            device="ul-489",
            overcurrent="40 A",
            locked_rotor_current="20 A",
            settle_time="0.4 s",
            settled="3 A",
        )
    assert str(caught.value).startswith("--settle-time: is part of a start, and a current was")


def test_a_gauge_that_the_nec_lets_carry_it_passes_by_iec_rules_too() -> None:
    """12 AWG carries 20 A (NEC Table 310.16, 240.4(D)): 5 A on a breaker of 10 A are a pass."""
    found = wirecalc.run(
        "circuit",
        plug_loads=["5 A"],
        breaker="10 A",
        wiring_rules="iec",
        building_wire="12 AWG",
        insulation_class="60 C",
        termination_temperature="60 C",
        ambient="30 C",
        conductors=2,
    )
    assert found.criterion("load on the wire").verdict == "pass"
    assert {str(c.verdict) for c in found.criteria} == {"pass"}


@pytest.mark.parametrize(("wire", "carried"), [("20 AWG", False), ("14 AWG", True)])
def test_a_wire_that_the_table_does_not_list_carries_nothing(wire: str, carried: bool) -> None:
    place = WirePlace(60, 60, None, None)
    assert carries(read_wire(wire), 1.0, place) is carried
