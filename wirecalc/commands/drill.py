"""`wirecalc drill TOPIC`: sheets of exercises and their key, or the marks of a class."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from ..base.errors import BadText, Problem
from ..base.files import encoded, write_bytes, write_folder
from ..drills.answers import (
    MOST_LEARNERS,
    MOST_QUESTIONS,
    blank_answers,
    marks_of,
    whole_number,
)
from ..drills.offers import SAME_SHARE
from ..drills.questions import Makers, Question
from ..drills.recipe import LEVELS, TOGETHER, Recipe
from ..output.drill_sheets import key, sheet
from ..output.plain_pages import Block, html, markdown, text
from ..plugging.discovery import BUNDLED
from ..plugging.host import Catalogue
from ..typed.quantities import read_number
from . import COMMANDS
from .load_plugins import catalogue, find, warnings
from .options import Options, split
from .result import Result, refuse_onto

_OF_SHEETS = ("level", "number", "seed", "learners", "key")
MOST_TOPICS = 20  # of a mixed sheet
MOST_SEED = 999_999_999
MOST_TOLERANCE = 20.0  # %; a slip is as near as that


def run(words: Sequence[str]) -> Result:
    """Make the sheets and the key of a class, or mark its answers."""
    loaded = catalogue(words)
    options = split(words, COMMANDS["drill"], most_words=MOST_TOPICS)
    return _marks(loaded, options) if "grade" in options.own else _sheets(loaded, options)


def _sheets(loaded: Catalogue, options: Options) -> Result:
    problems = options.problems
    level = _number(options, "level", 1, len(LEVELS))
    count = _number(options, "number", 5, MOST_QUESTIONS)
    seed = _number(options, "seed", 1, MOST_SEED, least=0)
    learners = _number(options, "learners", 1, MOST_LEARNERS)
    if "tolerance" in options.own:
        problems.append(Problem("--tolerance", "is for --grade alone", "leave it out"))
    if options.chart:
        problems.append(Problem("--chart", "is for --grade alone", "leave it out"))
    if options.format == "csv":
        problems.append(Problem("--format", "a sheet is no csv", "write markdown or html"))
    if not options.words and not problems:
        problems.append(Problem("drill", "needs a topic", "such as drill drop; any calculation"))
    options.refuse()
    topics = list(dict.fromkeys(options.words))
    title = [find(loaded, topic, asked_by="drill").question for topic in topics]
    makers = Makers(loaded)
    recipe = Recipe(TOGETHER.join(topics), level, seed)
    made = [
        [makers.question(recipe, learner, n) for n in range(1, count + 1)]
        for learner in range(1, learners + 1)
    ]
    head = title[0] if len(topics) == 1 else f"Mixed: {', '.join(topics)}."
    pages = {f"sheet-{q[0].learner:02}": sheet(q, head) for q in made}
    recomputed = [
        topic
        for topic in topics
        if makers.of(topic).declared and loaded.find(topic).plugin == BUNDLED
    ]
    its_key = key(made, head, recomputed)
    said = warnings(loaded)
    if options.output is not None:
        return _written(options.output, options.format, {**pages, "key": its_key}, made, said)
    shown = [its_key] if "key" in options.own else list(pages.values())
    if options.format == "html":
        blocks = [block for page in shown for block in page]
        return Result(html(blocks), warnings=said)
    rendered = markdown if options.format == "markdown" else text
    return Result("\n\n".join(rendered(page) for page in shown), warnings=said)


def _written(
    folder: Path,
    form: str,
    pages: dict[str, list[Block]],
    made: Sequence[Sequence[Question]],
    said: Sequence[str],
) -> Result:
    """Write sheets, key and the answers to fill in into a new folder."""
    ending, rendered = ("html", html) if form == "html" else ("md", markdown)
    files = {f"{name}.{ending}": encoded(f"{rendered(page)}\n") for name, page in pages.items()}
    files["answers.csv"] = encoded(blank_answers([q for questions in made for q in questions]))
    if not write_folder(folder, files, "choose another folder with --output"):
        return Result(f"{folder} has just these sheets already.", warnings=said)
    lines = [f"Wrote {folder}:", *(f"  {name}" for name in files)]
    lines += ["", "Type what they answered into answers.csv, then", f"  {_grade(folder)}"]
    return Result("\n".join(lines), warnings=said)


def _grade(folder: Path) -> str:
    import shlex

    return f"wirecalc drill --grade {shlex.quote(str(folder / 'answers.csv'))}"


def _marks(loaded: Catalogue, options: Options) -> Result:
    from ..output.drill_marks import class_chart, marks_csv, marks_page

    for name in _OF_SHEETS:
        if name in options.own:
            wrong = "is for sheets, and --grade takes all of it from the answers"
            options.problems.append(Problem(f"--{name}", wrong, "leave it out"))
    if options.words:
        wrong = "--grade takes the topic from the answers"
        options.problems.append(Problem(repr(options.words[0]), wrong, "leave it out"))
    tolerance = _tolerance(options)
    options.refuse()
    name = options.own["grade"]
    refuse_onto(options.output, [name])
    marks = marks_of(loaded, name, tolerance)
    if options.chart:
        from ..output.drawing import check_name, draw

        check_name(options.chart)
        write_bytes(options.chart, draw(class_chart(marks), options.chart.suffix.casefold()))
    if options.format == "csv":
        said = marks_csv(marks)
    else:
        rendered = {"html": html, "markdown": markdown}.get(options.format, text)
        said = rendered(marks_page(marks, tolerance))
    return Result(said, output=options.output, warnings=warnings(loaded))


def _number(options: Options, name: str, unless: int, most: int, least: int = 1) -> int:
    try:
        return whole_number("it", options.own.get(name, str(unless)), most, least)
    except BadText as error:
        wrong = f"{options.own[name]!r} is no number from {least} to {most}"
        options.problems.append(Problem(f"--{name}", wrong, error.would_do))
        return unless


def _tolerance(options: Options) -> float:
    """Return the tolerance as a share."""
    text = options.own.get("tolerance")
    if text is None:
        return SAME_SHARE
    try:
        number, unit = read_number(text)
    except BadText as error:
        options.problems.append(error.about("--tolerance"))
        return SAME_SHARE
    if unit != "%" or not 0 <= number.value <= MOST_TOLERANCE:
        wrong = f"{text!r} is no share from 0 to {MOST_TOLERANCE:g} %"
        options.problems.append(Problem("--tolerance", wrong, 'write one such as "2 %"'))
    return number.value / 100
