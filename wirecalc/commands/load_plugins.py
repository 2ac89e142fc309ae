"""The catalogue as a command line asks for it, and what is to be said of it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Any

from ..base.errors import nearest
from ..engine.declaration import Calculation
from ..output.layout import WIDTH, table
from ..plugging import host
from ..plugging.discovery import SAID
from ..plugging.settings import read

_NEARLY = 0.8  # how like a name a word is that is taken for a slip of the pen


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


def find(loaded: host.Catalogue, name: str, commands: Iterable[str] = ()) -> Calculation[Any]:
    """Return a calculation by its name.

    For another word BadInput is raised: with the nearest name, also among some commands, if it is
    spelled nearly so, else with the calculations that speak of it.
    """
    if name in loaded.calculations:
        return loaded.calculations[name].calculation
    known = sorted([*loaded.calculations, *commands])
    speaking = [] if nearest(name, known, _NEARLY) else _speaking_of(name, loaded)
    instead = "\n".join(["these speak of it:", *(f"  {x}" for x in speaking)]) if speaking else ""
    return loaded.find(name, commands, instead=instead).calculation


def _speaking_of(word: str, loaded: host.Catalogue) -> list[str]:
    """Return a table of the calculations whose name or question has a word, else their part."""
    offered = [provided.offered for provided in loaded.calculations.values()]
    named = [o for o in offered if _has(f"{o.name} {o.question}", word)]
    found = named or [o for o in offered if _has(o.part, word)]
    return table([(o.name, o.question) for o in found], WIDTH - len("wirecalc:   ") - 2)


def _has(text: str, word: str) -> bool:
    """Return whether each of some words, in the singular, begins a word of a text."""
    wanted = [w.removesuffix("s") for w in _words(word) if len(w) > 2]
    return bool(wanted) and all(any(w.startswith(a) for w in _words(text)) for a in wanted)


def _words(text: str) -> list[str]:
    return re.findall(r"\w+", text.casefold())


def warnings(loaded: host.Catalogue) -> list[str]:
    """Return a line for each plugin that was not loaded, or in part."""
    lines = [f"plugin {p} {SAID[p.state]}: {p.reason}" for p in loaded.plugins if p.broken]
    slow = [p for p in loaded.plugins if p.slow]
    return lines + [f"plugin {p} is slow: its import took {p.load_time:.1f} s" for p in slow]
