"""Recordings: headers, units, stamps, pieces of any size, bad rows named, memory that stays."""

from __future__ import annotations

import math
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wirecalc.base.errors import BadText
from wirecalc.recorded import blocks as readings_blocks
from wirecalc.recorded import rows as readings_rows
from wirecalc.recorded.stream import ReadingsStream
from wirecalc.typed.quantity_kinds import Reading

KIND = ReadingsStream(
    ("current", "power"),
    {
        "current": Reading("A", low=-5000, high=5000, text="current"),
        "power": Reading("W", low=-100_000, high=100_000, text="power"),
        "voltage": Reading("V", low=-1500, high=1500, text="volts"),
    },
    beside=("voltage",),
    text="a recording",
    error_input="current_error",
    comma_input="decimal_comma",
    column_input="column",
)


def read(tmp_path: Path, text: str | bytes, **companions: object):  # type: ignore[no-untyped-def]
    path = tmp_path / "start.csv"
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return KIND.read_with(str(path), companions)


def values(found):  # type: ignore[no-untyped-def]
    """Return stamps and columns as lists."""
    blocks = list(found.value.blocks())
    t = [float(v) for b in blocks for v in b.t]
    width = len(found.value.columns)
    return t, *([float(v) for b in blocks for v in b.values[i]] for i in range(width))


@pytest.mark.parametrize(
    "text",
    [
        "t_s,current_A\n0,1.5\n0.5,-2\n",
        "time (s);current (A)\n0;1.5\n0.5;-2\n",
        "t_ms\tcurrent_mA\n0\t1500\n500\t-2000\n",
        "Time,Channel A\n(s),(A)\n0,1.5\n0.5,-2\n",
        "current_A,t_s\n1.5,0\n-2,0.5\n",
        "0,1.5\n0.5,-2\n",
        "\ufefft_s,current_A\r\n\r\n0,1.5\r\n\r\n0.5,-2\r\n",
        "# a logger\nt_s,note,current_A\n0,on,1.5\n0.5,off,-2\n",
        '"t_s","current_A"\n"0","1.5"\n"0.5","-2"\n',
        "t_s,current_A\n0,1.5e0\n5e-1,-2",
        "t_s, current_A\n0, 1.5\n0.5, -2\n",
    ],
)
def test_reads_any_common_form(tmp_path: Path, text: str) -> None:
    found = read(tmp_path, text)
    assert values(found) == ([0.0, 0.5], [1.5, -2.0])
    assert found.value.columns == ("current",)
    assert str(found.value) == "start.csv, 2 rows"


