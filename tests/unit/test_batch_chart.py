"""The chart of a class for the wall: numbers for names, how each pull let go, nothing covered."""

from __future__ import annotations

import random
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from matplotlib.text import Text

import wirecalc
from wirecalc import charts
from wirecalc.testing import run_command
from wirecalc_plugins.joint.batch_chart import mode_of
from wirecalc_plugins.joint.batch_places import THINGS, Places, key_of, numbered

from .test_chart_drawing import drawn

FEW = (24.1, 22.6, 25.0, 19.2, 23.4)


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


def texts_of(figure: Any) -> list[Any]:
    """Every label of a drawing: limits, places, axes, title and legend."""
    (axes,) = figure.axes
    texts = [*axes.texts, *axes.get_xticklabels(), axes.xaxis.label, axes.title]
    return texts + [text for legend in figure.legends for text in legend.get_texts()]


@pytest.mark.parametrize("tools", [("hand",), ("hand", "ratchet")])
def test_no_label_of_thirty_learners_covers_another(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, tools: tuple[str, ...]
) -> None:
    chart = chart_of(tmp_path, tools)
    assert len(chart.x.places) == 30 * len(tools)
    with drawn(chart, monkeypatch) as figure:
        (axes,) = figure.axes
        renderer = figure.canvas.get_renderer()
        boxes = [(t.get_text(), Text.get_window_extent(t, renderer)) for t in texts_of(figure)]
        for (one, box), (two, other) in combinations([b for b in boxes if b[0]], 2):
            assert not box.overlaps(other), (one, two)
        width = figure.get_size_inches()[0] * figure.dpi
        assert width == 800
        assert all(box.x0 >= 0 and box.x1 <= width for _, box in boxes)
        assert {limit.name for limit in chart.limits} <= {text for text, _ in boxes}
        # capitals of 12 points on A4 across: 4.5 mm, from three metres 5 arc minutes
        assert {t.get_text() for t in axes.get_xticklabels()} == {str(n) for n in range(1, 31)}
        assert all(t.get_fontsize() >= 12 and not t.get_rotation() for t in texts_of(figure))
        points = [
            axes.transData.transform(place)
            for series in axes.lines
            if series.get_linestyle() == "None"
            for place in zip(series.get_xdata(), series.get_ydata(), strict=True)
        ]
        assert len(points) == 150 * len(tools)
        assert not any(box.contains(*at) for _, box in boxes for at in points)


