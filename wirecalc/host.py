"""Everything that is available in a run: calculations, house rules, plugins with their state.

What a plugin offers is collected one plugin at a time, so that one that raises loses only itself.
"""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pluggy

from . import tables
from .declaration import Calculation
from .discovery import FAILED, IN_PART, LEFT_OUT, Plugin, found
from .errors import BadInput, PluginDefect, Problem, TableError, did_you_mean
from .findings import Finding
from .items import Caution, NotChecked, use_cautions
from .loading import load
from .offers import Deferred
from .requirements import ProvidedRequirement, RequiredChecks
from .running import HouseRule, ProvidedCalculation, ProvidedRule, run
from .settings import Settings, read


@dataclass
class Catalogue:
    """Everything that is available in this run."""

    calculations: dict[str, ProvidedCalculation] = field(default_factory=dict)
    rules: list[ProvidedRule] = field(default_factory=list)
    required: list[ProvidedRequirement] = field(default_factory=list)
    plugins: list[Plugin] = field(default_factory=list)
    left_out: list[NotChecked] = field(default_factory=list)  # beside plugins

    @property
    def not_loaded(self) -> list[NotChecked]:
        """The plugins whose calculations and house rules are missing, for every finding."""
        what = {IN_PART: "part", FAILED: "house rules", LEFT_OUT: "house rules"}
        return [
            NotChecked(f"{what[p.state]} of plugin {p}", p.reason)
            for p in self.plugins
            if p.state in what
        ] + self.left_out

    def refuse_broken(self) -> None:
        """Raise PluginDefect where a plugin did not load, or not all of it: strict runs."""
        self.load_all()
        broken = [f"plugin {p}: {p.reason}" for p in self.plugins if p.broken]
        if broken:
            raise PluginDefect("nothing was computed, strictly: " + "; ".join(broken))

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
                plugin.fail(str(error), IN_PART)
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

    def runner(
        self, name: str, *, origin: str = "typed"
    ) -> Callable[[Mapping[str, object]], Finding]:
        """Return the function that runs one calculation again and again, as `run` does once.

        What does not change from run to run is found once, and no text is read twice.
        """
        provided = self.find(name)
        return functools.partial(
            run,
            provided._replace(offered=provided.calculation),
            rules=self.rules,
            not_loaded=self.not_loaded,
            origin=origin,
            remembered={},
        )


def build(
    settings: Settings | None = None,
    *,
    bundled_only: bool = False,
    rules: Sequence[Path] | None = None,
) -> Catalogue:
    """Load plugins and return what they provide, with the house rules of the rules files.

    Without settings, those of the environment are read; `rules` are rules files in place of
    theirs. With `bundled_only` nothing but the plugins that come with wirecalc is imported; the
    others, and rules files, are listed as left out.

    Raises BadInput for settings that cannot be used, and under strict settings PluginDefect where
    a plugin did not load.
    """
    if settings is None:
        settings = Settings(bundled_only=True) if bundled_only else read()
    if rules is not None:
        settings = settings._replace(rules_files=tuple(rules))
    catalogue = Catalogue()
    candidates = found(settings)
    catalogue.plugins = [c.plugin for c in candidates]
    if settings.unread is not None:
        why = "only bundled plugins were asked for"
        catalogue.left_out.append(NotChecked(f"what {settings.unread} asks for", why))
    _collect(catalogue, *load(candidates))
    if settings.bundled_only:
        why = "only bundled plugins were asked for"
        catalogue.left_out += [
            NotChecked(f"house rules of {path.name}", why) for path in settings.rules_files
        ]
    elif settings.rules_files:
        _add_rules(catalogue, settings.rules_files)
    if settings.strict:
        catalogue.refuse_broken()
    return catalogue


def _add_rules(catalogue: Catalogue, files: Sequence[Path]) -> None:
    from . import rules_file  # a shop without one reads nothing of it

    found = rules_file.load(files, catalogue.calculations)
    catalogue.rules = sorted([*catalogue.rules, *found.rules], key=_by_name)
    catalogue.required = sorted([*catalogue.required, *found.required], key=_by_name)
    tables.use_folders([*tables.folders()[1:], *found.folders])


def _by_name(provided: ProvidedRule | ProvidedRequirement) -> tuple[str, str]:
    return provided.plugin, provided.rule.name


def _collect(
    catalogue: Catalogue, manager: pluggy.PluginManager, by_module: dict[int, Plugin]
) -> None:
    offered_folders = _results(manager.hook.wirecalc_tables, by_module, Path)
    tables.use_folders([path for plugin, path in offered_folders if _adds_only(plugin, path)])
    use_cautions(own for _, own in _results(manager.hook.wirecalc_cautions, by_module, Caution))
    wanted_rules = (HouseRule, RequiredChecks)
    for plugin, rule in _results(manager.hook.wirecalc_house_rules, by_module, *wanted_rules):
        plugin.house_rules.append(rule.name)
        if isinstance(rule, RequiredChecks):
            catalogue.required.append(ProvidedRequirement(plugin.name, plugin.version, rule))
        else:
            catalogue.rules.append(ProvidedRule(plugin.name, plugin.version, rule))
    catalogue.rules.sort(key=_by_name)
    catalogue.required.sort(key=_by_name)
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
        except KeyboardInterrupt:
            raise
        except BaseException as error:
            plugin.fail(error, IN_PART)
            continue
        yield from ((plugin, result) for result in results)


def _adds_only(plugin: Plugin, folder: Path) -> bool:
    """Refuse a folder that is not there, or that would replace a bundled table."""
    from .shop_tables import check_folder, refuse_folder  # only where a folder is added

    usable = False
    try:
        refuse_folder(folder)
        usable = True
        check_folder(folder)
    except TableError as error:
        plugin.fail(error, IN_PART)
    return usable


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
            plugin.fail(f"the name {name} is a bundled calculation's", IN_PART)
        elif len(chosen) > 1:
            others = ", ".join(str(o[0]) for o in offers if o[0] is not plugin)
            plugin.fail(f"the name {name} is also claimed by {others}", IN_PART)
