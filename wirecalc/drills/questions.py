"""A question of a drill: drawn from a seed, answered by the calculation, with the slips in it."""

from __future__ import annotations

import math
import zlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from ..base.errors import BadInput, PluginDefect, Problem
from ..base.rounding import show
from ..engine.declaration import Calculation
from ..engine.exercises import Case, Drawn, Exercise, Given, Luck, Slip, shown
from ..plugging.host import Catalogue
from ..said.criteria import Criterion
from ..said.verdicts import Verdict
from .of_example import exercises_of
from .offers import METER_LEFT_OUT, SAME_SHARE, Offer
from .recipe import CHOOSE, JUDGE, WORK, Recipe

TRIES = 15  # draws for one question, until it has slips to offer
TRIES_OF_VERDICT = 12  # dearer: until it has the verdict that was drawn for it
ENOUGH = 3  # slips of a question; one with fewer is taken where no draw has more
_ASKED = {CHOOSE: "figure", WORK: "figure", JUDGE: "verdict"}
_PAST = " is advised: past it is marginal"
MOST = 4  # slips on offer beside the right answer


@dataclass(frozen=True)
class Question:
    """One question of one learner's sheet, with all that the key says of it."""

    recipe: Recipe
    learner: int
    number: int
    text: str
    asks: str
    right: Offer
    slips: tuple[Offer, ...]
    listed: tuple[Offer, ...]  # what is on offer, in the order of the letters; none to choose from
    unit: str
    step: str
    case: Case

    @property
    def check(self) -> str:
        """Eight characters that another question, or another right answer, has not."""
        said = "\n".join((self.text, self.asks, self.right.text, *(o.text for o in self.listed)))
        return f"{zlib.crc32(said.encode()):08x}"


class Makers:
    """Makes the questions of any drill: of one topic, or of several by turns."""

    def __init__(self, loaded: Catalogue) -> None:
        self._loaded = loaded
        self._made: dict[str, Maker] = {}

    def of(self, topic: str) -> Maker:
        """Return the maker of a topic; raises KeyError where the catalogue has none."""
        if topic not in self._made:
            self._made[topic] = Maker(self._loaded, topic)
        return self._made[topic]

    def question(self, recipe: Recipe, learner: int, number: int) -> Question:
        """Return one question; the same for the same recipe, learner and number."""
        turns, place = divmod(number - 1, len(recipe.topics))
        maker = self.of(recipe.topics[place])
        return maker.question(recipe, learner, number, turns + 1)


class Maker:
    """Makes the questions of a topic, any calculation that the catalogue has."""

    def __init__(self, loaded: Catalogue, topic: str) -> None:
        self._calc: Calculation[Any] = loaded.find(topic).calculation
        self._run = loaded.runner(topic)
        with loaded.in_use():  # a choice may read a table of the shop
            self.declared = bool(self._calc.exercises)
            self._exercises = self._calc.exercises or exercises_of(self._calc, self._run)

    def question(
        self, recipe: Recipe, learner: int, number: int, turn: int | None = None
    ) -> Question:
        """Return one question; the same for the same recipe, learner and number.

        `turn` counts the questions of this topic, where it is not the only one. Raises BadInput
        for a level at which this topic has no question.
        """
        judge = recipe.level == JUDGE
        fitting = [e for e in self._exercises if (e.judged if judge else e.asks)]
        if not fitting:
            raise BadInput([self._nothing(recipe)])
        exercise = fitting[((turn or number) - 1) % len(fitting)]
        made = self._judged if judge else self._worked
        return made(exercise, recipe, learner, number)

    def _nothing(self, recipe: Recipe) -> Problem:
        """Say that there is nothing to ask for at this level, and what would do."""
        wrong = f"{self._calc.name} has no {_ASKED[recipe.level]} that its readings move"
        if not self._exercises:
            return Problem("drill", wrong, "choose another calculation")
        return Problem(
            "--level", wrong, f"try --level {CHOOSE if recipe.level == JUDGE else JUDGE}"
        )

    def _cases(self, exercise: Exercise, name: str, tries: int) -> Iterator[Case]:
        """Yield runs of what is drawn; a draw that the calculation refuses is passed over."""
        for attempt in range(tries):
            drawn = exercise.draw(Luck(f"{name}/{attempt}"))
            try:
                yield Case(drawn, self._run(drawn.given), self._run)
            except (BadInput, PluginDefect):
                continue

    def _worked(self, exercise: Exercise, recipe: Recipe, learner: int, number: int) -> Question:
        """Return a question for a value."""
        best: tuple[Case, Offer, list[Offer]] | None = None
        for case in self._cases(exercise, recipe.name(learner, number), TRIES):
            try:
                value = exercise.answer(case)
            except KeyError:
                continue
            right = _offer(value, exercise)
            slips = list(_slips(exercise, case, right))
            if best is None or len(slips) > len(best[2]):
                best = case, right, slips
            if len(slips) >= min(ENOUGH, len(exercise.slips)):
                break
        if best is None:
            raise _no_question(recipe)
        case, right, slips = best
        on_offer = sorted([right, *slips[:MOST]], key=lambda offer: offer.number)
        return Question(
            recipe,
            learner,
            number,
            _filled(exercise.text, case.drawn),
            _filled(exercise.asks, case.drawn),
            right,
            tuple(slips),
            tuple(on_offer) if recipe.level == CHOOSE and slips else (),
            exercise.unit,
            exercise.step,
            case,
        )

    def _judged(self, exercise: Exercise, recipe: Recipe, learner: int, number: int) -> Question:
        """Return a question for a verdict, with the error of the meter in it."""
        name = recipe.name(learner, number)
        wanted = Luck(name).pick(list(Verdict))
        last: tuple[Case, Verdict, Case] | None = None
        for exact in self._cases(exercise, name, TRIES_OF_VERDICT):
            try:
                met = exact.but(**_with_meter(exact.drawn.given, exercise.meter))
                verdict = met.finding.criterion(exercise.judged).verdict
                exact.limit(exercise.judged)
            except (BadInput, KeyError):
                continue
            last = met, verdict, exact
            if verdict is wanted:
                break
        if last is None:
            raise _no_question(recipe)
        met, verdict, exact = last
        criterion = exact.criterion(exercise.judged)
        plain = exact.finding.criterion(exercise.judged).verdict
        right = Offer(str(verdict), None)
        slips = () if plain is verdict else (Offer(str(plain), None, *METER_LEFT_OUT),)
        listed = tuple(
            next((o for o in (right, *slips) if o.text == str(v)), Offer(str(v), None))
            for v in Verdict
        )
        told = f"{_filled(exercise.text, met.drawn)} {_limit_said(criterion)}"
        asks = f'What is the verdict on "{exercise.judged}", the error of the meter counted?'
        return Question(recipe, learner, number, told, asks, right, slips, listed, "", "", met)


