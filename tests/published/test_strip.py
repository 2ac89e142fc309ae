"""Strip lengths worked by hand from published rules."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import tables

GAP = "NASA-STD-8739.4 Change 6, 10.1.7 b, insulation clearance (two copies)"
BRUSH = "wire flush to 1/32 in past the barrel: common practice, no source"
OPEN = "a component maker's application specification, undated, wire location and brush (one copy)"
FERRULE = "an equipment assembly instruction, undated, ferrule lengths (one copy)"
STOP = "component makers' application specifications, undated, end stop (one copy)"
TWIST_ON = "a how-to text on twist-on connectors, undated, strip lengths (one copy)"
CHARTS = "wire makers' stranded-wire charts, undated (two or three compared, table strandings)"
INCH = "25.4 mm to the inch, exact: NIST SP 811 (2008), appendix B"

LONG_ENOUGH, SHORT_ENOUGH = "strip length, lower limit", "strip length, upper limit"


def lengths(finding):
    names = ("least strip length", "nominal strip length", "most strip length")
    return tuple(finding.figure(name).figure.value for name in names)


@pytest.mark.parametrize(
    ("wire", "barrel", "least", "most"),
    [
        # L = barrel + gap + brush. Gap 0.25 to 0.75 mm for 20 AWG and smaller, 0.25 to 1.25 mm for
        # 18 AWG and larger: NASA-STD-8739.4 Change 6, 10.1.7 b, two copies. Brush flush to 0.8 mm
        # (1/32 in): common practice, no source.
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


@pytest.mark.parametrize(
    ("given", "text"),
    # the hand-worked ends above, in mm; 6.75 / 25.4 = 0.2657 up, 8.55 / 25.4 = 0.3366 down
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
    assert [(a.name, a.text) for a in finding.answers] == [("strip", text)], (GAP, BRUSH, INCH)
    assert finding.verdict is None


def test_a_twist_on_is_answered_with_about():
    (said,) = wirecalc.run("strip", wire=["18 AWG"] * 2, style="twist-on").answers
    assert said.text == "about 12.7 mm (0.5 in)", TWIST_ON
    assert said.evidence_for == ("the connector's own instruction governs",)


def test_no_answer_of_an_open_barrel_whose_window_is_not_known():
    finding = wirecalc.run("strip", wire=["18 AWG"], style="open", barrel_length="6.5 mm")
    assert finding.answers == ()


@pytest.mark.parametrize(
    "build", ["7/28", "10/30", "19/32", "26/34", "41/36"], ids="20 AWG of {}".format
)
def test_every_standard_20_awg_build_has_the_narrow_gap(build):
    # wire makers' stranding charts; 19/32 holds 18 % more copper than 20 AWG and is 20 AWG
    wire = build.replace("/", "x") + " AWG"
    finding = wirecalc.run("strip", wire=[wire], style="closed", barrel_length="6.5 mm")
    assert lengths(finding)[2] == pytest.approx(6.5 + 0.75 + 0.8, abs=1e-9), (CHARTS, GAP, BRUSH)


@pytest.mark.parametrize(
    ("gauge", "rule", "inches"), [("20", "NASA1", 0.030), ("18", "NASA2", 0.050)]
)
def test_nasa_gap_in_inches(gauge, rule, inches):
    # printed in both units: 0.010 to 0.030 in and 0.010 to 0.050 in, the mm rounded to 0.05
    row = tables.load("strip-rules").row(rule_id=rule)
    assert row.number("min_mm") == pytest.approx(0.010 * 25.4, abs=0.025)
    assert row.number("max_mm") == pytest.approx(inches * 25.4, abs=0.025)


def test_a_preinsulated_terminal_has_no_gap_where_nasa_asks_for_one():
    # application specifications and US Navy NEETS Module 4 (p. 2-21): the insulation butts
    # against the barrel of a pre-insulated terminal; NASA wants 0.25 mm to be seen
    given = {"wire": ["18 AWG"], "barrel_length": "6.5 mm"}
    closed = wirecalc.run("strip", style="closed", **given)
    insulated = wirecalc.run("strip", style="closed-insulated", **given)
    assert lengths(insulated) == pytest.approx((6.5, 6.9, 7.3), abs=1e-9)  # 6.5 + 0 to 0.8
    assert lengths(closed)[0] - lengths(insulated)[0] == pytest.approx(0.25, abs=1e-9)


@pytest.mark.parametrize(
    ("crimp", "window", "least", "nominal", "most"),
    [
        # L = C + br + w/2, from C + least br to C + greatest br + w; br 0.1 to 0.5 mm: a component
        # maker's application specification, one copy
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
    assert lengths(finding) == pytest.approx((least, nominal, most), abs=1e-9), OPEN


def test_open_barrel_without_its_window_cannot_be_told():
    given = {"wire": ["18 AWG"], "style": "open", "barrel_length": "3 mm"}
    assert wirecalc.run("strip", **given).verdict == "cannot tell"


@pytest.mark.parametrize(
    ("style", "barrel", "least", "most"),
    [
        # ferrule: an assembly instruction, one copy: 10 mm sleeve without collar 10 mm, with a
        # collar 12 mm; stop: a maker's specification, depth + NASA's gap of 18 AWG
        ("ferrule", 10.0, 10.0, 12.0),
        ("stop", 8.0, 8.0, 9.25),
    ],
)
def test_ferrule_and_stop(style, barrel, least, most):
    given = {"wire": ["18 AWG"], "barrel_length": f"{barrel} mm"}
    finding = wirecalc.run("strip", style=style, **given)
    found = lengths(finding)
    assert (found[0], found[2]) == pytest.approx((least, most), abs=1e-9), (FERRULE, STOP, GAP)


@pytest.mark.parametrize(
    ("count", "least", "most"),
    [
        # a how-to text on twist-on connectors, one copy: 1/2 in for two wires, 3/4 to 1 in for more
        (2, 0.5, 0.5),
        (3, 0.75, 1.0),
    ],
)
def test_twist_on_connector(count, least, most):
    finding = wirecalc.run("strip", wire=["14 AWG solid"] * count, style="twist-on")
    found = [finding.figure(f"{end} strip length, about").figure.value for end in ("least", "most")]
    assert found[0] / 25.4 == pytest.approx(least, abs=0.5 * 0.1 / 25.4), TWIST_ON  # to 0.1 mm
    assert found[1] / 25.4 == pytest.approx(most, abs=0.5 * 0.1 / 25.4), TWIST_ON


def test_twist_on_connector_is_judged_by_its_own_instruction_only():
    given = {"wire": ["14 AWG solid"] * 2, "style": "twist-on"}
    assert wirecalc.run("strip", **given, stripped="12.7 mm").verdict == "cannot tell"


def test_lengths_are_given_in_inches_too():
    finding = wirecalc.run("strip", wire=["18 AWG"], style="closed", barrel_length="1/4 in")
    least = finding.figure("least strip length").figure
    assert least.value == pytest.approx(6.35 + 0.25, abs=1e-9), (GAP, INCH)
    assert {unit: value for value, unit in least.also}["in"] == pytest.approx(6.6 / 25.4)


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
    assert finding.verdict == verdict, (GAP, BRUSH)
