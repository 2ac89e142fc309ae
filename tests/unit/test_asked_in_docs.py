"""The conversations that the pages show: what is typed there gives what stands there."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from wirecalc import build
from wirecalc.asking.job_interview import Interview
from wirecalc.commands.dialogue import converse
from wirecalc.commands.job_dialogue import lead_through

DOCS = Path(__file__).parents[2] / "docs"
CATALOGUE = build(bundled_only=True)
SHOWN = [
    (page.name, found[1], found[2])
    for page in sorted(DOCS.glob("*.md"))
    for found in re.finditer(
        r"^```text\n\$ wirecalc ask (\S+)\n(.*?)^```", page.read_text("utf-8"), re.M | re.S
    )
]


def test_pages_show_one_of_each() -> None:
    assert [(page, name) for page, name, _ in SHOWN] == [
        ("job-sheet.md", "job"),
        ("terminal.md", "supply"),
    ]


@pytest.mark.parametrize(("page", "name", "shown"), SHOWN)
def test_conversation_goes_as_the_page_shows(page: str, name: str, shown: str) -> None:
    typed = iter(re.findall(r"^\w*(?: \d.*)?>(?: (.*))?$", shown, re.M))
    heard: list[str] = []

    def read(prompt: str) -> str:
        line = next(typed, None)
        if line is None:
            raise EOFError
        heard.append(f"{prompt}{line}".rstrip())
        return line

    lead(name, read, heard.append)
    text = re.sub(r"[ \t]+$", "", "\n".join(heard), flags=re.M)
    assert f"{text}\n".lstrip("\n").startswith(shown.rstrip("\n"))
    assert next(typed, None) is None


def lead(name: str, read: Callable[[str], str], say: Callable[[str], None]) -> None:
    try:
        if name == "job":
            lead_through(Interview({}, CATALOGUE, Path(), "2026-01-27"), read, say, lambda: None)
        else:
            calc = CATALOGUE.calculations[name].calculation
            runs = [
                lambda given: CATALOGUE.run(name, given),
                lambda given: CATALOGUE.run(name, given, origin="sheet", missing_is_unknown=True),
            ]
            converse(calc, *runs, read, say)
    except EOFError:
        pass
