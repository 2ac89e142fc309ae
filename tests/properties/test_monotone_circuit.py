"""Circuits: more load, thinner wire, more heat or a larger breaker never improve a verdict."""

from __future__ import annotations

from typing import Any

from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

import wirecalc
from tests.properties.runs import rank
from wirecalc import BadInput, Finding, Verdict

BOUNDED = settings(deadline=None, max_examples=60)
KINDS = ("plug_loads", "long_plug_loads", "fastened_loads", "long_fastened_loads", "light_loads")
GAUGES = ("14", "12", "10", "8", "6")
THIN = ("18", "16")
OWN_BREAKER = {"14": 15, "12": 20, "10": 30, "8": 40, "6": 55}  # 60 C, with 240.4(D)
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.98, 1.02)

amps = st.sampled_from([0.4, 1.6, 3.75, 6.2, 7.5, 8.7, 12.0, 15.0]) | st.integers(1, 300).map(
    lambda n: n / 10
)
loads = st.dictionaries(st.sampled_from(KINDS), st.lists(amps, min_size=1, max_size=3), min_size=1)
circuits = st.fixed_dictionaries(
    {"breaker": st.sampled_from(["15 A", "20 A", "30 A"])},
    optional={
        "building_wire": st.sampled_from([f"{g} AWG" for g in GAUGES]),
        "receptacle": st.sampled_from(["15 A", "20 A"]),
        "feeds_others": st.sampled_from(["yes", "no"]),
        "ambient": st.sampled_from(["25 C", "40 C", "58 C"]),
    },
)


def texts(listed: dict[str, list[float]]) -> dict[str, list[str]]:
    return {kind: [f"{a:.17f} A" for a in of] for kind, of in listed.items()}


def run(name: str, **asked: Any) -> Finding:
    try:
        return wirecalc.run(name, **asked)
    except BadInput:
        assume(False)
        raise


@BOUNDED
@given(circuits, loads, st.data())
def test_a_greater_load_never_improves_a_circuit(
    asked: dict[str, str], listed: dict[str, list[float]], data: st.DataObject
) -> None:
    kind = data.draw(st.sampled_from(sorted(listed)))
    more = listed | {
        kind: [min(a * data.draw(st.sampled_from([1, 1.1, 2])), 99) for a in listed[kind]]
    }
    one, two = (run("circuit", **asked, **texts(x)) for x in (listed, more))
    assert rank(two) >= rank(one)


@BOUNDED
@given(circuits, loads, st.sampled_from(KINDS), amps)
def test_one_load_more_never_improves_a_circuit(
    asked: dict[str, str], listed: dict[str, list[float]], kind: str, load: float
) -> None:
    asked.pop("feeds_others", None)  # with one load it may say what a second shows
    more = listed | {kind: [*listed.get(kind, []), load]}
    one, two = (run("circuit", **asked, **texts(x)) for x in (listed, more))
    kept = {c.criterion.name for c in one.criteria}
    for judged in two.criteria:
        if judged.criterion.name in kept:
            before = one.criterion(judged.criterion.name).verdict
            assert judged.verdict.rank >= before.rank or before is Verdict.CANNOT_TELL


@BOUNDED
@given(circuits, loads)
def test_a_longer_run_never_improves_a_circuit(
    asked: dict[str, str], listed: dict[str, list[float]]
) -> None:
    short = {k: v for k, v in listed.items() if k in ("plug_loads", "fastened_loads")}
    assume(short)
    long = {f"long_{kind}": of for kind, of in short.items()}
    one, two = (run("circuit", **asked, **texts(x)) for x in (short, long))
    assert rank(two) >= rank(one)


@BOUNDED
@given(circuits, loads, st.sampled_from(GAUGES), st.sampled_from(GAUGES), st.integers(1, 12))
def test_thinner_wire_never_improves_a_circuit(
    asked: dict[str, str], listed: dict[str, list[float]], one: str, two: str, count: int
) -> None:
    thick, thin = sorted((one, two), key=int)
    asked |= texts(listed) | {"ambient": asked.get("ambient", "30 C"), "conductors": str(count)}
    kinder, harder = (
        run("circuit", **asked | {"building_wire": f"{g} AWG"}) for g in (thick, thin)
    )
    assert rank(harder) >= rank(kinder)


