"""What it means that an optional input was left out: a word of its declaration.

    breaker: Annotated[float | None, BREAKER, asked("it protects the wire")] = None
    cord: Annotated[Wire | None, "wire of the cord", may_be_absent("no cord")] = None
    insulation_class: Annotated[float, WIRE_CLASS, assumed("75 C", "90 C", source=NEC)] = 60.0

An input may have several words, each with the condition under which it counts; the first whose
condition holds is taken, and where none does the input means nothing in that run.
"""

from __future__ import annotations

import functools
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from enum import StrEnum
from typing import TYPE_CHECKING, Any, NamedTuple

from ..base.errors import DeclarationError

if TYPE_CHECKING:
    from ..published.sources import Source


class Word(StrEnum):
    """What leaving an input out comes to."""

    ASKED = "asked"
    MAY_BE_ABSENT = "may be absent"
    ASSUMED = "assumed"
    EXTRA = "extra"
    INSTEAD_OF = "instead of"
    SETTING = "setting"


class LeftOut(NamedTuple):
    """A word, what goes with it, and when it counts."""

    word: Word
    why: str = ""
    others: tuple[str, ...] = ()  # assumed: texts of plausible values; instead of: names
    source: Source | None = None
    when: str = ""

    def counts(self, values: Mapping[str, Any]) -> bool:
        """Whether its condition holds for the values of a run."""
        return not self.when or all(term.holds(values) for term in terms(self.when))


class Term(NamedTuple):
    """One term of a condition: an input is given, or has one of some values, or just not that."""

    name: str
    wanted: tuple[str, ...]
    negated: bool

    def holds(self, values: Mapping[str, Any]) -> bool:
        """Whether the values of a run are so."""
        value = values.get(self.name)
        if not self.wanted:
            return (value is not None) != self.negated
        return (plain_text(value) in self.wanted) != self.negated

    def spelled(self, spell: Callable[[str], str]) -> str:
        """The term in words, its input written by `spell`."""
        name = spell(self.name)
        if not self.wanted:
            return f"{name} is {'not ' if self.negated else ''}given"
        *most, last = self.wanted
        values = f"{', '.join(most)} or {last}" if most else last
        return f"{name} is {'not ' if self.negated else ''}{values}"


_TERM = re.compile(r"(not )?([a-z][a-z0-9_]*)(?:(!?=)(.+))?")


@functools.cache
def terms(when: str) -> tuple[Term, ...]:
    """Return the terms of a condition such as `wire and style=closed|open and not cord`."""
    return tuple(_terms(when))


def _terms(when: str) -> Iterator[Term]:
    for text in when.split(" and ") if when else ():
        found = _TERM.fullmatch(text)
        if found is None or (found[1] and found[3]):
            raise DeclarationError(f"{text!r} is no condition; such as cord, not cord, style=open")
        wanted = tuple(found[4].split("|")) if found[4] else ()
        yield Term(found[2], wanted, bool(found[1]) or found[3] == "!=")


