"""What goes into the file: the packages that are installed here, and the shop's own files.

Packages keep their metadata and licences, so that entry points are found there as here.
"""

from __future__ import annotations

import importlib.util
import io
import re
import zipfile
from collections.abc import Iterator, Sequence
from importlib.metadata import Distribution, PackageNotFoundError, distributions
from importlib.metadata import requires as requirements
from pathlib import Path
from typing import NamedTuple

from ..base.errors import BadInput, Problem
from ..plugging.discovery import GROUP

_COMPILED = (".so", ".pyd", ".dylib", ".dll")
_OWN = ("wirecalc", "wirecalc_plugins", "wirecalc_tables")  # whatever its metadata names
_EPOCH = (1980, 1, 1, 0, 0, 0)  # the same file from the same packages, whenever it is built


class Packed(NamedTuple):
    """A package that is embedded: its name, version, licence in a word, and whether a plugin."""

    name: str
    version: str
    licence: str
    plugin: bool


def packages() -> list[Distribution]:
    """Return wirecalc, the plugins from outside, and what they need, by name.

    Raises BadInput for a plugin, or what it needs, that has a compiled part.
    """
    found: dict[str, Distribution] = {}
    for name in ("wirecalc", *sorted(_plugins())):
        _add(name, found, name)
    return [found[name] for name in sorted(found)]


def packed(dists: Sequence[Distribution]) -> list[Packed]:
    """Say of each package what it is."""
    plugins = _plugins()
    return [
        Packed(d.metadata["Name"], d.version, _licence(d), _key(d.metadata["Name"]) in plugins)
        for d in dists
    ]


def archive(dists: Sequence[Distribution]) -> bytes:
    """Return the files of all packages as one zip, as they lie in a folder of packages."""
    return zipped((name, path.read_bytes()) for d in dists for name, path in _files(d))


def zipped(files: Iterator[tuple[str, bytes]]) -> bytes:
    """Return files as a zip that is the same for the same content.

    It is packed as a whole when it is embedded, and so no file in it is.
    """
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_STORED) as out:
        for name, content in sorted(dict(files).items()):
            out.writestr(zipfile.ZipInfo(name, _EPOCH), content)
    return buffer.getvalue()


def distribution(name: str) -> Distribution:
    """Return an installed package, and not what building one left beside its source.

    Raises PackageNotFoundError.
    """
    for found in distributions(name=name):
        if found.read_text("RECORD") is not None:
            return found
    raise PackageNotFoundError(name)


def _plugins() -> set[str]:
    return {
        _key(d.metadata["Name"])
        for d in distributions()
        if _key(d.metadata["Name"]) != "wirecalc" and d.entry_points.select(group=GROUP)
    }


def _key(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).casefold()


def _add(name: str, found: dict[str, Distribution], of: str) -> None:
    """Add a package and what it needs; what is not installed is not needed here."""
    if name in found:
        return
    try:
        dist = distribution(name)
    except PackageNotFoundError:
        return
    found[name] = dist
    compiled = [path for path, _ in _files(dist) if path.endswith(_COMPILED)]
    if compiled:
        wrong = f"{name} has a compiled part ({compiled[0]}), which no browser runs"
        do = "build where it is not installed, or ask its maker for one in Python alone"
        raise BadInput([Problem(f"plugin {of}", wrong, do)])
    for line in requirements(name) or []:
        if "extra ==" not in line and (match := re.match(r"[A-Za-z0-9._-]+", line)):
            _add(_key(match[0]), found, of)


def _files(dist: Distribution) -> Iterator[tuple[str, Path]]:
    """Yield the name of each file in a folder of packages, and where it is read."""
    editable = False
    for file in dist.files or ():
        path = Path(str(dist.locate_file(file)))
        if ".." in file.parts or "__pycache__" in file.parts or file.suffix in (".pyc", ".pth"):
            editable |= file.suffix == ".pth" or file.name.startswith("__editable__")
            continue
        if file.name.startswith("__editable__"):
            editable = True
        elif path.is_file() and file.name not in ("RECORD", "direct_url.json"):
            yield file.as_posix(), path
    if editable:
        named = (dist.read_text("top_level.txt") or "").split()
        points = [point.module.partition(".")[0] for point in dist.entry_points]
        own = _OWN if _key(dist.metadata["Name"]) == "wirecalc" else ()
        for top in sorted({*named, *points, *own}):
            yield from _of_package(top)


def _of_package(top: str) -> Iterator[tuple[str, Path]]:
    """Yield the files of a package that is installed to be worked on."""
    spec = importlib.util.find_spec(top)
    if spec is None or not spec.submodule_search_locations:
        if spec is not None and spec.origin:
            yield Path(spec.origin).name, Path(spec.origin)
        return
    folder = Path(next(iter(spec.submodule_search_locations)))
    for path in sorted(folder.rglob("*")):
        if path.is_file() and "__pycache__" not in path.parts:
            yield f"{top}/{path.relative_to(folder).as_posix()}", path


def _licence(dist: Distribution) -> str:
    """Return what a package says of its licence: the expression, else the classifier, else that."""
    said = dist.metadata
    for name in ("License-Expression", "License"):
        texts = [str(text).strip() for text in said.get_all(name) or []]
        if texts and texts[0] and "\n" not in texts[0]:
            return texts[0]
    classified = [c for c in said.get_all("Classifier") or [] if c.startswith("License ::")]
    return classified[0].rpartition(" :: ")[2] if classified else "see its files"
