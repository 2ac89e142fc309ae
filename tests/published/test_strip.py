"""Strip lengths worked by hand from published rules."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import tables

from .records import independent, practice, source

LONG_ENOUGH, SHORT_ENOUGH = "strip length, lower limit", "strip length, upper limit"


def lengths(finding):
    names = ("least strip length", "nominal strip length", "most strip length")
    return tuple(finding.figure(name).figure.value for name in names)


@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@practice("the wire ends flush to 1/32 in past the barrel")
@independent("barrel + gap + brush, by hand")
@pytest.mark.parametrize(
    ("wire", "barrel", "least", "most"),
    [
        # gap 0.25 to 0.75 mm for 20 AWG and smaller, 0.25 to 1.25 mm for 18 AWG and larger; brush
        # 0 to 0.8 mm
        ("22 AWG", 6.5, 6.75, 8.05),  # 6.5 + 0.25; 6.5 + 0.75 + 0.8
        ("20 AWG", 6.5, 6.75, 8.05),
        ("18 AWG", 6.5, 6.75, 8.55),  # 6.5 + 1.25 + 0.8
        ("14 AWG", 6.5, 6.75, 8.55),
        ("18 AWG", 5.0, 5.25, 7.05),
        ("26x34 AWG", 6.5, 6.75, 8.05),  # a 20 AWG build
    ],
)
def test_closed_barrel_by_hand(wire, barrel, least, most):
    finding = wirecalc.run("strip", wire=[wire], style="closed", barrel_length=f"{barrel} mm")
    expected = (least, (least + most) / 2, most)
    assert lengths(finding) == pytest.approx(expected, abs=1e-9)


@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@practice("the wire ends flush to 1/32 in past the barrel")
@independent("6.75 / 25.4 = 0.2657 in up, 8.55 / 25.4 = 0.3366 in down")
@pytest.mark.parametrize(
    ("given", "text"),
    # the hand-worked ends above, in mm
    [
        ({"barrel_length": "6.5 mm"}, "6.75 to 8.55 mm (0.266 to 0.336 in)"),
        (
            {"barrel_length": "6.5 mm ±0.1 mm"},
            "6.75 to 8.55 mm (0.266 to 0.336 in) (at the middle of the meter's band)",
        ),
    ],
)
def test_the_answer_stands_first_also_where_nothing_was_stripped(given, text):
    finding = wirecalc.run("strip", wire=["18 AWG"], style="closed", **given)
    assert [(a.name, a.text) for a in finding.answers] == [("strip", text)]
    assert finding.verdict is None


@source("A how-to text on twist-on connectors", "undated", "strip lengths", seen="one copy")
def test_a_twist_on_is_answered_with_about():
    (said,) = wirecalc.run("strip", wire=["18 AWG"] * 2, style="twist-on").answers
    assert said.text == "about 12.7 mm (0.5 in)"
    assert said.evidence_for == ("the connector's own instruction governs",)


@source(
    "A component maker's application specification",
    "undated",
    "4.3 A, wire location and brush",
    seen="one copy",
)
def test_no_answer_of_an_open_barrel_whose_window_is_not_known():
    finding = wirecalc.run("strip", wire=["18 AWG"], style="open", barrel_length="6.5 mm")
    assert finding.answers == ()


@source(
    "Stranded-wire charts of wire makers",
    "undated",
    "builds of 20 AWG",
    seen="two or three compared",
)
@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@practice("the wire ends flush to 1/32 in past the barrel")
@pytest.mark.parametrize(
    "build", ["7/28", "10/30", "19/32", "26/34", "41/36"], ids="20 AWG of {}".format
)
def test_every_standard_20_awg_build_has_the_narrow_gap(build):
    # 19/32 holds 18 % more copper than 20 AWG and is 20 AWG
    wire = build.replace("/", "x") + " AWG"
    finding = wirecalc.run("strip", wire=[wire], style="closed", barrel_length="6.5 mm")
    assert lengths(finding)[2] == pytest.approx(6.5 + 0.75 + 0.8, abs=1e-9)


@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@independent("25.4 mm to the inch, exact by its definition")
@pytest.mark.parametrize(
    ("gauge", "rule", "inches"), [("20", "NASA1", 0.030), ("18", "NASA2", 0.050)]
)
def test_nasa_gap_in_inches(gauge, rule, inches):
    # printed in both units: 0.010 to 0.030 in and 0.010 to 0.050 in, the mm rounded to 0.05
    row = tables.load("strip-rules").row(rule_id=rule)
    assert row.number("min_mm") == pytest.approx(0.010 * 25.4, abs=0.025)
    assert row.number("max_mm") == pytest.approx(inches * 25.4, abs=0.025)


@source("US Navy NEETS Module 4", "edition not stated", "p. 2-21", seen="one copy")
@source(
    "Component makers' application specifications",
    "undated",
    "wire location",
    seen="two of one maker",
)
@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@practice("the wire ends flush to 1/32 in past the barrel")
def test_a_preinsulated_terminal_has_no_gap_where_nasa_asks_for_one():
    # the insulation butts against the barrel of a pre-insulated terminal; NASA wants 0.25 mm to be
    # seen
    given = {"wire": ["18 AWG"], "barrel_length": "6.5 mm"}
    closed = wirecalc.run("strip", style="closed", **given)
    insulated = wirecalc.run("strip", style="closed-insulated", **given)
    assert lengths(insulated) == pytest.approx((6.5, 6.9, 7.3), abs=1e-9)  # 6.5 + 0 to 0.8
    assert lengths(closed)[0] - lengths(insulated)[0] == pytest.approx(0.25, abs=1e-9)


@source(
    "A component maker's application specification",
    "undated",
    "4.3 A, wire location and brush",
    seen="one copy",
)
@independent("C + br + w/2, from C + least br to C + greatest br + w, by hand")
@pytest.mark.parametrize(
    ("crimp", "window", "least", "nominal", "most"),
    [
        # br 0.1 to 0.5 mm
        (3.0, 1.0, 3.1, 3.8, 4.5),  # nominal 3 + 0.3 + 0.5
        (4.2, 1.6, 4.3, 5.3, 6.3),  # nominal 4.2 + 0.3 + 0.8
        (2.5, 0.0, 2.6, 2.8, 3.0),
    ],
)
def test_open_barrel_by_hand(crimp, window, least, nominal, most):
    finding = wirecalc.run(
        "strip",
        wire=["18 AWG"],
        style="open",
        barrel_length=f"{crimp} mm",
        window_length=f"{window} mm",
    )
    assert lengths(finding) == pytest.approx((least, nominal, most), abs=1e-9)


@source(
    "A component maker's application specification",
    "undated",
    "4.3 A, wire location and brush",
    seen="one copy",
)
def test_open_barrel_without_its_window_cannot_be_told():
    given = {"wire": ["18 AWG"], "style": "open", "barrel_length": "3 mm"}
    assert wirecalc.run("strip", **given).verdict == "cannot tell"


@source("An equipment assembly instruction", "undated", "ferrule lengths", seen="one copy")
@source(
    "A component maker's application specification",
    "undated",
    "3.5 G, end stop",
    seen="one copy",
)
@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@pytest.mark.parametrize(
    ("style", "barrel", "least", "most"),
    [
        # ferrule: 10 mm sleeve without collar 10 mm, with a collar 12 mm; stop: depth + NASA's gap
        # of 18 AWG
        ("ferrule", 10.0, 10.0, 12.0),
        ("stop", 8.0, 8.0, 9.25),
    ],
)
def test_ferrule_and_stop(style, barrel, least, most):
    given = {"wire": ["18 AWG"], "barrel_length": f"{barrel} mm"}
    finding = wirecalc.run("strip", style=style, **given)
    found = lengths(finding)
    assert (found[0], found[2]) == pytest.approx((least, most), abs=1e-9)


@source("A how-to text on twist-on connectors", "undated", "strip lengths", seen="one copy")
@pytest.mark.parametrize(
    ("count", "least", "most"),
    [
        # 1/2 in for two wires, 3/4 to 1 in for more
        (2, 0.5, 0.5),
        (3, 0.75, 1.0),
    ],
)
def test_twist_on_connector(count, least, most):
    finding = wirecalc.run("strip", wire=["14 AWG solid"] * count, style="twist-on")
    found = [finding.figure(f"{end} strip length, about").figure.value for end in ("least", "most")]
    assert found[0] / 25.4 == pytest.approx(least, abs=0.5 * 0.1 / 25.4)  # to 0.1 mm
    assert found[1] / 25.4 == pytest.approx(most, abs=0.5 * 0.1 / 25.4)


@practice("the instruction of a twist-on connector governs")
def test_twist_on_connector_is_judged_by_its_own_instruction_only():
    given = {"wire": ["14 AWG solid"] * 2, "style": "twist-on"}
    assert wirecalc.run("strip", **given, stripped="12.7 mm").verdict == "cannot tell"


@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@independent("25.4 mm to the inch, exact by its definition")
def test_lengths_are_given_in_inches_too():
    finding = wirecalc.run("strip", wire=["18 AWG"], style="closed", barrel_length="1/4 in")
    least = finding.figure("least strip length").figure
    assert least.value == pytest.approx(6.35 + 0.25, abs=1e-9)
    assert {unit: value for value, unit in least.also}["in"] == pytest.approx(6.6 / 25.4)


@source("NASA-STD-8739.4", "Change 6", "10.1.7 b, insulation clearance", seen="two copies")
@practice("the wire ends flush to 1/32 in past the barrel")
@practice("no insulation in the barrel: shorter than the barrel fails")
@pytest.mark.parametrize(
    ("stripped", "verdict"),
    [
        # barrel 6.5 mm of 18 AWG: insulation in the barrel under 6.5, advised 6.75 to 8.55 mm
        ("6.4 mm", "fail"),
        ("6.6 mm", "marginal"),
        ("7.5 mm", "pass"),
        ("8.5 mm", "pass"),
        ("8.6 mm", "marginal"),
        ("6.5 mm ±0.1 mm", "cannot tell"),
    ],
)
def test_a_measured_strip_length(stripped, verdict):
    finding = wirecalc.run(
        "strip", wire=["18 AWG"], style="closed", barrel_length="6.5 mm", stripped=stripped
    )
    assert finding.verdict == verdict
