"""Citations, and how far a value may be trusted."""

import pytest

from wirecalc.published.sources import MAKER, PRACTICE, Source, computed, confirmed, from_memory
from wirecalc.said.criteria import at_least
from wirecalc.said.findings import collect_sources
from wirecalc.said.items import figure


@pytest.mark.parametrize(
    ("source", "cited"),
    [
        (confirmed("a", "UL 310", "", copies=1), "UL 310 (confirmed, 1 copy seen)"),
        (from_memory("a", "UL 486C"), "UL 486C (from memory: confirm it)"),
        (computed("a", "ASTM B258", "the law"), "ASTM B258, the law (computed)"),
        (PRACTICE, "common practice, no source"),
        (MAKER, "the maker's marking (as typed)"),
    ],
)
def test_cite(source: Source, cited: str) -> None:
    assert source.cite() == cited


def test_sources_of_a_finding_have_keys_of_their_own() -> None:
    one = confirmed("ul", "UL 486A", "section 12", copies=3)
    two = confirmed("ul", "UL 486A", "section 12", copies=1)
    used = [at_least("a", 1, 1, source=one).source, figure("b", 1, source=two).source, None, one]
    assert collect_sources(used) == {"ul": one, "ul-2": two}
