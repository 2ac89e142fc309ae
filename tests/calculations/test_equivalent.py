"""What the shared tests need to know of `equivalent`."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import source

from .trial import Bad, Trial, When, texts

TRIAL = Trial(
    good={"wire": "14 AWG"},
    apart=("resistance_per_length", "known_at"),  # in place of the wire
    bad=(
        Bad("resistance_per_length", "2.525 ohm/kft", "both were given", "alone"),
        Bad("known_at", "75 C", "resistance_per_length, which was not given", "leave it out"),
    ),
    always={"wire": texts(["0.75 mm2", "14 AWG", "26x30 AWG", "120 mm2", "2 AWG"])},
    why="A size alone makes no substitute: the ratings count, and the metal.",
    cautions=("sub-01",),
    not_checked=("insulation, temperature, voltage", "fits the barrel"),
    when=(
        When("wire of aluminium", {"wire": "12 AWG aluminium"}, comes=("alu-01",)),
        When(
            "clad wire counts as aluminium",
            {"wire": "12 AWG copper-clad aluminium"},
            comes=("alu-01",),
        ),
    ),
)


def answers(**given: str) -> dict[str, tuple[str, tuple[str, ...]]]:
    return {
        a.name: (a.text, tuple(a.evidence_against))
        for a in wirecalc.run("equivalent", **given).answers
    }


@source("NEC (NFPA 70)", "2011", "chapter 9, Table 8, ohm/kft at 75 C", seen="copies")
@pytest.mark.parametrize(
    ("ohms", "gauge"),
    [
        ("3.14", "14"),
        ("3.07", "14"),
        ("1.98", "12"),
        ("1.97", "12"),
        ("1.93", "12"),
        ("1.92", "10"),
    ],
)
def test_gauge_by_printed_ohms(ohms: str, gauge: str) -> None:
    found = answers(resistance_per_length=f"{ohms} ohm/kft", known_at="75 C")
    assert found["gauge to use"][0] == f"{gauge} AWG"


@source("IEC 60228", "2004", "Table 3, class 5, and Table 1, class 1, at 20 C", seen="four copies")
@pytest.mark.parametrize(
    ("ohms", "size", "stiff"),
    [("26", "0.75", ""), ("25.9", "1", "0.75"), ("7.98", "2.5", ""), ("7.41", "4", "2.5")],
)
def test_metric_size_by_printed_ohms(ohms: str, size: str, stiff: str) -> None:
    text, against = answers(resistance_per_length=f"{ohms} ohm/km")["metric size to use"]
    assert text == f"{size} mm2"
    assert [a.split(" mm2")[0] for a in against] == ([stiff] if stiff else [])


@source("IEC 60228", "2004", "25 mm2, class 5: 0.780 ohm/km", seen="four copies")
def test_past_the_tables_it_cannot_tell() -> None:
    assert wirecalc.run("equivalent", resistance_per_length="0.77 ohm/km").verdict == "cannot tell"
    assert wirecalc.run("equivalent").verdict == "cannot tell"
