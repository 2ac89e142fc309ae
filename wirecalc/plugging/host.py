"""Everything that is available in a run: calculations, house rules, plugins with their state."""

from __future__ import annotations

import contextlib
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ..base.errors import BadInput, PluginDefect, Problem, did_you_mean
from ..instruments import readings
from ..instruments.declared import Declared
from ..published import tables
from ..said.items import Caution, NotChecked, added_cautions, use_cautions
from .between_runs import BetweenRuns
from .discovery import FAILED, IN_PART, LEFT_OUT, SAID, Plugin, found
from .instrument_files import read_instruments
from .loading import load
from .offers import by_name, collect
from .settings import Settings, read
from .unused import left_over, strange_variables, used_files

if TYPE_CHECKING:
    from ..engine.from_plugins import ProvidedCalculation, ProvidedRule
    from ..engine.merged_finding import Outcome
    from ..engine.sought.seeking import Seeker
    from ..rules.requirements import ProvidedRequirement
    from ..said.findings import Finding


@dataclass
class Catalogue:
    """Everything that is available in this run."""

    calculations: dict[str, ProvidedCalculation] = field(default_factory=dict)
    rules: list[ProvidedRule] = field(default_factory=list)
    required: list[ProvidedRequirement] = field(default_factory=list)
    plugins: list[Plugin] = field(default_factory=list)
    left_out: list[NotChecked] = field(default_factory=list)  # beside plugins
    folders: list[Path] = field(default_factory=list)  # of tables
    cautions: list[Caution] = field(default_factory=list)
    used: list[Path] = field(default_factory=list)  # files of the shop with a use of their own
    unused: list[tables.Unused] = field(default_factory=list)  # though the shop meant it
    instruments: Declared = field(default_factory=Declared)
    _between: BetweenRuns = field(default_factory=BetweenRuns, init=False, repr=False)

    @property
    def not_loaded(self) -> list[NotChecked]:
        """The plugins whose calculations and house rules are missing, for every finding."""
        missing = [p for p in self.plugins if p.state in (IN_PART, FAILED, LEFT_OUT)]
        return [NotChecked(p.missing, p.reason) for p in missing] + self.left_out

    def refuse_broken(self, rules_files: Sequence[Path] = ()) -> None:
        """Raise PluginDefect where a plugin or a rules file is not used whole: strict runs."""
        self.load_all()
        broken = [f"plugin {p}: {p.reason}" for p in self.plugins if p.broken]
        if rules_files:
            from ..rules.files import Beside, check

            beside = Beside(self.folders, self.required, self.used)
            wrong = {path: check(path, self.calculations, beside) for path in rules_files}
            broken += [f"rules file {path}: {w}" for path, all_ in wrong.items() for w in all_]
        broken += [why for why in self.not_in_force() if not any(why in said for said in broken)]
        if broken:
            said = "nothing was computed, because plugins and rules files are to load (strict)"
            raise PluginDefect("\n".join([said, *broken]))

    def not_in_force(self) -> list[str]:
        """Say what the shop meant and is not used: files, and what is in its stricter tables."""
        if not self.folders:
            return [str(one) for one in self.unused]
        from ..published.shop_tables import lost

        return [*(str(one) for one in self.unused), *lost(self.folders)]

    def find(self, name: str) -> ProvidedCalculation:
        """Return a calculation by its name.

        Raises BadInput with the nearest known name, and with the plugins that were not loaded,
        one of which may have it.
        """
        if name not in self.calculations:
            raise BadInput([Problem("", f"there is no calculation {name!r}", self.would_do(name))])
        return self.calculations[name]

    def would_do(self, name: str) -> str:
        """Return what would do where there is no calculation of a name, as for `find`."""
        nearest = did_you_mean(name, sorted(self.calculations)) or "`wirecalc` lists them"
        return "; ".join([nearest, *self.may_have()])

    def may_have(self) -> list[str]:
        """Say which plugins were not loaded: one of them may have what was not found."""
        return [
            f"plugin {p} {SAID[p.state]} and may have it ({p.reason})"
            for p in self.plugins
            if p.state in SAID
        ]

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
        """Run a calculation with this catalogue's house rules, tables and cautions."""
        again = self.runner(name, origin=origin, missing_is_unknown=missing_is_unknown)
        with self.in_use():
            found = again(given)
            if self.instruments.instruments:
                from ..engine.which_meter import with_meters

                return with_meters(self.find(name).calculation, found, given, again)
            return found

    def runner(
        self, name: str, *, origin: str = "typed", missing_is_unknown: bool = False
    ) -> Callable[[Mapping[str, object]], Finding]:
        """Return the function that runs one calculation again and again, as `run` does once."""
        again = self.outcomes(name, origin=origin, missing_is_unknown=missing_is_unknown)
        return lambda given: again(given).finding()

    def outcomes(
        self, name: str, *, origin: str = "typed", missing_is_unknown: bool = False
    ) -> Callable[[Mapping[str, object]], Outcome]:
        """Return the function that runs one calculation again and again, and puts off its words."""
        from ..engine.running import Runner  # a listing runs nothing

        provided, remembered = self._between.of(name, origin, self.find(name), self.instruments)
        runner = Runner(
            provided,
            rules=self.rules,
            not_loaded=self.not_loaded,
            origin=origin,
            missing_is_unknown=missing_is_unknown,
            remembered=remembered,
        )

        def once_more(given: Mapping[str, object]) -> Outcome:
            with self.in_use():
                return runner.outcome(given)

        return once_more

    def seeker(self, name: str, **asked: Any) -> Seeker:
        """Return what finds the spans of a calculation's inputs that are sought (see Seeker)."""
        from ..engine.sought.seeking import Seeker

        return Seeker(self.find(name).calculation, self.runner(name), **asked)

    def put_to_use(self) -> None:
        """Have its tables and cautions in use, and no others."""
        tables.use_folders(self.folders, self.unused)
        use_cautions(self.cautions)

    def in_use(self) -> contextlib.AbstractContextManager[None]:
        """Have them in use for a while: a process may have two catalogues, and runs in runs."""
        there = tables.in_use(self.folders, self.unused) and added_cautions() == self.cautions
        there = there and readings.declared() == self.instruments
        return contextlib.nullcontext() if there else self._in_turn()

    @contextlib.contextmanager
    def _in_turn(self) -> Iterator[None]:
        folders, unused, cautions = tables.folders()[1:], tables.unused(), added_cautions()
        self.put_to_use()
        try:
            with readings.in_use(self.instruments):
                yield
        finally:
            tables.use_folders(folders, unused)
            use_cautions(cautions)


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
    a plugin did not load, or something in a rules file cannot be used.
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
    with contextlib.redirect_stdout(sys.stderr):  # what a plugin prints is no result
        offered = collect(*load(candidates))
    if settings.file:
        catalogue.instruments = read_instruments(settings.file, settings.instruments)
    catalogue.calculations, catalogue.rules, catalogue.required = offered[:3]
    catalogue.folders, catalogue.cautions = offered.folders, offered.cautions
    if settings.bundled_only:
        why = "only bundled plugins were asked for"
        catalogue.left_out += [
            NotChecked(f"house rules of {path.name}", why) for path in settings.rules_files
        ]
    else:
        catalogue.used = used_files(settings)
        if settings.rules_files:
            _add_rules(catalogue, settings.rules_files)
        left = left_over(settings, catalogue.plugins, offered.own_folders, catalogue.folders)
        catalogue.unused += [*offered.unused, *left.meant]
        catalogue.left_out += (NotChecked(*named) for named in left.named)
    catalogue.left_out += strange_variables()
    catalogue.put_to_use()
    if settings.strict:
        catalogue.refuse_broken(() if settings.bundled_only else settings.rules_files)
    return catalogue


def _add_rules(catalogue: Catalogue, files: Sequence[Path]) -> None:
    from ..rules import files as rules_file  # a shop without one reads nothing of it
    from ..rules.shop_folder import hidden

    beside = rules_file.Beside(catalogue.folders, catalogue.required, catalogue.used)
    found = rules_file.load(files, catalogue.calculations, beside)
    catalogue.rules = sorted([*catalogue.rules, *found.rules], key=by_name)
    catalogue.required = sorted([*catalogue.required, *found.required], key=by_name)
    catalogue.unused += found.left.meant
    catalogue.left_out += (NotChecked(*named) for named in found.left.named)
    for folder in found.folders:
        for why in hidden(folder, catalogue.folders):
            catalogue.left_out.append(NotChecked(f"a table of {folder}", why))
        catalogue.folders.append(folder)
