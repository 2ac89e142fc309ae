"""docs/plugin.md is run from its first line to its last, in an environment of its own."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest

from .environments import PROJECT, make_environment, run, the_wheel

PAGE = PROJECT / "docs" / "plugin.md"
SHIM = '#!/bin/sh\nexec "{python}" -m pip --python "{environment}/bin/python" "$@"\n'


@pytest.fixture
def environment(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An environment with wirecalc, what tests need, and a `pip` that installs into it."""
    folder = tmp_path_factory.mktemp("tutorial")
    make_environment(folder, the_wheel(tmp_path_factory), also=("pytest", "hypothesis"))
    pip = folder / "bin" / "pip"
    pip.write_text(SHIM.format(python=sys.executable, environment=folder), encoding="utf-8")
    pip.chmod(0o755)
    return folder


def blocks() -> list[tuple[str, str]]:
    """Return the code blocks of the page, in order: language and content."""
    return re.findall(r"^```(\w+)\n(.*?)^```", PAGE.read_text(), re.DOTALL | re.MULTILINE)


def steady(printed: str) -> str:
    """Leave out what is another in every run, and spaces at the ends of lines."""
    timed = re.sub(r"passed in \d+\.\d+s", "passed in a moment", printed.rstrip())
    return re.sub(r" +$", "", timed, flags=re.MULTILINE)


def test_every_step_of_the_tutorial(environment: Path, tmp_path: Path) -> None:
    env = {"PATH": f"{environment / 'bin'}:/usr/bin:/bin", "PYTHONDONTWRITEBYTECODE": "1"}
    printed = []
    for language, content in blocks():
        if language != "console":
            name = re.match(r"(?:#|<!--) (\S+)", content)
            assert name is not None
            (tmp_path / name[1]).write_text(content, encoding="utf-8")
            continue
        for part in re.split(r"^\$ ", content, flags=re.MULTILINE)[1:]:
            command, _, shown = part.partition("\n")
            came_to = run("bash", "-c", f"exec 2>&1\n{command}", cwd=tmp_path, env=env)
            if command.startswith("pip "):
                assert came_to.returncode == 0, came_to.stdout
                continue
            printed.append((f"$ {command}\n{came_to.stdout}", f"$ {command}\n{shown}"))
    wrong = [
        f"{real}\nin place of\n{shown}" for real, shown in printed if steady(real) != steady(shown)
    ]
    assert len(printed) >= 15
    assert not wrong, "\n".join(wrong)
