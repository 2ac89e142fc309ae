"""A job by questions goes as the work goes: dead before live, what protects a step before it.

For every kind of job; machines and answers are invented.
"""

from __future__ import annotations

import functools
from pathlib import Path

import pytest

from wirecalc import build
from wirecalc.asking.job_check import OfCheck
from wirecalc.asking.job_interview import Interview
from wirecalc.asking.job_question import Question
from wirecalc.asking.of_kind import has
from wirecalc.jobs.checks import AS_FOUND, AS_LEFT, STAGES, STEPS
from wirecalc.jobs.sheet import kinds
from wirecalc.jobs.sheet.confirmed import lines_of

CATALOGUE = build(bundled_only=True)
KINDS = kinds.table_kinds()
WITH_POWER = {  # what is read while the machine is fed
    "air-split",
    "breaker",
    "cooling",
    "draw",
    "duty",
    "extension",
    "inrush",
    "joint-drop",
    "leakage",
    "outlet",  # the machine unplugged from it
    "oven-swing",
    "pull-down",
    "screening",  # its last part: all that comes before the plug is asked in it first
    "supply",
    "water-heat",
}
WITHOUT = {
    "capacitor-swap",
    "cutoff",
    "discharge",
    "element",
    "gauge",
    "ground",
    "heat-rating",
    "insulation",
    "motor-circuit",
    "overload",
    "pull",
    "pull-batch",
    "restart-wait",  # of a start that failed: it stands without power meanwhile
    "ring",
    "rtd",
    "shared-barrel",
    "sleeve",
    "splice",
    "start-device",
    "strip",
    "substitute",
    "tab",
    "thermistor",  # unplugged from its board
    "thermostat",
    "windings",
}
BEFORE_POWER = {
    *("covers_back", "leads_clear", "test_jumpers_off", "cut_off_cause_found"),
    "gas_left_to_licensed",  # before it burns
}
each_kind = pytest.mark.parametrize("kind", KINDS)


def is_live(calculation: str, reads: str) -> bool:
    if calculation == "capacitor":  # by a capacitance meter, or running
        return reads != "measured_capacitance"
    assert calculation in WITH_POWER | WITHOUT, "say whether it is read with power"
    return calculation in WITH_POWER


@each_kind
def test_no_check_with_power_comes_before_one_without(kind: str) -> None:
    for stage in STAGES:  # of what was found before hands go in again for the repair
        rows = sorted(
            (row for row in kinds.usual(kind) if row.stage == stage and row.step != "wire"),
            key=lambda row: STEPS.index(row.step),
        )
        live = [is_live(row.calculation, row.reads) for row in rows]
        assert live == sorted(live), [(row.name, row.step) for row in rows]


@functools.cache
def asked_of(kind: str) -> list[tuple[str, str]]:
    """Begin every check there is, leave it for later, and answer no question; all that came."""
    interview = Interview({}, CATALOGUE, Path())
    answers = {"kind": kind, "title": "invented", "stop": "go on"}
    came: list[tuple[str, str]] = []
    while (asked := interview.next()) is not None:
        if isinstance(asked, OfCheck):
            came.append((asked.check.calculation.name, asked.check.place.stage))
            interview.later(asked)
            continue
        assert isinstance(asked, Question)
        came.append((asked.key, ""))
        every = " ".join(map(str, range(1, len(asked.choices) + 1))) if asked.several else ""
        live = "leakage" if "leakage" in asked.choices else ""
        assert not interview.answer(asked, answers.get(asked.key, every or live))
    return came


@each_kind
def test_what_is_begun_is_asked_in_the_order_of_the_work(kind: str) -> None:
    came = asked_of(kind)
    reads = {(row.calculation, row.stage): row.reads for row in kinds.usual(kind)}
    for stage in (AS_FOUND, AS_LEFT):
        checks = [name for name, of in came if of == stage and name not in ("capacitor", "gauge")]
        live = [is_live(name, reads.get((name, stage), "")) for name in checks]
        assert live == sorted(live), checks
    steps = [STEPS.index(key[5:]) for key, _ in came if key[5:] in STEPS]
    assert steps == sorted(steps)


