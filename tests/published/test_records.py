"""No published check is without its record: where its values come from."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

FOLDER = Path(__file__).parent
KINDS = {"source": 3, "practice": 1, "memory": 1, "independent": 1, "case_file": 1}
FILES = {p.name: p for p in sorted(FOLDER.glob("test_*.py")) if p.name != "test_records.py"}
TRIALS = FOLDER.parent / "calculations"
FILES |= {
    f"{TRIALS.name}/{p.name}": p
    for p in sorted(TRIALS.glob("test_*.py"))
    if p.name != "test_trials.py"
}


def without_record(path: Path) -> list[str]:
    """Return the checks of a file that have no record, or one that says too little."""
    found = []
    own: set[str] = set()  # records that the file names once, for several of its checks
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.Assign) and _says(node.value):
            own |= {target.id for target in node.targets if isinstance(target, ast.Name)}
        if not isinstance(node, ast.FunctionDef) or not node.name.startswith("test_"):
            continue
        named = {d.id for d in node.decorator_list if isinstance(d, ast.Name)}
        if not named & own and not any(map(_says, node.decorator_list)):
            found.append(node.name)
    return found


def _says(decorator: ast.expr) -> bool:
    """Whether a decorator is a record whose texts are filled in, or the name of one in seen.py."""
    if isinstance(decorator, ast.Name):
        return decorator.id in NAMED
    if not isinstance(decorator, ast.Call) or not isinstance(decorator.func, ast.Name):
        return False
    texts = [*decorator.args, *(k.value for k in decorator.keywords)]
    written = [t.value for t in texts if isinstance(t, ast.Constant) and isinstance(t.value, str)]
    needed = KINDS.get(decorator.func.id, 0)
    return bool(needed) and len(written) >= needed and all(t.strip() for t in written)


NAMED: set[str] = set()  # records of seen.py that say enough
for _node in ast.parse((FOLDER / "seen.py").read_text(encoding="utf-8")).body:
    if isinstance(_node, ast.Assign) and isinstance(_node.value, ast.Call) and _says(_node.value):
        NAMED |= {target.id for target in _node.targets if isinstance(target, ast.Name)}


@pytest.mark.parametrize("name", FILES)
def test_every_published_check_has_its_record(name: str) -> None:
    assert without_record(FILES[name]) == []


def test_a_record_that_says_nothing_is_none(tmp_path: Path) -> None:
    path = tmp_path / "checks.py"
    path.write_text(
        '@source("a", "b", "c", seen="one copy")\ndef test_good(): ...\n'
        '@practice("")\ndef test_empty(): ...\n'
        '@source("a", seen="one copy")\ndef test_short(): ...\n'
        "def test_bare(): ...\n"
        "@RATINGS_240_6_A\ndef test_named(): ...\n"
        "@RATINGS\ndef test_named_nowhere(): ...\n"
        '@pytest.mark.parametrize("a", [1])\ndef test_other(a): ...\n',
        encoding="utf-8",
    )
    assert without_record(path) == [
        *("test_empty", "test_short", "test_bare", "test_named_nowhere", "test_other"),
    ]
