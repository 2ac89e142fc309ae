"""Which tests run a line, and how long each takes; kept a file of tests each, until it changes."""

from __future__ import annotations

import ast
import hashlib
import json
import re
from collections.abc import Iterator
from pathlib import Path

from forked import Covered, in_child, lines_of

# Random examples are slow here; the others start the installed command or a browser, or look at
# the tree and not at what the program does.
LEFT_OUT = {"properties", "benchmarks", "mutation"}
LEFT_OUT |= {"test_html_browser.py", "test_install.py", "test_completion.py", "test_modules.py"}
LEFT_OUT |= {"test_new_plugin.py", "test_streams.py", "test_record_killed.py", "test_docs.py"}
LEFT_OUT |= {"test_examples_drawn.py", "test_tutorial.py"}
LONGEST = 900  # seconds for a file of tests, with each line watched


def files_of_tests(tree: Path) -> Iterator[Path]:
    """Yield the files of tests and the modules with examples in their docstrings."""
    for folder, names in (("tests/unit", "test_*.py"), ("wirecalc", "*.py"), ("plugins", "*.py")):
        yield from _kept(tree, folder, names)
    for folder in ("tests/system", "tests/published", "tests/calculations"):
        yield from _kept(tree, folder, "test_*.py")


def _kept(tree: Path, folder: str, names: str) -> Iterator[Path]:
    for path in sorted((tree / folder).rglob(names)):
        here = path.relative_to(tree)
        has_tests = folder.startswith("tests") or ">>> " in path.read_text(encoding="utf-8")
        if has_tests and not LEFT_OUT & set(here.parts):
            yield here


def covered(tree: Path, only: str = "") -> Covered:
    """Return what each test runs; only files not yet seen as they are now are run."""
    kept, all_of_them = tree.parent / "covered", {}
    kept.mkdir(exist_ok=True)
    for file in files_of_tests(tree):
        if not re.match(only, str(file)):
            continue
        digest = hashlib.sha256((tree / file).read_bytes()).hexdigest()[:12]
        path = kept / f"{str(file).replace('/', '.')}-{digest}.json"
        if not path.exists():
            found = in_child(lambda f=str(file): lines_of(f, tree), tree, LONGEST)
            print(f"watched {file}: {len(found or ())} tests", flush=True)
            path.write_text(json.dumps(found if isinstance(found, dict) else {}))
        all_of_them |= json.loads(path.read_text())
    return all_of_them


def covering(tests: Covered, tree: Path, file: str, line: int) -> list[str]:
    """Return the tests that run a line of a file, fastest first, those of its functions before all.

    What runs when the module is loaded belongs to all tests of the files in which it was loaded,
    and to those of a file that names the module.
    """
    source = (tree / file).read_text(encoding="utf-8")
    lines = set(_statement(source, line))
    chosen = [t for t, (_, ran) in tests.items() if not lines.isdisjoint(ran.get(file, ()))]
    if not chosen or not _in_function(source, line):
        module = file.removeprefix("plugins/").removesuffix(".py").replace("/", ".")
        files = {name for name in _of_tests(tests) if module in (tree / name).read_text()}
        files |= _of_tests({t: ran for t, ran in tests.items() if ran[1].get(file)})
        chosen = [t for t in tests if t.partition("::")[0] in files]
    inner = _within_functions(source)
    return sorted(chosen, key=lambda t: (inner.isdisjoint(tests[t][1].get(file, ())), tests[t][0]))


def _of_tests(tests: Covered) -> set[str]:
    return {test.partition("::")[0] for test in tests}


def _statement(source: str, line: int) -> range:
    """Return the lines of the innermost simple statement, or head of one, that holds a line."""
    held = range(line, line + 1)
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.stmt) and node.lineno <= line <= (node.end_lineno or line):
            body = getattr(node, "body", None)
            last = body[0].lineno - 1 if body else node.end_lineno
            if node.lineno <= line <= max(last or line, node.lineno):
                held = range(node.lineno, max(last or line, node.lineno) + 1)
    return held


def _in_function(source: str, line: int) -> bool:
    return line in _within_functions(source)


def _within_functions(source: str) -> set[int]:
    """Return the lines of all bodies of functions."""
    return {
        line
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.FunctionDef)
        for line in range(node.body[0].lineno, (node.end_lineno or node.lineno) + 1)
    }
