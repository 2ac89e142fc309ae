"""A rules file: read with the line of each slip, bound to a calculation, judged in every run."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Annotated, Any

import pytest

from wirecalc import (
    Count,
    Finding,
    Item,
    Nameplate,
    OneOf,
    Reading,
    Source,
    Wire,
    YesNo,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    extra,
    figure,
    requires,
    setting,
)
from wirecalc.base.errors import PluginDefect
from wirecalc.engine.from_plugins import ProvidedCalculation
from wirecalc.engine.running import run
from wirecalc.plugging import host
from wirecalc.rules import files as rules_file
from wirecalc.rules.entries import Entry, Wrong
from wirecalc.rules.misspelt import meant_by
from wirecalc.rules.reading_toml import read
from wirecalc.rules.requirements import lists_kinds

BOOK = Source("book", "a book made up for this test", copies=1)


_MORE = extra("no limit of this calculation is about it")


@calculation(part="a test")
def sample(
    force: Annotated[float, Reading("lbf", low=0, high=500, text="force")],
    wire: Annotated[list[Wire], "wires"],
    kind: Annotated[str, OneOf(("ring", "fork", "lug"), text="kind"), setting()] = "ring",
    cut: Annotated[int, Count("cut strands", low=0, high=99), setting()] = 0,
    ambient: Annotated[float | None, Reading("C", low=-40, high=90, text="air"), _MORE] = None,
    plate: Annotated[float | None, Nameplate("V", low=1, high=600, text="plate"), _MORE] = None,
    tinned: Annotated[bool | None, YesNo("tinned"), _MORE] = None,
) -> Iterator[Item]:
    """Does this made-up joint hold?"""
    yield figure("deviation", 100 * (force / 40 - 1), "%")
    yield figure("rise", force / 2, "K")
    yield figure("index", force / 10)
    yield at_least("held", force, 20.0, "lbf", source=BOOK, action="crimp again")
    yield at_most("pulled", force, 100.0, "lbf", source=BOOK)
    yield at_most("nothing", cut, 0, source=BOOK, advisory=True)
    yield at_most("air", 20.0 if ambient is None else ambient, 60.0, "C", source=BOOK)
    yield requires("whole", cut < 50, says="in pieces", source=BOOK)
    if plate is None:
        yield cannot_tell("volts", "no plate", needs=("plate",))


KNOWN = {"sample": ProvidedCalculation("test", "1", sample)}
GIVEN: dict[str, object] = {"force": "24 lbf", "wire": ["18 AWG"], "plate": "120 V"}


def write(folder: Path, text: str) -> Path:
    path = folder / "shop.toml"
    path.write_text(text, encoding="utf-8")
    return path


def rule(asks: str, name: str = "ours") -> str:
    return f'[[rule]]\nname = "{name}"\ncalculations = ["sample"]\n{asks}\n'


def judged(folder: Path, asks: str, **given: object) -> tuple[Finding, list[tuple[str, str]]]:
    """Run the sample with a rule; return the finding and name and verdict of what was added."""
    rules = rules_file.load([write(folder, rule(asks))], KNOWN).rules
    plain, ruled = (run(KNOWN["sample"], GIVEN | given, rules=r) for r in ([], rules))
    assert set(plain.criteria) <= set(ruled.criteria)
    own = [c for c in ruled.criteria if c.provider == "shop.toml"]
    assert all(c.criterion.origin == "house" for c in own)
    return ruled, [(c.criterion.name, str(c.verdict)) for c in own]


PASS, FAIL, UNKNOWN = ("ours", "pass"), ("ours", "fail"), ("ours", "cannot tell")
CASES: list[tuple[str, dict[str, object], list[tuple[str, str]]]] = [
    ('criterion = "held"\ntimes = 1.25', {"force": "25 lbf"}, [PASS]),
    ('criterion = "held"\ntimes = 1.25', {"force": "24.9 lbf"}, [FAIL]),
    ('criterion = "held"\ntimes = 1.25', {"force": "25 lbf ±1 lbf"}, [UNKNOWN]),
    ('criterion = "pulled"\ntimes = 0.5', {"force": "50 lbf"}, [PASS]),
    ('criterion = "pulled"\ntimes = 0.5', {"force": "51 lbf"}, [FAIL]),
    ('criterion = "held"\nat_least = "133.45 N"', {"force": "30.1 lbf"}, [PASS]),  # 30.0 lbf
    ('criterion = "held"\nat_least = "133.45 N"', {"force": "29.9 lbf"}, [FAIL]),
    ('criterion = "air"\nat_most = "104 F"', {"ambient": "41 C"}, [FAIL]),  # 40 C
    ('figure = "deviation"\nat_least = "-5 %"', {"force": "38 lbf"}, [PASS]),
    ('figure = "deviation"\nat_least = "-5 %"', {"force": "37.9 lbf"}, [FAIL]),
    ('figure = "rise"\nat_most = "18 F"', {"force": "20.2 lbf"}, [FAIL]),  # 10 K
    ('figure = "index"\nat_most = 2.4', {"force": "24 lbf"}, [PASS]),
    ('figure = "index"\nat_most = "2.3"', {"force": "24 lbf"}, [FAIL]),
    ('input = "cut"\nat_most = 0', {"cut": 0}, [PASS]),
    ('input = "cut"\nat_most = 0', {"cut": 1}, [FAIL]),
    ('input = "cut"\nat_most = 0\nadvisory = true', {"cut": 1}, [("ours", "marginal")]),
    ('input = "kind"\none_of = ["fork", "ring"]', {"kind": "lug"}, [FAIL]),
    ('input = "kind"\none_of = ["fork", "RING"]', {"kind": "ring"}, [PASS]),
    ('input = "kind"\nnot_one_of = ["lug"]', {"kind": "lug"}, [FAIL]),
    ('input = "tinned"\none_of = ["yes"]', {"tinned": "no"}, [FAIL]),
    ('input = "tinned"\none_of = ["yes"]', {}, [UNKNOWN]),
    ('input = "tinned"\none_of = ["yes"]\noptional = true', {}, []),
    ('input = "wire"\nat_least = "18 AWG"', {"wire": ["14 AWG", "20 AWG"]}, [FAIL]),
    ('input = "wire"\nat_least = "18 AWG"', {"wire": ["14 AWG", "18 AWG"]}, [PASS]),
    ('input = "wire"\nnot_one_of = ["14 AWG solid"]', {"wire": ["14 AWG"]}, [PASS]),
    ('input = "wire"\nnot_one_of = ["14 AWG solid"]', {"wire": ["14 AWG solid"]}, [FAIL]),
    ('input = "wire"\nnot_one_of = ["14 AWG stranded"]', {"wire": ["14 AWG solid"]}, [PASS]),
    ('input = "wire"\nnot_one_of = ["14 AWG aluminum"]', {"wire": ["14 AWG copper"]}, [PASS]),
    ('input = "wire"\nnot_one_of = ["14 AWG"]', {"wire": ["14 AWG aluminum"]}, [FAIL]),
    ('input = "wire"\nnot_one_of = ["18 AWG"]', {"wire": ["16x30 AWG"]}, [FAIL]),
    ('input = "wire"\nat_most = "16 AWG"', {"wire": ["14 AWG", "18 AWG"]}, [FAIL]),
    ('input = "plate"\nat_least = "110 V"', {"plate": "110 V"}, [PASS]),
    ('input = "plate"\nat_least = "110 V"', {"plate": "109.9 V"}, [FAIL]),
    ('figure = "index"\nat_least = 2.4', {"force": "24 lbf"}, [PASS]),
    ('figure = "rise"\nat_most = "12 K"', {"force": "24 lbf ±1 lbf"}, [UNKNOWN]),
    ('figure = "raise"\nat_most = "12 K"', {}, [UNKNOWN]),
    ('figure = "raise"\nat_most = "12 K"\noptional = true', {}, []),
    ('input = "wire"\none_of = ["18 AWG"]', {"wire": ["18 AWG", "16 AWG"]}, [FAIL]),
    ("forbid = true", {}, [FAIL]),
    ('forbid = true\nwhen = { kind = "lug" }', {"kind": "lug"}, [FAIL]),
    ('forbid = true\nwhen = { kind = "lug" }', {"kind": "fork"}, []),
    ('forbid = true\nwhen = { plate = { at_least = "200 V" } }', {"plate": "240 V"}, [FAIL]),
    ('forbid = true\nwhen = { plate = { at_least = "200 V" } }', {"plate": "120 V"}, []),
    ('forbid = true\nwhen = { plate = { at_least = "200 V" } }', {"plate": None}, [UNKNOWN]),
    ('input = "cut"\nat_most = 0\nwhen = { plate = { at_most = "9 V" } }', {"plate": None}, [PASS]),
    (
        'forbid = true\nwhen = { force = { at_least = "24 lbf" } }',
        {"force": "24 lbf ±1 lbf"},
        [UNKNOWN],
    ),
    ('forbid = true\nwhen = { wire = ["12 AWG aluminum"] }', {"wire": ["18 AWG"]}, []),
    ('forbid = true\nwhen = { kind = "lug" }', {"kind": None}, [UNKNOWN]),
    ('forbid = true\nwhen = { kind = "ring" }', {"kind": None}, [FAIL]),
    ('forbid = true\nwhen = { kind = "lug" }', {"kind": "ring"}, []),
    ('criterion = "held"\ntimes = 1.1\nwhen = { kind = "lug" }', {"kind": None}, [PASS]),
    ('criterion = "held"\nat_least = "41 lbf"\nwhen = { kind = "lug" }', {"kind": None}, [UNKNOWN]),
    ('criterion = "hold"\ntimes = 1.25', {}, [UNKNOWN]),
    ('criterion = "hold"\ntimes = 1.25\noptional = true', {}, []),
    ('criterion = "volts"\nat_least = "1 V"', {"plate": None}, [UNKNOWN]),
    ('caution = "Look twice."', {}, []),
]


@pytest.mark.parametrize(("asks", "given", "expected"), CASES)
def test_rule_judges(
    tmp_path: Path, asks: str, given: dict[str, object], expected: list[tuple[str, str]]
) -> None:
    assert judged(tmp_path, asks, **given)[1] == expected


REFUSED_AT_RUN = {
    'criterion = "held"\ntimes = 0.8': "would loosen a limit 'at least'; write a number over 1",
    'criterion = "pulled"\ntimes = 1.1': "would loosen a limit 'at most'; write a number under 1",
    'criterion = "HELD"\ntimes = 1.25\noptional = true': "did you mean held?",
    'figure = "In-dex"\nat_most = 9\noptional = true': "did you mean index?",
    'criterion = "nothing"\ntimes = 0.5': "says nothing of a limit of 0",
    'criterion = "air"\ntimes = 0.5': "says nothing",
    'criterion = "whole"\ntimes = 0.5': "no number",
    'criterion = "held"\nat_most = "9 lbf"': "write at_least",
    'criterion = "held"\nat_least = "9 V"': "unit of voltage",
    'criterion = "held"\nat_least = 9': 'write it as text: "9 lbf"',
    'figure = "index"\nat_least = "9 V"': "plain numbers",
    'input = "cuts"\nat_most = 0': "did you mean cut?",
    'input = "force"\nat_least = "25 lb"': "lbf",
    'input = "force"\nat_least = "25 lbf ±1 lbf"': "no meter error",
    'input = "force"\none_of = ["25 lbf"]': "at_least or at_most",
    'input = "kind"\nat_most = "ring"': "one_of",
    'input = "kind"\none_of = ["rong"]': "did you mean ring?",
    'input = "cut"\nat_most = "few"': "not a count",
    'forbid = true\nwhen = { knd = ["ring"] }': "did you mean kind?",
    'forbid = true\nwhen = { kind = ["rong"] }': "did you mean ring?",
}


@pytest.mark.parametrize("asks", REFUSED_AT_RUN)
def test_rule_that_cannot_be_used_is_cannot_tell_with_its_reason(tmp_path: Path, asks: str) -> None:
    finding, own = judged(tmp_path, asks)
    assert own == [("house rule ours", "cannot tell")]
    assert finding.decided_by is not None
    assert REFUSED_AT_RUN[asks] in finding.decided_by.reason
    assert judged(tmp_path, asks, force="19 lbf")[0].verdict == "fail"


WRONG = {
    'times = 1.2\ncriterion = "held"\ncolour = "red"': (6, "there is no key 'colour'"),
    'criterion = "held"\ntimes = "x"': (5, "write a number"),
    'criterion = "held"\ntimes = nan': (5, "write a number"),
    'criterion = "held"\ntimes = -1': (5, "write a number"),
    'criterion = "held"': (1, "one of times, at_least, at_most"),
    'criterion = "held"\ntimes = 2\nat_least = "9 lbf"': (1, "one thing"),
    'criterion = "held"\none_of = ["9 lbf"]': (1, "one of times"),
    'criterion = "held"\nat_least = "much"': (5, "does not start with a number"),
    'input = "cut"\ncriterion = "held"\ntimes = 2': (1, "a rule for each"),
    'figure = "index"\nat_most = 9\ntimes = 2': (6, "does not go with figure"),
    'why = "so"': (1, "asks nothing"),
    'one_of = ["ring"]': (1, "asks nothing"),
    "forbid = false": (4, "forbids nothing"),
    "forbid = 1": (4, "true or false"),
    'input = "kind"\none_of = "ring"': (5, "texts"),
    'input = "kind"\none_of = []': (5, "texts"),
    'forbid = true\nwhen = "always"': (5, "inputs, as"),
    'forbid = true\nwhen = { plate = { over = "9 V" } }': (5, "inputs, as"),
    'forbid = true\nwhen = { plate = { at_least = "9 V", at_most = "9 V" } }': (5, "inputs, as"),
    "forbid = true\nwhen = {}": (5, "inputs, as"),
    "forbid = true\nwhen = { kind = [3] }": (5, "inputs, as"),
    'forbid = true\nwhen = { kind = "" }': (5, "inputs, as"),
    'input = "cut"\nat_most = nan': (5, "a quantity in quotes"),
    'input = "cut"\nat_most = inf': (5, "a quantity in quotes"),
    'input = "cut"\nat_most = true': (5, "at_most = true is not right"),
    'input = "cut"\nat_most = ""': (5, "a quantity in quotes"),
    'input = "cut"\nat_most = ["1"]': (5, "a quantity in quotes"),
    'criterion = "held"\ntimes = 1': (5, "write a number"),
    'criterion = "held"\ntimes = true': (5, "times = true is not right"),
    'input = "kind"\none_of = [3]': (5, "texts"),
    'input = "kind"\none_of = [""]': (5, "texts"),
    'forbid = true\nwhy = " "': (5, "a text in quotes"),
    "forbid = true\nwhy = 3": (5, "a text in quotes"),
    'input = "cut"\nat_most = 3\nat_least = 1': (1, "of the input one thing is asked"),
    'input = "kind"\none_of = ["ring"]\ntimes = 2': (6, "times does not go with input"),
    'caution = "look"\nseverity = "grave"': (5, "stop, caution, note"),
    'forbid = true\nseverity = "stop"': (5, "how grave"),
}


@pytest.mark.parametrize("asks", WRONG)
def test_slip_is_named_with_its_line(tmp_path: Path, asks: str) -> None:
    line, said = WRONG[asks]
    wrong = read(write(tmp_path, rule(asks))).wrong
    assert [(w.line, said in str(w)) for w in wrong] == [(line, True)]


FILES = {
    "": (0, "holds no rule"),
    "rule = 3": (1, "[[rule]]"),
    '\n[rule]\nname = "a"': (2, "[[rule]]"),
    'text = """\n[[rule]]\n"""\n[[rules]]\n': (4, "did you mean rule?"),
    '[[rule]]\nname = "a"\nforbid = true': (1, "calculations is missing"),
    '[[rule]]\nforbid = true\ncalculations = ["sample"]': (1, "name is missing"),
    '[[required]]\nname = "a"\ncalculations = ["sample"]': (1, "kinds is missing"),
    "[[rule]": (1, "is not TOML"),
    'name = "unended': (1, "is not TOML"),
    "\n[[rule]]\ntimes = 1,25": (3, "a decimal has a point: write 1.25"),
    "[[rule]]\nname = “ours”": (2, 'straight quotes, as "ours"'),
    "[[rule]]\nname = ‘ours’": (2, 'straight quotes, as "ours"'),
    '[[rule]]\nname = "ours': (2, "texts stand in straight quotes"),
    "[[rule]]\nname = ours": (2, 'texts stand in straight quotes, as "ours"'),
}


@pytest.mark.parametrize("text", FILES)
def test_file_of_another_shape_is_refused(tmp_path: Path, text: str) -> None:
    line, said = FILES[text]
    wrong = read(write(tmp_path, text)).wrong
    assert any(w.line == line and said in str(w) for w in wrong), wrong


def test_line_of_the_second_rule_is_not_that_of_the_first(tmp_path: Path) -> None:
    text = rule('why = """\ntimes = 3\n"""\nforbid = true') + "\n# [[rule]]\n"
    text += rule('criterion = "held"\ntimes = "x"', "other")
    lines = text.splitlines()
    wrong = read(write(tmp_path, text)).wrong
    assert [w.line for w in wrong] == [lines.index('times = "x"') + 1]


def test_line_is_that_of_the_key_and_not_of_a_text_that_names_it(tmp_path: Path) -> None:
    text = rule('why = "times = 3, at_most = 2"\ncriterion = "held"\ntimes = 0')
    wrong = read(write(tmp_path, text)).wrong
    assert [w.line for w in wrong] == [text.splitlines().index("times = 0") + 1]


def test_line_behind_a_heading_in_quotes(tmp_path: Path) -> None:
    text = rule("forbid = true") + rule("forbid = 3", "other")
    text = text.replace("[[rule]]", '[["rule"]]')
    wrong = read(write(tmp_path, text)).wrong
    assert [w.line for w in wrong] == [text.splitlines().index("forbid = 3") + 1]


@pytest.mark.parametrize(
    "content", [None, b"\xff\xfe\x00", b"[[rule]\n", b"", b"x = " + b"[" * 5000], ids=range(5)
)
def test_file_that_cannot_be_read_makes_every_finding_cannot_tell(
    tmp_path: Path, content: bytes | None
) -> None:
    path = tmp_path / "shop.toml"
    if content is not None:
        path.write_bytes(content)
    found = rules_file.load([path], KNOWN)
    finding = run(KNOWN["sample"], GIVEN, rules=found.rules)
    assert finding.verdict == "cannot tell"
    assert "shop.toml" in str(finding.decided_by)


def verdict(found: Any, **given: object) -> str:
    return str(run(KNOWN["sample"], GIVEN | given, rules=found.rules).verdict)


def test_wrong_rule_does_not_take_the_others_along(tmp_path: Path) -> None:
    both = rule('input = "cut"\nat_most = 0', "no cut") + rule('criterion = "held"', "half")
    found = rules_file.load([write(tmp_path, both)], KNOWN)
    assert verdict(found) == "cannot tell"
    assert verdict(found, cut=1) == "fail"


@pytest.mark.parametrize("calculations", ['["sampel"]', '["sample", "sampel"]'])
def test_unknown_calculation_may_be_any(tmp_path: Path, calculations: str) -> None:
    text = f'[[rule]]\nname = "a"\ncalculations = {calculations}\nforbid = true\n'
    found = rules_file.load([write(tmp_path, text)], KNOWN)
    assert verdict(found) == "cannot tell"
    assert [w.would_do for w in found.wrong] == ["did you mean sample?"]


def test_two_files_of_one_name_are_two(tmp_path: Path) -> None:
    """A rule that passes never softens one of the same name that fails."""
    paths = []
    for folder, least in (("a", "30 lbf"), ("b", "1 lbf")):
        (tmp_path / folder).mkdir()
        asks = f'input = "force"\nat_least = "{least}"'
        paths.append(write(tmp_path / folder, rule(asks)))
    assert verdict(rules_file.load(paths[:1], KNOWN)) == "fail"
    assert verdict(rules_file.load(paths, KNOWN)) == "fail"


def test_source_names_file_and_rule(tmp_path: Path) -> None:
    asks = 'forbid = true\nwhy = "it slips"\nsource = "sheet 4"\naction = "take another"'
    decided = judged(tmp_path, asks)[0].decided_by
    assert decided is not None
    assert decided.criterion.source is not None
    assert decided.criterion.source.cite() == "rule 'ours', sheet 4, shop.toml (house)"
    assert (decided.reason, decided.action) == ("it slips", "take another")


def test_what_to_do_is_the_rules_word_or_else_that_of_the_limit(tmp_path: Path) -> None:
    def action(more: str = "") -> tuple[str, str]:
        asks = f'criterion = "held"\ntimes = 2\nwhy = "it slips"\n{more}'
        decided = judged(tmp_path, asks)[0].decided_by
        assert decided is not None
        return decided.action, decided.reason

    assert action() == ("crimp again", "24 lbf is below 40 lbf; it slips")
    assert action('action = "take another"')[0] == "take another"


def test_a_name_that_no_run_has_is_said_with_one_that_is_near(tmp_path: Path) -> None:
    found = judged(tmp_path, 'criterion = "hold"\ntimes = 1.25')[0]
    (own,) = [c for c in found.criteria if c.provider == "shop.toml"]
    assert own.reason == "this run has no criterion 'hold' (did you mean held?)"
    found = judged(tmp_path, 'criterion = "xyzzy"\ntimes = 1.25')[0]
    (own,) = [c for c in found.criteria if c.provider == "shop.toml"]
    assert own.reason == (
        "this run has no criterion 'xyzzy' (known: held, pulled, nothing, air, whole)"
    )


def test_a_word_of_a_list_that_is_not_right_is_named(tmp_path: Path) -> None:
    def reason(asks: str) -> str:
        decided = judged(tmp_path, asks, kind="lug")[0].decided_by
        assert decided is not None
        return decided.reason

    assert (
        reason('input = "kind"\none_of = ["ring", "fork"]') == "kind lug is not one of ring, fork"
    )
    assert reason('input = "kind"\nnot_one_of = ["lug"]\nwhy = "it bends"') == (
        "kind lug is not to be used; it bends"
    )
    assert reason("forbid = true") == "the shop does not use sample"


def test_what_depends_on_an_input_that_nobody_gave_says_so(tmp_path: Path) -> None:
    asks = 'criterion = "held"\nat_least = "41 lbf"\nwhen = { kind = "lug" }'
    found = judged(tmp_path, asks, kind=None)[0]
    (own,) = [c for c in found.criteria if c.provider == "shop.toml"]
    assert own.reason == (
        "it depends on kind, which was not given; if it holds: 24 lbf is below 41 lbf"
    )
    assert (own.action, own.criterion.needs) == ("give kind", ("kind",))


def test_a_slip_concerns_the_calculations_that_the_rule_names_and_no_others(tmp_path: Path) -> None:
    known = KNOWN | {"other": ProvidedCalculation("test", "1", sample)}
    for text, named in (
        (rule('criterion = "held"'), ("sample",)),
        (rule('criterion = "held"').replace('"sample"', '"other", "sample"'), ("other", "sample")),
        (rule('criterion = "held"').replace('"sample"', '["sample"]'), ("*",)),
        (rule("forbid = true").replace('"sample"', '"sampel"'), ("*",)),
        ("[[rule]\n", ("*",)),
        ('[[required]]\nname = "all"\nkinds = 3\ncalculations = ["sample"]\n', ("*",)),
    ):
        (one,) = rules_file.load([write(tmp_path, text)], known).rules
        assert one.rule.calculations == named, text


def test_a_slip_is_said_with_its_line_and_a_rule_without_a_name_by_it() -> None:
    assert str(Wrong(None, 3, "is wrong", "mend it")) == "line 3: is wrong; mend it"
    assert str(Wrong(None, 0, "is wrong")) == "is wrong"
    assert Entry("rule", 4, {"forbid": True}).name == "of line 4"
    assert Entry("rule", 4, {"name": ""}).name == "of line 4"
    assert Entry("rule", 4, {"name": "ours"}).name == "ours"


def test_tables_of_kinds_have_their_name_or_one_that_begins_so() -> None:
    names = ("job-kinds", "job-kinds-ours", "job-kindsours", "our-job-kinds", "kinds")
    assert [lists_kinds(name) for name in names] == [True, True, False, False, False]


def test_the_same_name_in_two_rules_is_said_with_both_lines(tmp_path: Path) -> None:
    text = rule("forbid = true") + rule('caution = "look"')
    wrong = read(write(tmp_path, text)).wrong
    assert [str(w) for w in wrong] == [
        "line 5: the name 'ours' stands in line 1 too; give each a name of its own"
    ]


def test_check_names_all_that_is_wrong_in_the_order_of_its_lines(tmp_path: Path) -> None:
    text = rule('input = "cuts"\nat_most = 0') + rule('criterion = "held"', "half")
    text += rule('forbid = true\nwhen = { knd = "ring" }', "third")
    wrong = rules_file.check(write(tmp_path, text), KNOWN)
    assert [w.line for w in wrong] == [4, 6, 14]
    assert rules_file.check(write(tmp_path, rule("forbid = true")), KNOWN) == []


def test_check_names_a_calculation_that_cannot_be_loaded_at_the_line_of_its_rule(
    tmp_path: Path,
) -> None:
    class Broken:
        @property
        def calculation(self) -> Any:
            raise PluginDefect("sample of plugin test 1 cannot be loaded")

    known: Any = {"sample": Broken()}
    text = "\n\n" + rule("forbid = true")
    (wrong,) = rules_file.check(write(tmp_path, text), known)
    assert str(wrong) == "line 3: sample of plugin test 1 cannot be loaded"


def test_a_slip_is_one_only_where_the_source_can_be_read(monkeypatch: pytest.MonkeyPatch) -> None:
    slip = "held".replace("l", "ll")  # the whole of it stands nowhere here
    assert meant_by(slip, ["held", "pulled"], sample) == "held"
    assert meant_by("held", ["held", "pulled"], sample) == ""
    assert meant_by("deviation", ["deviations"], sample) == ""  # it stands in the source
    for nowhere in ("nowhere", "sys"):
        monkeypatch.setattr(sample.function, "__module__", nowhere)
        assert meant_by(slip, ["held", "pulled"], sample) == ""


def test_a_file_that_is_not_there_is_said_without_a_line(tmp_path: Path) -> None:
    (wrong,) = read(tmp_path / "none.toml").wrong
    assert str(wrong) == "there is no such file; check the name"


def test_caution_is_added_where_its_condition_holds(tmp_path: Path) -> None:
    asks = 'caution = "Two people."\nseverity = "stop"\nwhen = { plate = { at_least = "200 V" } }'

    def said(plate: str | None) -> Sequence[str]:
        return [c.text for c in judged(tmp_path, asks, plate=plate)[0].cautions]

    assert "Two people." in said("240 V")
    assert "Two people." in said(None)
    assert "Two people." not in said("120 V")


def test_required_checks_are_what_house_rules_give(tmp_path: Path) -> None:
    text = '[[required]]\nname = "all"\nkinds = ["oven"]\ncalculations = ["sample"]\n'
    text = f'new_kinds = ["oven"]\n{text}'
    found = rules_file.load([write(tmp_path, text)], KNOWN)
    assert [(r.rule.name, r.rule.kinds, r.rule.calculations) for r in found.required] == [
        ("all", ("oven",), ("sample",))
    ]


def test_nothing_is_loaded_before_a_calculation_runs(tmp_path: Path) -> None:
    class Deaf:
        @property
        def calculation(self) -> Any:
            raise AssertionError("it was loaded")

    known: Any = {"sample": Deaf()}
    found = rules_file.load([write(tmp_path, rule('input = "cut"\nat_most = 0'))], known)
    assert (len(found.rules), found.wrong) == (1, [])


HARDER = 'criterion = "pull-out force"\ntimes = 1.25\n'
PULL = {"wire": "18 AWG", "terminal": "ring", "force": "22 lbf"}


@pytest.mark.parametrize(
    ("asks", "verdict"),
    [
        (HARDER, "fail"),
        ('criterion = "pull-out forces"\ntimes = 1.25\noptional = true', "cannot tell"),
        ('criterion = "pullout force"\ntimes = 1.25\noptional = true', "cannot tell"),
        ('criterion = "pull-out force"\ntimes = 1.01\noptional = true', "pass"),
        ('criterion = "height of the barrel"\ntimes = 1.01\noptional = true', "pass"),
        (
            'criterion = "pull-out force"\ntimes = 1.25\nwhen = {pull_standard = ["ul-486a"]}',
            "cannot tell",
        ),
        (f"{HARDER}when = {{pull_standard = ['own']}}", "fail"),
        (
            'criterion = "pull-out force"\ntimes = 1.01\nwhen = {pull_standard = ["ul-486a"]}',
            "pass",
        ),
    ],
)
def test_a_slip_and_a_condition_that_nobody_gave_pass_nothing(
    tmp_path: Path, asks: str, verdict: str
) -> None:
    text = rule(asks).replace('"sample"', '"pull"')
    found = host.build(rules=[write(tmp_path, text)]).run("pull", PULL)
    assert found.verdict == verdict


def test_a_condition_that_somebody_gave_is_known(tmp_path: Path) -> None:
    asks = f"{HARDER}when = {{pull_standard = ['ul-486a']}}"
    built = host.build(rules=[write(tmp_path, rule(asks).replace('"sample"', '"pull"'))])
    assert built.run("pull", PULL | {"pull_standard": "ul-486a"}).verdict == "fail"
    assert built.run("pull", PULL | {"pull_standard": "own"}).verdict == "pass"


@pytest.mark.parametrize(
    ("asks", "verdicts"),
    [
        ('input = "rla"\nat_most = "1.5 A"', ["fail"]),
        ('input = "RLA"\nat_most = "1.6 A"', ["pass"]),
        ('forbid = true\nwhen = { lra = { at_least = "12 A" } }', ["fail"]),
        ('forbid = true\nwhen = { lra = { at_least = "12.1 A" } }', []),
    ],
)
def test_an_abbreviation_of_a_plate_stands_for_its_input(
    tmp_path: Path, asks: str, verdicts: list[str]
) -> None:
    known = {"inrush": host.build(bundled_only=True).calculations["inrush"]}
    text = rule(asks).replace("sample", "inrush")
    rules = rules_file.load([write(tmp_path, text)], known).rules
    finding = run(known["inrush"], known["inrush"].calculation.example_inputs, rules=rules)
    assert [str(c.verdict) for c in finding.criteria if c.provider == "shop.toml"] == verdicts


def test_an_abbreviation_that_may_be_two_inputs_is_said_with_both(tmp_path: Path) -> None:
    known = {"capacitor": host.build(bundled_only=True).calculations["capacitor"]}
    text = rule('input = "mfd"\nat_most = "50 uF"').replace("sample", "capacitor")
    rules = rules_file.load([write(tmp_path, text)], known).rules
    finding = run(known["capacitor"], known["capacitor"].calculation.example_inputs, rules=rules)
    said = " ".join(c.reason for c in finding.criteria if c.provider == "shop.toml")
    assert "write marked_capacitance or measured_capacitance" in said
