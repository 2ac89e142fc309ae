"""The answers of a class: a CSV with a row an answer, made again into its question and marked."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from ..base.errors import BadInput, BadText, Problem
from ..jobs.batch_rows import RowsFile
from ..plugging.host import Catalogue
from .marking import Mark, marked
from .questions import Makers, Question
from .recipe import Recipe, read_recipe

COLUMNS = ("drill", "learner", "question", "answer")
CHECK = "check"
MOST_LEARNERS, MOST_QUESTIONS = 100, 50


class Place(NamedTuple):
    """Which question an answer belongs to."""

    recipe: Recipe
    learner: int
    number: int


def blank_answers(questions: Sequence[Question]) -> str:
    """Return the CSV to fill in for the questions of a class."""
    file = io.StringIO()
    out = csv.writer(file, lineterminator="\n")
    out.writerow([*COLUMNS, CHECK])
    for q in questions:
        out.writerow([q.recipe.code, q.learner, q.number, "", q.check])
    return file.getvalue()


def marks_of(loaded: Catalogue, name: str, tolerance: float) -> list[Mark]:
    """Mark a file of answers; a question that others answered and this learner not is blank.

    Raises BadInput with everything that is wrong with the file.
    """
    answers, checks = _read(name)
    makers = Makers(loaded)
    found: list[Mark] = []
    problems: list[Problem] = []
    for place in _all(answers):
        for topic in place.recipe.topics:
            if topic not in loaded.calculations:
                wrong = f"{place.recipe.code}: there is no calculation {topic!r}"
                raise BadInput([Problem(name, wrong, "is its plugin loaded?")])
        question = makers.question(*place)
        check = checks.get(place, "")
        if check and check.casefold() != question.check:
            wrong = f"learner {place.learner}, question {place.number} is another question now"
            would_do = "mark it with the version, plugins and tables that the sheets were made with"
            problems.append(Problem(name, wrong, would_do))
        found.append(marked(question, answers.get(place, ""), tolerance))
    if problems:
        raise BadInput(problems)
    return found


def _all(answers: Mapping[Place, str]) -> Iterator[Place]:
    """Yield every question of every learner, in order."""
    for recipe in sorted({p.recipe for p in answers}):
        numbers = sorted({p.number for p in answers if p.recipe == recipe})
        for learner in sorted({p.learner for p in answers if p.recipe == recipe}):
            yield from (Place(recipe, learner, number) for number in numbers)


def _read(name: str) -> tuple[dict[Place, str], dict[Place, str]]:
    """Return the answers of a file and its checks."""
    try:
        file = RowsFile(name)
    except BadText as error:
        raise BadInput([Problem(name, error.wrong, error.would_do)]) from None
    heads = [head.strip().casefold() for head in file.header]
    missing = [column for column in COLUMNS if column not in heads]
    if missing:
        file.close()
        wrong = f"has no column {', '.join(missing)}"
        raise BadInput([Problem(name, wrong, f"its header is {','.join(COLUMNS)}")])
    answers: dict[Place, str] = {}
    checks: dict[Place, str] = {}
    problems: list[Problem] = []
    for row in file.rows():
        cells = dict(zip(heads, row.cells, strict=False))
        try:
            if row.wrong:
                raise BadText(row.wrong, "")
            place = _place(cells)
            if place in answers:
                raise BadText("this question of this learner was answered above", "keep one row")
        except BadText as error:
            problems.append(Problem(f"{name}, line {row.number}", error.wrong, error.would_do))
            continue
        answers[place] = cells.get("answer", "")
        checks[place] = cells.get(CHECK, "").strip()
    if not answers and not problems:
        problems.append(Problem(name, "has no row below its header", "give a row an answer"))
    if problems:
        raise BadInput(problems)
    return answers, checks


def _place(cells: Mapping[str, str]) -> Place:
    """Read whose answer to what a row has; raises BadText."""
    return Place(
        read_recipe(cells.get("drill", "")),
        whole_number("learner", cells.get("learner", ""), MOST_LEARNERS),
        whole_number("question", cells.get("question", ""), MOST_QUESTIONS),
    )


def whole_number(what: str, text: str, most: int, least: int = 1) -> int:
    """Read a whole number of a span; raises BadText."""
    plain = text.strip()
    if plain.isascii() and plain.isdecimal() and len(plain) < 12 and least <= int(plain) <= most:
        return int(plain)
    raise BadText(f"{what} {plain!r} is no number from {least} to {most}", f"such as {least}")
