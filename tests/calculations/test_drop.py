"""What the shared tests need to know of `drop`."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, source

from .trial import RUN, Bad, Step, Trial, When, near, texts

RULE_OF_THUMB = {  # 12.9 ohm cmil/ft: copper at 75 C in the tables of NEC chapter 9
    "nameplate_voltage": "120 V",
    "building_wire": "12 AWG",
    "resistivity": "12.9 ohm cmil/ft",
    "known_at": "75 C",
    "conductor_temperature": "75 C",
}
PRINTED = {
    "nameplate_voltage": "230 V",
    "building_wire": "",
    "conductor_metal": "copper",
    "resistance_per_length": "2.2 ohm/km",
    "known_at": "70 C",
    "conductor_temperature": "70 C",
}

TRIAL = Trial(
    good={"current": "1.6 A", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
    | {"run_length": "60 ft", "cord": "16 AWG", "cord_length": "50 ft", "other_current": "6.2 A"}
    | {"other_leg_current": "5 A", "system": "three-wire", "power_factor": "80 %"}
    | {"conductor_temperature": "60 C", "voltage_at_rest": "117.5 V"}
    | {"resistivity": "17.241 nohm m", "known_at": "20 C"},
    zero=("other_current", "other_leg_current", "conductor_temperature", "known_at"),
    printed=("nameplate_voltage", "power_factor", "resistivity", "known_at"),
    bad=(
        Bad("current", "8.7 mA ±2%", "next to nothing", "which unit was meant? write 8.7 A, or"),
        Bad("run_length", "-60 ft", "'-60 ft'", "60 ft"),
        Bad(
            "run_length",
            "60 mm",
            "'60 mm' is next to nothing",
            "0.1969 ft if it is so little, or 60 ft",
        ),
        Bad("run_length", "11 in", "'11 in' is next to nothing", "or 11 ft"),
        Bad(
            "cord_length",
            "300 mm",
            "'300 mm' is next to nothing",
            "0.9843 ft if it is so little, or 300 ft",
        ),
        Bad("run_length", "2001 ft", "'2001 ft'", "60 ft"),
        Bad("run_length", "700 m", "'700 m'", "60 ft"),
        Bad("cord_length", "0 m", "'0 m'", "50 ft"),
        Bad("cord_length", "700 m", "'700 m'", "50 ft"),
        Bad("current", "184 W", "'W'", "divide by the voltage"),
        Bad("current", "0 A", "'0 A'", "1.6 A"),
        Bad("system", "two-wire", "no other leg", "three-wire"),
        Bad("system", "2-wire", "'2-wire'", "two-wire"),
        Bad("power_factor", "0.8", "'0.8'", "write 80 %"),
        Bad("power_factor", "0.8 %", "'0.8 %'", "80 %"),
        Bad("conductor_temperature", "167 C", "'167 C'", "167 F"),
        Bad("nameplate_voltage", "115 mV", "'115 mV'", "115 V"),
        Bad("resistivity", "12.9 ohm", "'ohm'", "nohm m"),
        Bad("resistance_per_length", "3.14 ohm/kft", "both were given", "building_wire alone"),
        Bad("conductor_metal", "copper", "a wire says its own metal", "12 AWG aluminum"),
        Bad("voltage_at_rest", "236 V", "240 V outlet for a 115 V plate?", "read plate"),
    ),
    always={
        # 115 V: 3 and 5 % of 60 ft of 14 AWG are 9.16 and 15.3 A
        "current": near(1.6, 9.156, 15.26, high=40),
        "nameplate_voltage": texts(["115 V", "240 V"]),
    },
    sometimes=RUN
    | {
        "cord": texts(["18 AWG", "16 AWG", "1.5 mm2"]),
        "cord_length": near(50, high=200),
        "other_leg_current": near(5, 20, high=60),
        "system": texts(["two-wire", "three-wire"]),
        "power_factor": texts(["50 %", "90 %"]),
        "voltage_at_rest": near(103.5, 105.7, 115, low=100, high=130),
    },
    # of a three-wire run, and in place of the wire or its table; the example has neither
    apart=(
        *("other_leg_current", "resistance_per_length", "resistivity"),
        *("conductor_metal", "known_at"),
    ),
    why=(
        "A clamp on a live wire; the run in the wall is an electrician's; a loose plug "
        "trips nothing."
    ),
    cautions=("cord-04", "live-02", "meter-01", "brk-01"),
    not_checked=(
        "ampacity of wire and cord",
        "joints, plug and receptacle",
        "feeder and the service",
    ),
    when=(
        When(
            "a cord in the way, which may be an extension cord",
            {"cord": "16 AWG", "cord_length": "25 ft"},
            comes=("cord-03",),
        ),
        When("volts read in a live receptacle", {"voltage_at_rest": "118 V"}, comes=("live-01",)),
        When(
            "building wire of aluminium", {"building_wire": "12 AWG aluminium"}, comes=("alu-01",)
        ),
    ),
    steps=(
        Step(
            "drop while running",
            "current",
            {"9.15 A": "pass", "9.16 A": "marginal"},
            limit="3 % of 115 V is 3.45 V; 120 ft of 3.14 ohm/kft is 0.3768 ohm, so 9.156 A",
            source="NEC (NFPA 70), 210.19(A), informational note; chapter 9, Table 8",
        ),
        Step(
            "volts at the load while it runs",
            "run_length",
            {"1343 ft": "pass", "1344 ft": "fail"},
            given={
                "voltage_at_rest": "117 V",
                "conductor_temperature": "75 C",
                "power_factor": "100 %",
            },
            limit="103.5 V must be left: 13.5 V lost by 1.6 A in 2 x 3.14 ohm/kft is 1343.5 ft",
            source="makers' sheets, 90 % of the plate; NEC chapter 9, Table 8",
        ),
        Step(
            "drop while running",
            "resistance_per_length",
            {"5.74 ohm/km": "pass", "5.76 ohm/km": "marginal"},
            given=PRINTED | {"current": "20 A", "run_length": "30 m"},
            limit="3 % of 230 V is 6.9 V; 20 A in 60 m, so 5.75 ohm/km",
            source="NEC (NFPA 70), 210.19(A), informational note",
        ),
    ),
)


def volts(**given: str) -> float:
    found = wirecalc.run("drop", **{k: v for k, v in given.items() if v})
    return {f.figure.name: f.figure.value for f in found.figures}["drop"]


@memory("2 x K x I x D / CM of code courses: 12.9 x 2 x 16 A x 100 ft / 6530 cmil is 6.3 V")
def test_the_rule_of_thumb_with_k() -> None:
    got = volts(**RULE_OF_THUMB, current="16 A", run_length="100 ft")
    assert got == pytest.approx(2 * 12.9 * 16 * 100 / 6530, rel=1e-3)


@memory("BS 7671 appendix 4, mV/A/m of two-core cable at 70 C: 18, 11, 7.3 and 4.4")
@pytest.mark.parametrize(
    ("one_way", "mv_a_m"), [("9 ohm/km", 18), ("5.5 ohm/km", 11), ("2.2 ohm/km", 4.4)]
)
def test_millivolts_for_an_ampere_and_a_metre(one_way: str, mv_a_m: float) -> None:
    printed = PRINTED | {"resistance_per_length": one_way}
    got = volts(**printed, current="40 A", run_length="15 m")
    assert got == pytest.approx(mv_a_m / 1000 * 40 * 15, rel=1e-9)


@source("IEC 60228", "2004", "Table 1, class 1: 7.41, 4.61 and 1.83 ohm/km at 20 C", seen="copies")
@pytest.mark.parametrize(
    ("at_20", "mv_a_m"), [("7.41 ohm/km", 18), ("4.61 ohm/km", 11), ("1.83 ohm/km", 4.4)]
)
def test_ohms_of_20_c_come_to_the_millivolts_of_70_c(at_20: str, mv_a_m: float) -> None:
    printed = PRINTED | {"resistance_per_length": at_20, "known_at": "20 C"}
    got = volts(**printed, current="10 A", run_length="10 m")
    assert got == pytest.approx(mv_a_m / 10, rel=0.03)  # those are rounded to two figures


@independent("R = rho x l / A with 1 + 0.00403 x 55 K for aluminium, two ways")
def test_aluminium_by_what_is_printed() -> None:
    given = {"nameplate_voltage": "120 V", "current": "10 A", "run_length": "1000 ft"}
    by_ohms = volts(**given, resistance_per_length="0.5 ohm/kft", conductor_metal="aluminium")
    assert by_ohms == pytest.approx(10 * 2 * 0.5 * (1 + 0.00403 * 55), rel=1e-6)
    by_metal = volts(**given, building_wire="1/0 AWG aluminium", resistivity="28.264 nohm m")
    area = 3.14159265 / 4 * (0.127 * 92 ** (36 / 39)) ** 2
    assert by_metal == pytest.approx(
        10 * 2 * 28.264e-9 * 304.8 / (area * 1e-6) * (1 + 0.00403 * 55), rel=1e-4
    )


@independent("a resistance without its temperature counts as one of 20 C: the greater drop")
def test_what_is_not_said_counts_against_the_run() -> None:
    given = {"nameplate_voltage": "230 V", "current": "10 A", "run_length": "10 m"}
    given |= {"resistance_per_length": "7.41 ohm/km"}
    copper = given | {"conductor_metal": "copper"}
    assert volts(**copper) == pytest.approx(volts(**copper, known_at="20 C"))
    assert volts(**copper) > volts(**copper, known_at="75 C")
    assert wirecalc.run("drop", **given).verdict == "cannot tell"
    unknown_size = wirecalc.run("drop", **copper)
    assert any(n.what == "ampacity of the run" for n in unknown_size.not_checked)
