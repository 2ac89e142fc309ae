"""Inputs as they are declared: a signature read, an input of each argument."""

from __future__ import annotations

import inspect
import re
import types
import typing
from collections.abc import Callable, Iterable, Iterator
from typing import Annotated, Any, NamedTuple, Union, get_args, get_origin

from ..base.errors import DeclarationError
from ..base.plain_texts import wrong_text
from ..typed.kinds import Kind
from ..typed.size_ranges import SizeRange
from ..typed.wires import Wire
from ..typed.word_kinds import RangeKind, WireKind, Words, YesNo
from .left_out import LeftOut, in_words, option_of
from .reserved import LONGEST, RESERVED_INPUTS

BANDS = "bands"  # the argument of a calculation that works out its band itself
_WORD_KINDS: dict[type, type[WireKind | RangeKind | YesNo | Words]] = {
    Wire: WireKind,
    SizeRange: RangeKind,
    bool: YesNo,
    str: Words,
}


class Input(NamedTuple):
    """One input of a calculation, as declared."""

    name: str
    kind: Kind
    many: bool
    required: bool
    default: Any = None
    words: tuple[LeftOut, ...] = ()  # what leaving it out means

    @property
    def option(self) -> str:
        """The option of the command line."""
        return option_of(self.name)

    @property
    def assumed(self) -> str:
        """The default as it would be typed; empty where leaving it out means not checked."""
        return "" if self.required or self.default is None else self.kind.show(self.default)

    @property
    def need(self) -> str:
        """Say whether it is needed, or what leaving it out means."""
        return self.need_spelled(str)

    def need_spelled(self, spell: Callable[[str], str]) -> str:
        """Say it with the names of inputs as `spell` writes them."""
        if self.required:
            return "needed"
        if self.words:
            return in_words(self.words, self.assumed, spell)
        return f"assumed {self.assumed}" if self.assumed else "may be left out"

    def each(self, given: object) -> list[object]:
        """Return the values that were given, one each: those of a list may stand in one text."""
        items = list(given) if isinstance(given, list | tuple) else [given]
        return [one for item in items for one in self.kind.parts(item)] if self.many else items


def declared_inputs(function: Callable[..., object]) -> Iterator[Input]:
    """Yield an input of each argument of a calculation; raises DeclarationError."""
    try:
        hints = typing.get_type_hints(function, include_extras=True)
    except NameError as error:
        raise DeclarationError(f"{function.__name__}: {error}") from error
    for parameter in inspect.signature(function).parameters.values():
        if parameter.name == BANDS:
            continue
        where = f"{function.__name__}({parameter.name})"
        if (
            not re.fullmatch(r"[a-z][a-z0-9_]*", parameter.name)
            or parameter.name in RESERVED_INPUTS
        ):
            raise DeclarationError(f"{where}: the name is reserved or not in plain lower case")
        if len(parameter.name) > LONGEST:
            wrong = f"is longer than {LONGEST} letters"
            raise DeclarationError(
                f"{function.__name__}: the name {parameter.name[:LONGEST]}... {wrong}"
            )
        hint = hints.get(parameter.name)
        if get_origin(hint) is not Annotated:
            raise DeclarationError(f"{where}: write Annotated[type, kind or text]")
        base, about, *said = get_args(hint)
        inner, many, optional = _unwrap(base)
        required = parameter.default is inspect.Parameter.empty
        if optional and required:
            raise DeclarationError(f"{where}: may be None, and has no default")
        words = tuple(word for word in said if isinstance(word, LeftOut))
        if required and words:
            raise DeclarationError(f"{where}: is needed, so nothing is meant by leaving it out")
        default = None if required else parameter.default
        yield Input(parameter.name, _kind(where, inner, about), many, required, default, words)


def with_upper_ends(inputs: Iterable[Input]) -> Iterator[Input]:
    """Yield inputs, each that has one of its name with _high knowing that it takes the upper end.

    So a printed range that is typed as one value is refused with both names.
    """
    declared = list(inputs)
    names = {i.name for i in declared}
    for one in declared:
        upper = f"{one.name}_high"
        if upper in names and getattr(one.kind, "upper_input", None) == "":
            yield one._replace(kind=one.kind.but(upper_input=upper))
        else:
            yield one


def _unwrap(base: Any) -> tuple[Any, bool, bool]:
    """Take `list[...]` and `... | None` off a type."""
    optional = False
    if get_origin(base) in (Union, types.UnionType):
        inner = [a for a in get_args(base) if a is not type(None)]
        optional = len(inner) < len(get_args(base))
        base = inner[0] if len(inner) == 1 else base
    if get_origin(base) is list:
        return get_args(base)[0], True, optional
    return base, False, optional


def _kind(where: str, inner: Any, about: Any) -> Kind:
    text = about.text if isinstance(about, Kind) else about
    if isinstance(text, str) and (wrong := wrong_text(text)):
        raise DeclarationError(f"{where}: its text {wrong}")
    if isinstance(about, str) and inner in _WORD_KINDS:
        if not about:
            raise DeclarationError(f"{where}: its text is empty")
        return _WORD_KINDS[inner](about)
    if isinstance(about, Kind) and about.of is inner:
        if not about.text:
            raise DeclarationError(f"{where}: its kind has no text")
        return about
    raise DeclarationError(
        f"{where}: {_called(inner)} with {_called(about)} is no kind of input; "
        "a float takes Reading or Nameplate, an int Count, a str OneOf or a text"
    )


def _called(part: object) -> str:
    """Return what an author calls a part of an annotation: a type by its name, a kind by its."""
    if isinstance(part, type):
        return part.__name__
    return f"a {type(part).__name__}" if isinstance(part, Kind) else repr(part)
