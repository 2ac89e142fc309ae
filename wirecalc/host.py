"""Finds plugins, keeps a broken one from taking the rest down, and knows every calculation.

pluggy checks hooks; the loading loop is ours: one entry point at a time, each in its own `try`,
because pluggy's own loader stops at the first broken one and skips a duplicate name silently.
"""

from __future__ import annotations

import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from importlib.metadata import EntryPoint, entry_points
from pathlib import Path
from typing import Any

import pluggy

from . import hooks, tables
from .declaration import Calculation
from .errors import BadInput, PluginDefect, Problem, TableError, did_you_mean
from .findings import Finding
from .items import Caution, NotChecked, use_cautions
from .offers import Deferred
from .requirements import ProvidedRequirement, RequiredChecks
from .running import HouseRule, ProvidedCalculation, ProvidedRule, run

BUNDLED = "wirecalc"  # the distribution whose entry points are the bundled plugins


@dataclass
class Plugin:
    """One entry point: who it is, and what became of it."""

    name: str
    distribution: str
    version: str
    state: str = "loaded"  # loaded, in part, failed or left out
    reason: str = ""
    calculations: list[str] = field(default_factory=list)
    load_time: float = 0.0

    @property
    def bundled(self) -> bool:
        """Whether it comes with wirecalc."""
        return self.distribution == BUNDLED

    def __str__(self) -> str:
        return f"{self.name} of {self.distribution} {self.version}"


@dataclass
class Catalogue:
    """Everything that is available in this run."""

    calculations: dict[str, ProvidedCalculation] = field(default_factory=dict)
    rules: list[ProvidedRule] = field(default_factory=list)
    required: list[ProvidedRequirement] = field(default_factory=list)
    plugins: list[Plugin] = field(default_factory=list)

    @property
    def not_loaded(self) -> list[NotChecked]:
        """The plugins whose calculations and house rules are missing, for every finding."""
        what = {"in part": "part", "failed": "house rules", "left out": "house rules"}
        return [
            NotChecked(f"{what[p.state]} of plugin {p}", p.reason)
            for p in self.plugins
            if p.state in what
        ]

    def find(self, name: str) -> ProvidedCalculation:
        """Return a calculation by its name; raises BadInput with the nearest known name."""
        if name not in self.calculations:
            known = sorted(self.calculations)
            would_do = did_you_mean(name, known) or "`wirecalc` lists them"
            raise BadInput([Problem("", f"there is no calculation {name!r}", would_do)])
        return self.calculations[name]

    def load_all(self) -> None:
        """Load what is deferred, so that the plugin of one that does not load is named."""
        for name, provided in list(self.calculations.items()):
            try:
                _ = provided.calculation
            except PluginDefect as error:
                plugin = next(p for p in self.plugins if name in p.calculations)
                plugin.state, plugin.reason = "in part", str(error)
                plugin.calculations.remove(name)

    def run(
        self,
        name: str,
        given: Mapping[str, object],
        *,
        origin: str = "typed",
        missing_is_unknown: bool = False,
    ) -> Finding:
        """Run a calculation with this catalogue's house rules."""
        return run(
            self.find(name),
            given,
            rules=self.rules,
            not_loaded=self.not_loaded,
            origin=origin,
            missing_is_unknown=missing_is_unknown,
        )


def build(*, bundled_only: bool = False) -> Catalogue:
    """Load plugins and return what they provide.

    With `bundled_only` nothing but the plugins that come with wirecalc is imported; the others
    are listed as left out.
    """
    catalogue = Catalogue()
    manager = pluggy.PluginManager(hooks.PROJECT)
    manager.add_hookspecs(hooks)
    by_module: dict[int, Plugin] = {}
    for point, plugin in _found():
        catalogue.plugins.append(plugin)
        if bundled_only and not plugin.bundled:
            plugin.state, plugin.reason = "left out", "only bundled plugins were asked for"
            continue
        module = _load(point, plugin, manager)
        if module is not None:
            by_module[id(module)] = plugin
    _drop_unknown_hooks(manager, by_module)
    _collect(catalogue, manager, by_module)
    return catalogue


def _found() -> list[tuple[EntryPoint, Plugin]]:
    """Return the entry points, bundled ones first, then by distribution and name.

    The metadata of a distribution is dear to parse, so it is read once for all its entry points.
    """
    about: dict[int, tuple[str, str]] = {id(None): ("unknown", "")}
    found = []
    for point in entry_points(group=hooks.PROJECT):
        if id(point.dist) not in about and point.dist is not None:
            metadata = point.dist.metadata
            about[id(point.dist)] = (metadata["Name"], metadata["Version"])
        found.append((point, Plugin(point.name, *about[id(point.dist)])))
    return sorted(found, key=lambda f: (not f[1].bundled, f[1].distribution, f[1].name))


