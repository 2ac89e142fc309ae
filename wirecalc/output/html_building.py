"""Building HTML as a tree, so that every text is escaped and every element is closed.

Needs the standard library only. A page holds no script and fetches nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from xml.etree import ElementTree as ET

from ..base.errors import BadInput
from ..said.charts import Chart
from ..said.verdicts import Verdict
from .layout import visible

Element = ET.Element
Inside = str | Element | None
_LONG = 12  # characters of a word that may be broken in a table
_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"


def el(tag: str, *inside: Inside, **attributes: str) -> Element:
    """Return an element with texts and elements inside; `class_` and `aria_label` as attributes."""
    plain = {k.rstrip("_").replace("_", "-"): _clean(v) for k, v in attributes.items() if v}
    made = Element(tag, plain)
    for part in inside:
        if isinstance(part, str):
            text = _clean(part)
            if len(made):
                made[-1].tail = (made[-1].tail or "") + text
            else:
                made.text = (made.text or "") + text
        elif part is not None:
            made.append(part)
    return made


def _clean(text: str) -> str:
    """Return a text with a mark in place of each character that no page may hold."""
    return visible(text, "\ufffd")


def page(title: str, *body: Inside) -> str:
    """Return a whole page."""
    style = Path(__file__).with_name("report.css").read_text(encoding="utf-8")
    head = el(
        "head",
        el("meta", charset="utf-8"),
        el("meta", name="viewport", content="width=device-width, initial-scale=1"),
        el("meta", http_equiv="Content-Security-Policy", content=_POLICY),
        el("title", title),
        el("style", style),
    )
    root = el("html", head, el("body", *body), lang="en")
    for element in root.iter():
        if element.tag in (
            "tr",
            "table",
            "section",
            "p",
            "li",
            "dd",
            "h2",
            "h3",
            "meta",
            "caption",
        ):
            element.tail = (element.tail or "") + "\n"
    return "<!DOCTYPE html>\n" + ET.tostring(root, encoding="unicode", method="html")


def badge(verdict: Verdict | None, instead: str = "NO VERDICT") -> Element:
    """Return a verdict as a word in a border of its own; shape and word, no colour."""
    name = verdict.replace(" ", "-") if verdict else "none"
    return el("strong", verdict.upper() if verdict else instead, class_=f"verdict {name}")


def cell(tag: str, inside: Inside, **attributes: str) -> Element:
    """Return a cell of a table. Only a text with a long word may be broken within a word."""
    words = inside.split() if isinstance(inside, str) else ()
    long = any(len(word) > _LONG for word in words)
    return el(tag, inside, class_="long" if long else "", **attributes)


def table(
    caption: str, heads: Sequence[str], rows: Iterable[Sequence[Inside]], name: str = ""
) -> Element | None:
    """Return a table whose first column names its rows; nothing where there are none."""
    body = [
        el("tr", cell("th", row[0], scope="row"), *(cell("td", c) for c in row[1:])) for row in rows
    ]
    if not body:
        return None
    head = el("tr", *(cell("th", text, scope="col") for text in heads))
    return el("table", el("caption", caption), el("thead", head), el("tbody", *body), class_=name)


def items(entries: Iterable[Inside], name: str = "") -> Element | None:
    """Return a list; nothing where there is nothing in it."""
    listed = [el("li", entry) for entry in entries]
    return el("ul", *listed, class_=name) if listed else None


def pairs(found: Iterable[tuple[str, Inside]], name: str = "") -> Element | None:
    """Return names with what stands for each; nothing where there are none."""
    rows = [el("div", el("dt", term), el("dd", said)) for term, said in found]
    return el("dl", *rows, class_=name) if rows else None


def section(heading: str, *inside: Inside, name: str = "") -> Element | None:
    """Return a part of the page below its heading; nothing where nothing stands in it."""
    kept = [part for part in inside if part is not None]
    return el("section", el("h2", heading), *kept, class_=name) if kept else None


def picture(chart: Chart, key: str) -> Element:
    """Return a chart drawn in place with the same in words below it; without matplotlib the words.

    `key` keeps the ids of several pictures apart.
    """
    from .drawing import draw

    words = el("figcaption", el("strong", chart.title), f": {chart.text}", id=f"{key}-words")
    try:
        svg = _inline(draw(chart, ".svg"), key)
    except BadInput as error:
        missing = "; ".join(f"{p.wrong}: {p.would_do}" for p in error.problems)
        return el("figure", words, el("p", f"No picture: {missing}", class_="note"))
    except (ValueError, ET.ParseError):  # a name that cannot be drawn costs no report
        return el("figure", words, el("p", "No picture: a text in it cannot be drawn"))
    svg.set("aria-describedby", f"{key}-words")
    return el("figure", wide(svg, chart.title), words)


def wide(inside: Element, label: str) -> Element:
    """Return a box of its own to scroll sideways in, so that the page never does."""
    return el("div", inside, class_="wide", tabindex="0", role="group", aria_label=label)


def _inline(svg: bytes, key: str) -> Element:
    """Return a drawn picture as a part of a page: no names of XML, no ids that others have."""
    root = ET.fromstring(svg)
    for node in root.iter():
        node.tag = _local(node.tag)
        given = {_local(k): v for k, v in node.attrib.items()}
        node.attrib.clear()
        node.attrib.update({k: _own_ids(k, v, key) for k, v in given.items()})
    for parent in list(root.iter()):
        for child in [c for c in parent if c.tag in ("metadata", "style", "desc")]:
            parent.remove(child)
    for size in ("width", "height"):
        root.attrib.pop(size, None)
    root.set("style", "stroke-linejoin: round; stroke-linecap: butt")
    root.set("aria-labelledby", f"{key}-chart-title")
    return root


def _local(name: str) -> str:
    return name.rpartition("}")[2]


def _own_ids(name: str, value: str, key: str) -> str:
    if name == "id":
        return f"{key}-{value}"
    if name == "href" and value.startswith("#"):
        return f"#{key}-{value[1:]}"
    return value.replace("url(#", f"url(#{key}-")
