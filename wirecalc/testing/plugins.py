"""Checking a whole plugin: its hooks, calculations, house rules, tables."""

from __future__ import annotations

import inspect
from collections.abc import Iterator, Mapping

from ..base.errors import BadInput, did_you_mean, nearest
from ..engine.declaration import Calculation
from ..plugging import hooks
from ..plugging.host import Catalogue
from ..plugging.loading import NO_HOOK
from ..published import tables
from ..rules.shop_folder import check_tables
from .calculations import Given, check_calculation
from .sets import name_of, plugin_set

HOOKS = tuple(sorted(n for n, f in vars(hooks).items() if hasattr(f, f"{hooks.PROJECT}_spec")))


def check_plugin(plugin: object, given: Mapping[str, Given] | None = None) -> list[str]:
    """Say where a plugin breaks the contract; nothing where it keeps to it.

    Checks its hooks, how it loads beside the bundled plugins, every calculation (see
    `check_calculation`; `given` has inputs by the name of a calculation whose example cannot
    run), every house rule on the examples of its calculations, and its folders of tables.
    """
    wrong = check_hooks(plugin)
    if wrong:  # what it offers depends on them
        return wrong
    with plugin_set(plugin) as catalogue:
        name = name_of(plugin)
        (own,) = (p for p in catalogue.plugins if p.name == name and not p.bundled)
        if own.state != "loaded":
            wrong.append(f"it is {own.state}: {own.reason}")
        for folder in tables.folders()[1:]:
            wrong += check_tables(folder)
        wrong += _rules(catalogue, name)
        for calculation in own.calculations:
            offered = catalogue.calculations[calculation].offered
            wrong += check_calculation(offered, (given or {}).get(calculation))
    return wrong


def check_hooks(plugin: object) -> list[str]:
    """Say which functions of a plugin look like a hook and are none; nothing where all are.

    Nobody calls a hook without its mark `@hookimpl`, nor a function whose name is nearly one.
    """
    wrong = []
    any_marked = False
    for name, member in inspect.getmembers(plugin, callable):
        if isinstance(member, Calculation):  # whatever it is called
            continue
        options = getattr(member, f"{hooks.PROJECT}_impl", None)
        any_marked = any_marked or options is not None
        hook = (options or {}).get("specname") or name
        if options and hook not in HOOKS:
            wrong.append(f"{name}: there is no such hook; {did_you_mean(hook, HOOKS)}")
        elif options and (options["wrapper"] or options["hookwrapper"]):
            wrong.append(f"{name}: a hook that wraps the others' is not taken; return your own")
        elif options is None and name in HOOKS:
            wrong.append(f"{name} lacks its mark, so nobody calls it; write @hookimpl above it")
        elif options is None and name.startswith("wirecalc") and nearest(name, HOOKS):
            wrong.append(f"{name} is no hook, so nobody calls it; {did_you_mean(name, HOOKS)}")
    return wrong if any_marked or wrong else [NO_HOOK]


def _rules(catalogue: Catalogue, plugin: str) -> Iterator[str]:
    """Check house rules and required checks: what they name is there, and no rule fails."""
    known = sorted(catalogue.calculations)
    rules = [(p.rule.name, p.rule.calculations) for p in catalogue.rules]
    rules += [(p.rule.name, p.rule.calculations) for p in catalogue.required]
    for rule, calculations in rules:
        for name in calculations:
            if name != "*" and name not in known:
                would_do = did_you_mean(name, known) or "`wirecalc` lists them"
                yield f"rule {rule}: there is no calculation {name!r}; {would_do}"
            elif name != "*":
                yield from _rule_on_example(catalogue, plugin, rule, name)


def _rule_on_example(
    catalogue: Catalogue, plugin: str, rule: str, calculation: str
) -> Iterator[str]:
    calc = catalogue.find(calculation).calculation
    try:
        finding = catalogue.run(calculation, calc.example_inputs)
    except BadInput:  # an example with a file
        return
    for judged in finding.criteria:
        if judged.provider == plugin and judged.criterion.name == f"house rule {rule}":
            yield f"{judged.reason} (on the example of {calculation})"