def test_a_small_chart_has_its_limits_beside_their_lines(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "small.csv"
    path.write_text("tool,force [lbf]\n" + "".join(f"{t},{f}\n" for t in "ab" for f in FEW))
    finding = wirecalc.run(
        "pull-batch", wire="18 AWG", terminal="ring", readings=str(path), by=["tool"]
    )
    with drawn(finding.charts[0](), monkeypatch) as figure:
        (axes,) = figure.axes
        assert [t.get_text() for t in axes.texts] == ["UL 486A: 20 lbf, confirmed"]
        assert axes.texts[0].get_fontsize() >= 12
        assert [t.get_text() for t in axes.get_xticklabels()] == ["a", "b"]


def test_sets_of_a_learner_stand_together(tmp_path: Path) -> None:
    chart = chart_of(tmp_path, ("hand", "ratchet"))
    assert chart.x.groups[:4] == ("1", "1", "2", "2")
    assert chart.x.places[:4] == ("1a", "1b", "2a", "2b")
    assert str(chart.x) == "learner and tool (from left: a hand, b ratchet)"


def test_numbers_stand_in_place_of_names_unless_they_are_asked_for(tmp_path: Path) -> None:
    chart = chart_of(tmp_path, ("hand", "ratchet"))
    assert "Invented" not in str(chart)
    assert "Invented a26, hand" in chart_of(tmp_path, ("hand", "ratchet"), names=True).x.places


NAMED = ("learner,tool,force [lbf]\n" + "".join(
    f"{who},{tool},{force}\n"
    for who, tool in (("Ada Invented", "hand"), ("Bo Invented", "hand"))
    for force in (24.1, 22.6, 25.0, 21.2, 23.4)
))  # fmt: skip


@pytest.mark.parametrize("form", ["text", "html", "markdown", "csv", "json"])
def test_no_form_has_a_name_unless_names_are_asked_for(tmp_path: Path, form: str) -> None:
    path = tmp_path / "class.csv"
    path.write_text(NAMED, encoding="utf-8")
    words = ("--wire", "18 AWG", "--terminal", "ring", "--readings", str(path), "--by", "learner")
    hidden = run_command("pull-batch", *words, "--by", "tool", "--format", form).out
    assert "Invented" not in hidden
    assert "learner 2, hand" in " ".join(hidden.split())
    shown = run_command("pull-batch", *words, "--names", "yes", "--format", form).out
    assert "Bo Invented" in " ".join(shown.split())


@pytest.mark.parametrize("option", ["--chart", "--output"])
def test_who_is_who_is_in_a_file_apart(tmp_path: Path, option: str) -> None:
    path = tmp_path / "class.csv"
    path.write_text(NAMED, encoding="utf-8")
    words = ("--wire", "18 AWG", "--terminal", "ring", "--readings", str(path), "--by", "learner")
    wall = tmp_path / f"wall{'.csv' if option == '--chart' else '.txt'}"
    found = run_command("pull-batch", *words, option, str(wall))
    key = tmp_path / "wall-who-is-who.csv"
    assert key.read_text(encoding="utf-8") == (
        "number,name\nlearner 1,Ada Invented\nlearner 2,Bo Invented\n"
    )
    assert f"Who is who: {key}, to be kept apart" in found.err
    key.unlink()
    run_command("pull-batch", *words, option, str(wall), "--names", "yes")
    assert not key.exists()


def test_who_is_who_is_not_written_over_what_is_read(tmp_path: Path) -> None:
    path = tmp_path / "wall-who-is-who.csv"
    path.write_text(NAMED, encoding="utf-8")
    words = ("--wire", "18 AWG", "--terminal", "ring", "--readings", str(path), "--by", "learner")
    found = run_command("pull-batch", *words, "--chart", str(tmp_path / "wall.csv"))
    assert found.status == 2
    assert "is read for this result, which would be written over it" in found.err
    assert path.read_text(encoding="utf-8") == NAMED


def test_numbers_of_their_own_are_kept_where_each_has_one() -> None:
    def codes(*cells: str, column: str = "learner") -> list[str]:
        return numbered({column: cells}, [column])[column]

    assert codes("learner 7", "learner 3") == ["learner 7", "learner 3"]
    assert codes("a1", "b1", "a1") == ["learner 1", "learner 2", "learner 1"]
    assert codes("A", "B") == ["learner A", "learner B"]
    assert codes("MB", "B") == ["learner 1", "learner 2"]
    assert codes("Ada", "Bo 7") == ["learner 1", "learner 2"]
    assert codes("before", "after", column="lesson") == ["before", "after"]
    assert (
        key_of({"learner": ["7", "3"]}, {"learner": ["learner 7", "learner 3"]}, ["learner"]) == []
    )


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
    assert chart.limits[2].name.startswith("AS7928: 38 lbf")


def places(tools: list[str], *, missing: int = 0) -> Places:
    """The places of learners 1 and 2, who had every tool; the last has not been used by both."""
    cells = [(who, tool) for who in ("learner 1", "learner 2") for tool in tools]
    cells = cells[: len(cells) - missing]
    words = {"learner": [who for who, _ in cells], "tool": [tool for _, tool in cells]}
    return Places(words, ["learner", "tool"], names=False)


def test_letters_stand_for_tools_as_far_as_there_are_letters() -> None:
    few, many = places([f"tool {n}" for n in range(26)]), places([f"tool {n}" for n in range(27)])
    assert few.name(("learner 2", "tool 25")) == "2z"
    assert many.name(("learner 2", "tool 26")) == "2, 26"
    assert (few.groups[:1], many.groups) == (("1",), ())


def test_a_learner_who_had_not_every_tool_has_an_empty_place() -> None:
    assert places(["hand", "ratchet"], missing=1).groups == ("1", "1", "2", "2")
    words = {"learner": ["learner 1", "learner 2"], "tool": ["hand", "ratchet"]}
    half = Places(words, ["learner", "tool"], names=False)  # each had but one tool
    assert half.groups == ()
    assert half.label == "learner and tool (a hand, b ratchet)"


def test_an_empty_place_has_neither_points_nor_bound(tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    cells = [("1", "a"), ("1", "b"), ("2", "b")]
    rows = [f"{who},{tool},{force + 5}" for who, tool in cells for force in FEW]
    path.write_text("\n".join(["learner,tool,force [lbf]", *rows, ""]), encoding="utf-8")
    finding = wirecalc.run(
        "pull-batch", wire="18 AWG", terminal="ring", readings=str(path), by=["learner", "tool"]
    )
    chart = finding.charts[0]()
    assert chart.x.places == ("1a", "1b", "2a", "2b")
    assert {x for points in chart.points for x in points.x} == {0, 1, 3}
    assert [sum(line.x) / 2 for line in chart.lines] == [0, 1, 3]
    assert chart.text.startswith("15 specimens in 3 sets.")


def test_what_the_letters_mean_is_said_where_there_is_room() -> None:
    told = len("from left: a , b ")
    wide = ["x" * 20, "y" * (50 - 20 - told)]
    assert places(wide).label.endswith(f"b {wide[1]})")
    assert places([wide[0], f"{wide[1]}y"]).label == "learner and tool"


def test_things_keep_their_words_and_people_do_not() -> None:
    for column in THINGS:
        assert numbered({column: ["Red", "Blue"]}, [column])[column] == ["Red", "Blue"]
    for person in ("learner", "student", "name", "operator", "who", "technician", "hand"):
        assert numbered({person: ["Red", "Blue"]}, [person])[person][0] == f"{person} 1"
    assert len(THINGS) == 29
