"""The marks of a class: who was right, which slips were made, and by whom."""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Sequence

from ..drills.marking import Kind, Mark
from ..said.charts import Axis, Chart, Points
from .drill_sheets import right_text
from .plain_pages import Block, Heading, Items, Paragraph, Picture, Rows

_MOST_QUESTIONS, _MOST_LEARNERS = 25, 50  # named on an axis
_SHOWN = (Kind.RIGHT, Kind.SLIP, Kind.OTHER, Kind.BLANK, Kind.UNREAD)


def marks_page(marks: Sequence[Mark], tolerance: float) -> list[Block]:
    """Return what a class comes to: in a line, by learner, slip and question, answer by answer."""
    kinds = Counter(m.kind for m in marks)
    codes = ", ".join(dict.fromkeys(m.question.recipe.code for m in marks))
    counted = ", ".join(f"{kinds[k]} {k}" for k in _SHOWN if kinds[k])
    return [
        Heading(f"Marks of {codes}", 1),
        Paragraph(
            f"{len(marks)} answers: {counted}. An answer is right within {100 * tolerance:g} % of "
            "the right value or one step of the stated rounding, whichever is more."
        ),
        *_by_learner(marks),
        *_by_slip(marks),
        Picture(class_chart(marks)),
        *_one_by_one(marks),
    ]


def _by_learner(marks: Sequence[Mark]) -> list[Block]:
    rows: dict[tuple[str, int], dict[int, str]] = {}
    numbers = sorted({m.question.number for m in marks})
    right: Counter[tuple[str, int]] = Counter()
    for mark in marks:
        who = mark.question.recipe.code, mark.question.learner
        rows.setdefault(who, {})[mark.question.number] = mark.slip or str(mark.kind)
        right[who] += mark.kind is Kind.RIGHT
    heads = ("drill", "learner", "right", *(f"question {n}" for n in numbers))
    table = [
        (
            *(code, str(learner), f"{right[code, learner]} of {len(found)}"),
            *(found.get(n, "") for n in numbers),
        )
        for (code, learner), found in rows.items()
    ]
    return [Rows("By learner", heads, table)]


def _by_slip(marks: Sequence[Mark]) -> list[Block]:
    made: dict[str, list[Mark]] = {}
    for mark in marks:
        if mark.kind is Kind.SLIP:
            made.setdefault(mark.slip, []).append(mark)
    if not made:
        return []
    ordered = sorted(made.items(), key=lambda entry: (-len(entry[1]), entry[0]))
    rows = [
        (
            slip,
            str(len(found)),
            ", ".join(str(n) for n in sorted({m.question.learner for m in found})),
            found[0].sentence,
        )
        for slip, found in ordered
    ]
    heads = ("slip", "times", "learners", "what it says")
    return [Rows("Slips, the most frequent first", heads, rows)]


def _one_by_one(marks: Sequence[Mark]) -> list[Block]:
    said = [
        f"learner {m.question.learner}, question {m.question.number}: {m.answer or 'blank'}; right "
        f"is {right_text(m.question)}.{_because(m)}"
        for m in marks
        if m.kind is not Kind.RIGHT
    ]
    return [Heading("What was not right"), Items(said)] if said else []


def _because(mark: Mark) -> str:
    if mark.kind is Kind.SLIP:
        return f" {mark.slip}: {mark.sentence}"
    return f" It cannot be read: {mark.sentence}." if mark.kind is Kind.UNREAD else ""


def class_chart(marks: Sequence[Mark]) -> Chart:
    """Return who was right where: a row a learner, a column a question, a shape a kind of mark."""
    numbers = sorted({m.question.number for m in marks})
    counted = {kind: Counter(m.question.number for m in marks if m.kind is kind) for kind in Kind}
    text = "; ".join(
        f"question {n}: " + ", ".join(f"{counted[k][n]} {k}" for k in _SHOWN if counted[k][n])
        for n in numbers
    )
    rows = list(dict.fromkeys((m.question.recipe.code, m.question.learner) for m in marks))
    places = {row: place for place, row in enumerate(rows, start=1)}
    points = []
    for shape, kind in enumerate(_SHOWN):
        of_kind = [m.question for m in marks if m.kind is kind]
        across = [q.number for q in of_kind]
        up = [places[q.recipe.code, q.learner] for q in of_kind]
        points.append(Points(str(kind), across, up, shape=shape))
    learners = [(place, str(learner)) for (_, learner), place in places.items()]
    questions = _some([(n, str(n)) for n in numbers], _MOST_QUESTIONS)
    x = Axis("question", marks=questions, span=_span(numbers))
    y = Axis("learner", marks=_some(learners, _MOST_LEARNERS), span=(0.0, len(rows) + 1.0))
    return Chart("Answers of the class", text, x, y, tuple(p for p in points if p.x))


def _some(marks: Sequence[tuple[int, str]], most: int) -> tuple[tuple[float, str], ...]:
    """Return the marks of an axis, or as many of them as can be read."""
    return tuple((float(place), text) for place, text in marks[:: -(-len(marks) // most)])


def _span(numbers: Sequence[int]) -> tuple[float, float]:
    return numbers[0] - 0.6, numbers[-1] + 0.6


def marks_csv(marks: Sequence[Mark]) -> str:
    """Return a row an answer."""
    file = io.StringIO()
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["drill", "learner", "question", "answer", "mark", "slip", "right"])
    for m in marks:
        q = m.question
        row = (q.recipe.code, q.learner, q.number, m.answer, m.kind, m.slip, right_text(q))
        out.writerow(row)
    return file.getvalue().rstrip("\n")
