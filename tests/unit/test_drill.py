"""Drills: the same sheet for the same seed, slips by their names, marks, and a shop's own."""

from __future__ import annotations

import csv
import io
import random
import tomllib
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Annotated

import pytest

import wirecalc
from wirecalc import Nameplate, Reading, at_most, calculation, figure, hookimpl
from wirecalc.drills.answers import blank_answers
from wirecalc.drills.common_slips import common_slips
from wirecalc.drills.marking import Kind, marked
from wirecalc.drills.questions import Maker, Question
from wirecalc.drills.recipe import CHOOSE, JUDGE, WORK, Recipe
from wirecalc.engine.exercises import Case, Drawn, Luck
from wirecalc.output.drill_marks import class_chart
from wirecalc.testing import plugin_set, run_command


@calculation(part="shop")
def frost(
    frost_thickness: Annotated[
        float, Reading("mm", low=0, high=100, typical="3 mm", text="thickest frost on the coil")
    ],
) -> Iterator[wirecalc.Item]:
    """Is there too much frost on the evaporator?"""
    yield figure("frost", frost_thickness / 25.4, "in")
    yield at_most(
        "frost on the coil", frost_thickness, 6.0, "mm", caution=4.0, source=wirecalc.PRACTICE
    )


@calculation(part="shop")
def bench(
    wire: Annotated[wirecalc.Wire, "wire on the bench"],
    voltage: Annotated[
        float, Reading("V", low=1, high=300, typical="100 V", text="volts there", wave="ac")
    ],
    frequency: Annotated[
        float, Nameplate("Hz", low=16, high=400, typical="60 Hz", text="frequency there")
    ],
    reading: Annotated[float, Reading("ohm", low=0, high=99, typical="8.0 ohm", text="ohms")],
    lead_resistance: Annotated[
        float, Reading("ohm", low=0, high=9, typical="2.0 ohm", text="leads held together")
    ],
    force: Annotated[float, Reading("lbf", low=1, high=900, typical="90 lbf", text="pull")],
) -> Iterator[wirecalc.Item]:
    """What do all slips together come to?"""
    size = {"20": 1e7, "18": 2e7, "16": 3e7}[wire.gauge or ""]
    yield figure("sum", voltage + 1e3 * frequency + size + 1e4 * (reading - lead_resistance), "V")
    yield figure("pull in newtons", force * 4.4482216152605, "N")
    yield figure("half of it", force * 2.2241108, "N")


SHOP = SimpleNamespace(
    __name__="shop_bench", wirecalc_calculations=hookimpl(lambda: [frost, bench])
)


@pytest.fixture(scope="module")
def bundled() -> wirecalc.Catalogue:
    return wirecalc.build(bundled_only=True)


