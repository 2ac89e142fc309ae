"""The tutorials, followed from front to back in an empty folder."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.system.followed import DOCS, FOLLOWED, followed, steps


@pytest.mark.parametrize("page", FOLLOWED, ids=lambda page: page.stem)
def test_each_line_prints_what_stands_below_it(page: Path, tmp_path: Path) -> None:
    text = page.read_text(encoding="utf-8")
    assert {"console", "sh"} <= {step.kind for step in steps(text)}
    assert [step.file for step in steps(text) if step.file]
    assert followed(text, tmp_path) == text


def test_it_is_installed_as_the_readme_says() -> None:
    (line,) = re.findall(
        r"^    (python3 .*)$", FOLLOWED[0].read_text(encoding="utf-8"), re.MULTILINE
    )
    assert line in (DOCS.parent / "README.md").read_text(encoding="utf-8")
