"""The page of what is left out says what the declarations say."""

from __future__ import annotations

from .left_out_table import PAGE, page


def test_the_page_is_that_of_the_declarations() -> None:
    written = PAGE.read_text(encoding="utf-8")
    assert written == page(), "run: .venv/bin/python tests/system/left_out_table.py"
