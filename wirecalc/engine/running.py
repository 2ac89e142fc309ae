"""Running a calculation: read the inputs, run over the band with the house rules, merge."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ..base.blame import Blamed
from ..base.errors import BadInput, DamagedTable
from ..said.criteria import cannot_tell
from ..said.findings import Finding
from ..said.items import Item, NotChecked
from .assumptions import Other, choices, with_others, worth_trying
from .band import Given, Run, at_end, merge_criteria, values_at, values_over
from .from_plugins import EVERY, ProvidedCalculation, ProvidedRule
from .inputs import BANDS
from .merged_finding import Outcome
from .one_point import copied, taken, with_rules
from .prepared_inputs import Prepared
from .reading_inputs import prepare
from .remembered import Remembered
from .stricter_tables import Tried, from_shop_tables, twice


def run(
    provided: ProvidedCalculation,
    given: Mapping[str, object],
    *,
    rules: Sequence[ProvidedRule] = (),
    not_loaded: Sequence[NotChecked] = (),
    origin: str = "typed",
    missing_is_unknown: bool = False,
    remembered: Remembered | None = None,
) -> Finding:
    """Run a calculation once on given texts and return its finding, as a Runner does."""
    runner = Runner(
        provided,
        rules=rules,
        not_loaded=not_loaded,
        origin=origin,
        missing_is_unknown=missing_is_unknown,
        remembered=remembered,
    )
    return runner.outcome(given).finding()


class Runner:
    """Runs one calculation again and again: what does not change from run to run is found once.

    `remembered` is kept between its runs, so that no text is read twice.
    """

    def __init__(
        self,
        provided: ProvidedCalculation,
        *,
        rules: Sequence[ProvidedRule] = (),
        not_loaded: Sequence[NotChecked] = (),
        origin: str = "typed",
        missing_is_unknown: bool = False,
        remembered: Remembered | None = None,
    ) -> None:
        calc = provided.calculation
        self.calc = calc
        self._provided = provided._replace(offered=calc)  # loaded here, and not at every point
        self._rules = [r for r in rules if {calc.name, EVERY} & set(r.rule.calculations)]
        self._not_loaded = not_loaded
        self._origin, self._missing_is_unknown = origin, missing_is_unknown
        self._remembered = Remembered() if remembered is None else remembered
        failed = f"{provided.whose} failed"  # it has kinds and refusals of its own
        self._reading = Blamed(failed, BadInput, function=calc.function)
        self._running = Blamed(failed, DamagedTable, function=calc.function)

    def outcome(self, given: Mapping[str, object]) -> Outcome:
        """Run it on given texts and return what that comes to.

        Raises BadInput with everything that is wrong with the inputs, or with a shop's table that
        it reads (where `missing_is_unknown` that is a `cannot tell`), and PluginDefect where the
        calculation itself raises or yields what it must not.
        """
        provided = self._provided
        with self._reading:
            prepared = prepare(
                self.calc,
                given,
                self._origin,
                missing_is_unknown=self._missing_is_unknown,
                remembered=self._remembered,
            )
        rules = self._for_this_run(prepared) if self._rules else ()
        try:
            runs, missing = self._all_runs(prepared, prepared.values, rules)
        except DamagedTable as error:  # the shop's: the rest of a job goes on without it
            if not self._missing_is_unknown:
                raise
            mend = "have the shop mend its table"
            gap = cannot_tell("a table of the shop", error.said, measure=mend)
            runs, missing = [[Given(gap, provided.plugin)]], 0
        judged = merge_criteria(runs, missing)
        if runs and worth_trying(prepared, judged):
            judged = with_others(self.calc, judged, list(self._others(prepared, rules)))
        return Outcome(provided, prepared, runs, judged, self._not_loaded, rules)

    def _for_this_run(self, prepared: Prepared) -> list[ProvidedRule]:
        """Return the house rules, told which inputs nobody gave."""
        left_out = frozenset(r.name for r in prepared.records if r.origin == "assumed")
        name, renamed = self.calc.name, self.calc.renamed
        return [
            rule._replace(
                left_out=left_out, renamed=renamed if name in rule.rule.calculations else {}
            )
            for rule in self._rules
        ]

    def _others(self, prepared: Prepared, rules: Sequence[ProvidedRule]) -> Iterator[Other]:
        """Run with each plausible value in place of an assumed one, save what is refused."""
        for choice in choices(prepared.others):
            values = {**prepared.values, **choice}
            if any(True for _ in self.calc.refused(values)):
                continue
            runs, missing = self._all_runs(prepared, values, rules)
            yield Other(choice, merge_criteria(runs, missing))

    def _all_runs(
        self, prepared: Prepared, values: Mapping[str, Any], rules: Sequence[ProvidedRule]
    ) -> tuple[list[Run], int]:
        """Run at every point of the band, if at all; say at how many nothing could be run."""
        if not prepared.runs:
            return [], 0
        if self.calc.own_band:
            return self._own_runs(prepared, values, rules), int(bool(prepared.excluded()))
        inside, outside = [values], 0
        if prepared.bands:
            at = values_over(values, prepared.bands)
            inside = [one for one in at if one is not None]
            outside = len(at) - len(inside)
        tried = [twice(self._items, copied(one)) for one in inside]
        return self._all_rules(inside, tried, rules), outside

    def _own_runs(
        self, prepared: Prepared, values: Mapping[str, Any], rules: Sequence[ProvidedRule]
    ) -> list[Run]:
        """Run a calculation that works out its band itself, once; see it at the band's ends."""
        excluded = prepared.excluded()  # judged apart: nothing can be said at their ends
        names = [n for n in prepared.bands if n not in excluded]
        at = [
            (step, values_at(dict.fromkeys(names, step), values, prepared.bands) or {})
            for step in (0, -1, 1)
        ]
        bands = {n: (at[1][1][n], at[2][1][n]) for n in names}
        once = twice(self._items, {**copied(values), BANDS: bands})
        tried = [
            once._replace(
                items=[at_end(item, step) for item in once.items],
                again=[at_end(item, step) for item in once.again],
            )
            for step, _ in at
        ]
        return self._all_rules([one for _, one in at], tried, rules)

    def _all_rules(
        self,
        at: Sequence[Mapping[str, Any]],
        tried: Sequence[Tried],
        rules: Sequence[ProvidedRule],
    ) -> list[Run]:
        """Add to each run what house rules and a shop's stricter tables say."""
        by_tables, plugin = from_shop_tables(tried), self._provided.plugin
        return [
            [*with_rules(plugin, values, one.items, rules), *more]
            for values, one, more in zip(at, tried, by_tables, strict=True)
        ]

    def _items(self, arguments: Mapping[str, Any]) -> list[Item]:
        with self._running:
            return taken(self.calc.function(**arguments))  # whatever else leaves it is no verdict
