"""Windings and capacitors: the kinder reading never has the worse verdict, the band covers what
lies inside it, and the numbers on the pins do not matter.
"""

from __future__ import annotations

import math
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tests.properties.runs import rank, run
from wirecalc import Finding, Verdict

BOUNDED = settings(deadline=None, max_examples=80)
PASSES = (Verdict.PASS, Verdict.MARGINAL)
NEAR = (1.0, 1 - 1e-9, 1 + 1e-9, 0.97, 1.03)


def full(number: float, unit: str) -> str:
    return f"{number:.12f} {unit}"


def near(*limits: float) -> st.SearchStrategy[float]:
    edges = st.tuples(st.sampled_from(limits), st.sampled_from(NEAR)).map(lambda p: p[0] * p[1])
    return edges | st.floats(0.2 * min(limits), 1.5 * max(limits))


PINS = st.permutations(["1", "2", "3"])


@BOUNDED
@given(near(4.0), near(4.8, 12.0), st.floats(-1.2, 1.2), st.floats(0, 0.05), PINS)
def test_the_numbers_on_the_pins_do_not_matter(
    run_ohm: float, start_ohm: float, off: float, error: float, order: list[str]
) -> None:
    """The same motor under another numbering: the same verdict, the pins renamed."""
    by_pins = {("1", "2"): run_ohm, ("1", "3"): start_ohm, ("2", "3"): run_ohm + start_ohm + off}
    assume(min(by_pins.values()) > 0.1)

    def asked(names: list[str]) -> Finding:
        typed = {}
        for (a, b), ohm in by_pins.items():
            pair = "_".join(sorted((names[int(a) - 1], names[int(b) - 1])))
            typed[f"reading_{pair}"] = f"{full(ohm, 'ohm')} ±{100 * error:.6f}%"
        return run("windings", **typed)

    plain, renamed = asked(["1", "2", "3"]), asked(order)
    assert plain.verdict == renamed.verdict
    was, now = ({a.name: a.text for a in f.answers}.get("pins", "") for f in (plain, renamed))
    assert now == "".join(order[int(c) - 1] if c in "123" else c for c in was)


TIMES = [15.0, 40.0, 70.0]


@st.composite
def decays(draw: st.DrawFn) -> dict[str, Any]:
    room, k = draw(st.floats(10, 35)), 235.0
    rise = draw(near(90.0, 105.0, 110.0))
    tau = draw(st.floats(60, 900))
    cold = draw(st.floats(0.8, 30))
    each = [room + rise * math.exp(-t / tau) for t in TIMES]
    return {
        "cold": cold,
        "room": room,
        "hot": [cold * (k + t) / (k + 20) for t in each],
        "class": draw(st.sampled_from(["B", "F", "compressor", "A"])),
        "leads": draw(st.sampled_from([None, 0.0, 0.2])),
    }


def heat(
    decay: dict[str, Any], error: float = 0.0, at: tuple[float, float, float] = (0.0, 0.0, 0.0)
) -> Finding:
    """Run on a decay, each resistance with an error in percent, or moved by a share of it."""
    cold, hot, room = at
    leads = decay["leads"]
    more = f" ±{100 * error:.6f}%" if error else ""
    typed: dict[str, Any] = {} if leads is None else {"lead_resistance": full(leads, "ohm")}
    typed["cold_resistance"] = full(decay["cold"] * (1 + cold) + (leads or 0), "ohm") + more
    typed["hot_resistance"] = [
        full(r * (1 + hot) + (leads or 0), "ohm") + more for r in decay["hot"]
    ]
    typed["hot_time"] = [f"{t} s" for t in TIMES]
    typed["cold_temperature"] = "20 C"
    typed["room_temperature"] = full(decay["room"] + room, "C") + (" ±1 K" if error else "")
    return run("winding-heat", **typed, winding_class=decay["class"])


SHARE = st.floats(-1, 1) | st.sampled_from([-1.0, 0.0, 1.0])


