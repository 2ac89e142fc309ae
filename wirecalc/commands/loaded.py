"""The catalogue as a command line asks for it, and what is to be said of it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from .. import host
from ..declaration import Calculation
from ..discovery import FAILED, IN_PART
from ..errors import BadInput, Problem, did_you_mean
from ..settings import read


def catalogue(words: Sequence[str]) -> host.Catalogue:
    """Load the plugins that the switches among the words, and the settings, ask for.

    Under strict settings PluginDefect is raised where one did not load.
    """
    return host.build(read(words))


def catalogue_with(name: str, words: Sequence[str] = ()) -> host.Catalogue:
    """Load what it takes to describe a calculation: for a bundled one, nothing from outside.

    For another, what the switches among the words ask for.
    """
    bundled = host.build(bundled_only=True)
    return bundled if name in bundled.calculations else catalogue(words)


def find(loaded: host.Catalogue, name: str, commands: Iterable[str] = ()) -> Calculation[Any]:
    """Return a calculation; raises BadInput with the nearest name, also among some commands."""
    if name in loaded.calculations:
        return loaded.calculations[name].calculation
    known = sorted([*loaded.calculations, *commands])
    would_do = did_you_mean(name, known) or "`wirecalc` lists them"
    raise BadInput([Problem("", f"there is no calculation or command {name!r}", would_do)])


def warnings(loaded: host.Catalogue) -> list[str]:
    """Return a line for each plugin that was not loaded, or in part."""
    said = {FAILED: "was not loaded", IN_PART: "was loaded in part"}
    lines = [f"plugin {p} {said[p.state]}: {p.reason}" for p in loaded.plugins if p.broken]
    slow = [p for p in loaded.plugins if p.slow]
    return lines + [f"plugin {p} is slow: its import took {p.load_time:.1f} s" for p in slow]
