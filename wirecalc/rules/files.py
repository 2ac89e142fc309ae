"""A shop's rules file: stricter rules without programming.

    [[rule]]
    name = "pull a quarter more"
    calculations = ["pull"]
    criterion = "pull-out force"
    times = 1.25
    source = "shop sheet 4"

docs/rules.md says what may stand there. The rules become house rules like those of a plugin: they
add criteria and cautions inside every run, and can neither change nor remove any. Nothing that is
wrong in a file is dropped: it makes the findings that it concerns `cannot tell`.
"""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from ..base.errors import BadText, PluginDefect, TableError, did_you_mean, nearest
from ..engine.from_plugins import HouseRule, ProvidedCalculation, ProvidedRule
from ..published.tables import LeftOver, bundled_folder
from ..said.items import Item
from .binding import bind
from .entries import Entry, Wrong, WrongEntry
from .reading_toml import RulesText, read
from .requirements import ANY_KIND, ProvidedRequirement, RequiredChecks, kinds_in
from .shop_folder import check_tables, not_used, refuse_folder
from .wording import asks

Known = Mapping[str, ProvidedCalculation]
ALL = ("*",)


class FromFile(NamedTuple):
    """What rules files come to. `wrong` stands among the rules, as rules that cannot tell.

    `left` is what is not used in their folders of tables.
    """

    rules: list[ProvidedRule]
    required: list[ProvidedRequirement]
    wrong: list[Wrong]
    folders: list[Path]
    left: LeftOver


class Beside(NamedTuple):
    """What there is beside a rules file: folders of tables and required checks, of plugins.

    `used` are files and folders that have a use of their own, where a folder of tables holds them.
    """

    folders: Sequence[Path] = ()
    required: Sequence[ProvidedRequirement] = ()
    used: Sequence[Path] = ()


NOTHING = Beside()


def load(paths: Sequence[Path], known: Known, beside: Beside = NOTHING) -> FromFile:
    """Return the rules of some files; `known` are the calculations that there are.

    Inputs, choices and units are checked when a calculation runs, so that none is loaded here.
    """
    loaded = FromFile([], [], [], [], LeftOver([], []))
    texts = [read(path) for path in dict.fromkeys(paths)]
    for text in texts:
        usable, wrong = _sorted_out(text, known)
        usable = [e for e in usable if not _strange_kinds(e, texts, beside, wrong)]
        for folder in text.folders:
            _take_folder(folder, text, loaded.folders, wrong)
        loaded.wrong.extend(wrong)
        for entry in usable:
            if entry.section == "required":
                asked = RequiredChecks(entry.name, tuple(entry.given["kinds"]), entry.calculations)
                loaded.required.append(ProvidedRequirement(text.file, f"line {entry.line}", asked))
            else:
                loaded.rules.extend(_rules(entry, text.file, known))
        loaded.rules.extend(_cannot_be_used(one, text.file, known) for one in wrong)
    for folder in loaded.folders:
        loaded.left.add(not_used(folder, [*paths, *beside.used, *loaded.folders]))
    return loaded


def check(path: Path, known: Known, beside: Beside = NOTHING) -> list[Wrong]:
    """Return all that is wrong in a rules file, its inputs, choices and units included."""
    text = read(path)
    usable, wrong = _sorted_out(text, known)
    usable = [e for e in usable if not _strange_kinds(e, [text], beside, wrong)]
    for folder in text.folders:
        taken: list[Path] = []
        _take_folder(folder, text, taken, wrong)
        wrong += [
            Wrong(None, text.folders_line, why)
            for f in taken
            for why in _wrong_in(f, [path, *beside.used, *text.folders])
        ]
    for entry in usable:
        for name in entry.calculations if entry.section == "rule" else ():
            try:
                bind(entry, known[name].calculation, text.file)
            except WrongEntry as error:
                wrong.append(Wrong(entry, error.line, error.said, error.would_do))
            except PluginDefect as error:
                wrong.append(Wrong(entry, entry.line, str(error)))
    return sorted(wrong, key=lambda w: w.line)