@BOUNDED
@given(decays(), st.floats(0.001, 0.06), st.tuples(SHARE, SHARE, SHARE))
def test_no_point_inside_the_band_of_a_hot_winding_is_judged_against_it(
    decay: dict[str, Any], error: float, at: tuple[float, float, float]
) -> None:
    banded = heat(decay, error)
    inside = heat(decay, at=(at[0] * error, at[1] * error, at[2]))
    over = {c.criterion.name: c.verdict for c in banded.criteria}
    for judged in inside.criteria:
        verdict = over.get(judged.criterion.name)  # None: the band was left for another reason
        if verdict is None:
            assert banded.verdict is Verdict.CANNOT_TELL
        if verdict in PASSES:
            assert judged.verdict in PASSES
        if verdict is Verdict.FAIL:
            assert judged.verdict is Verdict.FAIL
    found = {f.figure.name: f for f in banded.figures}
    for figure in inside.figures:
        over_it = found.get(figure.figure.name)  # none, where the band settles nothing
        low, high = (over_it.low, over_it.high) if over_it is not None else (None, None)
        if low is not None and high is not None:
            assert low - 1e-6 <= figure.figure.value <= high + 1e-6


@BOUNDED
@given(decays(), st.floats(0.001, 0.06), st.floats(0.001, 0.06))
def test_a_worse_meter_never_betters_a_hot_winding(
    decay: dict[str, Any], one: float, two: float
) -> None:
    better, worse = (heat(decay, error) for error in sorted((one, two)))
    if better.verdict not in PASSES:
        assert worse.verdict not in PASSES


@BOUNDED
@given(decays(), st.floats(0, 0.3))
def test_a_hotter_winding_never_has_the_better_verdict(decay: dict[str, Any], more: float) -> None:
    """Every temperature of the decay risen by the same share of its rise over the room."""
    k = 235.0
    hotter = dict(decay)
    temperatures = [r / decay["cold"] * (k + 20) - k for r in decay["hot"]]
    room = decay["room"]
    hotter["hot"] = [
        decay["cold"] * (k + room + (t - room) * (1 + more)) / (k + 20) for t in temperatures
    ]
    assert rank(heat(hotter)) >= rank(heat(decay))


@BOUNDED
@given(near(25.5, 28.5, 31.5, 34.5), near(25.5, 28.5, 31.5, 34.5), st.sampled_from([None, "5 %"]))
def test_farther_from_the_mark_never_betters_a_capacitor(
    one: float, two: float, tolerance: str | None
) -> None:
    assume((one - 30) * (two - 30) > 0)
    closer, farther = sorted((one, two), key=lambda c: abs(c - 30))
    mark = {"marked_capacitance": "30 uF"} | ({} if tolerance is None else {"tolerance": tolerance})

    def by_meter(uf: float) -> int:
        return rank(run("capacitor", measured_capacitance=full(uf, "uF"), **mark))

    def by_load(uf: float) -> int:
        amps = 2 * math.pi * 60 * uf * 1e-6 * 214
        typed = {"capacitor_voltage": "214 V", "frequency": "60 Hz"} | mark
        return rank(run("capacitor", capacitor_current=full(amps, "A"), **typed))

    assert by_meter(farther) >= by_meter(closer)
    assert by_load(farther) >= by_load(closer)


SWAP = {
    "old_capacitor": "30 uF",
    "new_capacitor": "30 uF",
    "old_capacitor_voltage": "250 V",
    "old_capacitor_duty": "run",
    "new_capacitor_duty": "run",
}


@BOUNDED
@given(near(250.0), near(250.0))
def test_fewer_volts_never_better_a_substitute(one: float, two: float) -> None:
    fewer, more = sorted((one, two))
    low, high = (
        rank(run("capacitor-swap", **SWAP, new_capacitor_voltage=full(v, "V")))
        for v in (fewer, more)
    )
    assert low >= high


@BOUNDED
@given(st.floats(5, 1e6), st.floats(5, 1e6), st.floats(0.1, 2000), st.floats(1, 1000))
def test_a_larger_resistor_takes_longer_and_gentler(
    one: float, two: float, size: float, volts: float
) -> None:
    low, high = sorted((one, two))
    small, large = (
        run(
            "discharge",
            marked_capacitance=full(size, "uF"),
            resistor=full(ohm, "ohm"),
            capacitor_voltage=full(volts, "V"),
        )
        for ohm in (low, high)
    )
    for name in ("time constant", "time to 50 V", "time to 5 V", "hold for"):
        assert large.figure(name).figure.value >= small.figure(name).figure.value
    first = "resistor first instant"
    assert large.figure(first).figure.value <= small.figure(first).figure.value
    assert large.figure("voltage after that").figure.value <= 5.0 * (1 + 1e-9)
