"""The reference for authors of plugins: all that one may import, from code and docstrings."""

from __future__ import annotations

import enum
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterable, Iterator
from types import ModuleType
from typing import Any

import wirecalc
import wirecalc.testing.properties
import wirecalc.testing.strategies
import wirecalc.trade
from wirecalc.plugging import hooks
from wirecalc.said import criteria
from wirecalc.typed.kinds import Kind
from wirecalc.typed.unit_names import SPELLINGS

HEAD = """# Reference

Made from the code by `tests/system/written.py`; do not edit it by hand. What a plugin may import,
with all arguments; what is not listed may change with any version.
[plugin-reference.md](plugin-reference.md) says what it is for, and [plugin.md](plugin.md) makes a
plugin, step by step. The arithmetic of the trade is in [reference-trade.md](reference-trade.md).
"""
HEAD_OF_TRADE = """# Reference: the arithmetic of the trade

Made from the code by `tests/system/written.py`; do not edit it by hand. Plain numbers in and out:
what calculations share, for any plugin to import. The rest is in [reference.md](reference.md).
"""
UNITS = """## Units

A unit is looked up among those of the dimension that is wanted. The case of a letter counts where
two would be alike. `declare_unit` adds a dimension of a plugin's own.
"""
KINDS = "Kinds of input"
GROUPS = {  # of the names of wirecalc, in the order in which an author meets them
    "A calculation": "calculation Calculation deferred Deferred Problem hookimpl API_VERSION",
    KINDS: "Reading Nameplate Count OneOf YesNo Words Wire SizeRange ReadingsFile "
    "FileColumns ReadingsStream RecordedColumns declare_unit Bands",
    "What leaving an input out means": "asked may_be_absent assumed extra instead_of setting "
    "LeftOut",
    "What is yielded": "figure answer at_least at_most requires cannot_tell caution listing "
    "not_checked chart Item Figure Answer Criterion Caution",
    "Sources": "Source confirmed computed from_memory MAKER PLATE PRACTICE Confidence Origin",
    "House rules": "HouseRule RequiredChecks",
    "Numbers and wires": "show show_band put at_or_above at_or_below read_wire read_size_range "
    "gauge_number gauge_cmil GAUGES CMIL_PER_MM2",
    "Running": "run run_many evaluate seek build Catalogue Finding Verdict",
    "Exercises": "Exercise Drawn Case Luck Slip",
    "Errors": "WirecalcError BadInput BadText DeclarationError PluginDefect TableError",
}
TABLES = ("tables", "charts")  # modules among the names, with names of their own
HOOKS = sorted(n for n, f in vars(hooks).items() if hasattr(f, f"{hooks.PROJECT}_spec"))
EXAMPLES: dict[str, Any] = {  # of each kind, to show its example and its span
    "Reading": wirecalc.Reading("A", above=0, high=100, typical="1.30 A ±(2%+5)", text="current"),
    "Nameplate": wirecalc.Nameplate("V", low=100, high=250, typical="120 V", text="printed volts"),
    "Count": wirecalc.Count("strands", low=1, high=5000),
    "OneOf": wirecalc.OneOf(("ring", "fork"), text="terminal"),
    "YesNo": wirecalc.YesNo("whether it hums"),
    "Words": wirecalc.Words("what was seen", typical="a burnt pin"),
    "ReadingsFile": wirecalc.ReadingsFile(
        {"force": wirecalc.Reading("lbf", low=0, high=500, text="pull")}, text="pulls"
    ),
    "ReadingsStream": wirecalc.ReadingsStream(
        ["current"], {"current": wirecalc.Reading("A", text="current")}, text="a recording"
    ),
}
PLAIN = """A wire, a range of sizes, a text, and yes or no are declared with a text alone:
`Annotated[Wire, "wire in the barrel"]`, `Annotated[SizeRange, "sizes of the barrel"]`. A
`list[...]` of any kind is repeated, and `... | None = None` may be left out. `KIND.but(...)` is a
kind with what one calculation has of its own.

"""


def page() -> str:
    """Return the page of all but the trade."""
    lines = [HEAD]
    for title, names in GROUPS.items():
        lines += [f"## {title}\n", *([PLAIN, doc_of(Kind), ""] if title == KINDS else [])]
        lines += _entries(wirecalc, names.split())
    lines += [UNITS, *_units(), "", "## Hooks\n", *_entries(hooks, HOOKS)]
    for name in TABLES:
        module = getattr(wirecalc, name)
        lines += _section(f"wirecalc.{name}", module, names_of(module))
    for module in (wirecalc.testing, wirecalc.testing.properties, wirecalc.testing.strategies):
        lines += _section(module.__name__, module, names_of(module))
    return "\n".join(lines).rstrip() + "\n"


def page_of_trade() -> str:
    """Return the page of the arithmetic of the trade."""
    lines = [HEAD_OF_TRADE]
    for module in trade_modules():
        lines += _section(module.__name__, module, names_of(module))
    return "\n".join(lines).rstrip() + "\n"


