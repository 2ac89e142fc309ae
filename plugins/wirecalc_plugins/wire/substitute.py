"""Another wire in place of the one that was there."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Problem,
    Verdict,
    at_or_below,
    calculation,
    caution,
    figure,
    listing,
    put,
)

from .compared import coating, copper, marked, metal, rating, same_gauge, size, strands
from .substitute_inputs import (
    NewFlameRated,
    NewOilResistant,
    NewWire,
    NewWireTemperature,
    NewWireVoltage,
    OldFlameRated,
    OldOilResistant,
    OldWire,
    OldWireTemperature,
    OldWireVoltage,
)

_WORDS = {
    Verdict.PASS: "not lower",
    Verdict.MARGINAL: "lower, advised",
    Verdict.CANNOT_TELL: "not known",
    Verdict.FAIL: "LOWER",
}


LEAST_RATING_C = 60.0  # no wire of appliance or building is rated for less; common practice


def _refuse(old_wire_temperature: float | None = None) -> Iterator[Problem]:
    if old_wire_temperature is not None and not at_or_below(LEAST_RATING_C, old_wire_temperature):
        yield Problem(
            "old_wire_temperature",
            f"{old_wire_temperature:.4g} C is no rating of a wire: the least is "
            f"{LEAST_RATING_C:g} C",
            "read the print again, its unit and its point; where there is none, write unknown",
        )


@calculation(
    part="wire and joint",
    words=(
        "replace wire; replacement wire; replacing wire; substitute wire; other wire",
        "different wire; wrong wire; swap wire; thicker wire; thinner wire; bigger wire",
        "smaller wire; heavier gauge; lighter gauge; rewire; rewiring; harness; wire harness",
        "wire loom; loom; repair harness; appliance wire; hook-up wire; hookup wire; lead wire",
        "wire type; wire style; AWM; MTW; TEW; THHN; oven wire; silicone wire; high temp wire",
        "glass wire; oil resistant; flame rating; VW-1; voltage rating; 300 V; 600 V; burnt wire",
        "chewed wire; rodent; mouse; mice; instead of; in place of; wire size; flex; upsize",
        "downsize; too thin; next size up; next size down; bigger gauge; alternative; old wire",
        "equivalent wire; wire upgrade; match the wire; SRML; SEW-2; SF-2; TGGT; MG; GPT; SXL",
        "XLPE; PVC; cord replacement; primary wire; PTFE; PTFE wire; aluminium wire",
        "can I use; can I fit; mix wire; swap wire for; 105 for 90; 90 for 105; 16 for 14",
        "14 for 16; smaller in place of; other colour; thinner; thicker; house wire in appliance",
        "speaker wire; automotive wire; car wire; building wire; bell wire; wire from stock",
        "wrong insulation; different insulation; solid for stranded; tinned for bare; wire code",
        "UL style; style 1015; mouse chewed; chewed; new harness; wire too short",
        "flex colours; wire colours; colour of wire; brown blue; green and yellow; old colours",
        "new flex; replacement flex; flex swap; cord swap",
    ),
    go_on="see that it fits barrel and place: splice, heat-rating",
    chosen=("new_wire",),
    not_checked=(
        "the maker's sheet, which comes first",
        "whether the new wire fits the barrel, the strain relief and the place",
        "current: no building-wire table makes a thinner wire do inside an appliance",
    ),
    refuse=_refuse,
    example_with=(
        "new_wire=16 AWG tinned",
        "old_wire_temperature",
        "new_wire_temperature",
        "old_wire_voltage",
        "new_wire_voltage",
        "old_oil_resistant=no",
        "old_flame_rated=no",
    ),
)
def substitute(
    old_wire: OldWire,
    new_wire: NewWire,
    old_wire_temperature: OldWireTemperature = None,
    new_wire_temperature: NewWireTemperature = None,
    old_wire_voltage: OldWireVoltage = None,
    new_wire_voltage: NewWireVoltage = None,
    old_oil_resistant: OldOilResistant = None,
    new_oil_resistant: NewOilResistant = None,
    old_flame_rated: OldFlameRated = None,
    new_flame_rated: NewFlameRated = None,
) -> Iterator[Item]:
    """May this wire take the place of that one?

    Line by line, new against old, nothing may be lower (common practice): size, strands, metal,
    coating, temperature, voltage, oil and chemicals, flame. Two gauges, or standard builds of
    them, are compared by gauge (a larger AWG number is a thinner wire), other wires by area with
    2.5 % allowed. Solid does not replace stranded. Copper only. Bare is less than tinned, tinned
    less than silver, silver less than nickel; a wire written without a coating counts as bare. A
    line that either wire lacks can't be told, unless the old one was not so marked or the new is.

    Meant for wire inside appliances; a cord and building wire have rules of their own.

    Inputs: both wires; temperature ratings in C (to 500), voltage ratings in V (to 5000);
    oil and flame as yes or no. Yields the lines and one criterion a line. Refuses an old rating
    under 60 C.
    Source: common practice; ASTM B258 for the gauges.
    """
    lines = {
        "size": size(old_wire, new_wire),
        "strands": strands(old_wire, new_wire),
        "metal": metal(old_wire, new_wire),
        "coating": coating(old_wire, new_wire),
        "temperature rating": rating(
            "temperature rating",
            "wire_temperature",
            old_wire_temperature,
            new_wire_temperature,
            "C",
        ),
        "voltage rating": rating(
            "voltage rating", "wire_voltage", old_wire_voltage, new_wire_voltage, "V"
        ),
        "oil and chemicals": marked(
            "oil and chemicals", "oil_resistant", old_oil_resistant, new_oil_resistant
        ),
        "flame rating": marked("flame rating", "flame_rated", old_flame_rated, new_flame_rated),
    }
    yield figure(
        "copper of the new wire against the old",
        100 * (new_wire.area_cmil / old_wire.area_cmil - 1),
        "%",
        working=lambda: f"100 x ({put(new_wire.area_mm2)} mm2 / {put(old_wire.area_mm2)} mm2 - 1)",
    )
    for line in lines.values():
        yield line.judged
    if any(line.judged.verdict is not Verdict.PASS for line in lines.values()):
        yield caution("sub-01")
    if same_gauge(old_wire, new_wire):
        yield copper(old_wire, new_wire)
    if {old_wire.metal, new_wire.metal} != {"copper"}:
        yield caution("alu-01")
    yield listing(
        "Line by line",
        ("line", "old", "new", ""),
        ((name, x.old, x.new, _WORDS[x.judged.verdict]) for name, x in lines.items()),
    )
