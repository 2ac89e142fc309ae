"""The chart of a class's answers: every learner named, nothing covered."""

from __future__ import annotations

from itertools import combinations
from types import SimpleNamespace
from typing import Any, cast

import pytest
from matplotlib.text import Text

from wirecalc.drills.marking import Kind, Mark
from wirecalc.drills.recipe import Recipe
from wirecalc.output.drill_marks import class_chart

from .test_chart_drawing import drawn


def marks(learners: int, questions: int) -> list[Mark]:
    kinds = list(Kind)
    return [
        Mark(
            cast(Any, SimpleNamespace(recipe=Recipe("drop", 1, 7), learner=who, number=number)),
            "",
            kinds[(who + number) % len(kinds)],
        )
        for who in range(1, learners + 1)
        for number in range(1, questions + 1)
    ]


@pytest.mark.parametrize(("learners", "questions"), [(30, 8), (50, 25), (2, 1)])
def test_nothing_lies_on_anything(
    learners: int, questions: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    with drawn(class_chart(marks(learners, questions)), monkeypatch) as figure:
        (axes,) = figure.axes
        renderer = figure.canvas.get_renderer()
        texts = [*axes.get_xticklabels(), *axes.get_yticklabels(), axes.title]
        texts += [axes.xaxis.label, axes.yaxis.label]
        texts += [text for legend in figure.legends for text in legend.get_texts()]
        boxes = [(t.get_text(), Text.get_window_extent(t, renderer)) for t in texts]
        for (one, box), (two, other) in combinations(boxes, 2):
            assert not box.overlaps(other), (one, two)
        assert [t.get_text() for t in axes.get_yticklabels()] == [
            str(who) for who in range(1, learners + 1)
        ]
        assert len(axes.get_xticklabels()) == questions
        frame = axes.get_window_extent()
        assert not any(legend.get_window_extent().overlaps(frame) for legend in figure.legends)
        assert axes.get_legend() is None


def test_of_more_learners_and_questions_some_are_named() -> None:
    chart = class_chart(marks(51, 26))
    assert [text for _, text in chart.y.marks] == [str(n) for n in range(1, 52, 2)]
    assert [text for _, text in chart.x.marks] == [str(n) for n in range(1, 27, 2)]
