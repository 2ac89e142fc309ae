"""Start devices and overloads against what manuals, trade texts and component sheets give."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import tables

from .records import independent, practice, source

# cold resistance at 25 C in ohm, largest V, largest A; one sheet each, 33 ohm on two
PTC = [
    (3.3, 160, 12),
    (4.7, 180, 12),
    (6.8, 200, 10),
    (10, 225, 9),
    (15, 250, 8),
    (22, 300, 7),
    (33, 355, 6),
    (47, 400, 5),
    (100, 410, 2.5),
]


@source("component data sheets, PTC thermistors", "undated", "largest V and A", seen="one each")
def test_ptc_table_is_that_of_the_data_sheets():
    rows = tables.load("ptc-start-devices").rows
    cells = [(r.number("cold_ohm"), r.number("max_V"), r.number("max_A")) for r in rows]
    assert cells == PTC


@source("component data sheets, PTC thermistors", "undated", "largest V and A", seen="one each")
@independent("Ohm's law over two columns that stand apart on the sheets")
@pytest.mark.parametrize(("ohm", "volts", "amps"), PTC)
def test_largest_current_through_the_cold_ohms_stays_below_the_largest_volts(ohm, volts, amps):
    assert amps * ohm < volts


def device(kind: str = "ptc", **given: object) -> wirecalc.Finding:
    by_itself = {"by_itself": "yes", "browned_or_rattling": "no"}
    if kind in ("ptc", "run-thermistor"):
        by_itself |= {"device_cold": "yes"}
    if "device_resistance" in given:
        by_itself |= {"lead_resistance": "0 ohm"}
    if kind == "ptc" and "nameplate_voltage" not in given:
        by_itself |= {"nameplate_voltage": "115 V"}
    return wirecalc.run("start-device", start_device=kind, **(by_itself | given))


@source("refrigerator makers' service manuals", "undated", "PTC cold ohms", seen="one each")
@source("trade page on start devices", "undated", "PTC resistance, 10 to 100 ohm", seen="one copy")
@practice("under 1 ohm it is short, over 10 times the most of the texts open")
@pytest.mark.parametrize(
    ("ohm", "verdict"),
    [
        # the manuals: 3 to 10 and 3 to 12 ohm; the most of the texts: 100 ohm
        ("0 ohm", "fail"),
        ("0.9 ohm", "fail"),
        ("1 ohm", "cannot tell"),
        ("2.9 ohm", "cannot tell"),
        ("3 ohm", "pass"),
        ("10 ohm", "pass"),
        ("11 ohm", "marginal"),
        ("12 ohm", "marginal"),
        ("13 ohm", "cannot tell"),
        ("1000 ohm", "cannot tell"),
        ("1001 ohm", "fail"),
    ],
)
def test_a_ptc_without_its_makers_ohms(ohm, verdict):
    assert device(device_resistance=ohm, nameplate_voltage="115 V").verdict == verdict


@source("refrigerator makers' service manuals", "undated", "PTC cold ohms", seen="one each")
@practice("a PTC device of a 230 V unit has more ohms than one of a 115 V unit")
def test_the_manuals_are_for_115_v_units():
    assert device(device_resistance="6.8 ohm", nameplate_voltage="115 V").verdict == "pass"
    assert device(device_resistance="6.8 ohm", nameplate_voltage="230 V").verdict == "cannot tell"
    given = {"device_resistance": "6.8 ohm", "by_itself": "yes", "device_cold": "yes"}
    unsaid = wirecalc.run("start-device", start_device="ptc", browned_or_rattling="no", **given)
    assert unsaid.verdict == "cannot tell"
    needs = {n for c in unsaid.criteria for n in c.criterion.needs}
    assert needs == {"nameplate_voltage", "maker_resistance"}
    assert device(device_resistance="6.8 ohm", maker_resistance="6.8 ohm").verdict == "pass"


@source("refrigerator makers' service manuals", "undated", "PTC cold ohms", seen="one each")
def test_the_manual_of_12_ohm_is_one_copy():
    row = tables.load("start-parts").row(part="ptc", quantity="cold resistance", said_by="manuals")
    assert (row.number("most"), row.source.copies) == (12, 1)


@practice("a part reads no less than the leads alone; a closed overload reads next to nothing")
def test_an_overload_that_reads_less_than_the_leads_is_refused():
    with pytest.raises(wirecalc.BadInput, match="overload-resistance"):
        wirecalc.run("overload", overload_resistance="0.1 ohm", lead_resistance="0.2 ohm")
    level = {"overload_resistance": "0.2 ohm", "lead_resistance": "0.2 ohm"}
    assert wirecalc.run("overload", **level).verdict == "pass"


@source("trade page on start devices", "undated", "PTC resistance, 10 to 100 ohm", seen="one copy")
def test_the_text_that_disagrees_is_shown():
    finding = device(device_resistance="6.8 ohm")
    least = finding.figure("trade page: cold ohms of a PTC device, least")
    assert least.figure.value == 10


@source("component data sheets, PTC thermistors", "undated", "tolerance", seen="one each")
@pytest.mark.parametrize(
    ("ohm", "tolerance", "verdict"),
    [
        # ±25 % on one sheet, ±20 or ±30 % on another. 33 ohm: 26.4 to 39.6 (20 %), 23.1 to 42.9
        # (30 %)
        ("26.5 ohm", None, "pass"),
        ("39.5 ohm", None, "pass"),
        ("26.3 ohm", None, "cannot tell"),
        ("39.7 ohm", None, "cannot tell"),
        ("42.8 ohm", None, "cannot tell"),
        ("43 ohm", None, "fail"),
        ("23 ohm", None, "fail"),
        # ±25 %: 24.75 to 41.25
        ("24.8 ohm", "25 %", "pass"),
        ("24.7 ohm", "25 %", "fail"),
        ("41.2 ohm", "25 %", "pass"),
        ("41.3 ohm", "25 %", "fail"),
    ],
)
def test_a_ptc_by_its_makers_ohms(ohm, tolerance, verdict):
    given = {"device_resistance": ohm, "maker_resistance": "33 ohm"}
    if tolerance:
        given["maker_tolerance"] = tolerance
    assert device(**given).verdict == verdict


@practice("a range that a maker prints is its own tolerance")
@pytest.mark.parametrize(
    ("ohm", "verdict"),
    [("14.9 ohm", "fail"), ("15 ohm", "pass"), ("28 ohm", "pass"), ("28.1 ohm", "fail")],
)
def test_a_ptc_by_the_range_that_its_maker_prints(ohm, verdict):
    given = {"device_resistance": ohm, "maker_resistance": "15 ohm"}
    finding = device(**given, maker_resistance_high="28 ohm")
    assert finding.verdict == verdict
    assert (
        finding.criterion("resistance, upper limit").criterion.source.title == "the maker's marking"
    )
    tolerance = device(**given, maker_resistance_high="28 ohm", maker_tolerance="5 %")
    assert tolerance.verdict == verdict


@practice("a range that a maker prints is of no standard part, whose volts a sheet has")
def test_a_range_is_held_against_the_volts_of_no_part():
    # 10 ohm parts have 225 V at the most, 33 ohm ones 355 V
    given = {"device_resistance": "12 ohm", "maker_resistance": "10 ohm"}
    one = device(**given, nameplate_voltage="230 V", maker_tolerance="25 %")
    ranged = device(**given, nameplate_voltage="230 V", maker_resistance_high="33 ohm")
    volts = "volts of the plate against the device"
    assert [volts in {c.criterion.name for c in f.criteria} for f in (one, ranged)] == [True, False]


@source(
    "trade training text", "undated", "run thermistors, 100 to 180 % of the mark", seen="one copy"
)
def test_the_mark_of_a_run_thermistor_is_no_range():
    given = {"device_resistance": "30 ohm", "maker_resistance": "25 ohm"}
    with pytest.raises(wirecalc.BadInput, match="none to read"):
        device("run-thermistor", **given, maker_resistance_high="40 ohm")


@practice("a range that a maker prints is its own tolerance")
def test_a_leads_error_at_the_end_of_a_makers_range_is_asked_for():
    # 28.2 ohm with leads of 0 to 0.3 ohm: 27.9 to 28.2 about 28
    given = {"maker_resistance": "15 ohm", "maker_resistance_high": "28 ohm"}
    told = {"browned_or_rattling": "no", "by_itself": "yes", "device_cold": "yes"}
    finding = wirecalc.run(
        "start-device", start_device="ptc", device_resistance="28.2 ohm", **told, **given
    )
    judged = finding.criterion("resistance, upper limit")
    assert (judged.verdict, judged.criterion.needs) == ("cannot tell", ("lead_resistance",))


@source("component data sheets, PTC thermistors", "undated", "largest V and A", seen="one each")
@pytest.mark.parametrize(("plate", "verdict"), [("115 V", "pass"), ("230 V", "marginal")])
def test_the_volts_of_a_10_ohm_device_are_225(plate, verdict):
    given = {"device_resistance": "10 ohm", "maker_resistance": "10 ohm"}
    assert device(**given, nameplate_voltage=plate).verdict == verdict


@practice("a PTC device is read cold and by itself: warm, or across a winding, it misleads")
@pytest.mark.parametrize("given", [{"device_cold": "no"}, {"by_itself": "no"}])
@pytest.mark.parametrize("read", [{"device_resistance": "6 ohm"}, {"device_open": "yes"}])
def test_warm_or_by_itself_tells_nothing(given, read):
    assert device(**read, **given).verdict == "cannot tell"


@practice("a warm PTC device has many ohms: warm it can be short and never open")
def test_a_short_shows_warm_too_and_an_open_one_only_cold():
    assert device(device_resistance="0.2 ohm", device_cold="no").verdict == "fail"
    assert device(device_open="yes").verdict == "fail"


@practice("a PTC device is read cold and by itself: warm, or across a winding, it misleads")
def test_how_it_was_read_has_to_be_said():
    found = wirecalc.run("start-device", start_device="ptc", device_resistance="6 ohm")
    assert found.verdict == "cannot tell"
    needs = {n for c in found.criteria for n in c.criterion.needs}
    assert {"by_itself", "device_cold"} <= needs


@source("trade training text", "undated", "start thermistors on run capacitors", seen="one copy")
@practice("under 1 ohm it is short, over 10 times the most of the texts open")
@pytest.mark.parametrize(
    ("ohm", "mark", "verdict"),
    [
        # 25 to 50 ohm cold; good at 100 to 180 % of the mark, replace above 200 % or well below
        # 100 %
        ("30 ohm", None, "pass"),
        ("60 ohm", None, "cannot tell"),
        ("20 ohm", None, "cannot tell"),
        ("600 ohm", None, "fail"),
        ("25 ohm", "25 ohm", "pass"),
        ("45 ohm", "25 ohm", "pass"),
        ("46 ohm", "25 ohm", "marginal"),
        ("51 ohm", "25 ohm", "fail"),
        ("24 ohm", "25 ohm", "cannot tell"),
        ("0.5 ohm", "25 ohm", "fail"),
    ],
)
def test_a_start_thermistor_on_a_run_capacitor(ohm, mark, verdict):
    given = {"device_resistance": ohm} | ({"maker_resistance": mark} if mark else {})
    assert device("run-thermistor", **given).verdict == verdict


@practice("gravity opens a current relay at rest, a potential relay is closed at rest")
@pytest.mark.parametrize(
    ("kind", "upright", "inverted", "coil", "verdict"),
    [
        ("current-relay", "open", "closed", "no", "pass"),
        ("current-relay", "closed", "closed", "no", "fail"),
        ("current-relay", "open", "open", "no", "fail"),
        ("current-relay", "open", None, "no", "cannot tell"),
        ("current-relay", "open", "closed", "yes", "fail"),
        ("current-relay", "open", "closed", None, "cannot tell"),
        ("potential-relay", "closed", None, "no", "pass"),
        ("potential-relay", "open", None, "no", "fail"),
        ("potential-relay", "closed", None, "yes", "fail"),
    ],
)
def test_relays(kind, upright, inverted, coil, verdict):
    given = {"contact_upright": upright, "contact_inverted": inverted, "coil_open": coil}
    found = device(kind, **{n: v for n, v in given.items() if v is not None})
    assert found.verdict == verdict


@practice("a PTC device has no contact, and a relay no ohms between")
@pytest.mark.parametrize(
    ("kind", "given"),
    [
        ("current-relay", {"device_resistance": "6 ohm"}),
        ("ptc", {"contact_upright": "open"}),
        ("ptc", {"device_resistance": "6 ohm", "device_open": "yes"}),
        ("ptc", {"contact_inverted": "open"}),
    ],
)
def test_a_reading_that_the_device_has_not_is_refused(kind, given):
    with pytest.raises(wirecalc.BadInput):
        device(kind, **given)


AT_115 = {"nameplate_voltage": "115 V"}
AT_230 = {"nameplate_voltage": "230 V"}


def overload(**given: object) -> wirecalc.Finding:
    return wirecalc.run("overload", **given)


@source("refrigerator makers' service manuals", "undated", "overload, 1 ohm", seen="one copy")
@practice("a 230 V overload has some four times the ohms; ten times that is as good as open")
@practice("100 to 130 V are 115 V units; test leads have 0.1 to 0.3 ohm")
@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        # 1 ohm at most, closed and at room temperature
        ({"overload_resistance": "1 ohm", "overload_cold": "yes"}, "pass"),
        ({"overload_resistance": "1.4 ohm", "overload_cold": "yes", **AT_115}, "fail"),
        # one for 230 V has about four times the ohms: 40 ohm is ten times that
        ({"overload_resistance": "1.4 ohm", "overload_cold": "yes"}, "cannot tell"),
        ({"overload_resistance": "4 ohm", "overload_cold": "yes", **AT_230}, "cannot tell"),
        *(
            ({"overload_resistance": "4 ohm", "overload_cold": "yes", "nameplate_voltage": v}, told)
            for v, told in (
                *(("99 V", "cannot tell"), ("100 V", "fail")),
                *(("130 V", "fail"), ("131 V", "cannot tell")),
            )
        ),
        ({"overload_resistance": "0.9 ohm", "overload_cold": "yes", **AT_230}, "pass"),
        ({"overload_resistance": "40.3 ohm", "overload_cold": "yes", **AT_230}, "cannot tell"),
        ({"overload_resistance": "40.4 ohm", "overload_cold": "yes", **AT_230}, "fail"),
        ({"overload_resistance": "40.4 ohm", **AT_230}, "cannot tell"),
        ({"overload_resistance": "1.2 ohm", "overload_cold": "yes"}, "cannot tell"),  # the leads?
        (
            {
                "overload_resistance": "1.2 ohm",
                "lead_resistance": "0.2 ohm",
                "overload_cold": "yes",
            },
            "pass",
        ),
        ({"overload_resistance": "1.4 ohm"}, "cannot tell"),
        ({"overload_resistance": "0.4 ohm"}, "pass"),
        ({"overload_open": "yes", "overload_cold": "yes"}, "fail"),
        ({"overload_open": "yes", "overload_cold": "no"}, "cannot tell"),
        ({"overload_open": "yes"}, "cannot tell"),
        ({}, "cannot tell"),
    ],
)
def test_an_overload_by_its_resistance(given, verdict):
    assert overload(**given).verdict == verdict


@source("room air conditioner manual", "undated", "internal overload, 60 min", seen="one copy")
def test_an_internal_overload_may_take_an_hour():
    finding = overload(overload_open="yes", overload_cold="no")
    assert "60 min" in finding.criterion("overload conducts").action


@source("trade author on appliance repair", "undated", "225-250, 150, 160 F", seen="two pages")
@source("protector test form of a component maker", "undated", "160 C, ultimate trip", seen="one")
@practice("the shell of a good compressor comes to 70 C")
@pytest.mark.parametrize(
    ("trip", "reset", "verdict"),
    [
        # the author: opens at 225 to 250 F, closes at 150 or 160 F by his two pages
        ("225 F", "160 F", "pass"),
        ("250 F", "150 F", "pass"),
        ("224 F", "155 F", "marginal"),
        ("251 F", "155 F", "marginal"),
        ("230 F", "161 F", "marginal"),
        ("230 F", "149 F", "marginal"),
        ("110 C", "68 C", "pass"),  # 230 F, 154.4 F
        ("107.5 C", "65.6 C", "pass"),  # 225.5 F, 150.1 F
        ("107 C", "68 C", "marginal"),  # 224.6 F: the printed 225 F is 107.2 C
        # the form: it must have opened at a winding of 160 C
        ("160 C", "68 C", "marginal"),
        ("161 C", "68 C", "fail"),
        ("190 C", "68 C", "fail"),
        ("70 C", "66 C", "marginal"),
        ("69.9 C", "66 C", "cannot tell"),
    ],
)
def test_an_overload_by_its_temperatures(trip, reset, verdict):
    given = {"overload_resistance": "0.4 ohm", "lead_resistance": "0 ohm"}
    assert overload(**given, trip_temperature=trip, reset_temperature=reset).verdict == verdict


@practice("an open overload reads no ohms, and it closes cooler than it opens")
@pytest.mark.parametrize(
    "given",
    [
        {"overload_resistance": "0.4 ohm", "overload_open": "yes"},
        {"trip_temperature": "100 C", "reset_temperature": "100 C"},
    ],
)
def test_what_an_overload_cannot_do_is_refused(given):
    with pytest.raises(wirecalc.BadInput):
        overload(**given)


@practice("a browned or rattling start device goes, whatever it reads")
@pytest.mark.parametrize("kind", ["ptc", "run-thermistor", "current-relay", "electronic-relay"])
def test_a_browned_or_rattling_device_goes_whatever_it_reads(kind: str) -> None:
    good = {"ptc": {"device_resistance": "6.8 ohm"}}.get(kind, {})
    assert device(kind, **good, browned_or_rattling="yes").verdict == "fail"
    asked = wirecalc.run("start-device", start_device=kind, **good)
    assert asked.verdict == "cannot tell"
    assert "browned_or_rattling" in {n for c in asked.criteria for n in c.criterion.needs}


@practice("an electronic relay or a kit is tried by a new one, not by an ohmmeter")
@pytest.mark.parametrize("kind", ["electronic-relay", "combined-kit"])
def test_no_ohmmeter_tells_an_electronic_relay_or_a_kit(kind: str) -> None:
    found = device(kind)
    assert found.verdict == "cannot tell"
    with pytest.raises(wirecalc.BadInput):
        device(kind, device_resistance="6.8 ohm")


@source("repair texts, 220 V refrigerators", "undated", "PTC cold, 15 to 30 ohm", seen="four")
@pytest.mark.parametrize(
    ("ohm", "verdict"),
    # 18 to 30 (two alike), 15 to 24, twenty-odd ohm
    [("14 ohm", "cannot tell"), ("15 ohm", "pass"), ("30 ohm", "pass"), ("31 ohm", "cannot tell")],
)
@pytest.mark.parametrize("plate", ["200 V", "220 V", "253 V"])
def test_a_ptc_of_a_220_v_unit(ohm, verdict, plate) -> None:
    assert device(device_resistance=ohm, nameplate_voltage=plate).verdict == verdict


@source("refrigerator makers' service manuals", "undated", "PTC cold ohms", seen="one each")
@source("repair texts, 220 V refrigerators", "undated", "PTC cold, 15 to 30 ohm", seen="four")
@practice("100 to 130 V are the manuals' 115 V units, 200 to 253 V the texts' 220 V units")
@pytest.mark.parametrize(
    ("plate", "ohm", "verdict"),
    [
        *(("99 V", "6.8 ohm", "cannot tell"), ("100 V", "6.8 ohm", "pass")),
        *(("130 V", "6.8 ohm", "pass"), ("131 V", "6.8 ohm", "cannot tell")),
        *(("199 V", "20 ohm", "cannot tell"), ("254 V", "20 ohm", "cannot tell")),
    ],
)
def test_other_mains_than_those_of_the_texts(plate, ohm, verdict) -> None:
    assert device(device_resistance=ohm, nameplate_voltage=plate).verdict == verdict


@source("component data sheets, PTC thermistors", "undated", "largest V and A", seen="one each")
@practice("over 1.25 times the largest volts it is a device for lower mains")
@pytest.mark.parametrize(
    ("ohm", "plate", "verdict"),
    [
        # data sheets: 3.3 ohm 160 V, 4.7 ohm 180 V, 6.8 ohm 200 V; 1.25 times: 200, 225, 250 V
        ("3.3 ohm", "230 V", "cannot tell"),
        ("4.7 ohm", "230 V", "cannot tell"),
        ("4.7 ohm", "225 V", "marginal"),
        ("6.8 ohm", "230 V", "marginal"),
    ],
)
def test_a_device_for_lower_mains(ohm, plate, verdict) -> None:
    given = {"device_resistance": ohm, "maker_resistance": ohm, "nameplate_voltage": plate}
    assert device(**given).verdict == verdict


@practice("a careful person has it at hand, and it changes nothing")
@pytest.mark.parametrize(
    ("kind", "given", "more"),
    [
        (
            "potential-relay",
            {"contact_upright": "closed", "coil_open": "no"},
            {"contact_inverted": "closed"},
        ),
        (
            "run-thermistor",
            {"device_resistance": "30 ohm", "maker_resistance": "25 ohm"},
            {"maker_tolerance": "20 %"},
        ),
    ],
)
def test_what_does_not_matter_is_a_note(kind, given, more) -> None:
    found = device(kind, **given, **more)
    assert (device(kind, **given).verdict, found.verdict) == ("pass", "pass")
    assert {"contact upside down", "tolerance of the mark"} & {n.what for n in found.not_checked}
