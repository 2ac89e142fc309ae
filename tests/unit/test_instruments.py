"""Instruments: how a sheet states an error, which range a reading falls in, what comes of it."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any

import pytest

import wirecalc
from wirecalc import BadInput, BadText, Finding, Verdict
from wirecalc.instruments.declared import Declared, read
from wirecalc.instruments.ranges import Error, read_error, read_range

PULL = {"wire": "18 AWG", "terminal": "ring"}


def range_(reads: str, start: str, end: str, error: str, **more: Any) -> dict[str, Any]:
    return {"reads": reads, "from": start, "to": end, "error": error, **more}


TESTER = {"name": "tester", "range": [range_("force", "2.0 lbf", "100.0 lbf", "2% + 5")]}
FINE = {"name": "fine", "range": [range_("force", "0.50 lbf", "50.00 lbf", "0.2% + 2")]}
CLAMP = {
    "name": "clamp 1",
    "category": "CAT III 600 V",
    "range": [
        range_("current", "0.50 A", "60.00 A", "2% + 5", wave="ac"),
        range_("current", "60.0 A", "400.0 A", "2% + 5", wave="ac"),
    ],
}


def having(*entries: Mapping[str, Any], date: str = "", **meters: str) -> wirecalc.Catalogue:
    """A catalogue with these instruments."""
    declared, problems = read(list(entries), meters, "tests")
    assert problems == []
    day = datetime.date.fromisoformat(date) if date else None
    catalogue = wirecalc.build(bundled_only=True)
    catalogue.instruments = declared._replace(date=day)
    return catalogue


def pull(value: str, *entries: Mapping[str, Any], date: str = "", **meters: str) -> Finding:
    return having(*entries, date=date, **meters).run("pull", {**PULL, "force": value})


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("2% + 5", Error(2.0, 0.05)),
        ("±(2%+5)", Error(2.0, 0.05)),
        ("3%", Error(3.0, 0.0)),
        ("0.05 A", Error(0.0, 0.05)),
        ("50 mA", Error(0.0, 0.05)),
        ("1% + 0.05 A", Error(1.0, 0.05)),
        ("1.5% of range", Error(0.0, 0.9)),
        ("1% + 0.5% of range", Error(1.0, 0.3)),
        ("0.5% + 0.1% of range + 2", Error(0.5, 0.08)),
    ],
)
def test_the_forms_of_an_error(text: str, error: Error) -> None:
    found = read_error(text, 0.01, 60.0, "A", "current")
    assert found.share == pytest.approx(error.share)
    assert found.amount == pytest.approx(error.amount)


@pytest.mark.parametrize("text", ["", "0%", "exact", "2", "100%", "-0.05 A", "5 V", "2.5 counts"])
def test_what_is_no_error_is_refused(text: str) -> None:
    with pytest.raises(BadText):
        read_error(text, None, 60.0, "A", "current")


def test_the_last_digit_of_the_display_is_that_of_its_end() -> None:
    found = read_range(range_("current", "0.5 A", "60.00 A", "5"))
    assert found.error.at(1.0) == pytest.approx(0.05)
    assert found.holds(0.5)
    assert found.holds(60.0)
    assert not found.holds(0.49)


@pytest.mark.parametrize(
    "wrong",
    [
        range_("curent", "0.5 A", "60.00 A", "5"),
        range_("current", "60 A", "0.50 A", "5"),
        range_("current", "0.5 V", "60.00 V", "5"),
        range_("current", "0.5 A", "60.00 A", "2% + 5", wave="sine"),
        range_("current", "0.5 A", "60.00 A", "2% + 5", hertz=[400, 45]),
        {"reads": "current", "from": "0.5 A", "to": "60.00 A"},
        range_("current", "0.5 A", "60.00 A", "2%", resolution="0.01 A"),
    ],
)
def test_a_range_that_is_declared_wrongly_is_refused(wrong: dict[str, Any]) -> None:
    with pytest.raises(BadText):
        read_range(wrong)


@pytest.mark.parametrize(
    ("entry", "says"),
    [
        ({"range": []}, "none to read by"),
        ({"name": "a by b", "range": [1]}, "none to read by"),
        ({"name": "clamp"}, "has no range"),
        ({**CLAMP, "category": "CAT V 600 V"}, "not understood"),
        ({**CLAMP, "due": "soon"}, "no date"),
        ({**CLAMP, "colour": "red"}, "no key"),
    ],
)
def test_an_instrument_that_is_declared_wrongly_is_refused(
    entry: dict[str, Any], says: str
) -> None:
    _, (problem, *_) = read([entry], {}, "van.toml")
    assert says in str(problem)


def test_two_of_one_name_and_a_meter_that_is_none() -> None:
    _, problems = read([CLAMP, CLAMP], {"current": "clamp 2", "amps": "clamp 1"}, "van.toml")
    assert [p.wrong for p in problems] == [
        "is declared twice",
        "there is no instrument 'clamp 2'",
        "is no dimension",
    ]


def test_a_sheet_goes_before_the_shop() -> None:
    shop, _ = read([TESTER, FINE], {"force": "tester"}, "shop")
    sheet, _ = read([{**FINE, "range": TESTER["range"]}], {"force": "fine"}, "sheet")
    both = shop.and_then(sheet)
    assert [i.name for i in both.instruments] == ["tester", "fine"]
    assert both.instruments[1].ranges == both.instruments[0].ranges
    assert both.meters == {"force": "fine"}
    assert Declared().and_then(shop) == shop


def band(finding: Finding, name: str = "force") -> tuple[float | None, float | None]:
    (record,) = [i for i in finding.inputs if i.name == name]
    return record.low, record.high


@pytest.mark.parametrize("force", ["20.5 lbf", "91.2 N", "20 1/2 lbf"])
def test_a_reading_by_an_instrument_has_its_error(force: str) -> None:
    if "/" in force:
        with pytest.raises(BadInput):
            pull(f"{force} by tester", TESTER)
        return
    by = pull(f"{force} by tester", TESTER)
    typed = pull(f"{force} ±(2%+{'0.5 lbf' if 'lbf' in force else '2.2241 N'})")
    assert band(by) == pytest.approx(band(typed), rel=1e-4)
    assert by.verdict is typed.verdict
    (record,) = [i for i in by.inputs if i.name == "force"]
    assert record.notes[-1] == "by tester, 2.0 lbf to 100.0 lbf, ±(2% + 5)"


def test_who_is_named_goes_before_who_is_meant() -> None:
    meant = pull("24.0 lbf", TESTER, FINE, force="tester")
    named = pull("24.0 lbf by fine", TESTER, FINE, force="tester")
    typed = pull("24.0 lbf ±1 lbf", TESTER, FINE, force="tester")
    exact = pull("24.0 lbf exact", TESTER, FINE, force="tester")
    none = pull("24.0 lbf", TESTER, FINE)
    assert band(meant) == pytest.approx((24 - 0.98, 24 + 0.98))
    assert band(named) == pytest.approx((24 - 0.068, 24 + 0.068))
    assert band(typed) == (23.0, 25.0)
    assert band(exact) == band(none) == (None, None)
    assert none.exact == ("force",)
    assert exact.exact == ()


def test_a_meter_of_the_run_counts_for_what_it_reads() -> None:
    catalogue = having(CLAMP, TESTER, force="tester")
    given = {**PULL, "force": "24.0 lbf", "meter": "clamp 1"}  # which reads no force
    assert band(catalogue.run("pull", given))[0] == pytest.approx(24 - 0.98)
    with pytest.raises(BadInput, match="did you mean clamp 1"):
        catalogue.run("pull", {**given, "meter": "clamp"})


def test_a_larger_range_is_less_fine() -> None:
    catalogue = having(CLAMP, current="clamp 1")
    given = {"breaker": "100 A", "building_wire": "2 AWG"}
    small = catalogue.run("breaker", {**given, "current": "59.00 A"})
    large = catalogue.run("breaker", {**given, "current": "61.0 A"})
    assert band(small, "current") == pytest.approx((59 - 1.23, 59 + 1.23))
    assert band(large, "current") == pytest.approx((61 - 1.72, 61 + 1.72))


@pytest.mark.parametrize(
    ("force", "verdict", "low", "high"),
    [
        (
            "0.3 lbf by fine",
            Verdict.FAIL,
            0.0,
            0.5,
        ),  # below all that it reads, and it would take 20
        ("60 lbf by fine", Verdict.CANNOT_TELL, 50.0, 7000.0),  # above, and beyond the wire's own
    ],
)
def test_beyond_the_ends_only_the_side_is_known(
    force: str, verdict: Verdict, low: float, high: float
) -> None:
    found = pull(force, FINE)
    assert found.verdict is verdict
    assert band(found) == (low, high)


def test_what_names_no_instrument_of_the_shop_is_refused() -> None:
    with pytest.raises(BadInput, match="did you mean tester"):
        pull("24 lbf by testr", TESTER)
    with pytest.raises(BadInput, match="declare it"):
        pull("24 lbf by tester")
    with pytest.raises(BadInput, match="no range that reads"):
        pull("24 lbf by clamp 1", CLAMP)
    with pytest.raises(BadInput, match="exact and an error"):
        pull("24 lbf ±1 lbf exact")


def test_the_instrument_that_would_decide_is_named() -> None:
    found = pull("20.3 lbf by tester", TESTER, FINE).criterion("pull-out force")
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.action.startswith("read force by fine, 0.50 lbf to 50.00 lbf")
    none = pull("20.01 lbf by tester", TESTER, FINE).criterion("pull-out force")
    assert none.action.startswith("none of the declared instruments would decide it; ")


def test_a_pass_on_exact_readings_says_how_exact_they_have_to_be() -> None:
    from wirecalc.engine.which_meter import holds_to

    catalogue = wirecalc.build(bundled_only=True)

    def held(force: str) -> str:
        given = {**PULL, "force": force}
        return holds_to(catalogue.run("pull", given), given, catalogue.runner("pull"))

    assert held("25 lbf") == "holds to ±20 % of the reading"  # 20 lbf are asked for
    assert held("20.1 lbf") == "holds to ±0.4 % of the reading"
    assert held("20 lbf") == "does not hold to ±0.1 % of the reading"
    assert held("19 lbf") == ""
    assert held("25 lbf ±1 lbf") == ""


@pytest.mark.parametrize(
    ("date", "verdict"),
    [("2026-06-30", Verdict.PASS), ("2026-07-01", Verdict.MARGINAL), ("", Verdict.PASS)],
)
def test_past_its_date_an_advised_limit_is_missed(date: str, verdict: Verdict) -> None:
    due = {**TESTER, "due": datetime.date(2026, 6, 30)}
    assert pull("24.0 lbf by tester", due, date=date).verdict is verdict
    assert pull("24.0 lbf ±1 lbf", due, date=date).verdict is Verdict.PASS  # was not read by it


def stops(category: str, calculation: str = "drop", **given: str) -> list[str]:
    catalogue = having({**CLAMP, "category": category}, current="clamp 1")
    if calculation == "drop":
        given = {"current": "8.00 A", "nameplate_voltage": "240 V", "building_wire": "12 AWG",
                 "run_length": "60 ft"} | given  # fmt: skip
    found = catalogue.run(calculation, given)
    return [c.text for c in found.cautions if c.severity == "stop" and "clamp 1" in c.text]


@pytest.mark.parametrize(
    ("category", "stopped"),
    [("CAT II 300 V", 0), ("CAT III 600 V", 0), ("CAT II 240 V", 0), ("CAT II 150 V", 1)],
)
def test_a_meter_for_fewer_volts_is_a_stop(category: str, stopped: int) -> None:
    assert len(stops(category)) == stopped


def test_a_meter_for_a_lesser_place_is_a_stop() -> None:
    panel = {"breaker": "20 A", "plug_loads": "8.00 A", "building_wire": "12 AWG"}
    assert len(stops("CAT II 600 V", "circuit", **panel)) == 1
    assert stops("CAT III 600 V", "circuit", **panel) == []
    assert stops("CAT IV 600 V", "circuit", **panel) == []


THERMOMETER = {"name": "probe", "range": [range_("temperature", "0.0 C", "200.0 C", "1% + 10")]}
SPLICE = {
    "wire": "16 AWG",
    "barrel": "16-14 AWG",
    "wire_temperature": "105 C",
    "terminal_temperature": "105 C",
    "current": "5 A exact",
    "circuit_voltage": "120 V exact",
    "terminal_voltage": "300 V",
}


def test_per_cent_of_a_temperature_are_of_what_the_display_shows() -> None:
    found = having(THERMOMETER).run("splice", {**SPLICE, "place_temperature": "80.0 C by probe"})
    assert band(found, "place_temperature") == pytest.approx((80 - 1.8, 80 + 1.8))  # 0.8 and 1.0 K


def test_of_two_ranges_that_hold_a_reading_the_worse_counts() -> None:
    both = {"name": "two", "range": [*FINE["range"], *TESTER["range"]]}
    assert band(pull("24.0 lbf by two", both)) == pytest.approx((24 - 0.98, 24 + 0.98))
    turned = {"name": "two", "range": [*TESTER["range"], *FINE["range"]]}
    assert band(pull("24.0 lbf by two", turned)) == pytest.approx((24 - 0.98, 24 + 0.98))


@pytest.mark.parametrize(
    ("hertz", "reads"),
    [
        ([50, 60], True),
        ([45, 400], True),
        ([51, 400], False),
        ([40, 59], False),
        ([400, 900], False),
    ],
)
def test_a_range_reads_at_the_frequency_of_the_supply(hertz: list[int], reads: bool) -> None:
    (first, *_) = CLAMP["range"]
    clamp = {**CLAMP, "range": [{**first, "hertz": hertz}]}
    given = {"breaker": "15 A", "building_wire": "14 AWG", "current": "8.00 A by clamp 1"}
    if reads:
        assert band(having(clamp).run("breaker", given), "current") != (None, None)
    else:
        with pytest.raises(BadInput, match="no range that reads ac current"):
            having(clamp).run("breaker", given)


def test_a_machine_that_is_fastened_in_place_is_read_at_its_terminal_block() -> None:
    motor = {"motor_kind": "motor", "horsepower": "1/2 hp", "nameplate_voltage": "115 V",
             "full_load_current": "8.6 A", "other_current": "3.00 A", "building_wire": "12 AWG",
             "breaker": "20 A"}  # fmt: skip
    assert len(stops("CAT II 600 V", "motor-circuit", **motor, fastened_in_place="yes")) == 1
    assert stops("CAT III 600 V", "motor-circuit", **motor, fastened_in_place="yes") == []


def test_a_pass_far_from_its_limit_holds_to_the_most_that_is_tried() -> None:
    from wirecalc.engine.which_meter import holds_to

    catalogue = wirecalc.build(bundled_only=True)
    given = {"use": "building", "wire": "14 AWG", "insulation_class": "60 C", "current": "3 A",
             "termination_temperature": "60 C", "conductors": "2", "ambient": "25 C"}  # fmt: skip
    run = catalogue.runner("ampacity")
    assert holds_to(run(given), given, run) == "holds to ±50 % of each reading"
