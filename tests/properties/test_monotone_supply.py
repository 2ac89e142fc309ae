"""Supply, upstream and short-time: the kinder reading never has the worse verdict."""

from __future__ import annotations

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

import wirecalc
from tests.properties.runs import full
from wirecalc import BadInput, Finding

BOUNDED = settings(
    deadline=None, max_examples=60, suppress_health_check=[HealthCheck.filter_too_much]
)
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.99, 1.01)


def found(name: str, **given_: object) -> Finding:
    try:
        return wirecalc.run(name, **given_)
    except BadInput:
        assume(False)
        raise


def rank(name: str, **given_: object) -> int:
    finding = found(name, **given_)
    assert finding.verdict is not None
    return finding.verdict.rank


def near(*limits: float, low: float, high: float) -> st.SearchStrategy[float]:
    edges = [v * n for v in limits for n in NEAR if low <= v * n <= high]
    return st.sampled_from(edges) | st.floats(low, high)


plates = st.sampled_from(["115 V", "120 V"])
SERVED = ("running volts, lower limit", "service volts, lower limit")


@BOUNDED
@given(plates, near(103.5, 108, low=60, high=120), near(103.5, 108, low=60, high=120))
def test_lower_running_volts_never_improve_the_low_limit(
    plate: str, one: float, two: float
) -> None:
    low, high = sorted((one, two))
    ranks = [
        found("supply", nameplate_voltage=plate, voltage_running=full(v, "V"))
        .criterion(SERVED[0])
        .verdict.rank
        for v in (low, high)
    ]
    assert ranks[0] >= ranks[1]


@BOUNDED
@given(plates, near(126.5, 132, 127, 126, low=120, high=150), near(126.5, 132, low=120, high=150))
def test_higher_volts_never_improve_the_high_limits(plate: str, one: float, two: float) -> None:
    low, high = sorted((one, two))
    for reading in ("voltage_running", "voltage_at_rest"):
        kinder = rank("supply", nameplate_voltage=plate, **{reading: full(low, "V")})
        assert rank("supply", nameplate_voltage=plate, **{reading: full(high, "V")}) >= kinder


@BOUNDED
@given(
    near(113, 114, 103.5, low=70, high=120),
    near(113, 114, 103.5, low=70, high=120),
    st.booleans(),
)
def test_lower_volts_at_rest_or_start_never_improve(one: float, two: float, rest: bool) -> None:
    low, high = sorted((one, two))
    name = "voltage_at_rest" if rest else "voltage_at_start"
    asked = {"nameplate_voltage": "115 V", "voltage_running": "116.1 V" if not rest else "68 V"}
    kinder = rank("supply", **asked, **{name: full(high, "V")})
    assert rank("supply", **asked, **{name: full(low, "V")}) >= kinder


LOOP = 80 * 3.14e-3 * (1 - 0.00323 * 55)  # 40 ft of 14 AWG at 20 C, there and back


LOADS = [{"load_kind": "heater"}, {}, {"load_kind": "motor"}]
LOADS += [{"power_factor": f"{pf} %"} for pf in (50, 80, 100)]


@BOUNDED
@given(
    st.floats(0.5, 20),
    st.floats(0, 6),
    st.floats(0, 6),
    st.sampled_from(["no", "some", "all"]),
    st.sampled_from(LOADS),
    st.sampled_from(["14 AWG", "1.5 mm2"]),
    st.booleans(),
)
def test_more_volts_lost_beyond_the_wire_never_improve(
    amps: float, one: float, two: float, known: str, load: dict[str, str], wire: str, cold: bool
) -> None:
    asked = {"voltage_at_rest": "120 V", "current": full(amps, "A")} | load
    asked |= {"conductor_temperature": "20 C"} if cold else {}
    if known != "no":
        asked |= {"building_wire": wire, "run_length": "40 ft"}
    if known == "all":
        asked |= {"panel_at_rest": "120 V", "panel_running": "119.9 V"}
    # below the wire's own loss a size is wrong, which more loss may explain
    least = 0.0 if known == "no" else 1.4 * LOOP * amps + 0.1  # 14 AWG has 2.08 mm2
    less, more = sorted((one, two))
    kinder = rank("upstream", **asked, voltage_running=full(120 - least - less, "V"))
    assert rank("upstream", **asked, voltage_running=full(120 - least - more, "V")) >= kinder