def rows_of(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"))))


def asked(loaded: wirecalc.Catalogue, topic: str, level: int, number: int = 1) -> Question:
    return Maker(loaded, topic).question(Recipe(topic, level, 7), 1, number)


def test_numbers_are_the_same_on_any_machine() -> None:
    first = random.Random("drop/1/7/1/1/0").random()
    assert Luck("drop/1/7/1/1/0").pick(range(1000)) == int(first * 1000)
    assert Luck("a").reading(2, 3, "0.1", "A").endswith(" A")
    assert len(Luck("a").reading(2, 3, "0.01", "A").split()[0]) == 4


def test_readings_reach_both_ends_and_no_further() -> None:
    drawn = {Luck(f"{n}").reading(1.0, 1.4, "0.1", "A") for n in range(200)}
    assert drawn == {"1.0 A", "1.1 A", "1.2 A", "1.3 A", "1.4 A"}


def test_same_seed_same_sheet_and_every_learner_another() -> None:
    words = ("drill", "drop", "--seed", "7", "--number", "2", "--learners", "2")
    once, again = run_command(*words), run_command(*words)
    assert once.status == 0
    assert once.out == again.out
    first, second = (part for part in once.out.split("How many volts does the run take")[1:])
    assert first.split("Question 1")[1] != second.split("Question 1")[1]
    other = run_command(*words[:3], "8", *words[4:])
    assert other.out != once.out


def test_sheet_has_no_answer_and_the_key_has_all() -> None:
    words = ("drill", "drop", "--level", "2", "--seed", "7", "--number", "1")
    sheet = run_command(*words, "--format", "markdown").out
    key = run_command(*words, "--key").out
    assert "To the nearest 0.01 V" in sheet
    assert "the maker's sheet, local code and licensed practice decide." in sheet
    assert "Right:" not in sheet
    assert "loop not doubled" not in sheet
    assert "Right:" in key
    assert "loop not doubled" in key
    assert "2 x " in key  # the working, with the numbers put in
    assert "NEC (NFPA 70), conductor properties" in key
    assert "recomputation by another way" in key


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "class"
    words = ("--seed", "7", "--number", "2", "--learners", "10", "--level", "2")
    assert run_command("drill", "pull", *words, "--output", str(made)).status == 0
    return made


def test_class_of_ten_gets_ten_sheets_and_one_key(folder: Path) -> None:
    sheets = sorted(p.name for p in folder.glob("sheet-*.md"))
    assert sheets == [f"sheet-{n:02}.md" for n in range(1, 11)]
    texts = {(folder / name).read_text(encoding="utf-8").split("\n", 1)[1] for name in sheets}
    assert len(texts) == 10
    key = (folder / "key.md").read_text(encoding="utf-8")
    assert key.count("## Learner ") == 20
    rows = rows_of(folder / "answers.csv")
    assert len(rows) == 20
    assert set(rows[0]) == {"drill", "learner", "question", "answer", "check"}


def test_grading_names_the_slips(folder: Path, bundled: wirecalc.Catalogue) -> None:
    path = folder / "answers.csv"
    rows = rows_of(path)
    maker = Maker(bundled, "pull")
    for row in rows:
        q = maker.question(Recipe("pull", 2, 7), int(row["learner"]), int(row["question"]))
        row["answer"] = q.right.text
        if row["question"] == "1" and row["learner"] in "123":
            row["answer"] = f"{(q.right.value or 0) / 2.2046:.1f} lbf"
    rows[1]["answer"] = ""
    rows[7]["answer"] = "many"
    with path.open("w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, rows[0])
        out.writeheader()
        out.writerows(rows)
    found = run_command("drill", "--grade", str(path), "--format", "markdown")
    assert found.status == 0, found.err
    assert "An answer is right within 1 % of the right value" in found.out
    assert "20 answers: 15 right, 3 slip, 1 blank, 1 cannot be read" in found.out
    assert "| kgf for lbf | 3 | 1, 2, 3 | These are kgf;" in found.out
    assert "question 1: 7 right, 3 slip" in found.out
    assert "many" in found.out
    page = run_command("drill", "--grade", str(path), "--format", "html").out
    assert "kgf for lbf" in page
    assert "<svg" in page
    lines = run_command("drill", "--grade", str(path), "--format", "csv").out.splitlines()
    assert len(lines) == 21


@pytest.mark.parametrize(
    ("answer", "kind", "slip"),
    [  # learner 1's first question: 6.0 A, 125 ft, 14 AWG: 6 x 2 x 125 x 3.14 / 1000 = 4.71 V
        ("4.71 V", Kind.RIGHT, ""),
        ("4710 mV", Kind.RIGHT, ""),
        ("4.75 V", Kind.RIGHT, ""),  # 1 % is 0.0471
        ("4.76 V", Kind.OTHER, ""),
        ("2.355 V", Kind.SLIP, "loop not doubled"),
        ("15.45 V", Kind.SLIP, "m for ft"),  # 4.71 / 0.3048
        ("4.71 A", Kind.SLIP, "wrong unit"),
        ("4.71 mV", Kind.SLIP, "wrong unit"),
        ("4.71", Kind.SLIP, "unit left out"),
        ("2.355", Kind.SLIP, "loop not doubled"),
        ("", Kind.BLANK, ""),
        ("  ", Kind.BLANK, ""),
        ("9 V", Kind.OTHER, ""),
        ("about five", Kind.UNREAD, ""),
    ],
)
def test_an_answer_is_marked(
    answer: str, kind: Kind, slip: str, bundled: wirecalc.Catalogue
) -> None:
    mark = marked(asked(bundled, "drop", WORK_OF_ONE), answer, 0.01)
    assert (mark.kind, mark.slip) == (kind, slip)


WORK_OF_ONE = CHOOSE  # the numbers of this level's first question are known


def test_letters_and_verdicts_are_answers_too(bundled: wirecalc.Catalogue) -> None:
    q = asked(bundled, "drop", CHOOSE)
    right = "ABCDE"[q.listed.index(q.right)]
    assert len(q.listed) == 5  # the right one and four slips
    assert marked(q, right.lower(), 0.01).kind is Kind.RIGHT
    assert {marked(q, letter, 0.01).slip for letter in "ABCDE"[: len(q.listed)]} == {
        "",
        *(o.slip for o in q.listed if o.slip),
    }
    judged = next(
        q
        for n in range(1, 30)
        if (q := Maker(bundled, "pull").question(Recipe("pull", JUDGE, 7), 1, n)).slips
    )
    assert marked(judged, judged.right.text.upper(), 0.01).kind is Kind.RIGHT
    mark = marked(judged, judged.slips[0].text, 0.01)
    assert mark.slip == "error of the meter left out"
    assert marked(judged, "maybe", 0.01).kind is Kind.UNREAD


def test_right_one_step_off_where_the_rounding_is_coarse(bundled: wirecalc.Catalogue) -> None:
    q = asked(bundled, "pull", WORK, 2)
    value = q.right.value or 0.0
    assert marked(q, f"{value + 0.1:.2f} lbf", 0.0).kind is Kind.RIGHT
    assert marked(q, f"{value + 0.12:.2f} lbf", 0.0).kind is not Kind.RIGHT


def test_a_calculation_of_a_shop_can_be_drilled() -> None:
    with plugin_set(SHOP) as loaded:
        q = asked(loaded, "frost", CHOOSE)
        thickness = float(str(q.case.drawn.given["frost_thickness"]).split()[0])
        assert q.right.value == pytest.approx(thickness / 25.4)  # 25.4 mm are an inch
        assert {o.slip: o.value for o in q.slips} == {"in for mm": pytest.approx(thickness)}
        sheet = run_command("drill", "frost", "--number", "2")
        assert sheet.status == 0
        assert "Thickest frost on the coil:" in sheet.out
        key = run_command("drill", "frost", "--key").out
        assert "the program's own: nobody has recomputed" in key
        verdict = run_command("drill", "frost", "--level", "3", "--format", "markdown")
        assert "At most 6 mm; above 4 mm is marginal." in verdict.out
        assert " mm ±2%." in verdict.out
        assert "To the nearest 0.001 in" in sheet.out  # three digits of 0.118 in


def test_slips_that_any_reading_can_have() -> None:
    with plugin_set(SHOP) as loaded:
        q = asked(loaded, "bench", WORK, 1)
        told = {n: str(v).split() for n, v in q.case.drawn.given.items()}
        right = q.right.number
        slips = {o.slip: o.number - right for o in q.slips}
        by_hand = {
            "50 for 60 Hz": -10_000,
            "lead resistance left in": 1e4 * float(told["lead_resistance"][0]),
            "wrong row": {"20": 1e7, "18": -1e7, "16": -1e7}[told["wire"][0]],
        }
        for name, apart in slips.items():
            assert apart == pytest.approx(by_hand[name]), name
        assert "wrong row" in slips
        pull = asked(loaded, "bench", WORK, 2)
        newtons = pull.right.number
        assert {o.slip: o.number for o in pull.slips} == {
            "kgf for lbf": pytest.approx(newtons * 2.20462262),
            "another figure": pytest.approx(newtons / 2),
        }


def test_crest_for_rms_and_the_other_frequency_change_the_run() -> None:
    with plugin_set(SHOP) as loaded:
        calc = loaded.find("bench").calculation
        inputs = {n: (calc.input(n), t) for n, t in calc.example_inputs.items() if n != "wire"}
        found = {
            s.name: s
            for s in common_slips({n: (i, str(t)) for n, (i, t) in inputs.items()}, {}, _sum)
        }
        given = {**calc.example_inputs, "wire": "18 AWG"}
        case = Case(Drawn(given), loaded.run("bench", given), loaded.runner("bench"))
        assert found["peak for rms"].wrong(case) - _sum(case) == pytest.approx(41.4214, rel=1e-4)
        assert found["50 for 60 Hz"].wrong(case) - _sum(case) == pytest.approx(-10_000)
        assert found["lead resistance left in"].wrong(case) - _sum(case) == pytest.approx(20_000)


def _sum(case: Case) -> float:
    return case.figure("sum")


def test_readings_of_a_shop_reach_past_its_limit_and_no_further() -> None:
    # its example is 3 mm: from half of it to two and a half times it, past caution and limit
    with plugin_set(SHOP) as loaded:
        maker = Maker(loaded, "frost")
        asked = [maker.question(Recipe("frost", JUDGE, seed), 1, 1) for seed in range(60)]
        shown = [str(q.case.drawn.given["frost_thickness"]).split()[0] for q in asked]
        assert {q.right.text for q in asked} == {"pass", "marginal", "fail", "cannot tell"}
        assert 1.5 <= min(map(float, shown)) < 1.9
        assert 7.0 < max(map(float, shown)) <= 7.5
        assert all(len(text.partition(".")[2]) == 1 for text in shown)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("drill",), "needs a topic"),
        (("drill", "drop", "--level", "4"), "--level: '4' is no number from 1 to 3"),
        (("drill", "drop", "--number", "0"), "--number: '0' is no number from 1 to 50"),
        (("drill", "drop", "--learners", "101"), "--learners: '101' is no number from 1 to 100"),
        (("drill", "drop", "--seed", "-1"), "--seed: '-1' is no number from 0 to 999999999"),
        (("drill", "drop", "--tolerance", "2 %"), "--tolerance: is for --grade alone"),
        (
            ("drill", "windings", "--level", "3"),
            "no verdict that its readings move; try --level 1",
        ),
        (("drill", "insulation"), "has no figure that its readings move; try --level 3"),
        (("drill", "splice"), "has no figure that its readings move; choose another calculation"),
        (("drill", "trace"), "reads a file"),
        (("drill", "--grade", "no.csv"), "no.csv"),
        (("drill", "drop", "--grade", "no.csv"), "takes the topic from the answers"),
        (("drill", "--grade", "a.csv", "--level", "2"), "--level: is for sheets"),
        (("drill", "--grade", "a.csv", "--tolerance", "30 %"), "no share from 0 to 20 %"),
    ],
)
def test_what_cannot_be_is_refused_in_words(words: tuple[str, ...], said: str) -> None:
    found = run_command(*words)
    assert found.status == 2
    assert said in " ".join(found.err.split())


