"""Joints, strips and starts: the kinder reading never has the worse verdict."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc
from tests.properties.runs import full
from tests.properties.runs import rank_of as rank
from wirecalc.trade import crimps
from wirecalc.typed.wires import read_wire

BOUNDED = settings(deadline=None, max_examples=60)
SIZES = ("22 AWG", "18 AWG", "17 AWG", "14 AWG", "10 AWG", "8 AWG", "4 AWG", "0.1 mm2", "0.5 mm2")
SIZES += ("0.75 mm2", "1.5 mm2", "3 mm2", "5.5 mm2", "27 mm2", "19x0.25 mm", "12 AWG aluminum")
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.99, 1.01)


@BOUNDED
@given(
    st.sampled_from(SIZES),
    st.sampled_from(list(crimps.TERMINALS)),
    st.sampled_from(["own", *crimps.pull_standards()]),
    st.data(),
)
def test_a_lower_force_never_improves_the_pull(
    wire: str, terminal: str, standard: str, data: st.DataObject
) -> None:
    judge = crimps.TERMINALS[terminal] if standard == "own" else standard
    minimum = crimps.pull_minimum(read_wire(wire), judge)
    limits = [m for m in (minimum and minimum.lbf, minimum and minimum.above) if m] or [10.0]
    forces = st.tuples(st.sampled_from(limits), st.sampled_from(NEAR)).map(lambda p: p[0] * p[1])
    forces |= st.floats(0, 2 * max(limits))
    low, high = sorted((data.draw(forces), data.draw(forces)))
    asked = {"wire": wire, "terminal": terminal, "pull_standard": standard}
    at_high = rank("pull", **asked, force=full(high, "lbf"))
    assert rank("pull", **asked, force=full(low, "lbf")) >= at_high


def test_a_hair_less_force_than_a_listed_minimum_of_the_thinner_size_is_no_pass() -> None:
    # 0.1 mm2 lies between two listed sizes of IEC 60352-2, 6 to 28 N; only the larger's passes
    asked = {"wire": "0.1 mm2", "terminal": "ring", "pull_standard": "iec-60352-2"}
    thinner = crimps.pull_minimum(read_wire("0.1 mm2"), "iec-60352-2")
    assert thinner is not None
    at = rank("pull", **asked, force=full(thinner.lbf, "lbf"))
    assert rank("pull", **asked, force=full(thinner.lbf * (1 - 5e-10), "lbf")) >= at


PLACES = {
    "place_temperature": ("C", (-40, 60, 85, 105, 125)),
    "current": ("A", (0, 10, 15, 20, 30, 50)),
    "circuit_voltage": ("V", (0, 120, 240, 300, 600)),
}


@BOUNDED
@given(
    st.sampled_from(list(PLACES)),
    st.sampled_from(["18 AWG", "14 AWG", "12 AWG", "10 AWG solid", "2.5 mm2"]),
    st.sampled_from([None, 60, 105, 125]),
    st.sampled_from([None, 300, 600]),
    st.data(),
)
def test_a_hotter_place_more_current_or_more_volts_never_improve_a_splice(
    which: str, wire: str, temperature: int | None, volts: int | None, data: st.DataObject
) -> None:
    unit, limits = PLACES[which]
    edges = st.tuples(st.sampled_from(limits), st.sampled_from(NEAR)).map(lambda p: p[0] * p[1])
    values = edges | st.floats(min(limits), max(limits))
    less, more = sorted((data.draw(values), data.draw(values)))
    asked: dict[str, object] = {"wire": [wire], "barrel": "18-10 AWG", "listed_for": "either"}
    if temperature is not None:
        asked |= dict.fromkeys(("wire_temperature", "terminal_temperature"), f"{temperature} C")
    if volts is not None:
        asked |= {"circuit_voltage": "12 V", "terminal_voltage": f"{volts} V"}
    kinder = rank("splice", **asked | {which: full(less, unit)})
    assert rank("splice", **asked | {which: full(more, unit)}) >= kinder


@BOUNDED
@given(
    st.sampled_from(["closed", "closed-insulated", "open", "stop", "ferrule"]),
    st.floats(1, 20),
    st.floats(0.01, 60),
    st.floats(0.01, 60),
)
def test_a_shorter_strip_is_never_judged_better_for_being_long_enough(
    style: str, barrel: float, one: float, two: float
) -> None:
    ranks = []
    for stripped in sorted((one, two)):
        finding = wirecalc.run(
            "strip",
            wire=["18 AWG"],
            style=style,
            barrel_length=full(barrel, "mm"),
            window_length="2 mm",
            stripped=full(stripped, "mm"),
        )
        enough = finding.criterion("strip length, lower limit")
        short = finding.criterion("strip length, upper limit")
        ranks.append((enough.verdict.rank, short.verdict.rank))
    assert ranks[0][0] >= ranks[1][0]  # the shorter strip
    assert ranks[0][1] <= ranks[1][1]


motors = st.fixed_dictionaries(
    {"locked_rotor_current": st.just("12 A"), "rated_load_current": st.just("1.6 A")},
    optional={
        "breaker": st.sampled_from(["5 A", "15 A", "20 A"]),
        "voltage": st.sampled_from(["100 V", "117 V"]),
        "nameplate_voltage": st.just("115 V"),
        "settled": st.sampled_from(["1.2 A", "1.7 A"]),
    },
)


@BOUNDED
@given(motors, st.floats(0, 600), st.floats(0, 600))
def test_a_slower_start_never_improves_it(motor: dict[str, object], one: float, two: float) -> None:
    fast, slow = sorted((one, two))
    kinder = rank("inrush", **motor, settle_time=full(fast, "s"))
    assert rank("inrush", **motor, settle_time=full(slow, "s")) >= kinder


def test_a_slower_start_never_raises_what_the_breaker_is_allowed() -> None:
    ranks = []
    for seconds in (0, 1, 10, 49, 50, 119, 120, 600):
        ranks.append(
            rank("inrush", locked_rotor_current="40 A", breaker="15 A", settle_time=f"{seconds} s")
        )
    assert ranks == sorted(ranks)
