"""What short-time says of a wire that cannot be, and where no time was given."""

from __future__ import annotations

import pytest

import wirecalc


def short_time(wire: str = "1.5 mm2", amps: float = 172.5, **given: str) -> wirecalc.Finding:
    return wirecalc.run(
        "short-time", wire=wire, overcurrent=f"{amps} A", insulation="pvc-70", **given
    )


@pytest.mark.parametrize(
    ("wire", "strands", "words"),
    [
        ("14 AWG solid", "7", "14 AWG solid has one"),
        ("14 AWG stranded", "1", "has more"),
        ("26x30 AWG", "19", "has 26"),
    ],
)
def test_strands_that_the_wire_cannot_have(wire: str, strands: str, words: str) -> None:
    with pytest.raises(wirecalc.BadInput, match=words):
        short_time(wire, 100, strands=strands, cut_strands="0")


def test_strands_count_only_where_some_are_cut() -> None:
    whole, counted = (short_time(overcurrent_time="0.9 s", **n) for n in ({}, {"strands": "30"}))
    assert whole.verdict == counted.verdict == "marginal"
    cut = short_time(overcurrent_time="0.9 s", strands="30", cut_strands="10")
    assert cut.verdict == "fail"


def test_no_time_no_verdict() -> None:
    assert short_time().verdict is None
