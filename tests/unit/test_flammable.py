"""Flammable refrigerants: with all that makes heat or sparks, and first on a sheet."""

from __future__ import annotations

import pytest

from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.sheet import confirmed
from wirecalc.output import summary
from wirecalc.plugging import host
from wirecalc_plugins.shelf import wirecalc_calculations

MAKES_HEAT_OR_SPARKS = (  # powers the machine, bleeds a capacitor, shrinks a sleeve, heats
    "dip",
    "discharge",
    "element",
    "inrush",
    "joint-drop",
    "leakage",
    "locked",
    "overload",
    "screening",
    "splice",
    "start-curve",
    "start-device",
    "trace",
)
SEALED = ("refrigerator", "freezer", "air-conditioner", "dehumidifier", "heat-pump-dryer")


def notes(kind: str, facts: dict[str, str]) -> list[str]:
    check = {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
    sheet = {"job": {"title": "a job", "kind": kind, **facts}, "check": [check]}
    return summary.notes(jobsheet.evaluate(sheet, host.build(bundled_only=True)))


@pytest.mark.parametrize("name", MAKES_HEAT_OR_SPARKS)
def test_what_makes_heat_or_sparks_warns_of_a_flammable_refrigerant(name: str) -> None:
    (offered,) = [o for o in wirecalc_calculations() if o.name == name]
    assert "flam-01" in offered.load().cautions


@pytest.mark.parametrize("kind", SEALED)
@pytest.mark.parametrize("said", ["", "flammable", "R-600a", "R-290", "R-32"])
def test_it_stands_first_on_the_sheet_of_a_sealed_system(kind: str, said: str) -> None:
    first = notes(kind, {"refrigerant": said} if said else {})[0]
    assert first.startswith("STOP: plate shows R-600a, R-290, R-441A or a flame symbol: Ventilate")


@pytest.mark.parametrize("said", ["not flammable", "R-134a"])
def test_a_plate_without_it_takes_it_off_the_first_screen(said: str) -> None:
    assert not [note for note in notes("refrigerator", {"refrigerant": said}) if "STOP" in note]


@pytest.mark.parametrize("kind", ["washer", "dryer", "range"])
def test_a_machine_without_a_sealed_system_has_none(kind: str) -> None:
    assert confirmed.stops(kind, {}) == []
