"""Insulation resistance of a machine or a part of it, live parts to the case."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import (
    Confidence,
    Item,
    Origin,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    tables,
)

from .insulation_doubts import Doubt, Test, class_by_name, excuses, refuse, unproven
from .insulation_inputs import (
    Dried,
    ElectronicsUnplugged,
    InsulationResistance,
    NameplatePower,
    NameplateVoltage,
    NeutralStrap,
    Protection,
    SwitchedOn,
    TestedPart,
    TestVoltage,
)
from .insulation_limits import binding, rows_of, shown
from .insulation_method import how_tested
from .neutral import LIFTED, insulation_bond

GROUNDED_MOHM = 0.01  # at 100 V it lets 10 mA through, more than any leakage limit

_BEHIND = "the limit of the standard fails: {:g} Mohm"
BETTER = "a 500 V insulation tester whose range ends near the limit"
NAME = "insulation to the case"


@calculation(
    part="return to service",
    words=(
        "insulation resistance; insulation test; insulation tester; IR test; meg; meg test",
        "meg reading; megged; megohm; megohms; megohmmeter; mega ohm; 500 volt test; 500 V; 250 V",
        "1000 V; flash test; hipot; dielectric; short to ground; short to case; short to earth",
        "shorted to ground; shorted to frame; grounded; grounded winding; grounded compressor",
        "grounded element; grounded motor; element to ground; winding to case; leak to ground",
        "shock; shocks; tingle; electric shock; live case; case is live; chassis live; damp; wet",
        "moisture; water got in; PAT; PAT test; class II; double insulated; earth fault",
        "ground fault; breakdown; GFCI trips; GFI trips; RCD trips; washer; washing machine",
        "dishwasher; kettle; oven; water heater; submersible pump; burnt winding; flooded; jolt",
        "leccy; electrocuted; leak to earth; resistance to earth; resistance to ground",
        "ohms to ground; ohms to case; low insulation; high pot; water ingress; motor to ground",
        "heater to earth; compressor to ground; reading to ground; earth leakage; RCD tripping",
        "GFCI tripping; tracking; infinity; dead short; short; shorted; shorted winding to case",
        "ohms to chassis; resistance to case; meg out; motor megged; insulation meter",
        "leaky insulation; leak to case",
        "low meg; meg reading low; megohms low; wet motor; soaked; rained on; flood",
        "insulation breakdown; bad insulation; gone to earth; down to earth; to earth",
        "element gone to earth; shorted to body; body earth; tub motor to frame",
        "shorted to chassis; motor to frame; meg the compressor; meg the motor; meg the heater",
        "2 megohm; 1 megohm; how many megohms; insulation value; ground test; leaks to frame",
        "PAT testing; portable appliance test; test and tag; tag test; after flood; 3760; 0701",
        "62638; reads OL",
        "class 2; class 2 appliance; class II appliance; class 1 appliance; appliance limits",
        "limits for insulation; insulation limit; insulation limits; is the reading enough",
    ),
    go_on="then leakage at line volts, with the machine switched on: leakage",
    cautions=("dead-01", "dead-02", "cap-01", "ins-01", "ins-02"),
    not_checked=(
        "boards and surge parts that were unplugged, and the cord if it was not in the test",
        "insulation between live parts, such as shorted turns",
    ),
    refuse=refuse,
    example_with=("test_voltage", "switched_on", "electronics_unplugged"),
)
def insulation(
    insulation_resistance: InsulationResistance,
    protection: Protection,
    tested_part: TestedPart,
    test_voltage: TestVoltage = None,
    switched_on: SwitchedOn = None,
    electronics_unplugged: ElectronicsUnplugged = None,
    dried: Dried = None,
    nameplate_power: NameplatePower = None,
    nameplate_voltage: NameplateVoltage = None,
    neutral_strap: NeutralStrap = None,
) -> Iterator[Item]:
    """Is the insulation good between live parts and the case?

    At 500 V dc: class I 1 Mohm (0.3 with heating elements switched on), class II 2, class III
    (fed by 50 V at most) 0.25 (DIN VDE 0701); under the 2 Mohm of one guide (no heaters), 1 of
    elements not dried and 10 of a hermetic compressor by practice, marginal. Under 250 V, or with
    parts switched off, a good reading shows nothing. A low one fails, save what may be moisture
    (sheathed elements), a board at test voltage, or elements of 3.5 kW of class I judged by
    leakage; under 0.01 Mohm it always fails. A strap from neutral to the frame is lifted for this
    test alone, unplugged.

    For machines unplugged, and bare parts at their own pins; not for inverters and boards. Inputs:
    reading in Mohm (0 to 1e6; past the tester's end >999 Mohm), class, part, test_voltage in V dc
    (over 0 to 1000), plate in W and V, strap, yes or no of the rest. Yields the limits and
    criteria. Refuses mohm for Mohm. Source: table insulation-limits.
    """
    rows = list(rows_of(protection, tested_part))
    yield from shown(rows, tested_part)
    yield from insulation_bond(neutral_strap)
    if neutral_strap == "lifted":
        yield LIFTED
    test = Test(
        *(tested_part, protection, test_voltage, switched_on, electronics_unplugged),
        *(dried, nameplate_power, nameplate_voltage),
    )
    proven = not any(unproven(test))
    if neutral_strap != "fitted":
        yield _judge(insulation_resistance, rows, test)
        if proven:
            yield from _advice(insulation_resistance, rows, dried)
    yield from how_tested(test_voltage, electronics_unplugged)


def _judge(reading: float, rows: Sequence[tables.Row], test: Test) -> Item:
    row = binding(rows)
    doubts: list[Doubt] = []
    if at_or_below(row.number("limit_Mohm"), reading):
        doubts = [*unproven(test), *class_by_name(reading, test)]
    elif at_or_below(GROUNDED_MOHM, reading):
        doubts = list(excuses(test))
    if doubts:
        return cannot_tell(
            NAME,
            "; ".join(d.why for d in doubts),
            measure="; ".join(d.measure for d in doubts),
            needs=[name for d in doubts for name in d.needs],
            source=row.source,
        )
    return at_least(
        NAME,
        reading,
        row.number("limit_Mohm"),
        "Mohm",
        source=row.source,
        says="do not power it",
        action="take parts off one by one to find where it leaks (a range or dryer: is the strap "
        "from neutral to the frame on?); dry what is wet, replace the part, read again",
        better=BETTER,
    )


def _advice(reading: float, rows: Sequence[tables.Row], dried: bool | None) -> Iterator[Item]:
    """Judge by advice that is stricter than the standard; an element that is dry is not damp."""
    limit = binding(rows).number("limit_Mohm")
    for row in rows:
        if row.text("binding") == "no" and not (row.text("tested_part") == "heater" and dried):
            practice = row.source.confidence is Confidence.PRACTICE
            yield at_least(
                f"insulation by {row.text('said_by')}",
                reading,
                row.number("limit_Mohm"),
                "Mohm",
                source=row.source,
                advisory=True,
                origin=Origin.PRACTICE if practice else Origin.STANDARD,
                says=f"stricter than the standard: {row.note}",
                action="dry and clean it, read again; write the reading down and watch it",
                better=BETTER,
                behind=_BEHIND.format(limit),
            )
