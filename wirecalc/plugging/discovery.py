"""Which plugins there are: the bundled one, installed entry points, files of a trusted folder.

Nothing is imported here. A plugin that is to be left out is left out before its import. The bundled
one is found in the package: what a distribution calls itself in its metadata says nothing.
"""

from __future__ import annotations

import importlib
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from importlib.metadata import Distribution, EntryPoint, distributions
from typing import Any, NamedTuple

from ..base.blame import described, placed
from ..base.errors import BadInput, DeclarationError, Problem, did_you_mean
from ..version import VERSION
from .settings import Settings

GROUP = "wirecalc"  # the entry-point group
BUNDLED_MODULE = "wirecalc_plugins.shelf"  # the bundled plugin
BUNDLED, INSTALLED, FOLDER = "bundled", "installed", "folder"  # where a plugin comes from
UNKNOWN = "unknown"  # a distribution whose metadata names none
LONGEST_REASON = 500  # characters
LOADED, IN_PART, FAILED, LEFT_OUT = "loaded", "in part", "failed", "left out"
SAID = {FAILED: "was not loaded", IN_PART: "was loaded in part", LEFT_OUT: "was left out"}


@dataclass
class Plugin:
    """One plugin: who it is, and what became of it.

    `distribution` is what was installed, or the file of a trusted folder; `origin` says which.
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
    origin: str = INSTALLED

    @property
    def bundled(self) -> bool:
        """Whether it comes with wirecalc."""
        return self.origin == BUNDLED

    @property
    def broken(self) -> bool:
        """Whether it was not loaded, or not all of it, though it was to be."""
        return self.state in (IN_PART, FAILED)

    @property
    def missing(self) -> str:
        """What of it is missing from every finding, where not all of it was loaded."""
        if self.state != IN_PART:
            return f"house rules of plugin {self}"
        rules = ", ".join(self.house_rules)
        return f"part of plugin {self}" + (f", of whose house rules {rules} held" if rules else "")

    def __str__(self) -> str:
        return f"{self.name} of {self.distribution} {self.version}".rstrip()

    def fail(
        self, error: BaseException | str, state: str = FAILED, *, function: object = None
    ) -> None:
        """Say what went wrong with it, and where; what was said before stays.

        `function` is what it is about, where no code of the plugin is on the way to the error.
        """
        words = described(error) if isinstance(error, BaseException) else error
        said = "".join(c if c.isprintable() else "?" for c in " ".join(words.split()))
        if len(said) > LONGEST_REASON:
            said = f"{said[:LONGEST_REASON]} ..."
        said += placed(error if isinstance(error, BaseException) else None, function)
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
    candidates = [_bundled(), *_installed(), *_in_folder(settings)]
    if settings.only_plugins is not None:
        _check_names(settings, candidates)
    for plugin, _ in candidates:
        if plugin.bundled or plugin.broken:
            continue
        if settings.bundled_only:
            plugin.state, plugin.reason = LEFT_OUT, "only bundled plugins were asked for"
        elif settings.only_plugins is not None and not _named(settings.only_plugins, plugin):
            plugin.state, plugin.reason = LEFT_OUT, "not among the plugins that were asked for"
    _refuse_same_names([c.plugin for c in candidates if c.plugin.state == LOADED])
    return candidates


def _refuse_same_names(plugins: Sequence[Plugin]) -> None:
    """Refuse plugins of one name: what they say would be taken for one another's."""
    for plugin in plugins:
        same = [p for p in plugins if p.name == plugin.name and p is not plugin]
        if same and not plugin.bundled:
            apart = all(p.distribution != plugin.distribution for p in same)
            would_do = "--only-plugins can name one of them" if apart else "rename one"
            plugin.fail(f"{', '.join(map(str, same))} has the same name; {would_do}")


def _bundled() -> Candidate:
    plugin = Plugin(BUNDLED, GROUP, VERSION, origin=BUNDLED)
    return Candidate(plugin, lambda: importlib.import_module(BUNDLED_MODULE))


def _installed() -> list[Candidate]:
    """Return the plugins of all distributions; one with damaged entry points is named.

    Read one distribution at a time: `entry_points()` stops at the first that is damaged. Where a
    distribution is there twice, the first on the path counts, as it does for an import.
    """
    candidates: list[Candidate] = []
    seen: set[str] = set()
    for distribution in distributions():
        try:
            if f"[{GROUP}]" not in (distribution.read_text("entry_points.txt") or ""):
                continue
            points = [p for p in distribution.entry_points if p.group == GROUP]
            points = [p for p in points if p.value != BUNDLED_MODULE]  # it is there already
        except Exception as error:
            points = []
            damaged: Exception | None = error
        else:
            damaged = None
        name, version = _about(distribution)
        if _plain(name) in seen and name != UNKNOWN:
            continue
        seen.add(_plain(name))
        candidates += [Candidate(Plugin(p.name, name, version), _loader(p)) for p in points]
        if damaged is not None:
            plugin = Plugin(name, name, version)
            plugin.fail(f"its entry points cannot be read ({damaged})")
            candidates.append(Candidate(plugin, dict))
    return sorted(candidates, key=_order)


def _about(distribution: Distribution) -> tuple[str, str]:
    """Return name and version: two lines, where parsing all of the metadata is dear."""
    try:
        text = distribution.read_text("METADATA") or distribution.read_text("PKG-INFO") or ""
    except (OSError, UnicodeDecodeError):
        text = ""
    head = text.partition("\n\n")[0]
    said = dict(re.findall(r"^(Name|Version):[ \t]*(\S+)", head, re.MULTILINE))
    return said.get("Name", UNKNOWN), said.get("Version", "")


def _loader(point: EntryPoint) -> Callable[[], Any]:
    def load() -> Any:
        if not point.pattern.match(point.value):
            raise DeclarationError(
                f"its entry point leads to {point.value!r}; write the name of its module"
            )
        return point.load()

    return load


def _order(candidate: Candidate) -> tuple[str, str]:
    return candidate.plugin.distribution, candidate.plugin.name


def _in_folder(settings: Settings) -> Iterator[Candidate]:
    """Yield a plugin for each Python file of the trusted folder."""
    if settings.plugin_folder is None:
        return
    from . import trusted

    try:
        for path, wrong, load in trusted.files(settings):
            plugin = Plugin(path.stem, str(path), "", origin=FOLDER)
            if wrong:
                plugin.fail(wrong)
            yield Candidate(plugin, load)
    except OSError as error:
        plugin = Plugin("plugin folder", str(settings.plugin_folder), "", origin=FOLDER)
        plugin.fail(f"cannot be read ({error.strerror or error})")
        yield Candidate(plugin, dict)


def _plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).casefold()


def _named(names: Sequence[str], plugin: Plugin) -> bool:
    return bool({_plain(n) for n in names} & {_plain(plugin.name), _plain(plugin.distribution)})


def _check_names(settings: Settings, candidates: Sequence[Candidate]) -> None:
    outside = [c.plugin for c in candidates if not c.plugin.bundled]
    known = sorted({n for p in outside for n in (p.name, p.distribution)})
    problems = [
        Problem(
            settings.only_from,
            f"no plugin {name!r} is installed",
            did_you_mean(name, known) or "`wirecalc plugins` lists them",
        )
        for name in settings.only_plugins or ()
        if not any(_named([name], p) for p in outside)
    ]
    if problems:
        raise BadInput(problems)
