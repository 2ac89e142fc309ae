"""The run to a load: longer, thinner, hotter, more current or lower volts never improve a verdict.

Power factor is left out: the reactance of a thick wire can make a drop of any power factor the
largest, so nothing is claimed of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import BadInput, Finding
from wirecalc.typed.wires import GAUGES, gauge_number

BOUNDED = settings(deadline=None, max_examples=60)
METRIC = ["25 mm2", "10 mm2", "4 mm2", "3 mm2", "2.5 mm2", "1.5 mm2"]  # thick to thin
BUILDING = [f"{g} AWG" for g in GAUGES if gauge_number(g) <= 14]
CORDS = [f"{g} AWG" for g in GAUGES if 8 <= gauge_number(g) <= 20]
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.97, 1.03)


def full(number: float, unit: str) -> str:
    return f"{number:.12f} {unit}"


def ranks(name: str, kinder: dict[str, Any], harder: dict[str, Any]) -> tuple[int, int]:
    found = []
    for typed in (kinder, harder):
        try:
            finding = wirecalc.run(name, **{n: v for n, v in typed.items() if v is not None})
        except BadInput:
            assume(False)
        found.append(max(rank_of(finding)))
    return found[0], found[1]


def rank_of(finding: Finding) -> Iterator[int]:
    """Yield the ranks of what is judged: that an LRA looks odd, and that a meter read above what
    the wire lets through, are questions about a reading."""
    for judged in finding.criteria:
        if judged.criterion.name == "LRA beside the rated current":
            continue
        assume("were read, and this wire" not in judged.reason)
        yield judged.verdict.rank


def lengths(high: float) -> st.SearchStrategy[float]:
    return st.sampled_from([60.0, 50.0, 100.0]) | st.floats(1, high)


NUMBERS = {
    "run_length": (lengths(400), "ft"),
    "cord_length": (lengths(300), "ft"),
    "extension_length": (lengths(300), "ft"),
    "current": (st.floats(0.5, 40), "A"),
    "other_current": (st.floats(0, 30), "A"),
    "conductor_temperature": (st.floats(-20, 110), "C"),
    "locked_rotor_current": (st.floats(3, 80), "A"),
    "voltage_at_rest": (st.floats(90, 140), "V"),
    "voltage_at_start": (st.sampled_from([103.5, 103.4]) | st.floats(80, 130), "V"),
}
LOWER_IS_WORSE = ("voltage_at_rest", "voltage_at_start")
OF = {
    "drop": ("run_length", "cord_length", "current", "other_current", "conductor_temperature"),
    "dip": (
        *("run_length", "cord_length", "locked_rotor_current", "other_current"),
        *("conductor_temperature", "voltage_at_rest", "voltage_at_start"),
    ),
    "extension": (
        *("run_length", "extension_length", "locked_rotor_current", "other_current", "current"),
        *("conductor_temperature", "voltage_at_rest", "voltage_at_start"),
    ),
}
LEFT_OUT = ("voltage_at_start", "other_current")  # optional numbers that may be left out


@st.composite
def jobs(draw: st.DrawFn, name: str) -> dict[str, Any]:
    """Draw a complete run of a calculation, numbers as floats."""
    drawn: dict[str, Any] = {n: draw(NUMBERS[n][0]) for n in OF[name]}
    for optional in LEFT_OUT:
        if optional in drawn and draw(st.booleans()):
            del drawn[optional]
    drawn["building_wire"] = draw(st.sampled_from(BUILDING) | st.sampled_from(METRIC))
    cord = "extension_cord" if name == "extension" else "cord"
    drawn[cord] = draw(st.sampled_from(CORDS))
    drawn["nameplate_voltage"] = "115 V"
    if name == "extension":
        drawn |= {
            "maker_allows": draw(st.sampled_from(["yes", "not stated"])),
            "cord_ambient": "25 C",
        }
        drawn |= {"grounding": "yes", "cord_rating": "15 A", "cord_conductors": "2"}
    elif draw(st.booleans()):
        del drawn["cord"], drawn["cord_length"]
    return drawn


def typed(drawn: dict[str, Any]) -> dict[str, Any]:
    return {n: full(v, NUMBERS[n][1]) if n in NUMBERS else v for n, v in drawn.items()}


@BOUNDED
@given(st.data(), st.sampled_from(list(OF)))
def test_a_worse_number_never_improves_a_verdict(data: st.DataObject, name: str) -> None:
    drawn = data.draw(jobs(name))
    which = data.draw(st.sampled_from([n for n in OF[name] if n in drawn]))
    scale = data.draw(st.sampled_from(NEAR) | st.floats(0.3, 3))
    low, high = sorted((drawn[which], drawn[which] * scale))
    kinder, harder = (high, low) if which in LOWER_IS_WORSE else (low, high)
    one, two = ranks(name, typed(drawn | {which: kinder}), typed(drawn | {which: harder}))
    assert two >= one, which


@BOUNDED
@given(
    st.data(),
    st.sampled_from(list(OF)),
    st.sampled_from(["building_wire", "cord", "extension_cord"]),
)
def test_a_thinner_wire_never_improves_a_verdict(
    data: st.DataObject, name: str, which: str
) -> None:
    drawn = data.draw(jobs(name))
    assume(which in drawn)
    sizes = data.draw(st.sampled_from([BUILDING, METRIC])) if which == "building_wire" else CORDS
    two = sorted(data.draw(st.sampled_from(sizes)) for _ in range(2))
    thick, thin = sorted(two, key=sizes.index)
    kinder, harder = ranks(name, typed(drawn | {which: thick}), typed(drawn | {which: thin}))
    assert harder >= kinder


@BOUNDED
@given(st.data(), st.sampled_from(["drop", "dip"]))
def test_a_cord_never_improves_a_verdict(data: st.DataObject, name: str) -> None:
    drawn = data.draw(jobs(name))
    assume("cord" in drawn)
    without = {n: v for n, v in drawn.items() if n not in ("cord", "cord_length")}
    kinder, harder = ranks(name, typed(without), typed(drawn))
    assert harder >= kinder


@BOUNDED
@given(
    st.floats(0.5, 40),
    st.floats(0, 40),
    st.sampled_from(BUILDING),
    lengths(300),
    st.floats(0, 40),
)
def test_a_neutral_shared_with_the_other_leg_never_drops_more(
    current: float, other_leg: float, wire: str, length: float, other: float
) -> None:
    """Alone on its leg a load loses the most; the other leg's current relieves the neutral."""
    alone = {"current": full(current, "A"), "nameplate_voltage": "120 V", "building_wire": wire}
    alone |= {"run_length": full(length, "ft"), "other_current": full(other, "A")}
    shared = alone | {"system": "three-wire", "other_leg_current": full(other_leg, "A")}
    try:
        relieved, full_neutral = (
            wirecalc.run("drop", **asked).criterion("drop while running").verdict.rank
            for asked in (shared, alone)
        )
    except BadInput:
        assume(False)
        raise
    assert full_neutral >= relieved


@BOUNDED
@given(
    *(st.floats(0.5, 40) for _ in range(3)),
    st.sampled_from(BUILDING),
    lengths(300),
)
def test_more_current_of_the_other_leg_never_improves_it(
    current: float, one: float, two: float, wire: str, length: float
) -> None:
    found = []
    for there in sorted((one, two)):
        try:
            finding = wirecalc.run(
                "drop",
                current=full(current, "A"),
                nameplate_voltage="120 V",
                system="three-wire",
                building_wire=wire,
                run_length=full(length, "ft"),
                other_leg_current=full(there, "A"),
            )
        except BadInput:
            assume(False)
            raise
        found.append(finding.criterion("drop of the other leg").verdict.rank)
    assert found[0] <= found[1]
