"""What the checks of a circuit say beside their limits."""

from __future__ import annotations

from typing import Any

import pytest

import wirecalc

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
