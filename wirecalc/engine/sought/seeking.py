"""Seeking: one input, or two as a table, all else as given."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

from ...base.errors import BadInput, BadText, Problem
from ...said.findings import Finding, Judged
from ...typed.kinds import Kind
from ...typed.quantities import read_quantity
from ...typed.quantity_kinds import QuantityKind
from ...typed.trials import is_sought, read_request, sought_in
from ..declaration import Calculation
from ..inputs import Input
from .axis import Axis, axis_of
from .search import search
from .spans import Span, spans
from .states import State, key_of, the_same_throughout
from .target import Target, read_target

MOST_RUNS = 600
MOST_SECONDS = 20.0  # after which no new value is tried, of a calculation that is dear
MOST_ROWS = 12  # of a table of two inputs, where the first is a number

RunOnce = Callable[[Mapping[str, object]], Finding]
Ticked = Callable[[], object]


@dataclass(frozen=True)
class Sought:
    """The spans of an input by verdict.

    `aside` are criteria that come to the same everywhere, and to no pass: while there are any, no
    value passes, and the spans say what the rest comes to. `complete` says whether every edge was
    found within the runs that it may take. `findings` are those at the ends of the spans.
    """

    calculation: str
    question: str
    input: str
    kind_text: str
    unit: str
    ordered: bool
    from_: str
    to: str
    spans: tuple[Span, ...]
    aside: tuple[Judged, ...]
    runs: int
    complete: bool
    findings: tuple[Finding, ...]
    target: str = ""


@dataclass(frozen=True)
class SoughtTable:
    """The spans of one input for each value of another."""

    calculation: str
    question: str
    across: str
    rows: tuple[tuple[str, Sought], ...]


class Seeker:
    """What is asked of one calculation: a target, and whether the criteria count beside it."""

    def __init__(
        self,
        calc: Calculation[Any],
        run: RunOnce,
        *,
        target: str = "",
        criteria: bool = True,
        ticked: Ticked = lambda: None,
    ) -> None:
        self.calc, self.run, self.ticked = calc, run, ticked
        self.said, self.criteria = target, criteria
        self.target: Target | None = None
        if target:
            try:
                self.target = read_target(target)
            except BadText as error:
                raise BadInput([error.about("--target")]) from None

    def seek(self, given: Mapping[str, object]) -> Sought | SoughtTable:
        """Find the spans; raises BadInput for whatever is wrong with the inputs."""
        names = sought_in(given)
        if len(names) > 2:
            wrong = f"{len(names)} values are sought ({', '.join(names)})"
            raise BadInput([Problem("", wrong, "two at most; give the others")])
        axes = {name: self._axis(self._declared(name), given) for name in names}
        if len(names) == 1:
            return self._one(names[0], axes[names[0]], given)
        first, second = sorted(names, key=lambda n: not axes[n].all_tried)
        across = _thinned(axes[first])
        rows = []
        for text, shown in across:
            with_it = {**given, first: _put(given[first], text)}
            rows.append((shown, self._one(second, axes[second], with_it)))
        return SoughtTable(self.calc.name, self.calc.question, first, tuple(rows))

    def _declared(self, name: str) -> Input:
        try:
            return self.calc.input(name)
        except KeyError:
            self.run({name: "unknown"})  # refuses the name, with what would do
            raise

    def _axis(self, declared: Input, given: Mapping[str, object]) -> Axis:
        asked = [g for g in _each(given[declared.name]) if is_sought(g)]
        try:
            if len(asked) > 1:
                raise BadText(f"is sought {len(asked)} times", "seek one of them, give the rest")
            trials = declared.kind.trials(read_request(str(asked[0])))
            return axis_of(trials, self._least_beside(declared.kind, given))
        except BadText as error:
            raise BadInput([error.about(declared.option)]) from None

    def _least_beside(self, kind: Kind, given: Mapping[str, object]) -> float:
        """Return the least that was given of the kind's quantity, in its unit; else infinite."""
        least = math.inf
        if not isinstance(kind, QuantityKind):
            return least
        for declared in self.calc.inputs:
            other = declared.kind
            if isinstance(other, QuantityKind) and other.dimension == kind.dimension:
                for text in _each(given.get(declared.name)):
                    with suppress(BadText):  # refused, with what would do, when it is run
                        value = abs(read_quantity(str(text), kind.dimension, kind.unit).value)
                        least = min(least, value or least)
        return least

    def _one(self, name: str, axis: Axis, given: Mapping[str, object]) -> Sought:
        option = self.calc.input(name).option

        def run(text: str) -> State:
            return self._state({**given, name: _put(given[name], text)})

        until = time.monotonic() + MOST_SECONDS

        def stop(runs: int) -> bool:
            self.ticked()
            return runs >= MOST_RUNS or time.monotonic() > until

        tried, complete = search(axis, run, stop)
        self._refuse_others(option, tried)
        aside = the_same_throughout(tried.values())
        found = spans(axis, tried, map(key_of, aside))
        ends = {end.place: tried[end.place] for s in found for end in (s.first, s.last)}
        findings = tuple(s.finding for s in ends.values() if s.finding is not None)
        return Sought(
            self.calc.name, self.calc.question, name, self.calc.input(name).kind.text,
            axis.unit, axis.ordered, axis.shown(0), axis.shown(axis.last),
            found, aside, len(tried), complete, findings, self.said,
        )  # fmt: skip

    def _state(self, given: Mapping[str, object]) -> State:
        try:
            finding = self.run(given)
        except BadInput as error:
            return State(None, problems=error.problems)
        judged = finding.criteria if self.criteria else ()
        if self.target is not None:
            try:
                judged = (*judged, self.target.judged(finding))
            except BadText as error:
                raise BadInput([error.about("--target")]) from None
        return State(finding, judged)

    def _refuse_others(self, option: str, tried: Mapping[int, State]) -> None:
        """Raise BadInput where no value runs, for something else than the value."""
        if any(state.finding is not None for state in tried.values()):
            return
        others = [
            p for state in tried.values() for p in state.problems if p.name not in (option, "")
        ]
        if others:
            raise BadInput(dict.fromkeys(others))


def _each(given: object) -> Sequence[object]:
    return given if isinstance(given, list | tuple) else [given]


def _put(given: object, text: str) -> object:
    """Return what was given, with a value in place of what is sought."""
    if not isinstance(given, list | tuple):
        return text
    return [text if is_sought(item) else item for item in given]


def _thinned(axis: Axis) -> list[tuple[str, str]]:
    """Return the values of the rows of a table: all of a ladder, round ones of numbers."""
    places = range(axis.last + 1) if axis.all_tried else _few(axis)
    return [(axis.text(place), axis.shown(place)) for place in places]


def _few(axis: Axis) -> list[int]:
    if axis.last < MOST_ROWS:
        return list(range(axis.last + 1))
    high, low = axis.value(axis.last) or 0.0, axis.value(0) or 0.0
    decades = [m * 10.0**d for d in range(-6, 7) for m in (1, 1.5, 2, 3, 5, 7)]
    round_ = [v for v in decades if low <= v <= high][-MOST_ROWS:]
    even = [low + (high - low) * i / (MOST_ROWS - 1) for i in range(MOST_ROWS)]
    values = round_ if low >= 0 else even
    return sorted({next(iter(axis.near(v))) + 1 for v in values if v < high} | {axis.last})
