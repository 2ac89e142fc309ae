"""No excuse on a job sheet makes a check that failed, or was not made, count as good."""

from __future__ import annotations

import pytest

from tests.unit import sheets
from tests.unit.sheets import check, checks
from wirecalc.base.errors import BadInput
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.sheet import confirmed, kinds
from wirecalc.plugging import host

CATALOGUE = host.build(bundled_only=True)
KINDS = [k for k in kinds.table_kinds() if k != "bench"]
EXCUSES = (
    "",
    "-",
    "none",
    "n/a",
    "no time",
    "taped",
    "replaced",
    "customer said ok",
    "it already runs",
    "compressor is fine",
    "measured it last week",
    "clamp meter at home",
    "door gasket replaced only",
    "new house",
    "the electrician did the circuit",
    "it was unplugged",
    "door is fine",
    "it opened from age",
    "only a small job",
    "the other shop tested it",
    "warranty repair, parts only",
)


def verdict(text: str) -> str:
    """The verdict of a sheet, or that it is refused."""
    try:
        return jobsheet.evaluate(sheets.read(text), CATALOGUE).verdict
    except BadInput:
        return "refused"


def sheet(kind: str, *parts: str) -> str:
    lines = [x for x in confirmed.lines_of(kind) if x.when != "gas"]
    facts = 'energy = "electric"\nconnection = "cord-connected"\n'
    facts = facts if kind == "air-conditioner" else 'energy = "electric"\n'
    head = f'[job]\ntitle = "t"\nkind = "{kind}"\n{facts}'
    return head + sheets.answers(*(x.key for x in lines)) + "".join(parts)


def required(kind: str) -> list[str]:
    """What a machine of a kind must have; of insulation, leakage and screening the first."""
    rows = [c for c in kinds.usual(kind) if c.required]
    if kind == "air-conditioner":
        rows = [c for c in rows if c.calculation != "motor-circuit"]
    names = dict.fromkeys(c.calculation for c in rows)
    return [n for n in names if n not in ("leakage", "screening")]


@pytest.mark.parametrize("kind", KINDS)
def test_no_excuse_stands_for_a_check_that_was_not_made(kind: str) -> None:
    must = required(kind)
    assert verdict(sheet(kind, checks(*must))) == "pass"
    for gone in must:
        there = check("ground" if gone == "supply" else "supply")
        for excuse in EXCUSES:
            said = f'[[does_not_apply]]\ncalculation = "{gone}"\nreason = "{excuse}"\n'
            assert verdict(sheet(kind, there, said)) == "refused", (gone, excuse)


@pytest.mark.parametrize("kind", KINDS)
def test_no_excuse_takes_away_what_failed(kind: str) -> None:
    low = check("supply").replace("119.6 V", "90.0 V")
    pull = check("pull").replace("24 lbf", "9 lbf")
    for failed in (low, pull):
        for excuse in EXCUSES:
            found = f'{failed}name = "old"\nstage = "as found"\nremoved = "{excuse}"\n'
            told = verdict(sheet(kind, found))
            assert told == ("refused" if excuse else "cannot tell"), (failed, excuse)
    found = f'{pull}name = "old"\nstage = "as found"\n'
    whole = sheet(kind, checks(*required(kind)), found)
    assert verdict(whole) == verdict(f'{whole}removed = ""\n') == "cannot tell"
    assert verdict(f'{whole}removed = "cut off"\n') == "pass"


@pytest.mark.parametrize("kind", KINDS)
def test_no_excuse_answers_a_line(kind: str) -> None:
    text = sheet(kind, check("supply"))
    for line in confirmed.lines_of(kind):
        for excuse in EXCUSES[1:] if line.when != "gas" else ():
            said = f'{line.key} = "does not apply: {excuse}"'
            told = verdict(text.replace(f'{line.key} = "yes"', said))
            assert told == "refused", (line.key, excuse)
