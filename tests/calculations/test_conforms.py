"""What the shared tests need to know of `conforms`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, practice

from .trial import Bad, Span, Step, Trial, texts

GROUND = {
    "measured_value": "0.096 units",
    "error": "0.006 units",
    "limit_high": "0.100 units",
}
ANY = Span("-100 units", "1000000 units", "the cold of a freezer to any count of ohms")

TRIAL = Trial(
    good=GROUND | {"limit_low": "0.01 units"},
    zero=("measured_value", "limit_high", "limit_low"),
    printed=("measured_value", "error", "limit_high", "limit_low"),
    bad=(
        Bad("limit_low", "0.2 units", "not below the upper limit", "swap them"),
        Bad("error_is", "sure", "'sure'", "normal-95"),
    ),
    always={
        "measured_value": texts(["0.09 units", "0.096 units", "0.1 units", "0.11 units"]),
        "error": texts(["0.002 units", "0.006 units"]),
        "limit_high": texts(["0.100 units"]),
    },
    sometimes={
        "limit_low": texts(["0.01 units"]),
        "error_is": texts(["normal-95", "uniform", "triangular"]),
    },
    spans={
        "measured_value": ANY,
        "limit_high": ANY,
        "limit_low": ANY,
        "error": Span("0 units", "1000000 units", "a reading without error decides", over=True),
    },
    why="A reading that its meter can't settle passes nobody.",
    cautions=("meter-02",),
    not_checked=("leaves out", "known before"),
    steps=(
        Step(
            "under the upper limit",
            "measured_value",
            {"0.094 units": "pass", "0.0941 units": "cannot tell", "0.1061 units": "fail"},
            given=GROUND,
            limit="0.100, and 0.006 each way",
            source="the rule of every calculation here",
        ),
        Step(
            "over the lower limit",
            "measured_value",
            {"0.056 units": "pass", "0.0559 units": "cannot tell", "0.0439 units": "fail"},
            given=GROUND | {"limit_low": "0.050 units"},
            limit="0.050, and 0.006 each way",
            source="the rule of every calculation here",
        ),
    ),
)


def probability(**given: str) -> float:
    found = wirecalc.run("conforms", **given)
    return {f.figure.name: f.figure.value for f in found.figures}["probability of conformity"]


@memory("JCGM 106:2012, example of a Zener diode: -5.47 V, u 0.05 V, limit -5.40 V: 92 %")
def test_the_zener_diode() -> None:
    got = probability(measured_value="-5.47 units", error="0.10 units", limit_high="-5.40 units")
    assert got == pytest.approx(92, abs=0.5)


@memory("ILAC-G8:09/2019, table of guard bands: risk under 50, 5, 2.5 and 0.16 % at 0 to 1.5 U")
@pytest.mark.parametrize(("share", "risk"), [(0.0, 50), (0.83, 5), (1.0, 2.5), (1.5, 0.16)])
def test_what_a_guard_band_leaves(share: float, risk: float) -> None:
    got = probability(
        measured_value=f"{10 - share:.2f} units", error="1 units", limit_high="10 units"
    )
    assert 100 - got <= risk
    assert 100 - got == pytest.approx(risk, rel=0.17)


@independent("scipy: normal, uniform and triangular distributions")
@pytest.mark.parametrize("away", [-1.4, -0.6, 0.0, 0.3, 0.9, 1.2])
def test_shares_of_the_distributions(away: float) -> None:
    stats = pytest.importorskip("scipy.stats")
    given = {"measured_value": "5 units", "error": "1 units", "limit_high": f"{5 + away:.1f} units"}
    for name, law in (
        ("normal-95", stats.norm(0, 0.5)),
        ("uniform", stats.uniform(-1, 2)),
        ("triangular", stats.triang(0.5, -1, 2)),
    ):
        got = probability(**given, error_is=name)
        assert got == pytest.approx(100 * law.cdf(away), abs=1e-9)


@independent("arithmetic: both limits one standard uncertainty away leave 68.27 %")
def test_two_limits() -> None:
    got = probability(
        measured_value="5 units", error="1 units", limit_high="5.5 units", limit_low="4.5 units"
    )
    assert got == pytest.approx(68.27, abs=0.01)


@independent("GUM: a half width by 2, by the root of 3, by the root of 6")
@pytest.mark.parametrize(
    ("name", "divisor"), [("normal-95", 2), ("uniform", 1.7321), ("triangular", 2.4495)]
)
def test_standard_uncertainty(name: str, divisor: float) -> None:
    found = wirecalc.run("conforms", **GROUND, error_is=name)
    assert found.figures[0].figure.value == pytest.approx(0.006 / divisor, rel=1e-4)


@practice("a guard band makes the accepted span narrower, never wider")
def test_what_the_rules_say() -> None:
    found = wirecalc.run("conforms", **GROUND)
    (rules,) = found.listings
    assert [row[3] for row in rules.rows] == ["accepted", *["not accepted"] * 3]
    assert [row[1] for row in rules.rows] == pytest.approx([0.1, 0.09502, 0.094, 0.091])


@practice("without a limit nothing is decided")
def test_no_limit_is_refused() -> None:
    with pytest.raises(wirecalc.BadInput, match="no limit"):
        wirecalc.run("conforms", measured_value="1 units", error="0.1 units")
