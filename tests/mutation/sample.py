"""The mutants that Cosmic Ray would make of some files, and a random sample of them by seed."""

from __future__ import annotations

import ast
import random
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from cosmic_ray import plugins
from cosmic_ray.commands.init import _all_work_items
from cosmic_ray.mutating import mutate_code
from cosmic_ray.work_item import MutationSpec, WorkItem

Span = tuple[tuple[int, int], tuple[int, int]]
NOTHING_CHANGED = "core/NoOp"


def mutants(files: Sequence[Path], tree: Path) -> Iterator[WorkItem]:
    """Yield every mutant of some files, but those of type hints, which do nothing when run."""
    for file in sorted(files):
        hints = list(_hints((tree / file).read_text(encoding="utf-8")))
        for item in _all_work_items([tree / file], {}):
            (mutation,) = item.mutations
            start, end = mutation.start_pos, mutation.end_pos
            if mutation.operator_name != NOTHING_CHANGED and not any(
                a <= start and end <= b for a, b in hints
            ):
                yield item


def drawn(
    items: Sequence[WorkItem], count: int, seed: int, weight: Callable[[MutationSpec], float]
) -> list[WorkItem]:
    """Return a random sample, one mutant a place, so that no long formula fills it alone."""
    chance = random.Random(seed)
    places: dict[tuple[Path, Span], list[WorkItem]] = {}
    for item in items:
        (m,) = item.mutations
        places.setdefault((m.module_path, (m.start_pos, m.end_pos)), []).append(item)
    one_each = [chance.choice(there) for there in places.values()]
    # a weighted draw without putting back: the largest of chance ** (1 / weight)
    one_each.sort(key=lambda item: -(chance.random() ** (1 / weight(item.mutations[0]))))
    return one_each[:count]


def mutated(source: str, mutation: MutationSpec) -> str | None:
    """Return a source as a mutant has it; None where that is no Python, and so no mutant."""
    operator = plugins.get_operator(mutation.operator_name)(**mutation.operator_args)
    changed = mutate_code(source, operator, mutation.occurrence)
    try:
        ast.parse(changed or "?")
    except SyntaxError:
        return None
    return changed


def _hints(source: str) -> Iterator[Span]:
    """Yield where type hints stand, and what only a type checker reads."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.arg | ast.AnnAssign) and node.annotation is not None:
            yield _span(node.annotation)
        if isinstance(node, ast.FunctionDef) and node.returns is not None:
            yield _span(node.returns)
        if isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING":
            yield _span(node)


def _span(node: ast.expr | ast.stmt) -> Span:
    return (node.lineno, node.col_offset), (node.end_lineno or 0, node.end_col_offset or 0)
