"""House rules only tighten: whatever a rule yields or does, no verdict gets better by it, and
nothing that the calculation itself found is removed or changed.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import (
    Caution,
    Confidence,
    Count,
    Finding,
    HouseRule,
    Item,
    Reading,
    Source,
    Verdict,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    figure,
    not_checked,
    requires,
)
from wirecalc.engine.from_plugins import ProvidedCalculation, ProvidedRule
from wirecalc.engine.running import run
from wirecalc.said import items

PHASES = [phase for phase in Phase if phase is not Phase.explain]
BOUNDED = settings(deadline=None, max_examples=200, phases=PHASES)

PUBLISHED = Source("made-up", "a limit made up for this test", confidence=Confidence.CONFIRMED)
RECALLED = Source("recalled", "a limit made up for this test", confidence=Confidence.MEMORY)
OWN_NAMES = ("held", "spread", "looked at", "kept")
CALC = "pulling"  # the plugin that provides the calculation


@calculation(part="a test", cautions=("pull-01",))
def sample(
    force: Annotated[float, Reading("lbf", low=0, high=500, text="force that was held")],
    strands: Annotated[list[int], Count("strands of each wire", low=1, high=99)],
    seen: Annotated[int, Count("how often it was looked at", low=0, high=9)] = 0,
) -> Iterator[Item]:
    """Does this made-up joint hold?"""
    yield figure("held by each strand", force / sum(strands), "lbf")
    yield at_least("held", force, 20.0, "lbf", caution=25.0, source=PUBLISHED)
    yield at_most("spread", max(strands) - min(strands), 10, source=PUBLISHED, advisory=True)
    if seen == 1:
        yield cannot_tell("looked at", "once is no look")
    elif seen > 1:
        yield requires("looked at", seen < 9, says="worn out by looking", source=RECALLED)
    yield at_least("kept", sum(strands), 7, source=PUBLISHED)


texts = st.sampled_from([*OWN_NAMES, "thickness", "held by the shop", "house rule tightener", ""])
levels = st.floats(-100, 100) | st.sampled_from([0.0, 20.0, 25.0])
criteria = st.one_of(
    st.builds(
        lambda judge, n, a, limit, care, mild, source: judge(
            n, a, limit, "lbf", source=source, caution=care, advisory=mild
        ),
        st.sampled_from([at_least, at_most]),
        texts,
        levels,
        levels,
        st.none() | levels,
        st.booleans(),
        st.sampled_from([PUBLISHED, RECALLED]),
    ),
    st.builds(
        lambda n, holds, mild: requires(n, holds, says="so", source=PUBLISHED, advisory=mild),
        texts,
        st.booleans(),
        st.booleans(),
    ),
    st.builds(lambda n: cannot_tell(n, "so"), texts),
)
cautions = st.builds(Caution, st.sampled_from(["shop-1", "pull-01", "ans-01"]), st.just("whatever"))
wrong = st.sampled_from(
    [
        None,
        "pass",
        3.0,
        {},
        Verdict.PASS,
        figure("held", 1e9),
        not_checked("nothing"),
        at_least("held", float("nan"), 1.0, source=PUBLISHED),
        at_least("held", "much", 1.0, source=PUBLISHED),  # type: ignore[arg-type]
    ]
)
yields = st.lists(criteria | cautions, max_size=4) | st.lists(criteria | wrong, max_size=3)
raised = st.sampled_from([None, ValueError("no"), KeyError("x"), ZeroDivisionError()])
inputs = st.fixed_dictionaries(
    {
        "force": st.tuples(
            st.integers(0, 60), st.sampled_from(["", " ±5%", " ±4 lbf", " ±70%"])
        ).map(lambda p: f"{p[0]} lbf{p[1]}"),
        "strands": st.lists(st.integers(1, 30), min_size=1, max_size=3),
    },
    optional={"seen": st.integers(0, 9)},
)
GENTLE = {"force": "24 lbf ±3 lbf", "strands": [7, 19]}


def rule(
    yielded: Sequence[object],
    error: BaseException | None = None,
    *,
    provider: str = "shop",
    calculations: tuple[str, ...] = ("*",),
    spoil: bool = False,
) -> ProvidedRule:
    """A house rule that yields some things, may spoil what it was handed, and may raise."""

    def tighten(given_: Mapping[str, Any], found: Sequence[Item]) -> Iterator[Any]:
        yield from yielded
        if spoil:
            for value in given_.values():
                if isinstance(value, list):
                    value[:] = [1_000_000]
            dict(given_).clear()
        if error is not None:
            raise error

    return ProvidedRule(provider, "1", HouseRule("tightener", calculations, tighten))


def found(given_: Mapping[str, object], *rules: ProvidedRule) -> Finding:
    own = {n: list(v) if isinstance(v, list) else v for n, v in given_.items()}
    return run(ProvidedCalculation(CALC, "1", sample), own, rules=rules)


def check_tightened(plain: Finding, ruled: Finding) -> None:
    assert plain.verdict is not None
    assert ruled.verdict is not None
    assert ruled.verdict.rank >= plain.verdict.rank
    for own in plain.criteria:
        assert own in ruled.criteria
    assert ruled.answers == plain.answers
    assert [(f.figure.value, f.low, f.high) for f in ruled.figures] == [
        (f.figure.value, f.low, f.high) for f in plain.figures
    ]
    assert {n.what for n in plain.not_checked} <= {n.what for n in ruled.not_checked}
    assert {c.key for c in plain.cautions} <= {c.key for c in ruled.cautions}


@BOUNDED
@given(inputs, yields, raised)
def test_a_house_rule_never_improves_a_verdict(
    given_: dict[str, object], yielded: list[object], error: BaseException | None
) -> None:
    check_tightened(found(given_), found(given_, rule(yielded, error)))


@BOUNDED
@given(inputs, yields, yields, yields)
def test_several_house_rules_never_improve_a_verdict(
    given_: dict[str, object], one: list[object], two: list[object], three: list[object]
) -> None:
    rules = [rule(one), rule(two, provider="another"), rule(three, provider="third")]
    check_tightened(found(given_), found(given_, *rules))


@BOUNDED
@given(inputs, st.lists(criteria, max_size=3))
def test_a_rule_of_a_plugin_with_the_calculations_own_name_never_improves_a_verdict(
    given_: dict[str, object], yielded: list[object]
) -> None:
    check_tightened(found(given_), found(given_, rule(yielded, provider=CALC)))


@BOUNDED
@given(inputs)
def test_a_rule_that_spoils_its_inputs_changes_nothing_of_the_calculation(
    given_: dict[str, object],
) -> None:
    check_tightened(found(given_), found(given_, rule([], spoil=True)))


@pytest.mark.parametrize("key", ["pull-01", "ans-01"])
def test_a_rule_cannot_change_the_text_of_a_caution(key: str) -> None:
    plain = {c.key: c.text for c in found(GENTLE).cautions}
    ruled = found(GENTLE, rule([Caution(key, "nothing to take care of")]))
    texts_of = [c.text for c in ruled.cautions if c.key == key]
    assert plain[key] in texts_of


def test_a_plugin_cannot_change_the_text_of_a_caution_of_the_library() -> None:
    published = items.caution("pull-01")
    own = Caution("shop-1", "wear gloves")
    items.use_cautions([Caution("pull-01", "nothing to take care of"), own])
    try:
        assert items.caution("pull-01") == published
        assert items.caution("shop-1") == own
    finally:
        items.use_cautions([])


@pytest.mark.parametrize("error", [ValueError("no"), SystemExit(0), RecursionError()])
def test_a_rule_that_raises_makes_the_finding_cannot_tell(error: BaseException) -> None:
    strong = {"force": "30 lbf", "strands": [7]}
    assert found(strong).verdict is Verdict.PASS
    ruled = found(strong, rule([], error))
    assert ruled.verdict is Verdict.CANNOT_TELL
    assert ruled.decided_by is not None
    assert "tightener" in ruled.decided_by.reason


def test_a_rule_that_never_ends_makes_the_finding_cannot_tell() -> None:
    def endless(given_: Mapping[str, Any], own: Sequence[Item]) -> Iterator[Item]:
        number = 0
        while True:
            number += 1
            yield requires(f"number {number}", True, says="", source=PUBLISHED)

    ruled = found(
        {"force": "30 lbf", "strands": [7]},
        ProvidedRule("shop", "1", HouseRule("endless", ("sample",), endless)),
    )
    assert ruled.verdict is Verdict.CANNOT_TELL


@BOUNDED
@given(inputs, st.floats(0, 60))
def test_the_stricter_of_two_limits_rules_and_both_are_shown(
    given_: dict[str, object], stricter: float
) -> None:
    def tighten(values: Mapping[str, Any], own: Sequence[Item]) -> Iterator[Item]:
        yield at_least("held", values["force"], stricter, "lbf", source=PUBLISHED)

    plain = found(given_)
    ruled = found(given_, ProvidedRule("shop", "1", HouseRule("held", ("sample",), tighten)))
    shown = [c for c in ruled.criteria if c.criterion.name == "held"]
    assert [c.provider for c in shown] == [CALC, "shop"]
    ranks = [c.verdict.rank for c in (*plain.criteria, shown[1])]
    assert ruled.verdict is not None
    assert ruled.verdict.rank == max(ranks)


@pytest.mark.parametrize("error", [ValueError("no"), SystemExit(0)])
def test_a_calculation_that_raises_is_a_defect_of_its_plugin(error: BaseException) -> None:
    @calculation(part="a test")
    def broken(force: Annotated[float, Reading("lbf", low=0, text="any force")]) -> Iterator[Item]:
        """Does it raise?"""
        yield figure("force", force, "lbf")
        raise error

    with pytest.raises(wirecalc.PluginDefect, match="broken"):
        run(ProvidedCalculation("shop", "1", broken), {"force": "1 lbf"})
