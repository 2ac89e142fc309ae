"""The trusted folder: its files, whether a stranger could have changed them, and their import.

A file in it that was meant as a plugin, as rules or as a table and is not used is said; others are
named. Loaded only where the settings name a folder.
"""

from __future__ import annotations

import importlib.util
import os
import re
import stat
import sys
import tomllib
from collections.abc import Callable, Collection, Iterator
from importlib.machinery import SourceFileLoader
from pathlib import Path
from types import CodeType
from typing import Any

from ..base.errors import BadText, DeclarationError
from ..base.text_files import read_head, read_text, read_toml
from ..published.table_files import TAIL
from ..published.tables import LeftOver, Unused
from ..rules.shop_folder import ENDINGS, meant_name, other_files
from .settings import Settings

_HOOKED = re.compile(r"^@(\w+\.)*hookimpl\b", re.MULTILINE)
_RULES = {"rule", "required", "tables", "new_kinds", "stricter_than", "columns"}


def is_plugin(path: Path) -> bool:
    """Whether a file of the folder is a plugin, by its name."""
    return path.suffix == ".py" and path.name[0] not in "._"


def files(settings: Settings) -> Iterator[tuple[Path, str, Callable[[], Any]]]:
    """Yield each file that is a plugin, why it is not to be trusted (or ""), and how to import it.

    Raises OSError where the folder cannot be read.
    """
    folder = settings.plugin_folder
    if folder is None:
        return
    found = sorted(filter(is_plugin, folder.iterdir()))
    wrong = _about_folder(settings, folder) if found else ""
    for path in found:
        yield path, wrong or _suspicion(path), _loader(path)


def not_used(settings: Settings, folders: Collection[Path]) -> LeftOver:
    """Return what in the folder was meant and is not used, and the rest.

    `folders` are those of tables, which may be this one or one in it: its tables have been seen.
    """
    folder = settings.plugin_folder
    meant: list[Unused] = []
    only_named: list[str] = []
    if folder is None or not folder.is_dir():
        return LeftOver([], [])
    if not any(folder.iterdir()):  # as a share that is not mounted
        return LeftOver([Unused(folder.name, "is an empty folder; no plugin is in it")], [])
    used = [*used_files(settings), *folders]
    seen = ENDINGS[:2] if _among(folder, folders) else ()
    for path in sorted(folder.iterdir()):
        if _among(path, used) or path.suffix in seen or path.name == "__pycache__":
            continue
        if path.name[0] == "." and path.suffix not in ENDINGS:
            continue
        if why := _about_other(path):
            meant.append(Unused(f"{folder.name}/{path.name}", why))
        else:
            only_named.append(path.name)
    return LeftOver(meant, other_files(folder, only_named))


def used_files(settings: Settings) -> list[Path]:
    """Return the files that have a use of their own, wherever they stand."""
    folder = settings.plugin_folder
    plugins = filter(is_plugin, folder.iterdir()) if folder and folder.is_dir() else ()
    return [*settings.rules_files, *([settings.file] if settings.file else []), *plugins]


def _among(path: Path, others: Collection[Path]) -> bool:
    return path.exists() and any(path.samefile(other) for other in others if other.exists())


def _about_other(path: Path) -> str:
    """Say why something in the folder is not used though it was meant; nothing where it was not."""
    try:
        if path.is_dir():
            hooked = any(_HOOKED.search(read_text(p)) for p in sorted(path.glob("*.py")))
            return "is a folder with a plugin in it; a plugin is one file" if hooked else ""
        if meant := meant_name(path):
            return f"was it to be {meant}? It is not loaded as it is called"
        if path.suffix == ".toml" and _RULES & read_toml(path).keys():
            return "is in no folder of tables, and no rules file in force"
        head = read_head(path) if path.suffix == ".csv" else ""
        of_table = head.endswith(tuple(mark.join(TAIL) for mark in ",;\t"))
        return "is in no folder of tables" if of_table else ""
    except (OSError, BadText, tomllib.TOMLDecodeError) as error:
        return f"cannot be read ({getattr(error, 'strerror', None) or error})"


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
            if hasattr(os, "geteuid") and about.st_uid not in (0, os.geteuid()):
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
