"""A data frame with what each of its rows comes to beside it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import BadInput

pa = pytest.importorskip("pyarrow")
FRAME = {
    "wire": ["18 AWG", "18 AWG", "18 AWG", None],
    "force [lbf]": [24.0, 17.5, 24.0, 1e-05],
    "tool": ["a", "b", "c", "d"],
}


def evaluated(frame: object, **shared: Any) -> Any:
    return wirecalc.evaluate(frame, "pull", keep=["tool"], terminal="ring", **shared)


def test_each_row_has_what_decided_beside_it() -> None:
    found = evaluated(pa.table(FRAME)).to_pylist()
    assert [(r["tool"], r["verdict"]) for r in found] == [
        *(("a", "pass"), ("b", "fail"), ("c", "pass"), ("d", "refused"))
    ]
    alone = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="17.5 lbf").decided_by
    assert alone is not None
    weak = found[1]
    assert (weak["actual"], weak["limit"], weak["margin"]) == (17.5, 20.0, -2.5)
    assert (weak["criterion"], weak["unit"]) == ("pull-out force", "lbf")
    assert (weak["reason"], weak["next"]) == (alone.reason, alone.action)
    assert "wire: is needed" in found[3]["reason"]
    assert found[3]["actual"] is None


def test_parts_of_a_table_are_one_table() -> None:
    parts = pa.concat_tables([pa.table(FRAME), pa.table(FRAME).slice(1, 2)])
    verdicts = evaluated(parts).column("verdict").to_pylist()
    assert verdicts == ["pass", "fail", "pass", "refused", "fail", "pass"]
    assert evaluated(pa.table(FRAME).slice(0, 0)).num_rows == 0


def test_a_frame_of_polars() -> None:
    polars = pytest.importorskip("polars")
    found = polars.from_arrow(evaluated(polars.DataFrame(FRAME)))
    assert found["verdict"].to_list() == ["pass", "fail", "pass", "refused"]


def test_a_frame_of_pandas_with_an_index_of_its_own() -> None:
    pandas = pytest.importorskip("pandas")
    frame = pandas.DataFrame(FRAME, index=["w", "x", "y", "z"])[1:]
    found = evaluated(frame)
    assert found.column_names[:3] == list(FRAME)
    assert found.column("verdict").to_pylist() == ["fail", "pass", "refused"]


def test_the_lines_of_the_page_work_on_two_workers(tmp_path: Path) -> None:
    """Dask is large and no part of the tests' own; where it is installed, the page is run."""
    pytest.importorskip("dask.dataframe")
    pytest.importorskip("distributed")
    import subprocess
    import sys

    from pyarrow import parquet

    page = (Path(__file__).parents[2] / "docs" / "batch.md").read_text(encoding="utf-8")
    lines = page.partition("```python\nimport dask")[2].partition("```")[0]
    (tmp_path / "judge.py").write_text(f"import dask{lines}", encoding="utf-8")
    (tmp_path / "pulls").mkdir()
    pulls = pa.table({name: FRAME[name] for name in ("wire", "force [lbf]")})
    for number in range(3):
        parquet.write_table(pulls, tmp_path / "pulls" / f"{number}.parquet")
    subprocess.run((sys.executable, "judge.py"), cwd=tmp_path, check=True, timeout=120)
    found = parquet.read_table(tmp_path / "judged").column("verdict").to_pylist()
    assert found == ["pass", "fail", "pass", "refused"] * 3


def test_a_folder_of_parquet_part_by_part(tmp_path: Path) -> None:
    from pyarrow import dataset, parquet

    for number in range(2):
        parquet.write_table(pa.table(FRAME), tmp_path / f"{number}.parquet")
    parts = dataset.dataset(tmp_path).to_batches()
    found = pa.concat_tables([evaluated(part) for part in parts])
    assert found.column("verdict").to_pylist() == ["pass", "fail", "pass", "refused"] * 2


@pytest.mark.parametrize(
    ("frame", "said"),
    [
        ({**FRAME, "verdict": ["x"] * 4}, "column verdict: would stand there twice"),
        ({**FRAME, "tol": ["x"] * 4}, "pull has no such input"),
        ({"wire": ["18 AWG"], "tool": ["a"]}, "force: is needed"),
    ],
)
def test_wrong_columns_are_refused(frame: dict[str, Any], said: str) -> None:
    with pytest.raises(BadInput, match=said):
        evaluated(pa.table(frame))


def test_what_is_no_frame_is_refused() -> None:
    with pytest.raises(BadInput, match="list is no data frame"):
        evaluated([1, 2])
    with pytest.raises(BadInput, match="no calculation 'pul'"):
        wirecalc.evaluate(pa.table(FRAME), "pul")
