"""What plugins provide: calculations and house rules, and whom each comes from."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, NamedTuple

from ..base.blame import Blamed, described, with_place
from ..base.errors import BadText, NoSuchInput, did_you_mean
from ..said.items import Item
from .declaration import Calculation

if TYPE_CHECKING:
    from .deferred_calculation import Deferred

EVERY = "*"  # a house rule for every calculation

RuleBody = Callable[[Mapping[str, Any], Sequence[Item]], Iterable[Item]]


class RunValues(dict[str, Any]):
    """The values of one run, as a house rule gets them; `left_out` are inputs that nobody gave.

    A rule that asks for an input by a name that it had before fails, so that no limit of a shop is
    lost in silence; `renamed` has those names.
    """

    def __init__(
        self,
        values: Mapping[str, Any],
        left_out: Iterable[str] = (),
        renamed: Mapping[str, str] = MappingProxyType({}),
    ) -> None:
        super().__init__(values)
        self.left_out = frozenset(left_out)
        self.renamed = renamed

    def __getitem__(self, name: str) -> Any:
        """Return a value; raises BadText for a name of before, KeyError for any other."""
        self._refuse_old(name)
        return super().__getitem__(name)

    def __missing__(self, name: object) -> Any:
        would_do = did_you_mean(str(name), [*self]) or f"there are {', '.join(self)}"
        raise NoSuchInput(f"there is no input {name!r}; {would_do}")

    def __contains__(self, name: object) -> bool:
        """Whether it is an input; raises BadText for a name of before."""
        self._refuse_old(name)
        return super().__contains__(name)

    def get(self, name: str, default: Any = None) -> Any:
        """Return a value, or the default; raises BadText for a name of before."""
        self._refuse_old(name)
        return super().get(name, default)

    def _refuse_old(self, name: object) -> None:
        if isinstance(name, str) and name in self.renamed:
            raise BadText(f"input {name} is {self.renamed[name]} now")


class HouseRule(NamedTuple):
    """A shop's own extra criterion for some `calculations`, ("*",) for all; its `name` is shown.

    Its `function` is called as function(inputs, items): it gets the values of one run, in the
    declared units, and that run's items; it yields criteria and cautions of its own, and what it
    did not check. It cannot change or remove any.
    """

    name: str
    calculations: tuple[str, ...]
    function: RuleBody


class ProvidedCalculation(NamedTuple):
    """A calculation, and the plugin that it comes from; one that is deferred loads when needed."""

    plugin: str
    version: str
    offered: Calculation[Any] | Deferred

    @property
    def calculation(self) -> Calculation[Any]:
        """The calculation itself; raises PluginDefect for a deferred one that does not load."""
        if isinstance(self.offered, Calculation):
            return self.offered
        with Blamed(f"{self.whose} cannot be loaded"):
            return self.offered.load()

    @property
    def whose(self) -> str:
        """The calculation with its plugin, in words."""
        return f"{self.offered.name} of plugin {self.plugin} {self.version}"


class ProvidedRule(NamedTuple):
    """A house rule, the plugin that it comes from, and in a run the inputs that nobody gave.

    `renamed` are names that inputs of that run had before, where the rule names its calculation: a
    rule for every calculation may ask for what only some have.
    """

    plugin: str
    version: str
    rule: HouseRule
    left_out: frozenset[str] = frozenset()
    renamed: Mapping[str, str] = MappingProxyType({})
    of_file: bool = False  # of a rules file: its plugin is the file, whose errors name their line

    def failed(self, error: BaseException) -> str:
        """Say that it failed, and where: in a rules file, or in the code of a plugin."""
        if not self.of_file:
            said = with_place(error, self.rule.function)
            return f"house rule {self.rule.name} of {self.plugin} failed: {said}"
        said = described(error)
        if self.rule.name == self.plugin:  # of the whole file
            return said
        return f"{self.plugin}, {said}" if said.startswith("line ") else f"{self.plugin}: {said}"
