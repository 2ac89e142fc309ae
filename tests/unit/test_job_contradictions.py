"""What a sheet says of one machine that cannot be so together is refused."""

from __future__ import annotations

import pytest

from wirecalc.base.errors import BadInput
from wirecalc.jobs import sheet as jobsheet
from wirecalc.plugging import host
from wirecalc.said.verdicts import Verdict

from . import sheets
from .sheets import check, checks, whole

CATALOGUE = host.build(bundled_only=True)
CORD, FIXED = 'connection = "cord-connected"\n', 'connection = "hard-wired"\n'
HEATER = check("leakage").replace('"stationary"', '"heater"')


def verdict(text: str) -> Verdict:
    return jobsheet.evaluate(sheets.read(text), CATALOGUE).verdict


def refused(text: str) -> str:
    with pytest.raises(BadInput) as caught:
        verdict(text)
    return str(caught.value)


def ground(point: str, connection: str) -> str:
    return whole(job=connection).replace('"plug-pin"', f'"{point}"')


def test_a_cord_and_a_ground_wire_of_a_machine_without_one_are_not_together() -> None:
    said = refused(ground("wired-in", CORD))
    assert "check ground: ground_point: 'wired-in', and the sheet says connection = " in said
    for point in ("plug-pin", "neutral-blade"):
        assert f"'{point}', and the sheet says" in refused(ground(point, FIXED))
    large = HEATER.replace('"plug"', '"large-plug"')
    assert "'large-plug', and the sheet says" in refused(whole(large, job=FIXED))
    assert verdict(ground("wired-in", FIXED)) == "pass"
    assert verdict(ground("plug-pin", CORD)) == "pass"
    assert verdict(ground("wired-in", "")) == "pass"
    wired = HEATER.replace('"plug"', '"wired-in"')
    assert "check leakage: connection" in refused(
        whole(HEATER, job=FIXED).replace("plug-pin", "wired-in")
    )
    assert "check leakage: connection" in refused(whole(wired, job=CORD))


def test_a_machine_without_a_plug_has_no_outlet() -> None:
    fixed = whole(job=FIXED).replace("plug-pin", "wired-in")
    assert verdict(fixed) == "pass"
    said = refused(fixed + check("outlet"))
    assert 'check outlet: is of an outlet, and the sheet says connection = "hard-wired"' in said
    assert "leave it out, or write how the machine is connected" in said
    assert verdict(whole(job=CORD)) == "pass"


@pytest.mark.parametrize(("word", "wrong"), [("no", True), ("yes", False)])
def test_what_is_wired_in_is_fastened_in_place(word: str, wrong: bool) -> None:
    load = f"""[[check]]
calculation = "breaker"
current = "9 A"
breaker = "20 A"
fastened_in_place = "{word}"
"""
    fixed = whole(load, job=FIXED).replace("plug-pin", "wired-in")
    if wrong:
        assert "check breaker: fastened_in_place: 'no', and the sheet says" in refused(fixed)
    else:
        assert verdict(fixed)


@pytest.mark.parametrize("word", ["class-ii", "class-iii"])
def test_a_machine_without_a_ground_path_has_no_check_of_one(word: str) -> None:
    said = refused(whole().replace('"class-i"', f'"{word}"'))
    assert f"check insulation: protection: '{word}' has no ground path" in said


def test_nor_has_one_that_the_leakage_says_it_of() -> None:
    word = "double-insulated"
    leaks = check("leakage").replace('"stationary"', f'"{word}"')
    assert f"machine_kind: '{word}' has no ground path" in refused(whole(leaks))
    none = '[[does_not_apply]]\ncalculation = "ground"\nreason = "double insulated"\n'
    head, _, _ = whole().partition("[[check]]")
    assert verdict(head + checks("supply", "outlet") + leaks + none) == "pass"


@pytest.mark.parametrize(("volts", "fits"), [("50 V", True), ("51 V", False), ("115 V", False)])
def test_class_iii_is_fed_by_extra_low_volts(volts: str, fits: bool) -> None:
    none = '[[does_not_apply]]\ncalculation = "ground"\nreason = "fed by extra-low volts"\n'
    head, _, _ = whole().partition("[[check]]")
    low = check("insulation").replace('"class-i"', '"class-iii"')
    supply = check("supply").replace("120 V", volts).replace("119.6 V", volts)
    text = head + supply + check("outlet") + low + none
    if fits:
        assert verdict(text) == "pass"
    else:
        assert "'class-iii' is fed by 50 V at most" in refused(text)


