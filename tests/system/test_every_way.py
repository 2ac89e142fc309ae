"""Every bundled calculation answers alike from the command line, Python and a job sheet."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import wirecalc
from tests.calculations.trials import CATALOGUE, FILED, TRIALS
from wirecalc import cli
from wirecalc.engine.inputs import Input

NAMES = sorted(set(TRIALS) - set(FILED))


def examples(name: str) -> dict[str, object]:
    """Return the example of every input that stands by itself, a list where it may be one."""
    inputs = CATALOGUE.calculations[name].calculation.inputs
    shown = [i for i in inputs if alone(i) and i.name not in TRIALS[name].apart]
    return {i.name: [i.kind.example] if i.many else i.kind.example for i in shown}


def alone(declared: Input) -> bool:
    kind = declared.kind
    return not kind.goes_with and not kind.of_file and declared.name != "by"


@pytest.mark.parametrize("name", NAMES)
def test_three_ways_one_answer(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    given = examples(name)
    expected = wirecalc.run(name, **given)
    words = [name, "--format", "json"]
    for key, value in given.items():
        words += [f"--{key.replace('_', '-')}", value[0] if isinstance(value, list) else str(value)]
    status = cli.main(words)
    typed = json.loads(capsys.readouterr().out)
    sheet = tmp_path / "sheet.toml"
    lines = "\n".join(f"{key} = {json.dumps(value)}" for key, value in given.items())
    sheet.write_text(f'[job]\ntitle = "t"\n[[check]]\ncalculation = "{name}"\n{lines}\n')
    cli.main(["job", str(sheet), "--format", "json"])
    (check,) = json.loads(capsys.readouterr().out)["checks"]
    assert typed["verdict"] == check["finding"]["verdict"] == expected.verdict
    assert typed["criteria"] == check["finding"]["criteria"]
    assert len(typed["criteria"]) == len(expected.criteria)
    assert typed["figures"] == check["finding"]["figures"]
    assert status == {"fail": 1, "cannot tell": 3}.get(str(expected.verdict), 0)
