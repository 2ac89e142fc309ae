"""What README and docs take from the code is as the code has it."""

from __future__ import annotations

import pytest

from .written import MADE, ROOT

COMMAND = ".venv/bin/python -m tests.system.written"


@pytest.mark.parametrize("page", MADE)
def test_a_page_is_as_the_code_has_it(page: str) -> None:
    written = (ROOT / page).read_text(encoding="utf-8")
    assert written == MADE[page](written), f"run: {COMMAND}"
