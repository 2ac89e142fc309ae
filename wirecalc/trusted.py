"""The trusted folder: its files, whether a stranger could have changed them, and their import.

Loaded only where the settings name a folder.
"""

from __future__ import annotations

import importlib.util
import os
import stat
import sys
from collections.abc import Callable, Iterator
from importlib.machinery import SourceFileLoader
from pathlib import Path
from types import CodeType
from typing import Any

from .errors import DeclarationError
from .settings import Settings


def files(settings: Settings) -> Iterator[tuple[Path, str, Callable[[], Any]]]:
    """Yield each file that is a plugin, why it is not to be trusted (or ""), and how to import it.

    Raises OSError where the folder cannot be read.
    """
    folder = settings.plugin_folder
    if folder is None:
        return
    found = sorted(p for p in folder.iterdir() if p.suffix == ".py" and p.name[0] not in "._")
    wrong = _about_folder(settings, folder) if found else ""
    for path in found:
        yield path, wrong or _suspicion(path), _loader(path)


def _about_folder(settings: Settings, folder: Path) -> str:
    """Say what is wrong with how the folder is named: by a file, and where a person stands."""
    real = folder.resolve()
    if real == _current() and Path(settings.folder_as_written).expanduser() != real:
        written = settings.folder_as_written
        return f"not trusted: {written} is the current directory; write the whole path, {real}"
    return _suspicion(settings.file) if settings.file else ""


def _current() -> Path | None:
    try:
        return Path.cwd()
    except OSError:  # it was removed
        return None


def _suspicion(path: Path) -> str:
    """Return why a file could have been changed by a stranger; empty where it could not.

    Modes and owners are looked at where links lead to, up to the root. A folder that all may
    write to will do above the trusted one if it is sticky, as the folder for temporary files is.
    """
    if os.name != "posix":
        return ""
    try:
        real = path.resolve(strict=True)
        for place in (real, *real.parents):
            about = place.stat()
            shared = about.st_mode & stat.S_IWOTH
            if shared and (place in (real, real.parent) or not about.st_mode & stat.S_ISVTX):
                return f"not trusted: everybody may write to {place}; take that away (chmod o-w)"
            if about.st_uid not in (0, os.geteuid()):
                return f"not trusted: {place} belongs to somebody else"
    except (OSError, RuntimeError) as error:  # a link that leads nowhere, or in a circle
        return f"cannot be looked at ({getattr(error, 'strerror', None) or error})"
    return ""


class _SourceOnly(SourceFileLoader):
    """Compiles the file each time: a compiled copy would be one more file to trust."""

    def get_code(self, fullname: str) -> CodeType:
        path = self.get_filename(fullname)
        code: CodeType = self.source_to_code(self.get_data(path), path)
        return code


def _loader(path: Path) -> Callable[[], Any]:
    def load() -> Any:
        name = f"_wirecalc_folder_{path.stem}"  # nothing is put on Python's own path
        loader = _SourceOnly(name, str(path))
        spec = importlib.util.spec_from_file_location(name, path, loader=loader)
        if spec is None:
            raise DeclarationError("it is no Python file")
        module = importlib.util.module_from_spec(spec)
        sys.modules[name] = module
        try:
            loader.exec_module(module)
        except BaseException:
            del sys.modules[name]
            raise
        return module

    return load
