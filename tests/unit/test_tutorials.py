"""The tutorials, followed from front to back in an empty folder."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.system.followed import FOLLOWED, followed, steps


@pytest.mark.parametrize("page", FOLLOWED, ids=lambda page: page.stem)
def test_each_line_prints_what_stands_below_it(page: Path, tmp_path: Path) -> None:
    text = page.read_text(encoding="utf-8")
    assert {"console", "sh"} <= {step.kind for step in steps(text)}
    assert [step.file for step in steps(text) if step.file]
    assert followed(text, tmp_path) == text
