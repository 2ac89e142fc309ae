"""One step each side of a limit: the verdict there, worked out by hand from the source named.

The steps stand in the trial of each calculation.
"""

from __future__ import annotations

import pytest

import wirecalc
from tests.calculations.trial import Step
from tests.calculations.trials import CATALOGUE, TRIALS
from tests.plain_words import without_plain_words
from wirecalc import BadInput

from .records import case_file

STEPS = [
    pytest.param(name, step, id=f"{name}: {step.criterion}, {step.limit}"[:100])
    for name, trial in TRIALS.items()
    for step in trial.steps
]


def _verdict(name: str, step: Step, typed: str) -> str:
    """Return what the criterion says of this step, or `refused`, or `not judged`."""
    calculation = CATALOGUE.calculations[name].calculation
    given = {**calculation.example_inputs, **step.given}
    given[step.input] = [typed] if calculation.input(step.input).many else typed
    try:
        finding = wirecalc.run(name, **{k: v for k, v in given.items() if v != ""})
    except BadInput as error:
        return "refused" if "refused" in step.verdicts.values() else f"refused: {error}"
    assert not without_plain_words(finding)
    judged = [c for c in finding.criteria if c.criterion.name == step.criterion]
    return str(judged[0].verdict) if judged else "not judged"


@case_file("tests/calculations")
@pytest.mark.parametrize(("name", "step"), STEPS)
def test_a_step_each_side_of_a_limit(name: str, step: Step) -> None:
    found = {typed: _verdict(name, step, typed) for typed in step.verdicts}
    assert found == step.verdicts


@case_file("tests/calculations")
@pytest.mark.parametrize(("name", "step"), STEPS)
def test_a_row_says_its_limit_and_its_source(name: str, step: Step) -> None:
    assert step.limit and step.source, name
    assert len(set(step.verdicts.values())) > 1