@BOUNDED
@given(
    st.sampled_from([15, 20, 25, 30, 40, 50]),
    st.sampled_from([15, 20, 25, 30, 40, 50]),
    st.sampled_from(GAUGES),
    st.sampled_from(["60 C", "75 C", "90 C"]),
    st.integers(-10, 80),
    st.integers(1, 12),
)
def test_a_larger_breaker_never_improves_the_breaker_on_its_wire(
    one: int, two: int, gauge: str, column: str, heat: int, count: int
) -> None:
    asked = {
        "current": "1 A",
        "run_time": "1 h",
        "building_wire": f"{gauge} AWG",
        "ambient": f"{heat} C",
    }
    asked |= {"insulation_class": column, "conductors": str(count)}
    found = [run("breaker", **asked, breaker=f"{b} A") for b in sorted((one, two))]
    names = [{c.criterion.name for c in f.criteria} for f in found]
    assume("breaker on this wire" in names[0] & names[1])  # past the table's end none is judged
    small, large = (f.criterion("breaker on this wire").verdict.rank for f in found)
    assert large >= small


@BOUNDED
@given(
    st.sampled_from([15.0, 12.5, 21.0, 16.0]),
    st.sampled_from(NEAR),
    st.sampled_from(GAUGES),
    st.sampled_from(["15 A", "20 A", "25 A"]),
    st.sampled_from([None, "1 h", "3 h"]),
)
def test_the_circuit_that_is_named_carries_the_load(
    amps_: float, by: float, gauge: str, breaker: str, run_time: str | None
) -> None:
    """What is named is enough, and never a larger breaker on the wire that is there."""
    asked: dict[str, Any] = {"current": f"{amps_ * by:.17f} A", "ambient": "30 C", "conductors": 2}
    if run_time:
        asked["run_time"] = run_time
    asked |= {"insulation_class": "60 C", "termination_temperature": "60 C"}
    finding = run("breaker", **asked, breaker=breaker, building_wire=f"{gauge} AWG")
    named = [a.text for a in finding.answers if a.name == "circuit that carries it"]
    failed = {c.criterion.name for c in finding.criteria if c.verdict is Verdict.FAIL}
    loads_failed = failed & {
        "load on the breaker",
        "load on the wire",
        "load on the wire, corrected",
    }
    assert bool(named) == bool(loads_failed)
    if named:
        rating, _, rest = named[0].partition(" A on ")
        wire = rest.partition(" copper")[0]
        if not rest:  # no thicker wire than is there: a larger breaker is not named
            assert named == ["a circuit of its own: a job for an electrician"]
            wire, rating = f"{gauge} AWG", str(OWN_BREAKER[gauge])
        else:
            assert int(wire.partition(" ")[0]) < int(gauge)
        there = run("breaker", **asked, breaker=f"{rating} A", building_wire=wire)
        for name in ("load on the breaker", "load on the wire", "breaker on this wire"):
            assert there.criterion(name).verdict != Verdict.FAIL
        assert there.criterion("breaker on this wire").verdict == Verdict.PASS


RATINGS = [6, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60]
motors = st.one_of(
    st.fixed_dictionaries(
        {
            "motor_kind": st.just("motor"),
            "horsepower": st.sampled_from(["1/6 hp", "1/2 hp", "3/4 hp", "2 hp"]),
            "nameplate_voltage": st.sampled_from(["115 V", "230 V"]),
            "motor_device": st.sampled_from(
                ["inverse-time breaker", "time-delay fuse", "nontime-delay fuse"]
            ),
        }
    ),
    st.fixed_dictionaries(
        {
            "motor_kind": st.just("compressor"),
            "rated_load_current": st.sampled_from(["1.6 A", "8.6 A", "15 A", "20 A", "21.43 A"]),
        },
        optional={"other_current": st.sampled_from(["0 A", "6 A"])},
    ),
)


PLATES = st.fixed_dictionaries(  # what the plate of a motor may say beside its table
    {}, optional={"plate_governs": st.sampled_from(["yes", "no"])}
).flatmap(
    lambda said: st.sampled_from(["4 A", "8.6 A", "14 A", "20 A"]).map(
        lambda amps: {**said, "full_load_current": amps}
    )
)


HALF_HP_FUSE = {
    "motor_kind": "motor",
    "horsepower": "1/2 hp",
    "nameplate_voltage": "115 V",
    "motor_device": "time-delay fuse",
}