def test_one_machine_has_one_plate() -> None:
    plate = '[nameplate]\nnameplate_voltage = "115 V"\n'
    good = whole(kind="refrigerator") + check("inrush")
    head, _, rest = good.partition("[confirmed]")
    own = good.replace('nameplate_voltage = "120 V"', 'nameplate_voltage = "230 V"', 1)
    assert "120 V, and check supply says 230 V: one machine has one plate" in refused(own)
    assert "120 V, and the nameplate says 115 V" in refused(f"{head}{plate}[confirmed]{rest}")
    assert verdict(good) == "pass"
    assert verdict(good.replace('"120 V"', '"120.0 V"', 1)) == "pass"


def test_a_part_has_a_plate_of_its_own_and_the_supply_is_of_no_part() -> None:
    motor = check("inrush").replace("120 V", "115 V") + 'part = "drum motor"\n'
    assert verdict(whole(motor)) == "pass"
    assert "one machine has one plate" in refused(whole(motor.replace('part = "drum motor"\n', "")))
    plate = '[nameplate]\nnameplate_voltage = "240 V"\n'
    head, _, rest = whole().partition("[confirmed]")
    of_part = rest.replace('calculation = "supply"', 'calculation = "supply"\npart = "x"')
    assert "one machine has one plate" in refused(f"{head}{plate}[confirmed]{of_part}")


def test_each_of_several_machines_has_its_plate_and_connection() -> None:
    head = '[job]\ntitle = "t"\n'
    machines = [
        f'[[machine]]\nname = "{m}"\nenergy = "electric"\n{c}'
        + sheets.answers(*sheets.ANSWERS, heading="machine.confirmed")
        for m, c in (("a", CORD), ("b", FIXED))
    ]
    of_a = checks(*sheets.EVERY, machine="a")
    every = [c for c in sheets.EVERY if c != "outlet"]
    of_b = checks(*every, machine="b").replace("plug-pin", "wired-in")
    of_b = of_b.replace('"120 V"', '"240 V"').replace("119.6 V", "239 V")
    assert verdict(head + "".join(machines) + of_a + of_b) == "pass"
    assert "wired-in" in refused(
        head + "".join(reversed(machines)) + of_a.replace("plug-pin", "wired-in") + of_b
    )


def test_an_option_is_not_counted_and_contradicts_nothing() -> None:
    other = check("supply").replace("120 V", "230 V") + 'stage = "option"\nname = "elsewhere"\n'
    assert verdict(whole(other)) == "pass"


OF_COLD = check("leakage").replace('"stationary"', '"refrigerator"')
STRAP = check("insulation") + 'neutral_strap = "removed"\n'


@pytest.mark.parametrize(
    ("kind", "extra", "says"),
    [
        ("washer", OF_COLD, "check leakage: machine_kind: 'refrigerator'"),
        ("washing machine", OF_COLD, "check leakage: machine_kind: 'refrigerator'"),
        ("refrigerator", check("leakage"), "check leakage: machine_kind: 'stationary'"),
        ("freezer", HEATER, "check leakage: machine_kind: 'heater'"),
        (
            "freezer",
            STRAP.replace("[[check]]", '[[check]]\nname = "b"'),
            "neutral_strap: 'removed'",
        ),
    ],
)
def test_a_check_speaks_of_the_machine_that_the_sheet_names(
    kind: str, extra: str, says: str
) -> None:
    said = refused(whole(extra, kind=kind))
    assert says in said
    assert "and the sheet says kind = " in said


@pytest.mark.parametrize(
    ("kind", "extra"),
    [
        ("refrigerator", OF_COLD),
        ("freezer", OF_COLD),
        ("washer", check("leakage")),
        ("washer", HEATER),  # an element of its own
        ("air-conditioner", check("leakage")),
        ("other", OF_COLD),
        ("dryer", STRAP.replace("[[check]]", '[[check]]\nname = "b"')),
    ],
)
def test_what_such_a_machine_has_is_not_questioned(kind: str, extra: str) -> None:
    assert verdict(whole(extra, kind=kind)) in ("pass", "cannot tell")


def test_a_neutral_blade_is_the_ground_of_ranges_and_dryers_alone() -> None:
    blade = whole(kind="washer").replace('"plug-pin"', '"neutral-blade"')
    assert "ground_point: 'neutral-blade', and the sheet says kind = " in refused(blade)
    verdict(whole(kind="range").replace('"plug-pin"', '"neutral-blade"'))