def test_answers_to_other_questions_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "answers.csv"
    for text, said in {
        "drill,learner,question,answer,check\ndrop/2/7,1,1,4 V,00000000\n": "another question now",
        "drill,learner,question,answer\nnothing,1,1,4 V\n": "is no code of a drill",
        "drill,learner,question,answer\ndrop/2/7,x,1,4 V\n": "learner 'x' is no number",
        "drill,learner,question,answer\ndrop/2/7,1,1,4 V\ndrop/2/7,1,1,5 V\n": "answered above",
        "drill,learner,answer\ndrop/2/7,1,4 V\n": "has no column question",
        "drill,learner,question,answer\nnothing-such/2/7,1,1,4 V\n": "no calculation",
        "drill,learner,question,answer\n": "has no row",
    }.items():
        path.write_text(text, encoding="utf-8")
        found = run_command("drill", "--grade", str(path))
        assert found.status == 2
        assert said in " ".join(found.err.split())


def test_a_question_that_only_others_answered_is_blank(tmp_path: Path) -> None:
    path = tmp_path / "answers.csv"
    path.write_text(
        "drill;learner;question;answer\ndrop/2/7;1;1;9 V\ndrop/2/7;2;2;9 %\n", encoding="utf-8"
    )
    found = run_command("drill", "--grade", str(path), "--format", "csv")
    marks = [row["mark"] for row in csv.DictReader(io.StringIO(found.out))]
    assert marks.count("blank") == 2
    assert len(marks) == 4


