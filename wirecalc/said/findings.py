"""The finding: what one run of a calculation comes to, ready for any output."""

from __future__ import annotations

import functools
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from ..published.sources import Source
from ..typed.kinds import TAKEN_AS_EXACT
from .charts import ChartMaker
from .criteria import Criterion, Origin
from .items import Answer, Caution, Figure, Listing, NotChecked
from .verdicts import Verdict, worst


class InputRecord(NamedTuple):
    """One input as it went into the run.

    `origin` is typed, sheet, assumed or unknown. `notes` says what was assumed or added,
    `understood` what was made of a text that names a wire, with its area.
    """

    name: str
    given: str | None
    value: float | str | None
    unit: str
    low: float | None
    high: float | None
    origin: str
    notes: tuple[str, ...] = ()
    understood: str = ""


class BandFigure(NamedTuple):
    """A figure with its low and high over the instrument's band (None without a band)."""

    figure: Figure
    low: float | None = None
    high: float | None = None


class Judged(NamedTuple):
    """A criterion with its verdict over the whole band; `criterion` is the worst run's.

    `said` and `to_do` are its reason and what to do about it, where they are not the criterion's
    own: those are put into words when somebody reads them.
    """

    criterion: Criterion
    provider: str
    verdict: Verdict
    said: str | None = None
    to_do: str | None = None
    low: float | None = None
    high: float | None = None

    @property
    def reason(self) -> str:
        """Why the verdict is what it is, in words."""
        return self.criterion.reason if self.said is None else self.said

    @property
    def action(self) -> str:
        """What to do about it."""
        return self.criterion.next_action if self.to_do is None else self.to_do

    @property
    def because(self) -> str:
        """What it says, with its name."""
        name = self.criterion.name
        return f"{name}: {self.reason}" if self.reason else name


@dataclass(frozen=True)
class Finding:
    """What one run of a calculation comes to.

    `house_rules` are the rules files, plugins and tables of the shop by whose rules it was judged
    too, whatever they came to; sorted. `holds` says up to which error of the readings that were
    taken as exact a pass would hold, `would_pass` what of that which a person may choose would pass
    after a fail; both where that was asked. `go_on` says what to do next after a pass. `apart` are
    listings that stand on no page.
    """

    calculation: str
    plugin: str
    version: str
    inputs: tuple[InputRecord, ...]
    answers: tuple[Answer, ...] = ()
    figures: tuple[BandFigure, ...] = ()
    criteria: tuple[Judged, ...] = ()
    listings: tuple[Listing, ...] = ()
    charts: tuple[ChartMaker, ...] = ()
    cautions: tuple[Caution, ...] = ()
    not_checked: tuple[NotChecked, ...] = ()
    sources: Mapping[str, Source] = field(default_factory=dict)
    house_rules: tuple[str, ...] = ()
    holds: str = ""
    would_pass: str = ""
    go_on: str = ""
    apart: tuple[Listing, ...] = ()

    @functools.cached_property
    def verdict(self) -> Verdict | None:
        """The worst of the criteria; None where there are only figures."""
        return worst(c.verdict for c in self.criteria)

    @functools.cached_property
    def decided_by(self) -> Judged | None:
        """The criterion that decided."""
        return weakest(self.criteria)

    @property
    def exact(self) -> tuple[str, ...]:
        """The readings that were typed without an error, and so were taken as exact."""
        return tuple(dict.fromkeys(i.name for i in self.inputs if TAKEN_AS_EXACT in i.notes))

    def figure(self, name: str) -> BandFigure:
        """Return a figure by its name; raises KeyError."""
        return {f.figure.name: f for f in self.figures}[name]

    def criterion(self, name: str) -> Judged:
        """Return a criterion of the calculation itself by its name; raises KeyError."""
        return {c.criterion.name: c for c in self.criteria if c.provider == self.plugin}[name]

    def with_names(self, names: Mapping[str, str]) -> Finding:
        """Return it with other names for the files that were given."""
        inputs = tuple(i._replace(given=names.get(i.given or "", i.given)) for i in self.inputs)
        return replace(self, inputs=inputs)

    def source_key(self, source: Source | None) -> str | None:
        """Return the key under which a source stands in this finding."""
        return next((k for k, s in self.sources.items() if s == source), None)


def weakest(criteria: Iterable[Judged]) -> Judged | None:
    """Return the weakest among the criteria with the worst verdict; None where there are none.

    Of those that failed, a published limit goes before the shop's own stricter one.
    """
    found = list(criteria)
    most = worst([one.verdict for one in found])
    alike = [one for one in found if one.verdict is most]
    return alike[0] if len(alike) == 1 else min(alike, key=_weakness, default=None)


def _weakness(judged: Judged) -> tuple[bool, float]:
    own = judged.verdict is Verdict.FAIL and judged.criterion.origin is Origin.HOUSE
    return own, judged.criterion.closeness


def collect_sources(used: Iterable[Source | None]) -> dict[str, Source]:
    """Give every distinct source a key of its own, in order of use."""
    found: dict[str, Source] = {}
    for source in used:
        if source is None or source in found.values():
            continue
        key, number = source.key, 2
        while key in found:
            key, number = f"{source.key}-{number}", number + 1
        found[key] = source
    return found
