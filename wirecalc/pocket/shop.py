"""The shop's own files: its settings, rules, plugin folder with tables, instruments, stock."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from ..base.errors import BadInput, Problem
from ..base.text_files import read_toml
from ..plugging.settings import Settings

FOLDER = "shop"  # in the browser's own files


def stock(path: Path | None) -> Iterator[tuple[str, bytes]]:
    """Yield a stock list as it lies there; raises BadInput where it cannot be read."""
    if path is not None:
        try:
            yield f"{FOLDER}/{path.name}", path.read_bytes()
        except OSError as error:
            wrong = f"{path} cannot be read ({error.strerror or error})"
            raise BadInput([Problem("--stock", wrong, "name a CSV of the shop's stock")]) from None


def settings_name(settings: Settings) -> str:
    """Return the name of the settings file there; empty where there is none."""
    return settings.file.name if settings.file else ""


def files(settings: Settings) -> Iterator[tuple[str, bytes]]:
    """Yield each file that the settings name, as it lies beside them, with its content.

    Raises BadInput for one that lies elsewhere: its path would be embedded, and not be there.
    """
    if settings.file is None:
        if settings.rules_files:
            wrong = f"{settings.rules_files[0]} is in force, and no settings file names it"
            raise BadInput([Problem("rules", wrong, "name it in rules_files of the settings")])
        return
    base = settings.file.parent
    said = read_toml(settings.file)
    named = [*settings.rules_files, *(base / Path(n) for n in said.get("instruments_files", []))]
    paths = [settings.file, *named]
    folders = [
        path.parent / name
        for path in settings.rules_files
        for name in read_toml(path).get("tables", [])
    ]
    if settings.plugin_folder is not None:
        folders.append(settings.plugin_folder)
    for folder in folders:
        paths += [p for p in folder.rglob("*") if "__pycache__" not in p.parts]
    for path in paths:
        if path.is_file():
            yield _beside(path, base), path.read_bytes()


def _beside(path: Path, base: Path) -> str:
    real, folder = path.resolve(), base.resolve()
    if not real.is_relative_to(folder):
        wrong = f"{path} does not lie beside the settings file"
        raise BadInput([Problem("settings", wrong, f"move it to {base}, and name it from there")])
    return f"{FOLDER}/{real.relative_to(folder).as_posix()}"