@pytest.mark.parametrize("most_kept", [10, 0])
def test_nobody_changes_what_was_read(
    tmp_path: Path, most_kept: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """In memory or beside it: a house rule shares the recording with the calculation."""
    monkeypatch.setattr(readings_blocks, "MOST_KEPT", most_kept)
    found = read(tmp_path, "t_s,current_A\n0,1.5\n0.5,-2\n")
    for block in found.value.blocks():
        for array in (block.t, *block.values):
            with pytest.raises(ValueError, match="read-only"):
                array[:] = 0.0
    assert values(found) == ([0.0, 0.5], [1.5, -2.0])


def test_decimal_commas(tmp_path: Path) -> None:
    text = "t_s;current_A\n0,0;1,5\n0,5;-2,0\n"
    assert values(read(tmp_path, text, decimal_comma="yes")) == ([0.0, 0.5], [1.5, -2.0])
    with pytest.raises(BadText, match="say that commas are decimal"):
        read(tmp_path, text)


def test_volts_beside_the_current(tmp_path: Path) -> None:
    found = read(tmp_path, "t_s,volts_V,current_A\n0,115,1.5\n1,117,2\n")
    assert found.value.columns == ("current", "voltage")
    assert values(found) == ([0.0, 1.0], [1.5, 2.0], [115.0, 117.0])


def test_current_goes_before_power_and_a_column_can_be_chosen(tmp_path: Path) -> None:
    text = "t_s,power_1s_W,power_8s_W,current_A\n0,100,50,1\n1,120,60,2\n"
    assert read(tmp_path, text).value.heads == ("current_A",)
    for typed in ("power_8s_W", "power_8s"):
        chosen = read(tmp_path, text, column=typed).value
        assert (chosen.columns, chosen.heads) == (("power",), ("power_8s_W",))
    with pytest.raises(BadText, match="did you mean power_8s_W"):
        read(tmp_path, text, column="power_9s_W")


@pytest.mark.parametrize(
    ("stamps", "seconds"),
    [
        (("12:03:07.250", "12:03:08"), 0.75),
        (("23:59:59.5", "00:00:01"), 1.5),  # over midnight
        (("2026-01-31 23:59:59", "2026-02-01T00:00:01.5"), 2.5),
        (("2026-01-31T12:00:00+01:00", "2026-01-31T12:00:02+01:00"), 2.0),
        (("12:03", "12:04"), 60.0),
    ],
)
def test_clock_times(tmp_path: Path, stamps: tuple[str, str], seconds: float) -> None:
    t, _ = values(read(tmp_path, f"time,current_A\n{stamps[0]},1\n{stamps[1]},2\n"))
    assert t[1] - t[0] == pytest.approx(seconds)


def test_date_and_time_in_two_columns(tmp_path: Path) -> None:
    text = "Date,Time,current_A\n2026-01-31,23:59:59,1\n2026-02-01,00:00:01,2\n"
    t, _ = values(read(tmp_path, text))
    assert t[1] - t[0] == 2.0


def test_repeated_stamps_are_kept_in_order(tmp_path: Path) -> None:
    found = read(tmp_path, "t_s,power_W\n0,1\n1,2\n1,3\n2,4\n")
    assert values(found) == ([0.0, 1.0, 1.0, 2.0], [1.0, 2.0, 3.0, 4.0])
    assert found.value.overview.repeats == 1


@pytest.mark.parametrize(
    ("error", "low", "high"),
    [("2%", 9.8, 10.2), ("0.3 A", 9.7, 10.3), ("(2%+5)", 9.3, 10.7), ("±(1%+0.1 A)", 9.8, 10.2)],
)
def test_meter_error_moves_all_values(tmp_path: Path, error: str, low: float, high: float) -> None:
    found = read(tmp_path, "t_s,current_A\n0,10.0\n1,10.0\n", current_error=error)
    assert found.low.moved(10.0) == pytest.approx(low)
    assert found.high.moved(10.0) == pytest.approx(high)
    assert found.value.moved(10.0) == 10.0
    assert found.low.moved(0.01) >= 0.0


def test_counts_are_those_of_the_unit_in_the_file(tmp_path: Path) -> None:
    found = read(tmp_path, "t_s,current_mA\n0,10.0\n1,12.0\n", current_error="(0%+5)")
    assert found.high.moved(0.01) == pytest.approx(0.0105)  # 5 counts of 0.1 mA


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "holds no readings"),
        ("t_s,current_A\n", "holds no readings"),
        ("t_s,current_A\n0,1\n", "1 reading at one time"),
        ("t_s,current_A\n0,1\n0,2\n", "2 readings at one time"),
        ("t_s,I\n0,1\n1,2\n", "no column of current or power with its unit"),
        ("t_s,current\n0,1\n1,2\n", "write current_A or power_W in the header"),
        ("t_s,speed_mm\n0,1\n1,2\n", "no column of current"),
        ("time (min2),current_A\n0,1\n1,2\n", "min2"),
        ("t_s,current_A\n0,1\n1,x\n2,y\n", "row 3, 4: column current_A: 'x' is no number"),
        ("t_s,current_A\n0,1\n\n1,x\n", "row 4"),
        ("t_s,current_A\n0,1\n1,nan\n", "row 3: column current_A: 'nan' is no number"),
        ("t_s,current_A\n0,1\n1,inf\n", "row 3: column current_A: 'inf' is no number"),
        ("t_s,current_A\n0,1\nnan,1\n", "row 3: column of time"),
        ("t_s,current_A\n0,1\n1,1_0\n", "row 3"),
        ("t_s,current_A\n0,1\n1,\n", "row 3: column current_A: '' is no number"),
        ("t_s,current_A\n0,1\n1,1e300\n", "row 3: column current_A: outside"),
        ("t_s,current_A\n0,1\n1,9999\n", "row 3: column current_A: outside"),
        ("t_s,current_A\n0,1\n1,1,5\n2,1\n", "row 3: 3 cells and not 2"),
        ("t_s,current_A\n0,1\n2,1\n1,1\n0,1\n", "row 4, 5: the time goes backwards"),
        ("time,current_A\n12:00:05,1\n12:00:01,1\n", "row 3: the time goes backwards"),
        ("time,current_A\n12:00:05,1\n12:61:01,1\n", "row 3: '12:61:01' is no time"),
        (
            "time,current_A\n12:00:05,1\n2026-01-31 12:00:07,1\n12:00:09,1\n",
            "a time with a date",
        ),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "is not text"),
        ("t_s,current_A\n0,1\n".encode("utf-16"), "is not text"),
        (b"\xff\xfe\xfd,\xfc\n1,\xfb\n", "no column of current"),
        ("just one line of words", "no column of current"),
    ],
)
def test_refuses(tmp_path: Path, text: str | bytes, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read(tmp_path, text)
    assert says in str(caught.value)


def test_a_bad_row_far_down_is_named(tmp_path: Path) -> None:
    rows = [f"{i / 100:.2f},{i % 7}.5" for i in range(200_000)]
    rows[150_000] = "1500.00,many"
    with pytest.raises(BadText, match="row 150002: column current_A: 'many'"):
        read(tmp_path, "t_s,current_A\n" + "\n".join(rows) + "\n")


def test_missing_files_and_folders(tmp_path: Path) -> None:
    with pytest.raises(BadText, match="there is no file"):
        KIND.read(str(tmp_path / "none.csv"))
    with pytest.raises(BadText, match="cannot be read"):
        KIND.read(str(tmp_path))
    with pytest.raises(BadText, match="not the name of a file"):
        KIND.read(24)


def test_without_numpy_it_says_what_to_install(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None)
    with pytest.raises(BadText, match=r"wirecalc\[analysis\]"):
        read(tmp_path, "t_s,current_A\n0,1\n1,2\n")


def at_once(text: str, layout: readings_rows.Layout) -> list[list[float]] | None:
    found = readings_rows.at_once(text.encode(), layout)
    return None if found is None else found.T.tolist()


def layout(cells: int = 1, delimiter: str = ",", comma: bool = False) -> readings_rows.Layout:
    kind = KIND.kinds["current"]
    ways = (delimiter, cells, (0,), tuple(range(1, cells)), (1.0,) * cells)
    return readings_rows.Layout(
        *ways, (kind,) * (cells - 1), ("a",) * (cells - 1), 0, 1, comma, False
    )


digits = st.integers(0, 10**7 - 1)
PLAIN = st.one_of(
    st.builds("{}{}.{}".format, st.sampled_from(["", "+", "-"]), digits, digits),
    st.builds("-.{}".format, digits),
    st.builds("{}.".format, digits),
    st.builds(str, st.integers(-(10**14), 10**14)),
    st.builds("{}e{}".format, digits, st.integers(-20, 20)),
)
ANY = st.text(alphabet='0123456789+-.,;e_ nafi\t"\r٣x', max_size=6)


@settings(deadline=None)
@given(st.lists(PLAIN, min_size=1, max_size=20))
def test_numbers_read_at_once_are_those_of_float(cells: list[str]) -> None:
    assert at_once("".join(c + "\n" for c in cells), layout()) == [[float(c)] for c in cells]


@settings(deadline=None)
@given(st.lists(st.tuples(ANY, st.one_of(PLAIN, ANY)), max_size=3), st.sampled_from(",;"))
def test_what_is_read_at_once_is_read_row_by_row_too(
    cells: list[tuple[str, str]], delimiter: str
) -> None:
    """Whatever stands in a file, the quick way takes no more than the strict one."""
    text = "0" + delimiter + "1\n" + "".join(delimiter.join(row) + "\n" for row in cells)
    for comma in (False, True):
        how = layout(2, delimiter, comma)
        quick = readings_rows.at_once(text.encode(), how)
        if quick is None or not readings_rows.inside(quick, how):
            continue
        stamps = readings_rows.Stamps(how)
        slow, _ = readings_rows.row_by_row(text.encode(), how, 1, stamps)
        assert quick.tolist() == slow.tolist()


@pytest.mark.parametrize(
    "cell", ["", "-", ".", "1.2.3", "1-2", "--1", "a", "1_0", "0x1", "1,2", "٣", "true", '"1"']
)
def test_other_cells_are_left_to_the_strict_way(cell: str) -> None:
    assert at_once(f"1\n{cell}\n2\n", layout()) in (None, [[1.0], [2.0]])
    assert at_once(f"1,1\n2,{cell}\n2,3\n", layout(2)) is None


@pytest.mark.parametrize("text", ["1,1\n2\n3,3\n", "1,1\n2,2,2\n3,3\n"])
def test_rows_of_another_length_are_left_to_the_strict_way(text: str) -> None:
    assert at_once(text, layout(2)) is None


@pytest.mark.parametrize("kept", [0, 10, 10**6])
@pytest.mark.parametrize("spooled", [0, 1 << 30])
@pytest.mark.parametrize("chunk", [7, 64, 1 << 20])
@pytest.mark.parametrize("quick", [0, 1 << 18])
def test_the_same_from_memory_from_a_spool_and_from_the_file_again(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    kept: int,
    spooled: int,
    chunk: int,
    quick: int,
) -> None:
    monkeypatch.setattr(readings_blocks, "MOST_KEPT", kept)
    monkeypatch.setattr(readings_blocks, "MOST_SPOOLED", spooled)
    monkeypatch.setattr(readings_blocks, "CHUNK", chunk)
    monkeypatch.setattr(readings_blocks, "QUICK", quick)
    rows = [(i / 10, math.sin(i)) for i in range(50)]
    text = "t_s,current_A\n" + "".join(f"{t},{x:.4f}\n" for t, x in rows)
    found = read(tmp_path, text)
    for _ in range(2):
        t, x = values(found)
        assert t == [r[0] for r in rows]
        assert x == [round(r[1], 4) for r in rows]


PROGRAM = """
import resource, sys
import numpy, wirecalc
wirecalc.run("trace", recording=sys.argv[1])
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)
"""


def test_memory_does_not_grow_with_the_file(tmp_path: Path) -> None:
    """30 times the rows: some 45 MB of text, of which not a tenth may stay in memory."""
    peaks = []
    for rows in (100_000, 3_000_000):
        path = tmp_path / f"{rows}.csv"
        cycle = "".join(f"@,{math.sin(2 * math.pi * i / 100):.3f}\n" for i in range(100))
        lines = cycle.split("@")
        with path.open("w") as file:
            file.write("t_s,current_A\n")
            for first in range(0, rows, 100):
                file.write("".join(f"{(first + i) / 6000:.5f}{lines[i + 1]}" for i in range(100)))
        done = subprocess.run(
            [sys.executable, "-c", PROGRAM, str(path)], capture_output=True, check=True, text=True
        )
        peaks.append(int(done.stdout))
    small, large = peaks
    assert large < small + 24_000, f"{small} kB, {large} kB"
