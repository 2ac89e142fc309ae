"""What the shared tests need to know of `restart-wait`, and its published checks."""

from __future__ import annotations

import math

import pytest

import wirecalc
from tests.published.records import independent, memory, practice, source

from .trial import Bad, Span, Step, Trial, When, near, texts

COLD = {"motor_kind": "compressor", "last_start": "failed", "failed_starts": "1"}
COLD |= {"stood_for": "6 min", "metering": "capillary", "start_device": "ptc"}
AGAIN = COLD | {"restart_current": "11 A", "locked_rotor_current": "12 A"}
OPEN = {"motor_kind": "motor", "metering": ""}

TRIAL = Trial(
    good=AGAIN | {"maker_wait": "5 min", "overload_closed": "yes", "high_torque": "yes"},
    zero=("stood_for", "restart_current"),
    printed=("maker_wait", "locked_rotor_current"),
    bad=(
        Bad("high_torque", "perhaps", "'perhaps'", "yes"),
        Bad("metering", "lamp", "'lamp'", "expansion-valve"),
        Bad("overload_closed", "perhaps", "'perhaps'", "yes"),
        Bad("start_device", "lamp", "'lamp'", "combined-kit"),
        Bad("motor_kind", "pump", "'pump'", "compressor"),
        Bad("last_start", "hummed", "'hummed'", "failed"),
        Bad("last_start", "ran", "ran, and 1 failed in a row", "failed or overload"),
        Bad("failed_starts", "0", "0, and the last start ended as failed", "count the last one"),
        Bad("failed_starts", "1.5", "'1.5'", "whole"),
        Bad("stood_for", "6 m", "'6 m'", "min"),
    ),
    always={
        "motor_kind": texts(["compressor"]),
        "last_start": texts(["failed", "overload"]),
        "stood_for": near(5, 8, high=30),
    },
    sometimes={
        "start_device": texts(["ptc", "current-relay"]),
        "metering": texts(["capillary", "expansion-valve"]),
        "high_torque": texts(["yes", "no"]),
        "overload_closed": texts(["yes", "no"]),
        "failed_starts": texts([1, 2]),
        "maker_wait": texts(["3 min", "8 min"]),
        "restart_current": near(8.4, high=15),
        "locked_rotor_current": texts(["12 A"]),
    },
    spans={
        "failed_starts": Span("0", "100", "none to what nobody should try"),
        "stood_for": Span("0 min", "10000 min", "a moment to a week"),
        "maker_wait": Span("0 min", "240 min", "what sheets ask for", over=True),
        "restart_current": Span("0 A", "400 A", "what a clamp reads of a motor"),
    },
    why="Each try heats a motor that stands; a pin may be thrown out, gas may burn.",
    cautions=("start-01", "heat-03", "pin-02", "pin-01", "flam-01", "refr-01", "hot-01", "mov-01"),
    not_checked=("board's own delay", "only gauges", "how hot the winding is"),
    when=(
        When("its overload opened", {"last_start": "overload"}, comes=("cap-01",)),
        When("it failed", {"last_start": "failed"}),
    ),
    steps=(
        Step("time it stood", "stood_for", {"5 min": "pass", "4.99 min": "fail"}, given=COLD,
             limit="about 5 min, to cool to ambient", source="refrigerator service manual"),
        Step("time it stood", "stood_for", {"5 min": "pass", "4.99 min": "fail"},
             given=COLD | {"start_device": "current-relay", "last_start": "ran",
                           "failed_starts": ""},
             limit="5 min of pressures", source="common practice, no source"),
        Step("time it stood", "stood_for", {"5 min": "pass", "4.99 min": "fail"},
             given=OPEN | {"start_device": "current-relay", "last_start": "failed",
                           "failed_starts": "1"},
             limit="5 min of the heat of a failed start", source="common practice, no source"),
        Step("time it stood", "stood_for", {"8 min": "pass", "7.99 min": "fail"},
             given=COLD | {"maker_wait": "8 min"}, limit="its maker's 8 min",
             source="the maker's sheet"),
        Step("time it stood", "stood_for", {"5 min": "pass", "4.99 min": "fail"},
             given=COLD | {"maker_wait": "3 min"}, limit="not sooner than the longest",
             source="refrigerator service manual"),
        Step("time it stood", "start_device", {"ptc": "fail", "current-relay": "not judged"},
             given=OPEN | {"stood_for": "1 min", "last_start": "ran", "failed_starts": ""},
             limit="an open motor on a relay has nothing that is known to wait for",
             source="common practice, no source"),
        Step("starts that failed in a row", "failed_starts", {"1": "pass", "2": "fail"},
             given=COLD, limit="two are the last", source="common practice, no source"),
        Step("overload closed again", "overload_closed",
             {"yes": "pass", "no": "fail", "unknown": "not judged"},
             given=COLD | {"last_start": "overload"},
             limit="an open overload starts nothing", source="common practice, no source"),
        Step("pressures at the start", "high_torque", {"yes": "not judged", "no": "cannot tell"},
             given=COLD | {"metering": "expansion-valve"},
             limit="behind a valve pressures stay apart", source="compressor maker selection page"),
        Step("next start", "restart_current", {"8.4 A": "pass", "8.41 A": "fail"}, given=AGAIN,
             limit="0.7 of 12 A", source="common practice, no source"),
        Step("next start", "stood_for", {"5 min": "fail", "4.9 min": "cannot tell"}, given=AGAIN,
             limit="5 min: sooner it tells nothing of the motor",
             source="refrigerator service manual"),
    ),
)  # fmt: skip


