"""Completion in real shells: which words are offered, how they are quoted, and what stays quiet."""

from __future__ import annotations

import functools
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from wirecalc.commands import usage

from .conftest import BUNDLED, COMMAND, LONGEST_RUN, Outcome, Outside, clean_environment
from .terminal import Terminal

pytest.importorskip("argcomplete")
CALCULATIONS = {name for names in BUNDLED.values() for name in names}
GENERAL = set(usage.CALCULATION.described)
BASH = r"""
eval "$CODE"
COMP_LINE=$0 COMP_POINT=${#0} COMP_TYPE=9
_python_argcomplete wirecalc
printf '%s\n' "${COMPREPLY[@]}"
"""
FISH = "printf '%s\\n' $CODE | source; complete -C $argv[1]"
Words = Callable[..., set[str]]


def need(shell: str) -> str:
    found = shutil.which(shell)
    if found is None:
        pytest.skip(f"{shell} is not installed")
    return found


def environment(more: dict[str, str] | None = None) -> dict[str, str]:
    path = f"{COMMAND.parent}{os.pathsep}{os.environ['PATH']}"
    return clean_environment() | {"PATH": path, "LC_ALL": "C.UTF-8"} | (more or {})


@functools.cache
def code(shell: str) -> str:
    """The code that a shell completes with, which is the same for every line."""
    done = subprocess.run([COMMAND, "completion", shell], capture_output=True, check=True)
    return done.stdout.decode()


@pytest.fixture(params=["bash", "fish"])
def offered(request: pytest.FixtureRequest, empty_folder: Path) -> Words:
    """Return the words that a shell offers for a line; nothing is printed beside them."""
    shell = need(request.param)
    always = {"HOME": str(empty_folder.parent), "CODE": code(request.param)}

    def words(line: str, **env: str) -> set[str]:
        start = (
            [shell, "--norc", "-c", BASH] if request.param == "bash" else [shell, "-N", "-c", FISH]
        )
        done = subprocess.run(
            [*start, line],
            capture_output=True,
            cwd=empty_folder,
            env=environment(always | env),
            timeout=LONGEST_RUN,
            check=False,
        )
        assert done.stderr == b""
        lines = done.stdout.decode().splitlines()
        return {w.split("\t")[0].rstrip(" ") for w in lines} - {""}

    return words


def test_first_word(offered: Words) -> None:
    found = offered("wirecalc ")
    assert found >= CALCULATIONS
    assert found >= {"ask", "completion", "explain", "job", "plugins", "schema", "tables"}
    assert offered("wirecalc pul") == {"pull", "pull-batch", "pull-down", "pull-tester"}


def test_options_that_were_not_given_yet(offered: Words) -> None:
    found = offered("wirecalc pull --wire '18 AWG' --terminal ring --")
    assert found == {"--force", "--listed-for", "--pull-standard", *GENERAL}
    assert "--wire" in offered("wirecalc strip --wire '18 AWG' --w")  # may be repeated
    assert "--force" in offered("wirecalc pull ")


def test_value_that_starts_with_a_minus_is_no_option(offered: Words) -> None:
    found = offered("wirecalc overload --ambient -18C --tr")
    assert found == {"--trip-temperature"}


def test_choices(offered: Words) -> None:
    assert offered("wirecalc pull --terminal r") == {"ring"}
    assert offered("wirecalc element --element-open ") == {"yes", "no"}
    assert offered("wirecalc pull --format ") >= {"text", "json", "html"}
    assert offered("wirecalc tables --format ") >= {"text", "json", "csv"}
    assert "html" not in offered("wirecalc plugins --format ")


def test_names_behind_commands(offered: Words) -> None:
    assert offered("wirecalc explain ") == CALCULATIONS
    assert offered("wirecalc ask ") == {*CALCULATIONS, "job"}
    assert offered("wirecalc tables pull-") == {"pull-clamp", "pull-crimp"}
    assert offered("wirecalc schema ") >= {"finding", "job"}
    assert offered("wirecalc completion ") == {"bash", "zsh", "fish"}


def test_batch(offered: Words, empty_folder: Path) -> None:
    (empty_folder / "pulls.csv").touch()
    assert offered("wirecalc batch pul") == {"pull", "pull-batch", "pull-down", "pull-tester"}
    assert offered("wirecalc batch pull ") >= {"pulls.csv"}
    assert offered("wirecalc batch pull pulls.csv --te") == {"--terminal"}
    assert offered("wirecalc batch pull pulls.csv --terminal r") == {"ring"}
    assert "html" not in offered("wirecalc batch pull pulls.csv --format ")
    assert offered("wirecalc batch pull pulls.csv --br") == set()
    assert offered("wirecalc job repair.toml --sh") == {"--short"}


def test_files_where_a_file_belongs_and_nowhere_else(offered: Words, empty_folder: Path) -> None:
    for name in ("repair.toml", "class.csv"):
        (empty_folder / name).touch()
    (empty_folder / "records").mkdir()
    assert offered("wirecalc job ") == {"repair.toml", "records/"}
    assert offered("wirecalc pull --output cl") == {"class.csv"}
    assert offered("wirecalc pull --chart cl") == {"class.csv"}
    assert offered("wirecalc pull-batch --readings ") == {"repair.toml", "class.csv", "records/"}
    assert offered("wirecalc pull --wire ") == set()
    assert offered("wirecalc pull --force ") == set()


