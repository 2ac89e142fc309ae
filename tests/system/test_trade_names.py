"""Abbreviations of a plate in place of names: as an option, a key, a column and in Python."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.engine.trade_names import ABBREVIATIONS, MEANT, abbreviations, under_names

Cli = Callable[..., Any]
CALCULATIONS = wirecalc.build(bundled_only=True).calculations
INPUTS = {i.name for p in CALCULATIONS.values() for i in p.calculation.inputs}
NAMES = ("--peak", "11 A", "--settled", "1.2 A", "--settle-time", "0.4 s", "--meter-mode", "inrush")
PLATE = {"rated_load_current": "1.6 A", "locked_rotor_current": "12 A"}


def test_each_stands_for_inputs_that_there_are_and_is_no_name_itself() -> None:
    for table in (ABBREVIATIONS, MEANT):
        assert {name for names in table.values() for name in names} <= INPUTS
    assert not set(ABBREVIATIONS) & INPUTS


def test_as_an_option_small_or_large(cli_main: Cli) -> None:
    options = ("--rated-load-current", "1.6 A", "--locked-rotor-current", "12 A")
    plain = cli_main("inrush", *options, *NAMES)
    for rla, lra in (("--rla", "--lra"), ("--RLA", "--LRA")):
        assert cli_main("inrush", rla, "1.6 A", lra, "12 A", *NAMES) == plain
    assert plain.status in (0, 3)


def test_in_python_under_its_name() -> None:
    given = {"peak": "11 A", "settled": "1.2 A"}
    short = wirecalc.run("inrush", rla="1.6 A", LRA="12 A", **given)
    plain = wirecalc.run("inrush", **PLATE, **given)
    assert (short.inputs, short.verdict) == (plain.inputs, plain.verdict)
    assert {"rated_load_current", "locked_rotor_current"} <= {i.name for i in short.inputs}


def test_in_a_sheet_in_check_readings_and_plate(
    write_sheet: Callable[..., Path], cli_main: Cli
) -> None:
    def text(more: str, **check: str) -> str:
        path = write_sheet({"calculation": "inrush", "peak": "11 A"} | check, more=more)
        done = cli_main("job", str(path))
        assert done.status in (0, 1, 3), done.err
        return str(done.out)

    plain = text("", **PLATE)
    assert text("", rla="1.6 A", LRA="12 A") == plain
    plate = '\n[nameplate]\nRLA = "1.6 A"\nLRA = "12 A"\n'
    assert text(plate) == plain
    readings = '\n[readings.start]\nrla = "1.6 A"\nlra = "12 A"\n'
    assert text(readings, uses="start") == plain


@pytest.mark.parametrize("head", ["lra,rla,peak", "LRA [A],RLA (A),peak", "Lra,rla A,peak"])
def test_as_a_column(tmp_path: Path, cli_main: Cli, head: str) -> None:
    def rows(header: str, first: str) -> str:
        path = tmp_path / "starts.csv"
        path.write_text(f"{header}\n{first},11 A\n", encoding="utf-8")
        done = cli_main("batch", "inrush", str(path), "--format", "csv")
        assert done.status in (0, 1, 3), done.err
        return str(done.out)

    cells = [
        value if "A" in name[3:] else f"{value} A"
        for name, value in zip(head.split(","), ("12", "1.6"), strict=False)
    ]
    plain = rows("locked_rotor_current,rated_load_current,peak", "12 A,1.6 A")
    assert rows(head, ",".join(cells)) == plain


def test_with_two_meanings_it_is_refused_with_both(cli_main: Cli) -> None:
    both = ("marked_capacitance", "measured_capacitance")
    assert "mfd" not in abbreviations(both)
    done = cli_main("capacitor", "--mfd", "30 uF")
    assert done.status == 2
    assert "--mfd: there is no such option" in done.err
    assert "--marked-capacitance or --measured-capacitance" in done.err
    with pytest.raises(wirecalc.BadInput, match="--marked-capacitance or --measured-capacitance"):
        wirecalc.run("capacitor", mfd="30 uF")
    one = ("discharge", "--capacitor-voltage", "240 V", "--resistor", "20 kohm")
    assert cli_main(*one, "--mfd", "30 uF") == cli_main(*one, "--marked-capacitance", "30 uF")
    assert abbreviations(["marked_capacitance"])["mfd"] == "marked_capacitance"


@pytest.mark.parametrize("word", ["amps", "length", "time", "temp", "volts", "gauge"])
def test_a_word_that_says_less_than_a_name_is_never_taken(word: str) -> None:
    for provided in CALCULATIONS.values():
        assert word not in abbreviations([i.name for i in provided.calculation.inputs])


def test_given_under_both_names_it_is_refused(cli_main: Cli) -> None:
    twice = cli_main("inrush", "--rla", "1.6 A", "--rated-load-current", "1.7 A", *NAMES)
    assert (twice.status, twice.out) == (2, "")
    assert "was given 2 times" in twice.err
    with pytest.raises(wirecalc.BadInput, match="rla: inrush has no such input"):
        wirecalc.run("inrush", rla="1.6 A", rated_load_current="1.7 A", peak="11 A")
    given = {"rla": 1, "rated_load_current": 2}
    assert under_names(given) == given
