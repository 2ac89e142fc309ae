"""A shop's stricter tables in a run: the calculation runs a second time, by them.

The second run only adds: of its criteria those that are judged otherwise than in the first stand
beside the published ones, with origin `house`; a figure or an answer that comes out otherwise
stands beside the first one. So no calculation has to know of it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from ..base.errors import PluginDefect
from ..published.tables import Unused, instead, shop_is_there, unused, watched
from ..said.criteria import Criterion, Origin, cannot_tell
from ..said.items import Answer, Figure, Item, NotChecked
from .band import Given

if TYPE_CHECKING:
    from ..published.shop_tables import Overlaid

MARK = "shop tables"  # keeps these criteria apart from the calculation's own
MEND = "have the shop mend it, or take it away"


class Tried(NamedTuple):
    """The items of one run, and those of the same run by a shop's stricter tables, if any."""

    items: list[Item]
    again: list[Item]
    shops: Sequence[Overlaid] = ()
    in_doubt: Sequence[Unused] = ()


def twice(run: Callable[[Mapping[str, Any]], list[Item]], arguments: Mapping[str, Any]) -> Tried:
    """Run a calculation; where a shop has stricter rows for a table that it reads, by them too."""
    if not shop_is_there():
        items = run(arguments)
        return Tried(items, items)
    from ..published.shop_tables import over

    spare = {name: list(v) if isinstance(v, list) else v for name, v in arguments.items()}
    with watched() as asked:
        items = run(arguments)
    shops = over(asked)
    in_doubt = [one for one in unused() if not one.tables or asked.intersection(one.tables)]
    if not any(shop.rows for shop in shops):
        return Tried(items, items, shops, in_doubt)
    try:
        with instead(shop.table for shop in shops):
            again = run(spare)
    except PluginDefect as error:
        again = [*items, cannot_tell("the shop's stricter tables", str(error))]
    return Tried(items, again, shops, in_doubt)


def from_shop_tables(tried: Sequence[Tried]) -> list[list[Given]]:
    """Return what a shop's tables add to each of the runs of a band.

    What they make otherwise in one run is given in all, so that it can be merged.
    """
    if not any(one.again is not one.items or one.shops or one.in_doubt for one in tried):
        return [[] for _ in tried]
    stricter = {key for one in tried for key in _otherwise(one)}
    by = ", ".join(dict.fromkeys(name for one in tried for shop in one.shops for name in shop.by))
    return [[*_added(one, stricter, by)] for one in tried]


Key = tuple[type[Item], str]


def _named(items: Sequence[Item]) -> dict[Key, Criterion | Figure | Answer]:
    return {(type(i), i.name): i for i in items if isinstance(i, Criterion | Figure | Answer)}


def _otherwise(one: Tried) -> Iterator[Key]:
    if one.again is one.items:  # no table of a shop came into it
        return
    own = _named(one.items)
    for key, item in _named(one.again).items():
        if key not in own or _said_by(own[key]) != _said_by(item):
            yield key


def _said_by(item: Criterion | Figure | Answer) -> tuple[object, ...]:
    if isinstance(item, Figure):
        return (item.value, item.unit)
    if isinstance(item, Answer):
        return (None if item.in_numbers else item.text,)
    numbers = (item.actual, item.limit, item.caution_limit)
    return (item.sense, *numbers, item.holds, item.advisory, item.verdict)


def _added(one: Tried, stricter: set[Key], by: str) -> Iterator[Given]:
    for key, item in _named(one.again).items() if stricter else ():
        if key not in stricter:
            continue
        if isinstance(item, Criterion):
            yield Given(item._replace(origin=Origin.HOUSE), by, MARK)
        else:
            yield Given(item._replace(name=f"{item.name}, by the shop's tables"), by, MARK)
    for shop in one.shops:
        for why in shop.milder:
            yield Given(NotChecked("a row of the shop, not used", why), by, MARK)
        if shop.lost:
            name, why = f"the shop's {shop.table.name}", "; ".join(shop.lost)
            yield Given(cannot_tell(name, why, measure=MEND), "shop", MARK)
    for left in one.in_doubt:
        name = f"the shop's {left.file}"
        yield Given(cannot_tell(name, left.why, measure=MEND), "shop", MARK)
