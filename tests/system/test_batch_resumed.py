"""A batch that was broken off anywhere goes on to the same file."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from wirecalc.base.errors import BadInput
from wirecalc.jobs.batch_resumed import Written, read_written

Cli = Callable[..., Any]
ROWS = (
    "part,wire,terminal,force\n"
    "a,18 AWG,ring,17 lbf\n"
    'b,18 AWG,ring,"24 lbf"\n'
    "c,18 AWG,rong,24 lbf\n"
    "d,16 AWG,ring,unknown\n"
)
HEAD = "row,verdict,reason"
LABEL = ("--label", "part")


def written(tmp_path: Path, text: str, form: str = "csv") -> Written:
    part = tmp_path / "out.part"
    part.write_text(text, encoding="utf-8")
    return read_written(part, form, HEAD if form == "csv" else "")


def test_the_last_row_is_worked_out_again_and_a_line_that_was_cut_is_no_line(
    tmp_path: Path,
) -> None:
    before = f"{HEAD}\n2,fail,so\n3,pass,\n"
    assert written(tmp_path, before + "4,ma") == Written(
        len(f"{HEAD}\n2,fail,so\n"), 3, ("3,pass,",), frozenset({"fail"})
    )
    assert written(tmp_path, f"{HEAD}\n") == Written(len(HEAD) + 1)
    assert written(tmp_path, HEAD) == written(tmp_path, "") == Written()


def test_of_a_row_of_several_lines_none_is_kept_alone(tmp_path: Path) -> None:
    found = written(tmp_path, f"{HEAD}\n2,fail,so\n3,pass,\n3,cannot tell,\n")
    assert (found.row, found.lines) == (3, ("3,pass,", "3,cannot tell,"))
    assert found.words == {"fail"}


@pytest.mark.parametrize(
    "text", ["row,verdict\n", f"{HEAD}\nx,pass,\n", f"{HEAD}\n2\n", f'{HEAD}\n2,"pa,\n']
)
def test_what_no_batch_wrote_is_refused(tmp_path: Path, text: str) -> None:
    with pytest.raises(BadInput, match=r"out\.part"):
        written(tmp_path, text)
    with pytest.raises(BadInput, match=r"out\.part"):
        written(tmp_path, text, "json")


@pytest.fixture
def rows(tmp_path: Path) -> Path:
    path = tmp_path / "rows.csv"
    path.write_text(ROWS, encoding="utf-8")
    return path


@pytest.mark.parametrize("more", [("csv",), ("csv", "--criteria"), ("json",)])
def test_it_goes_on_to_the_same_file_and_status(
    cli_main: Cli, rows: Path, tmp_path: Path, more: tuple[str, ...]
) -> None:
    target, part = tmp_path / "out", tmp_path / "out.part"
    line = ("batch", "pull", str(rows), "--output", str(target), "--label", "part", "--format")
    assert cli_main(*line, *more).status == 1
    whole = target.read_bytes()
    ends = [n + 1 for n, sign in enumerate(whole) if sign == 10]
    for cut in sorted({0, 5, *ends, *(end + 9 for end in ends[:-1])}):
        target.unlink()
        part.write_bytes(whole[:cut])
        done = cli_main(*line, *more, "--resume")
        assert (done.status, done.out, done.err) == (1, "", ""), cut
        assert target.read_bytes() == whole, cut
        assert not part.exists()


def test_a_part_is_neither_lost_nor_taken_for_that_of_other_rows(
    cli_main: Cli, rows: Path, tmp_path: Path
) -> None:
    target, part = tmp_path / "out.csv", tmp_path / "out.csv.part"
    line = ("batch", "pull", str(rows), "--output", str(target), "--format", "csv", *LABEL)
    cli_main(*line)
    whole = target.read_bytes()
    part.write_bytes(whole[:-20])
    done = cli_main(*line)
    assert done.status == 2
    assert "out.csv.part: is there from a run that was broken off; add --resume" in done.err
    rows.write_text(ROWS.replace("24 lbf", "25 lbf"), encoding="utf-8")
    part.write_bytes(b"".join(whole.splitlines(keepends=True)[:3]))
    done = cli_main(*line, "--resume")
    assert done.status == 2
    assert "out.csv.part: came to something else in row 3" in done.err
    assert part.exists()
    done = cli_main(*line, "--resume", "--criteria")
    assert "out.csv.part: begins with other columns" in done.err


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ((), "--resume: goes on with the file of --output; name it"),
        (("--output", "x"), "--resume: goes on with lines of rows alone"),
        (("--output", "x", "--format", "csv", "--summary", "s"), "--resume: knows nothing"),
    ],
)
def test_what_does_not_go_on(cli_main: Cli, rows: Path, more: tuple[str, ...], said: str) -> None:
    done = cli_main("batch", "pull", str(rows), "--resume", *more)
    assert done.status == 2
    assert said in done.err


def test_an_interrupt_leaves_what_was_written(
    cli_main: Cli, rows: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "out.csv"
    line = ("batch", "pull", str(rows), "--output", str(target), "--format", "csv", *LABEL)
    cli_main(*line)
    whole = target.read_bytes()
    target.unlink()
    left = iter([None])

    def interrupted(self: Any, given: Any) -> Any:
        if next(left, "over"):
            raise KeyboardInterrupt
        return real(self, given)

    from wirecalc.engine.running import Runner

    real = Runner.outcome
    monkeypatch.setattr(Runner, "outcome", interrupted)
    assert cli_main(*line).status == 130
    monkeypatch.undo()
    assert not target.exists()
    assert whole.startswith((tmp_path / "out.csv.part").read_bytes())
    assert cli_main(*line, "--resume").status == 1
    assert target.read_bytes() == whole
