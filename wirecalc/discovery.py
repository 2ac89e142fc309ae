"""Which plugins there are: installed entry points, and the files of a trusted folder.

Nothing is imported here. A plugin that is to be left out is left out before its import.
"""

from __future__ import annotations

import os
import re
import stat
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from importlib.metadata import Distribution, EntryPoint, entry_points
from pathlib import Path
from typing import Any, NamedTuple

from .errors import BadInput, DeclarationError, Problem, did_you_mean
from .settings import Settings

GROUP = "wirecalc"  # the entry-point group
BUNDLED = "wirecalc"  # the distribution whose entry points are the bundled plugins
LOADED, IN_PART, FAILED, LEFT_OUT = "loaded", "in part", "failed", "left out"


@dataclass
class Plugin:
    """One plugin: who it is, and what became of it.

    `distribution` is what was installed, or the file of a trusted folder.
    """

    name: str
    distribution: str
    version: str
    state: str = LOADED
    reason: str = ""
    calculations: list[str] = field(default_factory=list)
    house_rules: list[str] = field(default_factory=list)
    hooks: list[str] = field(default_factory=list)
    load_time: float = 0.0  # s
    slow: bool = False

    @property
    def bundled(self) -> bool:
        """Whether it comes with wirecalc."""
        return self.distribution == BUNDLED

    @property
    def broken(self) -> bool:
        """Whether it was not loaded, or not all of it, though it was to be."""
        return self.state in (IN_PART, FAILED)

    def __str__(self) -> str:
        return f"{self.name} of {self.distribution} {self.version}".rstrip()

    def fail(self, error: BaseException | str, state: str = FAILED) -> None:
        """Say what went wrong with it; what was said before stays."""
        if isinstance(error, BaseException):
            error = f"{type(error).__name__}: {error}"
        said = " ".join(error.split())
        self.state = FAILED if FAILED in (state, self.state) else state
        self.reason = f"{self.reason}; {said}" if self.reason else said


class Candidate(NamedTuple):
    """A plugin, and how to import it."""

    plugin: Plugin
    load: Callable[[], Any]


def found(settings: Settings) -> list[Candidate]:
    """Return the plugins, bundled ones first; those that are not to be loaded are so marked.

    Raises BadInput where the allow-list names a plugin that is not there.
    """
    candidates = [*_installed(), *_in_folder(settings)]
    if settings.only_plugins is not None:
        _check_names(settings.only_plugins, candidates)
    for plugin, _ in candidates:
        if plugin.bundled or plugin.broken:
            continue
        if settings.bundled_only:
            plugin.state, plugin.reason = LEFT_OUT, "only bundled plugins were asked for"
        elif settings.only_plugins is not None and not _named(settings.only_plugins, plugin):
            plugin.state, plugin.reason = LEFT_OUT, "not among the plugins that were asked for"
    return candidates


def _installed() -> list[Candidate]:
    about: dict[int, tuple[str, str]] = {id(None): ("unknown", "")}
    candidates = []
    for point in entry_points(group=GROUP):
        if id(point.dist) not in about and point.dist is not None:
            about[id(point.dist)] = _about(point.dist)
        candidates.append(Candidate(Plugin(point.name, *about[id(point.dist)]), _loader(point)))
    return sorted(candidates, key=_order)


def _about(distribution: Distribution) -> tuple[str, str]:
    """Return name and version; a distribution's metadata is dear to parse, so it is once."""
    metadata = distribution.metadata
    return metadata["Name"], metadata["Version"]


def _loader(point: EntryPoint) -> Callable[[], Any]:
    return point.load


def _order(candidate: Candidate) -> tuple[bool, str, str]:
    plugin = candidate.plugin
    return not plugin.bundled, plugin.distribution, plugin.name


def _in_folder(settings: Settings) -> Iterator[Candidate]:
    """Yield a plugin for each Python file of the trusted folder."""
    folder = settings.plugin_folder
    if folder is None:
        return
    try:
        files = sorted(p for p in folder.iterdir() if p.suffix == ".py" and p.name[0] not in "._")
    except OSError as error:
        plugin = Plugin("plugin folder", str(folder), "")
        plugin.fail(f"cannot be read ({error.strerror or error})")
        yield Candidate(plugin, dict)
        return
    for path in files:
        plugin = Plugin(path.stem, str(path), "")
        wrong = _not_to_be_trusted(path)
        if wrong:
            plugin.fail(wrong)
        yield Candidate(plugin, _file_loader(path))


def _not_to_be_trusted(path: Path) -> str:
    """Return why a file could have been changed by a stranger; empty where it could not.

    Modes and owners are looked at where links lead to, up to the root. A folder that all may
    write to will do above the trusted one if it is sticky, as the folder for temporary files is.
    """
    if os.name != "posix":
        return ""
    real = path.resolve()
    for place in (real, *real.parents):
        about = place.stat()
        shared = about.st_mode & stat.S_IWOTH
        if shared and not (place not in (real, real.parent) and about.st_mode & stat.S_ISVTX):
            return f"not trusted: everybody may write to {place}; take that right away (chmod o-w)"
        if about.st_uid not in (0, os.geteuid()):
            return f"not trusted: {place} belongs to somebody else"
    return ""


def _file_loader(path: Path) -> Callable[[], Any]:
    def load() -> Any:
        import importlib.util
        import sys

        name = f"_wirecalc_folder_{path.stem}"  # nothing is put on Python's own path
        spec = importlib.util.spec_from_file_location(name, path)
        if spec is None or spec.loader is None:
            raise DeclarationError("it is no Python file")
        module = importlib.util.module_from_spec(spec)
        sys.modules[name] = module
        spec.loader.exec_module(module)
        return module

    return load


def _plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).casefold()


def _named(names: Sequence[str], plugin: Plugin) -> bool:
    return bool({_plain(n) for n in names} & {_plain(plugin.name), _plain(plugin.distribution)})


def _check_names(names: Sequence[str], candidates: Sequence[Candidate]) -> None:
    outside = [c.plugin for c in candidates if not c.plugin.bundled]
    known = sorted({n for p in outside for n in (p.name, p.distribution)})
    problems = [
        Problem(
            "only plugins",
            f"no plugin {name!r} is installed",
            did_you_mean(name, known) or "`wirecalc plugins` lists them",
        )
        for name in names
        if not any(_named([name], p) for p in outside)
    ]
    if problems:
        raise BadInput(problems)