def _no_question(recipe: Recipe) -> BadInput:
    wrong = f"no numbers were found for a question of {recipe.topic}"
    return BadInput([Problem("--seed", wrong, "try another, or another level")])


def _with_meter(given: Given, meter: Mapping[str, str]) -> dict[str, str | list[str]]:
    """Return the readings that get an error, with it."""
    changed: dict[str, str | list[str]] = {}
    for name, error in meter.items():
        value = given.get(name)
        if isinstance(value, str):
            changed[name] = f"{value} {error}"
        elif value is not None:
            changed[name] = [f"{one} {error}" for one in value]
    return changed


def _filled(text: str, drawn: Drawn) -> str:
    told = {**drawn.given, **drawn.beside}
    return text.format_map({n: v if isinstance(v, str) else _together(v) for n, v in told.items()})


def _together(several: Sequence[str]) -> str:
    *before, last = several
    return f"{', '.join(before)} and {last}" if before else last


def _limit_said(criterion: Criterion) -> str:
    """Say the limit and the caution level that a verdict is asked by."""
    sense = "least" if criterion.sense == "at least" else "most"
    toward = "up" if sense == "least" else "down"
    said = f"At {sense} {show(criterion.limit or 0.0, criterion.unit, toward=toward)}"
    if criterion.advisory:
        said += " is advised" if criterion.caution_limit is not None else _PAST
    if criterion.caution_limit is not None:
        side = "below" if sense == "least" else "above"
        said += (
            f"; {side} {show(criterion.caution_limit, criterion.unit, toward=toward)} is marginal"
        )
    return f"{said}."


def _offer(value: float, exercise: Exercise, slip: Slip | None = None) -> Offer:
    text = shown(value, exercise.step, exercise.unit)
    return Offer(text, value, *(slip[:2] if slip else ("", "")))


def _slips(exercise: Exercise, case: Case, right: Offer) -> Iterator[Offer]:
    """Yield what the slips come to, those that can be told from the right answer and each other."""
    taken = [right]
    for slip in exercise.slips:
        try:
            value = slip.wrong(case)
        except (BadInput, KeyError, PluginDefect, ZeroDivisionError):
            continue
        if not math.isfinite(value) or any(_same(value, o, exercise.step) for o in taken):
            continue
        taken.append(_offer(value, exercise, slip))
        yield taken[-1]


def _same(value: float, other: Offer, step: str) -> bool:
    """Return whether an answer could be marked as either."""
    apart = 2 * max(float(step), SAME_SHARE * max(abs(value), abs(other.number)))
    return abs(value - other.number) <= apart