def _take_folder(folder: Path, text: RulesText, taken: list[Path], wrong: list[Wrong]) -> None:
    """Take a folder of tables, or say what is wrong with it."""
    try:
        refuse_folder(folder)
        if folder not in taken:
            taken.append(folder)
    except TableError as error:
        wrong.append(Wrong(None, text.folders_line, str(error)))


def _wrong_in(folder: Path, used: Sequence[Path]) -> list[str]:
    """Say all that is wrong in a folder of tables, each once."""
    meant = not_used(folder, used).meant
    said, strays = [str(one) for one in meant], tuple(one.file for one in meant)
    return said + [why for why in check_tables(folder, used) if not why.startswith(strays)]


def _sorted_out(text: RulesText, known: Known) -> tuple[list[Entry], list[Wrong]]:
    """Part the entries whose calculations all exist from what is wrong."""
    usable, wrong = [], list(text.wrong)
    for entry in text.entries:
        strange = [name for name in entry.calculations if name not in known]
        for name in strange:
            would_do = did_you_mean(name, sorted(known)) or "`wirecalc` lists them"
            line = entry.line_of("calculations")
            wrong.append(Wrong(entry, line, f"there is no calculation {name!r}", would_do))
        if not strange:
            usable.append(entry)
    named = {kind for entry in text.entries for kind in entry.given.get("kinds", ())}
    for kind in text.new_kinds:
        if kind not in named and not wrong:
            said = f"no [[required]] names the new kind {kind!r}"
            wrong.append(Wrong(None, text.new_kinds_line, said, "name it there, or leave it out"))
    return usable, wrong


def _strange_kinds(
    entry: Entry, texts: Sequence[RulesText], beside: Beside, wrong: list[Wrong]
) -> bool:
    """Say which kinds of job of an entry there are none of: its checks would never be asked for."""
    strange = [kind for kind in entry.given.get("kinds", ()) if kind != ANY_KIND]
    if not strange:
        return False
    folders = [f for text in texts for f in text.folders]
    known = list(dict.fromkeys(kinds_in([bundled_folder(), *beside.folders, *folders])))
    ours = {kind for text in texts for kind in text.new_kinds}
    ours |= {kind for asked in beside.required for kind in asked.rule.kinds}
    strange = [kind for kind in strange if kind not in ours and kind not in known]
    for kind in strange:
        near = nearest(kind, [*known, *ours])
        would_do = f"did you mean {near}?" if near else f"the kinds are {', '.join(known)};"
        would_do += f' one of your own stands above all rules, new_kinds = ["{kind}"]'
        line = entry.line_of("kinds")
        wrong.append(Wrong(entry, line, f"there is no kind of job {kind!r}", would_do))
    return bool(strange)


def _cannot_be_used(wrong: Wrong, file: str, known: Known) -> ProvidedRule:
    """Return a rule that makes every finding that it may concern `cannot tell`."""
    named = wrong.entry.calculations if wrong.entry else ()
    sure = bool(named) and all(name in known for name in named)
    sure = sure and wrong.entry is not None and wrong.entry.section == "rule"

    def refuse(values: Mapping[str, Any], items: Sequence[Item]) -> Iterator[Item]:
        raise BadText(str(wrong))

    refuse.__doc__ = f"cannot be used: {wrong}"
    name = wrong.entry.name if wrong.entry else file
    return ProvidedRule(file, "", HouseRule(name, named if sure else ALL, refuse), of_file=True)


def _rules(entry: Entry, file: str, known: Known) -> Iterator[ProvidedRule]:
    """Yield one house rule a calculation: each has inputs of its own."""
    for name in entry.calculations:
        rule = HouseRule(entry.name, (name,), _function(entry, known[name], file))
        yield ProvidedRule(file, f"line {entry.line}", rule, of_file=True)


def _function(entry: Entry, provided: ProvidedCalculation, file: str) -> Callable[..., Any]:
    @functools.cache
    def bound() -> Callable[..., Iterable[Item]]:
        return bind(entry, provided.calculation, file)

    def function(values: Mapping[str, Any], items: Sequence[Item]) -> Iterable[Item]:
        return bound()(values, items)

    function.__doc__ = asks(entry)
    return function
