"""Wire and ranges as people write them."""

import pytest

from wirecalc.base.errors import BadText
from wirecalc.typed.size_ranges import read_size_range
from wirecalc.typed.wire_lists import are_strands, wires_in
from wirecalc.typed.wires import gauge_cmil, gauge_name, gauge_number, read_wire


@pytest.mark.parametrize(
    ("text", "gauge", "mm2", "strands", "stranded", "metal", "coating", "assumed"),
    [
        ("18 AWG", "18", None, None, True, "copper", "bare", ("stranded", "copper")),
        ("18AWG stranded tinned copper", "18", None, None, True, "copper", "tinned", ()),
        ("14 AWG solid", "14", None, None, False, "copper", "bare", ("copper",)),
        ("2/0 AWG", "2/0", None, None, True, "copper", "bare", ("stranded", "copper")),
        ("00 AWG", "2/0", None, None, True, "copper", "bare", ("stranded", "copper")),
        ("1.5 mm2", None, 1.5, None, True, "copper", "bare", ("stranded", "copper")),
        ("26x30 AWG", None, None, 26, True, "copper", "bare", ("copper",)),
        ("41x0.254 mm", None, None, 41, True, "copper", "bare", ("copper",)),
        ("12 AWG aluminum", "12", None, None, True, "aluminium", "bare", ("stranded",)),
        (
            "12 AWG copper-clad aluminum", "12", None, None, True, "copper-clad aluminium", "bare",
            ("stranded",),
        ),
        ("16 awg, solid nickel plated", "16", None, None, False, "copper", "nickel-plated",
         ("copper",)),
    ],
)  # fmt: skip
def test_reads(
    text: str,
    gauge: str | None,
    mm2: float | None,
    strands: int | None,
    stranded: bool,
    metal: str,
    coating: str,
    assumed: tuple[str, ...],
) -> None:
    wire = read_wire(text)
    assert (wire.gauge, wire.nominal_mm2, wire.strands) == (gauge, mm2, strands)
    assert (wire.stranded, wire.metal, wire.coating) == (stranded, metal, coating)
    assert wire.assumed == assumed


