"""The book: every link leads somewhere, every page is in it, each calculation has its page."""

from __future__ import annotations

import dataclasses
import functools
import json
import re
from collections.abc import Mapping
from pathlib import Path
from xml.etree import ElementTree

import pytest

import wirecalc
from docs.book import standards
from docs.book.building import MADE, all_worked, made_pages, write
from docs.book.calculations import UNSAID, calculation_page
from docs.book.contents import front_page, within
from docs.book.drawings import DRAWINGS, PICTURES
from docs.book.examples_worked import work
from docs.book.markdown import plain, rows, section
from docs.book.pictures import SUMS, sums
from docs.book.standards import Leaning
from wirecalc.published import tables
from wirecalc.published.sources import Confidence, confirmed, from_memory

ROOT = Path(__file__).parents[2]
DOCS = ROOT / "docs"
LOADED = wirecalc.build(bundled_only=True)
PARTS = [
    "When to ask it",
    "What to have at hand",
    "Take care",
    "How to measure it",
    "Example",
    "What each verdict means, and what to do",
    "Limits",
    "Sources",
    "What it does not see",
    "How it is worked out",
]
VERDICTS = PARTS[5]
LINK = re.compile(r"\]\(([^()\s]*)\)")
BLOCK = re.compile(r"^```.*?^```$", re.DOTALL | re.MULTILINE)


@functools.cache
def made() -> Mapping[str, str]:
    """Return all pages that are made, by their path below docs/made."""
    return made_pages(all_worked())


@functools.cache
def pages() -> Mapping[Path, str]:
    """Return the text of each page of the book, and of the pages beside it."""
    by_hand = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *DOCS.glob("*.md")]
    texts = {path: path.read_text(encoding="utf-8") for path in by_hand}
    texts[DOCS / "index.md"] = front_page(texts[DOCS / "index.md"])
    return texts | {DOCS / MADE / name: text for name, text in made().items()}


