"""The catalogue as a command line asks for it, and what is to be said of it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import takewhile
from typing import TYPE_CHECKING, Any

from ..plugging import host
from ..plugging.discovery import SAID
from ..plugging.settings import read

if TYPE_CHECKING:
    from ..engine.declaration import Calculation
    from .usage import Command

HELP = "--help"  # what is asked for in place of a command behind which a name stands


def catalogue(words: Sequence[str]) -> host.Catalogue:
    """Load the plugins that the switches among the words, and the settings, ask for.

    Under strict settings PluginDefect is raised where one did not load.
    """
    return host.build(read(words))


def catalogue_with(name: str, words: Sequence[str] = ()) -> host.Catalogue:
    """Load what it takes to show the inputs of a calculation: nothing outside for a bundled one.

    For another, what the switches among the words ask for.
    """
    bundled = host.build(bundled_only=True)
    return bundled if name in bundled.calculations else catalogue(words)


def leading(words: Sequence[str]) -> list[str]:
    """Return the words before the first option."""
    return list(takewhile(lambda word: not word.startswith("-"), words))


def find(
    loaded: host.Catalogue,
    name: str,
    commands: Mapping[str, Command] | None = None,
    *,
    asked_by: str = "",
) -> Calculation[Any]:
    """Return a calculation by its name.

    For other words OtherWords is raised, with the calculations that fit them; `commands` may be
    meant too, and `asked_by` is the command that was to have the name, or HELP.
    """
    if name in loaded.calculations:
        return loaded.calculations[name].calculation
    from .suggestions import suggested  # dear: it loads every calculation

    raise suggested(loaded, name, commands, asked_by=asked_by)


def warnings(loaded: host.Catalogue) -> list[str]:
    """Return a line for each plugin that was not loaded, or in part."""
    lines = [f"plugin {p} {SAID[p.state]}: {p.reason}" for p in loaded.plugins if p.broken]
    slow = [p for p in loaded.plugins if p.slow]
    return lines + [f"plugin {p} is slow: its import took {p.load_time:.1f} s" for p in slow]
