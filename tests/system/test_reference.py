"""The reference has every name that a plugin may import, each with what it is and what it takes."""

from __future__ import annotations

import re
from pathlib import Path
from types import ModuleType

import pytest

import wirecalc
from wirecalc.plugging import hooks
from wirecalc.typed.kinds import Kind
from wirecalc.typed.unit_names import SPELLINGS

from . import reference

DOCS = Path(__file__).parents[2] / "docs"
PAGE = (DOCS / "reference.md").read_text(encoding="utf-8")
OF_TRADE = (DOCS / "reference-trade.md").read_text(encoding="utf-8")
GROUPED = [name for names in reference.GROUPS.values() for name in names.split()]
MODULES: dict[str, tuple[ModuleType, list[str], str]] = {
    "wirecalc": (wirecalc, GROUPED, PAGE),
    "hooks": (hooks, reference.HOOKS, PAGE),
    **{
        module.__name__: (module, reference.names_of(module), PAGE)
        for module in (
            *(getattr(wirecalc, name) for name in reference.TABLES),
            *(wirecalc.testing, wirecalc.testing.properties, wirecalc.testing.strategies),
        )
    },
    **{m.__name__: (m, reference.names_of(m), OF_TRADE) for m in reference.trade_modules()},
}
# made by wirecalc itself, or by pluggy: nobody writes their arguments out
MADE = {
    *(
        "Calculation",
        "Deferred",
        "Problem",
        "hookimpl",
        "API_VERSION",
        "Wire",
        "SizeRange",
        "Bands",
    ),
    *("FileColumns", "RecordedColumns", "LeftOut", "Item", "Figure", "Answer", "Criterion"),
}
OF_AUTHORS = ("A calculation", reference.KINDS, "What leaving an input out means", "House rules")
WRITTEN = [
    name
    for title in (*OF_AUTHORS, "What is yielded")
    for name in reference.GROUPS[title].split()
    if name not in MADE
]


def test_every_name_of_wirecalc_is_in_a_group_once() -> None:
    assert sorted([*GROUPED, *reference.TABLES]) == sorted(wirecalc.__all__)


@pytest.mark.parametrize("title", MODULES)
def test_every_name_is_there_with_what_it_is(title: str) -> None:
    module, names, page = MODULES[title]
    assert names
    page = (
        page.partition(f"\n## {title.replace('published.', '').replace('said.', '')}\n")[2] or page
    )
    for name in names:
        entry = re.search(rf"^### {name}\n\n(.*?)(?=^##|\Z)", page, re.M | re.S)
        assert entry is not None, name
        said = re.sub(r"^```python\n.*?^```$", "", entry[1], flags=re.M | re.S).strip()
        assert said, name
        value = getattr(module, name)
        for argument in reference.arguments(value) if f"{name}(" in entry[1] else ():
            assert re.search(rf"\b{argument}\b", entry[1]), (name, argument)


@pytest.mark.parametrize("name", WRITTEN)
def test_every_argument_is_described(name: str) -> None:
    value = getattr(wirecalc, name)
    said = reference.said_of(value)
    assert [a for a in reference.arguments(value) if f"`{a}`" not in said] == []


def test_every_kind_of_input_has_an_example_and_its_span() -> None:
    public = {name: getattr(wirecalc, name) for name in wirecalc.__all__}
    kinds = {n for n, v in public.items() if isinstance(v, type) and issubclass(v, Kind)}
    assert set(reference.EXAMPLES) == kinds
    for name, kind in reference.EXAMPLES.items():
        assert f'Such as `{kind.example}`; its span is said as "{kind.span}".' in PAGE, name


def test_no_argument_of_kinds_is_described_that_there_is_none_of() -> None:
    lines = re.findall(r"^- (`.*?):", reference.doc_of(Kind), re.M)
    described = {name for line in lines for name in re.findall(r"`(\w+)`", line)}
    taken = {a for name in reference.EXAMPLES for a in reference.arguments(getattr(wirecalc, name))}
    assert described == taken


def test_every_unit_is_there_with_its_spellings() -> None:
    table = PAGE.partition("## Units")[2].partition("\n## ")[0]
    rows = re.findall(r"^\| ([^|]*) ?\| `(.*?)` \| (.*) \|$", table, re.M)
    listed: dict[str, dict[str, tuple[str, ...]]] = {}
    last = ""
    for dimension, name, more in rows:
        last = dimension.strip() or last
        listed.setdefault(last, {})[name] = tuple(re.findall(r"`([^`]+)`", more))
    assert listed == SPELLINGS
