"""The house rules in force: what each asks, of which calculations, and where it is from."""

from __future__ import annotations

import inspect
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..engine.from_plugins import EVERY, ProvidedRule
from ..plugging.discovery import IN_PART
from ..plugging.host import Catalogue
from .layout import wrap


class ListedRule(NamedTuple):
    """A house rule as it is listed."""

    name: str
    calculations: list[str]
    asks: str
    origin: str


def listed(loaded: Catalogue, calculation: str = "") -> list[ListedRule]:
    """Return the house rules and required checks, or those that concern one calculation."""
    rows = [*_rules(loaded), *_required(loaded)]
    return [r for r in rows if not calculation or {calculation, EVERY} & set(r.calculations)]


def _rules(loaded: Catalogue) -> Iterator[ListedRule]:
    rows: dict[tuple[str, str, str], ListedRule] = {}
    in_part = {plugin.name for plugin in loaded.plugins if plugin.state == IN_PART}
    for provided in loaded.rules:
        origin, asks = _origin(provided.plugin, provided.version), _asks(provided)
        origin += ", loaded in part" if provided.plugin in in_part else ""
        key = (provided.rule.name, asks, origin)
        row = rows.setdefault(key, ListedRule(provided.rule.name, [], asks, origin))
        row.calculations.extend(provided.rule.calculations)
    yield from rows.values()


def _required(loaded: Catalogue) -> Iterator[ListedRule]:
    for asked in loaded.required:
        kinds = ", ".join(asked.rule.kinds)
        origin = _origin(asked.plugin, asked.version)
        says = f"must be checked in every job ({kinds})"
        yield ListedRule(asked.rule.name, [*asked.rule.calculations], says, origin)


def _origin(plugin: str, version: str) -> str:
    """Say where a rule is from: a file and line, or a plugin and its version."""
    if version.startswith("line "):
        return f"{plugin}, {version}"
    return f"plugin {plugin} {version}" if version else plugin


def _asks(provided: ProvidedRule) -> str:
    """Say what a rule asks: the first line of its function's docstring."""
    doc = inspect.getdoc(provided.rule.function)
    return doc.split("\n", 1)[0] if doc else "not said: its function has no docstring"


def rules_text(rows: Sequence[ListedRule], none: str) -> Iterator[str]:
    """Yield a few lines for each rule; `none` is what is said where there is none."""
    if not rows:
        yield from wrap(none)
    for row in rows:
        yield from wrap(row.name)
        yield from wrap(f"{', '.join(row.calculations)}: {row.asks}", "    ", "      ")
        yield from wrap(f"from {row.origin}", "    ")
