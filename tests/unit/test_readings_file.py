"""Files of readings: delimiters, units, marks, decimal commas, ragged rows, the meter's error."""

from pathlib import Path

import pytest

from wirecalc.base.errors import BadText
from wirecalc.recorded.files import ReadingsFile
from wirecalc.typed.quantity_kinds import Reading

KIND = ReadingsFile(
    {"force": Reading("lbf", low=0, high=100, text="force")},
    text="pulls",
    error_input="force_error",
    comma_input="decimal_comma",
)


def read(tmp_path: Path, text: str, encoding: str = "utf-8", **companions: object):  # type: ignore[no-untyped-def]
    path = tmp_path / "pulls.csv"
    path.write_text(text, encoding=encoding)
    return KIND.read_with(str(path), companions)


@pytest.mark.parametrize(
    "text",
    [
        "force_lbf,learner\n24.1,a\n22.6,b\n",
        "force (lbf);learner\n24.1;a\n22.6;b\n",
        "learner\tforce [lbf]\na\t24.1\nb\t22.6\n",
        "force,learner\n24.1 lbf,a\n22.6 lbf,b\n",
        "\ufeffforce_lbf,learner\r\n24.1,a\r\n\r\n22.6,b\r\n",
    ],
)
def test_reads_any_common_form(tmp_path: Path, text: str) -> None:
    value = read(tmp_path, text).value
    assert list(value.numbers["force"]) == [24.1, 22.6]
    assert list(value.words["learner"]) == ["a", "b"]
    assert str(value) == "pulls.csv, 2 rows"


def test_converts_the_unit_of_the_header(tmp_path: Path) -> None:
    value = read(tmp_path, "force_N\n44.482216152605\n").value
    assert value.numbers["force"][0] == pytest.approx(10.0)  # exact, NIST SP 811


def test_decimal_commas_are_read_only_when_said(tmp_path: Path) -> None:
    text = "force_lbf;learner\n24,1;a\n"
    assert read(tmp_path, text, decimal_comma="yes").value.numbers["force"] == (24.1,)
    with pytest.raises(BadText, match="say that commas are decimal"):
        read(tmp_path, text)


@pytest.mark.parametrize(
    ("error", "off"), [("1%", 0.2), ("±1%", 0.2), ("+/-0.5 lbf", 0.5), ("(1%+2)", 0.4)]
)
def test_meter_error_of_the_column(tmp_path: Path, error: str, off: float) -> None:
    found = read(tmp_path, "force_lbf\n20.0\n", force_error=error)
    assert found.low.numbers["force"][0] == pytest.approx(20.0 - off)
    assert found.high.numbers["force"][0] == pytest.approx(20.0 + off)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "holds no readings"),
        ("force_lbf\n", "holds no readings"),
        ("pull_lbf\n24\n", "no column force"),
        ("force\n24\n", "write force_lbf in the header"),
        ("force_mm\n24\n", "a unit of length"),
        ("force_lbf,a\n24,x\n25\n26,y,z\n", "other counts in row 3, 4"),
        ("force_lbf\nmany\n", "row 2: 'many' is no number"),
        ("force_lbf\nnan\n", "row 2: 'nan' is no number"),
        ("force_lbf\n1_0\n", "row 2: '1_0' is no number"),
        ("force_lbf\n24\n240\n", "row 3: outside from 0 up to 100 lbf"),
    ],
)
def test_refuses(tmp_path: Path, text: str, says: str) -> None:
    with pytest.raises(BadText) as caught:
        read(tmp_path, text)
    assert says in str(caught.value)


def test_missing_and_unreadable_files(tmp_path: Path) -> None:
    with pytest.raises(BadText, match="there is no file"):
        KIND.read(str(tmp_path / "none.csv"))
    with pytest.raises(BadText, match="cannot be read"):
        read(tmp_path, "force_lbf\n24\n", encoding="utf-16")
    with pytest.raises(BadText, match="not the name of a file"):
        KIND.read(24)
