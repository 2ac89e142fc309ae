"""The page of public names, from the code: what a plugin may import."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from collections.abc import Iterator
from types import ModuleType

import wirecalc
import wirecalc.testing.properties
import wirecalc.testing.strategies
import wirecalc.trade

HEAD = """# What a plugin may import

Made from the code by `tests/system/written.py`; do not edit it by hand. These names are the
contract: what is not listed may change with any version. [plugin-reference.md](plugin-reference.md)
says what they are for.
"""


def page() -> str:
    """Return the whole page."""
    return "\n".join([HEAD, *_sections()])


def _sections() -> Iterator[str]:
    yield from _section("wirecalc", wirecalc, wirecalc.__all__)
    yield from _section("wirecalc.tables", wirecalc.tables, wirecalc.tables.__all__)
    yield from _section("wirecalc.charts", wirecalc.charts, own_names(wirecalc.charts))
    for module in trade_modules():
        yield from _section(module.__name__, module, own_names(module))
    yield from _section("wirecalc.testing", wirecalc.testing, wirecalc.testing.__all__)
    for module in (wirecalc.testing.properties, wirecalc.testing.strategies):
        yield from _section(module.__name__, module, module.__all__)


def trade_modules() -> list[ModuleType]:
    """Return the modules of the arithmetic of the trade."""
    found = pkgutil.iter_modules(wirecalc.trade.__path__, "wirecalc.trade.")
    return [importlib.import_module(info.name) for info in found]


def own_names(module: ModuleType) -> list[str]:
    """Return the functions and records that a module defines, in its order."""
    return [
        name
        for name, value in vars(module).items()
        if not name.startswith("_") and getattr(value, "__module__", None) == module.__name__
    ]


def _section(title: str, module: ModuleType, names: list[str]) -> Iterator[str]:
    yield f"## {title}\n"
    yield (inspect.getdoc(module) or "").partition("\n")[0] + "\n"
    yield "| name | what it is |\n| --- | --- |"
    for name in names:
        yield f"| `{name}` | {_said(getattr(module, name)).replace('|', 'or')} |"
    yield ""


def _said(value: object) -> str:
    """Return the first line of a docstring, or what a constant is."""
    if inspect.isroutine(value) or inspect.isclass(value) or inspect.ismodule(value):
        return (inspect.getdoc(value) or "").partition("\n")[0]
    if isinstance(value, wirecalc.Source):
        return f"the source: {value}"
    if isinstance(value, tuple) and all(map(inspect.isfunction, value)):
        return ", ".join(one.__name__ for one in value)
    if isinstance(value, tuple) and len(value) > 3:
        return f"from {value[0]} to {value[-1]}"
    return f"a {type(value).__name__}" if callable(value) else f"{value}"
