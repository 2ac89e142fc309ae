"""What the shared tests need to know of `gauge`."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, source

from .trial import Bad, Trial, When, near, texts

TRIAL = Trial(
    good={"strands": "41", "strand_diameter": "0.254 mm", "outside_diameter": "3 mm"}
    | {"metal": "copper"},
    bad=(
        Bad("strand_diameter", "0.010 mm", "41 x 0.01 mm", "0.01 in"),  # inches typed as mm
        Bad("strand_diameter", "2.5 mm", "41 x 2.5 mm", "one strand"),  # the bundle
        Bad("strand_diameter", "0.03 mm", "41 x 0.03 mm", "check mm"),
        Bad("strand_diameter", "25 mm", "'25 mm'", "0.254 mm"),
        Bad("strands", "0", "0 is outside", "whole number"),
        Bad("outside_diameter", "1.2 mm", "1.2 mm", "check the count"),
        Bad("outside_diameter", "3 in", "'3 in'", "3 mm"),
        Bad("resistance_per_length", "2.525 ohm/kft", "both were given", "alone"),
        Bad("known_at", "75 C", "resistance_per_length, which was not given", "leave it out"),
        Bad("metal", "aluminum", "'aluminum'", "did you mean aluminium?"),
    ),
    sometimes={
        "strands": texts(["1", "16", "19", "26", "41", "65"]),
        "strand_diameter": near(0.127, 0.16, 0.2, 0.254, 0.287, 0.36, 0.455, high=0.8),
        "metal": texts(["copper", "tinned copper", "aluminium"]),
        "outside_diameter": near(2, 3, 6, high=12),
    },
    apart=("resistance_per_length", "known_at"),  # in place of the strands
    why=(
        "Strands are measured on bare wire; of an unmarked one neither metal nor "
        "insulation is known."
    ),
    cautions=("dead-01", "alu-01"),
    not_checked=("temperature and voltage rating",),
    when=(When("strands are silver through", {"metal": "aluminium"}),),
)


def answers(**given: str) -> dict[str, str]:
    return {a.name: a.text for a in wirecalc.run("gauge", **given).answers}


@source("table of a physics text", "not stated", "copper at 20 C, ohm/1000 ft", seen="one copy")
@pytest.mark.parametrize(
    ("ohms", "size"),
    [("1.588", "12"), ("2.525", "14"), ("4.016", "16"), ("6.385", "18"), ("10.15", "20")],
)
def test_a_gauge_by_its_ohms(ohms: str, size: str) -> None:
    assert answers(resistance_per_length=f"{ohms} ohm/kft")["gauge"] == f"{size} AWG"


@source("NEC (NFPA 70)", "2011", "chapter 9, Table 8, stranded, uncoated, at 75 C", seen="copies")
@pytest.mark.parametrize(("ohms", "size"), [("3.14", "14"), ("1.98", "12"), ("7.95", "18")])
def test_a_gauge_by_ohms_of_a_warm_wire(ohms: str, size: str) -> None:
    warm = answers(resistance_per_length=f"{ohms} ohm/kft", known_at="75 C")
    assert warm["gauge"] == f"{size} AWG"
    # as if it were of 20 C it would be a thinner one
    assert answers(resistance_per_length=f"{ohms} ohm/kft")["gauge"] != f"{size} AWG"


@source("IEC 60228", "2004", "Table 3, class 5, plain and tinned, at 20 C", seen="four copies")
@pytest.mark.parametrize(
    ("ohms", "metal", "size"),
    [
        ("26.0", "copper", "0.75"),
        ("26.1", "copper", "0.5"),
        ("26.7", "tinned copper", "0.75"),
        ("13.3", "copper", "1.5"),
        ("7.98", "copper", "2.5"),
        ("7.41", "copper", "2.5"),  # class 1 of the same size
    ],
)
def test_a_metric_size_by_its_ohms(ohms: str, metal: str, size: str) -> None:
    found = answers(resistance_per_length=f"{ohms} ohm/km", metal=metal)
    assert found["metric size"] == f"{size} mm2"


@independent("17.241 nohm m over the ohms; 28.264 of aluminium, 61 % IACS")
def test_area_by_ohms() -> None:
    for metal, nohm_m in (("copper", 17.241), ("aluminium", 28.264)):
        found = wirecalc.run("gauge", resistance_per_length="10 ohm/km", metal=metal)
        area = next(f for f in found.figures if f.figure.name == "area")
        assert area.figure.value == pytest.approx(nohm_m / 10, rel=1e-6)
        assert area.high == pytest.approx(1.02 * nohm_m / 10, rel=1e-6)  # 2 % of lay
    assert found.verdict == "fail"


@pytest.mark.parametrize(("ohms", "refused"), [("173 ohm/km", True), ("172 ohm/km", False)])
@independent("0.1 mm2 of copper has 172.4 ohm/km")
def test_ohms_of_no_wire_of_an_appliance_are_refused(ohms: str, refused: bool) -> None:
    if not refused:
        assert answers(resistance_per_length=ohms)
        return
    with pytest.raises(wirecalc.BadInput, match="outside 0"):
        wirecalc.run("gauge", resistance_per_length=ohms)
