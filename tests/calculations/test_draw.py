"""What the shared tests need to know of `draw`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial, near, texts

HEATER = {"draw_kind": "heater", "nameplate_voltage": "240 V", "voltage_running": "240 V"}
HEATER |= {"current": "10 A", "rated_input": "2585 W", "measured_power": "2400 W"}
AMPS = {"draw_kind": "motor", "nameplate_voltage": "120 V", "voltage_running": "120 V"}
AMPS |= {"current": "4 A", "nameplate_current": "8 A", "rated_input": "", "measured_power": "300 W"}
AMPS |= {"all_on": ""}
MIXED = {"draw_kind": "mixed", "nameplate_voltage": "120 V", "voltage_running": "120 V"}
MIXED |= {"current": "8 A", "rated_input": "1000 W", "measured_power": "960 W"}

TRIAL = Trial(
    good={"draw_kind": "mixed", "nameplate_voltage": "120 V", "voltage_running": "118 V"}
    | {"current": "8.1 A", "measured_power": "790 W", "rated_input": "850 W"}
    | {"nameplate_current": "7.5 A", "all_on": "yes", "cycle_energy": "1.1 kWh"}
    | {"cycle_time": "100 min", "greatest_cycle_energy": "1.3 kWh"},
    printed=("nameplate_voltage", "rated_input", "nameplate_current", "greatest_cycle_energy"),
    bad=(
        Bad("all_on", "perhaps", "'perhaps'", "yes"),
        Bad("draw_kind", "lamp", "'lamp'", "heater"),
        Bad("voltage_running", "40 V", "40 V, and its plate says 120 V", "read plate and meter"),
        Bad("measured_power", "1004 W", "more than 955.8 VA", "at one moment"),
        Bad("measured_power_factor", "90 %", "both were given", "give the watts alone"),
        Bad("draw_kind", "heater", "790 W of 955.8 VA", "is mixed"),
        Bad("rated_input", "850 VA", "'850 VA'", "write 850 W for a heater"),
        Bad("cycle_energy", "1.1 kW", "'kW'", "kWh"),
    ),
    always={
        "draw_kind": texts(["motor", "mixed", "electronic"]),
        "nameplate_voltage": texts(["120 V"]),
        "voltage_running": near(108, 120, 132, low=100, high=135),
        "current": near(1.6, 2.4, 8.0, 8.4, 9.2, low=0.5, high=12),
    },
    sometimes={
        "measured_power": near(50, high=54),  # under the least volts times amps
        "measured_power_factor": near(50, high=100),
        "rated_input": texts(["45 W", "1000 W"]),
        "nameplate_current": texts(["8 A"]),
        "all_on": texts(["yes", "no"]),
        "cycle_energy": near(1.2, high=2),
        "cycle_time": near(100, high=200),
        "greatest_cycle_energy": texts(["1.2 kWh"]),
    },
    apart=("measured_power_factor",),  # in place of the watts
    spans={
        "measured_power": Span("0 W", "20000 W", "a night light to a tankless heater"),
        "measured_power_factor": Span("0 %", "100 %", "what a meter shows", over=True),
        "rated_input": Span("0 W", "20000 W", "a night light to a tankless heater", over=True),
        "cycle_energy": Span("0 kWh", "100 kWh", "a wash to a day of a tank", over=True),
        "greatest_cycle_energy": Span("0 kWh", "100 kWh", "a wash to a day of a tank", over=True),
        "cycle_time": Span("0 min", "10000 min", "a bake to a week", over=True),
    },
    why="A clamp or a splitter on a live cord, hot parts and moving ones beside it.",
    cautions=("live-01", "live-02", "meter-01", "cord-04", "hot-01", "mov-01"),
    not_checked=("does its work", "a start", "leakage and ground"),
    steps=(
        Step("power input, upper limit", "measured_power",
             {"2578 W": "pass", "2579 W": "marginal", "2714.2 W": "marginal", "2714.3 W": "fail"},
             given=HEATER | {"current": "11 A"},
             limit="2585 W and 5 % is 2714.25 W; 5 % less of that, as it may be off, 2578.5 W",
             source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, lower limit", "measured_power",
             {"2442.9 W": "pass", "2442.8 W": "marginal", "2326.5 W": "marginal",
              "2326.4 W": "fail"},
             given=HEATER,
             limit="2585 W less 10 % is 2326.5 W; 5 % more of that is 2442.825 W",
             source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, upper limit", "measured_power", {"220 W": "marginal", "220.1 W": "fail"},
             given=HEATER | {"rated_input": "200 W", "current": "0.91 A"},
             limit="200 W and 10 %", source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, upper limit", "measured_power", {"230 W": "marginal", "230.1 W": "fail"},
             given=HEATER | {"rated_input": "210 W", "current": "0.95 A"},
             limit="210 W and 20 W, more than 5 %",
             source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, upper limit", "measured_power", {"30 W": "marginal", "30.1 W": "fail"},
             given=HEATER | {"rated_input": "25 W", "current": "0.126 A", "all_on": ""},
             limit="25 W and 20 %", source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, upper limit", "measured_power", {"460 W": "marginal", "460.1 W": "fail"},
             given=AMPS | {"nameplate_current": "", "rated_input": "400 W"},
             limit="400 W and 60 W, 15 %", source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, upper limit", "measured_power", {"370 W": "marginal", "370.1 W": "fail"},
             given=AMPS | {"nameplate_current": "", "rated_input": "310 W"},
             limit="310 W and 60 W, more than 15 %",
             source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, upper limit", "measured_power", {"360 W": "marginal", "360.1 W": "fail"},
             given=AMPS | {"nameplate_current": "", "rated_input": "300 W"},
             limit="300 W and 20 %", source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("current input, upper limit", "current",
             {"8.74 A": "pass", "8.75 A": "marginal", "9.2 A": "marginal", "9.21 A": "fail"},
             given=AMPS, limit="8 A and 15 % is 9.2 A; 5 % less of that is 8.74 A",
             source="IEC 60335-1, 10.2 Table 2, from memory"),
        Step("current input, upper limit", "current", {"1.9 A": "marginal", "1.91 A": "fail"},
             given=AMPS | {"nameplate_current": "1.6 A", "measured_power": "150 W"},
             limit="1.6 A and 0.3 A, more than 15 %",
             source="IEC 60335-1, 10.2 Table 2, from memory"),
        Step("current input, upper limit", "current", {"1.8 A": "marginal", "1.81 A": "fail"},
             given=AMPS | {"nameplate_current": "1.5 A", "measured_power": "150 W"},
             limit="1.5 A and 20 %", source="IEC 60335-1, 10.2 Table 2, from memory"),
        Step("current input, upper limit", "current", {"1.1 A": "marginal", "1.11 A": "fail"},
             given=HEATER | {"nameplate_current": "1 A", "rated_input": "", "measured_power": ""},
             limit="1 A and 10 %", source="IEC 60335-1, 10.2 Table 2, from memory"),
        Step("current input, upper limit", "current", {"1.2 A": "marginal", "1.21 A": "fail"},
             given=HEATER | {"nameplate_current": "1.1 A", "rated_input": "", "measured_power": ""},
             limit="1.1 A and 0.1 A, more than 5 %",
             source="IEC 60335-1, 10.2 Table 2, from memory"),
        Step("current input, upper limit", "current", {"0.24 A": "marginal", "0.241 A": "fail"},
             given=HEATER | {"nameplate_current": "0.2 A", "rated_input": "", "measured_power": ""},
             limit="0.2 A and 20 %", source="IEC 60335-1, 10.2 Table 2, from memory"),
        Step("current input, lower limit", "current", {"9 A": "marginal", "8.99 A": "fail"},
             given=HEATER | {"nameplate_current": "10 A", "rated_input": "", "measured_power": ""},
             limit="10 A less 10 %", source="IEC 60335-1, 10.2 Table 2, from memory"),
        Step("power input, lower limit", "all_on",
             {"yes": "fail", "no": "cannot tell", "unknown": "cannot tell"},
             given=HEATER | {"measured_power": "1300 W", "current": "5.5 A"},
             limit="1300 W of 2585 W", source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("power input, upper limit", "measured_power",
             {"1050 W": "marginal", "1150 W": "marginal", "1150.1 W": "fail"},
             given=MIXED | {"current": "11 A"}, limit="1000 W and 15 % of a motor",
             source="IEC 60335-1, 10.1 Table 1, from memory"),
        Step("current input, upper limit", "voltage_running",
             {"108 V": "pass", "107.9 V": "cannot tell", "132 V": "pass", "132.1 V": "cannot tell"},
             given=AMPS, limit="10 % off 120 V", source="makers' sheets, 90 to 110 % of the plate"),
        Step("power factor of the motor", "measured_power",
             {"240 W": "pass", "239 W": "marginal"},
             given=AMPS, limit="half of 480 VA", source="common practice, no source"),
        Step("settled current, lower limit", "current", {"2.4 A": "pass", "2.39 A": "marginal"},
             given=AMPS | {"measured_power": "200 W"}, limit="0.3 of 8 A",
             source="common practice, no source"),
        Step("energy of the cycle", "cycle_energy", {"1.3 kWh": "pass", "1.31 kWh": "fail"},
             given={"greatest_cycle_energy": "1.3 kWh"}, limit="as typed",
             source="the maker's or the label's figure"),
        Step("current input, upper limit", "voltage_running",
             {"96 V": "fail", "95.9 V": "refused"},
             given=HEATER | {"measured_power": "", "rated_input": "", "nameplate_current": "10 A"},
             limit="40 % of 240 V; 10 A there are 25 A at 240 V",
             source="common practice, no source"),
    ),
)  # fmt: skip


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
