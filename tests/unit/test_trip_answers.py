"""What trip says of a recording that no meter makes."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

import wirecalc


def trip(**given: str) -> wirecalc.Finding:
    return wirecalc.run("trip", **({"device_ambient": "30 C"} | given))


def write(path: Path, head: str, rows: list[tuple[float, float]]) -> str:
    path.write_text(head + "\n" + "".join(f"{','.join(map(repr, row))}\n" for row in rows))
    return str(path)


@pytest.mark.parametrize(
    ("head", "rows", "more", "wrong"),
    [
        (
            "time_s,current_A",
            [(0.0, 5.0), (2.0, 5.0), (1.0, 5.0)],
            {},
            "row 4: the time goes",
        ),
        (
            "time_s,current_A",
            [(0.0, 5.0), (1.0, -5.0), (2.0, 5.0)],
            {},
            "-5 A is no rms",
        ),
        ("time_s,current_A", [(0.0, 5.0)], {}, "holds 1 reading"),
        ("time_s,current_W", [(0.0, 5.0), (1.0, 5.0)], {}, "a power log has no current"),
        ("time_s,current_A", [(0.0, 5.0), (1.0, 5.0)], {"overcurrent": "5 A"}, "both"),
        (
            "time_s,current_A",
            [(0.0, 5.0), (1e-3, 5.0), (2e-3, 4.0)],
            {"recorded": "instantaneous"},
            "show no whole cycle",
        ),
        (
            "time_s,current_A",
            [(0.0, 5.0), (0.02, -5.0), (0.03, 4.0)],
            {"recorded": "instantaneous"},
            "one instantaneous value in",
        ),
        (
            "time_s,current_A",
            [(float(i + 9000 * (i > 60)), 5.0) for i in range(90)],
            {},
            "nothing was recorded for 9001 s",
        ),
    ],
)
def test_course_that_cannot_be_is_refused(
    tmp_path: Path, head: str, rows: list[tuple[float, float]], more: dict[str, str], wrong: str
) -> None:
    file = write(tmp_path / "c.csv", head, rows)
    with pytest.raises(wirecalc.BadInput, match=wrong):
        trip(device="ul-489", breaker="15 A", recording=file, **more)


ROWS = [(0.0, 0.0), (1.0, 14.0), (2.0, 14.0), (3.0, 2.0), (60.0, 2.0), (90.0, 0.0)]


@pytest.mark.parametrize(
    ("head", "factor", "more"),
    [
        ("time_s,current_A", 1.0, {}),
        ("t_s,probe_mV (100 mV/A)", 100.0, {}),
        ("t_s,probe_mV", 100.0, {"clamp": "10 A/V"}),
        ("t_s,other_A,current_A", 1.0, {"column": "current_A"}),
    ],
)
def test_it_reads_the_files_that_trace_reads(
    tmp_path: Path, head: str, factor: float, more: dict[str, str]
) -> None:
    other = (99.0,) * (head.count(",") - 1)
    lines = [",".join(map(str, (t, *other, x * factor))) for t, x in ROWS]
    path = tmp_path / "log.csv"
    path.write_text("\n".join([head, *lines, ""]))
    found = trip(device="iec-60898-b", breaker="6 A", recording=str(path), **more)
    highest = found.criterion("highest current, however short").criterion
    assert highest.actual == pytest.approx(14.0)
    longer = found.criterion("time above what it holds longer").criterion
    assert longer.actual == pytest.approx(2.0)  # from the stamp of 14 A to that of 2 A
    assert wirecalc.run("trace", recording=str(path), **more).figure("highest reading")


def test_the_meters_error_moves_the_course(tmp_path: Path) -> None:
    file = write(tmp_path / "c.csv", "time_s,current_A", ROWS)
    found = trip(device="iec-60898-b", breaker="6 A", recording=file, current_error="10%")
    highest = found.criterion("highest current, however short")
    assert (highest.low, highest.high) == (pytest.approx(12.6), pytest.approx(15.4))


def test_the_recorders_own_peak_is_the_crest(tmp_path: Path) -> None:
    rows = [f"{t},{x},{1.7 * x}" for t, x in ROWS]
    path = tmp_path / "log.csv"
    path.write_text("\n".join(["t_s,current_A,current_peak_A", *rows, ""]))
    found = trip(device="iec-60898-b", breaker="6 A", recording=str(path))
    crest = found.criterion("crest over sqrt2 against the instantaneous trip").criterion
    assert crest.actual == pytest.approx(1.7 * 14 / 2**0.5)


@pytest.mark.parametrize("frequency", [50, 60])
def test_a_waveform_needs_no_frequency(tmp_path: Path, frequency: int) -> None:
    rows = [
        (i / 2000, 20 * 2**0.5 * math.sin(2 * math.pi * frequency * i / 2000)) for i in range(4001)
    ]
    file = write(tmp_path / "w.csv", "t_s,current_A", rows)
    found = trip(device="iec-60898-c", breaker="16 A", recording=file)
    highest = found.criterion("highest current, however short").criterion
    assert highest.actual == pytest.approx(20, rel=2e-3)
    held = found.criterion("time above what it holds longer").criterion
    assert held.actual == pytest.approx(2.0, abs=0.03)


def waveform(path: Path, cut: float = math.inf, hole: bool = False) -> str:
    wave = [(i / 2000, 20 * 2**0.5 * math.sin(2 * math.pi * 60 * i / 2000)) for i in range(8001)]
    rows = [(t, max(-cut, min(cut, x))) for t, x in wave if not (hole and 2.0 < t < 2.5)]
    return write(path, "t_s,current_A", rows)


def test_a_recording_that_is_cut_off_proves_no_hold(tmp_path: Path) -> None:
    whole = trip(device="iec-60898-c", breaker="25 A", recording=waveform(tmp_path / "a.csv"))
    assert whole.verdict == "pass"
    cut = trip(device="iec-60898-c", breaker="25 A", recording=waveform(tmp_path / "b.csv", 22.0))
    assert cut.verdict == "cannot tell"
    doubt = cut.criterion("recorded current")
    assert "cut off" in doubt.reason and "higher range" in doubt.action
    small = trip(device="iec-60898-c", breaker="6 A", recording=waveform(tmp_path / "c.csv", 22.0))
    assert small.verdict == "cannot tell"


def test_holes_and_what_lies_between_readings_are_named(tmp_path: Path) -> None:
    file = waveform(tmp_path / "a.csv", hole=True)
    found = trip(device="iec-60898-c", breaker="25 A", recording=file)
    assert any("1 hole of the recording" in n.what for n in found.not_checked)
    slow = write(tmp_path / "c.csv", "time_s,current_A", ROWS)
    found = trip(device="iec-60898-b", breaker="6 A", recording=slow)
    assert any("between two readings" in n.what for n in found.not_checked)
    fine = trip(device="iec-60898-c", breaker="25 A", recording=waveform(tmp_path / "d.csv"))
    assert not any("reading" in n.what or "hole" in n.what for n in fine.not_checked)
