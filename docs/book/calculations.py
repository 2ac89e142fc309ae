"""A page a calculation, made from its declaration, its example and the tables that it names."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from wirecalc.engine.declaration import Calculation
from wirecalc.engine.inputs import Input
from wirecalc.engine.left_out import option_of
from wirecalc.output.citations import Citations
from wirecalc.output.explanation import limit_said, tables_named, worked
from wirecalc.plugging.worked_examples import example_files
from wirecalc.published import tables
from wirecalc.published.measuring import ways
from wirecalc.said.findings import Judged
from wirecalc.said.items import library_caution
from wirecalc.said.verdicts import Verdict

from .drawings import drawing
from .examples_worked import Worked
from .markdown import block, code, items, page, paragraphs, plain, rows, section

DRAWN_TOO = {  # what a drawing shows besides how a reading is taken
    "conforms": ["band"],
    "pull": ["crimp"],
    "pull-batch": ["crimp"],
    "splice": ["barrel"],
    "shared-barrel": ["barrel"],
    "ring": ["tab"],
}
MEANS = {
    Verdict.PASS: "It is within the limits that were checked, and no more than that.",
    Verdict.MARGINAL: "It is within every binding limit, but past a caution level or an advised "
    "limit, or it keeps a limit only as that is remembered.",
    Verdict.CANNOT_TELL: "Something needed is unknown, or a reading is too close to a limit for "
    "its instrument. The answer says what to measure, or how well. It is not a pass.",
    Verdict.FAIL: "A binding limit is missed. What to do then stands in the answer, and below at "
    "the limit where it is known beforehand.",
}
UNSAID = "who set the limit says what to do"
NO_VERDICT = "It gives figures and has no limit of its own; a house rule may have one."


def calculation_page(done: Worked) -> str:
    """Return the page of a calculation; its parts are in the order in which a reader asks."""
    calc = done.calc
    marks = Citations(done.findings)
    return page(
        [
            f"# {calc.name}",
            "",
            f"**{plain(calc.question)}**",
            "",
            *section("When to ask it", _when(calc)),
            *section("What to have at hand", list(_at_hand(calc))),
            *section("Take care", items(_care(calc))),
            *section("How to measure it", _measured(calc)),
            *section("Example", _example(done)),
            *section("What each verdict means, and what to do", _verdicts(done)),
            *section("Limits", _limits(done, marks)),
            *section("Sources", _sources(calc, marks)),
            *section("What it does not see", items(map(plain, calc.not_checked))),
            *section("How it is worked out", list(paragraphs(calc.doc))),
        ]
    )


def _when(calc: Calculation[Any]) -> list[str]:
    words = ", ".join(calc.words)
    lines = [f"Part of the trade: {plain(calc.part)}.", ""]
    kinds: dict[str, dict[str, None]] = {"yes": {}, "no": {}}
    for row in tables.load("job-kinds").rows:
        if row.text("calculation") == calc.name:
            kinds[row.text("required")][row.text("kind").replace("*", "any machine")] = None
    lines += items(
        f"{said}: {plain(', '.join(names))}."
        for said, names in (
            ("Needed on the job sheet of", kinds["yes"]),
            ("On the job sheet where the repair touches it", kinds["no"]),
        )
        if names
    )
    return [*lines, f"People who look for it say: {plain(words)}.", ""] if words else lines


def _at_hand(calc: Calculation[Any]) -> Iterator[str]:
    """Yield the inputs: what is needed first, then what makes the answer better."""
    needed = [i for i in calc.inputs if i.required]
    more = [i for i in calc.inputs if not i.required]
    head = ("give", "what it is", "from, to", "such as")
    yield from rows(head, map(_input, needed))
    if more:
        yield from ("These too, where they are known:" if needed else "What is known of:", "")
    yield from rows((*head, "left out"), ([*_input(i), plain(_need(i))] for i in more))


def _input(declared: Input) -> list[str]:
    kind = declared.kind
    text = kind.text + (" (may be repeated)" if declared.many else "")
    if kind.goes_with:
        text += f"; goes with {option_of(kind.goes_with)}"
    return [code(declared.option), plain(text), plain(kind.span), code(kind.example)]


def _need(declared: Input) -> str:
    return declared.need_spelled(option_of)


def _measured(calc: Calculation[Any]) -> list[str]:
    """Return how its readings are taken, and behind them the drawings that show it, each once."""
    found = ways([declared.name for declared in calc.inputs])
    lines = items(
        f"**{plain(way.name)}** ({', '.join(code(option_of(n)) for n in way.inputs)}): "
        f"{plain(way.text)}"
        for way in found
    )
    drawn = dict.fromkeys([way.drawing for way in found] + DRAWN_TOO.get(calc.name, []))
    for name in filter(None, drawn):
        lines += [drawing(name, "../../"), ""]
    return lines


def _example(done: Worked) -> list[str]:
    lines = list(worked(done.calc, done.example, example_files(done.calc)))
    return block(lines[2:])  # an empty line and the title of it go first


def _verdicts(done: Worked) -> list[str]:
    go_on = f" Then: {plain(done.calc.go_on)}." if done.calc.go_on else ""
    if done.limits:
        after = {Verdict.PASS: go_on}
        lines = items(f"**{v.value}**: {said}{after.get(v, '')}" for v, said in MEANS.items())
    else:
        lines = [NO_VERDICT + go_on, ""]
    gaps = items(
        f"{plain(judged.criterion.name.replace('_', ' '))}: {plain(judged.criterion.action)}"
        for judged in done.gaps
        if judged.criterion.action
    )
    if gaps:
        lines += ["What may keep it from telling, and what to do then:", "", *gaps]
    return lines


def _limits(done: Worked, marks: Citations) -> list[str]:
    lines = rows(
        ("what is judged", "limit, such as", "whose", "if missed", "source"),
        (
            [
                plain(judged.criterion.name),
                plain(limit_said(judged)),
                str(judged.criterion.origin),
                plain(_if_missed(done, judged)),
                plain(marks.mark(judged.criterion.source)),
            ]
            for judged in done.limits
        ),
    )
    if lines:
        said = "As its example has them, and the same example with one thing changed; other inputs"
        return [f"{said} have other limits.", "", *lines]
    return lines


def _if_missed(done: Worked, judged: Judged) -> str:
    """Say what to do: some are not failed but can't be told, and then that says what to do."""
    name = judged.criterion.name
    same = (j.criterion for j in done.gaps if f"{name},".startswith(f"{j.criterion.name},"))
    gap = next((criterion.action for criterion in same if criterion.action), "")
    return judged.criterion.action or gap or UNSAID


