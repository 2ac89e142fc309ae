"""Help texts, made from the declarations."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ..engine.declaration import Calculation
from ..engine.deferred_calculation import Deferred
from ..output import terminal_width
from ..output.inputs import input_lines
from ..output.layout import command, table, wrap
from ..plugging.discovery import Plugin
from ..plugging.host import Catalogue
from .usage import CALCULATION, Command

METER_ERROR = (
    'Any input may be "unknown". Another unit of its kind may be typed. A reading may carry its '
    'meter\'s error: "1.30 A ±(2%+5)" (2 % and 5 of the last digit), "1.30 A ±3%", '
    '"1.30 A +/-0.05 A".'
)
LEFT_OUT = (
    "Asked: left out, the verdict is cannot tell. Assumed: left out, it is taken so, and what is "
    "tried too may make it cannot tell. May be left out: why the verdict stands without it."
)
EXITS = "Exit: 0 pass or marginal, 1 fail, 2 wrong input, 3 cannot tell, 4 a defect."


def listing(catalogue: Catalogue, version: str, commands: Mapping[str, Command]) -> str:
    """List all calculations by part of the trade."""
    lines = wrap(f"wirecalc {version}: checks for wiring repairs, with sources and cautions")
    lines += by_part(catalogue)
    lines += ["", "commands"]
    rows = [("NAME", "run a calculation; NAME --help shows its inputs")]
    rows += [(c.usage, c.text) for c in commands.values()]
    lines += _indent(table(rows, terminal_width.width() - 4))
    return "\n".join([*lines, "", *wrap(EXITS)])


def by_part(catalogue: Catalogue) -> list[str]:
    """Return the lines of all calculations, by part of the trade."""
    lines: list[str] = []
    parts: dict[str, list[Calculation[Any] | Deferred]] = {}
    for provided in catalogue.calculations.values():
        parts.setdefault(provided.offered.part, []).append(provided.offered)
    for part in sorted(parts):
        lines += ["", part]
        lines += _indent(
            table([(c.name, c.question) for c in parts[part]], terminal_width.width() - 4)
        )
    if not parts:
        lines += [
            "",
            *wrap("No calculations: no plugin provides any. `wirecalc plugins` says why."),
        ]
    return lines


def calculation_help(calc: Calculation[Any]) -> str:
    """Show the inputs of a calculation, each with unit, span and an example."""
    judged = f"What passes and what fails, with an example: wirecalc explain {calc.name}"
    lines = [*wrap(f"{calc.name}: {calc.question}"), *wrap(judged), "", "inputs"]
    for declared in calc.inputs:
        lines += input_lines(declared)
    lines += ["", *wrap(LEFT_OUT), *wrap(METER_ERROR), "", "options"]
    lines += _options(CALCULATION.described)
    lines += ["", "example", *command(calc.example), "", *wrap(EXITS)]
    return "\n".join(lines)


def command_help(command: Command) -> str:
    """Show what a command does, its own options and the general ones."""
    lines = [*wrap(f"wirecalc {command.usage}: {command.text}"), "", "options"]
    return "\n".join([*lines, *_options(command.described), "", *wrap(EXITS)])


def _options(described: Mapping[str, tuple[str, str]]) -> list[str]:
    rows = [(f"{option} {value}".strip(), text) for option, (value, text) in described.items()]
    return _indent(table(rows, terminal_width.width() - 4))


def plugin_table(plugins: Sequence[Plugin]) -> str:
    """List plugins with version, where from and state; below, what each gives and what is wrong."""
    if not plugins:
        return "No plugins are installed."
    rows = [("plugin", "from", "state", "ms", "gives")]
    rows += [
        (
            p.name,
            f"{p.distribution} {p.version}".rstrip(),
            p.state,
            f"{p.load_time * 1000:.0f}",
            _count(p),
        )
        for p in plugins
    ]
    lines = table(rows, head=True)
    for plugin in plugins:
        said = list(_gives(plugin))
        lines += ["", *wrap(str(plugin)), *said] if said else []
    return "\n".join(lines)


def _count(plugin: Plugin) -> str:
    counted = ((plugin.calculations, "calculation"), (plugin.house_rules, "house rule"))
    found = [f"{len(n)} {what}{'' if len(n) == 1 else 's'}" for n, what in counted if n]
    return ", ".join(found)


def _gives(plugin: Plugin) -> Iterator[str]:
    """Say what a plugin gives by name, and what is wrong; `wirecalc` lists what is bundled."""
    if plugin.reason:
        yield from wrap(plugin.reason, "  ")
    if plugin.slow:
        yield from wrap(f"slow: its import took {plugin.load_time:.1f} s", "  ")
    if plugin.bundled:
        return
    for what, names in (
        ("calculations", plugin.calculations),
        ("house rules", plugin.house_rules),
        ("hooks", plugin.hooks),
    ):
        if names:
            yield from wrap(f"{what}: {', '.join(names)}", "  ", "    ")


def _indent(lines: Sequence[str]) -> list[str]:
    return [f"  {line}" for line in lines]