def plain_text(value: object) -> str:
    """Write the value of an input as it is compared: yes and no for a yes/no."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)


def asked(why: str = "", *, when: str = "") -> LeftOut:
    """The check belongs to every such job: left out is cannot tell, as `unknown` is.

    `why` is said with it; `when` is the condition under which this word counts, as for all words.
    """
    return LeftOut(Word.ASKED, why, when=when)


def may_be_absent(says: str, *, when: str = "") -> LeftOut:
    """Left out means that it is not there; `says` is what the answer then assumes: "no cord".

    `when` is the condition under which this word counts.
    """
    return LeftOut(Word.MAY_BE_ABSENT, _needed(says), when=when)


def assumed(*others: str, source: Source, why: str = "", when: str = "") -> LeftOut:
    """The default is taken, and `others`, what is plausible too, are tried as they are typed.

    Where one of them undoes a pass, or takes a fail away, it is cannot tell and names the input.
    `source` says why these are the plausible ones, the ends of a span or choices, and `why` more of
    it; `when` is the condition under which this word counts.
    """
    return LeftOut(Word.ASSUMED, why, others, source, when)


def extra(why: str, *, when: str = "") -> LeftOut:
    """A further check; `why` says how the verdict is honest without it. It is not checked.

    `when` is the condition under which this word counts.
    """
    return LeftOut(Word.EXTRA, _needed(why), when=when)


def instead_of(*names: str, when: str = "") -> LeftOut:
    """It is given in place of the inputs of these `names`, whose words count where it is left out.

    `when` is the condition under which this word counts.
    """
    if not names:
        raise DeclarationError("instead_of() names no input")
    return LeftOut(Word.INSTEAD_OF, others=names, when=when)


def setting(why: str = "", *, when: str = "") -> LeftOut:
    """It has no bearing on the verdict, and `why`; `when` says under which condition."""
    return LeftOut(Word.SETTING, why, when=when)


def _needed(text: str) -> str:
    if not text.strip():
        raise DeclarationError("this word needs its text")
    return text


UNDECLARED = LeftOut(Word.ASKED, "its plugin does not say what leaving it out means")


def word_for(words: tuple[LeftOut, ...], values: Mapping[str, Any]) -> LeftOut | None:
    """Return the first word whose condition holds, None where there is none."""
    for word in words:
        if word.counts(values):
            return word
    return None


def option_of(name: str) -> str:
    """Return the option of an input on the command line."""
    return "--" + name.replace("_", "-")


def in_words(words: tuple[LeftOut, ...], default: str, spell: Callable[[str], str] = str) -> str:
    """Say as one rule what leaving an input out comes to.

    `default` is the default as typed, `spell` writes the name of an input.
    """
    rules: dict[str, list[str]] = {}
    for word in words:
        rules.setdefault(_said(word, default, spell), []).append(word.when)
        if not word.when:
            break
    *conditional, (last, whens) = rules.items()
    if "" not in whens:
        conditional, last = [*rules.items()], "not needed"
    elif conditional and words[len(rules) - 1].word is Word.INSTEAD_OF:
        last = "not needed"
    while last == "not needed" and conditional and conditional[-1][0] == last:
        conditional.pop()
    lines = [_where(said, whens, spell) for said, whens in conditional]
    if len(lines) == 1 and last == "not needed" and lines[0].startswith("asked unless "):
        return lines[0]
    return "; ".join([*lines, f"otherwise {last}" if lines else last])


def _where(said: str, whens: Sequence[str], spell: Callable[[str], str]) -> str:
    """Say a word with its conditions: before it, unless it is short."""
    found = [list(terms(when)) for when in whens]
    every = [term for of_one in found for term in of_one]
    names = " or ".join(spell(term.name) for term in every)
    if len(found) == 1 and all(t.negated and not t.wanted for t in every):
        where = f"unless {names} is given"
    elif all(len(f) == 1 and not f[0].negated and not f[0].wanted for f in found):
        where = f"where {names} is given"
    else:
        each = (" and ".join(t.spelled(spell) for t in of_one) for of_one in found)
        where = f"where {', or '.join(each)}"
    return f"{said} {where}" if said in ("asked", "not needed") else f"{where}: {said}"


def _said(left: LeftOut, default: str, spell: Callable[[str], str]) -> str:
    others = " or ".join(map(spell, left.others))
    said = {
        Word.ASKED: "asked",
        Word.MAY_BE_ABSENT: f"left out means {left.why}",
        Word.ASSUMED: f"assumed {default or left.why}",
        Word.EXTRA: f"may be left out: {left.why}",
        Word.INSTEAD_OF: "not needed" if left.when else f"in place of {others}",
        Word.SETTING: "no bearing on the verdict" + (f", {default} if left out" if default else ""),
    }[left.word]
    if left.word is Word.ASSUMED and left.others:
        choices = not default and len(left.others) > 1  # either way: yes and no tried
        said += f"{':' if choices else ','} {' and '.join(left.others)} tried"
        said += "" if choices else " too"
    return said
