"""Stdout and the exit status are the core's, whatever a plugin does while it is there."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .conftest import COMMAND, Outside, clean_environment

Command = Callable[..., Any]
FAILS = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "12 lbf", "--format", "json")
HOOK = """
from typing import Annotated
from wirecalc import PRACTICE, Reading, at_least, calculation, hookimpl

@calculation(part="shop")
def shop_weight(current: Annotated[float, Reading("A", low=0, high=100, text="load")]):
    \"\"\"Is it the one of this plugin?\"\"\"
    {run}
    yield at_least("held", current, 10.0, "A", source=PRACTICE)

@hookimpl
def wirecalc_calculations():
    return [shop_weight]
"""
NOISY = """
import atexit, os, subprocess, sys, threading, time

def noise(where):
    print("noise", where)
    print("noise", where, file=sys.__stdout__, flush=True)
    os.write(1, b"noise\\n")
    subprocess.run([sys.executable, "-S", "-c", "print('noise')"])

def last():
    noise("at exit")
    os._exit(0)

noise("at import")
atexit.register(last)
threading.Thread(target=time.sleep, args=(300,)).start()
""" + HOOK.format(run='noise("in a run")')


def test_what_a_plugin_writes_or_leaves_running_changes_no_result(
    command: Command, outside: Outside
) -> None:
    outside.add("demo_noisy", NOISY)
    start = time.perf_counter()
    done = command(*FAILS, env=outside.env)
    own = command("shop-weight", "--current", "5 A", "--format", "json", env=outside.env)
    assert time.perf_counter() - start < 30
    for came_to in (done, own):
        assert (came_to.status, came_to.json["verdict"]) == (1, "fail")
        assert came_to.err.count("noise") >= 4  # it is seen, where complaints are


@pytest.mark.parametrize("leave", ["os._exit(0)", "os.execv(sys.executable, [sys.executable, '-V'])"])  # fmt: skip  # noqa: E501
def test_a_plugin_cannot_end_the_run(command: Command, outside: Outside, leave: str) -> None:
    outside.add("demo_leaves", f"import os, sys\n{leave}\n")
    outside.add("demo_left", "import os, sys\n" + HOOK.format(run=leave))
    done = command(*FAILS, env=outside.env)
    assert (done.status, done.json["verdict"]) == (1, "fail")
    assert "demo_leaves" in done.err and "it wants to end the run" in done.err
    own = command("shop-weight", "--current", "50 A", env=outside.env)
    assert (own.status, own.out) == (4, "")
    assert "it wants to end the run" in own.err


def test_a_process_that_a_plugin_forks_ends_as_it_says(command: Command, outside: Outside) -> None:
    """Libraries end the processes that they fork with os._exit."""
    fork = (
        "import os\npid = os.fork()\npid or os._exit(7)\nassert os.waitpid(pid, 0)[1] == 7 << 8\n"
    )
    outside.add("demo_forks", fork + HOOK.format(run="pass"))
    done = command("shop-weight", "--current", "50 A", env=outside.env)
    assert (done.status, done.err) == (0, "")


@pytest.mark.parametrize("shell", ["2>&-", ">&-", ">/dev/full", "2>&- >&-"])
def test_closed_streams_are_met_as_before(shell: str, empty_folder: Path, outside: Outside) -> None:
    outside.add("demo_noisy", NOISY)
    words = ["bash", "-c", f'exec "$@" {shell}', "bash", str(COMMAND), *FAILS]
    done = subprocess.run(words, cwd=empty_folder, env=clean_environment() | outside.env,
                          capture_output=True, check=False, timeout=30)  # fmt: skip
    assert done.returncode == (1 if shell == "2>&-" else 2)
    assert b"noise" not in done.stdout


def test_a_call_from_python_leaves_the_process_as_it_was() -> None:
    """Only the installed command takes the streams over."""
    script = (
        "import os, sys\nfrom wirecalc import cli\nbefore = (os._exit, sys.stdout)\n"
        "status = cli.main(['tables', 'awg', '--format', 'csv'])\n"
        "assert before == (os._exit, sys.stdout)\nos.write(1, b'mine')\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True,
                          env=os.environ | {"PYTHONUTF8": "1"})  # fmt: skip
    assert done.stdout.endswith(b"mine")