@each_kind
def test_what_protects_a_step_is_confirmed_before_it(kind: str) -> None:
    came = asked_of(kind)
    keys = [key for key, _ in came]
    with_power = [
        n for n, (name, stage) in enumerate(came) if stage == AS_LEFT and name in WITH_POWER
    ]
    first = min(with_power, default=len(came))
    for line in lines_of(kind):
        at = keys.index(f"confirmed {line.key}")
        if line.key in BEFORE_POWER:
            assert at < first, line.key
        if line.key == "high_voltage_discharged":
            hands = {"discharge", "windings", "cutoff", "splice", "tab", "strip"}
            assert at < min(n for n, (name, _) in enumerate(came) if name in hands)
        if line.key in ("door_leakage_measured", "safety_switches_proved"):
            assert at > max(with_power), line.key


def test_power_is_off_again_before_hands_go_in() -> None:
    """Live readings of what was found come after the dead tests, and parts after a second stop."""
    assert STEPS.index("isolate") < STEPS.index("dead tests") < STEPS.index("live readings")
    assert STEPS.index("live readings") < STEPS.index("parts") < STEPS.index("before power")
    assert STEPS.index("before power") < STEPS.index("power up")


def test_outlet_is_read_before_the_machine_has_power_by_it() -> None:
    """Also where a screening was chosen before, whose last part is a run."""
    interview = Interview({}, CATALOGUE, Path())
    answers = {"kind": "washer", "title": "invented", "connection": "plugged in", "stop": "go on"}
    came = []
    while (asked := interview.next()) is not None:
        if isinstance(asked, OfCheck):
            came.append(asked.check.calculation.name)
            interview.later(asked)
            continue
        typed = "screening" if "screening" in asked.choices else answers.get(asked.key, "")
        assert not interview.answer(asked, typed)
    assert came == ["ground", "outlet", "screening", "supply"]


RANGE = {
    "job": {"title": "invented", "kind": "range", "asked_up_to": "prove the joint"},
    "check": [
        {
            "calculation": "element",
            "step": "dead tests",
            "stage": "as found",
            "element_open": "yes",
        },
    ],
}


@pytest.mark.parametrize(
    ("typed", "measured"),
    [
        *(
            (said, True)
            for said in ("replaced", "new", "changed it", "swapped", "repaired", "fixed")
        ),
        *((said, True) for said in ("mended", "cleaned", "tightened", "crimped", "measure again")),
        *(
            (said, False)
            for said in ("removed", "unplugged", "cut off", "away", "taken out", "gone")
        ),
    ],
)
def test_what_people_say_of_what_failed_is_understood(typed: str, measured: bool) -> None:
    interview = Interview(RANGE, CATALOGUE, Path())
    asked = interview.next()
    assert isinstance(asked, Question) and asked.key.startswith("again element")
    assert not interview.answer(asked, typed)
    then = interview.next()
    if measured:
        assert isinstance(then, OfCheck) and then.check.place.stage == AS_LEFT
    else:
        assert isinstance(then, Question) and then.key == "removed"


@pytest.mark.parametrize(("settled", "offered"), [("1.2 A", True), ("1.7 A", True), ("9 A", False)])
def test_start_that_was_kept_may_stand_as_it_was_found(settled: str, offered: bool) -> None:
    """Also a marginal one; one that failed is measured again."""
    plate = {"rated_load_current": "1.6 A", "locked_rotor_current": "12 A"}
    readings = {"voltage": "115 V", "peak": "11.5 A", "settled": settled, "settle_time": "0.4 s"}
    said = {"meter_mode": "inrush", "name": "start", "stage": "as found", "step": "live readings"}
    sheet = {
        "job": {"title": "t", "kind": "refrigerator", "asked_up_to": "joint"},
        "nameplate": {"nameplate_voltage": "115 V", **plate},
        "check": [{"calculation": "inrush", **said, **readings}],
    }
    interview = Interview(sheet, CATALOGUE, Path())
    while True:
        asked = interview.next()
        if isinstance(asked, OfCheck):
            interview.later(asked)
        elif asked is not None and asked.key == "needed start, inrush":
            break
        elif asked is not None:
            later = "later" if "later" in asked.choices else ""
            assert not interview.answer(asked, later)
    assert any(choice.startswith("as it was found") for choice in asked.choices) is offered


def test_what_is_asked_of_some_kinds_only() -> None:
    for kind in KINDS:
        assert has(kind, "range_rating") is (kind in ("range", "other")), kind
        assert has(kind, "storage_water_heater") is (kind in ("water-heater", "other")), kind
        assert has(kind, "current")
    assert has("a kind that nobody lists", "range_rating")
