"""What trip says of a recording that no meter makes."""

from __future__ import annotations

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
        ("time_s,current_A", [(0.0, 5.0), (1.0, 5.0), (1.0, 5.0)], {}, "row 4: its time"),
        ("time_s,current_A", [(0.0, 5.0), (2.0, 5.0), (1.0, 5.0)], {}, "row 4: its time"),
        ("time_s,current_A", [(0.0, 5.0), (1.0, -5.0), (2.0, 5.0)], {}, "row 3: an rms"),
        ("time_s,current_A", [(0.0, 5.0)], {}, "one row"),
        ("time_s,current_W", [(0.0, 5.0), (1.0, 5.0)], {}, "'W'"),
        ("time_s,current_A", [(0.0, 5.0), (1.0, 5.0)], {"overcurrent": "5 A"}, "both"),
        (
            "time_s,current_A",
            [(0.0, 5.0), (1e-3, 5.0), (2e-3, 4.0)],
            {"waveform": "instantaneous"},
            "no samples",
        ),
        (
            "time_s,current_A",
            [(0.0, 5.0), (0.02, -5.0), (0.03, 4.0)],
            {"waveform": "instantaneous"},
            "row 3: 0.02 s",
        ),
        (
            "time_s,current_A",
            [(float(i + 9000 * (i > 60)), 5.0) for i in range(90)],
            {},
            "row 63: nothing was recorded for 9001 s",
        ),
    ],
)
def test_course_that_cannot_be_is_refused(
    tmp_path: Path, head: str, rows: list[tuple[float, float]], more: dict[str, str], wrong: str
) -> None:
    file = write(tmp_path / "c.csv", head, rows)
    with pytest.raises(wirecalc.BadInput, match=wrong):
        trip(device="ul-489", breaker="15 A", current_log=file, **more)