def test_outside_calculation(offered: Words, outside: Outside) -> None:
    outside.add("shop", SHOP)
    outside.add("broken", "raise RuntimeError('broken')")
    outside.add("loud", "import os, sys\nprint('loud')\nos.write(2, b'loud')\n")
    assert offered("wirecalc lif", **outside.env) == {"lift"}
    assert offered("wirecalc lift --g", **outside.env) == {"--gap"}
    assert offered("wirecalc pull --terminal r", **outside.env) == {"ring"}


def test_line_that_cannot_be_completed_is_left_alone(offered: Words) -> None:
    for line in ("wirecalc nothing --f", "wirecalc pull --nothing x --fo", "wirecalc pull 'ri"):
        assert offered(line) <= {"--force", "--format"}


def test_choice_with_spaces_is_quoted(empty_folder: Path, outside: Outside) -> None:
    """It is typed at a real bash: what it makes of the Tab is run as one word."""
    outside.add("shop", SHOP)
    with Terminal([need("bash"), "--norc", "-i"], empty_folder, env=shell(outside)) as terminal:
        terminal.type('PS1="<""ready>"; eval "$(wirecalc completion bash)"\r')
        terminal.wait_for("<ready>")
        terminal.type("wirecalc lift --gap '2 mm' --place und\t")
        terminal.wait_for(r"under\ the\ sink")
        terminal.type("--format json\r")
        assert '"given": "under the sink"' in terminal.wait_for("<ready>")
        terminal.type("exit\r")
        terminal.end()


def test_zsh(empty_folder: Path, outside: Outside) -> None:
    outside.add("shop", SHOP)
    with Terminal([need("zsh"), "-f", "-i"], empty_folder, env=shell(outside)) as terminal:
        terminal.type("PS1='<''ready>'; autoload -U compinit; compinit -u -D\r")
        terminal.wait_for("<ready>")
        terminal.type('eval "$(wirecalc completion zsh)"\r')
        terminal.wait_for("<ready>")
        terminal.type("wirecalc pull --wire '18 AWG' --te\t")
        terminal.wait_for("--terminal ")
        terminal.type("rin\t")
        terminal.wait_for("ring ")
        terminal.type("--force '27 lbf' --fo\tjso\t\r")
        assert '"verdict": "pass"' in terminal.wait_for("<ready>")
        terminal.type("wirecalc lift --gap '2 mm' --place und\t--format json\r")
        assert '"given": "under the sink"' in terminal.wait_for("<ready>")
        terminal.type("wirecalc pul\t\t")
        assert "least pull-out force" in terminal.wait_for("pull-batch")


def shell(outside: Outside) -> dict[str, str]:
    return environment({**outside.env, "TERM": "xterm"})


SHOP = """
from typing import Annotated
from wirecalc import OneOf, Reading, calculation, figure, hookimpl

@calculation(part="shop")
def lift(
    gap: Annotated[float, Reading("mm", low=0, high=20, text="100% of gap")],
    place: Annotated[str, OneOf(("under the sink", "on top"), text="place")] = "on top",
):
    '''Does it lift?'''
    yield figure("gap", gap, "mm")

@hookimpl
def wirecalc_calculations():
    return [lift]
"""


def test_code_is_refused_for_another_shell(command: Callable[..., Outcome]) -> None:
    done = command("completion", "csh")
    assert (done.status, done.out) == (2, "")
    assert done.complaints == ["completion: there is no code for 'csh'; write bash, zsh, fish"]
    assert command("completion").status == 2


def test_missing_extra_is_said_and_a_line_left_alone(
    command: Callable[..., Outcome], tmp_path: Path
) -> None:
    (tmp_path / "sitecustomize.py").write_text(
        "import sys\nfrom importlib.abc import MetaPathFinder\n"
        "class Missing(MetaPathFinder):\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name.partition('.')[0] == 'argcomplete':\n"
        "            raise ModuleNotFoundError(name)\n"
        "sys.meta_path.insert(0, Missing())\n",
        encoding="utf-8",
    )
    without = {"PYTHONPATH": str(tmp_path)}
    done = command("completion", "bash", env=without)
    assert (done.status, done.out) == (2, "")
    assert "pip install 'wirecalc[completion]'" in done.err
    line = "wirecalc pul"
    asked = {"_ARGCOMPLETE": "1", "COMP_LINE": line, "COMP_POINT": str(len(line))}
    done = command("pull", env=without | asked)
    assert (done.out, done.err) == ("", "")


def test_a_plain_run_loads_nothing_of_it(empty_folder: Path) -> None:
    program = "import sys; from wirecalc.cli import main; main(['pull', '--help']); "
    program += "sys.exit(any(m.startswith(('argcomplete', 'wirecalc.commands.shell_completion')) "
    program += "or m in ('readline', 'wirecalc.commands.dialogue') for m in sys.modules))"
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, cwd=empty_folder, check=False
    )
    assert done.returncode == 0
