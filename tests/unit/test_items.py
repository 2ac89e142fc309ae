"""The items that a calculation yields: cautions of the library, and what an item may hold."""

import math
from collections.abc import Callable
from typing import Any

import pytest

from wirecalc.base.errors import TableError
from wirecalc.published.sources import PRACTICE, Confidence, Source, confirmed
from wirecalc.said import item_checks, items
from wirecalc.said.charts import Chart, Limit, Line
from wirecalc.said.criteria import Criterion, Origin
from wirecalc.said.item_checks import check
from wirecalc.said.items import Answer, Caution, ChartItem, Figure, Listing, NotChecked

PRINTED = confirmed("std", "a standard", "table 1", copies=2)


@pytest.fixture
def own_cautions() -> Any:
    """Leave the library of cautions as it was."""
    before = items.added_cautions()
    yield items.use_cautions
    items.use_cautions(before)


def test_a_caution_says_what_it_defers_to_and_where_it_comes_from() -> None:
    def backing(defers_to: str, source: Source | None) -> str:
        return Caution("k", "Mind it.", defers_to, source=source).backing

    assert backing("the maker", PRINTED) == (
        "defers to the maker; a standard, confirmed, 2 copies seen"
    )
    assert backing("-", PRACTICE) == "common practice, no source"
    assert backing("the maker", None) == "defers to the maker"
    assert backing("", None) == ""


def test_a_caution_of_the_table_comes_with_all_that_its_row_says() -> None:
    """dead-02: the plug is pulled and kept in sight, and that stops the work."""
    known = items.caution("dead-02")
    assert (known.key, known.severity, known.when) == ("dead-02", "stop", "cord and plug appliance")
    assert known.text.startswith("Pull the plug")
    assert known.defers_to == "OSHA 1910.147; local rules"
    assert known.source is not None and known.source.confidence is Confidence.MEMORY


def test_an_unknown_caution_is_refused_by_its_key() -> None:
    assert items.library_caution("no-such") is None
    with pytest.raises(TableError, match="there is no caution 'no-such'"):
        items.caution("no-such")


def test_of_added_cautions_the_first_of_a_key_counts_and_the_table_before_all(
    own_cautions: Callable[..., None],
) -> None:
    first, second = Caution("own-1", "First."), Caution("own-1", "Second.")
    own_cautions([first, second, Caution("dead-02", "Not so.")])
    assert items.caution("own-1") == first
    assert items.caution("dead-02").text.startswith("Pull the plug")
    assert [own.key for own in items.added_cautions()] == ["own-1", "dead-02"]
    own_cautions([])
    assert items.added_cautions() == []
    assert items.library_caution("own-1") is None


def test_what_nothing_is_said_of_is_plain() -> None:
    line = Line("current", (0.0,), (1.0,))
    assert (line.strong, line.fine) == (False, False)
    assert Limit("rating", 15.0).binding is True
    assert Answer("fit", "yes").in_numbers is False
    assert Caution("k", "Mind it.").severity == "caution"
    bare = Criterion("x", "requires")
    assert (bare.holds, bare.advisory, bare.origin) == (False, False, Origin.STANDARD)


def a_chart() -> Chart:
    raise AssertionError("a chart is not built before it is shown")


RIGHT = [
    Figure("load", 12.0, "A", PRINTED, str, ((0.012, "kA"),), "down", (11.9, 12.1)),
    Figure("load", 12),
    Answer("fit", "yes", ("it is copper",), ("it is old",), True),
    Criterion("pull", "at least", 21.0, 20.0, "lbf", 25.0, PRINTED, band=(20.0, 22.0)),
    Caution("k", "Mind it.", "the maker", "stop", "always", PRACTICE),
    Listing("sizes", ("size", "area"), (("14 AWG", 2.08), ("none", None), ("one", 1))),
    NotChecked("the lug", "its size is not known"),
    ChartItem(a_chart),
]


@pytest.mark.parametrize("item", RIGHT, ids=lambda item: type(item).__name__)
def test_an_item_filled_in_rightly_passes(item: Any) -> None:
    assert check(item) is None  # nothing is raised
    assert check(item) is None  # its source is known by now


