"""Bytecode for what the page loads before its first answer, made by Python for a browser itself.

Compiling takes that Python most of the time until it answers. Node runs it here, where there is
one: no other Python writes bytecode that it surely takes.
"""

from __future__ import annotations

import io
import py_compile
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Iterator, Mapping
from importlib import resources
from importlib.metadata import entry_points
from pathlib import Path
from typing import NamedTuple

from ..plugging.discovery import BUNDLED_MODULE, GROUP
from .installed import zipped

_LONGEST = 300  # seconds
_LIBRARY = "python_stdlib.zip"  # as the runtime calls its standard library
_PACKAGES = "packages.zip"


class Archives(NamedTuple):
    """The standard library and the packages, each as a zip; whether they have bytecode."""

    library: bytes
    packages: bytes
    compiled: bool


def made(runtime: Mapping[str, bytes], packages: bytes, node: str) -> Archives:
    """Return library and packages, as bytecode where node is there to make it and does.

    `node` is its program, empty where there is none.
    """
    as_they_are = Archives(zipped(_files(runtime[_LIBRARY])), packages, compiled=False)
    if not node:
        return as_they_are
    with tempfile.TemporaryDirectory() as folder:
        here = Path(folder)
        for name, content in {**runtime, _PACKAGES: packages}.items():
            here.joinpath(name).write_bytes(content)
        script = resources.files(__package__).joinpath("bytecode.cjs").read_bytes()
        here.joinpath("bytecode.cjs").write_bytes(script)
        command = [node, str(here / "bytecode.cjs")]
        try:
            subprocess.run(command, check=True, timeout=_LONGEST, capture_output=True)
            found = [here.joinpath("made", name).read_bytes() for name in (_LIBRARY, _PACKAGES)]
        except (OSError, subprocess.SubprocessError):
            return as_they_are
    return Archives(found[0], found[1], compiled=True)


def compiled(archive: bytes) -> bytes:
    """Return a zip of modules, with bytecode in the place of those that this Python has loaded.

    A plugin keeps its source: names in a shop's rules are looked up in it.
    """
    return zipped(_compiled(archive, _loaded(), _plugins()))


def _files(archive: bytes) -> Iterator[tuple[str, bytes]]:
    with zipfile.ZipFile(io.BytesIO(archive)) as files:
        for info in files.infolist():
            if not info.is_dir():
                yield info.filename, files.read(info)


def _compiled(archive: bytes, loaded: set[str], plugins: set[str]) -> Iterator[tuple[str, bytes]]:
    with tempfile.TemporaryDirectory() as folder:
        source, to = Path(folder, "source.py"), Path(folder, "made.pyc")
        for name, content in _files(archive):
            module = name.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
            if module not in loaded or module.partition(".")[0] in plugins:
                yield name, content
                continue
            source.write_bytes(content)
            how = py_compile.PycInvalidationMode.UNCHECKED_HASH
            py_compile.compile(str(source), str(to), name, doraise=True, invalidation_mode=how)
            yield f"{name}c", to.read_bytes()


def _loaded() -> set[str]:
    """Return the names of the modules that were read from a file."""
    specs = [getattr(module, "__spec__", None) for module in list(sys.modules.values())]
    return {spec.name for spec in specs if spec is not None and spec.has_location}


def _plugins() -> set[str]:
    """Return the names of packages that have plugins."""
    modules = [BUNDLED_MODULE, *(point.module for point in entry_points(group=GROUP))]
    return {module.partition(".")[0] for module in modules}
