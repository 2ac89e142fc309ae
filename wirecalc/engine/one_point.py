"""One run, at one point of the band: what a calculation and the house rules yield there."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from types import GeneratorType
from typing import Any

from ..base.blame import at_yield
from ..said.criteria import Criterion, Origin, cannot_tell
from ..said.item_checks import check
from ..said.items import Answer, Caution, Figure, Item, Listing, NotChecked
from .band import Given, Run
from .from_plugins import ProvidedRule, RunValues

MOST_ITEMS = 10_000  # a generator that yields more is taken for a runaway
_NAMED = (Figure, Criterion, Answer)  # each of a run has a name of its own


def with_rules(
    plugin: str,
    values: Mapping[str, Any],
    items: Sequence[Item],
    rules: Sequence[ProvidedRule],
) -> Run:
    """Return the items of a run with those of the house rules, and whose each is."""
    given = [Given(item, plugin) for item in items]
    for number, rule in enumerate(rules):  # two of one name are never merged to one criterion
        given += _house_items(rule, values, items, f"{number} {rule.rule.name}")
    return given


def copied(values: Mapping[str, Any]) -> dict[str, Any]:
    """Copy the values of a run, so that nothing that is given them can change another run."""
    return {name: list(v) if type(v) is list else v for name, v in values.items()}


def _house_items(
    provided: ProvidedRule, values: Mapping[str, Any], items: Sequence[Item], key: str
) -> list[Given]:
    """Run one house rule; one that raises makes the finding `cannot tell`, it never passes."""
    try:
        given = RunValues(copied(values), provided.left_out, provided.renamed)
        shown = tuple(i.whole() if isinstance(i, Listing) else i for i in items)
        own = taken(provided.rule.function(given, shown))
        wrong = [i for i in own if not isinstance(i, Criterion | Caution | NotChecked)]
        if wrong:
            raise TypeError(f"it yields a {type(wrong[0]).__name__}; criteria and cautions only")
    except KeyboardInterrupt:
        raise
    except BaseException as error:
        own = [
            cannot_tell(
                f"house rule {provided.rule.name}",
                provided.failed(error),
                measure="have the shop mend its rule",
            )
        ]
    marked = [i._replace(origin=Origin.HOUSE) if isinstance(i, Criterion) else i for i in own]
    return [Given(item, provided.plugin, key) for item in marked]


def taken(stream: Iterable[Item]) -> list[Item]:
    """Return what a calculation or a rule yields; what is wrong with it is said with its place."""
    if type(stream) is not GeneratorType and (stream is None or isinstance(stream, Item)):
        kind = "None" if stream is None else f"a {type(stream).__name__}"
        raise TypeError(f"it returns {kind}; write yield in front of each thing that it finds")
    items: list[Item] = []
    names: set[tuple[type, str]] = set()
    for item in stream:
        try:
            check(item)
            if isinstance(item, _NAMED):
                key = type(item), item.name
                if key in names:
                    raise ValueError(f"it yields {item.name!r} twice; give each a name of its own")
                names.add(key)
            items.append(item)
            if len(items) > MOST_ITEMS:
                raise ValueError(f"it yields more than {MOST_ITEMS} items")
        except Exception as error:
            at_yield(error, stream)
            raise
    return items