def test_areas() -> None:
    assert read_wire("26x30 AWG").area_cmil == pytest.approx(26 * gauge_cmil(30))
    assert read_wire("41x0.254 mm").area_cmil == pytest.approx(41 * 10.0**2)  # 0.254 mm is 10 mil
    assert read_wire("1.5 mm2").area_mm2 == pytest.approx(1.5)
    assert read_wire("26x10 mil").area_cmil == pytest.approx(2600)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("18", "write 18 AWG"),
        ("1.5 AWG", "is it 1.5 mm2?"),
        ("50 AWG", "outside 4/0 to 40 AWG"),
        ("18 AWG sold", "did you mean solid?"),
        ("18 AWG red", "a wire may be solid"),
        ("0x30 AWG", "has no strands"),
        ("16 AWG solid stranded", "both solid and stranded"),
        ("26x30 AWG solid", "counts strands"),
        ("41x0.254 in", "check mm, mil and in"),
        ("14-2 NM", "write 14 AWG"),
        ("16/3", "write 16 AWG"),
        ("#12-2", "write 12 AWG"),
        ("copper", "names no wire size"),
        ("", "is not a wire"),
    ],
)
def test_refuses(text: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read_wire(text)
    assert says in str(caught.value)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("18 solid", "write 18 AWG solid or 18 mm2 solid"),
        ("2x1.5 mm", "may be 2 wires of 1.5 mm2, or one wire of 2 strands; write 1.5 mm2"),
        ("1x1.5 mm", "may be a wire or a strand; write 1.5 mm2, or 1.5 mm solid"),
        ("2x30 AWG", "may be 2 wires of 30 AWG, or one wire of 2 strands; write 30 AWG"),
        ("7x22 AWG", "may be 7 wires of 22 AWG, or one wire of 7 strands; write 22 AWG"),
        ("7x0.5 mm", "may be 7 wires of 0.5 mm2, or one wire of 7 strands; write 0.5 mm2"),
        ("1.5 mm", "may be an area or a diameter; write 1.5 mm2, or 1.5 mm solid"),
        ("80 mil", "write its area in cmil or mm2, or 80 mil solid"),
        ("18 AWG; 16 AWG", "names 2 wires; give one alone, such as 18 AWG"),
        ("1,5 mm2", "write a point: 1.5 mm2"),
        ("18 AWG copper aluminum", "is both copper and aluminium"),
        ("18 AWG 16", "write the one size of one wire"),
        ("600001 cmil", "wire here is 0.0025 to 304 mm2"),
        ("4.9 cmil", "wire here is 0.0025 to 304 mm2"),
        ("41 AWG", "outside 4/0 to 40 AWG"),
        ("5/0 AWG", "5/0 AWG is outside 4/0 to 40 AWG; thicker wire is written in kcmil"),
        ("00000 AWG", "outside 4/0 to 40 AWG; thicker wire is written in kcmil"),
        ("0/0 AWG", "0/0 AWG is outside 4/0 to 40 AWG; write a gauge such as 18 AWG"),
    ],
)
def test_refuses_what_may_be_two_things(text: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read_wire(text)
    assert says in str(caught.value)


def test_strands_together_are_offered_by_what_a_person_can_measure() -> None:
    """ASTM B258: 22 AWG is 25.3 mil thick, and 30 AWG has 0.0509 mm2."""
    with pytest.raises(BadText, match=r"or 7x25\.3 mil for the strands together"):
        read_wire("7x22 AWG")
    with pytest.raises(BadText, match=r"or 0\.101 mm2 for the strands together"):
        read_wire("2x30 AWG")


def test_what_was_understood_of_a_text() -> None:
    assert read_wire("14AWG").understood == "14 AWG stranded copper, 2.08 mm2"
    assert read_wire("0000 AWG tinned").understood == "4/0 AWG stranded tinned copper, 107 mm2"
    assert read_wire("1.5 mm2 solid aluminum").understood == "1.5 mm2 solid aluminium"
    assert read_wire("2.05 mm solid").understood == "2.05 mm solid copper, 3.3 mm2"


def test_name_and_strands() -> None:
    solid = read_wire("2.05 mm solid")
    assert (solid.strands, solid.stranded, solid.assumed) == (1, False, ("copper",))
    assert solid.strand_cmil == pytest.approx((2.05 / 0.0254) ** 2)
    stranded = read_wire("26x30 AWG")
    assert stranded.strand_cmil == pytest.approx(gauge_cmil(30))
    assert (stranded.name, read_wire("14AWG solid").name) == ("26x30 AWG", "14 AWG")
    assert read_wire("2.50 mm2").name == "2.5 mm2"
    assert read_wire("10.4 kcmil").area_cmil == pytest.approx(10400)
    assert read_wire("0.08 in solid").area_cmil == pytest.approx(6400)
    assert [read_wire(f"{end} cmil").area_cmil for end in (5, 600000)] == [5, 600000]


def test_the_law_of_the_gauges_at_its_printed_diameters() -> None:
    """ASTM B258: 36 AWG is 5 mil and 4/0 is 460 mil, 39 even ratios apart."""
    assert gauge_cmil(36) == 25.0
    assert gauge_cmil(-3) == pytest.approx(460.0**2)
    assert gauge_cmil(10) == pytest.approx((5 * (460 / 5) ** (26 / 39)) ** 2)
    assert [gauge_name(number) for number in (-3, 0, 1, 40)] == ["4/0", "1/0", "1", "40"]


@pytest.mark.parametrize(
    ("count", "size", "strands"),
    [
        (7, {"gauge": 23}, True),
        (7, {"gauge": 22}, False),
        (6, {"gauge": 23}, False),
        (7, {"millimetres": 0.49}, True),
        (7, {"millimetres": 0.5}, False),
        (7, {}, True),
        (6, {}, False),
    ],
)
def test_seven_thin_ones_are_the_strands_of_one_wire(
    count: int, size: dict[str, float], strands: bool
) -> None:
    assert are_strands(count, **size) is strands


@pytest.mark.parametrize(
    ("text", "wires"),
    [
        ("18 AWG", ["18 AWG"]),
        ("18,18,16 AWG solid", ["18 AWG solid", "18 AWG solid", "16 AWG solid"]),
        ("18 AWG + 16 AWG; 1.5 mm2", ["18 AWG", "16 AWG", "1.5 mm2"]),
        ("18 AWG, solid, tinned", ["18 AWG, solid, tinned"]),
        ("2,5 mm2", ["2,5 mm2"]),
        ("2x1.5 mm2", ["1.5 mm2", "1.5 mm2"]),
        ("20x18 AWG", ["18 AWG"] * 20),
        ("21x18 AWG", ["21x18 AWG"]),
        ("0x18 AWG", ["0x18 AWG"]),
        ("26x30 AWG", ["26x30 AWG"]),
        ("7x22 AWG", ["22 AWG"] * 7),
        ("2x1/0 AWG", ["1/0 AWG", "1/0 AWG"]),
        ("7x1/0 AWG", ["1/0 AWG"] * 7),
        ("7x0.2 mm2", ["0.2 mm2"] * 7),
        ("7x0.2 mm", ["7x0.2 mm"]),
        ("7x0.5 mm", ["0.5 mm"] * 7),
    ],
)
def test_the_wires_that_a_text_names(text: str, wires: list[str]) -> None:
    assert list(wires_in(text)) == wires


def test_range_by_gauge() -> None:
    barrel = read_size_range("16-14 AWG")
    assert (barrel.thinnest, barrel.thickest, barrel.by_gauge) == ("16", "14", True)
    assert barrel.low_cmil == pytest.approx(gauge_cmil(16))
    assert read_size_range("16 AWG - 14 AWG") == barrel._replace(text="16 AWG - 14 AWG")


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("2050-5180 cmil", 2050, 5180),
        ("2.05-5.18 kcmil", 2050, 5180),
        ("1.0 to 2.5 mm2", 1973.525, 4933.813),  # a square millimetre is 1973.5252 circular mils
    ],
)
def test_range_by_area(text: str, low: float, high: float) -> None:
    barrel = read_size_range(text)
    assert (barrel.low_cmil, barrel.high_cmil) == (pytest.approx(low), pytest.approx(high))
    assert not barrel.by_gauge


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("14-16 AWG", "write 16-14 AWG"),
        ("5180-2050 cmil", "write 2050-5180 cmil"),
        ("16 AWG-2.5 mm2", "in one unit"),
        ("16-14", "has no unit of size; write 16-14 AWG"),
        ("18-16 mm2", "did you mean 18-16 AWG? else write 16-18 mm2"),
        ("16.5-16 mm2", "the wrong way round; write 16-16.5 mm2"),
        ("1/0-2/0 mm2", "an area has no fraction"),
        ("1-400 mm2", "wire here is 0.0025 to 304 mm2"),
        ("1-4 cmil", "wire here is 0.0025 to 304 mm2"),
        ("9" * 81, "is longer than any range"),
        ("blue", "sellers do not agree on what it stands for; write the range that is printed"),
        ("butt", "is not a range"),
    ],
)
def test_range_refuses(text: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read_size_range(text)
    assert says in str(caught.value)


def test_a_range_of_one_size() -> None:
    assert read_size_range("16 AWG")[3:5] == ("16", "16")
    one = read_size_range("2.5 mm2")
    assert (one.low_cmil, one.high_cmil) == (pytest.approx(4933.813), pytest.approx(4933.813))
    assert (one.unit, read_size_range("1/0-2/0 awg").thickest) == ("mm2", "2/0")


def test_gauge_numbers_of_the_law() -> None:
    assert [gauge_number(g) for g in ("4/0", "1/0", "1", "40")] == [-3, 0, 1, 40]
