"""Write what README and docs take from the code: lists, tables and transcripts.

.venv/bin/python -m tests.system.written
"""

from __future__ import annotations

import itertools
import os
import re
import shlex
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

import wirecalc
from wirecalc.engine.inputs import Input

from . import exported, reference
from .followed import FOLLOWED, followed

ROOT = Path(__file__).parents[2]
COMMAND = Path(sys.executable).with_name("wirecalc")
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "docs").glob("*.md"))]
CALCULATIONS = wirecalc.build(bundled_only=True).calculations
LEFT_OUT = """# What leaving an input out comes to

Made from the declarations by `tests/system/written.py`; do not edit it by hand. What is
needed is not listed. *Asked*: left out is *cannot tell*, as `unknown` is. *Assumed*: what is
plausible beside the default is tried too, and what rests on the default alone is *cannot tell*.
*May be left out*: the verdict stands without it.
"""


def readme(page: str) -> str:
    """Return the README with all calculations, by part of the trade as the listing has them."""
    parts: dict[str, list[str]] = {}
    for name, provided in sorted(CALCULATIONS.items()):
        parts.setdefault(provided.calculation.part, []).append(name)
    rows = (
        (part if name == names[0] else "", f"`{name}`", CALCULATIONS[name].calculation.question)
        for part, names in sorted(parts.items())
        for name in names
    )
    return _with_table(page, ("part of the trade", "calculation", "question"), rows)


def glossary(page: str) -> str:
    """Return the page of inputs with every name, its unit, what it is and what asks for it."""
    named: dict[str, tuple[Input, list[str]]] = {}
    for name, provided in sorted(CALCULATIONS.items()):
        for declared in provided.calculation.inputs:
            named.setdefault(declared.name, (declared, []))[1].append(f"`{name}`")
    rows = (
        (f"`{name}`", declared.kind.unit, declared.kind.text, ", ".join(by))
        for name, (declared, by) in sorted(named.items())
    )
    return _with_table(page, ("name", "unit", "what it is", "asked by"), rows)


def left_out(_: str) -> str:
    """Return the page of what leaving each optional input out comes to."""
    page = [LEFT_OUT]
    for name, provided in sorted(CALCULATIONS.items()):
        optional = [i for i in provided.calculation.inputs if not i.required]
        rows = [(_with_its_other(i), i.kind.text, i.need) for i in optional]
        if rows:
            page += [f"## {name}\n", *_table(("input", "what it is", "left out"), rows), ""]
    return "\n".join(page)


def _with_its_other(declared: Input) -> str:
    other = declared.kind.goes_with
    return f"`{declared.name}`" + (f" (with `{other}`)" if other else "")


MADE: dict[str, Callable[[str], str]] = {
    "README.md": readme,
    "docs/inputs.md": glossary,
    "docs/left-out.md": left_out,
    "docs/reference.md": lambda _: reference.page(),
    "docs/reference-trade.md": lambda _: reference.page_of_trade(),
    "docs/export.md": exported.page,
}


def _table(head: Iterable[str], rows: Iterable[Iterable[str]]) -> Iterator[str]:
    yield _line(head)
    yield _line("---" for _ in head)
    yield from map(_line, rows)


def _line(cells: Iterable[str]) -> str:
    return " ".join(("|", *(f"{cell.replace('|', '/')} |".lstrip() for cell in cells)))


def _with_table(page: str, head: Iterable[str], rows: Iterable[Iterable[str]]) -> str:
    """Return a page with the table of this head made anew."""
    made = "\n".join(_table(head, rows)) + "\n"
    table = rf"^{re.escape(_line(head))}\n(\|.*\n)+"
    anew, times = re.subn(table, lambda _: made, page, flags=re.MULTILINE)
    assert times == 1, f"the page has {times} tables of {_line(head)}"
    return anew


def with_transcripts(page: str) -> str:
    """Return a page with each command of its transcripts followed by what it prints now."""
    return re.sub(r"^```console\n(.*?)^```", _transcript, page, flags=re.DOTALL | re.MULTILINE)


def _transcript(block: re.Match[str]) -> str:
    said, *parts = re.split(r"^\$ ", block[1], flags=re.MULTILINE)
    for part in parts:
        command, _, before = part.partition("\n")
        now = as_far_as(before.strip(), printed(command))
        gap = "\n" if before.endswith("\n\n") else ""
        said += f"$ {command}\n" + (before if now == before.strip() else f"{now}\n{gap}")
    return f"```console\n{said}```"


def as_far_as(before: str, now: str) -> str:
    """Return what is printed now as a page shows it: before ... stands what is to be done."""
    if not before.endswith("..."):
        return now
    rest = ("STOP", "Care", "Assumed", "Exact", "Not checked", "NO VERDICT")
    done = itertools.takewhile(lambda line: not line.startswith(rest), now.splitlines())
    return "\n".join([*done, "..."])


def printed(command: str) -> str:
    """Return what a line of a transcript prints, or says where it ends in 2>&1."""
    line, refused, _ = command.partition(" 2>&1")
    words = shlex.split(line)
    assert words[0] == "wirecalc", command
    environment = {k: v for k, v in os.environ.items() if k != "PYTHONIOENCODING"}
    done = subprocess.run(
        [COMMAND, *words[1:]],
        capture_output=True,
        cwd=ROOT,
        env=environment | {"PYTHONUTF8": "1"},
        check=False,
    )
    return (done.stderr if refused else done.stdout).decode().strip()


if __name__ == "__main__":
    for path in PAGES:
        before = path.read_text(encoding="utf-8")
        made = MADE.get(str(path.relative_to(ROOT)), str)(before)
        if path in FOLLOWED:
            with tempfile.TemporaryDirectory() as folder:
                made = followed(made, Path(folder))
        elif path.name != "plugin.md":  # run from end to end by test_tutorial.py
            made = with_transcripts(made)
        if made != before:
            path.write_text(made, encoding="utf-8")
            print(f"written: {path.relative_to(ROOT)}")
