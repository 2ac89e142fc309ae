"""What the runs of a calculation over the band of its readings come to: one finding."""

from __future__ import annotations

import functools
from collections.abc import Mapping, Sequence
from typing import Any

from ..base.blame import placed
from ..base.errors import PluginDefect
from ..published.sources import Source
from ..published.tables import Table, load
from ..said.criteria import Criterion, Origin, cannot_tell
from ..said.findings import BandFigure, Finding, Judged, collect_sources, weakest
from ..said.items import Caution, ChartItem, NotChecked, added_cautions, library_caution
from ..said.verdicts import Verdict, worst
from .band import Key, Run, merge_answers, merge_figures, merge_listings
from .declaration import Calculation
from .from_plugins import ProvidedCalculation, ProvidedRule
from .instrument_checks import below_category, past_due
from .made_when_shown import drawn, listed, worked
from .prepared_inputs import Prepared
from .stricter_tables import MARK

ALWAYS = ("ans-01", "ans-02")  # the cautions that end every finding


class Outcome:
    """What a run comes to: its criteria, and all else of its finding when somebody asks for it."""

    def __init__(
        self,
        provided: ProvidedCalculation,
        prepared: Prepared,
        runs: Sequence[Run],
        merged: Mapping[Key, Judged],
        not_loaded: Sequence[NotChecked],
        rules: Sequence[ProvidedRule],
    ) -> None:
        """Merge the runs of a calculation.

        `merged` are its criteria over the runs; `not_loaded` are the plugins that a finding is to
        name as missing, `rules` those of the shop that it was judged by.
        """
        self._provided, self._prepared, self._runs = provided, prepared, runs
        self._not_loaded, self._rules = not_loaded, rules
        self.answers, unsettled = merge_answers(runs)
        self.criteria = _criteria(provided, prepared, [*merged.values(), *unsettled])
        self.cautions = _cautions(provided.calculation, runs)
        if prepared.taken_by:
            self.cautions = (*below_category(provided.calculation, prepared), *self.cautions)

    @functools.cached_property
    def verdict(self) -> Verdict | None:
        """The worst of the criteria; None where there are only figures."""
        return worst([c.verdict for c in self.criteria])

    @functools.cached_property
    def decided_by(self) -> Judged | None:
        """The criterion that decided."""
        return weakest(self.criteria)

    @property
    def not_checked(self) -> tuple[NotChecked, ...]:
        """What was not checked, and why."""
        own = [c for c in self.criteria if c.criterion.origin is not Origin.HOUSE]
        needed = {n for c in own for n in c.criterion.needs}  # a rule hides no gap
        left_out = [n for n in self._prepared.left_out if n.what not in needed]
        unchecked = _unchecked(self._provided.calculation, self._runs)
        return (*unchecked, *left_out, *self._not_loaded)

    @functools.cached_property
    def figures(self) -> tuple[BandFigure, ...]:
        """The figures, with their low and high over the band."""
        return tuple(map(worked, merge_figures(self._runs)))

    @property
    def sources(self) -> Mapping[str, Source]:
        """Where its limits and figures come from, by key."""
        limits = [c.criterion.source for c in self.criteria]
        return collect_sources(limits + [f.figure.source for f in self.figures])

    def finding(self) -> Finding:
        """Return the whole finding."""
        provided, runs = self._provided, self._runs
        listings = merge_listings(runs, listed(provided.whose))
        return Finding(
            calculation=provided.calculation.name,
            plugin=provided.plugin,
            version=provided.version,
            inputs=tuple(self._prepared.records),
            answers=self.answers,
            figures=self.figures,
            criteria=self.criteria,
            listings=tuple(x for x in listings if not x.apart),
            apart=tuple(x for x in listings if x.apart),
            charts=tuple(
                drawn(provided.whose, g.item.build)
                for g in (runs[0] if runs else ())
                if isinstance(g.item, ChartItem)
            ),
            cautions=self.cautions,
            not_checked=self.not_checked,
            sources=self.sources,
            house_rules=_judged_by(self._rules, runs),
            go_on=provided.calculation.go_on,
        )


