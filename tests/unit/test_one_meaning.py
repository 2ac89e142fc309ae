"""One text, one meaning: what may be read in two ways is refused, and no hint changes a meaning.

Areas are of the law of ASTM B258 (25 x 92^((36 - n) / 19.5) circular mils of 0.0005067075 mm2) or
of the circle, worked out by hand.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import wirecalc
from wirecalc.base.errors import BadText
from wirecalc.typed.quantities import read_quantity
from wirecalc.typed.size_ranges import read_size_range
from wirecalc.typed.wire_lists import wires_in
from wirecalc.typed.wires import read_wire

ROOT = Path(__file__).parents[2]


def refusal_of_wire(text: str) -> str:
    with pytest.raises(BadText) as caught:
        read_wire(text)
    return str(caught.value)


def refusal(calculation: str, **changed: object) -> str:
    """What a calculation says of its own example with some inputs changed."""
    example = wirecalc.build(bundled_only=True).calculations[calculation].calculation
    with pytest.raises(wirecalc.BadInput) as caught:
        wirecalc.run(calculation, **{**example.example_inputs, **changed})
    return str(caught.value)


# ---- a wire -------------------------------------------------------------------------------


@pytest.mark.parametrize("text", ["2.5 mm", "2.5mm", "2.5 mm tinned copper", "2.5 mm stranded"])
def test_millimetres_alone_are_refused_with_both_spellings(text: str) -> None:
    said = refusal_of_wire(text)
    assert "write 2.5 mm2, or 2.5 mm solid" in said


@pytest.mark.parametrize("text", ["64 mil", "0.064 in"])
def test_any_diameter_alone_may_be_that_of_a_strand_or_of_the_bundle(text: str) -> None:
    assert f"{text} solid" in refusal_of_wire(text)


@pytest.mark.parametrize(
    ("text", "mm2", "stranded"),
    [
        ("2.5 mm2", 2.5, True),
        ("2.5 mm²", 2.5, True),
        ("2.5 mm solid", 4.909, False),  # pi / 4 x 2.5^2
        ("64 mil solid", 2.075, False),  # pi / 4 x (64 x 0.0254)^2
        ("26x30 AWG", 1.324, True),  # 26 x 0.05093
        ("7x23 AWG", 1.807, True),  # the fewest and the thickest strands: 7 x 0.2582
        ("7x0.49 mm", 1.320, True),
        ("41x0.254 mm", 2.078, True),
        ("7x64 mil", 14.53, True),
    ],
)
def test_texts_with_one_meaning_are_that_wire(text: str, mm2: float, stranded: bool) -> None:
    wire = read_wire(text)
    assert wire.area_mm2 == pytest.approx(mm2, rel=1e-3)
    assert wire.stranded is stranded


@pytest.mark.parametrize(
    ("text", "wire", "strands"),
    [
        ("2x18 AWG", "18 AWG", "1.64 mm2"),  # 2 x 0.8230, rounded down
        ("2 X 18awg", "18 AWG", "1.64 mm2"),
        ("6x30 AWG", "30 AWG", "0.305 mm2"),  # 6 x 0.05093
        ("7x22 AWG", "22 AWG", "7x25.3 mil"),  # 5 x 92^((36 - 22) / 39), rounded down
        ("30x12 AWG", "12 AWG", "30x80.8 mil"),
        ("3x1.5 mm", "1.5 mm2", "5.3 mm2"),  # 3 x 1.767: a cable of three wires of 1.5 mm2
        ("7x1.5 mm", "1.5 mm2", "7x59 mil"),  # 1.5 / 0.0254
        ("7x0.5 mm", "0.5 mm2", "7x19.6 mil"),
        ("7x2mm", "2 mm2", "7x78.7 mil"),
        ("6x10 mil", "10 mil", "0.304 mm2"),
    ],
)
def test_few_thick_strands_are_refused_with_both_spellings(
    text: str, wire: str, strands: str
) -> None:
    said = refusal_of_wire(text)
    assert f"write {wire} for the one wire that is asked for" in said
    assert f"{strands} for the strands together" in said


def test_one_of_a_size_may_be_a_wire_or_a_strand() -> None:
    assert "write 18 AWG, or 18 AWG solid" in refusal_of_wire("1x18 AWG")
    assert "write 1.5 mm2, or 1.5 mm solid" in refusal_of_wire("1x1.5 mm")


@pytest.mark.parametrize(
    ("text", "count"),
    [("18 AWG + 16 AWG", 2), ("18,18,16 AWG", 3), ("18 AWG; 16 AWG", 2), ("18 AWG,1.5 mm2", 2)],
)
def test_several_wires_where_one_is_asked_for(text: str, count: int) -> None:
    assert f"names {count} wires; give one alone" in refusal_of_wire(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("2,5 mm2", "write a point: 2.5 mm2"),
        ("26x0,254 mm", "write a point: 26x0.254 mm"),
        ("2,050 cmil", "write 2.050 cmil or 2050 cmil"),
        ("1,5 mm2, 2,5 mm2", "a point and no comma"),
        ("16-14 AWG", "write one wire, such as 16 AWG"),
        ("26/30 AWG", "26 strands of 30 AWG; write 26x30 AWG for them"),
        ("18 AWG, solid, 16 AWG", "the one size of one wire"),
    ],
)
def test_other_texts_that_are_no_one_wire(text: str, says: str) -> None:
    assert says in refusal_of_wire(text)


@pytest.mark.parametrize("text", ["18 AWG ccs", "18 AWG aluminised", "18 AWG sulid"])
def test_no_other_metal_is_offered_for_a_word_that_begins_otherwise(text: str) -> None:
    assert "did you mean" not in refusal_of_wire(text) or "alumini" in text


# ---- a list of wires ----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "wires"),
    [
        ("18 AWG", ["18 AWG"]),
        ("2x18 AWG", ["18 AWG"] * 2),
        ("2×18 AWG solid", ["18 AWG solid"] * 2),
        ("20x22 AWG", ["22 AWG"] * 20),
        ("18 AWG + 16 AWG", ["18 AWG", "16 AWG"]),
        ("18,18,16 AWG", ["18 AWG", "18 AWG", "16 AWG"]),
        ("18, 2/0 AWG tinned", ["18 AWG tinned", "2/0 AWG tinned"]),
        ("18 AWG; 16 AWG", ["18 AWG", "16 AWG"]),
        ("18 + 16 AWG", ["18 AWG", "16 AWG"]),
        ("18 AWG,1.5 mm2", ["18 AWG", "1.5 mm2"]),
        ("2x18 AWG + 1x16 AWG", ["18 AWG", "18 AWG", "16 AWG"]),
        ("2x1.5 mm2; 26x30 AWG", ["1.5 mm2", "1.5 mm2", "26x30 AWG"]),
        ("2x26x30 AWG", ["26x30 AWG"] * 2),
        ("26x30 AWG", ["26x30 AWG"]),
        ("41x0.254 mm", ["41x0.254 mm"]),
        ("18 AWG, solid, tinned", ["18 AWG, solid, tinned"]),
        ("2x18 AWG, solid", ["18 AWG, solid"] * 2),
    ],
)
def test_a_text_in_a_list_is_the_wires_that_it_says(text: str, wires: list[str]) -> None:
    assert list(wires_in(text)) == wires
    for wire in wires:
        read_wire(wire)


@pytest.mark.parametrize(
    "text",
    [
        "2,5 mm2",
        "18, 16 mm2",
        "18, 16 AWG, solid",
        "18, 16.5 AWG",
        "18 AWG ± 1, 16 AWG",
        "18 AWG +/- 16",
        "21x18 AWG",
        "2x2.5 mm",
        "18 AWG;; 16 AWG",
        "18 AWG;",
        "18,,16 AWG",
        "0x18 AWG",
    ],
)
def test_a_text_in_a_list_with_other_meanings_is_refused(text: str) -> None:
    assert "wire" in refusal("splice", wire=[text])
    assert "wire" in refusal("splice", wire=text)


# ---- what was understood ------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "understood"),
    [
        ("14 AWG", "14 AWG stranded copper, 2.08 mm2"),
        ("014awg SOLID,tinned", "14 AWG solid tinned copper, 2.08 mm2"),
        ("00 AWG", "2/0 AWG stranded copper, 67.4 mm2"),
        ("26 × 30 awg", "26x30 AWG stranded copper, 1.32 mm2"),
        ("2.5 mm2 al", "2.5 mm2 stranded aluminium"),
        ("4110 cmil", "4110 cmil stranded copper, 2.08 mm2"),
        ("2.5 mm solid", "2.5 mm solid copper, 4.91 mm2"),
        ("12 AWG CCA", "12 AWG stranded copper-clad aluminium, 3.31 mm2"),
    ],
)
def test_what_was_understood_has_its_area(text: str, understood: str) -> None:
    assert read_wire(text).understood == understood


# ---- numbers ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "dimension", "unit", "says"),
    [
        ("35/5 uF", "capacitance", "uF", "a fraction is less than one"),
        ("5/35 uF", "capacitance", "uF", "fractions are for in, ft, hp"),
        ("120/240 V", "voltage", "V", "fractions are for in, ft, hp"),
        ("4/8 A", "current", "A", "fractions are for in, ft, hp"),
        ("1/2 h", "time", "s", "fractions are for in, ft, hp"),
        ("1/4 mm", "length", "mm", "fractions are for in, ft, hp"),
        ("1/4 kW", "power", "W", "fractions are for in, ft, hp"),
        ("11/2 in", "length", "in", "a fraction is less than one"),
        ("1 5/4 in", "length", "in", "a fraction is less than one"),
        ("4/4 in", "length", "in", "a fraction is less than one"),
        ("1.3 A ±1/2 A", "current", "A", "fractions are for in, ft, hp"),
        ("1.3 A ±1/2%", "current", "A", "is not an error"),
        ("9/32", "length", "mm", "has no unit; write 9/32 in"),
        ("3/4", "power", "W", "write 3/4 hp"),
        ("1/4", "current", "A", "write it as a decimal with its unit"),
        ("1,200 W", "power", "W", "write 1.200 W or 1200 W"),
        ("0,125 in", "length", "in", "write a point: 0.125 in"),
        ("1,234,567 ohm", "resistance", "ohm", "a point and no comma"),
        ("1,234.5 ohm", "resistance", "ohm", "a point and no comma"),
        ("1.2 A ±0,05 A", "current", "A", "write a point: 0.05 A"),
        ("2 kA", "current", "A", "write it in A, mA, uA"),
        ("2 Gohm", "resistance", "Mohm", "write it in ohm, mohm, kohm, Mohm"),
    ],
)
def test_a_hint_says_the_same_or_leaves_it_open(
    text: str, dimension: str, unit: str, says: str
) -> None:
    with pytest.raises(BadText) as caught:
        read_quantity(text, dimension, unit)
    said = str(caught.value)
    assert says in said
    assert "did you mean" not in said
    assert "7" not in said or "7" in text  # 35/5 is not worked out


@pytest.mark.parametrize(
    ("text", "dimension", "unit", "value"),
    [
        ("9/32 in", "length", "in", 0.28125),
        ("1 1/4 in", "length", "in", 1.25),
        ("1/2 ft", "length", "ft", 0.5),
        ("1/4 in ±1/64 in", "length", "in", 0.25),
        ("2/3 hp", "power", "hp", 2 / 3),
        ("5 microamp", "current", "mA", 0.005),
        ("2 volst", "voltage", "V", None),
    ],
)
def test_twins_are_read(text: str, dimension: str, unit: str, value: float | None) -> None:
    if value is None:
        with pytest.raises(BadText, match="did you mean volt"):
            read_quantity(text, dimension, unit)
    else:
        assert read_quantity(text, dimension, unit).value == pytest.approx(value)


def test_a_range_of_areas_that_looks_like_gauges_asks_which_was_meant() -> None:
    with pytest.raises(BadText) as caught:
        read_size_range("16-14 mm2")
    assert str(caught.value).endswith("did you mean 16-14 AWG? else write 14-16 mm2")
    with pytest.raises(BadText) as caught:
        read_size_range("2.5-1.5 mm2")
    assert str(caught.value).endswith("; write 1.5-2.5 mm2")
    with pytest.raises(BadText, match="no fraction"):
        read_size_range("1/2-35/5 mm2")
    assert read_size_range("14-16 mm2").low_cmil == pytest.approx(14 * 1973.525)


# ---- hints where a number does not fit ----------------------------------------------------


@pytest.mark.parametrize("calculation", ["capacitor", "discharge"])
def test_volts_of_a_dangerous_capacitor_are_not_offered_as_millivolts(calculation: str) -> None:
    said = refusal(calculation, capacitor_voltage="2100 V")
    assert "high-voltage" in said and "mV" not in said


@pytest.mark.parametrize(
    ("calculation", "name", "text"),
    [
        ("capacitor", "capacitor_rating", "2100 V"),
        ("inrush", "settle_time", "937 s"),
        ("leakage", "leakage_current", "300 mA"),
        ("leakage", "leakage_current", "0.3 A"),
        ("breaker", "current", "8700 A"),
        ("start-device", "device_resistance", "6800 kohm"),
        ("capacitor", "marked_capacitance", "30000 uF"),
        ("inrush", "settle_time", "11 min"),
    ],
)
def test_no_other_prefix_is_offered_for_a_number_out_of_the_span(
    calculation: str, name: str, text: str
) -> None:
    said = refusal(calculation, **{name: text})
    number, unit = text.split()
    assert "is outside" in said
    assert "did you mean" not in said
    assert not re.search(rf"(?<!'){number} ?(?!{unit}\b)[a-zA-Z]+", said)


@pytest.mark.parametrize(
    ("calculation", "name", "text", "meant"),
    [
        ("tab", "tab_width", "6.3 in", "did you mean 6.3 mm?"),
        ("tab", "tab_width", "0.25 mm", "did you mean 0.25 in?"),
        ("heat-rating", "place_temperature", "600 C", "did you mean 600 F?"),
        ("pull", "force", "6000 kgf", "did you mean 6000 lbf?"),
        ("ground", "ground_resistance", "0.25 Mohm", "which was meant?"),
        ("insulation", "insulation_resistance", "20 mohm", "which unit was meant?"),
    ],
)
def test_real_slips_are_asked_about(calculation: str, name: str, text: str, meant: str) -> None:
    assert meant in refusal(calculation, **{name: text})


@pytest.mark.parametrize("word", ["M45", "m3.6"])
def test_no_other_number_is_offered_for_a_word_with_one(word: str) -> None:
    assert "did you mean" not in refusal("ring", stud=word)
    assert "did you mean ul-489?" in refusal("trip", device="ul-498")


# ---- the page -----------------------------------------------------------------------------


def rows(page: str, titles: str) -> list[tuple[str, list[str], list[str]]]:
    table = page.split("| what | is written | and not |")[1].split("\n\n")[0]
    cells = [line.strip("| ").split(" | ") for line in table.splitlines()[2:]]
    texts = [(c[0], re.findall("`([^`]+)`", c[1]), re.findall("`([^`]+)`", c[2])) for c in cells]
    return [row for row in texts if re.search(titles, row[0])]


def test_the_page_on_typing_says_what_is_so() -> None:
    page = (ROOT / "docs" / "inputs.md").read_text(encoding="utf-8")
    for _, good, bad in rows(page, "wire by gauge|by its area|diameter|by its strands"):
        for text in good:
            read_wire(text)
        for text in bad:
            refusal_of_wire(text)
    for _, good, bad in rows(page, "several wires"):
        assert all(len(wires_in(text)) > 1 for text in good)
        assert all(len(wires_in(text)) == 1 for text in bad)
    units = {"A": "current", "uF": "capacitance", "V": "voltage", "h": "time", "W": "power"}
    units |= {"in": "length", "ft": "length", "hp": "power", "9/32": "length"}
    for _, good, bad in rows(page, "^a (number|fraction|reading)"):
        for text in good + bad:
            unit = re.split("[ ±+]+", text.split(" ±")[0].split(" +/-")[0])[-1]
            try:
                read_quantity(text, units[unit], unit if unit in units and unit != "9/32" else "in")
                assert text in good
            except BadText:
                assert text in bad


# ---- a choice that another calculation has, and this one nothing for -----------------------


@pytest.mark.parametrize(
    ("calculation", "changed", "says"),
    [
        ("extension", {"protection": "class-iii"}, "class of the supply unit"),
        ("pull-batch", {"terminal": "clamp"}, "a clamp terminal is none; judge each pull"),
    ],
)
def test_a_shared_choice_that_has_nothing_here_is_refused_in_words(
    calculation: str, changed: dict[str, str], says: str
) -> None:
    assert says in refusal(calculation, **changed)


@pytest.mark.parametrize(
    ("calculation", "name", "most", "past"),
    [
        ("capacitor", "capacitor_voltage", "1000 V", "1001 V"),
        ("discharge", "capacitor_voltage", "1000 V", "1001 V"),
        ("discharge", "left_voltage", "1414 V", "1415 V"),  # 1000 V times the root of 2
        ("ground", "cord_length", "300 ft", "301 ft"),
    ],
)
def test_what_is_past_a_thing_of_its_kind_is_refused_in_words(
    calculation: str, name: str, most: str, past: str
) -> None:
    example = wirecalc.build(bundled_only=True).calculations[calculation].calculation
    good = {n: t for n, t in example.example_inputs.items() if n != "capacitor_current"}
    assert wirecalc.run(calculation, **good | {name: most}).verdict is not None
    said = refusal(calculation, **{name: past})
    assert "high-voltage" in said or "no machine has a cord" in said
