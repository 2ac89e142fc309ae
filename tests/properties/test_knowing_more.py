"""Saying more of a joint, with all of it inside its limits, never lowers a pass."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import Verdict

BOUNDED = settings(deadline=None, max_examples=60)

Texts = st.SearchStrategy[Any]


def up_to(high: float, unit: str, low: float = 0.0) -> Texts:
    return st.floats(low, high).map(lambda v: f"{v:.6f} {unit}")


# the whole of an honest run, and what may be said beside it that is good. NEC Table 400.5(A)(1),
# column B: a cord of 16 AWG carries 13 A; UL 310: 80 % of 10 A on 6.3 mm; UL 486: 15 A at 14 AWG
COOL = {"wire_temperature": "105 C", "terminal_temperature": "105 C", "place_temperature": "60 C"}
STRIP = {"wire": ["16 AWG"], "style": "closed", "barrel_length": "6.5 mm"}
SUBSTITUTE = {f"{who}_wire": "16 AWG" for who in ("old", "new")}
SUBSTITUTE |= {f"{who}_wire_temperature": "105 C" for who in ("old", "new")}
SUBSTITUTE |= {f"{who}_wire_voltage": "600 V" for who in ("old", "new")}
SUBSTITUTE |= {"old_oil_resistant": "no", "old_flame_rated": "no"}
WHOLE: dict[str, list[tuple[dict[str, Any], dict[str, Texts]]]] = {
    "splice": [
        (
            {"wire": ["16 AWG"], "barrel": "16-14 AWG"} | COOL,
            {
                "connector": st.sampled_from(["butt", "ring", "fork"]),
                "listed_for": st.sampled_from(["stranded", "either", "combination"]),
                "wire_limit": st.integers(1, 12).map(str),
                "current": up_to(13, "A"),
                "tab_width": st.sampled_from(["0.110 in", "6.3 mm"]),
                "circuit_voltage": up_to(300, "V"),
                "terminal_voltage": up_to(600, "V", low=300),
                "insulation_diameter": up_to(3.4, "mm", low=1.8),
                "insulation_limit": up_to(9, "mm", low=3.4),
            },
        ),
        (
            {"wire": ["16 AWG"], "barrel": "16-14 AWG", "connector": "push-on"} | COOL,
            {"current": up_to(4, "A"), "tab_width": st.sampled_from(["2.8 mm", "0.250 in"])},
        ),
        (
            {"wire": ["1.5 mm2"], "barrel": "1.5-2.5 mm2", "connector": "push-on"}
            | {"tab_width": "6.3 mm"}
            | COOL,
            {"current": up_to(8, "A")},
        ),
        (
            {"wire": ["14 AWG"] * 2, "barrel": "4000-13000 cmil", "wire_limit": "3"} | COOL,
            {"current": up_to(15, "A")},
        ),
    ],
    "tab": [
        (
            {"tab_width": "0.250 in", "terminal_width": "6.3 mm", "wire": "16 AWG"}
            | {"current": "8 A"},
            {
                "tab_thickness": st.sampled_from(["0.032 in", "0.8 mm"]),
                "terminal_thickness": st.sampled_from(["0.032 in", "0.8 mm"]),
            },
        ),
        (
            {"tab_width": "5.2 mm", "terminal_width": "5.2 mm", "wire": "16 AWG", "current": "8 A"},
            {"tab_thickness": up_to(1.2, "mm", low=0.4)},  # none is published for this width
        ),
    ],
    "heat-rating": [
        (
            COOL,
            {
                "near_heater": st.sampled_from(["yes", "no"]),
                "terminal_material": st.sampled_from(["vinyl", "nickel-plated steel"]),
                "sleeve_temperature": up_to(500, "C", low=80),
            },
        ),
        (COOL, {"sleeve_material": st.sampled_from(["PVC tubing", "polyolefin tubing"])}),
    ],
    "strip": [
        (
            STRIP | {"stripped": "7.5 mm"},
            {"window_length": up_to(20, "mm")},
        ),
    ],
    "ring": [
        (
            {"stud": "M6", "wire": "14 AWG", "hole": "6.5 mm"},
            {"stud_terminals": st.integers(1, 4).map(str)},
        ),
    ],
    "pull": [
        (
            {"wire": "18 AWG", "terminal": terminal, "force": "40 lbf"},
            {
                "pull_standard": st.sampled_from(["ul-486a", "ul-310", "as7928"]),
                "listed_for": st.sampled_from(["stranded", "either", "combination"]),
            },
        )
        for terminal in ("ring", "push-on", "butt")
    ],
    "strands": [
        (
            {"wire": "16 AWG", "cut_strands": "0", "nicked_strands": "0"},
            {"strands": st.sampled_from(["19", "26"])},
        ),
    ],
    "substitute": [
        (
            SUBSTITUTE,
            {
                "new_oil_resistant": st.sampled_from(["yes", "no"]),
                "new_flame_rated": st.sampled_from(["yes", "no"]),
            },
        ),
    ],
}
CASES = [pytest.param(name, base, id=name) for name, bases in WHOLE.items() for base in bases]


def passes(name: str, typed: Mapping[str, Any]) -> Verdict | None:
    return wirecalc.run(name, **typed).verdict


@pytest.mark.parametrize(("name", "base"), CASES)
def test_the_whole_of_an_honest_run_passes(
    name: str, base: tuple[dict[str, Any], dict[str, Texts]]
) -> None:
    assert passes(name, base[0]) is Verdict.PASS


@pytest.mark.parametrize(("name", "base"), CASES)
@BOUNDED
@given(st.data())
def test_more_that_is_good_never_lowers_it(
    name: str, base: tuple[dict[str, Any], dict[str, Texts]], data: st.DataObject
) -> None:
    whole, more = base
    chosen = data.draw(st.sets(st.sampled_from(sorted(more)), min_size=1))
    typed = {n: data.draw(more[n], label=n) for n in sorted(chosen)}
    needs: dict[str, Callable[[], bool]] = {
        "terminal_voltage": lambda: "circuit_voltage" in typed,
        "insulation_limit": lambda: "insulation_diameter" in typed,
        "terminal_thickness": lambda: "tab_thickness" in typed,
    }
    typed = {n: v for n, v in typed.items() if n not in needs or needs[n]()}
    assert passes(name, whole | typed) is Verdict.PASS, typed


@BOUNDED
@given(
    st.sampled_from(["18 AWG", "16 AWG", "14 AWG", "1.0 mm2", "2.5 mm2"]),
    st.sampled_from(["0.110 in", "4.8 mm", "0.250 in"]),
    st.floats(0.1, 40),
)
def test_a_tab_and_a_splice_judge_a_current_alike(wire: str, width: str, amps: float) -> None:
    typed = {"tab_width": width, "current": f"{amps:.6f} A"}
    tab = wirecalc.run("tab", wire=wire, terminal_width=width, **typed)
    splice = wirecalc.run(
        "splice", wire=[wire], barrel="500-9000 cmil", connector="push-on", **typed, **COOL
    )
    names = ("current on the tab", "current against the test current")
    found = [
        {c.criterion.name: c.verdict for c in f.criteria if c.criterion.name in names}
        for f in (tab, splice)
    ]
    assert found[0]
    assert found[0] == found[1]