def _judged_by(rules: Sequence[ProvidedRule], runs: Sequence[Run]) -> tuple[str, ...]:
    """Name the rules files, plugins and tables of the shop whose rules ran."""
    names = {rule.plugin for rule in rules} if runs else set()
    for given in (g for run_ in runs for g in run_ if g.rule == MARK):
        if isinstance(given.item, Criterion) and given.item.origin is Origin.HOUSE:
            names.add(given.provider)
    return tuple(sorted(names))


def _criteria(
    provided: ProvidedCalculation, prepared: Prepared, judged: Sequence[Judged]
) -> tuple[Judged, ...]:
    """Return what was judged, with what is not known before it and what of the meter behind."""
    plugin = provided.plugin
    gaps = _gaps(plugin, prepared, judged)
    if not prepared.bands and not prepared.taken_by:
        return (*gaps, *judged)
    due = [Judged(c, plugin, c.verdict, to_do=c.action) for c in past_due(prepared)]
    return (*gaps, *judged, *_excluded(plugin, prepared), *due)


def _gaps(plugin: str, prepared: Prepared, judged: Sequence[Judged]) -> list[Judged]:
    """Return what is not known or was not given, save what the calculation itself asks for."""
    asked = (*prepared.unknown, *prepared.asked)
    if not asked:
        return []
    told = {
        name
        for one in judged
        if one.verdict is Verdict.CANNOT_TELL and one.criterion.origin is not Origin.HOUSE
        for name in one.criterion.needs
    }
    gaps = [c for c in asked if c.name not in told]
    return [Judged(c, plugin, c.verdict, c.says, c.action) for c in gaps]


def _excluded(plugin: str, prepared: Prepared) -> list[Judged]:
    judged = []
    for name in prepared.excluded():
        criterion = cannot_tell(
            name,
            f"{name}: this meter can't tell it from zero",
            measure="use a range or an instrument with a smaller error",
        )
        judged.append(
            Judged(criterion, plugin, criterion.verdict, criterion.says, criterion.action)
        )
    return judged


def _cautions(calc: Calculation[Any], runs: Sequence[Run]) -> tuple[Caution, ...]:
    """Gather the cautions, those of house rules behind the calculation's own.

    One whose key is in the library has the library's words.
    """
    own: dict[str, Caution] = {}
    house: dict[str, Caution] = {}
    for run_ in runs:
        for item, _, rule in run_:
            if type(item) is Caution:
                (house if rule else own).setdefault(item.key, item)
    yielded = {**house, **own}
    keys = (*own, *calc.cautions, *house, *ALWAYS)
    for key, one in yielded.items():
        if library_caution(key) is not one:
            return _of_keys(calc, keys, yielded)
    return load("cautions").made(_of_library, calc, keys, *added_cautions())


def _of_library(
    _: Table, calc: Calculation[Any], keys: Sequence[str], *added: Caution
) -> tuple[Caution, ...]:
    del added  # they are in the library, and it may be another with others
    return _of_keys(calc, keys, {})


def _of_keys(
    calc: Calculation[Any], keys: Sequence[str], yielded: Mapping[str, Caution]
) -> tuple[Caution, ...]:
    """Return the cautions of some keys, those that end every finding last."""
    found: dict[str, Caution] = {}
    for key in keys:
        known = library_caution(key) or yielded.get(key)
        if known is None:
            wrong = (
                f"{calc.name}: there is no caution {key!r}; `wirecalc tables cautions` lists them"
            )
            raise PluginDefect(f"{wrong}{placed(None, calc.function)}")
        found[key] = known
    return tuple(sorted(found.values(), key=lambda c: c.key in ALWAYS))


def _unchecked(calc: Calculation[Any], runs: Sequence[Run]) -> list[NotChecked]:
    found = [NotChecked(what) for what in calc.not_checked]
    for run_ in runs:
        for given in run_:
            if isinstance(given.item, NotChecked) and given.item not in found:
                found.append(given.item)
    return found
