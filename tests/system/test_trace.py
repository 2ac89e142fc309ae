"""`trace` as a whole: the command, what it refuses, the command lines it gives, the chart."""

from __future__ import annotations

import json
import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import wirecalc
from wirecalc import Finding, cli

Cli = Callable[..., Any]
PLATE = {"rated_load_current": "1.6 A", "locked_rotor_current": "12 A", "breaker": "15 A"}
PLATE |= {"nameplate_voltage": "115 V", "voltage": "115 V"}


@pytest.fixture
def recording(start: Any, record: Any, tmp_path: Path) -> Path:
    """A start that settles at 1.2 A, with a quiet part before."""
    path: Path = record(tmp_path / "start.csv", *start().sampled(5000))
    return path


def trace(path: Path, **given: str) -> Finding:
    return wirecalc.run("trace", recording=str(path), **given)


def written(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "log.csv"
    path.write_text(text, encoding="utf-8")
    return path


def log(levels: list[tuple[float, int]], head: str = "t_s,current_A", step: float = 1.0) -> str:
    """Write a log of some levels, each for so many readings."""
    values = [level for level, count in levels for _ in range(count)]
    return head + "\n" + "".join(f"{i * step:g},{v}\n" for i, v in enumerate(values))


def test_three_ways_one_answer(
    recording: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    given = {"recording": str(recording), "current_error": "(2%+5)", **PLATE}
    expected = wirecalc.run("trace", **given)
    words = [w for k, v in given.items() for w in (f"--{k.replace('_', '-')}", v)]
    status = cli.main(["trace", *words, "--format", "json"])
    typed = json.loads(capsys.readouterr().out)
    sheet = tmp_path / "sheet.toml"
    lines = "\n".join(f"{key} = {json.dumps(value)}" for key, value in given.items())
    sheet.write_text(f'[job]\ntitle = "t"\n[[check]]\ncalculation = "trace"\n{lines}\n')
    cli.main(["job", str(sheet), "--format", "json"])
    (check,) = json.loads(capsys.readouterr().out)["checks"]
    assert typed["verdict"] == check["finding"]["verdict"] == expected.verdict == "pass"
    assert typed["criteria"] == check["finding"]["criteria"]
    assert typed["figures"] == check["finding"]["figures"]
    assert status == 0


@pytest.mark.parametrize("error", ["", "(2%+5)"])
def test_the_command_line_that_it_gives_judges_alike(
    recording: Path, cli_main: Cli, error: str
) -> None:
    given = PLATE | ({"current_error": error} if error else {})
    own = trace(recording, **given)
    (go_on,) = (x for x in own.listings if x.title.startswith("Go on"))
    lines = [str(row[0]) for row in go_on.rows]
    text = "\n".join(lines)
    command = text[: text.index("wirecalc trip")].replace("\\\n", " ")
    trip = text[text.index("wirecalc trip") : text.index("# and")].replace("\\\n", " ")
    held = cli_main(*shlex.split(trip)[1:], "--device", "ul-489", "--breaker", "15 A")
    assert held.status in (0, 1, 3), held.err
    done = cli_main(*shlex.split(command)[1:], "--format", "json")
    inrush = {c["name"]: c["verdict"] for c in done.json["criteria"]}
    assert len(inrush) > 5
    assert inrush == {c.criterion.name: str(c.verdict) for c in own.criteria}


def test_bands_of_the_meter_decide(recording: Path) -> None:
    """Settled at 1.45 times the plate: a good meter says so, a poor one cannot."""
    name = "settled current, upper limit"
    amps = trace(recording).figure("settled level").figure.value
    plate = {"rated_load_current": f"{amps / 1.45:.6f} A"}
    assert trace(recording, **plate).criterion(name).verdict == "fail"
    assert trace(recording, **plate, current_error="2%").criterion(name).verdict == "cannot tell"
    settled = trace(recording, current_error="(2%+500)").figure("settled level")
    value = settled.figure.value  # 500 counts of the last digit, 10 uA
    assert (settled.low, settled.high) == pytest.approx(
        (0.98 * value - 0.005, 1.02 * value + 0.005)
    )


def test_the_worst_start_is_judged(start: Any, record: Any, tmp_path: Path) -> None:
    good, slow = start(end=3.0), start(end=6.0, tau=0.8)
    t = np.arange(45_000) / 5000
    x = np.where(t < 3.0, good.at(t), np.where(t < 8.9, slow.at(t - 3.0), 0.0))
    finding = trace(record(tmp_path / "two.csv", t, x), **PLATE)
    judged = finding.criterion("time to settle")
    assert judged.verdict == "fail"
    assert judged.criterion.actual > 3.0
    assert "slow start" in {a.text for a in finding.answers}


def test_a_start_that_did_not_settle_is_no_pass(start: Any, record: Any, tmp_path: Path) -> None:
    t, x = start(tau=3.0).sampled(5000)
    finding = trace(record(tmp_path / "slow.csv", t, x), **PLATE)
    assert finding.criterion("time to settle").verdict == "cannot tell"
    assert finding.criterion("settled level").verdict == "cannot tell"


def test_a_log_proves_no_upper_limit_and_gives_the_least(tmp_path: Path) -> None:
    path = written(tmp_path, log([(0, 10), (9.5, 1), (1.2, 60), (0, 10)]))
    finding = trace(path, **PLATE)
    untold = {n.what: n.why for n in finding.not_checked}
    assert "no crest; it was at least 9.5 A" in untold["highest instantaneous current"]
    asked = trace(path, breaker="15 A")  # what the start may draw is not known but by its crest
    assert asked.criterion("highest instantaneous current").verdict == "cannot tell"
    assert finding.criterion("start peak, lower limit").verdict == "pass"  # it was that at least
    low = trace(written(tmp_path, log([(0, 10), (8, 1), (1.2, 60), (0, 10)])), **PLATE)
    assert low.criterion("start peak, lower limit").verdict == "cannot tell"
    names = {c.criterion.name for c in finding.criteria}
    assert "start peak, upper limit" not in names
    assert finding.criterion("settled current, upper limit").verdict == "pass"
    times = finding.figure("end of the surge")
    assert (times.low, times.high) == (0.0, 2.0)


def test_a_log_that_is_past_a_limit_is_past_it(tmp_path: Path) -> None:
    path = written(tmp_path, log([(0, 10), (19.5, 2), (1.2, 60), (0, 10)]))
    assert trace(path, **PLATE).criterion("start peak, upper limit").verdict == "marginal"


def test_a_power_log_has_no_current(tmp_path: Path) -> None:
    path = written(tmp_path, log([(0, 10), (900, 1), (120, 60), (0, 10)] * 3, "t_s,power_W"))
    finding = trace(path, **PLATE)
    assert finding.criterion("current of the start").verdict == "cannot tell"
    assert "at least 900 W" in finding.criterion("current of the start").reason
    assert finding.criterion("start against the plate").verdict == "cannot tell"
    assert finding.figure("duty of the whole cycles").figure.value == pytest.approx(100 * 61 / 81)
    # trapezoids over steps of 1 s of all but the last reading
    joules = 3 * (900 + 60 * 120)
    assert finding.figure("energy recorded").figure.value == pytest.approx(joules / 3.6e6)


def test_a_gap_is_not_bridged(tmp_path: Path) -> None:
    rows = log([(0, 10), (2, 60), (0, 60), (2, 60), (0, 10)]).splitlines()
    path = written(tmp_path, "\n".join(rows[:30] + rows[60:]) + "\n")  # 30 s are missing
    finding = trace(path)
    (listing,) = (x for x in finding.listings if x.title == "On")
    assert [row[-1] for row in listing.rows] == ["ends unseen", "begins unseen", ""]
    assert "1 gap, not bridged" in str(finding.answers)


def test_a_waveform_with_a_missing_piece(start: Any, record: Any, tmp_path: Path) -> None:
    t, x = start().sampled(5000)
    keep = (t < 1.5) | (t > 1.7)
    finding = trace(record(tmp_path / "start.csv", t[keep], x[keep]))
    assert "1 gap, not bridged" in str(finding.answers)
    assert finding.figure("settled level, highest start").figure.value == pytest.approx(
        1.2, rel=0.02
    )


def test_a_recording_that_begins_within_a_start(start: Any, record: Any, tmp_path: Path) -> None:
    one = start()
    t, x = one.sampled(5000)
    late = t > one.begin + 0.02
    finding = trace(record(tmp_path / "late.csv", t[late], x[late]), **PLATE)
    assert finding.criterion("start at the beginning").verdict == "cannot tell"
    assert finding.criterion("start against the plate").verdict == "cannot tell"


def test_volts_are_read_beside(start: Any, tmp_path: Path) -> None:
    one = start()
    t, x = one.sampled(5000)
    rms = np.where((t > one.begin) & (t < one.begin + 0.3), 103.5, 115.0)
    volts = rms * np.sqrt(2) * np.sin(2 * np.pi * 60 * t)
    path = tmp_path / "both.csv"
    np.savetxt(
        path,
        np.column_stack((t, x, volts)),
        delimiter=",",
        fmt="%.5f",
        header="t_s,current_A,voltage_V",
        comments="",
    )
    finding = trace(path, **PLATE | {"voltage": "90 V"})  # those that were recorded count
    assert finding.figure("volts while it runs").figure.value == pytest.approx(115, rel=0.002)
    assert finding.figure("lowest volts while it is on").figure.value == pytest.approx(
        103.5, rel=0.01
    )
    expected = finding.figure("expected start current, most").figure.value
    assert expected == pytest.approx(12 * 1.12, rel=0.002)  # at the measured share of the volts


def test_clock_times_are_shown(tmp_path: Path) -> None:
    rows = ["time,current_rms_A"]
    for i in range(120):
        seconds = 86_340 + i
        clock = f"{seconds // 3600 % 24:02d}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"
        rows.append(f"{clock},{1.5 if 30 <= i < 90 else 0}")
    finding = trace(written(tmp_path, "\n".join(rows)))
    (listing,) = (x for x in finding.listings if x.title == "On")
    assert listing.rows[0][:3] == ("23:59:30", "00:00:30 +1 d", "60 s")


@pytest.mark.parametrize(
    ("text", "given", "says"),
    [
        (log([(0, 40)]), {}, "every value is zero"),
        (log([(-1, 4), (1, 4)]), {}, "a value of -1 A is no rms"),
        (log([(-1, 4), (1, 4)]), {"recorded": "instantaneous"}, "shows no cycle of the mains"),
        (log([(1, 9)]), {"recorded": "power"}, "the column current_A is in A"),
        (log([(1, 9)], "t_s,power_W"), {"recorded": "rms"}, "the column power_W is in W"),
        (
            "t_s,current_A\n" + "".join(f"{i // 9 / 1000:.3f},{i % 5 - 2}\n" for i in range(99)),
            {},
            "and 9 ticks of its clock do not tell how fast",
        ),
        (log([(1, 9)]), {"column": "volts_V"}, "no column 'volts_V'"),
        (log([(1, 9)]), {"current_error": "two percent"}, "recording"),
        (log([(1, 9)]), {"locked_rotor_current": "1 A", "rated_load_current": "2 A"}, "LRA"),
        (log([(1, 9)]), {"recorded": "rmss"}, "did you mean rms?"),
        (log([(1, 9)]), {"rated_load_current": "160 A"}, "outside"),
        (log([(1, 9)]), {"breaker": "15 V"}, "breaker"),
        (log([(1, 9)]), {"decimal_comma": "perhaps"}, "yes or no"),
        (log([(1, 4), (70_000, 3)]), {}, "row 6, 7, 8"),
    ],
)
def test_refuses(
    tmp_path: Path, cli_main: Cli, text: str, given: dict[str, str], says: str
) -> None:
    words = [w for k, v in given.items() for w in (f"--{k.replace('_', '-')}", v)]
    done = cli_main("trace", "--recording", str(written(tmp_path, text)), *words)
    assert (done.status, done.out) == (2, "")
    assert says in done.err


def test_text_fits_80_columns_and_chart_is_drawn(
    recording: Path, tmp_path: Path, cli_main: Cli
) -> None:
    picture = tmp_path / "start.svg"
    words = [w for k, v in PLATE.items() for w in (f"--{k.replace('_', '-')}", v)]
    done = cli_main("trace", "--recording", str(recording), *words, "--chart", str(picture))
    assert done.status == 0
    assert max(map(len, done.out.splitlines())) <= 80
    drawn = picture.read_text()
    for label in ("time (s)", "current (A)", "one-cycle rms", "settled: 1.2", "expected start rms"):
        assert label in drawn


def test_a_large_recording_is_drawn_by_least_and_most(
    start: Any, record: Any, tmp_path: Path
) -> None:
    path = record(tmp_path / "start.csv", *start().sampled(50_000))
    (build,) = trace(path).charts
    current, rms = build().lines
    assert len(current.x) <= 2 * 1600
    assert max(current.y) == pytest.approx(start().at(np.arange(0.35, 0.4, 1e-5)).max(), rel=0.001)
    assert len(rms.x) < len(current.x)


LRA = {"locked_rotor_current": "12 A"}


@pytest.mark.parametrize("plate", [LRA, LRA | {"rated_load_current": "1.6 A"}])
@pytest.mark.parametrize(("long", "verdict"), [(8, "fail"), (2, "cannot tell")])
def test_a_locked_rotor_has_not_settled(
    start: Any, record: Any, tmp_path: Path, plate: dict[str, str], long: int, verdict: str
) -> None:
    t = np.arange(round((long + 2) * 2000)) / 2000
    mine = (t > 1) & (t < 1 + long)
    x = np.where(mine, 11 * np.sqrt(2) * np.sin(2 * np.pi * 60 * t), 0.0)
    finding = trace(record(tmp_path / "locked.csv", t, x), **plate)
    judged = finding.criterion("time to settle")
    assert judged.verdict == verdict
    if verdict == "fail":
        assert judged.criterion.actual == pytest.approx(long, abs=0.05)
        assert finding.figure("end of the surge").figure.value == pytest.approx(long, abs=0.05)
    assert finding.criterion("evidence for one kind of start").verdict == "cannot tell"
    assert any("locked rotor" in a.text for a in finding.answers)


@pytest.mark.parametrize("plate", [LRA, LRA | {"rated_load_current": "1.6 A"}])
def test_a_log_of_a_locked_rotor_has_not_settled(tmp_path: Path, plate: dict[str, str]) -> None:
    path = written(tmp_path, log([(0, 10), (11, 8), (0, 20)]))
    finding = trace(path, **plate)
    assert finding.criterion("time to settle").verdict == "fail"
    # 8 A: 0.7 of 10.8 to 13.2 A is 7.56 to 9.24 A, so the volts decide
    path = written(tmp_path, log([(0, 10), (8, 8), (0, 20)]))
    assert trace(path, **plate).criterion("time to settle").verdict == "cannot tell"


def test_the_first_run_comes_after_no_gap(tmp_path: Path) -> None:
    path = written(tmp_path, log([(0, 10), (2, 60), (0, 60), (2, 60), (0, 10)]))
    (listing,) = (x for x in trace(path).listings if x.title == "On")
    assert [row[-1] for row in listing.rows] == ["", ""]
