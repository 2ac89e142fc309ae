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
import importlib
import inspect
from collections.abc import Callable, Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Generic, ParamSpec

from ..base.errors import DeclarationError, Problem
from ..base.plain_texts import wrong_text
from ..said.items import Item
from .inputs import BANDS, Input, declared_inputs, with_upper_ends
from .left_out import Word, terms
from .reserved import check_name

if TYPE_CHECKING:
    from .exercises import Exercise

P = ParamSpec("P")
Body = Callable[P, Iterator[Item]]
Refusal = Callable[..., Iterator[Problem]]
Bands = Mapping[str, tuple[Any, Any]]  # low and high of each reading that carries an error


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
        renamed: Mapping[str, str],
        words: tuple[str, ...],
        category: str,
        chosen: tuple[str, ...],
        exercises: str,
        analysis: bool = False,
        go_on: str = "",
    ) -> None:
        self.function = function
        self.part = part
        self.cautions = cautions
        self.not_checked = not_checked
        self.refuse = refuse
        self.category, self.chosen = category, chosen
        self.exercises_in, self.analysis, self.go_on = exercises, analysis, go_on
        self.example_with = example_with
        self.renamed = dict(renamed)
        self.name = function.__name__.strip("_").replace("_", "-")
        _refuse_texts(self.name, "its docstring", [function.__doc__ or ""])
        _refuse_texts(self.name, "part, category or exercises", [part, category, exercises])
        _refuse_texts(self.name, "go_on", [go_on])
        self.doc = inspect.getdoc(function) or ""
        if not self.doc:
            raise DeclarationError(f"{self.name} has no docstring: its first line is its question")
        check_name(self.name)
        for texts in (cautions, not_checked, example_with, words, chosen):
            if not isinstance(texts, tuple | list) or not all(isinstance(t, str) for t in texts):
                raise DeclarationError(f"{self.name}: {texts!r} are no texts")
            _refuse_texts(self.name, "one of its texts", texts)
        self.words = tuple(w for text in words for part in text.split(";") if (w := part.strip()))

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
        inputs = tuple(with_upper_ends(declared_inputs(self.function)))
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
        if odd := set(self.chosen) - names:
            raise DeclarationError(f"{self.name}: no input to choose is called {', '.join(odd)}")
        for old, new in self.renamed.items():
            if old in names or new not in names:
                raise DeclarationError(f"{self.name}: {old} cannot have been renamed to {new}")
        return inputs

    @functools.cached_property
    def exercises(self) -> tuple[Exercise, ...]:
        """What its module of exercises has; none where it names none."""
        if not self.exercises_in:
            return ()
        package = self.function.__globals__["__package__"]
        return tuple(importlib.import_module(self.exercises_in, package).EXERCISES)

    @functools.cached_property
    def own_band(self) -> bool:
        """Whether it works out its band itself, because another run of it is too dear."""
        return BANDS in inspect.signature(self.function).parameters

    def refused(self, values: Mapping[str, Any]) -> Iterator[Problem]:
        """Yield what its refusal finds wrong with the values of a run; it gets what it asks for."""
        if self.refuse is not None:
            asked = self._asked_by_refusal
            yield from self.refuse(
                **(values if asked is None else {n: values[n] for n in asked if n in values})
            )

    @functools.cached_property
    def _asked_by_refusal(self) -> frozenset[str] | None:
        """The inputs that its refusal names; None where it takes all of them."""
        asked = inspect.signature(self.refuse).parameters.values() if self.refuse else ()
        takes_all = any(p.kind is inspect.Parameter.VAR_KEYWORD for p in asked)
        return None if takes_all else frozenset(p.name for p in asked)

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

    def name_now(self, old: str, *, option: bool = False) -> str:
        """Say what an input is called that had another name once; empty for any other text."""
        if old not in self.renamed:
            return ""
        now = self.input(self.renamed[old])
        return f"is {now.option if option else now.name} now ({now.kind.text})"


def _refuse_texts(name: str, what: str, texts: Iterable[object]) -> None:
    """Raise DeclarationError for what is no plain text that somebody can read."""
    for text in texts:
        if wrong := wrong_text(text):
            raise DeclarationError(f"{name}: {what} {wrong}")


def calculation(
    *,
    part: str,
    cautions: tuple[str, ...] = (),
    not_checked: tuple[str, ...] = (),
    refuse: Refusal | None = None,
    example_with: tuple[str, ...] = (),
    renamed: Mapping[str, str] = MappingProxyType({}),
    words: tuple[str, ...] = (),
    category: str = "II",
    chosen: tuple[str, ...] = (),
    exercises: str = "",
    analysis: bool = False,
    go_on: str = "",
) -> Callable[[Body[P]], Calculation[P]]:
    """Declare a calculation.

    `part` is the part of the trade under which it is listed; `cautions` are keys of the caution
    library; `not_checked` says what it never checks. `refuse` is a function that yields a Problem
    for inputs that contradict each other; of the inputs it gets those that it names as arguments,
    and it is asked before anything is computed. `example_with` names optional inputs that the
    example shall show, and `"name=text"` gives an input another text there than its kind's own
    example, a list its texts with "; " between them. `renamed` has names that inputs had before,
    each with the one that it has now: the old one is refused, and the new one said. `words` are
    what people say who do not know its name: parts, symptoms, abbreviations, regional words; one
    text may hold several with ";" between them. `category` is the measurement category (IEC 61010)
    of the place where its readings are taken: II at a plug, III at fixed wiring or a panel.
    `chosen` names the inputs that a person may choose anew where it fails, such as a wire: what of
    them would pass is said then. A reading is none, nor what would hide the fault.
    `exercises` is the module beside it whose EXERCISES are drilled, as in ".drop_exercises".
    `analysis` says that it reckons with what the extra of that name installs: where that is not, as
    in a browser, it is refused by name.
    `go_on` says in a line what to do next where it passes.

    A calculation that is too dear to run again over the band has one more argument,
    `bands: Bands | None = None`: it gets low and high of every reading that carries an error, is
    run once, and gives its figures and criteria their own `band`.

    Raises DeclarationError at import for a name or docstring that will not do, and when its
    inputs are first asked for, for a signature that does not declare everything.
    """

    def decorate(function: Body[P]) -> Calculation[P]:
        return Calculation(
            function,
            part,
            cautions,
            not_checked,
            refuse,
            example_with,
            renamed,
            words,
            category,
            chosen,
            exercises,
            analysis,
            go_on,
        )

    return decorate
