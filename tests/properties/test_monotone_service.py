"""Return to service: more insulation, less leakage, less resistance to ground never do harm."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.properties.runs import rank, run
from wirecalc import Verdict

BOUNDED = settings(deadline=None, max_examples=60)
PASSES = (Verdict.PASS, Verdict.MARGINAL)
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.97, 1.03)


def full(number: float, unit: str) -> str:
    return f"{number:.13f} {unit}"


def near(*limits: float) -> st.SearchStrategy[float]:
    edges = st.tuples(st.sampled_from(limits), st.sampled_from(NEAR)).map(lambda p: p[0] * p[1])
    return edges | st.floats(0.5 * min(limits), 1.5 * max(limits))


yes_no = st.sampled_from(["yes", "no"])
tests = st.fixed_dictionaries(
    {
        "protection": st.sampled_from(["class-i", "class-ii", "class-iii"]),
        "tested_part": st.sampled_from(["machine", "heater", "compressor", "motor"]),
    },
    optional={
        "test_voltage": st.sampled_from(["500 V", "250 V", "9 V"]),
        "switched_on": yes_no,
        "electronics_unplugged": yes_no,
        "dried": yes_no,
        "nameplate_power": st.sampled_from(["2 kW", "4 kW"]),
    },
)
MOHM = near(0.01, 0.25, 0.3, 1.0, 2.0, 10.0)


@BOUNDED
@given(tests, MOHM, MOHM)
def test_more_insulation_never_fails_where_less_did_not(
    asked: dict[str, str], one: float, two: float
) -> None:
    """What is good enough but not proven stays unproven; nothing that was not failed fails."""
    low, high = (
        run("insulation", insulation_resistance=full(r, "Mohm"), **asked)
        for r in sorted((one, two))
    )
    assert rank(high) <= rank(low)


@BOUNDED
@given(tests, MOHM)
def test_what_a_test_lacked_never_betters_it(asked: dict[str, str], ohms: float) -> None:
    reading = full(ohms, "Mohm")
    known = run("insulation", insulation_resistance=reading, **asked)
    for name in ("test_voltage", "switched_on"):
        less = {n: v for n, v in asked.items() if n != name}
        if run("insulation", insulation_resistance=reading, **less).verdict in PASSES:
            bare = asked["tested_part"] in ("compressor", "motor")  # read at its own pins
            assert name not in asked or (name == "switched_on" and bare)
            assert known.verdict in PASSES


kinds = st.sampled_from(
    ["two-wire", "double-insulated", "portable", "stationary", "refrigerator", "heater"]
)
leaks = st.fixed_dictionaries(
    {
        "leakage_standard": st.sampled_from(["ul-101", "iec-60335-1", "vde-0701-0702"]),
        "connection": st.sampled_from(["plug", "large-plug"]),
    },
    optional={
        "machine_kind": kinds,
        "switched_on": yes_no,
        "nameplate_power": st.sampled_from(["500 W", "3 kW", "12 kW"]),
        "on_gfci": st.just("yes"),
    },
)
MA = near(0.25, 0.5, 0.75, 1.5, 3.5, 4.0, 5.0, 6.0, 10.0)
NONE_OF_ITS_OWN = {"leakage_current": "<0.001 mA", "switched_on": "yes"}


@BOUNDED
@given(leaks, MA, MA, st.lists(MA, max_size=3))
def test_more_leakage_never_betters_it(
    asked: dict[str, str], one: float, two: float, others: list[float]
) -> None:
    given_: dict[str, Any] = dict(asked)
    if others:
        given_["other_leakage"] = [full(i, "mA") for i in others]
    low, high = (
        run("leakage", leakage_current=full(i, "mA"), **given_) for i in sorted((one, two))
    )
    assert rank(high) >= rank(low)


@BOUNDED
@given(leaks, MA)
def test_a_standard_that_was_not_named_is_never_kinder_than_one(
    asked: dict[str, str], i: float
) -> None:
    typed = {n: v for n, v in asked.items() if n != "leakage_standard"}
    unnamed = run("leakage", leakage_current=full(i, "mA"), **typed)
    if unnamed.verdict in PASSES:
        for standard in ("ul-101", "iec-60335-1", "vde-0701-0702"):
            named = run(
                "leakage", leakage_current=full(i, "mA"), **typed, leakage_standard=standard
            )
            assert named.verdict in PASSES


@BOUNDED
@given(st.lists(MA, min_size=1, max_size=4), MA)
def test_one_machine_more_never_betters_a_gfci(each: list[float], more: float) -> None:
    one, two = (
        run("leakage", **NONE_OF_ITS_OWN, other_leakage=[full(i, "mA") for i in those])
        for those in (each, [*each, more])
    )
    assert rank(two) >= rank(one)


@BOUNDED
@given(st.lists(MA, min_size=1, max_size=4), st.floats(0.001, 0.3), st.floats(-1, 1))
def test_no_point_inside_the_band_of_a_list_is_judged_against_it(
    each: list[float], error: float, at: float
) -> None:
    with_error = [f"{full(i, 'mA')} ±{100 * error:.6f}%" for i in each]
    banded = run("leakage", **NONE_OF_ITS_OWN, other_leakage=with_error)
    points = [full(i * (1 + at * error), "mA") for i in each]
    inside = run("leakage", **NONE_OF_ITS_OWN, other_leakage=points)
    if banded.verdict in PASSES:
        assert inside.verdict in PASSES
    if banded.verdict is Verdict.FAIL:
        assert inside.verdict is Verdict.FAIL


def ideal(ohms: float) -> str:
    """Write ohms as an ideal meter's, whose error is known to be nothing."""
    return f"{full(ohms, 'ohm')} ±0 ohm"


