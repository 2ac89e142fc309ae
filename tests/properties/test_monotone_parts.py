"""Elements, start parts, duty and locked rotors: the kinder reading never has the worse verdict."""

from __future__ import annotations

from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

import wirecalc
from tests.properties.runs import full
from wirecalc import BadInput, Verdict

BOUNDED = settings(deadline=None, max_examples=60)
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.99, 1.01)


def run(name: str, **given_: Any) -> wirecalc.Finding:
    try:
        return wirecalc.run(name, **given_)
    except BadInput:
        assume(False)
        raise


def ranks(finding: wirecalc.Finding) -> dict[str, int]:
    return {c.criterion.name: c.verdict.rank for c in finding.criteria}


def around(*limits: float, high: float) -> st.SearchStrategy[float]:
    edges = [limit * near for limit in limits for near in NEAR]
    return st.sampled_from(edges) | st.floats(0.001, high)


PLATE = {"nameplate_power": "2585 W", "nameplate_voltage": "240 V"}
ohms = around(20.05417, 20.35417, 24.51064, 24.81064, high=60)  # 22.28 ohm ±10 %, and 0.3 ohm


@BOUNDED
@given(ohms, ohms, st.sampled_from([None, "0 ohm", "0.2 ohm"]))
def test_an_element_of_more_ohms_is_no_better_on_the_high_side_and_no_worse_on_the_low(
    one: float, two: float, leads: str | None
) -> None:
    more = {} if leads is None else {"lead_resistance": leads}
    low, high = (
        ranks(run("element", **PLATE, **more, element_resistance=full(ohm, "ohm")))
        for ohm in sorted((one, two))
    )
    assert low["resistance, upper limit"] <= high["resistance, upper limit"]
    assert low["resistance, lower limit"] >= high["resistance, lower limit"]


@BOUNDED
@given(ohms, st.floats(0, 0.3))
def test_leads_that_were_not_read_are_no_better_than_any_that_were(
    ohm: float, leads: float
) -> None:
    read = run(
        "element",
        **PLATE,
        element_resistance=full(ohm, "ohm"),
        lead_resistance=full(leads, "ohm"),
    )
    unread = run("element", **PLATE, element_resistance=full(ohm, "ohm"))
    for name, rank in ranks(unread).items():
        if rank == Verdict.PASS.rank:
            assert ranks(read)[name] == rank
        if rank == Verdict.FAIL.rank:
            assert ranks(read)[name] == rank


devices = around(1, 3, 10, 12, 50, 100, 500, 1000, high=1500)


@BOUNDED
@given(
    st.sampled_from(["ptc", "run-thermistor"]),
    devices,
    devices,
    st.fixed_dictionaries(
        {
            "by_itself": st.sampled_from(["no", "yes"]),
            "device_cold": st.sampled_from(["no", "yes"]),
        },
        optional={
            "maker_resistance": st.sampled_from(["6.8 ohm", "33 ohm", "50 ohm"]),
            "nameplate_voltage": st.sampled_from(["115 V", "230 V"]),
            "lead_resistance": st.just("0.2 ohm"),
        },
    ),
)
def test_a_start_device_of_more_ohms_is_no_better_on_the_high_side(
    device: str, one: float, two: float, more: dict[str, str]
) -> None:
    low, high = (
        ranks(run("start-device", start_device=device, device_resistance=full(ohm, "ohm"), **more))
        for ohm in sorted((one, two))
    )
    assert set(low) == set(high)
    for name in low:
        if name == "resistance, upper limit":
            assert low[name] <= high[name]
        else:
            assert low[name] >= high[name]


@BOUNDED
@given(around(1, 1.3, high=3), around(1, 1.3, high=3), st.sampled_from(["yes", "no", None]))
def test_an_overload_of_more_ohms_is_no_better(one: float, two: float, warm: str | None) -> None:
    more = {} if warm is None else {"overload_cold": warm}
    low, high = (
        ranks(run("overload", overload_resistance=full(ohm, "ohm"), **more))
        for ohm in sorted((one, two))
    )
    assert low["overload conducts"] <= high["overload conducts"]


seconds = around(1, 3, high=20)
amps = around(7.56, 8.4, 9.24, high=14)


@BOUNDED
@given(seconds, seconds, amps, amps, st.sampled_from([None, 0, 4]))
def test_a_longer_time_at_more_current_is_no_better(
    one: float, two: float, few: float, many: float, trips: int | None
) -> None:
    more = {} if trips is None else {"overload_trips": trips}
    times, currents = sorted((one, two)), sorted((few, many))
    kinder, worse = (
        run(
            "locked",
            high_time=full(time, "s"),
            high_current=full(current, "A"),
            locked_rotor_current="12 A",
            **more,
        )
        for time, current in zip(times, currents, strict=True)
    )
    name = "time at high current"
    assert ranks(kinder)[name] <= ranks(worse)[name]


minutes = st.floats(0.5, 200)


@BOUNDED
@given(
    st.lists(minutes, min_size=1, max_size=4),
    st.lists(minutes, min_size=1, max_size=4),
    st.floats(0, 60),
    st.sampled_from(["yes", "no", None]),
    st.floats(0.0001, 0.4),
)
def test_more_time_on_is_no_better_and_a_worse_meter_never_passes_more(
    on: list[float], off: list[float], more_on: float, restock: str | None, error: float
) -> None:
    more = {} if restock is None else {"after_restock": restock}
    given_on = [full(t, "min") for t in on]
    given_off = [full(t, "min") for t in off]
    found = run("duty", on_times=given_on, off_times=given_off, **more)
    longer = [full(t + more_on, "min") for t in on]
    assert found.verdict is not None
    longer_on = ranks(run("duty", on_times=longer, off_times=given_off, **more))
    for name, rank in ranks(found).items():
        if name.startswith("share"):
            assert rank <= longer_on[name]
        else:  # a compressor that runs longer at a time cycles less
            assert rank >= longer_on[name]
    banded = run(
        "duty", on_times=[f"{t} ±{error:.6f} min" for t in given_on], off_times=given_off, **more
    )
    assert banded.verdict is not None
    if found.verdict is Verdict.FAIL:
        assert banded.verdict in (Verdict.FAIL, Verdict.CANNOT_TELL)
    else:
        assert banded.verdict.rank >= found.verdict.rank


@BOUNDED
@given(st.floats(50, 320), st.floats(50, 320), st.floats(50, 320))
def test_a_hotter_cutoff_is_never_better_on_the_high_side(
    old: float, one: float, two: float
) -> None:
    low, high = (
        ranks(
            run(
                "cutoff",
                old_functioning_temperature=full(old, "C"),
                new_functioning_temperature=full(new, "C"),
            )
        )
        for new in sorted((one, two))
    )
    name = "functioning temperature not"
    assert low[f"{name} higher"] <= high[f"{name} higher"]
    assert low[f"{name} lower"] >= high[f"{name} lower"]
