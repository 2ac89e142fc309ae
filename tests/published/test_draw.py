"""`draw`: laws of heat and phasors, and the spans of a plate's watts and amps."""

from __future__ import annotations

import pytest

import wirecalc

from .records import independent, memory, practice


def figures(**given: str) -> dict[str, float]:
    found = wirecalc.run("draw", **given).figures
    return {shown.figure.name: shown.figure.value for shown in found}


def verdicts(**given: str) -> dict[str, str]:
    found = wirecalc.run("draw", **given)
    return {j.criterion.name: str(j.verdict) for j in found.criteria}


@independent("Joule's law: 22.28 ohm takes 2585 W at 240 V and (208/240)^2 of it at 208 V")
@pytest.mark.parametrize("volts", [208.0, 232.0, 240.0])
def test_a_heater_goes_with_the_square_of_the_volts(volts: float) -> None:
    ohm = 240**2 / 2585
    got = figures(draw_kind="heater", nameplate_voltage="240 V", voltage_running=f"{volts} V",
                  current=f"{volts / ohm:.9f} A", rated_input="2585 W")  # fmt: skip
    assert got["watts"] == pytest.approx(volts**2 / ohm, rel=1e-6)
    assert got["power of a resistance at the plate's volts"] == pytest.approx(2585, rel=1e-6)
    assert got["share of the plate's watts"] == pytest.approx(100 * (volts / 240) ** 2, rel=1e-6)


@independent("phasors: 8 ohm of heater and 6 ohm of reactance at 120 V, 12 A, cosine 0.8")
def test_power_factor_of_resistance_and_reactance() -> None:
    current = 120 / abs(complex(8, 6))
    got = figures(draw_kind="electronic", nameplate_voltage="120 V", voltage_running="120 V",
                  current=f"{current} A", measured_power=f"{current**2 * 8} W",
                  nameplate_current="13 A")  # fmt: skip
    assert got["apparent power"] == pytest.approx(1440)
    assert got["power factor"] == pytest.approx(80)
    other = figures(draw_kind="electronic", nameplate_voltage="120 V", voltage_running="120 V",
                    current="12 A", measured_power_factor="80 %", rated_input="1200 W")  # fmt: skip
    assert other["watts"] == pytest.approx(1152)


@practice("a heater whose one of two equal coils is open draws half of its plate")
def test_half_of_the_heat_fails_only_where_all_was_on() -> None:
    given = {"draw_kind": "heater", "nameplate_voltage": "240 V", "voltage_running": "240 V"}
    given |= {"current": "5.4 A", "rated_input": "2585 W"}
    assert verdicts(**given)["power input, lower limit"] == "cannot tell"
    assert verdicts(**given, all_on="yes")["power input, lower limit"] == "fail"


@independent("of 950 W at 110 V at least 950 and at most 950 x (120/110)^2 = 1130.6 W at 120 V")
@pytest.mark.parametrize(("marked", "verdict"), [(1200, "cannot tell"), (1260, "fail"),
                                                 (1050, "marginal")])  # fmt: skip
def test_a_mixture_is_judged_at_both_ends(marked: int, verdict: str) -> None:
    # least 0.9 x 1200 = 1080 lies between; 0.9 x 1260 = 1134 over both; 0.9 x 1050 = 945 under both
    got = verdicts(draw_kind="mixed", nameplate_voltage="120 V", voltage_running="110 V",
                   current="9 A", measured_power="950 W", rated_input=f"{marked} W",
                   all_on="yes")  # fmt: skip
    assert got["power input, lower limit"] == verdict


@independent("of 1000 W at 110 V at most 1190.1 W at 120 V: over 1150 W only if it is a heater")
def test_a_mixture_may_be_over_its_plate() -> None:
    got = verdicts(draw_kind="mixed", nameplate_voltage="120 V", voltage_running="110 V",
                   current="9.5 A", measured_power="1000 W", rated_input="1000 W")  # fmt: skip
    assert got["power input, upper limit"] == "cannot tell"


@memory("motor texts: an induction motor that turns idle draws amps at a low power factor")
def test_an_idle_motor_is_told_from_an_overloaded_one() -> None:
    given = {"draw_kind": "motor", "nameplate_voltage": "120 V", "voltage_running": "120 V"}
    given |= {"nameplate_current": "8 A"}
    for amps, says in (("4 A", "turns idle"), ("9 A", "too many volts")):
        found = wirecalc.run("draw", **given, current=amps, measured_power="150 W")
        (low,) = (j for j in found.criteria if j.criterion.name == "power factor of the motor")
        assert str(low.verdict) == "marginal" and says in low.reason