def anchors(text: str) -> set[str]:
    """Return the anchors of the headings of a page."""
    titles = re.findall(r"^#+ (.+)$", BLOCK.sub("", text), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", t.lower()).replace(" ", "-") for t in titles}


def parts_of(text: str) -> dict[str, str]:
    """Return what stands below each heading of the second order."""
    found = re.split(r"^## (.+)\n", text, flags=re.MULTILINE)
    return dict(zip(found[1::2], found[2::2], strict=True))


def test_every_link_and_every_anchor_leads_somewhere() -> None:
    lost, followed = [], 0
    for path, text in pages().items():
        for target in LINK.findall(BLOCK.sub("", text)):
            if "://" in target:
                continue
            followed += 1
            file, _, anchor = target.partition("#")
            led = (path.parent / file).resolve() if file else path
            if led not in pages() and not (led.exists() and DOCS / MADE not in led.parents):
                lost.append(f"{path.name}: {target}")
            elif anchor and anchor not in anchors(pages().get(led, "")):
                lost.append(f"{path.name}: {target} is no heading")
    assert lost == []
    assert followed > 500


def test_every_page_stands_in_the_contents_once() -> None:
    for folder, front in ((DOCS, DOCS), (DOCS / MADE / "tables", None)):
        trees = re.findall(r"^```\{toctree\}\n(.*?)^```", pages()[folder / "index.md"], re.S | re.M)
        listed = [
            line
            for tree in trees
            for line in tree.splitlines()
            if line and not line.startswith(":")
        ]
        there = [p.stem for p in pages() if p.parent == folder and p.stem != "index"]
        made_too = (
            [f"{MADE}/calculations/index", f"{MADE}/tables/index", f"{MADE}/standards"]
            if front
            else []
        )
        assert sorted(listed) == sorted([*there, *made_too])


def test_each_calculation_has_its_page_with_example_limits_and_sources() -> None:
    for name, provided in LOADED.calculations.items():
        page = made()[f"calculations/{name}.md"]
        assert page.startswith(f"# {name}\n\n**{plain(provided.calculation.question)}**\n"), name
        parts = parts_of(page)
        assert list(parts) == [p for p in PARTS if p in parts], name
        assert {*PARTS} - {"Take care", "Limits", "Sources", "What it does not see"} <= set(
            parts
        ), name
        assert f"wirecalc {name}" in parts["Example"], name
        assert "It was not worked here" not in parts["Example"], name
        assert all(text.strip() for text in parts.values()), name
        judged = "| what is judged" in parts.get("Limits", "")
        assert judged == ("**pass**" in parts[VERDICTS]), name
        assert not judged or "\\[1\\]" in parts["Sources"], name
        assert provided.calculation.go_on in page, name
        for caution in provided.calculation.cautions:
            row = tables.load("cautions").row(key=caution)
            (line,) = [
                line for line in parts["Take care"].splitlines() if plain(row.text("text")) in line
            ]
            when = row.text("applies_when")
            assert plain(when) in line or when == "always", name
            assert line.startswith("- **STOP.** ") == (row.text("severity") == "stop"), name
        for gap in provided.calculation.not_checked:
            assert plain(gap) in parts["What it does not see"], name


def test_breaker_says_when_it_is_needed_and_that_unknown_is_no_pass() -> None:
    parts = parts_of(made()["calculations/breaker.md"])
    needed, touched = [line for line in parts["When to ask it"].splitlines() if line[:1] == "-"]
    assert needed.startswith("- Needed on the job sheet of: ")
    assert touched.startswith("- On the job sheet where the repair touches it: ")
    assert (" dryer," in needed, " refrigerator," in touched) == (True, True)
    assert "refrigerator" not in needed
    said, _, gaps = parts[VERDICTS].partition("What may keep it from telling")
    assert re.findall(r"\*\*(.+?)\*\*", said) == ["pass", "marginal", "cannot tell", "fail"]
    assert "It is not a pass." in said
    assert "- nameplate current: find out: amps on the appliance's plate" in gaps
    at_hand, more = parts["What to have at hand"].split("These too, where they are known:")
    assert re.findall(r"^\| `--(\S+)`", at_hand, re.MULTILINE) == ["current", "breaker"]
    assert "`--cord`" in more
    assert "cannot be told" not in parts["Limits"]


def test_each_table_has_its_page_with_every_row_and_its_confidence() -> None:
    for name in tables.names():
        page = made()[f"tables/{name}.md"]
        loaded, parts = tables.load(name), parts_of(page)
        assert len(parts["Values"].strip().splitlines()) == len(loaded.rows) + 2, name
        lines = parts["Values"].strip().splitlines()[2:]
        for row, line in zip(loaded.rows, lines, strict=True):
            (mark,) = set(re.findall(r"\| (\\\[[1-9]\d*\\\]) \|", line)) or {""}
            assert f"- {mark} {plain(row.source.cite())}\n" in parts["Sources"] + "\n", name
        assert plain(loaded.not_for) in page, name
    assert "[breaker](../calculations/breaker.md)" in made()["tables/cords.md"]
    seen = (ROOT / "tables" / "cords.csv").read_text(encoding="utf-8")
    counted = f"{seen.count(',confirmed,')} confirmed, {seen.count(',memory,')} memory |"
    (line,) = re.findall(r"^\| \[cords\].*", made()["tables/index.md"], re.MULTILINE)
    assert line.endswith(f"| {counted}")


def test_what_is_to_be_confirmed_stands_by_weight_and_is_whole() -> None:
    parts = parts_of(made()["standards.md"])
    remembered = parts["To be confirmed, by weight"]
    assert "(25 %, or 10 K of a temperature, where the table says nothing)" in remembered
    lines = [line for line in remembered.splitlines() if "](calculations/" in line]
    weights = [line.count("](calculations/") for line in lines]
    assert weights == sorted(weights, reverse=True)
    assert weights[0] > weights[-1]
    for name in tables.names():
        for row in tables.load(name).rows:
            source = row.source
            told = {Confidence.MEMORY: remembered, Confidence.CONFIRMED: parts["Seen in a copy"]}
            if source.confidence in told:
                cited = ", ".join(filter(None, (source.title, source.edition, source.where)))
                assert f"| {plain(cited)} |" in told[source.confidence], name
                assert f"[{name}](tables/{name}.md)" in told[source.confidence], name
    (ul_310,) = [line for line in lines if line.startswith("| UL 310, electrical quick-connect")]
    leans = ("pull", "pull-batch", "shared-barrel", "wire-break")
    assert ul_310.endswith(
        f"| {', '.join(f'[{name}](calculations/{name}.md)' for name in leans)} |"
    )
    assert "A fact of the trade, no source" in parts["Common practice"]


def test_how_far_a_remembered_source_may_be_off_is_said() -> None:
    known = confirmed("a", "A", "1", 1)
    about = from_memory("b", "B", "2", off="7 mm")
    one = Leaning(about, [about, about], {"t"}, {"pull"}, 2)
    assert one.weight > Leaning(known, [known], {"t"}, {"pull"}, 1).weight
    assert one.weight < Leaning(known, [known], set(), {"pull", "strip"}).weight
    assert standards._listed([one], "may be off by", standards._off)[2] == (
        "| B, 2 | 7 mm | 2: [t](tables/t.md) | [pull](calculations/pull.md) |"
    )


def test_pull_is_explained_as_a_technician_needs_it() -> None:
    parts = parts_of(calculation_page(work(LOADED, "pull")))
    assert (
        "| `--force` | force at which it let go | from 0 up to 7000 lbf | `24 lbf` |"
        in (parts["What to have at hand"])
    )
    assert "PASS  pull-out force: 24 lbf, at least 20 lbf" in parts["Example"]
    assert "| pull-out force | at least 20 lbf | standard |" in parts["Limits"]
    assert "confirmed, 3 copies seen" in parts["Sources"]
    assert "[pull-crimp](../tables/pull-crimp.md)" in parts["Sources"]
    assert "from memory: confirm it" in parts["Sources"]
    assert "crimp height and the look of the crimp" in parts["What it does not see"]


def test_every_limit_says_what_to_do_when_it_is_missed() -> None:
    for name in LOADED.calculations:
        table = parts_of(made()[f"calculations/{name}.md"]).get("Limits", "")
        for line in [line for line in table.splitlines() if line.startswith("| ")][2:]:
            *_, do, _mark = re.split(r"(?<!\\)\| ", line)
            assert do.strip(), f"{name}: {line}"
            assert do.strip() != UNSAID or name == "conforms", f"{name}: {line}"


def test_every_reading_is_explained_on_its_page_with_its_drawing() -> None:
    pull = parts_of(made()["calculations/pull.md"])["How to measure it"]
    assert "**a pull** (`--force`): Grip wire and terminal in line" in pull
    assert "](../../pictures/crimp.svg)" in pull
    shown = {name: f"pictures/{name}.svg)" for name in DRAWINGS}
    for calculation, drawn in {
        "inrush": ["clamp"],
        "strip": ["strip"],
        "splice": ["barrel", "clamp", "tab"],
        "crimp-height": ["crimp"],
        "conforms": ["band"],
        "cooling": [],
    }.items():
        part = parts_of(made()[f"calculations/{calculation}.md"])["How to measure it"]
        assert sorted(name for name in shown if shown[name] in part) == drawn, calculation


def test_drawings_are_as_they_are_drawn_now() -> None:
    for name, drawn in DRAWINGS.items():
        assert (PICTURES / f"{name}.svg").read_text(encoding="utf-8") == drawn.text, name
        root = ElementTree.fromstring(drawn.text)
        wide, high = (float(root.attrib[side]) for side in ("width", "height"))
        assert root.attrib["aria-label"] == drawn.title
        for word in root.iter("{http://www.w3.org/2000/svg}text"):
            length = len(str(word.text)) * 8.2  # at most, of a letter of 15
            left = (
                float(word.attrib["x"])
                - length * {"start": 0, "middle": 0.5, "end": 1}[word.attrib["text-anchor"]]
            )
            assert left >= 0 and left + length <= wide, word.text
            assert 0 < float(word.attrib["y"]) < high, word.text


def test_front_page_has_its_parts_in_order_and_links_what_is_made() -> None:
    parts = parts_of(front_page((DOCS / "index.md").read_text(encoding="utf-8")))
    assert " | ".join(parts) == (
        "Tutorials | How to | Reference | Explanation | Glossary | Tables | Performance | "
        "Quality | For inspectors and insurers | Security | Changes"
    )
    assert "- [Calculations, a page each](made/calculations/index.md)" in parts["Reference"]
    assert ":caption: Glossary\n\ninputs\n```" in parts["Glossary"]


def test_a_link_out_of_the_book_is_left_as_words(tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir()
    (tmp_path / "other.md").write_text("# Other")
    docs = tmp_path / "docs"
    docs.mkdir()
    (docs / "page.md").write_text("# Page")
    text = "[shop](../shop) [other](../other.md#part) [page](page.md) [part](#part)"
    assert within(text, docs) == "shop other [page](page.md) [part](#part)"


def test_marks_of_a_text_stay_what_they_are() -> None:
    assert plain("a_b  *c*\n| [1] <d>") == r"a\_b \*c\* \| \[1\] \<d\>"
    assert rows(("a",), []) == section("Empty", []) == []


def test_what_is_no_longer_made_goes(tmp_path: Path, monkeypatch: object) -> None:
    building = __import__("docs.book.building", fromlist=["write"])
    monkeypatch.setattr(building, "all_worked", list)  # type: ignore[attr-defined]
    monkeypatch.setattr(building, "made_pages", lambda _: {"a/b.md": "new\n"})  # type: ignore[attr-defined]
    (tmp_path / "old.md").write_text("old")
    write(tmp_path)
    assert [p.relative_to(tmp_path).as_posix() for p in tmp_path.rglob("*.md")] == ["a/b.md"]


def test_a_book_without_calculations_is_not_built(monkeypatch: object) -> None:
    building = __import__("docs.book.building", fromlist=["wirecalc"])
    nothing = wirecalc.build(bundled_only=True)
    emptied = dataclasses.replace(nothing, calculations={})
    monkeypatch.setattr(building.wirecalc, "build", lambda **_: emptied)  # type: ignore[attr-defined]
    with pytest.raises(LookupError, match="install wirecalc"):
        all_worked()


def test_no_module_of_the_book_is_long() -> None:
    long = [p for p in DOCS.glob("**/*.py") if len(p.read_text().splitlines()) > 250]
    assert long == []


def test_pictures_of_the_readme_are_of_what_is_printed_now() -> None:
    """Where this fails: python -m docs.book.pictures, and look at what it drew."""
    assert json.loads(SUMS.read_text(encoding="utf-8")) == sums()
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    for name in sums():
        assert f"](docs/pictures/{name})" in readme
        assert (PICTURES / name).stat().st_size > 5000
