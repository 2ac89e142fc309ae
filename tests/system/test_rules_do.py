"""A rules file says what its rules do: what changes nothing, what is advised, what a file makes
of the examples; and where an error is, once.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
MILD = """
[[rule]]
name = "mild"
calculations = ["pull"]
criterion = "pull-out force"
at_least = "{limit}"

[[rule]]
name = "advice"
calculations = ["pull"]
criterion = "pull-out force"
times = 1.5
advisory = true
"""
ONE = '[[rule]]\nname = "r"\ncalculations = ["{}"]\ncriterion = "{}"\n{}\n'


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[str], str]:
    """Write a rules file that is in force, and return its path."""

    def write(text: str) -> str:
        file = tmp_path / "shop.toml"
        file.write_text(text, encoding="utf-8")
        monkeypatch.setenv("WIRECALC_RULES", str(file))
        return str(file)

    return write


@pytest.mark.parametrize(
    ("limit", "says"),
    [  # UL 486A, 18 AWG: 20 lbf (3 copies seen)
        ("19.9 lbf", "19.9 lbf is milder than the 20 lbf of 'pull-out force', so it"),
        ("20 lbf", "20 lbf is the same as the 20 lbf of 'pull-out force', so it"),
        ("80 N", "17.98 lbf is milder than the 20 lbf of 'pull-out force', so it"),
        ("20.1 lbf", ""),
    ],
)
def test_a_limit_without_effect_is_named(
    cli_main: Command, shop: Callable[[str], str], limit: str, says: str
) -> None:
    file = shop(MILD.format(limit=limit))
    for words in (("rules", file), ("rules",)):
        done = cli_main(*words)
        assert done.status == 0
        named = [line for line in done.complaints if line.endswith("it changes nothing")]
        assert len(named) == bool(says)
        assert all(f"shop.toml, line 2: mild, on an example of pull: {says}" in n for n in named)


@pytest.mark.parametrize(
    ("calculation", "criterion", "asks", "without"),
    [  # the breaker's own 15 A, 5 % that are advised: behind these a binding 8 % has its effect
        ("breaker", "load on the breaker", 'at_most = "15.1 A"', True),
        ("breaker", "load on the breaker", 'at_most = "14.9 A"', False),
        ("supply", "volts lost with the load, of those at rest", 'at_most = "8 %"', False),
        (
            "supply",
            "volts lost with the load, of those at rest",
            'at_most = "8 %"\nadvisory = true',
            True,
        ),
    ],
)
def test_largest_limits_and_advised_ones(
    cli_main: Command,
    shop: Callable[[str], str],
    calculation: str,
    criterion: str,
    asks: str,
    without: bool,
) -> None:
    done = cli_main("rules", shop(ONE.format(calculation, criterion, asks)))
    assert done.status == 0
    assert ("so it changes nothing" in done.err) is without


def test_an_advised_rule_is_listed_as_one(cli_main: Command, shop: Callable[[str], str]) -> None:
    listed = cli_main("rules", shop(MILD.format(limit="21 lbf")), "--format", "json").json["rules"]
    asks = {r["name"]: r["asks"] for r in listed}
    assert asks["advice"].endswith("; advised: missed it is marginal, and no fail")
    assert "advised" not in asks["mild"]


def test_a_file_shows_what_it_changes_on_the_examples(
    cli_main: Command, shop: Callable[[str], str]
) -> None:
    """The example of pull is 24 lbf on 18 AWG; that of strands fails by itself."""
    kept = '\n[[rule]]\nname = "k"\ncalculations = ["gauge"]\nforbid = true\n'
    kept += (
        '\n[[rule]]\nname = "s"\ncalculations = ["strands"]\ninput = "cut_strands"\nat_most = 0\n'
    )
    file = shop(ONE.format("pull", "pull-out force", "times = 1.25") + kept)
    done = cli_main("rules", file)
    told = " ".join(done.out.partition("On the example of each")[2].split())
    assert "pull: PASS, now FAIL (r: 24 lbf is below 25 lbf)" in told
    assert "gauge: NO VERDICT, now FAIL (k: the shop does not use gauge)" in told
    assert "strands: FAIL as before" in told
    examples = cli_main("rules", file, "--format", "json").json["examples"]
    assert {e["calculation"]: (e["before"], e["after"]) for e in examples} == {
        "gauge": ("no verdict", "fail"),
        "pull": ("pass", "fail"),
        "strands": ("fail", "fail"),
    }
    assert "On the example" not in cli_main("rules").out


WRONG = {  # a file, and what is said of it, on one line
    "a name that is no text": (
        ONE.format("pull", "pull-out force", "times = 2").replace('"r"', "nan"),
        "line 2: name = nan is not right; write a text in quotes",
    ),
    "severity without a caution": (
        ONE.format("pull", "pull-out force", 'times = 2\nseverity = "stop"'),
        "line 6: severity says how grave a caution is, and there is no caution; "
        'write caution = "..." beside it, or leave it out',
    ),
    "a severity that there is none of": (
        '[[rule]]\nname = "r"\ncalculations = ["pull"]\ncaution = "Wait."\nseverity = "grave"\n',
        "line 5: severity says how grave a caution is; write stop, caution, note",
    ),
    "a limit that would loosen": (
        ONE.format("pull", "pull-out force", "times = 0.5"),
        "line 5: times = 0.5 would loosen a limit 'at least'; write a number over 1",
    ),
    "no TOML": (
        '[[rule]\nname = "r"\n',
        "line 1: is not TOML: Expected ']]' at the end of an array declaration "
        "(at line 1, column 7); a section has two brackets on each side: [[rule]]",
    ),
}


@pytest.mark.parametrize("case", WRONG)
def test_an_error_names_the_file_once_and_no_file_of_ours(
    cli_main: Command, shop: Callable[[str], str], case: str
) -> None:
    text, says = WRONG[case]
    done = cli_main("rules", shop(text))
    assert done.status == 2
    assert done.complaints == [f"shop.toml, {says}"]
    finding = cli_main(*PULL, "--format", "json").json
    (own,) = [c for c in finding["criteria"] if c["provider"] == "shop.toml"]
    assert finding["verdict"] == own["verdict"] == "cannot tell"
    assert says in own["reason"]
    assert (own["name"] + own["reason"]).count("shop.toml") == 1
    assert ".py" not in own["reason"]
