"""Recordings in other forms: the volts of a clamp, a peak beside the rms, Parquet files."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pyarrow as pa
import pytest
from pyarrow import parquet

from wirecalc.base.errors import BadText
from wirecalc.recorded.clamp import clamp_in, read_clamp, volts_in
from wirecalc.recorded.stream import ReadingsStream
from wirecalc.typed.kinds import Read
from wirecalc.typed.quantity_kinds import Reading

KIND = ReadingsStream(
    ("current", "power"),
    {
        "current": Reading("A", low=-5000, high=5000, text="current"),
        "power": Reading("W", low=-100_000, high=100_000, text="power"),
        "voltage": Reading("V", low=-1500, high=1500, text="volts"),
        "peak": Reading("A", low=0, high=5000, text="highest in each reading"),
    },
    beside=("voltage", "peak"),
    text="a recording",
    error_input="current_error",
    comma_input="decimal_comma",
    column_input="column",
    clamp_input="clamp",
)


def read(tmp_path: Path, text: str, **companions: object) -> Read:
    path = tmp_path / "start.csv"
    path.write_text(text, encoding="utf-8")
    return KIND.read_with(str(path), companions)


def columns(found: Read) -> dict[str, list[float]]:
    read_ = found.value
    blocks = list(read_.blocks())
    return {
        name: [float(v) for b in blocks for v in b.values[i]]
        for i, name in enumerate(read_.columns)
    }


# ---- the volts of a clamp


@pytest.mark.parametrize(
    ("text", "volts_per_amp"),
    [
        ("100 mV/A", 0.1),
        ("100mV/A", 0.1),
        ("0.1 V/A", 0.1),
        ("1 mV / A", 0.001),
        ("10 A/V", 0.1),
        ("1 V/100 A", 0.01),
    ],
)
def test_scales_of_clamps(text: str, volts_per_amp: float) -> None:
    assert read_clamp(text).volts_per_amp == pytest.approx(volts_per_amp)


@pytest.mark.parametrize("text", ["", "100", "100 mV", "mV/A", "0 mV/A", "100 mA/V", "-1 V/A"])
def test_what_is_no_scale(text: str) -> None:
    with pytest.raises(BadText, match="no scale of a clamp"):
        read_clamp(text)


@pytest.mark.parametrize(
    ("head", "scale", "unit"),
    [
        ("probe_mV", None, "mV"),
        ("probe_mV (100 mV/A)", "100 mV/A", "mV"),
        ("clamp (10 mV/A)", "10 mV/A", "mV"),
        ("ch1 (V) 0.1 V/A", "0.1 V/A", "V"),
        ("current_A", None, None),
        ("note", None, None),
    ],
)
def test_scale_and_unit_of_a_header(head: str, scale: str | None, unit: str | None) -> None:
    found = clamp_in(head)
    assert (None if found is None else found.text) == scale
    assert volts_in(head) == unit


@pytest.mark.parametrize(
    ("text", "companions", "amps"),
    [
        ("t_s,probe_mV\n0,150\n1,-20\n", {"clamp": "100 mV/A"}, [1.5, -0.2]),
        ("t_s,probe_V\n0,0.15\n1,-0.02\n", {"clamp": "100 mV/A"}, [1.5, -0.2]),
        ("t_s,probe_mV (10 mV/A)\n0,15\n1,-2\n", {}, [1.5, -0.2]),
        ("0,150\n1,-20\n", {"clamp": "100 mV/A"}, [1.5, -0.2]),
        ("t_s,voltage_V,ch2_mV\n0,118,150\n1,118,-20\n", {"clamp": "10 A/V"}, [1.5, -0.2]),
        (
            "t_s,ch1_mV,ch2_mV\n0,1,150\n1,1,-20\n",
            {"clamp": "0.1 V/A", "column": "ch2"},
            [1.5, -0.2],
        ),
        (
            "t_s;probe_mV\n0;150,0\n1;-20,0\n",
            {"clamp": "100 mV/A", "decimal_comma": "yes"},
            [1.5, -0.2],
        ),
    ],
)
def test_millivolts_become_amperes(
    tmp_path: Path, text: str, companions: dict[str, str], amps: list[float]
) -> None:
    found = columns(read(tmp_path, text, **companions))
    assert found["current"] == pytest.approx(amps)
    assert found.get("voltage", [118, 118]) == [118, 118]


def test_a_scale_of_the_header_is_said(tmp_path: Path) -> None:
    found = read(tmp_path, "t_s,probe (10 mV/A)\n0,15\n1,2\n")
    assert any("a clamp of 10 mV/A" in note for note in found.notes)


@pytest.mark.parametrize(
    ("error", "low"),
    [("2%", 1.47), ("(2%+5)", 1.42), ("20 mV", 1.3), ("0.2 A", 1.3), ("(2%+0.03 A)", 1.44)],
)
def test_the_error_of_a_clamp_in_its_own_unit_or_in_amperes(
    tmp_path: Path, error: str, low: float
) -> None:
    found = read(tmp_path, "t_s,probe_mV\n0,150\n1,10\n", clamp="100 mV/A", current_error=error)
    assert found.low.moved(1.5) == pytest.approx(low)


@pytest.mark.parametrize(
    ("text", "companions", "says"),
    [
        ("t_s,probe_mV\n0,1\n1,2\n", {}, "'probe_mV' is in mV, and how many an ampere"),
        ("t_s,current_A\n0,1\n1,2\n", {"clamp": "100 mV/A"}, "no column is in mV or V"),
        ("t_s,a_mV,b_mV\n0,1,2\n1,2,3\n", {"clamp": "1 mV/A"}, "a_mV, b_mV: either may be"),
        ("t_s,probe_mV\n0,1\n1,2\n", {"clamp": "100"}, "no scale of a clamp"),
        ("t_s,probe_V\n0,1\n1,600\n", {"clamp": "100 mV/A"}, "outside"),
    ],
)
def test_refuses(tmp_path: Path, text: str, companions: dict[str, str], says: str) -> None:
    with pytest.raises(BadText, match=says):
        read(tmp_path, text, **companions)


def test_millivolts_beside_a_current_are_no_volts_at_the_plug(tmp_path: Path) -> None:
    found = columns(read(tmp_path, "t_s,current_A,probe_mV\n0,1,120\n1,2,120\n"))
    assert list(found) == ["current"]


# ---- the recorder's own peak beside the rms


@pytest.mark.parametrize("peak", ["current_peak_A", "peak (A)", "crest_A", "Peak current (A)"])
@pytest.mark.parametrize("first", [True, False])
def test_a_peak_beside_the_rms(tmp_path: Path, peak: str, first: bool) -> None:
    heads, cells = [peak, "current_A"], ["2.1,1.5", "0.3,0.2"]
    if not first:
        heads, cells = heads[::-1], ["1.5,2.1", "0.2,0.3"]
    text = f"t_s,{','.join(heads)}\n0,{cells[0]}\n1,{cells[1]}\n"
    assert columns(read(tmp_path, text)) == {"current": [1.5, 0.2], "peak": [2.1, 0.3]}


def test_peaks_alone_are_no_rms(tmp_path: Path) -> None:
    says = "current_peak_A has peaks, and no rms"
    with pytest.raises(BadText, match=says):
        read(tmp_path, "t_s,current_peak_A\n0,1\n1,2\n")
    with pytest.raises(BadText, match=says):
        read(tmp_path, "t_s,current_A,current_peak_A\n0,1,2\n1,2,3\n", column="current_peak_A")


# ---- Parquet


def saved(tmp_path: Path, columns_: dict[str, object]) -> str:
    path = tmp_path / "start.parquet"
    parquet.write_table(pa.table(columns_), path, row_group_size=3)
    return str(path)


def test_a_parquet_file_is_read_as_a_csv_is(tmp_path: Path) -> None:
    t, amps = [i / 10 for i in range(10)], [float(i) for i in range(10)]
    rows = "".join(f"{a},{b * 1000}\n" for a, b in zip(t, amps, strict=True))
    text = read(tmp_path, "t_s,current_mA\n" + rows)
    made = {"t_s": t, "current_mA": [b * 1000 for b in amps], "note": ["x"] * 10}
    found = KIND.read(saved(tmp_path, made))
    assert columns(found) == columns(text) == {"current": amps}
    assert found.value.overview._replace(last_digit=0) == text.value.overview._replace(last_digit=0)


@pytest.mark.parametrize("kind", [pa.float32(), pa.int16(), pa.int64(), pa.decimal128(8, 2)])
def test_numbers_of_any_kind(tmp_path: Path, kind: pa.DataType) -> None:
    made = {"t_s": [0, 1], "current_A": pa.array([1, -2]).cast(pa.float64()).cast(kind)}
    assert columns(KIND.read(saved(tmp_path, made)))["current"] == [1, -2]


def test_points_of_time_count_from_midnight(tmp_path: Path) -> None:
    day = dt.datetime(2026, 1, 31, 23, 59, 59, 500_000)
    stamps = [day, day + dt.timedelta(seconds=1)]
    found = KIND.read(saved(tmp_path, {"logged": pa.array(stamps), "current_A": [1.0, 2.0]}))
    (block,) = found.value.blocks()
    assert block.t.tolist() == pytest.approx([86399.5, 86400.5])
    assert found.value.clock


@pytest.mark.parametrize(
    ("made", "says"),
    [
        ({"t_s": [0.0, 1.0], "current_A": [1.0, None]}, "row 2: column current_A is empty"),
        ({"t_s": [0.0, 1.0, 2.0, 3.0], "current_A": [1, 1, 1, 9000]}, "row 4: .* outside"),
        ({"t_s": [0.0, 1.0], "current_A": [1.0, float("nan")]}, "row 2: .* no number"),
        ({"t_s": [0.0, 1.0], "current_A": ["a", "b"]}, "string is no number"),
        ({"t_s": [1.0, 0.0], "current_A": [1.0, 2.0]}, "row 2: the time goes backwards"),
        ({"t_s": [0.0, 1.0], "note": ["a", "b"]}, "no column of current or power"),
    ],
)
def test_a_parquet_file_is_checked_as_strictly(
    tmp_path: Path, made: dict[str, object], says: str
) -> None:
    with pytest.raises(BadText, match=says):
        KIND.read(saved(tmp_path, made))


def test_a_damaged_parquet_file_and_counts_that_it_does_not_have(tmp_path: Path) -> None:
    path = tmp_path / "bad.parquet"
    path.write_bytes(b"PAR1 and no more")
    with pytest.raises(BadText, match="damaged Parquet"):
        KIND.read(str(path))
    good = saved(tmp_path, {"t_s": [0.0, 1.0], "current_A": [1.0, 2.0]})
    with pytest.raises(BadText, match="a Parquet file has none"):
        KIND.read_with(good, {"current_error": "(2%+5)"})
    assert KIND.read_with(good, {"current_error": "2%"}).low.moved(1.0) == pytest.approx(0.98)