def trade_modules() -> list[ModuleType]:
    """Return the modules of the arithmetic of the trade."""
    found = pkgutil.iter_modules(wirecalc.trade.__path__, "wirecalc.trade.")
    return [importlib.import_module(info.name) for info in found]


def names_of(module: ModuleType) -> list[str]:
    """Return the names that a module gives: those that it lists, or else those that it defines."""
    return list(getattr(module, "__all__", ())) or [
        name
        for name, value in vars(module).items()
        if not name.startswith("_") and getattr(value, "__module__", None) == module.__name__
    ]


def arguments(value: Any) -> list[str]:
    """Return the names of the arguments of a function, or of those that make a record."""
    try:
        found = list(inspect.signature(value).parameters)
    except (TypeError, ValueError):
        return []
    more = {"_More": criteria._More, "_Said": criteria._Said}
    hint = str(getattr(value, "__annotations__", {}).get("more", ""))
    keys = [key for name, kind in more.items() if f"[{name}]" in hint for key in _keys(kind)]
    return [name for name in found if name != "more"] + keys


def doc_of(value: Any) -> str:
    """Return what is said of a name: its docstring."""
    return inspect.getdoc(value) or ""


def said_of(value: Any) -> str:
    """Return where its arguments are described: of a kind, where those of all kinds are."""
    said = doc_of(value)
    if isinstance(value, type) and issubclass(value, Kind):
        said += doc_of(Kind)
    return said + (doc_of(criteria.at_least) if "is as for `at_least`" in said else "")


def _keys(kind: Any) -> list[str]:
    return list(kind.__annotations__)


def _section(title: str, module: ModuleType, names: Iterable[str]) -> Iterator[str]:
    yield f"## {title}\n"
    yield (inspect.getdoc(module) or "").partition("\n")[0] + "\n"
    yield from _entries(module, names)


def _entries(module: ModuleType, names: Iterable[str]) -> Iterator[str]:
    for name in names:
        value = getattr(module, name)
        yield f"### {name}\n"
        if inspect.isroutine(value) or inspect.isclass(value):
            yield from _callable(name, value)
        else:
            yield f"{_constant(value)}\n"


def _callable(name: str, value: Any) -> Iterator[str]:
    if isinstance(value, type) and issubclass(value, enum.Enum):
        yield f"{doc_of(value)} One of {', '.join(f'`{m.name}` ({m.value})' for m in value)}.\n"
        return
    yield f"```python\n{signature(name, value)}\n```\n"
    yield f"{_markdown(doc_of(value))}\n"
    if name in EXAMPLES:
        kind = EXAMPLES[name]
        yield f'Such as `{kind.example}`; its span is said as "{kind.span}".\n'


def signature(name: str, value: Any) -> str:
    """Return how something is called, one argument a line where it is long."""
    try:
        found = str(inspect.signature(value))
    except (TypeError, ValueError):
        return f"{name}(text)"
    found = re.sub(r"ForwardRef\('([^']*)'\)", r"\1", found)
    found = re.sub(r"(: |-> )'([^']*)'", r"\1\2", found).replace("mappingproxy({})", "{}")
    found = re.sub(r" at 0x[0-9a-f]+", "", found).removesuffix(" -> None")
    more = [key for key in arguments(value) if f"{key}:" not in found]
    found = re.sub(r"\*\*more: [^)\n]*(?=\))", ", ".join(f"{key}=..." for key in more), found)
    if len(name + found) <= 96:
        return name + found
    inside, _, result = found[1:].rpartition(")")
    parts = re.split(r", (?=[*a-z_]+(?::|=|$)|\*,|/)", inside)
    return "\n".join([f"{name}(", *(f"    {part}," for part in parts), f"){result}"])


def _constant(value: object) -> str:
    """Say what a name is that is no function and no class."""
    if isinstance(value, wirecalc.Source):
        return f"The source: {value}."
    if callable(value):
        return doc_of(value).partition("\n")[0]
    if isinstance(value, tuple) and all(map(inspect.isfunction, value)):
        return f"{', '.join(f'`{one.__name__}`' for one in value)}."
    if isinstance(value, tuple):
        return f"{len(value)} texts, from {value[0]!r} to {value[-1]!r}."
    return f"`{value}`"


def _markdown(doc: str) -> str:
    """Return a docstring with its examples fenced."""
    lines: list[str] = []
    for block in doc.split("\n\n"):
        fenced = block.lstrip().startswith(">>>")
        dedented = inspect.cleandoc(block) if fenced else block
        lines.append(f"```text\n{dedented}\n```" if fenced else block)
    return "\n\n".join(lines)


def _units() -> Iterator[str]:
    yield "| dimension | unit | also typed as |\n| --- | --- | --- |"
    for dimension, units in SPELLINGS.items():
        for name, more in units.items():
            shown = ", ".join(f"`{spelling}`" for spelling in more)
            yield f"| {dimension} | `{name}` | {shown} |"
            dimension = ""