paths = st.fixed_dictionaries(
    {
        "ground_point": st.sampled_from(["plug-pin", "cord-end", "wired-in", "neutral-blade"]),
        "cord_ground_closed": st.just("yes"),
        "neutral_strap": st.sampled_from(["no-strap", "fitted"]),
        "ground_standard": st.sampled_from(["ul-507", "iec-60335-1", "en-50106", "vde-0701-0702"]),
    },
    optional={"cord": st.sampled_from(["18 AWG", "16 AWG", "1.5 mm2", "16 AWG cca"])},
)
OHM = near(0.1, 0.2, 0.3, 0.4, 1.0)
FEET = near(6.0, 16.404199475, 41.010498688)
LEAD = st.none() | st.floats(0, 0.3)


@BOUNDED
@given(paths, st.none() | FEET, LEAD, OHM, OHM)
def test_more_ohms_never_better_a_ground_path(
    asked: dict[str, str], feet: float | None, leads: float | None, one: float, two: float
) -> None:
    typed = dict(asked) | ({} if feet is None else {"cord_length": full(feet, "ft")})
    if leads is not None:
        typed["lead_resistance"] = ideal(leads)
    low, high = (run("ground", ground_resistance=ideal(r), **typed) for r in sorted((one, two)))
    assert rank(high) >= rank(low)


@BOUNDED
@given(paths, st.none() | FEET, OHM, LEAD)
def test_leaving_out_cord_or_leads_never_betters_a_ground_path(
    asked: dict[str, str], feet: float | None, ohms: float, leads: float | None
) -> None:
    typed = dict(asked) | ({} if feet is None else {"cord_length": full(feet, "ft")})
    if leads is not None:
        typed["lead_resistance"] = ideal(leads)
    known = run("ground", ground_resistance=ideal(ohms), **typed)
    for name in ("cord", "cord_length", "lead_resistance"):
        less = {n: v for n, v in typed.items() if n != name}
        unknown = run("ground", ground_resistance=ideal(ohms), **less)
        if known.verdict not in PASSES:
            assert unknown.verdict not in PASSES


@BOUNDED
@given(paths, FEET, FEET, OHM)
def test_a_longer_cord_never_asks_for_less_ohms(
    asked: dict[str, str], one: float, two: float, ohms: float
) -> None:
    short, long = (
        run(
            "ground",
            ground_resistance=ideal(ohms),
            lead_resistance="0 ohm",
            cord_length=full(f, "ft"),
            **asked,
        )
        for f in sorted((one, two))
    )
    assert rank(long) <= rank(short)


@BOUNDED
@given(OHM, LEAD, st.floats(0.0005, 0.2), st.floats(0.0005, 0.2))
def test_a_shared_offset_never_widens_what_two_readings_leave(
    ohms: float, leads: float | None, error: float, digit: float
) -> None:
    lead = leads or 0.0
    typed = {
        "ground_point": "wired-in",
        "ground_resistance": f"{full(ohms + lead, 'ohm')} ±{full(error, 'ohm')}",
        "lead_resistance": f"{full(lead, 'ohm')} ±{full(error, 'ohm')}",
    }
    apart = run("ground", **typed)
    shared = run("ground", **typed, same_range="yes", meter_resolution=full(digit, "ohm"))
    if apart.verdict in (*PASSES, Verdict.FAIL):
        assert shared.verdict is apart.verdict
