"""What an expert of the trade would say of these readings, written before the program was asked.

Each file in `cases` has the cases of one calculation, each with its reason and its source; some
were written blind, from `--help` alone (`blind = true`); `cases/README.md` has how many agreed at
first.
"""

from __future__ import annotations

import math
import tomllib
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import wirecalc
from tests.plain_words import without_plain_words
from wirecalc import BadInput

from .recorded import recorded
from .records import case_file, independent

ROOT = Path(__file__).parents[2]
FOLDER = Path(__file__).parent / "cases"
VERDICTS = {"pass", "marginal", "cannot tell", "fail", "refused", "none"}
KEYS = {"about", "given", "verdict", "next", "why", "source"}


def _marks(case: dict[str, Any]) -> tuple[pytest.MarkDecorator, ...]:
    """A case that is known to come out wrong says why, and tells when it no longer does."""
    return (pytest.mark.xfail(reason=case["open"]),) if "open" in case else ()


CASES = [
    pytest.param(
        path.stem,
        case,
        id=f"{path.relative_to(FOLDER).with_suffix('')}-{number}",
        marks=_marks(case),
    )
    for path in sorted(FOLDER.rglob("*.toml"))
    for number, case in enumerate(tomllib.loads(path.read_text(encoding="utf-8"))["case"], 1)
]


@case_file("tests/published/cases")
@pytest.mark.parametrize(("name", "case"), CASES)
def test_the_verdict_is_the_one_that_an_expert_gives(
    name: str, case: dict[str, Any], tmp_path: Path
) -> None:
    given = {n: str(ROOT / v) if _is_file(v) else v for n, v in case["given"].items()}
    if "recorded" in case:
        given["recording"] = str(tmp_path / "invented.csv")
        (tmp_path / "invented.csv").write_text(recorded(**case["recorded"]), encoding="utf-8")
    try:
        finding = wirecalc.run(name, **given)
    except BadInput as error:
        assert case["verdict"] == "refused", f"{case['about']}: refused: {error}"
        said = str(error)
    else:
        assert not without_plain_words(finding)
        why = finding.decided_by.because if finding.decided_by else ""
        assert str(finding.verdict or "none") == case["verdict"], f"{case['about']}: {why}"
        said = f"{finding.decided_by.action} {why}" if finding.decided_by else ""
        said += " ".join(a.text for a in finding.answers)
    assert case["next"].casefold() in said.casefold(), f"{case['about']}: {said}"
    if "never" in case:
        assert case["never"].casefold() not in said.casefold(), f"{case['about']}: {said}"


@case_file("tests/published/cases")
@pytest.mark.parametrize(("name", "case"), [p.values for p in CASES])
def test_a_case_says_what_it_is_why_and_from_where(name: str, case: dict[str, Any]) -> None:
    assert set(case) - {"blind", "blind_said", "open", "recorded", "never"} == KEYS, name
    assert case["verdict"] in VERDICTS
    for key in ("about", "why", "source"):
        assert len(case[key].split()) > 1, f"{name}: {key} says too little"


def _is_file(given: object) -> bool:
    """Whether a case gives a file of invented readings."""
    return isinstance(given, str) and given.startswith("tests/data/")


@independent("rms of a sine over whole cycles is its crest by the root of 2; numpy")
def test_an_invented_recording_holds_what_it_says() -> None:
    levels = [[0.0, 1.0], [10.0, 0.4], [1.2, 0.6]]
    waves = {c: np.array(_values(recorded(levels, 5000, 50, c))) for c in (math.inf, 10)}
    whole = waves[math.inf]
    assert len(whole) == 10_000
    assert not whole[:5000].any()
    assert math.sqrt(np.mean(whole[5000:7000] ** 2)) == pytest.approx(10, rel=1e-4)
    assert math.sqrt(np.mean(whole[7000:] ** 2)) == pytest.approx(1.2, rel=1e-3)
    assert whole.max() == pytest.approx(14.142, abs=0.001)
    assert np.array_equal(waves[10], np.clip(whole, -10, 10))
    assert _values(recorded(levels, 5)) == [0] * 5 + [10] * 2 + [1.2] * 3


def _values(text: str) -> list[float]:
    """Return the second column of a recording."""
    return [float(line.split(",")[1]) for line in text.splitlines()[1:]]
