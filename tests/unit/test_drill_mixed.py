"""Mixed sheets: topics by turns, each with its own exercises, marked like any other."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest

import wirecalc
from wirecalc.base.errors import BadInput
from wirecalc.drills.marking import Kind, marked
from wirecalc.drills.of_example import exercises_of
from wirecalc.drills.questions import Maker, Makers
from wirecalc.drills.recipe import CHOOSE, JUDGE, Recipe, read_recipe
from wirecalc.engine.exercises import Luck
from wirecalc.testing import plugin_set, run_command

from .test_drill import SHOP

MIXED = "drop+pull+duty"


@pytest.fixture(scope="module")
def bundled() -> wirecalc.Catalogue:
    return wirecalc.build(bundled_only=True)


def test_topics_take_turns_and_each_goes_through_its_own_exercises(
    bundled: wirecalc.Catalogue,
) -> None:
    makers, recipe = Makers(bundled), Recipe(MIXED, CHOOSE, 7)
    asked = [makers.question(recipe, 1, number).asks for number in range(1, 10)]
    alone = {
        topic: [Maker(bundled, topic).question(Recipe(topic, CHOOSE, 1), 1, n).asks for n in (1, 2)]
        for topic in recipe.topics
    }
    drop, pull, duty = (alone[topic] for topic in ("drop", "pull", "duty"))
    assert asked == [
        drop[0],
        pull[0],
        duty[0],
        drop[1],
        pull[1],
        duty[1],
        drop[0],
        pull[0],
        duty[0],
    ]
    assert read_recipe("drop+pull+duty/1/7") == recipe


def test_a_mixed_class_is_marked(tmp_path: Path, bundled: wirecalc.Catalogue) -> None:
    folder = tmp_path / "class"
    words = ("--level", "2", "--number", "3", "--learners", "2", "--seed", "7")
    made = run_command("drill", *MIXED.split("+"), *words, "--output", str(folder))
    assert made.status == 0
    sheet = (folder / "sheet-01.md").read_text(encoding="utf-8")
    assert sheet.startswith("# Mixed: drop, pull, duty. Sheet of learner 1")
    path = folder / "answers.csv"
    rows = list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"))))
    makers = Makers(bundled)
    for row in rows:
        q = makers.question(read_recipe(row["drill"]), int(row["learner"]), int(row["question"]))
        row["answer"] = q.right.text
        if (row["learner"], row["question"]) == ("1", "1"):  # drop: the wire one way
            row["answer"] = f"{q.right.number / 2:.2f} V"
        if (row["learner"], row["question"]) == ("2", "3"):  # duty: on over off, of 38 %
            row["answer"] = f"{100 / (100 / q.right.number - 1):.1f} %"
    with path.open("w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, rows[0])
        out.writeheader()
        out.writerows(rows)
    found = run_command("drill", "--grade", str(path), "--format", "markdown")
    assert "6 answers: 4 right, 2 slip" in found.out
    assert "| loop not doubled | 1 | 1 |" in found.out
    assert "| on over off | 1 | 2 |" in found.out


def test_the_key_says_of_which_topics_the_answers_were_recomputed() -> None:
    with plugin_set(SHOP):
        key = run_command("drill", "drop", "frost", "--key", "--format", "markdown").out
    assert "those of drop were compared with a recomputation by another way" in key
    assert "nobody has recomputed the questions of frost by another way" in key


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("drop", "windings", "--level", "3"), "windings has no verdict that its readings move"),
        (("drop", "trace"), "trace reads a file"),
    ],
)
def test_a_topic_that_cannot_be_is_named(words: tuple[str, ...], said: str) -> None:
    found = run_command("drill", *words)
    assert found.status == 2
    assert said in " ".join(found.err.split())


def test_twenty_topics_make_a_sheet_and_one_more_does_not(bundled: wirecalc.Catalogue) -> None:
    names = sorted(bundled.calculations)[:21]
    refused = f"{names[20]!r}: was not expected"
    for many in (20, 21):
        said = run_command("drill", *names[:many]).err
        assert (refused in " ".join(said.split())) is (many == 21)


def test_each_sheet_begins_a_page_of_paper() -> None:
    page = run_command("drill", "drop", "--learners", "3", "--number", "1", "--format", "html").out
    assert page.count("<h1") == 3
    printed = page.partition("@media print")[2].partition("</style>")[0]
    assert ".plain > h1:not(:first-child) { break-before: page; }" in printed
    assert ".plain { font-size: 11pt;" in printed
    assert '<main class="plain">' in page


DEAR = ("start-curve", "trace")  # the one simulates, the other reads a recording


def test_right_and_slips_of_every_topic_are_marked_as_what_they_are(
    bundled: wirecalc.Catalogue,
) -> None:
    """No slip reads as the right answer at the stated rounding, nor as another slip."""
    asked = 0
    for topic in sorted(set(bundled.calculations) - set(DEAR)):
        try:
            q = Maker(bundled, topic).question(Recipe(topic, CHOOSE, 3), 1, 1)
        except BadInput:
            continue  # nothing to ask for at this level
        asked += 1
        texts = [q.right.text, *(slip.text for slip in q.slips)]
        assert len(set(texts)) == len(texts), q.text
        assert marked(q, q.right.text, 0.01).kind is Kind.RIGHT, q.text
        for slip in q.slips:
            assert marked(q, slip.text, 0.01).slip == slip.slip, q.text
    assert asked >= 30


def test_a_topic_twice_is_one_topic() -> None:
    once, twice = (run_command("drill", *topics, "--number", "1") for topics in TOPICS)
    assert once.out == twice.out


def test_volts_of_a_line_and_temperatures_are_such_as_are_read(
    bundled: wirecalc.Catalogue,
) -> None:
    """A tenth about the volts of the example, from ten kelvin cooler to fifteen warmer."""
    ends: dict[str, set[float]] = {"voltage_running": set(), "cold_temperature": set()}
    examples = {}
    for topic, name in (("supply", "voltage_running"), ("winding-heat", "cold_temperature")):
        calc = bundled.find(topic).calculation
        (first, *_) = exercises_of(calc, bundled.runner(topic))
        examples[name] = float(str(calc.example_inputs[name]).split()[0])
        for seed in range(60):
            given = first.draw(Luck(f"{seed}")).given
            ends[name].add(float(str(given[name]).split()[0]))
    volts, warm = examples["voltage_running"], examples["cold_temperature"]
    assert 0.88 * volts - 0.1 <= min(ends["voltage_running"]) < 0.9 * volts
    assert 1.08 * volts < max(ends["voltage_running"]) <= 1.1 * volts + 0.1
    assert warm - 10 <= min(ends["cold_temperature"]) < warm - 8
    assert warm + 13 < max(ends["cold_temperature"]) <= warm + 15


def test_a_list_is_told_as_it_is_spoken(bundled: wirecalc.Catalogue) -> None:
    q = Maker(bundled, "duty").question(Recipe("duty", CHOOSE, 5), 1, 1)
    assert "It ran for 25 min, 14 min and 14 min, and stood for 12 min, 27 min and 37 min" in q.text


def test_what_is_advised_and_what_is_marginal_is_said_once(bundled: wirecalc.Catalogue) -> None:
    q = Maker(bundled, "drop").question(Recipe("drop", JUDGE, 5), 1, 1)
    assert q.text.endswith("At most 5 % is advised; above 3 % is marginal.")
    q = Maker(bundled, "dip").question(Recipe("dip", JUDGE, 5), 1, 1)
    assert q.text.endswith("At least 103.5 V is advised: past it is marginal.")


TOPICS = (("drop",), ("drop", "drop"))
