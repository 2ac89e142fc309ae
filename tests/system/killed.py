"""Processes that record jobs and are killed, for test_record_killed.py.

    python killed.py SHEET FOLDER KILLS SEED

Each process is forked from this one, which has everything loaded, so that the kills hit the work
and not the start of Python. Half of them run the whole command over and over, the others only
what it stores with. Prints, a line a kill, how long the process had lived, and how many records it
left.
"""

from __future__ import annotations

import contextlib
import datetime
import io
import os
import random
import signal
import sys
import time
from itertools import count
from pathlib import Path

from wirecalc import cli
from wirecalc.jobs import record

SLEEP = (0.001, 0.08)  # seconds that a process lives


def run_commands(number: int, sheet: Path, folder: Path) -> None:
    """Run the command over and over, on a sheet that differs."""
    text = sheet.read_text(encoding="utf-8")
    mine = sheet.with_name(f"{number}.toml")
    for turn in count():
        mine.write_text(f"{text}# {number} {turn}\n", encoding="utf-8")
        assert cli.main(["job", str(mine), "--record", str(folder)]) == 0


def store_only(number: int, like: record.Record, folder: Path) -> None:
    """Store records that differ, over and over."""
    for turn in count():
        record.store(like._replace(sheet=f"# {number} {turn}\n".encode()), folder)


def main(sheet: Path, folder: Path, kills: int, seed: int) -> None:
    """Start a process and kill it, as often as asked."""
    draw = random.Random(seed)
    out = sys.stdout
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        assert cli.main(["job", str(sheet), "--record", str(folder)]) == 0
        (first,) = folder.iterdir()
        read = [(first / name).read_text(encoding="utf-8") for name in record.FILES[1:]]
        like = record.Record(datetime.date(2026, 11, 25), "stored", b"", *read)
        for number in range(kills):
            child = os.fork()
            if not child:
                if number % 2:
                    run_commands(number, sheet, folder)
                store_only(number, like, folder)
            lived = draw.uniform(*SLEEP)
            time.sleep(lived)
            os.kill(child, signal.SIGKILL)
            _, status = os.waitpid(child, 0)
            assert os.WTERMSIG(status) == signal.SIGKILL, "it ended by itself"
            print(f"{lived:.4f} {sum(1 for _ in record.entries(folder))}", file=out, flush=True)


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4]))
