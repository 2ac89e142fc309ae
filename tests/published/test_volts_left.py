"""The volts that a run leaves at the load: what binds behind the advice on its drop."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import Finding, Verdict

from .records import independent, memory, practice, source
from .seen import COPPER_WITH_HEAT, STRANDED_TABLE_8, VOLTS_AT_THE_LOAD

LEFT = "volts at the load while it runs"
PER_FT = 2 * 3.14e-3  # ohm of 14 AWG, there and back, 75 C
KNOWN = {"power_factor": "100 %", "conductor_temperature": "75 C"}


def drop(share: float, plate: float = 115.0, **more: str) -> Finding:
    """Run 10 A on so much of 14 AWG that a share of the plate's volts is lost."""
    feet = share * plate / 10 / PER_FT
    given = {"current": "10 A", "nameplate_voltage": f"{plate} V", "building_wire": "14 AWG"}
    return wirecalc.run("drop", **given | {"run_length": f"{feet:.9f} ft"} | KNOWN | more)


@VOLTS_AT_THE_LOAD
@STRANDED_TABLE_8
@independent("volts left by arithmetic: those at rest less the share lost")
@pytest.mark.parametrize(
    ("share", "verdict"),
    [
        (0.099, Verdict.MARGINAL),  # a panel at the plate's volts leaves 90 % of them
        (0.101, Verdict.CANNOT_TELL),
        (0.199, Verdict.CANNOT_TELL),
        (0.201, Verdict.FAIL),  # 110 % of the plate less that is under 90 %
        (0.47, Verdict.FAIL),
    ],
)
def test_a_drop_that_no_supply_makes_up_for_fails(share: float, verdict: Verdict) -> None:
    found = drop(share)
    assert found.verdict is verdict
    untold = found.criterion(LEFT)
    if verdict is Verdict.CANNOT_TELL:
        assert untold.criterion.needs == ("voltage_at_rest",)


@VOLTS_AT_THE_LOAD
@source(
    "83 Ill. Adm. Code",
    "edition not stated",
    "section 410.300, 113 to 127 V of a 120 V service",
    seen="two copies",
)
@memory("IEC 60038: 230 V plus and minus 10 %")
@independent("volts left by arithmetic: those at rest less the share lost")
@pytest.mark.parametrize(
    ("plate", "share", "verdict"),
    # 127 less 108 V are 15.8 % of 120 V, 254 less 216 V the same of 240; 230 V: 253 less 207, 20 %
    [
        (120, 0.158, Verdict.CANNOT_TELL),
        (120, 0.159, Verdict.FAIL),
        (240, 0.158, Verdict.CANNOT_TELL),
        (240, 0.159, Verdict.FAIL),
        (230, 0.199, Verdict.CANNOT_TELL),
        (230, 0.201, Verdict.FAIL),
    ],
)
def test_no_service_has_more_than_its_own_range(
    plate: float, share: float, verdict: Verdict
) -> None:
    assert drop(share, plate).verdict is verdict


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@VOLTS_AT_THE_LOAD
@practice("a power factor that is not given may be 80 %")
def test_a_fail_is_sure_at_every_power_factor_of_a_load_and_with_a_cold_wire() -> None:
    # 47.1 V of 120 V, 39 %; 0.8 of it at 20 C (0.82235) is 25.8 %
    given = {"current": "50 A", "nameplate_voltage": "120 V", "building_wire": "14 AWG"}
    assert wirecalc.run("drop", **given, run_length="150 ft").verdict is Verdict.FAIL


@VOLTS_AT_THE_LOAD
@STRANDED_TABLE_8
@independent("volts left by arithmetic: those at rest less the share lost")
@pytest.mark.parametrize(
    ("share", "at_rest", "verdict"),
    [
        (0.11, "119 V", Verdict.MARGINAL),  # 106.35 V left of 119, at least 103.5
        (0.11, "115 V", Verdict.FAIL),  # 102.35 V
        (0.02, "110 V", Verdict.PASS),  # 107.7 V
        (0.02, "105 V", Verdict.FAIL),  # 102.7 V: the supply is low, the run short
    ],
)
def test_the_volts_at_rest_settle_it(share: float, at_rest: str, verdict: Verdict) -> None:
    assert drop(share, voltage_at_rest=at_rest).verdict is verdict


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@VOLTS_AT_THE_LOAD
def test_a_fail_that_a_cold_wire_would_take_away_is_not_told() -> None:
    # 21 % at 75 C is 17.3 % at 20 C: 0.82235 of it
    found = wirecalc.run(
        "drop",
        current="10 A",
        nameplate_voltage="115 V",
        building_wire="14 AWG",
        run_length=f"{0.21 * 11.5 / PER_FT:.6f} ft",
        power_factor="100 %",
    )
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.criterion(LEFT).criterion.needs == ("conductor_temperature",)


@practice("the wire before a cord loses volts too")
def test_a_cord_alone_leaves_the_wire_before_it_to_be_told() -> None:
    found = wirecalc.run(
        "drop", current="1.6 A", nameplate_voltage="115 V", cord="16 AWG", cord_length="10 ft"
    )
    assert found.verdict is Verdict.CANNOT_TELL
    assert any("building_wire" in c.criterion.needs for c in found.criteria)


CORD = {
    "extension_cord": "16 AWG",
    "extension_length": "100 ft",
    "current": "12 A",
    "has_motor": "no",
}
CORD |= {"maker_allows": "yes", "grounding": "yes", "cord_rating": "15 A", "cord_ambient": "25 C"}
CORD |= {"cord_conductors": "2", "building_wire": "14 AWG", "nameplate_voltage": "115 V"}


@VOLTS_AT_THE_LOAD
@STRANDED_TABLE_8
@independent("volts left by arithmetic: those at rest less the share lost")
@pytest.mark.parametrize(
    ("run_length", "verdict"),
    # 16 AWG 4.99 ohm/kft; 100 ft and 175 ft of 14 AWG take 25.2 V, 22 % of 115 V
    [("175 ft", Verdict.FAIL), ("10 ft", Verdict.CANNOT_TELL)],
)
def test_an_extension_cord_is_held_to_the_same(run_length: str, verdict: Verdict) -> None:
    cold = {"conductor_temperature": "75 C"}
    found = wirecalc.run("extension", **CORD, **cold, run_length=run_length)
    assert found.criterion(LEFT).verdict is verdict
    assert found.verdict is verdict


@VOLTS_AT_THE_LOAD
@STRANDED_TABLE_8
@independent("volts left by arithmetic: those at rest less the share lost")
def test_an_extension_cord_whose_supply_is_known_is_told() -> None:
    # 12.73 V lost of 119 V: 106.3 V left
    found = wirecalc.run("extension", **CORD, run_length="10 ft", voltage_at_rest="119 V")
    assert found.criterion(LEFT).verdict is Verdict.PASS
    assert found.verdict is Verdict.MARGINAL
