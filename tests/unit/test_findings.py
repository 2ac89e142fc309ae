"""What one run comes to: which criterion decided, its sources by key, its parts by name."""

import pytest

from wirecalc.published.sources import confirmed
from wirecalc.said.criteria import Origin, at_least, at_most, cannot_tell
from wirecalc.said.findings import BandFigure, Finding, InputRecord, Judged, collect_sources
from wirecalc.said.items import figure
from wirecalc.typed.kinds import TAKEN_AS_EXACT

TABLE = confirmed("std", "a standard", "table 1", copies=2)
CLAUSE = confirmed("std", "a standard", "clause 7", copies=2)  # the same key, another place
OTHER = confirmed("std", "another standard", "table 1", copies=1)


def judged(name: str, actual: float, provider: str = "bundled", **more: object) -> Judged:
    criterion = at_least(name, actual, 20.0, "lbf", source=TABLE, **more)
    return Judged(criterion, provider, criterion.verdict, criterion.reason)


def test_every_distinct_source_has_a_key_of_its_own_in_order_of_use() -> None:
    found = collect_sources([TABLE, None, CLAUSE, TABLE, OTHER])
    assert found == {"std": TABLE, "std-2": CLAUSE, "std-3": OTHER}
    assert list(found) == ["std", "std-2", "std-3"]
    finding = Finding("pull", "bundled", "1", (), sources=found)
    assert finding.source_key(CLAUSE) == "std-2"
    assert finding.source_key(TABLE._replace(where="table 9")) is None


def test_parts_are_found_by_name_and_a_rule_of_the_shop_does_not_hide_the_calculations_own() -> (
    None
):
    load = BandFigure(figure("load", 12.0, "A"))
    own, shops = judged("pull", 21.0), judged("pull", 19.0, "shop")
    finding = Finding("pull", "bundled", "1", (), figures=(load,), criteria=(own, shops))
    assert finding.figure("load") is load
    assert finding.criterion("pull") is own
    for missing in (finding.figure, finding.criterion):
        with pytest.raises(KeyError):
            missing("no such")


def test_the_worst_verdict_decides_and_of_equals_the_closest() -> None:
    unknown = cannot_tell("crimp", "not measured")
    told = Judged(unknown, "bundled", unknown.verdict, unknown.reason)
    tight, loose, failed = judged("tight", 20.5), judged("loose", 30.0), judged("failed", 19.0)

    def decided(*criteria: Judged) -> tuple[str, str]:
        finding = Finding("pull", "bundled", "1", (), criteria=criteria)
        assert finding.decided_by is not None
        return str(finding.verdict), finding.decided_by.criterion.name

    assert decided(loose, tight) == ("pass", "tight")
    assert decided(loose, told, tight) == ("cannot tell", "crimp")
    assert decided(told, failed, loose) == ("fail", "failed")
    empty = Finding("gauge", "bundled", "1", ())
    assert (empty.verdict, empty.decided_by) == (None, None)


def test_the_shops_own_limit_steps_back_only_where_both_failed() -> None:
    """Kept alike, the closer one decides, whosever it is."""
    printed = judged("printed", 24.0)
    own = judged("own", 21.0, origin=Origin.HOUSE)
    finding = Finding("pull", "bundled", "1", (), criteria=(printed, own))
    assert finding.decided_by is own


def test_a_criterion_says_its_name_and_its_reason() -> None:
    load = at_most("load", 16.0, 15.0, "A", source=TABLE)
    assert Judged(load, "bundled", load.verdict, load.reason).because == "load: 16 A is above 15 A"
    assert Judged(load, "bundled", load.verdict, "").because == "load"


def test_readings_taken_as_exact_are_named_once_and_files_get_their_other_names() -> None:
    def typed(name: str, given: str | None, *notes: str) -> InputRecord:
        return InputRecord(name, given, 1.0, "A", None, None, "typed", notes)

    inputs = (
        typed("current", "12", TAKEN_AS_EXACT),
        typed("current", "13", TAKEN_AS_EXACT),
        typed("volts", "120 +-1"),
        typed("file", "a.csv"),
        typed("none", None),
    )
    finding = Finding("trace", "bundled", "1", inputs)
    assert finding.exact == ("current",)
    given = [i.given for i in finding.with_names({"a.csv": "first recording"}).inputs]
    assert given == ["12", "13", "120 +-1", "first recording", None]
