"""What a calculation yields: figures, answers, criteria, cautions, listings and gaps."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from ..base.errors import TableError
from .criteria import Criterion

if TYPE_CHECKING:
    from ..published.sources import Source
    from ..published.tables import Table
    from .charts import ChartMaker


class Figure(NamedTuple):
    """A number worked out. `also` shows it in other units; `working` is built when shown.

    `toward` is the safe side to round a limit to when it is shown: up, down or neither. `band` is
    its low and high, where the calculation works them out itself.
    """

    name: str
    value: float
    unit: str = ""
    source: Source | None = None
    working: Callable[[], str] | None = None
    also: tuple[tuple[float, str], ...] = ()
    toward: str = ""
    band: tuple[float, float] | None = None


class Answer(NamedTuple):
    """A result in words, with the evidence for and against it.

    `in_numbers` says that its words hold for the whole band and only repeat numbers of figures.
    """

    name: str
    text: str
    evidence_for: tuple[str, ...] = ()
    evidence_against: tuple[str, ...] = ()
    in_numbers: bool = False


GRAVITY = ("stop", "caution", "note")  # what the severity of a caution may be, the gravest first


class Caution(NamedTuple):
    """A hazard, by its `key`: the `text` says what to do about it, `when` in which case.

    It `defers_to` a code, a sheet or a practice, and comes from its `source`; its `severity` is
    "stop", "caution" or "note". `in_a_line` says it for an answer of one screen.
    """

    key: str
    text: str
    defers_to: str = ""
    severity: str = "caution"
    when: str = ""
    source: Source | None = None
    in_a_line: str = ""

    @property
    def line(self) -> str:
        """What to do about it in a line; where nobody wrote one, its first sentence."""
        return self.in_a_line or self.text.partition(". ")[0].rstrip(".")

    @property
    def backing(self) -> str:
        """What goes before it, and where it comes from, in words; empty where neither is known."""
        to = f"defers to {self.defers_to}" if self.defers_to.strip("-") else ""
        origin = ""
        if self.source is not None:
            trust = self.source.trust
            origin = trust if trust.startswith("common") else f"{self.source.title}, {trust}"
        return "; ".join(part for part in (to, origin) if part)


ListedRows = Iterable[Sequence[str | float | None]]


class Listing(NamedTuple):
    """Rows of results. A rejected row is no verdict.

    One that is to be kept apart is written into a file of its own, and stands on no page. Where
    there is a `later`, it makes the rows when they are to be shown.
    """

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str | float | None, ...], ...]
    apart: bool = False
    later: Callable[[], ListedRows] | None = None

    def whole(self) -> Listing:
        """Return it with all its rows."""
        if self.later is None:
            return self
        return self._replace(rows=tuple(tuple(row) for row in self.later()), later=None)


class NotChecked(NamedTuple):
    """Something that this calculation did not check, and why."""

    what: str
    why: str = ""


class ChartItem(NamedTuple):
    """A chart, built only when somebody asks for the picture."""

    build: ChartMaker


Item = Figure | Answer | Criterion | Caution | Listing | NotChecked | ChartItem


def figure(
    name: str,
    value: float,
    unit: str = "",
    *,
    source: Source | None = None,
    working: Callable[[], str] | None = None,
    also: Sequence[tuple[float, str]] = (),
    toward: str = "",
    band: tuple[float, float] | None = None,
) -> Figure:
    """Yield a number that was worked out: its `name`, `value` and `unit`, and its `source` if any.

    A limit is shown rounded `toward` safety, "up" or "down"; `also` are pairs of a value and a unit
    to show beside it; `working` makes the formula with the numbers put in when it is shown. `band`
    is its low and high, for a calculation that works out its band itself.
    """
    return Figure(name, value, unit, source, working, tuple(also), toward, band)


def answer(
    name: str,
    text: str,
    *,
    because: Sequence[str] = (),
    against: Sequence[str] = (),
    in_numbers: bool = False,
) -> Answer:
    """Yield a result in words: a `name`, its `text`, the evidence for (`because`) and `against` it.

    One that changes over the meter's band can't be told. An answer `in_numbers` only repeats
    figures, which show their low and high: it is that of the middle of the band, and says so.
    """
    return Answer(name, text, tuple(because), tuple(against), in_numbers)


def caution(key: str) -> Caution:
    """Yield a caution of the library by its `key`; raises TableError for an unknown one."""
    known = library_caution(key)
    if known is None:
        raise TableError(f"there is no caution {key!r}; `wirecalc tables cautions` lists them")
    return known


def library_caution(key: str) -> Caution | None:
    """Return a caution of the table, or one that a plugin added; None for an unknown key."""
    from ..published.tables import load

    return load("cautions").made(_caution, key) or _added_cautions.get(key)


def _caution(table: Table, key: str) -> Caution | None:
    row = table.find(key=key)
    if row is None:
        return None
    printed = row.printed
    return Caution(
        key,
        printed["text"],
        printed["defers_to"],
        printed["severity"],
        printed["applies_when"],
        row.source,
        printed["in_a_line"],
    )


_added_cautions: dict[str, Caution] = {}


def added_cautions() -> list[Caution]:
    """Return the cautions that are in the library beside the table's."""
    return list(_added_cautions.values())


def use_cautions(added: Iterable[Caution]) -> None:
    """Have these cautions in the library beside the table's, and no others.

    One whose key the table has, or that came before, changes nothing.
    """
    _added_cautions.clear()
    for own in added:
        _added_cautions.setdefault(own.key, own)


def listing(
    title: str,
    columns: Sequence[str],
    rows: ListedRows | Callable[[], ListedRows],
    *,
    apart: bool = False,
) -> Listing:
    """Yield `rows` of results below `columns`, with a `title`.

    `apart` keeps them off every page, in a file beside it.

    A function of no arguments makes them only when they are shown: at every point of a meter's
    band, and in every row of a batch, nobody reads them.
    """
    if callable(rows):
        return Listing(title, tuple(columns), (), apart, rows)
    return Listing(title, tuple(columns), tuple(tuple(row) for row in rows), apart)


def not_checked(what: str, why: str = "") -> NotChecked:
    """Yield `what` was not checked, and `why`."""
    return NotChecked(what, why)


def chart(build: ChartMaker) -> ChartItem:
    """Yield a chart; `build` is called only when it is to be drawn."""
    return ChartItem(build)