def test_blank_answers_are_marked_blank(bundled: wirecalc.Catalogue) -> None:
    q = asked(bundled, "pull", WORK)
    row = blank_answers([q]).splitlines()[1]
    assert row == f"pull/2/7,1,1,,{q.check}"


def test_page_shows_what_each_meter_shows_of_one_start() -> None:
    page = (Path(__file__).parents[2] / "docs" / "demonstrations.md").read_text(encoding="utf-8")
    start = {"load_torque": "25 %", "inertia": "0.005 kg m2", "voltage_at_rest": "117 V"}
    found = wirecalc.run("start-curve", textbook_motor="split-phase-115V", **start)
    listing = next(one for one in found.listings if one.title.startswith("What each kind"))
    for meter, least, most in listing.rows:
        assert f"| {meter} | {float(least or 0):.3g} A | {float(most or 0):.3g} A |" in page


def test_chart_has_one_mark_for_every_answer(bundled: wirecalc.Catalogue) -> None:
    maker = Maker(bundled, "pull")
    marks = [
        marked(maker.question(Recipe("pull", WORK, 7), learner, number), answer, 0.01)
        for learner in (1, 2, 30)
        for number, answer in ((1, "1 lbf"), (2, ""))
    ]
    chart = class_chart(marks)
    shown = [(x, y) for points in chart.points for x, y in zip(points.x, points.y, strict=True)]
    assert sorted(shown) == [(1, 1), (1, 2), (1, 3), (2, 1), (2, 2), (2, 3)]
    assert [text for _, text in chart.y.marks] == ["1", "2", "30"]
    assert chart.text == "question 1: 3 wrong; question 2: 3 blank"


def test_limit_on_the_sheet_is_rounded_to_its_safe_side(bundled: wirecalc.Catalogue) -> None:
    # 35 A x 0.75 x 0.7 is 18.375 A: at most 18.37 A is asked for
    maker = Maker(bundled, "ampacity")
    texts = [maker.question(Recipe("ampacity", JUDGE, 4), 1, n).text for n in range(1, 25)]
    assert not any("At most 18.38 A." in text for text in texts)
    assert any("At most 18.37 A." in text for text in texts)


def test_every_package_is_packed() -> None:
    root = Path(__file__).parents[2]
    listed = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))
    packages = set(listed["tool"]["setuptools"]["packages"])
    for top in (root / "wirecalc", root / "plugins" / "wirecalc_plugins"):
        for path in top.rglob("__init__.py"):
            assert ".".join(path.parent.relative_to(top.parent).parts) in packages
