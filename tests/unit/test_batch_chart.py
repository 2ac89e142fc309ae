"""The chart of a class for the wall: numbers for names, how each pull let go, nothing covered."""

from __future__ import annotations

import random
from itertools import combinations
from pathlib import Path

import pytest
from matplotlib.text import Text

import wirecalc
from wirecalc import charts
from wirecalc_plugins.joint.batch_chart import mode_of, places_of

from .test_chart_drawing import drawn


def chart_of(tmp_path: Path, tools: tuple[str, ...], **more: object) -> charts.Chart:
    """The chart of thirty invented learners who pulled five crimps with each tool."""
    drawn_at = random.Random(3)
    rows = [
        f"Invented {chr(97 + who % 26)}{who},{tool},{26 + drawn_at.gauss(0, 1.6):.1f},{mode}"
        for who in range(1, 31)
        for tool in tools
        for mode in ("slip", "slip", "break in wire", "pulled out", "opened")
    ]
    path = tmp_path / "class.csv"
    path.write_text("\n".join(["learner,tool,force [lbf],failure_mode", *rows, ""]))
    finding = wirecalc.run(
        "pull-batch",
        wire="18 AWG",
        terminal="push-on",
        readings=str(path),
        by=["learner", "tool"][: len(tools)],
        pull_standard=["own", "ul-486a", "as7928"],
        shop_minimum="22 lbf",
        **more,
    )
    (build,) = finding.charts
    return build()


@pytest.mark.parametrize("tools", [("hand",), ("hand", "ratchet")])
def test_no_label_of_thirty_learners_covers_another(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, tools: tuple[str, ...]
) -> None:
    chart = chart_of(tmp_path, tools)
    assert len(chart.x.places) == 30 * len(tools)
    with drawn(chart, monkeypatch) as figure:
        (axes,) = figure.axes
        renderer = figure.canvas.get_renderer()
        texts = [*axes.texts, *axes.get_xticklabels(), axes.xaxis.label, axes.title]
        texts += [text for legend in figure.legends for text in legend.get_texts()]
        boxes = [(t.get_text(), Text.get_window_extent(t, renderer)) for t in texts]
        for (one, box), (two, other) in combinations(boxes, 2):
            assert not box.overlaps(other), (one, two)
        width = figure.get_size_inches()[0] * figure.dpi
        assert width == 800
        assert all(box.x0 >= 0 and box.x1 <= width for _, box in boxes)


def test_numbers_stand_in_place_of_names_unless_they_are_asked_for(tmp_path: Path) -> None:
    chart = chart_of(tmp_path, ("hand", "ratchet"))
    assert chart.x.places[:4] == ("1a", "1b", "2a", "2b")
    assert "Invented" not in str(chart)
    assert "Invented a26, hand" in chart_of(tmp_path, ("hand", "ratchet"), names=True).x.places


def test_numbers_of_their_own_are_kept_where_each_has_one() -> None:
    assert places_of([["learner 7", "learner 3", "learner 7"]], names=False) == {
        ("learner 7",): "7",
        ("learner 3",): "3",
    }
    assert list(places_of([["a1", "b1"]], names=False).values()) == ["1", "2"]


def test_how_each_let_go_is_a_shape_of_its_own(tmp_path: Path) -> None:
    chart = chart_of(tmp_path, ("hand",))
    assert [(p.name, len(p.y)) for p in chart.points] == [
        ("slip", 90),
        ("break", 30),
        ("other", 30),
    ]
    assert len({p.shape for p in chart.points}) == 3
    assert [mode_of(x) for x in (None, " ", "Broke at crimp")] == ["pull", "pull", "break"]


def test_the_bound_is_explained_and_each_limit_says_how_far_it_is_trusted(tmp_path: Path) -> None:
    chart = chart_of(tmp_path, ("hand",))
    assert chart.lines[0].name == "95 % sure: 90 % of such crimps hold more than this"
    assert [limit.name for limit in chart.limits][:2] == [
        "UL 310: 20 lbf, confirmed of UL 486A",
        "UL 486A: 20 lbf, confirmed",
    ]