@BOUNDED
@given(
    motors,
    st.just({}) | PLATES,
    st.sampled_from(RATINGS),
    st.sampled_from(RATINGS),
    st.sampled_from([None, "yes", "no"]),
)
@example(HALF_HP_FUSE, {"full_load_current": "4 A"}, 15, 25, "yes").via(
    "the limit was that of the table for 15 A and that of the plate for 25 A"
)
def test_a_larger_device_never_improves_a_motor_circuit(
    asked: dict[str, str], plate: dict[str, str], one: int, two: int, will_not_start: str | None
) -> None:
    asked |= plate
    if will_not_start:
        asked["will_not_start"] = will_not_start
    found = [
        run("motor-circuit", **asked, fastened_in_place="yes", breaker=f"{b} A")
        for b in sorted((one, two))
    ]
    small, large = (f.criterion("device on this motor circuit") for f in found)
    limits = [j.criterion.limit for j in (small, large) if j.criterion.limit is not None]
    assert large.verdict.rank >= small.verdict.rank or small.verdict is Verdict.MARGINAL
    assert len(set(limits)) <= 1


@BOUNDED
@given(
    motors,
    st.just({}) | PLATES,
    st.sampled_from((*THIN, *GAUGES)),
    st.sampled_from((*THIN, *GAUGES)),
    st.sampled_from(["60 C", "90 C"]),
    st.tuples(st.integers(-10, 80), st.integers(-10, 80)),
)
def test_thinner_wire_or_more_heat_never_improves_a_motor_circuit(
    asked: dict[str, str],
    plate: dict[str, str],
    one: str,
    two: str,
    column: str,
    heat: tuple[int, int],
) -> None:
    asked |= {"fastened_in_place": "yes", "conductors": "3", "insulation_class": column}
    asked |= plate | {"termination_temperature": column}
    thick, thin = sorted((one, two), key=int)
    cool, hot = sorted(heat)
    kinder = run("motor-circuit", **asked, building_wire=f"{thick} AWG", ambient=f"{cool} C")
    harder = run("motor-circuit", **asked, building_wire=f"{thin} AWG", ambient=f"{hot} C")
    assert rank(harder) >= rank(kinder)


@BOUNDED
@given(
    st.sampled_from(["1/4 hp", "1/2 hp"]),
    st.lists(st.sampled_from([5.8, 9.8]) | st.floats(2.5, 40), min_size=2, max_size=2),
    st.sampled_from(NEAR),
    st.sampled_from([None, "no"]),
    st.sampled_from(GAUGES),
)
def test_more_amps_on_the_plate_never_improve_a_motors_wire(
    power: str, plates: list[float], by: float, governs: str | None, gauge: str
) -> None:
    asked: dict[str, Any] = {"motor_kind": "motor", "fastened_in_place": "yes"}
    asked |= {"horsepower": power, "nameplate_voltage": "115 V", "building_wire": f"{gauge} AWG"}
    asked |= {"ambient": "25 C", "conductors": 2}
    if governs:
        asked["plate_governs"] = governs
    few, more = sorted(a * by for a in plates)
    one, two = (run("motor-circuit", **asked, full_load_current=f"{a:.17f} A") for a in (few, more))
    assert rank(two) >= rank(one)


@BOUNDED
@given(circuits, loads, st.sampled_from([0.01, 0.05, 0.2]), st.floats(0, 1))
def test_no_point_of_a_circuits_band_is_judged_against_it(
    asked: dict[str, str], listed: dict[str, list[float]], share: float, where: float
) -> None:
    """The loads of one list move together; a band that passes holds no point that does not."""
    kind = sorted(listed)[0]
    banded = texts(listed) | {kind: [f"{a:.6f} A ±{a * share:.6f} A" for a in listed[kind]]}
    whole = run("circuit", **asked, **banded)
    at = [a + (2 * where - 1) * a * share * 0.999 for a in listed[kind]]
    assume(max(at) < 99)
    point = run("circuit", **asked, **texts(listed | {kind: at}))
    passes = (Verdict.PASS, Verdict.MARGINAL)
    if whole.verdict in passes:
        assert point.verdict in passes
    if whole.verdict is Verdict.FAIL:
        assert rank(point) >= Verdict.CANNOT_TELL.rank
