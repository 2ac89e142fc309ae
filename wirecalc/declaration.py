"""The decorator: a plain function and its signature are the only declaration of a calculation.

    @calculation(part="wire and joint", cautions=("pull-01",))
    def pull(wire: Annotated[Wire, "wire in the barrel"], ...) -> Iterator[Item]:
        \"\"\"Is this pull-out force enough for the wire? ...\"\"\"
        yield at_least(...)

From the signature come the command line, its help, the checks of what was typed, the Python
call and the JSON schema. The decorated object stays callable with plain numbers.
"""

from __future__ import annotations

import functools
import inspect
import re
import types
import typing
from collections.abc import Callable, Iterator, Mapping
from typing import Annotated, Any, Generic, NamedTuple, ParamSpec, Union, get_args, get_origin

from .errors import DeclarationError, Problem
from .items import Item
from .kinds import Kind
from .left_out import LeftOut, Word, in_words, option_of, terms
from .reserved import RESERVED_INPUTS, check_name
from .size_ranges import SizeRange
from .wires import Wire
from .word_kinds import RangeKind, WireKind, Words, YesNo

P = ParamSpec("P")
Body = Callable[P, Iterator[Item]]
Refusal = Callable[..., Iterator[Problem]]
Bands = Mapping[str, tuple[Any, Any]]  # low and high of each reading that carries an error

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


class Calculation(Generic[P]):
    """A function that answers one question of the trade, with all that its signature declares."""

    def __init__(
        self,
        function: Body[P],
        part: str,
        cautions: tuple[str, ...],
        not_checked: tuple[str, ...],
        refuse: Refusal | None,
        example_with: tuple[str, ...],
    ) -> None:
        self.function = function
        self.part = part
        self.cautions = cautions
        self.not_checked = not_checked
        self.refuse = refuse
        self.example_with = example_with
        self.name = function.__name__.strip("_").replace("_", "-")
        self.doc = inspect.getdoc(function) or ""
        if not self.doc:
            raise DeclarationError(f"{self.name} has no docstring: its first line is its question")
        check_name(self.name)
        for texts in (cautions, not_checked, example_with):
            if not isinstance(texts, tuple | list) or not all(isinstance(t, str) for t in texts):
                raise DeclarationError(f"{self.name}: {texts!r} are no texts")

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> Iterator[Item]:
        """Run the bare function with plain values in the declared units."""
        return self.function(*args, **kwargs)

    def __repr__(self) -> str:
        return f"<calculation {self.name}>"

    @functools.cached_property
    def inputs(self) -> tuple[Input, ...]:
        """What the signature declares; raises DeclarationError where it does not declare all.

        Read when first asked for: a command needs the inputs of one calculation, not of all.
        """
        inputs = tuple(_declared(self.function))
        names = {i.name for i in inputs}
        for declared in inputs:
            linked = {*declared.kind.companions, declared.kind.goes_with} - {""}
            if not linked <= names:
                raise DeclarationError(f"{self.name}: {declared.name} goes with an unknown input")
            for word in declared.words:
                named = {term.name for term in terms(word.when)}
                named |= set(word.others) if word.word is Word.INSTEAD_OF else set()
                if not named <= names:
                    unknown = ", ".join(sorted(named - names))
                    raise DeclarationError(f"{self.name}: {declared.name} names {unknown}")
        return inputs

    @functools.cached_property
    def own_band(self) -> bool:
        """Whether it works out its band itself, because another run of it is too dear."""
        return BANDS in inspect.signature(self.function).parameters

    @property
    def question(self) -> str:
        """The question that it answers: the first line of the docstring."""
        return self.doc.split("\n", 1)[0]

    @property
    def example(self) -> str:
        """A command line that works, put together from the examples of the inputs."""
        given = (
            f'{self.input(name).option} "{text}"'
            for name, texts in self.example_inputs.items()
            for text in ([texts] if isinstance(texts, str) else texts)
        )
        return " ".join(["wirecalc", self.name, *given])

    @functools.cached_property
    def example_inputs(self) -> Mapping[str, str | list[str]]:
        """The inputs of the example and what is given for each, in the order of the signature."""
        own = dict(e.partition("=")[::2] for e in self.example_with)
        shown = {i: own.get(i.name) or i.kind.example for i in self.inputs}
        return {
            i.name: text.split("; ") if i.many else text
            for i, text in shown.items()
            if i.required or i.name in own
        }

    def input(self, name: str) -> Input:
        """Return one input by its name; raises KeyError."""
        return {i.name: i for i in self.inputs}[name]


def calculation(
    *,
    part: str,
    cautions: tuple[str, ...] = (),
    not_checked: tuple[str, ...] = (),
    refuse: Refusal | None = None,
    example_with: tuple[str, ...] = (),
) -> Callable[[Body[P]], Calculation[P]]:
    """Declare a calculation.

    `part` is the part of the trade under which it is listed; `cautions` are keys of the caution
    library; `not_checked` says what it never checks. `refuse` is a function with the same
    arguments that yields a Problem for inputs that contradict each other; it is asked before
    anything is computed. `example_with` names optional inputs that the example shall show, and
    `"name=text"` gives an input another text there than its kind's own example, a list its texts
    with "; " between them.

    A calculation that is too dear to run again over the band has one more argument,
    `bands: Bands | None = None`: it gets low and high of every reading that carries an error, is
    run once, and gives its figures and criteria their own `band`.

    Raises DeclarationError at import for a name or docstring that will not do, and when its
    inputs are first asked for, for a signature that does not declare everything.
    """

    def decorate(function: Body[P]) -> Calculation[P]:
        return Calculation(function, part, cautions, not_checked, refuse, example_with)

    return decorate


def _declared(function: Callable[..., object]) -> Iterator[Input]:
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
    if isinstance(about, str) and inner in _WORD_KINDS:
        if not about:
            raise DeclarationError(f"{where}: its text is empty")
        return _WORD_KINDS[inner](about)
    if isinstance(about, Kind) and about.of is inner:
        if not about.text:
            raise DeclarationError(f"{where}: its kind has no text")
        return about
    raise DeclarationError(
        f"{where}: {inner} with {about!r} is no kind of input; "
        "a float takes Reading or Nameplate, an int Count, a str OneOf or a text"
    )
