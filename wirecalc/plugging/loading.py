"""Importing plugins one at a time, so that a broken one takes nothing else down.

pluggy checks the hooks; the loop is ours, because pluggy's own loader stops at the first broken
plugin and skips a duplicate name silently.
"""

from __future__ import annotations

import time
from collections.abc import Iterator, Mapping, Sequence
from inspect import isfunction, isroutine, signature
from types import ModuleType
from typing import Any

import pluggy

from ..base.blame import about, placed
from ..base.errors import DeclarationError, did_you_mean, nearest
from . import hooks
from .discovery import FAILED, IN_PART, LOADED, Candidate, Plugin

SLOW = 1.0  # s; an import that takes longer is named
NO_HOOK = "it implements no hook, so it offers nothing"
API_RANGE = "WIRECALC_API"  # how a module states the versions that it was written for
_MARK = f"{hooks.PROJECT}_impl"  # what pluggy's marker leaves on a function
_HOOKS = sorted(name for name in vars(hooks) if name.startswith(f"{hooks.PROJECT}_"))


def load(candidates: Sequence[Candidate]) -> tuple[pluggy.PluginManager, dict[int, Plugin]]:
    """Import and register plugins; return pluggy's manager, and the plugin of each module's id."""
    manager = pluggy.PluginManager(hooks.PROJECT)
    manager.add_hookspecs(hooks)
    by_module: dict[int, Plugin] = {}
    for candidate in candidates:
        if candidate.plugin.state == LOADED:
            _load(candidate, manager, by_module)
    return manager, by_module


def _load(
    candidate: Candidate, manager: pluggy.PluginManager, by_module: dict[int, Plugin]
) -> None:
    plugin = candidate.plugin
    start = time.perf_counter()
    try:
        module = candidate.load()
        if id(module) in by_module:
            raise DeclarationError(f"its module is that of {by_module[id(module)]}")
        _check_version(module)
        plugin.hooks = sorted(_marked(module, manager))
        manager.register(module, name=str(plugin))
    except KeyboardInterrupt:
        raise
    except BaseException as error:
        plugin.fail(error)
    else:
        by_module[id(module)] = plugin
        idle = [] if manager.get_hookcallers(module) else [NO_HOOK]
        for wrong in [*_unmarked(module)] or idle:
            plugin.fail(wrong, IN_PART)
    plugin.load_time = time.perf_counter() - start
    plugin.slow = plugin.load_time > SLOW and plugin.state != FAILED


def _check_version(module: Any) -> None:
    """Refuse a module that says it was written for other versions of the hooks."""
    said = getattr(module, API_RANGE, None)
    if said is None:  # written for the first version
        said = (1, 1)
    numbers = isinstance(said, tuple) and len(said) == 2 and all(type(n) is int for n in said)
    if not numbers or not 1 <= said[0] <= said[1]:
        raise DeclarationError(
            f"{API_RANGE} is {said!r}; write lowest and highest version: {API_RANGE} = (1, 1)"
        )
    if not said[0] <= hooks.API_VERSION <= said[1]:
        raise DeclarationError(
            f"it supports versions {said[0]} to {said[1]} of the hooks, and this is version "
            f"{hooks.API_VERSION}; install a release of it, or of wirecalc, that fits"
        )


def _marked(module: Any, manager: pluggy.PluginManager) -> Iterator[str]:
    """Yield the hooks that are implemented; refuse one that we do not have, and wrappers.

    A wrapper could alter silently what other plugins say. A hook of a later version may be there
    if it is marked as optional.
    """
    plain = isinstance(module, ModuleType)  # pluggy's own look at a name is dear
    names = [n for n, v in vars(module).items() if isroutine(v)] if plain else dir(module)
    for name in names:
        marks = manager.parse_hookimpl_opts(module, name)
        if marks is None:
            continue
        hook, function = marks["specname"] or name, getattr(module, name)
        if wrong := _wrong_in(hook, function, marks):
            raise about(function, DeclarationError(wrong))
        if hook in _HOOKS:
            yield hook


def _wrong_in(hook: str, function: Any, marks: Mapping[str, Any]) -> str:
    """Say what is wrong with a function that is marked as a hook; empty where nothing is."""
    if marks["wrapper"] or marks["hookwrapper"]:
        return f"{hook} wraps a hook; only plain hooks are called"
    if hook not in _HOOKS and not marks["optionalhook"]:
        return f"{hook} is no hook; {did_you_mean(hook, _HOOKS)}"
    takes = [*signature(function).parameters] if hook in _HOOKS else []
    if takes:
        return f"{hook} asks for {', '.join(takes)}, and it is given nothing; write {hook}()"
    return ""


def _unmarked(module: Any) -> Iterator[str]:
    """Say which functions look like hooks and are none; pluggy ignores them without a word.

    Names that begin with the project's are for hooks only; another is one that is nearly a hook's.
    """
    for name, value in sorted(vars(module).items()) if isinstance(module, ModuleType) else ():
        if not name.startswith("wire") or not isfunction(value) or hasattr(value, _MARK):
            continue
        guess = nearest(name, _HOOKS, alike=0.9)
        if name in _HOOKS:
            wrong = f"{name} is not marked, so it is not used; write @hookimpl above it"
            yield f"{wrong}{placed(None, value)}"
        elif guess or name.startswith(f"{hooks.PROJECT}_"):
            guess = did_you_mean(name, _HOOKS)
            yield f"{name} is no hook" + (f"; {guess}" if guess else "") + placed(None, value)