@pytest.mark.parametrize(
    ("item", "wrong"),
    [
        (Figure(3, 1.0), "name of a Figure is 3"),
        (Figure("load", math.nan), "'load' is nan"),
        (Figure("load", -math.inf), "'load' is -inf"),
        (Figure("load", 10**400), "value of 'load' is 1000"),
        (Figure("load", -(10**400)), "value of 'load' is -1000"),
        (Figure("load", "12"), "value of 'load' is '12'"),
        (Figure("load", 1.0, source="a book"), "source of 'load' is 'a book'"),
        (Figure("load", 1.0, working="12"), "working of 'load'"),
        (Figure("load", 1.0, also=[(1.0, "A")]), "also of 'load'"),
        (Figure("load", 1.0, also=((1.0, 2),)), "also of 'load'"),
        (Figure("load", 1.0, also=((math.inf, "A"),)), "also of 'load'"),
        (Figure("load", 1.0, band=(1.0,)), "band of 'load'"),
        (Figure("load", 1.0, band=[0.9, 1.1]), "band of 'load'"),
        (Figure("load", 1.0, band=(0.9, math.inf)), "band of 'load'"),
        (Answer("fit", "yes", "copper"), "evidence_for of 'fit'"),
        (Answer("fit", "yes", (1,)), "evidence_for of 'fit'"),
        (Answer("fit", "yes", in_numbers=1), "in_numbers of 'fit'"),
        (Criterion("pull", "about", 1.0, 1.0), "sense of 'pull' is 'about'"),
        (Criterion("pull", 1, 1.0, 1.0), "sense of 'pull' is 1"),
        (Criterion("pull", "at least", 1.0, "20"), "limit of 'pull'"),
        (Criterion("pull", "at least", 1.0, 1.0, origin="house"), "origin of 'pull'"),
        (Criterion("pull", "requires", holds=1), "holds of 'pull'"),
        (Criterion("pull", "at least", 1, True), "limit of 'pull' is True"),
        (Criterion("pull", "at least", 1, 10**400), "limit of 'pull' is 1000"),
        (Criterion("pull", "cannot tell", needs=["force"]), "needs of 'pull'"),
        (Criterion("pull", "cannot tell", needs=(1,)), "needs of 'pull'"),
        (Criterion("pull", "cannot tell", says="x" * 10_001), "says of 'pull'"),
        (Caution("", "Mind it."), "key of '' is ''"),
        (Caution("k", " "), "text of 'k' is ' '"),
        (Caution("k", "Mind it.", severity="grave"), "severity of 'k' is 'grave'"),
        (Listing("sizes", ["size"], ()), "columns of 'sizes'"),
        (Listing("sizes", ("size",), [("14",)]), "rows of 'sizes'"),
        (Listing("sizes", ("size",), (["14"],)), "rows of 'sizes'"),
        (Listing("sizes", ("size",), (("14",), (b"12",))), "rows of 'sizes'"),
        (NotChecked("the lug", None), "why of 'the lug' is None"),
        (ChartItem("a picture"), "build of 'a picture'"),
        (Figure("load", 1.0, source=Source("std", 7)), "source of 'load'"),
        (Figure("load", 1.0, source=Source("std", "a", copies=2.5)), "source of"),
        (Figure("load", 1.0, source=Source("s", "a", confidence="sure")), "source of"),
    ],
)
def test_an_item_filled_in_wrongly_is_refused_by_its_field(item: Any, wrong: str) -> None:
    with pytest.raises(ValueError) as refused:
        check(item)
    assert str(refused.value).startswith(wrong)


def test_sources_made_anew_in_every_run_do_not_keep_others_from_being_known(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    known: dict[int, Source] = {}
    monkeypatch.setattr(item_checks, "_right_sources", known)
    monkeypatch.setattr(item_checks, "_MOST_SOURCES", 3)
    for number in range(5):
        check(Figure("load", 1.0, source=Source("own", f"sheet {number}")))
    check(Figure("load", 1.0, source=PRINTED))
    assert known[id(PRINTED)] is PRINTED
    assert len(known) <= 3


def test_what_only_looks_like_an_item_is_refused() -> None:
    class Own(Figure):
        """A class of a plugin's own, which could answer what it likes."""

    for thing in (Own("load", 1.0), ("load", 1.0), None):
        with pytest.raises(TypeError, match="which is no item of a finding"):
            check(thing)
