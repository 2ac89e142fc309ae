"""Behind each advised limit stands one that binds, or a reason why none does; docs list them."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import wirecalc_plugins

PLUGINS = Path(str(wirecalc_plugins.__file__)).parent
ADVICE = " ".join(
    (Path(__file__).parents[2] / "docs" / "advice.md").read_text(encoding="utf-8").split()
)
MODULES = sorted(p.relative_to(PLUGINS).as_posix() for p in PLUGINS.rglob("*.py"))


def advised(module: str) -> Iterator[ast.Call]:
    """Yield the calls of a module that give advice."""
    for node in ast.walk(ast.parse((PLUGINS / module).read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            given = {k.arg: k.value for k in node.keywords}.get("advisory")
            never = isinstance(given, ast.Constant) and given.value is False
            if given is not None and not never and isinstance(node.func, ast.Name):
                yield node


@pytest.mark.parametrize("module", MODULES)
def test_advice_says_what_binds_behind_it(module: str) -> None:
    for call in advised(module):
        behind = next((k.value for k in call.keywords if k.arg == "behind"), None)
        assert behind is not None, f"{module}:{call.lineno} does not say what binds behind it"
        texts = [c.value for c in ast.walk(behind) if isinstance(c, ast.Constant)]
        for text in (t for t in texts if isinstance(t, str) and t):
            assert text in ADVICE, f"{module}:{call.lineno}: {text!r} is not in docs/advice.md"
