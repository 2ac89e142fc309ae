"""Environments of their own: the wheel, and a Python that has it and what it needs."""

from __future__ import annotations

import fcntl
import importlib.util
import os
import shutil
import subprocess
import sys
import venv
from collections.abc import Callable, Iterator, Mapping
from importlib import metadata
from pathlib import Path

import pytest
from packaging.requirements import Requirement

from .conftest import clean_environment

PROJECT = Path(__file__).parents[2]
LEFT_OUT = shutil.ignore_patterns(".*", "*.egg-info", "build", "dist", "__pycache__", "tests")
PIP = (sys.executable, "-m", "pip")


def run(
    *words: str | Path, cwd: Path, env: Mapping[str, str] | None = None
) -> subprocess.CompletedProcess[str]:
    """Run a command and return what it came to."""
    return subprocess.run(
        words,
        cwd=cwd,
        env=clean_environment() | dict(env or {}),
        capture_output=True,
        encoding="utf-8",
        check=False,
        timeout=300,
    )


def done(*words: str | Path, cwd: Path, env: Mapping[str, str] | None = None) -> str:
    """Run a command that must succeed and return what it printed."""
    came_to = run(*words, cwd=cwd, env=env)
    assert came_to.returncode == 0, came_to.stdout + came_to.stderr
    return came_to.stdout


def once(factory: pytest.TempPathFactory, name: str, make: Callable[[Path], object]) -> Path:
    """Return a folder that was made once, whichever of the test processes came first."""
    several = "PYTEST_XDIST_WORKER" in os.environ
    base = factory.getbasetemp().parent if several else factory.getbasetemp()
    folder = base / name
    with (base / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (base / f"{name}.made").exists():
            shutil.rmtree(folder, ignore_errors=True)
            folder.mkdir()
            make(folder)
            (base / f"{name}.made").touch()
    return folder


def the_wheel(factory: pytest.TempPathFactory) -> Path:
    """Return the wheel of wirecalc, built once from a copy: nothing is left in the repository."""

    def make(folder: Path) -> None:
        shutil.copytree(PROJECT, folder / "source", ignore=LEFT_OUT)
        build_wheel(folder / "source", folder)

    (built,) = once(factory, "wheel", make).glob("*.whl")
    return built


def build_wheel(source: Path, folder: Path) -> Path:
    """Build a wheel of a project into a folder.

    The build takes setuptools from here where it is installed, else from the index.
    """
    here = all(importlib.util.find_spec(name) for name in ("setuptools", "wheel"))
    how = ["--no-build-isolation"] if here else []
    done(*PIP, "wheel", "--no-deps", "--quiet", *how, "--wheel-dir", folder, source, cwd=folder)
    (built,) = folder.glob("*.whl")
    return built


def make_environment(folder: Path, *wheels: Path, also: tuple[str, ...] = ()) -> None:
    """Make an environment with some wheels, what they say that they need, and nothing else.

    What wirecalc needs is copied from here, and what is `also` there; pip checks that it
    suffices, without the index.
    """
    venv.create(folder, symlinks=True)
    (site,) = folder.glob("lib/python*/site-packages")
    for distribution in {d for name in ("wirecalc", *also) for d in _needed(name)}:
        _copy(distribution, site)
    for name in also:
        _copy(metadata.distribution(name), site)
    install(folder, *wheels)


def install(environment: Path, *wheels: Path) -> None:
    """Install wheels into an environment; what they need must be there already."""
    how = ("--python", environment / "bin" / "python", "install", "--quiet", "--no-index")
    done(*PIP, *how, *wheels, cwd=environment)


def _copy(distribution: metadata.Distribution, site: Path) -> None:
    for file in distribution.files or ():
        if ".." not in file.parts and "__pycache__" not in file.parts:
            (site / file).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(str(file.locate()), site / file)


def _needed(name: str) -> Iterator[metadata.Distribution]:
    """Yield the distributions that one needs to run, extras aside."""
    for line in metadata.distribution(name).requires or ():
        wanted = Requirement(line)
        if wanted.marker is None or wanted.marker.evaluate({"extra": ""}):
            yield metadata.distribution(wanted.name)
            yield from _needed(wanted.name)
