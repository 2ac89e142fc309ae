"""What the runs of a calculation over the band of its readings come to: one finding."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..base.blame import placed
from ..base.errors import PluginDefect
from ..said.criteria import Origin, cannot_tell
from ..said.findings import Finding, Judged, collect_sources
from ..said.items import Answer, Caution, ChartItem, NotChecked, library_caution
from ..said.verdicts import Verdict
from .band import Key, Run, merge_answers, merge_figures, merge_listings
from .declaration import Calculation
from .from_plugins import ProvidedCalculation
from .instrument_checks import below_category, past_due
from .made_when_shown import drawn, worked
from .prepared_inputs import Prepared

ALWAYS = ("ans-01", "ans-02")  # the cautions that end every finding


def finding(
    provided: ProvidedCalculation,
    prepared: Prepared,
    runs: Sequence[Run],
    merged: Mapping[Key, Judged],
    not_loaded: Sequence[NotChecked],
    house_rules: tuple[str, ...],
) -> Finding:
    """Merge the runs of a calculation into its finding.

    `merged` are its criteria over the runs; `not_loaded` are the plugins that a finding is to
    name as missing, `house_rules` those of the shop that it was judged by.
    """
    plugin, calc = provided.plugin, provided.calculation
    judged = list(merged.values())
    answers: tuple[Answer, ...] = ()
    listings = merge_listings(runs) if runs else ()
    figures = [*map(worked, merge_figures(runs))] if runs else []
    if runs:
        answers, unsettled = merge_answers(runs)
        judged += unsettled
    due = [Judged(c, plugin, c.verdict, c.reason, c.action) for c in past_due(prepared)]
    criteria = [*_gaps(plugin, prepared, judged), *judged, *_excluded(plugin, prepared), *due]
    own = [c for c in criteria if c.criterion.origin is not Origin.HOUSE]  # a rule hides no gap
    needed = {n for c in own for n in c.criterion.needs}
    left_out = [n for n in prepared.left_out if n.what not in needed]
    return Finding(
        calculation=calc.name,
        plugin=plugin,
        version=provided.version,
        inputs=tuple(prepared.records),
        answers=answers,
        figures=tuple(figures),
        criteria=tuple(criteria),
        listings=tuple(x for x in listings if not x.apart),
        apart=tuple(x for x in listings if x.apart),
        charts=tuple(
            drawn(provided.whose, g.item.build)
            for g in (runs[0] if runs else ())
            if isinstance(g.item, ChartItem)
        ),
        cautions=(*below_category(calc, prepared), *_cautions(calc, runs)),
        not_checked=(*_unchecked(calc, runs), *left_out, *not_loaded),
        sources=collect_sources(
            [c.criterion.source for c in criteria] + [f.figure.source for f in figures]
        ),
        house_rules=house_rules,
    )


def _gaps(plugin: str, prepared: Prepared, judged: Sequence[Judged]) -> list[Judged]:
    """Return what is not known or was not given, save what the calculation itself asks for."""
    told = {
        name
        for one in judged
        if one.verdict is Verdict.CANNOT_TELL and one.criterion.origin is not Origin.HOUSE
        for name in one.criterion.needs
    }
    gaps = [c for c in (*prepared.unknown, *prepared.asked) if c.name not in told]
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
        for given in run_:
            if isinstance(given.item, Caution):
                (house if given.rule else own).setdefault(given.item.key, given.item)
    found: dict[str, Caution] = {}
    for key in (*own, *calc.cautions, *house, *ALWAYS):
        known = library_caution(key) or own.get(key) or house.get(key)
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