@BOUNDED
@given(near(122.4, 126, low=100, high=140), near(122.4, 126, low=100, high=140))
def test_a_second_leg_that_rises_more_never_improves_the_neutral(one: float, two: float) -> None:
    ranks = []
    for volts in sorted((one, two)):
        finding = found(
            "upstream",
            voltage_at_rest="120 V",
            voltage_running="119.9 V",
            current="5 A",
            second_leg_at_rest="120 V",
            second_leg_running=full(volts, "V"),
        )
        ranks.append(finding.criterion("rise of the second leg").verdict.rank)
    assert ranks[0] <= ranks[1]


THICK_TO_THIN = ("4 AWG", "10 AWG", "2.5 mm2", "14 AWG", "1.5 mm2", "16 AWG", "18 AWG", "22 AWG")
HARDER = {
    "overcurrent": (
        near(59.2, 85.9, 172.5, 388, low=20, high=20_000),
        "A",
    ),
    "overcurrent_time": (near(0.5, 1, 5, low=0.01, high=600), "s"),
    "temperature_before": (near(30, 70, 90, low=-40, high=150), "C"),
}
insulations = st.sampled_from([None, "pvc-70", "pvc-90", "rubber-60", "xlpe-epr-90", "butyl-85"])


@BOUNDED
@given(
    st.sampled_from(list(HARDER)),
    st.sampled_from([*THICK_TO_THIN, "4 AWG aluminum", "26x30 AWG", "600 kcmil"]),
    insulations,
    st.floats(20, 2000),
    st.floats(0.05, 10),
    st.data(),
)
def test_more_current_longer_or_hotter_never_improves_short_time(
    which: str,
    wire: str,
    insulation: str | None,
    amps: float,
    seconds: float,
    data: st.DataObject,
) -> None:
    values, unit = HARDER[which]
    less, more = sorted((data.draw(values), data.draw(values)))
    asked: dict[str, object] = {
        "wire": wire,
        "overcurrent": full(amps, "A"),
        "overcurrent_time": full(seconds, "s"),
    }
    if insulation is not None:
        asked["insulation"] = insulation
    kinder = rank("short-time", **asked | {which: full(less, unit)})
    assert rank("short-time", **asked | {which: full(more, unit)}) >= kinder


@BOUNDED
@given(
    st.integers(0, len(THICK_TO_THIN) - 1),
    st.integers(0, len(THICK_TO_THIN) - 1),
    insulations,
    st.floats(20, 2000),
    st.floats(0.05, 10),
)
def test_a_thinner_wire_never_improves_short_time(
    one: int, two: int, insulation: str | None, amps: float, seconds: float
) -> None:
    thick, thin = sorted((one, two))
    asked: dict[str, object] = {
        "overcurrent": full(amps, "A"),
        "overcurrent_time": full(seconds, "s"),
    }
    if insulation is not None:
        asked["insulation"] = insulation
    kinder = rank("short-time", **asked, wire=THICK_TO_THIN[thick])
    assert rank("short-time", **asked, wire=THICK_TO_THIN[thin]) >= kinder


@BOUNDED
@given(st.integers(0, 25), st.integers(0, 25), st.floats(50, 400))
def test_more_cut_strands_never_improve_short_time(one: int, two: int, amps: float) -> None:
    few, many = sorted((one, two))
    asked = {"wire": "26x30 AWG", "overcurrent": full(amps, "A"), "overcurrent_time": "0.5 s"}
    kinder = rank("short-time", **asked, cut_strands=few)
    assert rank("short-time", **asked, cut_strands=many) >= kinder