def _load(point: EntryPoint, plugin: Plugin, manager: pluggy.PluginManager) -> Any:
    start = time.perf_counter()
    try:
        module = point.load()
        manager.register(module, name=str(plugin))
    except (Exception, SystemExit) as error:
        _fail(plugin, error)
        return None
    plugin.load_time = time.perf_counter() - start
    return module


def _fail(plugin: Plugin, error: BaseException, state: str = "failed") -> None:
    plugin.state = state
    plugin.reason = " ".join(f"{type(error).__name__}: {error}".split())


def _drop_unknown_hooks(manager: pluggy.PluginManager, by_module: dict[int, Plugin]) -> None:
    """Refuse every plugin that implements a hook we do not have."""
    while True:
        try:
            manager.check_pending()
        except pluggy.PluginValidationError as error:
            _fail(by_module[id(error.plugin)], error)
            manager.unregister(error.plugin)
        else:
            return


def _collect(
    catalogue: Catalogue, manager: pluggy.PluginManager, by_module: dict[int, Plugin]
) -> None:
    offered_folders = _results(manager.hook.wirecalc_tables, by_module, Path)
    tables.use_folders([path for plugin, path in offered_folders if _adds_only(plugin, path)])
    use_cautions(own for _, own in _results(manager.hook.wirecalc_cautions, by_module, Caution))
    wanted_rules = (HouseRule, RequiredChecks)
    for plugin, rule in _results(manager.hook.wirecalc_house_rules, by_module, *wanted_rules):
        if isinstance(rule, RequiredChecks):
            catalogue.required.append(ProvidedRequirement(plugin.name, plugin.version, rule))
        else:
            catalogue.rules.append(ProvidedRule(plugin.name, plugin.version, rule))
    catalogue.rules.sort(key=lambda r: (r.plugin, r.rule.name))
    catalogue.required.sort(key=lambda r: (r.plugin, r.rule.name))
    offered: dict[str, list[tuple[Plugin, Calculation[Any] | Deferred]]] = {}
    wanted = (Calculation, Deferred)
    for plugin, calc in _results(manager.hook.wirecalc_calculations, by_module, *wanted):
        offered.setdefault(calc.name, []).append((plugin, calc))
    for name in sorted(offered):
        _offer(catalogue, name, offered[name])


def _results(
    hook: Any, by_module: dict[int, Plugin], *wanted: type
) -> Iterator[tuple[Plugin, Any]]:
    """Yield what each implementation of a hook returns; one that raises loses only itself."""
    for impl in hook.get_hookimpls():
        plugin = by_module[id(impl.plugin)]
        try:
            results = list(impl.function() or ())
            for result in results:
                if not isinstance(result, wanted):
                    raise TypeError(
                        f"{hook.name} returned {result!r}, which is no {wanted[0].__name__}"
                    )
                if isinstance(result, Calculation) and not plugin.bundled:
                    result.inputs  # noqa: B018  refuses a signature that does not declare all
        except (Exception, SystemExit) as error:
            _fail(plugin, error, "in part")
            continue
        yield from ((plugin, result) for result in results)


def _adds_only(plugin: Plugin, folder: Path) -> bool:
    """Refuse a folder that is not there, or that would replace a bundled table."""
    bundled = {path.stem for path in tables.bundled_folder().glob("*.toml")}
    taken = sorted(bundled & {path.stem for path in folder.glob("*.toml")})
    if taken:
        error = TableError(f"{taken[0]} is a bundled table; add one under another name")
        _fail(plugin, error, "in part")
    elif not folder.is_dir():
        _fail(plugin, TableError(f"{folder} is no folder of tables"), "in part")
    return not taken and folder.is_dir()


def _offer(
    catalogue: Catalogue, name: str, offers: list[tuple[Plugin, Calculation[Any] | Deferred]]
) -> None:
    """Take a calculation into the catalogue; a bundled name can't be taken, a clash is refused."""
    bundled = [o for o in offers if o[0].bundled]
    chosen = bundled or offers
    if len(chosen) == 1:
        plugin, calc = chosen[0]
        catalogue.calculations[name] = ProvidedCalculation(plugin.name, plugin.version, calc)
        plugin.calculations.append(name)
    for plugin, _ in offers:
        if bundled and not plugin.bundled:
            plugin.state, plugin.reason = "in part", f"the name {name} is a bundled calculation's"
        elif len(chosen) > 1:
            others = ", ".join(str(o[0]) for o in offers if o[0] is not plugin)
            plugin.state, plugin.reason = "in part", f"the name {name} is also claimed by {others}"