def figures(**given: str) -> dict[str, float]:
    found = wirecalc.run("restart-wait", **given).figures
    return {shown.figure.name: shown.figure.value for shown in found}


@source("refrigerator service manual", "undated", "start device, about 5 min", seen="one copy")
def test_a_ptc_waits_as_its_manual_says() -> None:
    assert figures(motor_kind="motor", last_start="ran", start_device="ptc") == {
        "wait for a PTC": 5.0,
        "longest wait": 5.0,
    }


@source("room air conditioner service manual", "undated", "internal overload", seen="one copy")
def test_an_internal_overload_may_take_an_hour() -> None:
    got = figures(motor_kind="compressor", last_start="overload", start_device="current-relay")
    assert got["an internal overload may take"] == 60.0


@memory("PTC sheets: they switch at about 120 C and cool with a time constant of about a minute")
def test_five_minutes_cool_a_ptc_nearly_to_the_room() -> None:
    # Newton's law: from 160 C in a room of 25 C, after 5 time constants
    left = (160 - 25) * math.exp(-5.0)
    wait = figures(motor_kind="motor", last_start="ran", start_device="ptc")["longest wait"]
    assert wait >= 5.0 * 60 / 60 and left < 1.0


@independent("over 12 starts in an hour are too many: 60 min / 12 is 5 min from start to start")
def test_the_wait_is_not_shorter_than_the_most_starts_an_hour_allow() -> None:
    wait = figures(motor_kind="compressor", last_start="ran", metering="capillary")["longest wait"]
    assert wait >= 60 / 12


@practice("a start device that nobody named counts as the one that waits")
@pytest.mark.parametrize(("device", "known"), [("", True), ("ptc", True), ("run-thermistor", True),
                                               ("current-relay", False),
                                               ("potential-relay", False)])  # fmt: skip
def test_only_a_relay_has_no_wait_of_its_own(device: str, known: bool) -> None:
    given = {"motor_kind": "motor", "last_start": "ran"}
    got = figures(**given | ({"start_device": device} if device else {}))
    assert ("wait for a PTC" in got) == known


@practice("a second locked start after a short pause says nothing of the compressor")
def test_readings_that_show_that_it_was_too_soon() -> None:
    given = dict(AGAIN)
    for stood, verdict, says in (("1 min", "cannot tell", "too soon"),
                                 ("10 min", "fail", "no matter of time")):  # fmt: skip
        found = wirecalc.run("restart-wait", **given | {"stood_for": stood})
        (again,) = (j for j in found.criteria if j.criterion.name == "next start")
        assert str(again.verdict) == verdict and says in again.reason
    with pytest.raises(wirecalc.BadInput, match="how long it stood before"):
        wirecalc.run("restart-wait", **{k: v for k, v in given.items() if k != "stood_for"})
