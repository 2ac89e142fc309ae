"""A text means the same wherever it is typed: command line, sheet, cell, `ask` and Python."""

from __future__ import annotations

import csv
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import cli
from wirecalc.commands.dialogue import MORE, converse
from wirecalc.plugging import host

BUILT = host.build(bundled_only=True)
SPLICE = {"barrel": "22-10 AWG"}
BREAKER = {"current": "8.7 A", "breaker": "15 A", "insulation_class": "60 C"}
CIRCUIT = {"breaker": "15 A"}

Meant = list[str] | None  # the texts that were understood, None where it is refused

CASES: list[tuple[str, str, Mapping[str, str], str, Meant]] = [
    ("splice", "wire", SPLICE, "2x18 AWG", ["18 AWG"] * 2),
    ("splice", "wire", SPLICE, "18 AWG + 16 AWG", ["18 AWG", "16 AWG"]),
    ("splice", "wire", SPLICE, "18,18,16 AWG", ["18 AWG", "18 AWG", "16 AWG"]),
    ("splice", "wire", SPLICE, "18 AWG; 16 AWG", ["18 AWG", "16 AWG"]),
    ("splice", "wire", SPLICE, "26x30 AWG", ["26x30 AWG"]),
    ("splice", "wire", SPLICE, "2.5 mm2", ["2.5 mm2"]),
    ("splice", "wire", SPLICE, "2.5 mm solid", ["2.5 mm solid"]),
    ("splice", "wire", SPLICE, "2,5 mm2", None),
    ("splice", "wire", SPLICE, "2.5 mm", None),
    ("splice", "wire", SPLICE, "18, 16 AWG, solid", None),
    ("splice", "wire", SPLICE, "18 AWG; 2.5 mm", None),
    ("breaker", "building_wire", BREAKER, "14 AWG", ["14 AWG"]),
    ("breaker", "building_wire", BREAKER, "2.5 mm2", ["2.5 mm2"]),
    ("breaker", "building_wire", BREAKER, "26x30 AWG", ["26x30 AWG"]),
    ("breaker", "building_wire", BREAKER, "2.5 mm", None),
    ("breaker", "building_wire", BREAKER, "2x18 AWG", None),
    ("breaker", "building_wire", BREAKER, "18 AWG; 16 AWG", None),
    ("breaker", "building_wire", BREAKER, "14,12 AWG", None),
    ("breaker", "building_wire", BREAKER, "2,5 mm2", None),
    ("circuit", "plug_loads", CIRCUIT, "5 A; 3.2 A", ["5 A", "3.2 A"]),
    ("circuit", "plug_loads", CIRCUIT, "5 A, 3.2 A", ["5 A", "3.2 A"]),
    ("circuit", "plug_loads", CIRCUIT, "5 A ±0.1 A; 3 A", ["5 A ±0.1 A", "3 A"]),
    ("circuit", "plug_loads", CIRCUIT, "1.30 A ±(2%+5)", ["1.30 A ±(2%+5)"]),
    ("circuit", "plug_loads", CIRCUIT, "5 A ±0.1 A, 3 A", None),
    ("circuit", "plug_loads", CIRCUIT, "5 A +/-0.1 A, 3 A", None),
    ("circuit", "plug_loads", CIRCUIT, "5 A +-0.1 A, 3 A", None),
    ("circuit", "plug_loads", CIRCUIT, "5, 3 A", None),
    ("circuit", "plug_loads", CIRCUIT, "5,3 A", None),
]


def by_python(calc: str, given: Mapping[str, str], _: Path, __: Any) -> Any:
    try:
        finding = wirecalc.run(calc, **given)
    except wirecalc.BadInput:
        return None
    return finding.verdict, [(i.name, i.given, i.understood or None) for i in finding.inputs]


def seen(out: str) -> Any:
    finding = json.loads(out)
    inputs = [(i["name"], i["given"], i["understood"]) for i in finding["inputs"]]
    return finding["verdict"], inputs


def by_command(calc: str, given: Mapping[str, str], _: Path, capsys: Any) -> Any:
    words = [f"--{name.replace('_', '-')}={text}" for name, text in given.items()]
    status = cli.main([calc, *words, "--format", "json"])
    out = capsys.readouterr().out
    return None if status == 2 else seen(out)


def by_sheet(calc: str, given: Mapping[str, str], folder: Path, capsys: Any) -> Any:
    lines = "\n".join(f"{name} = {json.dumps(text)}" for name, text in given.items())
    sheet = folder / "sheet.toml"
    sheet.write_text(f'[job]\ntitle = "t"\n[[check]]\ncalculation = "{calc}"\n{lines}\n', "utf-8")
    status = cli.main(["job", str(sheet), "--format", "json"])
    out = capsys.readouterr().out
    if status == 2:
        return None
    (check,) = json.loads(out)["checks"]
    return seen(json.dumps(check["finding"]))


def by_cell(calc: str, given: Mapping[str, str], folder: Path, capsys: Any) -> Any:
    file = folder / "rows.csv"
    with file.open("w", encoding="utf-8", newline="") as lines:
        csv.writer(lines).writerows([list(given), list(given.values())])
    status = cli.main(["batch", calc, str(file), "--format", "json"])
    out = capsys.readouterr().out
    return None if status == 2 else seen(json.dumps(json.loads(out.splitlines()[0])))


def by_asking(calc: str, given: Mapping[str, str], _: Path, __: Any) -> Any:
    """Answer each question; a refused answer is asked again, and then it is given up."""
    heard: list[str] = []
    again: set[str] = set()

    def read(prompt: str) -> str:
        name = prompt.split("> ")[0].split(" ")[0]
        if "(Enter ends" in prompt:
            return ""
        if name == MORE:
            return next((n for n in given if n not in again), "")
        if name in given and name in again:
            raise EOFError
        if name in given:
            again.add(name)
        return given.get(name, "")

    def compute(answers: Mapping[str, object]) -> Any:
        return BUILT.run(calc, answers)

    def probe(answers: Mapping[str, object]) -> Any:
        return BUILT.run(calc, answers, origin="sheet", missing_is_unknown=True)

    calculation = BUILT.calculations[calc].calculation
    try:
        asked = converse(calculation, compute, probe, read, heard.append)
    except EOFError:
        return None
    inputs = [(i.name, i.given, i.understood or None) for i in asked.finding.inputs]
    return asked.finding.verdict, inputs


@pytest.mark.parametrize("way", [by_python, by_command, by_sheet, by_cell, by_asking])
@pytest.mark.parametrize(("calc", "name", "rest", "text", "meant"), CASES)
def test_a_text_is_refused_or_understood_alike(
    way: Any,
    calc: str,
    name: str,
    rest: Mapping[str, str],
    text: str,
    meant: Meant,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(host, "build", lambda *_, **__: BUILT)
    capsys.readouterr()
    found = way(calc, {**rest, name: text}, tmp_path, capsys)
    if meant is None:
        assert found is None
        return
    verdict, inputs = found
    assert [given for named, given, _ in inputs if named == name] == meant
    apart = wirecalc.run(calc, **{**rest, name: meant if len(meant) > 1 else meant[0]})
    assert str(verdict) == str(apart.verdict)
    assert [shown for named, _, shown in inputs if named == name] == [
        i.understood or None for i in apart.inputs if i.name == name
    ]
