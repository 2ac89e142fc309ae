"""What hands and meter need at each step of a job; machines are invented."""

from __future__ import annotations

import pytest

from wirecalc.commands.job_stops import Stops, of_machine
from wirecalc.jobs.checks import STEPS

PLUG, POLES, DEAD = "pull the plug", "lock both poles", "prove dead"
BLEED, LIVE, METER = "a capacitor is charged", "live only if", "meter AND leads"
GROUND, RECEPTACLE, STILL = (
    "refit every ground",
    "plug or receptacle",
    "keep it unplugged or locked out, and prove it dead",
)
WASHER = {"kind": "washer", "connection": "cord-connected"}


def said(stops: Stops, step: str, job: dict[str, str]) -> list[str]:
    """Return the stops of a step by their first words."""
    words = (PLUG, POLES, DEAD, BLEED, LIVE, METER, GROUND, RECEPTACLE, STILL)
    lines = stops.at(step, job)
    found = [next(w for w in words if line.startswith(f"STOP  {w}")) for line in lines]
    assert len(found) == len(lines)
    return found


def test_stops_of_each_step_in_the_order_of_the_work() -> None:
    stops = Stops()
    came = {step: said(stops, step, WASHER) for step in STEPS}
    assert came["isolate"] == [PLUG, DEAD, BLEED]
    assert came["live readings"] == [LIVE, METER]
    assert came["power up"] == [GROUND, RECEPTACLE]  # the meter's category was said
    hands = ("dead tests", "parts", "wire", "joint", "prove the joint", "before power")
    assert [came[step] for step in hands] == [[STILL]] * len(hands)


@pytest.mark.parametrize(
    "step", ["dead tests", "parts", "wire", "joint", "prove the joint", "before power"]
)
def test_step_with_hands_in_that_comes_first_isolates(step: str) -> None:
    assert said(Stops(), step, WASHER) == [PLUG, DEAD, BLEED]


@pytest.mark.parametrize("step", ["live readings", "power up"])
def test_reading_with_power_ends_that_it_is_dead(step: str) -> None:
    stops = Stops()
    said(stops, "isolate", WASHER)
    stops.reads("dead tests")
    assert said(stops, "parts", WASHER) == [STILL]
    said(stops, step, WASHER)
    stops.reads(step)
    assert said(stops, "parts", WASHER) == [PLUG, DEAD, BLEED]


def test_meters_category_is_said_at_power_up_where_it_was_not() -> None:
    assert said(Stops(), "power up", WASHER) == [GROUND, RECEPTACLE, METER]


@pytest.mark.parametrize(
    ("kind", "both"),
    [
        *((kind, False) for kind in ("refrigerator", "freezer", "washer", "microwave")),
        *((k, True) for k in ("air-conditioner", "dishwasher", "disposal", "dryer", "other")),
        *((kind, True) for kind in ("range", "water-heater", "fan", "ice-machine")),
        *((kind, False) for kind in ("portable-heater", "sump-pump")),
    ],
)
def test_machine_of_which_the_sheet_does_not_say_how_it_is_connected(kind: str, both: bool) -> None:
    ways = [w for w in said(Stops(), "isolate", {"kind": kind}) if w in (PLUG, POLES)]
    assert ways == ([PLUG, POLES] if both else [PLUG])


@pytest.mark.parametrize(
    ("kind", "has"),
    [
        *((kind, True) for kind in ("refrigerator", "microwave", "heat-pump-dryer", "other")),
        *((kind, True) for kind in ("fan", "sump-pump", "ice-machine")),
        *((kind, False) for kind in ("dryer", "range", "water-heater", "portable-heater")),
        ("a kind that nobody lists", True),
    ],
)
def test_charge_of_a_capacitor_is_left_out_only_where_there_is_none(kind: str, has: bool) -> None:
    assert (BLEED in said(Stops(), "isolate", {"kind": kind})) is has


@pytest.mark.parametrize(
    ("kind", "first"),
    [
        ("microwave", ["Leave the cover shut", "capacitor whose charge kills"]),
        ("sump-pump", ["Shut water and power"]),
        ("ice-machine", ["Ventilate"]),
        ("fan", []),
    ],
)
def test_what_stands_first_on_a_sheet_of_a_kind(kind: str, first: list[str]) -> None:
    said_first = " ".join(of_machine({"kind": kind}))
    assert all(words in said_first for words in first)
    assert bool(said_first) is bool(first)
