"""Wire and ranges as people write them."""

import pytest

from wirecalc.base.errors import BadText
from wirecalc.typed.size_ranges import read_size_range
from wirecalc.typed.wires import gauge_cmil, gauge_number, read_wire


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
        ("14 ga", "write 14 AWG"),
        ("#12-2", "write 12 AWG"),
        ("copper", "names no wire size"),
        ("", "is not a wire"),
    ],
)
def test_refuses(text: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read_wire(text)
    assert says in str(caught.value)


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
        ("16-14", "is not a range"),
        ("blue", "is not a range"),
    ],
)
def test_range_refuses(text: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read_size_range(text)
    assert says in str(caught.value)


def test_gauge_numbers_of_the_law() -> None:
    assert [gauge_number(g) for g in ("4/0", "1/0", "1", "40")] == [-3, 0, 1, 40]