def _sources(calc: Calculation[Any], marks: Citations) -> list[str]:
    lines = items(f"{plain(f'[{number}]')} {plain(text)}" for number, text in marks.listed)
    named = tables_named(calc.doc)
    if named:
        lines += ["Tables that it takes its values from:", ""]
        lines += items(
            f"[{name}](../tables/{name}.md): {plain(tables.load(name).title)}" for name in named
        )
    return lines


def _care(calc: Calculation[Any]) -> Iterator[str]:
    for caution in filter(None, map(library_caution, calc.cautions)):
        stop = "**STOP.** " if caution.severity == "stop" else ""
        when = f"{plain(caution.when)}: " if caution.when not in ("", "always") else ""
        backing = f" ({plain(caution.backing)})" if caution.backing else ""
        yield f"{stop}{when}{plain(caution.text)}{backing}"


def by_part(all_of: Iterable[Worked]) -> dict[str, list[Worked]]:
    """Return calculations by part of the trade, both in the order of the alphabet."""
    found: dict[str, list[Worked]] = {}
    for done in sorted(all_of, key=lambda w: (w.calc.part, w.calc.name)):
        found.setdefault(done.calc.part, []).append(done)
    return found


def calculations_index(all_of: Iterable[Worked]) -> str:
    """Return the page that lists all calculations with their questions."""
    lines = ["# Calculations", "", "A page each, made from their declarations.", ""]
    for part, members in by_part(all_of).items():
        listed = items(
            f"[{w.calc.name}]({w.calc.name}.md): {plain(w.calc.question)}" for w in members
        )
        lines += section(part[:1].upper() + part[1:], listed)
    return page(lines)
