"""What an entry of a rules file asks of one calculation: its conditions and its criterion.

Everything here may raise BadText: a text that the input cannot have, a unit that does not fit, a
factor that would loosen. The core turns it into a `cannot tell` with that reason.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from ..base.errors import BadText, did_you_mean
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.trade_names import abbreviations, candidates
from ..published.sources import Source
from ..said.criteria import Criterion, at_least, at_most, cannot_tell, requires
from ..said.items import Figure, Item
from ..said.verdicts import at_or_above, at_or_below
from ..typed.counts import Count
from ..typed.quantity_kinds import Nameplate, Reading
from ..typed.wires import Wire
from ..typed.word_kinds import OneOf, WireKind, Words, YesNo
from .entries import BOUNDS, Entry, at_key
from .wording import amount

Judge = Callable[[Mapping[str, Any], Sequence[Item]], Criterion]
Test = Callable[[Any], bool]
_NUMBERS = (Reading, Nameplate, Count, WireKind)
_NAMES = (OneOf, Words, YesNo, Count, WireKind)
_SAME_AREA = 0.03  # 16x30 AWG is an 18 AWG wire; two sizes of one system differ by 12 % or more


def declared(calc: Calculation[Any], name: str) -> Input:
    """Return an input of a calculation, also by a plate's abbreviation of it; raises BadText."""
    names = [i.name for i in calc.inputs]
    plain = abbreviations(names).get(name.casefold(), name)
    for one in calc.inputs:
        if one.name == plain:
            return one
    if now := calc.name_now(name):
        raise BadText(f"{calc.name}: {name} {now}")
    meant = " or ".join(candidates(name, names))
    near = f"write {meant}" if meant else did_you_mean(name, names)
    would_do = near or f"it has {', '.join(names)}"
    raise BadText(f"{calc.name} has no input {name!r}", would_do)


def condition(of: Input, wanted: object) -> Test:
    """Return the test of one condition: does it hold for a value, or for one of a list?"""
    if isinstance(wanted, dict):
        (sense, given), *_ = wanted.items()
        limit = _limit_of(of, given)
        keeps = _keeper(sense)
        return lambda value: any(keeps(_number(v), limit) for v in _each(value))
    names = [wanted] if isinstance(wanted, str) else wanted
    test = _one_of(of, names if isinstance(names, list) else [])
    return lambda value: any(test(v) for v in _each(value))


def judge(entry: Entry, calc: Calculation[Any], source: Source) -> Judge:
    """Return what judges one run by an entry; raises BadText where the entry cannot be used."""
    given = entry.given
    if "criterion" in given:
        return lambda values, items: _of_criterion(entry, items, source)
    if "figure" in given:
        return lambda values, items: _of_figure(entry, items, source)
    if "input" in given:
        with at_key(entry, "input"):
            of = declared(calc, given["input"])
        with at_key(entry, entry.asked):
            return _of_input(entry, of, source)
    says = given.get("why", f"the shop does not use {calc.name}")
    return lambda values, items: requires(entry.name, False, says=says, **_about(entry, source))


def _about(entry: Entry, source: Source) -> dict[str, Any]:
    given = entry.given
    advisory = given.get("advisory", False)
    return {"source": source, "action": given.get("action", ""), "advisory": advisory}


def _bound(entry: Entry) -> tuple[str, Any]:
    return entry.asked, entry.given[entry.asked]


def _keeper(sense: str) -> Callable[[float, float], bool]:
    if sense == "at_least":
        return at_or_above
    return at_or_below


# ---- criteria and figures of a run --------------------------------------------------------


def _of_criterion(entry: Entry, items: Sequence[Item], source: Source) -> Criterion:
    wanted = entry.given["criterion"]
    found = {i.name: i for i in items if isinstance(i, Criterion)}
    if wanted not in found:
        return _absent(entry, "criterion", wanted, list(found))
    own = found[wanted]
    if own.sense == "cannot tell":
        return cannot_tell(
            entry.name, f"{wanted}: {own.says}", measure=own.action, needs=own.needs, source=source
        )
    if own.actual is None or own.limit is None:
        raise BadText(f"{wanted!r} has no number to be stricter with")
    sense, given = _bound(entry)
    if sense == "times":
        limit = _times(own, given)
    else:
        if sense.replace("_", " ") != own.sense:
            would_do = f"write {own.sense.replace(' ', '_')}"
            raise BadText(f"{wanted!r} is a limit {own.sense!r}, and {sense} was written", would_do)
        limit = amount(given, own.unit)
    about = _about(entry, source) | {"says": entry.given.get("why", "")}
    about["action"] = about["action"] or own.action
    make = at_least if own.sense == "at least" else at_most
    return make(entry.name, own.actual, limit, own.unit, band=own.band, better=own.better, **about)


def _times(own: Criterion, factor: float) -> float:
    """Return a limit times a factor; raises BadText where that would be milder or says nothing."""
    limit = own.limit or 0.0
    least = own.sense == "at least"
    if own.unit in ("C", "F") or limit <= 0:
        would_do = f"write {'at_least' if least else 'at_most'} and the limit itself"
        raise BadText(f"a factor says nothing of a limit of {limit:g} {own.unit}", would_do)
    if (factor > 1) != least:
        would_do = f"write a number {'over' if least else 'under'} 1"
        raise BadText(f"times = {factor:g} would loosen a limit {own.sense!r}", would_do)
    return limit * factor


