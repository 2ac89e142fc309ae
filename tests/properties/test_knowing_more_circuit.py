"""Saying more of a circuit, with all of it inside its limits, never lowers a pass."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import Verdict

BOUNDED = settings(deadline=None, max_examples=60)
Texts = st.SearchStrategy[Any]
Whole = tuple[str, dict[str, Any], dict[str, Texts]]


def amps(low: float, high: float) -> Texts:
    return st.floats(low, high).map(lambda a: f"{a:.6f} A")


def one_of(*texts: str) -> Texts:
    return st.sampled_from(texts)


CLASSES = {"insulation_class": one_of("60 C", "70 C", "75 C", "90 C", "105 C")}
CLASSES |= {"termination_temperature": one_of("60 C", "75 C")}
LAID = {"ambient": "25 C", "conductors": "2"}
WIRED = {"building_wire": "14 AWG", **LAID}
OWN = {"only_receptacle": "yes", "fastened_in_place": "no"}
WHOLE: list[Whole] = [
    (
        "breaker",
        {"current": "6 A", "breaker": "15 A", **OWN},
        {
            "run_time": one_of("0 h", "1 h", "9 h"),
            "receptacle": one_of("15 A", "20 A"),
            "maximum_breaker": amps(15, 40),
            "nameplate_current": amps(5, 12),
            "has_motor": one_of("yes", "no"),
            "storage_water_heater": one_of("no"),
            "feeds_others": one_of("no"),
            "other_current": one_of("0 A"),
            "nameplate_voltage": one_of("115 V", "230 V"),
            "conductors": one_of("2", "9"),
        },
    ),
    (
        "breaker",
        {"current": "6 A", "breaker": "15 A", **OWN, **WIRED},
        {**CLASSES, "cord": one_of("16 AWG", "1.5 mm2"), "cord_type": one_of("general", "heater")}
        | {"cord_conductors": one_of("2", "3"), "wiring_rules": one_of("nec")},
    ),
    (
        "circuit",
        {"breaker": "15 A", "plug_loads": ["4 A"], **WIRED},
        {
            **CLASSES,
            "long_plug_loads": amps(0.1, 2).map(lambda a: [a]),
            "fastened_loads": amps(0.1, 3).map(lambda a: [a]),
            "light_loads": amps(0.1, 3).map(lambda a: [a]),
            "feeds_others": one_of("yes", "no"),
            "receptacle": one_of("15 A"),
        },
    ),
    (
        "motor-circuit",
        {"motor_kind": "motor", "fastened_in_place": "yes", "horsepower": "1/2 hp", **WIRED}
        | {"nameplate_voltage": "115 V", "breaker": "15 A"},
        {
            **CLASSES,
            "full_load_current": amps(6.1, 12),
            "plate_governs": one_of("yes", "no"),
            "cool_running": one_of("yes", "no"),
            "minimum_ampacity": amps(1, 15),
            "maximum_breaker": amps(15, 40),
            "motor_device": one_of("inverse-time breaker", "time-delay fuse"),
            "will_not_start": one_of("yes", "no"),
            "listed_combination": one_of("yes"),
            "rated_load_current": amps(1, 50),
        },
    ),
    (
        "motor-circuit",
        {"motor_kind": "compressor", "fastened_in_place": "yes", "rated_load_current": "9 A"}
        | {"breaker": "15 A", **WIRED},
        {
            **CLASSES,
            "branch_selection_current": amps(9, 10),
            "minimum_ampacity": amps(12.5, 15),
            "maximum_breaker": amps(15, 40),
            "nameplate_voltage": one_of("115 V", "230 V"),
            "horsepower": one_of("1/2 hp"),
            "will_not_start": one_of("yes", "no"),
        },
    ),
    (
        "ampacity",
        {
            "use": "building",
            "insulation_class": "60 C",
            "current": "10 A",
            "wire": "14 AWG",
            **LAID,
        },
        {
            "termination_temperature": one_of("60 C", "75 C"),
            "cord_conductors": one_of("2", "3"),
            "cord_type": one_of("heater"),
            "wire_temperature": one_of("60 C", "105 C"),
            "place_temperature": one_of("25 C", "150 C"),
        },
    ),
]
CASES = [pytest.param(whole, id=f"{whole[0]}-{n}") for n, whole in enumerate(WHOLE)]


@pytest.mark.parametrize("whole", CASES)
def test_the_whole_of_an_honest_run_passes(whole: Whole) -> None:
    name, typed, _ = whole
    assert wirecalc.run(name, **typed).verdict is Verdict.PASS


@pytest.mark.parametrize("whole", CASES)
@BOUNDED
@given(st.data())
def test_more_that_is_good_never_lowers_it(whole: Whole, data: st.DataObject) -> None:
    name, typed, more = whole
    chosen = sorted(data.draw(st.sets(st.sampled_from(sorted(more)), min_size=1)))
    said = {n: data.draw(more[n], label=n) for n in chosen}
    if "full_load_current" not in said:
        said.pop("plate_governs", None)  # that the plate's amps count asks for them
    finding = wirecalc.run(name, **typed | said)
    assert finding.verdict is Verdict.PASS, (
        said,
        finding.decided_by and finding.decided_by.because,
    )
