"""The repairs that docs tell: what is worked by hand on a page is what its sheet comes to.

The figures of the pages are worked by hand; machines and readings are invented.
"""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

from wirecalc.in_page.asked import Page
from wirecalc.said.findings import Judged

from .pages import EXAMPLES, evaluated
from .pocket import answered

DOCS = Path(__file__).parents[2] / "docs"
PAGES = sorted(DOCS.glob("repair-*.md"))
ROW = re.compile(r"^\| ([^|]+) \| ([^|]+) \| ([^|]+) \| ([^|]+) \|$", re.MULTILINE)
BOLD = re.compile(r"\*\*(-?[0-9.]+)\*\*")


def rows(page: Path) -> dict[str, tuple[list[str], list[str], str]]:
    """Each check by its title and stage: the numbers in bold, those of its limit, its verdict."""
    found = ROW.findall(page.read_text(encoding="utf-8"))[2:]
    return {
        title: (BOLD.findall(by_hand), BOLD.findall(limit), verdict)
        for title, by_hand, limit, verdict in found
    }


def is_near(by_hand: str, shown: float) -> bool:
    """Whether a number worked by hand is another, within its last digit."""
    last = 10.0 ** -len(by_hand.partition(".")[2])
    return abs(float(by_hand) - shown) <= 0.51 * last


def compare(title: str, judged: Judged, by_hand: list[str], limit: list[str]) -> None:
    of = judged.criterion
    if by_hand:
        assert is_near(by_hand[-1], float(of.actual or 0)), (title, by_hand, of.actual)
    if limit:
        known = [n for n in (of.limit, of.caution_limit) if n is not None]
        assert any(is_near(limit[-1], float(n)) for n in known), (title, limit, known)


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.stem)
def test_every_verdict_is_worked_by_hand_and_is_that_of_the_sheet(page: Path) -> None:
    by_hand = rows(page)
    job = evaluated(EXAMPLES / f"{page.stem}.toml")
    stages = {"as found": ", as found", "option": ", option", "as left": ""}
    told = {f"{c.title}{stages[c.stage]}": c for c in job.checks if c.verdict is not None}
    assert set(by_hand) == set(told)
    assert job.verdict == "pass"
    for title, check in told.items():
        numbers, limit, verdict = by_hand[title]
        assert verdict == str(check.verdict), title
        assert check.decided_by is not None
        compare(title, check.decided_by, numbers, limit)


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.stem)
def test_a_repair_was_found_failing_and_says_what_cannot_be_told(page: Path) -> None:
    """Each goes from a fail to a pass, by dead tests, joint, power, and the machine's own work."""
    job = evaluated(EXAMPLES / f"{page.stem}.toml")
    found = {str(c.verdict) for c in job.checks if c.stage != "as left"}
    assert {"fail", "cannot tell"} <= found
    steps = {c.step for c in job.checks}
    assert {"dead tests", "parts", "wire", "joint", "prove the joint"} <= steps
    assert {"before power", "power up", "return to service"} <= steps
    assert sum(bool(numbers) for numbers, _, _ in rows(page).values()) >= 15


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.stem)
def test_a_repair_that_is_taken_up_by_questions_asks_nothing_twice(page: Path) -> None:
    """On the terminal and in the page alike: only checks that were not made are offered."""
    text = (EXAMPLES / f"{page.stem}.toml").read_text(encoding="utf-8")
    checks = tomllib.loads(text)["check"]
    made = {c["name"] + (" (as found)" if "stage" in c else "") for c in checks}
    of_page = Page()
    done = answered(of_page, {"do": "job", "step": "open", "sheet": text})
    says = []
    while (asks := done["asks"]) is not None and len(says) < 20:
        says.append(asks["says"])
        assert "is needed" not in asks["says"]
        assert not made & set(asks.get("choices", ()))
        done = answered(of_page, {"do": "job", "step": "answer", "typed": ""})
        assert not done.get("problems"), done["problems"]
    assert len(says) < 20
    assert answered(of_page, {"do": "job", "step": "report"})["job"]["verdict"] == "pass"