def _of_figure(entry: Entry, items: Sequence[Item], source: Source) -> Criterion:
    wanted = entry.given["figure"]
    found = {i.name: i for i in items if isinstance(i, Figure)}
    if wanted not in found:
        return _absent(entry, "figure", wanted, list(found))
    own = found[wanted]
    sense, given = _bound(entry)
    make = at_least if sense == "at_least" else at_most
    limit = amount(given, own.unit)
    about = _about(entry, source) | {"says": entry.given.get("why", "")}
    return make(entry.name, own.value, limit, own.unit, band=own.band, **about)


def _absent(entry: Entry, what: str, wanted: str, known: Sequence[str]) -> Criterion:
    _refuse_slip(what, wanted, known)
    near = did_you_mean(wanted, known)
    says = f"this run has no {what} {wanted!r}" + (f" ({near})" if near else "")
    return cannot_tell(
        entry.name, says, measure="give what it needs, or have the shop mend its rule"
    )


def _refuse_slip(what: str, wanted: str, known: Sequence[str]) -> None:
    """Raise BadText where a name only differs in case, spaces or hyphens from one that is there.

    A rule that may be left unjudged (`optional`) would be lost with it.
    """
    for name in known:
        if _letters(name) == _letters(wanted):
            raise BadText(f"this run has no {what} {wanted!r}", f"did you mean {name}?")


def _letters(name: str) -> str:
    return "".join(c for c in name.casefold() if c.isalnum())


# ---- inputs -------------------------------------------------------------------------------


def _of_input(entry: Entry, of: Input, source: Source) -> Judge:
    sense, given = _bound(entry)
    about = _about(entry, source)
    why = entry.given.get("why", "")
    if sense in BOUNDS:
        limit, keep = _limit_of(of, given), min if sense == "at_least" else max
        make = at_least if sense == "at_least" else at_most
        unit = "cmil" if isinstance(of.kind, WireKind) else of.kind.unit
        says = f"{given} is asked" if unit == "cmil" else ""
        said = "; ".join(part for part in (says, why) if part)

        def by_number(values: Mapping[str, Any], items: Sequence[Item]) -> Criterion:
            numbers = [_number(v) for v in _each(values[of.name])]
            return make(entry.name, keep(numbers), limit, unit, says=said, **about)

        return _unless_left_out(entry, of, by_number)
    test, wanted = _one_of(of, given), ", ".join(given)
    allowed = sense == "one_of"

    def by_name(values: Mapping[str, Any], items: Sequence[Item]) -> Criterion:
        odd = [of.kind.show(v) for v in _each(values[of.name]) if test(v) is not allowed]
        named = f"{of.name} {', '.join(odd)}"
        says = f"{named} is not one of {wanted}" if allowed else f"{named} is not to be used"
        said = "; ".join(part for part in (says, why) if part)
        return requires(entry.name, not odd, says=said, **about)

    return _unless_left_out(entry, of, by_name)


def _unless_left_out(entry: Entry, of: Input, judge_it: Judge) -> Judge:
    def judge_given(values: Mapping[str, Any], items: Sequence[Item]) -> Criterion:
        if values[of.name] is not None:
            return judge_it(values, items)
        return cannot_tell(
            entry.name,
            f"{of.name} was not given",
            measure=f"find out {of.kind.text} ({of.kind.span})",
            needs=(of.name,),
        )

    return judge_given


def _each(value: Any) -> list[Any]:
    return value if isinstance(value, list) else [value]


def _number(value: Any) -> float:
    return value.area_cmil if isinstance(value, Wire) else float(value)


def _limit_of(of: Input, given: object) -> float:
    if not isinstance(of.kind, _NUMBERS):
        raise BadText(f"{of.name} has no size to be limited", "write one_of or not_one_of")
    read = of.kind.read(given)
    if read.low is not None:
        raise BadText(f"{given!r}: a limit has no meter error", "drop the ± part")
    return _number(read.value)


def _one_of(of: Input, names: Sequence[str]) -> Test:
    if not isinstance(of.kind, _NAMES):
        raise BadText(f"{of.name} is no choice", "write at_least or at_most")
    wanted = [of.kind.read(name).value for name in names]
    return lambda value: any(_same(value, one) for one in wanted)


def _same(value: Any, wanted: Any) -> bool:
    """Whether a value is the wanted one; of a wire what the rule does not say is not compared."""
    if isinstance(value, Wire):
        same_size = abs(value.area_cmil / wanted.area_cmil - 1) < _SAME_AREA
        same_build = "stranded" in wanted.assumed or value.stranded == wanted.stranded
        same_metal = "copper" in wanted.assumed or value.metal == wanted.metal
        return bool(same_size and same_build and same_metal)
    if isinstance(value, str):
        return bool(value.casefold() == wanted.casefold())
    return bool(value == wanted)