@independent("1.1 kWh in 105 min are 628.57 W")
def test_mean_power_of_a_cycle() -> None:
    got = figures(draw_kind="mixed", nameplate_voltage="120 V", voltage_running="119 V",
                  current="7 A", nameplate_current="12 A", cycle_energy="1100 Wh",
                  cycle_time="105 min")  # fmt: skip
    assert got["mean power of the cycle"] == pytest.approx(1100 / 1.75)


@practice("a motor's and a heater's watts cannot be told apart by volts and amps alone")
def test_watts_of_a_motor_are_asked_for() -> None:
    found = wirecalc.run("draw", draw_kind="motor", nameplate_voltage="120 V",
                         voltage_running="119 V", current="4 A", rated_input="400 W")  # fmt: skip
    assert str(found.verdict) == "cannot tell"


@practice("a heater has no power factor but one")
@pytest.mark.parametrize(("share", "refused"), [("95 %", False), ("94.9 %", True)])
def test_a_heater_with_a_power_factor_is_none(share: str, refused: bool) -> None:
    given = {"draw_kind": "heater", "nameplate_voltage": "120 V", "voltage_running": "120 V"}
    given |= {"current": "5 A", "rated_input": "600 W", "measured_power_factor": share}
    if refused:
        with pytest.raises(wirecalc.BadInput, match="a heater has 100 %"):
            wirecalc.run("draw", **given)
    else:
        assert figures(**given)["watts"] == pytest.approx(570)


@memory("IEC 60335-1, 10.1 Table 1 and 10.2 Table 2: where one span ends and the next begins")
@pytest.mark.parametrize(
    ("basis", "marked", "most", "least"),
    [
        ("W", 25, 30.0, None),  # 20 %, and no least
        ("W", 25.5, 28.05, 22.95),  # 10 % either way
        ("W", 200, 220.0, 180.0),
        ("W", 500, 525.0, 450.0),  # 5 %, and 10 % less
        ("A", 0.2, 0.24, None),
        ("A", 0.25, 0.275, 0.225),
        ("A", 1, 1.1, 0.9),
        ("A", 10, 10.5, 9.0),
    ],
)
def test_what_a_heating_appliance_may_draw(
    basis: str, marked: float, most: float, least: float | None
) -> None:
    given = {"draw_kind": "heater", "nameplate_voltage": "100 V", "voltage_running": "100 V"}
    given["rated_input" if basis == "W" else "nameplate_current"] = f"{marked} {basis}"
    amps = marked / 100 if basis == "W" else marked
    found = wirecalc.run("draw", **given, current=f"{amps} A", all_on="yes")
    limits = {j.criterion.name.partition(", ")[2]: j.criterion.limit for j in found.criteria}
    assert limits["upper limit"] == pytest.approx(most)
    assert limits.get("lower limit") == (None if least is None else pytest.approx(least))


@practice("two meters explain 5 % of watts over volts times amps, and 10 % under of a heater")
@pytest.mark.parametrize(
    ("kind", "watts", "refused"),
    [
        ("mixed", "1050 W", False),
        ("mixed", "1050.1 W", True),
        ("heater", "900 W", False),
        ("heater", "899.9 W", True),
        ("mixed", "899.9 W", False),
    ],
)
def test_watts_beside_volts_times_amps(kind: str, watts: str, refused: bool) -> None:
    given = {"draw_kind": kind, "nameplate_voltage": "100 V", "voltage_running": "100 V"}
    given |= {"current": "10 A", "measured_power": watts, "rated_input": "1000 W"}
    if refused:
        with pytest.raises(wirecalc.BadInput, match="1000 VA"):
            wirecalc.run("draw", **given)
    else:
        wirecalc.run("draw", **given)


@practice("over 130 % of its plate's volts it is another outlet")
def test_volts_of_another_outlet() -> None:
    given = {"draw_kind": "heater", "nameplate_voltage": "120 V", "current": "5 A"}
    given |= {"rated_input": "600 W"}
    wirecalc.run("draw", **given, voltage_running="156 V")
    with pytest.raises(wirecalc.BadInput, match="ask supply first"):
        wirecalc.run("draw", **given, voltage_running="156.1 V")
