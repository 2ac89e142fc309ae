"""Wires and readings as hands type them: refused, or read as exactly what was meant.

A text is put together from its parts, and what it means is worked out from the parts: from the
law of ASTM B258, the area of a circle and the exact factors of NIST SP 811 (2008), appendix B. Then
it is typed badly: other blanks and case, decimal commas, letters that look alike, separators, a
mark left out. By night there are 2,500 in each of the five tests.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import BadInput, BadText, Reading
from wirecalc.typed.wire_lists import wires_in
from wirecalc.typed.wires import Wire, read_wire

TYPED = settings(deadline=None, max_examples=125)  # by night twenty times as many
RUN = wirecalc.build(bundled_only=True).run

BLANKS = st.sampled_from(["", " ", "  ", "\t", "\u00a0", "\u2009"])
LOOKS_LIKE = {  # letters and signs that stand there in place of others
    "x": "х×✕", "A": "АΑ", "W": "Ԝ", "m": "мｍ", "2": "２²٢", "5": "５٥", "1": "１l", "0": "０O",
    ".": ",·٫", "-": "−–", " ": "\u200b", "s": "ｓ", "V": "Ѵ", "u": "µμ", "/": "⁄",
}  # fmt: skip


class Conductor(NamedTuple):
    """A wire as it is meant; `size` names it in a text that is read in one way only."""

    size: str
    cmil: float
    stranded: bool
    metal: str

    def is_read_as(self, wire: Wire) -> bool:
        same = (wire.stranded, wire.metal) == self[2:]
        return same and math.isclose(wire.area_cmil, self.cmil, rel_tol=1e-9)


class Typed(NamedTuple):
    """A text, and each list of wires that a careful reader may find in it."""

    text: str
    meant: list[list[Conductor]]


def law(gauge: str) -> float:
    number = 1 - int(gauge[0]) if "/" in gauge else int(gauge)
    return (5 * 92 ** ((36 - number) / 39)) ** 2


def circle(diameter: str, unit: str) -> float:
    return (float(diameter) * {"mm": 1 / 0.0254, "mil": 1, "in": 1000}[unit]) ** 2


GAUGES = st.sampled_from(["2/0", "1/0", "2", "6", "10", "12", "14", "16", "18", "22", "23", "30"])
AREAS = {"mm2": 4 / math.pi / 0.0254**2, "mm²": 4 / math.pi / 0.0254**2, "cmil": 1, "kcmil": 1e3}
DIAMETERS = st.sampled_from(
    ["0.2 mm", "0.254 mm", "0.5 mm", "1.5 mm", "2.5 mm", "10 mil", "25.3 mil", "0.01 in", "64 mil"]
)
METALS = {"": "copper", "copper": "copper", "cu": "copper", "aluminum": "aluminium"}
METALS |= {"al": "aluminium", "CCA": "copper-clad aluminium"}


@st.composite
def sizes(draw: st.DrawFn) -> tuple[str, float, str]:
    """Return a size as text, its area in cmil, and what it is named by."""
    by = draw(st.sampled_from(["gauge", "gauge", "area", "diameter"]))
    if by == "gauge":
        gauge = draw(GAUGES)
        return (
            f"{gauge}{draw(BLANKS)}{draw(st.sampled_from(['AWG', 'awg', 'Awg']))}",
            law(gauge),
            by,
        )
    if by == "diameter":
        number, unit = draw(DIAMETERS).split()
        return f"{number}{draw(BLANKS)}{unit}", circle(number, unit), by
    unit = draw(st.sampled_from(list(AREAS)))
    span = ("0.5", "60") if unit[0] != "c" else ("500", "60000")
    number = draw(st.decimals(*span, places=draw(st.integers(0, 2))))
    return f"{number}{draw(BLANKS)}{unit}", float(number) * AREAS[unit], by


@st.composite
def wires(draw: st.DrawFn) -> Typed:
    """One wire, or several of one kind, by a number before a size."""
    size, cmil, by = draw(sizes())
    build = draw(st.sampled_from(["", "", "solid", "stranded"]))
    metal = draw(st.sampled_from(list(METALS)))
    between = draw(st.sampled_from([" ", ", ", "  "]))
    words = "".join(between + word for word in draw(st.permutations([build, metal])) if word)
    one = Conductor(plain(size), cmil, build != "solid", METALS[metal])
    counts = [0, 0, 0, 1, 2, 3, 6, 7, 19] + [26, 41] * (by != "area")
    count = draw(st.sampled_from(counts))
    number = re.split("[^0-9.]", size)[0]
    mm2 = one._replace(size=f"{number} mm2", cmil=float(number) * AREAS["mm2"])
    mm2 = mm2 if "mm" in size else one
    solid = one._replace(stranded=False)
    if not count:
        return Typed(size + words, [[mm2], [solid]] if by == "diameter" else [[one]])
    sign = draw(BLANKS) + draw(st.sampled_from("xX×")) + draw(BLANKS)
    together = one._replace(
        size=f"{count}x{cmil**0.5!r} mil", cmil=cmil * count, stranded=build != "solid"
    )
    meant = [[one] * count] if by != "diameter" else [[mm2] * count, [solid] * count]
    meant += [[together]] if by != "area" and count > 1 else []
    return Typed(f"{count}{sign}{size}{words}", meant)


PARTING = st.sampled_from([";", "+", ",", ", "])


@st.composite
def texts_of_wires(draw: st.DrawFn, signs: st.SearchStrategy[str] = PARTING) -> Typed:
    """One wire or a list of them in one text."""
    parts = draw(st.lists(wires(), min_size=1, max_size=3))
    text = parts[0].text
    for part in parts[1:]:
        text += draw(BLANKS) + draw(signs) + draw(BLANKS) + part.text
    meant: list[list[Conductor]] = [[]]
    for part in parts:
        meant = [before + more for before in meant for more in part.meant]
    return Typed(text, meant)


@st.composite
def gauges_with_one_unit(draw: st.DrawFn) -> Typed:
    gauges = draw(st.lists(GAUGES, min_size=2, max_size=4))
    word = draw(st.sampled_from(["", " solid", ", solid"]))
    text = draw(st.sampled_from([",", ", ", "+", " + "])).join(gauges) + " AWG" + word
    return Typed(text, [[Conductor(f"{g} AWG", law(g), not word, "copper") for g in gauges]])


@st.composite
def mangled(draw: st.DrawFn, text: str) -> str:
    """Type a text as a hand may: a sign that looks alike, a comma, a mark or a blank left out."""
    how = draw(st.sampled_from(["", "", "alike", "blank", "no 2", "case"]))
    if how == "alike":
        at = draw(st.integers(0, len(text) - 1))
        others = LOOKS_LIKE.get(text[at], text[at])
        return text[:at] + draw(st.sampled_from(others)) + text[at + 1 :]
    if how == "blank":
        at = draw(st.integers(0, len(text)))
        # not between digits, where it makes other numbers
        apart = at and re.match(r"[0-9./]{2}", text[at - 1 : at + 1])
        return text if apart else text[:at] + " " + text[at:]
    if how == "no 2" and "solid" not in text:  # 2.5 mm solid is the spelling of a diameter
        return re.sub("(?<=mm)[2²]", "", text)
    return text.swapcase() if how == "case" and not re.search("ohm|[mM][AVW]|[FC]", text) else text


def understood(wires: Sequence[Wire], meant: list[list[Conductor]]) -> bool:
    return any(
        len(wires) == len(each) and all(m.is_read_as(w) for m, w in zip(each, wires, strict=True))
        for each in meant
    )


def verdict_of(calculation: str, given: Mapping[str, Any]) -> str | None:
    """Return a verdict; None where it is refused."""
    try:
        return str(RUN(calculation, given).verdict)
    except BadInput:
        return None


def plain(size: str) -> str:
    """Write a size with one blank before its unit."""
    return re.sub(r"([0-9])\s*(AWG|mm|mil|in|k?cmil)", r"\1 \2", size, flags=re.IGNORECASE)


def canonical(wire: Conductor) -> str:
    return f"{wire.size} {'stranded' if wire.stranded else 'solid'} {wire.metal}"


typed_wires = st.one_of(texts_of_wires(), gauges_with_one_unit(), wires())


@TYPED
@given(typed_wires, st.data())
def test_a_wire_is_refused_or_read_as_it_was_meant(typed: Typed, data: st.DataObject) -> None:
    text = data.draw(mangled(typed.text))
    several = wires_in(text)
    try:
        assert understood([read_wire(one) for one in several], typed.meant), text
    except BadText as error:
        assert str(error)
    try:
        alone = read_wire(text)
    except BadText:
        return
    assert understood([alone], typed.meant), text
    assert len(several) == 1


@TYPED
@given(texts_of_wires(st.just(";")))
def test_what_has_one_meaning_is_read(typed: Typed) -> None:
    if len(typed.meant) == 1:
        assert understood([read_wire(one) for one in wires_in(typed.text)], typed.meant)


# ---- readings -----------------------------------------------------------------------------

IN, LBF = Fraction("25.4"), Fraction("4.4482216152605")  # exact: mm, N
FACTORS: dict[str, dict[str, Fraction]] = {  # spelling -> how many of the first one it is
    "A": {"A": Fraction(1), "amps": Fraction(1), "mA": Fraction(1, 1000), "µA": Fraction(1, 10**6)},
    "V": {"V": Fraction(1), "VAC": Fraction(1), "mV": Fraction(1, 1000), "kV": Fraction(1000)},
    "ohm": {"ohm": Fraction(1), "Ω": Fraction(1), "mohm": Fraction(1, 1000), "kΩ": Fraction(1000)}
    | {"Mohm": Fraction(10**6), "megohm": Fraction(10**6)},
    "mm": {"mm": Fraction(1), "in": IN, '"': IN, "ft": 12 * IN, "mil": IN / 1000},
    "lbf": {"lbf": Fraction(1), "N": 1 / LBF, "kgf": Fraction("9.80665") / LBF},
    "uF": {"uF": Fraction(1), "MFD": Fraction(1), "µF": Fraction(1), "nF": Fraction(1, 1000)},
    "s": {"s": Fraction(1), "ms": Fraction(1, 1000), "min": Fraction(60), "h": Fraction(3600)},
}  # fmt: skip
KINDS = {unit: Reading(unit, text="a reading") for unit in FACTORS}


class Measured(NamedTuple):
    """A reading as text, and its value with its low and high as they are meant."""

    text: str
    unit: str
    ends: tuple[Fraction, ...]

    def is_read_as(self, *ends: float | None) -> bool:
        got = [end for end in ends if end is not None]
        return len(got) == len(self.ends) and all(
            math.isclose(one, end, rel_tol=1e-9, abs_tol=1e-12)
            for one, end in zip(got, self.ends, strict=True)
        )


@st.composite
def numbers(draw: st.DrawFn, unit: str) -> tuple[str, Fraction, Fraction | None]:
    """Return a number as text, its value, and the worth of its last digit."""
    if unit in ("in", '"', "ft") and draw(st.booleans()):
        low = draw(st.sampled_from([2, 4, 8, 16, 32, 64]))
        top, whole = draw(st.integers(1, low - 1)), draw(st.integers(0, 12))
        text = f"{whole}{draw(st.sampled_from(' -'))}" if whole else ""
        return f"{text}{top}/{low}", whole + Fraction(top, low), None
    places = draw(st.integers(0, 3))
    number = draw(st.decimals("0.001", 2500, places=places))
    return f"{number}", Fraction(number), Fraction(1, 10**places)


@st.composite
def readings(draw: st.DrawFn) -> Measured:
    wanted = draw(st.sampled_from(list(FACTORS)))
    unit = draw(st.sampled_from(list(FACTORS[wanted])))
    factor = FACTORS[wanted][unit]
    text, value, step = draw(numbers(unit))
    text += draw(BLANKS) + unit
    mark = draw(BLANKS) + draw(st.sampled_from(["±", "+/-", "+-"])) + draw(BLANKS)
    percent = Fraction(draw(st.integers(0, 9)))
    count = draw(st.integers(0, 20))
    error = draw(st.sampled_from(["", "", "percent", "counts", "amount"]))
    if not error or step is None:
        return Measured(text, wanted, (value * factor,))
    off = {"percent": value * percent / 100, "amount": Fraction(count, 10)}.get(
        error, value * percent / 100 + count * step
    )
    said = {"percent": f"{percent}%", "amount": f"{count / 10} {unit}"}.get(
        error, f"({percent}%+{count})"
    )
    ends = (value * factor, (value - off) * factor, (value + off) * factor)
    return Measured(f"{text}{mark}{said}", wanted, ends)


@TYPED
@given(readings(), st.data())
def test_a_reading_is_refused_or_read_as_it_was_meant(typed: Measured, data: st.DataObject) -> None:
    text = data.draw(mangled(typed.text))
    try:
        read = KINDS[typed.unit].read(text)
    except BadText as error:
        assert text != typed.text, error
        return
    assert typed.is_read_as(read.value, read.low, read.high), text


@TYPED
@given(st.lists(readings(), min_size=2, max_size=3), st.sampled_from(["; ", ";", ",", ", "]))
def test_readings_in_one_text_are_refused_or_parted_between_them(
    typed: list[Measured], sign: str
) -> None:
    typed = [one for one in typed if one.unit == typed[0].unit]
    kind = KINDS[typed[0].unit]
    parts = kind.parts(sign.join(one.text for one in typed))
    if ";" in sign or not any(mark in one.text for one in typed for mark in ("±", "+/-", "+-")):
        assert len(parts) == len(typed)
        for one, part in zip(typed, parts, strict=True):
            read = kind.read(part)
            assert one.is_read_as(read.value, read.low, read.high)
    else:
        assert len(parts) == 1  # a text with an error is not parted at a comma


# ---- verdicts -----------------------------------------------------------------------------

HEAT = {"wire_temperature": "105 C", "terminal_temperature": "105 C", "place_temperature": "60 C"}
PLACE = {"use": "building", "insulation_class": "60 C", "termination_temperature": "60 C"}
RATED = {"old_wire_temperature": "80 C", "new_wire_temperature": "105 C"}
RATED |= {"old_wire_voltage": "300 V", "new_wire_voltage": "600 V"}
# calculation: the wire, and the rest, by which some wires pass and others fail
ASKED: dict[str, tuple[str, dict[str, Any]]] = {
    "ampacity": ("wire", PLACE | {"ambient": "25 C", "conductors": "2", "current": "20 A"}),
    "pull": ("wire", {"force": "25 lbf ±0.1 lbf", "terminal": "ring"}),
    "substitute": ("new_wire", RATED | {"old_wire": "14 AWG solid"}),
    "splice": (
        "wire",
        HEAT
        | {"barrel": "16-14 AWG", "wire_limit": "3", "listed_for": "stranded"}
        | {"current": "8 A", "circuit_voltage": "120 V", "terminal_voltage": "300 V"},
    ),
}


@TYPED
@given(st.sampled_from(list(ASKED)), typed_wires, st.data())
def test_no_typing_gives_another_verdict_than_what_was_meant(
    calculation: str, typed: Typed, data: st.DataObject
) -> None:
    name, rest = ASKED[calculation]
    text = data.draw(mangled(typed.text))
    found = verdict_of(calculation, {**rest, name: text})
    if found is None:
        return
    meant = [
        verdict_of(calculation, {**rest, name: [canonical(wire) for wire in each]})
        for each in typed.meant
        if len(each) == 1 or calculation == "splice"
    ]
    assert found in meant, text
