"""The sheet of a learner and the key of a class."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..drills.marking import LETTERS
from ..drills.questions import Question
from ..drills.recipe import CHOOSE, JUDGE, LEVELS, Recipe
from ..version import VERSION
from .plain_pages import Block, Heading, Items, Paragraph, Rows

_HOW = {
    CHOOSE: "Write the letter of the answer. One is right; each other one comes of a slip. Where "
    "there are no letters write value and unit.",
    2: "Write value and unit, rounded as the question says.",
    JUDGE: "Write the letter or the word of the verdict. Count the error of the meter: "
    "±(2%+5) is 2 % of the reading and 5 of its last digit.",
}
_RECOMPUTED = (
    "The right answers are those of the calculation that comes with wirecalc; those of {topics} "
    "were compared with a recomputation by another way, for a thousand seeds."
)
_OWN = (
    "The right answers are the program's own: nobody has recomputed the questions of {topics} by "
    "another way."
)
_PAPER = (
    "This is an exercise on paper, with invented numbers. At a machine the maker's sheet, local "
    "code and licensed practice decide."
)


def sheet(questions: Sequence[Question], title: str) -> list[Block]:
    """Return the sheet of one learner: questions without what is right."""
    first = questions[0]
    return [
        Heading(f"{title} Sheet of learner {first.learner}", 1),
        Paragraph(f"Drill {first.recipe.code}. {_HOW[first.recipe.level]}"),
        *(block for q in questions for block in _asked(q)),
        Paragraph(_PAPER),
    ]


def _asked(q: Question) -> Iterator[Block]:
    yield Heading(f"Question {q.number}")
    yield Paragraph(q.text)
    yield Paragraph(f"{q.asks}{rounding(q)}")
    if q.listed:
        yield Items([f"{LETTERS[place]}: {o.text}" for place, o in enumerate(q.listed)])
    yield Paragraph("Answer: ........................")


def rounding(q: Question) -> str:
    """Say how an answer is to be rounded; empty for a verdict."""
    if q.right.value is None:
        return ""
    return f" (To the nearest {q.step} {q.unit}".rstrip() + ".)"


def key(
    learners: Sequence[Sequence[Question]], title: str, recomputed: Sequence[str]
) -> list[Block]:
    """Return the key of a class: what is right, how it is worked out, what each slip comes to.

    `recomputed` are the topics whose answers another way of working them out has confirmed.
    """
    recipe: Recipe = learners[0][0].recipe
    return [
        Heading(f"{title} Key", 1),
        Paragraph(
            f"Drill {recipe.code}, level {recipe.level}: {LEVELS[recipe.level]}. Made by wirecalc "
            f"{VERSION}. {' '.join(_whose(recipe, recomputed))}"
        ),
        _overview(learners),
        *(block for questions in learners for q in questions for block in _answered(q)),
        Heading("Where the numbers come from"),
        Items(_sources(learners)),
        Paragraph(_PAPER),
    ]


def _whose(recipe: Recipe, recomputed: Sequence[str]) -> Iterator[str]:
    """Say of which topics the right answers were worked out by another way too."""
    others = [topic for topic in recipe.topics if topic not in recomputed]
    for told, topics in ((_RECOMPUTED, recomputed), (_OWN, others)):
        if topics:
            named = "this topic" if len(recipe.topics) == 1 else ", ".join(topics)
            yield told.format(topics=named)


def _overview(learners: Sequence[Sequence[Question]]) -> Rows:
    heads = ["learner", *(f"question {q.number}" for q in learners[0])]
    rows = [[str(qs[0].learner), *(right_text(q) for q in qs)] for qs in learners]
    return Rows("What is right", heads, rows)


def right_text(q: Question) -> str:
    """Return the right answer, behind its letter where there are letters."""
    places = [LETTERS[n] for n, o in enumerate(q.listed) if o is q.right]
    return f"{places[0]}: {q.right.text}" if places else q.right.text


def _answered(q: Question) -> Iterator[Block]:
    yield Heading(f"Learner {q.learner}, question {q.number}")
    yield Paragraph(q.text)
    yield Paragraph(f"{q.asks}{rounding(q)} Right: {right_text(q)}.")
    worked = list(_working(q))
    if worked:
        yield Items(worked)
    if q.slips:
        rows = [(o.text, o.slip, o.sentence) for o in q.slips]
        yield Rows("Slips", ("answer", "slip", "what it says"), rows)


def _working(q: Question) -> Iterator[str]:
    """Yield how each figure comes about, and for a verdict the reason."""
    for found in q.case.finding.figures:
        figure = found.figure
        if figure.working is not None:
            formula, _, note = figure.working().partition("; ")
            value = f"{figure.value:.6g} {figure.unit}".rstrip()
            yield f"{figure.name}: {formula} = {value}" + (f" ({note})" if note else "")
        else:
            source = f", {figure.source.title}" if figure.source else ""
            yield f"{figure.name}: {figure.value:.6g} {figure.unit}".rstrip() + source
    for judged in q.case.finding.criteria:
        if judged.criterion.limit is not None:
            yield f"{judged.criterion.name}: {judged.verdict}, {judged.reason}"


def _sources(learners: Sequence[Sequence[Question]]) -> list[str]:
    found = {
        source.cite(): None
        for questions in learners
        for q in questions
        for source in q.case.finding.sources.values()
    }
    return list(found)
