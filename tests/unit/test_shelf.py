"""The shelf: every bundled calculation stands on it, with the part and question of its own."""

import importlib
import pkgutil

import wirecalc
import wirecalc_plugins
from wirecalc_plugins.shelf import wirecalc_calculations


def test_every_calculation_stands_on_the_shelf_and_loads() -> None:
    declared = set()
    for module in pkgutil.walk_packages(wirecalc_plugins.__path__, "wirecalc_plugins."):
        for found in vars(importlib.import_module(module.name)).values():
            if isinstance(found, wirecalc.Calculation):
                declared.add(found.name)
                assert found.inputs
    loaded = [offered.load().name for offered in wirecalc_calculations()]
    assert sorted(loaded) == sorted(declared)
    assert len(set(loaded)) == len(loaded)
