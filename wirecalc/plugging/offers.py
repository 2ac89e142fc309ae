"""What the plugins offer through the hooks: checked, sorted, and taken one plugin at a time.

A plugin that raises, or returns what it must not, loses only itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from inspect import isfunction
from itertools import islice
from pathlib import Path
from typing import Any, NamedTuple

import pluggy

from ..base.errors import DeclarationError, TableError, did_you_mean, nearest
from ..base.plain_texts import LONGEST_NAME, wrong_text
from ..engine.declaration import Calculation
from ..engine.deferred_calculation import Deferred, deferred
from ..engine.from_plugins import EVERY, HouseRule, ProvidedCalculation, ProvidedRule
from ..engine.one_point import MOST_ITEMS
from ..engine.reserved import check_name
from ..published.tables import Unused, bundled_folder
from ..rules.requirements import ANY_KIND, ProvidedRequirement, RequiredChecks, kinds_in
from ..said.item_checks import check as check_item
from ..said.items import Caution
from .discovery import FOLDER, IN_PART, Plugin

_SLIP = 0.85  # how like a listed kind of job one is that is taken for a slip of the pen


class Offered(NamedTuple):
    """What all plugins provide together."""

    calculations: dict[str, ProvidedCalculation]
    rules: list[ProvidedRule]
    required: list[ProvidedRequirement]
    folders: list[Path]
    cautions: list[Caution]
    own_folders: list[Path]  # those of them that a file of the trusted folder gives
    unused: list[Unused]


def by_name(provided: ProvidedRule | ProvidedRequirement) -> tuple[str, str]:
    """Return what rules are sorted by, so that the order of plugins never matters."""
    return provided.plugin, provided.rule.name


def collect(manager: pluggy.PluginManager, by_module: dict[int, Plugin]) -> Offered:
    """Ask every plugin through every hook; what is wrong is said in the record of its plugin."""
    found = list(_results(manager.hook.wirecalc_tables, by_module, Path))
    folders: list[Path] = []
    unused: list[Unused] = []
    for plugin, path in found:
        unused += _damaged(plugin, path, folders)
        folders.append(path)
    own_folders = [path for plugin, path in found if plugin.origin == FOLDER]
    cautions = [own for _, own in _results(manager.hook.wirecalc_cautions, by_module, Caution)]
    offers: dict[str, list[tuple[Plugin, Calculation[Any] | Deferred]]] = {}
    wanted = (Calculation, Deferred)
    for plugin, calc in _results(manager.hook.wirecalc_calculations, by_module, *wanted):
        offers.setdefault(calc.name, []).append((plugin, calc))
    accepted = {n: c for n in sorted(offers) for c in _accepted(n, offers[n])}
    offered = Offered(accepted, [], [], folders, cautions, own_folders, unused)
    _rules(offered, manager, by_module)
    return offered


def _rules(offered: Offered, manager: pluggy.PluginManager, by_module: dict[int, Plugin]) -> None:
    known = sorted(offered.calculations)
    wanted = (HouseRule, RequiredChecks)
    for plugin, rule in _results(manager.hook.wirecalc_house_rules, by_module, *wanted):
        plugin.house_rules.append(rule.name)
        _name_idle(plugin, rule, known)
        if isinstance(rule, RequiredChecks):
            _name_strange(plugin, rule, offered.folders)
            offered.required.append(ProvidedRequirement(plugin.name, plugin.version, rule))
        else:
            offered.rules.append(ProvidedRule(plugin.name, plugin.version, rule))
    offered.rules.sort(key=by_name)
    offered.required.sort(key=by_name)


def _name_idle(plugin: Plugin, rule: HouseRule | RequiredChecks, known: list[str]) -> None:
    """Say which calculations a rule is for that are not there: it would go unused in silence."""
    for name in rule.calculations:
        if name not in known and name != EVERY:
            wrong = f"its rule {rule.name} is for {name}, which is no calculation"
            guess = did_you_mean(name, known)
            wrong = f"{wrong}; {guess or '`wirecalc` lists them'}"
            plugin.fail(wrong, IN_PART, function=getattr(rule, "function", None))


def _name_strange(plugin: Plugin, asked: RequiredChecks, folders: Sequence[Path]) -> None:
    """Say which kinds of job are nearly listed ones: the checks would not be asked for then."""
    known = dict.fromkeys(kinds_in([bundled_folder(), *folders]))
    listed = {k.casefold() for k in (*known, ANY_KIND)}
    for kind in asked.kinds:
        near = nearest(kind, list(known), _SLIP) if kind.casefold() not in listed else ""
        if near:
            wrong = f"its rule {asked.name} is for jobs of kind {kind}, which is not listed"
            would_do = f"did you mean {near}? A kind of your own stands in a table job-kinds-NAME"
            plugin.fail(f"{wrong}; {would_do}", IN_PART)


def _results(
    hook: Any, by_module: dict[int, Plugin], *wanted: type
) -> Iterator[tuple[Plugin, Any]]:
    """Yield what each implementation of a hook returns, less what cannot be used.

    A hook that raises loses only itself, and of what it returns each is judged by itself.
    """
    for impl in hook.get_hookimpls():
        plugin = by_module[id(impl.plugin)]
        try:
            results = _listed(hook.name, impl.function(), wanted)
        except KeyboardInterrupt:
            raise
        except BaseException as error:
            plugin.fail(error, IN_PART, function=impl.function)
            continue
        for result in results:
            try:
                _check(result, plugin, hook.name, wanted)
            except KeyboardInterrupt:
                raise
            except BaseException as error:
                about = result if isfunction(result) else getattr(result, "function", None)
                plugin.fail(error, IN_PART, function=about or impl.function)
            else:
                yield plugin, result


def _listed(hook: str, offered: Any, wanted: tuple[type, ...]) -> list[Any]:
    """Return what a hook returned as a list; raises where it is none, or has no end."""
    if offered is None:  # what it made may be lost with a forgotten return
        raise TypeError(f"{hook} returned None; return a list, [] for nothing")
    if isinstance(offered, (str, *wanted)):
        kind = type(offered).__name__
        raise TypeError(f"{hook} returned one {kind}; return a list of them, with [ ] around it")
    results = list(islice(offered, MOST_ITEMS + 1))
    if len(results) > MOST_ITEMS:
        raise ValueError(f"{hook} returned more than {MOST_ITEMS} records")
    return results


def _check(result: Any, plugin: Plugin, hook: str, wanted: tuple[type, ...]) -> None:
    """Refuse what is no record of a hook, or is filled in wrongly, whoever made it, and how."""
    if isfunction(result):
        would_do = "; write @calculation(...) above it" if Calculation in wanted else ""
        said = f"{hook} returned the function {result.__name__}"
        raise TypeError(f"{said}, which is no {wanted[0].__name__}{would_do}")
    if not isinstance(result, wanted):
        raise TypeError(f"{hook} returned {result!r}, which is no {wanted[0].__name__}")
    if isinstance(result, HouseRule | RequiredChecks):
        _check_rule(result)
    elif isinstance(result, Path):
        _check_folder(result)
    elif isinstance(result, Caution):
        check_item(result)
    elif isinstance(result, Deferred) and not plugin.bundled:
        deferred(result.target, part=result.part, question=result.question)
    elif isinstance(result, Calculation) and not plugin.bundled:
        check_name(result.name)
        result.inputs  # noqa: B018  refuses a signature that does not declare all


def _check_rule(rule: HouseRule | RequiredChecks) -> None:
    """Refuse a record that is filled in wrongly, such as one text where texts belong."""
    for part, value in rule._asdict().items():
        for text in value if isinstance(value, tuple | list) else [value]:
            if isinstance(text, str) and (wrong := wrong_text(text, LONGEST_NAME)):
                raise DeclarationError(f"{part} of a {type(rule).__name__} {wrong}")
        if part == "name":
            right = isinstance(value, str) and bool(value)
        elif part == "function":
            right = callable(value)
        else:
            right = isinstance(value, tuple | list) and all(isinstance(n, str) for n in value)
        if not right:
            verb = "are" if part.endswith("s") else "is"
            wrong = f"rule {rule.name!r}: its {part} {verb} {value!r}"
            would_do = f"; write ({value!r},)" if isinstance(value, str) and verb == "are" else ""
            raise DeclarationError(wrong + would_do)


def _check_folder(folder: Path) -> None:
    """Refuse a folder that is not there, or that would replace a bundled table."""
    from ..rules.shop_folder import refuse_folder  # only where a folder is added

    if not folder.is_absolute():
        wrong = f"its folder of tables, {folder}, depends on the current directory"
        raise TableError(f'{wrong}; write Path(__file__).parent / "tables"')
    refuse_folder(folder)


def _damaged(plugin: Plugin, folder: Path, before: Sequence[Path]) -> list[Unused]:
    """Return what in a folder of tables leaves in doubt what reads a published table.

    Where nobody knows which table it is for, the plugin is named, as one that failed is, and so
    are tables that folders before have too. The folder of a shop's own plugin is looked through
    with all others of the shop.
    """
    from ..rules.shop_folder import damaged, hidden

    for why in hidden(folder, before):
        plugin.fail(why, IN_PART)
    found = damaged(folder) if plugin.origin != FOLDER else []
    for one in found:
        plugin.fail(str(one), IN_PART)
    return [one for one in found if one.tables]


def _accepted(
    name: str, offers: list[tuple[Plugin, Calculation[Any] | Deferred]]
) -> Iterator[ProvidedCalculation]:
    """Yield the calculation of a name; a bundled name can't be taken, a clash is refused."""
    bundled = [o for o in offers if o[0].bundled]
    chosen = bundled or offers
    if len(chosen) == 1:
        plugin, calc = chosen[0]
        plugin.calculations.append(name)
        yield ProvidedCalculation(plugin.name, plugin.version, calc)
    for plugin in {id(o[0]): o[0] for o in offers}.values():
        if bundled and not plugin.bundled:
            plugin.fail(f"the name {name} is a bundled calculation's", IN_PART)
        elif len(chosen) > 1:
            others = ", ".join(str(o[0]) for o in offers if o[0] is not plugin)
            claimed = f"also claimed by {others}" if others else "offered twice"
            plugin.fail(f"the name {name} is {claimed}", IN_PART)
